#include "calculate/sizes.h"

#include "calculate/new_figure.h"
#include "project/sizes.h"

namespace gownsheaf {
namespace {

std::string less_or_more(Length a, Length b, ShownIn in) {  // "26 1/2 in − 1/2 in"
  const bool less = b < Length{};
  return worked(a, in) + (less ? " − " : " + ") + worked(less ? -b : b, in);
}

// The figure that holds the measure of the body; made here where the two sides were given apart. "" when not known.
std::string add_body(const Project& project, const std::string& name, Figures& figures) {
  const std::string whole = "measures/" + name;
  if (figures.find(whole) != nullptr) return whole;
  const std::string together = "girths/" + name + "/body";
  if (figures.find(together) != nullptr) return together;
  const auto all = all_round(project, name);
  if (!all) return "";
  const Measure& m = project.measures.girths_and_lengths.at(name);
  const ShownIn in = shown_in(project);
  const bool trunk = is_of_the_trunk(name);
  return NewFigure(figures, in, "girths", name, "body")
      .is(*all)
      .at(m.left.at)
      .from(whole + "/left")
      .from(whole + "/right")
      .working("the body's " + name, trunk ? "left + right" : "the larger of left and right",
               worked(*m.left, in) + (trunk ? " + " : ", ") + worked(*m.right, in))
      .add()
      .key;
}

void add_table(const Project& project, Figures& figures) {
  const ShownIn in = shown_in(project);
  for (const SizeRow& row : project.size_table->sizes)
    for (const std::string& name : measures_sized(project))
      if (const auto girth = girth_of(row, name))
        NewFigure(figures, in, "size", "", "rows/" + row.label + "/" + name)
            .is(*girth)
            .at(row.girths.at(name).at)
            .written()
            .add();
}

// The girth held against the table, each row's difference from it, and the fraction between two rows.
void add_place(const Project& project, const SizeChoice& choice, Figures& figures) {
  const ShownIn in = shown_in(project);
  const SizeTable& table = *project.size_table;
  const std::string& name = choice.chosen_by;
  NewFigure(figures, in, "size", "", "chosen by").is(name).at(table.at).from("", table.chosen_by).written().add();
  if (!choice.girth) return;
  const std::string finished = "girths/" + name + "/finished";
  const bool with_ease = table.girths_finished && figures.find(finished) != nullptr;
  NewFigure held(figures, in, "size", "", "held against");
  held.is(*choice.girth).at(table.at);
  if (with_ease) held.from(finished);
  else held.from(figures.find("girths/" + name + "/body") != nullptr ? "girths/" + name + "/body" : "measures/" + name);
  held.add();
  for (std::size_t i = 0; i < table.sizes.size(); ++i) {
    const SizeRow& row = table.sizes[i];
    const Length girth = *girth_of(row, name);
    NewFigure f(figures, in, "size", "", "differences/" + row.label);
    f.is(girth - *choice.girth).at(row.at).from("size/rows/" + row.label + "/" + name).from("size/held against");
    if (i == choice.below || i == choice.above)  // the sum of the others is the same
      f.working("size " + row.label + " against the " + (with_ease ? "finished " : "body's ") + name,
                "size − " + std::string(with_ease ? "finished" : "body"), less_or_more(girth, -*choice.girth, in));
    f.add();
  }
  if (choice.lies != SizeChoice::Lies::between_rows) return;
  const SizeRow &below = table.sizes[choice.below], &above = table.sizes[choice.above];
  const Length low = *girth_of(below, name), high = *girth_of(above, name);
  NewFigure(figures, in, "size", "", "fraction")
      .is(choice.fraction)
      .at(table.at)
      .from("size/held against")
      .from("size/rows/" + below.label + "/" + name)
      .from("size/rows/" + above.label + "/" + name)
      .working(
          "from size " + below.label + " to " + above.label, "(girth − row below) / (row above − row below)",
          "(" + worked(*choice.girth, in) + " − " + worked(low, in) + ") / (" + worked(high, in) + " − " + worked(low, in) + ")")
      .add();
}

void add_sized_pieces(const Project& project, const SizeChoice& choice, Figures& figures) {
  const ShownIn in = shown_in(project);
  for (const SizedPiece& p : project.sized_pieces) {
    const std::string key = "pieces/" + p.piece + "/" + p.quantity;
    NewFigure f(figures, in, "size", "", key);
    f.at(p.at);
    if (p.number) {
      f.is(*p.number).written().from("size/made").add();
      continue;
    }
    f.is(p.made);
    const bool between = !choice.between_to.empty() && p.of_made != p.of_upper;
    if (!between) {
      f.written().from("size/made").add();
      continue;
    }
    for (const auto& [label, length] : {std::pair(choice.made, p.of_made), std::pair(choice.between_to, p.of_upper)})
      f.from(NewFigure(figures, in, "size", "", key + "/" + label).is(length).at(p.at).written().add().key);
    f.from("size/fraction")
        .working(p.quantity + " of " + p.piece, "lower size + fraction × (upper size − lower size)",
                 worked(p.of_made, in) + " + " + plain_text(figures.at("size/fraction"), in) + " × (" +
                     less_or_more(p.of_upper, -p.of_made, in) + ")");
    f.add();
  }
}

// What the size that is made has at this measure: its row's, or between two rows. "" when the table does not say.
std::string add_size_at(const Project& project, const std::string& name, Figures& figures) {
  if (!project.size_table || !project.size_choice || !project.size_choice->row) return "";
  const SizeChoice& choice = *project.size_choice;
  const SizeRow& row = project.size_table->sizes[*choice.row];
  const auto low = girth_of(row, name);
  if (!low) return "";
  const ShownIn in = shown_in(project);
  NewFigure f(figures, in, "girths", name, "size");
  f.at(row.girths.at(name).at).from("size/rows/" + row.label + "/" + name);
  if (choice.between_to.empty()) return f.is(*low).written().add().key;
  const SizeRow& upper = project.size_table->sizes[choice.above];
  const auto high = girth_of(upper, name);
  if (!high) return "";
  return f.is(between_rows(*low, *high, choice.between))
      .from("size/rows/" + upper.label + "/" + name)
      .from("size/fraction")
      .working(
          name + " between sizes " + row.label + " and " + upper.label, "lower row + fraction × (upper row − lower row)",
          worked(*low, in) + " + " + plain_text(figures.at("size/fraction"), in) + " × (" + less_or_more(*high, -*low, in) + ")")
      .add()
      .key;
}

// How far the bust stands over the ribs below it, and the band that a bought underbodice is labelled with.
void add_bust(const Project& project, Figures& figures) {
  const ShownIn in = shown_in(project);
  const std::string bust_key = add_body(project, "bust", figures), under_key = add_body(project, "underbust", figures);
  if (bust_key.empty() || under_key.empty()) return;
  const Length bust = *figures.length(bust_key), under = *figures.length(under_key);
  if (bust < under) return;
  NewFigure(figures, in, "girths", "bust", "over underbust")
      .is(bust - under)
      .at(figures.at(under_key).origin)
      .from(bust_key)
      .from(under_key)
      .working("bust over underbust", "bust − underbust", less_or_more(bust, -under, in))
      .add();
  const Length five = Length::cm(5);
  const std::int64_t band = under.to_step(five, Rounding::nearest).in_ticks() / five.in_ticks() * 5;
  NewFigure(figures, in, "girths", "underbust", "band")
      .is(band)
      .at(figures.at(under_key).origin)
      .from(under_key)
      .working("band", "underbust to the nearest 5 cm", worked(under, in))
      .add();
}

}  // namespace

void add_sizes(const Project& project, Figures& figures) {
  const ShownIn in = shown_in(project);
  const std::vector<std::string> names = measures_sized(project);
  std::vector<std::string> bodies;
  for (const std::string& name : names) {
    bodies.push_back(add_body(project, name, figures));
    const auto ease = project.ease.find(name);
    if (ease == project.ease.end() || !ease->second.known()) continue;
    const std::string& body = bodies.back();
    NewFigure(figures, in, "girths", name, "ease").is(*ease->second).at(ease->second.at).from("", ease->second).written().add();
    if (body.empty()) continue;
    const Length girth = *figures.length(body);
    NewFigure(figures, in, "girths", name, "finished")
        .is(girth + *ease->second)
        .at(ease->second.at)
        .from(body)
        .from("girths/" + name + "/ease")
        .working("finished " + name, "body + ease", less_or_more(girth, *ease->second, in))
        .add();
  }
  add_bust(project, figures);
  if (!project.size_choice) return;
  const SizeChoice& choice = *project.size_choice;
  NewFigure(figures, in, "size", "", "made")
      .is(choice.between_to.empty() ? choice.made : choice.made + " to " + choice.between_to)
      .at(project.size.at)
      .from("size", project.size)
      .written()
      .add();
  if (project.size_table) {
    add_table(project, figures);
    add_place(project, choice, figures);
  }
  add_sized_pieces(project, choice, figures);
  for (std::size_t i = 0; i < names.size(); ++i) {
    const std::string size = add_size_at(project, names[i], figures);
    const bool finished = project.size_table && project.size_table->girths_finished;
    const std::string against = finished ? "girths/" + names[i] + "/finished" : bodies[i];
    if (size.empty() || against.empty() || figures.find(against) == nullptr) continue;
    const Length a = *figures.length(size), b = *figures.length(against);
    NewFigure(figures, in, "girths", names[i], "difference")
        .is(a - b)
        .at(figures.at(size).origin)
        .from(size)
        .from(against)
        .working(names[i] + " of the size against " + (finished ? "the finished garment" : "the body"),
                 finished ? "size − finished" : "size − body", less_or_more(a, -b, in))
        .add();
  }
}

}  // namespace gownsheaf
