#include "calculate/lay_shelf.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "geometry/region.h"
#include "geometry/slabs.h"

namespace gownsheaf {
namespace {

constexpr int kMostPieced = 3;  // pieces joined to make it go

bool whole_open_fits(const LaidStrip& strip, const LaidOut& open) {
  const LaidStrip& first = open.strips.front();
  if (!strip.bad_places.empty() || strip.folded != first.folded || strip.usable_width != first.usable_width) return false;
  const LaidStrip* rest = open.strips.size() > 1 ? &open.strips[1] : nullptr;
  return taken(first, rest) <= (strip.folded == Folded::crosswise ? 2 * strip.length : strip.length);
}

// The open lay on this length of the shelf.
void put_on(std::vector<LaidStrip>& strips, std::size_t k, const LaidOut& open) {
  const LaidStrip whole = strips[k];
  strips[k].placed = open.strips.front().placed;
  strips[k].used = open.strips.front().used;
  strips[k].repeat_along = open.strips.front().repeat_along;
  strips[k].repeat_across = open.strips.front().repeat_across;
  strips[k].repeat_from = open.strips.front().repeat_from;
  if (open.strips.size() < 2) return;
  LaidStrip rest = open.strips[1];
  rest.open = false;
  rest.name = whole.name + ", in one layer";
  rest.length = (whole.folded == Folded::crosswise ? 2 * whole.length : whole.length) - rest.starts_at;
  strips[k].length = whole.folded == Folded::crosswise ? rest.starts_at.times(1, 2) : rest.starts_at;
  strips.insert(strips.begin() + static_cast<std::ptrdiff_t>(k) + 1, std::move(rest));
}

LaidOut lay(const Cloth& cloth, const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies, const LayAsked& asked) {
  return lay_on(cuts, copies, shelf(cloth), asked);
}

bool all_go(const LaidOut& laid) { return laid.unsupported.empty() && laid.left_out.empty(); }

bool names_any(const Piece& piece) { return !piece.joining.clear_of.empty(); }

Polygon turned(const Polygon& ring) { return nest::posed(ring, {1, false}); }
Polygon turned_back(const Polygon& ring) { return nest::posed(ring, {3, false}); }

Cut part_of(const Cut& whole, const std::string& name, Polygon ring, bool drawn) {
  Cut part = whole;
  const Box box = bounds(ring);
  for (Point& p : ring) p = {p.x - box.x, p.y - box.y};
  CutPiece& c = part.piece;
  c.part_of = whole.piece.piece;
  c.piece = whole.piece.piece + ", " + name;
  c.key = whole.piece.key + "/part " + name;
  c.along = box.width;
  c.across = box.height;
  c.outline = drawn ? ring : Polygon{};
  c.lines.clear();
  c.match.reset();
  part.takes = c.along;
  part.breadth.reset();
  return part;
}

void add_part_figures(const Project& project, const Cut& whole, const std::vector<Cut>& parts, Figures& figures) {
  const ShownIn in = shown_in(project);
  for (const Cut& part : parts) {
    const std::string name = part.piece.key.substr(whole.piece.key.size() + 1);
    const auto one = [&](const char* quantity) {
      NewFigure f(figures, in, "pieces", whole.piece.piece, name + "/" + quantity, whole.piece.cloth);
      f.at(whole.piece.at);
      return f;
    };
    one("cut width").is(part.piece.across).from(whole.piece.key + "/cut width").add();
    one("cut length").is(part.piece.along).from(whole.piece.key + "/cut length")
        .working("cut length of " + part.piece.piece, "its side of the join + seam", worked(part.piece.along, in)).add();
    one("copies").is(part.piece.copies).from(whole.piece.key + "/copies").add();
  }
}

class Shelf {
 public:
  Shelf(const Cloth& cloth, const LaidOut& open, const LayAsked& asked, Figures& figures, const Project& project)
      : cloth_(cloth), open_(open), asked_(asked), figures_(figures), project_(project) {}

