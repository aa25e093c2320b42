// The generated part of docs/project-file.md: one table a section, in the maker's order.
#include "check/key_spec.h"
#include "check/names.h"
#include "check/reading.h"

namespace gownsheaf {

namespace {

std::string_view kind_words(KeyKind kind) {
  switch (kind) {
    case KeyKind::length: return "length";
    case KeyKind::cloth_weight: return "cloth weight";
    case KeyKind::mass: return "mass";
    case KeyKind::force: return "force";
    case KeyKind::pressure: return "pressure";
    case KeyKind::angle: return "angle";
    case KeyKind::ratio: return "ratio";
    case KeyKind::count: return "count";
    case KeyKind::number: return "bare number";
    case KeyKind::percent: return "percent";
    case KeyKind::day: return "day";
    case KeyKind::day_range: return "days, `DAY to DAY`";
    case KeyKind::span: return "time";
    case KeyKind::money: return "money";
    case KeyKind::rate: return "rate";
    case KeyKind::fineness: return "fineness";
    case KeyKind::text: return "text";
    case KeyKind::yes_no: return "`yes` or `no`";
    case KeyKind::word: return "word";
    case KeyKind::name: return "name";
    case KeyKind::block: return "block";
    case KeyKind::map: return "map";
    case KeyKind::list: return "list";
    case KeyKind::any_of_these: return "list of words";
    case KeyKind::pairs: return "pairs";
  }
  return "";
}

std::string section_words(std::string_view sections) {
  std::string made;
  for (const std::string& section : parted(sections, '|')) made += (made.empty() ? "" : " or ") + section;
  return made;
}

std::string words_listed(std::string_view words) {
  std::string made;
  for (const std::string& word : parted(words, '|')) made += (made.empty() ? "`" : ", `") + word + "`";
  return made;
}

std::string one_kind(const KeySpec& spec, KeyKind kind) {
  if (kind == KeyKind::name && !spec.refers_to.empty()) return "name from " + section_words(spec.refers_to);
  return std::string(kind_words(kind));
}

std::string kind_of(const KeySpec& spec) {
  std::string made;
  switch (spec.kind) {
    case KeyKind::list:
      made = "list of " + (spec.one.empty() ? one_kind(spec, spec.each) : std::string(spec.one) + " blocks");
      break;
    case KeyKind::map:
      made = "by " + (spec.refers_to.empty() ? std::string("name") : "name from " + section_words(spec.refers_to)) + ": " +
             (spec.each == KeyKind::block ? "a block each" : std::string(kind_words(spec.each)));
      break;
    case KeyKind::word:
    case KeyKind::any_of_these:
      made = (spec.kind == KeyKind::word ? "one of " : "any of ") + words_listed(spec.words);
      if (spec.words.empty()) made = "a section";
      break;
    default: made = one_kind(spec, spec.kind);
  }
  if (spec.or_kind) made += ", or " + one_kind(spec, *spec.or_kind);
  if (!spec.words.empty() && spec.kind != KeyKind::word && spec.kind != KeyKind::any_of_these)
    made += ", or " + words_listed(spec.words);
  if (!spec.alternatives.empty()) made += ", or `" + std::string(spec.alternatives) + "`";
  if (!spec.least.empty() || !spec.most.empty()) {
    const bool letters = spec.kind == KeyKind::text;
    made += spec.most.empty()    ? "; " + std::string(spec.least) + " or more"
            : spec.least.empty() ? "; up to " + std::string(spec.most)
                                 : "; " + std::string(spec.least) + " to " + std::string(spec.most);
    if (letters) made += " letters";
  }
  return made;
}

std::string need_of(const KeySpec& spec) {
  if (spec.required) return "required";
  if (!spec.standing.empty() && spec.standing[0] == '~') return "guessed:" + std::string(spec.standing.substr(1));
  if (!spec.standing.empty()) {
    std::string made = "= " + std::string(spec.standing);
    if (spec.standing_label != 0) made += std::string(" (") + spec.standing_label + ")";
    return made;
  }
  if (!spec.group.empty()) {
    std::string others;
    const auto up = spec.path.substr(0, spec.path.rfind('/'));
    for (const KeySpec* other : keys_below(up))
      if (other->group == spec.group && other != &spec)
        others += (others.empty() ? "`" : ", `") + std::string(other->path.substr(other->path.rfind('/') + 1)) + "`";
    if (spec.group[0] == '?') return "not with " + others;
    return (spec.group[0] == '+' ? "or, or with, " : "or ") + others;
  }
  return "optional";
}

std::string in_cell(std::string text) {
  for (std::size_t at = text.find('|'); at != std::string::npos; at = text.find('|', at + 2)) text.insert(at, "\\");
  return text;
}

}  // namespace

std::string key_tables_markdown() {
  std::string out;
  std::string_view section;
  bool head = true;
  const auto begin = [&](std::string_view title) {
    out += (out.empty() ? "### " : "\n### ") + std::string(title) + "\n\n";
    out += "| key | kind and limits | need | meaning |\n| --- | --- | --- | --- |\n";
  };
  begin("Who and when");
  for (const KeySpec& spec : key_specs()) {
    const auto cut = spec.path.find('/');
    const std::string_view top = spec.path.substr(0, cut);
    const std::string_view last = spec.path.substr(spec.path.rfind('/') + 1);
    // `note` and `was` stand in every item and are explained once, in words.
    if (cut != std::string_view::npos && (last == "note" || last == "was")) continue;
    const bool has_keys_of_its_own = spec.kind == KeyKind::block || spec.kind == KeyKind::map || spec.kind == KeyKind::list;
    if (head && top == "rules") head = false;
    if (!head && cut == std::string_view::npos && top != section) {
      section = top;
      if (has_keys_of_its_own) begin(top);
    }
    std::string key(spec.path);
    if (!head && cut != std::string_view::npos) key = key.substr(cut + 1);
    if (key.starts_with("*/")) key = key.substr(2);
    for (auto star = key.find("/*"); star != std::string::npos; star = key.find("/*"))
      key.replace(star, 2, key.size() == star + 2 ? " NAME" : "");
    for (auto slash = key.find('/'); slash != std::string::npos; slash = key.find('/')) key.replace(slash, 1, " › ");
    if (key == "*") key = "NAME";
    std::string meaning(spec.meaning);
    if (spec.is_private) meaning += " *Private.*";
    if (spec.first_needed > 1) meaning += " *Not worked out yet.*";
    out += "| `" + key + "` | " + in_cell(kind_of(spec)) + " | " + in_cell(need_of(spec)) + " | " + in_cell(meaning) + " |\n";
  }
  return out;
}

}  // namespace gownsheaf
