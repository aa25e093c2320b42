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
constexpr double kLeastDrawing = 300;                // points, ruler and key included

// The lay that is printed: on what was bought when all fits there, else on one length to buy.
std::vector<const LaidStrip*> printed_strips(const LayPlan& plan) {
  std::vector<const LaidStrip*> strips;
  if (plan.fits_bought && !plan.on_bought.empty()) {
    for (const LaidStrip& s : plan.on_bought) strips.push_back(&s);
  } else {
    strips.push_back(&plan.to_buy);
    if (plan.opened) strips.push_back(&*plan.opened);
  }
  return strips;
}

bool is_rest(const LaidStrip& strip) { return !strip.starts_at.is_zero(); }

std::string how_it_lies(const std::vector<const LaidStrip*>& strips) {
  for (const LaidStrip* s : strips) {
    if (s->folded == Folded::lengthwise) return "Folded lengthwise, right side inside. ";
    if (s->folded == Folded::crosswise) return "Folded crosswise, right side inside. ";
  }
  return "One layer, right side up. ";
}

Text answer(const LayPlan& plan, const std::vector<const LaidStrip*>& strips, const FigureText& text) {
  const std::string key = "cloths/" + plan.cloth;
  const std::int64_t pieces = text.count(key + "/pieces");
  const std::string begins = how_it_lies(strips) + counted(pieces, "piece", "pieces");
  const auto lengths = std::count_if(strips.begin(), strips.end(), [](const LaidStrip* s) { return !is_rest(*s); });
  if (lengths > 1) {  // what is drawn below: the lengths there are, not one length that would hold them all
    const auto used =
        std::count_if(strips.begin(), strips.end(), [](const LaidStrip* s) { return !is_rest(*s) && !s->placed.empty(); });
    const std::string on = used == 1 ? "one" : whole_number(used);
    Text out = words(begins + " on " + on + " of the " + whole_number(lengths) + " lengths there are");
    if (used == lengths) out = words(begins + " on the " + on + " lengths there are");
    if (text.has(key + "/bought")) out = out + words("; ") + text.measured(key + "/bought") + words(" bought in all");
    return out + words(".");
  }
  Text out = words(begins + " on ") + text.measured(key + "/lay length");
  if (text.has(key + "/bought")) out = out + words("; ") + text.measured(key + "/bought") + words(" bought");
  else if (buys_nothing(text, plan.cloth)) out = out + words("; nothing to buy: it goes on what is there");
  else out = out + words("; ") + text.measured(key + "/needed") + words(" to buy");
  if (plan.spare && !plan.spare->is_zero() && text.has(key + "/spare"))
    out = out + words(", ") + text.measured(key + "/spare") + words(" spare");
  return out + words(".");
}

bool any_on_fold(const LayPlan& plan) {
  return std::any_of(plan.cut.begin(), plan.cut.end(), [](const CutPiece& c) { return c.on_fold; });
}

Text lie_of_the_pieces(const PacketInput& input, const LayPlan& plan, bool several, const FigureText& text) {
  const std::string key = "cloths/" + plan.cloth;
  std::string way = plan.one_way ? "Every piece lies this way, its top to the left."
                                 : "Tops to the left; a piece may also be turned end for end.";
  Text out = words(way + (several ? " On one length no lay can be shorter than " : " No lay can be shorter than ")) +
             text.checking(key + "/bound") + words(".");
  const PlannedStep* shrink = step_with_id(input.plans, "shrink-cloth@" + plan.cloth);
  if (shrink != nullptr)
    out = out + words(shrink->done ? " The lay is of shrunk cloth." : " Shrink the cloth first: the lay is of shrunk cloth.");
  const bool folded = plan.to_buy.folded != Folded::no;
  if (plan.to_buy.folded == Folded::lengthwise)
    out =
        out +
        words(
            " The upper edge of the drawing is the fold, the lower edge both selvages. What lies against the fold is cut as a half; all else here is cut double.");
  if (plan.to_buy.folded == Folded::crosswise)
    out = out + words(" The right end of the drawing is the fold; all here is cut double.");
  if (text.has(key + "/density") && !pinned_up(input))  // nothing is done by it: not read from the wall
    out = out + words(" Of every 100 parts between the selvages " + whole_number(text.count(key + "/density")) + " are pieces.");
  if (!folded && any_on_fold(plan)) out = out + words(" A piece on the fold lies opened out; the broken line in it is its fold.");
  return out;
}

