// The table of templates built into the program: it is what the reader makes of the delivered files, and it never stands
// in for a file that somebody changed.
#include "check/kept_templates.h"
#include "check/check.h"
#include "files/files.h"
#include "read/kept_entry.h"
#include "support/catch.h"
#include "support/same_entry.h"
#include "support/scratch_folder.h"

using namespace gownsheaf;

namespace {

const std::string kDelivered = GOWNSHEAF_SOURCE_DIR "/packet-templates";

std::vector<std::string> delivered_names() { return list_files(kDelivered, ".yaml").value.value(); }
std::string delivered_text(const std::string& name) { return read_below(kDelivered, name, kLargestProjectFile).value.value(); }

// The delivered folder with every `from` of one file made `to`.
void copy_delivered_with(const test::ScratchFolder& folder, const std::string& file, const std::string& from,
                         const std::string& to) {
  for (const std::string& name : delivered_names()) {
    std::string text = delivered_text(name);
    if (name == file) {
      REQUIRE(text.find(from) != std::string::npos);
      for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
        text.replace(at, from.size(), to);
    }
    folder.put(name, text);
  }
}

struct KeptOrRead {
  Templates templates;
  std::string messages;
};

KeptOrRead read_folder(const std::string& folder) {
  Diagnostics diag;
  std::vector<SourceText> sources;
  KeptOrRead loaded{load_templates(folder, diag, sources), ""};
  for (const Diagnostic& d : diag.sorted()) loaded.messages += render(d, sources);
  return loaded;
}

}  // namespace

TEST_CASE("the kept table holds every delivered file as the reader reads it", "[kept]") {
  const std::vector<std::string> names = delivered_names();
  REQUIRE(kept_templates().size() == names.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    const KeptTemplate& kept = kept_templates()[i];
    INFO(names[i]);
    CHECK(kept.name == names[i]);
    REQUIRE(kept.bytes == delivered_text(names[i]));
    CHECK(kept.hash == sha256(kept.bytes));
    Diagnostics diag;
    const std::string path = kDelivered + "/" + names[i];
    CHECK(test::first_difference(kept_entry(kept.tree, path), read_yaml(delivered_text(names[i]), path, diag)) == "");
    CHECK(diag.in_order_found().empty());
  }
}

TEST_CASE("the kept table answers for the same bytes alone", "[kept]") {
  const std::string text = delivered_text("pin-up.yaml");
  CHECK(kept_template("pin-up.yaml", text) != nullptr);
  CHECK(kept_template("pin-up.yaml", text + " ") == nullptr);
  CHECK(kept_template("binder.yaml", text) == nullptr);
  std::string one_letter = text;
  one_letter.back() = ' ';
  CHECK(kept_template("pin-up.yaml", one_letter) == nullptr);
}

TEST_CASE("an edited template file is honoured, and so is one that is added", "[kept]") {
  const KeptOrRead as_delivered = read_folder(kDelivered);
  REQUIRE(as_delivered.messages == "");
  const test::ScratchFolder folder;
  copy_delivered_with(folder, "steps-all.yaml", "Measure the wearer over", "Measure the wearer twice over");
  folder.put("steps-own.yaml",
             "steps: our own\nformat: 1\nlist:\n  - step: air-the-room\n    say: Air the room.\n"
             "    hours: { each: 5 min, label: c }\n    label: c\n");
  const KeptOrRead edited = read_folder(folder.path());
  CHECK(edited.messages == "");
  REQUIRE(edited.templates.step("measure-wearer") != nullptr);
  CHECK(edited.templates.step("measure-wearer")->say.find("Measure the wearer twice over") == 0);
  CHECK(as_delivered.templates.step("measure-wearer")->say.find("Measure the wearer over") == 0);
  CHECK(edited.templates.step("air-the-room") != nullptr);
  CHECK(edited.templates.steps.size() == as_delivered.templates.steps.size() + 1);
  const auto& marks = edited.templates.fingerprints;
  CHECK(marks.at("steps-all.yaml") == sha256(folder.get("steps-all.yaml")));
  CHECK(marks.at("pin-up.yaml") == as_delivered.templates.fingerprints.at("pin-up.yaml"));
}

TEST_CASE("a fault that an edit brings about in a file left as it was is told with that file's place", "[kept]") {
  const test::ScratchFolder folder;
  copy_delivered_with(folder, "steps-skirt.yaml", "join-skirt-to-bodice", "join-skirt-and-bodice");
  const std::string kept_way = read_folder(folder.path()).messages;
  CHECK(kept_way.find("No step is called `join-skirt-to-bodice`") != std::string::npos);
  // The same folder with a remark at the end of every file is read by the parser throughout: the same messages.
  for (const std::string& name : delivered_names()) folder.put(name, folder.get(name) + "\n# read anew\n");
  CHECK(read_folder(folder.path()).messages == kept_way);
}
