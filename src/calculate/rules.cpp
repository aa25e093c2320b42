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

}  // namespace

void add_rules(const Project& project, Figures& figures) {
  RulesUsed used(project, figures);
  const Rules& rules = project.rules;
  if (!project.cloths.empty()) used.word("yardage by", rules.yardage_by);
  if (has_widths(project)) used.word("strips lose", rules.strips_lose);
  if (has_repeat(project)) used.word("plaid extra", rules.plaid_extra);
}

}  // namespace gownsheaf
