#include "calculate/closures.h"
#include "calculate/plackets.h"

#include <algorithm>

#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::mm;

namespace {

ClosurePlaces placed(const ClosureInput& input) {
  const auto outcome = place_fasteners(input, ShownIn::inches);
  if (outcome.index() == 1) FAIL(std::get<1>(outcome).sentence);
  return std::get<0>(outcome);
}
ClosureFault fault(const ClosureInput& input) {
  const auto outcome = place_fasteners(input, ShownIn::inches);
  REQUIRE(outcome.index() == 1);
  return std::get<1>(outcome);
}
ClosureInput edge(Length length, Length top, Length bottom) {
  ClosureInput input;
  input.edge_length = length;
  input.top = top;
  input.bottom = bottom;
  return input;
}

}  // namespace

TEST_CASE("[C01] a: hooks and eyes keep 1 1/4 in at most (The New Dressmaker, Butterick 1921, p. 117)") {
  CHECK(usual_at_most(Fasten::hooks_and_eyes) == in(5, 4));
  CHECK(usual_at_most(Fasten::snaps) == in(2));  // C04, the same, p. 101: unstrained placket
}

TEST_CASE("[C02] a, x: 12 1/2 in from first to last at 1 1/4 in are ten gaps, eleven hooks (C01 and counting)") {
  ClosureInput input = edge(in(25, 2), Length{}, Length{});
  input.at_most = in(5, 4);
  const ClosurePlaces p = placed(input);
  CHECK(p.places.size() == 11);
  CHECK(p.widest == in(5, 4));
}

TEST_CASE("[C03] a: a 10 1/4 in placket with hooks 1 1/4 in apart from 1/4 in: eight gaps (Ingalls, Text-Book on Domestic Art)") {
  ClosureInput input = edge(in(41, 4), in(1, 4), Length{});
  input.at_most = in(5, 4);
  CHECK(placed(input).places.size() == 9);  // 10 / 1 1/4 = 8 gaps
}

TEST_CASE("[C05] a: ten buttons over 36 cm stand 4 cm apart (thesewingcorner, May 2013)") {
  ClosureInput input = edge(cm(36), Length{}, Length{});
  input.number = 10;
  CHECK(placed(input).widest == cm(4));
}

TEST_CASE("[C06] a: a button 1/2 in across and 1/8 in thick wants 5/8 in (sewing-adventures, February 2024)") {
  CHECK(buttonhole_length(in(1, 2), in(1, 8), false) == in(5, 8));
}
TEST_CASE("[C07] a: 3/4 in across, 1/8 in high, with a shank: 1 in (Vogue Sewing Book 1970, as reported)") {
  CHECK(buttonhole_length(in(3, 4), in(1, 8), true) == in(1));
}

TEST_CASE("[C09] a, x; [C10] [C11] x: laces over 3-4-5 triangles (datagenetics, June 2022, and geometry)") {
  const std::vector<Length> pitches(4, cm(4));
  CHECK(lace_path(LaceAs::cross, 5, cm(3), pitches) == cm(43));   // 3 + 2 x 4 x 5
  CHECK(lace_path(LaceAs::spiral, 5, cm(3), pitches) == cm(35));  // 5 x 3 + 4 x 5
  // half-pitch 4, so pitch 8: 9 x 5
  CHECK(lace_path(LaceAs::staggered_spiral, 5, cm(3), std::vector<Length>(4, cm(8))) == cm(45));
}

TEST_CASE(
    "[C12] a from four pairs on, b of three: from four pairs on cross < straight < shop; of three pairs the last two are equal (Halton, as reported)") {
  draws::Draws draw(20261);
  for (int i = 0; i < kLawRounds; ++i) {
    const Length gap = Length::ticks(draw.of(100, 900000)), pitch = Length::ticks(draw.of(1000, 400000));
    const std::int64_t n = draw.of(3, 30);
    const std::vector<Length> pitches(static_cast<std::size_t>(n - 1), pitch);
    const Length cross = lace_path(LaceAs::cross, n, gap, pitches), straight = lace_path(LaceAs::straight, n, gap, pitches),
                 shop = lace_path(LaceAs::shop, n, gap, pitches);
    const Length round = Length::ticks(n);  // each diagonal is rounded once
    CHECK(cross < straight + round);
    if (n == 3) CHECK((straight < shop ? shop - straight : straight - shop) <= round);
    else CHECK(straight < shop + round);
  }
}

