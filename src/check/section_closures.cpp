// Closings: how each edge closes, where its fasteners stand, how far its sides reach. Whether the places agree with one
// another is the calculator's to say.
#include <algorithm>

#include "check/sections.h"
#include "project/edges.h"

namespace gownsheaf {

namespace {

template <class T>
void fall_back(Given<T>& value, T standing, char label, std::string because) {
  if (value.known() || value.origin == Origin::to_measure) return;
  const SourceSpan at = value.at;
  value = Given<T>::standing(std::move(standing), label, std::move(because));
  value.at = at;
}

bool hooks(Fasten f) { return f == Fasten::hooks_and_eyes || f == Fasten::hooks_and_bars || f == Fasten::hooks_and_loops; }

void fill_levels(const Filling& file, const Item& item, Closure& closure) {
  const Entry* levels = item.at("levels");
  if (levels != nullptr && levels->kind == Entry::Kind::block)
    for (const Entry& level : levels->children) {
      const auto read = read_length(level.text, level.key);
      if (level.kind == Entry::Kind::text && read.ok())
        closure.levels.push_back({clean_name(level.key), read.value().length, level.at});
    }
  std::stable_sort(closure.levels.begin(), closure.levels.end(),
                   [](const Level& a, const Level& b) { return a.from_top < b.from_top; });
  if (const Entry* one_at = item.at("one at")) closure.one_at_at = one_at->at;
  for (const Entry* wanted : item.values("one at")) {
    if (wanted->kind != Entry::Kind::text || wanted->text == kNone) continue;
    const std::string name = clean_name(wanted->text);
    const auto at = std::find_if(closure.levels.begin(), closure.levels.end(),
                                 [&](const Level& l) { return folded_name(l.name) == folded_name(name); });
    if (at != closure.levels.end()) {
      closure.one_at.push_back(at->name);
      continue;
    }
    std::vector<std::string> known;
    for (const Level& l : closure.levels) known.push_back(l.name);
    report(file, {"closures", closure.named.name}, Severity::error, "unknown-name", wanted->at,
           "No level of " + closure.named.name + " is called `" + name + "`.",
           known.empty() ? "say how far down it is: `levels: { " + name + ": 9 in }`" : "the levels are " + listed(known));
  }
}

// Written sides, or the pieces that the edge is made of.
void fill_sides(const Filling& file, const Item& item, const Project& project, Closure& closure) {
  for (const std::string& side : names_in(file, item, "sides", "pieces"))  // one piece for both sides may be named twice
    if (std::none_of(closure.sides.begin(), closure.sides.end(), [&](const std::string& s) { return same_name(s, side); }))
      closure.sides.push_back(side);
  if (!closure.sides.empty() || item.has("sides")) return;
  const EdgeLine* edge = project.edge(closure.edge);
  if (edge == nullptr) return;
  for (const std::string& of : edge->of) {
    const auto cut = of.find(" of ");
    if (cut == std::string::npos) continue;
    if (const auto piece = file.names.find("pieces", of.substr(cut + 4)))
      if (std::find(closure.sides.begin(), closure.sides.end(), *piece) == closure.sides.end()) closure.sides.push_back(*piece);
  }
}

void fill_lap(const Filling& file, const Item& item, const Project& project, Closure& closure) {
  closure.meets = choice(item.word("meets"), Meets::overlapping);
  const bool laps =
      closure.fasten == Fasten::buttons || closure.fasten == Fasten::snaps || closure.fasten == Fasten::hooks_and_bars;
  if (!closure.meets.known())
    closure.meets = Given<Meets>::guessed(laps ? Meets::overlapping : Meets::edge_to_edge,
                                          "its kind: " + std::string(word_for(closure.fasten)), closure.fasten_at);
  closure.lap = item.length("lap");
  const bool overlaps = *closure.meets == Meets::overlapping;
  const Notion* notion = project.notion(closure.with);
  if (!overlaps) {
    fall_back(closure.lap, Length{}, 'x', "the sides meet edge to edge");
  } else if (closure.fasten == Fasten::buttons && notion != nullptr && notion->across.known()) {
    fall_back(closure.lap, notion->across->times(1, 2) + Length::sixty_fourths(16), 'c', "half the button and 1/4 in");
  } else if (closure.fasten == Fasten::hooks_and_bars) {
    fall_back(closure.lap, Length::inches(1), 'c', "1 in over hooks and bars");
  } else {
    fall_back(closure.lap, Length::sixty_fourths(48), 'c', "3/4 in, where nothing is written");
  }
  closure.underlap = item.length("underlap");
  if (!closure.underlap.known() && closure.underlap.origin != Origin::to_measure) {
    closure.underlap = closure.lap;
    if (closure.lap.origin == Origin::written) closure.underlap = Given<Length>::guessed(*closure.lap, "the lap", closure.lap.at);
  }
  closure.facing = name_in(file, item, "facing", "pieces");
  closure.turn_back = item.length("turn back");
  if (closure.facing.empty()) fall_back(closure.turn_back, Length::inches(1), 'a', "1 in turned in at a closing");
  fill_sides(file, item, project, closure);
  closure.drawn_to = choice(item.word("drawn to"), DrawnTo::cut_edge);
  fall_back(closure.drawn_to, DrawnTo::meeting_line, 'c', "widths end at the meeting line unless it is written");
  closure.upper_side = item.word("upper side");
  closure.buttonholes_along = item.word("buttonholes").value.value_or("across") == "along";
}

void fill_strength(const Filling& file, const Item& item, Closure& closure) {
  const Item guard = item.block("guard");
  if (guard.entry() != nullptr) closure.guard = Guard{guard.length("width"), name_in(file, guard, "from", "cloths")};
  if (const Entry* backed = item.at("backed with")) {
    closure.backed_with.at = backed->at;
    if (backed->text == kNone) closure.backed_with.origin = Origin::none;
    else if (const auto cloth = file.names.find("cloths", backed->text))
      closure.backed_with = Given<std::string>::written(*cloth, backed->at);
  }
  closure.backing_width = item.length("backing width");
  const bool laced = closure.fasten == Fasten::lacing;
  fall_back(closure.backing_width, Length::sixty_fourths(laced ? 96 : 64), 'c',
            laced ? "1 1/2 in behind eyelets" : "the row, a bone and 1/2 in: at least 1 in");
  closure.stitches_each = item.count("stitches each");
  fall_back(closure.stitches_each, std::int64_t{15}, 'a', "five in each ring, five at the bill");
}

void fill_lacing(const Item& item, Closure& closure) {
  closure.lace_as = choice(item.word("lace as"), LaceAs::shop).value.value_or(LaceAs::cross);
  closure.gap = item.length("gap");
  closure.tie_ends = item.length("tie ends");
  if (closure.fasten == Fasten::ties) fall_back(closure.tie_ends, Length::inches(12), 'c', "12 in of each tie to make a bow");
  fall_back(closure.tie_ends, Length::inches(24), 'c', "24 in at each end to tie");
  closure.waist_loops = item.yes_no("waist loops");
  fall_back(closure.waist_loops, false, 'c', "no pulls at the waist unless they are written");
  closure.eyelets_metal = item.word("eyelets are").value.value_or("worked") == "metal";
  closure.drawstring_at = item.word("at");
  closure.hangs_out = item.length("hangs out");
}

// Hooks by the maker's rule or its default; the others as is common practice.
void fill_set_back(const Item& item, const Project& project, Closure& closure) {
  closure.set_back = item.length("set back");
  const std::string usual = "the usual place of " + std::string(word_for(closure.fasten));
  const Given<Length>& rule = project.rules.hook_set_back;
  if (hooks(closure.fasten) && rule.known())
    fall_back(closure.set_back, *rule, rule.origin == Origin::written ? 'x' : rule.label,
              rule.origin == Origin::written ? "by `rules: hook set back`" : usual);
  const bool none = closure.fasten == Fasten::buttons || closure.fasten == Fasten::ties || closure.fasten == Fasten::drawstring;
  fall_back(closure.set_back, none ? Length{} : Length::sixty_fourths(closure.fasten == Fasten::lacing ? 24 : 16), 'c', usual);
}

// Parts where fasteners come closer: 3 in to both sides, 3/4 in apart, where nothing is written.
void fill_closer(const Filling& file, const Item& item, Closure& closure) {
  for (const Item& near : item.items("closer near")) {
    const Entry* at = near.at("at");
    if (at == nullptr || at->kind != Entry::Kind::text) continue;
    const std::string name = clean_name(at->text);
    const auto level = std::find_if(closure.levels.begin(), closure.levels.end(),
                                    [&](const Level& l) { return folded_name(l.name) == folded_name(name); });
    if (level == closure.levels.end()) {
      std::vector<std::string> known;
      for (const Level& l : closure.levels) known.push_back(l.name);
      report(file, {"closures", closure.named.name}, Severity::error, "unknown-name", at->at,
             "No level of " + closure.named.name + " is called `" + name + "`.",
             known.empty() ? "say how far down it is: `levels: { " + name + ": 9 in }`" : "the levels are " + listed(known));
      continue;
    }
    CloserNear part{level->name, near.length("within"), near.length("at most"), at->at};
    fall_back(part.within, Length::inches(3), 'c', "3 in to both sides");
    fall_back(part.at_most, Length::sixty_fourths(48), 'c', "3/4 in apart there");
    if (part.within.known() && part.at_most.known()) closure.closer_near.push_back(std::move(part));
  }
}

// What closes at a wrist or a knee closes at each of them.
std::int64_t on_each_side(const EdgeLine* edge) {
  return edge != nullptr && comes_twice(*edge) ? std::clamp<std::int64_t>(edge->number, 1, 100) : 1;
}

// Two edges of a front are the two sides of one closing. Of other edges that are there several times nobody can tell.
void fill_closings(const Filling& file, const Item& item, const Project& project, Closure& closure) {
  closure.closings = item.count("closings");
  if (closure.closings.known()) return;
  const EdgeLine* edge = project.edge(closure.edge);
  if (edge != nullptr && comes_twice(*edge) && edge->number > 1)
    closure.closings = Given<std::int64_t>::guessed(on_each_side(edge), "how many of the edge there are", edge->named.at);
  else closure.closings = Given<std::int64_t>::standing(1, 'c', "one closing");
  if (edge == nullptr || comes_twice(*edge) || edge->number < 2 || item.has("closings")) return;
  if (edge->kind == "front closing" || edge->kind == "back closing") return;
  report(
      file, {"closures", closure.named.name}, Severity::warning, "closings-unsaid", closure.named.at,
      "Edge " + edge->named.name + " is there " + whole_number(edge->number) + " times; fasteners are counted for one closing.",
      "`closings: " + whole_number(edge->number) +
          "` where each closes by itself; `closings: 1` where they are the two sides of one");
}

}  // namespace

void fill_plackets(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("plackets")) {
    Placket placket;
    placket.named = named_of(file, item, "plackets", "placket");
    placket.seam = name_in(file, item, "seam", "seams");
    placket.edge = name_in(file, item, "edge", "edges");
    placket.side = item.word("side");
    placket.length = item.length("length");
    fall_back(placket.length, Length::inches(10), 'a', "10 in, where no length is written");
    placket.finish = choice(item.word("finish"), PlacketFinish::faced);
    placket.number = item.count("number").value.value_or(on_each_side(project.edge(placket.edge)));
    project.plackets.push_back(std::move(placket));
  }
}

