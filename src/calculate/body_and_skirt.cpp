#include "calculate/body_and_skirt.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

constexpr Length kSmallerBy = Length::inches(1), kLargerBy = Length::inches(4), kFloorBy = Length::inches(1),
                 kJoinsBy = Length::sixty_fourths(8);

Length size_of(Length l) { return l < Length{} ? -l : l; }

bool on_a_skirt(const Piece& piece) {
  return piece.part_of.known() && (*piece.part_of == PartOf::skirt || *piece.part_of == PartOf::petticoat);
}

bool fills_a_run(const Piece& piece) { return piece.make.known() && piece.make->kind == Make::Kind::fills; }

bool of_outer_cloth(const Project& project, const Piece& piece) {
  const Cloth* cloth = piece.from.empty() ? nullptr : project.cloth(piece.from.front());
  return cloth != nullptr && (!cloth->used_as.known() || *cloth->used_as == UsedAs::outer);
}

bool in_tiers(const Project& project) { return project.skirt && project.skirt->kind.known() && *project.skirt->kind == "tiers"; }

// Waist with its ease: known when the waist is written and its ease is not still to be settled.
std::optional<Length> waist_with_ease(const Project& project) {
  const auto found = project.measures.girths_and_lengths.find("waist");
  if (found == project.measures.girths_and_lengths.end()) return std::nullopt;
  const Measure& m = found->second;
  std::optional<Length> waist = m.both.value;
  if (!waist && m.left.known() && m.right.known()) waist = *m.left + *m.right;
  if (!waist) return std::nullopt;
  const auto ease = project.ease.find("waist");
  if (ease == project.ease.end()) return waist;
  if (!ease->second.known()) return std::nullopt;
  return *waist + *ease->second;
}

struct WaistEdge {
  const Named* named;
  std::string section, what;
  Length finished;
};

std::optional<Length> finished_of(const RoundSums& sums, const std::vector<std::string>& runs) {
  Length sum;
  for (const std::string& name : runs) {
    const auto s =
        std::find_if(sums.runs().begin(), sums.runs().end(), [&](const RunSum& r) { return same_name(r.run->named.name, name); });
    const auto part = s == sums.runs().end() ? std::nullopt : s->in_round(s->finished);
    if (!part) return std::nullopt;
    sum += *part;
  }
  return runs.empty() ? std::nullopt : std::optional<Length>(sum);
}

bool all_on_a_skirt(const Project& project, const std::vector<std::string>& pieces) {
  return !pieces.empty() && std::all_of(pieces.begin(), pieces.end(), [&](const std::string& name) {
    const Piece* piece = project.piece(name);
    return piece != nullptr && on_a_skirt(*piece) && !fills_a_run(*piece);
  });
}

bool holds_name(const std::vector<std::string>& names, const std::string& name) {
  return std::any_of(names.begin(), names.end(), [&](const std::string& n) { return same_name(n, name); });
}

// Runs that stand in no round go round the waist only when their pieces are the whole skirt.
bool whole_skirt(const Project& project, const std::vector<std::string>& pieces) {
  return std::all_of(project.pieces.begin(), project.pieces.end(), [&](const Piece& p) {
    return !on_a_skirt(p) || fills_a_run(p) || !of_outer_cloth(project, p) || holds_name(pieces, p.named.name);
  });
}

std::vector<WaistEdge> waist_edges(const Project& project, const RoundSums& sums) {
  std::vector<WaistEdge> edges;
  for (const Round& round : project.rounds) {
    if (!all_on_a_skirt(project, round.of)) continue;
    const auto finished = round.finished.known() ? round.finished.value : finished_of(sums, round.runs);
    if (finished) edges.push_back({&round.named, "rounds", "the edge of " + round.named.name, *finished});
  }
  std::vector<const PleatRun*> taken;
  for (const PleatRun& run : project.pleats) {
    if (sums.round_of(run) != nullptr || !all_on_a_skirt(project, run.of) || !whole_skirt(project, run.of)) continue;
    if (std::any_of(taken.begin(), taken.end(), [&](const PleatRun* t) { return t->of == run.of; })) continue;
    taken.push_back(&run);
    std::vector<std::string> together;
    for (const PleatRun& other : project.pleats)
      if (other.of == run.of && sums.round_of(other) == nullptr) together.push_back(other.named.name);
    const auto finished = finished_of(sums, together);
    if (finished)
      edges.push_back(
          {&run.named, "pleats", together.size() == 1 ? "run " + run.named.name : "the runs of " + run.of.front(), *finished});
  }
  return edges;
}

