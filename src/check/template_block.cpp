#include "check/template_block.h"

#include <algorithm>

#include "unicode/utf8.h"

namespace gownsheaf {
namespace {

bool is_list(TemplateValue v) { return v == TemplateValue::texts || v == TemplateValue::blocks; }

// How a block is called in a sentence.
std::string called(std::string_view block) {
  if (block == "set") return "packet set";
  if (block == "steps") return "file of steps";
  if (block == "cloth kinds") return "file of cloth kinds";
  if (block == "fitting checks") return "file of fitting checks";
  if (block == "line") return "line of a fitting";
  if (block == "cautions") return "file of cautions";
  if (block == "after") return "step that comes first";
  if (block == "hours") return "block of hours";
  return std::string(block);
}

std::string joined(const std::vector<std::string_view>& words) {
  std::string s;
  for (const auto w : words) s += (s.empty() ? "" : ", ") + std::string(w);
  return s;
}

}  // namespace

bool TemplateNames::fresh(const std::string& what, const std::string& name, const SourceSpan& at, Diagnostics& diag) {
  std::string key = what + "/";
  for (const char c : name) key += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  const auto [first, added] = met_.emplace(key, at);
  if (added) return true;
  Diagnostic d;
  d.code = "name-twice";
  d.at = at;
  d.also = {first->second};
  d.sentence = "Two " + what + "s are called `" + name + "`.";
  d.hint = "give one of them another name";
  diag.add(std::move(d));
  return false;
}

SourceSpan part_of_text(const Entry& e, int column, int length) {
  SourceSpan s = e.at;
  s.column += column + (e.at.length == count_characters(e.text) + 2 ? 1 : 0);
  s.length = std::max(1, length);
  return s;
}

TemplateBlock::TemplateBlock(const Entry& entry, std::string_view block, Diagnostics& diag)
    : entry_(entry), block_(block), diag_(diag) {
  if (entry.kind != Entry::Kind::block) {
    diag_.error("block-wanted", entry.at, "Each " + called(block_) + " is a block of keys and values.", "{ key: value, … }");
    return;
  }
  std::vector<const TemplateKey*> keys;
  for (const TemplateKey& k : template_keys())
    if (k.block == block_) keys.push_back(&k);
  sound_.reserve(entry.children.size());
  for (const Entry& e : entry.children) {
    const auto key = std::find_if(keys.begin(), keys.end(), [&](const TemplateKey* k) { return k->key == e.key; });
    if (key != keys.end()) {
      check_key(e, **key);
      continue;
    }
    std::vector<std::string> known;
    for (const TemplateKey* k : keys) known.emplace_back(k->key);
    const std::string near = did_you_mean(e.key, known);
    std::string all;
    for (const std::string& k : known) all += (all.empty() ? "" : ", ") + k;
    diag_.error("unknown-key", e.key_at, "`" + e.key + "` is no word for a " + called(block_) + ".",
                near.empty() ? "its words are " + all : "did you mean `" + near + "`?");
  }
  for (const TemplateKey* k : keys)
    if (k->required && entry.find(k->key) == nullptr)
      diag_.error("key-missing", entry.key_at.line > 0 ? entry.key_at : entry.at,
                  "A " + called(block_) + " without `" + std::string(k->key) + "`: it must be there.",
                  std::string(k->key) + ": … (" + std::string(k->meaning) + ")");
}

bool TemplateBlock::refuse(const Entry& e, std::string code, std::string sentence, std::string hint) {
  diag_.error(std::move(code), e.kind == Entry::Kind::nothing ? e.key_at : e.at, std::move(sentence), std::move(hint));
  return false;
}

void TemplateBlock::check_key(const Entry& e, const TemplateKey& key) {
  const std::string name = "`" + e.key + "`";
  bool sound = true;
  if (e.kind == Entry::Kind::nothing || (e.kind == Entry::Kind::text && e.text.empty())) {
    sound = refuse(e, "value-empty", name + " is followed by nothing.", "take the key out, or give it a value");
  } else if (key.value == TemplateValue::block) {
    if (e.kind != Entry::Kind::block) sound = refuse(e, "block-wanted", name + " wants a block.", e.key + ": { … }");
  } else if (is_list(key.value)) {
    const bool single = e.kind == (key.value == TemplateValue::texts ? Entry::Kind::text : Entry::Kind::block);
    if (e.kind != Entry::Kind::list && !single) sound = refuse(e, "list-wanted", name + " wants a list.", e.key + ": [ … ]");
    if (e.kind == Entry::Kind::list && key.value == TemplateValue::texts)
      for (const Entry& item : e.children)
        if (item.kind != Entry::Kind::text)
          sound = refuse(item, "text-wanted", name + " wants a list of words.", "[table, machine]");
  } else if (e.kind != Entry::Kind::text) {
    sound = refuse(e, "text-wanted", name + " wants one value, not a list or a block.", "text with braces is put in quotes");
  }
  if (!sound) return;
  if (!key.words.empty()) check_words(e, key);
  if (key.value == TemplateValue::yes_no && e.text != "yes" && e.text != "no")
    diag_.error("yes-or-no", e.at, name + " wants yes or no, not `" + e.text + "`.", e.key + ": yes");
  if (e.key == "format" && e.text != "1")
    diag_.error("newer-format", e.at, "This file says `format: " + e.text + "`; this program reads 1.", "format: 1");
  sound_.push_back(&e);
}

void TemplateBlock::check_words(const Entry& e, const TemplateKey& key) {
  const auto words = words_of(key);
  const auto check = [&](const Entry& item) {
    if (std::find(words.begin(), words.end(), item.text) != words.end()) return;
    const std::string near = did_you_mean(item.text, {words.begin(), words.end()});
    diag_.error("unknown-word", item.at, "`" + std::string(key.key) + ": " + item.text + "` is not one of its words.",
                near.empty() ? "the words are " + joined(words) : "did you mean `" + near + "`? The words are " + joined(words));
  };
  if (e.kind == Entry::Kind::text) check(e);
  for (const Entry& item : e.children) check(item);
}

const Entry* TemplateBlock::entry(std::string_view key) const {
  for (const Entry* e : sound_)
    if (e->key == key) return e;
  return nullptr;
}

std::string TemplateBlock::text(std::string_view key) const {
  const Entry* e = entry(key);
  return e == nullptr ? "" : e->text;
}

SourceSpan TemplateBlock::at(std::string_view key) const {
  const Entry* e = entry(key);
  return e != nullptr ? e->at : entry_.at;
}

std::vector<std::string> TemplateBlock::texts(std::string_view key) const {
  std::vector<std::string> all;
  if (const Entry* e = entry(key)) {
    if (e->kind == Entry::Kind::text) all.push_back(e->text);
    for (const Entry& item : e->children) all.push_back(item.text);
  }
  return all;
}

std::vector<const Entry*> TemplateBlock::blocks(std::string_view key) const {
  std::vector<const Entry*> all;
  if (const Entry* e = entry(key)) {
    if (e->kind == Entry::Kind::block) all.push_back(e);
    else
      for (const Entry& item : e->children) all.push_back(&item);
  }
  return all;
}

bool TemplateBlock::yes(std::string_view key) const { return text(key) == "yes"; }

template <class T>
std::optional<T> TemplateBlock::quantity(std::string_view key, ReadResult<T> (*read)(std::string_view, std::string_view)) const {
  const Entry* e = entry(key);
  if (e == nullptr || e->kind != Entry::Kind::text) return std::nullopt;
  const ReadResult<T> seen = read(e->text, key);
  if (seen.ok()) return seen.value();
  const Misread& m = seen.fault();
  diag_.error(m.code, m.length > 0 ? part_of_text(*e, m.at, m.length) : e->at, m.sentence, m.hint);
  return std::nullopt;
}

std::optional<Length> TemplateBlock::length(std::string_view key) const {
  const auto written = quantity(key, read_length);
  return written ? std::optional(written->length) : std::nullopt;
}

std::optional<MassPerArea> TemplateBlock::weight(std::string_view key) const {
  const auto written = quantity(key, read_cloth_weight);
  if (!written) return std::nullopt;
  if (!written->weight) error("unit-kind", key, "A weight per running yard needs the width it is spread over.", "270 g/m²");
  return written->weight;
}

std::optional<Percent> TemplateBlock::percent(std::string_view key) const { return quantity(key, read_percent); }
std::optional<Span> TemplateBlock::span(std::string_view key) const { return quantity(key, read_span); }

Condition TemplateBlock::condition(std::string_view key) const {
  const Entry* e = entry(key);
  return e == nullptr ? Condition{} : parse_condition(e->text, e->at, diag_);
}

char TemplateBlock::label() const {
  const std::string word = text("label");
  return word.size() == 1 ? word.front() : 'c';
}

void TemplateBlock::error(std::string code, std::string_view key, std::string sentence, std::string hint) const {
  diag_.error(std::move(code), at(key), std::move(sentence), std::move(hint));
}

}  // namespace gownsheaf
