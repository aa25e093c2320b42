// An older figures.json read back: what was written comes back, and whatever else stands there is refused in words.
#include <variant>

#include "support/catch.h"
#include "support/random_draws.h"
#include "write/write.h"

using namespace gownsheaf;

namespace {

Figure figure_of(const std::string& key, Value value) {
  Figure f;
  f.key = key;
  f.value = std::move(value);
  return f;
}

std::string fault(const std::string& bytes) {
  const auto read = read_figures_json(bytes, "old.json");
  if (const auto* f = std::get_if<WriteFault>(&read)) return f->sentence;
  return "";
}

std::string file_with(const std::string& figures) {
  return "{\"format\": \"gownsheaf figures 1\", \"figures\": [" + figures + "]}";
}

std::string one(const std::string& value) {
  return file_with(R"({"key": "pleats/sides/count", "formula": "", "action": "re-mark", "value": )" + value + "}");
}

const std::string kTakes = " `--since` takes an older project file, or the figures.json that was made beside its packet.";

}  // namespace

TEST_CASE("figures.json: every kind of value comes back as it was written", "[figures-read]") {
  Figures all;
  all.add(figure_of("a/none", std::monostate{}));
  all.add(figure_of("a/length", Length::inches(13) + Length::sixty_fourths(1)));
  all.add(figure_of("a/area", Area::of(Length::inches(2000), Length::inches(3000))));
  all.add(figure_of("a/mass", Mass{1247.5}));
  all.add(figure_of("a/weight", MassPerArea{271.0625}));
  all.add(figure_of("a/force", Force{17.8}));
  all.add(figure_of("a/pressure", Pressure{2400.1}));
  all.add(figure_of("a/load", LoadPerLength{210.7}));
  all.add(figure_of("a/angle", Angle{22.5}));
  all.add(figure_of("a/ratio", Ratio::of(7, 3)));
  all.add(figure_of("a/percent", Percent{Ratio::of(3, 100)}));
  all.add(figure_of("a/money", Money{1250, "yd"}));
  all.add(figure_of("a/day", make_day(2027, 2, 28)));
  all.add(figure_of("a/span", Span{-2500}));
  all.add(figure_of("a/rate", Rate{Ratio::of(10, 1), "stitches", "in"}));
  all.add(figure_of("a/count", std::int64_t{-4}));
  all.add(figure_of("a/words", std::string("knife \"and\" box, Größe")));
  all.add(figure_of("a/yes", true));
  const std::string json = figures_json(all, Plans{}, ShownIn::inches, FigureFile{});
  const auto read = read_figures_json(json, "old.json");
  INFO(fault(json));
  REQUIRE(std::holds_alternative<OlderFigures>(read));
  const Figures& back = std::get<OlderFigures>(read).figures;
  REQUIRE(back.all().size() == all.all().size());
  for (const Figure& f : all.all()) {
    CAPTURE(f.key);
    REQUIRE(back.find(f.key) != nullptr);
    CHECK(plain_text(*back.find(f.key), ShownIn::inches) == plain_text(f, ShownIn::inches));
    CHECK(plain_text(*back.find(f.key), ShownIn::centimetres) == plain_text(f, ShownIn::centimetres));
  }
  CHECK(std::get<Length>(back.find("a/length")->value) == std::get<Length>(all.find("a/length")->value));
  CHECK_FALSE(std::get<OlderFigures>(read).private_known);
}

TEST_CASE("figures.json: rounding, action and privacy come from the table of kinds", "[figures-read]") {
  const auto read = read_figures_json(
      file_with(
          R"({"key": "pieces/skirt breadth/wool/cut width", "formula": "", "action": "none", "value": {"type": "length", "ticks": 73152}},)"
          R"({"key": "measures/waist", "formula": "", "action": "none", "value": {"type": "length", "ticks": 73152}})"),
      "old.json");
  REQUIRE(std::holds_alternative<OlderFigures>(read));
  const OlderFigures& older = std::get<OlderFigures>(read);
  CHECK(older.figures.at("pieces/skirt breadth/wool/cut width").shown == Shown::cut);
  CHECK(older.figures.at("pieces/skirt breadth/wool/cut width").action == Action::recut);
  CHECK(older.figures.at("measures/waist").is_private);
  CHECK(older.private_known);
}

