// Cloth as it is: folded, matched, on the bias, in breadths; panels kept, pieces joined at last, widths offered. Hand figures, and a
// law over random cloths in which every lay is opened out again and its pieces held against each other by separating lines.
#include <algorithm>
#include <set>

#include "calculate/best_buy.h"
#include "calculate/lay_jobs.h"
#include "calculate/lay_places.h"
#include "calculate/lay_shelf.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/random_draws.h"
#include "support/worked.h"

using namespace gownsheaf;
using garment::in;
using garment::said;
using testing::work_through;

namespace {

Project cloth_of(Length width, ClothFold fold = ClothFold::none) {
  Project p = garment::project(ShownIn::inches);
  Cloth cloth = garment::cloth("wool", width, Length{});
  cloth.sold_by = said(in(1));
  cloth.fold = said(fold);
  p.cloths.push_back(cloth);
  return p;
}

Piece& add(Project& p, const std::string& name, Make make, Length width, Length length) {
  p.pieces.push_back(garment::piece(name, PartOf::bodice, {"wool"}, std::move(make), garment::cut(width), garment::cut(length)));
  p.pieces.back().seam_allowance = said(in(1, 2));
  return p.pieces.back();
}

using Ring = std::vector<std::pair<std::int64_t, std::int64_t>>;
Ring ring_of(const LaidPiece& p) {
  Polygon outline = p.outline;
  if (outline.empty())
    outline = {{p.at.x, p.at.y}, {p.at.right(), p.at.y}, {p.at.right(), p.at.bottom()}, {p.at.x, p.at.bottom()}};
  Ring out;
  for (const Point& c : outline) out.emplace_back(c.x.in_ticks(), c.y.in_ticks());
  return out;
}

// A side of one convex ring with all of the other on its far side; a tick or two is what turning by 45 degrees rounds.
bool side_between(const Ring& a, const Ring& b) {
  Int128 area = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const auto [x, y] = a[i];
    const auto [u, v] = a[(i + 1) % a.size()];
    area += static_cast<Int128>(x) * v - static_cast<Int128>(u) * y;
  }
  for (std::size_t i = 0; i < a.size(); ++i) {
    const auto [x, y] = a[i];
    const auto [u, v] = a[(i + 1) % a.size()];
    const bool beyond = std::all_of(b.begin(), b.end(), [&](const auto& q) {
      const Int128 turn = static_cast<Int128>(u - x) * (q.second - y) - static_cast<Int128>(v - y) * (q.first - x);
      return area > 0 ? turn <= 0 : turn >= 0;
    });
    if (beyond) return true;
  }
  return false;
}

struct Opened {
  Ring ring;
  std::size_t piece;
};
// Everything that is cut, on the cloth opened out.
std::vector<Opened> opened_out(const LaidStrip& strip) {
  std::vector<Opened> all;
  for (std::size_t i = 0; i < strip.placed.size(); ++i) {
    const LaidPiece& p = strip.placed[i];
    const Ring ring = ring_of(p);
    all.push_back({ring, i});
    if (!p.on_fold && p.also == 0) continue;
    Ring mirror = ring;
    for (auto& [x, y] : mirror) {
      if (strip.folded == Folded::lengthwise) y = 2 * strip.width.in_ticks() - y;
      else x = 2 * strip.length.in_ticks() - x;
    }
    all.push_back({mirror, i});
  }
  return all;
}

