#include "packet/bone_drawing.h"

#include <algorithm>

#include "packet/run_parts.h"
#include "packet/scale.h"

namespace gownsheaf {

Drawing draw_channels(const Project& project, const FigureText& text, const Typesetter& typesetter, double tallest_drawn) {
  const TypeScale& t = typesetter.scale();
  struct Channel {
    const Bone* bone;
    Length channel, length;
  };
  std::vector<Channel> shown;
  Length tallest;
  for (const Bone& bone : project.bones) {
    const auto length = text.figures().length("bones/" + bone.named.name + "/bone length");
    if (!length) continue;
    const Length channel = text.figures().length("bones/" + bone.named.name + "/channel length").value_or(*length);
    shown.push_back({&bone, channel, *length});
    tallest = std::max({tallest, channel, *length});
  }
  Drawing out;
  out.name = "bone map";
  out.width = pt(kRunWide);
  const std::size_t per_row = 6;
  const DrawingScale scale = largest_that_fits(tallest, pt(tallest_drawn), text.shown_in(), 2);
  const Length row_high = scale.of(tallest) + pt(3 * t.smallest + 22);
  const Length column =
      pt(kRunWide).times(1, static_cast<std::int64_t>(std::min(per_row, std::max<std::size_t>(shown.size(), 1))));
  std::vector<Label> labels;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    const Channel& s = shown[i];
    const std::string key = "bones/" + s.bone->named.name + "/";
    const Length top = row_high * static_cast<std::int64_t>(i / per_row);
    const Length x = column * static_cast<std::int64_t>(i % per_row) + column.times(1, 2);
    const Length foot = top + scale.of(tallest), high = scale.of(s.channel), bone = scale.of(s.length);
    const Length clear = (high - bone).times(1, 2);
    out.items.push_back(line({x - pt(5), foot - high}, {x - pt(5), foot}, 0.7));
    out.items.push_back(line({x + pt(5), foot - high}, {x + pt(5), foot}, 0.7));
    out.items.push_back(line({x - pt(5), foot - high}, {x + pt(5), foot - high}, 0.7));
    out.items.push_back(line({x - pt(5), foot}, {x + pt(5), foot}, 0.7));
    out.items.push_back(line({x, foot - high + clear}, {x, foot - clear}, 4.0));
    labels.push_back(
        put(words(text.value(key + "number") + " of ") + text.drawn(key + "bone length", Inline::Size::as_text, Face::bold),
            {x, foot + pt(4)}, t.smallest + 1, Label::Across::middle, Label::Up::top));
    labels.push_back(
        put(bold(s.bone->named.name), {x, foot + pt(t.smallest + 8)}, t.smallest, Label::Across::middle, Label::Up::top));
  }
  for (Label& label : labels) out.items.push_back(std::move(label));
  const auto rows = static_cast<std::int64_t>((shown.size() + per_row - 1) / per_row);
  out.height = row_high * rows;
  out.caption = scale_sentence(scale, text.shown_in(), "bone");
  keep_labels_inside(out, typesetter);
  return out;
}

Drawing draw_bars(const BonePlan& plan, const FigureText& text, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  Length longest;
  for (const BarOfBones& bar : plan.bars) longest = std::max(longest, bar.stock_length);
  const DrawingScale scale = largest_that_fits(longest, pt(kRunWide - 40), text.shown_in(), 1);
  Drawing out;
  out.name = "bars " + plan.stock;
  out.width = pt(kRunWide);
  const Length high = pt(t.smallest + 6), step = high + pt(8);
  std::vector<Label> labels;
  for (std::size_t i = 0; i < plan.bars.size(); ++i) {
    const BarOfBones& bar = plan.bars[i];
    const Length y = step * static_cast<std::int64_t>(i);
    labels.push_back(put(bold(whole_number(static_cast<std::int64_t>(i + 1))), {pt(20), y + high.times(1, 2)}, t.smallest,
                         Label::Across::right, Label::Up::middle));
    const Length left = pt(28);
    Length at;
    for (const CutBone& cut : bar.cut) {
      const Length wide = scale.of(cut.length);
      out.items.push_back(outline({left + scale.of(at), y, wide, high}, 1.4));
      const Text name = text.drawn("bones/" + cut.channel + "/bone length");
      if (typesetter.width(name, t.smallest) + pt(4) < wide)
        labels.push_back(put(name, {left + scale.of(at) + wide.times(1, 2), y + high.times(1, 2)}, t.smallest,
                             Label::Across::middle, Label::Up::middle));
      at += cut.length;
    }
    if (bar.left > Length{}) {
      Hatch hatch;
      hatch.inside = outline({left + scale.of(bar.stock_length - bar.left), y, scale.of(bar.left), high}, 1).path;
      out.items.insert(out.items.begin(), hatch);
    }
    out.items.push_back(outline({left, y, scale.of(bar.stock_length), high}, 0.7));
  }
  for (Label& label : labels) out.items.push_back(std::move(label));
  out.height = step * static_cast<std::int64_t>(plan.bars.size());
  out.caption = scale_sentence(scale, text.shown_in(), "bone");
  keep_labels_inside(out, typesetter);
  return out;
}

}  // namespace gownsheaf