Diagnostic about_the_body(std::string code, Severity severity, const Named& named, std::string section, std::string sheet) {
  return message({named.name, std::move(section), std::move(sheet), true}, severity, std::move(code), named.at, "", "");
}

void judge_waist(const Project& project, const RoundSums& sums, Diagnostics& diag) {
  const auto waist = waist_with_ease(project);
  const std::vector<WaistEdge> edges = waist ? waist_edges(project, sums) : std::vector<WaistEdge>{};
  if (edges.empty()) return;
  const WaistEdge& edge = *std::min_element(edges.begin(), edges.end(), [&](const WaistEdge& a, const WaistEdge& b) {
    return size_of(a.finished - *waist) < size_of(b.finished - *waist);
  });
  const Length over = edge.finished - *waist;
  if (over >= -kSmallerBy && over <= kLargerBy) return;
  const ShownIn in = shown_in(project);
  const bool eased = project.ease.contains("waist");
  Diagnostic d = about_the_body("waist-measure-differs", Severity::hold, *edge.named, edge.section, "pleats");
  d.sentence = std::string(eased ? "Waist and ease are " : "The waist is ") + worked(*waist, in) + "; " + edge.what +
               " finishes at " + worked(edge.finished, in) + ", " + worked(size_of(over), in) +
               (over < Length{} ? " too small." : " too large.");
  const auto ease = eased ? *project.ease.at("waist") + over : over;
  d.hint = "is `waist` or `finished` mistyped? If it is meant: `ease: { waist: " + worked(size_of(ease), in) +
           (ease < Length{} ? " less" : "") + " }`";
  diag.add(std::move(d));
}

struct BodiceWaist {
  Length girth;
  std::string where;
};

// The bodice's waist as it was last measured: at a fitting, else on the garment or its pattern.
std::optional<BodiceWaist> bodice_waist(const Project& project) {
  for (auto fitting = project.fittings.rbegin(); fitting != project.fittings.rend(); ++fitting)
    if (const auto girth = fitting->girths.find("waist"); girth != fitting->girths.end() && girth->second.known())
      return BodiceWaist{*girth->second, "at " + fitting->named.name};
  if (const auto girth = project.finished_girths.find("waist"); girth != project.finished_girths.end() && girth->second.known())
    return BodiceWaist{*girth->second, "on the pattern"};
  return std::nullopt;
}

// A skirt planned from the waist on paper does not meet the bodice that was fitted.
void judge_joined_waist(const Project& project, const RoundSums& sums, Diagnostics& diag) {
  const auto bodice = bodice_waist(project);
  if (!bodice || !project.joined_at_waist.known() || !*project.joined_at_waist) return;
  const std::vector<WaistEdge> edges = waist_edges(project, sums);
  if (edges.empty()) return;
  const WaistEdge& edge = *std::min_element(edges.begin(), edges.end(), [&](const WaistEdge& a, const WaistEdge& b) {
    return size_of(a.finished - bodice->girth) < size_of(b.finished - bodice->girth);
  });
  const Length over = edge.finished - bodice->girth;
  if (size_of(over) <= kJoinsBy) return;
  const ShownIn in = shown_in(project);
  Diagnostic d = about_the_body("skirt-meets-no-bodice", Severity::hold, *edge.named, edge.section, "pleats");
  d.sentence = "The bodice's waist was " + worked(bodice->girth, in) + " " + bodice->where + "; " + edge.what + " finishes at " +
               worked(edge.finished, in) + ", " + worked(size_of(over), in) + (over < Length{} ? " too small." : " too large.");
  d.hint = "pleat the skirt to the bodice that was fitted: `finished: " + worked(bodice->girth, in) + "`, and its runs with it";
  diag.add(std::move(d));
}

// From where the breadths hang down to the lowest hem line there is: the longest way from waist to floor.
std::optional<Length> longest_to_floor(const Project& project) {
  std::optional<Length> longest;
  for (const auto& [place, length] : project.measures.waist_to_floor.at) {
    if (!length.known()) return std::nullopt;
    if (!longest || *length > *longest) longest = *length;
  }
  return longest;
}

