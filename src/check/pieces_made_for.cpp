// Strips that another section asks for and no piece gives: the guard behind a closing, the strips that strengthen its edges,
// the facing and the stiffening of the hem, the strip of a placket. They are cut like any piece, so that the cloth for them is bought.
#include <algorithm>

#include "check/sections.h"

namespace gownsheaf {

namespace {

class Strips {
 public:
  Strips(const Filling& file, Project& project) : project_(project), seam_(file.root.block("allowances").length("seam")) {
    if (!seam_.known()) seam_ = Given<Length>::standing(Length::sixty_fourths(32), 'c', "1/2 in, where no allowance is written");
  }

  // Two cloths thick (common practice): cut twice as wide as it finishes and folded along its length.
  void guard_of(const Closure& closing) {
    if (!closing.guard || !closing.guard->width.known() || !closing.length.known()) return;
    const std::string cloth = closing.guard->from.empty() ? outer_cloth(closing) : closing.guard->from;
    if (cloth.empty()) return;
    Piece strip = strip_of(closing.named.name + " guard", cloth, closing.named.name, closing.named.at);
    strip.named.note = "folded along its length; it lies behind " + closing.named.name;
    strip.width = {Size::Kind::finished, *closing.guard->width * 2, closing.guard->width.at};
    strip.length = {Size::Kind::finished, *closing.length, closing.length.at};
    if (closing.closings.known() && *closing.closings > 1) strip.make = times(*closing.closings, "one to each closing");
    add(std::move(strip));
  }

  // One to each side; the ends run into the seams above and below. No strip where a side is cut from that cloth already.
  void backing_of(const Closure& closing) {
    if (!closing.backed_with.known() || !closing.backing_width.known() || !closing.length.known()) return;
    const auto has_it = [&](const std::string& side) {
      const Piece* piece = project_.piece(side);
      return piece != nullptr && std::any_of(piece->from.begin(), piece->from.end(),
                                             [&](const std::string& c) { return same_name(c, *closing.backed_with); });
    };
    if (std::any_of(closing.sides.begin(), closing.sides.end(), has_it)) return;
    Piece strip = strip_of(closing.named.name + " backing", *closing.backed_with, closing.named.name, closing.backed_with.at);
    strip.named.note = "one beneath each side of " + closing.named.name;
    strip.make = times(2 * (closing.closings.known() ? *closing.closings : 1), "one to each side");
    strip.width = {Size::Kind::cut, *closing.backing_width, closing.backing_width.at};
    strip.length = {Size::Kind::finished, *closing.length, closing.length.at};
    add(std::move(strip));
  }

  // What finishes a slit, of the cloth it is cut in; sizes as in docs/formulas.md#plackets. None where a piece of the maker's
  // own is named for a placket.
  void strip_of_placket(const Placket& placket) {
    const std::string cloth = cloth_of(placket);
    const bool own = std::any_of(project_.pieces.begin(), project_.pieces.end(),
                                 [](const Piece& p) { return p.made_for.empty() && has_word(p.named.name, "placket"); });
    if (!placket.length.known() || !placket.finish.known() || cloth.empty() || own) return;
    const Length slit = *placket.length, inch = Length::inches(1), wide = Length::sixty_fourths(96);
    const auto strip = [&](const char* what, const char* note) {
      const std::string name = placket.named.name + (has_word(placket.named.name, "placket") ? " " : " placket ") + what;
      Piece piece = strip_of(name, cloth, placket.named.name, placket.named.at);
      piece.named.note = note;
      if (placket.number > 1) piece.make = times(placket.number, "one to each placket");
      return piece;
    };
    if (*placket.finish == PlacketFinish::continuous_lap) {
      Piece piece = strip("strip", "one strip for the continuous lap");
      piece.width = {Size::Kind::cut, Length::sixty_fourths(240), placket.named.at};
      piece.length = {Size::Kind::cut, slit * 2, placket.named.at};
      add(std::move(piece));
    } else if (*placket.finish == PlacketFinish::separate_underlap) {
      Piece piece = strip("underlap", "folded along its length");
      piece.width = {Size::Kind::finished, wide * 2, placket.named.at};
      piece.length = {Size::Kind::finished, slit + inch, placket.named.at};
      add(std::move(piece));
    } else {
      Piece piece = strip("facing", "one to each side of the slit");
      piece.make = times(2 * placket.number, "one to each side");
      piece.width = {Size::Kind::finished, wide, placket.named.at};
      piece.length = {Size::Kind::finished, slit + inch, placket.named.at};
      add(std::move(piece));
    }
  }

  // As many widths as go round the hem; joined, then sewn on flat.
  void hem_of(const Filling& file, const Skirt& skirt) {
    if (!skirt.hem || !skirt.hem->depth.known()) return;
    const std::string round = round_of_the_skirt();
    for (const auto& [cloth, name, turned] : {std::tuple(skirt.hem->faced_with, "hem facing", true),
                                              std::tuple(skirt.hem->stiffened_with, "hem stiffening", false)}) {
      if (cloth.empty() || cut_for_the_hem(cloth)) continue;
      if (round.empty() && !skirt.hem_round.known()) {
        report(file, {"skirt", ""}, Severity::hold, "hem-round-unknown", skirt.at,
               "How long the hem is round is not known: its " + std::string(turned ? "facing" : "stiffening") + " of " + cloth +
                   " is not counted.",
               "`hem round: 136 in`, say; or a round under `rounds` of the skirt's pieces");
        continue;
      }
      Piece strip = strip_of(name, cloth, "hem", skirt.hem->depth.at);
      strip.named.note = "its widths joined go round the hem";
      Make make;
      if (skirt.hem_round.known()) {
        make.kind = Make::Kind::joined_round;
        make.joined_round = *skirt.hem_round;
        strip.make = Given<Make>::guessed(make, "the hem's round", skirt.hem_round.at);
      } else {
        make.kind = Make::Kind::fills;
        make.fills = round;
        strip.make = Given<Make>::standing(make, 'x', "the hem is as long as " + round + " is flat");
      }
      strip.width.kind = Size::Kind::full_width;
      strip.may_be_pieced = Given<bool>::guessed(true, "full widths are joined anyway", skirt.at);
      strip.length = {turned ? Size::Kind::finished : Size::Kind::cut, *skirt.hem->depth, skirt.hem->depth.at};
      add(std::move(strip));
    }
  }

