// One block of a template file, read key by key through the table of template keys.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "check/template_keys.h"
#include "diagnostics/diagnostics.h"
#include "read/entry.h"
#include "templates/templates.h"
#include "units/read.h"

namespace gownsheaf {

class TemplateBlock {
 public:
  // Refuses a thing that is no block, unknown keys, keys without a value, keys of the wrong shape, words outside a closed
  // list, and required keys that are missing.
  TemplateBlock(const Entry& entry, std::string_view block, Diagnostics& diag);

  const Entry* entry(std::string_view key) const;  // null when it is absent or of the wrong shape
  std::string text(std::string_view key) const;    // "" when absent; of a word too
  SourceSpan at(std::string_view key) const;       // of the value, else of the block
  std::vector<std::string> texts(std::string_view key) const;
  std::vector<const Entry*> blocks(std::string_view key) const;
  bool yes(std::string_view key) const;
  std::optional<Length> length(std::string_view key) const;
  std::optional<MassPerArea> weight(std::string_view key) const;
  std::optional<Percent> percent(std::string_view key) const;
  std::optional<Span> span(std::string_view key) const;
  Condition condition(std::string_view key) const;
  char label() const;
  void error(std::string code, std::string_view key, std::string sentence, std::string hint = "") const;

 private:
  void check_key(const Entry& e, const TemplateKey& key);
  void check_words(const Entry& e, const TemplateKey& key);
  bool refuse(const Entry& e, std::string code, std::string sentence, std::string hint);
  template <class T>
  std::optional<T> quantity(std::string_view key, ReadResult<T> (*read)(std::string_view, std::string_view)) const;

  const Entry& entry_;
  std::string block_;
  Diagnostics& diag_;
  std::vector<const Entry*> sound_;
};

// The place of a part of a text: `column` and `length` in characters of the value, quotes counted where they are there.
SourceSpan part_of_text(const Entry& e, int column, int length);

// Names met so far in all files, and where: nothing may be named twice.
class TemplateNames {
 public:
  // Adds an error that shows both places, and answers no, when `name` was met before. Case is ignored.
  bool fresh(const std::string& what, const std::string& name, const SourceSpan& at, Diagnostics& diag);

 private:
  std::map<std::string, SourceSpan> met_;
};

// One file each; faults become errors with their places. The first takes any of them, by its first key; an empty one is passed over.
void read_template_file(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag);
void read_packet_set(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag);
void read_step_library(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag);
void read_cloth_kinds(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag);
void read_closing_rules(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag);
void read_fitting_checks(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag);
void read_cautions(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag);
// What can be told only when all files are read: ids that others name, rings of hard edges whatever their conditions.
void check_step_library(const Templates& all, Diagnostics& diag);

// Every {…} of a text against the static table of figures. `for_each` is "" | "cloth" | "run" | "piece" | "closure" | "bone".
struct ReferenceCount {
  int names = 0, figures = 0, faults = 0;
};  // faults are told already
ReferenceCount check_references(const Entry& e, const std::string& for_each, bool title_allowed, Diagnostics& diag);
// Texts of fittings and cautions: {1/4 in} is a length, {girths/waist/finished} a whole figure; items have no place here.
ReferenceCount check_lengths_and_figures(const Entry& e, bool figures_allowed, Diagnostics& diag);
bool is_id(std::string_view id);  // small letters, digits and hyphens
// Labels a and b name a source, and a source is an anchor of docs/sources.md.
void check_source(const TemplateBlock& block, char label, const std::string& source);
// Facts that speak of an item may stand only inside a `for each` of that item.
void check_fact_items(const Condition& condition, const std::string& for_each, const SourceSpan& at, Diagnostics& diag);

}  // namespace gownsheaf
