#include "calculate/safety.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kNoNeckCordTo = 12, kShortCordTo = 16;  // 2T-12 and 2T-16: sizes, read as ages

Diagnostic about(std::string code, Severity severity, const SourceSpan& at, const char* section, const std::string& item) {
  return message({item, section, "cautions"}, severity, std::move(code), at, "", "");
}

// Printed as the published rule has it in that unit: 3 in, 75 mm.
Length longest_cord(ShownIn in) { return in == ShownIn::inches ? Length::inches(3) : Length::mm(75); }

void check_drawstring(const Project& project, const Closure& closure, Diagnostics& diag) {
  if (closure.fasten != Fasten::drawstring || !project.wearer.age.known() || *project.wearer.age > kShortCordTo) return;
  const std::int64_t age = *project.wearer.age;
  const ShownIn in = shown_in(project);
  const std::string runs_at = drawstring_runs_at(project, closure);
  Diagnostic d =
      about("child-drawstring", Severity::hold, closure.drawstring_at.at.line > 0 ? closure.drawstring_at.at : closure.named.at,
            "closures", closure.named.name);
  d.is_private = true;  // it tells the wearer's age
  d.step = "sew-fasteners";
  const std::string for_age = ", for age " + whole_number(age);
  if (runs_at == "neck" || runs_at == "hood") {
    if (age > kNoNeckCordTo) return;
    d.sentence = "A drawstring at the " + runs_at + for_age + ": none at neck or hood up to size 12.";
    d.hint = "hooks or snaps instead (16 CFR 1120, ASTM F1816)";
  } else if (runs_at == "waist" || runs_at == "hem") {
    const Length most = longest_cord(in);
    if (closure.hangs_out.known() && *closure.hangs_out <= most) return;
    const std::string rule = ": up to size 16 at most " + worked(most, in) +
                             " may hang out, without knots or toggles, tacked at the middle of its back.";
    if (closure.hangs_out.known()) {
      d.at = closure.hangs_out.at;
      d.sentence = "A drawstring at the " + runs_at + for_age + " hangs out " + worked(*closure.hangs_out, in) + rule;
      d.hint = "shorten it, or close with hooks or snaps (16 CFR 1120, ASTM F1816)";
    } else {
      d.sentence = "A drawstring at the " + runs_at + for_age + ", and it is not written how far it hangs out" + rule;
      d.hint = "`hangs out: " + worked(most, in) +
               "`, measured with the channel drawn out to its full width (16 CFR 1120, ASTM F1816)";
    }
  } else if (runs_at.empty()) {
    d.sentence =
        "A drawstring" + for_age + ", and it is not written where it runs: none is allowed at neck or hood up to size 12.";
    d.hint = "`at: waist`, or where it runs (16 CFR 1120, ASTM F1816)";
  } else {
    return;  // of a sleeve these two rules do not speak; the caution does
  }
  diag.add(std::move(d));
}

void check_burning(const Project& project, const Cloth& cloth, Figures& figures, Diagnostics& diag) {
  const auto of = burn_class(cloth);
  if (!of) return;
  const ShownIn in = shown_in(project);
  const bool raised = cloth.surface.known() && *cloth.surface == "raised";
  NewFigure f(figures, in, "cloths", cloth.named.name, "burn class");
  f.is(std::string("class ") + whole_number(*of))
      .at(cloth.burn_test.at)
      .from("cloths/" + cloth.named.name + "/burn test", cloth.burn_test)
      .from("cloths/" + cloth.named.name + "/surface", cloth.surface);
  f.add();
  if (*of == 1) return;
  Diagnostic d =
      about("burns-fast", *of == 3 ? Severity::hold : Severity::warning, cloth.burn_test.at, "cloths", cloth.named.name);
  d.sentence = capital(cloth.named.name) + " burned along a strip in " + text_of(*cloth.burn_test) + "; a " +
               (raised ? "raised" : "plain") + " surface wants " + (raised ? "more than 7 s" : "3.5 s or more") +
               " (16 CFR 1610): it points to class " + whole_number(*of) + ".";
  d.hint = *of == 3 ? "another cloth; class 3 is not to be worn" : "another cloth, or have it tested; never near a flame";
  diag.add(std::move(d));
}

// A full breadth has selvages at its sides, which do not fray.
void check_fraying(const Project& project, const Cloth& cloth, Diagnostics& diag) {
  if (cloth.frays.origin != Origin::written || !cloth.frays.known()) return;
  std::vector<const Piece*> narrow;
  for (const Piece& piece : project.pieces) {
    const bool cut_from =
        std::any_of(piece.from.begin(), piece.from.end(), [&](const std::string& c) { return same_name(c, cloth.named.name); });
    if (cut_from && piece.width.kind != Size::Kind::full_width && piece.seam_allowance.known() &&
        *piece.seam_allowance < *cloth.frays)
      narrow.push_back(&piece);
  }
  if (narrow.empty()) return;
  const ShownIn in = shown_in(project);
  Diagnostic d = about("seam-frays", Severity::warning, cloth.frays.at, "cloths", cloth.named.name);
  d.sheet = "cutting list";
  d.sentence =
      capital(cloth.named.name) + " frays, and " + worked(*cloth.frays, in) + " is the least seam that holds in it; " +
      narrow.front()->named.name +
      (narrow.size() == 1   ? " has"
       : narrow.size() == 2 ? " and one piece more have"
                            : " and " + whole_number(static_cast<std::int64_t>(narrow.size()) - 1) + " pieces more have") +
      " less: " + worked(*narrow.front()->seam_allowance, in) + ".";
  d.hint = "`seam allowance: " + worked(*cloth.frays, in) + "`, or bind the edges";
  diag.add(std::move(d));
}

}  // namespace

int burn_class_of(Span burn_time, bool raised) {
  if (!raised) return burn_time.milliseconds >= 3500 ? 1 : 3;
  return burn_time.milliseconds > 7000 ? 1 : burn_time.milliseconds >= 4000 ? 2 : 3;
}

std::optional<int> burn_class(const Cloth& cloth) {
  if (!cloth.burn_test.known()) return {};
  return burn_class_of(*cloth.burn_test, cloth.surface.known() && *cloth.surface == "raised");
}

bool exempt_from_burn_test(const Cloth& cloth) {
  const bool raised = cloth.surface.known() && *cloth.surface == "raised";
  return !raised && cloth.weight.known() && *cloth.weight >= ounces_per_square_yard(2.6);
}

std::string drawstring_runs_at(const Project& project, const Closure& closure) {
  if (closure.drawstring_at.known()) return *closure.drawstring_at;
  const EdgeLine* edge = project.edge(closure.edge);
  if (edge == nullptr) return "";
  if (edge->kind == "neck" || edge->kind == "waist") return edge->kind;
  if (edge->kind == "lower edge") return "hem";
  return edge->kind == "wrist" ? "sleeve" : "";
}

void check_safety(const Project& project, Figures& figures, Diagnostics& diag) {
  for (const Closure& closure : project.closures) check_drawstring(project, closure, diag);
  for (const Cloth& cloth : project.cloths) {
    check_burning(project, cloth, figures, diag);
    check_fraying(project, cloth, diag);
  }
}

}  // namespace gownsheaf
