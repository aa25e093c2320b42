#include "check/sections.h"

namespace gownsheaf {

void report(const Filling& file, const About& about, Severity severity, std::string code, const SourceSpan& at,
            std::string sentence, std::string hint, std::vector<SourceSpan> also) {
  Diagnostic d;
  d.code = std::move(code);
  d.severity = severity;
  d.at = at;
  d.also = std::move(also);
  d.sentence = std::move(sentence);
  d.hint = std::move(hint);
  d.item = about.item;
  d.section = std::string(about.section);
  d.is_private = about.section == "measures" || about.section == "size";  // both hold girths of the body
  file.diag.add(std::move(d));
}

Named named_of(const Filling& file, const Item& item, std::string_view section, std::string_view naming) {
  Named named;
  if (naming.empty()) {
    named.name = clean_name(item.entry()->key);
    named.at = item.entry()->key_at;
  } else if (const Entry* name = item.at(naming)) {
    named.name = clean_name(name->text);
    named.at = name->at;
  }
  named.note = item.plain("note");
  named.was = clean_name(item.plain("was"));
  if (!named.was.empty() && file.names.find(section, named.was)) {
    const KeySpec* spec = find_key(section);
    report(file, {section, named.name}, Severity::error, "was-still-there", item.at("was")->at,
           "`was: " + named.was + "`, but " + with_article(spec == nullptr ? "item" : spec->one) + " " + named.was +
               " still exists.",
           "`was` is for a changed name; take it out, or rename the other");
  }
  return named;
}

std::vector<std::string> names_in(const Filling& file, const Item& item, std::string_view key, std::string_view sections) {
  std::vector<std::string> names;
  for (const Entry* e : item.values(key))
    if (e->kind == Entry::Kind::text)
      if (auto name = file.names.find(sections, e->text)) names.push_back(std::move(*name));
  return names;
}

std::string name_in(const Filling& file, const Item& item, std::string_view key, std::string_view sections) {
  const Entry* e = item.at(key);
  if (e == nullptr || e->kind != Entry::Kind::text) return "";
  return file.names.find(sections, e->text).value_or("");
}

std::vector<Item> items_of_map(const Item& root, std::string_view section) {
  std::vector<Item> items;
  const Entry* map = root.at(section);
  if (map == nullptr || map->kind != Entry::Kind::block) return items;
  for (const Entry& child : map->children)
    if (child.kind == Entry::Kind::block) items.emplace_back(&child, std::string(section) + "/*");
  return items;
}

bool has_word(std::string_view name, std::string_view word) {
  const std::string folded = folded_name(name);
  for (auto at = folded.find(word); at != std::string::npos; at = folded.find(word, at + 1)) {
    const bool starts = at == 0 || folded[at - 1] == ' ' || folded[at - 1] == '-';
    const auto end = at + word.size();
    if (starts && (end == folded.size() || folded[end] == ' ' || folded[end] == '-')) return true;
  }
  return false;
}

}  // namespace gownsheaf
