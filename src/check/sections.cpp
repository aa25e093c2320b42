#include "check/sections.h"

#include "diagnostics/message.h"

namespace gownsheaf {

void report(const Filling& file, const About& about, Severity severity, std::string code, const SourceSpan& at,
            std::string sentence, std::string hint, std::vector<SourceSpan> also) {
  const bool girths_of_the_body = about.section == "measures" || about.section == "size";
  Diagnostic d = message({about.item, std::string(about.section), "", girths_of_the_body}, severity, std::move(code), at,
                         std::move(sentence), std::move(hint));
  d.also = std::move(also);
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

std::map<std::string, Given<Length>> girths_in(const Filling& file, const Entry* map) {
  std::map<std::string, Given<Length>> girths;
  if (map == nullptr || map->kind != Entry::Kind::block) return girths;
  for (const Entry& e : map->children) {
    const auto measure = file.names.find("measures", e.key);
    const auto read = read_length(e.text, e.key);
    if (!measure || e.kind != Entry::Kind::text) continue;
    Given<Length> given;
    if (read.ok()) given = Given<Length>::written(read.value().length, e.at);
    if (e.text == kToMeasure) given.origin = Origin::to_measure;
    girths.emplace(*measure, std::move(given));
  }
  return girths;
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
