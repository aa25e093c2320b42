// The delivered template files as they were when the program was built, each with the tree that read_yaml made of it.
// src/setup/keep_templates.cpp writes this table. load_templates takes a tree from it only for a file with the very same
// bytes, so that an edited or added file is read as ever.
#pragma once
#include <string_view>
#include <vector>

namespace gownsheaf {

struct KeptTemplate {
  std::string_view name;   // "steps-all.yaml"
  std::string_view bytes;  // of the file
  std::string_view hash;   // sha256 of them
  std::string_view tree;   // keep_entry of what read_yaml made of them
};

const std::vector<KeptTemplate>& kept_templates();                                 // in order of names
const KeptTemplate* kept_template(std::string_view name, std::string_view bytes);  // null: not this file, or edited

}  // namespace gownsheaf
