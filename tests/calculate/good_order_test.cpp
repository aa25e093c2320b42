// The order a person would choose: exact where it is small, never worse than the library's own order, and better on whole garments.
#include "calculate/good_order.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "calculate/step_instances.h"
#include "support/catch.h"
#include "support/random_draws.h"
#include "support/step_library.h"

using namespace gownsheaf;
using namespace gownsheaf::test;

namespace {

using Places = std::vector<std::size_t>;

std::vector<SewStep> any_work(draws::Draws& dice, std::size_t n, int waits_in_hundred) {
  std::vector<SewStep> steps(n);
  for (std::size_t i = 0; i < n; ++i) {
    SewStep& s = steps[i];
    s.set_up = static_cast<SetUp>(dice.of(0, 4));
    s.act = static_cast<int>(dice.of(0, 5));
    s.item = static_cast<int>(dice.of(-1, 2));
    s.sitting = dice.of(0, 7) == 0 ? static_cast<int>(dice.of(0, 1)) : -1;
    s.fitting = dice.of(0, 5) == 0;
    s.cut = dice.of(0, 4) == 0 ? static_cast<int>(dice.of(0, 3)) : -1;
    s.minutes = 5 * dice.of(1, 30);
    for (std::size_t k = 0; k < i; ++k)
      if (dice.of(0, 99) < waits_in_hundred) s.after.push_back(k);
  }
  return steps;
}

Places as_written(std::size_t n) {
  Places all(n);
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

bool keeps_waits(const std::vector<SewStep>& steps, const Places& order) {
  Places place(steps.size(), steps.size());
  for (std::size_t i = 0; i < order.size(); ++i) place[order[i]] = i;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (place[i] == steps.size()) return false;
    for (const std::size_t a : steps[i].after)
      if (place[a] >= place[i]) return false;
  }
  return order.size() == steps.size();
}

// The steps of a finished order as bare numbers, to be measured by the same points.
std::vector<SewStep> measured_by(const std::vector<PlannedStep>& work, std::map<std::string, std::size_t>& place) {
  const std::map<std::string, SetUp> set_ups{{"table", SetUp::table},
                                             {"machine", SetUp::machine},
                                             {"iron", SetUp::iron},
                                             {"hand", SetUp::hand},
                                             {"figure", SetUp::figure}};
  std::vector<SewStep> steps(work.size());
  std::map<std::string, int> acts, items;
  for (std::size_t i = 0; i < work.size(); ++i) place[work[i].id] = i;
  for (std::size_t i = 0; i < work.size(); ++i) {
    const PlannedStep& p = work[i];
    const Step* step = delivered_library().step(step_of(p.id));
    const auto index = static_cast<int>(step - delivered_library().steps.data());
    steps[i].set_up = set_ups.at(p.set_up);
    steps[i].act = acts.emplace(step_of(p.id), static_cast<int>(acts.size())).first->second;
    if (!p.item.empty()) steps[i].item = items.emplace(p.item, static_cast<int>(items.size())).first->second;
    steps[i].fitting = !p.gate.empty();
    if (p.cannot_undo == kCannotUndo[0]) steps[i].cut = index;
    steps[i].minutes = p.takes.milliseconds / 60'000;
    for (const std::string& id : p.hard_after) steps[i].after.push_back(place.at(id));
  }
  return steps;
}

}  // namespace

TEST_CASE("good order: whole garments come out with fewer points than in plain library order", "[order]") {
  const std::vector<Parts> kinds{{Garment::dress, true, true, true, false, true, false, true},
                                 {Garment::bodice, true, true, false, false, false, false, true},
                                 {Garment::skirt, false, false, true, true, false, false, false},
                                 {Garment::corset, false, false, false, false, false, true, true},
                                 {Garment::waistcoat, true, false, false, false, false, false, true}};
  for (const Parts& parts : kinds) {
    WorkGarment g = garment_of(parts);
    g.project.sections_given.insert({"piping", "trims", "pockets", "plackets"});
    g.project.ease["bust"] = Given<Length>::written(Length::inches(1), {});
    const auto work = planned_by_library(g);
    std::map<std::string, std::size_t> place;
    const std::vector<SewStep> steps = measured_by(work, place);
    const StepInstances all = step_instances(g.project, delivered_library(), facts_of(g.project, g.figures, g.plans));
    Places plain;
    for (const std::size_t i : stable_order(contracted(all.nodes))) plain.push_back(place.at(all.steps[i].id));
    REQUIRE(keeps_waits(steps, plain));
    const std::int64_t by_library = points_of(steps, plain), chosen = points_of(steps, as_written(steps.size()));
    INFO(word_for(parts.garment) << ": " << work.size() << " steps, " << by_library << " points in library order, " << chosen
                                 << " as chosen");
    CHECK(chosen * 100 <= by_library * 98);
  }
}

