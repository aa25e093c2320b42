#include "layout/lay_out.h"

#include "layout/page_builder.h"

namespace gownsheaf {

PaperDocument lay_out(const std::vector<Sheet>& sheets, const PageShape& shape, const Running& running,
                      const Typesetter& typesetter) {
  // The first pass learns the page of every anchor; page numbers change no height, so the second breaks alike.
  const std::map<std::string, int> unknown;
  const Bench blank{typesetter, unknown};
  PageBuilder first(shape, blank);
  std::vector<Setting> settings;
  for (const Sheet& sheet : sheets) settings.push_back(first.add_best(sheet));

  const Bench bench{typesetter, first.anchors()};
  PageBuilder second(shape, bench);
  for (std::size_t i = 0; i < sheets.size(); ++i) second.add(sheets[i], settings[i]);

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
