// Older figures against those of today, by key. Pure comparison: no figure is worked out here.
#pragma once
#include <map>
#include <string>

#include "figures/changes.h"
#include "figures/plans.h"
#include "project/project.h"
#include "templates/templates.h"

namespace gownsheaf {

// Old name -> name of today, of the items that say `was: OLD NAME`, by section ("pieces", "cloths", "pleats", ...).
using Renamed = std::map<std::string, std::map<std::string, std::string>>;
Renamed renamed_items(const Project& project);
// An older key by today's names: "pieces/breadth/wool/cut length" -> "pieces/skirt breadth/slate wool/cut length".
std::string key_of_today(const std::string& older, const Renamed& renamed);

// A figure is changed when it no longer prints the same, in the unit of today; what the rounding hides is no change.
Changes what_changed(const OlderFigures& older, const Figures& today, const Renamed& renamed, ShownIn shown_in);

// Of figures that are worked out last, after the order of work: times of steps. Only where the older figures have such.
void add_changed_times(const OlderFigures& older, const Figures& today, ShownIn shown_in, Changes& changes);

// Fills Changes::cut: pieces of a cutting step that is marked done (`work: done`) and whose cut size, number or cloth is
// another now. Each is said as already-cut: a hold where the piece is too small or too few, a warning where it can be
// trimmed or is left over. Cut sizes differ by what the two printed sizes differ by.
void add_already_cut(const Project& project, const Templates& templates, const Plans& plans, const OlderFigures& older,
                     const Figures& today, Changes& changes, Diagnostics& diag);

// Fills Changes::again: steps that are marked done and say or show a figure that is another now, mark a run whose marks
// moved, or cut a piece that no longer serves. Measuring and buying are not done again for a new figure.
void add_steps_again(const Plans& plans, const Project& project, Changes& changes);

}  // namespace gownsheaf
