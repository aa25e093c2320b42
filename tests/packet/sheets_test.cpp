// What each sheet says, read as its reader does.
#include "calculate/closures.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/plain_blocks.h"
#include "support/small_project.h"

#include "packet/sheets.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

std::string text_of_sheet(const std::vector<Sheet>& sheets, const std::string& id, std::size_t which = 0) {
  for (const Sheet& s : sheets) {
    if (s.id == id && which-- == 0) return plain_of(s);
  }
  return "";
}

}  // namespace

TEST_CASE("at a glance answers what, when and may I cut now") {
  const std::string page = text_of_sheet(skirt_by_hand().compose(), "at a glance");
  CAPTURE(page);
  CHECK(says(page, "Skirt in slate wool, worn on Saturday 19 June 2027."));
  CHECK(says(page, "# May I cut now?"));
  CHECK(says(page, "Slate wool (skirt and band) | Yes. The cloth is shrunk."));
  CHECK(says(page, "Cotton lawn (skirt) | No. The cotton lawn is 1 yd short."));
  CHECK(says(page, "# The next two acts that cannot be undone"));
  CHECK(says(page, "Step 2 cuts good cloth | Cut 3 breadths of slate wool"));
  CHECK(says(page, "HOLD step 3 | Cotton lawn: 5 yd needed, 4 yd bought, 1 yd short."));
}

TEST_CASE("at a glance: past eight rows to settle, holds are printed and the rest counted") {
  SmallProject p = skirt_by_hand();
  for (int i = 0; i < 9; ++i) {
    Diagnostic w;
    w.severity = Severity::warning;
    w.sentence = "The placket ends inside pleat " + std::to_string(i + 1) + ".";
    p.messages.push_back(w);
  }
  const std::vector<Sheet> sheets = p.compose();
  const std::string page = text_of_sheet(sheets, "at a glance");
  CAPTURE(page);
  CHECK(says(page, "HOLD"));
  CHECK_FALSE(says(page, "WARNING"));
  CHECK(says(page, "and 9\u00A0more warnings: all of them on page ... all to settle"));
  const std::string all = text_of_sheet(sheets, "to settle");  // the page that the line leads to
  CHECK(says(all, "WARNING | The placket ends inside pleat 9."));
}

TEST_CASE(
    "a warning stands on the sheet it is about, of several sheets on its item's; decided ones and those of another sheet do not") {
  SmallProject p = skirt_by_hand();
  const auto warn = [&](const char* item, const char* sheet, const char* sentence) {
    Diagnostic w;
    w.severity = Severity::warning;
    w.item = item;
    w.sheet = sheet;
    w.sentence = sentence;
    p.messages.push_back(w);
  };
  warn("sides", "pleats", "A seam shows.");
  warn("whole skirt", "pleats", "The round is too long.");
  warn("slate wool", "cutting list", "The wool is thick.");
  const std::vector<Sheet> sheets = p.compose();
  const std::string pleats = text_of_sheet(sheets, "pleats");
  CAPTURE(pleats);
  CHECK(says(pleats, "WARNING A seam shows."));
  CHECK(says(pleats, "WARNING The round is too long."));  // no sheet of its own: on the first of the kind
  CHECK_FALSE(says(pleats, "The wool is thick."));
  CHECK(says(text_of_sheet(sheets, "cutting list"), "WARNING The wool is thick."));
  p.messages.back().accepted_because = "it was pressed thin";
  CHECK_FALSE(says(text_of_sheet(p.compose(), "cutting list"), "The wool is thick."));
}

