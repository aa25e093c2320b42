// Figures of what the project says outright: the day, the body, the cloths as they lie on the bolt, the skirt.
#pragma once
#include "calculate/rounds.h"
#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

void add_day_and_measures(const Project& project, Figures& figures);
void add_cloths_as_given(const Project& project, Figures& figures);
// The skirt's straight full breadths joined, its hem. Only when such breadths are cut from an outer cloth.
// seams/NAME/ease in of the seams that join a longer edge to a shorter one.
void add_eased_seams(const Project& project, Figures& figures);
void add_skirt(const Project& project, RoundSums& sums, Figures& figures);

}  // namespace gownsheaf
