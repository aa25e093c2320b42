// How it was worked out: formula, numbers put in, result and what each rests on, so that any sum can be checked by hand.
#include <algorithm>

#include "figures/privacy.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

struct Group {
  std::string section, item;
  std::vector<const Figure*> figures;
};

std::string section_title(const std::string& section) {
  if (section == "cloths") return "Cloth";
  if (section == "measures") return "Body measures";
  return capital(section);
}

std::vector<Group> groups(const PacketInput& input) {
  std::vector<Group> out;
  for (const Figure& f : input.figures.all()) {
    if (!f.working || (!input.set.private_shown && sum_is_private(f, input.figures))) continue;
    const std::vector<std::string> p = parts_of_key(f.key);
    const bool own_group = p.size() > 2 && p[0] != "measures";
    const std::string item = own_group ? p[1] : "";
    auto at = std::find_if(out.begin(), out.end(), [&](const Group& g) { return g.section == p[0] && g.item == item; });
    if (at == out.end()) at = out.insert(out.end(), {p[0], item, {}});
    at->figures.push_back(&f);
  }
  return out;
}

// Figures that come in runs (marks, placings, left-overs) are one sum repeated: the first shows it.
std::string run_of(const std::string& key) {
  for (const char* run : {"/mark ", "/lay/", "/left over ", "/seam ", "/fastener ", "/other side "}) {
    const std::size_t at = key.find(run);
    if (at == std::string::npos) continue;
    // A name of its own is none of them: `fastener may hold`.
    const std::size_t after = at + std::string_view(run).size();
    if (key[after - 1] == ' ' && (after == key.size() || key[after] < '0' || key[after] > '9')) continue;
    // `mark 3/fold` is one of a run with `mark 4/fold`, `fastener 3` with `fastener 4`.
    const std::size_t last = key.rfind('/');
    return key.substr(0, at) + run + (last > at ? key.substr(last) : "");
  }
  return "";
}

std::string times_signs(std::string s) { return replaced(std::move(s), " x ", " \u00D7 "); }

// What a result rests on besides arithmetic, after its name.
Text rests_on(const Figure& f) {
  Text out;
  if (f.label == 'a') out = condensed(", published rule");
  if (f.label == 'b') out = condensed(", rule from memory");
  if (f.label == 'c') out = condensed(", common practice");
  if (f.guessed) out = out + words(", guessed") + (f.guessed_from.empty() ? Text{} : condensed(" from " + f.guessed_from));
  if (f.standing) out = out + condensed(", maker\u2019s default");
  return out;
}

// Of a lining cut to another size than its outside the sum has the same words: the cloth tells them apart.
std::string cloth_if_another(const Figure& f, const Group& g) {
  const std::vector<std::string> parts = parts_of_key(f.key);
  const bool another = std::any_of(g.figures.begin(), g.figures.end(), [&](const Figure* o) {
    return o != &f && o->working->what == f.working->what && o->working->result != f.working->result;
  });
  return another && parts[0] == "pieces" && parts.size() > 3 ? " in " + parts[2] : "";
}

Row row_of(const Figure& f, const Group& g, std::int64_t alike, const FigureText& text) {
  const Working& w = *f.working;
  Row row;
  Text what = words(w.what + cloth_if_another(f, g)) + rests_on(f);
  if (alike > 0) what = what + condensed("; " + counted(alike, "more is", "more are") + " worked alike");
  row.cells.push_back({what});
  Text sum = condensed(replaced(times_signs(w.formula), "`", ""));
  if (!w.numbers.empty() && w.numbers != w.formula) {
    if (!sum.empty()) {
      Inline line_break;
      line_break.kind = Inline::Kind::line_break;
      sum.push_back(line_break);
    }
    sum = sum + sentence_text(times_signs(w.numbers), false, Face::condensed);
  }
  row.cells.push_back({sum});
  row.cells.push_back({text.marked(f.key, sentence_text(w.result, false, Face::bold))});
  return row;
}

void add_rows(const Group& g, const FigureText& text, Table& table) {
  if (!g.item.empty()) {
    Row name;
    name.kind = Row::Kind::group;
    name.cells.push_back({words_in(Face::bold, capital(g.item))});
    table.rows.push_back(name);
  }
  std::vector<std::string> runs, said;
  for (const Figure* f : g.figures) {
    const std::string run = run_of(f->key);
    std::int64_t alike = 0;
    if (!run.empty()) {
      if (std::find(runs.begin(), runs.end(), run) != runs.end()) continue;
      runs.push_back(run);
      alike = std::count_if(text.figures().all().begin(), text.figures().all().end(),
                            [&](const Figure& o) { return run_of(o.key) == run; }) -
              1;
    }
    const std::string all = f->working->what + "|" + f->working->formula + "|" + f->working->numbers + "|" + f->working->result;
    if (std::find(said.begin(), said.end(), all) != said.end()) continue;
    said.push_back(all);
    table.rows.push_back(row_of(*f, g, alike, text));
  }
}

