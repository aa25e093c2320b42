// Seams, edges and rounds.
#include <algorithm>

#include "check/sections.h"
#include "project/edges.h"

namespace gownsheaf {

namespace {

struct NameWord {
  std::string_view word, kind;
};
constexpr NameWord kSeamWords[] = {
    {"dart", "dart"},     {"princess", "princess"}, {"shoulder", "shoulder"}, {"centre back", "centre back"},
    {"sleeve", "sleeve"}, {"breadth", "breadth"},   {"waist", "waist"},       {"side", "side"},
    {"outseam", "side"},
};
constexpr NameWord kEdgeWords[] = {
    {"wrist", "wrist"},
    {"knee", "knee"},
    {"ankle", "knee"},
    {"centre front", "front closing"},
    {"front edge", "front closing"},
    {"front", "front closing"},
    {"centre back", "back closing"},
    {"side", "side closing"},
    {"neck", "neck"},
    {"armhole", "armhole"},
    {"waist", "waist"},
    {"hem", "lower edge"},
    {"lower edge", "lower edge"},
};

template <class Words>
std::string kind_of(const Item& item, std::string_view name, const Words& words) {
  if (const auto written = item.word("kind"); written.known()) return *written;
  for (const NameWord& w : words)
    if (has_word(name, w.word)) return std::string(w.kind);
  return "other";
}

std::vector<std::string> edges_in(const Item& item, std::string_view key) {
  std::vector<std::string> edges;
  for (const Entry* e : item.values(key))
    if (e->kind == Entry::Kind::text) edges.push_back(clean_name(e->text));
  return edges;
}

std::string shown(const Project& project, Length length) {
  const ShownIn in = project.show_lengths_in.known() ? *project.show_lengths_in : ShownIn::inches;
  return text_of(length, in, mark_step(in), Rounding::nearest).plain();
}

// Less than a step of the scissors cannot be cut apart.
bool as_long_as(const Project& project, Length a, Length b) {
  const ShownIn in = project.show_lengths_in.known() ? *project.show_lengths_in : ShownIn::inches;
  return (a < b ? b - a : a - b) < cut_step(in);
}

// Those of the edges whose pieces say how long they are.
std::vector<EdgeOfPiece> measured(const Project& project, const std::vector<std::string>& edges) {
  std::vector<EdgeOfPiece> known;
  for (const std::string& name : edges)
    if (EdgeOfPiece edge = edge_of_piece(project, name); edge.length.known()) known.push_back(std::move(edge));
  return known;
}

// A seam is as long as the shorter of the edges it joins; the longer is eased in.
void settle_seam(const Filling& file, const Project& project, Seam& seam) {
  const std::vector<EdgeOfPiece> edges = measured(project, seam.joins);
  if (edges.empty()) return;
  const auto by_length = [](const EdgeOfPiece& a, const EdgeOfPiece& b) { return *a.length < *b.length; };
  const auto& [shortest, longest] = std::minmax_element(edges.begin(), edges.end(), by_length);
  const Length low = *shortest->length, high = *longest->length, eased = seam.ease_in.known() ? *seam.ease_in : Length{};
  const About about{"seams", seam.named.name};
  if (!as_long_as(project, high - low, eased))
    report(file, about, Severity::hold, "seams-differ", seam.named.at,
           "The two sides of seam " + seam.named.name + " are " + shown(project, low) + " and " + shown(project, high) +
               (eased.is_zero() ? "." : ", and " + shown(project, eased) + " of that is eased in."),
           low == high ? "take `ease in` out, or mend one edge" : "mend one, or `ease in: " + shown(project, high - low) + "`",
           {shortest->length.at, longest->length.at});
  if (!seam.length.known()) {
    if (seam.length.origin == Origin::absent)
      seam.length = Given<Length>::guessed(low, "the edges it joins", shortest->length.at);
    return;
  }
  const bool between = low <= *seam.length && *seam.length <= high;
  if (!between && !as_long_as(project, *seam.length, low) && !as_long_as(project, *seam.length, high))
    report(file, about, Severity::error, "length-disagrees", seam.length.at,
           "Seam " + seam.named.name + " says " + shown(project, *seam.length) + "; the edges it joins say " +
               shown(project, low) + ".",
           "drop one: a seam is as long as the edges it joins", {shortest->length.at});
}

// An edge of the garment made of one edge of a piece is as long as that, or as so many of them as pieces are made.
void settle_edge(const Filling& file, const Project& project, const Item& item, EdgeLine& edge) {
  const std::vector<EdgeOfPiece> of = measured(project, edge.of);
  const About about{"edges", edge.named.name};
  if (edge.length.origin == Origin::absent && !item.has("length")) {
    if (edge.of.size() == 1 && of.size() == 1) {
      edge.length = Given<Length>::guessed(*of.front().length, "the edge of its piece", of.front().length.at);
    } else if (!edge.of.empty()) {
      report(file, about, Severity::error, "key-missing", edge.named.at,
             "Edge " + edge.named.name + " has no `length`, and " +
                 (edge.of.size() == 1 ? "its piece gives none for " + edge.of.front() + "." : "it is made of several edges."),
             "`length: 14 in`, say: its finished length");
    }
    return;
  }
  if (edge.of.size() != 1 || of.size() != 1 || !edge.length.known()) return;
  const Length one = *of.front().length;
  if (as_long_as(project, *edge.length, one) || as_long_as(project, *edge.length, one * pieces_made(*of.front().piece))) return;
  report(file, about, Severity::error, "length-disagrees", edge.length.at,
         "Edge " + edge.named.name + " says " + shown(project, *edge.length) + "; " + edge.of.front() + " says " +
             shown(project, one) + ".",
         "drop one: left out, the edge is as long as that of its piece", {of.front().length.at});
}

// Edges of this name that the garment has: one on each piece, two where the piece is cut on a fold.
std::int64_t edges_made(const EdgeOfPiece& edge, std::string_view written) {
  const bool two_sides = edge.piece->on_fold.known() && *edge.piece->on_fold && !has_word(written, "centre");
  return pieces_made(*edge.piece) * (two_sides ? 2 : 1);
}

// Where nothing says how many there are: as many seams as the pieces make of the edges they join. A sleeve or a leg is closed
// by its own seam; another piece joined to its other hand, or a breadth to the next, is left to the maker.
std::int64_t seams_made(const Project& project, const Seam& seam) {
  if (seam.joins.size() != 2 || seam.kind == "breadth") return 1;
  const EdgeOfPiece a = edge_of_piece(project, seam.joins[0]), b = edge_of_piece(project, seam.joins[1]);
  if (a.piece == nullptr || b.piece == nullptr) return 1;
  if (a.piece != b.piece) return std::min(edges_made(a, seam.joins[0]), edges_made(b, seam.joins[1]));
  const bool tube = seam.kind == "sleeve" || (a.piece->part_of.known() && *a.piece->part_of == PartOf::sleeve);
  const bool leg = a.piece->part_of.known() && *a.piece->part_of == PartOf::leg && a.edge != b.edge;
  return tube || leg ? pieces_made(*a.piece) : 1;
}

// A body has two armholes, wrists and knees. One edge that is left or right, or one of several of its kind, stands for itself.
std::int64_t edges_there(const Project& project, const EdgeLine& edge, std::int64_t of_its_kind) {
  if (!comes_twice(edge) || of_its_kind > 1 || has_word(edge.named.name, "left") || has_word(edge.named.name, "right")) return 1;
  if (edge.of.size() != 1) return 2;
  const EdgeOfPiece of = edge_of_piece(project, edge.of.front());
  if (of.piece == nullptr) return 2;
  const std::int64_t made = edges_made(of, edge.of.front());
  const bool all_of_them =
      made > 1 && of.length.known() && edge.length.known() && as_long_as(project, *edge.length, *of.length * made);
  return all_of_them ? 1 : made;
}

void say_number(const Filling& file, const char* section, const Named& named, std::int64_t number, const std::string& why) {
  if (number < 2) return;
  report(file, {section, named.name}, Severity::note, "number-guessed", named.at,
         capital(named.name) + " is counted " + whole_number(number) + " times: " + why + ".",
         "`number: " + whole_number(number) + "`, or as many as there are");
}

}  // namespace

void fill_seams_and_edges(const Filling& file, Project& project) {
  for (const Item& item : items_of_map(file.root, "seams")) {
    Seam seam;
    seam.named = named_of(file, item, "seams", "");
    seam.joins = edges_in(item, "joins");
    seam.length = item.length("length");
    seam.ease_in = item.length("ease in");
    seam.left_open = item.length("left open");
    seam.by_hand = item.word("sewn").value.value_or("") == "by hand";
    seam.kind = kind_of(item, seam.named.name, kSeamWords);
    const auto seams = item.count("number");
    seam.number = seams.known() ? *seams : seams_made(project, seam);
    if (!item.has("number")) say_number(file, "seams", seam.named, seam.number, "its pieces have so many of these edges");
    settle_seam(file, project, seam);
    if (seam.left_open.known() && seam.length.known() && *seam.left_open > *seam.length)
      report(file, {"seams", seam.named.name}, Severity::error, "out-of-range", seam.left_open.at,
             "`left open: " + shown(project, *seam.left_open) + "` is more than the " + shown(project, *seam.length) +
                 " of seam " + seam.named.name + ".",
             "it may be as long as the seam at most");
    project.seams.push_back(std::move(seam));
  }
  for (const Item& item : items_of_map(file.root, "edges")) {
    EdgeLine edge;
    edge.named = named_of(file, item, "edges", "");
    edge.of = edges_in(item, "of");
    edge.length = item.length("length");
    edge.kind = kind_of(item, edge.named.name, kEdgeWords);
    edge.shape = item.word("shape").value.value_or("straight");
    edge.finish = item.word("finish").value.value_or("");
    edge.ease_to_draw = item.length("ease to draw");
    settle_edge(file, project, item, edge);
    project.edges.push_back(std::move(edge));
  }
  const std::vector<Item> items = items_of_map(file.root, "edges");
  for (std::size_t i = 0; i < project.edges.size(); ++i) {
    EdgeLine& edge = project.edges[i];
    const auto edges = items[i].count("number");
    const auto alike =
        std::count_if(project.edges.begin(), project.edges.end(), [&](const EdgeLine& e) { return e.kind == edge.kind; });
    edge.number = edges.known() ? *edges : edges_there(project, edge, alike);
    if (edge.length.known() && !items[i].has("number")) say_number(file, "edges", edge.named, edge.number, "a body has two");
  }
}

void fill_rounds(const Filling& file, Project& project) {
  for (const Item& item : items_of_map(file.root, "rounds")) {
    Round round;
    round.named = named_of(file, item, "rounds", "");
    round.of = names_in(file, item, "of", "pieces");
    round.runs = names_in(file, item, "runs", "pleats");
    round.centre_front_is_seam = item.word("centre front is").value.value_or("") == "a seam";
    round.finished = item.length("finished");
    const auto runs = item.values("runs");
    for (std::size_t i = 0; i < runs.size(); ++i)
      for (std::size_t k = 0; k < i; ++k)
        if (folded_name(clean_name(runs[i]->text)) == folded_name(clean_name(runs[k]->text)))
          report(file, {"rounds", round.named.name}, Severity::error, "name-twice", runs[i]->at,
                 "Run " + clean_name(runs[i]->text) + " stands twice in round " + round.named.name + ".",
                 "each run lies in it once; name a second run apart", {runs[k]->at});
    project.rounds.push_back(std::move(round));
  }
}

}  // namespace gownsheaf
