#include "templates/condition.h"

#include <algorithm>
#include <compare>
#include <type_traits>

#include "templates/condition_node.h"

namespace gownsheaf {

Truth operator&&(Truth a, Truth b) { return std::min(a, b); }
Truth operator||(Truth a, Truth b) { return std::max(a, b); }
Truth operator!(Truth a) { return a == Truth::yes ? Truth::no : a == Truth::no ? Truth::yes : Truth::unknown; }

namespace {

using Node = Condition::Node;

Truth truth_of(bool b) { return b ? Truth::yes : Truth::no; }

// `has`: the value of a yes-or-no fact; a count above nothing; a word other than `none`; any other fact with a value.
// A fact whose calculator is not there, a yes-or-no fact or a count without a value leaves the question open.
Truth has_fact(const FactKind& fact, const FactValue& value) {
  if (std::holds_alternative<std::monostate>(value)) {
    const bool open = !fact.computed || fact.type == FactType::yes_no || fact.type == FactType::count;
    return open ? Truth::unknown : Truth::no;
  }
  if (const bool* b = std::get_if<bool>(&value)) return truth_of(*b);
  if (const auto* n = std::get_if<std::int64_t>(&value)) return truth_of(*n > 0);
  if (const auto* w = std::get_if<std::string>(&value)) return truth_of(*w != "none");
  return Truth::yes;
}

std::partial_ordering order_of(const FactValue& a, const FactValue& b) {
  return std::visit(
      [&](const auto& seen) -> std::partial_ordering {
        using V = std::decay_t<decltype(seen)>;
        const V* limit = std::get_if<V>(&b);
        if (limit == nullptr) return std::partial_ordering::unordered;
        if constexpr (std::is_same_v<V, std::monostate> || std::is_same_v<V, bool> || std::is_same_v<V, std::string>) {
          return std::partial_ordering::unordered;
        } else if constexpr (std::is_same_v<V, Ratio>) {
          const Int128 left = static_cast<Int128>(seen.n) * limit->d, right = static_cast<Int128>(limit->n) * seen.d;
          return left < right   ? std::partial_ordering::less
                 : left > right ? std::partial_ordering::greater
                                : std::partial_ordering::equivalent;
        } else {
          return seen <=> *limit;
        }
      },
      a);
}

Truth compares(const FactValue& value, Node::Than than, const FactValue& quantity) {
  const std::partial_ordering o = order_of(value, quantity);
  if (o == std::partial_ordering::unordered) return Truth::unknown;
  switch (than) {
    case Node::Than::less: return truth_of(o < 0);
    case Node::Than::at_most: return truth_of(o <= 0);
    case Node::Than::equal: return truth_of(o == 0);
    case Node::Than::at_least: return truth_of(o >= 0);
    case Node::Than::more: return truth_of(o > 0);
  }
  return Truth::unknown;
}

Truth holds_at(const Node& node, const FactLookup& facts, std::string_view item) {
  switch (node.op) {
    case Node::Op::both: return holds_at(*node.below[0], facts, item) && holds_at(*node.below[1], facts, item);
    case Node::Op::either: return holds_at(*node.below[0], facts, item) || holds_at(*node.below[1], facts, item);
    case Node::Op::negated: return !holds_at(*node.below[0], facts, item);
    case Node::Op::has:
    case Node::Op::is_word:
    case Node::Op::compare: break;
  }
  const FactValue value = facts(node.fact->name, node.fact->item.empty() ? std::string_view{} : item);
  if (node.op == Node::Op::has) return has_fact(*node.fact, value);
  if (node.op == Node::Op::compare) return compares(value, node.than, node.quantity);
  const auto* word = std::get_if<std::string>(&value);
  return word == nullptr ? Truth::unknown : truth_of(*word == node.word);
}

// "cloth pieces >= 1" as it is spoken: "the number of cloth pieces is at least 1".
std::string compared(const Node& node, bool turned) {
  std::string quantity = node.asked;
  if (const auto sign = quantity.find_last_of("<>="); sign != std::string::npos) quantity.erase(0, sign + 1);
  while (quantity.starts_with(' ')) quantity.erase(0, 1);
  const std::string of =
      node.fact->type == FactType::count ? "the number of " + std::string(node.fact->name) : std::string(node.fact->meaning);
  const auto is = [&](const char* words) { return of + " is " + words + quantity; };
  switch (node.than) {
    case Node::Than::less: return is(turned ? "at least " : "less than ");
    case Node::Than::at_most: return is(turned ? "more than " : "at most ");
    case Node::Than::equal: return is(turned ? "not " : "");
    case Node::Than::at_least: return is(turned ? "less than " : "at least ");
    case Node::Than::more: return is(turned ? "at most " : "more than ");
  }
  return "";
}

// Only what is unknown: parts of an `and` that are yes, and of an `or` that are no, settle nothing and are left out.
std::string open_at(const Node& node, const FactLookup& facts, std::string_view item, bool turned) {
  if (holds_at(node, facts, item) != Truth::unknown) return "";
  switch (node.op) {
    case Node::Op::negated: return open_at(*node.below[0], facts, item, !turned);
    case Node::Op::both:
    case Node::Op::either: {
      const std::string a = open_at(*node.below[0], facts, item, turned), b = open_at(*node.below[1], facts, item, turned);
      if (a.empty() || b.empty() || a == b) return a.empty() ? b : a;
      return a + ((node.op == Node::Op::both) != turned ? " and " : " or ") + b;
    }
    case Node::Op::has: return asked_of(*node.fact, "", turned);
    case Node::Op::is_word: return asked_of(*node.fact, node.word, turned);
    case Node::Op::compare: return compared(node, turned);
  }
  return "";
}

void collect(const Node& node, std::vector<std::string>& names) {
  if (node.fact != nullptr) names.emplace_back(node.fact->name);
  for (const auto& kid : node.below) collect(*kid, names);
}

}  // namespace

Truth Condition::holds(const FactLookup& facts, std::string_view item) const {
  return root_ == nullptr ? Truth::yes : holds_at(*root_, facts, item);
}

std::string Condition::open_question(const FactLookup& facts, std::string_view item) const {
  return root_ == nullptr ? "" : open_at(*root_, facts, item, false);
}

std::vector<std::string> Condition::facts_used() const {
  std::vector<std::string> names;
  if (root_ != nullptr) collect(*root_, names);
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

}  // namespace gownsheaf
