// Faulty project files that carry their own answer: every message, in the program's order, in comments at the foot.
//   #: LINE:COLUMN: severity [code]: sentence
//   #:    hint: what to type
#pragma once
#include <string>
#include <vector>

#include "calculate/calculate.h"
#include "check/check.h"
#include "check/key_spec.h"
#include "files/files.h"
#include "read/entry.h"
#include "support/catch.h"

namespace gownsheaf::support {

struct FaultyFile {
  std::string body;      // what the program reads: all above the foot
  std::string expected;  // the foot
};

inline FaultyFile faulty_file(const std::string& path) {
  const auto bytes = read_named_file(path, kLargestProjectFile);
  REQUIRE(bytes.ok());
  const std::string& text = *bytes.value;
  std::size_t foot = text.rfind("#:", 0) == 0 ? 0 : text.find("\n#:");
  if (foot == std::string::npos) return {text, ""};
  if (foot != 0) ++foot;
  return {text.substr(0, foot), text.substr(foot)};
}

inline const Templates& the_library() {
  static const Templates templates = [] {
    Diagnostics diag;
    std::vector<SourceText> sources;
    return load_templates(std::string(GOWNSHEAF_SOURCE_DIR) + "/packet-templates", diag, sources);
  }();
  return templates;
}

// Every message of a `check` of this file: reader, checker and calculators.
inline std::vector<Diagnostic> messages_of(const std::string& path) {
  Diagnostics diag;
  const Entry source = read_yaml(faulty_file(path).body, file_name_of(path), diag, {.keys = key_words()});
  if (source.kind != Entry::Kind::nothing) {
    const Project project = check_project(source, the_library(), diag, {}, [&](const std::string& relative) {
      const FileResult<std::string> drawing = read_below(folder_of(path), relative, kLargestDrawing);
      return drawing.ok() ? DrawingFile{*drawing.value, "", relative} : DrawingFile{{}, drawing.fault.sentence, relative};
    });
    WorkOptions quick;
    quick.lay_work = 0;
    quick.search_all = false;
    calculate(project, the_library(), quick, diag);
  }
  return diag.sorted();
}

inline std::string as_foot(const std::vector<Diagnostic>& messages) {
  std::string foot;
  for (const Diagnostic& d : messages) {
    foot += "#: " + std::to_string(d.at.line) + ":" + std::to_string(d.at.column) + ": " + std::string(word_for(d.severity)) +
            " [" + d.code + "]: " + d.sentence + "\n";
    if (!d.hint.empty()) foot += "#:    hint: " + d.hint + "\n";
  }
  return foot;
}

}  // namespace gownsheaf::support
