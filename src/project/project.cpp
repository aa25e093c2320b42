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
const Closure* Project::closure(std::string_view name) const { return by_name(closures, name); }
const EdgeLine* Project::edge(std::string_view name) const { return by_name(edges, name); }
const Seam* Project::seam(std::string_view name) const { return by_name(seams, name); }
const Notion* Project::notion(std::string_view name) const { return by_name(notions, name); }
const BoneStock* Project::stock(std::string_view name) const { return by_name(bone_stock, name); }

bool same_name(std::string_view a, std::string_view b) {
  while (!a.empty() && !b.empty())
    if (small_letter(next_letter(a)) != small_letter(next_letter(b))) return false;
  return a.empty() && b.empty();
}

}  // namespace gownsheaf
