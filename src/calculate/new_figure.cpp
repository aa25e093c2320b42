#include "calculate/new_figure.h"

#include <stdexcept>

#include "figures/formula_sources.h"

namespace gownsheaf {

ShownIn shown_in(const Project& project) { return project.show_lengths_in.known() ? *project.show_lengths_in : ShownIn::inches; }

std::string worked(Length length, ShownIn in) {
  const Length coarse = cut_step(in);
  if (length.to_step(coarse, Rounding::nearest) == length) return text_of(length, in, coarse, Rounding::nearest).plain();
  const Length fine = in == ShownIn::inches ? Length::sixty_fourths(1) : Length::tenth_mm(1);
  return text_of(length, in, fine, Rounding::nearest).plain();
}

NewFigure::NewFigure(Figures& figures, ShownIn in, std::string_view section, std::string_view item, std::string_view quantity,
                     std::string_view between)
    : figures_(figures), in_(in) {
  const FigureKind* kind = find_figure_kind(section, quantity);
  if (kind == nullptr) throw std::logic_error("no such kind of figure: " + std::string(section) + ", " + std::string(quantity));
  figure_.key = std::string(section);
  for (const std::string_view part : {item, between, quantity})
    if (!part.empty()) figure_.key += "/" + std::string(part);
  figure_.shown = kind->shown;
  figure_.action = kind->action;
  figure_.formula = std::string(kind->formula);
  figure_.is_private = kind->is_private;
}

NewFigure& NewFigure::from(std::string_view key) {
  figure_.inputs.emplace_back(key);
  if (const Figure* f = figures_.find(key)) {
    figure_.is_private = figure_.is_private || f->is_private;
    figure_.standing = figure_.standing || f->standing;
    if (f->guessed && !figure_.guessed) figure_.guessed_from = f->guessed_from;
    figure_.guessed = figure_.guessed || f->guessed;
  }
  return *this;
}

NewFigure& NewFigure::plain_input(std::string_view name) {
  figure_.inputs.emplace_back(name);
  return *this;
}

NewFigure& NewFigure::rests_on(std::string_view name, Origin origin, char label, const std::string& because) {
  if (!name.empty()) figure_.inputs.emplace_back(name);
  else if (origin == Origin::standing || origin == Origin::guessed) not_written_ = label == 'a' || label == 'b' ? label : 'c';
  if (origin == Origin::guessed) {
    if (!figure_.guessed) figure_.guessed_from = because;
    figure_.guessed = true;
  }
  if (origin == Origin::standing && label == 'c') figure_.standing = true;
  return *this;
}

NewFigure& NewFigure::working(std::string what, std::string formula, std::string numbers) {
  figure_.working = Working{std::move(what), std::move(formula), std::move(numbers), ""};
  return *this;
}

std::string_view NewFigure::source() const {
  if (figure_.label == 'c') return kCommonPractice;
  if (!figure_.formula.empty()) return source_of_formula(figure_.formula);
  if (figure_.key.rfind("rules/", 0) == 0) return "where-sources-disagree";
  return not_written_ == 0 ? kFromProjectFile : not_written_ == 'c' ? kCommonPractice : std::string_view("makers-defaults");
}

const Figure& NewFigure::add() {
  if (figure_.working) figure_.working->result = plain_text(figure_, in_);
  figure_.source = std::string(source());
  return figures_.add(std::move(figure_));
}

}  // namespace gownsheaf
