#include "packet/size_drawing.h"

#include <algorithm>

#include "packet/run_parts.h"
#include "packet/sheets.h"
#include "packet/wording.h"
#include "project/sizes.h"

namespace gownsheaf {
namespace {

constexpr double kWide = 486, kNames = 74;  // names of the girths stand at the left
constexpr double kBeside = 66;              // room for the words beside an upright at either end
constexpr std::size_t kLongTable = 6;       // rows; of a longer one only those near the girth are drawn

// Names of the sizes over their ticks, each where it has room.
void name_sizes(std::vector<DrawingItem>& items, const GirthLine& girth, const GirthScale& scale, Length y,
                const Typesetter& typesetter) {
  const double size = typesetter.scale().smallest;
  Length free_from = pt(kNames);
  for (const auto& [label, length] : girth.sizes) {
    const Length x = scale.x_of(length);
    items.push_back(line({x, y - pt(6)}, {x, y}, 1.0));
    const Text name = condensed(label);
    const Length half = typesetter.width(name, size).times(1, 2);
    if (x - half < free_from) continue;
    items.push_back(put(name, {x, y - pt(9)}, size, Label::Across::middle));
    free_from = x + half + pt(3);
  }
}

void draw_line(std::vector<DrawingItem>& items, const GirthLine& girth, const GirthScale& scale, Length y, const FigureText& text,
               const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const std::string key = "girths/" + girth.name;
  const std::string body = text.has(key + "/body") ? key + "/body" : "measures/" + girth.name;
  items.push_back(line({pt(kNames), y}, {pt(kWide), y}, 0.7));
  items.push_back(put(words_in(Face::bold, capital(girth.name)), {Length{}, y}, t.text, Label::Across::left, Label::Up::middle));
  name_sizes(items, girth, scale, y, typesetter);

  const Length foot = y + pt(12), first = foot + pt(t.length), second = first + pt(t.text + 4);
  const bool smaller = girth.body && girth.finished && *girth.finished < *girth.body;
  if (girth.finished) {
    const Length x = scale.x_of(*girth.finished);
    const Box upright{x - pt(2), y - pt(5), pt(4), foot - y + pt(5)};
    FillMark white;
    white.path = outline(upright, 1).path;
    white.ink = Ink::white;
    items.push_back(white);
    items.push_back(outline(upright, 1.4));
    items.push_back(put(condensed("finished ") + text.drawn(key + "/finished", Inline::Size::as_text, Face::condensed_bold),
                        {smaller ? x - pt(1) : x + pt(1), first}, t.text, smaller ? Label::Across::right : Label::Across::left));
  }
  if (girth.body) {
    const Length x = scale.x_of(*girth.body);
    items.push_back(line({x, y - pt(5)}, {x, foot}, 2.0));
    const bool beside_right = smaller;
    items.push_back(put(condensed("body ") + text.drawn(body, Inline::Size::as_text, Face::condensed_bold),
                        {beside_right ? x + pt(1) : x - pt(6), first}, t.text,
                        beside_right ? Label::Across::left : Label::Across::right));
  }
  if (girth.body && girth.finished) {
    const Length middle = (scale.x_of(*girth.body) + scale.x_of(*girth.finished)).times(1, 2);
    items.push_back(put(condensed("ease ") + text.drawn(key + "/ease", Inline::Size::as_text, Face::condensed_bold),
                        {middle, second}, t.text, Label::Across::middle));
  }
}

}  // namespace

std::vector<GirthLine> girth_lines(const PacketInput& input) {
  std::vector<GirthLine> lines;
  const Project& project = input.project;
  std::size_t from = 0, to = 0;
  if (project.size_table) {
    to = project.size_table->sizes.size();
    if (to > kLongTable && project.size_choice) {
      const SizeChoice& choice = *project.size_choice;
      const std::size_t low = choice.girth ? std::min(choice.below, *choice.row) : *choice.row;
      const std::size_t high = choice.girth ? std::max(choice.above, *choice.row) : *choice.row;
      from = low > 2 ? low - 2 : 0;
      to = std::min(to, high + 3);
    }
  }
  for (const std::string& name : measures_sized(project)) {
    if (!is_of_the_trunk(name)) continue;
    GirthLine girth;
    girth.name = name;
    for (std::size_t i = from; i < to; ++i) {
      const std::string& label = project.size_table->sizes[i].label;
      if (const auto length = input.figures.length("size/rows/" + label + "/" + name)) girth.sizes.emplace_back(label, *length);
    }
    girth.body = input.figures.length("girths/" + name + "/body");
    if (!girth.body) girth.body = input.figures.length("measures/" + name);
    girth.finished = input.figures.length("girths/" + name + "/finished");
    if (girth.body) lines.push_back(std::move(girth));
  }
  return lines;
}

Length GirthScale::x_of(Length girth) const { return pt(kNames) + scale.of(girth - cut_off); }

GirthScale girth_scale(const std::vector<GirthLine>& lines, ShownIn shown_in) {
  std::optional<Length> least, most;
  const auto take = [&](Length l) {
    least = least ? std::min(*least, l) : l;
    most = most ? std::max(*most, l) : l;
  };
  for (const GirthLine& girth : lines) {
    for (const auto& [label, length] : girth.sizes) take(length);
    if (girth.body) take(*girth.body);
    if (girth.finished) take(*girth.finished);
  }
  const Length step = shown_in == ShownIn::inches ? Length::inches(1) : Length::cm(5);
  GirthScale made;
  for (const DrawingScale scale : scales(shown_in)) {
    made.scale = scale;
    made.cut_off = std::max((least.value_or(Length{}) - pt(kBeside) * scale.one_to).to_step(step, Rounding::down), Length{});
    if (made.x_of(most.value_or(Length{})) + pt(kBeside) <= pt(kWide)) break;
  }
  return made;
}

Drawing draw_girths(const std::vector<GirthLine>& lines, const FigureText& figure_text, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const GirthScale scale = girth_scale(lines, figure_text.shown_in());
  Drawing out;
  out.width = pt(kWide);
  out.name = "girths";
  Length y = pt(12 + t.smallest);
  for (const GirthLine& girth : lines) {
    draw_line(out.items, girth, scale, y, figure_text, typesetter);
    y += pt(12 + t.length + (girth.finished ? t.text + 4 : 0) + 20 + t.smallest);
  }
  out.height = y - pt(8 + t.smallest);
  out.caption = scale_sentence(scale.scale, figure_text.shown_in(), "girth") + condensed(" Every line begins at ") +
                length_in(Face::condensed_bold, ruler_text(scale.cut_off, figure_text.shown_in()), Inline::Size::as_text) +
                condensed(".");
  keep_labels_inside(out, typesetter);
  return out;
}

}  // namespace gownsheaf
