// Older figures against those of today, cut pieces that no longer serve, and the laws of the comparison.
#include "calculate/what_changed.h"

#include <algorithm>

#include "support/catch.h"
#include "support/random_draws.h"
#include "support/rounds.h"

using namespace gownsheaf;

namespace {

Figure figure(const std::string& key, Value value, Shown shown = Shown::exact, Action action = Action::none) {
  Figure f;
  f.key = key;
  f.value = std::move(value);
  f.shown = shown;
  f.action = action;
  return f;
}

OlderFigures older_of(const std::vector<Figure>& all) {
  OlderFigures older;
  for (const Figure& f : all) older.figures.add(f);
  return older;
}

Figures figures_of(const std::vector<Figure>& all) {
  Figures figures;
  for (const Figure& f : all) figures.add(f);
  return figures;
}

constexpr ShownIn kIn = ShownIn::inches;
Length inches(std::int64_t whole, std::int64_t n = 0, std::int64_t d = 1) {
  return Length::inches(whole) + Length::inches(1).times(n, d);
}

// A skirt of wool whose breadths and band are cut, as `done` says.
struct CutSkirt {
  Project project;
  Templates templates;
  Plans plans;

  CutSkirt() {
    project.show_lengths_in = Given<ShownIn>::written(kIn, {});
    Cloth wool;
    wool.named.name = "wool";
    project.cloths.push_back(wool);
    LayPlan lay;
    lay.cloth = "wool";
    for (const char* name : {"breadth", "band"}) {
      Piece piece;
      piece.named.name = name;
      piece.from = {"wool"};
      project.pieces.push_back(piece);
      CutPiece cut;
      cut.piece = name;
      cut.cloth = "wool";
      cut.key = std::string("pieces/") + name + "/wool";
      cut.full_width = std::string(name) == "breadth";
      lay.cut.push_back(cut);
    }
    plans.lays.push_back(lay);
    for (const char* id : {"cut-breadths", "cut-pieces"}) {
      Step step;
      step.id = id;
      step.for_each = "cloth";
      step.cannot_undo = kCannotUndo[0];
      templates.steps.push_back(step);
    }
  }
  void done(const std::string& step) { project.work.done.push_back({step, std::nullopt, {}}); }

  Changes compare(const std::vector<Figure>& was, const std::vector<Figure>& is, Diagnostics& diag) const {
    const OlderFigures older = older_of(was);
    const Figures today = figures_of(is);
    Changes changes = what_changed(older, today, renamed_items(project), kIn);
    add_already_cut(project, templates, plans, older, today, changes, diag);
    return changes;
  }
};

Figure cut(const std::string& key, Length l) { return figure(key, l, Shown::cut, Action::recut); }

std::string said(const Diagnostics& diag) {
  std::string all;
  for (const Diagnostic& d : diag.in_order_found())
    all += std::string(word_for(d.severity)) + " " + d.code + ": " + d.sentence + " > " + d.hint + "\n";
  return all;
}

}  // namespace

TEST_CASE("changes: altered, new and gone are told apart, with what is to be done", "[changes]") {
  const auto older = older_of(
      {cut("pieces/band/wool/cut width", inches(28)), figure("pleats/sides/count", std::int64_t{9}, Shown::exact, Action::remark),
       figure("cloths/wool/needed", inches(180), Shown::cloth, Action::buy), figure("measures/waist", inches(26), Shown::mark)});
  const auto today = figures_of(
      {cut("pieces/band/wool/cut width", inches(30)), figure("pleats/sides/count", std::int64_t{9}, Shown::exact, Action::remark),
       figure("cloths/lawn/needed", inches(36), Shown::cloth, Action::buy), figure("measures/waist", inches(28), Shown::mark)});
  const Changes c = what_changed(older, today, {}, kIn);
  REQUIRE(c.all.size() == 4);
  CHECK(c.all[0].key == "pieces/band/wool/cut width");
  CHECK(c.all[0].kind == Change::Kind::altered);
  CHECK(c.all[0].action == Action::recut);
  CHECK(c.all[1].kind == Change::Kind::is_new);
  CHECK(c.all[1].action == Action::buy);
  CHECK(c.all[2].key == "measures/waist");
  CHECK(c.all[2].action == Action::none);
  CHECK(c.all[3].kind == Change::Kind::gone);
  CHECK(c.all[3].key == "cloths/wool/needed");
  CHECK(c.touches("cloths/lawn/needed"));
  CHECK_FALSE(c.touches("cloths/wool/needed"));  // it stands on no sheet any more
  CHECK_FALSE(c.touches("pleats/sides/count"));
}

