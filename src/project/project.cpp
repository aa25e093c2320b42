#include "project/project.h"

#include "project/letters.h"

namespace gownsheaf {

namespace {

template <class T>
const T* by_name(const std::vector<T>& items, std::string_view name) {
  for (const T& item : items)
    if (same_name(item.named.name, name)) return &item;
  return nullptr;
}

}  // namespace

Length Cloth::usable_width() const {
  Length usable = width.known() ? *width : Length{};
  if (selvage.known()) usable -= *selvage * 2;
  return usable;
}

const Cloth* Project::cloth(std::string_view name) const { return by_name(cloths, name); }
const Piece* Project::piece(std::string_view name) const { return by_name(pieces, name); }
const PleatRun* Project::run(std::string_view name) const { return by_name(pleats, name); }
const Round* Project::round(std::string_view name) const { return by_name(rounds, name); }

bool same_name(std::string_view a, std::string_view b) {
  while (!a.empty() && !b.empty())
    if (small_letter(next_letter(a)) != small_letter(next_letter(b))) return false;
  return a.empty() && b.empty();
}

}  // namespace gownsheaf
