// Spelling distance with swapped neighbours counted once (optimal string alignment), over characters.
#include <algorithm>

#include "diagnostics/diagnostics.h"
#include "unicode/utf8.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kLongest = 60;  // as long as a name may be; a longer word is no slip of a shorter one

std::vector<char32_t> folded(std::string_view text) {
  std::vector<char32_t> chars = decode_utf8(text);
  for (char32_t& c : chars) {
    if (c >= U'A' && c <= U'Z') c += U'a' - U'A';
    if (c == U'_' || c == U'-') c = U' ';  // `cut_width` is meant as `cut width`
  }
  return chars;
}

// `most` or less, or any number above it.
std::size_t distance(const std::vector<char32_t>& a, const std::vector<char32_t>& b, std::size_t most) {
  const std::size_t longer = std::max(a.size(), b.size()), shorter = std::min(a.size(), b.size());
  if (longer - shorter > most) return most + 1;
  std::vector<std::size_t> before_last(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    std::swap(before_last, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

// One slip in a short word, two from five letters, three from nine.
std::size_t slips_allowed(std::size_t letters) { return letters < 2 ? 0 : letters < 5 ? 1 : letters < 9 ? 2 : 3; }

}  // namespace

std::string did_you_mean(std::string_view seen, const std::vector<std::string>& choices) {
  const std::vector<char32_t> typed = folded(seen);
  if (typed.empty() || typed.size() > kLongest) return "";
  std::string best;
  std::size_t best_slips = slips_allowed(typed.size()) + 1;
  for (const std::string& choice : choices) {
    const std::vector<char32_t> letters = folded(choice);
    // A word is no slip of one so short that most of it would have to be changed.
    if (letters.empty() || letters.size() > kLongest) continue;
    const std::size_t slips = distance(typed, letters, best_slips);
    if (slips < best_slips && slips < letters.size()) {
      best = choice;
      best_slips = slips;
    }
  }
  return best;
}

}  // namespace gownsheaf
