// Faults in template files: each is told when the files are read, at its narrowest place.
#include <filesystem>
#include <fstream>
#include <map>
#include <random>

#include "check/check.h"
#include "check/template_keys.h"
#include "support/catch.h"
#include "support/rounds.h"

using namespace gownsheaf;

namespace {

struct Loaded {
  Templates templates;
  std::vector<Diagnostic> messages;
  std::vector<SourceText> sources;
};

Loaded load(const std::map<std::string, std::string>& files) {
  static int number = 0;
  const std::filesystem::path folder =
      std::filesystem::path(GOWNSHEAF_BINARY_DIR) / "template-folders" / std::to_string(++number);
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  for (const auto& [name, text] : files) std::ofstream(folder / name, std::ios::binary) << text;
  Loaded l;
  Diagnostics diag;
  l.templates = load_templates(folder.string(), diag, l.sources);
  l.messages = diag.sorted();
  for (const Diagnostic& d : l.messages) UNSCOPED_INFO(render(d, l.sources));
  std::filesystem::remove_all(folder);
  return l;
}

// A library of the steps given, each a line `- { … }`.
std::string library(const std::string& lines) { return "steps: trial\nformat: 1\nlist:\n" + lines; }
Loaded steps(const std::string& lines) { return load({{"steps.yaml", library(lines)}}); }

// One message, of this code; gives it back.
Diagnostic one(const Loaded& l, const std::string& code) {
  REQUIRE(l.messages.size() == 1);
  CHECK(l.messages.front().code == code);
  return l.messages.front();
}

const std::string kHem = "  - { step: hem, say: Hem it., label: c }\n";

}  // namespace

TEST_CASE("templates: a whole step is read into its struct", "[templates]") {
  const Loaded l = steps(kHem + R"(  - step: mark-pleats
    for each: run
    say: "Mark {run:count} pleats of {run}."
    plainly: "Mark the pleats of {run}."
    shows: "{run:depth} deep"
    when: pleat kind is not plain
    after: { id: hem, because: it is measured up, hard: yes }
    with: hem
    gate: skirt on the figure
    cannot undo: pierces cloth
    needs: [table, second person]
    uses: ["{run}", thread]
    hours: { each: 3 min, times: "{run:count}", rate: knife pleat, label: c }
    sheet: pleats
    source: sources.md#some-book
    label: a
)");
  CHECK(l.messages.empty());
  REQUIRE(l.templates.steps.size() == 2);
  const Step& s = l.templates.steps[1];
  CHECK(s.id == "mark-pleats");
  CHECK(s.for_each == "run");
  CHECK(s.plainly == "Mark the pleats of {run}.");
  CHECK(s.shows == std::vector<std::string>{"{run:depth} deep"});
  CHECK(s.when.text() == "pleat kind is not plain");
  REQUIRE(s.after.size() == 1);
  CHECK(s.after[0].hard);
  CHECK(s.after[0].because == "it is measured up");
  CHECK(s.hours_each == Span{180000});
  CHECK(s.hours_times == "run:count");
  CHECK(s.hours_rate == "knife pleat");
  CHECK(s.needs == std::vector<std::string>{"table", "second person"});
  CHECK(s.label == 'a');
  CHECK(s.at.line == 5);
}

