// The walk over a whole project file by the key table: unknown and misplaced keys, kinds, limits, closed words, names and
// what they refer to, required keys. What only one section can know is checked in that section's own file.
#pragma once
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "check/key_spec.h"
#include "check/names.h"
#include "check/reading.h"
#include "diagnostics/diagnostics.h"
#include "read/entry.h"

namespace gownsheaf {

struct UnitsSeen {
  int inches = 0, centimetres = 0;  // lengths written in inches, feet, yards, nails; in mm, cm, m
  bool inches_first = true;         // of the first in the file
};

class KeyCheck {
 public:
  KeyCheck(const KnownNames& names, Diagnostics& diag) : names_(names), diag_(diag) {}

  void whole_file(const Entry& root);
  const UnitsSeen& units() const { return units_; }
  const std::vector<std::pair<std::string, SourceSpan>>& to_measure() const { return to_measure_; }

 private:
  struct Spot {          // where the walk stands
    std::string path;    // in the table: "cloths/*"
    std::string shown;   // in the file: "cloths/slate wool"
    bool noted = false;  // below a key that is said not to be worked out yet
  };

  void block(const Entry& entry, const Spot& spot);
  void keys_of_block(const Entry& entry, const Spot& spot);
  void unknown_key(const Entry& child, const Spot& spot);
  void required_keys(const Entry& entry, const Spot& spot);
  bool is_of_another_list(const Entry& item, const KeySpec& spec);
  std::string how_to_write(const KeySpec& spec, const std::string& key) const;
  void value(const Entry& entry, const KeySpec& spec, std::string_view key, const Spot& spot);
  void list(const Entry& entry, const KeySpec& spec, std::string_view key, const Spot& spot);
  void map(const Entry& entry, const KeySpec& spec, const Spot& spot);
  void one_item(const Entry& entry, const KeySpec& spec, std::string_view key, const Spot& spot);
  void text(const Entry& entry, const KeySpec& spec, KeyKind kind, std::string_view key, const Spot& spot);
  void not_a_block(const Entry& entry, const KeySpec& spec, std::string_view key);
  void not_a_word(const Entry& entry, const KeySpec& spec, std::string_view key);
  void own_name(std::string_view written, const SourceSpan& at, bool quoted, std::string_view path);
  void map_name(const Entry& item, const KeySpec& spec);
  void reference(const Entry& entry, const KeySpec& spec);
  void edge_of_piece(const Entry& entry);
  void step_reference(std::string_view written, const SourceSpan& at);
  void unknown_name(const SourceSpan& at, std::string_view written, std::string_view sections);
  void no_value(const Entry& entry, const KeySpec& spec, std::string_view key);
  void not_worked_out(const KeySpec& spec, const SourceSpan& at, const std::string& sentence);
  void said_twice(const std::vector<std::pair<std::string, SourceSpan>>& named, std::string_view one);
  void report(std::string code, Severity severity, const SourceSpan& at, std::string sentence, std::string hint = "",
              std::vector<SourceSpan> also = {});

  const KnownNames& names_;
  Diagnostics& diag_;
  UnitsSeen units_;
  std::vector<std::pair<std::string, SourceSpan>> to_measure_;
  std::set<std::string, std::less<>> noted_;
  std::string section_, item_;  // of the message that is being written
  bool private_ = false;
};

// Words for messages.
std::string noun_of(std::string_view path);       // "cloths/*" -> "a cloth", "skirt/hem" -> "`hem`", "" -> "the project file"
std::string with_article(std::string_view noun);  // "edge" -> "an edge"
std::string listed(const std::vector<std::string>& words, std::string_view last = "and", std::size_t most = 12);
std::string ticked(std::string_view words);                 // `words`
std::string sentence_case(std::string words);               // "piece front" -> "Piece front"
std::vector<std::string> key_names(std::string_view path);  // last parts of the keys below, without `*`
std::string number_word(std::size_t n);                     // "two"
// The block as it may be meant, with what was written as the value of its first word: `{ kind: dress linen, … }`.
std::string block_with(const Entry& written, std::string_view path);
std::string name_in_list(const Entry& list);    // `- slate wool: { … }` where no dash is wanted: "slate wool", or "NAME"
std::string name_in_block(const Entry& block);  // `front: { … }` where a dash is wanted: "front", or "…"
// An unknown word of this block is probably meant as `key`: it is not missing besides.
bool is_misspelt_in(const Entry& block, const std::string& path, std::string_view key);

}  // namespace gownsheaf