TEST_CASE("changes: what the rounding hides is no change, one printed step is", "[changes]") {
  // Cut sizes print up to 1/16 in: 11 3/4 and 11 47/64 are both cut at 11 3/4; 11 49/64 at 11 13/16.
  const auto older = older_of({cut("a/b/c", inches(11, 3, 4))});
  CHECK(what_changed(older, figures_of({cut("a/b/c", inches(11, 47, 64))}), {}, kIn).all.empty());
  CHECK(what_changed(older, figures_of({cut("a/b/c", inches(11, 49, 64))}), {}, kIn).all.size() == 1);
}

TEST_CASE("changes: `was` keeps the figures of a renamed item, a renamed cloth's and a renamed copy's too", "[changes]") {
  Renamed renamed;
  renamed["pieces"]["breadth"] = "skirt breadth";
  renamed["cloths"]["wool"] = "slate wool";
  CHECK(key_of_today("pieces/breadth/wool/cut width", renamed) == "pieces/skirt breadth/slate wool/cut width");
  CHECK(key_of_today("pieces/Breadth/hem", renamed) ==
        "pieces/skirt breadth/hem");  // names are told apart without regard to case
  CHECK(key_of_today("cloths/wool/lay/breadth 2/from end", renamed) == "cloths/slate wool/lay/skirt breadth 2/from end");
  CHECK(key_of_today("cloths/wool/lay/breadths 2/from end", renamed) == "cloths/slate wool/lay/breadths 2/from end");
  CHECK(key_of_today("pleats/breadth/count", renamed) == "pleats/breadth/count");
  CHECK(key_of_today("measures/waist", renamed) == "measures/waist");
}

TEST_CASE("changes: private figures of a file that left them out are not called new", "[changes]") {
  OlderFigures older = older_of({cut("a/b/c", inches(1))});
  older.private_known = false;
  Figure waist = figure("measures/waist", inches(28), Shown::mark);
  waist.is_private = true;
  CHECK(what_changed(older, figures_of({cut("a/b/c", inches(1)), waist}), {}, kIn).all.empty());
  older.private_known = true;
  const Changes c = what_changed(older, figures_of({cut("a/b/c", inches(1)), waist}), {}, kIn);
  REQUIRE(c.all.size() == 1);
  CHECK(c.all[0].is_private);
}

TEST_CASE("already cut: a piece that is too small holds, one that is too large is trimmed", "[changes][cut]") {
  CutSkirt skirt;
  skirt.done("cut-pieces@wool");
  Diagnostics diag;
  const Changes c =
      skirt.compare({cut("pieces/band/wool/cut width", inches(27, 1, 2)), cut("pieces/band/wool/cut length", inches(5)),
                     cut("pieces/breadth/wool/cut length", inches(44))},
                    {cut("pieces/band/wool/cut width", inches(29, 1, 2)), cut("pieces/band/wool/cut length", inches(4, 1, 2)),
                     cut("pieces/breadth/wool/cut length", inches(46))},
                    diag);
  // 29 1/2 - 27 1/2 = 2 in; 5 - 4 1/2 = 1/2 in. The breadths' own step is not done: nothing is said of them.
  CHECK(
      said(diag) ==
      "hold already-cut: Band is cut from wool, and 2 in too narrow, also 1/2 in too long. > add a strip at the side, or cut again\n");
  REQUIRE(c.cut.size() == 1);
  CHECK(c.cut[0].step == "cut-pieces@wool");
}

