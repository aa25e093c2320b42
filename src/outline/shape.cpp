// One shape of the drawing: drawn to flat lines, then kept as outline, open line or mark.
#include <algorithm>
#include <cmath>

#include "outline/marks.h"
#include "outline/numbers.h"
#include "outline/path_data.h"
#include "outline/walk.h"

namespace gownsheaf {
namespace {

constexpr double kSameMm = 1e-6;  // a last point this near the first closes a line

Point in_ticks(Spot mm) {
  return {Length::ticks(std::llround(mm.x * Length::kPerMm)), Length::ticks(std::llround(mm.y * Length::kPerMm))};
}

bool is_closed(const FlatLine& line) {
  const Spot a = line.spots.front(), b = line.spots.back();
  return line.closed || (line.spots.size() > 3 && std::fabs(a.x - b.x) <= kSameMm && std::fabs(a.y - b.y) <= kSameMm);
}

// Points that follow each other in one place count once.
Polygon points_of(const FlatLine& line, bool closed) {
  Polygon out;
  for (const Spot& spot : line.spots) {
    const Point p = in_ticks(spot);
    if (out.empty() || out.back() != p) out.push_back(p);
  }
  while (closed && out.size() > 1 && out.back() == out.front()) out.pop_back();
  return out;
}

using Written = std::pair<Point, Spot>;

// The shoelace sum of the region with each corner where it was written; a crossing's corner is as rounded.
double area_as_written(const Region& region, std::vector<Written> corners) {
  std::sort(corners.begin(), corners.end(), [](const Written& a, const Written& b) { return a.first < b.first; });
  const auto spot = [&](Point p) {
    const auto found = std::lower_bound(corners.begin(), corners.end(), p, [](const Written& w, Point q) { return w.first < q; });
    return found != corners.end() && found->first == p ? found->second : Spot{p.x.in_mm(), p.y.in_mm()};
  };
  double twice = 0;
  for (const Polygon& ring : region.rings) {
    const Spot origin = spot(ring.front());
    Spot before{};
    for (const Point& p : ring) {
      const Spot at{spot(p).x - origin.x, spot(p).y - origin.y};
      twice += before.x * at.y - at.x * before.y;
      before = at;
    }
  }
  return twice / 2;
}

}  // namespace

bool Walker::draw(pugi::xml_node node, std::string_view name, const Context& context, FlatPath& path) {
  const double w = context.width, h = context.height, diagonal = std::sqrt((w * w + h * h) / 2);
  std::optional<PathFault> fault;
  const char* written = "";
  if (name == "path") {
    written = node.attribute("d").value();
    fault = read_path(written, path);
  } else if (name == "polygon" || name == "polyline") {
    bool odd = false;
    written = node.attribute("points").value();
    fault = read_points(written, name == "polygon", path, odd);
    if (odd)
      warn("odd-coordinate", node, called(node) + " has an odd number of coordinates; the last was left out.",
           "look at this outline on the sheet");
  } else if (name == "line") {
    path.move({length(node, "x1", w), length(node, "y1", h)});
    path.line({length(node, "x2", w), length(node, "y2", h)});
  } else if (name == "circle") {
    const double r = length(node, "r", diagonal);
    add_ellipse(length(node, "cx", w), length(node, "cy", h), r, r, path);
  } else if (name == "ellipse") {
    const double rx = length(node, "rx", w, -1), ry = length(node, "ry", h, -1);  // auto: as the other
    add_ellipse(length(node, "cx", w), length(node, "cy", h), rx < 0 ? ry : rx, ry < 0 ? rx : ry, path);
  } else {
    const double rx = length(node, "rx", w, -1), ry = length(node, "ry", h, -1);
    add_rectangle(length(node, "x", w), length(node, "y", h), length(node, "width", w), length(node, "height", h),
                  rx < 0 ? ry : rx, ry < 0 ? rx : ry, path);
  }
  if (fault) {
    const std::string_view rest = std::string_view(written).substr(fault->at, 12);
    const bool entity = !rest.empty() && rest[0] == '&';
    fail(entity ? "drawing-entity" : "path-syntax", node,
         called(node) + (rest.empty() ? " breaks off."
                                      : " cannot be read at `" + printable(rest) + "`, character " +
                                            std::to_string(fault->at + 1) + " of its points."),
         entity ? "save as plain SVG, without entities" : "save the drawing again, as plain SVG");
  }
  if (path.too_far())
    fail("drawing-far", node, called(node) + " lies more than 10 km off the page, or its numbers are out of reach.",
         "what units is the drawing in?");
  if (path.too_many())
    fail("outline-long", node, called(node) + " has more than 50,000 points.", "simplify the line in the drawing program");
  return !failed_;
}

void Walker::shape(pugi::xml_node node, std::string_view name, const Context& context) {
  FlatPath path(context.to_mm);
  if (!draw(node, name, context, path)) return;
  for (const FlatLine& line : path.lines()) points_ += line.spots.size();
  if (points_ > kMostDrawingPoints)
    return fail("drawing-heavy", node, "The drawing has more than 300,000 points.",
                "simplify it, or save each piece in a drawing of its own");
  keep(node, path, context);
}

void Walker::keep(pugi::xml_node node, const FlatPath& path, const Context& context) {
  DrawnOutline outline{drawn_at(node), "", {}, context.rule, {}, {}, 0, {}};
  std::vector<Written> corners;
  bool flat = false;
  for (const FlatLine& line : path.lines()) {
    if (line.spots.empty()) continue;
    const bool closed = is_closed(line);
    Polygon points = points_of(line, closed);
    if (context.mark && *context.mark != MarkKind::name && points.size() >= 2)
      drawing_.marks.push_back({outline.drawn, *context.mark, points, closed, ""});
    if (!closed) {
      if (points.size() >= 2) drawing_.open_lines.push_back({outline.drawn, std::move(points)});
      continue;
    }
    if (context.mark) continue;
    bool encloses = points.size() >= 3;
    if (encloses) {
      const Resolved alone = resolve({points}, FillRule::nonzero);
      if (alone.refused)
        return fail("outline-tangled", node, called(node) + " crosses itself too often to be an outline.", "draw it anew");
      encloses = !alone.region.rings.empty();
    }
    if (!encloses) {
      flat = true;
      continue;
    }
    for (const Spot& spot : line.spots) corners.emplace_back(in_ticks(spot), spot);
    outline.lines.push_back(std::move(points));
  }
  if (outline.lines.empty()) {
    if (flat) warn("zero-area", node, called(node) + " is closed and encloses nothing; it was passed over.", "");
    return;
  }
  Resolved found = resolve(outline.lines, context.rule);
  if (found.refused)
    return fail("outline-tangled", node, called(node) + " crosses itself too often to be an outline.", "draw it anew");
  if (found.region.rings.empty()) return;
  outline.region = std::move(found.region);
  outline.crossings = std::move(found.crossings);
  outline.area_mm2 = area_as_written(outline.region, std::move(corners));
  Polygon all;
  for (const Polygon& line : outline.lines) all.insert(all.end(), line.begin(), line.end());
  outline.box = bounds(all);
  for (pugi::xml_node child = node.first_child(); child; child = child.next_sibling())
    if (tree_.name(child) == "title" && outline.title.empty()) outline.title = printable(all_text(child));
  const bool crosses = !outline.crossings.empty();
  if (crosses)
    warn("self-crossing", node, called(node) + " crosses or touches itself.",
         "look at it on the sheet; what it encloses by its fill rule is taken");
  if (drawing_.outlines.size() >= kMostOutlines)
    return fail("drawing-heavy", node, "The drawing holds more than 10,000 outlines.",
                "leave out its text, or save the pieces in a drawing of their own");
  drawing_.outlines.push_back(std::move(outline));
}

void Walker::words(pugi::xml_node node, const Context& context) {
  if (context.mark != MarkKind::name || !context.visible)
    return warn("text-ignored", node, "Text in the drawing was passed over.",
                "a piece's name: `<title>` in its path, or text of the class `name`");
  const Spot at = context.to_mm({length(node, "x", context.width), length(node, "y", context.height)});
  const double reach = kFarthest.in_mm();
  if (!(std::fabs(at.x) < reach) || !(std::fabs(at.y) < reach)) return;
  drawing_.marks.push_back({drawn_at(node), MarkKind::name, {in_ticks(at)}, false, printable(all_text(node))});
}

}  // namespace gownsheaf
