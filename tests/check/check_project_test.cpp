// What the checker makes of files without a fault: values, guesses, defaults and where each comes from.
#include <algorithm>

#include "support/faulty.h"

using namespace gownsheaf;
using namespace gownsheaf::support;

namespace {

struct Checked {
  Project project;
  std::vector<Diagnostic> messages;
};

Checked checked(const std::string& text, const Templates& templates = the_library()) {
  Diagnostics diag;
  const Entry source = read_yaml(text, "skirt.yaml", diag);
  Checked made{check_project(source, templates, diag), {}};
  made.messages = diag.sorted();
  return made;
}

Checked example(const std::string& name) {
  return checked(faulty_file(std::string(GOWNSHEAF_SOURCE_DIR) + "/tests/check/clean/" + name).body);
}

bool only_notes(const Checked& c) {
  for (const Diagnostic& d : c.messages)
    if (d.severity != Severity::note) UNSCOPED_INFO(as_foot({d}));
  return std::all_of(c.messages.begin(), c.messages.end(), [](const Diagnostic& d) { return d.severity == Severity::note; });
}

}  // namespace

TEST_CASE("a skirt of twelve lines checks clean, and what it leaves out is guessed from what it says") {
  const Checked c = example("linen_skirt.yaml");
  const Project& p = c.project;
  CHECK(as_foot(c.messages) == "");
  CHECK(p.failed_sections.empty());
  CHECK(p.title == "Pleated linen skirt for the harvest fair");
  CHECK(iso_day(*p.worn_on) == "2027-08-21");
  CHECK_FALSE(p.today.known());

  CHECK(*p.show_lengths_in == ShownIn::centimetres);  // every length is in centimetres or metres
  CHECK(p.show_lengths_in.origin == Origin::guessed);
  CHECK(*p.garment == Garment::skirt);  // a skirt piece and a band
  CHECK(p.garment.origin == Origin::guessed);
  CHECK_FALSE(*p.joined_at_waist);
  CHECK(*p.lining_sewn_in == "none");
  CHECK(*p.print.paper == Paper::a4);
  CHECK(p.print.paper.origin == Origin::written);
  CHECK(*p.print.holes == Holes::two);
  CHECK(*p.print.sheets == "binder");
  CHECK(*p.print.read_from == Length::cm(40));
  CHECK(*p.work.hours_a_week == Ratio::of(5, 1));

  REQUIRE(p.cloths.size() == 1);
  const Cloth& linen = p.cloths[0];
  CHECK(linen.named.name == "blue linen");
  CHECK(*linen.used_as == UsedAs::outer);
  CHECK(linen.used_as.origin == Origin::guessed);
  CHECK(*linen.width == Length::cm(140));
  CHECK(*linen.selvage == Length::cm(1));
  CHECK(linen.usable_width() == Length::cm(138));
  CHECK(linen.shrinks_along->of_one == Ratio::of(1, 20));
  CHECK(linen.shrinks_across->of_one == Ratio::of(0, 1));
  CHECK_FALSE(*linen.shrunk_already);
  REQUIRE(linen.bought.value->size() == 1);
  CHECK(linen.bought.value->front().length == Length::cm(250));
  CHECK(*linen.sold_by == Length::cm(10));  // shops cut in 10 cm where lengths are in centimetres
  CHECK(*linen.straighten == Length::inches(2));
  CHECK(linen.straighten.label == 'c');
  CHECK(*linen.lay == LayRule::either_way);

  REQUIRE(p.pieces.size() == 2);
  const Piece& breadth = p.pieces[0];
  CHECK(breadth.from == std::vector<std::string>{"blue linen"});
  CHECK(breadth.make->kind == Make::Kind::number);
  CHECK(breadth.make->number == 2);
  CHECK(breadth.width.kind == Size::Kind::full_width);
  CHECK(breadth.length.kind == Size::Kind::finished);
  CHECK(breadth.length.value == Length::cm(98));
  CHECK(*breadth.hem == Length::cm(6));
  CHECK(*breadth.top == Length::mm(15));
  CHECK(*breadth.seam_allowance == Length::mm(15));
  CHECK(*breadth.may_be_pieced);
  const Piece& band = p.pieces[1];
  CHECK(*band.hem == Length{});        // not a skirt piece: no hem of 3 in
  CHECK(*band.top == Length::mm(15));  // as its seam allowance
  CHECK_FALSE(*band.may_be_pieced);

  REQUIRE(p.pleats.size() == 1);
  const PleatRun& run = p.pleats[0];
  CHECK(run.kind == PleatKind::knife);
  CHECK(*run.finished == Length::cm(76));
  CHECK(*run.count == 22);
  CHECK(*run.toward == Toward::centre_back);
  CHECK_FALSE(run.flat.known());
  CHECK(*run.marks_to == Length::mm(1));
  CHECK(*p.measures.waist_to_floor.at.front().second == Length::cm(103));
  CHECK(*p.measures.girths_and_lengths.at("hip depth").both == Length::inches(7));
  CHECK(p.measures.girths_and_lengths.at("hip depth").both.label == 'a');
}

