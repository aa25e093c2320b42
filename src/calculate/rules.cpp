#include "calculate/rules.h"

#include <algorithm>

#include "calculate/loads.h"
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

bool hooked(const Closure& c) {
  return c.fasten == Fasten::hooks_and_eyes || c.fasten == Fasten::hooks_and_bars || c.fasten == Fasten::hooks_and_loops;
}

// Where some hooks have no distance, or no set back, of their own.
bool hooks_by_rule(const Project& project, Given<Length> Closure::*own) {
  return std::any_of(project.closures.begin(), project.closures.end(),
                     [&](const Closure& c) { return hooked(c) && (c.*own).origin == Origin::standing; });
}

// Bones that neither they nor their stock say a length or an end for.
bool bones_by_rule(const Project& project) {
  return std::any_of(project.bones.begin(), project.bones.end(), [&](const Bone& bone) {
    const BoneStock* stock = project.stock(bone.stock);
    return !bone.bone_length.known() && !bone.end_clear.known() && stock != nullptr && !stock->end_clear.known();
  });
}

bool has_buttonholes(const Project& project) {
  for (const Closure& c : project.closures)
    if (const Notion* notion = project.notion(c.with); c.fasten == Fasten::buttons && notion != nullptr && notion->across.known())
      return true;
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
  if (hooks_by_rule(project, &Closure::at_most)) used.length("hook pitch", rules.hook_pitch);
  if (hooks_by_rule(project, &Closure::set_back)) used.length("hook set back", rules.hook_set_back);
  if (has_buttonholes(project)) used.word("buttonhole is", rules.buttonhole_is);
  if (bones_by_rule(project)) used.word("bone length is", rules.bone_length_is);
  if (std::any_of(project.strain.begin(), project.strain.end(), [&](const Strain& s) { return laced_by_study(project, s); }))
    used.word("corset pressure", rules.corset_pressure);
}

}  // namespace gownsheaf