TEST_CASE("good order: by hand", "[order]") {
  // Two cloths cut and two seams sewn: all cutting, then all sewing. 180 for the one change of set-up; within each 30 for the
  // other cloth, 15 where the act changes with the set-up not counted twice.
  std::vector<SewStep> steps(4);
  for (const std::size_t i : {0u, 2u}) steps[i] = {SetUp::table, 0, static_cast<int>(i / 2), -1, false, -1, 10, {}};
  for (const std::size_t i : {1u, 3u}) steps[i] = {SetUp::machine, 1, static_cast<int>(i / 2), -1, false, -1, 10, {i - 1}};
  CHECK(points_of(steps, {0, 1, 2, 3}) == 3 * 180);
  CHECK(points_of(steps, {0, 2, 1, 3}) == 30 + 180 + 30);
  CHECK(exact_order(steps, as_written(4)) == Places{0, 2, 1, 3});  // {0, 2, 3, 1} costs as much; nearer to the start is kept
  // A fitting draws what it needs before what it does not need.
  std::vector<SewStep> fitting(3);
  fitting[0].minutes = 60;
  fitting[1].minutes = 30;
  fitting[2].fitting = true;
  fitting[2].after = {1};
  CHECK(exact_order(fitting, as_written(3)) == Places{1, 2, 0});
  // Small before large from one cloth costs more than any change of set-up.
  std::vector<SewStep> cuts(2);
  cuts[0].cut = 5;
  cuts[1].cut = 2;
  CHECK(exact_order(cuts, as_written(2)) == Places{1, 0});
}

TEST_CASE("good order: the exact one is the least of all orders, and the search comes near it", "[order][law]") {
  draws::Draws dice(1871);
  for (int round = 0; round < kLawRounds / 20; ++round) {
    const auto n = static_cast<std::size_t>(dice.of(2, 6));
    const auto steps = any_work(dice, n, 25);
    std::int64_t least = points_of(steps, as_written(n));
    Places order = as_written(n);
    do {
      if (keeps_waits(steps, order)) least = std::min(least, points_of(steps, order));
    } while (std::next_permutation(order.begin(), order.end()));
    const Places exact = exact_order(steps, as_written(n)), found = searched_order(steps, as_written(n));
    REQUIRE(keeps_waits(steps, exact));
    REQUIRE(points_of(steps, exact) == least);
    REQUIRE(keeps_waits(steps, found));
    REQUIRE(points_of(steps, found) >= least);
  }
  int met = 0;
  for (int round = 0; round < 60; ++round) {
    const auto steps = any_work(dice, kExactSteps, 15);
    const Places start = as_written(kExactSteps);
    met += points_of(steps, searched_order(steps, start)) == points_of(steps, exact_order(steps, start)) ? 1 : 0;
  }
  CHECK(met >= 45);  // of 60
}

TEST_CASE("good order: large work keeps every wait, is never worse than its start, the same each time", "[order][law]") {
  draws::Draws dice(88);
  for (int round = 0; round < kLawRounds / 100; ++round) {
    const auto n = static_cast<std::size_t>(dice.of(13, 70));
    const auto steps = any_work(dice, n, 8);
    const Places order = good_order(steps, as_written(n), 20000);
    REQUIRE(keeps_waits(steps, order));
    REQUIRE(points_of(steps, order) <= points_of(steps, as_written(n)));
    REQUIRE(order == good_order(steps, as_written(n), 20000));
  }
}
