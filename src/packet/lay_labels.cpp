#include "packet/lay_labels.h"

#include <algorithm>
#include <optional>

#include "packet/lay_drawing.h"
#include "packet/scale.h"

namespace gownsheaf {
namespace {

constexpr double kRoomAcross = 8, kRoomDown = 6;  // free around a label
constexpr double kGrainRoom = 14;                 // under the label, for the arrow

struct Line {
  Text text;
  double size;
};

double block_height(const std::vector<Line>& lines) {
  double h = 0;
  for (const Line& l : lines) h += l.size * 1.15;
  return h;
}

bool fits(const LabelPlan& labels, const std::vector<Line>& lines, const Box& box, double also_down) {
  for (const Line& l : lines) {
    if (labels.typesetter.width(l.text, l.size) + pt(kRoomAcross) > box.width) return false;
  }
  return pt(block_height(lines) + kRoomDown + also_down) <= box.height;
}

void place(LabelPlan& labels, const std::vector<Line>& lines, const Box& box, double free_below, bool on_white) {
  const double height = block_height(lines);
  double y = (box.height.in_points() - free_below - height) / 2;
  for (const Line& l : lines) {
    const double step = l.size * 1.15;
    Label label;
    label.text = l.text;
    // A number may be taller than its piece: it then stands over the piece, but never over the drawing's edge.
    const Length middle = std::max(box.y + pt(y + step / 2), pt(l.size / 2));
    const Length half_wide = labels.typesetter.width(l.text, l.size).times(1, 2);
    label.at = {std::max(box.x + box.width.times(1, 2), half_wide), middle};
    label.across = Label::Across::middle;
    label.up = Label::Up::middle;
    label.size = l.size;
    label.on_white = on_white;
    labels.in_order.push_back(label);
    y += step;
  }
}

void place_upright(LabelPlan& labels, const Text& text, const Box& box, double size, bool on_white) {
  Label label;
  label.text = text;
  label.at = {box.x + box.width.times(1, 2), box.y + box.height.times(1, 2)};
  label.across = Label::Across::middle;
  label.up = Label::Up::middle;
  label.size = size;
  label.angle = 90;
  label.on_white = on_white;
  labels.in_order.push_back(label);
}

// Along the cloth, head toward the piece's top: at the left, or at the right for a piece laid the other way up. A piece
// laid a quarter round has its arrow upright.
void draw_grain(std::vector<DrawingItem>& grain, const Box& box, Length y, bool top_at_right) {
  const Length long_enough = std::max(box.width.times(2, 5), std::min(pt(24), box.width - pt(8)));
  const Length left = box.x + (box.width - long_enough).times(1, 2), right = left + long_enough;
  grain.push_back(top_at_right ? line({left, y}, {right - pt(5), y}, 0.7) : line({left + pt(5), y}, {right, y}, 0.7));
  grain.push_back(top_at_right ? arrowhead({right, y}, 0) : arrowhead({left, y}, 2));
}

void draw_upright_grain(std::vector<DrawingItem>& grain, const Box& box, Length x) {
  const Length long_enough = std::max(box.height.times(2, 5), std::min(pt(24), box.height - pt(8)));
  const Length top = box.y + (box.height - long_enough).times(1, 2), low = top + long_enough;
  grain.push_back(line({x, top + pt(5)}, {x, low}, 0.7));
  grain.push_back(arrowhead({x, top}, 1));
}

// Of a piece on the bias: its length at half a quarter to the cloth's, head toward its top.
void draw_bias_grain(std::vector<DrawingItem>& grain, const Box& box, const LaidPiece& laid) {
  const Length side = std::min({box.width, box.height, pt(60)}).times(1, 2);
  const Point centre{box.x + box.width.times(1, 2), box.y + box.height.times(1, 2)};
  // Upright its top is at the left; turned by 45 degrees it points to the lower left, of the other hand to the upper left.
  const bool right = laid.top_at_right, up = laid.mirrored != right;
  const Point tip{right ? centre.x + side : centre.x - side, up ? centre.y - side : centre.y + side};
  const Point tail{2 * centre.x - tip.x, 2 * centre.y - tip.y};
  grain.push_back(line(tail, tip, 0.7));
  grain.push_back(line(tip, {right ? tip.x - pt(5) : tip.x + pt(5), tip.y}, 1.2));
  grain.push_back(line(tip, {tip.x, up ? tip.y + pt(5) : tip.y - pt(5)}, 1.2));
}

// The fold of a piece that lies opened out: down its middle, from top to hem. Dash of the fold of the cloth.
void draw_fold(std::vector<DrawingItem>& marks, const Box& box, bool turned) {
  const Length x = box.x + box.width.times(1, 2), y = box.y + box.height.times(1, 2);
  const std::vector<int> dash{12, 3, 2, 3};
  marks.push_back(turned ? line({x, box.y}, {x, box.bottom()}, 1.0, dash) : line({box.x, y}, {box.right(), y}, 1.0, dash));
}

const CutPiece* find_cut(const LayPlan& plan, const std::string& piece) {
  for (const std::vector<CutPiece>* list : {&plan.cut, &plan.kept})
    for (const CutPiece& c : *list)
      if (c.piece == piece) return &c;
  return nullptr;
}

}  // namespace

void label_piece(LabelPlan& labels, const LayPlan& plan, const LaidPiece& laid, const Box& box, const Box& whole,
                 std::vector<DrawingItem>& grain) {
  const TypeScale& t = labels.typesetter.scale();
  const std::string key = cut_key(plan, laid.piece);
  const CutPiece* cut = find_cut(plan, laid.piece);
  const bool kept = cut != nullptr && cut->kept;
  Text size = key.empty()
                  ? Text{}
                  : labels.figure_text.sizes(key + (kept ? "/across" : "/cut width"), key + (kept ? "/along" : "/cut length"));
  if (laid.on_fold) size = condensed("on the fold, opened out ") + size;
  const std::string name = copy_name(plan, laid);
  const Text named = words_in(Face::condensed_bold, name);
  const auto large = static_cast<double>(t.length), small = static_cast<double>(t.text);

  const bool quarter_round = cut != nullptr && !laid.bias && laid.outline.empty() && !laid.on_fold &&
                             laid.at.width == cut->across && laid.at.height == cut->along && cut->across != cut->along;
  const bool has_grain = box.width >= pt(24) && box.height >= pt(20);
  const Length low = box.bottom() - pt(9);
  const auto arrow = [&] {
    if (!has_grain || kept) return;
    if (laid.bias) draw_bias_grain(grain, box, laid);
    else if (quarter_round || laid.turned) draw_upright_grain(grain, box, box.right() - pt(8));
    else draw_grain(grain, box, low, laid.top_at_right);
  };

  const bool folded = cut != nullptr && cut->on_fold && !laid.on_fold;
  if (folded && !laid.bias) draw_fold(grain, whole, quarter_round || laid.turned);
  const std::vector<std::vector<Line>> ways{
      {{named, large}, {size, small}},
      {{named, small}, {size, small}},
      {{words_in(Face::condensed_bold, name + " ") + size, small}},
      {{named, small}},
      {{words_in(Face::condensed_bold, name, Inline::Size::as_text), t.smallest}},
  };
  const double below = quarter_round ? 0 : kGrainRoom;
  for (const auto& way : ways) {
    if (has_grain && fits(labels, way, box, below)) {
      place(labels, way, box, below, folded || laid.bias || !laid.lines.empty());
      arrow();
      return;
    }
    if (box.height < pt(32) && fits(labels, way, box, 0)) {  // too low for name and arrow: the name is worth more
      place(labels, way, box, 0, folded || !laid.lines.empty());
      return;
    }
  }
  // Upright, for a tall and narrow piece.
  for (const double s : {small, t.smallest}) {
    const Length long_name = labels.typesetter.width(named, s);
    if (box.width < pt(s + kRoomDown) || box.height < long_name + pt(kRoomAcross)) continue;
    place_upright(labels, named, box, s, folded);
    return;
  }
  labels.small.push_back({name, size, box, whole});
}

namespace {

Box box_of(const Label& label, const Typesetter& typesetter) {
  const Length wide = typesetter.width(label.text, label.size) + pt(4), high = pt(label.size * 1.1 + 3);
  if (label.angle == 90) return {label.at.x - high.times(1, 2), label.at.y - wide.times(1, 2), high, wide};
  const Length x = label.across == Label::Across::middle ? label.at.x - wide.times(1, 2) : label.at.x - pt(2);
  return {x, label.at.y - high.times(1, 2), wide, high};
}

bool free_of(const Box& box, const std::vector<Box>& taken) {
  return std::none_of(taken.begin(), taken.end(), [&](const Box& t) { return overlap(t, box); });
}

Point middle(const Box& box) { return {box.x + box.width.times(1, 2), box.y + box.height.times(1, 2)}; }

// Does the line cross a box other than the one it leads to? Tried at so many points of it.
bool line_is_free(Point from, Point to, const std::vector<Box>& taken, const Box& own) {
  constexpr int kPoints = 24;
  for (int i = 1; i < kPoints; ++i) {
    const Box at{from.x + (to.x - from.x).times(i, kPoints), from.y + (to.y - from.y).times(i, kPoints), pt(1), pt(1)};
    if (!overlap(at, own) && !free_of(at, taken)) return false;
  }
  return true;
}

// A place for a label of this size near the piece: the nearest of a grid round it, or none.
std::optional<Box> place_beside(const Box& piece, const Box& whole, Length wide, Length high, const std::vector<Box>& taken,
                                const Box& cloth) {
  constexpr int kSteps = 11;
  const Length step = pt(13);
  std::optional<Box> best;
  Length best_far;
  const Point centre = middle(piece);
  for (int i = -kSteps; i <= kSteps; ++i)
    for (int j = -kSteps; j <= kSteps; ++j) {
      const Box box{centre.x + step * i - wide.times(1, 2), centre.y + step * j - high.times(1, 2), wide, high};
      if (!contains(cloth, box) || !free_of(box, taken)) continue;
      const Point at = middle(box);
      const Length dx = at.x < centre.x ? centre.x - at.x : at.x - centre.x,
                   dy = at.y < centre.y ? centre.y - at.y : at.y - centre.y;
      const Length far = dx + dy;
      if (best && best_far <= far) continue;
      if (!line_is_free(at, centre, taken, whole)) continue;
      best = box;
      best_far = far;
    }
  return best;
}

}  // namespace

void label_small_pieces(LabelPlan& labels, std::vector<DrawingItem>& lines) {
  const double t_small = labels.typesetter.scale().text, t_least = labels.typesetter.scale().smallest;
  std::vector<Box> taken = labels.taken;
  for (const Label& l : labels.in_order) taken.push_back(box_of(l, labels.typesetter));
  for (const LabelPlan::Small& small : labels.small) {
    bool placed = false;
    for (const double size : {t_small, t_least}) {
      Label label;
      label.text = size == t_small ? words_in(Face::condensed_bold, small.name)
                                   : words_in(Face::condensed_bold, small.name, Inline::Size::as_text);
      label.size = size;
      const Length wide = labels.typesetter.width(label.text, size) + pt(6), high = pt(size * 1.1 + 4);
      const auto box = place_beside(small.box, small.whole, wide, high, taken, labels.cloth);
      if (!box) continue;
      label.at = middle(*box);
      label.across = Label::Across::middle;
      label.up = Label::Up::middle;
      label.on_white = true;
      const Point to = middle(small.box);
      lines.push_back(line(label.at, to, 0.7));
      labels.in_order.push_back(label);
      taken.push_back(*box);
      placed = true;
      break;
    }
    if (placed) continue;
    ++labels.count;
    const Text number = words_in(Face::condensed_bold, whole_number(labels.count));
    for (const double s : {t_small, t_least}) {
      const Box room{small.box.x, small.box.y, small.box.width + pt(6), small.box.height + pt(5)};
      if (s != t_least && !fits(labels, {{number, s}}, room, 0)) continue;
      place(labels, {{number, s}}, small.box, 0, false);
      break;
    }
    if (!labels.numbered.empty()) labels.numbered = labels.numbered + condensed("; ");
    labels.numbered = labels.numbered + words_in(Face::condensed_bold, whole_number(labels.count) + ":\u00A0") +
                      condensed(small.name + ", ") + small.size;
  }
}

void label_left_over(LabelPlan& labels, const std::string& key, const Box& box) {
  if (!labels.figure_text.has(key + "/across") || !labels.figure_text.has(key + "/along")) return;
  const auto size = static_cast<double>(labels.typesetter.scale().text);
  const double smallest = labels.typesetter.scale().smallest;
  const Text figures = labels.figure_text.sizes(key + "/across", key + "/along");
  const std::vector<std::vector<Line>> ways{{{condensed("left over ") + figures, size}},
                                            {{condensed("left over"), size}, {figures, size}},
                                            {{condensed("left over"), smallest}, {figures, smallest}}};
  for (const auto& way : ways) {
    if (!fits(labels, way, box, 0)) continue;
    place(labels, way, box, 0, true);
    return;
  }
  const Text upright = condensed("left over ") + figures;
  if (box.width >= pt(size + kRoomDown) && box.height >= labels.typesetter.width(upright, size) + pt(kRoomAcross))
    place_upright(labels, upright, box, size, true);
}

}  // namespace gownsheaf
