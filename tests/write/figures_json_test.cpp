#include <clocale>

#include <nlohmann/json.hpp>

#include "support/catch.h"
#include "support/half_em_font.h"
#include "write/write.h"

using namespace gownsheaf;
using Json = nlohmann::ordered_json;

namespace {

Figure figure(std::string key, Value value) {
  Figure f;
  f.key = std::move(key);
  f.value = std::move(value);
  return f;
}

Json written(const Figures& figures, const Plans& plans = {}, bool hide_private = false, ShownIn in = ShownIn::inches) {
  FigureFile about{"4f2a", "9b1c", "paper letter", "libharu 2.3.0", hide_private};
  const std::string text = figures_json(figures, plans, in, about);
  REQUIRE(!text.empty());
  CHECK(text.back() == '\n');
  CHECK(text == figures_json(figures, plans, in, about));
  return Json::parse(text);
}

Json value_of(Value value) {
  Figures figures;
  figures.add(figure("one", std::move(value)));
  return written(figures).at("figures").at(0).at("value");
}

std::vector<std::string> members(const Json& object) {
  std::vector<std::string> names;
  for (const auto& item : object.items()) names.push_back(item.key());
  return names;
}

}  // namespace

TEST_CASE("the file says what it is and what it was made from, in a fixed order", "[json]") {
  const Json file = written(Figures());
  CHECK(members(file) == std::vector<std::string>{"format", "fingerprint", "made with", "shown in", "ticks to the inch",
                                                  "figures", "may I cut", "lays", "pleats", "work"});
  CHECK(file["format"] == "gownsheaf figures 1");
  CHECK(file["fingerprint"] == Json{{"project", "4f2a"}, {"templates", "9b1c"}, {"options", "paper letter"}});
  CHECK(file["made with"] == "libharu 2.3.0");
  CHECK(file["shown in"] == "inches");
  CHECK(file["ticks to the inch"] == 73152);
  for (const char* list : {"figures", "may I cut", "lays", "pleats", "work"}) CHECK(file[list] == Json::array());
}

TEST_CASE("a figure carries its exact value, its print and how it came about", "[json]") {
  Figures figures;
  Figure f = figure("pleats/sides/flat", Length::inches(60));
  f.shown = Shown::pleat_mark;
  f.formula = "knife-pleats";
  f.inputs = {"pleats/sides/finished", "pleats/sides/count"};
  f.source = "pleat-sum";
  f.label = 'a';
  f.action = Action::remark;
  f.standing = true;
  f.origin = {"skirt.yaml", 12, 3, 4};
  f.working = Working{"cloth for the pleated edge", "F + n x 2d", "30 in + 20 x 2 x 3/4 in", "60 in"};
  figures.add(f);
  f.key = "pleats/sides/count";
  f.value = std::int64_t{20};
  f.guessed = true;
  f.guessed_from = "the waist";
  f.working.reset();
  f.origin = {};
  figures.add(f);
  const Json list = written(figures)["figures"];
  REQUIRE(list.size() == 2);
  CHECK(members(list[0]) == std::vector<std::string>{"key", "value", "printed", "formula", "inputs", "source", "label", "guessed",
                                                     "rests on a default", "action", "working", "line"});
  CHECK(list[0]["value"] == Json{{"type", "length"}, {"ticks", 60 * 73152}});
  CHECK(list[0]["printed"] == "60 in");
  CHECK(list[0]["inputs"] == Json{"pleats/sides/finished", "pleats/sides/count"});
  CHECK(list[0]["label"] == "a");
  CHECK(list[0]["guessed"] == false);
  CHECK(list[0]["rests on a default"] == true);
  CHECK(list[0]["action"] == "re-mark");
  CHECK(list[0]["working"]["numbers"] == "30 in + 20 x 2 x 3/4 in");
  CHECK(list[0]["line"] == 12);
  CHECK(list[1]["guessed"] == true);
  CHECK(list[1]["guessed from"] == "the waist");
  CHECK_FALSE(list[1].contains("working"));
  CHECK_FALSE(list[1].contains("line"));
}

