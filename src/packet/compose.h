// Project, figures and a packet set to sheets of blocks. Each sheet has its own file, src/packet/*_sheet.cpp.
#pragma once
#include <vector>

#include "diagnostics/diagnostics.h"
#include "figures/changes.h"
#include "figures/figures.h"
#include "figures/plans.h"
#include "layout/lay_out.h"
#include "project/project.h"
#include "templates/templates.h"

namespace gownsheaf {

struct PacketInput {
  const Project& project;
  const Figures& figures;
  const Plans& plans;
  const PacketSet& set;
  const FactLookup& facts;
  const std::vector<Diagnostic>& messages;  // sorted: holds, warnings, notes to print
  const Typesetter& typesetter;
  PageShape shape;
  const Changes* changes = nullptr;       // against an older packet, or nothing: then there is no sheet "what changed"
  const ClosingRules* closing = nullptr;  // how edges are built
};
// Sheets in the set's order; an unknown sheet was refused when the set was read.
std::vector<Sheet> compose_packet(const PacketInput& input);

// The sheet names a set may hold.
const std::vector<std::string_view>& sheet_names();

}  // namespace gownsheaf
