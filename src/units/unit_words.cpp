#include "units/unit_words.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace gownsheaf::written {
namespace {

struct Spelling {
  std::string_view typed, symbol;
};

constexpr Spelling kSpellings[] = {{"in", "in"},
                                   {"inch", "in"},
                                   {"inches", "in"},
                                   {"ins", "in"},
                                   {"ft", "ft"},
                                   {"foot", "ft"},
                                   {"feet", "ft"},
                                   {"yd", "yd"},
                                   {"yds", "yd"},
                                   {"yard", "yd"},
                                   {"yards", "yd"},
                                   {"nail", "nail"},
                                   {"nails", "nail"},
                                   {"mm", "mm"},
                                   {"millimetre", "mm"},
                                   {"millimetres", "mm"},
                                   {"millimeter", "mm"},
                                   {"millimeters", "mm"},
                                   {"cm", "cm"},
                                   {"cms", "cm"},
                                   {"centimetre", "cm"},
                                   {"centimetres", "cm"},
                                   {"centimeter", "cm"},
                                   {"centimeters", "cm"},
                                   {"m", "m"},
                                   {"metre", "m"},
                                   {"metres", "m"},
                                   {"meter", "m"},
                                   {"meters", "m"},
                                   {"oz", "oz"},
                                   {"ounce", "oz"},
                                   {"ounces", "oz"},
                                   {"lb", "lb"},
                                   {"lbs", "lb"},
                                   {"pound", "lb"},
                                   {"pounds", "lb"},
                                   {"g", "g"},
                                   {"gram", "g"},
                                   {"grams", "g"},
                                   {"gramme", "g"},
                                   {"grammes", "g"},
                                   {"kg", "kg"},
                                   {"kilo", "kg"},
                                   {"kilos", "kg"},
                                   {"kilogram", "kg"},
                                   {"kilograms", "kg"},
                                   {"kilogramme", "kg"},
                                   {"kilogrammes", "kg"},
                                   {"gsm", "g/m2"},
                                   {"momme", "momme"},
                                   {"mommes", "momme"},
                                   {"lbf", "lbf"},
                                   {"n", "n"},
                                   {"newton", "n"},
                                   {"newtons", "n"},
                                   {"mmhg", "mmhg"},
                                   {"kpa", "kpa"},
                                   {"kilopascal", "kpa"},
                                   {"kilopascals", "kpa"},
                                   {"pa", "pa"},
                                   {"pascal", "pa"},
                                   {"pascals", "pa"},
                                   {"deg", "deg"},
                                   {"degree", "deg"},
                                   {"degrees", "deg"},
                                   {"°", "deg"},
                                   {"arcmin", "arcmin"},
                                   {"arcminute", "arcmin"},
                                   {"arcminutes", "arcmin"},
                                   {"%", "%"},
                                   {"percent", "%"},
                                   {"s", "s"},
                                   {"sec", "s"},
                                   {"secs", "s"},
                                   {"second", "s"},
                                   {"seconds", "s"},
                                   {"min", "min"},
                                   {"mins", "min"},
                                   {"minute", "min"},
                                   {"minutes", "min"},
                                   {"h", "h"},
                                   {"hr", "h"},
                                   {"hrs", "h"},
                                   {"hour", "h"},
                                   {"hours", "h"},
                                   {"day", "day"},
                                   {"days", "day"},
                                   {"week", "week"},
                                   {"weeks", "week"},
                                   {"tex", "tex"},
                                   {"dtex", "dtex"},
                                   {"den", "den"},
                                   {"denier", "den"},
                                   {"deniers", "den"},
                                   {"running", "running"},
                                   {"linear", "running"},
                                   {"stitch", "stitches"},
                                   {"stitches", "stitches"},
                                   {"yd2", "yd2"},
                                   {"in2", "in2"},
                                   {"m2", "m2"},
                                   {"cm2", "cm2"}};

// The nail is 1/16 yd (2 1/4 in), the old measure of cloth. Other factors: NIST SP 811 App. B.8; the tex is a gram in
// 1000 m and the denier a gram in 9000 m (ISO 1144).
constexpr std::int64_t kInch = Length::kPerInch, kMm = Length::kPerMm, kMinute = 60'000, kHour = 3'600'000;
constexpr System kYardPound = System::yard_and_pound;
constexpr Unit kUnits[] = {{"in", "in", Kind::length, kYardPound, kInch, 1},
                           {"nail", "nails", Kind::length, kYardPound, kInch * 9, 4},
                           {"ft", "ft", Kind::length, kYardPound, kInch * 12, 1},
                           {"yd", "yd", Kind::length, kYardPound, kInch * 36, 1},
                           {"mm", "mm", Kind::length, System::metric, kMm, 1},
                           {"cm", "cm", Kind::length, System::metric, kMm * 10, 1},
                           {"m", "m", Kind::length, System::metric, kMm * 1000, 1},
                           {"in2", "in²", Kind::area, kYardPound, 1, 1},
                           {"yd2", "yd²", Kind::area, kYardPound, 1296, 1},
                           {"cm2", "cm²", Kind::area, System::metric, 1, 1},
                           {"m2", "m²", Kind::area, System::metric, 10000, 1},
                           {"oz/yd2", "oz/yd²", Kind::cloth_weight, kYardPound, 1, 1},
                           {"g/m2", "g/m²", Kind::cloth_weight, System::metric, 1, 1},
                           {"momme", "momme", Kind::cloth_weight, System::other, 1, 1},
                           {"oz/running yd", "oz per running yd", Kind::running_weight, kYardPound, 1, 1},
                           {"oz", "oz", Kind::mass, kYardPound, 1, 1},
                           {"lb", "lb", Kind::mass, kYardPound, 16, 1},
                           {"g", "g", Kind::mass, System::metric, 1, 1},
                           {"kg", "kg", Kind::mass, System::metric, 1000, 1},
                           {"lbf", "lbf", Kind::force, kYardPound, 1, 1},
                           {"n", "N", Kind::force, System::metric, 1, 1},
                           {"mmhg", "mmHg", Kind::pressure, System::other, 1, 1},
                           {"pa", "Pa", Kind::pressure, System::metric, 1, 1},
                           {"kpa", "kPa", Kind::pressure, System::metric, 1000, 1},
                           {"lbf/in", "lbf/in", Kind::line_load, kYardPound, 1, 1},
                           {"n/m", "N/m", Kind::line_load, System::metric, 1, 1},
                           {"n/cm", "N/cm", Kind::line_load, System::metric, 100, 1},
                           {"arcmin", "arcmin", Kind::angle, System::other, 1, 60},
                           {"deg", "deg", Kind::angle, System::other, 1, 1},
                           {"%", "%", Kind::percent, System::other, 1, 1},
                           {"s", "s", Kind::span, System::other, 1000, 1},
                           {"min", "min", Kind::span, System::other, kMinute, 1},
                           {"h", "h", Kind::span, System::other, kHour, 1},
                           {"day", "days", Kind::span, System::other, 24 * kHour, 1},
                           {"week", "weeks", Kind::span, System::other, 168 * kHour, 1},
                           {"tex", "tex", Kind::fineness, System::other, 1, 1},
                           {"dtex", "dtex", Kind::fineness, System::other, 1, 10},
                           {"den", "den", Kind::fineness, System::other, 1, 9}};

// Letters to change, add, drop or swap with a neighbour to come from a to b; short words only.
std::size_t letters_between(std::string_view a, std::string_view b) {
  constexpr std::size_t kMost = 24;
  if (a.size() > kMost || b.size() > kMost) return kMost;
  std::array<std::array<std::size_t, kMost + 1>, kMost + 1> least{};
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        least[i][j] = i + j;
        continue;
      }
      least[i][j] = std::min({least[i - 1][j] + 1, least[i][j - 1] + 1, least[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        least[i][j] = std::min(least[i][j], least[i - 2][j - 2] + 1);
    }
  }
  return least[a.size()][b.size()];
}

std::string_view symbol_for(std::string_view typed) {
  const auto* found =
      std::find_if(std::begin(kSpellings), std::end(kSpellings), [&](const Spelling& s) { return s.typed == typed; });
  return found == std::end(kSpellings) ? typed : found->symbol;
}

}  // namespace

