#include "packet/compose.h"

#include <algorithm>
#include <stdexcept>

#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

constexpr std::string_view kSheets[] = {"at a glance",           "what changed",    "contents",     "to buy",
                                        "cutting list",          "cutting layouts", "pleats",       "closures",
                                        "closure reinforcement", "bones",           "size and fit", "fitting checklist",
                                        "order of work",         "calendar",        "what waits",   "cautions",
                                        "how it was worked out"};

constexpr std::size_t kFewBlocks = 2;

// Sheets that are made once for each item even when the set does not say `for each`.
std::string repeats_over(const SheetEntry& entry) {
  if (!entry.for_each.empty()) return entry.for_each;
  if (entry.sheet == "cutting layouts") return "cloth";
  if (entry.sheet == "pleats") return "run";
  if (entry.sheet == "closures") return "closure";
  if (entry.sheet == "closure reinforcement") return "closure";
  if (entry.sheet == "fitting checklist") return "fitting";
  return "";
}

std::vector<std::string> items_of(const PacketInput& input, const std::string& kind) {
  std::vector<std::string> items;
  if (kind == "cloth") {
    for (const LayPlan& lay : input.plans.lays) items.push_back(lay.cloth);
  } else if (kind == "run") {
    for (const PleatPlan& plan : input.plans.pleats) items.push_back(plan.run);
  } else if (kind == "closure") {
    for (const ClosingPlan& plan : input.plans.closures) items.push_back(plan.closure);
  } else if (kind == "fitting") {  // on the wall hangs only the one that comes next
    for (const FittingPlan& plan : input.plans.fittings)
      if (items.empty() || !pinned_up(input)) items.push_back(plan.title);
  } else {
    items.push_back("");
  }
  return items;
}

std::string title_of(const PacketInput& input, const SheetEntry& entry, const std::string& kind, const std::string& item) {
  std::string title = entry.title.empty() ? capital(entry.sheet) : entry.title;
  const bool names_item = kind.empty() || title.find("{" + kind + "}") != std::string::npos;
  title = replaced(title, "{title}", input.project.title);
  if (kind.empty()) return title;
  if (!names_item) return title + ": " + item;
  return replaced(title, "{" + kind + "}", item);
}

Sheet sheet_of(const PacketInput& input, const SheetEntry& entry, const std::string& item) {
  if (entry.sheet == "to buy") return to_buy_sheet(input);
  if (entry.sheet == "cutting list") return cutting_list_sheet(input);
  if (entry.sheet == "cutting layouts") return cutting_layout_sheet(input, *lay_of(input.plans, item));
  if (entry.sheet == "pleats") {
    const auto at =
        std::find_if(input.plans.pleats.begin(), input.plans.pleats.end(), [&](const PleatPlan& p) { return p.run == item; });
    return pleats_sheet(input, *at);
  }
  if (entry.sheet == "closures" || entry.sheet == "closure reinforcement") {
    const auto at = std::find_if(input.plans.closures.begin(), input.plans.closures.end(),
                                 [&](const ClosingPlan& p) { return p.closure == item; });
    return entry.sheet == "closures" ? closures_sheet(input, *at) : closure_reinforcement_sheet(input, *at);
  }
  if (entry.sheet == "size and fit") return size_and_fit_sheet(input);
  if (entry.sheet == "bones") return bones_sheet(input);
  if (entry.sheet == "fitting checklist") {
    const auto at = std::find_if(input.plans.fittings.begin(), input.plans.fittings.end(),
                                 [&](const FittingPlan& p) { return p.title == item; });
    return fitting_checklist_sheet(input, *at);
  }
  if (entry.sheet == "cautions") return cautions_sheet(input);
  if (entry.sheet == "order of work") return order_of_work_sheet(input, entry.next_steps);
  if (entry.sheet == "calendar") return calendar_sheet(input);
  if (entry.sheet == "what waits") return what_waits_sheet(input);
  if (entry.sheet == "how it was worked out") return worked_out_sheet(input);
  if (entry.sheet == "at a glance") return at_a_glance_sheet(input);
  if (entry.sheet == "what changed") return what_changed_sheet(input, *input.changes);
  if (entry.sheet == "contents") return {};  // filled when all the others are there
  throw std::logic_error("no sheet is called " + entry.sheet);
}

bool refers_to(const Sheet& sheet, std::string_view anchor) {
  return std::any_of(sheet.blocks.begin(), sheet.blocks.end(), [&](const Block& b) {
    const auto* line = std::get_if<ContentsLine>(&b.what);
    return line != nullptr && line->anchor == anchor;
  });
}

// Where the set names a contents sheet; in a set that only asks for one, after "at a glance", so that the answer to
// "may I cut now?" stays the first page.
void place_contents(const PacketInput& input, std::vector<Sheet>& sheets) {
  const auto named = std::find_if(sheets.begin(), sheets.end(), [](const Sheet& s) { return s.id == "contents"; });
  if (named != sheets.end()) {
    fill_contents(*named, sheets);
  } else if (input.set.contents_page && !sheets.empty()) {
    Sheet contents;
    contents.id = "contents";
    contents.title = "Contents";
    contents.anchor = sheet_anchor(contents.id, "");
    fill_contents(contents, sheets);
    sheets.insert(sheets.begin() + (sheets.front().id == "at a glance" ? 1 : 0), contents);
  }
}

