// Entry to Project and Templates, through the key registry; and what the registry offers to others: JSON Schema, key
// tables for the docs, "did you mean".
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "check/drawn_pieces.h"
#include "check/key_spec.h"
#include "files/files.h"
#include "project/project.h"
#include "read/entry.h"
#include "templates/templates.h"

namespace gownsheaf {

// Sections that fail are named in Project::failed_sections; the rest is filled, so that one run tells everything.
// `size_option` wins over the file's `size`; what it says too changes nothing, and then project.size keeps its place in the
// file. Pieces' drawings are read through `drawings`. A size that came by option has no place (line 0). `known_steps` lets `work.done` and own steps be checked against the library (ids); cloth kinds come from templates.
Project check_project(const Entry& source, const Templates& templates, Diagnostics& diag,
                      const std::optional<std::string>& size_option = {}, DrawingReader drawings = {});

// All files of a template folder. Faults are errors with places in those files. fills fingerprints.
Templates load_templates(const std::string& folder, Diagnostics& diag, std::vector<SourceText>& sources);

}  // namespace gownsheaf
