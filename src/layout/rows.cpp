// Rows that are no table: pairs of name and sentence, blanks to write in, lines of the contents.
#include <algorithm>

#include "layout/slab.h"

namespace gownsheaf {

namespace {

constexpr Length kLeftSpan = Length::points(154), kRightStart = Length::points(166), kRightSpan = Length::points(320);

}  // namespace

// Spans 2 + 4 of the six columns of 71 with gutters of 12.
Slabs slabs_of(const PairRow& row, const Bench& bench) {
  std::vector<Text> left = bench.type.lines(row.left, kLeftSpan);
  for (Text& line : bench.type.lines(row.left_under, kLeftSpan)) left.push_back(std::move(line));
  const std::vector<Text> right = bench.type.lines(closer(row.right, bench), kRightSpan);
  const std::int64_t count = static_cast<std::int64_t>(std::max(left.size(), right.size()));
  const Length padding = pt(bench.row_padding()), base = padding + bench.text_base();
  Slab slab;
  set_lines(slab.marks, bench, left, {Length(), base}, bench.step());
  set_lines(slab.marks, bench, right, {kRightStart, base}, bench.step());
  slab.height = padding + bench.step() * count + padding;
  for (std::int64_t k = 1; k < count; ++k) slab.cuts.push_back(padding + bench.step() * k);
  slab.changed = any_changed(row.left) || any_changed(row.left_under) || any_changed(row.right);
  if (!row.last) slab.marks.push_back(level_line(Length(), kLiveWidth, slab.height, bench.scale().row_rule));
  return {slab};
}

// Room for one line of pencil above each line; labels stand on the same base line, left of their blank.
Slabs slabs_of(const WriteIn& write_in, const Bench& bench) {
  const Length least = pt(bench.either(68, 54)), free_above = pt(bench.either(31, 23)), tail = pt(bench.either(6, 5));
  const Length label_gap = pt(5), between = pt(24);
  struct Placed {
    Text label;
    Length x, line_from, line_to;
  };
  std::vector<std::vector<Placed>> rows(1);
  Length x;
  for (const auto& [label, wanted] : write_in.blanks) {
    const Length line = std::min(std::max(least, pt(wanted)), kLiveWidth);
    std::vector<Text> lines = bench.type.lines(label, kLiveWidth);
    Length width = lines.empty() ? Length() : bench.type.width(lines.back()) + label_gap;
    const bool label_above = lines.size() > 1 || width + line > kLiveWidth;  // too long to stand beside its blank
    if (!rows.back().empty() && (label_above || x + width + line > kLiveWidth)) {
      rows.emplace_back();
      x = Length();
    }
    if (label_above) {
      for (Text& text : lines) {
        rows.back().push_back({std::move(text), Length(), Length(), Length()});
        rows.emplace_back();
      }
      rows.back().push_back({{}, Length(), Length(), line});
      x = line + between;
      continue;
    }
    rows.back().push_back({lines.empty() ? Text{} : lines.back(), x, x + width, x + width + line});
    x = x + width + line + between;
  }
  Slabs slabs;
  for (const std::vector<Placed>& row : rows) {
    if (row.empty()) continue;
    Slab slab;
    for (const Placed& placed : row) {
      set_lines(slab.marks, bench, {placed.label}, {placed.x, free_above}, Length());
      if (placed.line_to > placed.line_from) {
        slab.marks.push_back(level_line(placed.line_from, placed.line_to, free_above, 1.2));
      } else {
        slab.keep = Slab::Keep::hard;
      }
    }
    slab.height = free_above + tail;
    slabs.push_back(std::move(slab));
  }
  return slabs;
}

Slabs slabs_of(const ContentsLine& line, const Bench& bench) {
  const TypeScale& scale = bench.scale();
  const Length number_room = pt(bench.either(48, 36));
  const std::vector<Text> lines = bench.type.lines(words(line.title), kLiveWidth - number_room);
  const std::int64_t more = std::max<std::int64_t>(0, static_cast<std::int64_t>(lines.size()) - 1);
  const Length base = bench.base(bench.row_height(), scale.text);
  Slab slab;
  slab.names = line.anchor;
  slab.height = pt(bench.row_height()) + bench.step() * more;
  set_lines(slab.marks, bench, lines, {Length(), base}, bench.step());
  const auto found = bench.pages.find(line.anchor);
  if (found != bench.pages.end()) {
    const Text number = words(whole_number(found->second));
    set_ending_at(slab.marks, bench, number, {kLiveWidth, base + bench.step() * more});
    slab.marks.push_back({LinkMark{Box{Length(), Length(), kLiveWidth, slab.height}, line.anchor}});
  }
  slab.marks.push_back(level_line(Length(), kLiveWidth, slab.height, scale.row_rule));
  for (std::int64_t k = 0; k < more; ++k) slab.cuts.push_back(base + bench.step() * k + pt(bench.either(4, 3)));
  return {slab};
}

}  // namespace gownsheaf
