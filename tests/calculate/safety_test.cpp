#include "calculate/safety.h"
#include "calculate/facts.h"

#include "support/catch.h"
#include "support/garment.h"

using namespace gownsheaf;
using garment::in;
using garment::mm;
using garment::said;

namespace {

constexpr Span seconds(double s) { return Span{static_cast<std::int64_t>(s * 1000)}; }

Project child_with_drawstring(std::int64_t age, const std::string& at, std::optional<Length> out,
                              ShownIn shown = ShownIn::inches) {
  Project p = garment::project(shown);
  p.wearer.age = said(age);
  Closure c;
  c.named = garment::named("cord");
  c.fasten = Fasten::drawstring;
  if (!at.empty()) c.drawstring_at = said(at);
  if (out) c.hangs_out = said(*out);
  p.closures = {c};
  return p;
}

std::vector<Diagnostic> messages(const Project& p) {
  Figures figures;
  Diagnostics diag;
  check_safety(p, figures, diag);
  return diag.sorted();
}

FactValue fact(const Project& p, std::string_view name) {
  const Figures figures;
  const Plans plans;
  return facts_of(p, figures, plans)(name, "");
}
bool truth(const Project& p, std::string_view name) { return std::get<bool>(fact(p, name)); }

}  // namespace

// 16 CFR 1610.4 (text of 2010): plain 3.5 s or more class 1, no class 2; raised over 7 s class 1, 4 to 7 s class 2.
TEST_CASE("safety: classes of burn time", "[safety]") {
  CHECK(burn_class_of(seconds(3.5), false) == 1);
  CHECK(burn_class_of(seconds(3.4), false) == 3);
  CHECK(burn_class_of(seconds(7.1), true) == 1);
  CHECK(burn_class_of(seconds(7), true) == 2);
  CHECK(burn_class_of(seconds(4), true) == 2);
  CHECK(burn_class_of(seconds(3.9), true) == 3);
}

// 16 CFR 1610.1(d)(1): plain surface of 2.6 oz/yd², 88.2 g/m², or heavier is exempt.
TEST_CASE("safety: plain cloth of 2.6 oz/yd² is exempt from the test", "[safety]") {
  Cloth c;
  c.weight = said(MassPerArea{88.2});
  CHECK(exempt_from_burn_test(c));
  c.weight = said(MassPerArea{88.1});
  CHECK_FALSE(exempt_from_burn_test(c));
  c.weight = said(MassPerArea{200});
  c.surface = said(std::string("raised"));
  CHECK_FALSE(exempt_from_burn_test(c));
}

// ASTM F1816-18 / 16 CFR 1120: hood and neck 2T to 12 none; waist and hem 2T to 16 at most 3 in (75 mm) outside the channel.
TEST_CASE("safety: a child's drawstring", "[safety]") {
  SECTION("at the neck: none up to 12") {
    const auto said_of = messages(child_with_drawstring(6, "neck", in(1)));
    REQUIRE(said_of.size() == 1);
    CHECK(said_of[0].code == "child-drawstring");
    CHECK(said_of[0].severity == Severity::hold);
    CHECK(said_of[0].sentence == "A drawstring at the neck, for age 6: none at neck or hood up to size 12.");
    CHECK(said_of[0].is_private);
    CHECK(messages(child_with_drawstring(12, "hood", in(1))).size() == 1);
    CHECK(messages(child_with_drawstring(13, "neck", in(1))).empty());
  }
  SECTION("at the waist: 3 in or 75 mm at most up to 16") {
    CHECK(messages(child_with_drawstring(16, "waist", in(3))).empty());
    CHECK(messages(child_with_drawstring(16, "hem", in(25, 8))).size() == 1);
    CHECK(messages(child_with_drawstring(17, "waist", in(9))).empty());
    CHECK(messages(child_with_drawstring(6, "waist", mm(75), ShownIn::centimetres)).empty());
    const auto said_of = messages(child_with_drawstring(6, "waist", mm(76), ShownIn::centimetres));
    REQUIRE(said_of.size() == 1);
    CHECK(
        said_of[0].sentence ==
        "A drawstring at the waist, for age 6 hangs out 7.6 cm: up to size 16 at most 7.5 cm may hang out, without knots or toggles, "
        "tacked at the middle of its back.");
  }
  SECTION("not written how far, or where") {
    CHECK(messages(child_with_drawstring(6, "waist", {})).size() == 1);
    CHECK(messages(child_with_drawstring(6, "", in(1))).size() == 1);
  }
  SECTION("of a grown wearer, or of nobody's known age, nothing is held") {
    CHECK(messages(child_with_drawstring(41, "neck", in(9))).empty());
    Project p = child_with_drawstring(6, "neck", in(1));
    p.wearer.age = {};
    CHECK(messages(p).empty());
  }
  SECTION("where it runs follows from its edge") {
    Project p = child_with_drawstring(6, "", in(1));
    EdgeLine edge;
    edge.named = garment::named("top");
    edge.kind = "neck";
    p.edges = {edge};
    p.closures[0].edge = "top";
    CHECK(messages(p)[0].sentence.find("at the neck") != std::string::npos);
  }
}

TEST_CASE("safety: facts of the wearer and of what hurts", "[safety][facts]") {
  Project p = child_with_drawstring(15, "waist", in(1));
  p.sections_given = {"worn for"};
  p.worn_for = {"near flame"};
  CHECK(truth(p, "child"));
  CHECK(truth(p, "drawstring"));
  CHECK(truth(p, "worn for near flame"));
  CHECK_FALSE(truth(p, "worn for stairs"));
  p.wearer.age = said<std::int64_t>(16);
  CHECK_FALSE(truth(p, "child"));
  p.wearer.age = {};
  CHECK(std::holds_alternative<std::monostate>(fact(p, "child")));
  p.sections_given.clear();
  CHECK(std::holds_alternative<std::monostate>(fact(p, "worn for near flame")));
  p.taken = Taken{};
  p.taken->over = {"chemise", "front-lacing Corset"};
  CHECK(truth(p, "over corset"));
  p.taken->day = said(make_day(2027, 1, 1));
  p.today = said(make_day(2027, 2, 25));
  CHECK_FALSE(truth(p, "measures stale"));  // 55 days
  p.today = said(make_day(2027, 2, 26));
  CHECK(truth(p, "measures stale"));  // eight weeks
  p.ease.emplace("waist", said(in(-1)));
  CHECK(truth(p, "made tight"));
}