TEST_CASE("already cut: full breadths are as wide as the cloth, so only their length tells", "[changes][cut]") {
  CutSkirt skirt;
  skirt.done("cut-breadths");
  Diagnostics diag;
  skirt.compare({cut("pieces/breadth/wool/cut width", inches(58)), cut("pieces/breadth/wool/cut length", inches(46))},
                {cut("pieces/breadth/wool/cut width", inches(60)), cut("pieces/breadth/wool/cut length", inches(44))}, diag);
  CHECK(said(diag) ==
        "warning already-cut: Breadth is cut from wool, and 2 in too long. > mark the new cutting line and trim it\n");
}

TEST_CASE("already cut: more and fewer pieces, and one that is no longer wanted; what stops comes first", "[changes][cut]") {
  CutSkirt skirt;
  skirt.done("cut-breadths@wool");
  skirt.done("cut-pieces@wool");
  Diagnostics diag;
  const auto copies = [](const char* key, std::int64_t n) { return figure(key, n, Shown::exact, Action::recut); };
  skirt.compare(
      {copies("pieces/band/wool/copies", 2), copies("pieces/breadth/wool/copies", 3), copies("pieces/tab/wool/copies", 1)},
      {copies("pieces/band/wool/copies", 1), copies("pieces/breadth/wool/copies", 4)}, diag);
  CHECK(
      said(diag) ==
      "hold already-cut: The cutting of breadth from wool is done, and 1 more is wanted now. > cut 1 more\n"
      "warning already-cut: The cutting of band from wool is done, and 1 fewer is wanted now. > keep what is left over for small pieces\n"
      "warning already-cut: Tab is cut from wool, and no longer wanted of it. > keep it for small pieces\n");
}

TEST_CASE("already cut: nothing is said of pieces whose cutting is not done, nor of sizes that print alike", "[changes][cut]") {
  CutSkirt skirt;
  Diagnostics diag;
  skirt.compare({cut("pieces/band/wool/cut width", inches(27))}, {cut("pieces/band/wool/cut width", inches(29))}, diag);
  skirt.done("cut-pieces@wool");
  skirt.compare({cut("pieces/band/wool/cut width", inches(27, 63, 64))}, {cut("pieces/band/wool/cut width", inches(28))}, diag);
  CHECK(said(diag).empty());
}

TEST_CASE("steps again: a done step that says a moved mark, or cut what no longer serves; measuring is not done again",
          "[changes]") {
  CutSkirt skirt;
  PleatRun run;
  run.named.name = "sides";
  skirt.project.pleats.push_back(run);
  const auto step = [&](const char* id, const char* item, const char* shows, bool done) {
    PlannedStep s;
    s.id = id;
    s.item = item;
    s.done = done;
    if (*shows != '\0') s.shows = {{{"", shows}}};
    skirt.plans.work.push_back(s);
  };
  step("measure-wearer", "", "measures/waist", true);
  step("cut-breadths@wool", "wool", "", true);
  step("cut-pieces@wool", "wool", "", true);
  step("mark-pleats@sides", "sides", "", true);
  step("fold-pleats@sides", "sides", "pleats/sides/depth", false);
  skirt.done("cut-breadths@wool");
  skirt.done("cut-pieces");
  Diagnostics diag;
  Changes c = skirt.compare(
      {cut("pieces/band/wool/cut width", inches(27)), cut("pieces/breadth/wool/cut length", inches(46)),
       figure("measures/waist", inches(26)), figure("pleats/sides/mark 1/fold", inches(2), Shown::pleat_mark, Action::remark)},
      {cut("pieces/band/wool/cut width", inches(29)), cut("pieces/breadth/wool/cut length", inches(44)),
       figure("measures/waist", inches(28)), figure("pleats/sides/mark 1/fold", inches(3), Shown::pleat_mark, Action::remark)},
      diag);
  add_steps_again(skirt.plans, skirt.project, c);
  REQUIRE(c.again.size() == 2);  // the breadths are trimmed, not cut again
  CHECK(c.again[0].id == "cut-pieces@wool");
  CHECK(c.again[0].because == "band no longer serves");
  CHECK(c.again[1].id == "mark-pleats@sides");
  CHECK(c.again[1].because == "the marks of sides moved");
}

