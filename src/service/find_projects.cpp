#include "service/find_projects.h"

#include <algorithm>
#include <climits>
#include <map>
#include <set>

#include "files/files.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kLookedAt = 2u << 20;  // a project is no larger

bool begins_with_key(std::string_view line) {
  for (const std::string_view key : {"gownsheaf", "\"gownsheaf\"", "'gownsheaf'", "{gownsheaf", "{ gownsheaf"})
    if (line.starts_with(key)) {
      line.remove_prefix(key.size());
      while (line.starts_with(' ')) line.remove_prefix(1);
      return line.starts_with(':');
    }
  return false;
}

class Walk {
 public:
  Walk(const ProjectSearch& search, FoundProjects& found, bool deeper) : search_(search), found_(found), deeper_(deeper) {}

  void folder(const std::string& below, int depth) {
    const std::string path = path_of(below);
    if (search_.follow_links || !search_.not_into.empty()) {
      const auto real = real_path_of(path);
      if (real && *real == search_.not_into) return;
      if (real && search_.follow_links && !been_.insert(*real).second) return;  // links lead in a ring
    }
    if (search_.entering) search_.entering(below);
    // The folder that was named may itself be a link; those in it may not.
    const auto entries = list_entries(path, below.empty() || search_.follow_links ? Links::inside : Links::refused);
    if (!entries.ok()) {
      found_.faults.push_back(entries.fault.sentence);
      found_.unread = true;
      return;
    }
    found_.folders.push_back(below);
    for (const FolderEntry& entry : *entries.value) {
      if (entry.name.starts_with('.')) continue;
      if (++seen_ > kMostEntries) {
        if (seen_ == kMostEntries + 1)
          found_.faults.push_back("`" + search_.folder + "` holds more than 1,000,000 files; the rest is not looked at.");
        return;
      }
      take(entry, below.empty() ? entry.name : below + "/" + entry.name, depth);
    }
  }

 private:
  using Kind = FolderEntry::Kind;

  std::string path_of(const std::string& below) const { return below.empty() ? search_.folder : search_.folder + "/" + below; }

  void take(const FolderEntry& entry, const std::string& below, int depth) {
    Kind kind = entry.kind;
    if (kind == Kind::link && search_.follow_links) kind = kind_at(path_of(below));
    if (kind == Kind::folder) {
      if (!deeper_) return;
      if (depth < kDeepestFolder) return folder(below, depth + 1);
      found_.faults.push_back("`" + path_of(below) + "` lies deeper than 32 folders and is not looked into.");
      return;
    }
    if (!is_yaml_name(entry.name) || (search_.wanted && !search_.wanted(output_stem(below)))) return;
    if (kind == Kind::file) {
      // A file that cannot be read may be a project: it is reported when it is to be made.
      const auto bytes = search_.follow_links ? read_named_file(path_of(below), kLookedAt)
                                              : read_below(search_.folder, below, kLookedAt, Links::refused);
      if (bytes.ok() && !is_project(entry.name, *bytes.value)) return found_.passed_over.push_back(below);
      return found_.projects.push_back({below, output_stem(below), ""});
    }
    found_.projects.push_back(
        {below, output_stem(below),
         kind == Kind::link ? "It is a link; links are not followed without `--trust-paths`." : "It is not an ordinary file."});
  }

  const ProjectSearch& search_;
  FoundProjects& found_;
  bool deeper_;
  std::size_t seen_ = 0;
  std::set<std::string> been_;
};

// A folder of this name would stand where a packet's file is to be, or what is kept of it, or the list.
bool named_as_a_file_written(std::string_view folder, bool at_top) {
  for (const std::string_view ending : {".pdf", ".figures.json", ".work.ics", ".problems.txt", ".made", ".lays", ".stopped"})
    if (folder.ends_with(ending)) return true;
  return at_top && folder.starts_with("batch.") && folder.ends_with(".json");
}

// The names of what is written beside a packet are longer than its project's.
bool too_long(const std::string& stem) { return file_name_of(stem).size() + std::string_view(".figures.json").size() > NAME_MAX; }

std::string folder_in_the_way(const std::string& path) {
  for (std::size_t at = 0, slash; (slash = path.find('/', at)) != std::string::npos; at = slash + 1)
    if (std::string name = path.substr(at, slash - at); named_as_a_file_written(name, at == 0)) return name;
  return "";
}

// Two projects may not make one packet, nor one take the name of the list.
void refuse_clashes(FoundProjects& found) {
  std::sort(found.projects.begin(), found.projects.end(),
            [](const FoundProject& a, const FoundProject& b) { return a.path < b.path; });
  std::map<std::string, std::string> by_stem;
  for (FoundProject& project : found.projects) {
    const auto [at, fresh] = by_stem.emplace(project.stem, project.path);
    if (too_long(project.stem) && project.refused.empty())
      project.refused =
          "Its name is too long: `.figures.json` is written beside its packet, which leaves 242 bytes before `.yaml`.";
    if (!fresh) {
      if (project.refused.empty())
        project.refused = "Its packet would be that of `" + at->second + "`; give one of them another name.";
      project.stem = project.path;  // what is told beside it must not stand in the other's place
      by_stem.emplace(project.stem, project.path);
    }
    if (const std::string folder = folder_in_the_way(project.path); !folder.empty() && project.refused.empty())
      project.refused =
          "Its folder `" + folder + "` has the name of a file that is written beside packets; call the folder otherwise.";
    if ((project.stem == "index" || (project.stem.starts_with("index.") && project.stem.find('/') == std::string::npos)) &&
        project.refused.empty())
      project.refused = "Its packet would be `index.pdf`, which is the list of packets; give it another name.";
  }
}

}  // namespace

bool is_yaml_name(std::string_view name) { return name.ends_with(".yaml") || name.ends_with(".yml"); }

bool is_project(std::string_view name, std::string_view bytes) {
  if (name == "project.yaml" || name == "project.yml") return true;
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  for (std::size_t at = 0; at < bytes.size();) {
    std::size_t end = bytes.find_first_of("\r\n", at);
    if (end == std::string_view::npos) end = bytes.size();
    if (begins_with_key(bytes.substr(at, end - at))) return true;
    at = end + 1;
  }
  return false;
}

std::string output_stem(const std::string& path) { return path.substr(0, path.rfind('.')); }

FoundProjects find_projects(const ProjectSearch& search, const std::string& below) {
  FoundProjects found;
  const auto depth = below.empty() ? 0 : 1 + std::count(below.begin(), below.end(), '/');
  if (depth <= kDeepestFolder) Walk(search, found, true).folder(below, static_cast<int>(depth));
  refuse_clashes(found);
  return found;
}

FoundProjects find_in_folder(const ProjectSearch& search, const std::string& below) {
  FoundProjects found;
  Walk(search, found, false).folder(below, 0);
  refuse_clashes(found);
  return found;
}

}  // namespace gownsheaf
