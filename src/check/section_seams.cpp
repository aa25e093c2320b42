// Seams, edges and rounds.
#include "check/sections.h"

namespace gownsheaf {

namespace {

struct NameWord { std::string_view word, kind; };
constexpr NameWord kSeamWords[] = {
    {"dart", "dart"},         {"princess", "princess"}, {"shoulder", "shoulder"}, {"centre back", "centre back"},
    {"sleeve", "sleeve"},     {"breadth", "breadth"},   {"waist", "waist"},       {"side", "side"},
};
constexpr NameWord kEdgeWords[] = {
    {"centre front", "front closing"}, {"front edge", "front closing"}, {"front", "front closing"},
    {"centre back", "back closing"},   {"side", "side closing"},        {"neck", "neck"},
    {"armhole", "armhole"},            {"wrist", "wrist"},              {"waist", "waist"},
    {"hem", "lower edge"},             {"lower edge", "lower edge"},
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

}  // namespace

void fill_seams_and_edges(const Filling& file, Project& project) {
  for (const Item& item : items_of_map(file.root, "seams")) {
    Seam seam;
    seam.named = named_of(file, item, "seams", "");
    seam.joins = edges_in(item, "joins");
    seam.length = item.length("length");
    seam.kind = kind_of(item, seam.named.name, kSeamWords);
    seam.number = item.count("number").value.value_or(1);
    project.seams.push_back(std::move(seam));
  }
  for (const Item& item : items_of_map(file.root, "edges")) {
    EdgeLine edge;
    edge.named = named_of(file, item, "edges", "");
    edge.of = edges_in(item, "of");
    edge.length = item.length("length");
    edge.kind = kind_of(item, edge.named.name, kEdgeWords);
    edge.number = item.count("number").value.value_or(1);
    edge.shape = item.word("shape").value.value_or("straight");
    edge.finish = item.word("finish").value.value_or("");
    edge.ease_to_draw = item.length("ease to draw");
    project.edges.push_back(std::move(edge));
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