TEST_CASE("figures.json: what is not ours is refused, each in its own sentence", "[figures-read]") {
  CHECK(fault("") == "old.json is no JSON that can be read." + kTakes);
  CHECK(fault("{\"format\": ") == "old.json is no JSON that can be read." + kTakes);
  CHECK(fault("[1, 2]") == "old.json is JSON, but holds no figures of a packet." + kTakes);
  CHECK(fault("{\"format\": 1}") == "old.json is JSON, but holds no figures of a packet." + kTakes);
  CHECK(fault("{\"format\": \"songs 1\"}") == "old.json is JSON, but holds no figures of a packet." + kTakes);
  CHECK(
      fault("{\"format\": \"gownsheaf figures 2\"}") ==
      "old.json is of another format (`gownsheaf figures 2`); this program reads `gownsheaf figures 1`. Give `--since` the older "
      "project file instead.");
  CHECK(fault("{\"format\": \"gownsheaf figures 1\"}") == "old.json has no list of figures." + kTakes);
  CHECK(fault(file_with("7")) ==
        "Figure 1 of old.json cannot be read: its key or its value is not as a packet writes it." + kTakes);
  const std::string good = R"({"key": "a/b", "formula": "", "action": "none", "value": {"type": "count", "value": 1}})";
  CHECK(fault(file_with(good)).empty());
  CHECK(fault(file_with(good + "," + good)) == "Figure 2 of old.json has the key of an earlier one, `a/b`." + kTakes);
}

TEST_CASE("figures.json: values past any garment, or of no kind, are refused", "[figures-read]") {
  const std::string bad = "Figure 1 of old.json cannot be read: its key or its value is not as a packet writes it." + kTakes;
  CHECK(fault(one(R"({"type": "count", "value": 9})")).empty());
  CHECK(fault(one(R"({"type": "length", "ticks": 1000000000001})")) == bad);
  CHECK(fault(one(R"({"type": "length", "ticks": 18446744073709551615})")) == bad);
  CHECK(fault(one(R"({"type": "length", "ticks": 1.5})")) == bad);
  CHECK(fault(one(R"({"type": "length"})")) == bad);
  CHECK(fault(one(R"({"type": "mass", "value": 1e300, "unit": "g"})")) == bad);
  CHECK(fault(one(R"({"type": "ratio", "numerator": 1, "denominator": 0})")) == bad);
  CHECK(fault(one(R"({"type": "area", "square ticks": "12x"})")) == bad);
  CHECK(fault(one(R"({"type": "area", "square ticks": "-"})")) == bad);
  CHECK(fault(one(R"({"type": "day", "date": "2027-02-30"})")) == bad);
  CHECK(fault(one(R"({"type": "words", "value": "a\u0007b"})")) == bad);
  CHECK(fault(one(R"({"type": "spell", "value": 1})")) == bad);
  CHECK(fault(one("[]")) == bad);
  CHECK(fault(std::string(200'000, '[')) == "old.json is no JSON that can be read." + kTakes);  // and no stack runs out
  std::string deep = "1";
  for (int i = 0; i < 100; ++i) deep = "{\"a\": " + deep + "}";
  CHECK(fault(deep) == "old.json is no JSON that can be read." + kTakes);
}

TEST_CASE("figures.json: a file damaged anywhere is read or refused, never a crash", "[figures-read][laws]") {
  Figures all;
  all.add(figure_of("pieces/band/wool/cut width", Length::inches(28)));
  all.add(figure_of("pleats/sides/count", std::int64_t{9}));
  all.add(figure_of("garment/worn on", make_day(2027, 6, 19)));
  const std::string good = figures_json(all, Plans{}, ShownIn::inches, FigureFile{});
  draws::Draws random(7);
  int refused = 0;
  for (int round = 0; round < kLawRounds; ++round) {
    std::string bad = good;
    for (std::int64_t n = random.of(1, 3); n > 0; --n) {
      const auto at = static_cast<std::size_t>(random.of(0, static_cast<std::int64_t>(bad.size()) - 1));
      if (random.of(0, 1) == 0) bad[at] = static_cast<char>(random.of(1, 255));
      else bad.erase(at, static_cast<std::size_t>(random.of(1, 9)));
    }
    const auto read = read_figures_json(bad, "old.json");
    if (std::holds_alternative<WriteFault>(read)) {
      REQUIRE_FALSE(std::get<WriteFault>(read).sentence.empty());
      ++refused;
      continue;
    }
    for (const Figure& f : std::get<OlderFigures>(read).figures.all()) {  // whatever came through can be printed
      plain_text(f, ShownIn::inches);
      plain_text(f, ShownIn::centimetres);
    }
  }
  CHECK(refused > 100);
}
