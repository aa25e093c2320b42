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
  for (std::string& word : words)
    if (word == "toile" || word == "muslin" || word == "mockup") word = "mock-up";
  return words;
}

// Words that tell one gate from another.
bool tells(const std::string& word) {
  for (const char* common : {"", "on", "the", "in", "of", "first", "second", "third", "last", "fitting", "try", "dress"})
    if (word == common) return false;
  return true;
}

bool holds(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

GateOfFitting find_gate(const std::string& fitting, const std::vector<std::string>& gates) {
  if (gates.empty()) return {};
  const std::vector<std::string> said = words_of_name(fitting);
  const std::string *whole = nullptr, *part = nullptr;
  std::size_t most = 0;
  std::ptrdiff_t most_shared = 0;
  bool alone = false;
  for (const std::string& gate : gates) {
    const std::vector<std::string> wanted = words_of_name(gate);
    if (wanted.size() > most && std::all_of(wanted.begin(), wanted.end(), [&](const std::string& w) { return holds(said, w); })) {
      whole = &gate;
      most = wanted.size();
    }
    const auto shared =
        std::count_if(wanted.begin(), wanted.end(), [&](const std::string& w) { return tells(w) && holds(said, w); });
    if (shared > 0 && shared == most_shared) alone = false;
    if (shared <= most_shared) continue;
    part = &gate;
    most_shared = shared;
    alone = true;
  }
  if (whole != nullptr) return {*whole, true};
  if (part != nullptr) return {*part, alone};
  return {gates.front(), gates.size() == 1};
}

std::string gate_of_fitting(const std::string& fitting, const std::vector<std::string>& gates) {
  return find_gate(fitting, gates).gate;
}

bool is_mock_up(const std::string& fitting) { return holds(words_of_name(fitting), "mock-up"); }

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
