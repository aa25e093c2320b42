// The project's runs and rounds to figures and pleat plans. Tests: tests/calculate/pleats_test.cpp.
#pragma once
#include <vector>

#include "calculate/rounds.h"
#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

// How the joined round of these pieces comes about, as one line to check by hand; empty when it is not known.
struct JoinedLine {
  std::string formula, numbers;
  std::vector<std::string> inputs;
};
JoinedLine joined_line(const Project& project, RoundSums& sums, const std::vector<std::string>& pieces);

// Rounds: joined, explained and unexplained. Holds: round-unexplained, waist-seam-differs.
void add_rounds(const Project& project, RoundSums& sums, Figures& figures, Diagnostics& diag);
// Runs: the sums, the marks and where the seams of full breadths land. Of kinds without marks (plain, gathers and those
// of later work) the flat and finished widths, so that rounds add up.
std::vector<PleatPlan> add_pleats(const Project& project, RoundSums& sums, Figures& figures);

}  // namespace gownsheaf
