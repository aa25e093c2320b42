// An amount for each one of something: `10 per in`, `20 stitches per min`, `4 min each`.
#include <algorithm>
#include <limits>
#include <utility>

#include "units/rounded_division.h"
#include "units/unit_words.h"

namespace gownsheaf {

using namespace written;

namespace {

constexpr const char* kForms = "`10 per in`, `20 stitches per min` or `4 min each`";

ReadResult<Rate> as_rate(const Written& written, std::optional<Exact> amount, std::string of, std::string per) {
  constexpr Int128 kMost = std::numeric_limits<std::int64_t>::max();
  if (!amount || amount->n > kMost || amount->n < -kMost || amount->d > kMost) return {out_of_range(written, "can be kept")};
  return {Rate{Ratio{static_cast<std::int64_t>(amount->n), static_cast<std::int64_t>(amount->d)}, std::move(of), std::move(per)}};
}

Misread not_a_rate(const Written& written, std::string code, std::string rule, int at, int end) {
  return fault(std::move(code), written.with_key() + std::move(rule), kForms, at, end);
}

}  // namespace

ReadResult<Rate> read_rate(std::string_view text, std::string_view what) {
  Written written(text, what);
  written.form = kForms;
  const ReadResult<Parts> read = read_parts(written);
  if (!read.ok()) return {read.fault()};
  Parts parts = read.value();
  std::vector<Word>& words = parts.parts.back().words;
  const Part& first = parts.parts.front();
  if (words.empty())
    return {not_a_rate(written, "unit-missing", " does not say of what, or per what.", first.at, parts.parts.back().end)};

  std::size_t stroke = words.size();
  std::string per = "each";
  const int per_at = words.back().at, per_end = words.back().end;
  if (words.back().text == "each") {
    stroke = words.size() - 1;
    if (stroke > 0 && (words[stroke - 1].text == "per" || words[stroke - 1].text == "/")) --stroke;
  } else {
    const auto found = std::find_if(words.begin(), words.end(), [](const Word& w) { return w.text == "per" || w.text == "/"; });
    if (found == words.end())
      return {not_a_rate(written, "unit-missing", " does not say per what.", words.front().at, words.back().end)};
    stroke = static_cast<std::size_t>(found - words.begin());
    per = canonical(words, stroke + 1, words.size());
    if (per != "in" && per != "cm" && per != "min")
      return {not_a_rate(written, find_unit(per) != nullptr ? "unit-kind" : "unit-unknown",
                         ": rates are per in, per cm, per min or each.", per_at, per_end)};
  }
  words.resize(stroke);

  const std::string of = canonical(words);
  if (parts.parts.size() == 1 && (of.empty() || of == "stitches")) {
    Exact amount = first.number;
    if (parts.negative) amount.n = -amount.n;
    return as_rate(written, amount, of, per);
  }
  const ReadResult<Amount> time = amount_of(written, parts, kSpanWanted);
  if (!time.ok()) return {time.fault()};
  return as_rate(written, product(time.value().value, 1, 60'000), "min", per);
}

}  // namespace gownsheaf
