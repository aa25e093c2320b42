// How the data files keys_*.cpp write one row of the key table.
#pragma once
#include <vector>

#include "check/key_spec.h"

namespace gownsheaf {

class Row {
 public:
  Row(std::string_view path, KeyKind kind) { spec_.path = path; spec_.kind = kind; }
  operator KeySpec() const { return spec_; }

  Row& must() { spec_.required = true; return *this; }
  Row& group(std::string_view g) { spec_.group = g; return *this; }
  Row& each(KeyKind kind, std::string_view one = {}) { spec_.each = kind; spec_.one = one; return *this; }
  Row& or_a(KeyKind kind) { spec_.or_kind = kind; return *this; }
  Row& form(std::string_view alternatives) { spec_.alternatives = alternatives; return *this; }
  Row& is(std::string_view standing, char label) { spec_.standing = standing; spec_.standing_label = label; return *this; }
  Row& guess(std::string_view from) { return is(from, 'c'); }
  Row& limits(std::string_view least, std::string_view most) { spec_.least = least; spec_.most = most; return *this; }
  Row& words(std::string_view list) { spec_.words = list; return *this; }
  Row& of(std::string_view section) { spec_.refers_to = section; return *this; }
  Row& secret() { spec_.is_private = true; return *this; }
  Row& agrees(std::string_view key) { spec_.agrees_with = key; return *this; }
  Row& since(int first_needed) { spec_.first_needed = first_needed; return *this; }
  Row& means(std::string_view sentence) { spec_.meaning = sentence; return *this; }

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
