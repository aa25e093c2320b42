// Where sources disagree: the maker's choice. What is not written keeps the default of project/rules.h.
#include "check/sections.h"

namespace gownsheaf {
namespace {

template <class E>
void take(const Item& rules, std::string_view key, E last, Given<E>& rule) {
  Given<E> written = choice(rules.word(key), last);
  if (written.known()) rule = std::move(written);
}

}  // namespace

void fill_rules(const Filling& file, Project& project) {
  const Item item = file.root.block("rules");
  if (item.entry() == nullptr) return;
  Rules& rules = project.rules;
  take(item, "yardage by", YardageBy::width_chart, rules.yardage_by);
  take(item, "strips lose", StripsLose::one_seam, rules.strips_lose);
  take(item, "plaid extra", PlaidExtra::one_repeat_a_piece, rules.plaid_extra);
  take(item, "pleat seams", PleatSeams::as_they_fall, rules.pleat_seams);
  take(item, "buttonhole is", ButtonholeIs::more_for_a_shank, rules.buttonhole_is);
  take(item, "waist is", WaistIs::midway, rules.waist_is);
  take(item, "bone length is", BoneLengthIs::casing_and_more, rules.bone_length_is);
  take(item, "corset pressure", CorsetPressure::of_2011, rules.corset_pressure);
  if (const Given<Length> pitch = item.length("hook pitch"); pitch.known()) rules.hook_pitch = pitch;
  if (const Given<Length> back = item.length("hook set back"); back.known()) rules.hook_set_back = back;
}

}  // namespace gownsheaf
