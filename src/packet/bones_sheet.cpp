// Bones: how many of which length, from which stock lengths, and where each goes.
#include <algorithm>
#include <map>

#include "packet/bone_drawing.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

Text answer(const PacketInput& input, const FigureText& text) {
  Text out;
  for (const BonePlan& plan : input.plans.bones) {
    const std::string key = "bone stock/" + plan.stock + "/";
    if (!out.empty()) out = out + words(" ");
    out = out + words(counted(text.count(key + "bones"), "bone", "bones") + " of " + plan.stock + ", ") +
          text.measured(key + "total length") + words(" in all");
    if (plan.to_buy.empty()) {
      out = out + words(": what is bought is enough.");
      continue;
    }
    out = out + words(": buy ");
    for (std::size_t i = 0; i < plan.to_buy.size(); ++i) {
      const std::string k = whole_number(static_cast<std::int64_t>(i + 1));
      out =
          out + words((i > 0 ? " and " : "") + text.value(key + "to buy " + k) + " × ") + text.measured(key + "sold length " + k);
    }
    out = out + words(plan.proven ? "; no plan buys less." : ".");
  }
  return out.empty() ? words("The bones wait until their channels are measured.") : out;
}

Text where(const Bone& bone) {
  if (!bone.on_seam.empty()) return words("seam " + bone.on_seam);
  if (!bone.on_edge.empty()) return words("edge " + bone.on_edge);
  return words("\u2013");
}

Table channels(const PacketInput& input, const FigureText& text) {
  const std::string unit = unit_of(text.shown_in());
  const bool far = pinned_up(input);
  Table table;
  add_column(table, Column::Kind::tick, "", far ? 30 : 20, false);
  add_column(table, Column::Kind::words, "channel", 0, true);
  add_column(table, Column::Kind::words, "on", far ? 120 : 100, false);
  add_column(table, Column::Kind::count, "bones", far ? 60 : 46, true);
  add_column(table, Column::Kind::length, "channel, " + unit, far ? 90 : 74, false);
  add_column(table, Column::Kind::length, "cut to, " + unit, far ? 84 : 70, true);
  for (const Bone& bone : input.project.bones) {
    const std::string key = "bones/" + bone.named.name + "/";
    Row row;
    row.cells.push_back({tick_box()});
    row.cells.push_back({bold(bone.named.name) + text.then_was(key + "bone length")});
    row.cells.push_back({where(bone)});
    row.cells.push_back({words(text.value(key + "number"))});
    row.cells.push_back({text.has(key + "channel length") ? text.cell(key + "channel length", false) : words("\u2013")});
    row.cells.push_back({text.has(key + "bone length") ? text.cell(key + "bone length", true) : words("to measure")});
    table.rows.push_back(std::move(row));
  }
  return table;
}

// What one bar is cut into: equal bones of one channel together.
Text cuts_of(const BarOfBones& bar, const FigureText& text) {
  Text out;
  std::vector<std::pair<std::string, int>> counts;
  for (const CutBone& cut : bar.cut) {
    const auto at = std::find_if(counts.begin(), counts.end(), [&](const auto& c) { return c.first == cut.channel; });
    if (at == counts.end()) counts.emplace_back(cut.channel, 1);
    else ++at->second;
  }
  for (const auto& [channel, n] : counts)
    out = out + words((out.empty() ? "" : "; ") + whole_number(n) + " × ") + text.checking("bones/" + channel + "/bone length") +
          words(" " + channel);
  return out;
}

Table bars(const BonePlan& plan, const FigureText& text) {
  const std::string unit = unit_of(text.shown_in()), key = "bone stock/" + plan.stock + "/";
  Table table;
  add_column(table, Column::Kind::words, "no.", 34, true);
  add_column(table, Column::Kind::length, "length, " + unit, 76, false);
  add_column(table, Column::Kind::words, "cut from it", 0, false);
  add_column(table, Column::Kind::length, "left, " + unit, 66, false);
  for (std::size_t i = 0; i < plan.bars.size(); ++i) {
    const std::string bar = key + "bar " + whole_number(static_cast<std::int64_t>(i + 1));
    Row row;
    row.cells.push_back({bold(whole_number(static_cast<std::int64_t>(i + 1)))});
    row.cells.push_back({text.cell(bar + "/length", false)});
    row.cells.push_back({cuts_of(plan.bars[i], text)});
    row.cells.push_back({text.cell(bar + "/left", false)});
    table.rows.push_back(std::move(row));
  }
  return table;
}

bool steel(const PacketInput& input) {
  return std::any_of(input.project.bone_stock.begin(), input.project.bone_stock.end(),
                     [](const BoneStock& s) { return s.kind == BoneKind::flat_steel || s.kind == BoneKind::spiral_steel; });
}

std::vector<Block> bones_blocks(const PacketInput& input, const FigureText& text, bool bars_drawn, bool small) {
  std::vector<Block> all;
  all.push_back(block(channels(input, text)));
  all.push_back(block(Gap{6}));
  all.push_back(block(draw_channels(input.project, text, input.typesetter, small ? 90 : 200)));
  for (const BonePlan& plan : input.plans.bones) {
    if (plan.bars.empty()) continue;
    all.push_back(heading("Cut from " + plan.stock));
    all.push_back(block(bars(plan, text)));
    const bool is_cut = std::any_of(plan.bars.begin(), plan.bars.end(),
                                    [](const BarOfBones& b) { return b.cut.size() > 1 || b.left > Length{}; });
    if (bars_drawn && is_cut && plan.bars.size() <= 12) all.push_back(block(draw_bars(plan, text, input.typesetter)));
    if (!plan.proven)
      all.push_back(paragraph(words("Not proven the least: no plan buys less than ") +
                              text.checking("bone stock/" + plan.stock + "/bound") + words(".")));
  }
  all.push_back(paragraph(
      words(
          "Measure each channel, stitched and pressed, before you cut: its bone is cut for the channel as it came out, not as it was drawn. ") +
      bold("Care. ") +
      words(std::string("Round and cap or tape every cut end; none may show through the cloth. ") +
            (steel(input) ? "Steel is cut behind goggles, away from the face; the cutter’s leaflet decides. "
                          : "Heated ends burn: let them cool, work in fresh air. ") +
            "No bone over a port, a pump or sore skin: a clinician decides.")));
  return all;
}

}  // namespace

Sheet bones_sheet(const PacketInput& input) {
  const FigureText text = figure_text_of(input);
  Sheet sheet;
  sheet.section = Section::close;
  sheet.answer = answer(input, text);
  sheet.blocks = bones_blocks(input, text, true, false);
  sheet.shorter.push_back([input, text] { return bones_blocks(input, text, true, true); });
  sheet.shorter.push_back([input, text] { return bones_blocks(input, text, false, true); });
  return sheet;
}

}  // namespace gownsheaf