TEST_CASE("every kind of value is exact", "[json]") {
  CHECK(value_of({}) == Json{{"type", "none"}});
  CHECK(value_of(Length::ticks(-7)) == Json{{"type", "length"}, {"ticks", -7}});
  // 500 m each way is 1,440,000,000 ticks squared, 2,073,600,000,000,000,000; ten of them are past 64 bits.
  CHECK(value_of(Area::of(Length::mm(500000), Length::mm(500000)) * 10)["square ticks"] == "20736000000000000000");
  CHECK(value_of(Area::square_ticks(-12))["square ticks"] == "-12");
  CHECK(value_of(Area())["square ticks"] == "0");
  CHECK(value_of(Mass{28.5}) == Json{{"type", "mass"}, {"value", 28.5}, {"unit", "g"}});
  CHECK(value_of(MassPerArea{0.1})["value"] == 0.1);
  CHECK(value_of(Force{1})["unit"] == "N");
  CHECK(value_of(Pressure{1})["unit"] == "Pa");
  CHECK(value_of(LoadPerLength{1})["unit"] == "N/m");
  CHECK(value_of(Angle{45})["unit"] == "deg");
  CHECK(value_of(Ratio{5, 2}) == Json{{"type", "ratio"}, {"numerator", 5}, {"denominator", 2}});
  CHECK(value_of(Percent{Ratio{3, 100}}) == Json{{"type", "part of one"}, {"numerator", 3}, {"denominator", 100}});
  CHECK(value_of(Money{1250, "yd"}) == Json{{"type", "money"}, {"hundredths", 1250}, {"per", "yd"}});
  CHECK(value_of(Day{0}) == Json{{"type", "day"}, {"date", "1970-01-01"}});
  CHECK(value_of(Span{90}) == Json{{"type", "time"}, {"milliseconds", 90}});
  CHECK(value_of(Rate{Ratio{10, 1}, "stitches", "in"})["per"] == "in");
  CHECK(value_of(std::int64_t{20}) == Json{{"type", "count"}, {"value", 20}});
  CHECK(value_of(std::string("knife")) == Json{{"type", "words"}, {"value", "knife"}});
  CHECK(value_of(true) == Json{{"type", "yes or no"}, {"value", true}});
}

TEST_CASE("private figures, and workings that print one, can be left out", "[json]") {
  Figures figures;
  Figure waist = figure("measures/waist", Length::inches(29));
  waist.is_private = true;
  figures.add(waist);
  Figure band = figure("pieces/waistband/wool/cut length", Length::inches(31));
  band.inputs = {"measures/waist"};
  band.guessed_from = "a waist of 29 in";
  band.working = Working{"waistband", "W + 2 in", "29 in + 2 in", "31 in"};
  figures.add(band);
  Figure twice = figure("twice", Length::inches(62));
  twice.inputs = {"pieces/waistband/wool/cut length", "a key of the project"};
  twice.working = Working{"twice", "2 B", "2 x 31 in", "62 in"};
  figures.add(twice);
  Figure other = figure("other", Length::inches(10));
  other.inputs = {"a key of the project"};
  other.working = Working{"other", "5 in x 2", "5 in x 2", "10 in"};
  figures.add(other);
  Plans plans;
  PlannedStep step;
  step.id = "mark-waist";
  step.act = {{"Mark ", ""}, {"", "measures/waist"}, {" along the edge", ""}};
  plans.work.push_back(step);

  const Json shown = written(figures, plans);
  CHECK(shown["figures"].size() == 4);
  CHECK(shown["figures"][0]["private"] == true);
  CHECK(shown["figures"][1].contains("working"));
  CHECK(shown["work"][0]["act"] == "Mark 29 in along the edge");

  const Json hidden = written(figures, plans, true);
  REQUIRE(hidden["figures"].size() == 3);
  CHECK(hidden["figures"][0]["key"] == "pieces/waistband/wool/cut length");
  CHECK_FALSE(hidden["figures"][0].contains("working"));
  CHECK_FALSE(hidden["figures"][0].contains("guessed from"));
  CHECK(hidden["figures"][0]["inputs"].empty());
  CHECK_FALSE(hidden["figures"][1].contains("working"));  // at one remove it may still be reckoned back
  CHECK(hidden["figures"][2].contains("working"));
  CHECK(hidden["work"][0]["act"] == "Mark (left out) along the edge");
  CHECK(hidden.dump().find("29 in") == std::string::npos);
}