TEST_CASE("at a glance: an accepted hold is a decision, a guess tells what rests on it") {
  SmallProject p = skirt_by_hand();
  p.messages[0].accepted_because = "the band is cut from scraps";
  Figure guess;
  guess.key = "measures/waist to floor/side";
  guess.value = Length::inches(41);
  guess.shown = Shown::mark;
  guess.guessed = true;
  guess.guessed_from = "the front";
  p.figures.add(guess);
  Figure rests = guess;
  rests.key = "pieces/skirt breadth/slate wool/side length";
  rests.formula = "cut-length";
  rests.action = Action::recut;
  p.figures.add(rests);
  const std::string page = text_of_sheet(p.compose(), "at a glance");
  CAPTURE(page);
  CHECK_FALSE(says(page, "HOLD"));
  CHECK(says(page,
             "Decided cotton lawn | Cotton lawn: 5 yd needed, 4 yd bought, 1 yd short, because the band is cut from scraps."));
  CHECK(says(
      page,
      "GUESSED | Waist to floor, side, 41 in: guessed from the front. On it rests: side length of skirt breadth in slate wool."));
}

TEST_CASE("at a glance: a page that is full has the cloths of one answer in one row, then fewer rows and the page of all") {
  SmallProject p = skirt_by_hand();
  p.plans.may_cut = {{"slate wool", {"skirt"}, MayCut::no, "", "Step 1 is not done.", "", ""},
                     {"cotton lawn", {"lining", "skirt"}, MayCut::no, "", "Step 1 is not done.", "", ""},
                     {"silk", {"trim"}, MayCut::yes, "", "", "", ""}};
  for (Sheet s : p.compose()) {
    if (s.id != "at a glance") continue;
    CHECK(says(plain_of(s), "Slate wool (skirt) | No. Step 1 is not done."));
    CHECK(says(plain_of(s), "Cotton lawn (lining and skirt) | No."));
    REQUIRE(s.shorter.size() >= 2);
    s.blocks = s.shorter.front()();
    CHECK(says(plain_of(s), "Slate wool, cotton lawn (skirt and lining) | No. Step 1 is not done."));
    CHECK(says(plain_of(s), "Silk (trim) | Yes."));
    CHECK_FALSE(says(plain_of(s), "all of them on page"));
    s.blocks = s.shorter[1]();
    CHECK(says(plain_of(s), "all of them on page"));
  }
}

TEST_CASE("to buy: needed, bought, and what is short with its tag") {
  const std::string page = text_of_sheet(skirt_by_hand().compose(), "to buy");
  CAPTURE(page);
  CHECK(says(page, "One cloth is short. Lengths in yards, in shop steps of 1/8 yd, shrinkage added."));
  CHECK(says(page, "slate wool, 56 in wide | 5 | 5 1/2 | 1/2"));
  CHECK(says(page, "cotton lawn, 45 in wide | 5 | 4 | SHORT 1"));
  CHECK(says(page, "Cotton lawn: buy 1 yd more, in one piece."));
}

TEST_CASE("cutting list: the longer side of a seam is named, with what is eased in") {
  SmallProject p = skirt_by_hand();
  Piece front, back;
  front.named.name = "bodice front";
  back.named.name = "bodice back";
  front.edges.emplace("shoulder", Given<Length>::written(Length::inches(19).times(1, 4), {}));
  back.edges.emplace("shoulder", Given<Length>::written(Length::inches(5), {}));
  p.project.pieces.push_back(front);
  p.project.pieces.push_back(back);
  Seam seam;
  seam.named.name = "shoulder";
  seam.joins = {"shoulder of bodice front", "shoulder of bodice back"};
  seam.ease_in = Given<Length>::written(Length::inches(1).times(1, 4), {});
  p.project.seams.push_back(seam);
  CHECK_FALSE(says(text_of_sheet(p.compose(), "cutting list"), "eased"));  // no figure, no number
  p.length("seams/shoulder/ease in", Length::inches(1).times(1, 4), Shown::mark);
  CHECK(says(text_of_sheet(p.compose(), "cutting list"), "Shoulder of bodice back is 1/4 in longer and is eased in."));
}

