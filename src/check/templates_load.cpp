// A template folder: each file says by its first key what it is.
#include <algorithm>
#include <future>

#include "check/check.h"
#include "check/template_block.h"

namespace gownsheaf {
namespace {

void read_one(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  const Entry& first = file.children.front();
  if (first.key == "set") return read_packet_set(file, into, names, diag);
  if (first.key == "steps") return read_step_library(file, into, names, diag);
  if (first.key == "cloth kinds") return read_cloth_kinds(file, into, names, diag);
  if (first.key == "rule") return read_closing_rules(file, into, names, diag);
  if (first.key == "fitting checks") return read_fitting_checks(file, into, names, diag);
  if (first.key == "cautions") return read_cautions(file, into, names, diag);
  if (first.key == "blocks") {
    diag.error("template-kind", first.key_at, "Files that begin with `" + first.key + "` are not read yet.",
               "take the file out of the folder");
    return;
  }
  const std::string near = did_you_mean(first.key, {"set", "steps", "cloth kinds", "rule", "fitting checks", "cautions"});
  diag.error("template-kind", first.key_at, "The first key, `" + first.key + "`, does not say what the file is.",
             near.empty() ? "a file begins with set, steps, cloth kinds, rule, fitting checks or cautions" : "did you mean `" + near + "`?");
}

// One file, read apart from the others: parsing is most of the time that a short `check` takes.
struct ReadFile {
  Entry entry;
  Diagnostics diag;
  SourceText source;
  std::string hash;
};

ReadFile read_file(const std::string& folder, const std::string& name) {
  ReadFile file;
  const std::string path = folder + "/" + name;
  const auto bytes = read_below(folder, name, kLargestProjectFile);
  if (!bytes.ok()) {
    file.diag.error("templates-unread", {path, 0, 0, 0}, bytes.fault.sentence);
    return file;
  }
  file.hash = sha256(*bytes.value);
  file.source = lines_of(*bytes.value, path);
  file.entry = read_yaml(*bytes.value, path, file.diag);
  return file;
}

}  // namespace

Templates load_templates(const std::string& folder, Diagnostics& diag, std::vector<SourceText>& sources) {
  Templates all;
  const auto files = list_files(folder, ".yaml");
  if (!files.ok() || files.value->empty()) {
    diag.error("templates-unread", {folder, 0, 0, 0},
               files.ok() ? "The template folder `" + folder + "` holds no .yaml file." : files.fault.sentence,
               "name the folder that holds pin-up.yaml");
    return all;
  }
  TemplateNames names;
  std::vector<std::future<ReadFile>> reading;
  for (const std::string& name : *files.value) reading.push_back(std::async(std::launch::async, read_file, folder, name));
  for (std::size_t i = 0; i < reading.size(); ++i) {  // taken up in the order of their names
    ReadFile file = reading[i].get();
    for (const Diagnostic& d : file.diag.in_order_found()) diag.add(d);
    if (file.hash.empty()) continue;
    all.fingerprints[(*files.value)[i]] = file.hash;
    sources.push_back(std::move(file.source));
    if (file.entry.kind == Entry::Kind::block && !file.entry.children.empty()) read_one(file.entry, all, names, diag);
  }
  check_step_library(all, diag);
  return all;
}

}  // namespace gownsheaf
