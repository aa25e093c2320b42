#include "layout/lay_out.h"

#include <algorithm>

#include "layout/page_builder.h"

namespace gownsheaf {
namespace {

// Only the lines of the contents hold page numbers.
bool names_pages(const Slabs& slabs) {
  return std::any_of(slabs.begin(), slabs.end(), [](const Slab& s) { return !s.names.empty(); });
}

struct LaidSheet {
  const Sheet* sheet;
  Setting setting;
  Slabs slabs;
};

bool named_in(const std::vector<LaidSheet>& laid, const std::string& anchor) {
  return std::any_of(laid.begin(), laid.end(), [&](const LaidSheet& one) {
    return std::any_of(one.slabs.begin(), one.slabs.end(), [&](const Slab& s) { return s.names == anchor; });
  });
}

}  // namespace

PaperDocument lay_out(const std::vector<Sheet>& sheets, const PageShape& shape, const Running& running,
                      const Typesetter& typesetter) {
  // The first pass learns the page of every anchor; page numbers change no height, so the second breaks alike.
  const std::map<std::string, int> unknown;
  const Bench blank{typesetter, unknown};
  PageBuilder first(shape, blank);
  std::vector<LaidSheet> laid;
  for (const Sheet& sheet : sheets) {
    if (sheet.when_named && !named_in(laid, sheet.anchor)) continue;
    const Setting setting = first.add_best(sheet);
    laid.push_back({&sheet, setting, first.take_slabs()});
  }

  const Bench bench{typesetter, first.anchors()};
  PageBuilder second(shape, bench);
  for (const LaidSheet& one : laid) {
    if (names_pages(one.slabs)) second.add(*one.sheet, one.setting);
    else second.add(*one.sheet, one.setting, one.slabs);
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
