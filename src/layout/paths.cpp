#include <algorithm>

#include "layout/marks.h"

namespace gownsheaf {

namespace {

PathStep step_to(PathStep::Kind kind, Point to) {
  PathStep step;
  step.kind = kind;
  step.to = to;
  return step;
}

}  // namespace

Path path_of(const Box& box) {
  const Point corner{box.x, box.y};
  return {step_to(PathStep::Kind::move, corner), step_to(PathStep::Kind::line, {box.right(), box.y}),
          step_to(PathStep::Kind::line, {box.right(), box.bottom()}), step_to(PathStep::Kind::line, {box.x, box.bottom()}),
          step_to(PathStep::Kind::close, corner)};
}

Path path_of_polygon(const Polygon& ring) {
  Path path;
  for (const Point& p : ring) path.push_back(step_to(path.empty() ? PathStep::Kind::move : PathStep::Kind::line, p));
  if (!path.empty()) path.push_back(step_to(PathStep::Kind::close, ring.front()));
  return path;
}

Path path_of(Point from, Point to) { return {step_to(PathStep::Kind::move, from), step_to(PathStep::Kind::line, to)}; }

Path circle(Point centre, Length radius) {
  // Four cubic curves; 4/3 × (√2 − 1) = 0.5522847 of the radius puts the middle of each on the circle.
  const Length reach = radius.times(5522847, 10000000);
  const auto at = [&](Length dx, Length dy) { return Point{centre.x + dx, centre.y + dy}; };
  const auto curve = [](Point a, Point b, Point to) {
    PathStep step;
    step.kind = PathStep::Kind::curve;
    step.a = a;
    step.b = b;
    step.to = to;
    return step;
  };
  const Length none;
  const Point right = at(radius, none), low = at(none, radius), left = at(-radius, none), high = at(none, -radius);
  return {step_to(PathStep::Kind::move, right),
          curve(at(radius, reach), at(reach, radius), low),
          curve(at(-reach, radius), at(-radius, reach), left),
          curve(at(-radius, -reach), at(-reach, -radius), high),
          curve(at(reach, -radius), at(radius, -reach), right),
          step_to(PathStep::Kind::close, right)};
}

Mark stroke(Path path, double weight, std::vector<int> dash) {
  StrokeMark mark;
  mark.path = std::move(path);
  mark.weight = pt(weight);
  mark.dash = std::move(dash);
  return {mark};
}

Mark level_line(Length from_x, Length to_x, Length y, double weight) {
  return stroke(path_of(Point{from_x, y}, Point{to_x, y}), weight);
}

Mark box_outline(const Box& box, double weight, std::vector<int> dash) {
  const Length half = pt(weight / 2);
  const Box inner{box.x + half, box.y + half, box.width - 2 * half, box.height - 2 * half};
  return stroke(path_of(inner), weight, std::move(dash));
}

Mark fill(Path path, Ink ink) { return {FillMark{std::move(path), ink}}; }

Point moved(Point p, Length dx, Length dy) { return {p.x + dx, p.y + dy}; }

Path moved(Path path, Length dx, Length dy) {
  for (PathStep& step : path) {
    step.a = moved(step.a, dx, dy);
    step.b = moved(step.b, dx, dy);
    step.to = moved(step.to, dx, dy);
  }
  return path;
}

namespace {

struct Mover {
  Length dx, dy;
  Mark operator()(TextMark mark) const { return at_point(mark); }
  Mark operator()(AnchorMark mark) const { return at_point(mark); }
  Mark operator()(StrokeMark mark) const { return of_path(mark); }
  Mark operator()(FillMark mark) const { return of_path(mark); }
  Mark operator()(LinkMark mark) const {
    mark.at.x += dx;
    mark.at.y += dy;
    return {std::move(mark)};
  }
  Mark operator()(const ClipMark& mark) const {
    ClipMark clip{moved(mark.path, dx, dy), {}};
    append_moved(clip.inside, mark.inside, dx, dy);
    return {std::move(clip)};
  }
  template <class M>
  Mark at_point(M& mark) const {
    mark.at = moved(mark.at, dx, dy);
    return {std::move(mark)};
  }
  template <class M>
  Mark of_path(M& mark) const {
    mark.path = moved(std::move(mark.path), dx, dy);
    return {std::move(mark)};
  }
};

struct MiddleY {
  Length operator()(const TextMark& mark) const { return mark.at.y; }
  Length operator()(const AnchorMark& mark) const { return mark.at.y; }
  Length operator()(const LinkMark& mark) const { return mark.at.y + mark.at.height.times(1, 2); }
  Length operator()(const StrokeMark& mark) const { return of_path(mark.path); }
  Length operator()(const FillMark& mark) const { return of_path(mark.path); }
  Length operator()(const ClipMark& mark) const { return of_path(mark.path); }
  Length of_path(const Path& path) const {
    const Box box = bounds(path);
    return box.y + box.height.times(1, 2);
  }
};

}  // namespace

Mark moved(const Mark& mark, Length dx, Length dy) { return std::visit(Mover{dx, dy}, mark.what); }

void append_moved(std::vector<Mark>& to, const std::vector<Mark>& marks, Length dx, Length dy) {
  for (const Mark& mark : marks) to.push_back(moved(mark, dx, dy));
}

Box bounds(const Path& path) {
  bool first = true;
  Point least, most;
  const auto take = [&](Point p) {
    least = first ? p : Point{std::min(least.x, p.x), std::min(least.y, p.y)};
    most = first ? p : Point{std::max(most.x, p.x), std::max(most.y, p.y)};
    first = false;
  };
  for (const PathStep& step : path) {
    if (step.kind == PathStep::Kind::close) continue;
    if (step.kind == PathStep::Kind::curve) {
      take(step.a);
      take(step.b);
    }
    take(step.to);
  }
  return {least.x, least.y, most.x - least.x, most.y - least.y};
}

Length middle_y(const Mark& mark) { return std::visit(MiddleY{}, mark.what); }

}  // namespace gownsheaf