TEST_CASE("cutting list: sizes with what is in them, cloth by cloth") {
  const std::string page = text_of_sheet(skirt_by_hand().compose(), "cutting list");
  CAPTURE(page);
  CHECK(says(page, "10 pieces from 2 cloths,"));
  CHECK(says(page,
             "Slate wool: either way\nskirt breadth | 3 |  | 55 | 45 | selvage to selvage; seams 1/2 in, hem 3 in, top 1 in"));
  CHECK(says(page, "Cotton lawn: either way HOLD until 1 yd more of cotton lawn is here, step 3"));
}

TEST_CASE("cutting layout: the lay in a sentence, the bound, the distances that lay it again") {
  const std::vector<Sheet> sheets = skirt_by_hand().compose();
  const std::string wool = text_of_sheet(sheets, "cutting layouts");
  CAPTURE(wool);
  CHECK(says(wool, "Cutting layout: slate wool"));
  CHECK(says(wool, "5 pieces on 171 in; 5 1/2 yd bought, 1/2 yd spare."));
  CHECK(says(wool, "No lay can be shorter than 143 in."));
  CHECK(says(wool, "skirt breadth 2 | 45 | 1/2 | 55 \u00D7 45 in"));
  CHECK(says(wool, "band 2 | 135 | 4 1/2 | 4 \u00D7 36 in"));
  CHECK(says(wool, "1/16 in on this sheet is 1 in of cloth"));
  CHECK(says(wool, "Second part. At 90 in cut straight across; no piece crosses."));
  CHECK(says(wool, "It is cut in step"));
  const std::string lawn = text_of_sheet(sheets, "cutting layouts", 1);
  CHECK(says(lawn, "SHORT 1 yd more is needed, in one piece. On what was bought there is no room for band 1 and band 2."));
}

TEST_CASE("pleats: the sum in a sentence and the marks as running distances") {
  const std::string page = text_of_sheet(skirt_by_hand().compose(), "pleats");
  CAPTURE(page);
  // 9 x 1 1/2 + 2 x 9 x 1 1/2 = 13 1/2 + 27 = 40 1/2 in flat
  CHECK(says(page, "40 1/2 in of cloth becomes 13 1/2 in: 9 knife pleats. Each shows 1 1/2 in and is 1 1/2 in deep."));
  CHECK(says(page, "\n1 | 1 1/2 | 4 1/2 | 1 1/2\n"));
  CHECK(says(page, "\n9 | 37 1/2 | 40 1/2 | 13 1/2"));
  CHECK(says(page, "Measure every mark from centre front."));
  CHECK(says(page, "All of one half; the other is its mirror."));
}

TEST_CASE("order of work: what is done in one sentence, holds and what cannot be undone on their steps") {
  const std::string page = text_of_sheet(skirt_by_hand().compose(), "order of work");
  CAPTURE(page);
  CHECK(says(page, "Step 1 is done."));
  CHECK_FALSE(says(page, "Shrink the wool"));
  CHECK(says(
      page,
      "2. Cut 3 breadths of slate wool / First, because a long piece cannot come out of scraps. / Cannot be undone: cuts good cloth. > 45 in three"));
  CHECK(says(page, "3. HOLD until 1 yd more of cotton lawn is here"));
  CHECK(says(page, "Stand the iron on its heel"));  // step 4 presses
}

TEST_CASE("order of work: each step shows the name that marks it done, and where that is written") {
  const std::string page = text_of_sheet(skirt_by_hand().compose(), "order of work");
  CAPTURE(page);
  CHECK(says(page, "45 in three @ cut-breadths@slate wool"));
  CHECK(says(page, "in the list done: - step: cut-breadths@slate wool."));
}

TEST_CASE("a step's condition stands before its act, at a glance too") {
  SmallProject p = skirt_by_hand();
  p.plans.work[1].conditional = true;
  p.plans.work[1].condition = "the cloth may be wetted";
  const std::vector<Sheet> sheets = p.compose();
  CHECK(says(text_of_sheet(sheets, "order of work"), "2. If the cloth may be wetted: Cut 3 breadths"));
  const std::string glance = text_of_sheet(sheets, "at a glance");
  CAPTURE(glance);
  CHECK(says(glance, "If the cloth may be wetted: Cut 3 breadths of slate wool"));
}

