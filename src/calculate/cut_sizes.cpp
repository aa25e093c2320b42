#include "calculate/cut_sizes.h"

#include <algorithm>

#include "calculate/cut_list.h"
#include "calculate/joined_layers.h"
#include "calculate/layers.h"
#include "calculate/new_figure.h"
#include "calculate/piece_edges.h"
#include "calculate/yardage.h"

namespace gownsheaf {
namespace {

class CutSizes {
 public:
  CutSizes(const Project& project, Figures& figures) : project_(project), figures_(figures), in_(shown_in(project)) {}

  std::optional<Length> cut_width(const Piece& piece, const Cloth& cloth, const Allowed& a, bool full) {
    const std::string& name = cloth.named.name;
    if (const auto cover = to_cover(project_, piece, cloth)) {
      const Length cut = *cover + 2 * a.seam;
      figure(piece, "cut width", name)
          .is(cut)
          .from("cloths/" + piece.from.front() + "/width")
          .from(key(piece, "seam allowance"))
          .working("cut width of " + piece.named.name + " from " + name, "the outer breadth between seam lines + 2 × seam",
                   worked(*cover, in_) + " + 2 × " + worked(a.seam, in_))
          .add();
      return cut;
    }
    if (full) {
      const auto width = shrunk_width(cloth);
      if (!width) return std::nullopt;
      NewFigure f = figure(piece, "cut width", name);
      f.is(*width).shown_as(Shown::mark).from("cloths/" + name + "/width");
      if (*width == *cloth.width) f.working("a full breadth", "selvage to selvage", worked(*cloth.width, in_));
      else
        f.working("a full breadth after shrinking", "width × (1 − shrinkage across)",
                  worked(*cloth.width, in_) + " × (1 − " + text_of(*cloth.shrinks_across) + ")");
      f.add();
      return *width;
    }
    if (piece.width.kind == Size::Kind::cut) {
      figure(piece, "cut width", name).is(piece.width.value).written().at(piece.width.at).add();
      return piece.width.value;
    }
    if (piece.width.kind != Size::Kind::finished) return std::nullopt;
    const LongSides sides = long_sides(project_, piece);
    const Length cut = piece.width.value + sides.one.past + sides.other.past;
    NewFigure f = figure(piece, "cut width", name);
    f.is(cut).from(key(piece, "finished width"));
    if (sides.one.edge.empty() && sides.one.closing == nullptr) {
      f.from(key(piece, "seam allowance"))
          .working("cut width of " + piece.named.name, "finished width + 2 × seam",
                   worked(piece.width.value, in_) + " + 2 × " + worked(a.seam, in_));
    } else {
      std::string formula = "finished width", numbers = worked(piece.width.value, in_);
      add_side(f, piece, sides.one, formula, numbers);
      add_side(f, piece, sides.other, formula, numbers);
      f.working("cut width of " + piece.named.name, formula, numbers);
    }
    f.add();
    return cut;
  }

