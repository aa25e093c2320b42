// The condition language of templates and steps, and the closed table of facts it may speak of.
//   not binds before and, and before or; brackets; `has FACT`; `FACT is [not] WORD`; `FACT < <= = >= > QUANTITY`.
// A fact without a value makes its comparison unknown; and/or/not follow three values.
#pragma once
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "units/quantities.h"

namespace gownsheaf {

enum class Truth { no, unknown, yes };
Truth operator&&(Truth a, Truth b);
Truth operator||(Truth a, Truth b);
Truth operator!(Truth a);

enum class FactType { yes_no, count, length, cloth_weight, mass, ratio, line_load, word };
struct FactKind {
  std::string_view name;  // "pleat kind"
  FactType type;
  std::string_view item;                // "" for the garment; "cloth", "run", "closure": speaks of the item of a `for each`
  std::vector<std::string_view> words;  // for FactType::word: all that it may be
  std::string_view meaning;
  bool computed = true;  // false: its calculator is not there yet, so its value is unknown
};
const std::vector<FactKind>& fact_kinds();  // sorted by name
// What is asked of a fact, after `if`, in the trade's words: "the cloth may be wetted". `word` for `is`, "" for `has`;
// `turned` for the opposite.
std::string asked_of(const FactKind& fact, std::string_view word, bool turned);
const FactKind* find_fact(std::string_view name);

using FactValue = std::variant<std::monostate, bool, std::int64_t, Length, MassPerArea, Mass, Ratio, LoadPerLength, std::string>;
// Value of a fact for one item ("" = the garment); monostate = unknown.
using FactLookup = std::function<FactValue(std::string_view fact, std::string_view item)>;

class Condition {  // immutable; default = always true
 public:
  struct Node;
  Condition() = default;
  explicit Condition(std::shared_ptr<const Node> root, std::string text) : root_(std::move(root)), text_(std::move(text)) {}
  Truth holds(const FactLookup& facts, std::string_view item) const;
  bool always() const { return root_ == nullptr; }
  const std::string& text() const { return text_; }
  std::vector<std::string> facts_used() const;  // sorted, each once
  // What is left to ask when it holds `unknown`, in plain words ("the ease at some girth is 2 in or less"); else "".
  std::string open_question(const FactLookup& facts, std::string_view item) const;

 private:
  std::shared_ptr<const Node> root_;
  std::string text_;
};

// Words, dimensions and fact names are checked here. On a fault adds an error at `at` (shifted to the narrowest place)
// and returns an always-true condition. Codes: condition-form, unknown-fact, fact-type, unknown-word.
Condition parse_condition(std::string_view text, const SourceSpan& at, Diagnostics& diag);

}  // namespace gownsheaf