TEST_CASE("cutting layout: on several lengths the sentence speaks of those that are drawn, and a fold is named") {
  SmallProject p = skirt_by_hand();
  LayPlan& wool = p.plans.lays[0];
  wool.cut[1].on_fold = true;
  LaidStrip first = wool.to_buy, second = wool.to_buy;
  first.name = "bought length 1";
  second.name = "bought length 2";
  first.placed.assign(wool.to_buy.placed.begin(), wool.to_buy.placed.begin() + 3);
  second.placed.assign(wool.to_buy.placed.begin() + 3, wool.to_buy.placed.end());
  second.left_over.clear();
  wool.on_bought = {first, second};
  wool.fits_bought = true;
  const std::string page = text_of_sheet(p.compose(), "cutting layouts");
  CAPTURE(page);
  CHECK(says(page, "5 pieces on the 2 lengths there are; 5 1/2 yd bought in all."));
  CHECK_FALSE(says(page, "pieces on 171 in"));
  CHECK(says(page, "On one length no lay can be shorter than 143 in."));
  CHECK(says(page, "the broken line in it is its fold"));
}

TEST_CASE("order of work: only the next few where the set asks for it") {
  SmallProject p = skirt_by_hand();
  p.set.sheets[1].next_steps = 2;
  const std::string page = text_of_sheet(p.compose(), "order of work");
  CAPTURE(page);
  CHECK(says(page, "2. Cut"));
  CHECK_FALSE(says(page, "4. Mark"));
  CHECK(says(page, "1 step follows; when these are done, write their small names under done, and make the packet again."));
  CHECK_FALSE(says(page, "iron"));  // nothing on this sheet is pressed
}

TEST_CASE("how it was worked out: a run of like sums is shown once") {
  SmallProject p = skirt_by_hand();
  for (int k = 1; k <= 12; ++k) {
    Figure f;
    f.key = "pleats/back/mark " + std::to_string(k) + "/fold";
    f.value = Length::inches(k);
    f.shown = Shown::pleat_mark;
    f.formula = "pleat-marks";
    f.working = Working{"fold of pleat " + std::to_string(k), "k x flat / n", std::to_string(k) + " x 12 in / 12",
                        std::to_string(k) + " in"};
    p.figures.add(f);
  }
  const std::string page = text_of_sheet(p.compose(), "how it was worked out");
  CAPTURE(page);
  CHECK(says(page, "# Pleats\n"));
  CHECK(says(page, "\nBack\n"));
  CHECK(says(page, "fold of pleat 1; 11 more are worked alike | k \u00D7 flat / n 1 \u00D7 12 in / 12 | 1 in"));
  CHECK_FALSE(says(page, "fold of pleat 2"));
}

TEST_CASE("how it was worked out: a name of its own is none of a run; a lining's sum says its cloth") {
  SmallProject p = skirt_by_hand();
  const auto sum = [&](const std::string& key, const std::string& what, const std::string& result) {
    Figure f;
    f.key = key;
    f.value = Length::inches(1);
    f.formula = "by-hand";
    f.working = Working{what, "a + b", "1 + 1", result};
    p.figures.add(f);
  };
  sum("closures/front/fastener 1", "hook 1 from the top", "1 in");
  sum("closures/front/fastener 2", "hook 2 from the top", "2 in");
  sum("closures/front/fastener may hold", "what one should be asked for", "3 lbf");
  sum("pieces/front/cut length", "cut length of front", "16 in");
  sum("pieces/front/cotton lawn/cut length", "cut length of front", "17 in");
  const std::string page = text_of_sheet(p.compose(), "how it was worked out");
  CAPTURE(page);
  CHECK(says(page, "hook 1 from the top; 1 more is worked alike"));
  CHECK(says(page, "what one should be asked for | "));
  CHECK(says(page, "cut length of front | a + b 1 + 1 | 16 in"));
  CHECK(says(page, "cut length of front in cotton lawn | a + b 1 + 1 | 17 in"));
}

