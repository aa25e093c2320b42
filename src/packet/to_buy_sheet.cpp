// To buy: each cloth needed, bought, spare or short; then the notions with what was bought of them.
#include <optional>
#include <utility>

#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

constexpr const char* kLengthsNeeded[] = {"lace needed", "casing needed", "braid needed", "stay needed"};

bool is_short(const FigureText& text, const std::string& cloth) { return text.has("cloths/" + cloth + "/short"); }

Text answer(const PacketInput& input, const FigureText& text) {
  std::int64_t shorts = 0, unbought = 0;
  bool same_step = true;
  std::optional<Length> sold_by;
  for (const Cloth& c : input.project.cloths) {
    const std::string key = "cloths/" + c.named.name;
    if (!text.has(key + "/needed")) continue;
    if (is_short(text, c.named.name)) ++shorts;
    else if (!text.has(key + "/bought") && !buys_nothing(text, c.named.name)) ++unbought;
    if (!c.sold_by.known()) continue;
    if (sold_by && *sold_by != *c.sold_by) same_step = false;
    sold_by = *c.sold_by;
  }
  std::string first = "No cloth is short.";
  if (shorts == 1) first = "One cloth is short.";
  else if (shorts > 1) first = whole_number(shorts) + " cloths are short.";
  else if (unbought > 0) first = "Nothing is known to be short.";
  if (unbought == 1) first += " Of one it is not written what was bought.";
  else if (unbought > 1) first += " Of " + whole_number(unbought) + " it is not written what was bought.";
  Text out = words(first + " Lengths in " + (text.shown_in() == ShownIn::inches ? "yards" : "metres"));
  if (sold_by && same_step) {
    out = out + words(", in shop steps of ") +
          length_in(Face::regular, cloth_text_of(*sold_by, text.shown_in(), Rounding::up), Inline::Size::as_text);
  }
  return out + words(", shrinkage added.");
}

Column column(Column::Kind kind, Text head, double width, bool is_bold = false) {
  Column c;
  c.kind = kind;
  c.head = std::move(head);
  c.width = width;
  c.bold = is_bold;
  return c;
}

Table cloth_table(const PacketInput& input, const FigureText& text) {
  const bool far = pinned_up(input);
  const std::string unit = cloth_unit_of(text.shown_in());
  Table table;
  table.columns = {column(Column::Kind::tick, {}, far ? 30 : 20), column(Column::Kind::words, words("cloth"), 0),
                   column(Column::Kind::length, words("needed, " + unit), far ? 94 : 74, true),
                   column(Column::Kind::length, words("bought, " + unit), far ? 90 : 70),
                   column(Column::Kind::length, words("spare or short, " + unit), far ? 128 : 104)};
  for (const Cloth& c : input.project.cloths) {
    const std::string key = "cloths/" + c.named.name;
    const bool wanted = text.has(key + "/needed");
    Row row;
    const bool tick = is_short(text, c.named.name) || (wanted && !text.has(key + "/bought") && !buys_nothing(text, c.named.name));
    row.cells.push_back({tick ? tick_box() : Text{}});
    Text name = bold(c.named.name);
    if (text.has(key + "/width"))
      name = name + words(", ") + text.drawn(key + "/width", Inline::Size::as_text, Face::regular) + words(" wide") +
             text.rests_on(key + "/width");
    if (buys_nothing(text, c.named.name)) name = name + words(": from what is there");
    row.cells.push_back({name + text.then_was(key + "/needed")});
    row.cells.push_back({wanted ? text.cell(key + "/needed", true) : words("\u2013")});
    row.cells.push_back({text.cell(key + "/bought", false)});
    Text last = words("\u2013");
    if (is_short(text, c.named.name)) last = tag(Tag::short_of) + words(" ") + text.cell(key + "/short", true);
    else if (text.has(key + "/spare")) last = text.cell(key + "/spare", false);
    row.cells.push_back({last});
    table.rows.push_back(std::move(row));
  }
  return table;
}

Text notion_name(const Notion& n, ShownIn shown_in) {
  Text out = bold(n.named.name);
  std::string kind = n.kind == n.named.name ? "" : n.kind;
  if (!n.size.empty()) kind += (kind.empty() ? "" : ", ") + n.size;
  if (!kind.empty()) out = out + words(": " + kind);
  const auto size = [&](const Given<Length>& given, const char* after) {
    if (!given.known()) return;
    out = out + words(", ") + length_in(Face::regular, ruler_text(*given, shown_in), Inline::Size::as_text) + words(after);
  };
  size(n.width, " wide");
  size(n.across, " across");
  size(n.thickness, " thick");
  return out;
}

