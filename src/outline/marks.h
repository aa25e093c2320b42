// Which ids and classes say that a line is a mark. Internal to outline.
#pragma once
#include <optional>
#include <string_view>

#include "outline/outline.h"

namespace gownsheaf {

// `grain`, `fold`, `hem`, `notch`, `dart`, `match`, `join`, `mark`, `name`, `test-square`, or one of these followed by `-` and anything; a class says
// it before an id does. Capitals count as small letters.
std::optional<MarkKind> mark_kind(std::string_view id, std::string_view classes);

}  // namespace gownsheaf
