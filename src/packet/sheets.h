// One function a sheet, each in its own file; compose.cpp calls them in the set's order.
#pragma once
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "packet/compose.h"
#include "packet/figure_text.h"

namespace gownsheaf {

// Anchors by which pages refer to each other.
inline constexpr const char* kAllWarningsAnchor = "all to settle";
std::string sheet_anchor(const std::string& id, const std::string& item);  // "sheet pleats/sides"
std::string step_anchor(int number);

FigureText figure_text_of(const PacketInput& input);
bool pinned_up(const PacketInput& input);                             // the pin-up scale: read from further off
bool shown_to_reader(const PacketInput& input, const Diagnostic& d);  // private ones only where the set shows them
const PlannedStep* step_with_id(const Plans& plans, const std::string& id);
bool buys_nothing(const FigureText& text, const std::string& cloth);  // all of it goes on lengths and remnants that are there
const LayPlan* lay_of(const Plans& plans, const std::string& cloth);

template <class T>
Block block(T what, bool keep_with_next = false) {
  return Block{std::move(what), keep_with_next};
}
Block heading(std::string s);
Block paragraph(Text text, bool wide = false);

// Things to settle: holds, warnings, guesses, what is to be measured, what was decided. In that order.
struct ToSettle {
  enum class Kind { hold, warning, guess, to_measure, decided } kind = Kind::hold;
  PairRow row;
};
std::vector<ToSettle> to_settle(const PacketInput& input);
// Holds and warnings, not decided, that are about this sheet, for below its first sentence. Of sheets made once for each
// item those about the item; the first also has those whose item has no sheet of this kind (a round among runs).
std::vector<Block> told_on(const PacketInput& input, std::string_view sheet, std::string_view item,
                           const std::vector<std::string>& items);

// The holds that stop the next cut of this cloth, in the words of its step: "until first mock-up is signed, step 11".
std::string holds_on_cutting(const PacketInput& input, const std::string& cloth);

// width in points, 0 = what is left.
void add_column(Table& table, Column::Kind kind, const std::string& head, double width, bool bold);

Sheet at_a_glance_sheet(const PacketInput& input);
Sheet what_changed_sheet(const PacketInput& input, const Changes& changes);
// One line for each of the other sheets; page numbers come when the pages are counted.
void fill_contents(Sheet& contents, const std::vector<Sheet>& sheets);
Sheet to_buy_sheet(const PacketInput& input);
Sheet cutting_list_sheet(const PacketInput& input);
Sheet cutting_layout_sheet(const PacketInput& input, const LayPlan& plan);
Sheet pleats_sheet(const PacketInput& input, const PleatPlan& plan);
Sheet closures_sheet(const PacketInput& input, const ClosingPlan& plan);
Sheet closure_reinforcement_sheet(const PacketInput& input, const ClosingPlan& plan);
Sheet size_and_fit_sheet(const PacketInput& input);
Sheet bones_sheet(const PacketInput& input);
Sheet fitting_checklist_sheet(const PacketInput& input, const FittingPlan& plan);
Sheet cautions_sheet(const PacketInput& input);
Sheet order_of_work_sheet(const PacketInput& input, std::optional<int> next_steps);
// For each step of the work, in its order: the steps not yet done that it waits for, without those that one of them waits
// for, and the numbers of all that come before it; both by number.
struct Waiting {
  struct Step {
    std::vector<const PlannedStep*> directly;
    std::vector<int> all;
  };
  std::vector<Step> steps;
};
Waiting waiting_of(const std::vector<PlannedStep>& work);
Sheet calendar_sheet(const PacketInput& input);  // empty where no day is known
Sheet what_waits_sheet(const PacketInput& input);
Sheet worked_out_sheet(const PacketInput& input);

}  // namespace gownsheaf