TEST_CASE("templates: what a step may not hold", "[templates]") {
  SECTION("a key that is not known") {
    const Diagnostic d = one(steps("  - { step: hem, says: Hem it., say: Hem it., label: c }\n"), "unknown-key");
    CHECK(d.at.line == 4);
    CHECK(d.at.column == 18);
    CHECK(d.at.length == 4);
    CHECK(d.hint == "did you mean `say`?");
  }
  SECTION("a figure that no run has") {
    const Diagnostic d =
        one(steps("  - { step: fold, for each: run, say: \"Fold {run:deptth} deep.\", plainly: Fold it., label: c }\n"),
            "unknown-figure");
    CHECK(d.at.column == 45);
    CHECK(d.at.length == 12);
    CHECK(d.hint == "did you mean `depth`?");
  }
  SECTION("an item's name outside its `for each`") {
    CHECK(one(steps("  - { step: fold, say: \"Fold {run}.\", label: c }\n"), "unknown-figure").hint == "for each: run");
  }
  SECTION("an item of one project") {
    one(steps("  - { step: fold, say: Fold it., shows: [\"{pleats/sides/depth}\"], label: c }\n"), "unknown-figure");
  }
  SECTION("a figure in the act without the act in plain words") {
    one(steps("  - { step: fold, for each: run, say: \"Fold {run:count}.\", label: c }\n"), "key-missing");
  }
  SECTION("an open brace") { CHECK(one(steps("  - { step: fold, say: \"Fold {run.\", label: c }\n"), "braces").at.column == 30); }
  SECTION("braces in a reason") {
    one(steps(kHem +
              "  - { step: fold, for each: run, say: Fold it., after: [{ id: hem, because: \"{run} hangs\" }], label: c }\n"),
        "braces");
  }
  SECTION("a word outside the closed list") {
    CHECK(one(steps("  - { step: cut, say: Cut it., cannot undo: cut good cloth, label: c }\n"), "unknown-word")
              .hint.find("did you mean `cuts good cloth`?") == 0);
  }
  SECTION("a sheet that is not known") {
    CHECK(one(steps("  - { step: cut, say: Cut it., sheet: cuttin list, label: c }\n"), "unknown-word")
              .hint.find("did you mean `cutting list`?") == 0);
  }
  SECTION("a need that is not known") {
    one(steps("  - { step: cut, say: Cut it., needs: [tabel], label: c }\n"), "unknown-word");
  }
  SECTION("a condition on an item's fact outside its `for each`") {
    one(steps("  - { step: cut, say: Cut it., when: cloth breadths >= 1, label: c }\n"), "fact-item");
  }
  SECTION("a fault inside a condition, at its place") {
    const Diagnostic d = one(steps("  - { step: cut, say: Cut it., when: has skrit, label: c }\n"), "unknown-fact");
    CHECK(d.at.column == 42);
    CHECK(d.hint == "did you mean `skirt`?");
  }
  SECTION("label a without its source") { one(steps("  - { step: cut, say: Cut it., label: a }\n"), "source-missing"); }
  SECTION("a source that is no anchor") {
    one(steps("  - { step: cut, say: Cut it., label: a, source: some book }\n"), "source-form");
  }
  SECTION("no label at all") { one(steps("  - { step: cut, say: Cut it. }\n"), "key-missing"); }
  SECTION("an id with capitals") { one(steps("  - { step: Cut it, say: Cut it., label: c }\n"), "name-letters"); }
  SECTION("four lines of figures") {
    one(steps(
            "  - { step: cut, for each: run, say: Cut it., shows: [\"{run:depth}\", \"{run:flat}\", \"{run:count}\", \"{run:plus}\"], label: c }\n"),
        "shows-form");
  }
  SECTION("a line without a figure") {
    one(steps("  - { step: cut, say: Cut it., shows: [two of them], label: c }\n"), "shows-form");
  }
  SECTION("hours without a unit") {
    one(steps("  - { step: cut, say: Cut it., hours: { each: 30, label: c }, label: c }\n"), "unit-missing");
  }
  SECTION("a value that is empty") { one(steps("  - { step: cut, say: Cut it., gate: , label: c }\n"), "value-empty"); }
  SECTION("yes in another word") {
    one(steps(kHem + "  - { step: cut, say: Cut it., after: [{ id: hem, because: it must, hard: always }], label: c }\n"),
        "yes-or-no");
  }
}

TEST_CASE("templates: ids that others name must be there, once", "[templates]") {
  const std::string after_hem =
      "  - { step: fold, say: Fold it., after: [{ id: hme, because: it must, hard: yes }], label: c }\n";
  const Diagnostic unknown = one(steps(kHem + after_hem), "unknown-step");
  CHECK(unknown.hint == "did you mean `hem`?");
  CHECK(unknown.at.column == 48);
  one(steps("  - { step: fold, say: Fold it., replaces: hem, label: c }\n"), "unknown-step");

  const Loaded twice = load({{"a.yaml", library(kHem)}, {"b.yaml", library(kHem)}});
  const Diagnostic d = one(twice, "name-twice");
  CHECK(d.at.file.text().find("b.yaml") != std::string::npos);
  REQUIRE(d.also.size() == 1);
  CHECK(d.also[0].file.text().find("a.yaml") != std::string::npos);
  CHECK(twice.templates.steps.size() == 1);
}

