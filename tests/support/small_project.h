// A small garment by hand for tests of sheets: a wool skirt of three breadths and a band, interlined with lawn, one run
// of nine knife pleats each half. Every figure is put in by hand, so that a sheet's words can be checked by reading.
#pragma once
#include <algorithm>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "packet/compose.h"
#include "support/half_em_font.h"

namespace gownsheaf::testing {

struct SmallProject {
  Project project;
  Figures figures;
  Plans plans;
  PacketSet set;
  std::vector<Diagnostic> messages;
  FactLookup facts = [](std::string_view, std::string_view) { return FactValue{}; };
  HalfEmFont font;
  TypeScale scale = pin_up_scale();
  PageShape shape = page_shape(PaperName::letter, HoleCount::three);

  std::vector<Sheet> compose() const {
    const Typesetter typesetter(font, scale);
    return compose_packet({project, figures, plans, set, facts, messages, typesetter, shape});
  }

  void length(const std::string& key, Length value, Shown shown, Action action = Action::none) {
    Figure f;
    f.key = key;
    f.value = value;
    f.shown = shown;
    f.formula = "by-hand";
    f.action = action;
    figures.add(f);
  }
  void count(const std::string& key, std::int64_t value) {
    Figure f;
    f.key = key;
    f.value = value;
    f.formula = "by-hand";
    figures.add(f);
  }
  void word(const std::string& key, const std::string& value) {
    Figure f;
    f.key = key;
    f.value = value;
    figures.add(f);
  }
  void sheet(const std::string& name, const std::string& title, const std::string& for_each = "") {
    SheetEntry e;
    e.sheet = name;
    e.title = title;
    e.for_each = for_each;
    set.sheets.push_back(e);
  }
  void all_sheets() {
    sheet("at a glance", "At a glance");
    sheet("order of work", "Order of work");
    sheet("to buy", "To buy");
    sheet("cutting list", "Cutting list");
    sheet("cutting layouts", "Cutting layout: {cloth}", "cloth");
    sheet("pleats", "Pleats: {run}", "run");
    sheet("how it was worked out", "How it was worked out");
  }

  // Figures of a lay as the calculator names them.
  void lay_figures(const LayPlan& plan, const LaidStrip& printed) {
    const std::string key = "cloths/" + plan.cloth;
    std::int64_t copies = 0;
    for (const CutPiece& c : plan.cut) copies += c.copies;
    count(key + "/pieces", copies);
    length(key + "/width", printed.width, Shown::mark);
    length(key + "/lay length", printed.used, Shown::mark);
    length(key + "/bound", plan.bound, Shown::mark);
    length(key + "/needed", plan.needed, Shown::cloth, Action::buy);
    if (plan.bought) length(key + "/bought", *plan.bought, Shown::cloth);
    if (plan.spare && *plan.spare >= Length{}) length(key + "/spare", *plan.spare, Shown::cloth);
    if (plan.spare && *plan.spare < Length{}) length(key + "/short", -*plan.spare, Shown::cloth, Action::buy);
    for (const LaidPiece& laid : printed.placed) {
      const std::string at = key + "/lay/" + laid.piece + " " + whole_number(laid.copy);
      length(at + "/from end", laid.at.x, Shown::mark);
      length(at + "/from selvage", laid.at.y, Shown::mark);
    }
    for (std::size_t i = 0; i < printed.left_over.size(); ++i) {
      const std::string rest = key + "/left over " + whole_number(static_cast<std::int64_t>(i + 1));
      length(rest + "/across", printed.left_over[i].height, Shown::mark);
      length(rest + "/along", printed.left_over[i].width, Shown::mark);
    }
    for (const CutPiece& c : plan.cut) {
      length(c.key + "/cut width", c.across, Shown::cut, Action::recut);
      length(c.key + "/cut length", c.along, Shown::cut, Action::recut);
      count(c.key + "/copies", c.copies);
    }
  }

