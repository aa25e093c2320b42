// The body.
#include <algorithm>

#include "check/sections.h"

namespace gownsheaf {

namespace {

// Girths of the trunk lie within a factor of about 1.6 of one another (common practice, no source), an inch is 2.54 cm:
// so one that comes nearer to its neighbour when read in the neighbour's unit was probably meant so.
constexpr std::string_view kTrunk[] = {"bust", "high bust", "underbust", "chest", "waist", "hip"};

struct WrittenGirth {
  std::string_view key;
  const Entry* entry;
  Length length;
  bool inches;
};

double apart(double a, double b) { return a > b ? a / b : b / a; }

void check_units(const Filling& file, const Item& body) {
  std::vector<WrittenGirth> girths;
  for (const std::string_view key : kTrunk) {
    const Entry* e = body.at(key);
    if (e == nullptr || e->kind != Entry::Kind::text) continue;
    const auto read = read_length(e->text, key);
    if (!read.ok() || read.value().length <= Length{}) continue;
    const bool imperial = read.value().unit == LengthUnit::inch;
    if (!imperial && read.value().unit != LengthUnit::centimetre) continue;
    girths.push_back({key, e, read.value().length, imperial});
  }
  for (const WrittenGirth& girth : girths) {
    const auto other =
        std::find_if(girths.begin(), girths.end(), [&](const WrittenGirth& g) { return g.inches != girth.inches; });
    if (other == girths.end()) continue;
    const double written = girth.length.in_mm(), near = other->length.in_mm();
    const double meant = girth.inches ? written / 2.54 : written * 2.54;
    // From a child of two to the largest adult (from memory): beyond that, the unit was right.
    if (meant < 400 || meant > 1600) continue;
    if (apart(written, near) < 1.6 || apart(meant, near) >= apart(written, near)) continue;
    std::string text = girth.entry->text;
    const std::string_view from = girth.inches ? "in" : "cm", to = girth.inches ? "cm" : "in";
    if (const auto at = text.rfind(from); at != std::string::npos) text.replace(at, from.size(), to);
    // Out of the key's limits altogether: one message, with the likelier reason.
    const auto beyond = std::find_if(file.diag.all().begin(), file.diag.all().end(),
                                     [&](const Diagnostic& d) { return d.code == "out-of-range" && d.at == girth.entry->at; });
    if (beyond != file.diag.all().end()) {
      beyond->code = "unit-slip";
      if (beyond->sentence.ends_with(".")) beyond->sentence.pop_back();
      beyond->sentence += ", and stands beside `" + std::string(other->key) + ": " + other->entry->text + "`.";
      beyond->hint = "did you mean `" + text + "`?";
      beyond->also = {other->entry->at};
      continue;
    }
    report(file, {"measures", std::string(girth.key)}, Severity::warning, "unit-slip", girth.entry->at,
           "`" + std::string(girth.key) + ": " + girth.entry->text + "` beside `" + std::string(other->key) + ": " +
               other->entry->text + "`.",
           "did you mean `" + text + "`?", {other->entry->at});
  }
}

}  // namespace

void fill_measures(const Filling& file, Project& project) {
  const Item body = file.root.block("measures");
  if (body.entry() != nullptr) {
    for (const KeySpec* spec : keys_below("measures")) {
      const std::string key(spec->path.substr(9));
      if (spec->kind != KeyKind::length || !body.has(key)) continue;
      if (key == "waist to floor") {
        const Item places = body.block(key);
        if (places.entry() == nullptr) {
          project.measures.waist_to_floor.at.emplace_back("all round", body.length(key));
          continue;
        }
        const std::vector<std::string> three = {"front", "side", "back"};
        const std::vector<std::string> eight = {"front", "front left", "left",  "back left",
                                                "back",  "back right", "right", "front right"};
        const bool few = places.has("side");
        for (const std::string& place : few ? three : eight) {
          project.measures.waist_to_floor.at.emplace_back(place, places.length(place));
          if (!places.has(place))
            report(file, {"measures", key}, Severity::error, "key-missing", places.entry()->key_at,
                   "`waist to floor` has no `" + place + "`.",
                   "give one length, or `front`, `side` and `back`, or all eight: " + listed(eight));
        }
        for (const Entry& given : places.entry()->children)
          if (few && std::find(three.begin(), three.end(), given.key) == three.end() &&
              std::find(eight.begin(), eight.end(), given.key) != eight.end())
            report(file, {"measures", key}, Severity::error, "said-twice", given.key_at,
                   "`waist to floor` has both `side` and `" + given.key + "`.", "give three places or eight");
        continue;
      }
      Measure measure;
      const Item sides = body.block(key);
      if (sides.entry() != nullptr) {
        measure.left = sides.length("left");
        measure.right = sides.length("right");
      } else {
        measure.both = body.length(key);
      }
      project.measures.girths_and_lengths.emplace(key, std::move(measure));
    }
    const Item other = body.block("other");
    if (other.entry() != nullptr)
      for (const Entry& m : other.entry()->children) {
        const auto read = read_length(m.text, m.key);
        Measure measure;
        if (m.kind == Entry::Kind::text && read.ok()) measure.both = Given<Length>::written(read.value().length, m.at);
        if (m.text == kToMeasure) measure.both.origin = Origin::to_measure;
        project.measures.girths_and_lengths.emplace(clean_name(m.key), std::move(measure));
      }
    auto& known = project.measures.girths_and_lengths;
    if (known.contains("hip") && !known.contains("hip depth")) {
      Measure depth;
      depth.both = Given<Length>::standing(Length::inches(7), 'a', "hip depth, where none is measured");
      known.emplace("hip depth", std::move(depth));
    }
    check_units(file, body);
  }
  project.ease = girths_in(file, file.root.at("ease"));
}

// A body of eight weeks ago may be another one; a fitting since then has seen it anew (common practice, no source).
void judge_measures_day(const Filling& file, const Project& project) {
  constexpr std::int64_t kStaleAfterDays = 56;
  if (!project.taken || !project.taken->day.known() || !project.today.known()) return;
  const Day taken = *project.taken->day, today = *project.today;
  const auto say = [&](std::string sentence, std::string hint) {
    report(file, {"measures", "taken"}, Severity::warning, "measures-day", project.taken->day.at, std::move(sentence),
           std::move(hint));
  };
  const std::string day = "The measures were taken on " + iso_day(taken);
  if (taken.serial > today.serial) return say(day + ", after `today`.", "is `day` or `today` mistyped?");
  const bool seen_since = std::any_of(project.fittings.begin(), project.fittings.end(), [&](const Fitting& f) {
    return f.day.known() && f.day->serial > taken.serial && today.serial - f.day->serial < kStaleAfterDays;
  });
  if (today.serial - taken.serial >= kStaleAfterDays && !seen_since)
    say(day + ", " + std::to_string((today.serial - taken.serial) / 7) + " weeks before `today`.",
        "measure again before you cut: waist, hip, waist to floor");
}

}  // namespace gownsheaf
