// Laws of the order of work on random graphs: hard edges hold, the order is stable, contraction loses no one's place.
#include "calculate/step_graph.h"

#include <algorithm>
#include <numeric>
#include <random>
#include <set>

#include "support/catch.h"
#include "support/rounds.h"

using namespace gownsheaf;

namespace {

using Graph = std::vector<StepNode>;

Graph graph_of(std::size_t n) {
  Graph g(n);
  for (std::size_t i = 0; i < n; ++i) g[i].rank = {static_cast<std::int64_t>(i), 0, 0};
  return g;
}

// Hard edges only from earlier to later places of a shuffled line, so they can make no ring; soft edges anywhere.
Graph any_graph(std::mt19937& dice) {
  const std::size_t n = 1 + dice() % 14;
  Graph g = graph_of(n);
  std::vector<std::size_t> line(n);
  std::iota(line.begin(), line.end(), std::size_t{0});
  for (std::size_t i = n; i > 1; --i) std::swap(line[i - 1], line[dice() % i]);
  for (auto edges = dice() % (2 * n + 1); edges > 0; --edges) {
    std::size_t a = dice() % n, b = dice() % n;
    if (a == b) continue;
    if (a > b) std::swap(a, b);
    g[line[b]].after.push_back({line[a], true, "hard"});
  }
  for (auto edges = dice() % (n + 1); edges > 0; --edges) {
    const std::size_t a = dice() % n, b = dice() % n;
    if (a != b) g[b].after.push_back({a, false, "soft"});
  }
  for (StepNode& node : g) node.present = dice() % 4 != 0;
  return g;
}

// reach[b] holds every a that b waits for through one or more edges (hard ones only, or any).
std::vector<std::set<std::size_t>> waits(const Graph& g, bool hard_only) {
  std::vector<std::set<std::size_t>> reach(g.size());
  for (std::size_t b = 0; b < g.size(); ++b) {
    std::vector<std::size_t> stack{b};
    while (!stack.empty()) {
      const std::size_t at = stack.back();
      stack.pop_back();
      for (const StepEdge& e : g[at].after)
        if ((e.hard || !hard_only) && reach[b].insert(e.before).second) stack.push_back(e.before);
    }
  }
  return reach;
}

}  // namespace

TEST_CASE("steps: free steps keep the library's order, waiting ones come as soon as they may", "[steps]") {
  Graph g = graph_of(4);
  g[0].after.push_back({2, true, "the hem is finished there"});  // 0 waits for 2
  CHECK(stable_order(contracted(g)) == std::vector<std::size_t>{1, 2, 0, 3});
}

TEST_CASE("steps: what an absent step waits for passes on, without a reason that speaks of it", "[steps]") {
  Graph g = graph_of(3);
  g[2].after.push_back({1, true, "second reason"});
  g[1].after.push_back({0, true, "first reason"});
  g[1].present = false;
  const Graph c = contracted(g);
  REQUIRE(c[2].after.size() == 1);
  CHECK(c[2].after[0].before == 0);
  CHECK(c[2].after[0].hard);
  CHECK(c[2].after[0].because.empty());
  g[2].after.push_back({0, true, "third reason"});  // written for it directly as well
  CHECK(contracted(g)[2].after[0].because == "third reason");
  g[2].after.pop_back();
  g[2].after[0].hard = false;  // a wish followed by a must is a wish
  CHECK_FALSE(contracted(g)[2].after[0].hard);
}

TEST_CASE("steps: a soft edge that would close a ring is dropped", "[steps]") {
  Graph g = graph_of(2);
  g[1].after.push_back({0, true, ""});
  g[0].after.push_back({1, false, ""});
  CHECK(stable_order(contracted(g)) == std::vector<std::size_t>{0, 1});
}

TEST_CASE("steps: a ring of hard edges is found and given in waiting order, absent steps too", "[steps]") {
  Graph g = graph_of(4);
  g[1].after.push_back({2, true, ""});
  g[2].after.push_back({3, true, ""});
  g[3].after.push_back({1, true, ""});
  g[3].present = false;
  CHECK(hard_ring(g) == std::vector<std::size_t>{1, 2, 3});
  g[3].after.clear();
  CHECK(hard_ring(g).empty());
  g[0].after.push_back({0, true, ""});
  CHECK(hard_ring(g) == std::vector<std::size_t>{0});
}

TEST_CASE("steps: laws of the order on random graphs", "[steps][law]") {
  std::mt19937 dice(1855);
  for (int round = 0; round < kLawRounds; ++round) {
    const Graph g = any_graph(dice);
    REQUIRE(hard_ring(g).empty());
    const Graph c = contracted(g);

    // Contraction: among present steps who waits for whom is unchanged, by hard edges and by all.
    for (const bool hard_only : {true, false}) {
      const auto before = waits(g, hard_only), after = waits(c, hard_only);
      for (std::size_t b = 0; b < g.size(); ++b) {
        if (!g[b].present) continue;
        for (std::size_t a = 0; a < g.size(); ++a)
          if (g[a].present && a != b) REQUIRE(before[b].count(a) == after[b].count(a));
      }
    }
    for (const StepNode& node : c)
      for (const StepEdge& e : node.after) REQUIRE(c[e.before].present);

    // Order: every present step once, every hard edge kept, the same each time.
    const auto order = stable_order(c);
    REQUIRE(order == stable_order(contracted(g)));
    std::vector<std::size_t> place(g.size(), g.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
      REQUIRE(g[order[i]].present);
      REQUIRE(place[order[i]] == g.size());
      place[order[i]] = i;
    }
    REQUIRE(order.size() == static_cast<std::size_t>(std::count_if(g.begin(), g.end(), [](auto& n) { return n.present; })));
    const auto must = waits(c, true);
    for (std::size_t b = 0; b < g.size(); ++b)
      for (const std::size_t a : must[b]) REQUIRE(place[a] < place[b]);

    // A soft edge is broken only where keeping it would close a ring with what was kept.
    bool any_soft = false;
    for (const StepNode& node : c)
      for (const StepEdge& e : node.after) any_soft = any_soft || !e.hard;
    if (!any_soft) {
      // Stable: of two neighbours in the order, the later stands there because of its rank or because it waits.
      for (std::size_t i = 1; i < order.size(); ++i)
        if (g[order[i]].rank < g[order[i - 1]].rank) REQUIRE(must[order[i]].count(order[i - 1]) == 1);
    }
  }
}

TEST_CASE("steps: the same graph written in another order of edges gives the same order", "[steps][law]") {
  std::mt19937 dice(77);
  for (int round = 0; round < kLawRounds; ++round) {
    Graph g = any_graph(dice);
    for (StepNode& n : g)
      n.after.erase(std::remove_if(n.after.begin(), n.after.end(), [](const StepEdge& e) { return !e.hard; }), n.after.end());
    const auto first = stable_order(contracted(g));
    for (StepNode& n : g)
      for (std::size_t i = n.after.size(); i > 1; --i) std::swap(n.after[i - 1], n.after[dice() % i]);
    REQUIRE(stable_order(contracted(g)) == first);
  }
}
