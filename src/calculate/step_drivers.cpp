#include "calculate/step_drivers.h"

#include <algorithm>

#include "calculate/fact_values.h"
#include "calculate/new_figure.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kRowsOfGathers = 2;             // common practice, no source
const Length kBetweenBastingRows = Length::inches(9);  // rows 8 to 10 in apart; common practice, no source

bool part_is(const Piece& p, std::initializer_list<PartOf> parts) {
  return p.part_of.known() && std::find(parts.begin(), parts.end(), *p.part_of) != parts.end();
}

// A strip that gathers to an edge: told by its name, as the fact is.
bool is_flounce(const Piece& p) {
  for (const char* word : {"flounce", "flounces", "frill", "ruffle"})
    if (holds_word(p.named.name, word)) return true;
  return false;
}

// A sum of which one part is not known is not known.
struct Sum {
  Length length;
  std::int64_t terms = 0;
  bool whole = true;
  void add(const std::optional<Length>& one, std::int64_t times = 1) {
    ++terms;
    if (one) length += *one * times;
    else whole = false;
  }
  void add(const Sum& other) {
    length += other.length;
    terms += other.terms;
    whole = whole && other.whole;
  }
};

class Drivers {
 public:
  Drivers(const Project& project, Figures& figures) : project_(project), figures_(figures), in_(shown_in(project)) {}

  void add() {
    of_pieces();
    of_bones();
    of_seams();
    of_edges();
    of_trims();
    of_pleats();
    of_cloths();
    count("pockets", "pockets", static_cast<std::int64_t>(project_.pockets.size()));
    std::int64_t plackets = 0;
    for (const Placket& p : project_.plackets) plackets += p.number;
    count("plackets", "plackets", plackets);
    count("openings", "plackets", static_cast<std::int64_t>(project_.pockets.size()) + plackets);
  }

 private:
  void count(const char* what, const char* from, std::int64_t n, const char* section = "garment", std::string_view item = "") {
    if (n > 0) NewFigure(figures_, in_, section, item, what).is(n).plain_input(from).add();
  }
  void length(const char* what, const char* from, const Sum& sum, const char* section = "garment", std::string_view item = "") {
    if (sum.whole && !sum.length.is_zero()) NewFigure(figures_, in_, section, item, what).is(sum.length).plain_input(from).add();
  }

  // One piece as it is cut from its outermost cloth.
  struct CutSize {
    std::optional<std::int64_t> copies;
    std::optional<Length> width, length;
  };
  CutSize cut_size(const Piece& p) const {
    if (p.from.empty()) return {};
    const std::string key = "pieces/" + p.named.name + "/" + p.from.front() + "/";
    return {figures_.count(key + "copies"), figures_.length(key + "cut width"), figures_.length(key + "cut length")};
  }
  static std::optional<Length> all_round(const CutSize& cut) {
    if (!cut.copies || !cut.width || !cut.length) return {};
    return (*cut.width + *cut.length) * (2 * *cut.copies);
  }

  bool interlining(const std::string& name) const {
    const Cloth* cloth = project_.cloth(name);
    return cloth != nullptr && cloth->used_as.known() && *cloth->used_as == UsedAs::interlining;
  }
  bool outer(const Piece& p) const {
    const Cloth* cloth = p.from.empty() ? nullptr : project_.cloth(p.from.front());
    return cloth != nullptr && cloth->used_as.known() && *cloth->used_as == UsedAs::outer;
  }

