// Sheets with every kind of block, at their worst: long names, 1/32 fractions, negative numbers. Own scenario.
#pragma once
#include "layout/lay_out.h"

namespace gownsheaf::testing {

inline LengthText length(std::string whole, std::string n = "", std::string d = "", std::string unit = "in",
                         bool negative = false) {
  LengthText text;
  text.negative = negative;
  text.whole = std::move(whole);
  text.numerator = std::move(n);
  text.denominator = std::move(d);
  text.unit = std::move(unit);
  return text;
}
inline Text verdict(std::string s) {
  Text text = bold(std::move(s));
  text.front().size = Inline::Size::verdict;
  return text;
}
inline Block block(decltype(Block::what) what, bool keep = false) { return Block{std::move(what), keep}; }

inline Sheet glance_sheet() {
  Sheet sheet;
  sheet.id = sheet.anchor = "at a glance";
  sheet.title = "At a glance";
  sheet.section = Section::glance;
  sheet.answer = words("Evening cape with a pleated flounce, worn on ") + bold("Saturday 3 April 2027") + words(".");
  auto& b = sheet.blocks;
  b.push_back(block(Heading{words("May I cut now?")}));
  b.push_back(block(
      PairRow{verdict("Cape"), condensed("velvet, silk"), verdict("Yes.") + words(" The cloth is shrunk and the sums agree.")}));
  b.push_back(
      block(PairRow{verdict("Flounce"), condensed("taffeta"),
                    verdict("Yes, after the cape.") + words(" Long pieces come first: they cannot come out of scraps.")}));
  b.push_back(
      block(PairRow{verdict("Undercollar reinforcement"), condensed("the stiff linen canvas from the chest"),
                    verdict("No.") + words(" The canvas is ") + measured(length("", "3", "8", "yd")) + words(" short."), true}));
  b.push_back(block(Heading{words("The next three acts that cannot be undone")}));
  for (const char* act : {"Cut the two cape fronts and the back.", "Cut the collar and its lining.", "Cut the flounce."}) {
    const bool last = act[9] == 'f';
    b.push_back(block(PairRow{bold("Step\xC2\xA0"
                                   "7") +
                                  condensed(" cuts good cloth"),
                              {},
                              words(act),
                              last}));
  }
  b.push_back(block(Heading{words("Settle these")}));
  b.push_back(
      block(PairRow{tag(Tag::hold) + words(" step\xC2\xA0"
                                           "10"),
                    {},
                    words("Buy ") + measured(length("", "3", "8", "yd")) + words(" of canvas. Cut none before it is here.")}));
  b.push_back(block(PairRow{tag(Tag::warning) + words(" step\xC2\xA0"
                                                      "19"),
                            {},
                            words("The pleats are ") + checking(length("", "9", "32")) +
                                words(" deeper than they show. End the lining ") + measured(length("3")) +
                                words(" above the hem; then they lie flat.")}));
  b.push_back(block(PairRow{tag(Tag::guessed),
                            {},
                            words("Neck to floor at the sides, ") + measured(length("53", "15", "16")) +
                                words(". No cut rests on it: the cape is cut to the longest, ") + measured(length("54")) +
                                words(" at the back.")}));
  b.push_back(block(PairRow{tag(Tag::decided), {}, words("The nap runs up, because the velvet is darker so."), true}));
  return sheet;
}

inline Sheet work_sheet() {
  Sheet sheet;
  sheet.id = sheet.anchor = "order of work";
  sheet.title = "Order of work";
  sheet.section = Section::work;
  sheet.answer = words("Steps 1 to 5 are done. Tick and go down the page.");
  for (int n = 6; n < 20; ++n) {
    StepBlock step;
    step.number = n;
    step.anchor = "step " + std::to_string(n);
    step.act = words(n % 3 ? "Cut the cape fronts and the back panel" : "Mark the whole lay on the velvet");
    step.reason = words(n % 2 ? "First, because a long piece cannot come out of scraps." : "Chalk is gone by the fitting.");
    if (n % 3) step.cannot_undo = "cuts good cloth";
    if (n % 3 == 1) {
      step.figures = {
          measured(length("41", "1", "2", "")) + bold(" \xC3\x97 ") + measured(length("45")) + condensed(" two"),
          measured(length("13", "15", "16", "")) + bold(" \xC3\x97 ") + measured(length("45", "1", "32")) + condensed(" one")};
    } else if (n % 3 == 2) {
      step.figures = {measured(length("1")) + condensed(" past the centre front of the cape")};
    }
    if (n == 10) step.holds = {tag(Tag::hold) + words(" until the canvas is here ") + tick_box()};
    if (n == 14) {
      step.gate = true;
      step.act = words(
          "Fitting 3: sign its page before step\xC2\xA0"
          "15");
      step.reason = {};
      step.cannot_undo.clear();
    }
    sheet.blocks.push_back(block(std::move(step)));
  }
  return sheet;
}

inline Sheet buy_sheet() {
  Sheet sheet;
  sheet.id = sheet.anchor = "to buy";
  sheet.title = "To buy";
  sheet.section = Section::buy;
  sheet.starts_page = false;
  sheet.answer = words("One cloth is short. Lengths in yards, in shop steps of ") + checking(length("", "1", "8", "yd")) +
                 words(", shrinkage added.");
  Table cloth;
  cloth.columns = {{{}, Column::Kind::tick, 0},
                   {words("cloth"), Column::Kind::words, 0},
                   {words("needed, yd"), Column::Kind::length, 80, true},
                   {words("bought, yd"), Column::Kind::length, 80},
                   {words("spare or short, yd"), Column::Kind::length, 130}};
  cloth.rows = {{Row::Kind::plain,
                 {{},
                  {bold("grey-blue velvet") + words(", 56 in wide")},
                  {checking(length("3", "7", "8", ""))},
                  {checking(length("4", "1", "4", ""))},
                  {checking(length("", "3", "8", ""))}}},
                {Row::Kind::plain,
                 {{},
                  {bold("silk taffeta") + words(", 44 in wide, shot with rust, the second bolt of the two")},
                  {checking(length("13", "7", "8", ""))},
                  {checking(length("14", "", "", ""))},
                  {checking(length("", "1", "8", ""))}}},
                {Row::Kind::plain,
                 {{tick_box()},
                  {bold("linen canvas") + words(", 44 in wide")},
                  {checking(length("1", "3", "8", ""))},
                  {checking(length("1", "", "", ""))},
                  {tag(Tag::short_of) + checking(length("", "3", "8", ""))}}},
                {Row::Kind::total,
                 {{},
                  {words("together")},
                  {checking(length("19", "1", "8", ""))},
                  {checking(length("19", "1", "4", ""))},
                  {words("\xE2\x80\x93")}}}};
  sheet.blocks = {block(Heading{words("Cloth")}), block(cloth)};
  Table notions;
  notions.columns = {{{}, Column::Kind::tick, 0},
                     {words("what"), Column::Kind::words, 0},
                     {words("needed"), Column::Kind::length, 80, true},
                     {words(""), Column::Kind::unit, 50},
                     {words("weight, g"), Column::Kind::estimate, 0},
                     {words("how it comes about"), Column::Kind::words, 150}};
  notions.rows = {{Row::Kind::plain,
                   {{tick_box()},
                    {words("hooks and eyes, no. 2")},
                    {words("7")},
                    {condensed("pairs")},
                    {words("about 2.7")},
                    {condensed("front, hooks 1 to 7")}}},
                  {Row::Kind::plain,
                   {{tick_box()},
                    {words("waist stay, ") + checking(length("1"))},
                    {checking(length("1", "1", "8", ""))},
                    {condensed("yd")},
                    {words("about 12")},
                    {condensed("33 in + 4 in: 37 in")}}},
                  {Row::Kind::plain,
                   {{tick_box()},
                    {words("hem braid")},
                    {checking(length("2", "15", "16", ""))},
                    {condensed("yd")},
                    {words("about 101.25")},
                    {condensed("93 in round + 3 in: 96 in")}}}};
  sheet.blocks.push_back(block(Heading{words("Notions")}));
  sheet.blocks.push_back(block(notions));
  sheet.blocks.push_back(
      block(Paragraph{bold("Weights are estimates.") +
                      words(" They take the braid as dry and the hooks as steel, and they are there for the post only.")}));
  return sheet;
}

inline Sheet cutting_sheet() {
  Sheet sheet;
  sheet.id = sheet.anchor = "cutting list";
  sheet.title = "Cutting list";
  sheet.section = Section::cut;
  sheet.starts_page = false;
  Table list;
  list.columns = {{words("piece"), Column::Kind::words, 0},
                  {words("cut"), Column::Kind::count, 0, true},
                  {{}, Column::Kind::unit, 0},
                  {words("across, in"), Column::Kind::length, 90, true},
                  {words("along grain, in"), Column::Kind::length, 100},
                  {words("allowances already in it, in"), Column::Kind::words, 120}};
  const auto row = [&](std::string piece, int n, LengthText a, LengthText g, Text what) {
    list.rows.push_back({Row::Kind::plain,
                         {{words(std::move(piece))},
                          {words(std::to_string(n))},
                          {condensed(n == 2 ? "pair" : "")},
                          {checking(a)},
                          {checking(g)},
                          {std::move(what)}}});
  };
  const auto seams = condensed("seams ") + checking(length("", "1", "2", "")) + condensed(", hem 3, top 1");
  for (const char* cloth : {"Grey-blue velvet: one way, face up", "Silk taffeta"}) {
    list.rows.push_back({Row::Kind::group, {{words(cloth)}}});
    row("cape front", 2, length("41", "1", "2", ""), length("45", "", "", ""), seams);
    row("cape back, cut in one with the hood", 1, length("13", "15", "16", ""), length("45", "31", "32", ""), seams);
    row("collar", 12, length("9", "1", "2", ""), length("18", "", "", ""), condensed("as the velvet"));
    row("flounce", 4, length("", "3", "4", "", true), length("125", "1", "2", ""), condensed("reserve it, cut it last"));
  }
  sheet.blocks = {block(std::move(list))};
  return sheet;
}

inline Sheet pleat_sheet() {
  Sheet sheet;
  sheet.id = sheet.anchor = "pleats";
  sheet.title = "Pleats: flounce, each half";
  sheet.section = Section::pleats;
  sheet.answer = measured(length("40", "1", "2")) + words(" of cloth becomes ") + measured(length("13", "1", "2")) +
                 words(": 9 knife pleats. Each shows ") + measured(length("1", "1", "2")) + words(" and takes in ") +
                 measured(length("3")) + words(".");
  sheet.blocks.push_back(
      block(Paragraph{condensed("Flat, right side up. Grey goes under. Bring each full line onto the next dashed line.")}, true));
  Drawing run;
  run.name = "flat run";
  run.width = Length::points(486);
  run.height = Length::points(60);
  const auto at = [](double x, double y) { return Point{Length::from_points(x), Length::from_points(y)}; };
  for (int i = 0; i < 9; ++i) {
    run.items.push_back(
        FillMark{path_of(Box{at(54 * i + 18, 20).x, at(0, 20).y, Length::points(36), Length::points(24)}), Ink::pale_grey});
  }
  run.items.push_back(StrokeMark{path_of(Box{{}, Length::points(20), Length::points(486), Length::points(24)}),
                                 Length::from_points(1.4),
                                 Cap::butt,
                                 Join::mitre,
                                 {}});
  for (int i = 0; i < 9; ++i) {
    run.items.push_back(
        StrokeMark{path_of(at(54 * i + 18, 20), at(54 * i + 18, 44)), Length::points(2), Cap::butt, Join::mitre, {}});
    run.items.push_back(
        StrokeMark{path_of(at(54 * i + 54, 20), at(54 * i + 54, 44)), Length::points(1), Cap::butt, Join::mitre, {4, 2}});
    run.items.push_back(Label{bold(std::to_string(i + 1)), at(54 * i + 9, 32), Label::Across::middle, Label::Up::middle});
  }
  run.caption = condensed("Folded, from above, at half size along the neck. Layers drawn apart.");
  sheet.blocks.push_back(block(run, true));
  Drawing lay;
  lay.name = "lay";
  lay.width = Length::points(400);
  lay.height = Length::points(120);
  const Box left{{}, {}, Length::points(180), Length::points(110)},
      right{Length::points(190), {}, Length::points(90), Length::points(110)};
  const Box low{Length::points(290), {}, Length::points(90), Length::points(110)};
  lay.items = {
      Hatch{path_of(left), 45, 8.5, 0.5},
      Hatch{path_of(right), -45, 6, 0.5},
      Hatch{path_of(low), 0, 5, 0.5},
      StrokeMark{path_of(left), Length::points(2), Cap::butt, Join::mitre, {}},
      StrokeMark{path_of(right), Length::from_points(1.4), Cap::butt, Join::mitre, {}},
      StrokeMark{
          circle({Length::points(335), Length::points(55)}, Length::points(30)), Length::points(1), Cap::butt, Join::round, {}},
      Label{condensed("left over ") + measured(length("13", "3", "8", "")) + condensed(" \xC3\x97 45 in"),
            {Length::points(90), Length::points(55)},
            Label::Across::middle,
            Label::Up::middle,
            0,
            true},
      Label{condensed("left over ") + checking(length("13", "3", "8")),
            {Length::points(235), Length::points(55)},
            Label::Across::middle,
            Label::Up::middle,
            90,
            true}};
  lay.caption =
      condensed("Drawn at one sixteenth: ") + checking(length("", "1", "16")) + bold(" on this sheet is 1 in of cloth.");
  sheet.blocks.push_back(block(lay, true));
  Table marks;
  marks.heavy_every_third = true;
  marks.columns = {{words("pleat"), Column::Kind::words, 0, true},
                   {words("fold at, in"), Column::Kind::length, 120, true},
                   {words("lay it on, in"), Column::Kind::length, 150, true},
                   {words("edge then lies at, in"), Column::Kind::length, 120}};
  for (int i = 0; i < 14; ++i) {
    const bool half = i % 2 == 0;
    const auto num = [&](int a) {
      return half ? length(std::to_string(a), i == 4 ? "31" : "1", i == 4 ? "32" : "2", "")
                  : length(std::to_string(a), "", "", "");
    };
    marks.rows.push_back({Row::Kind::plain,
                          {{words(std::to_string(i + 1))},
                           {checking(num(1 + i * 9 / 2))},
                           {checking(num(4 + i * 9 / 2))},
                           {checking(num(1 + i * 3 / 2))}}});
  }
  sheet.blocks.push_back(block(marks));
  sheet.blocks.push_back(
      block(Paragraph{bold("Measure every mark from the front seam.") +
                      words(" The other half is its mirror. Pocket: in the front seam, which pleat 1 only just reaches.")}));
  return sheet;
}

inline Sheet fitting_sheet() {
  Sheet sheet;
  sheet.id = sheet.anchor = "fitting";
  sheet.title = "Fitting 3: the basted cape with its detachable hood and the flounce pinned on";
  sheet.section = Section::fit;
  sheet.answer = words(
      "Nothing after step\xC2\xA0"
      "15 starts before this page is signed.");
  sheet.blocks.push_back(block(Paragraph{bold("Ready?") + words(" All on and all fastened before anyone looks:"), true}, true));
  sheet.blocks.push_back(
      block(Paragraph{tick_box() + words("chemise ") + tick_box() + words(" corset, laced as worn ") + tick_box() +
                          words(" bustle pad ") + tick_box() + words(" two petticoats ") + tick_box() + words("shoes"),
                      true}));
  Table look;
  look.columns = {{words("look at"), Column::Kind::words, 166},
                  {words("right when"), Column::Kind::words, 110},
                  {words("found"), Column::Kind::words, 80},
                  {words("if not"), Column::Kind::words, 0}};
  look.rows = {{Row::Kind::plain,
                {{bold("Centre front meets") + condensed(" at the waist, not pulled")},
                 {words("within ") + measured(length("", "1", "8"))},
                 {},
                 {measured(length("", "3", "4")) + condensed(" tight: let out ") + measured(length("", "1", "8")) +
                  condensed(" at each of 6 edges")}}},
               {Row::Kind::plain,
                {{bold("Neck edge") + condensed(" draw it to the body")},
                 {words("up to ") + measured(length("", "5", "8")) + words(" on ") + measured(length("15"))},
                 {},
                 {condensed("draw it in with a tape")}}}};
  sheet.blocks.push_back(block(look));
  sheet.blocks.push_back(block(Rule{2.0}, true));
  sheet.blocks.push_back(block(Paragraph{tick_box() +
                                         bold("Signed: go on to step\xC2\xA0"
                                              "16.") +
                                         words(" ") + tick_box() + words("Baste and fit again.")},
                               true));
  sheet.blocks.push_back(
      block(WriteIn{{{words("who"), 184}, {words("date"), 184}, {words("waist, over everything that is worn"), 68}}}));
  return sheet;
}

inline Sheet contents_sheet(const std::vector<Sheet>& others) {
  Sheet sheet;
  sheet.id = sheet.anchor = "contents";
  sheet.title = "Contents";
  for (const Sheet& other : others) sheet.blocks.push_back(block(ContentsLine{other.title, other.anchor}));
  return sheet;
}

inline std::vector<Sheet> specimen() {
  std::vector<Sheet> sheets{glance_sheet(), buy_sheet(), cutting_sheet(), pleat_sheet(), fitting_sheet(), work_sheet()};
  sheets.insert(sheets.begin(), contents_sheet(sheets));
  return sheets;
}

}  // namespace gownsheaf::testing
