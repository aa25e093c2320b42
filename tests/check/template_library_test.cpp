// The packet templates that are delivered: they read clean, and the step library keeps its own rules.
#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

#include "check/check.h"
#include "support/catch.h"
#include "templates/say.h"

using namespace gownsheaf;

namespace {

const Templates& delivered() {
  static const Templates templates = [] {
    Diagnostics diag;
    std::vector<SourceText> sources;
    Templates t = load_templates(GOWNSHEAF_SOURCE_DIR "/packet-templates", diag, sources);
    for (const Diagnostic& d : diag.sorted()) UNSCOPED_INFO(render(d, sources));
    REQUIRE(diag.in_order_found().empty());
    return t;
  }();
  return templates;
}

std::string file_text(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

bool is_computed(const std::string& name) {
  const FactKind* kind = find_fact(name);
  return kind != nullptr && kind->computed;
}

}  // namespace

TEST_CASE("library: sets, steps and cloths are all there", "[library]") {
  const Templates& t = delivered();
  REQUIRE(t.set("pin-up") != nullptr);
  REQUIRE(t.set("binder") != nullptr);
  CHECK(t.set("pin-up")->reads_from == Length::cm(60));
  CHECK_FALSE(t.set("pin-up")->private_shown);
  CHECK_FALSE(t.set("pin-up")->contents_page);
  CHECK(t.set("binder")->contents_page);
  REQUIRE(t.set("group") != nullptr);
  CHECK(t.set("group")->shared);
  CHECK_FALSE(t.set("group")->private_shown);
  CHECK_FALSE(t.set("binder")->shared);
  CHECK(t.set("pin-up")->sheets[2].next_steps == 5);
  CHECK(t.steps.size() >= 90);
  CHECK(t.cloth_kinds.size() == 32);
  CHECK(t.fingerprints.size() >= 8);
  CHECK(t.fingerprints.at("pin-up.yaml").size() == 64);
  for (const char* id :
       {"measure-wearer", "inspect-cloth", "shrink-cloth", "lay-out-cloth", "cut-breadths", "cut-pieces", "mark-pleats",
        "sew-breadths", "level-the-waist", "hem-skirt", "baste-interlining", "join-skirt-to-bodice"})
    CHECK(t.step(id) != nullptr);
}

TEST_CASE("library: conditions ask only for facts that are worked out", "[library]") {
  for (const Step& s : delivered().steps)
    for (const std::string& fact : s.when.facts_used()) {
      INFO(s.id << ": " << fact);
      CHECK(is_computed(fact));
    }
  for (const PacketSet& set : delivered().sets)
    for (const SheetEntry& sheet : set.sheets)
      for (const std::string& fact : sheet.when.facts_used()) CHECK(is_computed(fact));
}

TEST_CASE("library: nothing cuts good cloth before something else is done", "[library]") {
  int cuts = 0;
  for (const Step& s : delivered().steps) {
    INFO(s.id);
    if (s.cannot_undo == "cuts good cloth") {
      ++cuts;
      // What is cut off a bought trim, out of the patch kept for strips or as it was draped has no cloth of its own.
      const bool of_no_cloth = s.id == "cut-bias-strips" || s.id == "make-trims" || s.id == "make-bows" || s.id == "join-lace" ||
                               s.id == "cut-drapery";
      CHECK(s.for_each == (of_no_cloth ? "" : "cloth"));
    }
    if (!s.cannot_undo.empty()) CHECK(std::any_of(s.after.begin(), s.after.end(), [](const After& a) { return a.hard; }));
    if (!s.gate.empty()) CHECK(std::any_of(s.after.begin(), s.after.end(), [](const After& a) { return a.hard; }));
  }
  CHECK(cuts == 7);
}

TEST_CASE("library: acts fit two lines, reasons are one sentence", "[library]") {
  for (const Step& s : delivered().steps) {
    INFO(s.id);
    CHECK(s.say.size() <= 80);
    CHECK(s.say.back() == '.');
    // What waits for what names a step by its words up to the first stop: they must say an act and its thing.
    CHECK(s.say.substr(0, s.say.find_first_of(",.;:")).find(' ') != std::string::npos);
    CHECK((s.say.front() >= 'A' && s.say.front() <= 'Z'));
    for (const After& a : s.after) {
      INFO(a.because);
      CHECK(a.because.size() <= 90);
      CHECK(a.because.find('.') == std::string::npos);
      CHECK((a.because.front() >= 'a' && a.because.front() <= 'z'));
    }
    CHECK(s.hours_each.has_value());
  }
}

TEST_CASE("library: every source has its entry", "[library]") {
  const std::string docs =
      file_text(GOWNSHEAF_SOURCE_DIR "/docs/sources.md") + file_text(GOWNSHEAF_SOURCE_DIR "/docs/sources-steps.md");
  std::set<std::string> named;
  for (const Step& s : delivered().steps) {
    INFO(s.id << ": " << s.source);
    CHECK((s.label == 'a') == !s.source.empty());
    if (s.source.empty()) continue;
    const std::string anchor = s.source.substr(s.source.find('#') + 1);
    named.insert(anchor);
    CHECK(docs.find("<a id=\"" + anchor + "\"></a>") != std::string::npos);
  }
  CHECK(named.size() > 20);
}

TEST_CASE("library: the cloth table holds what its rows say", "[library]") {
  const ClothKind* wool = delivered().cloth_kind("tropical wool");
  REQUIRE(wool != nullptr);
  CHECK(wool->width == Length::inches(58));
  CHECK(wool->weight == MassPerArea{270});
  CHECK(wool->thickness == Length::from_rational(45, 100, LengthUnit::millimetre));
  CHECK(wool->shrinks == Percent{Ratio{3, 100}});
  CHECK(wool->frays == Length::sixty_fourths(32));
  CHECK(wool->care == "steam");
  for (const ClothKind& k : delivered().cloth_kinds) {
    INFO(k.kind);
    CHECK(k.label == 'c');
    CHECK(k.width.has_value());
    CHECK(k.weight.has_value());
    CHECK(k.thickness.has_value());
    CHECK_FALSE(k.care.empty());
    CHECK_FALSE(k.lay.empty());
    CHECK((k.shrinks.has_value() || k.care == "never wet"));
  }
}

TEST_CASE("library: every gate of a step has its page, and every page looks at something that can be measured or seen",
          "[library]") {
  const Templates& t = delivered();
  for (const Step& s : t.steps) {
    if (s.gate.empty()) continue;
    INFO(s.id << ": " << s.gate);
    CHECK(
        std::any_of(t.fitting_checks.begin(), t.fitting_checks.end(), [&](const FittingChecks& c) { return c.gate == s.gate; }));
  }
  CHECK(t.fitting_checks.size() >= 6);
  for (const FittingChecks& gate : t.fitting_checks) {
    CHECK(gate.lines.size() >= 2);
    CHECK_FALSE(gate.moves.empty());
    for (const FittingLine& line : gate.lines)
      for (const std::string& fact : line.when.facts_used()) {
        INFO(fact);
        CHECK((is_computed(fact) || fact == "waist stay"));
      }
  }
}

// [L07] a: R. L. Dickinson, Toleration of the Corset (1910), p. 1035: edges that spring 5 to 7 cm apart had up to 50 mmHg, the
// most to be tolerated; 10 cm 65 mmHg and over. To the next quarter inch: 2 in and 2 3/4 in; 4 in.
TEST_CASE("library: a laced corset's edges are read as Dickinson measured them", "[library][published]") {
  const auto quarter = [](Length l) { return l.to_step(Length::sixty_fourths(16), Rounding::nearest); };
  CHECK(quarter(Length::cm(5)) == Length::inches(2));
  CHECK(quarter(Length::cm(7)) == Length::sixty_fourths(176));
  CHECK(quarter(Length::cm(10)) == Length::inches(4));
  int found = 0;
  for (const FittingChecks& page : delivered().fitting_checks)
    for (const FittingLine& line : page.lines)
      if (page.gate == "corset laced" && line.source.ends_with("dickinson-1910")) {
        ++found;
        CHECK(line.allowed == "{2 in} to {2 3/4 in} at most");
        CHECK(line.remedy.find("{4 in}") != std::string::npos);
      }
  CHECK(found == 1);
}

TEST_CASE("library: a child's drawstring is the first caution, and every caution names who has the last word", "[library]") {
  const Templates& t = delivered();
  REQUIRE(t.cautions.size() >= 12);
  CHECK(t.cautions.front().when.text() == "has child and has drawstring");
  for (const Caution& c : t.cautions) CHECK_FALSE(c.defers_to.empty());
}
