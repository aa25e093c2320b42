// Entry to Project and Templates, through the key registry; and what the registry offers to others: JSON Schema, key
// tables for the docs, "did you mean".
#pragma once
#include <string>
#include <vector>

#include "check/key_spec.h"
#include "files/files.h"
#include "project/project.h"
#include "read/entry.h"
#include "templates/templates.h"

namespace gownsheaf {

// Sections that fail are named in Project::failed_sections; the rest is filled, so that one run tells everything.
// `known_steps` lets `work.done` and own steps be checked against the library (ids); cloth kinds come from templates.
Project check_project(const Entry& source, const Templates& templates, Diagnostics& diag);

// All files of a template folder. Faults are errors with places in those files. fills fingerprints.
Templates load_templates(const std::string& folder, Diagnostics& diag, std::vector<SourceText>& sources);

}  // namespace gownsheaf
