// The one table of every word a project file may hold. The checker reads a key only through its KeySpec; the JSON Schema,
// the key tables of docs/project-file.md and spelling hints come from it.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf {

enum class KeyKind {
  length,
  cloth_weight,
  mass,
  force,
  pressure,
  angle,
  ratio,
  count,
  number,
  percent,
  day,
  day_range,
  span,
  money,
  rate,
  fineness,
  text,
  yes_no,
  word,
  name,
  block,
  map,
  list,
  any_of_these,
  pairs  // `2 pairs`
};

struct KeySpec {
  std::string_view path = {};  // "pieces/*/finished width"; `*` stands for a list item or a map's own name
  KeyKind kind = KeyKind::text;
  KeyKind each = KeyKind::block;  // of a list or map: what each item of it is; words, limits and refers_to then mean the items
  std::optional<KeyKind> or_kind = {};  // a second kind that will do (`cord`: a name or a length)
  std::string_view one = {};            // of a list or map: what one item is called ("cloth")
  std::string_view alternatives = {};   // further accepted forms, in words for docs: "{ along, across }"
  bool required = false;
  // Keys of the same group in one item, of which exactly one is required; "" = none. A group that begins with `+` may
  // have several given; one that begins with `?` may have none.
  std::string_view group = {};
  std::string_view standing = {};          // default as text, or "" ; "~ …" = guessed, and from what
  char standing_label = 0;                 // a b c x of the default
  std::string_view least = {}, most = {};  // limits as written quantities, or characters of a text; "" = the kind's own
  std::string_view words = {};             // closed list, separated by | ; of another kind than word: words that will do as well
  std::string_view refers_to = {};         // "cloths", "pieces", "pleats", … for names; of a map: what its own names must be
  bool is_private = false;
  std::string_view agrees_with = {};  // key that must agree when both are given
  int first_needed = 1;               // 1: worked out now; 2, 3, … : known, noted as not worked out yet
  std::string_view meaning = {};      // one plain sentence, for docs and schema
};

const std::vector<KeySpec>& key_specs();         // in the maker's order
std::vector<std::string> key_words();            // the last word or words of every path, each once
const KeySpec* find_key(std::string_view path);  // exact path with `*`
// "closures/*/edge" -> "edge"
inline std::string_view last_part(std::string_view path) { return path.substr(path.rfind('/') + 1); }
const std::vector<const KeySpec*>& keys_below(std::string_view path);  // one level down
std::string json_schema();                                             // draft 2020-12, ordered, ends with a newline
std::string key_tables_markdown();                                     // the generated part of docs/project-file.md

}  // namespace gownsheaf
