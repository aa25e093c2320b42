// Contents of the bound packet: each sheet with its page, filled in when the pages are counted.
#include "packet/sheets.h"

namespace gownsheaf {

Sheet contents_sheet(const std::vector<Sheet>& sheets) {
  Sheet contents;
  contents.id = "contents";
  contents.title = "Contents";
  contents.anchor = sheet_anchor(contents.id, "");
  contents.section = Section::glance;
  contents.answer = words("Where to find each answer.");
  for (const Sheet& s : sheets) contents.blocks.push_back(block(ContentsLine{s.title, s.anchor}));
  return contents;
}

}  // namespace gownsheaf