  void of_pieces() {
    std::int64_t pieces = 0, drapery = 0;
    Sum layers, marked, sleeve_layers, sleeve_seams, leg_layers, leg_seams, corset_edges, collar, flounces, band, skirt, basting,
        draped;
    for (const Piece& p : project_.pieces) {
      if (!p.made_for.empty()) continue;
      const CutSize cut = cut_size(p);
      if (part_is(p, {PartOf::bodice, PartOf::corset}) && p.make.known())
        pieces += p.make->kind == Make::Kind::pairs    ? 2 * p.make->number
                  : p.make->kind == Make::Kind::number ? p.make->number
                                                       : 0;
      const auto inner = static_cast<std::int64_t>(p.from.size()) - 1;
      if (part_is(p, {PartOf::bodice}) && inner > 0) layers.add(all_round(cut), inner);
      if (part_is(p, {PartOf::bodice, PartOf::sleeve, PartOf::leg, PartOf::corset}) && !p.from.empty())
        marked.add(all_round(cut));
      if (part_is(p, {PartOf::sleeve})) {
        if (inner > 0) sleeve_layers.add(all_round(cut), inner);
        // A sleeve of so many panels has as many seams.
        sleeve_seams.add(cut.copies ? cut.length : std::nullopt, cut.copies.value_or(0));
      }
      if (part_is(p, {PartOf::leg})) {  // as a sleeve: a leg of so many panels has as many seams
        if (inner > 0) leg_layers.add(all_round(cut), inner);
        leg_seams.add(cut.copies ? cut.length : std::nullopt, cut.copies.value_or(0));
      }
      if (part_is(p, {PartOf::corset})) corset_edges.add(cut.copies ? cut.width : std::nullopt, 2 * cut.copies.value_or(0));
      if (part_is(p, {PartOf::collar})) collar.add(all_round(cut));
      if (part_is(p, {PartOf::band})) band.add(cut.copies ? cut.width : std::nullopt, cut.copies.value_or(0));
      if (part_is(p, {PartOf::drapery})) draped.add(all_round(cut)), drapery += cut.copies.value_or(1);
      if (is_flounce(p)) {
        flounces.add(cut.copies ? cut.width : std::nullopt, cut.copies.value_or(0));
      } else if (part_is(p, {PartOf::skirt, PartOf::petticoat})) {
        // Breadths joined round: each has a seam. An interlining in its own right is basted, in rows over each breadth.
        if (outer(p)) skirt.add(cut.copies ? cut.length : std::nullopt, cut.copies.value_or(0));
        if (std::any_of(p.from.begin(), p.from.end(), [&](const std::string& c) { return interlining(c); })) {
          const std::int64_t rows = cut.width ? 1 + cut.width->in_ticks() / kBetweenBastingRows.in_ticks() : 0;
          basting.add(cut.copies && cut.width ? cut.length : std::nullopt, rows * cut.copies.value_or(0));
        }
      }
    }
    count("pieces", "pieces", pieces);
    length("layer edges", "pieces", layers);
    length("marked edges", "pieces", marked);
    length("sleeve edges", "pieces", sleeve_layers);
    length("sleeve seams", "pieces", sleeve_seams);
    length("leg edges", "pieces", leg_layers);
    length("leg seams", "pieces", leg_seams);
    length("corset edges", "pieces", corset_edges);
    length("collar edges", "pieces", collar);
    length("band", "pieces", band);
    count("drapery pieces", "pieces", drapery);
    length("drapery edges", "pieces", draped);
    length("flounce strips", "pieces", flounces);
    length("seams", "pieces", skirt, "skirt");
    length("basting rows", "pieces", basting, "skirt");
  }

  void of_bones() {
    std::int64_t bones = 0;
    Sum channels;
    for (const Bone& b : project_.bones) {
      bones += b.number;
      channels.add(figures_.length("bones/" + b.named.name + "/channel length"), b.number);
    }
    count("bones", "bones", bones);
    length("channels", "bones", channels);
  }

  void of_seams() {
    Sum seams, darts, princess, open, by_machine, by_hand;
    for (const Seam& s : project_.seams) {
      const std::optional<Length> one = s.length.value;
      if (s.left_open.known() && s.length.known() && *s.left_open == *s.length) open.add(one, s.number);
      if (of_the_skirt(s, project_)) continue;
      seams.add(one, s.number);
      if (s.kind == "dart") darts.add(one, s.number);
      else (s.by_hand ? by_hand : by_machine).add(one, s.number);
      if (s.kind == "princess") princess.add(one, s.number);
    }
    length("seams", "seams", seams);
    length("machine seams", "seams", by_machine);
    length("hand seams", "seams", by_hand);
    length("darts", "seams", darts);
    length("princess seams", "seams", princess);
    length("left open", "seams", open);
    Sum twice = seams;  // each seam has two allowances
    twice.length = twice.length * 2;
    length("seam edges", "seams", twice);
  }

  void of_edges() {
    Sum neck, armholes, wrists, knees, lower;
    for (const EdgeLine& e : project_.edges) {
      const std::optional<Length> one = e.length.value;
      if (e.kind == "neck") neck.add(one, e.number);
      if (e.kind == "armhole") armholes.add(one, e.number);
      if (e.kind == "wrist") wrists.add(one, e.number);
      if (e.kind == "knee") knees.add(one, e.number);
      if (e.kind == "lower edge") lower.add(one, e.number);
    }
    Sum closing, felled, stayed = neck;
    for (const Closure& c : project_.closures)
      closing.add(figures_.length("closures/" + c.named.name + "/edge length"), 2 * c.closings.value.value_or(1));
    stayed.add(armholes);
    for (const Sum* s : {&neck, &armholes, &closing, &lower}) felled.add(*s);
    length("neck", "edges", neck);
    length("armholes", "edges", armholes);
    length("wrists", "edges", wrists);
    length("knees", "edges", knees);
    length("lower edge", "edges", lower);
    length("stayed edges", "edges", stayed);
    length("closing edges", "closures", closing);
    // Without a neck the edges are not described, and what is felled is more than is written.
    if (neck.terms > 0) length("felled edges", "edges", felled);
  }