// One table a section, its items as groups of rows.
void add_section(const PacketInput& input, const std::vector<Group>& all, const std::string& section, Sheet& sheet) {
  const bool far = pinned_up(input);
  Table table;
  const auto column = [&](const char* head, double width) {
    Column c;
    c.head = words(head);
    c.width = width;
    table.columns.push_back(c);
  };
  column("what", far ? 190 : 180);
  column("formula, and the numbers put in", 0);
  column("result", far ? 84 : 74);
  for (const Group& g : all) {
    if (g.section == section) add_rows(g, figure_text_of(input), table);
  }
  sheet.blocks.push_back(heading(section_title(section)));
  sheet.blocks.push_back(block(std::move(table)));
}

// Values that the maker did not write and that the sums rest on.
void defaults(const PacketInput& input, Sheet& sheet) {
  const FigureText text = figure_text_of(input);
  Table table;
  add_column(table, Column::Kind::words, "not written", 190, false);
  add_column(table, Column::Kind::words, "taken as", 100, false);
  add_column(table, Column::Kind::words, "because", 0, false);
  for (const Figure& f : input.figures.all()) {
    if (!f.formula.empty() || f.working || !(f.guessed || f.standing)) continue;
    if (!input.set.private_shown && sum_is_private(f, input.figures)) continue;
    Row row;
    row.cells.push_back({words(figure_name(f.key))});
    row.cells.push_back({text.drawn(f.key, Inline::Size::as_text, Face::bold)});
    row.cells.push_back({f.guessed ? words("guessed") + condensed(f.guessed_from.empty() ? "" : ", from " + f.guessed_from)
                                   : condensed("maker\u2019s default: common practice")});
    table.rows.push_back(row);
  }
  if (table.rows.empty()) return;
  sheet.blocks.push_back(heading("What was not written"));
  sheet.blocks.push_back(block(table));
}

// Why the default stands where the maker has written no other.
std::string why(const Rules& rules, const std::string& rule) {
  std::string because;
  const auto of = [&](const char* name, const auto& given) {
    if (rule == name && given.origin == Origin::standing) because = given.because;
  };
  of("yardage by", rules.yardage_by);
  of("strips lose", rules.strips_lose);
  of("plaid extra", rules.plaid_extra);
  of("pleat seams", rules.pleat_seams);
  of("hook pitch", rules.hook_pitch);
  of("hook set back", rules.hook_set_back);
  of("buttonhole is", rules.buttonhole_is);
  of("bone length is", rules.bone_length_is);
  of("corset pressure", rules.corset_pressure);
  of("waist is", rules.waist_is);
  return because;
}

// Where sources disagree: which rule was used, whose choice it was, and why.
void rules_used(const PacketInput& input, Sheet& sheet) {
  const FigureText text = figure_text_of(input);
  Table table;
  add_column(table, Column::Kind::words, "where sources disagree", 130, false);
  add_column(table, Column::Kind::words, "used here", 120, false);
  add_column(table, Column::Kind::words, "whose choice, and why", 0, false);
  for (const Figure& f : input.figures.all()) {
    const std::vector<std::string> parts = parts_of_key(f.key);
    if (parts.size() != 2 || parts[0] != "rules") continue;
    Row row;
    row.cells.push_back({words(parts[1])});
    row.cells.push_back({text.drawn(f.key, Inline::Size::as_text, Face::bold)});
    const std::string because = why(input.project.rules, parts[1]);
    row.cells.push_back({because.empty() ? condensed("written in the project file")
                                         : condensed("the default: ") +
                                               sentence_text(in_unit_of(because, text.shown_in()), false, Face::condensed)});
    table.rows.push_back(row);
  }
  if (table.rows.empty()) return;
  sheet.blocks.push_back(heading("Rules"));
  sheet.blocks.push_back(block(table));
  sheet.blocks.push_back(
      paragraph(condensed("Another is written under rules in the project file; docs/sources.md names the works.")));
}

}  // namespace

Sheet worked_out_sheet(const PacketInput& input) {
  Sheet sheet;
  sheet.section = Section::sums;
  const std::vector<Group> all = groups(input);
  sheet.answer =
      words(all.empty() ? "Nothing was worked out." : "Each sum as it can be checked by hand: formula, numbers, result.");
  std::vector<std::string> sections;
  for (const Group& g : all) {
    if (std::find(sections.begin(), sections.end(), g.section) != sections.end()) continue;
    sections.push_back(g.section);
    add_section(input, all, g.section, sheet);
  }
  rules_used(input, sheet);
  defaults(input, sheet);
  return sheet;
}

}  // namespace gownsheaf
