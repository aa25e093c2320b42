#include "calculate/step_graph.h"

#include <algorithm>
#include <map>
#include <set>

namespace gownsheaf {
namespace {

class Contraction {
 public:
  Contraction(const std::vector<StepNode>& nodes, std::size_t self)
      : nodes_(nodes), self_(self), through_hard_(nodes.size()), through_soft_(nodes.size()) {}

  std::vector<StepEdge> edges() {
    for (const StepEdge& edge : nodes_[self_].after) follow(edge);
    return std::move(found_);
  }

 private:
  struct Way {
    const StepEdge* edge;
    bool hard;
  };

  // Depth first with a stack of its own, in the order in which edges are written.
  void follow(const StepEdge& first) {
    std::vector<Way> stack{{&first, true}};
    while (!stack.empty()) {
      const Way way = stack.back();
      stack.pop_back();
      const bool all_hard = way.hard && way.edge->hard;
      const std::size_t to = way.edge->before;
      if (nodes_[to].present) {
        keep(to, all_hard, way.edge == &first ? first.because : std::string());
        continue;
      }
      auto& seen = all_hard ? through_hard_ : through_soft_;
      if (through_hard_[to] || seen[to]) continue;
      seen[to] = true;
      const auto& next = nodes_[to].after;
      for (std::size_t i = next.size(); i-- > 0;) stack.push_back({&next[i], all_hard});
    }
  }

  void keep(std::size_t to, bool hard, const std::string& because) {
    if (to == self_) return;
    const auto [at, fresh] = place_.emplace(to, found_.size());
    if (fresh) {
      found_.push_back({to, hard, because});
      return;
    }
    StepEdge& met = found_[at->second];
    if ((hard && !met.hard && !because.empty()) || met.because.empty()) met.because = because;
    met.hard = met.hard || hard;
  }

  const std::vector<StepNode>& nodes_;
  std::size_t self_;
  std::vector<bool> through_hard_, through_soft_;
  std::map<std::size_t, std::size_t> place_;
  std::vector<StepEdge> found_;
};

using Successors = std::vector<std::vector<std::size_t>>;

// Kahn's order by rank. Shorter than the number of present nodes when a ring is left.
std::vector<std::size_t> by_rank(const std::vector<StepNode>& nodes, const Successors& next) {
  std::vector<std::size_t> waits(nodes.size(), 0);
  for (const auto& row : next)
    for (const std::size_t to : row) ++waits[to];
  std::set<std::pair<std::array<std::int64_t, 3>, std::size_t>> free;
  for (std::size_t i = 0; i < nodes.size(); ++i)
    if (nodes[i].present && waits[i] == 0) free.insert({nodes[i].rank, i});
  std::vector<std::size_t> order;
  while (!free.empty()) {
    const std::size_t node = free.begin()->second;
    free.erase(free.begin());
    order.push_back(node);
    for (const std::size_t to : next[node])
      if (--waits[to] == 0) free.insert({nodes[to].rank, to});
  }
  return order;
}

bool reaches(const Successors& next, std::size_t from, std::size_t to) {
  std::vector<bool> seen(next.size());
  std::vector<std::size_t> stack{from};
  seen[from] = true;
  while (!stack.empty()) {
    const std::size_t node = stack.back();
    stack.pop_back();
    if (node == to) return true;
    for (const std::size_t n : next[node])
      if (!seen[n]) {
        seen[n] = true;
        stack.push_back(n);
      }
  }
  return false;
}

}  // namespace

std::vector<std::size_t> hard_ring(const std::vector<StepNode>& nodes) {
  enum class Mark { fresh, open, closed };
  std::vector<Mark> mark(nodes.size(), Mark::fresh);
  for (std::size_t start = 0; start < nodes.size(); ++start) {
    if (mark[start] != Mark::fresh) continue;
    std::vector<std::pair<std::size_t, std::size_t>> path{{start, 0}};  // node, next edge
    mark[start] = Mark::open;
    while (!path.empty()) {
      auto& [node, edge] = path.back();
      if (edge == nodes[node].after.size()) {
        mark[node] = Mark::closed;
        path.pop_back();
        continue;
      }
      const StepEdge& e = nodes[node].after[edge++];
      if (!e.hard || mark[e.before] == Mark::closed) continue;
      if (mark[e.before] == Mark::open) {
        std::vector<std::size_t> ring;
        for (const auto& on_path : path)
          if (!ring.empty() || on_path.first == e.before) ring.push_back(on_path.first);
        return ring;
      }
      mark[e.before] = Mark::open;
      path.emplace_back(e.before, 0);
    }
  }
  return {};
}

std::vector<StepNode> contracted(const std::vector<StepNode>& nodes) {
  std::vector<StepNode> out(nodes.size());
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    out[i].present = nodes[i].present;
    out[i].rank = nodes[i].rank;
    if (nodes[i].present) out[i].after = Contraction(nodes, i).edges();
  }
  return out;
}

namespace {

// Who comes after whom by the edges that are kept: all hard ones, and the soft ones that close no ring, taken in one by one in
// the order of the nodes.
Successors kept_edges(const std::vector<StepNode>& nodes, std::vector<std::size_t>& order) {
  Successors hard(nodes.size()), all(nodes.size());
  std::size_t present = 0;
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    if (nodes[i].present) ++present;
    for (const StepEdge& e : nodes[i].after) {
      if (e.hard) hard[e.before].push_back(i);
      all[e.before].push_back(i);
    }
  }
  order = by_rank(nodes, all);
  if (order.size() == present) return all;
  for (std::size_t i = 0; i < nodes.size(); ++i)
    for (const StepEdge& e : nodes[i].after)
      if (!e.hard && !reaches(hard, i, e.before)) hard[e.before].push_back(i);
  order = by_rank(nodes, hard);
  return hard;
}

}  // namespace

std::vector<std::size_t> stable_order(const std::vector<StepNode>& nodes) {
  std::vector<std::size_t> order;
  kept_edges(nodes, order);
  return order;
}

KeptOrder kept_order(const std::vector<StepNode>& nodes) {
  KeptOrder kept;
  const Successors next = kept_edges(nodes, kept.order);
  kept.after.resize(nodes.size());
  for (std::size_t i = 0; i < next.size(); ++i)
    for (const std::size_t to : next[i]) kept.after[to].push_back(i);
  return kept;
}

}  // namespace gownsheaf
