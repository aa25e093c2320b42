// The order of work as a bare graph: which node waits for which. No step texts, no project; so its laws can be tried on
// random graphs.
//
// A node that is absent is contracted: what it waits for passes to those that wait for it. An edge is hard (must hold) or
// soft (kept unless it would close a ring). Among nodes that are free the lowest rank comes first, so the same input always
// gives the same order.
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace gownsheaf {

struct StepEdge {
  std::size_t before = 0;  // node that comes first
  bool hard = false;
  std::string because;
};
struct StepNode {
  bool present = true;
  std::array<std::int64_t, 3> rank{};  // ranks of all nodes differ
  std::vector<StepEdge> after;
};

// The first ring of hard edges, each node waiting for the next; empty when there is none. Absent nodes count too: a ring
// in a library is a fault whichever conditions hold today.
std::vector<std::size_t> hard_ring(const std::vector<StepNode>& nodes);

// The same nodes with edges among present ones only. An edge made of several is hard when all of them are; it has no
// reason, because each reason was written about the absent node. A node waits for another once.
std::vector<StepNode> contracted(const std::vector<StepNode>& nodes);

// Present nodes in order. Hard edges must be free of rings.
std::vector<std::size_t> stable_order(const std::vector<StepNode>& contracted_nodes);

// The same order, and for each node the nodes that it waits for by the edges that are kept: every order that keeps those
// keeps all that is hard and all wishes that can be met together.
struct KeptOrder {
  std::vector<std::size_t> order;
  std::vector<std::vector<std::size_t>> after;
};
KeptOrder kept_order(const std::vector<StepNode>& contracted_nodes);

}  // namespace gownsheaf
