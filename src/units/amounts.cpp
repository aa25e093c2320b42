// From numbers with units to one exact amount, and what is said when the units do not fit.
#include <utility>

#include "units/unit_words.h"

namespace gownsheaf::written {
namespace {

std::string with_unit(const Part& part, std::string_view unit) { return quoted(part.typed + " " + std::string(unit)); }

std::string_view kind_in_words(Kind kind) {
  switch (kind) {
    case Kind::length: return "a length";
    case Kind::area: return "an area";
    case Kind::cloth_weight: return "a weight of cloth by its area";
    case Kind::running_weight: return "a weight of cloth by its length";
    case Kind::mass: return "a weight on the scale";
    case Kind::force: return "a pull";
    case Kind::pressure: return "a pressure";
    case Kind::line_load: return "a pull shared along a line";
    case Kind::angle: return "an angle";
    case Kind::percent: return "a share of a hundred";
    case Kind::span: return "a stretch of time";
    case Kind::fineness: return "the fineness of a thread";
  }
  return "";
}

std::string offer(const Part& part, const Wanted& wanted) {
  std::string hint = with_unit(part, wanted.first);
  if (!wanted.second.empty()) hint += " or " + with_unit(part, wanted.second);
  return hint;
}

std::string typed_unit(const Written& written, const Part& part) {
  return written.chars.slice(part.words.front().at, part.words.back().end);
}

Misread unit_unknown(const Written& written, const Part& part, const Wanted& wanted) {
  // `13 in wide`: the unit is there, and a word too many after it.
  for (std::size_t n = part.words.size() - 1; n > 0; --n) {
    const Unit* known = find_unit(canonical(part.words, 0, n));
    if (known == nullptr || known->kind != wanted.kind) continue;
    const std::string extra = written.chars.slice(part.words[n].at, part.words.back().end);
    return fault("unit-unknown", written.alone() + ": " + quoted(extra) + " after the unit is not known.",
                 with_unit(part, known->shown), part.words[n].at, part.words.back().end);
  }
  const std::string typed = typed_unit(written, part);
  const Unit* meant = nearest_unit(lower_case(typed), wanted.kind);
  if (meant == nullptr) meant = nearest_unit(canonical(part.words), wanted.kind);
  return fault("unit-unknown",
               written.alone() + ": " + (typed.size() > 40 ? "that" : "the") + " unit " +
                   (typed.size() > 40 ? "" : quoted(typed) + " ") + "is not known.",
               meant != nullptr ? with_unit(part, meant->shown) : "known here: " + std::string(wanted.all), part.words.front().at,
               part.words.back().end);
}

Misread unit_kind(const Written& written, const Part& part, const Wanted& wanted, const Unit& unit) {
  std::string hint = offer(part, wanted);
  if (wanted.kind == Kind::cloth_weight && unit.symbol == "mm") hint = "silk is weighed in " + with_unit(part, "momme");
  return fault("unit-kind",
               written.with_key() + ": " + std::string(unit.shown) + " is " + std::string(kind_in_words(unit.kind)) + ".",
               std::move(hint), part.words.front().at, part.words.back().end);
}

Misread wrong_order(const Written& written, const Parts& parts, std::size_t from, const Part& part, bool repeated) {
  std::string hint;
  if (!repeated && !parts.negative && parts.parts.size() - from == 2) {
    const Part& first = parts.parts[from];
    hint = quoted(part.typed + " " + typed_unit(written, part) + " " + first.typed + " " + typed_unit(written, first));
  }
  return fault("units-order",
               written.alone() + (repeated ? " gives one unit twice." : " puts a smaller unit before a larger one."),
               hint.empty() ? "larger units first, each once: `2 yd 6 in`" : hint, part.at, part.words.back().end);
}

}  // namespace

Misread unit_missing(const Written& written, const Part& part, const Wanted& wanted) {
  return fault("unit-missing", written.with_key() + " has no unit.", offer(part, wanted), part.at, part.end);
}

Misread out_of_range(const Written& written, std::string rule) {
  const int from = written.chars.past_spaces(0);
  int to = written.chars.size();
  while (to > from && is_space(written.chars[to - 1])) --to;
  return fault("out-of-range", written.with_key() + " is more than " + rule + ".", "is a point missing?", from, to);
}

ReadResult<Amount> amount_of(const Written& written, const Parts& parts, const Wanted& wanted, std::size_t from) {
  Amount amount;
  const Unit* before = nullptr;
  for (std::size_t i = from; i < parts.parts.size(); ++i) {
    const Part& part = parts.parts[i];
    if (part.words.empty()) {
      if (before == nullptr) return {unit_missing(written, part, wanted)};
      const std::string all = written.text();
      const std::string offered = before->symbol == "yd" || before->symbol == "ft" ? " in"
                                  : before->symbol == "m"                          ? " cm"
                                  : before->symbol == "lb"                         ? " oz"
                                  : before->symbol == "h"                          ? " min"
                                                                                   : "";
      return {fault("unit-missing", written.with_key() + ": the last number has no unit.",
                    offered.empty() ? "every number has its unit: `2 yd 6 in`" : quoted(all + offered), part.at, part.end)};
    }
    const Unit* unit = find_unit(canonical(part.words));
    if (unit == nullptr) return {unit_unknown(written, part, wanted)};
    if (unit->kind != wanted.kind) return {unit_kind(written, part, wanted, *unit)};
    if (before != nullptr && unit->system != before->system)
      return {fault("units-mixed", written.alone() + " mixes " + quoted(before->shown) + " with " + quoted(unit->shown) + ".",
                    "one quantity, one kind of tape: " + quoted("13 1/2 in") + " or " + quoted("34.5 cm"), part.at,
                    part.words.back().end)};
    if (before != nullptr && static_cast<Int128>(unit->n) * before->d >= static_cast<Int128>(before->n) * unit->d)
      return {wrong_order(written, parts, from, part, unit == before)};
    const auto step = product(part.number, unit->n, unit->d);
    const auto total = step ? sum(amount.value, *step) : std::nullopt;
    if (!total)
      return {fault("number-form", written.alone() + " is finer than can be measured.", "fewer digits in the fractions", part.at,
                    part.end)};
    amount.value = *total;
    if (amount.first == nullptr) amount.first = unit;
    before = unit;
  }
  if (parts.negative) amount.value.n = -amount.value.n;
  return {amount};
}

ReadResult<Amount> read_amount(const Written& written, const Wanted& wanted) {
  Written as_wanted = written;
  if (wanted.kind != Kind::length) as_wanted.form = "a number, then its unit: " + quoted("3 " + std::string(wanted.first));
  const ReadResult<Parts> parts = read_parts(as_wanted);
  if (!parts.ok()) return {parts.fault()};
  return amount_of(written, parts.value(), wanted);
}

}  // namespace gownsheaf::written
