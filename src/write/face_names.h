// One word for a face, in listings and in sentences.
#pragma once
#include <string_view>

#include "fonts/font_set.h"

namespace gownsheaf {

constexpr std::string_view name_of(Face face) {
  switch (face) {
    case Face::regular: return "regular";
    case Face::bold: return "bold";
    case Face::condensed: return "condensed";
    case Face::condensed_bold: return "condensed-bold";
    case Face::fallback: return "fallback";
  }
  return "unknown";
}

}  // namespace gownsheaf