// Below the first sentence, in every form of the sheet.
void tell_first(std::vector<Block> told, Sheet& sheet) {
  if (told.empty()) return;
  sheet.blocks.insert(sheet.blocks.begin(), told.begin(), told.end());
  for (auto& shorter : sheet.shorter)
    shorter = [said = told, blocks_of = std::move(shorter)] {
      std::vector<Block> blocks = blocks_of();
      blocks.insert(blocks.begin(), said.begin(), said.end());
      return blocks;
    };
}

// What "at a glance" had no room for stands whole on its own sheet at the end.
Sheet all_to_settle(const PacketInput& input) {
  Sheet sheet;
  sheet.id = "to settle";
  sheet.title = "Settle these: all of them";
  sheet.anchor = kAllWarningsAnchor;
  sheet.section = Section::glance;
  const std::vector<ToSettle> rows = to_settle(input);
  sheet.answer = words("Holds first: nothing they stand on is cut before they are settled.");
  for (const ToSettle& one : rows) {
    sheet.blocks.push_back(block(one.row));
  }
  return sheet;
}

}  // namespace

std::string sheet_anchor(const std::string& id, const std::string& item) {
  return item.empty() ? "sheet " + id : "sheet " + id + "/" + item;
}
std::string step_anchor(int number) { return "step " + whole_number(number); }

FigureText figure_text_of(const PacketInput& input) {
  return FigureText(input.figures, input.project.show_lengths_in.value.value_or(ShownIn::inches), input.changes,
                    input.set.private_shown);
}

bool pinned_up(const PacketInput& input) { return input.typesetter.scale().name == "pin-up"; }

bool shown_to_reader(const PacketInput& input, const Diagnostic& d) { return !d.is_private || input.set.private_shown; }

const PlannedStep* step_with_id(const Plans& plans, const std::string& id) {
  for (const PlannedStep& s : plans.work) {
    if (s.id == id) return &s;
  }
  return nullptr;
}

bool buys_nothing(const FigureText& text, const std::string& cloth) {
  const auto needed = text.figures().length("cloths/" + cloth + "/needed");
  return needed && needed->is_zero();
}

const LayPlan* lay_of(const Plans& plans, const std::string& cloth) {
  for (const LayPlan& lay : plans.lays) {
    if (lay.cloth == cloth) return &lay;
  }
  return nullptr;
}

Block heading(std::string s) { return block(Heading{words_in(Face::bold, std::move(s))}); }
Block paragraph(Text text, bool wide) { return block(Paragraph{std::move(text), wide}); }

void add_column(Table& table, Column::Kind kind, const std::string& head, double width, bool is_bold) {
  Column column;
  column.kind = kind;
  column.head = words(head);
  column.width = width;
  column.bold = is_bold;
  table.columns.push_back(column);
}

const std::vector<std::string_view>& sheet_names() {
  static const std::vector<std::string_view> names(std::begin(kSheets), std::end(kSheets));
  return names;
}

std::vector<Sheet> compose_packet(const PacketInput& input) {
  std::vector<Sheet> sheets;
  const bool far = pinned_up(input);
  for (const SheetEntry& entry : input.set.sheets) {
    if (entry.sheet == "what changed" && input.changes == nullptr) continue;
    const std::string kind = repeats_over(entry);
    const std::vector<std::string> items = items_of(input, kind);
    for (const std::string& item : items) {
      // A condition that cannot be answered leaves a sheet out; on a step it would count as met.
      if (entry.when.holds(input.facts, item) != Truth::yes) continue;
      Sheet sheet = sheet_of(input, entry, item);
      if (sheet.answer.empty() && sheet.blocks.empty() && entry.sheet != "contents") continue;
      tell_first(told_on(input, entry.sheet, item, items), sheet);
      sheet.id = entry.sheet;
      sheet.title = title_of(input, entry, kind, item);
      sheet.anchor = sheet_anchor(entry.sheet, item);
      const bool may_share = entry.sheet == "to buy" || entry.sheet == "cutting list" || entry.sheet == "pleats" ||
                             entry.sheet == "closures" || entry.sheet == "size and fit" || entry.sheet == "cutting layouts" ||
                             entry.sheet == "bones" || entry.sheet == "closure reinforcement" || entry.sheet == "contents" ||
                             entry.sheet == "calendar" || entry.sheet == "what waits" || entry.sheet == "cautions";
      // On the wall only what has no places to mark, a sentence or two.
      const bool short_on_the_wall = entry.sheet == "closures" && sheet.blocks.size() <= kFewBlocks;
      sheet.starts_page = far ? !short_on_the_wall : !may_share;
      sheets.push_back(std::move(sheet));
    }
  }
  if (std::any_of(sheets.begin(), sheets.end(), [](const Sheet& s) { return refers_to(s, kAllWarningsAnchor); })) {
    sheets.push_back(all_to_settle(input));
  } else if (std::any_of(sheets.begin(), sheets.end(),
                         [](const Sheet& s) { return s.id == "at a glance" && !s.shorter.empty(); })) {
    sheets.push_back(all_to_settle(input));
    sheets.back().when_named = true;  // whether it is wanted is known when the page is full
  }
  place_contents(input, sheets);
  return sheets;
}

}  // namespace gownsheaf
