#include "packet/closing_drawing.h"

#include <algorithm>

#include "packet/run_parts.h"
#include "packet/scale.h"

namespace gownsheaf {
namespace {

constexpr double kEdgeAt = 236;   // the meeting line, points from the drawing's left
constexpr double kNumberAt = 36;  // right end of the numbers' column
constexpr double kDistanceAt = 112;
constexpr double kWordsAt = 300;
constexpr double kLeastEdge = 90;  // high enough for its ends, its levels and some of the places

class EdgeDrawing {
 public:
  EdgeDrawing(const ClosingPlan& plan, const FigureText& text, const Typesetter& typesetter, bool small)
      : plan_(plan), text_(text), typesetter_(typesetter), type_(typesetter.scale()), key_("closures/" + plan.closure + "/"),
        small_(small) {}

  Drawing made() {
    choose_scale();
    const Length heads = pt(type_.smallest + 8);
    top_ = heads + pt(8);
    foot_ = top_ + scale_.of(plan_.edge_length);
    draw_edge();
    label_columns(heads);
    for (std::size_t i = 0; i < plan_.fasteners.size(); ++i) draw_fastener(i);
    for (const Length other : plan_.other_side) eyelet({edge_ + pt(26), top_ + scale_.of(other)});
    draw_levels();
    draw_insets();
    Drawing out;
    out.items = std::move(items_);
    const Length bar_y = foot_ + pt(2 * type_.smallest + 32);
    out.width = pt(kRunWide);
    out.height = bar_y + pt(type_.smallest + 10);
    const Length bar =
        scale_bar(out.items, {edge_ - scale_.of(widest()), bar_y}, scale_, text_.shown_in(), type_.smallest, pt(130));
    if (scale_.one_to > 1)  // the bar itself says full size
      out.items.push_back(
          put(condensed(scale_name(scale_)), {edge_ - scale_.of(widest()) + bar + pt(64), bar_y + pt(2)}, type_.smallest));
    out.name = "closing " + plan_.closure;
    keep_labels_inside(out, typesetter_);
    return out;
  }

 private:
  Length widest() const {  // what stands past the meeting line on the drawn side, on the cloth
    Length most;
    for (const std::string& side : plan_.cut_sides) {
      const auto past = text_.figures().length(key_ + "cut past meeting line/" + side);
      if (past) most = std::max(most, *past);
    }
    return most;
  }

  // The largest scale that leaves room on the page, both ways.
  void choose_scale() {
    scale_ = largest_that_fits(plan_.edge_length, pt(type_.name == "pin-up" ? 430 : 330), text_.shown_in());
    for (const DrawingScale s : scales(text_.shown_in()))
      if (s.one_to >= scale_.one_to && s.of(widest()) <= pt(100)) {
        scale_ = s;
        break;
      }
    if (small_)
      for (const DrawingScale s : scales(text_.shown_in()))
        if (s.one_to > scale_.one_to) {
          if (s.of(plan_.edge_length) >= pt(kLeastEdge)) scale_ = s;
          break;
        }
    edge_ = pt(kEdgeAt);
  }

  // The upper side past the meeting line (white), what is turned back behind it (grey), and the cut edge, dashed.
  void draw_edge() {
    const Length high = foot_ - top_;
    const Length inside = pt(96);
    const Length lap = scale_.of(plan_.lap), turn = scale_.of(widest() - std::max(plan_.lap, plan_.underlap));
    FillMark grey;
    grey.path = path_of(Box{edge_ + lap - turn, top_, turn, high});
    grey.ink = Ink::pale_grey;
    items_.push_back(grey);
    items_.push_back(line({edge_ + lap - inside, top_}, {edge_ + lap, top_}, 1.4));
    items_.push_back(line({edge_ + lap - inside, foot_}, {edge_ + lap, foot_}, 1.4));
    items_.push_back(line({edge_ + lap, top_}, {edge_ + lap, foot_}, 2.0));                        // the finished edge
    items_.push_back(line({edge_ + lap - turn, top_}, {edge_ + lap - turn, foot_}, 0.7, {4, 2}));  // the cut edge, turned behind
    if (!plan_.lap.is_zero()) items_.push_back(line({edge_, top_ - pt(6)}, {edge_, foot_ + pt(6)}, 0.7, {8, 2, 2, 2}));
    if (!plan_.other_side.empty()) items_.push_back(line({edge_ + pt(18), top_}, {edge_ + pt(18), foot_}, 2.0));
    fastener_x_ = plan_.lap.is_zero() || plan_.fasten == "hooks and bars" || plan_.fasten == "snaps"
                      ? edge_ + lap - scale_.of(plan_.set_back)
                      : edge_;
    const std::string edge_words = plan_.lap.is_zero() ? "finished edge, on the meeting line" : "meeting line, dot and dash";
    items_.push_back(put(condensed(edge_words), {edge_, foot_ + pt(type_.smallest + 8)}, type_.smallest, Label::Across::middle));
  }

