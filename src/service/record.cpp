#include "service/record.h"

#include <algorithm>
#include <functional>
#include <set>

#include "service/fields.h"

namespace gownsheaf {
namespace {

constexpr const char* kFirstLine = "gownsheaf made";
constexpr const char* kFormat = "1";
constexpr int kDeepestKept = 40;
constexpr std::string_view kProblems = ".problems.txt";
constexpr std::string_view kProblemsHead = "Gownsheaf could not make this packet.\n";

// All files below a folder, by their paths; hidden ones too.
void each_file(const std::string& folder, const std::string& below, int depth,
               const std::function<void(const std::string& folder, const std::string& below, const std::string& name)>& take) {
  const auto entries = list_entries(folder);
  if (!entries.ok()) return;
  for (const FolderEntry& entry : *entries.value) {
    if (entry.kind == FolderEntry::Kind::folder && depth < kDeepestKept)
      each_file(folder + "/" + entry.name, below + entry.name + "/", depth + 1, take);
    if (entry.kind == FolderEntry::Kind::file) take(folder, below, entry.name);
  }
}

// The paths of all files with an ending, without it; sorted.
std::vector<std::string> stems_below(const std::string& folder, std::string_view ending) {
  std::vector<std::string> stems;
  each_file(folder, "", 0, [&](const std::string&, const std::string& below, const std::string& name) {
    if (name.ends_with(ending)) stems.push_back(below + name.substr(0, name.size() - ending.size()));
  });
  std::sort(stems.begin(), stems.end());
  return stems;
}

}  // namespace

std::string text_of(const PacketRecord& record) {
  std::string text;
  add_line(text, {kFirstLine, kFormat});
  add_line(text, {"project", record.project});
  add_line(text, {"fingerprint", record.fingerprint});
  for (const std::string& drawing : record.drawings) add_line(text, {"drawing", drawing});
  for (const MadeFile& file : record.files) add_line(text, {"file", file.name, file.hash});
  add_line(text, {"pages", std::to_string(record.pages)});
  add_line(text, {"title", record.about.title});
  add_line(text, {"wearer", record.about.wearer});
  add_line(text, {"for others", record.about.shared ? "yes" : "no"});
  for (const ClothTotal& cloth : record.about.cloths) add_line(text, {"cloth", cloth.cloth, cloth.needed});
  add_line(text, {"holds", std::to_string(record.about.holds)});
  add_line(text, {"warnings", std::to_string(record.about.warnings)});
  return sealed(std::move(text));
}

std::optional<PacketRecord> record_of(std::string_view text) {
  const auto lines = lines_of_sealed(text);
  if (!lines || lines->front() != FieldLine{kFirstLine, kFormat}) return std::nullopt;
  PacketRecord record;
  for (std::size_t i = 1; i < lines->size(); ++i) {
    const FieldLine& line = (*lines)[i];
    const std::string& word = line[0];
    if (line.size() != (word == "file" || word == "cloth" ? 3u : 2u)) return std::nullopt;
    if (word == "project") record.project = line[1];
    else if (word == "fingerprint") record.fingerprint = line[1];
    else if (word == "drawing") record.drawings.push_back(line[1]);
    else if (word == "file") record.files.push_back({line[1], line[2]});
    else if (word == "title") record.about.title = line[1];
    else if (word == "wearer") record.about.wearer = line[1];
    else if (word == "for others") record.about.shared = line[1] == "yes";
    else if (word == "cloth") record.about.cloths.push_back({line[1], line[2]});
    else if (word == "pages" || word == "holds" || word == "warnings") {
      const std::optional<int> n = whole_count(line[1]);
      if (!n) return std::nullopt;
      (word == "pages" ? record.pages : word == "holds" ? record.about.holds : record.about.warnings) = *n;
    } else {
      return std::nullopt;
    }
  }
  return record;
}

std::string text_of(const StoppedRecord& record) {
  std::string text;
  add_line(text, {"gownsheaf stopped", kFormat});
  add_line(text, {record.project, record.fingerprint, record.ceilings, record.problem});
  add_line(text, record.drawings.empty() ? FieldLine{""} : record.drawings);
  return sealed(std::move(text));
}

std::optional<StoppedRecord> stopped_record_of(std::string_view text) {
  const auto lines = lines_of_sealed(text);
  if (!lines || lines->size() != 3 || lines->front() != FieldLine{"gownsheaf stopped", kFormat} || (*lines)[1].size() != 4)
    return std::nullopt;
  const FieldLine& of = (*lines)[1];
  StoppedRecord record{of[0], of[1], of[2], {}, of[3]};
  if ((*lines)[2] != FieldLine{""}) record.drawings = (*lines)[2];
  return record;
}

std::optional<FileFault> OutFolder::make_folder_of(const std::string& stem) const {
  const std::string folder = folder_of(file(stem));
  if (kind_at(folder) == FolderEntry::Kind::folder) return std::nullopt;
  for (std::size_t at = 0, slash; (slash = stem.find('/', at)) != std::string::npos; at = slash + 1) {
    const std::string below = stem.substr(0, slash);
    if (exists(file(below))) continue;
    if (auto fault = make_folders(folder_mark(below))) return fault;  // first: a mark without its folder does no harm
    if (auto fault = make_folders(file(below))) return fault;
  }
  return make_folders(folder);
}

std::vector<std::string> OutFolder::own_folders() const {
  std::vector<std::string> folders;
  const std::function<void(const std::string&, int)> look = [&](const std::string& below, int depth) {
    const auto entries = list_entries(folder_mark(below));
    if (!entries.ok() || depth > kDeepestKept) return;
    for (const FolderEntry& entry : *entries.value) {
      if (entry.kind != FolderEntry::Kind::folder) continue;
      look(below + entry.name + "/", depth + 1);
      folders.push_back(below + entry.name);
    }
  };
  look("", 0);
  return folders;
}

std::vector<FileFault> OutFolder::forget(const std::string& stem) const {
  std::vector<FileFault> faults;
  for (const std::string& path : {lays(stem), stopped(stem), record(stem)}) {
    if (auto fault = remove_file(path)) faults.push_back(std::move(*fault));
    std::string folder = folder_of(path);
    for (auto levels = std::count(stem.begin(), stem.end(), '/'); levels > 0 && remove_empty_folder(folder); --levels)
      folder = folder_of(folder);
  }
  return faults;
}

std::optional<StoppedRecord> OutFolder::read_stopped(const std::string& stem) const {
  const auto text = read_below(own(), "stopped/" + stem + ".stopped", kLargestRecord);
  return text.ok() ? stopped_record_of(*text.value) : std::nullopt;
}

std::vector<std::string> OutFolder::stopped_ones() const { return stems_below(own() + "/stopped", ".stopped"); }

std::optional<PacketRecord> OutFolder::read_record(const std::string& stem) const {
  const auto text = read_below(records(), stem + ".made", kLargestRecord);
  return text.ok() ? record_of(*text.value) : std::nullopt;
}

bool OutFolder::holds(const std::string& stem, const PacketRecord& record) const {
  const std::string folder = folder_of(file(stem));
  return !record.files.empty() && std::all_of(record.files.begin(), record.files.end(), [&](const MadeFile& made) {
    const auto bytes = read_below(folder, made.name, kLargestOutput);
    return bytes.ok() && sha256(*bytes.value) == made.hash;
  });
}

std::vector<std::string> OutFolder::recorded() const { return stems_below(records(), ".made"); }

int OutFolder::clear_temporaries(const std::vector<std::string>* of) const {
  // By folder and mark: in many folders the project has the same name, and another share's may be at work this moment.
  std::set<std::string> marked;
  const auto mark = [&](const std::string& file) {
    const std::size_t slash = file.rfind('/');
    const std::size_t name = slash == std::string::npos ? 0 : slash + 1;
    marked.insert(file.substr(0, name) + sha256(file.substr(name)).substr(0, 16));
  };
  if (of != nullptr)
    for (const std::string& stem : *of) {
      for (const char* ending : {".pdf", ".figures.json", ".work.ics", ".problems.txt"}) mark(stem + ending);
      mark(".gownsheaf/made/" + stem + ".made");
      mark(".gownsheaf/lays/" + stem + ".lays");
      mark(".gownsheaf/stopped/" + stem + ".stopped");
    }
  int cleared = 0;
  each_file(folder_, "", 0, [&](const std::string& folder, const std::string& below, const std::string& name) {
    if (!is_temporary_name(name) || (of != nullptr && marked.count(below + temporary_mark(name)) == 0)) return;
    if (!remove_file(folder + "/" + name)) ++cleared;
  });
  return cleared;
}

std::vector<std::string> OutFolder::problems_told() const {
  std::vector<std::string> stems;
  each_file(folder_, "", 0, [&](const std::string&, const std::string& below, const std::string& name) {
    if (!name.ends_with(kProblems) || below.starts_with(".gownsheaf/")) return;
    if (std::string stem = below + name.substr(0, name.size() - kProblems.size()); told_problems(stem))
      stems.push_back(std::move(stem));
  });
  std::sort(stems.begin(), stems.end());
  return stems;
}

bool OutFolder::told_problems(const std::string& stem) const {
  const auto text = read_below(folder_, stem + std::string(kProblems), kLargestOutput);
  return text.ok() && text.value->starts_with(kProblemsHead);  // else it is somebody's own
}

std::optional<FileFault> OutFolder::clear_problems(const std::string& stem) const {
  if (!exists(problems(stem)) || !told_problems(stem)) return std::nullopt;
  return remove_file(problems(stem));
}

std::optional<FileFault> OutFolder::write_problems(const std::string& stem, const std::string& messages) const {
  const std::string path = problems(stem);
  if (exists(path)) {
    const auto text = read_below(folder_, stem + ".problems.txt", kLargestOutput);
    if (!text.ok() || !text.value->starts_with(kProblemsHead))
      return FileFault{"`" + path + "` is somebody's own file, so it is left alone."};
    if (*text.value == std::string(kProblemsHead) + messages) return std::nullopt;
  }
  if (auto fault = make_folder_of(stem)) return fault;
  return write_whole({{path, std::string(kProblemsHead) + messages}});
}

}  // namespace gownsheaf
