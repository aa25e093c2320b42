// Cutting list: every piece of every cloth, how many, how large, what is in that size already; in the order of cutting.
#include <algorithm>
#include <optional>

#include "packet/sheets.h"
#include "packet/wording.h"
#include "project/edges.h"

namespace gownsheaf {
namespace {

bool any_turned(const LayPlan& lay) {
  const auto turned = [](const LaidStrip& s) {
    return std::any_of(s.placed.begin(), s.placed.end(), [](const LaidPiece& p) { return p.turned; });
  };
  return turned(lay.to_buy) || std::any_of(lay.on_bought.begin(), lay.on_bought.end(), turned);
}

std::string lay_words(const LayPlan& lay) {
  if (any_turned(lay)) return "some pieces turned across, see the lay";
  return lay.one_way ? "one way, tops together" : "either way";
}

Text words_of(const CutPiece& c, const std::string& said_of_all, const FigureText& text) {
  Text out;
  const auto add = [&](const Text& more) {
    if (!out.empty()) out = out + condensed("; ");
    out = out + more;
  };
  for (const char* what : {"copies", "cut width", "cut length"}) {
    const Text was = text.was(c.key + "/" + what);
    if (!was.empty()) add(condensed(std::string(what) + " ") + was);
  }
  if (c.on_fold && text.has(c.key + "/half width")) {
    add(condensed("on the fold, ") + text.drawn(c.key + "/half width") + condensed(" to the edge"));
  } else if (c.on_fold) {
    add(condensed("on the fold"));
  }
  if (c.full_width) add(condensed("selvage to selvage"));
  if (c.grain == "bias" || c.grain == "across") add(condensed("grain " + c.grain));
  if (!c.allowances.empty() && c.allowances != said_of_all) add(sentence_text(c.allowances, false, Face::condensed));
  const Figure* seam = text.figures().find("pieces/" + c.as_named() + "/seam allowance");
  if (seam != nullptr && seam->standing) out = out + condensed(" (maker\u2019s default)");
  return out;
}

// The strip that a slit is finished with; it is no piece unless the maker wrote it as one.
Text placket_strip(const PacketInput& input, const Placket& placket, const FigureText& text) {
  const std::string key = "plackets/" + placket.named.name + "/";
  const Text name = bold("Placket " + placket.named.name + ", ") + text.checking(key + "length") + bold(": ");
  Text of_list = condensed(" It is a piece of your own, or cut beside this list.");
  for (const Piece& piece : input.project.pieces)
    if (same_name(piece.made_for, placket.named.name)) of_list = words(" In this list: " + piece.named.name + ".");
  if (text.has(key + "strip long"))
    return name + words("one strip ") + text.measured(key + "strip wide") + words(" wide and ") +
           text.measured(key + "strip long") + words(" long for its continuous lap, its edge ") +
           text.checking(key + "set back") + words(" back.") + of_list;
  if (text.has(key + "underlap long"))
    return name + words("an underlap ") + text.measured(key + "underlap wide") + words(" wide and ") +
           text.measured(key + "underlap long") + words(" long when finished, two cloths thick.") + of_list;
  if (text.has(key + "facing long"))
    return name + words("two facings, each ") + text.measured(key + "facing wide") + words(" wide and ") +
           text.measured(key + "facing long") + words(" long when finished, one to each side of the slit.") + of_list;
  return {};
}

// The longer of the two sides is no fault: whoever trims it to the other takes the ease away.
Text eased_seam(const PacketInput& input, const Seam& seam, const FigureText& text) {
  const std::string key = "seams/" + seam.named.name + "/ease in";
  if (!text.has(key)) return {};
  const std::string* longest = nullptr;
  std::optional<Length> high;
  for (const std::string& name : seam.joins) {
    const EdgeOfPiece edge = edge_of_piece(input.project, name);
    if (!edge.length.known() || (high && *edge.length <= *high)) continue;
    high = *edge.length;
    longest = &name;
  }
  return bold("Seam " + seam.named.name + ": ") + words(longest == nullptr ? "one side is " : capital(*longest) + " is ") +
         text.measured(key) + words(" longer and is eased in. Do not trim it off.");
}

// The allowances that most pieces of a cloth have, and more than one.
std::string of_most(const LayPlan& lay) {
  std::string most;
  std::ptrdiff_t often = 1;
  for (const CutPiece& c : lay.cut) {
    const auto count =
        std::count_if(lay.cut.begin(), lay.cut.end(), [&](const CutPiece& o) { return o.allowances == c.allowances; });
    if (count > often && !c.allowances.empty()) most = c.allowances, often = count;
  }
  return most;
}

// `once`: what most pieces of a cloth have is said beside its name, not in their rows.
Table list(const PacketInput& input, bool once) {
  const FigureText text = figure_text_of(input);
  const bool far = pinned_up(input);
  const std::string unit = unit_of(text.shown_in());
  Table table;
  add_column(table, Column::Kind::words, "piece", far ? 116 : 112, false);
  add_column(table, Column::Kind::count, "cut", far ? 32 : 30, true);
  add_column(table, Column::Kind::unit, "", far ? 50 : 38, false);
  add_column(table, Column::Kind::length, "across, " + unit, far ? 72 : 62, true);
  add_column(table, Column::Kind::length, "along, " + unit, far ? 72 : 66, true);
  add_column(table, Column::Kind::words, "already in it, " + unit, 0, false);
  for (const LayPlan& lay : input.plans.lays) {
    Row group;
    group.kind = Row::Kind::group;
    Text name = bold(capital(lay.cloth) + ": " + lay_words(lay));
    const std::string hold = holds_on_cutting(input, lay.cloth);
    if (!hold.empty()) name = name + words(" ") + tag(Tag::hold) + words(" ") + sentence_text(hold, false);
    const std::string of_all = once ? of_most(lay) : "";
    if (!of_all.empty()) name = name + words(". Where nothing else is said: ") + sentence_text(of_all, false);
    group.cells.push_back({name});
    table.rows.push_back(group);
    for (const CutPiece& c : lay.cut) {
      Row row;
      row.cells.push_back({words(c.piece)});
      row.cells.push_back({text.marked(
          c.key + "/copies", bold(text.has(c.key + "/copies") ? text.value(c.key + "/copies") : whole_number(c.copies)))});
      row.cells.push_back({c.pair ? condensed(c.copies == 2 ? "a pair" : whole_number(c.copies / 2) + " pairs") : Text{}});
      row.cells.push_back({text.cell(c.key + "/cut width", true)});
      row.cells.push_back({text.cell(c.key + "/cut length", true)});
      row.cells.push_back({words_of(c, of_all, text)});
      table.rows.push_back(row);
    }
  }
  return table;
}

std::vector<Block> blocks_of(const PacketInput& input, bool once) {
  const FigureText text = figure_text_of(input);
  std::vector<Block> blocks{block(list(input, once))};
  for (const Placket& p : input.project.plackets) {
    const Text said = placket_strip(input, p, text);
    if (!said.empty()) blocks.push_back(paragraph(said));
  }
  for (const Seam& seam : input.project.seams) {
    const Text said = eased_seam(input, seam, text);
    if (!said.empty()) blocks.push_back(paragraph(said, true));
  }
  for (const Diagnostic& d : input.messages) {  // pieces that the list cannot hold yet
    const bool left_out = d.code == "size-missing" || d.code == "fills-unknown" || d.code == "width-unknown";
    if (!left_out || d.severity != Severity::hold || !d.accepted_because.empty()) continue;
    blocks.push_back(paragraph(tag(Tag::hold) + words(" ") + words(d.sentence), true));
  }
  return blocks;
}

}  // namespace

Sheet cutting_list_sheet(const PacketInput& input) {
  const FigureText text = figure_text_of(input);
  Sheet sheet;
  sheet.section = Section::cut;
  if (input.plans.lays.empty()) {
    sheet.answer = words("No piece is cut.");
    return sheet;
  }
  std::int64_t pieces = 0;
  for (const LayPlan& lay : input.plans.lays) pieces += text.count("cloths/" + lay.cloth + "/pieces");
  const auto cloths = static_cast<std::int64_t>(input.plans.lays.size());
  sheet.answer = words(
      counted(pieces, "piece", "pieces") + " from " + counted(cloths, "cloth", "cloths") +
      ", cut in this order. The sizes are where the scissors go, allowances in them, of shrunk cloth, of the piece opened out.");
  sheet.blocks = blocks_of(input, false);
  sheet.shorter.push_back([input] { return blocks_of(input, true); });
  return sheet;
}

}  // namespace gownsheaf