TEST_CASE("a hold stands on the sheets that the scissors follow, as on its step") {
  SmallProject p = skirt_by_hand();
  for (PlannedStep& s : p.plans.work)
    if (s.item == p.plans.lays[0].cloth && s.cannot_undo == kCannotUndo[0])
      s.holds = {"until first mock-up is signed", "until this is settled: A seam shows."};
  const std::vector<Sheet> sheets = p.compose();
  const std::string said = "HOLD until first mock-up is signed; until this is settled: A seam shows, step 2";
  CHECK(says(text_of_sheet(sheets, "cutting list"), said));
  CHECK(says(text_of_sheet(sheets, "cutting layouts"), said));
  CHECK_FALSE(says(text_of_sheet(sheets, "cutting layouts", 1), "first mock-up"));
}

TEST_CASE("to buy: a length that is no whole step of the shop has its own unit under a head of yards") {
  SmallProject p = skirt_by_hand();
  p.length("cloths/tweed/needed", Length::inches(180), Shown::cloth, Action::buy);
  p.length("cloths/tweed/bought", Length::cm(400), Shown::cloth);
  p.project.cloths.push_back({});
  p.project.cloths.back().named.name = "tweed";
  const std::string page = text_of_sheet(p.compose(), "to buy");
  CAPTURE(page);
  CHECK(says(page, "tweed | 5 | 157 7/16 in"));
}

TEST_CASE("a closing: what several alike take is told as such") {
  for (const std::int64_t many : {1, 2}) {
    SmallProject p;
    Closure closure;
    closure.named = garment::named("cuffs");
    closure.length = garment::said(garment::in(4));
    closure.number = garment::said<std::int64_t>(3);
    closure.closings = garment::said(many);
    closure.fasten = Fasten::snaps;
    p.project.closures.push_back(closure);
    Diagnostics diag;
    p.plans.closures = add_closures(p.project, p.figures, diag);
    p.sheet("closures", "Closing: {closure}", "closure");
    const std::string page = text_of_sheet(p.compose(), "closures");
    CAPTURE(page);
    CHECK(says(page, many == 1 ? "3 snaps in all." : "6 snaps in all, for 2 closings alike."));
  }
}

TEST_CASE("how it was worked out: private sums only where the set shows them") {
  SmallProject p = skirt_by_hand();
  Figure f;
  f.key = "measures/waist to floor/longest";
  f.value = Length::inches(43);
  f.formula = "skirt-length";
  f.is_private = true;
  f.working = Working{"longest length", "the longest of them", "40 in, 41 in, 43 in", "43 in"};
  p.figures.add(f);
  CHECK(says(text_of_sheet(p.compose(), "how it was worked out"), "longest length"));
  p.set.private_shown = false;
  CHECK_FALSE(says(text_of_sheet(p.compose(), "how it was worked out"), "longest length"));
}

TEST_CASE("titles, conditions and contents of a set") {
  SmallProject p = skirt_by_hand();
  p.set.sheets.clear();
  p.sheet("at a glance", "{title}");
  p.sheet("pleats", "Pleats", "run");
  p.sheet("cutting layouts", "Cutting layout: {cloth}", "cloth");
  p.set.contents_page = true;
  const std::vector<Sheet> sheets = p.compose();
  REQUIRE(sheets.size() == 6);
  CHECK(sheets[5].when_named);  // all to settle: only where at a glance has no room for it
  CHECK_FALSE(says(plain_of(sheets[1]), "Settle these"));
  CHECK(sheets[0].title == "Lamp-lighting supper skirt, 1868");
  CHECK(sheets[1].title == "Contents");
  CHECK(sheets[2].title == "Pleats: sides");
  CHECK(sheets[3].title == "Cutting layout: slate wool");
  CHECK(says(plain_of(sheets[1]), "Pleats: sides ... sheet pleats/sides"));
  for (const Sheet& s : sheets) CHECK(s.starts_page);  // pin-up: each sheet starts a page
}

