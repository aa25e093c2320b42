// The classic traps of the trade, row by row (ids of the trade notes the project was planned from), each with the waits that
// keep it closed. Three things are held: no row is forgotten, every wait is among those that the law over random garments
// checks, and the check would fail were the wait not there.
#include <algorithm>
#include <fstream>
#include <map>
#include <sstream>

#include "support/trial_garments.h"

using namespace gownsheaf;
using namespace gownsheaf::test;

namespace {

struct TrapRow {
  const char* row;
  std::vector<Trap> waits;
};

const std::vector<TrapRow>& rows() {
  static const std::vector<TrapRow> all{
      {"G09", {{"fit-mock-up", "sign-pattern"}, {"sign-pattern", "cut-pieces"}, {"sign-pattern", "cut-breadths"}}},
      {"G11", {{"cut-breadths", "cut-pieces"}, {"lay-out-cloth", "cut-breadths"}}},
      {"G12",
       {{"reserve-bias-patch", "cut-breadths"},
        {"reserve-bias-patch", "cut-pieces"},
        {"cut-breadths", "cut-bias-strips"},
        {"cut-pieces", "cut-bias-strips"}}},
      {"G13", {{"sign-pattern", "cut-pieces"}, {"cut-breadths", "cut-pieces"}}},
      {"G16", {{"stay-bias-edges", "fit-bodice"}}},
      {"B01", {{"baste-bodice-layers", "baste-seams"}, {"baste-bodice-layers", "stitch-darts"}}},
      {"B08", {{"baste-closing-strips", "turn-closing-edges"}}},
      {"B13", {{"baste-allowances-open", "sew-bone-channels"}}},
      {"B14", {{"fit-bodice", "finish-bodice-seams"}, {"press-and-notch", "finish-bodice-seams"}}},
      {"B15",
       {{"finish-bodice-seams", "sew-bone-channels"},
        {"sew-bone-channels", "finish-neck"},
        {"sew-bone-channels", "finish-lower-edge"},
        {"sew-bone-channels", "fell-lining"}}},
      {"B16",
       {{"baste-closing-strips", "turn-closing-edges"},
        {"correct-bodice", "turn-closing-edges"},
        {"turn-closing-edges", "sew-hooks"}}},
      {"B17",
       {{"sew-bone-channels", "insert-bones"}, {"turn-closing-edges", "insert-bones"}, {"insert-bones", "finish-lower-edge"}}},
      {"B19",
       {{"stitch-bodice-seams", "baste-drapery-in"}, {"bind-drapery", "baste-drapery-in"}, {"baste-drapery-in", "set-sleeves"}}},
      {"B22", {{"fit-sleeve", "set-sleeves"}, {"baste-drapery-in", "set-sleeves"}, {"pipe-armholes", "set-sleeves"}}},
      {"B23", {{"insert-bones", "finish-lower-edge"}, {"try-bodice-closed", "finish-lower-edge"}}},
      {"B25",
       {{"insert-bones", "try-bodice-closed"},
        {"set-sleeves", "try-bodice-closed"},
        {"sew-waist-stay", "try-bodice-closed"},
        {"try-bodice-closed", "sew-hooks"}}},
      {"B27", {{"sew-hooks", "cover-shanks"}}},
      {"B28",
       {{"sew-bone-channels", "fell-lining"},
        {"insert-bones", "fell-lining"},
        {"sew-waist-stay", "fell-lining"},
        {"sew-hooks", "fell-lining"},
        {"sew-lining", "fell-lining"}}},
      {"B30",
       {{"try-bodice-closed", "sew-trims"}, {"join-lace", "sew-trims"}, {"make-trims", "sew-trims"}, {"make-bows", "sew-trims"}}},
      {"B32",
       {{"join-skirt-to-bodice", "hang-closed"},
        {"sew-skirt-to-band", "hang-closed"},
        {"sew-hooks", "hang-closed"},
        {"whip-gauging", "hang-closed"}}},
      {"S01", {{"try-underlayers", "measure-to-floor"}, {"measure-to-floor", "cut-breadths"}}},
      {"S03", {{"baste-interlining", "sew-breadths"}}},
      {"S05", {{"make-pocket", "sew-breadths"}, {"mark-placket-and-pocket", "sew-breadths"}}},
      {"S09", {{"stiffen-hem", "hem-skirt"}, {"stiffen-hem", "level-the-hem"}, {"press-skirt-seams", "stiffen-hem"}}},
      {"S13",
       {{"level-the-waist", "mark-pleats"},
        {"fit-bodice", "mark-pleats"},
        {"fit-bodice", "run-gauging"},
        {"fit-bodice", "draw-up-gathers"}}},
      {"S17", {{"try-skirt-pinned", "trim-skirt-top"}, {"close-last-seam", "try-skirt-pinned"}}},
      {"S18", {{"try-skirt-pinned", "trim-skirt-top"}, {"trim-skirt-top", "sew-skirt-to-band"}}},
      {"S20", {{"sew-skirt-to-band", "hang-skirt"}, {"hang-skirt", "level-the-hem"}}},
      {"V01", {{"sign-pattern", "cut-pieces"}, {"cut-breadths", "cut-pieces"}, {"cut-pieces", "line-sleeves"}}},
      {"V03", {{"line-sleeves", "trim-flat-sleeves"}, {"trim-flat-sleeves", "sew-sleeves"}}},
      {"V07", {{"set-sleeves", "trim-armholes"}, {"try-bodice-closed", "trim-armholes"}}},
      {"D01", {{"stitch-bodice-seams", "drape-on-form"}}},
      {"D02", {{"drape-on-form", "cut-drapery"}, {"cut-bias-strips", "cut-drapery"}}},
      {"P03", {{"finish-underlayers", "try-underlayers"}, {"try-underlayers", "measure-to-floor"}}},
      {"C04", {{"set-busk", "sew-corset-seams"}}},
      {"C06", {{"sew-corset-channels", "work-eyelets"}}},
      {"C09", {{"try-corset", "cut-corset-bones"}}},
      {"C10", {{"cut-corset-bones", "bind-corset"}, {"hang-corset-lining", "bind-corset"}}},
      {"C12", {{"wear-corset-in", "measure-in-corset"}, {"finish-underlayers", "measure-wearer"}}},
      {"J04", {{"make-welt-pockets", "sew-coat-seams"}, {"make-welt-pockets", "face-fronts"}}},
      {"J05", {{"stay-button-line", "face-fronts"}, {"stay-button-line", "sew-buttons"}}},
      {"W02", {{"canvas-fronts", "make-welt-pockets"}, {"make-welt-pockets", "face-fronts"}}},
      {"W04", {{"make-welt-pockets", "face-fronts"}, {"tape-edges", "face-fronts"}}},
      {"T01",
       {{"try-bodice-closed", "measure-trim-runs"},
        {"try-skirt-pinned", "measure-trim-runs"},
        {"measure-trim-runs", "make-trims"}}},
  };
  return all;
}

// Whether, by hard edges alone, some instance of `then` can be reached without one of `first` before it, where both are there.
struct Found {
  bool met = false, open = false;
};
Found held(const WorkGarment& g, const Templates& library, const Trap& trap) {
  const StepInstances all = step_instances(g.project, library, facts_of(g.project, g.figures, g.plans));
  const std::vector<StepNode> nodes = contracted(all.nodes);
  Found f;
  for (std::size_t t = 0; t < nodes.size(); ++t) {
    if (!nodes[t].present || all.steps[t].step == nullptr || all.steps[t].step->id != trap.then) continue;
    std::vector<bool> before(nodes.size());
    std::vector<std::size_t> stack{t};
    while (!stack.empty()) {
      const std::size_t at = stack.back();
      stack.pop_back();
      for (const StepEdge& e : nodes[at].after)
        if (e.hard && !before[e.before]) before[e.before] = true, stack.push_back(e.before);
    }
    for (std::size_t k = 0; k < nodes.size(); ++k) {
      if (!nodes[k].present || all.steps[k].step == nullptr || all.steps[k].step->id != trap.first) continue;
      if (all.steps[k].step->for_each == all.steps[t].step->for_each && all.steps[k].item != all.steps[t].item) continue;
      f.met = true;
      f.open = f.open || !before[k];
    }
  }
  return f;
}

// The library without what this step waits for, nor what the step whose place it takes waits for.
Templates without_waits(const std::string& id) {
  Templates t = delivered_library();
  std::string replaced = id;
  for (const Step& s : t.steps)
    if (s.id == id && !s.replaces.empty()) replaced = s.replaces;
  for (Step& s : t.steps)
    if (s.id == id || s.id == replaced) s.after.clear();
  return t;
}

}  // namespace

