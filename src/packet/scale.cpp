#include "packet/scale.h"

#include <algorithm>
#include <utility>

#include "packet/figure_text.h"

namespace gownsheaf {
namespace {

struct NamedScale {
  std::int64_t one_to;
  const char* name;
};
constexpr NamedScale kScaleNames[] = {
    {1, "full size"},  {2, "half size"},      {4, "one quarter"},    {5, "one fifth"},          {8, "one eighth"},
    {10, "one tenth"}, {16, "one sixteenth"}, {20, "one twentieth"}, {32, "one thirty-second"}, {50, "one fiftieth"}};

}  // namespace

const std::vector<DrawingScale>& scales(ShownIn shown_in) {
  static const std::vector<DrawingScale> inches{{1}, {2}, {4}, {8}, {16}, {32}};
  static const std::vector<DrawingScale> metric{{1}, {2}, {5}, {10}, {20}, {50}};
  return shown_in == ShownIn::inches ? inches : metric;
}

DrawingScale largest_that_fits(Length real, Length room, ShownIn shown_in, std::int64_t largest) {
  for (const DrawingScale s : scales(shown_in)) {
    if (s.one_to >= largest && s.of(real) <= room) return s;
  }
  return scales(shown_in).back();
}

std::string scale_name(DrawingScale scale) {
  for (const NamedScale& n : kScaleNames) {
    if (n.one_to == scale.one_to) return n.name;
  }
  return "one in " + whole_number(scale.one_to);
}

Text scale_sentence(DrawingScale scale, ShownIn shown_in, const std::string& of) {
  const std::string name = scale_name(scale);
  if (scale.one_to == 1) return condensed("Drawn at " + name + ".");
  if (shown_in == ShownIn::inches) {
    const LengthText on_paper =
        text_of(Length::inches(1).times(1, scale.one_to), shown_in, Length::inches(1).times(1, 32), Rounding::nearest);
    const LengthText real = text_of(Length::inches(1), shown_in, Length::inches(1), Rounding::nearest);
    return condensed("Drawn at " + name + ": ") + length_in(Face::condensed_bold, on_paper, Inline::Size::as_text) +
           words_in(Face::condensed_bold, " on this sheet is ") + length_in(Face::condensed_bold, real, Inline::Size::as_text) +
           words_in(Face::condensed_bold, " of " + of) + condensed(".");
  }
  LengthText real;
  real.whole = scale.one_to % 10 == 0 ? whole_number(scale.one_to / 10) : whole_number(scale.one_to);
  real.unit = scale.one_to % 10 == 0 ? "cm" : "mm";
  LengthText on_paper;
  on_paper.whole = "1";
  on_paper.unit = "mm";
  return condensed("Drawn at " + name + ": ") + length_in(Face::condensed_bold, on_paper, Inline::Size::as_text) +
         words_in(Face::condensed_bold, " on this sheet is ") + length_in(Face::condensed_bold, real, Inline::Size::as_text) +
         words_in(Face::condensed_bold, " of " + of) + condensed(".");
}

StrokeMark line(Point from, Point to, double weight, std::vector<int> dash) {
  StrokeMark s;
  s.path = {{PathStep::Kind::move, {}, {}, from}, {PathStep::Kind::line, {}, {}, to}};
  s.weight = pt(weight);
  s.dash = std::move(dash);
  return s;
}

StrokeMark outline(const Box& box, double weight, std::vector<int> dash) {
  StrokeMark s;
  s.path = {{PathStep::Kind::move, {}, {}, {box.x, box.y}},
            {PathStep::Kind::line, {}, {}, {box.right(), box.y}},
            {PathStep::Kind::line, {}, {}, {box.right(), box.bottom()}},
            {PathStep::Kind::line, {}, {}, {box.x, box.bottom()}},
            {PathStep::Kind::close, {}, {}, {}}};
  s.weight = pt(weight);
  s.dash = std::move(dash);
  return s;
}

FillMark arrowhead(Point tip, int quarter_turns) {
  const Length back = pt(6), half = pt(2);
  Point a = tip, b = tip;
  switch (quarter_turns) {
    case 0:
      a = {tip.x - back, tip.y - half};
      b = {tip.x - back, tip.y + half};
      break;
    case 1:
      a = {tip.x - half, tip.y + back};
      b = {tip.x + half, tip.y + back};
      break;
    case 2:
      a = {tip.x + back, tip.y - half};
      b = {tip.x + back, tip.y + half};
      break;
    default:
      a = {tip.x - half, tip.y - back};
      b = {tip.x + half, tip.y - back};
      break;
  }
  FillMark f;
  f.path = {{PathStep::Kind::move, {}, {}, tip},
            {PathStep::Kind::line, {}, {}, a},
            {PathStep::Kind::line, {}, {}, b},
            {PathStep::Kind::close, {}, {}, {}}};
  return f;
}

void level_dimension(std::vector<DrawingItem>& items, Length from, Length to, Length y, Length lines_from) {
  for (const Length x : {from, to}) items.push_back(line({x, lines_from}, {x, y + pt(4)}, 0.5));
  items.push_back(line({from, y}, {to, y}, 0.7));
  items.push_back(arrowhead({from, y}, 2));
  items.push_back(arrowhead({to, y}, 0));
}

void keep_labels_inside(Drawing& drawing, const Typesetter& typesetter) {
  for (DrawingItem& item : drawing.items) {
    auto* label = std::get_if<Label>(&item);
    if (label == nullptr || label->angle != 0) continue;
    const Length wide = typesetter.width(label->text, label->size);
    Length before{};  // of the words, left of the label's point
    if (label->across == Label::Across::middle) before = wide.times(1, 2);
    if (label->across == Label::Across::right) before = wide;
    const Length left = std::max(std::min(label->at.x - before, drawing.width - wide), Length{});
    label->at.x = left + before;
  }
}

Length scale_bar(std::vector<DrawingItem>& items, Point at, DrawingScale scale, ShownIn shown_in, double text_size,
                 Length longest) {
  // Round lengths, longest first; the bar takes the longest that fits.
  const bool inches = shown_in == ShownIn::inches;
  const std::vector<std::int64_t> rounds =
      inches ? std::vector<std::int64_t>{36, 18, 9, 6, 4, 2, 1} : std::vector<std::int64_t>{100, 50, 20, 10, 5, 2, 1};
  std::int64_t chosen = 1;
  for (const std::int64_t n : rounds) {
    chosen = n;
    if (scale.of(inches ? Length::inches(n) : Length::cm(n)) <= longest) break;
  }
  const Length real = inches ? Length::inches(chosen) : Length::cm(chosen);
  const Length wide = scale.of(real);
  const int parts = chosen % 4 == 0 ? 4 : chosen % 5 == 0 ? 5 : chosen % 3 == 0 ? 3 : chosen % 2 == 0 ? 2 : 1;
  items.push_back(line(at, {at.x + wide, at.y}, 1.4));
  for (int i = 0; i <= parts; ++i) {
    const Length x = at.x + wide.times(i, parts);
    const double tall = i == 0 || i == parts ? 6 : 4;
    items.push_back(line({x, at.y - pt(tall)}, {x, at.y}, 1.0));
  }
  LengthText said;
  said.whole = whole_number(chosen);
  said.unit = unit_of(shown_in);
  Label label;
  label.text = length_in(Face::condensed, said, Inline::Size::as_text);
  if (scale.one_to == 1) label.text = label.text + condensed(", full size");
  label.at = {at.x + wide + pt(6), at.y + pt(1)};
  label.size = text_size;
  items.push_back(label);
  return wide;
}

}  // namespace gownsheaf