 private:
  static Given<Make> times(std::int64_t n, const char* why) {
    Make make;
    make.number = n;
    return Given<Make>::standing(make, 'x', why);
  }
  Piece strip_of(const std::string& name, const std::string& cloth, const std::string& made_for, const SourceSpan& at) const {
    Piece strip;
    strip.named.name = name;
    strip.named.at = strip.from_at = at;
    strip.made_for = made_for;
    strip.part_of = Given<PartOf>::guessed(PartOf::facing, "what it is cut for", at);
    strip.from = {cloth};
    strip.make = Given<Make>::standing(Make{}, 'x', "one to a closing");
    strip.on_fold = Given<bool>::standing(false, 'c', "not on a fold unless it is written");
    strip.grain = Given<Grain>::standing(Grain::along, 'c', "length along the selvage");
    strip.seam_allowance = seam_;
    strip.hem = Given<Length>::standing(Length{}, 'c', "no hem where none is written");
    strip.top = seam_.origin == Origin::written ? Given<Length>::guessed(*seam_, "the seam allowance", seam_.at) : seam_;
    strip.may_be_pieced = Given<bool>::standing(false, 'c', "in one piece unless it is written");
    return strip;
  }

  // A piece that the maker wrote under this name, or under the closing's, is the strip.
  void add(Piece strip) {
    if (project_.piece(strip.named.name) == nullptr) project_.pieces.push_back(std::move(strip));
  }

  std::string outer_cloth(const Closure& closing) const {
    for (const std::string& side : closing.sides)
      if (const Piece* piece = project_.piece(side); piece != nullptr && !piece->from.empty()) return piece->from.front();
    return "";
  }

  // Of a piece that its seam or edge is of, else of the skirt, else of the first piece.
  std::string cloth_of(const Placket& placket) const {
    const Seam* seam = project_.seam(placket.seam);
    const EdgeLine* edge = project_.edge(placket.edge);
    for (const std::vector<std::string>* lines :
         {seam == nullptr ? nullptr : &seam->joins, edge == nullptr ? nullptr : &edge->of}) {
      if (lines == nullptr) continue;
      for (const std::string& line : *lines)
        if (const Piece* piece = project_.piece(line.substr(line.find(" of ") == std::string::npos ? 0 : line.find(" of ") + 4));
            piece != nullptr && !piece->from.empty())
          return piece->from.front();
    }
    for (const Piece& piece : project_.pieces)
      if (on_the_skirt({piece.named.name}) && !piece.from.empty()) return piece.from.front();
    return project_.pieces.empty() || project_.pieces.front().from.empty() ? "" : project_.pieces.front().from.front();
  }

  bool on_the_skirt(const std::vector<std::string>& pieces) const {
    return std::any_of(pieces.begin(), pieces.end(), [&](const std::string& name) {
      const Piece* piece = project_.piece(name);
      return piece != nullptr && piece->part_of.known() &&
             (*piece->part_of == PartOf::skirt || *piece->part_of == PartOf::petticoat);
    });
  }
  std::string round_of_the_skirt() const {
    if (const Round* round = project_.skirt_round(); round != nullptr) return round->named.name;
    for (const PleatRun& run : project_.pleats)
      if (on_the_skirt(run.of) && run.of.size() == 1 && project_.piece(run.of.front()) != nullptr && alone(run))
        return run.named.name;
    return "";
  }
  bool alone(const PleatRun& run) const {
    return std::count_if(project_.pleats.begin(), project_.pleats.end(), [&](const PleatRun& r) { return r.of == run.of; }) == 1;
  }
  bool cut_for_the_hem(const std::string& cloth) const {
    return std::any_of(project_.pieces.begin(), project_.pieces.end(), [&](const Piece& piece) {
      return piece.made_for.empty() && has_word(piece.named.name, "hem") &&
             std::any_of(piece.from.begin(), piece.from.end(), [&](const std::string& c) { return same_name(c, cloth); });
    });
  }

  Project& project_;
  Given<Length> seam_;
};

}  // namespace

void add_pieces_made_for(const Filling& file, Project& project) {
  for (const char* section : {"pieces", "cloths", "closures", "edges", "seams", "plackets", "allowances"})
    if (project.failed_sections.contains(section)) return;
  Strips strips(file, project);
  for (const Closure& closing : project.closures) {
    strips.guard_of(closing);
    strips.backing_of(closing);
  }
  for (const Placket& placket : project.plackets) strips.strip_of_placket(placket);
  const bool rounds_clean = !project.failed_sections.contains("rounds") && !project.failed_sections.contains("pleats");
  if (project.skirt && rounds_clean) strips.hem_of(file, *project.skirt);
}

}  // namespace gownsheaf
