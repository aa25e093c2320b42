#include "calculate/lay_places.h"

#include <algorithm>
#include <set>

#include "calculate/lay.h"
#include "calculate/new_figure.h"
#include "geometry/slabs.h"
#include "nest/nest.h"

namespace gownsheaf {
namespace {

constexpr int kLeftOverShown = 3;  // on each length
constexpr int kSearchedForBias = 12;
constexpr int kSlabs = 16;  // an outline is taken as so many boxes side by side

std::vector<Box> taken_on(const LaidStrip& strip) {  // y from the inner edge of the selvage
  std::vector<Box> taken;
  for (const LaidPiece& p : strip.placed)
    for (Box box : p.outline.empty() ? std::vector<Box>{p.at} : boxes_over(p.outline, kSlabs)) {
      const Length low = std::max(Length{}, box.y - strip.selvage);
      box.height = std::min(box.bottom() - strip.selvage, strip.usable_width) - low;
      box.y = low;
      taken.push_back(box);
    }
  for (Box bad : strip.bad_places) {
    const Length low = std::max(Length{}, bad.y - strip.selvage);
    bad.height = std::min(bad.bottom() - strip.selvage, strip.usable_width) - low;
    bad.y = low;
    if (bad.height > Length{}) taken.push_back(bad);
  }
  return taken;
}

void finish(LaidStrip& strip, ShownIn in) {
  strip.straight_cuts = straight_cuts(strip.placed);
  if (strip.length <= Length{} || strip.usable_width <= Length{}) return;
  const Length least = in == ShownIn::inches ? Length::inches(4) : Length::cm(10);
  const std::vector<Box> taken = taken_on(strip);
  strip.left_over = nest::left_over(strip.usable_width, strip.length, taken, least, kLeftOverShown);
  for (Box& box : strip.left_over) box.y += strip.selvage;
}

Length root_of(Int128 square) {  // rounded down
  Int128 low = 0, high = Int128{1} << 40;
  while (low + 1 < high) {
    const Int128 middle = (low + high) / 2;
    (middle * middle <= square ? low : high) = middle;
  }
  return Length::ticks(static_cast<std::int64_t>(low));
}

// The longest strip at half a quarter that the free rectangles of a length still give: none where they give none.
Length longest_bias(const LaidStrip& strip, Length wide) {
  const Length least = wide * 2;
  Length best;
  for (const Box& box : nest::left_over(strip.usable_width, strip.length, taken_on(strip), least, kSearchedForBias))
    best = std::max(best, bias_strip_in(std::min(box.width, box.height), wide));
  return best;
}

}  // namespace

Length bias_strip_in(Length side, Length wide) {
  const Int128 a = side.in_ticks();
  return std::max(Length{}, root_of(2 * a * a) - wide);
}

void add_places(const Cloth& cloth, LayPlan& plan, ShownIn in, Figures& figures) {
  const std::string lay_length = "cloths/" + cloth.named.name + "/lay length";
  const auto figure = [&](const std::string& quantity) {
    NewFigure f(figures, in, "cloths", cloth.named.name, quantity);
    f.at(cloth.named.at);
    return f;
  };
  finish(plan.to_buy, in);
  if (plan.opened) finish(*plan.opened, in);
  for (LaidStrip& strip : plan.on_bought) finish(strip, in);
  std::vector<const LaidStrip*> printed_strips;
  if (plan.fits_bought && !plan.on_bought.empty()) {
    for (const LaidStrip& strip : plan.on_bought) printed_strips.push_back(&strip);
  } else {
    printed_strips.push_back(&plan.to_buy);
    if (plan.opened) printed_strips.push_back(&*plan.opened);
  }
  std::int64_t n = 0;
  for (const LaidStrip* strip : printed_strips) {
    for (const LaidPiece& p : strip->placed) {
      const std::string at = "lay/" + p.piece + " " + whole_number(p.copy) + "/";
      figure(at + "from end").is(p.at.x).from(lay_length).add();
      figure(at + "from selvage").is(p.at.y).from(lay_length).add();
    }
    for (const Box& box : strip->left_over) {
      const std::string at = "left over " + whole_number(++n) + "/";
      const Length step = mark_step(in);
      figure(at + "across").is(box.height.to_step(step, Rounding::down)).from(lay_length).add();
      figure(at + "along").is(box.width.to_step(step, Rounding::down)).from(lay_length).add();
    }
  }
  const Length wide =
      in == ShownIn::inches ? Length::inches(5).times(1, 4) : Length::cm(3);  // flat piping strip, common practice
  Length bias;
  for (const LaidStrip* strip : printed_strips)
    if (strip->length > Length{} && strip->usable_width > Length{}) bias = std::max(bias, longest_bias(*strip, wide));
  bias = bias.to_step(mark_step(in), Rounding::down);
  if (bias < 4 * wide) return;
  figure("bias strip width").is(wide).written().add();
  figure("bias strip")
      .is(bias)
      .from(lay_length)
      .from("cloths/" + cloth.named.name + "/bias strip width")
      .working("longest bias strip left in " + cloth.named.name, "least side of a left-over rectangle × √2 − strip width",
               worked(bias + wide, in) + " − " + worked(wide, in))
      .add();
}

std::vector<Length> straight_cuts(const std::vector<LaidPiece>& placed) {
  std::set<Length> ends;
  for (const LaidPiece& p : placed) ends.insert(p.at.right());
  std::vector<Length> cuts;
  for (const Length x : ends)
    if (std::none_of(placed.begin(), placed.end(), [&](const LaidPiece& p) { return p.at.x < x && x < p.at.right(); }))
      cuts.push_back(x);
  return cuts;
}

}  // namespace gownsheaf
