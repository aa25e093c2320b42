#include "calculate/fitting_pages.h"

#include "support/catch.h"
#include "support/garment.h"

using namespace gownsheaf;

namespace {

FittingChecks checks(const std::string& gate, const std::string& when = "") {
  FittingChecks c;
  c.gate = c.title = gate;
  Diagnostics diag;
  if (!when.empty()) c.when = parse_condition(when, {}, diag);
  REQUIRE_FALSE(diag.has_errors());
  c.wear = {"shoes"};
  FittingLine line;
  line.look = "Waist";
  line.how = "pinch";
  line.allowed = "measures {girths/waist/finished}";
  line.plainly = "within {1/2 in}";
  line.remedy = line.remedy_plainly = "for each {one}";
  c.lines = {line};
  return c;
}

PlannedStep step(int number, const std::string& id, const std::string& gate, std::vector<std::string> after = {}) {
  PlannedStep s;
  s.number = number;
  s.id = id;
  s.gate = gate;
  s.hard_after = std::move(after);
  return s;
}

struct Held {
  Project project = garment::project(ShownIn::centimetres);
  Templates templates;
  Figures figures;
  std::vector<PlannedStep> work = {step(1, "fit", "mock-up"), step(2, "cut", "", {"fit"}),
                                   step(3, "try", "closed bodice", {"cut"})};
  FactLookup facts = [](std::string_view fact, std::string_view) -> FactValue {
    return fact == "second mock-up" ? FactValue(true) : fact == "skirt" ? FactValue(false) : FactValue{};
  };

  Held() {
    for (const char* id : {"mock-up", "closed bodice"}) {
      Step s;
      s.id = id;
      s.gate = id;
      templates.steps.push_back(s);
    }
    templates.fitting_checks = {checks("mock-up"),
                                checks("second mock-up", "has second mock-up"),
                                checks("closed bodice"),
                                checks("rehearsal"),
                                checks("never", "has skirt"),
                                checks("not known", "has bodice")};
  }
  std::vector<FittingPlan> pages() const { return fitting_pages(project, templates, figures, facts, work, {}); }
  std::vector<std::string> gates() const {
    std::vector<std::string> all;
    for (const FittingPlan& p : pages()) all.push_back(p.gate);
    return all;
  }
};

}  // namespace

TEST_CASE("pages of fittings: in the order of work, stages between their gates, only those whose condition holds", "[fitting]") {
  const Held h;
  CHECK(h.gates() == std::vector<std::string>{"mock-up", "second mock-up", "closed bodice", "rehearsal"});
  CHECK(h.pages()[0].step == 1);
  CHECK(h.pages()[0].next_step == 2);
}

TEST_CASE("pages of fittings: a signed gate has none; a done one without a fitting neither", "[fitting]") {
  Held h;
  Fitting f;
  f.named = garment::named("first mock-up");
  h.project.fittings = {f};
  h.work[0].done = true;
  CHECK(h.gates().front() == "mock-up");  // held, not signed
  h.project.fittings[0].signed_on = garment::said(make_day(2027, 3, 1));
  CHECK(h.gates().front() == "second mock-up");
  h.project.fittings.clear();
  CHECK(h.gates().front() == "second mock-up");
}

TEST_CASE(
    "pages of fittings: layers measured over come first, what is still to make says so, and lengths take the project's unit",
    "[fitting]") {
  Held h;
  h.project.taken = Taken{};
  h.project.taken->over = {"chemise", "two petticoats", "shoes"};
  h.project.still_to_make = {{"two petticoats", make_day(2027, 3, 20), {}}};
  const FittingPlan page = h.pages()[0];
  REQUIRE(page.wear.size() == 3);
  CHECK(page.wear[1].still_to_make);
  CHECK(page.wear[1].ready_by == "Saturday 20 March 2027");
  CHECK(page.checks[0].allowed[0].words == "within 1.3 cm");
  CHECK(page.checks[0].remedy[0].words == "for each 1 cm");
}

TEST_CASE("cautions: met or open ones are called for, others are not", "[fitting]") {
  Held h;
  for (const char* when : {"", "has skirt", "has second mock-up", "has child"}) {
    Caution c;
    c.about = when;
    c.say = "at most {3 in}";
    Diagnostics diag;
    if (*when != '\0') c.when = parse_condition(when, {}, diag);
    h.templates.cautions.push_back(c);
  }
  const auto called = cautions_called_for(h.project, h.templates, h.facts);
  REQUIRE(called.size() == 3);
  CHECK(called[0].condition.empty());
  CHECK(called[0].say[0].words == "at most 7.6 cm");
  CHECK(called[2].condition == "the wearer is under 16");
}
