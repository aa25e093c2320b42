// Packet sets, the step library and the cloth-kind table: plain structs read from packet-templates/ by check/.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "templates/cautions.h"
#include "templates/closing_rules.h"
#include "templates/condition.h"
#include "templates/fitting_checks.h"
#include "units/quantities.h"

namespace gownsheaf {

struct SheetEntry {
  std::string
      sheet;  // "at a glance", "to buy", "cutting list", "cutting layouts", "pleats", "closures", "order of work", "how it was worked out"
  std::string title;     // may hold {title}, {run}
  std::string for_each;  // "" | "run" | "cloth"
  Condition when;
  std::optional<int> next_steps;  // order of work: `steps: next 8`
  bool one_page = false;
  SourceSpan at;
};

struct PacketSet {
  std::string name;   // pin-up | binder
  Length reads_from;  // sizes follow
  bool private_shown = true;
  bool shared = false;  // given to others: nothing in it comes from the project file but what is printed
  bool contents_page = false;
  std::vector<SheetEntry> sheets;
};

struct After {
  std::string id, because;
  bool hard = false;
  SourceSpan at;
};

struct Step {
  std::string id;
  std::string say;                 // with {figure} references
  std::string plainly;             // the act without figures: said where a figure of `say` is not known
  std::vector<std::string> shows;  // figure references, printed alone at the right (at most three)
  Condition when;
  std::string for_each;  // "" | "cloth" | "run" | "piece" | "closure" | "bone"
  std::vector<After> after;
  std::string with, replaces;
  std::string gate;         // "" or the fitting's name
  std::string cannot_undo;  // "" or one of kCannotUndo
  std::vector<std::string> uses, needs;
  std::optional<Span> hours_each;
  std::string hours_times;                     // "" or a figure reference
  std::string hours_rate;                      // pace word
  std::optional<Span> hours_plus, hours_else;  // on top, however many; for the whole, where the figure is not known
  std::optional<Span> rests;                   // days that pass before the next step: drying, hanging
  std::string stop;                            // where a long step can be laid down
  bool may_be_left_out = false;                // gives way when the days are short
  std::string sheet;
  char label = 'c';
  std::string source;  // anchor in docs/sources.md
  SourceSpan at;
};
inline constexpr const char* kCannotUndo[] = {"cuts good cloth", "trims an allowance", "shuts access", "pierces cloth",
                                              "sets the cloth"};

struct ClothKind {
  std::string kind;
  std::vector<std::string> also;
  std::optional<Length> width, thickness, frays;
  std::optional<MassPerArea> weight;
  std::optional<Percent> shrinks;
  std::string care, stiffness, lay, press;
  char label = 'c';
};

struct Templates {
  std::vector<PacketSet> sets;
  std::vector<Step> steps;  // in file order, files in name order
  std::vector<ClothKind> cloth_kinds;
  ClosingRules closing;
  std::vector<FittingChecks> fitting_checks;  // in file order, files in name order
  std::vector<Caution> cautions;
  std::map<std::string, std::string> fingerprints;  // template file -> sha256
  const PacketSet* set(std::string_view name) const;
  const Step* step(std::string_view id) const;
  const ClothKind* cloth_kind(std::string_view name) const;  // by kind or also, without regard to case
};

}  // namespace gownsheaf