  // The length of the seams and edges that are named, or the length that is written.
  std::optional<Length> along(const std::vector<std::string>& names, const Given<Length>& written) const {
    if (written.known()) return *written;
    if (names.empty()) return {};
    Length sum;
    for (const std::string& name : names) {
      const Seam* seam = project_.seam(name);
      const EdgeLine* edge = project_.edge(name);
      if (seam != nullptr && seam->length.known()) sum += *seam->length * seam->number;
      else if (edge != nullptr && edge->length.known()) sum += *edge->length * edge->number;
      else return {};
    }
    return sum;
  }

  void of_trims() {
    Sum runs, lace, piped, strips;
    std::int64_t bows = 0, others = 0;
    for (const Trim& t : project_.trims) {
      if (t.kind == "bow") {
        bows += t.number.value.value_or(1);
        continue;
      }
      ++others;
      (t.kind == "lace" ? lace : runs).add(along(t.along, t.length), t.rows.value.value_or(1));
    }
    for (const Piping& p : project_.piping) piped.add(along(p.along, p.length));
    strips = piped;
    for (const Piping& p : project_.binding) strips.add(along(p.along, p.length));
    Sum sewn = runs;
    sewn.add(lace);
    count("bows", "trims", bows);
    count("trims", "trims", others + (bows > 0 ? 1 : 0));
    length("trim runs", "trims", runs);
    length("lace runs", "trims", lace);
    length("sewn trims", "trims", sewn);
    length("piped", "piping", piped);
    length("strips", "piping", strips);
  }

  void of_pleats() {
    Sum top;
    for (const PleatRun& r : project_.pleats) {
      const std::string key = "pleats/" + r.named.name + "/";
      const std::int64_t halves = r.half ? 2 : 1;
      const bool gauged = r.kind == PleatKind::cartridge, threads = gauged || r.kind == PleatKind::gathers;
      const bool of_the_top = std::any_of(r.of.begin(), r.of.end(), [&](const std::string& name) {
        const Piece* piece = project_.piece(name);
        return piece != nullptr && part_is(*piece, {PartOf::skirt, PartOf::petticoat});
      });
      if (!gauged && of_the_top) top.add(figures_.length(key + "finished"), halves);
      if (const auto n = figures_.count(key + (gauged ? "ridges" : "count")))
        NewFigure(figures_, in_, "pleats", r.named.name, "in all")
            .is(*n * halves)
            .from(key + (gauged ? "ridges" : "count"))
            .at(r.named.at)
            .add();
      const auto flat = figures_.length(key + "flat");
      if (!threads || !flat) continue;
      const std::int64_t rows = figures_.count(key + "rows").value_or(kRowsOfGathers);
      NewFigure(figures_, in_, "pleats", r.named.name, "thread runs")
          .is(*flat * (rows * halves))
          .from(key + "flat")
          .at(r.named.at)
          .add();
    }
    length("top sewn", "pleats", top, "skirt");
  }

  void of_cloths() {
    for (const Cloth& c : project_.cloths) {
      const auto all = figures_.count("cloths/" + c.named.name + "/pieces");
      const std::int64_t breadths = figures_.count("cloths/" + c.named.name + "/breadths").value_or(0);
      if (all) count("other parts", "pieces", *all - breadths, "cloths", c.named.name);
    }
  }

  const Project& project_;
  Figures& figures_;
  ShownIn in_;
};

}  // namespace

bool of_the_skirt(const Seam& seam, const Project& project) {
  return seam.kind == "breadth" || std::any_of(seam.joins.begin(), seam.joins.end(), [&](const std::string& edge) {
           const auto of = edge.rfind(" of ");
           const Piece* piece = of == std::string::npos ? nullptr : project.piece(edge.substr(of + 4));
           return piece != nullptr && part_is(*piece, {PartOf::skirt, PartOf::petticoat});
         });
}

void add_step_drivers(const Project& project, Figures& figures) { Drivers(project, figures).add(); }

}  // namespace gownsheaf
