#include "calculate/what_changed.h"

#include <algorithm>
#include <set>

namespace gownsheaf {
namespace {

template <class Items>
void add_names(Renamed& renamed, const char* section, const Items& items) {
  for (const auto& item : items)
    if (!item.named.was.empty()) renamed[section][item.named.was] = item.named.name;
}

std::vector<std::string> parts_of(const std::string& key) {
  std::vector<std::string> parts;
  for (std::size_t from = 0;;) {
    const std::size_t slash = key.find('/', from);
    parts.push_back(key.substr(from, slash == std::string::npos ? slash : slash - from));
    if (slash == std::string::npos) return parts;
    from = slash + 1;
  }
}

bool rename(std::string& name, const Renamed& renamed, const std::string& section) {
  const auto names = renamed.find(section);
  if (names == renamed.end()) return false;
  for (const auto& [old_name, new_name] : names->second)
    if (same_name(old_name, name)) {
      name = new_name;
      return true;
    }
  return false;
}

// "skirt breadth 2" -> the piece and its number.
void rename_copy(std::string& copy, const Renamed& renamed) {
  const auto space = copy.rfind(' ');
  if (space == std::string::npos) return;
  std::string piece = copy.substr(0, space);
  if (rename(piece, renamed, "pieces")) copy = piece + copy.substr(space);
}

bool is_time(const std::string& key) { return key.rfind("steps/", 0) == 0; }

bool acts_on_cloth(Action a) { return a == Action::recut || a == Action::remark; }

}  // namespace

Renamed renamed_items(const Project& project) {
  Renamed renamed;
  add_names(renamed, "cloths", project.cloths);
  add_names(renamed, "notions", project.notions);
  add_names(renamed, "pieces", project.pieces);
  add_names(renamed, "seams", project.seams);
  add_names(renamed, "edges", project.edges);
  add_names(renamed, "rounds", project.rounds);
  add_names(renamed, "pleats", project.pleats);
  add_names(renamed, "closures", project.closures);
  add_names(renamed, "bones", project.bones);
  add_names(renamed, "bone stock", project.bone_stock);
  add_names(renamed, "fittings", project.fittings);
  return renamed;
}

std::string key_of_today(const std::string& older, const Renamed& renamed) {
  if (renamed.empty()) return older;
  std::vector<std::string> parts = parts_of(older);
  if (parts.size() > 1) rename(parts[1], renamed, parts[0]);
  if (parts[0] == "pieces" && parts.size() > 3) rename(parts[2], renamed, "cloths");
  if (parts[0] == "cloths" && parts.size() > 3 && parts[2] == "lay") rename_copy(parts[3], renamed);
  std::string key = parts[0];
  for (std::size_t i = 1; i < parts.size(); ++i) key += "/" + parts[i];
  return key;
}

Changes what_changed(const OlderFigures& older, const Figures& today, const Renamed& renamed, ShownIn shown_in) {
  Changes changes;
  changes.private_compared = older.private_known;
  std::map<std::string, const Figure*, std::less<>> by_key;
  for (const Figure& f : older.figures.all()) by_key.emplace(key_of_today(f.key, renamed), &f);
  for (const Figure& f : today.all()) {
    if (is_time(f.key) || (f.is_private && !older.private_known)) continue;
    const auto was = by_key.find(f.key);
    if (was == by_key.end()) {
      changes.all.push_back({Change::Kind::is_new, f.key, std::nullopt, f, f.action, f.is_private});
    } else if (plain_text(*was->second, shown_in) != plain_text(f, shown_in)) {
      const Action action = f.action == Action::none ? was->second->action : f.action;
      changes.all.push_back({Change::Kind::altered, f.key, *was->second, f, action, f.is_private || was->second->is_private});
    } else {
      continue;
    }
    changes.marked.insert(f.key);
  }
  for (const Figure& f : older.figures.all()) {
    const std::string key = key_of_today(f.key, renamed);
    if (!is_time(key) && today.find(key) == nullptr)
      changes.all.push_back({Change::Kind::gone, key, f, std::nullopt, f.action, f.is_private});
  }
  return changes;
}

void add_changed_times(const OlderFigures& older, const Figures& today, ShownIn shown_in, Changes& changes) {
  for (const Figure& f : today.all()) {
    const Figure* was = is_time(f.key) ? older.figures.find(f.key) : nullptr;
    if (was == nullptr || plain_text(*was, shown_in) == plain_text(f, shown_in)) continue;
    changes.all.push_back({Change::Kind::altered, f.key, *was, f, f.action, false});
    changes.marked.insert(f.key);
  }
}

void add_steps_again(const Plans& plans, const Project& project, Changes& changes) {
  const auto moved_in = [&](const Say& say) {
    return std::any_of(say.begin(), say.end(), [&](const SayPart& part) {
      if (!changes.touches(part.figure)) return false;
      return std::any_of(changes.all.begin(), changes.all.end(),
                         [&](const Change& c) { return c.key == part.figure && acts_on_cloth(c.action); });
    });
  };
  const auto run_moved = [&](const std::string& run) {
    const std::string before = "pleats/" + run + "/";
    return project.run(run) != nullptr && std::any_of(changes.all.begin(), changes.all.end(), [&](const Change& c) {
             return c.action == Action::remark && c.key.compare(0, before.size(), before) == 0;
           });
  };
  for (const PlannedStep& step : plans.work) {
    if (!step.done) continue;
    std::string because;
    if (moved_in(step.act) || std::any_of(step.shows.begin(), step.shows.end(), moved_in)) because = "its figures are others now";
    if (because.empty() && run_moved(step.item)) because = "the marks of " + step.item + " moved";
    for (const CutAlready& cut : changes.cut) {  // what is too large is trimmed, not cut again
      const bool cut_again = cut.kind == CutAlready::Kind::too_small || cut.kind == CutAlready::Kind::wanted_more;
      const bool here = step.id == cut.step || (cut.step.find('@') == std::string::npos && step.id.rfind(cut.step + "@", 0) == 0);
      if (because.empty() && cut_again && here && !cut.is_private) because = cut.piece + " no longer serves";
    }
    if (!because.empty()) changes.again.push_back({step.id, because});
  }
}

}  // namespace gownsheaf