TEST_CASE("templates: a ring of hard edges is refused, whatever the conditions say", "[templates]") {
  const std::string ring =
      "  - { step: pipe-neck, say: Pipe it., when: has piping, after: [{ id: set-sleeves, because: it must, hard: yes }], label: c }\n"
      "  - { step: set-sleeves, say: Set them., when: not has piping, after: [{ id: pipe-neck, because: it must, hard: HARD }], label: c }\n";
  std::string hard = ring, soft = ring;
  hard.replace(hard.find("HARD"), 4, "yes");
  soft.replace(soft.find("HARD"), 4, "no");
  CHECK(one(steps(hard), "steps-ring").sentence == "pipe-neck waits for set-sleeves waits for pipe-neck.");
  CHECK(steps(soft).messages.empty());
  // A replacement takes the edges of what it replaces, so the ring may run through it.
  one(steps(
          "  - { step: gather, say: Gather it., label: c }\n"
          "  - { step: band, say: Band it., after: [{ id: gather, because: it must, hard: yes }], label: c }\n"
          "  - { step: pleat, say: Pleat it., replaces: gather, after: [{ id: band, because: it must, hard: yes }], label: c }\n"),
      "steps-ring");
}

TEST_CASE("templates: packet sets", "[templates]") {
  const auto set = [](const std::string& sheets, const std::string& head = "reads from: 60 cm\nprivate: hidden\n") {
    return load({{"set.yaml", "set: pin-up\nformat: 1\n" + head + "sheets:\n" + sheets}});
  };
  const Loaded good =
      set("  - { sheet: order of work, title: Next, steps: next 8, keep: one page }\n"
          "  - { sheet: pleats, title: \"Pleats: {run}\", for each: run, when: pleat kind is knife }\n");
  CHECK(good.messages.empty());
  REQUIRE(good.templates.sets.size() == 1);
  const PacketSet& s = good.templates.sets[0];
  CHECK(s.reads_from == Length::cm(60));
  CHECK(s.sheets[0].next_steps == 8);
  CHECK(s.sheets[0].one_page);
  CHECK(s.sheets[1].for_each == "run");
  CHECK(s.sheets[1].at.line == 7);

  CHECK_FALSE(s.shared);
  CHECK(set("  - { sheet: what changed, title: What changed }\n", "reads from: 40 cm\nprivate: hidden\nshared: yes\n")
            .templates.sets[0]
            .shared);
  CHECK(one(set("  - { sheet: pleats, title: Pleats }\n", "reads from: 40 cm\nprivate: shown\nshared: yes\n"), "wrong-place")
            .hint == "private: hidden");
  CHECK(one(set("  - { sheet: pleets, title: Pleats }\n"), "unknown-word").hint.find("did you mean `pleats`?") == 0);
  one(set("  - { sheet: pleats, title: \"{run}\" }\n"), "unknown-figure");
  one(set("  - { sheet: pleats, for each: run, title: \"{run:count}\" }\n"), "unknown-figure");
  one(set("  - { sheet: pleats, title: Pleats, when: pleat kind is knife }\n"), "fact-item");
  one(set("  - { sheet: order of work, title: Next, steps: 8 }\n"), "number-form");
  one(set("  - { sheet: pleats, title: Pleats, steps: next 8 }\n"), "wrong-place");
  one(set("  - { sheet: pleats, title: Pleats }\n", "reads from: 60\nprivate: hidden\n"), "unit-missing");
  one(set("  - { sheet: pleats, title: Pleats }\n", "reads from: 3 m\nprivate: hidden\n"), "out-of-range");
  one(set("  - { sheet: pleats, title: Pleats }\n", "reads from: 60 cm\n"), "key-missing");
}