namespace {

// Figures of made-up keys, some of them private, some differing by less than a printed step.
std::vector<Figure> random_figures(draws::Draws& random) {
  std::vector<Figure> all;
  const auto n = random.of(0, 12);
  for (std::int64_t i = 0; i < n; ++i) {
    const auto k = random.of(0, 19);
    const std::string key = "pleats/run " + std::to_string(k % 4) + "/q" + std::to_string(k);
    if (std::any_of(all.begin(), all.end(), [&](const Figure& f) { return f.key == key; })) continue;
    Value value;
    const auto size = random.of(0, 3);
    switch (k % 3) {
      case 0: value = Length::sixty_fourths(200 + size); break;  // some differ by less than a printed step
      case 1: value = std::int64_t{size}; break;
      default: value = std::string(size < 2 ? "knife" : "box"); break;
    }
    Figure f = figure(key, value, k % 2 == 0 ? Shown::cut : Shown::mark,
                      k % 5 == 0  ? Action::none
                      : k % 5 < 3 ? Action::recut
                                  : Action::remark);
    f.is_private = k == 7;
    all.push_back(f);
  }
  return all;
}

}  // namespace

TEST_CASE("laws of the comparison, over random sets of figures", "[changes][laws]") {
  draws::Draws random(20260);
  for (int round = 0; round < kLawRounds; ++round) {
    const std::vector<Figure> a = random_figures(random), b = random_figures(random);
    const Changes there = what_changed(older_of(a), figures_of(b), {}, kIn);
    const Changes back = what_changed(older_of(b), figures_of(a), {}, kIn);
    // The same set against itself has no change.
    REQUIRE(what_changed(older_of(a), figures_of(a), {}, kIn).all.empty());
    // No change means that both sets print alike, key by key.
    std::map<std::string, std::string> print_a, print_b;
    for (const Figure& f : a) print_a[f.key] = plain_text(f, kIn);
    for (const Figure& f : b) print_b[f.key] = plain_text(f, kIn);
    REQUIRE(there.all.empty() == (print_a == print_b));
    // Each changed key is named once, and each key of either set that is not named prints alike in both.
    std::map<std::string, const Change*> named;
    for (const Change& c : there.all) REQUIRE(named.emplace(c.key, &c).second);
    for (const auto& [key, text] : print_a) REQUIRE((named.count(key) == 1) == (print_b.count(key) == 0 || print_b[key] != text));
    for (const auto& [key, text] : print_b) REQUIRE((named.count(key) == 1) == (print_a.count(key) == 0 || print_a[key] != text));
    // Old and new swapped: the mirror.
    REQUIRE(back.all.size() == there.all.size());
    for (const Change& c : back.all) {
      REQUIRE(named.count(c.key) == 1);
      const Change& mirror = *named[c.key];
      const Change::Kind wanted = c.kind == Change::Kind::is_new ? Change::Kind::gone
                                  : c.kind == Change::Kind::gone ? Change::Kind::is_new
                                                                 : c.kind;
      REQUIRE(mirror.kind == wanted);
      REQUIRE(mirror.action == c.action);
      REQUIRE(mirror.is_private == c.is_private);
      REQUIRE(mirror.was.has_value() == c.is.has_value());
      REQUIRE(mirror.is.has_value() == c.was.has_value());
      if (c.was) REQUIRE(plain_text(*mirror.is, kIn) == plain_text(*c.was, kIn));
      if (c.is) REQUIRE(plain_text(*mirror.was, kIn) == plain_text(*c.is, kIn));
    }
  }
}