TEST_CASE("contents stand where the set names them, and do not name themselves") {
  SmallProject p = skirt_by_hand();
  p.sheet("contents", "Where to look");
  p.set.contents_page = true;
  const std::vector<Sheet> sheets = p.compose();
  CHECK(std::count_if(sheets.begin(), sheets.end(), [](const Sheet& s) { return s.id == "contents"; }) == 1);
  REQUIRE(sheets.back().when_named);
  const Sheet& contents = sheets[sheets.size() - 2];
  CHECK(contents.title == "Where to look");
  const std::string page = plain_of(contents);
  CHECK(says(page, "Order of work ... sheet order of work"));
  CHECK_FALSE(says(page, "May I cut now?"));
  CHECK_FALSE(says(page, "Where to look ..."));
}

TEST_CASE("pleats: a run that begins further on says from which end it is measured, and where that end lies") {
  SmallProject p = skirt_by_hand();
  p.length("pleats/sides/begins at", Length::inches(2), Shown::pleat_mark);
  p.plans.pleats[0].measured_from = "its end nearer centre front";
  CHECK(says(text_of_sheet(p.compose(), "pleats"),
             "Measure every mark from the run\u2019s end nearer centre front, which lies 2 in past centre front."));
  p.plans.pleats[0].measured_from = "its end nearer centre back";
  const std::string page = text_of_sheet(p.compose(), "pleats");
  CHECK(says(page, "Measure every mark from the run\u2019s end nearer centre back."));
  CHECK(says(page, "The run begins 2 in past centre front."));
}

TEST_CASE("no figure is absent from any sheet") {
  for (const Sheet& s : skirt_by_hand().compose()) {
    CAPTURE(s.id);
    CHECK_FALSE(says(plain_of(s), kFigureAbsent));
  }
}

TEST_CASE("an empty project still makes sheets that say so") {
  SmallProject p;
  p.project.title = "Nothing yet";
  p.all_sheets();
  const std::vector<Sheet> sheets = p.compose();
  CHECK(says(text_of_sheet(sheets, "at a glance"), "No cloth is cut for this garment."));
  CHECK(says(text_of_sheet(sheets, "to buy"), "No cloth is named."));
  CHECK(says(text_of_sheet(sheets, "cutting list"), "No piece is cut."));
  CHECK(says(text_of_sheet(sheets, "order of work"), "There are no steps for what is written."));
}

TEST_CASE("a sheet's condition that cannot be answered leaves the sheet out") {
  SmallProject p = skirt_by_hand();
  Diagnostics diag;
  p.set.sheets[2].when = parse_condition("has piping", {}, diag);
  REQUIRE_FALSE(diag.has_errors());
  CHECK(text_of_sheet(p.compose(), "to buy").empty());
  p.facts = [](std::string_view, std::string_view) { return FactValue{true}; };
  CHECK_FALSE(text_of_sheet(p.compose(), "to buy").empty());
}

TEST_CASE("a piece turned a quarter says so, in the list and where it is laid again") {
  SmallProject p = skirt_by_hand();
  for (LayPlan& lay : p.plans.lays)
    for (LaidPiece& laid : lay.to_buy.placed)
      if (laid.piece == "band" && laid.copy == 2) {
        laid.turned = true;
        std::swap(laid.at.width, laid.at.height);
      }
  const auto sheets = p.compose();
  CHECK(says(text_of_sheet(sheets, "cutting list"), "Slate wool: some pieces turned across, see the lay"));
  CHECK(says(text_of_sheet(sheets, "cutting layouts"), "36 \u00D7 4 in, turned"));
}
