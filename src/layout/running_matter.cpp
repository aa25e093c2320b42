#include "layout/page_builder.h"

#include <algorithm>

namespace gownsheaf {

namespace {

constexpr double kHeadSize = 11, kHeadBase = 47, kHeadRuleY = 54, kFourthColumn = 249, kHeadGap = 12;
constexpr double kMarkWidth = 18, kMarkHeight = 72, kMarkEvery = 78, kMarkSize = 12;
constexpr double kHoleX = 34, kHoleRadius = 8.5, kHoleCross = 3, kHoleWeight = 0.5;
constexpr double kBarWordSize = 11, kBarWordLeft = 17;

void head(std::vector<Mark>& marks, const PageShape& shape, const Running& running, const Bench& bench, std::size_t page,
          std::size_t pages) {
  const Length left = pt(shape.left), base = pt(kHeadBase), gap = pt(kHeadGap);
  const Text number = with_faces(
      words("Page " + whole_number(static_cast<std::int64_t>(page)) + " of " + whole_number(static_cast<std::int64_t>(pages))),
      Face::condensed_bold);
  const Length number_width = bench.type.width(number, kHeadSize), middle = pt(kFourthColumn);
  const Text title = cut_to_width(bench, running.project_title, Face::condensed_bold, middle - gap, kHeadSize);
  const Text set =
      cut_to_width(bench, running.set_and_packet, Face::condensed, kLiveWidth - middle - number_width - gap, kHeadSize);
  set_lines(marks, bench, {title}, {left, base}, Length(), kHeadSize);
  set_lines(marks, bench, {set}, {left + middle, base}, Length(), kHeadSize);
  set_ending_at(marks, bench, number, {left + kLiveWidth, base}, kHeadSize);
  marks.push_back(level_line(left, left + kLiveWidth, pt(kHeadRuleY), 0.7));
}

void hole(std::vector<Mark>& marks, double y) {
  const Point centre{pt(kHoleX), pt(y)};
  const Length arm = pt(kHoleCross), none;
  marks.push_back(stroke(circle(centre, pt(kHoleRadius)), kHoleWeight));
  marks.push_back(stroke(path_of(moved(centre, -arm, none), moved(centre, arm, none)), kHoleWeight));
  marks.push_back(stroke(path_of(moved(centre, none, -arm), moved(centre, none, arm)), kHoleWeight));
}

// The same word at the same height in every packet, so that a binder or a wall of pages opens by height.
void section_mark(std::vector<Mark>& marks, const PageShape& shape, const Bench& bench, Section section) {
  const Length left = pt(shape.mark_x), top = pt(shape.top + kMarkEvery * static_cast<int>(section));
  marks.push_back(fill(path_of(Box{left, top, pt(kMarkWidth), pt(kMarkHeight)}), Ink::black));
  const Text word = with_faces(words(std::string(word_for(section))), Face::condensed_bold);
  const Length width = bench.type.width(word, kMarkSize);
  const Point start{left + (pt(kMarkWidth) + bench.capital(kMarkSize)).times(1, 2), top + (pt(kMarkHeight) + width).times(1, 2)};
  for (Mark& mark : bench.type.set(word, start, kMarkSize, 90)) {
    if (auto* text = std::get_if<TextMark>(&mark.what)) text->white = true;
    marks.push_back(std::move(mark));
  }
}

// What the bars mean, once on each page that has one, reading upwards and ending at the top of the first.
void bar_word(std::vector<Mark>& marks, const PageShape& shape, const Bench& bench, Length top) {
  const Text word = with_faces(words("changed"), Face::condensed);
  const Length width = bench.type.width(word, kBarWordSize), lowest = pt(shape.bottom);
  const Point start{pt(shape.left - kBarWordLeft), std::min(top + width, lowest)};
  for (Mark& mark : bench.type.set(word, start, kBarWordSize, 90)) marks.push_back(std::move(mark));
}

}  // namespace

std::vector<Mark> running_matter(const PageShape& shape, const Running& running, const Bench& bench, Section section,
                                 std::size_t page, std::size_t pages, std::optional<Length> changed_at) {
  std::vector<Mark> marks;
  head(marks, shape, running, bench, page, pages);
  for (double y : shape.holes_y) hole(marks, y);
  section_mark(marks, shape, bench, section);
  if (changed_at) bar_word(marks, shape, bench, *changed_at);
  return marks;
}

}  // namespace gownsheaf
