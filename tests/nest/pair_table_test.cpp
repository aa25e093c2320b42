// Tables of pairs: the two kinds say the same, bit for bit, and as the proof in whole numbers says.
#include <random>

#include "nest/outline_world.h"
#include "nest/proof.h"
#include "support/catch.h"
#include "support/rounds.h"

using namespace gownsheaf;
using namespace gownsheaf::nest;

TEST_CASE("a table made at once and one made when asked say the same, and what the proof says", "[nest][outlines]") {
  std::mt19937 engine(7);
  const auto up_to = [&](int n) { return static_cast<int>(engine() % static_cast<unsigned>(n + 1)); };
  Request request;
  request.strips.push_back({Length::ticks(4'000'000), std::nullopt, {}, 1});
  for (int k = 0; k < 12; ++k) {  // stars and combs of fewer corners than are ever simplified
    Part part;
    const int size = k % 4 == 3 ? 30 : 300'000 + up_to(900'000), n = 3 + up_to(7);
    for (int i = 0; i < n; ++i)
      part.outline.push_back({Length::ticks(size * i / n + up_to(size / 20)), Length::ticks(up_to(size / 4))});
    for (int i = n; i-- > 0;)
      part.outline.push_back({Length::ticks(size * i / n + up_to(size / 20)), Length::ticks(size / 3 + up_to(size / 2))});
    part.poses = {{0, false, 0}, {1, false, 0}, {2, true, 0}};
    request.parts.push_back(part);
  }
  Prepared prepared;
  prepare(request, prepared);
  REQUIRE(prepared.unsupported.empty());
  const std::vector<Shape>& shapes = prepared.world.shapes;
  REQUIRE(shapes.size() == 36);
  int overlapping = 0;
  const int rounds = kLawRounds / 20;
  for (int round = 0; round < rounds; ++round) {
    const Shape &a = shapes[static_cast<std::size_t>(up_to(35))], &b = shapes[static_cast<std::size_t>(up_to(35))];
    const PairTable table(a, b, 0, PairTable::kCoarse), fine(a, b, 0, PairTable::kFine);
    const SeldomTable seldom(a, b);
    const Corner least = least_offset(a, b, 0);
    for (int k = 0; k < 20; ++k) {
      const int u = up_to(a.width + b.width), v = up_to(a.height + b.height);
      const double loss = table.loss(u, v);
      const bool overlap = !apart(a.outline, b.outline, u + least.x, v + least.y, 0);
      if (seldom.loss(u, v) != loss || seldom.loss(u, v) != loss || (loss > 0) != overlap || (fine.loss(u, v) > 0) != overlap) {
        CAPTURE(round, u, v, loss, overlap);
        FAIL("tables and proof differ");
      }
      overlapping += overlap ? 1 : 0;
    }
  }
  CHECK(overlapping > rounds * 5);
  CHECK(overlapping < rounds * 18);
}
