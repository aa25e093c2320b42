// Numbers that stand alone: ratios, counts, and numbers whose unit the key names; and per cent.
#include <limits>

#include "units/print.h"
#include "units/rounded_division.h"
#include "units/unit_words.h"

namespace gownsheaf {

using namespace written;

namespace {

Ratio as_ratio(Exact e) { return Ratio{in_64_bits(e.n), in_64_bits(e.d)}; }

// Everything after the number, for marking it.
Misread not_alone(const Written& written, const Part& part, std::string code, const std::string& rule, const std::string& hint) {
  int end = written.chars.size();
  while (end > part.end && is_space(written.chars[end - 1])) --end;
  return fault(std::move(code), written.with_key() + rule, hint, part.words.front().at, end);
}

struct Bare {
  Exact value;
  bool whole = false;
};

ReadResult<Bare> read_bare(const Written& written, const std::string& code, const std::string& rule) {
  const ReadResult<Parts> read = read_parts(written);
  if (!read.ok()) return {read.fault()};
  const Parts& parts = read.value();
  const Part& part = parts.parts.front();
  if (!part.words.empty()) {
    const bool names_key = code == "unit-in-key" && !written.key.empty();
    const std::string hint = parts.parts.size() > 1 ? "" : quoted(names_key ? written.key + ": " + part.typed : part.typed);
    return {not_alone(written, part, code, rule, hint)};
  }
  Bare bare{part.number, part.whole_number};
  if (parts.negative) bare.value.n = -bare.value.n;
  return {bare};
}

}  // namespace

ReadResult<Ratio> read_number(std::string_view text, std::string_view what) {
  Written written(text, what);
  written.form = "a number alone: `9`";
  const ReadResult<Bare> bare = read_bare(written, "unit-in-key", ": the key names the unit.");
  if (!bare.ok()) return {bare.fault()};
  return {as_ratio(bare.value().value)};
}

ReadResult<Ratio> read_ratio(std::string_view text, std::string_view what) {
  Written written(text, what);
  written.form = "a number alone: `2 1/2`";
  const ReadResult<Bare> bare = read_bare(written, "unit-kind", ": a ratio is a number without a unit.");
  if (!bare.ok()) return {bare.fault()};
  return {as_ratio(bare.value().value)};
}

ReadResult<std::int64_t> read_count(std::string_view text, std::string_view what) {
  Written written(text, what);
  written.form = "a whole number alone: `2`";
  const ReadResult<Bare> bare = read_bare(written, "unit-kind", ": a count is a number without a unit.");
  if (!bare.ok()) return {bare.fault()};
  if (!bare.value().whole) {
    const int from = written.chars.past_spaces(0);
    const std::int64_t below = in_64_bits(divided(bare.value().value.n, bare.value().value.d, Rounding::down));
    return {fault("number-form", written.with_key() + ": a count is a whole number.",
                  quoted(whole_number(below)) + " or " + quoted(whole_number(below + 1)), from, written.chars.size())};
  }
  return {in_64_bits(bare.value().value.n)};
}

ReadResult<Percent> read_percent(std::string_view text, std::string_view what) {
  const Written written(text, what);
  const ReadResult<Amount> amount = read_amount(written, {Kind::percent, "%", "", "%"});
  if (!amount.ok()) return {amount.fault()};
  const auto share = product(amount.value().value, 1, 100);
  if (!share || share->d > static_cast<Int128>(std::numeric_limits<std::int64_t>::max()))
    return {out_of_range(written, "can be kept")};
  return {Percent{as_ratio(*share)}};
}

}  // namespace gownsheaf