  std::optional<Length> cut_length(const Piece& piece, const Cloth& cloth, const Allowed& a, std::int64_t number) {
    const std::string& name = cloth.named.name;
    const auto extra = lining_longer_by(project_, piece, cloth);
    if (extra && (piece.length.kind == Size::Kind::cut || piece.length.kind == Size::Kind::finished))
      figure(piece, "lining longer by", name)
          .is(**extra)
          .from("", *extra)
          .label(extra->label == 0 ? 'x' : extra->label)
          .written()
          .add();
    const Length lining = extra ? **extra : Length{};
    const std::string lining_key = key(piece, name + "/lining longer by");
    if (piece.length.kind == Size::Kind::cut && !lining.is_zero()) {
      figure(piece, "cut length", name)
          .is(piece.length.value + lining)
          .at(piece.length.at)
          .from(lining_key)
          .working("cut length of " + piece.named.name + " from " + name, "cut length as written + more for a flat lining",
                   worked(piece.length.value, in_) + " + " + worked(lining, in_))
          .add();
      return piece.length.value + lining;
    }
    if (piece.length.kind == Size::Kind::cut) {
      figure(piece, "cut length", name).is(piece.length.value).written().at(piece.length.at).add();
      return piece.length.value;
    }
    if (piece.length.kind == Size::Kind::share_of_bought) {
      const auto share = share_of_bought(cloth, number);
      if (!share) return std::nullopt;
      figure(piece, "cut length", name)
          .is(*share)
          .at(piece.length.at)
          .plain_input("cloths/" + name + "/bought")
          .from("cloths/" + name + "/straighten", cloth.straighten)
          .from("cloths/" + name + "/shrinks", cloth.shrinks_along)
          .working("cut length of " + piece.named.name, "what is there, straightened and shrunk, shared out",
                   lengths_in_words(cloth) + " / " + whole_number(number))
          .add();
      return share;
    }
    if (piece.length.kind != Size::Kind::finished) return std::nullopt;
    const Length finished = piece.length.value;
    const Length longer = long_sides(project_, piece).longer_by;
    const Length cut = (a.skirt_ends ? finished + a.top + a.hem : finished + 2 * a.seam) + longer + lining;
    std::string more = longer.is_zero() ? "" : " + what other edges ask more",
                more_here = longer.is_zero() ? "" : " + " + worked(longer, in_);
    NewFigure f = figure(piece, "cut length", name);
    f.is(cut).from(key(piece, "finished length"));
    if (!lining.is_zero()) {
      f.from(lining_key);
      more += " + more for a flat lining";
      more_here += " + " + worked(lining, in_);
    }
    if (a.skirt_ends)
      f.from(key(piece, "hem"))
          .from(key(piece, "top"))
          .working("cut length of " + piece.named.name, "finished length + hem + top" + more,
                   worked(finished, in_) + " + " + worked(a.hem, in_) + " + " + worked(a.top, in_) + more_here);
    else
      f.from(key(piece, "seam allowance"))
          .working("cut length of " + piece.named.name, "finished length + 2 × seam" + more,
                   worked(finished, in_) + " + 2 × " + worked(a.seam, in_) + more_here);
    f.add();
    return cut;
  }

 private:
  NewFigure figure(const Piece& piece, std::string_view quantity, std::string_view cloth = "") {
    NewFigure f(figures_, in_, "pieces", piece.named.name, quantity, cloth);
    f.at(piece.named.at);
    return f;
  }
  std::string key(const Piece& piece, std::string_view quantity) const {
    return "pieces/" + piece.named.name + "/" + std::string(quantity);
  }

  // Share of what was bought: the longest breadth that, cut as often as needed, comes out of the lengths on the shelf.
  std::optional<Length> share_of_bought(const Cloth& cloth, std::int64_t number) const {
    if (!cloth.bought.known() || number < 1) return std::nullopt;
    std::vector<Length> lengths;
    for (const BoughtLength& b : *cloth.bought) lengths.push_back(laid_length(cloth, b.length));
    std::optional<Length> best;
    for (const Length length : lengths)
      for (std::int64_t k = 1; k <= number; ++k) {
        const Length share = length.times(1, k, Rounding::down);
        if (share <= Length{} || (best && share <= *best)) continue;
        std::int64_t there = 0;
        for (const Length l : lengths) there += l < Length{} ? 0 : count_of(l, share, Rounding::down);
        if (there >= number) best = share;
      }
    return best;
  }

  // One long side in a line of working: what a closing takes, an edge's own allowance, or the seam.
  void add_side(NewFigure& f, const Piece& piece, const SideAllowance& side, std::string& formula, std::string& numbers) {
    const auto add = [&](const std::string& what, Length l) {
      formula += " + " + what;
      numbers += " + " + worked(l, in_);
    };
    if (side.closing == nullptr) {
      if (side.edge.empty()) f.from(key(piece, "seam allowance"));
      else f.plain_input(key(piece, "edge allowances/" + side.edge));
      return add(side.edge.empty() ? "seam" : "allowance at " + side.edge, side.past);
    }
    const Closure& closing = *side.closing;
    const std::string of = "closures/" + closing.named.name + "/";
    f.from(of + "lap", closing.lap).from(of + "underlap", closing.underlap);
    if (side.faced) f.from(key(piece, "seam allowance"));
    else f.from(of + "turn back", closing.turn_back);
    if (side.past != side.lap + side.turn) return add("allowance at " + side.edge, side.past);
    if (!side.lap.is_zero()) add("lap of " + closing.named.name, side.lap);
    if (!side.turn.is_zero() || side.lap.is_zero()) add(side.faced ? "seam with the facing" : "turn back", side.turn);
  }