TEST_CASE("a dress with every section checks clean but for notes of what is not worked out yet") {
  const Checked c = example("wool_dress.yaml");
  const Project& p = c.project;
  CHECK(only_notes(c));
  CHECK(p.failed_sections.empty());
  CHECK(std::count_if(c.messages.begin(), c.messages.end(), [](const Diagnostic& d) {
          return d.sentence == "`cord` of a piping is read but not worked out yet.";
        }) == 1);

  CHECK(*p.garment == Garment::dress);
  CHECK(p.garment.origin == Origin::written);
  CHECK(*p.joined_at_waist);
  CHECK(*p.lining_sewn_in == "flat");  // drab sateen is used as lining, second in the bodice's `from`
  CHECK(p.lining_sewn_in.label == 'a');
  CHECK(*p.show_lengths_in == ShownIn::inches);
  CHECK(*p.print.paper == Paper::letter);
  CHECK(*p.print.read_from == Length::cm(60));
  CHECK(*p.ease.at("waist") == -Length::sixty_fourths(32));  // 1/2 in less
  CHECK(p.measures.waist_to_floor.at.size() == 3);
  CHECK(*p.cloth("slate wool")->used_as == UsedAs::outer);
  CHECK(*p.cloth("drab sateen")->used_as == UsedAs::lining);
  CHECK(p.cloth("slate wool")->bought.value->front().length == Length::inches(207));  // 5 3/4 yd
  CHECK(*p.cloth("slate wool")->sold_by == Length::from_rational(9, 2, LengthUnit::inch));
  REQUIRE(p.pieces.size() == 10);  // eight written, the guard and the backing of the closing
  CHECK(p.piece("bodice front")->make->kind == Make::Kind::pairs);
  CHECK(p.piece("bodice front")->from == std::vector<std::string>{"slate wool", "drab sateen"});
  CHECK(*p.piece("bodice back")->on_fold);
  CHECK(*p.piece("skirt breadth")->hem == Length::inches(3));  // from `allowances`
  CHECK(*p.piece("skirt breadth")->top == Length::from_rational(3, 2, LengthUnit::inch));
  CHECK(*p.piece("placket facing")->seam_allowance == Length::sixty_fourths(40));
  const Piece& interlining = *p.piece("skirt interlining");
  CHECK(interlining.make->kind == Make::Kind::fills);
  CHECK(interlining.make->fills == "whole skirt");
  CHECK(interlining.width.kind == Size::Kind::full_width);
  REQUIRE(p.pleats.size() == 3);
  CHECK(p.pleats[1].half);
  CHECK(p.pleats[2].flat_is_the_rest);
  REQUIRE(p.rounds.size() == 1);
  CHECK(p.rounds[0].runs == std::vector<std::string>{"front", "sides", "back"});
  CHECK_FALSE(p.rounds[0].centre_front_is_seam);
  CHECK(*p.skirt->levelled_at == "waist");
  CHECK(p.skirt->hem->braid == "hem braid");
  CHECK(*p.notions[0].bought_number == 24);
  CHECK(p.seams.size() == 5);
  CHECK(p.seams[3].kind == "dart");
  CHECK(p.edges[0].kind == "front closing");
  CHECK(p.accept.size() == 1);
  REQUIRE(p.work.done.size() == 1);
  CHECK(p.work.done[0].step == "measure-wearer");
}

TEST_CASE("a waistcoat in centimetres checks clean too") {
  const Checked c = example("waistcoat.yaml");
  CHECK(only_notes(c));
  CHECK(*c.project.cloth("brown check")->lay == LayRule::one_way);
  CHECK(c.project.cloth("canvas")->remnants.size() == 1);
  CHECK(*c.project.work.hours_a_week == Ratio::of(6, 1));  // 2 on Wednesday and 4 on Saturday
}

TEST_CASE("a file that says nothing but its name has no section, and no templates are needed to check one") {
  const Checked c = checked("gownsheaf: 1\ntitle: Bare\n", Templates{});
  CHECK(c.messages.empty());
  CHECK(c.project.cloths.empty());
  CHECK(*c.project.garment == Garment::other);
  const Checked cloth = checked("gownsheaf: 1\ntitle: Bare\ncloths: { a: { kind: any } }\n", Templates{});
  CHECK(cloth.messages.empty());
  CHECK(*cloth.project.cloths[0].width == Length::inches(54));
  CHECK(cloth.project.cloths[0].width.label == 'c');
}

