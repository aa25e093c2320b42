#include "support/catch.h"
#include "support/garment.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::cm;
using garment::in;
using garment::said;
using testing::work_through;

namespace {

// A waist whose whole round finishes at 26 in.
testing::WorkedGarment with_waist(Length waist, std::optional<Given<Length>> ease = std::nullopt) {
  Project p = garment::day_dress();
  p.measures.girths_and_lengths["waist"].both = said(waist);
  p.ease.erase("waist");
  if (ease) p.ease["waist"] = *ease;
  return work_through(p);
}

bool differs(const testing::WorkedGarment& g) { return g.message("waist-measure-differs") != nullptr; }

testing::WorkedGarment to_floor(Length floor, Length clears, Length band = Length{}) {
  Project p = garment::linen_skirt();  // breadths of 98 cm
  p.measures.waist_to_floor.at = {{"front", said(floor - cm(2))}, {"side", said(floor)}, {"back", said(floor - cm(1))}};
  p.skirt = Skirt{};
  p.skirt->clears_floor_by = said(clears);
  for (Piece& piece : p.pieces)
    if (piece.part_of.known() && *piece.part_of == PartOf::band) piece.length = {Size::Kind::finished, band, {}};
  return work_through(p);
}

}  // namespace

TEST_CASE("a waist edge 1 in smaller to 4 in larger than waist and ease is left alone") {
  CHECK_FALSE(differs(with_waist(in(27))));
  CHECK(differs(with_waist(in(27) + in(1, 16))));
  CHECK_FALSE(differs(with_waist(in(22))));
  CHECK(differs(with_waist(in(22) - in(1, 16))));
  CHECK_FALSE(differs(with_waist(in(47), said(in(-21)))));
  CHECK(differs(with_waist(in(26), said(in(-6)))));
}

TEST_CASE("without a waist, or with an ease still to be measured, nothing is said of the edge") {
  Project p = garment::day_dress();
  p.measures.girths_and_lengths.erase("waist");
  CHECK_FALSE(differs(work_through(p)));
  Given<Length> open;
  open.origin = Origin::to_measure;
  CHECK_FALSE(differs(with_waist(in(47), open)));
}

TEST_CASE("a hold on the body is private and holds the cloth of the skirt") {
  const auto g = with_waist(in(47));
  const Diagnostic* d = g.message("waist-measure-differs");
  REQUIRE(d != nullptr);
  CHECK(d->is_private);
  CHECK(d->item == "whole skirt");
  CHECK(d->sentence == "The waist is 47 in; the edge of whole skirt finishes at 26 in, 21 in too small.");
  int answers = 0;
  for (const CutVerdict& v : g.worked.plans.may_cut) {
    if (v.cloth != "slate wool") continue;
    CHECK(v.reason == "The hold on whole skirt is not settled.");
    ++answers;
  }
  CHECK(answers == 1);
}

TEST_CASE("of several edges on a skirt the one nearest the waist is taken") {
  Project p = garment::day_dress();
  p.measures.girths_and_lengths["waist"].both = said(in(26));
  p.ease.erase("waist");
  Round hem = p.rounds[0];
  hem.named = garment::named("flounce edge");
  hem.runs.clear();
  hem.finished = said(in(150));
  p.rounds.push_back(hem);
  CHECK_FALSE(differs(work_through(p)));
}

TEST_CASE("the longest breadth must reach where the hem is to hang, and not lie on the floor") {
  const Length slack = in(1);
  CHECK(to_floor(cm(98) + cm(3) + slack, cm(3)).message("short-of-floor") == nullptr);
  CHECK(to_floor(cm(98) + cm(3) + slack + garment::mm(1), cm(3)).message("short-of-floor") != nullptr);
  CHECK(to_floor(cm(98) + cm(3) + slack + cm(8), cm(3), cm(8)).message("short-of-floor") == nullptr);  // it hangs from a band
  CHECK(to_floor(cm(98) - slack, cm(0)).message("long-for-floor") == nullptr);
  CHECK(to_floor(cm(98) - slack - garment::mm(1), cm(0)).message("long-for-floor") != nullptr);
}