TEST_CASE("[C13] a, x: eyelets at most 3 cm apart over 28 cm: ten gaps of 2.8 cm (zanotowane.pl, a costume handbook, p. 54)") {
  ClosureInput input = edge(cm(28), Length{}, Length{});
  input.at_most = *usual_at_most(Fasten::lacing);
  const ClosurePlaces p = placed(input);
  CHECK(p.places.size() == 11);
  CHECK(p.widest == mm(28));
}

TEST_CASE("a hook at the bust divides 4 1/4 and 8 3/4 in by themselves: five gaps of 0.85 and nine of 0.97 in") {
  ClosureInput input = edge(in(27, 2), in(1, 4), in(1, 4));
  input.at_most = in(1);
  input.forced = {{"fullest bust", in(9, 2)}};
  const ClosurePlaces p = placed(input);
  REQUIRE(p.places.size() == 15);
  CHECK(p.places[5].from_top == in(9, 2));
  CHECK(p.places[5].level == "fullest bust");
  REQUIRE(p.gaps.size() == 2);
  CHECK(p.gaps[0] == in(17, 20));
  CHECK(p.gaps[1] == in(35, 36));
  CHECK(p.places.back().from_top == in(53, 4));
}

TEST_CASE("six buttons with one at the waist: four gaps above and one below, all 6.5 cm") {
  ClosureInput input = edge(cm(40), mm(15), cm(6));
  input.number = 6;
  input.forced = {{"waist", mm(275)}};
  const ClosurePlaces p = placed(input);
  REQUIRE(p.places.size() == 6);
  CHECK(p.widest == mm(65));
  CHECK(p.places[4].level == "waist");
}

TEST_CASE("three eyelets 2 cm apart on a 6 cm tab without insets stand in its middle: at 1, 3, 5 cm") {
  ClosureInput input = edge(cm(6), in(1, 4), in(1, 4));
  input.pitch = cm(2);
  input.number = 3;
  input.insets_free = true;
  const ClosurePlaces p = placed(input);
  CHECK(p.places[0].from_top == cm(1));
  CHECK(p.places[2].from_top == cm(5));
}

TEST_CASE("staggered eyelets: nine half pitches of 4 cm over 36 cm, five a side, the other side half a pitch lower") {
  ClosureInput input = edge(cm(36), Length{}, Length{});
  input.number = 5;
  input.staggered = true;
  const ClosurePlaces p = placed(input);
  REQUIRE(p.other_side.size() == 5);
  CHECK(p.places[1].from_top == cm(8));
  CHECK(p.other_side[0] == cm(4));
  CHECK(p.other_side[4] == cm(36));
}

TEST_CASE("what cannot stand on an edge says why") {
  ClosureInput input = edge(in(15), in(8), in(8));
  input.at_most = in(1);
  CHECK(fault(input).code == "edge-too-short");
  input = edge(in(27, 2), in(1, 4), in(1, 4));
  CHECK(fault(input).code == "fasteners-too-few");
  input.number = 2;
  input.forced = {{"waist", in(12)}};
  CHECK(fault(input).code == "fasteners-contradict");
  input.forced = {{"waist", in(16)}};
  CHECK(fault(input).code == "level-off-edge");
}

TEST_CASE("the cut edge: lap and turn, or lap and the seam of a facing") {
  Closure closure;
  closure.lap = closure.underlap = Given<Length>::written(mm(18), {});
  closure.turn_back = Given<Length>::standing(in(1), 'a', "");
  CHECK(side_cut(closure, nullptr, false).past() == mm(18) + in(1));
  closure.facing = "front facing";
  Piece front;
  front.seam_allowance = Given<Length>::written(cm(1), {});
  CHECK(side_cut(closure, &front, false).past() == mm(28));
}

TEST_CASE(
    "[C04] a: a tape placket keeps 1 in (Baldt, Tailored Skirt, part 3); snaps where nothing pulls 2 in (Butterick 1921, p. 101)") {
  // Baldt, chestofbooks.com, by `at most`: 10 in from first to last are ten gaps. Snaps without a word: five gaps of 2 in.
  ClosureInput hooks = edge(in(10), Length{}, Length{});
  hooks.at_most = in(1);
  CHECK(placed(hooks).places.size() == 11);
  CHECK(placed(hooks).widest == in(1));
  ClosureInput snaps = edge(in(10), Length{}, Length{});
  snaps.at_most = usual_at_most(Fasten::snaps);
  CHECK(placed(snaps).places.size() == 6);
  CHECK(placed(snaps).widest == in(2));
}

