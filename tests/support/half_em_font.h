// A FontSet for sums done by hand: every letter is half an em wide in every face, so a line's width is
// letters * size / 2. Everything below U+FFFF is covered but control characters and one chosen letter.
#pragma once
#include <string>

#include "fonts/font_set.h"

namespace gownsheaf::testing {

class HalfEmFont : public FontSet {
 public:
  // `missing` is in no face; give 0 for none.
  explicit HalfEmFont(char32_t missing = 0) : missing_(missing) {}
  bool covers(Face, char32_t c) const override { return c >= 0x20 && c < 0xFFFF && c != missing_; }
  int advance(Face, char32_t) const override { return 500; }
  LineMetrics metrics(Face) const override { return {750, -250, 700, 500}; }
  std::string file(Face) const override { return ""; }
  std::string hash(Face) const override { return "half-em"; }

 private:
  char32_t missing_;
};

}  // namespace gownsheaf::testing
