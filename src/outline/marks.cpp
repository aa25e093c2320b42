#include "outline/marks.h"

#include "outline/style.h"

namespace gownsheaf {
namespace {

constexpr MarkKind kKinds[] = {MarkKind::grain, MarkKind::fold, MarkKind::hem,  MarkKind::notch, MarkKind::dart,
                               MarkKind::match, MarkKind::join, MarkKind::mark, MarkKind::name,  MarkKind::test_square};

char small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::optional<MarkKind> kind_of(std::string_view word) {
  for (const MarkKind kind : kKinds) {
    const std::string_view known = word_for(kind);
    if (word.size() < known.size()) continue;
    bool same = true;
    for (std::size_t i = 0; i < known.size(); ++i) same = same && small(word[i]) == known[i];
    if (same && (word.size() == known.size() || word[known.size()] == '-')) return kind;
  }
  return {};
}

}  // namespace

std::string_view word_for(MarkKind kind) {
  switch (kind) {
    case MarkKind::grain: return "grain";
    case MarkKind::fold: return "fold";
    case MarkKind::hem: return "hem";
    case MarkKind::notch: return "notch";
    case MarkKind::dart: return "dart";
    case MarkKind::match: return "match";
    case MarkKind::join: return "join";
    case MarkKind::mark: return "mark";
    case MarkKind::name: return "name";
    case MarkKind::test_square: return "test-square";
  }
  return "";
}

std::optional<MarkKind> mark_kind(std::string_view id, std::string_view classes) {
  for (const std::string_view word : words_of(classes))
    if (const std::optional<MarkKind> kind = kind_of(word)) return kind;
  return kind_of(id);
}

}  // namespace gownsheaf
