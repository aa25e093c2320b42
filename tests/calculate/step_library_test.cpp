// The delivered step library on whole garments: nothing prints a brace, every figure named is there, and the order is the
// one a workroom keeps.
#include <algorithm>
#include <map>

#include "support/made_garment.h"

using namespace gownsheaf;
using namespace gownsheaf::test;

namespace {

const std::string kHead = "gownsheaf: 1\nworn on: 2031-06-14\n";

const std::map<std::string, std::string> kGarments{
    {"least", kHead + "title: Nothing but a day and a waist\nmeasures: { waist: 70 cm }\n"},
    {"linen skirt", kHead + R"(title: Linen skirt for the lock-keeper's regatta
garment: skirt
measures: { waist: 72 cm, waist to floor: 101 cm }
cloths:
  river linen: { kind: dress linen, width: 140 cm, selvage: 1 cm, shrinks: 5 %, bought: [3 m] }
pieces:
  - { piece: skirt breadth, part of: skirt, make: 2, from: [river linen], cut width: full, finished length: 95 cm, hem: 6 cm, top: 2 cm, seam allowance: 1.5 cm }
  - { piece: waistband, part of: band, make: 1, from: [river linen], finished width: 78 cm, finished length: 8 cm, seam allowance: 1.5 cm }
pleats:
  - { run: waist, of: [skirt breadth], kind: knife, finished: 74 cm, count: 20 }
)"},
    {"wool dress", kHead + R"(title: Wool dress for the lamplighters' supper
garment: dress
joined at waist: yes
lining sewn in: flat
measures: { bust: 36 in, waist: 27 in, waist to floor: 41 in }
ease: { bust: 1 in, waist: 1/2 in less }
cloths:
  brown wool:   { kind: wool suiting, width: 58 in, bought: [7 yd] }
  grey muslin:  { kind: cotton muslin, used as: interlining, width: 45 in, shrunk already: yes, bought: [6 yd] }
  blue sateen:  { kind: cotton sateen, used as: lining, width: 45 in, bought: [2 yd] }
  black taffeta: { kind: silk taffeta, used as: trimming, width: 54 in }
pieces:
  - { piece: bodice front, part of: bodice, make: pair, from: [brown wool, blue sateen], finished width: 10 in, finished length: 17 in }
  - { piece: bodice back, part of: bodice, make: pair, from: [brown wool, blue sateen], finished width: 9 in, finished length: 16 in }
  - { piece: sleeve, part of: sleeve, make: pair, from: [brown wool], finished width: 14 in, finished length: 23 in }
  - { piece: skirt breadth, part of: skirt, make: 3, from: [brown wool], cut width: full, finished length: 41 in, top: 1 1/2 in }
  - { piece: skirt interlining, part of: skirt, make: 4, from: [grey muslin], cut width: full, finished length: 41 in, top: 1 1/2 in }
skirt: { kind: straight breadths, levelled at: waist, hem: { depth: 3 in } }
pleats:
  - { run: front, kind: box, half: yes, of: [skirt breadth], finished: 4 in, count: 2, depth: 1 in }
  - { run: back, kind: knife, half: yes, of: [skirt breadth], finished: 8 in, count: 8, depth: 1 1/2 in }
)"},
    {"gored skirt", kHead + R"(title: Gored cotton skirt for the ferry stage
garment: skirt
measures: { waist: 70 cm, waist to floor: 100 cm }
cloths: { sand drill: { kind: cotton drill, width: 150 cm, bought: [4 m] } }
pieces:
  - { piece: skirt gore, part of: skirt, make: 6, from: [sand drill], finished width: 45 cm, finished length: 96 cm }
  - { piece: waistband, part of: band, make: 1, from: [sand drill], finished width: 72 cm, finished length: 6 cm }
skirt: { kind: gored, gores: 6, hem: { depth: 4 cm } }
)"},
    {"bodice", kHead + R"(title: Bodice for the weaver's fair
garment: bodice
measures: { bust: 92 cm, waist: 70 cm }
cloths: { moss silk: { kind: silk taffeta, width: 137 cm, bought: [2 m] } }
pieces:
  - { piece: bodice front, part of: bodice, make: pair, from: [moss silk], finished width: 26 cm, finished length: 42 cm }
  - { piece: bodice back, part of: bodice, make: pair, from: [moss silk], finished width: 24 cm, finished length: 40 cm }
)"},
};

int place(const std::vector<PlannedStep>& work, const std::string& id) {
  const PlannedStep* s = find_step(work, id);
  INFO(id);
  REQUIRE(s != nullptr);
  return s->number;
}

void check_printed(const Say& say, const Figures& figures) {
  for (const SayPart& part : say) {
    INFO(part.words << part.figure);
    CHECK(part.words.find_first_of("{}") == std::string::npos);
    if (!part.figure.empty()) CHECK(figures.find(part.figure) != nullptr);
    else CHECK_FALSE(part.words.empty());
  }
}

}  // namespace

