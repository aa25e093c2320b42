// A template folder: each file says by its first key what it is.
#include <algorithm>

#include "check/check.h"
#include "check/template_block.h"

namespace gownsheaf {
namespace {

void read_one(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  const Entry& first = file.children.front();
  if (first.key == "set") return read_packet_set(file, into, names, diag);
  if (first.key == "steps") return read_step_library(file, into, names, diag);
  if (first.key == "cloth kinds") return read_cloth_kinds(file, into, names, diag);
  if (first.key == "rule" || first.key == "blocks") {
    diag.error("template-kind", first.key_at, "Files that begin with `" + first.key + "` are not read yet.",
               "take the file out of the folder");
    return;
  }
  const std::string near = did_you_mean(first.key, {"set", "steps", "cloth kinds"});
  diag.error("template-kind", first.key_at, "The first key, `" + first.key + "`, does not say what the file is.",
             near.empty() ? "a file begins with set, steps or cloth kinds" : "did you mean `" + near + "`?");
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
  for (const std::string& name : *files.value) {
    const std::string path = folder + "/" + name;
    const auto bytes = read_below(folder, name, kLargestProjectFile);
    if (!bytes.ok()) {
      diag.error("templates-unread", {path, 0, 0, 0}, bytes.fault.sentence);
      continue;
    }
    all.fingerprints[name] = sha256(*bytes.value);
    sources.push_back(lines_of(*bytes.value, path));
    const Entry file = read_yaml(*bytes.value, path, diag);
    if (file.kind == Entry::Kind::block && !file.children.empty()) read_one(file, all, names, diag);
  }
  check_step_library(all, diag);
  return all;
}

}  // namespace gownsheaf
