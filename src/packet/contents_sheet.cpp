// Contents of the bound packet: each sheet with its page, filled in when the pages are counted.
#include "packet/sheets.h"

namespace gownsheaf {

void fill_contents(Sheet& contents, const std::vector<Sheet>& sheets) {
  contents.section = Section::glance;
  contents.answer = words("Where to find each answer.");
  for (const Sheet& s : sheets) {
    if (s.id != "contents" && !s.when_named) contents.blocks.push_back(block(ContentsLine{s.title, s.anchor}));
  }
}

}  // namespace gownsheaf
