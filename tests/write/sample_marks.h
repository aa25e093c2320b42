// Short ways to make pages of marks, in whole points.
#pragma once
#include <string>
#include <utility>

#include "layout/page.h"

namespace gownsheaf::testing {

inline Length pt(std::int64_t n) { return Length::points(n); }
inline Point at(std::int64_t x, std::int64_t y) { return {pt(x), pt(y)}; }

inline PathStep move_to(Point p) { return {PathStep::Kind::move, {}, {}, p}; }
inline PathStep line_to(Point p) { return {PathStep::Kind::line, {}, {}, p}; }
inline PathStep curve_to(Point a, Point b, Point p) { return {PathStep::Kind::curve, a, b, p}; }
inline PathStep close_path() { return {PathStep::Kind::close, {}, {}, {}}; }
inline Path line(Point from, Point to) { return {move_to(from), line_to(to)}; }
inline Path box(std::int64_t x, std::int64_t y, std::int64_t width, std::int64_t height) {
  return {move_to(at(x, y)), line_to(at(x + width, y)), line_to(at(x + width, y + height)), line_to(at(x, y + height)),
          close_path()};
}

inline TextRun run_of(Face face, std::int64_t size, std::string words, Length offset = {}, Length rise = {}) {
  return {face, pt(size), offset, rise, std::move(words)};
}
inline Mark text(Point p, Face face, std::int64_t size, std::string words) {
  return {TextMark{p, {run_of(face, size, std::move(words))}}};
}
inline Mark stroke(Path path, std::int64_t weight = 1, std::vector<int> dash = {}) {
  return {StrokeMark{std::move(path), pt(weight), Cap::butt, Join::mitre, std::move(dash)}};
}

inline PaperDocument document(std::vector<Mark> marks) {
  PaperDocument made;
  made.title = "Walking skirt";
  made.pages.push_back({pt(612), pt(792), std::move(marks)});
  return made;
}

}  // namespace gownsheaf::testing