TEST_CASE("a lay names where every piece lies", "[json]") {
  Plans plans;
  LayPlan lay;
  lay.cloth = "slate wool";
  lay.needed = Length::inches(54);
  lay.bound = Length::inches(50);
  lay.bought = Length::inches(72);
  lay.spare = Length::inches(18);
  CutPiece breadth;
  breadth.piece = "skirt breadth";
  breadth.copies = 3;
  breadth.across = Length::inches(20);
  breadth.along = Length::sixty_fourths(40 * 64 + 1);  // 40 1/64 in
  breadth.grain = "along";
  breadth.at.line = 9;
  lay.cut.push_back(breadth);
  lay.to_buy.name = "to buy";
  lay.to_buy.open = true;
  lay.to_buy.width = Length::inches(45);
  lay.to_buy.placed.push_back({"skirt breadth", 2, {Length::inches(40), Length(), Length::inches(40), Length::inches(20)}, true});
  lay.to_buy.left_over.push_back({Length(), Length::inches(40), Length::inches(10), Length::inches(5)});
  lay.to_buy.straight_cuts = {Length::inches(40)};
  plans.lays.push_back(lay);
  const Json json = written(Figures(), plans)["lays"][0];
  CHECK(json["cloth"] == "slate wool");
  CHECK(json["needed"] == Json{{"ticks", 54 * 73152}, {"printed", "1 1/2 yd"}});
  CHECK(json["bought"]["printed"] == "2 yd");
  CHECK(json["fits what was bought"] == true);
  const Json piece = json["cutting order"][0];
  CHECK(piece["copies"] == 3);
  CHECK(piece["cut width"]["printed"] == "20 in");
  CHECK(piece["cut length"]["ticks"] == 40 * 73152 + 1143);
  CHECK(piece["cut length"]["printed"] == "40 1/16 in");  // cut sizes round up
  CHECK(piece["line"] == 9);
  const Json laid = json["to buy"]["placed"][0];
  CHECK(members(laid) == std::vector<std::string>{"piece", "copy", "turned", "x", "y", "width", "height"});
  CHECK(laid["x"]["ticks"] == 40 * 73152);
  CHECK(laid["turned"] == true);
  CHECK(json["to buy"]["left over"][0]["y"]["printed"] == "40 in");
  CHECK(json["to buy"]["straight cuts"][0]["printed"] == "40 in");
  CHECK(written(Figures(), plans, false, ShownIn::centimetres)["lays"][0]["cutting order"][0]["cut width"]["printed"] ==
        "50.8 cm");  // 20 x 2.54
  LayPlan bare;
  bare.cloth = "lining";
  plans.lays = {bare};
  CHECK_FALSE(written(Figures(), plans)["lays"][0].contains("bought"));
}

