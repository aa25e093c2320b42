// The delivered step library, and whole garments made of features, for tests of the order of work.
#pragma once
#include <string>
#include <vector>

#include "calculate/facts.h"
#include "calculate/order_of_work.h"
#include "check/check.h"
#include "support/catch.h"
#include "support/random_draws.h"
#include "support/work_garment.h"

namespace gownsheaf::test {

inline const Templates& delivered_library() {
  static const Templates templates = [] {
    Diagnostics diag;
    std::vector<SourceText> sources;
    Templates t = load_templates(GOWNSHEAF_SOURCE_DIR "/packet-templates", diag, sources);
    REQUIRE_FALSE(diag.has_errors());
    return t;
  }();
  return templates;
}

inline Closure closure_named(const std::string& name, Fasten fasten, const std::string& edge) {
  Closure c;
  c.named.name = name;
  c.fasten = fasten;
  c.edge = edge;
  return c;
}

// A garment with the pieces, cloths and lays of the parts that are asked for; the rest of its features are set by the test.
struct Parts {
  Garment garment = Garment::dress;
  bool bodice = false, sleeves = false, skirt = false, band = false, drapery = false, corset = false, lined = false;
};
inline WorkGarment garment_of(const Parts& parts) {
  WorkGarment g;
  Project& p = g.project;
  p.file = "trial.yaml";
  p.title = "Trial for the ferry players";
  p.garment = Given<Garment>::written(parts.garment, {});
  p.sections_given = {"title", "cloths", "pieces"};
  p.cloths = {cloth_named("slate wool", UsedAs::outer), cloth_named("drab sateen", UsedAs::lining)};
  LayPlan wool, sateen;
  wool.cloth = "slate wool";
  sateen.cloth = "drab sateen";
  const auto add = [&](bool wanted, const char* name, PartOf part, bool full) {
    if (!wanted) return;
    p.pieces.push_back(piece_named(name, part, {"slate wool"}));
    wool.cut.push_back(cut_of(name, "slate wool", 2, full));
    if (!parts.lined || full) return;
    p.pieces.back().from.push_back("drab sateen");
    sateen.cut.push_back(cut_of(name, "drab sateen", 2, false));
  };
  add(parts.bodice, "bodice front", PartOf::bodice, false);
  add(parts.sleeves, "sleeve", PartOf::sleeve, false);
  add(parts.skirt, "skirt breadth", PartOf::skirt, true);
  add(parts.band, "waistband", PartOf::band, false);
  add(parts.drapery, "bertha", PartOf::drapery, false);
  add(parts.corset, "corset panel", PartOf::corset, false);
  for (LayPlan* lay : {&wool, &sateen}) {
    lay->needed = Length::inches(100);
    lay->bought = Length::inches(120);
    g.plans.lays.push_back(*lay);
  }
  return g;
}

// effort: places tried for a better order; little of it in laws over many garments.
inline std::vector<PlannedStep> planned_by_library(const WorkGarment& g, std::int64_t effort = kOrderEffort) {
  Diagnostics diag;
  auto work = order_of_work(g.project, delivered_library(), g.figures, facts_of(g.project, g.figures, g.plans), diag, effort);
  REQUIRE_FALSE(diag.has_errors());
  return work;
}

// The library's step behind an id: "sew-hooks@front closing" is of sew-hooks.
inline std::string step_of(const std::string& id) { return id.substr(0, id.find('@')); }

// The traps of the workroom: the first must be done before the second, whatever else the garment has. Each line is an act
// that cannot be mended when it is done too late. The works that say so are named at the steps; the rest is common practice.
struct Trap {
  const char *first, *then;
};
inline const std::vector<Trap>& traps() {
  static const std::vector<Trap> all{
      // measures and pattern
      {"try-underlayers", "measure-wearer"},
      {"try-underlayers", "measure-to-floor"},
      {"measure-to-floor", "cut-breadths"},
      {"fit-mock-up", "sign-pattern"},
      {"fit-second-mock-up", "sign-pattern"},
      {"sign-pattern", "cut-pieces"},
      {"sign-pattern", "cut-breadths"},
      {"shrink-cloth", "cut-pieces"},
      {"lay-out-cloth", "cut-breadths"},
      // cutting: the largest first, strips last
      {"reserve-bias-patch", "cut-breadths"},
      {"reserve-bias-patch", "cut-pieces"},
      {"reserve-bias-patch", "cut-bias-strips"},
      {"cut-breadths", "cut-pieces"},
      {"cut-breadths", "cut-bias-strips"},
      {"cut-pieces", "cut-bias-strips"},
      // layers and edges before any seam or fitting
      {"stay-bias-edges", "fit-bodice"},
      {"baste-bodice-layers", "stitch-darts"},
      {"baste-bodice-layers", "baste-seams"},
      {"baste-strain-lining", "stitch-darts"},
      {"make-piping", "baste-piping"},
      {"baste-piping", "baste-seams"},
      {"baste-closing-strips", "turn-closing-edges"},
      {"fit-bodice", "finish-bodice-seams"},
      {"fit-bodice", "stitch-bodice-seams"},
      // bones before the edge that shuts them in
      {"baste-allowances-open", "sew-bone-channels"},
      {"finish-bodice-seams", "sew-bone-channels"},
      {"sew-bone-channels", "insert-bones"},
      {"turn-closing-edges", "insert-bones"},
      {"cut-bones", "insert-bones"},
      {"insert-bones", "finish-lower-edge"},
      {"insert-bones", "sew-waist-stay"},
      {"sew-bone-channels", "finish-neck"},
      // sleeves
      {"line-sleeves", "trim-flat-sleeves"},
      {"trim-flat-sleeves", "sew-sleeves"},
      {"fit-sleeve", "set-sleeves"},
      {"baste-drapery-in", "set-sleeves"},
      {"pipe-armholes", "set-sleeves"},
      {"set-sleeves", "trim-armholes"},
      {"try-bodice-closed", "trim-armholes"},
      {"stitch-bodice-seams", "drape-on-form"},
      {"set-sleeves", "tack-drapery"},
      // closing: boned and tried on closed, two rows, then fasteners, then what covers them
      {"insert-bones", "try-bodice-closed"},
      {"set-sleeves", "try-bodice-closed"},
      {"sew-waist-stay", "try-bodice-closed"},
      {"try-bodice-closed", "mark-fasteners"},
      {"turn-closing-edges", "mark-fasteners"},
      {"try-bodice-closed", "sew-fasteners"},
      {"turn-closing-edges", "sew-fasteners"},
      {"mark-fasteners", "sew-hooks"},
      {"mark-fasteners", "work-eyelets"},
      {"mark-fasteners", "sew-buttons"},
      {"turn-closing-edges", "sew-hooks"},
      {"try-bodice-closed", "sew-hooks"},
      {"try-bodice-closed", "work-eyelets"},
      {"try-bodice-closed", "sew-buttons"},
      {"sew-hooks", "cover-shanks"},
      {"sew-hooks", "fell-lining"},
      {"work-eyelets", "fell-lining"},
      {"insert-bones", "fell-lining"},
      {"sew-hooks", "hang-closed"},
      {"join-skirt-to-bodice", "hang-closed"},
      {"sew-hooks", "add-guard"},
      // skirt
      {"baste-interlining", "sew-breadths"},
      {"mark-placket-and-pocket", "sew-breadths"},
      {"make-pocket", "sew-breadths"},
      {"sew-breadths", "press-skirt-seams"},
      {"press-skirt-seams", "mark-pleats"},
      {"fit-bodice", "mark-pleats"},
      {"fit-bodice", "run-gauging"},
      {"stiffen-hem", "hem-skirt"},
      {"hem-skirt", "level-the-waist"},
      {"level-the-waist", "mark-pleats"},
      {"try-skirt-pinned", "trim-skirt-top"},
      {"trim-skirt-top", "sew-skirt-to-band"},
      {"hang-skirt", "level-the-hem"},
      {"finish-lower-edge", "join-skirt-to-bodice"},
      {"sew-skirt-to-band", "hang-skirt"},
      {"fold-pleats", "close-last-seam"},
      {"run-gauging", "close-last-seam"},
      {"draw-up-gathers", "close-last-seam"},
      {"close-last-seam", "try-skirt-pinned"},
      {"gather-flounces", "sew-flounces"},
      {"hem-skirt", "sew-flounces"},
      {"level-the-hem", "sew-flounces"},
      // drapery: on the real shape, cut after the strips, fastened when nothing is felled over it any more
      {"stitch-bodice-seams", "cut-drapery"},
      {"cut-bias-strips", "cut-drapery"},
      {"cut-pieces", "cut-drapery"},
      {"cut-drapery", "mount-drapery"},
      {"join-foundation", "mount-drapery"},
      {"fell-lining", "fasten-drapery"},
      {"sew-hooks", "fasten-drapery"},
      {"mount-drapery", "join-lace"},
      // trims
      {"measure-trim-runs", "join-lace"},
      {"measure-trim-runs", "gather-flounces"},
      {"join-lace", "sew-trims"},
      {"try-bodice-closed", "measure-trim-runs"},
      {"measure-trim-runs", "make-trims"},
      {"make-trims", "sew-trims"},
      {"try-bodice-closed", "sew-trims"},
      {"hem-skirt", "sew-trims"},
      {"level-the-hem", "sew-trims"},
      // corset
      {"fit-corset-mock-up", "cut-pieces"},
      {"set-busk", "sew-corset-seams"},
      {"sew-corset-channels", "work-eyelets"},
      {"work-eyelets", "try-corset"},
      {"try-corset", "cut-corset-bones"},
      {"cut-corset-bones", "bind-corset"},
      {"hang-corset-lining", "bind-corset"},
      {"wear-corset-in", "measure-in-corset"},
      // on canvas
      {"canvas-fronts", "make-welt-pockets"},
      {"make-welt-pockets", "face-fronts"},
      {"stay-button-line", "face-fronts"},
      {"stay-button-line", "sew-buttons"},
      {"make-welt-pockets", "sew-coat-seams"},
      {"face-fronts", "fit-tailored"},
      {"fit-tailored", "sew-buttons"},
      {"fit-coat", "sew-buttons"},
      // rows of tests/calculate/trap_rows_test.cpp that are not above, and what the newer steps wait for
      {"press-and-notch", "finish-bodice-seams"},
      {"sew-bone-channels", "finish-lower-edge"},
      {"sew-bone-channels", "fell-lining"},
      {"correct-bodice", "turn-closing-edges"},
      {"stitch-bodice-seams", "baste-drapery-in"},
      {"bind-drapery", "baste-drapery-in"},
      {"try-bodice-closed", "finish-lower-edge"},
      {"sew-waist-stay", "fell-lining"},
      {"sew-lining", "fell-lining"},
      {"make-bows", "sew-trims"},
      {"sew-skirt-to-band", "hang-closed"},
      {"whip-gauging", "hang-closed"},
      {"stiffen-hem", "level-the-hem"},
      {"press-skirt-seams", "stiffen-hem"},
      {"fit-bodice", "draw-up-gathers"},
      {"cut-pieces", "line-sleeves"},
      {"drape-on-form", "cut-drapery"},
      {"finish-underlayers", "try-underlayers"},
      {"finish-underlayers", "measure-wearer"},
      {"tape-edges", "face-fronts"},
      {"try-skirt-pinned", "measure-trim-runs"},
      {"alter-pattern", "sew-mock-up"},
      {"shrink-notions", "sew-bone-channels"},
      {"shrink-notions", "make-piping"},
      {"clip-princess-seams", "press-and-notch"},
      {"make-collar", "finish-neck"},
      {"work-rows-flat", "sew-breadths"},
      {"sew-seams-by-hand", "press-and-notch"},
      {"correct-bodice", "sew-seams-by-hand"},
      {"bind-drapery", "tack-drapery"},
      {"bind-drapery", "fasten-drapery"},
      {"trim-skirt-top", "whip-gauging"},
      {"fit-corset-mock-up", "sign-pattern"},
  };
  return all;
}

}  // namespace gownsheaf::test
