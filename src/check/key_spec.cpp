#include "check/key_spec.h"

#include <algorithm>
#include <deque>
#include <map>

#include "check/key_row.h"

namespace gownsheaf {

namespace {

std::string_view above(std::string_view path) {
  const auto cut = path.rfind('/');
  return cut == std::string_view::npos ? std::string_view{} : path.substr(0, cut);
}

// Every named item may hold a note and its older name, after the item's own keys.
void add_note_and_was(std::vector<KeySpec>& keys) {
  static std::deque<std::string> paths;  // a KeySpec looks into them; built once
  struct Open {
    std::string base;
    bool items;
  };
  std::vector<Open> open;
  std::vector<KeySpec> with;
  with.reserve(2 * keys.size());
  const auto close = [&] {
    const auto [base, items] = open.back();
    open.pop_back();
    with.push_back(KeyRow(paths.emplace_back(base + "note"), KeyKind::text).means("Printed beside it."));
    if (items)
      with.push_back(
          KeyRow(paths.emplace_back(base + "was"), KeyKind::text).means("Its older name, so that its figures keep theirs."));
  };
  for (const KeySpec& spec : keys) {
    while (!open.empty() && !spec.path.starts_with(open.back().base)) close();
    with.push_back(spec);
    const bool items = (spec.kind == KeyKind::list || spec.kind == KeyKind::map) && spec.each == KeyKind::block;
    if (items || (spec.kind == KeyKind::block && above(spec.path).empty()))
      open.push_back({std::string(spec.path) + (items ? "/*/" : "/"), items});
  }
  while (!open.empty()) close();
  keys = std::move(with);
}

std::vector<KeySpec> assemble() {
  std::vector<KeySpec> keys;
  keys.reserve(1000);
  add_head_keys(keys);
  add_rules_keys(keys);
  add_body_keys(keys);
  add_cloth_keys(keys);
  add_notion_keys(keys);
  add_piece_keys(keys);
  add_seam_keys(keys);
  add_pleat_keys(keys);
  add_closing_keys(keys);
  add_bone_keys(keys);
  add_strain_keys(keys);
  add_bias_keys(keys);
  add_skirt_keys(keys);
  add_trim_keys(keys);
  add_work_keys(keys);
  add_print_keys(keys);
  add_note_and_was(keys);
  // What stands below a key is worked out no sooner than the key itself, and is private with it.
  std::map<std::string_view, const KeySpec*> seen;
  for (KeySpec& spec : keys) {
    for (std::string_view up = above(spec.path); !up.empty(); up = above(up)) {
      const auto it = seen.find(up);
      if (it == seen.end()) continue;
      spec.first_needed = std::max(spec.first_needed, it->second->first_needed);
      spec.is_private = spec.is_private || (it->second->is_private && up != "measures" && spec.path != "measures/taken/over");
      break;
    }
    seen.emplace(spec.path, &spec);
  }
  return keys;
}

struct Index {
  std::map<std::string_view, const KeySpec*> by_path;
  std::map<std::string_view, std::vector<const KeySpec*>> below;
};

const Index& index() {
  static const Index made = [] {
    Index i;
    for (const KeySpec& spec : key_specs()) {
      i.by_path.emplace(spec.path, &spec);
      i.below[above(spec.path)].push_back(&spec);
    }
    return i;
  }();
  return made;
}

}  // namespace

const std::vector<KeySpec>& key_specs() {
  static const std::vector<KeySpec> keys = assemble();
  return keys;
}

std::vector<std::string> key_words() {
  std::vector<std::string> words;
  for (const KeySpec& spec : key_specs()) {
    const std::string_view last = spec.path.substr(spec.path.rfind('/') + 1);  // npos + 1 is the whole path
    if (last != "*") words.emplace_back(last);
  }
  std::sort(words.begin(), words.end());
  words.erase(std::unique(words.begin(), words.end()), words.end());
  return words;
}

const KeySpec* find_key(std::string_view path) {
  const auto it = index().by_path.find(path);
  return it == index().by_path.end() ? nullptr : it->second;
}

const std::vector<const KeySpec*>& keys_below(std::string_view path) {
  static const std::vector<const KeySpec*> none;
  const auto it = index().below.find(path);
  return it == index().below.end() ? none : it->second;
}

}  // namespace gownsheaf