  std::string lengths_in_words(const Cloth& cloth) const {
    std::string words;
    for (const BoughtLength& b : *cloth.bought)
      words += (words.empty() ? "" : " and ") + worked(laid_length(cloth, b.length), in_);
    return words;
  }

  const Project& project_;
  Figures& figures_;
  ShownIn in_;
};

}  // namespace

std::optional<Length> to_cover(const Project& project, const Piece& piece, const Cloth& cloth) {
  if (!is_full_width(piece) || same_name(piece.from.front(), cloth.named.name)) return std::nullopt;
  const Make make = piece.make.known() ? *piece.make : Make{};
  if (make.kind != Make::Kind::number && make.kind != Make::Kind::pairs) return std::nullopt;
  const Cloth* outer = project.cloth(piece.from.front());
  if (outer == nullptr || !outer->width.known() || !cloth.width.known()) return std::nullopt;
  const auto own = joined_width(piece, cloth), wanted = joined_width(piece, *outer);
  if (*own >= *wanted) return std::nullopt;
  return wanted;
}

std::optional<Length> cut_width(const Project& project, const Piece& piece, const Cloth& cloth, bool full, Figures& figures) {
  return CutSizes(project, figures).cut_width(piece, cloth, allowed_on(piece), full);
}

std::optional<Length> cut_length(const Project& project, const Piece& piece, const Cloth& cloth, std::int64_t copies,
                                 Figures& figures) {
  return CutSizes(project, figures).cut_length(piece, cloth, allowed_on(piece), copies);
}

std::string allowances_in_words(const Project& project, const Piece& piece, const Allowed& a, bool full) {
  if (piece.drawn && piece.drawn->was_cut_line) return "as drawn";
  if (piece.drawn) {
    const ShownIn in = shown_in(project);
    const auto said = [&](Length l) { return text_of(l, in, cut_step(in), Rounding::nearest).plain(); };
    return "as drawn, seams " + said(a.seam) + (piece.hem.known() && !piece.hem->is_zero() ? ", hem " + said(*piece.hem) : "");
  }
  const bool wide = full || piece.width.kind == Size::Kind::finished;
  const bool high = piece.length.kind == Size::Kind::finished;
  std::string words;
  const auto add = [&](const char* what, Length l) {
    words += (words.empty() ? "" : ", ") + std::string(what) + " " + worked(l, shown_in(project));
  };
  if (wide || (high && !a.skirt_ends)) add("seams", a.seam);
  if (!full && piece.width.kind == Size::Kind::finished) {
    const LongSides sides = long_sides(project, piece);
    std::vector<SideAllowance> own{sides.one};
    if (sides.other.edge != sides.one.edge || sides.other.closing != sides.one.closing) own.push_back(sides.other);
    for (const SideAllowance& side : own) {
      if (side.closing != nullptr) add(side.closing->named.name.c_str(), side.past);
      else if (!side.edge.empty()) add(side.edge.c_str(), side.past);
    }
  }
  if (high && a.skirt_ends) {
    add("hem", a.hem);
    add("top", a.top);
  }
  return words.empty() ? "none added" : words;
}

Ratio shrinks_along(const Cloth& cloth) {
  const bool shrunk = cloth.shrunk_already.known() && *cloth.shrunk_already;
  if (shrunk || !cloth.shrinks_along.known()) return {};
  return cloth.shrinks_along->of_one;
}

Length straighten_each_end(const Cloth& cloth) {
  if (cloth.straighten.known()) return *cloth.straighten;
  return cloth.straighten.origin == Origin::none ? Length{} : Length::inches(2);
}

Length selvage_of(const Cloth& cloth) {
  if (cloth.selvage.known()) return *cloth.selvage;
  return cloth.selvage.origin == Origin::none ? Length{} : Length::sixty_fourths(32);
}

Length laid_length(const Cloth& cloth, Length bought) {
  const Ratio s = shrinks_along(cloth);
  const Length straight = bought - 2 * straighten_each_end(cloth);
  return straight < Length{} ? Length{} : straight.times(s.d - s.n, s.d, Rounding::down);
}

}  // namespace gownsheaf
