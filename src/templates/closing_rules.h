// How a closing edge is built: by the band of its strength, by what it closes with, and by how the skirt is carried.
// Read from packet-templates/closing-rules.yaml.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "units/length.h"

namespace gownsheaf {

struct ClosingBand {
  std::string name, words, edge, bones, source;
  Length pitch;
  int rows = 1;
  char label = 'c';
};
struct CarriedRule {
  std::string hangs_from, say, source;
  char label = 'c';
};
struct ClosingNote {
  std::string fasten;      // word of a closing, or "any"
  std::string from;        // the least band it is printed from, or ""
  std::string about, say;  // say: may hold {closure:…}
  std::string plainly;     // said where one of those figures is not known
  std::string source;
  char label = 'c';
};
struct ClosingInspection {
  std::string say;
  std::vector<std::string> fasten;  // words of closings it is looked for at; none: at any
};
struct ClosingRules {
  std::vector<ClosingBand> bands;    // R0 to R4
  std::vector<CarriedRule> carried;  // best first
  std::vector<ClosingNote> notes;
  std::vector<ClosingInspection> inspect;  // what to look for after wearing
  const ClosingBand* band(std::string_view name) const;
};

}  // namespace gownsheaf