void keeps_its_laws(const std::vector<Cut>& cuts, const LaidOut& laid, const LayAsked& asked, std::optional<Length> length) {
  std::set<std::pair<std::string, int>> seen;
  for (const auto& [cut, copy] : laid.left_out) REQUIRE(seen.emplace(cuts[cut].piece.piece, copy + 1).second);
  for (std::size_t k = 0; k < laid.strips.size(); ++k) {
    LaidStrip strip = laid.strips[k];
    if (strip.folded == Folded::crosswise && strip.open) strip.length = strip.used;
    const std::vector<Opened> all = opened_out(strip);
    for (std::size_t i = 0; i < all.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        REQUIRE((side_between(all[i].ring, all[j].ring) || side_between(all[j].ring, all[i].ring)));
    for (const LaidPiece& p : strip.placed) {
      REQUIRE(seen.emplace(p.piece, p.copy).second);
      if (p.also > 0) REQUIRE(seen.emplace(p.piece, p.also).second);
      REQUIRE((p.at.x >= Length{} && p.at.right() <= strip.used && p.at.y >= Length{} && p.at.bottom() <= strip.width));
      if (p.also > 0 && strip.folded == Folded::lengthwise) REQUIRE(2 * (strip.width - p.at.bottom()) >= asked.gap);
      if (p.on_fold) REQUIRE((strip.folded == Folded::lengthwise && p.at.bottom() == strip.width));
      if (p.match) {
        REQUIRE((strip.starts_at + p.match->x).in_ticks() % asked.repeat->along->in_ticks() == 0);
        if (!p.on_fold) REQUIRE((p.match->y - strip.repeat_from).in_ticks() % asked.repeat->across->in_ticks() == 0);
      }
      if (p.bias) {
        const Ring ring = ring_of(p);
        bool half = false;  // its straight end lies at 45 degrees
        for (std::size_t i = 0; i < ring.size(); ++i) {
          const auto [x, y] = ring[i];
          const auto [u, v] = ring[(i + 1) % ring.size()];
          half = half || std::abs(std::abs(u - x) - std::abs(v - y)) <= 2;
        }
        REQUIRE(half);
      }
    }
    if (strip.starts_at > Length{}) REQUIRE(strip.starts_at >= taken(laid.strips[k - 1], nullptr));
    if (length && strip.starts_at > Length{}) REQUIRE(strip.starts_at + strip.used <= *length);
  }
  std::size_t wanted = 0;
  for (const Cut& c : cuts) wanted += static_cast<std::size_t>(c.piece.copies);
  REQUIRE(seen.size() == wanted);
}

// Rectangles, and trapezoids that are symmetric or not.
Cut any_cut(draws::Draws& draw, int i, bool drawn, Length usable, Length whole) {
  Cut cut;
  CutPiece& c = cut.piece;
  c.piece = "piece " + std::to_string(i);
  c.key = c.piece;
  c.along = in(draw.of(8, 160), 4);
  c.across = std::min(usable, in(2 * draw.of(2, 30), 4));
  c.full_width = !drawn && draw.of(0, 6) == 0;
  c.pair = draw.of(0, 2) == 0;
  c.copies = c.pair ? 2 * draw.of(1, 2) : draw.of(1, 3);
  if (drawn && draw.of(0, 2) != 0) {
    const Length lean = c.across.times(1, 4);
    const bool even = draw.of(0, 1) == 0;
    c.outline = {{Length{}, lean}, {c.along, Length{}}, {c.along, c.across}, {Length{}, even ? c.across - lean : c.across}};
  }
  const bool symmetric = c.outline.empty() || symmetric_across(c.outline);
  c.on_fold = symmetric && !c.pair && draw.of(0, 2) == 0;
  cut.bias = drawn && !c.on_fold && !c.full_width && c.along + c.across < usable && draw.of(0, 4) == 0;
  cut.end_for_end = draw.of(0, 1) == 0;
  if (!cut.bias && !c.full_width && draw.of(0, 2) == 0) c.match = Point{std::min(c.along, in(1, 2)), std::min(c.across, in(1))};
  if (c.full_width) {
    c.pair = c.on_fold = false;
    c.across = whole;  // with its selvages
  }
  cut.takes = c.along;
  return cut;
}

}  // namespace

