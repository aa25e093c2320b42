#include "calculate/best_buy.h"

#include <algorithm>

#include "calculate/exact.h"
#include "calculate/lay.h"
#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {

std::optional<Length> needed_at_width(const Project& project, const Cloth& cloth, Length width, const LayWork& work) {
  Project other = project;
  for (Cloth& c : other.cloths) {
    if (!same_name(c.named.name, cloth.named.name)) continue;
    c.width = Given<Length>::written(width, cloth.named.at);
    c.bought = {};
    c.remnants.clear();
    c.keep.clear();
    c.offered.clear();
  }
  Diagnostics found;
  Figures figures;
  RoundSums sums(other, found);
  for (const ClothCuts& cuts : cut_list(other, sums, figures, found)) {
    if (!same_name(cuts.cloth->named.name, cloth.named.name)) continue;
    for (const Cut& cut : cuts.cuts)
      if (!cut.in_lay) return std::nullopt;
    const LayPlan plan = lay_out_cloth(other, cuts, work, figures, found);
    if (plan.to_buy.placed.empty() && !plan.opened) return std::nullopt;
    return plan.needed;
  }
  return std::nullopt;
}

Money cost_of(const Money& price, Length length) {
  const Length one = price.per == "m" ? Length::cm(100) : Length::inches(36);
  const Exact cost = Exact(price.hundredths) * Exact(length) / Exact(one);
  return {cost.ceil(), ""};
}

void add_offers(const Project& project, const LayWork& work, Plans& plans, Figures& figures, Diagnostics& diag) {
  const ShownIn in = shown_in(project);
  for (LayPlan& plan : plans.lays) {
    const Cloth* cloth = project.cloth(plan.cloth);
    if (cloth == nullptr || cloth->offered.empty()) continue;
    const auto figure = [&](const std::string& quantity) {
      NewFigure f(figures, in, "cloths", cloth->named.name, quantity);
      f.at(cloth->named.at);
      return f;
    };
    const bool priced = std::all_of(cloth->offered.begin(), cloth->offered.end(), [](const OfferedWidth& o) {
      return o.price && !o.price->per.empty() && o.price->per != "each";
    });
    if (!priced &&
        std::any_of(cloth->offered.begin(), cloth->offered.end(), [](const OfferedWidth& o) { return o.price.has_value(); }))
      diag.add(message(
          {cloth->named.name, "cloths", "cutting layouts"}, Severity::warning, "price-missing", cloth->offered.front().at,
          "Not every width offered of " + cloth->named.name + " has a price for a length: they are compared by cloth alone.",
          "`{ width: 44 in, price: 9 per yd }`"));
    const std::size_t before = figures.all().size();
    std::optional<std::size_t> best;
    std::optional<Int128> least;
    for (std::size_t k = 0; k < cloth->offered.size(); ++k) {
      const OfferedWidth& offer = cloth->offered[k];
      const std::string name = "offered " + whole_number(static_cast<std::int64_t>(k + 1));
      figure(name + "/width").is(offer.width).written().at(offer.at).add();
      plan.offers.push_back({"cloths/" + cloth->named.name + "/" + name, false, false});
      // Of its own width, and nothing there yet, it is laid already.
      const bool as_laid = cloth->width.known() && *cloth->width == offer.width &&
                           (!cloth->bought.known() || cloth->bought->empty()) && cloth->remnants.empty() && cloth->keep.empty() &&
                           !plan.to_buy.placed.empty();
      const auto needed = as_laid ? std::optional<Length>(plan.needed) : needed_at_width(project, *cloth, offer.width, work);
      if (!needed) continue;
      plan.offers.back().goes = true;
      figure(name + "/needed")
          .is(*needed)
          .from("cloths/" + cloth->named.name + "/" + name + "/width")
          .working(cloth->named.name + " at " + worked(offer.width, in), "its pieces laid on this width, as to buy",
                   worked(*needed, in))
          .add();
      Int128 measure = static_cast<Int128>(needed->in_ticks()) * offer.width.in_ticks();
      if (priced) {
        const Money cost = cost_of(*offer.price, *needed);
        measure = cost.hundredths;
        figure(name + "/cost").is(cost).from("cloths/" + cloth->named.name + "/" + name + "/needed").add();
      }
      if (!least || measure < *least) {
        least = measure;
        best = k;
      }
    }
    if (work.stopped()) {  // widths laid by searches cut short are no comparison
      figures.forget_after(before);
      plan.offers.clear();
      if (!plan.cut_short) mark_cut_short(plan, *cloth, diag);
      continue;
    }
    if (!best) continue;
    plan.offers[*best].best = true;
    figure("best buy").is(static_cast<std::int64_t>(*best + 1)).add();
  }
}

}  // namespace gownsheaf