TEST_CASE("written beats guessed beats default") {
  const std::string head = "gownsheaf: 1\ntitle: T\ncloths: { c: { kind: wool suiting, width: 58 in } }\n";
  const std::string piece = "pieces: [{ piece: skirt breadth, from: c, cut width: full, finished length: 40 in";
  SECTION("a skirt piece gets 3 in of hem, its seam is 1/2 in and its top is the seam") {
    const Piece p = checked(head + piece + " }]\n").project.pieces.at(0);
    CHECK(*p.hem == Length::inches(3));
    CHECK(p.hem.label == 'a');
    CHECK(*p.seam_allowance == Length::sixty_fourths(32));
    CHECK(*p.top == Length::sixty_fourths(32));
    CHECK(*p.part_of == PartOf::skirt);
    CHECK(p.part_of.origin == Origin::guessed);
  }
  SECTION("the depth of the skirt's hem is better than the default") {
    const Piece p =
        checked(head + piece + " }]\nskirt: { kind: straight breadths, hem: { depth: 4 in } }\n").project.pieces.at(0);
    CHECK(*p.hem == Length::inches(4));
    CHECK(p.hem.origin == Origin::guessed);
  }
  SECTION("the garment's allowances are better than that") {
    const Piece p = checked(head + "allowances: { hem: 5 in, seam: 1 in }\n" + piece +
                            " }]\nskirt: { kind: straight breadths, hem: { depth: 4 in } }\n")
                        .project.pieces.at(0);
    CHECK(*p.hem == Length::inches(5));
    CHECK(*p.top == Length::inches(1));
  }
  SECTION("the piece's own is best, and none is nothing") {
    CHECK(*checked(head + "allowances: { hem: 5 in }\n" + piece + ", hem: 6 in }]\n").project.pieces.at(0).hem ==
          Length::inches(6));
    const Piece p = checked(head + piece + ", hem: none }]\n").project.pieces.at(0);
    CHECK(*p.hem == Length{});
    CHECK(p.hem.origin == Origin::none);
  }
}

TEST_CASE("what is to be measured is kept by its place and is treated as absent") {
  const Checked c = checked(
      "gownsheaf: 1\ntitle: T\nmeasures: { waist: to measure }\ncloths: { Blue  Linen: { kind: dress linen, width: to measure } }\n");
  CHECK(c.messages.empty());
  REQUIRE(c.project.to_measure.size() == 2);
  CHECK(c.project.to_measure[0].first == "measures/waist");
  CHECK(c.project.to_measure[1].first == "cloths/Blue Linen/width");
  CHECK_FALSE(c.project.measures.girths_and_lengths.at("waist").both.known());
  CHECK(c.project.measures.girths_and_lengths.at("waist").both.origin == Origin::to_measure);
}

TEST_CASE("names match across case, spaces and composition, and print as first written") {
  // é as one code point in the cloth, as e and an accent in the piece
  const Checked c = checked(
      "gownsheaf: 1\ntitle: T\ncloths: { Drap  \xC3\xA9pais: { kind: wool suiting, width: 58 in } }\n"
      "pieces: [{ piece: sash, from: drap e\xCC\x81pais, finished width: 8 in, finished length: 2 yd }]\n");
  CHECK(c.messages.empty());
  CHECK(c.project.pieces.at(0).from.at(0) == "Drap \xC3\xA9pais");
}

TEST_CASE("one section's error leaves the others filled") {
  const Checked c =
      checked("gownsheaf: 1\ntitle: T\nmeasures: { waist: 36 }\ncloths: { c: { kind: wool suiting, width: 58 in } }\n");
  CHECK(c.project.failed_sections == std::set<std::string>{"measures"});
  CHECK(c.project.measures.girths_and_lengths.empty());
  CHECK(c.project.cloths.size() == 1);
}

TEST_CASE("the unit written most is shown; with as many of each, the first") {
  const auto shown = [](const std::string& measures) {
    return *checked("gownsheaf: 1\ntitle: T\nmeasures: " + measures + "\n").project.show_lengths_in;
  };
  CHECK(shown("{ waist: 29 in, hip: 40 in, height: 165 cm }") == ShownIn::inches);
  CHECK(shown("{ waist: 74 cm, hip: 102 cm, height: 65 in }") == ShownIn::centimetres);
  CHECK(shown("{ height: 165 cm, knee: 20 in }") == ShownIn::centimetres);
  CHECK(shown("{ height: 65 in, knee: 50 cm }") == ShownIn::inches);
}