Text notion_bought(const Notion& n, ShownIn shown_in) {
  if (n.bought_number.known()) return words(whole_number(*n.bought_number));
  if (!n.bought_lengths.known()) return words("not written");
  if (n.bought_lengths->empty()) return words("nothing");
  Text out;
  for (const Length length : *n.bought_lengths) {
    if (!out.empty()) out = out + words(" + ");
    out = out + length_in(Face::regular, cloth_text_of(length, shown_in, Rounding::down), Inline::Size::as_text);
  }
  return out;
}

bool falls_short(const Notion& n, const FigureText& text) {
  const std::string key = "notions/" + n.named.name + "/";
  if (n.bought_number.known() && text.has(key + "fasteners needed"))
    return *n.bought_number < text.count(key + "fasteners needed");
  if (!n.bought_lengths.known()) return false;
  Length sum;
  for (const Length l : *n.bought_lengths) sum += l;
  for (const char* needed : kLengthsNeeded)
    if (const auto length = text.figures().length(key + needed)) return sum < *length;
  return false;
}

// What closings take of it; a dash where nothing was worked out.
Text notion_needed(const Notion& n, const FigureText& text) {
  const std::string key = "notions/" + n.named.name + "/";
  if (text.has(key + "fasteners needed")) return bold(text.value(key + "fasteners needed"));
  for (const char* needed : kLengthsNeeded)
    if (text.has(key + needed)) return text.drawn(key + needed, Inline::Size::as_text, Face::bold);
  return words("\u2013");
}

Table notion_table(const PacketInput& input, const FigureText& text) {
  const bool far = pinned_up(input);
  Table table;
  table.columns = {column(Column::Kind::tick, {}, far ? 30 : 20), column(Column::Kind::words, words("what"), 0),
                   column(Column::Kind::words, words("needed"), far ? 90 : 80, true),
                   column(Column::Kind::words, words("bought"), far ? 130 : 110)};
  for (const Notion& n : input.project.notions) {
    const bool bought = n.bought_number.known() || (n.bought_lengths.known() && !n.bought_lengths->empty());
    table.rows.push_back({Row::Kind::plain,
                          {{bought && !falls_short(n, text) ? Text{} : tick_box()},
                           {notion_name(n, text.shown_in())},
                           {notion_needed(n, text)},
                           {notion_bought(n, text.shown_in())}}});
  }
  return table;
}

Table bone_table(const PacketInput& input, const FigureText& text) {
  const bool far = pinned_up(input);
  Table table;
  table.columns = {column(Column::Kind::tick, {}, far ? 30 : 20), column(Column::Kind::words, words("stock"), 0),
                   column(Column::Kind::count, words("bones"), far ? 70 : 56),
                   column(Column::Kind::words, words("to buy"), far ? 220 : 180, true)};
  for (const BonePlan& plan : input.plans.bones) {
    const std::string key = "bone stock/" + plan.stock + "/";
    Text buy;
    for (std::size_t i = 0; i < plan.to_buy.size(); ++i) {
      const std::string k = whole_number(static_cast<std::int64_t>(i + 1));
      buy = buy + words((i > 0 ? " and " : "") + text.value(key + "to buy " + k) + " × ") +
            text.drawn(key + "sold length " + k, Inline::Size::as_text, Face::bold);
    }
    table.rows.push_back({Row::Kind::plain,
                          {{plan.to_buy.empty() ? Text{} : tick_box()},
                           {bold(plan.stock) + words(": " + plan.kind)},
                           {words(text.value(key + "bones"))},
                           {buy.empty() ? words("nothing more") : buy}}});
  }
  return table;
}

}  // namespace

Sheet to_buy_sheet(const PacketInput& input) {
  const FigureText text = figure_text_of(input);
  Sheet sheet;
  sheet.section = Section::buy;
  sheet.answer = answer(input, text);
  if (input.project.cloths.empty()) {
    sheet.answer = words("No cloth is named.");
  } else {
    sheet.blocks.push_back(heading("Cloth"));
    sheet.blocks.push_back(block(cloth_table(input, text)));
    for (const LayPlan& lay : input.plans.lays) {
      if (lay.left_out.empty() || !is_short(text, lay.cloth)) continue;
      sheet.blocks.push_back(
          paragraph(bold(capital(lay.cloth) + ": ") + words("buy ") + text.measured("cloths/" + lay.cloth + "/short") +
                    words(" more, in one piece. On what was bought there is no room for " + listed_few(lay.left_out) + ".")));
    }
  }
  if (!input.project.notions.empty()) {
    sheet.blocks.push_back(heading("Notions"));
    sheet.blocks.push_back(block(notion_table(input, text)));
  }
  if (!input.plans.bones.empty()) {
    sheet.blocks.push_back(heading("Bones"));
    sheet.blocks.push_back(block(bone_table(input, text)));
  }
  return sheet;
}

}  // namespace gownsheaf