void fill_closures(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("closures")) {
    Closure closure;
    closure.named = named_of(file, item, "closures", "closure");
    closure.edge = name_in(file, item, "edge", "edges");
    closure.length = item.length("length");
    if (const EdgeLine* edge = project.edge(closure.edge)) closure.length = edge->length;
    const auto fasten = choice(item.word("fasten"), Fasten::busk);
    closure.fasten = fasten.value.value_or(Fasten::hooks_and_eyes);
    closure.fasten_at = fasten.at;
    closure.with = name_in(file, item, "with", "notions");
    closure.at_most = item.length("at most");
    closure.pitch = item.length("pitch");
    closure.number = item.count("number");
    closure.eyelets = item.count("eyelets");
    const bool counted = closure.number.known() || closure.pitch.known() || closure.eyelets.known();
    if (!counted) {
      const Given<Length>& pitch = project.rules.hook_pitch;
      const bool by_rule = pitch.origin == Origin::written;
      if (hooks(closure.fasten))
        fall_back(closure.at_most, *pitch, by_rule ? 'x' : pitch.label, by_rule ? "by `rules: hook pitch`" : pitch.because);
      if (closure.fasten == Fasten::snaps) fall_back(closure.at_most, Length::inches(2), 'a', "2 in between snaps");
      if (closure.fasten == Fasten::lacing) fall_back(closure.at_most, Length::mm(30), 'a', "30 mm between eyelets");
      if (closure.fasten == Fasten::buckle && !closure.at_most.known())
        fall_back(closure.number, std::int64_t{1}, 'c', "one buckle");
    }
    closure.top_inset = item.length("top inset");
    closure.bottom_inset = item.length("bottom inset");
    fall_back(closure.top_inset, Length::sixty_fourths(16), 'c', "1/4 in below the top of the edge");
    fall_back(closure.bottom_inset, Length::sixty_fourths(16), 'c', "1/4 in above the foot of the edge");
    fill_levels(file, item, closure);
    closure.alternate = item.yes_no("alternate");
    fall_back(closure.alternate, false, 'c', "all hooks on one side unless it is written");
    closure.alone = item.yes_no("alone");
    closure.rows = item.count("rows").value.value_or(1);
    fill_closings(file, item, project, closure);
    fill_set_back(item, project, closure);
    fill_closer(file, item, closure);
    for (const Entry* e : item.values("compare with"))
      if (const auto other = choice(e->text, Fasten::busk)) closure.compare_with.push_back(*other);
    fill_lap(file, item, project, closure);
    fill_strength(file, item, closure);
    fill_lacing(item, closure);
    project.closures.push_back(std::move(closure));
  }
}

}  // namespace gownsheaf
