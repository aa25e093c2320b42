#include "outline/transform.h"

#include <algorithm>
#include <cmath>

#include "outline/numbers.h"

namespace gownsheaf {

Affine operator*(const Affine& o, const Affine& i) {
  return {o.a * i.a + o.c * i.b, o.b * i.a + o.d * i.b,       o.a * i.c + o.c * i.d,
          o.b * i.c + o.d * i.d, o.a * i.e + o.c * i.f + o.e, o.b * i.e + o.d * i.f + o.f};
}

SineCosine of_degrees(double degrees) {
  double rest = std::fmod(degrees, 360.0);  // exact
  if (rest < 0) rest += 360.0;
  const int quarter = static_cast<int>((rest + 45.0) / 90.0);
  const double x = (rest - 90.0 * quarter) * (3.14159265358979323846 / 180.0);  // within an eighth of a turn
  const double square = x * x;
  double sine = 0, cosine = 0;
  for (int n = 21; n >= 1; n -= 2) sine = 1 - square / ((n + 1) * (n + 2)) * sine;  // Taylor, from the last term
  for (int n = 20; n >= 0; n -= 2) cosine = 1 - square / ((n + 1) * (n + 2)) * cosine;
  sine *= x;
  switch (quarter % 4) {
    case 0: return {sine, cosine};
    case 1: return {cosine, -sine};
    case 2: return {-sine, -cosine};
    default: return {-cosine, sine};
  }
}

namespace {

std::optional<Affine> one_transform(std::string_view word, const double* v, int n) {
  if (word == "matrix" && n == 6) return Affine{v[0], v[1], v[2], v[3], v[4], v[5]};
  if (word == "translate" && (n == 1 || n == 2)) return moved_by(v[0], n == 2 ? v[1] : 0);
  if (word == "scale" && (n == 1 || n == 2)) return scaled_by(v[0], n == 2 ? v[1] : v[0]);
  if (word == "rotate" && (n == 1 || n == 3)) {
    const SineCosine t = of_degrees(v[0]);
    const Affine turn{t.cosine, t.sine, -t.sine, t.cosine, 0, 0};
    return n == 1 ? turn : moved_by(v[1], v[2]) * turn * moved_by(-v[1], -v[2]);
  }
  if ((word == "skewX" || word == "skewY") && n == 1) {
    const SineCosine t = of_degrees(v[0]);
    if (t.cosine == 0) return {};
    const double slope = t.sine / t.cosine;
    return word == "skewX" ? Affine{1, 0, slope, 1, 0, 0} : Affine{1, slope, 0, 1, 0, 0};
  }
  return {};
}

}  // namespace

std::optional<Affine> read_transform(std::string_view text) {
  Affine all;
  NumberScanner scan(text);
  for (scan.skip_comma(); !scan.done(); scan.skip_comma()) {
    const std::string_view word = scan.letters();
    scan.skip_blanks();
    if (scan.take() != '(') return {};
    double v[6];
    int n = 0;
    for (scan.skip_blanks(); scan.peek() != ')'; scan.skip_comma()) {
      const std::optional<double> number = n < 6 ? scan.number() : std::nullopt;
      if (!number) return {};
      v[n++] = *number;
    }
    scan.take();
    const std::optional<Affine> one = one_transform(word, v, n);
    if (!one) return {};
    all = all * *one;
  }
  return all;
}

std::optional<ViewBox> read_view_box(std::string_view text) {
  NumberScanner scan(text);
  double v[4];
  scan.skip_blanks();
  for (double& value : v) {
    const std::optional<double> number = scan.number();
    if (!number) return {};
    value = *number;
    scan.skip_comma();
  }
  if (!scan.done() || !(v[2] > 0) || !(v[3] > 0)) return {};
  return ViewBox{v[0], v[1], v[2], v[3]};
}

Affine fit_view_box(const ViewBox& box, double width, double height, std::string_view aspect) {
  double sx = width / box.width, sy = height / box.height;
  double along_x = 0.5, along_y = 0.5;
  if (aspect.find("none") == std::string_view::npos) {
    const bool slice = aspect.find("slice") != std::string_view::npos;
    sx = sy = slice ? std::max(sx, sy) : std::min(sx, sy);
    if (aspect.find("xMin") != std::string_view::npos) along_x = 0;
    if (aspect.find("xMax") != std::string_view::npos) along_x = 1;
    if (aspect.find("YMin") != std::string_view::npos) along_y = 0;
    if (aspect.find("YMax") != std::string_view::npos) along_y = 1;
  }
  // Taken to the box's corner first: a corner ten million units out would cost digits.
  return moved_by((width - box.width * sx) * along_x, (height - box.height * sy) * along_y) * scaled_by(sx, sy) *
         moved_by(-box.x, -box.y);
}

}  // namespace gownsheaf
