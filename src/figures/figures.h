// Every number that is printed is a Figure: one number, one place. Sheets, steps, drawings and the JSON print it only
// through here. Keys are paths by names: `pieces/skirt breadth/slate wool/cut length`, `pleats/sides/visible`.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "units/print.h"
#include "units/quantities.h"

namespace gownsheaf {

using Value = std::variant<std::monostate, Length, Area, Mass, MassPerArea, Force, Pressure, LoadPerLength, Angle, Ratio, Percent,
                           Money, Day, Span, Rate, std::int64_t, std::string, bool>;

enum class Action { none, recut, remark, buy };
std::string_view word_for(Action a);

// How a length is shown. The exact value stays in the Figure; rounding happens only when it is printed.
enum class Shown {
  cut,
  mark,
  pleat_mark,
  cloth,
  exact
};  // cut: up to 1/16 in or 1 mm; mark: nearest; pleat_mark: nearest 1/32 in or 1 mm; cloth: yards or metres

// How a figure came about, to be checked by hand: one line each.
struct Working {
  std::string what;     // "cloth for the pleated edge"
  std::string formula;  // "F + n x 2d"
  std::string numbers;  // "30 in + 20 x 2 x 3/4 in"
  std::string result;   // "60 in"
};

struct Figure {
  std::string key;
  Value value;
  Shown shown = Shown::exact;
  std::optional<Length> step;       // of a pleat mark, where the maker asked for another than the usual
  std::string formula;              // formula id: anchor in docs/formulas.md ("pleats"), or "" if written
  std::vector<std::string> inputs;  // keys of figures or project values it was worked from
  std::string source;               // anchor in docs/sources.md, or ""
  char label = 'x';                 // a b c x
  SourceSpan origin;                // of the item in the project file
  bool is_private = false;
  bool guessed = false;      // rests on a guess
  bool standing = false;     // rests on a maker's default (label c) that was not written
  std::string guessed_from;  // words: what it was guessed from
  Action action = Action::none;
  std::optional<Working> working;
};

class Figures {
 public:
  // Keys are unique: a second add of a key is a fault of ours and throws std::logic_error. Returns the stored figure.
  const Figure& add(Figure f);
  const Figure* find(std::string_view key) const;
  const Figure& at(std::string_view key) const;            // throws std::out_of_range
  const std::vector<Figure>& all() const { return all_; }  // in the order added: maker's order of sections and items
  std::optional<Length> length(std::string_view key) const;
  std::optional<std::int64_t> count(std::string_view key) const;

  // Leaves the first `count` of them: what was added for a trial that is not taken goes again.
  void forget_after(std::size_t count);

 private:
  std::vector<Figure> all_;
  std::map<std::string, std::size_t, std::less<>> by_key_;
};

// The static table of figure kinds: which figures an item may have. Lets `{run:count}` in a step be checked when the
// library is read.
struct FigureKind {
  std::string_view section;    // "cloths", "pieces", "pleats", "rounds", "measures", "skirt", "garment"
  std::string_view quantity;   // "cut length"; for pieces the path is pieces/PIECE/CLOTH/quantity
  std::string_view dimension;  // "length", "count", "word", "area", "mass", "percent", "ratio"
  Shown shown;
  Action action;
  std::string_view formula;
  std::string_view meaning;
  bool is_private;
};
const std::vector<FigureKind>& figure_kinds();
const FigureKind* find_figure_kind(std::string_view section, std::string_view quantity);

// The figure's value set for printing, by its `shown` and the project's unit. Lengths only.
LengthText length_text(const Figure& f, ShownIn shown_in);
// Any value as one plain string with its unit.
std::string plain_text(const Figure& f, ShownIn shown_in);
std::string plain_text(const Value& value, ShownIn shown_in);  // lengths exact to 1/64 in or 0.1 mm

}  // namespace gownsheaf
