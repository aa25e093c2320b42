#include "calculate/hem_braid.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {

void add_hem_braid(const Project& project, Figures& figures, Diagnostics& diag) {
  const auto round = figures.length("skirt/hem round");
  if (!project.skirt || !project.skirt->hem || project.skirt->hem->braid.empty()) return;
  if (!round) {
    for (const char* section : {"cloths", "pieces", "rounds", "pleats", "skirt"})
      if (project.failed_sections.contains(section)) return;
    diag.add(message({"", "skirt", "to buy"}, Severity::hold, "hem-round-unknown", project.skirt->at,
                     "How long the hem is round is not known: its braid " + project.skirt->hem->braid + " is not counted.",
                     "`hem round: 136 in`, say; or a round under `rounds` of the skirt's pieces"));
    return;
  }
  const Length turned_under = Length::inches(2);
  for (const Notion& notion : project.notions) {
    if (!same_name(notion.named.name, project.skirt->hem->braid)) continue;
    const ShownIn in = shown_in(project);
    const auto said = [&](Length l, Rounding r) { return text_of(l, in, cut_step(in), r).plain(); };
    const Length needed = *round + turned_under;
    NewFigure(figures, in, "notions", notion.named.name, "braid needed")
        .is(needed)
        .at(notion.named.at)
        .from("skirt/hem round")
        .working("hem-braid", "hem round + 1 in turned under at each end",
                 said(*round, Rounding::nearest) + " + " + said(turned_under, Rounding::nearest))
        .add();
    if (!notion.bought_lengths.known()) return;
    Length longest;
    for (const Length l : *notion.bought_lengths) longest = std::max(longest, l);
    if (longest < needed)
      diag.add(message({notion.named.name, "notions", "to buy"}, Severity::hold, "braid-short", notion.bought_lengths.at,
                       capital(notion.named.name) + ": the hem takes " + said(needed, Rounding::up) +
                           " in one piece; the longest bought is " + said(longest, Rounding::down) + ".",
                       "buy that length; a join shows"));
    return;
  }
}

}  // namespace gownsheaf
