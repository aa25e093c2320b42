#include "calculate/rules.h"

#include "calculate/new_figure.h"

namespace gownsheaf {
namespace {

class RulesUsed {
 public:
  RulesUsed(const Project& project, Figures& figures) : project_(project), figures_(figures) {}

  template <class E>
  void word(std::string_view quantity, const Given<E>& rule) {
    add(quantity, std::string(word_for(*rule)), rule);
  }
  void length(std::string_view quantity, const Given<Length>& rule) { add(quantity, *rule, rule); }

 private:
  template <class T>
  void add(std::string_view quantity, Value value, const Given<T>& rule) {
    NewFigure f(figures_, shown_in(project_), "rules", "", quantity);
    f.is(std::move(value)).at(rule.at).from("", rule).label(rule.origin == Origin::written ? 'x' : rule.label).add();
  }

  const Project& project_;
  Figures& figures_;
};

bool has_repeat(const Project& project) {
  for (const Cloth& cloth : project.cloths)
    if (cloth.repeat && cloth.repeat->along) return true;
  return false;
}

bool has_widths(const Project& project) {
  for (const Piece& piece : project.pieces)
    if (piece.width.kind == Size::Kind::full_width || (piece.may_be_pieced.known() && *piece.may_be_pieced)) return true;
  return false;
}

// Where some hooks have no set back of their own.
bool hooks_by_rule(const Project& project) {
  for (const Closure& c : project.closures) {
    const bool hooked = c.fasten == Fasten::hooks_and_eyes || c.fasten == Fasten::hooks_and_bars || c.fasten == Fasten::hooks_and_loops;
    if (hooked && c.set_back.origin != Origin::written) return true;
  }
  return false;
}

bool has_buttonholes(const Project& project) {
  for (const Closure& c : project.closures)
    if (const Notion* notion = project.notion(c.with); c.fasten == Fasten::buttons && notion != nullptr && notion->across.known()) return true;
  return false;
}

}  // namespace

void add_rules(const Project& project, Figures& figures) {
  RulesUsed used(project, figures);
  const Rules& rules = project.rules;
  if (!project.cloths.empty()) used.word("yardage by", rules.yardage_by);
  if (has_widths(project)) used.word("strips lose", rules.strips_lose);
  if (has_repeat(project)) used.word("plaid extra", rules.plaid_extra);
  if (!project.pleats.empty() && has_widths(project)) used.word("pleat seams", rules.pleat_seams);
  if (project.measures.girths_and_lengths.count("waist") != 0) used.word("waist is", rules.waist_is);
  if (hooks_by_rule(project)) used.length("hook set back", rules.hook_set_back);
  if (has_buttonholes(project)) used.word("buttonhole is", rules.buttonhole_is);
}

}  // namespace gownsheaf
