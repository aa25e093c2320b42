// The folded run of the new kinds, against its marks.
#include "packet/pleat_drawing.h"

#include "calculate/pleats.h"
#include "support/catch.h"

using namespace gownsheaf;

TEST_CASE("a double box pleat drawn: each side folds twice, the outer fold below, and the line ends at the finished width") {
  PleatInput input;
  input.kind = PleatKind::double_box;
  input.finished = Length::inches(8);
  input.count = 2;
  input.depth = Length::inches(1);
  const auto outcome = solve_pleats(input, "sides", ShownIn::inches);
  REQUIRE(outcome.index() == 0);
  const PleatSolution& s = std::get<0>(outcome);
  PleatPlan plan;
  plan.kind = "double box";
  plan.flat = s.flat;
  plan.finished = s.finished;
  plan.count = s.count;
  plan.marks = pleat_marks(input.kind, s);
  const std::vector<Stretch> path = folded_path(plan);
  REQUIRE(path.size() == 18);  // two pleats of a face and eight stretches under it
  Length along{};
  for (std::size_t i = 0; i < path.size(); ++i) {
    along += path[i].to > path[i].from ? path[i].to - path[i].from : path[i].from - path[i].to;
    if (i > 0) CHECK(path[i].from == path[i - 1].to);
  }
  CHECK(along == s.flat);  // 8 in seen + 16 x 1 in
  CHECK(path.back().to == s.finished);
  const int layers[] = {4, 3, 2, 1, 0, 1, 2, 3, 4};
  for (std::size_t i = 0; i < path.size(); ++i) CHECK(path[i].layer == layers[i % 9]);
  for (const Stretch& face : path)
    if (face.layer == 0) CHECK(face.to - face.from == s.visible);
}
