// What is different between an older set of figures and the one of today: for the sheet "what changed" and for the bars
// in the margins of the others.
#pragma once
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "figures/figures.h"

namespace gownsheaf {

// The figures that --since names, whether of an older project file or of an older figures.json.
struct OlderFigures {
  Figures figures;
  bool private_known = true;  // false: written for a set that leaves private figures out, so those are not compared
};

struct Change {
  enum class Kind { altered, is_new, gone } kind = Kind::altered;
  std::string key;  // by today's names
  std::optional<Figure> was, is;
  Action action = Action::none;
  bool is_private = false;  // was or is
};

// A piece whose cutting is marked done and that no longer is what is wanted.
struct CutAlready {
  enum class Kind { too_small, too_large, wanted_more, wanted_fewer, unused } kind = Kind::too_small;
  std::string piece, cloth;
  std::string sentence;    // "Bodice front is cut from slate wool, and 1/2 in too narrow."
  std::string what_to_do;  // "add a strip at the side, or cut again"
  bool is_private = false;
  std::string step;  // the step that cut it, as `done` names it: "cut-pieces@slate wool", "cut-pieces"
};

// A step that is marked done and whose figures are others now.
struct StepAgain {
  std::string id, because;
};

struct Changes {
  std::vector<Change> all;  // in the order of today's figures, then those that are no more in their old order
  std::vector<CutAlready> cut;
  std::vector<StepAgain> again;
  bool private_compared = true;
  std::set<std::string, std::less<>> marked;  // keys of today that are altered or new
  bool touches(std::string_view key) const { return marked.find(key) != marked.end(); }
};

}  // namespace gownsheaf
