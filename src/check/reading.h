// Typed reading of one written value by the kind that its KeySpec names, limits included. Two users: the walk over all
// keys (key_check.h), which reports what does not read, and the files of the sections, which take what does.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "check/key_spec.h"
#include "project/given.h"
#include "read/entry.h"
#include "units/read.h"

namespace gownsheaf {

bool is_quantity(KeyKind kind);                                    // may be written `to measure`
bool may_be_none(const KeySpec& spec);                             // `none` will do: there is none, and none is guessed
bool one_of_words(std::string_view words, std::string_view seen);  // words separated by |
inline constexpr std::string_view kToMeasure = "to measure", kNone = "none";

// What is wrong with `text` as a value of `kind` under `spec`, if anything. `key` is the key as written. A length is
// handed out as well, for the count of units.
std::optional<Misread> fault_in(const KeySpec& spec, KeyKind kind, std::string_view text, std::string_view key,
                                std::optional<WrittenLength>* length = nullptr);
// Limits of the key, as printed: "5 in", "80 in"; the kind's own where the key has none; "" = open.
std::string_view least_of(const KeySpec& spec, KeyKind kind);
std::string_view most_of(const KeySpec& spec, KeyKind kind);
// Place of a misreading inside a text entry.
SourceSpan narrowed(const Entry& entry, int at, int length);

// One block of the file with the path of its keys. Says nothing of faults: the walk over all keys did that.
class Item {
 public:
  Item() = default;
  Item(const Entry* entry, std::string path) : entry_(entry), path_(std::move(path)) {}

  const Entry* entry() const { return entry_; }
  const Entry* at(std::string_view key) const;  // the value written under this key, or null
  bool has(std::string_view key) const { return at(key) != nullptr; }
  bool is_block(std::string_view key) const;
  Item block(std::string_view key) const;                        // entry() is null when it is not there or not a block
  std::vector<Item> items(std::string_view key) const;           // of a list; a single block is a list of one
  std::vector<const Entry*> values(std::string_view key) const;  // of a list; a single value is a list of one

  Given<Length> length(std::string_view key) const;  // `none` is a length of nothing, Origin::none
  Given<Percent> percent(std::string_view key) const;
  Given<MassPerArea> cloth_weight(std::string_view key, std::optional<Length> full_width) const;
  Given<Mass> mass(std::string_view key) const;
  Given<Force> force(std::string_view key) const;
  Given<Pressure> pressure(std::string_view key) const;
  Given<Angle> angle(std::string_view key) const;
  Given<std::int64_t> count(std::string_view key) const;
  Given<Ratio> ratio(std::string_view key) const;
  Given<Ratio> number(std::string_view key) const;
  Given<Day> day(std::string_view key) const;
  Given<Span> span(std::string_view key) const;
  Given<Money> money(std::string_view key) const;
  Given<bool> yes_no(std::string_view key) const;
  Given<std::string> word(std::string_view key) const;  // only a word of its closed list
  Given<std::string> text(std::string_view key) const;
  std::string plain(std::string_view key) const;  // text or ""

 private:
  const KeySpec* spec(std::string_view key) const;
  template <class T, class Read>
  Given<T> quantity(std::string_view key, Read read) const;
  template <class T, class Reader>
  Given<T> plain_quantity(std::string_view key, Reader reader) const;

  const Entry* entry_ = nullptr;
  std::string path_;
};

// The value of a closed choice for a written word; `last` is the last of the enumeration.
template <class E>
std::optional<E> choice(std::string_view word, E last) {
  for (int i = 0; i <= static_cast<int>(last); ++i)
    if (word_for(static_cast<E>(i)) == word) return static_cast<E>(i);
  return {};
}
template <class E>
Given<E> choice(const Given<std::string>& word, E last) {
  Given<E> made;
  made.origin = word.origin;
  made.at = word.at;
  if (word.known()) made.value = choice(*word, last);
  return made;
}

}  // namespace gownsheaf