  OnShelf made(const std::vector<Cut>& cuts) {
    out_.cuts = cuts;
    std::vector<LaidStrip> strips = shelf(cloth_);
    bool drawn = false;
    for (const Cut& c : cuts) drawn = drawn || (c.in_lay && (c.bias || !c.piece.outline.empty()));
    // A lay of outlines is dear: the one length bought holds what the open length held, if it is as long.
    const bool as_open = drawn && strips.size() == 1 && whole_open_fits(strips.front(), open_);
    LaidOut laid;
    if (!as_open) laid = lay(cloth_, cuts, all_copies(cuts), asked_);
    if (as_open || !all_go(laid))
      for (std::size_t k = 0; k < strips.size(); ++k) {
        if (!whole_open_fits(strips[k], open_)) continue;
        laid = {};
        put_on(strips, k, open_);
        laid.strips = std::move(strips);
        break;
      }
    if (!all_go(laid)) let_panels_go(laid);
    if (!all_go(laid) && laid.unsupported.empty()) join_pieces(laid);
    if (!all_go(laid) && laid.unsupported.empty()) ask_other_ways();
    out_.strips = std::move(laid.strips);
    out_.left_out = std::move(laid.left_out);
    out_.unsupported = laid.unsupported;
    return std::move(out_);
  }

 private:
  LayAsked quick() const {
    LayAsked q = asked_;
    q.work.outlines = std::min(q.work.outlines, nest::kQuickWork);
    return q;
  }

  void let_panels_go(LaidOut& laid) {
    std::vector<Cut> pieces;
    std::vector<std::string> panels;
    for (const Cut& c : out_.cuts) {
      if (c.piece.kept) panels.push_back(c.piece.piece);
      else pieces.push_back(c);
    }
    if (panels.empty()) return;
    const bool only_panels = std::all_of(laid.left_out.begin(), laid.left_out.end(), [&](const auto& l) { return out_.cuts[l.first].piece.kept; });
    if (only_panels && laid.unsupported.empty()) {
      for (const auto& [cut, copy] : laid.left_out) out_.not_kept.push_back(out_.cuts[cut].piece.piece);
      laid.left_out.clear();
      return;
    }
    LaidOut without = lay(cloth_, pieces, all_copies(pieces), asked_);
    out_.not_kept = panels;
    out_.cuts = std::move(pieces);
    laid = std::move(without);
  }

  // Those that found no room first, then the others, the longest first.
  std::vector<std::size_t> may_be_joined(const LaidOut& laid, bool facings) const {
    std::vector<std::size_t> order;
    const auto offer = [&](std::size_t i) {
      const Cut& c = out_.cuts[i];
      if (c.source == nullptr || !c.in_lay || c.piece.full_width || c.bias || c.piece.match || !c.piece.part_of.empty()) return;
      const bool may = c.source->may_be_pieced.known() && *c.source->may_be_pieced;
      const bool facing = c.source->part_of.known() && *c.source->part_of == PartOf::facing;
      if (facings ? may || !facing : !may) return;
      if (std::find(order.begin(), order.end(), i) == order.end()) order.push_back(i);
    };
    for (const auto& [cut, copy] : laid.left_out) offer(cut);
    for (std::size_t i = 0; i < out_.cuts.size(); ++i) offer(i);
    return order;
  }

  static std::optional<std::vector<Cut>> with_joined(const std::vector<Cut>& cuts, const std::string& key, std::vector<Cut>* parts) {
    std::vector<Cut> out;
    for (const Cut& c : cuts) {
      if (c.piece.key != key) {
        out.push_back(c);
        continue;
      }
      auto two = joined_of_two(c);
      if (!two) return std::nullopt;
      if (parts != nullptr) *parts = *two;
      for (Cut& part : *two) out.push_back(std::move(part));
    }
    return out;
  }

  void join_pieces(LaidOut& laid) {
    std::vector<std::string> keys;
    for (const std::size_t i : may_be_joined(laid, false)) keys.push_back(out_.cuts[i].piece.key);
    std::vector<Cut> cuts = out_.cuts;
    std::vector<std::pair<Cut, std::vector<Cut>>> joined;
    for (const std::string& key : keys) {
      if (joined.size() == kMostPieced) return;
      const auto whole = std::find_if(cuts.begin(), cuts.end(), [&](const Cut& c) { return c.piece.key == key; });
      std::vector<Cut> parts;
      const Cut before = *whole;
      auto next = with_joined(cuts, key, &parts);
      if (!next) continue;
      cuts = std::move(*next);
      joined.emplace_back(before, parts);
      LaidOut tried = lay(cloth_, cuts, all_copies(cuts), quick());
      if (!all_go(tried)) continue;
      laid = std::move(tried);
      out_.cuts = std::move(cuts);
      for (const auto& [cut, two] : joined) {
        add_part_figures(project_, cut, two, figures_);
        out_.pieced.push_back(cut.piece.piece);
      }
      return;
    }
  }

