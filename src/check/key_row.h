// How the data files keys_*.cpp write one row of the key table.
#pragma once
#include <vector>

#include "check/key_spec.h"

namespace gownsheaf {

class KeyRow {
 public:
  KeyRow(std::string_view path, KeyKind kind) {
    spec_.path = path;
    spec_.kind = kind;
  }
  operator KeySpec() const { return spec_; }

  KeyRow& must() {
    spec_.required = true;
    return *this;
  }
  KeyRow& group(std::string_view g) {
    spec_.group = g;
    return *this;
  }
  KeyRow& each(KeyKind kind, std::string_view one = {}) {
    spec_.each = kind;
    spec_.one = one;
    return *this;
  }
  KeyRow& or_a(KeyKind kind) {
    spec_.or_kind = kind;
    return *this;
  }
  KeyRow& form(std::string_view alternatives) {
    spec_.alternatives = alternatives;
    return *this;
  }
  KeyRow& is(std::string_view standing, char label) {
    spec_.standing = standing;
    spec_.standing_label = label;
    return *this;
  }
  KeyRow& guess(std::string_view from) { return is(from, 'c'); }
  KeyRow& limits(std::string_view least, std::string_view most) {
    spec_.least = least;
    spec_.most = most;
    return *this;
  }
  KeyRow& words(std::string_view list) {
    spec_.words = list;
    return *this;
  }
  KeyRow& of(std::string_view section) {
    spec_.refers_to = section;
    return *this;
  }
  KeyRow& secret() {
    spec_.is_private = true;
    return *this;
  }
  KeyRow& agrees(std::string_view key) {
    spec_.agrees_with = key;
    return *this;
  }
  KeyRow& since(int first_needed) {
    spec_.first_needed = first_needed;
    return *this;
  }
  KeyRow& means(std::string_view sentence) {
    spec_.meaning = sentence;
    return *this;
  }

 private:
  KeySpec spec_;
};

inline constexpr int kLater = 9;  // known, and no piece of work has taken it up

// Each file adds its rows in the maker's order.
void add_head_keys(std::vector<KeySpec>& keys);
void add_rules_keys(std::vector<KeySpec>& keys);
void add_body_keys(std::vector<KeySpec>& keys);
void add_cloth_keys(std::vector<KeySpec>& keys);
void add_notion_keys(std::vector<KeySpec>& keys);
void add_piece_keys(std::vector<KeySpec>& keys);
void add_seam_keys(std::vector<KeySpec>& keys);
void add_pleat_keys(std::vector<KeySpec>& keys);
void add_closing_keys(std::vector<KeySpec>& keys);
void add_bone_keys(std::vector<KeySpec>& keys);
void add_strain_keys(std::vector<KeySpec>& keys);
void add_bias_keys(std::vector<KeySpec>& keys);
void add_skirt_keys(std::vector<KeySpec>& keys);
void add_trim_keys(std::vector<KeySpec>& keys);
void add_work_keys(std::vector<KeySpec>& keys);
void add_print_keys(std::vector<KeySpec>& keys);

}  // namespace gownsheaf
