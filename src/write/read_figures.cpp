// An older figures.json back to figures, for --since. The file may come from anywhere, so nothing in it is trusted.
#include <charconv>
#include <cmath>

#include "write/plans_json.h"
#include "write/write.h"

namespace gownsheaf {
namespace {

constexpr int kDeepest = 32;
constexpr std::size_t kMostFigures = 200'000, kLongestKey = 600, kLongestWords = 2'000;
constexpr std::int64_t kMostTicks = 1'000'000'000'000;
constexpr std::string_view kFormat = "gownsheaf figures 1", kFormatBegin = "gownsheaf figures ";

struct Unreadable {};  // a value that is not what figures_json writes

bool plain_words(const std::string& s, std::size_t longest) {
  if (s.size() > longest) return false;
  for (const char c : s)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) return false;
  return true;
}

const Json& member(const Json& object, const char* name) {
  const auto found = object.find(name);
  if (found == object.end()) throw Unreadable{};
  return *found;
}
std::string words(const Json& object, const char* name) {
  const Json& json = member(object, name);
  if (!json.is_string() || !plain_words(json.get_ref<const std::string&>(), kLongestWords)) throw Unreadable{};
  return json.get<std::string>();
}
std::int64_t whole(const Json& object, const char* name, std::int64_t most = kMostTicks) {
  const Json& json = member(object, name);
  if (!json.is_number_integer()) throw Unreadable{};
  if (json.is_number_unsigned() && json.get<std::uint64_t>() > static_cast<std::uint64_t>(most)) throw Unreadable{};
  const auto n = json.get<std::int64_t>();
  if (n > most || n < -most) throw Unreadable{};
  return n;
}
double measured(const Json& object) {
  const Json& json = member(object, "value");
  if (!json.is_number()) throw Unreadable{};
  const double value = json.get<double>();
  if (!std::isfinite(value) || std::abs(value) > 1e12) throw Unreadable{};
  return value;
}
Ratio fraction(const Json& object) {
  const std::int64_t n = whole(object, "numerator"), d = whole(object, "denominator");
  if (d <= 0) throw Unreadable{};
  return Ratio::of(n, d);
}
Area area(const Json& object) {  // written as digits, because 128 bits do not fit a JSON number
  const std::string digits = words(object, "square ticks");
  Int128 n = 0;
  const bool negative = !digits.empty() && digits[0] == '-';
  if (digits.size() > 28 || digits.size() == (negative ? 1u : 0u)) throw Unreadable{};
  for (std::size_t i = negative ? 1 : 0; i < digits.size(); ++i) {
    if (digits[i] < '0' || digits[i] > '9') throw Unreadable{};
    n = n * 10 + (digits[i] - '0');
  }
  return Area::square_ticks(negative ? -n : n);
}
Day day(const Json& object) {  // 2027-06-19
  const std::string s = words(object, "date");
  int part[3] = {0, 0, 0};
  const std::size_t from[3] = {0, 5, 8}, size[3] = {4, 2, 2};
  if (s.size() != 10 || s[4] != '-' || s[7] != '-') throw Unreadable{};
  for (int i = 0; i < 3; ++i) {
    const char* begin = s.data() + from[i];
    const auto read = std::from_chars(begin, begin + size[i], part[i]);
    if (read.ec != std::errc() || read.ptr != begin + size[i]) throw Unreadable{};
  }
  if (part[0] < 1 || part[1] < 1 || part[1] > 12 || part[2] < 1 || part[2] > 31) throw Unreadable{};
  const Day made = make_day(part[0], part[1], part[2]);
  if (iso_day(made) != s) throw Unreadable{};
  return made;
}

Value value_of(const Json& json) {
  const std::string type = words(json, "type");
  if (type == "none") return std::monostate{};
  if (type == "length") return Length::ticks(whole(json, "ticks"));
  if (type == "area") return area(json);
  if (type == "mass") return Mass{measured(json)};
  if (type == "mass per area") return MassPerArea{measured(json)};
  if (type == "force") return Force{measured(json)};
  if (type == "pressure") return Pressure{measured(json)};
  if (type == "load per length") return LoadPerLength{measured(json)};
  if (type == "angle") return Angle{measured(json)};
  if (type == "ratio") return fraction(json);
  if (type == "part of one") return Percent{fraction(json)};
  if (type == "money") return Money{whole(json, "hundredths"), words(json, "per")};
  if (type == "day") return day(json);
  if (type == "time") return Span{whole(json, "milliseconds")};
  if (type == "rate") return Rate{fraction(json), words(json, "of"), words(json, "per")};
  if (type == "count") return whole(json, "value");
  if (type == "words") return words(json, "value");
  if (type == "yes or no") {
    const Json& yes = member(json, "value");
    if (yes.is_boolean()) return yes.get<bool>();
  }
  throw Unreadable{};
}

// The kind of a key: its section, then whatever items stand before the quantity.
const FigureKind* kind_of(const std::string& key) {
  const auto section_end = key.find('/');
  if (section_end == std::string::npos) return nullptr;
  const std::string_view all = key, section = all.substr(0, section_end);
  for (std::size_t from = section_end + 1;;) {
    if (const FigureKind* kind = find_figure_kind(section, all.substr(from))) return kind;
    const auto next = all.find('/', from);
    if (next == std::string_view::npos) return nullptr;
    from = next + 1;
  }
}

Action action_of(const std::string& word) {
  for (const Action a : {Action::none, Action::recut, Action::remark, Action::buy})
    if (word == word_for(a)) return a;
  throw Unreadable{};
}

Figure figure_of(const Json& json) {
  Figure f;
  f.key = words(json, "key");
  if (f.key.empty() || f.key.size() > kLongestKey) throw Unreadable{};
  f.value = value_of(member(json, "value"));
  f.action = action_of(words(json, "action"));
  f.formula = words(json, "formula");
  if (const auto hidden = json.find("private"); hidden != json.end()) f.is_private = hidden->is_boolean() && hidden->get<bool>();
  if (const FigureKind* kind = kind_of(f.key)) {
    f.shown = kind->shown;
    f.action = kind->action;
    f.is_private = f.is_private || kind->is_private;
  }
  return f;
}

// Nothing deeper than kDeepest is kept or walked.
std::optional<Json> parsed(const std::string& bytes) {
  bool too_deep = false;
  const Json::parser_callback_t keep = [&](int depth, Json::parse_event_t, Json&) {
    too_deep = too_deep || depth > kDeepest;
    return !too_deep;
  };
  Json json = Json::parse(bytes, keep, false);
  if (json.is_discarded() || too_deep) return std::nullopt;
  return json;
}

}  // namespace