  void ask_other_ways() {
    const std::vector<std::vector<int>> copies = all_copies(out_.cuts);
    const auto ask = [&](const Cloth& cloth, const std::vector<Cut>& cuts, std::string words) {
      out_.other_ways.push_back({std::move(words), all_go(lay(cloth, cuts, all_copies(cuts), quick()))});
    };
    if (cloth_.fold.known() && *cloth_.fold != ClothFold::none) {
      Cloth flat = cloth_;
      flat.fold.value = ClothFold::none;
      ask(flat, out_.cuts, "in one layer, not folded");
    }
    std::vector<Cut> turning = out_.cuts;
    bool any = false;
    for (Cut& c : turning) {
      any = any || (c.in_lay && !c.end_for_end && !c.piece.kept && !c.piece.outline.empty());
      c.end_for_end = true;
    }
    if (any) ask(cloth_, turning, "with pieces turned end for end, where the cloth has no up and down");
    LaidOut none;
    const std::vector<std::size_t> facings = may_be_joined(none, true);
    if (facings.empty()) return;
    const Cut facing = out_.cuts[facings.front()];
    if (auto cuts = with_joined(out_.cuts, facing.piece.key, nullptr))
      ask(cloth_, *cuts, "with " + facing.piece.piece + " joined of two, `may be pieced: yes`");
  }

  const Cloth& cloth_;
  const LaidOut& open_;
  const LayAsked& asked_;
  Figures& figures_;
  const Project& project_;
  OnShelf out_;
};

}  // namespace

OnShelf lay_on_shelf(const Cloth& cloth, const std::vector<Cut>& cuts, const LaidOut& open, const LayAsked& asked, Figures& figures, const Project& project) {
  return Shelf(cloth, open, asked, figures, project).made(cuts);
}

std::optional<std::vector<Cut>> joined_of_two(const Cut& cut) {
  const CutPiece& c = cut.piece;
  if (cut.source != nullptr && cut.source->joining.joins && *cut.source->joining.joins < 1) return std::nullopt;
  const Joining none;
  const Joining& rules = cut.source != nullptr ? cut.source->joining : none;
  const bool drawn = !c.outline.empty();
  const bool along = cut.source != nullptr && names_any(*cut.source);  // a join across would meet the long edges
  if (along && c.on_fold) return std::nullopt;
  const Polygon ring = drawn ? c.outline : rectangle(c.along, c.across);
  const Polygon laid = along ? turned(ring) : ring;
  const Length whole = bounds(laid).width;
  const Length join = rules.clear_of_centre ? whole.times(2, 5) : whole.times(1, 2);
  const Length least = std::max(rules.clear_from_edge, 4 * c.seam);
  if (join < least || whole - join < least) return std::nullopt;
  Polygon first = clipped_along(laid, Length{}, join + c.seam), second = clipped_along(laid, join - c.seam, whole);
  if (first.size() < 3 || second.size() < 3) return std::nullopt;
  if (along) {
    first = turned_back(first);
    second = turned_back(second);
  }
  return std::vector<Cut>{part_of(cut, along ? "far part" : "upper part", std::move(first), drawn), part_of(cut, along ? "near part" : "lower part", std::move(second), drawn)};
}

std::vector<Cut> panels_to_keep(const Cloth& cloth, Length usable) {
  std::vector<Cut> cuts;
  for (const KeptPanel& panel : cloth.keep) {
    Cut cut;
    CutPiece& c = cut.piece;
    c.piece = "kept for " + panel.named.name;
    c.cloth = cloth.named.name;
    c.along = panel.length;
    c.across = panel.width ? *panel.width : usable;
    c.grain = "along";
    c.at = panel.named.at;
    c.key = "cloths/" + cloth.named.name + "/keep/" + panel.named.name;
    c.kept = true;
    cut.takes = c.along;
    cuts.push_back(std::move(cut));
  }
  return cuts;
}

Area area_of(const Cut& cut, Length breadth_usable) {
  const Area ring = cut.piece.outline.empty() ? Area::of(cut.piece.along, cut.piece.full_width ? breadth_usable : cut.piece.across) : area(cut.piece.outline);
  return ring < Area{} ? Area{} - ring : ring;
}

}  // namespace gownsheaf