TEST_CASE(
    "[C08] a: a slit of 10 in wants a strip 20 by 3 3/4 in, or an underlap 1 1/2 by 11 in (The New Dressmaker, Butterick 1921, pp. 100 to 102)") {
  CHECK(continuous_lap(in(10)).long_ == in(20));
  CHECK(continuous_lap(in(10)).wide == in(15, 4));
  CHECK(separate_underlap(in(10)).wide == in(3, 2));
  CHECK(separate_underlap(in(10)).long_ == in(11));
  Project project = garment::project(ShownIn::inches);
  Placket placket;
  placket.named = garment::named("side");
  placket.length = garment::said(in(10));
  placket.finish = garment::said(PlacketFinish::continuous_lap);
  project.plackets.push_back(placket);
  Figures figures;
  add_plackets(project, figures);
  CHECK(figures.length("plackets/side/set back") == in(1, 8));
  CHECK(figures.length("plackets/side/strip long") == in(20));
  project.plackets[0].finish =
      garment::said(PlacketFinish::faced);  // two facings as long and wide as an underlap: common practice
  Figures faced;
  add_plackets(project, faced);
  CHECK(faced.length("plackets/side/facing long") == in(11));
  CHECK(faced.length("plackets/side/facing wide") == in(3, 2));
  CHECK(faced.at("plackets/side/facing wide").label == 'c');
}

TEST_CASE("lace through its eyelets: 14 pairs in an edge of 1.2 mm take 28 x 2 x 1.2 = 67.2 mm more (common practice)") {
  CHECK(lace_through(14, Length::tenth_mm(12)) == Length::tenth_mm(672));
  CHECK(lace_through(14, Length{}).is_zero());
}

TEST_CASE("a tie: 12 in to tie, 2 in sewn down, 1/2 in hemmed; cut 14 1/2 in (common practice)") {
  CHECK(tie_cut(in(12)).cut() == in(29, 2));
}

TEST_CASE("where sources disagree over the buttonhole the maker chooses; a shank counts where nothing is chosen") {
  const auto rule = [](ButtonholeIs r) { return Given<ButtonholeIs>::written(r, {}); };
  const Rules standing;
  CHECK_FALSE(buttonhole_eighth_more(standing.buttonhole_is, false));
  CHECK(buttonhole_eighth_more(standing.buttonhole_is, true));
  CHECK(buttonhole_eighth_more(rule(ButtonholeIs::eighth_more), false));
  CHECK_FALSE(buttonhole_eighth_more(rule(ButtonholeIs::across_and_thickness), true));
  CHECK(buttonhole_eighth_more(rule(ButtonholeIs::more_for_a_shank), true));
  CHECK_FALSE(buttonhole_eighth_more(rule(ButtonholeIs::more_for_a_shank), false));
}

TEST_CASE("closer near the waist: 1 in apart above 7 in, 3/4 in from 7 to 13 in") {
  // 14 in, hooks at most 1 in; the waist 10 in down, 3 in to both sides at most 3/4 in. 0 to 7 in: 7 gaps of 1 in; 7 to 13: 8
  // gaps of 3/4 in; 13 to 14: 1 gap of 1 in: 17 hooks.
  ClosureInput input = edge(in(14), Length{}, Length{});
  input.at_most = in(1);
  input.closer.push_back({"waist", in(7), in(13), in(3, 4)});
  const ClosurePlaces p = placed(input);
  REQUIRE(p.places.size() == 17);
  CHECK(p.gaps == std::vector<Length>{in(1), in(3, 4), in(1)});
  CHECK(p.places[7].from_top == in(7));
  CHECK(p.places[7].fixed);
  CHECK(p.places[15].from_top == in(13));
  CHECK(fault([&] {
          ClosureInput wide = input;
          wide.closer[0].at_most = in(5, 4);
          return wide;
        }())
            .code == "closer-not-closer");
  CHECK(fault([&] {
          ClosureInput counted = input;
          counted.number = 9;
          return counted;
        }())
            .code == "fasteners-contradict");
}

