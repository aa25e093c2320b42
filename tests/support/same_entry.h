// Two trees compared in every field.
#pragma once
#include <string>

#include "read/entry.h"

namespace gownsheaf::test {

// "" when they are the same, else where they first differ.
inline std::string first_difference(const Entry& a, const Entry& b, const std::string& path = "") {
  const std::string here = path + "/" + a.key;
  if (a.kind != b.kind) return here + ": kind";
  if (a.key != b.key) return here + ": key";
  if (a.key_at != b.key_at) return here + ": place of the key";
  if (a.at != b.at) return here + ": place";
  if (a.text != b.text) return here + ": text";
  if (a.quoted != b.quoted) return here + ": quoted";
  if (a.children.size() != b.children.size()) return here + ": how many children";
  for (std::size_t i = 0; i < a.children.size(); ++i)
    if (std::string found = first_difference(a.children[i], b.children[i], here + "[" + std::to_string(i) + "]"); !found.empty())
      return found;
  return "";
}

}  // namespace gownsheaf::test
