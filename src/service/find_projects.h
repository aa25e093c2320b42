// Which files below a folder are projects.
//
// A project is an ordinary file ending in .yaml or .yml that is called project.yaml (project.yml), or holds a line that begins with
// the key every project must have, `gownsheaf:`. Other YAML files, drawings and notes are passed over. Names that begin with a dot
// (editors' swap files, version control) are not looked at, nor is the folder that packets go to.
#pragma once
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf {

struct FoundProject {
  std::string path;     // below the folder: "autumn/day-dress.yaml"
  std::string stem;     // of its outputs, below the other folder: "autumn/day-dress"
  std::string refused;  // not empty: why it is not read (a link, two of one name, …); of two the second's stem is its path
};

struct FoundProjects {
  std::vector<FoundProject> projects;    // sorted by path
  std::vector<std::string> folders;      // looked into, "" for the folder itself
  std::vector<std::string> passed_over;  // YAML files that are no projects
  std::vector<std::string> faults;       // folders that could not be read, limits reached
  bool unread = false;                   // a folder could not be read
};

struct ProjectSearch {
  std::string folder;
  std::string not_into;  // the real path of a folder to leave out, or ""
  bool follow_links = false;
  std::function<void(const std::string& below)> entering = {};  // called before a folder is read
  std::function<bool(const std::string& stem)> wanted = {};     // others are not even opened
};

inline constexpr int kDeepestFolder = 32;
inline constexpr std::size_t kMostEntries = 1'000'000;

// All of it, or what lies below one of its folders.
FoundProjects find_projects(const ProjectSearch& search, const std::string& below = "");
// One folder of it, not those below: for what has changed in one place.
FoundProjects find_in_folder(const ProjectSearch& search, const std::string& below);

// By its name and bytes alone.
bool is_yaml_name(std::string_view name);
bool is_project(std::string_view name, std::string_view bytes);
std::string output_stem(const std::string& path);  // without .yaml

}  // namespace gownsheaf