TEST_CASE("random closer parts: no gap within one is above its maximum, none anywhere above the edge's") {
  draws::Draws draw(14);
  for (int round = 0; round < kLawRounds; ++round) {
    ClosureInput input = edge(Length::sixty_fourths(draw.of(300, 2000)), Length::sixty_fourths(draw.of(0, 60)),
                              Length::sixty_fourths(draw.of(0, 60)));
    input.at_most = Length::sixty_fourths(draw.of(60, 160));
    const Length level = Length::sixty_fourths(draw.of(0, 300)), within = Length::sixty_fourths(draw.of(40, 300));
    const Length least = input.at_most->times(draw.of(3, 8), 9);
    input.closer.push_back({"waist", level - within, level + within, least});
    if (draw.of(0, 1) == 1) input.forced.push_back({"waist", level});
    const ClosurePlaces p = placed(input);
    const Length half = least.times(1, 2);
    for (std::size_t i = 1; i < p.places.size(); ++i) {
      const Length from = p.places[i - 1].from_top, to = p.places[i].from_top;
      CHECK(to > from);
      CHECK(to - from <= *input.at_most);
      if (std::min(to, level + within) - std::max(from, level - within) > half) CHECK(to - from <= least);
    }
    for (const ForcedPlace& f : input.forced)
      CHECK(std::any_of(p.places.begin(), p.places.end(), [&](const Fastener& at) { return at.from_top == f.from_top; }));
  }
}

// A second, plain implementation: exact fractions by counting up, no greedy step and no shared code.
namespace {
std::vector<Length> plainly(const ClosureInput& input) {
  // A forced place above the first, or below the last, takes its stead.
  Length first = input.top, last = input.edge_length - input.bottom;
  std::vector<Length> fixed;
  for (const ForcedPlace& f : input.forced) {
    first = std::min(first, f.from_top);
    last = std::max(last, f.from_top);
    fixed.push_back(f.from_top);
  }
  fixed.push_back(first);
  fixed.push_back(last);
  std::sort(fixed.begin(), fixed.end());
  fixed.erase(std::unique(fixed.begin(), fixed.end()), fixed.end());
  std::vector<Length> places{fixed.front()};
  for (std::size_t k = 1; k < fixed.size(); ++k) {
    const Length stretch = fixed[k] - fixed[k - 1];
    std::int64_t gaps = 1;
    while (stretch > *input.at_most * gaps) ++gaps;
    for (std::int64_t i = 1; i <= gaps; ++i) {
      const std::int64_t t = stretch.in_ticks() * i;
      places.push_back(fixed[k - 1] + Length::ticks((2 * t + gaps) / (2 * gaps)));
    }
  }
  return places;
}
}  // namespace

TEST_CASE("random closing lines: no gap above the maximum, forced places met, the last and its inset make the edge") {
  draws::Draws draw(3);
  for (int round = 0; round < kLawRounds; ++round) {
    ClosureInput input = edge(Length::sixty_fourths(draw.of(200, 3000)), Length::sixty_fourths(draw.of(0, 90)),
                              Length::sixty_fourths(draw.of(0, 90)));
    input.at_most = Length::sixty_fourths(draw.of(40, 200));
    for (std::int64_t k = draw.of(0, 3); k > 0; --k)
      input.forced.push_back({"level", Length::ticks(draw.of(0, input.edge_length.in_ticks()))});
    const ClosurePlaces p = placed(input);
    std::vector<Length> at;
    for (const Fastener& f : p.places) at.push_back(f.from_top);
    CHECK(at == plainly(input));
    CHECK(std::is_sorted(at.begin(), at.end()));
    CHECK(std::adjacent_find(at.begin(), at.end()) == at.end());
    for (std::size_t i = 1; i < at.size(); ++i) CHECK(at[i] - at[i - 1] <= *input.at_most);
    for (const ForcedPlace& f : input.forced) CHECK(std::count(at.begin(), at.end(), f.from_top) == 1);
    const Length last =
        std::max(input.edge_length - input.bottom,
                 input.forced.empty()
                     ? Length{}
                     : std::max_element(input.forced.begin(), input.forced.end(), [](const ForcedPlace& a, const ForcedPlace& b) {
                         return a.from_top < b.from_top;
                       })->from_top);
    CHECK(at.back() == last);

    // As many by number: no wider than by the maximum, and no other sharing of the gaps is narrower.
    ClosureInput counted = input;
    counted.at_most.reset();
    counted.number = static_cast<std::int64_t>(at.size());
    if (*counted.number < 2) continue;
    const ClosurePlaces q = placed(counted);
    CHECK(q.places.size() == at.size());
    CHECK(q.widest <= p.widest);
  }
}
