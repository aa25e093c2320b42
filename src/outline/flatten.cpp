#include "outline/flatten.h"

#include <algorithm>
#include <cmath>

#include "geometry/region.h"
#include "outline/outline.h"

namespace gownsheaf {
namespace {

Spot between(Spot a, Spot b, double t) { return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t}; }
double length(double x, double y) { return std::sqrt(x * x + y * y); }
// How far b is from the middle of a and c, doubled: the second difference.
double bow(Spot a, Spot b, Spot c) { return length(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y); }

// Chords enough that none is further than kFlatMm from a curve of degree n whose greatest second difference is `most`
// (G. Wang, The subdivision method for finding the intersection between two Bezier curves, 1984: n (n - 1) / 8 of it).
int chords(double most, double share) {
  const double wanted = std::ceil(std::sqrt(share * most / kFlatMm));
  return wanted <= 1 || std::isnan(wanted) ? 1 : static_cast<int>(std::min(wanted, double(kMostOutlinePoints) + 2));
}

}  // namespace

void FlatPath::add(Spot mm) {
  if (too_many_ || too_far_) return;
  const double reach = kFarthest.in_mm();
  if (!(std::fabs(mm.x) < reach) || !(std::fabs(mm.y) < reach)) {
    too_far_ = true;
    return;
  }
  if (++count_ > kMostOutlinePoints) {
    too_many_ = true;
    return;
  }
  lines_.back().spots.push_back(mm);
}

void FlatPath::move(Spot to) {
  at_ = start_ = to;
  open_ = false;  // begun by the first line drawn
}

void FlatPath::begin() {
  if (open_) return;
  lines_.push_back({});
  add(to_mm_(at_));
  open_ = true;
}

void FlatPath::line(Spot to) {
  begin();
  add(to_mm_(to));
  at_ = to;
}

void FlatPath::quadratic(Spot control, Spot to) {
  begin();
  const Spot a = to_mm_(at_), b = to_mm_(control), c = to_mm_(to);
  const int n = chords(bow(a, b, c), 0.25);
  for (int i = 1; i < n && !too_many_ && !too_far_; ++i) {
    const double t = double(i) / n;
    add(between(between(a, b, t), between(b, c, t), t));
  }
  add(c);
  at_ = to;
}

void FlatPath::cubic(Spot control, Spot control2, Spot to) {
  begin();
  const Spot a = to_mm_(at_), b = to_mm_(control), c = to_mm_(control2), d = to_mm_(to);
  const int n = chords(std::max(bow(a, b, c), bow(b, c, d)), 0.75);
  for (int i = 1; i < n && !too_many_ && !too_far_; ++i) {
    const double t = double(i) / n;
    const Spot ab = between(a, b, t), bc = between(b, c, t), cd = between(c, d, t);
    add(between(between(ab, bc, t), between(bc, cd, t), t));
  }
  add(d);
  at_ = to;
}

// The part of the unit circle from u to v, halved until each chord is close enough; only roots, no angles.
void FlatPath::bend(const Affine& from_circle, Spot u, Spot v, bool sweep, int depth) {
  if (too_many_ || too_far_) return;
  const double hand = sweep ? 1 : -1;
  const double mx = hand * (v.y - u.y), my = -hand * (v.x - u.x), size = length(mx, my);
  if (size > 0) {
    const Spot middle{mx / size, my / size};
    const bool over_half = hand * (u.x * v.y - u.y * v.x) < 0;
    const Spot chord = from_circle(between(u, v, 0.5)), curve = from_circle(middle);
    // Halving once more quarters the distance; one more is made than the chord's own distance asks for, as an ellipse
    // may be further off beside its middle.
    const double off = length(curve.x - chord.x, curve.y - chord.y);
    if (depth < 24 && (over_half || depth < 2 || off > kFlatMm * 0.9)) {
      bend(from_circle, u, middle, sweep, depth + 1);
      bend(from_circle, middle, v, sweep, depth + 1);
      return;
    }
  }
  add(from_circle(v));
}

void FlatPath::arc(double rx, double ry, double degrees, bool large, bool sweep, Spot to) {
  rx = std::fabs(rx);
  ry = std::fabs(ry);
  if (at_.x == to.x && at_.y == to.y) return;
  if (rx == 0 || ry == 0) return line(to);
  const SineCosine turn = of_degrees(degrees);
  const double dx = (at_.x - to.x) / 2, dy = (at_.y - to.y) / 2;
  const double x1 = (turn.cosine * dx + turn.sine * dy) / rx, y1 = (-turn.sine * dx + turn.cosine * dy) / ry;
  const double grown = x1 * x1 + y1 * y1;  // on the circle of radius 1
  if (!std::isfinite(grown) || grown == 0) return line(to);
  double cx = 0, cy = 0, scale = 1;
  if (grown > 1) {
    scale = std::sqrt(grown);
  } else {
    const double off = std::sqrt(std::max(0.0, 1 - grown) / grown) * (large == sweep ? -1 : 1);
    cx = off * y1;
    cy = -off * x1;
  }
  const auto on_circle = [&](double x, double y) {
    const double size = length(x, y);
    return Spot{x / size, y / size};
  };
  const Spot u = on_circle(x1 - cx, y1 - cy), v = on_circle(-x1 - cx, -y1 - cy);
  const Affine ellipse = Affine{turn.cosine, turn.sine, -turn.sine, turn.cosine, 0, 0} * scaled_by(rx * scale, ry * scale);
  const Spot centre = ellipse({cx / scale, cy / scale});
  const Affine whole = moved_by((at_.x + to.x) / 2 + centre.x, (at_.y + to.y) / 2 + centre.y) * ellipse;
  begin();
  bend(to_mm_ * whole, u, v, sweep, 0);
  if (!lines_.back().spots.empty() && !too_many_ && !too_far_) lines_.back().spots.back() = to_mm_(to);  // exactly
  at_ = to;
}

void FlatPath::close() {
  if (open_) lines_.back().closed = true;
  open_ = false;
  at_ = start_;
}

}  // namespace gownsheaf
