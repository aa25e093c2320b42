#include "check/reading.h"

#include "check/names.h"
#include "unicode/utf8.h"
#include "units/print.h"

namespace gownsheaf {

namespace {

bool less(Length a, Length b) { return a < b; }
bool less(std::int64_t a, std::int64_t b) { return a < b; }
bool less(const Ratio& a, const Ratio& b) { return static_cast<Int128>(a.n) * b.d < static_cast<Int128>(b.n) * a.d; }
bool less(const Percent& a, const Percent& b) { return less(a.of_one, b.of_one); }
template <class Tag>
bool less(const Measured<Tag>& a, const Measured<Tag>& b) {
  return a.value < b.value;
}

std::string seen(std::string_view key, std::string_view text) { return "`" + std::string(key) + ": " + std::string(text) + "`"; }

// `265 in` with a point before its last digit, or "".
std::string with_point(std::string_view text) {
  std::size_t digits = 0;
  while (digits < text.size() && text[digits] >= '0' && text[digits] <= '9') ++digits;
  if (digits < 2 || (digits < text.size() && text[digits] != ' ')) return "";
  std::string made(text);
  made.insert(digits - 1, ".");
  return made;
}

// A limit of the key table in the maker's own kind of tape besides: `80 in (203.2 cm)` where she wrote centimetres.
std::string limit_for(std::string_view limit, KeyKind kind, std::string_view text) {
  std::string shown(limit);
  if (kind != KeyKind::length) return shown;
  const auto imperial = [](const WrittenLength& w) {
    return w.unit == LengthUnit::inch || w.unit == LengthUnit::foot || w.unit == LengthUnit::yard || w.unit == LengthUnit::nail;
  };
  const auto written = read_length(text, ""), most = read_length(limit, "");
  if (!written.ok() || !most.ok() || imperial(written.value()) == imperial(most.value())) return shown;
  const bool in_inches = imperial(most.value());
  std::string other = decimal(in_inches ? most.value().length.in_mm() / 10 : most.value().length.in_inches(), 1);
  if (other.ends_with(".0")) other.resize(other.size() - 2);
  return shown + " (" + other + (in_inches ? " cm)" : " in)");
}

// Reader: text, key -> ReadResult<T>. value_of: what of T is compared.
template <class Read, class ValueOf>
std::optional<Misread> outside(const KeySpec& spec, KeyKind kind, std::string_view text, std::string_view key, Read read,
                               ValueOf value_of) {
  const auto result = read(text, key);
  if (!result.ok()) return result.fault();
  const auto value = value_of(result.value());
  const auto beyond = [&](const auto& v) -> int {
    if (const std::string_view most = most_of(spec, kind); !most.empty()) {
      const auto limit = read(most, key);
      if (limit.ok() && less(value_of(limit.value()), v)) return 1;
    }
    if (const std::string_view least = least_of(spec, kind); !least.empty()) {
      const auto limit = read(least, key);
      if (limit.ok() && less(v, value_of(limit.value()))) return -1;
    } else if (kind == KeyKind::length) {
      using V = std::decay_t<decltype(v)>;
      if (!less(V{}, v)) return -2;
    }
    return 0;
  };
  const int side = beyond(value);
  if (side == 0) return {};
  Misread fault{"out-of-range", "", "", 0, 0};
  if (side == 1) {
    fault.sentence = seen(key, text) + " is more than " + limit_for(most_of(spec, kind), kind, text) + ".";
    const std::string pointed = with_point(text);
    if (!pointed.empty()) {
      const auto again = read(pointed, key);
      if (again.ok() && beyond(value_of(again.value())) == 0) fault.hint = "is a point missing: `" + pointed + "`?";
    }
  } else if (side == -1) {
    fault.sentence = seen(key, text) + " is less than " + limit_for(least_of(spec, kind), kind, text) + ".";
  } else {
    fault.sentence = seen(key, text) + " is no length: it must be more than nothing.";
    fault.hint = may_be_none(spec) ? "where there is none: `" + std::string(key) + ": none`"
                                   : "not known yet: `" + std::string(key) + ": to measure`";
  }
  if (fault.hint.empty() && side != -2) {
    const std::string_view lowest = least_of(spec, kind), highest = most_of(spec, kind);
    const std::string least = limit_for(lowest, kind, text), most = limit_for(highest, kind, text);
    fault.hint = lowest.empty()    ? "it may be up to " + most
                 : highest.empty() ? "it may be " + least + " or more"
                                   : "it may be " + least + " to " + most;
  }
  return fault;
}

template <class Read>
std::optional<Misread> unread(std::string_view text, std::string_view key, Read read) {
  const auto result = read(text, key);
  if (result.ok()) return {};
  return result.fault();
}

constexpr auto same = [](const auto& v) { return v; };

std::optional<Misread> days_fault(std::string_view text, std::string_view key) {
  const auto to = text.find(" to ");
  if (to == std::string_view::npos) return unread(text, key, read_day);
  if (auto fault = unread(text.substr(0, to), key, read_day)) return fault;
  auto fault = unread(text.substr(to + 4), key, read_day);
  if (fault) fault->at += count_characters(text.substr(0, to + 4));
  return fault;
}

std::optional<Misread> pairs_fault(std::string_view text, std::string_view key) {
  std::string_view number = text;
  for (const std::string_view end : {" pairs", " pair"})
    if (number.ends_with(end)) number.remove_suffix(end.size());
  if (number.size() < text.size()) return unread(number, key, read_count);
  return Misread{"number-form", seen(key, text) + " is neither a number nor pairs.", "`2`, `pair` or `2 pairs`", 0, 0};
}

}  // namespace

bool is_quantity(KeyKind kind) {
  switch (kind) {
    case KeyKind::length:
    case KeyKind::cloth_weight:
    case KeyKind::mass:
    case KeyKind::force:
    case KeyKind::pressure:
    case KeyKind::angle:
    case KeyKind::ratio:
    case KeyKind::count:
    case KeyKind::number:
    case KeyKind::percent:
    case KeyKind::day:
    case KeyKind::day_range:
    case KeyKind::span:
    case KeyKind::money:
    case KeyKind::rate:
    case KeyKind::fineness:
    case KeyKind::pairs: return true;
    default: return false;
  }
}

bool may_be_none(const KeySpec& spec) {
  if (spec.required) return false;
  if (spec.path.find('/') == std::string_view::npos) return spec.kind == KeyKind::list || spec.kind == KeyKind::map;
  switch (spec.kind) {
    case KeyKind::length:
      // A girth or a width of nothing is a slip; a hem of none is a raw edge. Of keys that are not worked out yet nothing is known.
      return spec.group.empty() && (spec.least.starts_with("0 ") || (spec.least.empty() && spec.first_needed > 1));
    case KeyKind::percent:
    case KeyKind::list:
    case KeyKind::map:
    case KeyKind::block: return spec.group.empty();
    case KeyKind::name: return !spec.refers_to.empty();
    default: return false;
  }
}

bool one_of_words(std::string_view words, std::string_view wanted) {
  while (!words.empty()) {
    const auto cut = words.find('|');
    if (words.substr(0, cut) == wanted) return true;
    if (cut == std::string_view::npos) break;
    words.remove_prefix(cut + 1);
  }
  return false;
}

// Limits of a key are of its first kind; a second kind that will do has its own.
static bool limits_are_of(const KeySpec& spec, KeyKind kind) {
  const bool many = spec.kind == KeyKind::list || spec.kind == KeyKind::map;
  return kind == (many ? spec.each : spec.kind);
}

std::string_view least_of(const KeySpec& spec, KeyKind kind) {
  if (limits_are_of(spec, kind) && !spec.least.empty()) return spec.least;
  switch (kind) {
    case KeyKind::count:
    case KeyKind::ratio: return "1";
    case KeyKind::percent: return "0 %";
    case KeyKind::number: return "0";
    default: return {};
  }
}

std::string_view most_of(const KeySpec& spec, KeyKind kind) {
  if (limits_are_of(spec, kind) && !spec.most.empty()) return spec.most;
  switch (kind) {
    case KeyKind::length: return "50 yd";
    case KeyKind::count: return "500";
    case KeyKind::ratio: return "20";
    case KeyKind::percent: return "30 %";
    case KeyKind::text: return "200";
    default: return {};
  }
}

std::optional<Misread> fault_in(const KeySpec& spec, KeyKind kind, std::string_view text, std::string_view key,
                                std::optional<WrittenLength>* length) {
  switch (kind) {
    case KeyKind::length: {
      const auto result = read_length(text, key);
      if (result.ok() && length != nullptr) *length = result.value();
      return outside(spec, kind, text, key, read_length, [](const WrittenLength& w) { return w.length; });
    }
    case KeyKind::count: return outside(spec, kind, text, key, read_count, same);
    case KeyKind::ratio: return outside(spec, kind, text, key, read_ratio, same);
    case KeyKind::number: return outside(spec, kind, text, key, read_number, same);
    case KeyKind::percent: return outside(spec, kind, text, key, read_percent, same);
    case KeyKind::pressure: return outside(spec, kind, text, key, read_pressure, same);
    case KeyKind::angle: return unread(text, key, read_angle);
    case KeyKind::cloth_weight: return unread(text, key, read_cloth_weight);
    case KeyKind::mass: return unread(text, key, read_mass);
    case KeyKind::force: return unread(text, key, read_force);
    case KeyKind::day: return unread(text, key, read_day);
    case KeyKind::day_range: return days_fault(text, key);
    case KeyKind::span: return unread(text, key, read_span);
    case KeyKind::money: return unread(text, key, read_money);
    case KeyKind::rate: return unread(text, key, read_rate);
    case KeyKind::fineness: return unread(text, key, read_fineness);
    case KeyKind::pairs: return pairs_fault(text, key);
    default: return {};
  }
}

SourceSpan narrowed(const Entry& entry, int at, int length) {
  SourceSpan span = entry.at;
  if (length <= 0) return span;
  span.column += at + (entry.quoted ? 1 : 0);
  span.length = length;
  return span;
}

}  // namespace gownsheaf