void judge_floor(const Project& project, Diagnostics& diag) {
  if (in_tiers(project)) return;
  const bool clears = project.skirt && project.skirt->clears_floor_by.known();  // else nobody knows how short it is meant to be
  const auto floor = longest_to_floor(project);
  if (!floor) return;
  const Piece* longest = nullptr;
  Length band;  // the breadths of a banded skirt may hang from the band's lower edge
  for (const Piece& p : project.pieces) {
    if (p.length.kind != Size::Kind::finished) continue;
    if (p.part_of.known() && *p.part_of == PartOf::band) band = std::max(band, p.length.value);
    if (!on_a_skirt(p) || fills_a_run(p) || !of_outer_cloth(project, p)) continue;
    if (longest == nullptr || p.length.value > longest->length.value) longest = &p;
  }
  if (longest == nullptr) return;
  const ShownIn in = shown_in(project);
  const Length has = longest->length.value, wants = *floor - (clears ? *project.skirt->clears_floor_by : kFloorBy);
  const std::string so = longest->named.name + " finishes at " + worked(has, in) + "; waist to floor is " + worked(*floor, in);
  if (clears && has < wants - kFloorBy - band) {
    Diagnostic d = about_the_body("short-of-floor", Severity::hold, longest->named, "pieces", "cutting list");
    d.sentence = "Longest breadth: " + so + " at most, so it hangs " + worked(*floor - has, in) + " off the floor, not " +
                 worked(*project.skirt->clears_floor_by, in) + ".";
    d.hint = "`finished length: " + worked(wants, in) + "`, or `clears floor by: " + worked(*floor - has, in) + "`";
    diag.add(std::move(d));
  } else if (has > *floor + kFloorBy) {
    Diagnostic d = about_the_body("long-for-floor", Severity::warning, longest->named, "pieces", "cutting list");
    d.sentence = "Longest breadth: " + so + " at most, so it lies " + worked(has - *floor, in) + " on the floor.";
    d.hint = "`finished length: " + worked(wants, in) +
             "`; a train is accepted: `accept: [{ code: long-for-floor, at: " + longest->named.name +
             ", because: it has a train }]`";
    diag.add(std::move(d));
  }
}

// A hem is turned up from its allowance: what was left for it must be as deep, but where it is faced.
void judge_hem(const Project& project, Diagnostics& diag) {
  if (!project.skirt || !project.skirt->hem || !project.skirt->hem->depth.known() || !project.skirt->hem->faced_with.empty())
    return;
  const Length depth = *project.skirt->hem->depth;
  const ShownIn in = shown_in(project);
  Length longest;
  for (const Piece& p : project.pieces)
    if (on_a_skirt(p)) longest = std::max(longest, p.length.value);
  for (const Piece& p : project.pieces) {
    const bool breadth =
        on_a_skirt(p) && p.made_for.empty() && of_outer_cloth(project, p) && p.length.value * 2 > longest;  // no flounce
    if (!breadth || p.drawn || p.length.kind != Size::Kind::finished || !p.hem.known() || *p.hem >= depth) continue;
    diag.add(message(
        {p.named.name, "pieces", "cutting list"}, Severity::hold, "hem-allowance-short", p.hem.at,
        "The hem is " + worked(depth, in) + " deep, and " + p.named.name + " is cut with " + worked(*p.hem, in) + " for it.",
        "`hem: " + worked(depth, in) + "` and what is turned under; or `faced with` a cloth"));
  }
}

}  // namespace

void judge_by_the_body(const Project& project, const RoundSums& sums, Diagnostics& diag) {
  const auto clean = [&](const char* section) { return project.failed_sections.count(section) == 0; };
  if (!clean("measures") || !clean("ease") || !clean("pieces") || !clean("cloths")) return;
  if (!in_tiers(project) && clean("pleats") && clean("rounds")) {
    judge_waist(project, sums, diag);
    if (clean("fittings") && clean("finished girths")) judge_joined_waist(project, sums, diag);
  }
  if (clean("skirt")) judge_floor(project, diag);
  if (clean("skirt") && clean("allowances") && !in_tiers(project)) judge_hem(project, diag);
}

}  // namespace gownsheaf
