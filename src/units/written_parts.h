// The grammar that all written quantities share: an optional minus, then parts, each a number and the words after it
// (`2 yd 6 in` is two parts). What the words mean is for each reader to say. Internal to units.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "units/characters.h"
#include "units/exact.h"
#include "units/read.h"

namespace gownsheaf::written {

// One written quantity under its key, with the quotations that sentences need.
struct Written {
  Characters chars;
  std::string key;
  std::string form = "a number, then its unit: `13 1/2 in`";  // the hint where the text is nothing like a quantity
  Written(std::string_view text, std::string_view what);
  std::string alone() const;     // `36`
  std::string with_key() const;  // `bust: 36`
  // The text without its outer spaces, shortened when it is long.
  std::string text() const;
};

struct Word {
  std::string text;  // lower case; "/" for a slash, "%" for the percent sign, "yd2" for yd² and yd^2
  int at = 0, end = 0;
};

struct Part {
  Exact number;
  bool whole_number = false;  // digits only
  std::string typed;          // the number as it was written
  int at = 0, end = 0;
  std::vector<Word> words;
};

struct Parts {
  bool negative = false;
  std::vector<Part> parts;  // never empty
};

Misread fault(std::string code, std::string sentence, std::string hint, int at, int end);
ReadResult<Parts> read_parts(const Written& written);

// The number at chars[i], which is a digit, a ready-made fraction, or a point with a digit after it.
// Moves i past it; sets whole_number and typed of the part.
ReadResult<Part> read_number_at(const Written& written, int& i);

// `x` with the backticks of a message.
std::string quoted(std::string_view text);

}  // namespace gownsheaf::written
