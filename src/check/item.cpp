// Taking typed values out of one block of the file.
#include "check/names.h"
#include "check/reading.h"

namespace gownsheaf {

const KeySpec* Item::spec(std::string_view key) const {
  return find_key(path_.empty() ? std::string(key) : path_ + "/" + std::string(key));
}

const Entry* Item::at(std::string_view key) const {
  if (entry_ == nullptr || entry_->kind != Entry::Kind::block) return nullptr;
  return entry_->find(key);
}

bool Item::is_block(std::string_view key) const {
  const Entry* e = at(key);
  return e != nullptr && e->kind == Entry::Kind::block;
}

Item Item::block(std::string_view key) const {
  return Item(is_block(key) ? at(key) : nullptr, path_.empty() ? std::string(key) : path_ + "/" + std::string(key));
}

std::vector<const Entry*> Item::values(std::string_view key) const {
  std::vector<const Entry*> found;
  const Entry* e = at(key);
  if (e == nullptr || e->kind == Entry::Kind::nothing) return found;
  if (e->kind != Entry::Kind::list) return {e};
  for (const Entry& child : e->children) found.push_back(&child);
  return found;
}

std::vector<Item> Item::items(std::string_view key) const {
  std::vector<Item> found;
  const std::string path = (path_.empty() ? std::string(key) : path_ + "/" + std::string(key)) + "/*";
  const auto& keys = keys_below(path);
  for (const Entry* e : values(key)) {
    if (e->kind != Entry::Kind::block) continue;
    // One block where a list is asked for is one item only when it has the key that names an item.
    if (e == at(key) && !keys.empty() && e->find(keys.front()->path.substr(path.size() + 1)) == nullptr) continue;
    found.emplace_back(e, path);
  }
  return found;
}

template <class T, class Read>
Given<T> Item::quantity(std::string_view key, Read read) const {
  Given<T> given;
  const Entry* e = at(key);
  const KeySpec* known = spec(key);
  if (e == nullptr || known == nullptr || e->kind != Entry::Kind::text) return given;
  given.at = e->at;
  if (e->text == kToMeasure) {
    given.origin = Origin::to_measure;
  } else if (e->text == kNone && may_be_none(*known)) {
    given.origin = Origin::none;
  } else if (!one_of_words(known->words, e->text)) {
    read(*e, given);
    if (given.value) given.origin = Origin::written;
  }
  return given;
}

template <class T, class Reader>
Given<T> Item::plain_quantity(std::string_view key, Reader reader) const {
  return quantity<T>(key, [&](const Entry& e, Given<T>& g) {
    const auto result = reader(e.text, key);
    if (result.ok()) g.value = result.value();
  });
}

Given<Length> Item::length(std::string_view key) const {
  auto given = quantity<Length>(key, [&](const Entry& e, Given<Length>& g) {
    const auto result = read_length(e.text, key);
    if (result.ok()) g.value = result.value().length;
  });
  if (given.origin == Origin::none) given.value = Length{};
  return given;
}

Given<Percent> Item::percent(std::string_view key) const {
  auto given = quantity<Percent>(key, [&](const Entry& e, Given<Percent>& g) {
    const auto result = read_percent(e.text, key);
    if (result.ok()) g.value = result.value();
  });
  if (given.origin == Origin::none) given.value = Percent{};
  return given;
}

Given<MassPerArea> Item::cloth_weight(std::string_view key, std::optional<Length> full_width) const {
  return quantity<MassPerArea>(key, [&](const Entry& e, Given<MassPerArea>& g) {
    const auto result = read_cloth_weight(e.text, key);
    if (!result.ok()) return;
    g.value = result.value().weight;
    if (!g.value && result.value().ounces_per_running_yard && full_width)
      g.value = ounces_per_running_yard(*result.value().ounces_per_running_yard, *full_width);
  });
}

Given<Mass> Item::mass(std::string_view key) const { return plain_quantity<Mass>(key, read_mass); }
Given<Force> Item::force(std::string_view key) const { return plain_quantity<Force>(key, read_force); }
Given<Pressure> Item::pressure(std::string_view key) const { return plain_quantity<Pressure>(key, read_pressure); }
Given<Angle> Item::angle(std::string_view key) const { return plain_quantity<Angle>(key, read_angle); }

Given<std::int64_t> Item::count(std::string_view key) const {
  return quantity<std::int64_t>(key, [&](const Entry& e, Given<std::int64_t>& g) {
    const auto result = read_count(e.text, key);
    if (result.ok()) g.value = result.value();
  });
}

Given<Ratio> Item::ratio(std::string_view key) const {
  return quantity<Ratio>(key, [&](const Entry& e, Given<Ratio>& g) {
    const auto result = read_ratio(e.text, key);
    if (result.ok()) g.value = result.value();
  });
}

Given<Ratio> Item::number(std::string_view key) const {
  return quantity<Ratio>(key, [&](const Entry& e, Given<Ratio>& g) {
    const auto result = read_number(e.text, key);
    if (result.ok()) g.value = result.value();
  });
}

Given<Day> Item::day(std::string_view key) const {
  return quantity<Day>(key, [&](const Entry& e, Given<Day>& g) {
    const auto result = read_day(e.text, key);
    if (result.ok()) g.value = result.value();
  });
}

Given<Money> Item::money(std::string_view key) const {
  return quantity<Money>(key, [&](const Entry& e, Given<Money>& g) {
    const auto result = read_money(e.text, key);
    if (result.ok()) g.value = result.value();
  });
}

Given<Span> Item::span(std::string_view key) const {
  return quantity<Span>(key, [&](const Entry& e, Given<Span>& g) {
    const auto result = read_span(e.text, key);
    if (result.ok()) g.value = result.value();
  });
}

Given<bool> Item::yes_no(std::string_view key) const {
  return quantity<bool>(key, [&](const Entry& e, Given<bool>& g) {
    if (e.text == "yes" || e.text == "true") g.value = true;
    if (e.text == "no" || e.text == "false") g.value = false;
  });
}

Given<std::string> Item::word(std::string_view key) const {
  Given<std::string> given;
  const Entry* e = at(key);
  const KeySpec* known = spec(key);
  if (e == nullptr || known == nullptr || e->kind != Entry::Kind::text) return given;
  given.at = e->at;
  if (!one_of_words(known->words, e->text)) return given;
  given.value = e->text;
  given.origin = Origin::written;
  return given;
}

Given<std::string> Item::text(std::string_view key) const {
  const Entry* e = at(key);
  if (e == nullptr || e->kind != Entry::Kind::text) return {};
  return Given<std::string>::written(e->text, e->at);
}

std::string Item::plain(std::string_view key) const {
  const Entry* e = at(key);
  return e != nullptr && e->kind == Entry::Kind::text ? e->text : std::string();
}

}  // namespace gownsheaf