TEST_CASE("library: every step of every garment comes out in words and known figures", "[library]") {
  for (const auto& [name, yaml] : kGarments) {
    INFO(name);
    const Made m = made(yaml);
    REQUIRE_FALSE(m.worked.plans.work.empty());
    int number = 0;
    for (const PlannedStep& s : m.worked.plans.work) {
      INFO(s.id);
      CHECK(s.number == ++number);
      CHECK_FALSE(s.act.empty());
      check_printed(s.act, m.worked.figures);
      check_printed(s.reason, m.worked.figures);
      for (const Say& line : s.shows) check_printed(line, m.worked.figures);
      for (const std::string& hold : s.holds) CHECK(hold.rfind("until ", 0) == 0);
      for (const std::string& id : s.hard_after) CHECK(place(m.worked.plans.work, id) < s.number);
      CHECK(s.conditional == !s.condition.empty());
    }
  }
}

TEST_CASE("library: a dress is measured, tried, cut, sewn and joined in a workroom's order", "[library]") {
  const Made m = made(kGarments.at("wool dress"));
  const auto& work = m.worked.plans.work;
  const char* rows[] = {"measure-wearer",
                        "fit-mock-up",
                        "sign-pattern",
                        "lay-out-cloth@brown wool",
                        "cut-breadths@brown wool",
                        "cut-pieces@brown wool",
                        "mark-pieces",
                        "baste-bodice-layers",
                        "fit-bodice",
                        "stitch-bodice-seams",
                        "set-sleeves",
                        "try-bodice-closed",
                        "finish-lower-edge",
                        "join-skirt-to-bodice",
                        "final-press"};
  for (std::size_t i = 1; i < std::size(rows); ++i) CHECK(place(work, rows[i - 1]) < place(work, rows[i]));
  const char* skirt[] = {
      "cut-breadths@grey muslin", "baste-interlining", "sew-breadths",     "press-skirt-seams", "hem-skirt",
      "level-the-waist",          "mark-pleats@back",  "fold-pleats@back", "try-skirt-pinned",  "trim-skirt-top",
      "join-skirt-to-bodice",     "sew-hanging-loops"};
  for (std::size_t i = 1; i < std::size(skirt); ++i) CHECK(place(work, skirt[i - 1]) < place(work, skirt[i]));
  CHECK(work.back().id == "final-press");
  // Fitted to the bodice's waist, so the pleats wait for its fitting.
  CHECK(place(work, "fit-bodice") < place(work, "mark-pleats@front"));
  // Shrunk already, or never to be wetted, or not cut at all: no such step.
  CHECK(find_step(work, "shrink-cloth@grey muslin") == nullptr);
  CHECK(find_step(work, "shrink-cloth@brown wool") != nullptr);
  CHECK(find_step(work, "inspect-cloth@black taffeta") == nullptr);
  CHECK(find_step(work, "sew-skirt-to-band") == nullptr);
  CHECK(find_step(work, "cut-pieces@grey muslin") == nullptr);
}

TEST_CASE("library: a gored skirt hangs before it is levelled, a straight one is hemmed flat", "[library]") {
  const Made gored = made(kGarments.at("gored skirt"));
  CHECK(place(gored.worked.plans.work, "sew-skirt-to-band") < place(gored.worked.plans.work, "hang-skirt"));
  CHECK(place(gored.worked.plans.work, "hang-skirt") < place(gored.worked.plans.work, "level-the-hem"));
  CHECK(find_step(gored.worked.plans.work, "hem-skirt") == nullptr);
  const Made straight = made(kGarments.at("linen skirt"));
  CHECK(find_step(straight.worked.plans.work, "hang-skirt") == nullptr);
  CHECK(place(straight.worked.plans.work, "hem-skirt") < place(straight.worked.plans.work, "mark-pleats@waist"));
}

