// Making a figure: how it is shown, its action and its formula come from the table of figure kinds; that it is private,
// guessed or rests on a maker's default passes on from what it was worked from.
#pragma once
#include <string>
#include <string_view>
#include <utility>

#include "figures/figures.h"
#include "project/project.h"

namespace gownsheaf {

ShownIn shown_in(const Project& project);

// A length for a line of working: at the printing step when it is whole there, else finer, so that the line can be added up.
std::string worked(Length length, ShownIn in);

class NewFigure {
 public:
  // quantity: as in the table of figure kinds, numbers put in ("mark 3/fold"); between is what stands between the item
  // and the quantity in the key (the cloth, for pieces), or "".
  NewFigure(Figures& figures, ShownIn in, std::string_view section, std::string_view item, std::string_view quantity,
            std::string_view between = "");

  NewFigure& is(Value value) {
    figure_.value = std::move(value);
    return *this;
  }
  NewFigure& at(const SourceSpan& span) {
    figure_.origin = span;
    return *this;
  }
  // Shown otherwise than its kind is: a full breadth is as wide as the cloth, not rounded past it.
  NewFigure& shown_as(Shown shown) {
    figure_.shown = shown;
    return *this;
  }
  NewFigure& to_step(Length step) {
    figure_.step = step;
    return *this;
  }  // of a pleat mark
  NewFigure& label(char who_says_so) {
    figure_.label = who_says_so;
    return *this;
  }  // a b c x
  NewFigure& written() {
    figure_.formula.clear();
    return *this;
  }
  NewFigure& from(std::string_view key);  // another figure
  // A project value: `name` is its path by names, "pieces/skirt breadth/hem", or "" when the figure is that value itself.
  template <class T>
  NewFigure& from(std::string_view name, const Given<T>& given) {
    return rests_on(name, given.origin, given.label, given.because);
  }
  NewFigure& plain_input(std::string_view name);  // a project value that is always written
  // The result is the figure as it prints.
  NewFigure& working(std::string what, std::string formula, std::string numbers);
  const std::string& key() const { return figure_.key; }
  const Figure& add();

 private:
  NewFigure& rests_on(std::string_view name, Origin origin, char label, const std::string& because);
  std::string_view source() const;
  Figures& figures_;
  ShownIn in_;
  Figure figure_;
  char not_written_ = 0;  // label of the default or guess that the figure itself is
};

}  // namespace gownsheaf
