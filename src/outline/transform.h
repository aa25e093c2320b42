// Maps of the plane as SVG writes them. Internal to outline.
#pragma once
#include <optional>
#include <string_view>

namespace gownsheaf {

struct Spot {
  double x = 0, y = 0;
};  // in user units or mm, before anything is rounded

// x' = a x + c y + e, y' = b x + d y + f, as SVG's matrix(a b c d e f).
struct Affine {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
  Spot operator()(Spot p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
};
Affine operator*(const Affine& outer, const Affine& inner);  // inner first
inline Affine moved_by(double x, double y) { return {1, 0, 0, 1, x, y}; }
inline Affine scaled_by(double x, double y) { return {x, 0, 0, y, 0, 0}; }

// Sine and cosine of degrees from sums and products alone, so that they are the same on every machine; within 1e-15.
struct SineCosine {
  double sine, cosine;
};
SineCosine of_degrees(double degrees);

// A list of matrix, translate, scale, rotate, skewX, skewY. Nothing when it cannot be read.
std::optional<Affine> read_transform(std::string_view text);

struct ViewBox {
  double x = 0, y = 0, width = 0, height = 0;
};
std::optional<ViewBox> read_view_box(std::string_view text);  // sizes above 0
// The map of a view box into a frame of the size given, by preserveAspectRatio ("" is xMidYMid meet).
Affine fit_view_box(const ViewBox& box, double width, double height, std::string_view aspect);

}  // namespace gownsheaf