// By repeats of the design: how the cloth is begun.
void say_matching(const LayPlan& plan, Sheet& sheet) {
  if (std::none_of(plan.cut.begin(), plan.cut.end(), [](const CutPiece& c) { return c.match.has_value(); })) return;
  const bool folded = plan.to_buy.folded == Folded::lengthwise;
  sheet.blocks.push_back(paragraph(
      words(std::string("Cut the first end along a line of the design") +
            (plan.to_buy.folded == Folded::lengthwise ? ", and fold the cloth along one; pin the layers line on line" : "") +
            ". The crosses in the pieces lie whole repeats from that end and " +
            (folded ? "from the fold" : "from the thin line of the lower selvage") +
            ", so that the design meets at them. No matched piece is turned end for end."),
      true));
}

// What gave way, what is kept, and what would make it go.
void say_what_gave_way(const LayPlan& plan, const FigureText& text, Sheet& sheet) {
  for (const std::string& piece : plan.pieced)
    sheet.blocks.push_back(paragraph(
        bold(capital(piece)) +
            words(" is joined of " + parts_in_words(plan, piece) +
                  ", because in one piece there is no room for it on what was bought. Each part has a seam at the join."),
        true));
  for (const CutPiece& panel : plan.kept) {
    const bool lost = std::find(plan.not_kept.begin(), plan.not_kept.end(), panel.piece) != plan.not_kept.end();
    Text said = words(lost ? "There is no room left for the panel " : "Left whole: ") + bold(panel.piece) + words(", ") +
                text.sizes(panel.key + "/across", panel.key + "/along", Face::regular);
    sheet.blocks.push_back(paragraph(said + words("."), true));
  }
  for (const OtherWay& way : plan.other_ways)
    sheet.blocks.push_back(paragraph(bold(way.goes ? "It would go " : "It would not go either ") + words(way.words + "."), true));
}

void say_bias(const LayPlan& plan, const FigureText& text, Sheet& sheet) {
  const std::string key = "cloths/" + plan.cloth;
  if (!text.has(key + "/bias strip")) return;
  sheet.blocks.push_back(paragraph(words("Longest bias strip left over, in one piece: ") + text.checking(key + "/bias strip") +
                                       words(", cut ") + text.checking(key + "/bias strip width") + words(" wide."),
                                   true));
}

