// Gates: a fitting that is not signed stops what comes after it and cannot be undone.
#pragma once
#include <string>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "figures/plans.h"

namespace gownsheaf {

inline constexpr const char* kGateUnsigned = "gate-unsigned";

// The gate that a fitting is held at: the one all of whose words stand in the fitting's name ("first mock-up" is held at
// "mock-up", a toile or a muslin too), the longest of several; else the one with which the name shares most words; else the
// first. "" when there are none. Named: only one gate can be meant.
struct GateOfFitting {
  std::string gate;
  bool named = false;
};
GateOfFitting find_gate(const std::string& fitting, const std::vector<std::string>& gates);
std::string gate_of_fitting(const std::string& fitting, const std::vector<std::string>& gates);
bool is_mock_up(const std::string& fitting);                              // by its name
std::vector<std::string> gates_in(const std::vector<PlannedStep>& work);  // in their order, each once

// Whether the hold is of an unsigned fitting, and this step waits for its gate and cannot be undone. Without a gate in the
// order of work every cut into good cloth waits.
bool stopped_at_gate(const Diagnostic& hold, const PlannedStep& step, const std::vector<PlannedStep>& work);

}  // namespace gownsheaf
