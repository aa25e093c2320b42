// Size and fit as its reader finds it: words, numbers that are the figures', lines true to scale, and nothing of the body
// where body measures are left out.
#include <algorithm>

#include "support/catch.h"
#include "support/plain_blocks.h"
#include "support/random_draws.h"
#include "support/small_project.h"

#include "packet/size_drawing.h"
#include "project/sizes.h"

using namespace gownsheaf;
using namespace gownsheaf::testing;

namespace {

Given<Length> given(Length l) { return Given<Length>::written(l, {}); }
Length quarters(std::int64_t n) { return Length::sixty_fourths(16 * n); }

// Bust 36 1/2 in and waist 29 in, ease 1 in and 1/2 in less, two rows: made between them. Figures by hand.
SmallProject bodice_by_hand() {
  SmallProject p;
  p.project.title = "Quay bodice";
  p.project.show_lengths_in = Given<ShownIn>::written(ShownIn::inches, {});
  p.project.garment = Given<Garment>::written(Garment::bodice, {});
  SizeTable table;
  table.name = "our chart";
  table.chosen_by = Given<std::string>::written("bust", {});
  table.sizes = {{"8", {{"bust", given(quarters(145))}, {"waist", given(quarters(112))}}, {}},
                 {"10", {{"bust", given(quarters(149))}, {"waist", given(quarters(116))}}, {}}};
  p.project.size_table = table;
  SizeChoice choice = place_in_table({quarters(145), quarters(149)}, quarters(146));
  choice.by = SizeChoice::By::between;
  choice.made = "8";
  choice.between_to = "10";
  choice.between = choice.fraction;
  choice.row = 0;
  choice.chosen_by = "bust";
  p.project.size_choice = choice;
  p.project.ease = {{"bust", given(quarters(4))}, {"waist", given(quarters(-2))}};
  p.project.sized_pieces = {{"bodice front", "finished width", quarters(40), quarters(44), quarters(41), {}, {}}};
  const auto secret = [&](const std::string& key, Value value) {
    Figure f;
    f.key = key;
    f.value = value;
    f.shown = Shown::mark;
    f.is_private = true;
    p.figures.add(f);
  };
  secret("measures/bust", quarters(146));
  secret("measures/waist", quarters(116));
  secret("girths/bust/ease", quarters(4));
  secret("girths/waist/ease", quarters(-2));
  secret("girths/bust/finished", quarters(150));
  secret("girths/waist/finished", quarters(114));
  secret("size/held against", quarters(146));
  secret("size/fraction", Ratio::of(1, 4));
  for (const SizeRow& row : table.sizes)
    for (const auto& [name, girth] : row.girths) p.length("size/rows/" + row.label + "/" + name, *girth, Shown::mark);
  secret("girths/bust/size", quarters(146));
  secret("girths/waist/size", quarters(113));
  secret("girths/bust/difference", Length{});
  secret("girths/waist/difference", quarters(-3));
  secret("size/pieces/bodice front/finished width", quarters(41));
  secret("size/pieces/bodice front/finished width/8", quarters(40));
  secret("size/pieces/bodice front/finished width/10", quarters(44));
  p.word("size/made", "8 to 10");
  p.sheet("size and fit", "Size and fit");
  return p;
}

std::string page_of(const SmallProject& p) {
  const std::vector<Sheet> sheets = p.compose();
  REQUIRE(sheets.size() == 1);
  return plain_of(sheets.front());
}

Drawing drawing_of(const SmallProject& p, std::vector<GirthLine>& lines) {
  const Typesetter typesetter(p.font, p.scale);
  lines = girth_lines({p.project, p.figures, p.plans, p.set, p.facts, p.messages, typesetter, p.shape});
  return draw_girths(lines, FigureText(p.figures, *p.project.show_lengths_in), typesetter);
}

}  // namespace

TEST_CASE("size and fit says which size and why, and each girth as body, ease, finished and size", "[sizes]") {
  SmallProject p = bodice_by_hand();
  p.scale = binder_scale();
  const std::string page = page_of(p);
  CAPTURE(page);
  CHECK(
      says(page, "It is made between sizes 8 and 10: bust 36 1/2 in lies 0.25 of the way from 8 (36 1/4 in) to 10 (37 1/4 in)."));
  CHECK(says(page, "Bust | 36 1/2 | 1 | 37 1/2 | 36 1/2 | 0"));
  CHECK(says(page, "Waist | 29 | -1/2 | 28 1/2 | 28 1/4 | -3/4"));
  CHECK(says(page, "Bodice front | finished width | 10 | 11 | 10 1/4"));
}

TEST_CASE("size and fit names how the size was chosen", "[sizes]") {
  SmallProject p = bodice_by_hand();
  SizeChoice& choice = *p.project.size_choice;
  choice.between_to.clear();
  choice.by = SizeChoice::By::nearest;
  CHECK(says(page_of(p), "Size 8 is made, the nearest: bust 36 1/2 in lies"));
  choice.by = SizeChoice::By::larger;
  choice.made = "10";
  choice.row = 1;
  CHECK(says(page_of(p), "Size 10 is made, the next larger: bust 36 1/2 in lies"));
  choice.by = SizeChoice::By::label;
  CHECK(says(page_of(p), "Size 10 is made, as it is written. Bust 36 1/2 in lies"));
  choice.lies = SizeChoice::Lies::over_the_table;
  choice.below = choice.above = 1;
  CHECK(says(page_of(p), "Bust 36 1/2 in is more than the largest, 10 (37 1/4 in)."));
}

