// What is draped over bodice or skirt, and how it is held.
#include "check/sections.h"

namespace gownsheaf {

void fill_drapery(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("drapery")) {
    Drapery drapery;
    drapery.named = named_of(file, item, "drapery", "drapery");
    drapery.kind = item.word("kind").value.value_or("");
    drapery.held = item.word("held").value.value_or("");
    drapery.of = names_in(file, item, "of", "pieces");
    drapery.cut_on = item.word("cut on").value.value_or("");
    if (item.plain("foundation") != kNone) drapery.foundation = name_in(file, item, "foundation", "cloths");
    project.drapery.push_back(std::move(drapery));
  }
}

}  // namespace gownsheaf