  void label_columns(Length y) {
    const auto head = [&](const std::string& word, double x, Label::Across across) {
      items_.push_back(put(bold(word), {pt(x), y - pt(4)}, type_.smallest, across));
    };
    head(noun(), kNumberAt + 14, Label::Across::right);
    head("from the top", kDistanceAt + 10, Label::Across::right);
  }
  std::string noun() const {
    if (plan_.fasten == "buttons") return "button";
    if (plan_.fasten == "snaps") return "snap";
    if (plan_.fasten == "lacing") return "eyelets";
    if (plan_.fasten.rfind("hooks", 0) == 0) return "hook";
    return "place";
  }

  void eyelet(Point at) {
    StrokeMark ring;
    ring.path = circle(at, pt(2.5));
    ring.weight = pt(1.0);
    items_.push_back(ring);
  }

  void draw_sign(Point at, bool other_way) {
    if (plan_.fasten == "buttons") {
      StrokeMark ring;
      ring.path = circle(at, pt(6));
      ring.weight = pt(1.4);
      items_.push_back(ring);
      for (const double x : {-1.8, 1.8}) {
        FillMark hole;
        hole.path = circle({at.x + pt(x), at.y}, pt(0.9));
        items_.push_back(hole);
      }
    } else if (plan_.fasten.rfind("hooks", 0) == 0) {
      // A hook lies with its bill to the edge; on the other side its eye stands out past it.
      if (other_way) {
        eyelet({at.x - pt(3), at.y});
        StrokeMark eye;
        eye.path = circle({at.x + scale_.of(plan_.set_back), at.y}, pt(4));
        eye.weight = pt(1.2);
        items_.push_back(eye);
      } else {
        eyelet({at.x - pt(16), at.y - pt(2.6)});
        eyelet({at.x - pt(16), at.y + pt(2.6)});
        items_.push_back(line({at.x - pt(13), at.y}, {at.x, at.y}, 1.4));
        StrokeMark bill;
        bill.path = {{PathStep::Kind::move, {}, {}, {at.x, at.y}},
                     {PathStep::Kind::curve, {at.x + pt(4), at.y}, {at.x + pt(4), at.y + pt(5)}, {at.x - pt(2), at.y + pt(5)}}};
        bill.weight = pt(1.4);
        items_.push_back(bill);
      }
    } else {
      eyelet(at);
    }
  }

