#include "calculate/cloth_touched.h"

#include <algorithm>

namespace gownsheaf {
namespace {

bool holds_name(const std::vector<std::string>& names, std::string_view wanted) {
  return std::any_of(names.begin(), names.end(), [&](const std::string& n) { return same_name(n, wanted); });
}

bool cut_from(const Project& project, std::string_view piece, std::string_view cloth) {
  const Piece* p = project.piece(piece);
  return p != nullptr && holds_name(p->from, cloth);
}

bool any_cut_from(const Project& project, const std::vector<std::string>& pieces, std::string_view cloth) {
  return std::any_of(pieces.begin(), pieces.end(), [&](const std::string& p) { return cut_from(project, p, cloth); });
}

bool touches_cloth(const Diagnostic& d, std::string_view cloth, const Project& project) {
  const auto may_be = [&](std::string_view section) { return d.section.empty() || d.section == section; };
  if (may_be("cloths") && same_name(d.item, cloth)) return true;
  if (may_be("pieces") && cut_from(project, d.item, cloth)) return true;
  if (may_be("pleats"))
    if (const PleatRun* run = project.run(d.item); run != nullptr && any_cut_from(project, run->of, cloth)) return true;
  if (may_be("rounds"))
    if (const Round* round = project.round(d.item); round != nullptr) {
      if (any_cut_from(project, round->of, cloth)) return true;
      for (const std::string& name : round->runs)
        if (const PleatRun* run = project.run(name); run != nullptr && any_cut_from(project, run->of, cloth)) return true;
    }
  return false;
}

}  // namespace

bool hold_touches(const Diagnostic& message, std::string_view item, const Project& project) {
  if (message.item.empty() || item.empty()) return false;
  if (project.cloth(item) != nullptr && touches_cloth(message, item, project)) return true;
  if (project.cloth(item) != nullptr) return false;
  const Piece* piece = project.piece(item);
  if (piece == nullptr) return false;
  return std::any_of(piece->from.begin(), piece->from.end(),
                     [&](const std::string& cloth) { return touches_cloth(message, cloth, project); });
}

}  // namespace gownsheaf
