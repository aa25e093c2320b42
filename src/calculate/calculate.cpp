#include "calculate/calculate.h"

#include "calculate/accepted.h"
#include "calculate/best_buy.h"
#include "calculate/body_and_skirt.h"
#include "calculate/bones.h"
#include "calculate/closures.h"
#include "calculate/cloth_weight.h"
#include "calculate/cut_list.h"
#include "calculate/days_left.h"
#include "calculate/facts.h"
#include "calculate/fitting.h"
#include "calculate/fitting_pages.h"
#include "calculate/gates.h"
#include "calculate/girths.h"
#include "calculate/given_figures.h"
#include "calculate/hem_braid.h"
#include "calculate/lay.h"
#include "calculate/lay_checked.h"
#include "calculate/layers.h"
#include "calculate/loads.h"
#include "calculate/new_figure.h"
#include "calculate/order_of_work.h"
#include "calculate/order_questions.h"
#include "calculate/plackets.h"
#include "calculate/pleat_choices.h"
#include "calculate/pleat_map.h"
#include "calculate/pleat_waist.h"
#include "calculate/pleats_figures.h"
#include "calculate/rounds.h"
#include "calculate/rules.h"
#include "calculate/safety.h"
#include "calculate/sizes.h"
#include "calculate/stays.h"
#include "calculate/step_drivers.h"
#include "calculate/step_times.h"
#include "calculate/what_changed.h"

namespace gownsheaf {
namespace {

LayPlan lay_of(const Project& project, const ClothCuts& cuts, const WorkOptions& options, Figures& figures, Diagnostics& diag) {
  const LayWork work{options.lay_work, options.outline_work, options.threads, options.watch, options.store};
  return options.search_all ? lay_out_cloth(project, cuts, work, figures, diag) : lay_checked(project, cuts, work, figures, diag);
}

}  // namespace

Worked calculate(const Project& project, const Templates& templates, const WorkOptions& options, Diagnostics& diag) {
  Worked worked;
  Figures& figures = worked.figures;
  Plans& plans = worked.plans;
  const auto clean = [&](const char* section) { return project.failed_sections.count(section) == 0; };

  add_day_and_measures(project, figures);
  add_sizes(project, figures);
  add_rules(project, figures);
  if (clean("cloths")) add_cloths_as_given(project, figures);

  // Pieces ask how much cloth the runs take, runs ask how wide the joined pieces are: settled together, once.
  RoundSums sums(project, diag);
  if (clean("cloths") && clean("pieces"))
    for (const ClothCuts& cuts : cut_list(project, sums, figures, diag))
      plans.lays.push_back(lay_of(project, cuts, options, figures, diag));
  if (clean("cloths") && clean("pieces"))
    add_offers(project,
               {options.lay_work, options.search_all ? std::min(options.outline_work, nest::kQuickWork) : 0, options.threads,
                options.watch, options.store},
               plans, figures, diag);
  if (clean("cloths") && clean("pieces")) check_layers(project, diag);
  if (clean("rounds") && clean("pleats")) add_rounds(project, sums, figures, diag);
  if (clean("pleats")) {
    plans.pleats = add_pleats(project, sums, figures);
    add_pleat_choices(project, sums, plans.pleats, figures);
    add_pleat_map(project, sums, plans.pleats, figures, diag);
    add_pleat_waist(project, sums, figures, diag);
  }
  if (clean("seams")) add_eased_seams(project, figures);
  if (clean("cloths") && clean("pieces")) add_skirt(project, sums, figures);
  add_hem_braid(project, figures, diag);
  judge_by_the_body(project, sums, diag);
  if (clean("closures")) plans.closures = add_closures(project, figures, diag);
  if (clean("plackets")) add_plackets(project, figures);
  if (clean("bones") && clean("bone stock")) plans.bones = add_bones(project, figures, diag);
  const std::optional<Mass> skirt = add_skirt_weight(project, plans, figures);
  if (clean("strain")) plans.loads = add_loads(project, plans, skirt, figures, diag);
  if (clean("strain") && clean("edges") && clean("rounds")) add_stays(project, figures, diag);

  add_girths(project, figures);
  const std::vector<FittingChange> changes = add_fittings(project, figures, diag);
  check_safety(project, figures, diag);
  add_step_drivers(project, figures);
  if (options.since != nullptr) {
    worked.changes = what_changed(*options.since, figures, renamed_items(project), shown_in(project));
    add_already_cut(project, templates, plans, *options.since, figures, *worked.changes, diag);
  }

  const FactLookup facts = facts_of(project, figures, plans);
  ask_how_drapery_is_held(project, diag);
  plans.work = order_of_work(project, templates, figures, facts, diag);
  add_step_times(project, plans.work, figures);
  if (worked.changes) add_changed_times(*options.since, figures, shown_in(project), *worked.changes);
  plans.days = days_left(project, plans, diag);
  answer_order_questions(project, plans.work, diag);
  check_fittings(project, gates_in(plans.work), diag);
  apply_accepted(project, options.since != nullptr, diag);
  add_holds(plans.work, project, figures, diag);
  if (worked.changes) add_steps_again(plans, project, *worked.changes);
  plans.fittings = fitting_pages(project, templates, figures, facts, plans.work, changes);
  plans.cautions = cautions_called_for(project, templates, facts);
  plans.may_cut = may_i_cut(project, plans, figures, diag);
  return worked;
}

}  // namespace gownsheaf
