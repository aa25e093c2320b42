#include "calculate/cut_parts.h"

#include <algorithm>

#include "calculate/exact.h"
#include "calculate/new_figure.h"

namespace gownsheaf {
namespace {

bool names_edge(const std::vector<std::string>& edges, std::string_view a, std::string_view b) {
  return std::any_of(edges.begin(), edges.end(), [&](const std::string& e) { return same_name(e, a) || same_name(e, b); });
}

NewFigure figure(const Project& project, Figures& figures, const Cut& cut, const std::string& quantity) {
  NewFigure f(figures, shown_in(project), "pieces", cut.piece.as_named(), quantity, cut.piece.cloth);
  f.at(cut.piece.at);
  return f;
}

BreadthPlan plan_of(const Cut& cut) {
  BreadthPlan plan;
  plan.piece = cut.piece.piece;
  plan.cloth = cut.piece.cloth;
  plan.key = cut.piece.key;
  plan.across = cut.piece.across;
  plan.along = cut.piece.along;
  plan.seam = cut.piece.seam;
  plan.outline = cut.piece.outline;
  return plan;
}

// Parts of one width, in the order of their first part: a part that touches an edge of the panel is a side.
struct Group {
  std::string name;
  Length cut;
  std::int64_t many = 0;
};

std::vector<Group> groups(const PiecedPanel& panel) {
  std::vector<Group> all;
  for (std::size_t i = 0; i < panel.parts.size(); ++i) {
    const bool side = i == 0 || i + 1 == panel.parts.size();
    const Length cut = panel.parts[i].cut;
    const std::string name = side ? "side" : "middle";
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const Group& g) { return g.cut == cut && g.name.rfind(name, 0) == 0; });
    if (at != all.end()) {
      ++at->many;
      continue;
    }
    const bool again = std::any_of(all.begin(), all.end(), [&](const Group& g) { return g.name.rfind(name, 0) == 0; });
    all.push_back({again ? "other " + name : name, cut, 1});
  }
  return all;
}

}  // namespace

PanelInput panel_of(const Project& project, const Piece& piece, Length width, Length usable, Length seam) {
  PanelInput in;
  in.width = width;
  in.usable = usable;
  in.seam = seam;
  in.lose = *project.rules.strips_lose;
  in.clear_of_centre = piece.joining.clear_of_centre;
  // Of the named edges the first two are the long sides, in the file's words; any other name is kept clear at both.
  in.clear_of_first = names_edge(piece.joining.clear_of, "front", "side");
  in.clear_of_last = names_edge(piece.joining.clear_of, "back", "centre");
  if (!piece.joining.clear_of.empty() && !in.clear_of_first && !in.clear_of_last) in.clear_of_first = in.clear_of_last = true;
  in.clear_from_edge = piece.joining.clear_from_edge;
  return in;
}

BreadthPlan add_joins(const Project& project, const Cut& whole, const PiecedPanel& panel, Figures& figures) {
  const ShownIn in = shown_in(project);
  const std::string& key = whole.piece.key;
  BreadthPlan plan = plan_of(whole);
  plan.joins = panel.joins;
  plan.repeat = whole.repeat ? *whole.repeat : Length{};
  plan.taken = whole.repeat ? whole.takes : Length{};

  const std::string lose =
      project.rules.strips_lose.known() && *project.rules.strips_lose == StripsLose::one_seam ? "seam" : "2 × seam";
  figure(project, figures, whole, "parts")
      .is(static_cast<std::int64_t>(panel.parts.size()))
      .from(key + "/cut width")
      .from("cloths/" + whole.piece.cloth + "/usable width")
      .from("pieces/" + whole.piece.piece + "/seam allowance")
      .from("rules/strips lose")
      .working("widths joined for " + whole.piece.piece, "least n with n × usable width ≥ cut width + (n − 1) × " + lose,
               worked(whole.piece.across, in) + " of " + worked(whole.piece.seam, in) + " seams")
      .add();
  for (std::size_t i = 0; i < panel.joins.size(); ++i)
    figure(project, figures, whole, "join " + whole_number(static_cast<std::int64_t>(i) + 1))
        .is(panel.joins[i])
        .from(key + "/parts")
        .working("joins of " + whole.piece.piece, "from its long edge, symmetric about the centre unless an edge is kept clear",
                 worked(panel.joins[i], in))
        .add();
  return plan;
}

std::vector<Cut> parts_of_panel(const Project& project, const Cut& whole, const PiecedPanel& panel, Figures& figures) {
  const ShownIn in = shown_in(project);
  const std::string& key = whole.piece.key;
  const BreadthPlan plan = add_joins(project, whole, panel, figures);
  std::vector<Cut> cuts;
  for (const Group& g : groups(panel)) {
    Cut part = whole;
    CutPiece& c = part.piece;
    c.part_of = whole.piece.piece;
    c.piece = whole.piece.piece + " " + g.name;
    c.key = key + "/part " + g.name;
    c.across = g.cut;
    c.copies = whole.piece.copies * g.many;
    c.pair = false;
    c.on_fold = false;
    c.full_width = false;
    c.allowances = (c.allowances == "none added" ? "" : c.allowances + ", ") + "joins " + worked(c.seam, in);
    const std::string name = "part " + g.name;
    figure(project, figures, whole, name + "/cut width")
        .is(g.cut)
        .from(key + "/parts")
        .working("cut width of " + c.piece, "between joins + what each join takes", worked(g.cut, in))
        .add();
    figure(project, figures, whole, name + "/cut length").is(c.along).from(key + "/cut length").add();
    figure(project, figures, whole, name + "/copies")
        .is(c.copies)
        .from(key + "/copies")
        .from(key + "/parts")
        .working("copies of " + c.piece, "panels × such parts in each",
                 whole_number(whole.piece.copies) + " × " + whole_number(g.many))
        .add();
    part.breadth.reset();
    if (cuts.empty()) part.breadth = plan;
    cuts.push_back(std::move(part));
  }
  return cuts;
}

void add_repeats(const Project& project, Cut& cut, Length repeat, Figures& figures) {
  const ShownIn in = shown_in(project);
  const std::int64_t many = count_of(cut.takes, repeat, Rounding::nearest);
  const std::string& key = cut.piece.key;
  figure(project, figures, cut, "repeat along").is(repeat).written().add();
  figure(project, figures, cut, "repeats")
      .is(many)
      .from(key + "/cut length")
      .from(key + "/repeat along")
      .working("repeats for " + cut.piece.piece, "cut length / repeat, up to a whole one",
               worked(cut.piece.along, in) + " / " + worked(repeat, in))
      .add();
  figure(project, figures, cut, "taken")
      .is(cut.takes)
      .from(key + "/repeats")
      .from(key + "/repeat along")
      .working("cloth that one " + cut.piece.piece + " takes", "repeats × repeat",
               whole_number(many) + " × " + worked(repeat, in))
      .add();
  BreadthPlan plan = plan_of(cut);
  plan.repeat = repeat;
  plan.taken = cut.takes;
  plan.half_drop = cut.half_drop;
  for (Length x; x < cut.takes; x += repeat) plan.repeats_at.push_back(x);
  cut.breadth = plan;
}

}  // namespace gownsheaf
