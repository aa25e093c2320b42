#include "layout/lay_out.h"

#include <algorithm>

#include "layout/page_builder.h"

namespace gownsheaf {
namespace {

// Only the lines of the contents hold page numbers.
bool names_pages(const Sheet& sheet) {
  return std::any_of(sheet.blocks.begin(), sheet.blocks.end(), [](const Block& b) { return std::holds_alternative<ContentsLine>(b.what); });
}

}  // namespace

PaperDocument lay_out(const std::vector<Sheet>& sheets, const PageShape& shape, const Running& running,
                      const Typesetter& typesetter) {
  // The first pass learns the page of every anchor; page numbers change no height, so the second breaks alike.
  const std::map<std::string, int> unknown;
  const Bench blank{typesetter, unknown};
  PageBuilder first(shape, blank);
  std::vector<Setting> settings;
  std::vector<Slabs> slabs;
  for (const Sheet& sheet : sheets) {
    settings.push_back(first.add_best(sheet));
    slabs.push_back(first.take_slabs());
  }

  const Bench bench{typesetter, first.anchors()};
  PageBuilder second(shape, bench);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    if (names_pages(sheets[i])) second.add(sheets[i], settings[i]);
    else second.add(sheets[i], settings[i], slabs[i]);
  }

  PaperDocument document;
  document.title = running.project_title;
  document.subject = running.set_and_packet;
  document.bookmarks = second.bookmarks();
  const std::size_t count = second.pages().size();
  for (std::size_t i = 0; i < count; ++i) {
    const PageBuilder::Body& body = second.pages()[i];
    Page page{shape.width, shape.height, running_matter(shape, running, bench, body.section, i + 1, count, body.changed_at)};
    page.marks.insert(page.marks.end(), body.marks.begin(), body.marks.end());
    document.pages.push_back(std::move(page));
  }
  return document;
}

}  // namespace gownsheaf
