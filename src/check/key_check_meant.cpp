// What may be meant: hints for keys that are missing, misspelt or in the wrong shape.
#include <algorithm>

#include "check/key_check.h"
#include "unicode/utf8.h"

namespace gownsheaf {

std::string block_with(const Entry& written, std::string_view path) {
  const auto& keys = keys_below(path);
  const auto fits = [&](const KeySpec& k) {
    if (k.kind == KeyKind::word) return one_of_words(k.words, written.text);
    return k.kind == KeyKind::text || (k.kind == KeyKind::name && k.refers_to.empty());
  };
  if (!keys.empty() && written.kind == Entry::Kind::text && !written.text.empty() && fits(*keys.front()))
    return "{ " + std::string(last_part(keys.front()->path)) + ": " + written.text + (keys.size() > 1 ? ", … }" : " }");
  std::string words;
  for (std::size_t i = 0; i < keys.size() && i < 3; ++i) words += std::string(last_part(keys[i]->path)) + ": …, ";
  return "{ " + words + "… }";
}

std::string name_in_list(const Entry& list) {
  const bool named =
      !list.children.empty() && list.children.front().kind == Entry::Kind::block && list.children.front().children.size() == 1;
  return named ? list.children.front().children.front().key : "NAME";
}

std::string name_in_block(const Entry& block) {
  const bool named = !block.children.empty() && block.children.front().kind == Entry::Kind::block;
  return named ? block.children.front().key : "…";
}

// `- { run: sides, … }` among the pieces: said once, instead of each of its keys being out of place.
bool KeyCheck::is_of_another_list(const Entry& item, const KeySpec& spec) {
  const std::string_view naming = naming_key(spec.path);
  if (naming.empty() || item.kind != Entry::Kind::block || item.children.empty() || item.find(naming) != nullptr) return false;
  const Entry& first = item.children.front();
  if (find_key(std::string(spec.path) + "/*/" + first.key) != nullptr) return false;
  for (const KeySpec& other : key_specs()) {
    if (other.kind != KeyKind::list || other.path == spec.path || naming_key(other.path) != first.key) continue;
    const std::string one = with_article(other.one), section = ticked(last_part(other.path));
    report("wrong-place", Severity::error, first.key_at,
           ticked(first.key) + " begins " + one + "; here each item is " + with_article(spec.one) + ".",
           "move the whole item under " + section + ", or begin it " + ticked("- " + std::string(naming) + ": …"));
    return true;
  }
  return false;
}

bool is_misspelt_in(const Entry& block, const std::string& path, std::string_view key) {
  const std::vector<std::string> keys = key_names(path);
  return std::any_of(block.children.begin(), block.children.end(), [&](const Entry& child) {
    return std::find(keys.begin(), keys.end(), child.key) == keys.end() && did_you_mean(child.key, keys) == key;
  });
}

// A line that may be typed as it stands, where there is one; else what it takes.
std::string KeyCheck::how_to_write(const KeySpec& spec, const std::string& key) const {
  const auto say = [&](const std::string& value) { return ticked(key + ": " + value) + ", say"; };
  const bool many = spec.kind == KeyKind::list || spec.kind == KeyKind::map;
  const KeyKind kind = many && spec.each != KeyKind::block ? spec.each : spec.kind;
  if (key == "gownsheaf") return "write " + ticked("gownsheaf: 1");
  if (!spec.words.empty() && kind == KeyKind::word)
    return "write " + ticked(key + ":") + " and one of " + listed(parted(spec.words, '|'), "or");
  if (kind == KeyKind::length) return say(units_.centimetres > units_.inches ? "30 cm" : "12 in");
  if (kind == KeyKind::day) return say("2027-06-14");
  if (kind == KeyKind::count || kind == KeyKind::number) return say("2");
  if (kind == KeyKind::name && !spec.refers_to.empty()) {
    const std::vector<std::string> names = names_.all(spec.refers_to);
    if (names.size() == 1) return "write " + ticked(key + ": " + names.front());
    if (!names.empty()) return "write " + ticked(key + ":") + " and one of " + listed(names, "or");
  }
  if (kind == KeyKind::text) return "write " + ticked(key + ":") + " and a word or two";
  if (kind == KeyKind::name && spec.refers_to.empty()) return "write " + ticked(key + ":") + " and a name that is used once";
  return "write " + ticked(key + (spec.kind == KeyKind::block ? ": { … }" : ": …"));
}

// A value or a list where a block is wanted.
void KeyCheck::not_a_block(const Entry& entry, const KeySpec& spec, std::string_view key) {
  const Entry* first = entry.children.empty() ? nullptr : &entry.children.front();
  if (first != nullptr && first->kind == Entry::Kind::block && !first->children.empty()) {
    const Entry& pair = first->children.front();
    report("map-wanted", Severity::error, entry.at, ticked(key) + " is a list here; its words stand without dashes.",
           "drop the dash: " + ticked(pair.key + ": " + (pair.kind == Entry::Kind::text ? pair.text : "…")));
    return;
  }
  // Below its key stands text: words whose colons were forgotten.
  if (entry.kind == Entry::Kind::text && !entry.quoted && entry.at.line > entry.key_at.line) {
    std::string seen;
    int letters = 0;
    for (const char c : entry.text)
      if (!begins_character(c) || ++letters <= entry.at.length) seen += c;
      else break;
    std::string word;
    for (const std::string& name : key_names(spec.path))
      if (seen.starts_with(name + " ") && name.size() > word.size()) word = name;
    report("no-colon", Severity::error, entry.at, ticked(seen) + " has no colon.",
           word.empty() ? "each line below " + ticked(std::string(key) + ":") + " is a word, a colon and its value"
                        : ticked(word + ":" + seen.substr(word.size())));
    return;
  }
  report("map-wanted", Severity::error, entry.at, ticked(key) + " holds words of its own, each with its value.",
         ticked(std::string(key) + ": " + block_with(entry, spec.path)));
}

}  // namespace gownsheaf