TEST_CASE("traps: no row that the trade notes call a classic trap is without its waits", "[traps][rows]") {
  std::ifstream notes(GOWNSHEAF_SOURCE_DIR "/../shared/reference/work-and-fit.md");
  if (!notes) return;  // the notes are not part of what is delivered
  std::vector<std::string> marked;
  for (std::string line; std::getline(notes, line) && line.rfind("## 2", 0) != 0;)
    if (line.rfind("| ", 0) == 0 && line.size() > 6 && line[2] >= 'A' && line[2] <= 'Z' && line[3] >= '0' && line[3] <= '9' &&
        line.find("\u26A0") != std::string::npos)
      marked.push_back(line.substr(2, 3));
  CHECK(marked.size() > 40);
  for (const std::string& row : marked) {
    INFO(row);
    CHECK(std::any_of(rows().begin(), rows().end(), [&](const TrapRow& r) { return row == r.row; }));
  }
}

TEST_CASE("traps: a left and a right are cut, and said so", "[traps][rows]") {
  CHECK(delivered_library().step("cut-pieces")->say.find("pairs as left and right") != std::string::npos);
}

TEST_CASE("traps: each wait is checked over random garments, is met there, and would be missed", "[traps][rows]") {
  std::vector<WorkGarment> garments{evening_dress()};
  garments.back().project.closures.push_back(closure_named("back", Fasten::lacing, ""));
  draws::Draws dice(1863);
  while (garments.size() < 300) garments.push_back(any_garment(dice));
  std::map<std::pair<std::string, std::string>, bool> tried;
  std::vector<std::set<std::string>> there;
  for (const WorkGarment& g : garments) {
    there.emplace_back();
    const StepInstances all = step_instances(g.project, delivered_library(), facts_of(g.project, g.figures, g.plans));
    for (std::size_t i = 0; i < all.steps.size(); ++i)
      if (all.nodes[i].present && all.steps[i].step != nullptr) there.back().insert(all.steps[i].step->id);
  }
  for (const TrapRow& row : rows())
    for (const Trap& wait : row.waits) {
      INFO(row.row << ": " << wait.first << " before " << wait.then);
      REQUIRE(delivered_library().step(wait.first) != nullptr);
      REQUIRE(delivered_library().step(wait.then) != nullptr);
      CHECK(std::any_of(traps().begin(), traps().end(),
                        [&](const Trap& t) { return std::string(t.first) == wait.first && std::string(t.then) == wait.then; }));
      if (!tried.emplace(std::pair(wait.first, wait.then), true).second) continue;
      const Templates bare = without_waits(wait.then);
      bool met = false, missed = false;
      for (std::size_t i = 0; i < garments.size() && !missed; ++i) {
        if (there[i].count(wait.first) == 0 || there[i].count(wait.then) == 0) continue;
        const Found now = held(garments[i], delivered_library(), wait);
        met = met || now.met;
        CHECK_FALSE(now.open);
        missed = held(garments[i], bare, wait).open;
      }
      CHECK(met);
      CHECK(missed);
    }
}
