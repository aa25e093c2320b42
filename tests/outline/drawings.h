// Small drawings of our own.
#pragma once
#include <set>
#include <string>

#include "outline/outline.h"
#include "support/catch.h"

namespace drawings {

// A page of 300 x 200 mm whose units are mm.
inline std::string page(const std::string& inside) {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"300mm\" height=\"200mm\" viewBox=\"0 0 300 200\">\n" + inside +
         "\n</svg>\n";
}

struct Read {
  std::optional<gownsheaf::SvgDrawing> drawing;
  gownsheaf::Diagnostics diag;
  std::set<std::string> codes() const {
    std::set<std::string> out;
    for (const auto& d : diag.sorted()) out.insert(d.code);
    return out;
  }
};

inline Read read(const std::string& text) {
  Read r;
  r.drawing = gownsheaf::read_svg(text, "pieces.svg", r.diag);
  return r;
}

inline Read whole(const std::string& inside) {
  Read r = read(page(inside));
  REQUIRE(r.drawing.has_value());
  return r;
}

}  // namespace drawings