TEST_CASE("library: the linen may be cut once it is looked over, shrunk, measured for and laid out", "[library]") {
  const std::string& yaml = kGarments.at("linen skirt");
  Made m = made(yaml);
  REQUIRE(m.worked.plans.may_cut.size() == 1);
  CHECK(m.worked.plans.may_cut[0].verdict == MayCut::no);
  CHECK(m.worked.plans.may_cut[0].reason.rfind("Step 1, ", 0) == 0);
  m = made(yaml + "work: { done: [{ step: inspect-cloth }, { step: measure-to-floor }, { step: measure-wearer }] }\n");
  CHECK(m.worked.plans.may_cut[0].reason.find("shrink the river linen") != std::string::npos);
  m = made(yaml + "work: { done: [{ step: lay-out-cloth@river linen }, { step: measure-to-floor }] }\n");
  INFO(m.worked.plans.may_cut[0].reason);
  CHECK(m.worked.plans.may_cut[0].verdict == MayCut::yes);
}

TEST_CASE("library: the same project gives the same order of work", "[library]") {
  for (const auto& [name, yaml] : kGarments) {
    const Made a = made(yaml), b = made(yaml);
    REQUIRE(a.worked.plans.work.size() == b.worked.plans.work.size());
    for (std::size_t i = 0; i < a.worked.plans.work.size(); ++i) CHECK(a.worked.plans.work[i].id == b.worked.plans.work[i].id);
  }
}

TEST_CASE("days left: a skirt on its days, a cloth still to be ordered, steps as the maker does them", "[days]") {
  const Made m = made(R"(gownsheaf: 1
title: Drill skirt for the lock fair
worn on: 2031-04-12
today: 2031-03-03
garment: skirt
measures: { waist: 72 cm, waist to floor: 101 cm }
cloths:
  sand drill: { kind: cotton drill, width: 150 cm, shrinks: 3 %, takes to arrive: 10 days, restock: 5 days }
pieces:
  - { piece: skirt breadth, part of: skirt, make: 2, from: [sand drill], cut width: full, finished length: 95 cm, hem: 6 cm, top: 2 cm, seam allowance: 1.5 cm }
  - { piece: waistband, part of: band, make: 1, from: [sand drill], finished width: 78 cm, finished length: 8 cm, seam allowance: 1.5 cm }
worn for: [street]
work:
  hours a week: { monday: 2, thursday: 1, saturday: 4 }
  hand sewing only: [thursday]
  days off: [2031-03-08 to 2031-03-15]
  change steps:
    - { step: hem-skirt, say: Hem it by the lamp., parts: [{ part: front, takes: 50 min }, { part: back, takes: 40 min }] }
    - { step: sew-hanging-loops, drop: yes, because: it lies in the press }
)");
  REQUIRE(m.worked.plans.days.has_value());
  const WorkPlan& plan = *m.worked.plans.days;
  const auto& work = m.worked.plans.work;
  CHECK(*plan.last == make_day(2031, 4, 8));  // the eve, less three days
  REQUIRE(plan.deliveries.size() == 1);
  const Delivery& drill = plan.deliveries.front();
  const PlannedStep* look = find_step(work, "inspect-cloth@sand drill");
  REQUIRE(look != nullptr);
  CHECK(*drill.needed == *look->latest);
  CHECK(drill.order_by->serial == drill.needed->serial - 11);
  CHECK(drill.order_by_to_replace->serial == drill.order_by->serial - 5);
  const PlannedStep* hem = find_step(work, "hem-skirt");
  REQUIRE(hem != nullptr);
  CHECK(text_of(hem->takes) == "1 h 30 min");
  CHECK(hem->parts.size() == 2);
  CHECK(hem->act.front().words == "Hem it by the lamp.");
  CHECK(find_step(work, "sew-hanging-loops") == nullptr);
  std::int64_t done = 0, there = 0;
  for (const CalendarDayPlan& day : plan.days) {
    std::int64_t today = 0;
    for (const auto& stint : day.does) {
      today += stint.minutes;
      if (day.by_hand_only) CHECK(work[static_cast<std::size_t>(stint.step - 1)].set_up == "hand");
    }
    CHECK(today <= day.minutes);
    if (day.off) CHECK(today == 0);
    done += today;
    if (day.day <= *plan.last) there += day.minutes;
  }
  CHECK(done * 60'000 == plan.needed.milliseconds);
  CHECK(there * 60'000 == plan.there.milliseconds);
  CHECK(there == 26 * 60);  // 3 h, a week off, three weeks of 7 h, 2 h on the last Monday
  for (const PlannedStep& s : work)
    for (const std::string& id : s.hard_after) {
      const PlannedStep* earlier = find_step(work, id);
      CHECK(*earlier->last_day <= *s.first_day);
      CHECK(*earlier->latest <= *s.latest);
    }
}
