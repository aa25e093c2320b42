// Cutting layout of one cloth: the lay drawn to scale, then the distances that lay it again.
#include <algorithm>
#include <utility>

#include "packet/breadth_drawing.h"
#include "packet/lay_drawing.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kMostRowsBesideADrawing = 12;  // more leave the drawing too small to read its pieces' names
constexpr double kLeastDrawing = 300;                 // points, ruler and key included

// The lay that is printed: on what was bought when all fits there, else on one length to buy.
std::vector<const LaidStrip*> printed_strips(const LayPlan& plan) {
  std::vector<const LaidStrip*> strips;
  if (plan.fits_bought && !plan.on_bought.empty()) {
    for (const LaidStrip& s : plan.on_bought) strips.push_back(&s);
  } else {
    strips.push_back(&plan.to_buy);
  }
  return strips;
}

Text answer(const LayPlan& plan, const std::vector<const LaidStrip*>& strips, const FigureText& text) {
  const std::string key = "cloths/" + plan.cloth;
  const std::int64_t pieces = text.count(key + "/pieces");
  if (strips.size() > 1) {  // what is drawn below: the lengths there are, not one length that would hold them all
    const auto used = std::count_if(strips.begin(), strips.end(), [](const LaidStrip* s) { return !s->placed.empty(); });
    const std::string on = used == 1 ? "one" : whole_number(used);
    Text out = words("One layer, right side up. " + counted(pieces, "piece", "pieces") + " on " + on + " of the " +
                     whole_number(static_cast<std::int64_t>(strips.size())) + " lengths there are");
    if (used == static_cast<std::int64_t>(strips.size()))
      out = words("One layer, right side up. " + counted(pieces, "piece", "pieces") + " on the " + on + " lengths there are");
    if (text.has(key + "/bought")) out = out + words("; ") + text.measured(key + "/bought") + words(" bought in all");
    return out + words(".");
  }
  Text out = words("One layer, right side up. " + counted(pieces, "piece", "pieces") + " on ") +
             text.measured(key + "/lay length");
  if (text.has(key + "/bought")) out = out + words("; ") + text.measured(key + "/bought") + words(" bought.");
  else if (buys_nothing(text, plan.cloth)) out = out + words("; nothing to buy: it goes on what is there.");
  else out = out + words("; ") + text.measured(key + "/needed") + words(" to buy.");
  return out;
}

bool any_on_fold(const LayPlan& plan) {
  return std::any_of(plan.cut.begin(), plan.cut.end(), [](const CutPiece& c) { return c.on_fold; });
}

Text lie_of_the_pieces(const PacketInput& input, const LayPlan& plan, bool several, const FigureText& text) {
  const std::string key = "cloths/" + plan.cloth;
  std::string way = plan.one_way ? "Every piece lies this way, its top to the left."
                                 : "Tops to the left; a piece may also be turned end for end.";
  Text out = words(way + (several ? " On one length no lay can be shorter than " : " No lay can be shorter than ")) + text.checking(key + "/bound") + words(".");
  const Cloth* cloth = input.project.cloth(plan.cloth);
  if (text.has(key + "/shrinks") && cloth != nullptr && !(cloth->shrunk_already.known() && *cloth->shrunk_already)) {
    out = out + words(" Shrink the cloth first: the lay is of shrunk cloth.");
  }
  if (any_on_fold(plan)) out = out + words(" A piece on the fold lies opened out; the broken line in it is its fold.");
  return out;
}

// What does not fit on what was bought, for a cloth that is short.
void say_short(const LayPlan& plan, const FigureText& text, Sheet& sheet) {
  if (plan.fits_bought || plan.on_bought.empty()) return;
  const std::string key = "cloths/" + plan.cloth + "/short";
  Text said = tag(Tag::short_of) + words(" ");
  if (text.has(key)) said = said + text.measured(key) + words(" more is needed, in one piece. ");
  if (!plan.left_out.empty()) said = said + words("On what was bought there is no room for " + listed_few(plan.left_out) + ". ");
  said = said + words("This is the lay on one length that holds them all.");
  sheet.blocks.push_back(paragraph(said, true));
}

std::string part_words(const LayParts& parts, std::size_t i, ShownIn shown_in) {
  static constexpr const char* kNth[] = {"First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth"};
  std::string nth = i < std::size(kNth) ? std::string(kNth[i]) + " part." : "Part " + whole_number(static_cast<std::int64_t>(i + 1)) + ".";
  const LayPart& part = parts.parts[i];
  if (part.starts_at_cut) {
    nth += " At " + ruler_text(part.from, shown_in).plain() + " cut straight across; no piece crosses.";
  } else if (part.repeats) {
    nth += " No straight cut is possible here: it begins again at " + ruler_text(part.from, shown_in).plain() +
           ", before the end of the part above.";
  }
  return nth;
}

