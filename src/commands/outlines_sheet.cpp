#include "commands/outlines_sheet.h"

#include <algorithm>
#include <cmath>

#include "files/files.h"
#include "outline/pick.h"
#include "unicode/utf8.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

constexpr double kAcross = 486, kLeastHigh = 280;  // points
constexpr double kNumberSize = 12;

// Page mm to points of the drawing.
struct OnPaper {
  Box of;
  double points_per_mm = 1;
  Point operator()(Point p) const {
    return {Length::from_points((p.x - of.x).in_mm() * points_per_mm), Length::from_points((p.y - of.y).in_mm() * points_per_mm)};
  }
};

// Chords shorter than a third of a point are not told apart on paper.
Path path_of(const Polygon& line, bool closed, const OnPaper& shown) {
  Path path;
  Point last;
  for (const Point& p : line) {
    const Point at = shown(p);
    const bool near =
        !path.empty() && std::max(std::fabs((at.x - last.x).in_points()), std::fabs((at.y - last.y).in_points())) < 0.3;
    if (near && &p != &line.back()) continue;
    path.push_back({path.empty() ? PathStep::Kind::move : PathStep::Kind::line, {}, {}, at});
    last = at;
  }
  if (closed) path.push_back({PathStep::Kind::close, {}, {}, {}});
  return path;
}

struct Candidate {
  Point at;
  double room_mm, off_middle_mm;
};

// Middles of the stretches inside the outline, on nine levels.
std::vector<Candidate> places_inside(const DrawnOutline& outline) {
  std::vector<Candidate> out;
  const Box box = box_of(outline.region);
  for (int k = 1; k <= 9; ++k) {
    const Length y = box.y + box.height.times(k, 10) + Length::ticks(1);
    std::vector<double> cuts;
    for (const Polygon& ring : outline.region.rings) {
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i], b = ring[(i + 1) % ring.size()];
        if ((a.y <= y) == (b.y <= y)) continue;
        cuts.push_back(a.x.in_mm() + (b.x - a.x).in_mm() * ((y - a.y) / (b.y - a.y)));
      }
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) {
      const double middle = (cuts[i] + cuts[i + 1]) / 2;
      out.push_back({{Length::ticks(std::llround(middle * Length::kPerMm)), y},
                     cuts[i + 1] - cuts[i],
                     std::fabs(5.0 - k) * box.height.in_mm() / 10});
    }
  }
  return out;
}

// The roomiest place that is not on another number.
Point number_place(const DrawnOutline& outline, const std::vector<Point>& taken, const OnPaper& shown) {
  const Box box = box_of(outline.region);
  Point best{box.x + box.width.times(1, 2), box.y + box.height.times(1, 2)};
  double most = -1e300;
  for (const Candidate& c : places_inside(outline)) {
    double score = std::min(c.room_mm * shown.points_per_mm, 40.0) - 0.1 * c.off_middle_mm * shown.points_per_mm;
    for (const Point& other : taken) {
      const double away = distance_mm(c.at, other, other) * shown.points_per_mm;
      if (away < 20) score -= 1000 * (20 - away);
    }
    if (score > most) {
      most = score;
      best = c.at;
    }
  }
  return best;
}

bool is_small(const DrawnOutline& o) { return o.box.width < kLeastPiece && o.box.height < kLeastPiece; }

