// The walk: single values, names and what they refer to.
#include <algorithm>

#include "check/key_check.h"
#include "unicode/utf8.h"

namespace gownsheaf {

void KeyCheck::no_value(const Entry& entry, const KeySpec& spec, std::string_view key) {
  std::string hint = "write it, or take the line out";
  if (is_quantity(spec.kind)) hint = "not known yet: " + ticked(std::string(key) + ": to measure");
  if (key == "size") hint = "a `#` after a space starts a remark: write `no. 2`";
  report("value-empty", Severity::error, entry.key_at, ticked(std::string(key) + ":") + " is followed by nothing.", hint);
}

void KeyCheck::text(const Entry& entry, const KeySpec& spec, KeyKind kind, std::string_view key, const Spot& spot) {
  if (entry.text == kToMeasure && (is_quantity(kind) || (spec.or_kind && is_quantity(*spec.or_kind)))) {
    to_measure_.emplace_back(spot.shown, entry.at);
    return;
  }
  if (kind != KeyKind::word && one_of_words(spec.words, entry.text)) return;
  if (kind == KeyKind::length && entry.text == kNone) {
    report("out-of-range", Severity::error, entry.at, ticked(std::string(key) + ": none") + ": this cannot be nothing.",
           "not known yet: " + ticked(std::string(key) + ": to measure"));
    return;
  }
  switch (kind) {
    case KeyKind::word:
      if (!one_of_words(spec.words, entry.text)) not_a_word(entry, spec, key);
      return;
    case KeyKind::yes_no:
      if (entry.text != "yes" && entry.text != "no" && entry.text != "true" && entry.text != "false")
        report("yes-or-no", Severity::error, entry.at, ticked(key) + " wants yes or no, not " + ticked(entry.text) + ".",
               ticked(std::string(key) + ": yes") + " or " + ticked(std::string(key) + ": no"));
      return;
    case KeyKind::text: {
      const int length = count_characters(entry.text);
      std::optional<WrittenLength> ignored;
      const auto most = read_count(most_of(spec, kind), key), least = read_count(least_of(spec, kind), key);
      if (most.ok() && length > most.value())
        report("out-of-range", Severity::error, entry.at,
               ticked(key) + " is longer than " + std::string(most_of(spec, kind)) + " letters.", "say it shorter");
      else if (length == 0)
        report("value-empty", Severity::error, entry.at, ticked(key) + " is empty.", "write it, or take the line out");
      else if (least.ok() && length < least.value())
        report("out-of-range", Severity::error, entry.at,
               ticked(key) + " is shorter than " + std::string(least_of(spec, kind)) + " letters.",
               "say it so that it is still understood in a month");
      return;
    }
    case KeyKind::name:
      if (spec.refers_to.empty()) return own_name(entry.text, entry.at, entry.quoted, spec.path);
      if (spec.or_kind && !fault_in(spec, *spec.or_kind, entry.text, key)) return;
      return reference(entry, spec);
    default: break;
  }
  std::optional<WrittenLength> length;
  auto fault = fault_in(spec, kind, entry.text, key, &length);
  if (fault && spec.or_kind && !fault_in(spec, *spec.or_kind, entry.text, key)) return;
  if (length) {
    const bool inches = length->unit == LengthUnit::inch || length->unit == LengthUnit::foot ||
                        length->unit == LengthUnit::yard || length->unit == LengthUnit::nail;
    if (units_.inches + units_.centimetres == 0) units_.inches_first = inches;
    ++(inches ? units_.inches : units_.centimetres);
  }
  if (fault) report(fault->code, Severity::error, narrowed(entry, fault->at, fault->length), fault->sentence, fault->hint);
}

void KeyCheck::not_a_word(const Entry& entry, const KeySpec& spec, std::string_view key) {
  const std::vector<std::string> words = parted(spec.words, '|');
  std::string meant;
  const std::string folded = folded_name(clean_name(entry.text));
  for (const std::string& word : words)
    if (word == folded) meant = word;
  if (meant.empty()) meant = did_you_mean(entry.text, words);
  if (meant.empty() && folded.size() >= 3)
    for (const std::string& word : words)
      if (meant.empty() && (word.starts_with(folded) || folded.starts_with(word + " "))) meant = word;
  std::string hint;
  if (meant.empty()) {
    hint = "one of " + listed(words, "or", 20);
  } else {
    std::vector<std::string> others;
    for (const std::string& word : words)
      if (word != meant) others.push_back(word);
    hint = "did you mean " + ticked(meant) + "?";
    if (!others.empty()) hint += " Others: " + listed(others, "", 20);
  }
  report("unknown-word", Severity::error, entry.at,
         ticked(std::string(key) + ": " + entry.text) + " is none of the words for " + ticked(key) + ".", hint);
}

void KeyCheck::own_name(std::string_view written, const SourceSpan& at, bool quoted, std::string_view path) {
  const std::string name = clean_name(written);
  if (name.empty()) {
    report("value-empty", Severity::error, at, "A name is empty.", "write a name of letters and spaces");
    return;
  }
  if (const auto sign = forbidden_sign(written)) {
    SourceSpan narrow = at;
    narrow.column += sign->at + (quoted ? 1 : 0);
    narrow.length = 1;
    std::string hint;
    if (sign->sign.size() == 1) {
      std::string other(written);
      for (auto s = forbidden_sign(other); s; s = forbidden_sign(other)) other[other.find(s->sign)] = ' ';
      hint = ticked(clean_name(other));
    }
    report("name-letters", Severity::error, narrow,
           ticked(name) + ": a name may not hold " + (sign->sign.size() == 1 ? ticked(sign->sign) : sign->sign) + ".", hint);
    return;
  }
  if (count_characters(name) > kLongestName)
    report("name-letters", Severity::error, at, "This name is longer than 60 letters.", "put the rest under `note`");
  if (path == "pieces/*/edges" && name.find(" of ") != std::string::npos)
    report("name-letters", Severity::error, at, ticked(name) + ": the name of an edge may not hold `of`.",
           "`side of bodice front` is how an edge of a piece is written elsewhere; here write `side`");
}

void KeyCheck::map_name(const Entry& item, const KeySpec& spec) {
  const bool reference_values = spec.kind == KeyKind::name || spec.each == KeyKind::name;
  if (spec.refers_to.empty() || reference_values) return own_name(item.key, item.key_at, false, spec.path);
  if (spec.refers_to == "days") {
    if (const auto day = read_day(item.key, "day"); !day.ok())
      report(day.fault().code, Severity::error, item.key_at, day.fault().sentence, day.fault().hint);
  } else if (spec.refers_to == "steps") {
    step_reference(item.key, item.key_at);
  } else if (!names_.find(spec.refers_to, item.key)) {
    unknown_name(item.key_at, item.key, spec.refers_to);
  }
}

void KeyCheck::reference(const Entry& entry, const KeySpec& spec) {
  if (spec.refers_to == "edges of pieces") return edge_of_piece(entry);
  if (spec.refers_to == "steps") return step_reference(entry.text, entry.at);
  if (!names_.find(spec.refers_to, entry.text)) unknown_name(entry.at, entry.text, spec.refers_to);
}

void KeyCheck::unknown_name(const SourceSpan& at, std::string_view written, std::string_view sections) {
  const std::string name = clean_name(written);
  std::vector<std::string> nouns, plurals;
  for (const std::string& section : parted(sections, '|')) {
    const KeySpec* spec = find_key(section);
    std::string one = spec != nullptr && !spec->one.empty() ? std::string(spec->one) : "measure";
    plurals.push_back(one == "bone stock" ? one : one + "s");
    nouns.push_back(std::move(one));
  }
  const std::vector<std::string> all = names_.all(sections);
  std::string hint;
  if (all.empty()) {
    hint = "this file names no " + listed(nouns, "or");
  } else {
    if (const std::string meant = did_you_mean(name, all); !meant.empty()) hint = "did you mean " + ticked(meant) + "? ";
    if (!hint.empty() && (all.size() == 1 || all.size() > 8)) hint.pop_back();  // the nearest says enough
    else
      hint +=
          (hint.empty() ? "the " : "The ") + listed(plurals) + (all.size() == 1 ? " here is " : " are ") + listed(all, "and", 20);
    if (all.size() == 1 && hint.starts_with("the ")) {
      const auto is = hint.find(plurals.front());
      if (is != std::string::npos && plurals.size() == 1) hint.replace(is, plurals.front().size(), nouns.front());
    }
  }
  report("unknown-name", Severity::error, at, "No " + listed(nouns, "or") + " is called " + ticked(name) + ".", hint);
}

void KeyCheck::edge_of_piece(const Entry& entry) {
  const std::string name = clean_name(entry.text);
  const auto& edges = names_.piece_edges();
  const auto of = name.find(" of ");
  if (of == std::string::npos) {
    const std::string wanted = folded_name(name);
    std::vector<std::string> with;
    for (const std::string& piece : names_.all("pieces"))
      if (const auto it = edges.find(folded_name(piece)); it != edges.end())
        for (const std::string& edge : it->second)
          if (folded_name(edge) == wanted) with.push_back(ticked(name + " of " + piece));
    if (with.empty())
      report("edge-of", Severity::error, entry.at, ticked(name) + " does not say of which piece it is an edge.",
             "`" + name + " of " + (names_.all("pieces").empty() ? "bodice front" : names_.all("pieces").front()) +
                 "`, say; and that piece names it under `edges`");
    else
      report("edge-of", Severity::error, entry.at,
             ticked(name) + " is an edge of " + number_word(with.size()) + (with.size() == 1 ? " piece." : " pieces."),
             "say which: " + listed(with, "or", 6));
    return;
  }
  const std::string edge = name.substr(0, of), piece = name.substr(of + 4);
  const auto known = names_.find("pieces", piece);
  if (!known)
    return unknown_name(narrowed(entry, count_characters(name.substr(0, of + 4)), count_characters(piece)), piece, "pieces");
  const auto it = edges.find(folded_name(*known));
  const std::string wanted = folded_name(edge);
  std::vector<std::string> there = it == edges.end() ? std::vector<std::string>{} : it->second;
  for (const std::string& e : there)
    if (folded_name(e) == wanted) return;
  report("unknown-name", Severity::error, narrowed(entry, 0, count_characters(edge)),
         "Piece " + *known + " has no edge " + ticked(edge) + ".",
         there.empty() ? "give it there: `edges: { " + edge + ": … }`"
                       : (there.size() == 1 ? "its only edge is " : "its edges are ") + listed(there));
}

// `id`, `id@item`, `id@item+item`, and the maker's own as `own/NAME` or its bare name.
void KeyCheck::step_reference(std::string_view written, const SourceSpan& at) {
  const auto mark = written.find('@');
  std::string_view id = written.substr(0, mark);
  if (id.starts_with("own/")) id.remove_prefix(4);
  if (!names_.knows_steps() && names_.all("steps").empty()) return;
  if (!names_.find("steps", id)) {
    if (!names_.knows_steps()) return;
    const std::string meant = did_you_mean(id, names_.all("steps"));
    report("unknown-step", Severity::error, at, "No step is called " + ticked(id) + ".",
           meant.empty() ? "the steps are " + listed(names_.all("steps")) : "did you mean " + ticked(meant) + "?");
    return;
  }
  if (mark == std::string_view::npos) return;
  for (const std::string& item : parted(written.substr(mark + 1), '+')) {
    constexpr std::string_view kItems =
        "cloths|notions|pieces|pleats|rounds|seams|edges|closures|bones|piping|binding|trims|plackets|pockets|drapery|fittings";
    if (names_.find(kItems, item)) continue;
    report("unknown-name", Severity::error, at, "Nothing here is called " + ticked(clean_name(item)) + ".",
           "after `@` stands the name of a cloth, run, piece …");
  }
}

}  // namespace gownsheaf
