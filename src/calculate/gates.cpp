#include "calculate/gates.h"

#include <algorithm>
#include <set>

#include "templates/templates.h"

namespace gownsheaf {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::vector<std::string> words_of_name(const std::string& name) {
  std::vector<std::string> words(1);
  for (const char c : name) {
    if (c == ' ') words.emplace_back();
    else words.back() += lower(c);
  }
  return words;
}

}  // namespace

std::string gate_of_fitting(const std::string& fitting, const std::vector<std::string>& gates) {
  const std::vector<std::string> said = words_of_name(fitting);
  const std::string* best = nullptr;
  std::size_t most = 0;
  for (const std::string& gate : gates) {
    const std::vector<std::string> wanted = words_of_name(gate);
    const bool all = std::all_of(wanted.begin(), wanted.end(), [&](const std::string& w) { return std::find(said.begin(), said.end(), w) != said.end(); });
    if (!all || wanted.size() <= most) continue;
    best = &gate;
    most = wanted.size();
  }
  if (best != nullptr) return *best;
  return gates.empty() ? std::string() : gates.front();
}

std::vector<std::string> gates_in(const std::vector<PlannedStep>& work) {
  std::vector<std::string> gates;
  for (const PlannedStep& s : work)
    if (!s.gate.empty() && std::find(gates.begin(), gates.end(), s.gate) == gates.end()) gates.push_back(s.gate);
  return gates;
}

bool stopped_at_gate(const Diagnostic& hold, const PlannedStep& step, const std::vector<PlannedStep>& work) {
  if (hold.code != kGateUnsigned || step.cannot_undo.empty()) return false;
  const std::string gate = gate_of_fitting(hold.item, gates_in(work));
  if (gate.empty()) return step.cannot_undo == kCannotUndo[0];
  std::set<std::string> before(step.hard_after.begin(), step.hard_after.end());
  // The order is topological: one walk from the step backwards reaches all that it waits for.
  for (auto earlier = work.rbegin(); earlier != work.rend(); ++earlier) {
    if (before.count(earlier->id) == 0) continue;
    if (earlier->gate == gate) return true;
    before.insert(earlier->hard_after.begin(), earlier->hard_after.end());
  }
  return false;
}

}  // namespace gownsheaf
