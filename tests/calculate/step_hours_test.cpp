// What the steps of the delivered library are timed by: a figure of the garment wherever there is something to count, flat
// only where there is nothing, and then said why. Driver figures against sums by hand.
#include <algorithm>
#include <map>
#include <set>

#include "calculate/step_drivers.h"
#include "calculate/step_times.h"
#include "support/garment.h"
#include "support/step_library.h"

using namespace gownsheaf;
using namespace gownsheaf::test;

namespace {

const std::map<std::string, std::string>& flat_steps() {
  static const std::map<std::string, std::string> all{
      {"finish-underlayers", "a look, not work; the underlayers are projects of their own"},
      {"measure-wearer", "the same tape over the same places, whatever is made"},
      {"measure-to-floor", "always eight places"},
      {"shrink-notions", "all of them soak in one bowl"},
      {"reserve-bias-patch", "one patch is ruled"},
      {"final-press", "the iron goes over the whole once; its seams were pressed before"},
      {"baste-strain-lining", "how far it reaches is seen on the body, and not written"},
      {"correct-bodice", "what must be carried over is not known before the fitting"},
      {"drape-on-form", "done by eye"},
      {"join-foundation", "its seams are seen only when it is draped"},
      {"mount-drapery", "folds are laid by eye, and none are written"},
      {"baste-drapery-in", "its edges are seen only when it is draped"},
      {"sew-fasteners", "stands where no closing is described, so nothing is counted"},
      {"tack-drapery", "three places, two stitches each"},
      {"fasten-drapery", "how many snaps is not written"},
      {"thread-drawstring", "one string"},
      {"set-busk", "one busk"},
      {"wear-corset-in", "an hour twice, while other work goes on"},
      {"work-rows-flat", "how many rows is not written"},
      {"level-the-waist", "measured up at the same places, whatever the skirt"},
      {"sew-band-hooks", "stands where no closing is described, so nothing is counted"},
      {"hang-skirt", "hung up"},
      {"sew-hanging-loops", "always two"},
      {"sew-bodice-to-skirt-hooks", "how many is not written: two each side or three at the back"},
      {"trim-flat-sleeves", "which of the trimmings go on a sleeve is not written"},
      {"canvas-fronts", "two fronts, shaped by the hand that bastes them"},
  };
  return all;
}

}  // namespace

TEST_CASE("hours: a step is timed by a figure, or is a fitting, or is flat for a reason that is written", "[hours]") {
  std::set<std::string> flat;
  int tied = 0;
  for (const Step& s : delivered_library().steps) {
    INFO(s.id);
    REQUIRE(s.hours_each.has_value());
    if (!s.hours_times.empty()) {
      ++tied;
      CHECK(s.hours_else.has_value());  // the figure may be unknown
    } else if (s.gate.empty()) {
      flat.insert(s.id);
      CHECK(flat_steps().count(s.id) == 1);
    }
  }
  for (const auto& [id, why] : flat_steps()) {
    INFO(id);
    CHECK(flat.count(id) == 1);
    CHECK_FALSE(why.empty());
  }
  CHECK(tied > 3 * static_cast<int>(flat.size()) - 10);
}

TEST_CASE("hours: whoever works long finds where to stop", "[hours]") {
  for (const Step& s : delivered_library().steps) {
    if (!s.gate.empty() || std::find(s.needs.begin(), s.needs.end(), "wearer") != s.needs.end()) continue;
    const Span whole = s.hours_else ? *s.hours_else : *s.hours_each;
    INFO(s.id);
    if (whole.milliseconds > 40 * kMinute) CHECK_FALSE(s.stop.empty());
  }
}

TEST_CASE("hours: a pace of one name goes by the inch everywhere or by the piece everywhere", "[hours]") {
  std::map<std::string, std::string> dimension;
  for (const Step& s : delivered_library().steps) {
    if (s.hours_rate.empty()) continue;
    INFO(s.id);
    REQUIRE_FALSE(s.hours_times.empty());
    const auto slash = s.hours_times.find('/'), colon = s.hours_times.find(':');
    const std::string word = s.hours_times.substr(0, std::min(slash, colon));
    const std::string quantity = s.hours_times.substr(std::min(slash, colon) + 1);
    const std::string section = word == "cloth"     ? "cloths"
                                : word == "run"     ? "pleats"
                                : word == "closure" ? "closures"
                                : word == "bone"    ? "bones"
                                                    : word;
    const FigureKind* kind = find_figure_kind(section, quantity);
    REQUIRE(kind != nullptr);
    const auto at = dimension.emplace(s.hours_rate, std::string(kind->dimension)).first;
    CHECK(at->second == kind->dimension);
  }
  CHECK(dimension.size() > 20);
}

