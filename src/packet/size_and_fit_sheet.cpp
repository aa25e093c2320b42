// Size and fit: which size is made and why, every girth as body, size, ease and finished, and a line for each to scale.
// A set that leaves body measures out has no such sheet: the first page names the size.
#include "packet/sheets.h"
#include "packet/size_drawing.h"
#include "packet/wording.h"
#include "project/sizes.h"

namespace gownsheaf {
namespace {

using By = SizeChoice::By;
using Lies = SizeChoice::Lies;

// Size LABEL, with what the table has for it: "8 (36 1/4 in)".
Text row(const std::string& label, const std::string& girth, const FigureText& text) {
  return words(label + " (") + text.checking("size/rows/" + label + "/" + girth) + words(")");
}

Text why(const PacketInput& input, const SizeChoice& choice, const FigureText& text) {
  Text out = words(size_word(choice));
  if (choice.by == By::label) out = out + words(", as it is written");
  if (choice.by == By::nearest && choice.lies == Lies::between_rows) {
    out = out + words(choice.halfway ? ", the larger of two that are as near" : ", the nearest");
  }
  if (choice.by == By::larger && choice.lies == Lies::between_rows) out = out + words(", the next larger");
  if (!choice.girth || !input.project.size_table) return out + words(".");
  const SizeTable& table = *input.project.size_table;
  const std::string& name = choice.chosen_by;
  out = out + words(choice.by == By::label ? ". " : ": ");
  const std::string girth = table.girths_finished ? "finished " + name : name;
  out = out + words((choice.by == By::label ? capital(girth) : girth) + " ") + text.measured("size/held against");
  const std::string &below = table.sizes[choice.below].label, &above = table.sizes[choice.above].label;
  switch (choice.lies) {
    case Lies::on_a_row: return out + words(" is that of size " + below + ".");
    case Lies::under_the_table: return out + words(" is less than the smallest, ") + row(below, name, text) + words(".");
    case Lies::over_the_table: return out + words(" is more than the largest, ") + row(below, name, text) + words(".");
    case Lies::between_rows: break;
  }
  return out + words(" lies ") + bold(text.value("size/fraction")) + words(" of the way from ") + row(below, name, text) +
         words(" to ") + row(above, name, text) + words(".");
}

Table girths(const PacketInput& input, const std::vector<std::string>& names, const FigureText& text) {
  const std::string unit = ", " + unit_of(text.shown_in());
  const bool table_there = input.project.size_choice && input.project.size_table;
  Table table;
  add_column(table, Column::Kind::words, "measure", 0, true);
  add_column(table, Column::Kind::length, "body" + unit, 76, false);
  add_column(table, Column::Kind::length, "ease" + unit, 66, false);
  add_column(table, Column::Kind::length, "finished" + unit, 86, true);
  if (table_there) {
    add_column(table, Column::Kind::length, "size" + unit, 76, false);
    add_column(table, Column::Kind::length, "differs by" + unit, 90, false);
  }
  for (const std::string& name : names) {
    const std::string key = "girths/" + name;
    Row line;
    line.cells.push_back({words_in(Face::bold, capital(name)) + text.then_was(key + "/finished")});
    line.cells.push_back({text.cell(text.has(key + "/body") ? key + "/body" : "measures/" + name, false)});
    line.cells.push_back({text.cell(key + "/ease", false)});
    line.cells.push_back({text.cell(key + "/finished", true)});
    if (table_there) {
      line.cells.push_back({text.cell(key + "/size", false)});
      line.cells.push_back({text.cell(key + "/difference", false)});
    }
    table.rows.push_back(line);
  }
  return table;
}

Text about_the_table(const SizeTable& size_table, const SizeChoice& choice) {
  const std::string against = size_table.girths_finished ? "finished garment" : "body";
  const std::string size =
      choice.between_to.empty() ? "size " + choice.made : "what lies between sizes " + choice.made + " and " + choice.between_to;
  return words("Sizes are those of " + size_table.name + ", measures of the " + against + "; " + choice.chosen_by +
               " decides. “Differs by” is " + size + " less the " + against + ": with a minus the size is the smaller.");
}

Table pieces(const PacketInput& input, const SizeChoice& choice, const FigureText& text) {
  const bool between = !choice.between_to.empty();
  const std::string unit = ", " + unit_of(text.shown_in());
  Table table;
  add_column(table, Column::Kind::words, "piece", 0, true);
  add_column(table, Column::Kind::words, "what", 110, false);
  if (between) {
    add_column(table, Column::Kind::length, choice.made + unit, 80, false);
    add_column(table, Column::Kind::length, choice.between_to + unit, 80, false);
  }
  add_column(table, Column::Kind::length, (between ? "made" : "size " + choice.made) + unit, 90, true);
  for (const SizedPiece& p : input.project.sized_pieces) {
    const std::string key = "size/pieces/" + p.piece + "/" + p.quantity;
    // A number among the lengths of its column says that it is none.
    const auto cell = [&](const std::string& at, bool made) -> Cell {
      if (!text.has(at) || text.figures().length(at)) return {text.cell(at, made)};
      return {words_in(made ? Face::bold : Face::regular, counted(text.count(at), "piece", "pieces"))};
    };
    Row line;
    line.cells.push_back({words_in(Face::bold, capital(p.piece))});
    line.cells.push_back({words(p.quantity)});
    if (between) {
      line.cells.push_back(cell(key + "/" + choice.made, false));
      line.cells.push_back(cell(key + "/" + choice.between_to, false));
    }
    line.cells.push_back(cell(key, true));
    table.rows.push_back(line);
  }
  return table;
}

Text bust_over_ribs(const FigureText& text) {
  return words("The bust stands ") + text.measured("girths/bust/over underbust") +
         words(" over the ribs below it: darts or seams of the bodice take that in. An underbodice bought to fit has band ") +
         text.marked("girths/underbust/band", words(text.value("girths/underbust/band"))) +
         words(", the underbust to the nearest 5 cm.");
}

}  // namespace

Sheet size_and_fit_sheet(const PacketInput& input) {
  const FigureText text = figure_text_of(input);
  Sheet sheet;
  sheet.section = Section::fit;
  const Project& project = input.project;
  if (!input.set.private_shown) return sheet;
  sheet.answer = project.size_choice ? why(input, *project.size_choice, text)
                                     : words("Each girth finishes at what the body measures and the ease that is written.");
  const std::vector<std::string> names = measures_sized(project);
  if (!names.empty()) sheet.blocks.push_back(block(girths(input, names, text)));
  if (project.size_choice && project.size_table)
    sheet.blocks.push_back(paragraph(about_the_table(*project.size_table, *project.size_choice), true));
  if (text.has("girths/bust/over underbust")) sheet.blocks.push_back(paragraph(bust_over_ribs(text), true));
  if (!project.sized_pieces.empty() && project.size_choice) {
    sheet.blocks.push_back(heading("Pieces given by size"));
    sheet.blocks.push_back(block(pieces(input, *project.size_choice, text)));
  }
  const std::vector<GirthLine> lines = girth_lines(input);
  if (!lines.empty()) {
    sheet.blocks.push_back(heading("A line for each girth"));
    sheet.blocks.push_back(block(draw_girths(lines, text, input.typesetter)));
  }
  return sheet;
}

}  // namespace gownsheaf
