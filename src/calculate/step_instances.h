// Library steps repeated for each cloth, run, piece, closure or line of bones, and the maker's own steps, as nodes that wait for each other.
#pragma once
#include <set>
#include <string>
#include <vector>

#include "calculate/step_graph.h"
#include "project/project.h"
#include "templates/templates.h"

namespace gownsheaf {

struct StepInstance {
  const Step* step = nullptr;    // of the library, or
  const OwnStep* own = nullptr;  // of the project
  std::string id;                // "cut-breadths@slate wool", "own/NAME"
  std::string item;
  Truth holds = Truth::yes;  // its condition
  bool done = false;
  std::set<std::string> parts_done = {};  // of those the maker split it into
  const DoneStep* done_by = nullptr;      // the line that says so
  const ChangedStep* change = nullptr;    // what the maker does otherwise
};
struct StepInstances {
  std::vector<StepInstance> steps;  // library order, each step's items in the project's order (one absent instance where
                                    // there is no item); then own steps
  std::vector<StepNode> nodes;      // one for each step: absent where the condition is no, or where it is replaced
};

// Items of a `for each`: cloths with the outer ones first, runs, pieces, closures, lines of bones, in the project's order.
std::vector<std::string> items_of(const Project& project, const std::string& for_each);
StepInstances step_instances(const Project& project, const Templates& templates, const FactLookup& facts);

}  // namespace gownsheaf