TEST_CASE("templates: cloth kinds", "[templates]") {
  const auto kinds = [](const std::string& rows) {
    return load({{"cloth.yaml", "cloth kinds: trial\nformat: 1\nlist:\n" + rows}});
  };
  one(kinds("  - { kind: wool, width: 58, label: c }\n"), "unit-missing");
  one(kinds("  - { kind: wool, weight: 13 oz per running yd, label: c }\n"), "unit-kind");
  one(kinds("  - { kind: wool, colour: grey, label: c }\n"), "unknown-key");
  one(kinds("  - { kind: wool, lay: upside down, label: c }\n"), "unknown-word");
  one(kinds("  - { kind: wool, also: [flannel], label: c }\n  - { kind: Flannel, label: c }\n"), "name-twice");
  const Loaded good = kinds("  - { kind: wool, width: 58 in, shrinks: 3 %, label: c }\n");
  CHECK(good.messages.empty());
  CHECK(good.templates.cloth_kinds.at(0).shrinks == Percent{Ratio{3, 100}});
}

TEST_CASE("templates: a file says by its first key what it is", "[templates]") {
  CHECK(one(load({{"a.yaml", "step: hem\n"}}), "template-kind").hint == "did you mean `steps`?");
  CHECK(one(load({{"a.yaml", "blocks: notes\nformat: 1\n"}}), "template-kind").sentence ==
        "Files that begin with `blocks` are not read yet.");
  one(load({{"a.yaml", "steps: trial\nformat: 2\nlist: [{ step: hem, say: Hem it., label: c }]\n"}}), "newer-format");
  CHECK(load({{"readme.txt", "not a template"}}).messages.size() == 1);
  CHECK(one(load({}), "templates-unread").sentence.find("holds no .yaml file") != std::string::npos);
  Diagnostics diag;
  std::vector<SourceText> sources;
  load_templates("/no/such/folder", diag, sources);
  CHECK(diag.in_order_found().at(0).code == "templates-unread");
}

TEST_CASE("templates: one fault does not hide the next", "[templates]") {
  const Loaded l =
      load({{"a.yaml", library("  - { step: hem, say: Hem it., label: q }\n  - { step: fold, sey: Fold it., label: c }\n")},
            {"b.yaml", "set: pin-up\nformat: 1\nreads from: 60 cm\nprivate: hidden\nsheets: [{ sheet: pleet, title: P }]\n"}});
  std::vector<std::string> codes;
  for (const Diagnostic& d : l.messages) codes.push_back(d.code);
  CHECK(codes == std::vector<std::string>{"unknown-word", "key-missing", "unknown-key", "unknown-word"});
  CHECK(l.sources.size() == 2);
}

TEST_CASE("templates: every key of the table says what it is for", "[templates]") {
  for (const TemplateKey& k : template_keys()) {
    INFO(k.block << "/" << k.key);
    CHECK_FALSE(k.meaning.empty());
    CHECK(find_template_key(k.block, k.key) == &k);
  }
  CHECK(sheet_words().size() >= 8);
}

TEST_CASE("templates: any mixed-up file gives messages, never a crash", "[templates][law]") {
  const std::string good = library(
      kHem +
      "  - { step: fold, for each: run, say: \"Fold {run}.\", after: [{ id: hem, because: it must, hard: yes }], when: pleat kind is knife, hours: { each: 3 min, label: c }, label: c }\n");
  std::mt19937 dice(3);
  const char signs[] = "{}[]:,\"'#-\n az0";
  for (int i = 0; i < kLawRounds / 20; ++i) {
    std::string text = good;
    for (auto n = 1 + dice() % 4; n > 0; --n) {
      const std::size_t at = dice() % text.size();
      if (dice() % 2) text[at] = signs[dice() % (sizeof signs - 1)];
      else text.erase(at, 1 + dice() % 5);
    }
    const Loaded l = load({{"a.yaml", text}});
    for (const Diagnostic& d : l.messages) REQUIRE_FALSE(d.sentence.empty());
  }
}

namespace {

std::string checks(const std::string& line, const std::string& more = "") {
  return "fitting checks: trial\nformat: 1\nlist:\n  - gate: mock-up\n    title: the mock-up\n" + more + "    look:\n      - " +
         line + "\n";
}
Loaded fitting(const std::string& line, const std::string& more = "") { return load({{"checks.yaml", checks(line, more)}}); }
Loaded cautions(const std::string& lines) { return load({{"cautions.yaml", "cautions: trial\nformat: 1\nlist:\n" + lines}}); }

}  // namespace

