// Laws over random cases. Draws are raw and seeds fixed, so every machine tries the same cases.
#include <iterator>
#include <random>

#include "support/catch.h"
#include "support/units_printing.h"
#include "units/read.h"

using namespace gownsheaf;

namespace {

#ifdef GOWNSHEAF_SANITIZED
constexpr int kRounds = 500;
#else
constexpr int kRounds = 10'000;
#endif

Length any_length(std::mt19937& draw) {
  const std::uint64_t wide = (static_cast<std::uint64_t>(draw()) << 32) | draw();
  // Half of them small, as lengths of garments are.
  const std::int64_t most = draw() % 2 == 0 ? Length::kCap - Length::kPerInch * 36 : 100 * Length::kPerInch;
  const auto size = static_cast<std::int64_t>(wide % static_cast<std::uint64_t>(most));
  return Length::ticks(draw() % 4 == 0 ? -size : size);
}

Rounding any_rounding(std::mt19937& draw) { return static_cast<Rounding>(draw() % 3); }

// Every reader on one text; the place of a fault must lie in the text.
void read_every_way(const std::string& text) {
  // A stray byte counts as one character, so a text has at most as many characters as bytes.
  const int most = static_cast<int>(text.size());
  bool sound = true;
  const auto look = [&](const auto& result) {
    if (result.ok()) return;
    const Misread& m = result.fault();
    sound = sound && !m.code.empty() && !m.sentence.empty() && m.at >= 0 && m.length >= 0 && m.at + m.length <= most &&
            (m.length > 0 || most == 0);
  };
  look(read_length(text, "key"));
  look(read_mass(text, "key"));
  look(read_cloth_weight(text, "key"));
  look(read_force(text, "key"));
  look(read_pressure(text, "key"));
  look(read_line_load(text, "key"));
  look(read_angle(text, "key"));
  look(read_percent(text, "key"));
  look(read_ratio(text, "key"));
  look(read_count(text, "key"));
  look(read_number(text, "key"));
  look(read_day(text, "key"));
  look(read_span(text, "key"));
  look(read_money(text, "key"));
  look(read_rate(text, "key"));
  look(read_fineness(text, "key"));
  INFO(text);
  if (!sound) FAIL("a fault without code, sentence or a place in the text");
}

}  // namespace

TEST_CASE("a printed length reads back as the rounded length") {
  std::mt19937 draw(7);
  for (int round = 0; round < kRounds; ++round) {
    const Length length = any_length(draw);
    const Rounding rounding = any_rounding(draw);
    for (const ShownIn shown : {ShownIn::inches, ShownIn::centimetres}) {
      for (const Length step : {cut_step(shown), pleat_step(shown)}) {
        const std::string text = text_of(length, shown, step, rounding).plain();
        const auto back = read_length(text, "key");
        INFO(text);
        REQUIRE(back.ok());
        REQUIRE(back.value().length == length.to_step(step, rounding));
      }
      const Length step = shown == ShownIn::inches ? Length::inches(36).times(1, 8) : Length::cm(1);
      const std::string cloth = cloth_text_of(length, shown, rounding).plain();
      const auto back = read_length(cloth, "key");
      INFO(cloth);
      REQUIRE(back.ok());
      REQUIRE(back.value().length == length.to_step(step, rounding));
    }
  }
}

TEST_CASE("rounding lands within a step on the side named") {
  std::mt19937 draw(8);
  for (int round = 0; round < kRounds; ++round) {
    const Length length = any_length(draw);
    const Length step = Length::ticks(static_cast<std::int64_t>(draw() % 200'000) + 1);
    const Length up = length.to_step(step, Rounding::up), down = length.to_step(step, Rounding::down);
    const Length near = length.to_step(step, Rounding::nearest);
    REQUIRE((up >= length && up < length + step));
    REQUIRE((down <= length && down > length - step));
    REQUIRE((near == up || near == down));
    const Length off = near < length ? length - near : near - length;
    REQUIRE(off + off <= step);
    REQUIRE((-length).to_step(step, Rounding::up) == -down);
    REQUIRE((-length).to_step(step, Rounding::nearest) == -near);
    REQUIRE(count_of(length, step, Rounding::up) * step == up);
  }
}

TEST_CASE("real days print and read back, one after the other") {
  // Through two whole turns of the calendar, 1600 to 2400.
  int serial = make_day(1600, 1, 1).serial;
  const int last = make_day(2400, 12, 31).serial;
#ifdef GOWNSHEAF_SANITIZED
  constexpr int kStride = 97;
#else
  constexpr int kStride = 1;
#endif
  for (; serial <= last; serial += kStride) {
    const auto back = read_day(iso_day(Day{serial}), "day");
    REQUIRE(back.ok());
    REQUIRE(back.value().serial == serial);
  }
}

TEST_CASE("ratios and spans print and read back") {
  std::mt19937 draw(9);
  for (int round = 0; round < kRounds; ++round) {
    const Ratio ratio =
        Ratio::of(static_cast<std::int64_t>(draw() % 2'000'000) - 1'000'000, static_cast<std::int64_t>(draw() % 5000) + 1);
    const auto back = read_ratio(text_of(ratio), "key");
    INFO(text_of(ratio));
    REQUIRE(back.ok());
    REQUIRE(back.value() == ratio);
    const Span span{static_cast<std::int64_t>(draw() % 4'000'000'000U)};
    REQUIRE(read_span(text_of(span), "key").value() == span);
  }
}

TEST_CASE("no text is too strange to refuse with a sentence and a place") {
  std::mt19937 draw(10);
  static const char* const kPieces[] = {"1",       "13",     "0",     "9999999999999999999",
                                        "/",       "\u2044", "½",     "⅞",
                                        " ",       ".",      ",",     "-",
                                        "\u2212",  "in",     "yd",    "cm",
                                        "mm",      "oz",     "per",   "sq",
                                        "at",      "less",   "each",  "%",
                                        "²",       "\"",     "'",     "e3",
                                        "0x1f",    "_",      ":",     "no.",
                                        "running", "h",      "min",   "to",
                                        "+",       "^2",     "days",  "momme",
                                        "\xff",    "2027",   "06",    "31",
                                        "1/0",     "1/2",    "\t",    "\n",
                                        "花",      "lb",     "1e400", "2147483648"};
  for (int round = 0; round < kRounds; ++round) {
    std::string bytes, pieces;
    const std::size_t length = draw() % 24;
    for (std::size_t i = 0; i < length; ++i) bytes += static_cast<char>(static_cast<unsigned char>(draw() & 0xFF));
    const std::size_t count = draw() % 9;
    for (std::size_t i = 0; i < count; ++i) pieces += kPieces[draw() % std::size(kPieces)];
    read_every_way(bytes);
    read_every_way(pieces);
  }
  read_every_way(std::string(100'000, '9'));
  read_every_way(std::string(100'000, ' '));
  read_every_way(std::string(119, '1'));
  read_every_way("999999999 999999998/999999999 yd 999999999 999999998/999999999 ft 999999997/999999998 nails 1/999999993 in");
  SUCCEED("every text was read or refused");
}
