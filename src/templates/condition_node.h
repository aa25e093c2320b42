// The tree of one condition. Seen only by the parser and the evaluation.
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "templates/condition.h"

namespace gownsheaf {

struct Condition::Node {
  enum class Op { both, either, negated, has, is_word, compare };
  enum class Than { less, at_most, equal, at_least, more };
  Op op = Op::has;
  std::vector<std::shared_ptr<const Node>> below;  // both, either: two; negated: one
  const FactKind* fact = nullptr;
  std::string word;         // is_word
  Than than = Than::equal;  // compare
  FactValue quantity;
  std::string asked;  // compare: as it was written
};

}  // namespace gownsheaf