TEST_CASE("law: folded, matched and bias lays, opened out, overlap nowhere and lose nothing", "[cloth][laws]") {
  draws::Draws draw(59);
  const int rounds = kLawRounds / 25;
  int doubled = 0, halves = 0, matched = 0, bias = 0, longer = 0;
  for (int round = 0; round < rounds; ++round) {
    INFO("round " << round);
    const bool drawn = draw.of(0, 2) != 0;
    LaidStrip strip;
    strip.name = "to buy";
    const Length whole = in(2 * draw.of(20, 35));
    strip.selvage = in(draw.of(0, 2), 4);
    LayAsked asked{whole - 2 * strip.selvage, draw.of(0, 1) == 0 ? Length{} : in(draw.of(1, 8), 8), {60, drawn ? 300 : 0}, {}};
    strip.folded = static_cast<Folded>(draw.of(0, 2));
    strip.width = strip.folded == Folded::lengthwise ? whole.times(1, 2) : whole;
    strip.usable_width = strip.folded == Folded::lengthwise ? strip.width - strip.selvage : asked.breadth_usable;
    std::optional<Length> length;
    strip.open = draw.of(0, 2) != 0;
    if (!strip.open) {
      length = in(2 * draw.of(20, 80));
      strip.length = strip.folded == Folded::crosswise ? length->times(1, 2) : *length;
    }
    std::vector<Cut> cuts;
    for (std::int64_t n = draw.of(1, 4), i = 0; i < n; ++i)
      cuts.push_back(any_cut(draw, static_cast<int>(i), drawn, asked.breadth_usable, whole));
    if (std::any_of(cuts.begin(), cuts.end(), [](const Cut& c) { return c.piece.match.has_value(); }))
      asked.repeat = Repeat{in(draw.of(4, 24), 4), in(draw.of(4, 24), 4), false, {}};
    const LaidOut laid = lay_on(cuts, all_copies(cuts), {strip}, asked);
    REQUIRE(laid.unsupported.empty());
    keeps_its_laws(cuts, laid, asked, length);
    if (length && !laid.left_out.empty()) {  // what is missing; and with that length left open all go, as lawfully
      Cloth cloth = garment::cloth("wool", whole, strip.selvage);
      cloth.fold = said(strip.folded == Folded::no           ? ClothFold::none
                        : strip.folded == Folded::lengthwise ? ClothFold::lengthwise
                                                             : ClothFold::crosswise);
      cloth.bought = said(garment::lengths({*length}));
      LaidOut better = laid;
      for (const Missing& missing : what_is_missing(cloth, cuts, better, asked, 2)) {
        REQUIRE(missing.alone > Length{});
        if (missing.more) REQUIRE((*missing.more > Length{} && ++longer > 0));
      }
      keeps_its_laws(cuts, better, asked, length);
      REQUIRE(better.left_out.size() <= laid.left_out.size());
      if (const auto with = lay_with_one_open(cloth, cuts, all_copies(cuts), asked))
        keeps_its_laws(cuts, with->laid, asked, with->more > Length{} ? std::nullopt : length);
    }
    for (const LaidStrip& s : laid.strips)
      for (const LaidPiece& p : s.placed) {
        doubled += p.also > 0 ? 1 : 0;
        halves += p.on_fold ? 1 : 0;
        matched += p.match ? 1 : 0;
        bias += p.bias ? 1 : 0;
      }
    if (strip.open && laid.left_out.empty()) {
      const LaidStrip* rest = laid.strips.size() > 1 ? &laid.strips[1] : nullptr;
      REQUIRE(taken(laid.strips.front(), rest) >= laid.bound);
    }
  }
  if (rounds >= 200)
    CHECK(std::min({doubled, halves, matched, bias, longer}) > rounds / 20);  // the sanitizers' few hold not every kind
}

TEST_CASE("folded lengthwise: a half on the fold, a pair cut double, an odd one behind it in one layer", "[cloth]") {
  Project p = cloth_of(in(40), ClothFold::lengthwise);
  add(p, "back", garment::make(1), in(20), in(30)).on_fold = said(true);
  add(p, "front", garment::pairs(1), in(10), in(20));
  auto g = work_through(p);
  CHECK(g.said().empty());
  CHECK(g.length("cloths/wool/lay length") == in(30));  // 10 + 10 of the half width of 20
  const LaidStrip& folded = g.lay("wool").to_buy;
  REQUIRE(folded.placed.size() == 2);
  for (const LaidPiece& laid : folded.placed) {
    CHECK(laid.on_fold == (laid.piece == "back"));
    CHECK(laid.also == (laid.piece == "front" ? 2 : 0));
    CHECK(laid.at.y == (laid.on_fold ? in(10) : Length{}));  // the fold is at 20 in
  }
  add(p, "pocket", garment::make(1), in(8), in(12));
  g = work_through(p);
  CHECK(g.length("cloths/wool/lay length") == in(42));
  REQUIRE(g.lay("wool").opened);
  CHECK(g.lay("wool").opened->starts_at == in(30));
  // Of two that are alike and not symmetric the layer beneath would give the other hand.
  Piece cuff = add(p, "cuff", garment::make(2), in(6), in(12));
  p.pieces.back().drawn =
      DrawnPiece{"x.svg", "cuff", {}, false, {{Length{}, Length{}}, {in(12), Length{}}, {in(12), in(6)}, {in(6), in(6)}}, {}};
  g = work_through(p);
  CHECK(g.lay("wool").opened->placed.size() == 3);
  p = cloth_of(in(40), ClothFold::crosswise);
  add(p, "sleeve", garment::pairs(1), in(40), in(20));
  g = work_through(p);
  CHECK(g.length("cloths/wool/lay length") == in(40));
  CHECK(g.lay("wool").to_buy.used == in(20));
}