TEST_CASE("where body measures are left out there is no size and fit; the first page names the size and nothing else",
          "[sizes]") {
  SmallProject p = bodice_by_hand();
  CHECK(p.compose().size() == 1);
  p.set.private_shown = false;
  CHECK(p.compose().empty());
  p.sheet("at a glance", "At a glance");
  REQUIRE(p.compose().size() == 1);
  CHECK(says(plain(p.compose().front().answer), "It is made between sizes 8 and 10."));
  p.project.size_choice.reset();
  CHECK_FALSE(says(plain(p.compose().front().answer), "made"));
}

TEST_CASE("the words in the drawing are the figures', at the places that the figures give", "[sizes]") {
  for (const ShownIn shown : {ShownIn::inches, ShownIn::centimetres}) {
    SmallProject p = bodice_by_hand();
    p.project.show_lengths_in = Given<ShownIn>::written(shown, {});
    std::vector<GirthLine> lines;
    const Drawing d = drawing_of(p, lines);
    REQUIRE(lines.size() == 2);
    const GirthScale scale = girth_scale(lines, shown);
    std::vector<std::string> labels;
    std::vector<Length> uprights;
    for (const DrawingItem& item : d.items) {
      if (const auto* label = std::get_if<Label>(&item)) labels.push_back(plain(label->text));
      const auto* stroke = std::get_if<StrokeMark>(&item);
      if (stroke != nullptr && stroke->path.size() == 2 && stroke->path[0].to.x == stroke->path[1].to.x)
        uprights.push_back(stroke->path[0].to.x);
    }
    const auto has_label = [&](const std::string& words) {
      return std::find(labels.begin(), labels.end(), words) != labels.end();
    };
    const auto has_upright = [&](Length girth) {
      return std::find(uprights.begin(), uprights.end(), scale.x_of(girth)) != uprights.end();
    };
    for (const std::string name : {"bust", "waist"}) {
      CAPTURE(name);
      CHECK(has_label("body " + plain_text(p.figures.at("measures/" + name), shown)));
      CHECK(has_label("finished " + plain_text(p.figures.at("girths/" + name + "/finished"), shown)));
      CHECK(has_label("ease " + plain_text(p.figures.at("girths/" + name + "/ease"), shown)));
      CHECK(has_upright(*p.figures.length("measures/" + name)));
      for (const std::string label : {"8", "10"}) {
        CHECK(has_label(label));
        CHECK(has_upright(*p.figures.length("size/rows/" + label + "/" + name)));
      }
    }
  }
}

TEST_CASE("law: lines of random girths are true to scale, and nothing leaves the drawing", "[sizes]") {
  draws::Draws draw(1868);
  for (int round = 0; round < kLawRounds; ++round) {
    CAPTURE(round);
    const ShownIn shown = draw.of(0, 1) == 0 ? ShownIn::inches : ShownIn::centimetres;
    std::vector<GirthLine> lines;
    Figures figures;
    for (const char* name : {"bust", "waist", "hip"}) {
      GirthLine line;
      line.name = name;
      line.body = quarters(draw.of(20, 320));  // 5 to 80 in
      Length row = quarters(draw.of(20, 300));
      for (std::int64_t i = draw.of(0, 5); i > 0; --i, row += quarters(draw.of(1, 8)))
        line.sizes.emplace_back(whole_number(i), row);
      if (draw.of(0, 2) > 0) line.finished = *line.body + quarters(draw.of(-8, 40));
      const auto put = [&](const std::string& key, Length l) {
        Figure f;
        f.key = key;
        f.value = l;
        f.shown = Shown::mark;
        figures.add(f);
      };
      put("measures/" + line.name, *line.body);
      if (line.finished) {
        put("girths/" + line.name + "/finished", *line.finished);
        put("girths/" + line.name + "/ease", *line.finished - *line.body);
      }
      lines.push_back(line);
    }
    const HalfEmFont font;
    const Typesetter typesetter(font, binder_scale());
    const GirthScale scale = girth_scale(lines, shown);
    const Drawing d = draw_girths(lines, FigureText(figures, shown), typesetter);
    for (const GirthLine& line : lines) {
      REQUIRE(scale.x_of(*line.body) - scale.x_of(scale.cut_off) == scale.scale.of(*line.body - scale.cut_off));
      REQUIRE(scale.x_of(*line.body) >= scale.x_of(scale.cut_off));
    }
    for (const DrawingItem& item : d.items) {
      if (const auto* label = std::get_if<Label>(&item)) {
        Length left = label->at.x;
        const Length wide = typesetter.width(label->text, label->size);
        if (label->across == Label::Across::middle) left -= wide.times(1, 2);
        if (label->across == Label::Across::right) left -= wide;
        REQUIRE(left >= Length::ticks(-1));
        REQUIRE(left + wide <= d.width + Length::ticks(1));
        REQUIRE(label->at.y <= d.height);
      } else if (const auto* stroke = std::get_if<StrokeMark>(&item)) {
        for (const PathStep& s : stroke->path)
          if (s.kind != PathStep::Kind::close)
            REQUIRE((s.to.x >= Length{} && s.to.x <= d.width && s.to.y >= Length{} && s.to.y <= d.height));
      }
    }
  }
}
