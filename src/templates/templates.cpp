#include "templates/templates.h"

#include <algorithm>

namespace gownsheaf {
namespace {

// Names of the tables are plain Latin letters; case is ignored for those alone.
bool same_word(std::string_view a, std::string_view b) {
  const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
  return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [&](char x, char y) { return lower(x) == lower(y); });
}

}  // namespace

const PacketSet* Templates::set(std::string_view name) const {
  for (const PacketSet& s : sets)
    if (same_word(s.name, name)) return &s;
  return nullptr;
}

const Step* Templates::step(std::string_view id) const {
  for (const Step& s : steps)
    if (s.id == id) return &s;
  return nullptr;
}

const ClothKind* Templates::cloth_kind(std::string_view name) const {
  for (const ClothKind& k : cloth_kinds)
    if (same_word(k.kind, name)) return &k;
  for (const ClothKind& k : cloth_kinds)
    for (const std::string& other : k.also)
      if (same_word(other, name)) return &k;
  return nullptr;
}

const ClosingBand* ClosingRules::band(std::string_view name) const {
  for (const ClosingBand& b : bands)
    if (b.name == name) return &b;
  return nullptr;
}

}  // namespace gownsheaf