TEST_CASE("matched pieces lie by whole repeats; full breadths come first, end to end, exactly", "[cloth]") {
  Project p = cloth_of(in(40));
  p.cloths[0].repeat = Repeat{in(6), in(4), false, {}};
  p.cloths[0].lay = said(LayRule::one_way);
  Piece& front = add(p, "front", garment::pairs(1), in(10), in(20));
  front.match_at = {"side"};
  auto g = work_through(p);
  for (const LaidPiece& laid : g.lay("wool").to_buy.placed) {  // its point lies a seam of 1/2 in from top and side
    REQUIRE(laid.match);
    CHECK(laid.at.x == in(11, 2));
    CHECK((laid.at.y - in(7, 2)).in_ticks() % in(4).in_ticks() == 0);
  }
  CHECK(g.length("cloths/wool/lay length") == in(51, 2));
  p = cloth_of(in(40));
  p.pieces.push_back(
      garment::piece("breadth", PartOf::drapery, {"wool"}, garment::make(2), garment::full_width(), garment::cut(in(48))));
  add(p, "gore", garment::make(2), in(20), in(30)).drawn =
      DrawnPiece{"x.svg", "g", {}, false, {{Length{}, in(5)}, {in(30), Length{}}, {in(30), in(20)}, {Length{}, in(15)}}, {}};
  Diagnostics diag;
  WorkOptions options;
  options.outline_work = 2000;
  const Worked worked = calculate(p, Templates{}, options, diag);
  CHECK(worked.figures.length("cloths/wool/lay length") == in(126));  // 2 x 48, then both gores side by side
  CHECK(worked.figures.count("cloths/wool/density") == 94);           // (2 x 48 x 40 + 2 x 450) / (126 x 40)
}

TEST_CASE("what gives way, what would help, what is left", "[cloth]") {
  CHECK(bias_strip_in(in(10), in(1)) >= in(13));  // 10 sqrt 2 - 1 = 13.142
  CHECK(std::abs(bias_strip_in(in(10), in(1)).in_inches() - 13.142136) < 1e-4);
  // Two outer cloths share one interlining.
  Project p = cloth_of(in(40));
  p.cloths.push_back(garment::cloth("silk", in(40), Length{}));
  p.cloths.push_back(garment::cloth("canvas", in(40), Length{}));
  add(p, "front", garment::make(2), in(20), in(30)).from = {"wool", "canvas"};
  add(p, "collar", garment::make(1), in(20), in(10)).from = {"silk", "canvas"};
  CHECK(work_through(p).lay("canvas").to_buy.placed.size() == 3);
  // Widths offered: a piece of 30 in goes once on 40 in and twice on 60: 4 x 20 in at 9 a yard, or 2 x 20 at 20 a yard.
  p = cloth_of(in(40));
  add(p, "panel", garment::make(4), in(30), in(18));
  p.cloths[0].offered = {{in(40), Money{900, "yd"}, {}}, {in(60), Money{2000, "yd"}, {}}, {in(20), Money{100, "yd"}, {}}};
  auto g = work_through(p);
  CHECK(g.length("cloths/wool/offered 1/needed") == in(72));
  CHECK(g.length("cloths/wool/offered 2/needed") == in(36));
  REQUIRE(g.lay("wool").offers.size() == 3);
  CHECK(g.lay("wool").offers[0].best);  // 18.00 against 20.00
  CHECK_FALSE(g.lay("wool").offers[2].goes);
  CHECK(cost_of(Money{900, "m"}, Length::cm(150)).hundredths == 1350);
  // A panel is kept where there is room, and lost before a piece is.
  p = cloth_of(in(40));
  p.cloths[0].bought = said(garment::lengths({in(40)}));
  p.cloths[0].keep = {{garment::named("apron"), in(30), in(10)}};
  add(p, "cape", garment::make(1), in(40), in(30));
  CHECK(work_through(p).said().empty());
  p.cloths[0].keep[0].length = in(11);
  g = work_through(p);
  CHECK(g.message("panel-lost") != nullptr);
  CHECK(g.lay("wool").fits_bought);
  // A facing of 33 in is joined of two 17 in long: half of it and a seam of 1/2 in each.
  p = cloth_of(in(40));
  p.cloths[0].bought = said(garment::lengths({in(30)}));
  add(p, "cape", garment::make(1), in(30), in(30));
  Piece& facing = add(p, "facing", garment::make(1), in(5), in(33));
  facing.part_of = said(PartOf::facing);
  g = work_through(p);
  REQUIRE(g.message("cloth-short") != nullptr);
  CHECK(g.message("cloth-short")->hint.find("it would go with facing joined of two") != std::string::npos);
  facing.may_be_pieced = said(true);
  g = work_through(p);
  CHECK(g.lay("wool").pieced == std::vector<std::string>{"facing"});
  CHECK(g.length("pieces/facing/wool/part upper/cut length") == in(17));
  // Folded, an odd piece finds no room that it has in one layer.
  p = cloth_of(in(40), ClothFold::lengthwise);
  p.cloths[0].bought = said(garment::lengths({in(30)}));
  add(p, "front", garment::make(2), in(15), in(30));
  add(p, "hood", garment::make(1), in(10), in(12));
  g = work_through(p);
  REQUIRE(g.lay("wool").other_ways.size() == 1);
  CHECK(g.lay("wool").other_ways[0].goes);
}
