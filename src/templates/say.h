// The texts of templates: words with `{…}` references between them.
//
//   {run} {cloth} {piece} {closure} {bone}   the item's own name, inside a `for each` of that kind
//   {run:count}             short for a figure of that item (pleats/RUN/count)
//   {skirt/joined round}    any figure by its whole key
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf {

struct SayPiece {
  std::string text;  // words, or what stands between the braces
  bool reference = false;
  int at = 0, length = 0;  // in characters from the start; of a reference with its braces
};
struct SayFault {
  std::string sentence;
  int at = 0, length = 1;
};
struct SayRead {
  std::vector<SayPiece> pieces;
  std::optional<SayFault> fault;  // a brace without its other half, nothing between them, one inside another
};
SayRead read_say(std::string_view text);

// A reference taken apart. `section` is that of figures/: "cloths", "pleats", "pieces", or the first part of a whole key.
struct SayReference {
  std::string item_word;  // "run", "cloth", "piece", "closure", "bone", or "" for a whole key
  std::string section;
  std::string quantity;  // "" when the item's own name is meant
};
SayReference read_reference(std::string_view reference);
// "pleats" for "run", "cloths" for "cloth", "pieces" for "piece", else "".
std::string_view section_of_item(std::string_view item_word);

}  // namespace gownsheaf