void draw_strip(const PacketInput& input, const LayPlan& plan, const LaidStrip& strip, std::size_t first_left_over,
                bool several, Length room_high, const FigureText& text, Sheet& sheet) {
  if (several) {
    Text named = words_in(Face::bold, capital(strip.name) + ": ") +
                 length_in(Face::regular, cloth_text_of(strip.length, text.shown_in(), Rounding::down), Inline::Size::as_text);
    named = named + words(strip.name.rfind("bought", 0) == 0 ? " after squaring and shrinking" : " after shrinking");
    if (strip.placed.empty()) named = named + words(". Nothing is cut from it.");
    sheet.blocks.push_back(block(Paragraph{named, true}, !strip.placed.empty()));
  }
  if (strip.placed.empty()) return;
  const LayParts parts = lay_parts(strip, input.typesetter, text.shown_in(), room_high);
  for (std::size_t i = 0; i < parts.parts.size(); ++i) {
    if (parts.parts.size() > 1) {
      sheet.blocks.push_back(block(Paragraph{sentence_text(part_words(parts, i, text.shown_in()), false, Face::condensed), true}, true));
    }
    LayDrawing drawn = draw_lay_part(plan, strip, parts, i, first_left_over, text, input.typesetter);
    const bool numbered = !drawn.numbered.empty();
    const bool past = i + 1 == parts.parts.size() && parts.drawn_to < strip.length;  // what is said below stays with it
    sheet.blocks.push_back(block(std::move(drawn.drawing), numbered || past));
    if (numbered)
      sheet.blocks.push_back(block(Paragraph{condensed("By their numbers: ") + drawn.numbered + condensed("."), true}, past));
  }
  if (!parts.parts.empty() && parts.drawn_to < strip.length) {
    sheet.blocks.push_back(paragraph(sentence_text("Past " + ruler_text(parts.drawn_to, text.shown_in()).plain() +
                                                   " nothing is cut: the rest is left over.", false, Face::condensed), true));
  }
}

Table placing_table(const LayPlan& plan, const std::vector<const LaidStrip*>& strips, bool far, const FigureText& text) {
  const std::string unit = unit_of(text.shown_in());
  Table table;
  add_column(table, Column::Kind::words, "piece", far ? 150 : 140, false);
  add_column(table, Column::Kind::length, "from end, " + unit, far ? 96 : 82, true);
  add_column(table, Column::Kind::length, "from selvage, " + unit, far ? 120 : 96, true);
  add_column(table, Column::Kind::words, "across \u00D7 along", 0, false);
  for (const LaidStrip* strip : strips) {
    if (strip->placed.empty()) continue;
    if (strips.size() > 1) {
      Row group;
      group.kind = Row::Kind::group;
      group.cells.push_back({bold(capital(strip->name))});
      table.rows.push_back(group);
    }
    for (const LaidPiece& laid : strip->placed) {
      const std::string key = "cloths/" + plan.cloth + "/lay/" + laid.piece + " " + whole_number(laid.copy);
      const std::string cut = cut_key(plan, laid.piece);
      Row row;
      row.cells.push_back({words(copy_name(plan, laid))});
      row.cells.push_back({text.cell(key + "/from end", true)});
      row.cells.push_back({text.cell(key + "/from selvage", true)});
      const bool drawn = !laid.outline.empty();
      const Text lies = condensed(std::string(drawn && laid.top_at_right ? ", top to the right" : "") + (drawn && laid.mirrored ? ", other hand" : ""));
      row.cells.push_back({laid.turned ? text.sizes(cut + "/cut length", cut + "/cut width") + condensed(", turned")
                                       : text.sizes(cut + "/cut width", cut + "/cut length") + lies});
      table.rows.push_back(row);
    }
  }
  return table;
}

// "Cut in steps 15 and 16."
Text cut_in_steps(const PacketInput& input, const LayPlan& plan) {
  std::vector<std::string> numbers;
  for (const PlannedStep& s : input.plans.work) {
    if (s.item == plan.cloth && s.cannot_undo == kCannotUndo[0]) numbers.push_back(whole_number(s.number));
  }
  if (numbers.empty()) return {};
  return words(numbers.size() == 1 ? " It is cut in step\u00A0" + numbers[0] + "." : " It is cut in steps " + listed(numbers) + ".");
}