TEST_CASE("pleats, work and verdicts are plain text and exact places", "[json]") {
  Figures figures;
  figures.add(figure("pleats/sides/depth", Length::sixty_fourths(48)));
  Plans plans;
  PleatPlan run;
  run.run = "sides";
  run.kind = "knife";
  run.count = 2;
  run.marks = {{1, Length::inches(1), Length::sixty_fourths(160), Length::inches(1)}, {2, Length::inches(4), Length(), Length()}};
  run.seams_at = {Length::inches(20)};
  plans.pleats.push_back(run);
  PlannedStep step;
  step.id = "fold@sides";
  step.number = 7;
  step.done = true;
  step.act = {{"Fold ", ""}, {"", "pleats/sides/depth"}, {" deep.", ""}};
  step.reason = {{"The hem is set.", ""}};
  step.shows = {{{"depth ", ""}, {"", "pleats/sides/depth"}}};
  step.holds = {"until the cloth is washed"};
  step.hard_after = {"hem"};
  step.cannot_undo = "cuts good cloth";
  plans.work.push_back(step);
  plans.may_cut = {
      {"slate wool", {"skirt"}, MayCut::yes, "", "", "", ""},
      {"lining", {"bodice"}, MayCut::yes_after, "the skirt", "", "", ""},
      {"silk", {}, MayCut::no, "", "Silk is 1/2 yd short.", "cloths/silk/spare", "Decided: narrow hem because short"}};
  const Json json = written(figures, plans);
  CHECK(json["pleats"][0]["marks"][0]["lay on"] == Json{{"ticks", 160 * 1143}, {"printed", "2 1/2 in"}});
  CHECK(json["pleats"][0]["marks"][1]["pleat"] == 2);
  CHECK(json["pleats"][0]["seams at"][0]["printed"] == "20 in");
  const Json work = json["work"][0];
  CHECK(work["act"] == "Fold 3/4 in deep.");
  CHECK(work["reason"] == "The hem is set.");
  CHECK(work["shows"] == Json::array({"depth 3/4 in"}));
  CHECK(work["holds"] == Json::array({"until the cloth is washed"}));
  CHECK(work["after"] == Json::array({"hem"}));
  CHECK(work["done"] == true);
  CHECK(work["cannot be undone"] == "cuts good cloth");
  CHECK_FALSE(work.contains("gate"));
  CHECK(json["may I cut"][0]["answer"] == "yes");
  CHECK(json["may I cut"][1] ==
        Json{{"cloth", "lining"}, {"parts", Json::array({"bodice"})}, {"answer", "yes, after"}, {"after", "the skirt"}});
  CHECK(json["may I cut"][2]["answer"] == "no");
  CHECK(json["may I cut"][2]["reason figure"] == "cloths/silk/spare");
  CHECK(json["may I cut"][2]["decided"] == "Decided: narrow hem because short");
  plans.work[0].act = {{"", "pleats/fronts/depth"}};
  CHECK_THROWS_AS(figures_json(figures, plans, ShownIn::inches, {}), std::out_of_range);
}

TEST_CASE("a locale with commas changes nothing", "[json]") {
  Figures figures;
  figures.add(figure("weight", Mass{1234.5}));
  const std::string before = figures_json(figures, {}, ShownIn::centimetres, {});
  CHECK(before.find("\"value\": 1234.5,") != std::string::npos);
  const std::string kept = std::setlocale(LC_ALL, nullptr);
  if (std::setlocale(LC_ALL, "de_DE.UTF-8") == nullptr) WARN("de_DE.UTF-8 is not installed: only the C locale is tried");
  CHECK(figures_json(figures, {}, ShownIn::centimetres, {}) == before);
  std::setlocale(LC_ALL, kept.c_str());
}

TEST_CASE("broken bytes in words cannot break the file", "[json]") {
  Figures figures;
  figures.add(figure("word", std::string("caf\xE9")));
  CHECK(written(figures)["figures"][0]["value"]["value"] == "caf\xEF\xBF\xBD");
}

TEST_CASE("made with names the PDF library and every face", "[json]") {
  const std::string text = made_with(testing::HalfEmFont());
  CHECK(text.rfind("libharu 2.", 0) == 0);
  FontFault fault;
  const auto fonts = open_fonts("/usr/share/fonts", fault);
  REQUIRE(fonts != nullptr);
  const std::string real = made_with(*fonts);
  CHECK(real.find("; Roboto-Bold.ttf sha256 " + fonts->hash(Face::bold)) != std::string::npos);
  CHECK(real.find("; DejaVuSans.ttf sha256 " + fonts->hash(Face::fallback)) != std::string::npos);
  CHECK(real.find('/') == std::string::npos);  // no path: it differs between machines
}
