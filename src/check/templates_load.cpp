// A template folder: each file says by its first key what it is.
#include <algorithm>
#include <future>

#include "check/check.h"
#include "check/kept_templates.h"
#include "check/template_block.h"
#include "read/kept_entry.h"

namespace gownsheaf {
namespace {

struct ReadFile {
  Entry entry;
  Diagnostics diag;
  SourceText source;
  std::string hash;
};

ReadFile read_file(const std::string& path, const FileResult<std::string>& bytes, const KeptTemplate* kept) {
  ReadFile file;
  if (!bytes.ok()) {
    file.diag.error("templates-unread", {path, 0, 0, 0}, bytes.fault.sentence);
    return file;
  }
  file.source = lines_of(*bytes.value, path);
  file.hash = kept != nullptr ? std::string(kept->hash) : sha256(*bytes.value);
  file.entry = kept != nullptr ? kept_entry(kept->tree, path) : read_yaml(*bytes.value, path, file.diag);
  return file;
}

}  // namespace

void read_template_file(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  if (file.kind != Entry::Kind::block || file.children.empty()) return;
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
             near.empty() ? "a file begins with set, steps, cloth kinds, rule, fitting checks or cautions"
                          : "did you mean `" + near + "`?");
}

const KeptTemplate* kept_template(std::string_view name, std::string_view bytes) {
  for (const KeptTemplate& kept : kept_templates())
    if (kept.name == name) return kept.bytes == bytes ? &kept : nullptr;
  return nullptr;
}

Templates load_templates(const std::string& folder, Diagnostics& diag, std::vector<SourceText>& sources) {
  Templates all;
  const auto files = list_files(folder, ".yaml");
  if (!files.ok() || files.value->empty()) {
    diag.error("templates-unread", {folder, 0, 0, 0},
               files.ok() ? "The template folder `" + folder + "` holds no .yaml file." : files.fault.sentence,
               "name the folder that holds pin-up.yaml");
    return all;
  }
  std::vector<std::future<ReadFile>> reading;
  for (const std::string& name : *files.value) {
    FileResult<std::string> bytes = read_below(folder, name, kLargestProjectFile);
    const KeptTemplate* kept = bytes.ok() ? kept_template(name, *bytes.value) : nullptr;
    // An edited file is parsed apart from the others: parsing is what takes long.
    const auto how = bytes.ok() && kept == nullptr ? std::launch::async : std::launch::deferred;
    reading.push_back(std::async(how, read_file, folder + "/" + name, std::move(bytes), kept));
  }
  TemplateNames names;
  for (std::size_t i = 0; i < reading.size(); ++i) {  // taken up in the order of their names
    ReadFile file = reading[i].get();
    for (const Diagnostic& d : file.diag.in_order_found()) diag.add(d);
    if (file.hash.empty()) continue;
    all.fingerprints[(*files.value)[i]] = file.hash;
    sources.push_back(std::move(file.source));
    read_template_file(file.entry, all, names, diag);
  }
  check_step_library(all, diag);
  return all;
}

}  // namespace gownsheaf
