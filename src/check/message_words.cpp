#include <algorithm>

#include "check/key_check.h"
#include "units/print.h"

namespace gownsheaf {

std::string ticked(std::string_view words) { return "`" + std::string(words) + "`"; }

std::string sentence_case(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

std::string with_article(std::string_view noun) {
  const bool vowel = !noun.empty() && std::string_view("aeiou").find(noun[0]) != std::string_view::npos;
  return (vowel ? "an " : "a ") + std::string(noun);
}

std::string noun_of(std::string_view path) {
  if (path.empty()) return "the project file";
  if (path.ends_with("/*")) {
    const KeySpec* spec = find_key(path.substr(0, path.size() - 2));
    if (spec != nullptr && !spec->one.empty()) return with_article(spec->one);
    path = path.substr(0, path.size() - 2);
  }
  return ticked(path.substr(path.rfind('/') + 1));
}

std::string listed(const std::vector<std::string>& words, std::string_view last, std::size_t most) {
  std::string made;
  const std::size_t shown = std::min(words.size(), most);
  for (std::size_t i = 0; i < shown; ++i) {
    if (i > 0) made += i + 1 == words.size() ? (last.empty() ? ", " : " " + std::string(last) + " ") : ", ";
    made += words[i];
  }
  if (shown < words.size()) made += ", …";
  return made;
}

std::vector<std::string> key_names(std::string_view path) {
  std::vector<std::string> names;
  for (const KeySpec* spec : keys_below(path)) {
    const std::string_view last = spec->path.substr(spec->path.rfind('/') + 1);
    if (last != "*") names.emplace_back(last);
  }
  return names;
}

std::string number_word(std::size_t n) {
  constexpr const char* kWords[] = {"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"};
  if (n < std::size(kWords)) return kWords[n];
  return whole_number(static_cast<std::int64_t>(n));
}

}  // namespace gownsheaf