std::variant<OlderFigures, WriteFault> read_figures_json(const std::string& bytes, const std::string& name) {
  const std::string wanted = " `--since` takes an older project file, or the figures.json that was made beside its packet.";
  const auto json = parsed(bytes);
  if (!json) return WriteFault{name + " is no JSON that can be read." + wanted};
  const auto format = json->is_object() ? json->find("format") : json->end();
  if (!json->is_object() || format == json->end() || !format->is_string() ||
      format->get_ref<const std::string&>().compare(0, kFormatBegin.size(), kFormatBegin) != 0)
    return WriteFault{name + " is JSON, but holds no figures of a packet." + wanted};
  if (format->get_ref<const std::string&>() != kFormat) {
    const std::string& seen = format->get_ref<const std::string&>();
    return WriteFault{name + " is of another format" + (plain_words(seen, 60) ? " (`" + seen + "`)" : std::string()) +
                      "; this program reads `" + std::string(kFormat) + "`. Give `--since` the older project file instead."};
  }
  const auto list = json->find("figures");
  if (list == json->end() || !list->is_array()) return WriteFault{name + " has no list of figures." + wanted};
  if (list->size() > kMostFigures) return WriteFault{name + " holds more than 200,000 figures; no packet has so many." + wanted};
  OlderFigures older;
  older.private_known = false;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const std::string nth = "Figure " + whole_number(static_cast<std::int64_t>(i) + 1) + " of " + name;
    try {
      Figure f = figure_of((*list)[i]);
      if (older.figures.find(f.key) != nullptr)
        return WriteFault{nth + " has the key of an earlier one, `" + f.key + "`." + wanted};
      older.private_known = older.private_known || f.is_private;
      older.figures.add(std::move(f));
    } catch (const Unreadable&) {
      return WriteFault{nth + " cannot be read: its key or its value is not as a packet writes it." + wanted};
    } catch (const std::out_of_range&) {
      return WriteFault{nth + " cannot be read: its number is too large." + wanted};
    }
  }
  return older;
}

}  // namespace gownsheaf
