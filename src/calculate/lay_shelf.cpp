#include "calculate/lay_shelf.h"

#include <algorithm>

#include "calculate/joined_parts.h"
#include "geometry/region.h"

namespace gownsheaf {
namespace {

constexpr int kMostPieced = 3;           // pieces joined to make it go
constexpr int kMostParts = 4;            // of which each is joined
constexpr std::size_t kMostMissing = 6;  // pieces of which it is asked how much is missing

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

bool all_go(const LaidOut& laid) { return laid.unsupported.empty() && laid.left_out.empty(); }

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
    if (!all_go(laid) && laid.unsupported.empty()) ask_what_is_missing(laid);
    if (!all_go(laid) && laid.unsupported.empty()) ask_other_ways();
    if (asked_.work.stopped() && !out_.missing.empty()) {  // a search that was stopped says nothing of what would not go
      out_.missing.clear();
      out_.other_ways.clear();
      out_.cut_short = true;
    }
    out_.strips = std::move(laid.strips);
    out_.left_out = std::move(laid.left_out);
    out_.unsupported = laid.unsupported;
    return std::move(out_);
  }

 private:
  LaidOut lay(const Cloth& cloth, const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies,
              const LayAsked& asked) {
    LaidOut laid = lay_on(cuts, copies, shelf(cloth), asked);
    out_.cut_short = out_.cut_short || laid.cut_short;
    return laid;
  }

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
    const bool only_panels =
        std::all_of(laid.left_out.begin(), laid.left_out.end(), [&](const auto& l) { return out_.cuts[l.first].piece.kept; });
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
      if (c.source == nullptr || !c.in_lay || c.piece.full_width || c.bias || !c.piece.part_of.empty()) return;
      const bool may = c.source->may_be_pieced.known() && *c.source->may_be_pieced;
      const bool facing = c.source->part_of.known() && *c.source->part_of == PartOf::facing;
      if (facings ? may || !facing : !may) return;
      if (std::find(order.begin(), order.end(), i) == order.end()) order.push_back(i);
    };
    for (const auto& [cut, copy] : laid.left_out) offer(cut);
    for (std::size_t i = 0; i < out_.cuts.size(); ++i) offer(i);
    return order;
  }

  // The cuts with one of them joined of so many parts.
  std::optional<std::vector<Cut>> with_joined(const std::vector<Cut>& cuts, const std::string& key, int parts,
                                              std::vector<Cut>* joined) const {
    std::vector<Cut> out;
    for (const Cut& c : cuts) {
      if (c.piece.key != key) {
        out.push_back(c);
        continue;
      }
      auto several = joined_of(c, parts, cloth_.repeat);
      if (!several) return std::nullopt;
      if (joined != nullptr) *joined = *several;
      for (Cut& part : *several) out.push_back(std::move(part));
    }
    return out;
  }

  // One piece after another is joined of two, until all go; where that does not do, of three, and of four.
  void join_pieces(LaidOut& laid) {
    std::vector<std::string> keys;
    for (const std::size_t i : may_be_joined(laid, false)) keys.push_back(out_.cuts[i].piece.key);
    for (int parts = 2; parts <= kMostParts && !all_go(laid); ++parts) join_pieces_of(parts, keys, laid);
  }

  void join_pieces_of(int many, const std::vector<std::string>& keys, LaidOut& laid) {
    std::vector<Cut> cuts = out_.cuts;
    std::vector<std::pair<Cut, std::vector<Cut>>> joined;
    for (const std::string& key : keys) {
      if (joined.size() == kMostPieced) return;
      const auto whole = std::find_if(cuts.begin(), cuts.end(), [&](const Cut& c) { return c.piece.key == key; });
      std::vector<Cut> parts;
      const Cut before = *whole;
      auto next = with_joined(cuts, key, many, &parts);
      if (!next) continue;
      cuts = std::move(*next);
      joined.emplace_back(before, parts);
      LaidOut tried = lay(cloth_, cuts, all_copies(cuts), quick());
      if (!all_go(tried)) continue;
      laid = std::move(tried);
      out_.cuts = std::move(cuts);
      for (const auto& [cut, these] : joined) {
        add_part_figures(project_, cut, these, figures_);
        out_.pieced.push_back(cut.piece.piece);
      }
      return;
    }
  }

  void ask_what_is_missing(LaidOut& laid) {
    LayAsked asked = quick();
    asked.work.outlines = asked.work.outlines > 0 ? std::max<std::int64_t>(1, asked.work.outlines / 4) : 0;  // two lays for each
    out_.missing = what_is_missing(cloth_, out_.cuts, laid, asked, kMostMissing);
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
    if (auto cuts = with_joined(out_.cuts, facing.piece.key, 2, nullptr))
      ask(cloth_, *cuts, "with " + facing.piece.piece + " joined of two, `may be pieced: yes`");
    if (auto cuts = with_joined(out_.cuts, facing.piece.key, 3, nullptr);
        cuts && !out_.other_ways.empty() && !out_.other_ways.back().goes)
      ask(cloth_, *cuts, "with " + facing.piece.piece + " joined of three, `may be pieced: yes`");
  }

  const Cloth& cloth_;
  const LaidOut& open_;
  const LayAsked& asked_;
  Figures& figures_;
  const Project& project_;
  OnShelf out_;
};

}  // namespace

OnShelf lay_on_shelf(const Cloth& cloth, const std::vector<Cut>& cuts, const LaidOut& open, const LayAsked& asked,
                     Figures& figures, const Project& project) {
  return Shelf(cloth, open, asked, figures, project).made(cuts);
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
  const Area ring = cut.piece.outline.empty()
                        ? Area::of(cut.piece.along, cut.piece.full_width ? breadth_usable : cut.piece.across)
                        : area(cut.piece.outline);
  return ring < Area{} ? Area{} - ring : ring;
}

}  // namespace gownsheaf
