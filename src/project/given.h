// A project value with where it came from. The packet prints which figures rest on guesses and on makers' defaults.
#pragma once
#include <optional>
#include <string>
#include <utility>

#include "diagnostics/diagnostics.h"

namespace gownsheaf {

enum class Origin {
  absent,      // left out: unknown
  written,     // in the project file
  standing,    // a default from a table, with its label (a read, b memory, c common practice, x arithmetic)
  guessed,     // derived from other values; `because` says from what
  to_measure,  // the maker knows it is missing
  none         // the maker says there is none
};

template <class T>
struct Given {
  std::optional<T> value;
  Origin origin = Origin::absent;
  SourceSpan at;        // of the value as written, or of the item it was guessed for
  char label = 0;       // for `standing`: a b c x
  std::string because;  // for `standing` and `guessed`: "the cloth table, wool suiting", "twice the longest breadth"

  bool known() const { return value.has_value(); }
  const T& operator*() const { return *value; }
  const T* operator->() const { return &*value; }
  static Given written(T v, SourceSpan where) { return {std::move(v), Origin::written, std::move(where), 0, ""}; }
  static Given standing(T v, char label, std::string because) {
    return {std::move(v), Origin::standing, {}, label, std::move(because)};
  }
  static Given guessed(T v, std::string because, SourceSpan where = {}) {
    return {std::move(v), Origin::guessed, std::move(where), 'c', std::move(because)};
  }
};

}  // namespace gownsheaf