  // Knife pleats by the plain rule: flat = finished + 2 n d.
  void knife_run(const std::string& run, std::int64_t n, Length visible, Length depth, bool half) {
    PleatPlan p;
    p.run = run;
    p.kind = "knife";
    p.half = half;
    p.count = n;
    p.visible = visible;
    p.depth = depth;
    p.finished = visible * n;
    p.flat = p.finished + depth * (2 * n);
    p.overlaps = depth > visible;
    p.toward = "centre back";
    p.measured_from = "centre front";
    const Length each = visible + depth * 2;
    for (std::int64_t k = 1; k <= n; ++k) {
      p.marks.push_back({static_cast<int>(k), each * (k - 1) + visible, each * k, visible * k});
    }
    pleat_figures(p);
    plans.pleats.push_back(p);
  }
  void pleat_figures(const PleatPlan& p) {
    const std::string key = "pleats/" + p.run;
    word(key + "/kind", p.kind);
    count(key + "/count", p.count);
    length(key + "/flat", p.flat, Shown::pleat_mark, Action::remark);
    length(key + "/finished", p.finished, Shown::pleat_mark, Action::remark);
    length(key + "/visible", p.visible, Shown::pleat_mark, Action::remark);
    length(key + "/depth", p.depth, Shown::pleat_mark, Action::remark);
    for (std::size_t i = 0; i < p.marks.size(); ++i) {
      const std::string mark = key + "/mark " + whole_number(static_cast<std::int64_t>(i + 1));
      length(mark + "/fold", p.marks[i].fold, Shown::pleat_mark, Action::remark);
      length(mark + "/lay on", p.marks[i].lay_on, Shown::pleat_mark, Action::remark);
      length(mark + "/edge", p.marks[i].edge, Shown::pleat_mark);
    }
    for (std::size_t i = 0; i < p.seams_at.size(); ++i) {
      length(key + "/seam " + whole_number(static_cast<std::int64_t>(i + 1)), p.seams_at[i], Shown::pleat_mark);
    }
  }
  void step(int number, const std::string& id, const std::string& item, const std::string& act, bool done,
            const std::string& cannot_undo = "") {
    PlannedStep s;
    s.number = number;
    s.id = id;
    s.item = item;
    s.act = {{act, ""}};
    s.done = done;
    s.cannot_undo = cannot_undo;
    plans.work.push_back(s);
  }
};

inline CutPiece cut_piece(const std::string& piece, const std::string& cloth, std::int64_t copies, Length across, Length along,
                          bool full_width = false) {
  CutPiece c;
  c.piece = piece;
  c.cloth = cloth;
  c.copies = copies;
  c.across = across;
  c.along = along;
  c.full_width = full_width;
  c.grain = "along";
  c.allowances = "seams 1/2 in, hem 3 in, top 1 in";
  c.key = "pieces/" + piece + "/" + cloth;
  return c;
}

inline Cloth small_cloth(const std::string& name, Length width, UsedAs used_as) {
  Cloth c;
  c.named.name = name;
  c.used_as = Given<UsedAs>::written(used_as, {});
  c.width = Given<Length>::written(width, {});
  c.selvage = Given<Length>::written(Length::sixty_fourths(32), {});
  c.sold_by = Given<Length>::written(Length::sixty_fourths(288), {});  // 1/8 yd
  return c;
}

// Three breadths of 45 in and two bands of 4 x 36 in beside each other after them.
inline LayPlan skirt_lay(const std::string& cloth, Length width) {
  const Length in = Length::inches(1), half = Length::sixty_fourths(32);
  LayPlan plan;
  plan.cloth = cloth;
  plan.cut = {cut_piece("skirt breadth", cloth, 3, width - in, in * 45, true), cut_piece("band", cloth, 2, in * 4, in * 36)};
  LaidStrip& s = plan.to_buy;
  s.name = "to buy";
  s.width = width;
  s.usable_width = width - in;
  s.selvage = half;
  s.open = true;
  for (int i = 0; i < 3; ++i) s.placed.push_back({"skirt breadth", i + 1, {in * (45 * i), half, in * 45, width - in}, false});
  s.placed.push_back({"band", 1, {in * 135, half, in * 36, in * 4}, false});
  s.placed.push_back({"band", 2, {in * 135, half + in * 4, in * 36, in * 4}, false});
  s.used = in * 171;
  s.length = in * 171;
  s.straight_cuts = {in * 45, in * 90, in * 135};
  s.left_over = {{in * 135, half + in * 8, in * 36, width - in * 9}};
  plan.bound = in * 143;
  plan.needed = in * 180;
  return plan;
}

inline SmallProject skirt_by_hand() {
  const Length in = Length::inches(1);
  SmallProject p;
  p.project.title = "Lamp-lighting supper skirt, 1868";
  p.project.show_lengths_in = Given<ShownIn>::written(ShownIn::inches, {});
  p.project.garment = Given<Garment>::written(Garment::skirt, {});
  p.project.worn_on = Given<Day>::written(make_day(2027, 6, 19), {});
  p.project.cloths = {small_cloth("slate wool", in * 56, UsedAs::outer),
                      small_cloth("cotton lawn", in * 45, UsedAs::interlining)};
  LayPlan wool = skirt_lay("slate wool", in * 56);
  wool.bought = in * 198;
  wool.spare = in * 18;
  LayPlan lawn = skirt_lay("cotton lawn", in * 45);
  lawn.bought = in * 144;
  lawn.spare = -(in * 36);
  lawn.fits_bought = false;
  lawn.on_bought = {lawn.to_buy};
  lawn.left_out = {"band 1", "band 2"};
  p.lay_figures(wool, wool.to_buy);
  p.lay_figures(lawn, lawn.to_buy);
  p.plans.lays = {wool, lawn};
  p.knife_run("sides", 9, in.times(3, 2), in.times(3, 2), true);
  p.step(1, "shrink-cloth@slate wool", "slate wool", "Shrink the wool", true);
  p.step(2, "cut-breadths@slate wool", "slate wool", "Cut 3 breadths of slate wool", false, "cuts good cloth");
  p.step(3, "cut-breadths@cotton lawn", "cotton lawn", "Cut 3 breadths of cotton lawn", false, "cuts good cloth");
  p.plans.work[1].shows = {{{"", "pieces/skirt breadth/slate wool/cut length"}, {" three", ""}}};
  p.plans.work[1].reason = {{"First, because a long piece cannot come out of scraps.", ""}};
  p.plans.work[2].holds = {"until 1 yd more of cotton lawn is here"};
  p.step(4, "mark-pleats@sides", "sides", "Mark the pleats of sides and press them", false, "");
  CutVerdict yes;
  yes.cloth = "slate wool";
  yes.parts = {"skirt", "band"};
  yes.verdict = MayCut::yes;
  yes.reason = "The cloth is shrunk.";
  CutVerdict no;
  no.cloth = "cotton lawn";
  no.parts = {"skirt"};
  no.reason = "The cotton lawn is {} short.";
  no.reason_figure = "cloths/cotton lawn/short";
  p.plans.may_cut = {yes, no};
  Diagnostic hold;
  hold.code = "cloth-short";
  hold.severity = Severity::hold;
  hold.sentence = "Cotton lawn: 5 yd needed, 4 yd bought, 1 yd short.";
  hold.hint = "see what fits, on the layout sheet";
  hold.item = "cotton lawn";
  hold.step = "cut-breadths@cotton lawn";
  p.messages.push_back(hold);
  p.all_sheets();
  return p;
}

}  // namespace gownsheaf::testing
