#include "project/project.h"

#include <algorithm>
#include <iterator>

#include "unicode/forms.h"

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
const Round* Project::skirt_round() const {
  for (const Round& round : rounds)
    for (const std::string& name : round.of) {
      const Piece* p = piece(name);
      if (p == nullptr || !p->part_of.known()) continue;
      if (*p->part_of == PartOf::skirt || *p->part_of == PartOf::petticoat) return &round;
    }
  return nullptr;
}
const Round* Project::waist_round() const {
  if (const Round* round = skirt_round(); round != nullptr) return round;
  constexpr PartOf elsewhere[] = {PartOf::sleeve, PartOf::leg, PartOf::collar, PartOf::trimming, PartOf::pocket};
  for (const Round& round : rounds) {
    const bool other = std::any_of(round.of.begin(), round.of.end(), [&](const std::string& name) {
      const Piece* p = piece(name);
      if (p == nullptr || !p->part_of.known()) return false;
      return std::find(std::begin(elsewhere), std::end(elsewhere), *p->part_of) != std::end(elsewhere);
    });
    if (!other) return &round;
  }
  return nullptr;
}
const Closure* Project::closure(std::string_view name) const { return by_name(closures, name); }
const EdgeLine* Project::edge(std::string_view name) const { return by_name(edges, name); }
const Seam* Project::seam(std::string_view name) const { return by_name(seams, name); }
const Notion* Project::notion(std::string_view name) const { return by_name(notions, name); }
const BoneStock* Project::stock(std::string_view name) const { return by_name(bone_stock, name); }

bool same_name(std::string_view a, std::string_view b) {
  const auto small = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
  const auto plain = [](char c) { return static_cast<unsigned char>(c) < 0x80; };
  for (std::size_t i = 0; i < a.size() && i < b.size(); ++i) {
    if (!plain(a[i]) || !plain(b[i])) return case_folded(a.substr(i)) == case_folded(b.substr(i));
    if (small(a[i]) != small(b[i])) return false;
  }
  return a.size() == b.size();
}

}  // namespace gownsheaf