TEST_CASE("templates: a gate's checks are read into their structs", "[templates]") {
  const Loaded l = fitting(
      "{ at: Waist, how: pinch, allowed: \"measures {girths/waist/finished}\", plainly: \"within {1/4 in}\", remedy: \"{one}: share\", when: has bodice, label: c }",
      "    when: has bodice\n    wear: [shoes]\n    moves: [Deep breath]\n");
  CHECK(l.messages.empty());
  REQUIRE(l.templates.fitting_checks.size() == 1);
  const FittingChecks& gate = l.templates.fitting_checks[0];
  CHECK(gate.gate == "mock-up");
  CHECK(gate.when.text() == "has bodice");
  CHECK(gate.wear == std::vector<std::string>{"shoes"});
  CHECK(gate.moves == std::vector<std::string>{"Deep breath"});
  REQUIRE(gate.lines.size() == 1);
  CHECK(gate.lines[0].look == "Waist");
  CHECK(gate.lines[0].plainly == "within {1/4 in}");
}

TEST_CASE("templates: what a line of a fitting may not hold", "[templates]") {
  SECTION("a figure without the words for a garment that lacks it") {
    CHECK(one(fitting("{ at: Waist, how: pinch, allowed: \"{girths/waist/finished}\", remedy: share, label: c }"), "key-missing")
              .hint.find("plainly: ") == 0);
  }
  SECTION("what is neither length nor figure") {
    CHECK(one(fitting("{ at: Waist, how: pinch, allowed: \"within {some}\", remedy: share, label: c }"), "unknown-figure")
              .at.length == 6);
  }
  SECTION("a figure in the plain words") {
    one(fitting("{ at: Waist, how: pinch, allowed: none, plainly: \"{girths/waist/finished}\", remedy: share, label: c }"),
        "unknown-figure");
  }
  SECTION("one item's figure") {
    one(fitting("{ at: Waist, how: pinch, allowed: \"{pleats/sides/depth}\", plainly: deep, remedy: share, label: c }"),
        "unknown-figure");
  }
  SECTION("an open brace") { one(fitting("{ at: Waist, how: pinch, allowed: \"{1/4 in\", remedy: share, label: c }"), "braces"); }
  SECTION("braces where there are words alone") {
    one(fitting("{ at: Waist, how: \"{2 in} down\", allowed: none, remedy: share, label: c }"), "braces");
  }
  SECTION("a remedy left out") { one(fitting("{ at: Waist, how: pinch, allowed: none, label: c }"), "key-missing"); }
  SECTION("a label that names no source") {
    one(fitting("{ at: Waist, how: pinch, allowed: none, remedy: share, label: a }"), "source-missing");
  }
  SECTION("a fact that is not there") {
    one(fitting("{ at: Waist, how: pinch, allowed: none, remedy: share, when: has bodies, label: c }"), "unknown-fact");
  }
  SECTION("a fact of one cloth") {
    one(fitting("{ at: Waist, how: pinch, allowed: none, remedy: share, when: has raised surface, label: c }"), "fact-item");
  }
}

TEST_CASE("templates: cautions are read, and what they may not hold", "[templates]") {
  SECTION("whole") {
    const Loaded l =
        cautions("  - { about: Cords, say: \"At most {3 in}.\", defers to: the rules, when: has child, label: c }\n");
    CHECK(l.messages.empty());
    REQUIRE(l.templates.cautions.size() == 1);
    CHECK(l.templates.cautions[0].defers_to == "the rules");
  }
  SECTION("nobody who has the last word") {
    CHECK(one(cautions("  - { about: Cords, say: None., label: c }\n"), "key-missing").hint.find("defers to") == 0);
  }
  SECTION("a figure of the garment") {
    one(cautions("  - { about: Cords, say: \"{girths/waist/finished}\", defers to: the rules, label: c }\n"), "unknown-figure");
  }
  SECTION("two of one name") {
    one(cautions(
            "  - { about: Cords, say: None., defers to: the rules, label: c }\n  - { about: cords, say: No., defers to: the rules, label: c }\n"),
        "name-twice");
  }
  SECTION("a source that is no anchor") {
    one(cautions("  - { about: Cords, say: None., defers to: the rules, source: a law, label: a }\n"), "source-form");
  }
}