std::string canonical(const std::vector<Word>& words, std::size_t from, std::size_t to) {
  std::string out;
  bool square = false, touches = true;
  for (std::size_t i = from; i < to; ++i) {
    const std::string& typed = words[i].text;
    if (typed == "/" || typed == "per") {
      out += "/";
      touches = true;
      continue;
    }
    if (typed == "sq" || typed == "square") {
      square = true;
      continue;
    }
    std::string word(symbol_for(typed));
    if (word == typed && typed.size() > 1 && typed.back() == '2') {  // `yards2`
      const std::string_view plain = symbol_for(std::string_view(typed).substr(0, typed.size() - 1));
      word = std::string(plain) + "2";
    }
    if (!touches) out += " ";
    out += word;
    if (square && word.back() != '2') out += "2";
    square = touches = false;
  }
  if (out == "/cent") return "%";
  if (out == "mm hg") return "mmhg";
  return out;
}

const Unit* find_unit(std::string_view symbol) {
  const auto* found = std::find_if(std::begin(kUnits), std::end(kUnits), [&](const Unit& u) { return u.symbol == symbol; });
  return found == std::end(kUnits) ? nullptr : found;
}

const Unit* nearest_unit(std::string_view typed, Kind kind) {
  const std::size_t allowed = typed.size() < 2 ? 0 : typed.size() < 5 ? 1 : 2;
  const Unit* best = nullptr;
  std::size_t best_letters = allowed + 1;
  const auto consider = [&](std::string_view name, const Unit* unit) {
    const std::size_t letters = letters_between(typed, name);
    if (letters >= best_letters) return;
    best = unit;
    best_letters = letters;
  };
  for (const Unit& unit : kUnits) {
    if (unit.kind != kind) continue;
    consider(unit.symbol, &unit);
    for (const Spelling& spelling : kSpellings)
      if (spelling.symbol == unit.symbol) consider(spelling.typed, &unit);
  }
  return best;
}

}  // namespace gownsheaf::written