TEST_CASE("hours: what is counted, by hand", "[hours]") {
  Project p = garment::project(ShownIn::inches);
  const auto in = [](std::int64_t n) { return Length::inches(n); };
  p.cloths = {cloth_named("wool", UsedAs::outer), cloth_named("muslin", UsedAs::interlining)};
  p.pieces = {piece_named("front", PartOf::bodice, {"wool", "muslin"}), piece_named("sleeve", PartOf::sleeve, {"wool"}),
              piece_named("skirt breadth", PartOf::skirt, {"wool"}), piece_named("under breadth", PartOf::skirt, {"muslin"}),
              piece_named("frill", PartOf::trimming, {"wool"})};
  p.pieces[0].make = Given<Make>::written(Make{Make::Kind::pairs, 1, {}, ""}, {});
  Figures f;
  const auto cut = [&](const std::string& piece, const std::string& cloth, std::int64_t copies, std::int64_t wide,
                       std::int64_t long_) {
    add_figure(f, "pieces/" + piece + "/" + cloth + "/copies", copies, Shown::exact);
    add_figure(f, "pieces/" + piece + "/" + cloth + "/cut width", in(wide));
    add_figure(f, "pieces/" + piece + "/" + cloth + "/cut length", in(long_));
  };
  cut("front", "wool", 2, 10, 17);
  cut("sleeve", "wool", 4, 8, 24);
  cut("skirt breadth", "wool", 3, 58, 44);
  cut("under breadth", "muslin", 3, 58, 42);
  cut("frill", "wool", 2, 50, 6);
  p.seams.resize(3);
  p.seams[0].kind = "dart", p.seams[0].length = Given<Length>::written(in(7), {}), p.seams[0].number = 4;
  p.seams[1].kind = "side", p.seams[1].length = Given<Length>::written(in(8), {}), p.seams[1].number = 2;
  p.seams[2].kind = "shoulder", p.seams[2].length = Given<Length>::written(in(5), {}), p.seams[2].number = 2,
  p.seams[2].by_hand = true;
  p.seams[1].named.name = "side";
  p.edges.resize(2);
  p.edges[0].kind = "neck", p.edges[0].named.name = "neck", p.edges[0].length = Given<Length>::written(in(15), {});
  p.edges[1].kind = "armhole", p.edges[1].named.name = "armhole", p.edges[1].length = Given<Length>::written(in(17), {}),
  p.edges[1].number = 2;
  Piping piped;
  piped.along = {"side", "armhole"};
  p.piping = {piped};
  Trim bows, lace;
  bows.kind = "bow", bows.number = Given<std::int64_t>::written(6, {});
  lace.kind = "lace", lace.along = {"neck"}, lace.rows = Given<std::int64_t>::written(2, {});
  p.trims = {bows, lace};
  PleatRun knife = run_named("sides", PleatKind::knife, {"skirt breadth"}),
           gauged = run_named("back", PleatKind::cartridge, {"skirt breadth"});
  knife.half = gauged.half = true;
  p.pleats = {knife, gauged};
  add_figure(f, "pleats/sides/count", std::int64_t{9}, Shown::exact);
  add_figure(f, "pleats/sides/finished", in(9), Shown::pleat_mark);
  add_figure(f, "pleats/back/ridges", std::int64_t{100}, Shown::exact);
  add_figure(f, "pleats/back/flat", in(50), Shown::pleat_mark);
  add_figure(f, "pleats/back/rows", std::int64_t{3}, Shown::exact);
  add_step_drivers(p, f);
  const std::map<std::string, std::int64_t> counts{
      {"garment/pieces", 2}, {"garment/bows", 6}, {"garment/trims", 2}, {"pleats/sides/in all", 18}, {"pleats/back/in all", 200}};
  for (const auto& [key, n] : counts) {
    INFO(key);
    REQUIRE(f.count(key).has_value());
    CHECK(*f.count(key) == n);
  }
  // 2 fronts of 10 by 17, one inner layer: 2 x 2 x 27; with 4 sleeve panels of 8 by 24: 108 + 4 x 2 x 32.
  // Rows of basting 9 in apart over 58 in: 7 rows of 42 in on each of 3 breadths.
  const std::map<std::string, std::int64_t> inches{{"garment/layer edges", 108},
                                                   {"garment/marked edges", 364},
                                                   {"garment/sleeve seams", 96},
                                                   {"garment/flounce strips", 100},
                                                   {"garment/seams", 54},
                                                   {"garment/seam edges", 108},
                                                   {"garment/darts", 28},
                                                   {"garment/machine seams", 16},
                                                   {"garment/hand seams", 10},
                                                   {"garment/stayed edges", 49},
                                                   {"garment/neck", 15},
                                                   {"garment/armholes", 34},
                                                   {"garment/piped", 50},
                                                   {"garment/lace runs", 30},
                                                   {"garment/sewn trims", 30},
                                                   {"skirt/seams", 132},
                                                   {"skirt/basting rows", 882},
                                                   {"skirt/top sewn", 18},
                                                   {"pleats/back/thread runs", 300}};
  for (const auto& [key, n] : inches) {
    INFO(key);
    REQUIRE(f.length(key).has_value());
    CHECK(*f.length(key) == in(n));
  }
  // What leaves something out is not summed.
  Figures less;
  p.seams[1].length = {};
  add_step_drivers(p, less);
  CHECK_FALSE(less.length("garment/seams").has_value());
  CHECK_FALSE(less.length("garment/piped").has_value());
  CHECK(less.length("garment/darts") == in(28));
}