  // Rows that would run into one another print every second distance; the table has all of them.
  bool printed(std::size_t i) const {
    const Length need = pt(type_.length + 2);
    if (i + 1 == plan_.fasteners.size() && plan_.fasteners[i].level.empty())  // a forced one close above it has its words
      return i == 0 || plan_.fasteners[i - 1].level.empty() ||
             scale_.of(plan_.fasteners[i].from_top - plan_.fasteners[i - 1].from_top) >= need;
    if (i == 0 || !plan_.fasteners[i].level.empty()) return true;
    Length least = need;
    for (std::size_t k = 1; k < plan_.fasteners.size(); ++k)
      least = std::min(least, scale_.of(plan_.fasteners[k].from_top - plan_.fasteners[k - 1].from_top));
    if (least >= need) return true;
    const std::int64_t every = least > Length{} ? count_of(need, least, Rounding::up) : 4;
    if (static_cast<std::int64_t>(i) % every != 0) return false;
    // Not close above the last or a forced one.
    for (std::size_t k = i + 1; k < plan_.fasteners.size(); ++k)
      if ((k + 1 == plan_.fasteners.size() || !plan_.fasteners[k].level.empty()) &&
          scale_.of(plan_.fasteners[k].from_top - plan_.fasteners[i].from_top) < need)
        return false;
    for (std::size_t k = 0; k < i; ++k)
      if (!plan_.fasteners[k].level.empty() && scale_.of(plan_.fasteners[i].from_top - plan_.fasteners[k].from_top) < need)
        return false;
    return true;
  }

  void draw_fastener(std::size_t i) {
    const Fastener& f = plan_.fasteners[i];
    const Length y = top_ + scale_.of(f.from_top);
    const std::string number = whole_number(static_cast<std::int64_t>(i + 1));
    draw_sign({fastener_x_, y}, f.other_way);
    if (!printed(i)) return;
    items_.push_back(line({pt(kDistanceAt + 14), y}, {edge_ + scale_.of(plan_.lap) - pt(100), y}, 0.5));
    items_.push_back(put(bold(number), {pt(kNumberAt), y}, type_.text, Label::Across::right, Label::Up::middle));
    items_.push_back(put(text_.drawn(key_ + "fastener " + number, Inline::Size::measured, Face::bold), {pt(kDistanceAt + 10), y},
                         type_.text, Label::Across::right, Label::Up::middle));
  }

  void draw_levels() {
    Length free_from = pt(-1000);
    for (const auto& [name, at] : plan_.levels) {
      const Length y = top_ + scale_.of(at);
      if (y < free_from) continue;
      const Length from = edge_ + std::max(scale_.of(plan_.lap), plan_.other_side.empty() ? Length{} : pt(30)) + pt(6);
      items_.push_back(line({from, y}, {pt(kWordsAt + 14), y}, 0.7));
      items_.push_back(put(bold(name) + condensed(", ") + text_.drawn(key_ + "at " + name, Inline::Size::measured, Face::bold) +
                               condensed(" down"),
                           {pt(kWordsAt + 20), y}, type_.text, Label::Across::left, Label::Up::middle));
      free_from = y + pt(type_.length + 2);
    }
  }

  // Top and foot of the edge, with the distance to the first and from the last.
  void draw_insets() {
    const bool clear_top = plan_.levels.empty() || scale_.of(plan_.levels.front().second) > pt(type_.length * 1.5);
    if (text_.has(key_ + "top inset") && clear_top)
      items_.push_back(put(condensed("top of the edge; the first ") + text_.drawn(key_ + "top inset") + condensed(" below it"),
                           {pt(kWordsAt - 20), top_}, type_.smallest, Label::Across::left, Label::Up::middle));
    Text foot = condensed("foot of the edge, at ") + text_.drawn(key_ + "edge length");
    if (text_.has(key_ + "bottom inset"))
      foot = foot + condensed("; the last ") + text_.drawn(key_ + "bottom inset") + condensed(" above it");
    // Below the edge's own words: beside the foot it would lie over the drawing, being long.
    items_.push_back(put(foot, {pt(kWordsAt - 20), foot_ + pt(2 * type_.smallest + 12)}, type_.smallest));
  }

  const ClosingPlan& plan_;
  const FigureText& text_;
  const Typesetter& typesetter_;
  const TypeScale& type_;
  std::string key_;
  bool small_;
  DrawingScale scale_;
  Length top_, foot_, edge_, fastener_x_;
  std::vector<DrawingItem> items_;
};

}  // namespace

Drawing draw_closing(const ClosingPlan& plan, const FigureText& figure_text, const Typesetter& typesetter, bool small) {
  return EdgeDrawing(plan, figure_text, typesetter, small).made();
}

}  // namespace gownsheaf