Drawing numbered(const SvgDrawing& drawing, double highest) {
  Polygon all;
  for (const DrawnOutline& o : drawing.outlines) {
    all.push_back({o.box.x, o.box.y});
    all.push_back({o.box.right(), o.box.bottom()});
  }
  OnPaper shown{bounds(all), 1};
  const double w = std::max(shown.of.width.in_mm(), 1.0), h = std::max(shown.of.height.in_mm(), 1.0);
  shown.points_per_mm = std::min(kAcross / w, highest / h);
  Drawing out;
  out.width = Length::from_points(kAcross);
  out.height = Length::from_points(h * shown.points_per_mm);
  out.name = "outlines";
  out.caption = words("Small, to tell the pieces apart; the table has each one's width and height as drawn.");
  const auto on_drawing = [&](const Polygon& line) {
    const Box box = bounds(line);
    return contains(shown.of, box);
  };
  for (const OpenLine& line : drawing.open_lines)
    if (on_drawing(line.points))
      out.items.push_back(
          StrokeMark{path_of(line.points, false, shown), Length::from_points(0.5), Cap::butt, Join::mitre, {2, 2}});
  for (const DrawnMark& mark : drawing.marks)
    if (mark.closed && on_drawing(mark.points))
      out.items.push_back(
          StrokeMark{path_of(mark.points, true, shown), Length::from_points(0.5), Cap::butt, Join::mitre, {2, 2}});
  for (const DrawnOutline& o : drawing.outlines)
    for (const Polygon& line : o.lines)
      out.items.push_back(StrokeMark{path_of(line, true, shown), Length::from_points(1), Cap::butt, Join::mitre, {}});
  std::vector<Point> taken;
  for (std::size_t i = 0; i < drawing.outlines.size(); ++i) {
    if (is_small(drawing.outlines[i])) continue;
    const Point at = number_place(drawing.outlines[i], taken, shown);
    taken.push_back(at);
    out.items.push_back(Label{bold(whole_number(static_cast<std::int64_t>(taken.size()))), shown(at), Label::Across::middle,
                              Label::Up::middle, 0, true, kNumberSize});
  }
  return out;
}

std::string inches(Length length) {
  return text_of(length, ShownIn::inches, Length::sixty_fourths(8), Rounding::nearest).number();
}

}  // namespace

std::string in_letters_held(const FontSet& fonts, std::string text) {
  for (const char32_t c : not_covered(fonts, text)) {
    const std::string letter = encode_utf8(c);
    for (std::size_t at = text.find(letter); at != std::string::npos; at = text.find(letter, at + 1))
      text.replace(at, letter.size(), "?");
  }
  return text;
}

Sheet outlines_sheet(const SvgDrawing& drawing, const Typesetter& typesetter, const PageShape& shape) {
  const FontSet& fonts = typesetter.fonts();
  const std::string file = in_letters_held(fonts, file_name_of(drawing.file));
  Sheet sheet;
  sheet.id = "outlines";
  sheet.title = "Outlines";
  sheet.anchor = "outlines";
  sheet.section = Section::cut;
  const auto small = static_cast<std::size_t>(std::count_if(drawing.outlines.begin(), drawing.outlines.end(), is_small));
  const std::size_t n = drawing.outlines.size() - small;
  std::string answer =
      whole_number(static_cast<std::int64_t>(n)) + (n == 1 ? " closed outline" : " closed outlines") + " in " + file + ".";
  if (small > 0) answer += " " + whole_number(static_cast<std::int64_t>(small)) + " more under 10 mm, not numbered.";
  sheet.answer = words(answer);
  // As high as leaves room for the table on the same page, while that is high enough to tell the pieces apart.
  const double words_take = 120 + typesetter.scale().row_height * static_cast<double>(n + 1);
  sheet.blocks.push_back({numbered(drawing, std::max(kLeastHigh, shape.bottom - shape.top - words_take))});
  sheet.blocks.push_back({Gap{10}});
  Table table;
  table.columns = {{words("No."), Column::Kind::count, 34, true},
                   {words("Write as its outline"), Column::Kind::words, 0},
                   {words("Name"), Column::Kind::words, 110},
                   {words("mm"), Column::Kind::words, 66},
                   {words("in"), Column::Kind::words, 84}};
  std::int64_t number = 0;
  for (std::size_t i = 0; i < drawing.outlines.size(); ++i) {
    const DrawnOutline& o = drawing.outlines[i];
    if (is_small(o)) continue;
    const std::string size = size_words(o.box);
    table.rows.push_back({Row::Kind::plain,
                          {{bold(whole_number(++number))},
                           {words(file + "#" + in_letters_held(fonts, pick_words(drawing, i)))},
                           {words(in_letters_held(fonts, o.title))},
                           {words(size.substr(0, size.size() - 3))},
                           {words(inches(o.box.width) + " x " + inches(o.box.height))}}});
  }
  sheet.blocks.push_back({std::move(table)});
  return sheet;
}

}  // namespace gownsheaf