std::string joins_in_words(std::int64_t joins) { return joins == 0 ? "no joins" : counted(joins, "join", "joins"); }

// A lining or interlining narrower than the shell: each way to join it, with its cloth and its joins.
void say_ways(const LayPlan& plan, const FigureText& text, Sheet& sheet) {
  for (const CutPiece& c : plan.cut) {
    const std::string key = "pieces/" + c.as_named() + "/" + c.cloth;
    if (!text.has(key + "/in pleats/cloth") || (!c.part_of.empty() && &c != &*std::find_if(plan.cut.begin(), plan.cut.end(), [&](const CutPiece& o) {
          return o.as_named() == c.as_named(); })))
      continue;
    Text said = bold(capital(c.as_named())) + words(" is narrower than the shell\u2019s breadths. Joins inside pleats: ") +
                text.measured(key + "/in pleats/cloth") + words(", " + joins_in_words(text.count(key + "/in pleats/joins"))) +
                words(". Its seams over the shell\u2019s: ") + text.measured(key + "/by breadths/cloth") +
                words(", " + joins_in_words(text.count(key + "/by breadths/joins")));
    if (text.has(key + "/turned/cloth"))
      said = said + words(". Turned, its length round the skirt: ") + text.measured(key + "/turned/cloth") + words(", no joins");
    sheet.blocks.push_back(paragraph(said + words("."), true));
  }
}

void say_chart(const LayPlan& plan, const FigureText& text, Sheet& sheet) {
  const std::string key = "cloths/" + plan.cloth;
  if (!text.has(key + "/envelope length")) return;
  Text said = words("The envelope asks ") + text.measured(key + "/envelope length") + words(" at ") + text.measured(key + "/envelope width");
  if (text.has(key + "/by the chart")) said = said + words("; the width chart makes that ") + text.measured(key + "/by the chart") + words(" of this cloth");
  sheet.blocks.push_back(paragraph(said + words(". The chart is an average; the lay above is of these pieces."), true));
}

// The drawing and the table share a page when `with_table`: then the drawing is smaller, down to a scale that leaves it room.
Sheet layout_sheet(const PacketInput& input, const LayPlan& plan, bool with_table) {
  const FigureText text = figure_text_of(input);
  const std::vector<const LaidStrip*> strips = printed_strips(plan);
  const TypeScale& type = input.typesetter.scale();
  Sheet sheet;
  sheet.section = Section::cut;
  sheet.answer = answer(plan, strips, text);
  sheet.blocks.push_back(paragraph(lie_of_the_pieces(input, plan, strips.size() > 1, text) + cut_in_steps(input, plan), true));
  say_short(plan, text, sheet);
  Table placing = placing_table(plan, strips, pinned_up(input), text);
  double room_high = input.shape.bottom - input.shape.top - type.title_step - 2 * type.answer_step - 4 * type.step;
  if (with_table) room_high -= (1.4 * static_cast<double>(placing.rows.size()) + 8) * type.step;
  std::size_t first_left_over = 1;
  for (const LaidStrip* strip : strips) {
    draw_strip(input, plan, *strip, first_left_over, strips.size() > 1, Length::from_points(std::max(room_high, kLeastDrawing)), text, sheet);
    first_left_over += strip->left_over.size();
  }
  sheet.blocks.push_back(heading("To lay it again"));
  sheet.blocks.push_back(block(Paragraph{
      words("Measure from the cut end and from the lower edge of the drawing, to the nearest corner of each piece. The "
            "thin line along each edge is the selvage."), true}, true));
  sheet.blocks.push_back(block(std::move(placing)));
  if (!plan.breadths.empty()) sheet.blocks.push_back(heading("Joins and repeats"));
  for (const BreadthPlan& breadth : plan.breadths) sheet.blocks.push_back(block(draw_breadth(breadth, text, input.typesetter)));
  say_ways(plan, text, sheet);
  say_chart(plan, text, sheet);
  return sheet;
}

}  // namespace

Sheet cutting_layout_sheet(const PacketInput& input, const LayPlan& plan) {
  Sheet sheet = layout_sheet(input, plan, false);
  std::size_t rows = 0;
  for (const LaidStrip* strip : printed_strips(plan)) rows += strip->placed.size();
  if (rows <= kMostRowsBesideADrawing) sheet.shorter.push_back([input, &plan] { return layout_sheet(input, plan, true).blocks; });
  return sheet;
}

}  // namespace gownsheaf
