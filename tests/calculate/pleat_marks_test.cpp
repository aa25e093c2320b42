// The marks of knife, box and inverted pleats against the formulas that docs/formulas.md#pleat-marks prints, written out
// here once more: v visible, d depth, p plus.
#include "calculate/pleats.h"
#include "support/catch.h"

using namespace gownsheaf;

namespace {

// 6 pleats, 2 in to see, 3/4 in deep, 1 in of plain cloth before them: every place is whole in sixty-fourths.
constexpr std::int64_t kPleats = 6;
const Length v = Length::inches(2), d = Length::sixty_fourths(48), p = Length::inches(1);

std::vector<PleatMark> marks_of(PleatKind kind) {
  PleatInput input;
  input.kind = kind;
  input.count = kPleats;
  input.visible = v;
  input.depth = d;
  input.plus = p;
  const auto outcome = solve_pleats(input, "waist", ShownIn::inches);
  REQUIRE(outcome.index() == 0);
  const PleatSolution& s = std::get<0>(outcome);
  REQUIRE(s.flat == kPleats * (v + (kind == PleatKind::knife ? 2 : 4) * d) + p);
  return pleat_marks(kind, s);
}

void check_mark(const PleatMark& m, std::int64_t pleat, Length fold, Length lay_on, Length edge) {
  CAPTURE(pleat);
  CHECK(m.pleat == pleat);
  CHECK(m.fold == fold);
  CHECK(m.lay_on == lay_on);
  CHECK(m.edge == edge);
}

}  // namespace

TEST_CASE("knife: fold at p + (k - 1)(v + 2d) + v, laid on the line 2d further, its edge at k v") {
  const auto marks = marks_of(PleatKind::knife);
  REQUIRE(marks.size() == kPleats);
  for (std::int64_t k = 1; k <= kPleats; ++k) {
    const Length fold = p + (k - 1) * (v + 2 * d) + v;
    check_mark(marks[static_cast<std::size_t>(k - 1)], k, fold, fold + 2 * d, k * v);
  }
}

TEST_CASE("box: two folds 2d and 2d + v into the pleat, laid outwards on its two ends") {
  const auto marks = marks_of(PleatKind::box);
  REQUIRE(marks.size() == 2 * kPleats);
  for (std::int64_t k = 1; k <= kPleats; ++k) {
    const Length start = p + (k - 1) * (v + 4 * d);
    check_mark(marks[static_cast<std::size_t>(2 * k - 2)], k, start + 2 * d, start, (k - 1) * v);
    check_mark(marks[static_cast<std::size_t>(2 * k - 1)], k, start + 2 * d + v, p + k * (v + 4 * d), k * v);
  }
}

TEST_CASE("inverted: two folds v/2 from the ends of the pleat, laid together on its middle") {
  const auto marks = marks_of(PleatKind::inverted);
  REQUIRE(marks.size() == 2 * kPleats);
  for (std::int64_t k = 1; k <= kPleats; ++k) {
    const Length start = p + (k - 1) * (v + 4 * d), end = p + k * (v + 4 * d), half = v.times(1, 2);
    const Length middle = start + (v + 4 * d).times(1, 2), edge = (k - 1) * v + half;
    check_mark(marks[static_cast<std::size_t>(2 * k - 2)], k, start + half, middle, edge);
    check_mark(marks[static_cast<std::size_t>(2 * k - 1)], k, end - half, middle, edge);
  }
}
