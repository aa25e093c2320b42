// Piping, binding and trimmings: how many, and how long the lines are that they follow.
#include "check/sections.h"

namespace gownsheaf {

namespace {

std::vector<Piping> strips_in(const Filling& file, std::string_view key, std::string_view noun) {
  std::vector<Piping> all;
  for (const Item& item : file.root.items(key)) {
    Piping one;
    one.named = named_of(file, item, key, noun);
    one.along = names_in(file, item, "seams", "seams");
    for (std::string& edge : names_in(file, item, "edges", "edges")) one.along.push_back(std::move(edge));
    one.length = item.length("length");
    all.push_back(std::move(one));
  }
  return all;
}

}  // namespace

void fill_piping(const Filling& file, Project& project) { project.piping = strips_in(file, "piping", "piping"); }
void fill_binding(const Filling& file, Project& project) { project.binding = strips_in(file, "binding", "binding"); }

void fill_trims(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("trims")) {
    Trim trim;
    trim.named = named_of(file, item, "trims", "trim");
    trim.kind = item.word("kind").value.value_or("");
    trim.along = names_in(file, item, "along", "seams|edges");
    trim.length = item.length("length");
    trim.number = item.count("number");
    trim.rows = item.count("rows");
    project.trims.push_back(std::move(trim));
  }
}

}  // namespace gownsheaf