// The widths that a shop offers, each with what is needed of it.
void say_offers(const PacketInput& input, const LayPlan& plan, const FigureText& text, Sheet& sheet) {
  if (plan.offers.empty()) return;
  const bool far = pinned_up(input);
  sheet.blocks.push_back(heading("Which width to buy"));
  Table table;
  add_column(table, Column::Kind::length, "width, " + unit_of(text.shown_in()), far ? 110 : 90, false);
  add_column(table, Column::Kind::length, "needed, " + cloth_unit_of(text.shown_in()), far ? 110 : 90, true);
  add_column(table, Column::Kind::words, "", 0, false);
  for (const Offer& offer : plan.offers) {
    const Figure* cost = text.figures().find(offer.key + "/cost");
    const bool priced = cost != nullptr && input.set.private_shown;
    Text said;
    if (!offer.goes) said = words("the pieces do not go on it");
    if (priced) said = words("costs " + plain_text(*cost, text.shown_in()));
    if (offer.best && !input.set.shared) said = said + (said.empty() ? Text{} : words(", ")) + bold("the best buy");
    table.rows.push_back({Row::Kind::plain,
                          {{text.cell(offer.key + "/width", true)},
                           {offer.goes ? text.cell(offer.key + "/needed", true) : words("\u2013")},
                           {said}}});
  }
  sheet.blocks.push_back(block(std::move(table)));
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

// Of each piece without room what is missing for it: as much longer, or by itself.
void say_missing(const PacketInput& input, const LayPlan& plan, const FigureText& text, Sheet& sheet) {
  if (plan.missing.empty()) return;
  const bool far = pinned_up(input);
  std::string on;
  for (const MissingPiece& m : plan.missing)
    if (!m.on.empty()) on = m.on;
  sheet.blocks.push_back(heading("What is missing"));
  if (!on.empty())
    sheet.blocks.push_back(
        block(Paragraph{words("With so much more on the " + on +
                              " each of these goes as well, one at a time; or it is cut from new cloth by itself."),
                        true},
              true));
  Table table;
  add_column(table, Column::Kind::words, "no room for", far ? 150 : 140, false);
  if (!on.empty()) add_column(table, Column::Kind::length, "more, " + unit_of(text.shown_in()), far ? 96 : 82, true);
  add_column(table, Column::Kind::length, "by itself, " + cloth_unit_of(text.shown_in()), far ? 120 : 96, true);
  add_column(table, Column::Kind::words, "", 0, false);
  for (const MissingPiece& m : plan.missing) {
    Row row{Row::Kind::plain, {{words(m.piece)}}};
    if (!on.empty()) row.cells.push_back({m.on.empty() ? words("\u2013") : text.cell(m.key + "/more", true)});
    row.cells.push_back({text.cell(m.key + "/alone", true)});
    row.cells.push_back({Text{}});
    table.rows.push_back(row);
  }
  sheet.blocks.push_back(block(std::move(table)));
}

std::string part_words(const LayParts& parts, std::size_t i, ShownIn shown_in) {
  static constexpr const char* kNth[] = {"First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth"};
  std::string nth =
      i < std::size(kNth) ? std::string(kNth[i]) + " part." : "Part " + whole_number(static_cast<std::int64_t>(i + 1)) + ".";
  const LayPart& part = parts.parts[i];
  if (part.starts_at_cut) {
    nth += " At " + ruler_text(part.from, shown_in).plain() + " cut straight across; no piece crosses.";
  } else if (part.repeats) {
    const Length before = parts.parts[i - 1].to;
    nth += " No straight cut is possible here: from " + ruler_text(part.from, shown_in).plain() + " to " +
           ruler_text(before, shown_in).plain() + " the cloth is drawn in both parts.";
  }
  return nth;
}

void draw_strip(const PacketInput& input, const LayPlan& plan, const LaidStrip& strip, std::size_t first_left_over, bool several,
                Length room_high, bool with_table, const FigureText& text, Sheet& sheet) {
  if (several && is_rest(strip)) {
    sheet.blocks.push_back(block(
        Paragraph{
            sentence_text("At " + ruler_text(strip.starts_at, text.shown_in()).plain() +
                              " cut straight across. What follows lies in one layer, opened out, and is measured from that end.",
                          false),
            true},
        true));
  } else if (several) {
    Text named = words_in(Face::bold, capital(strip.name) + ": ") +
                 length_in(Face::regular, cloth_text_of(strip.length, text.shown_in(), Rounding::down), Inline::Size::as_text);
    if (strip.folded != Folded::no) named = named + words(" of it folded");
    else
      named = named + words(strip.open                           ? ""
                            : strip.name.rfind("bought", 0) == 0 ? " after squaring and shrinking"
                                                                 : " after shrinking");
    if (strip.placed.empty()) named = named + words(". Nothing is cut from it.");
    sheet.blocks.push_back(block(Paragraph{named, true}, !strip.placed.empty()));
  }
  if (strip.placed.empty()) return;
  const LayParts parts = lay_parts(strip, input.typesetter, text.shown_in(), room_high, with_table);
  for (std::size_t i = 0; i < parts.parts.size(); ++i) {
    if (parts.parts.size() > 1) {
      sheet.blocks.push_back(
          block(Paragraph{sentence_text(part_words(parts, i, text.shown_in()), false, Face::condensed), true}, true));
    }
    LayDrawing drawn = draw_lay_part(plan, strip, parts, i, first_left_over, text, input.typesetter);
    const bool numbered = !drawn.numbered.empty();
    const bool past = i + 1 == parts.parts.size() && parts.drawn_to < strip.length;  // what is said below stays with it
    sheet.blocks.push_back(block(std::move(drawn.drawing), numbered || past));
    if (numbered)
      sheet.blocks.push_back(block(Paragraph{condensed("By their numbers: ") + drawn.numbered + condensed("."), true}, past));
  }
  if (!parts.parts.empty() && parts.drawn_to < strip.length) {
    sheet.blocks.push_back(paragraph(
        sentence_text("Past " + ruler_text(parts.drawn_to, text.shown_in()).plain() + " nothing is cut: the rest is left over.",
                      false, Face::condensed),
        true));
  }
}

bool is_kept(const LayPlan& plan, const std::string& piece) {
  return std::any_of(plan.kept.begin(), plan.kept.end(), [&](const CutPiece& c) { return c.piece == piece; });
}

Table placing_table(const LayPlan& plan, const std::vector<const LaidStrip*>& strips, bool far, const FigureText& text) {
  const std::string unit = unit_of(text.shown_in());
  Table table;
  add_column(table, Column::Kind::words, "piece", far ? 132 : 140, false);
  add_column(table, Column::Kind::length, "from end, " + unit, far ? 84 : 82, true);
  add_column(table, Column::Kind::length, "from selvage, " + unit, far ? 112 : 96, true);
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
      const Text lies = condensed(std::string(drawn && laid.top_at_right ? ", top to the right" : "") +
                                  (drawn && laid.mirrored ? ", other hand" : ""));
      if (laid.on_fold || laid.also > 0 || laid.bias || is_kept(plan, laid.piece)) {
        const bool kept = is_kept(plan, laid.piece);
        const Text size = text.sizes(cut + (kept ? "/across" : "/cut width"), cut + (kept ? "/along" : "/cut length"));
        row.cells.push_back({size +
                             condensed(kept           ? ", left whole"
                                       : laid.on_fold ? ", half on the fold"
                                       : laid.bias    ? ", on the bias"
                                                      : ", double") +
                             (laid.on_fold || kept ? Text{} : lies)});
        table.rows.push_back(row);
        continue;
      }
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
  return words(numbers.size() == 1 ? " It is cut in step\u00A0" + numbers[0] + "."
                                   : " It is cut in steps " + listed(numbers) + ".");
}

std::string joins_in_words(std::int64_t joins) { return joins == 0 ? "no joins" : counted(joins, "join", "joins"); }

// A lining or interlining narrower than the shell: each way to join it, with its cloth and its joins.
void say_ways(const LayPlan& plan, const FigureText& text, Sheet& sheet) {
  for (const CutPiece& c : plan.cut) {
    const std::string key = "pieces/" + c.as_named() + "/" + c.cloth;
    if (!text.has(key + "/in pleats/cloth") ||
        (!c.part_of.empty() &&
         &c != &*std::find_if(plan.cut.begin(), plan.cut.end(), [&](const CutPiece& o) { return o.as_named() == c.as_named(); })))
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
  Text said = words("The envelope asks ") + text.measured(key + "/envelope length") + words(" at ") +
              text.measured(key + "/envelope width");
  if (text.has(key + "/by the chart"))
    said = said + words("; the width chart makes that ") + text.measured(key + "/by the chart") + words(" of this cloth");
  sheet.blocks.push_back(paragraph(said + words(". The chart is an average; the lay above is of these pieces."), true));
}

// The large before the small, as the cutting list has them.
std::vector<std::string> order_of_cutting(const LayPlan& plan) {
  std::vector<std::string> names;
  for (const CutPiece& c : plan.cut)
    if (std::find(names.begin(), names.end(), c.piece) == names.end()) names.push_back(c.piece);
  return names;
}

// The drawing and the table share a page when `with_table`: then the drawing is smaller, down to a scale that leaves it room.
Sheet layout_sheet(const PacketInput& input, const LayPlan& plan, bool with_table) {
  const FigureText text = figure_text_of(input);
  const std::vector<const LaidStrip*> strips = printed_strips(plan);
  const TypeScale& type = input.typesetter.scale();
  Sheet sheet;
  sheet.section = Section::cut;
  sheet.answer = answer(plan, strips, text);
  const std::string hold = holds_on_cutting(input, plan.cloth);
  // What is short is said below, with what has no room.
  const bool only_short = !plan.fits_bought && hold.find(" more of " + plan.cloth + " is here") != std::string::npos &&
                          hold.find("; ") == std::string::npos;
  if (!hold.empty() && !only_short)
    sheet.blocks.push_back(block(Paragraph{tag(Tag::hold) + words(" ") + sentence_text(hold, true), true}, true));
  sheet.blocks.push_back(paragraph(lie_of_the_pieces(input, plan, strips.size() > 1, text) + cut_in_steps(input, plan), true));
  say_matching(plan, sheet);
  if (plan.cut_short)
    sheet.blocks.push_back(paragraph(
        bold("Cut short. ") + words("When the packet is made again the pieces will lie otherwise: keep this sheet."), true));
  say_short(plan, text, sheet);
  say_what_gave_way(plan, text, sheet);
  if (!plan.fits_bought) say_missing(input, plan, text, sheet);
  Table placing = placing_table(plan, strips, pinned_up(input), text);
  const double room_high = input.shape.bottom - input.shape.top - type.title_step - 2 * type.answer_step - 4 * type.step;
  const double beside_table =
      std::max(room_high - (1.4 * static_cast<double>(placing.rows.size()) + 8) * type.step, kLeastDrawing);
  const LaidStrip* last = nullptr;  // of several lengths only the last stands above the table
  for (const LaidStrip* strip : strips)
    if (!strip->placed.empty()) last = strip;
  std::size_t first_left_over = 1;
  for (const LaidStrip* strip : strips) {
    const bool shares = with_table && strip == last;
    draw_strip(input, plan, *strip, first_left_over, strips.size() > 1, Length::from_points(shares ? beside_table : room_high),
               shares, text, sheet);
    first_left_over += strip->left_over.size();
  }
  sheet.blocks.push_back(heading("To lay it again"));
  sheet.blocks.push_back(
      block(Paragraph{words("Measure from the cut end and the lower edge of the drawing, to the nearest corner of each piece; "
                            "the thin lines are selvages. Cut in this order: " +
                            listed(order_of_cutting(plan)) + "."),
                      true},
            true));
  sheet.blocks.push_back(block(std::move(placing)));
  say_bias(plan, text, sheet);
  say_offers(input, plan, text, sheet);
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
