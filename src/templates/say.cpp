#include "templates/say.h"

#include "unicode/utf8.h"

namespace gownsheaf {
namespace {

std::string_view without_spaces_round(std::string_view s) {
  while (!s.empty() && s.front() == ' ') s.remove_prefix(1);
  while (!s.empty() && s.back() == ' ') s.remove_suffix(1);
  return s;
}

}  // namespace

SayRead read_say(std::string_view text) {
  SayRead read;
  SayPiece words;
  int column = 0, opened = -1;
  std::string inside;
  for (const char c : text) {
    if (c == '{') {
      if (opened >= 0) {
        read.fault = SayFault{"One `{` stands inside another.", column, 1};
        return read;
      }
      if (!words.text.empty()) read.pieces.push_back(words);
      words = {};
      inside.clear();
      opened = column;
    } else if (c == '}') {
      if (opened < 0) {
        read.fault = SayFault{"A `}` has no `{` before it.", column, 1};
        return read;
      }
      const std::string_view name = without_spaces_round(inside);
      if (name.empty()) {
        read.fault = SayFault{"Nothing stands between `{` and `}`.", opened, column - opened + 1};
        return read;
      }
      read.pieces.push_back({std::string(name), true, opened, column - opened + 1});
      opened = -1;
    } else if (opened >= 0) {
      inside += c;
    } else {
      if (words.text.empty()) words.at = column;
      words.text += c;
      if (begins_character(c)) ++words.length;
    }
    if (begins_character(c)) ++column;
  }
  if (opened >= 0) read.fault = SayFault{"A `{` is never closed.", opened, 1};
  else if (!words.text.empty()) read.pieces.push_back(words);
  return read;
}

std::string_view section_of_item(std::string_view item_word) {
  if (item_word == "run") return "pleats";
  if (item_word == "cloth") return "cloths";
  if (item_word == "piece") return "pieces";
  if (item_word == "closure") return "closures";
  if (item_word == "bone") return "bones";
  if (item_word == "fitting") return "fittings";
  return "";
}

SayReference read_reference(std::string_view reference) {
  const auto colon = reference.find(':');
  const std::string_view head = without_spaces_round(reference.substr(0, colon));
  if (!section_of_item(head).empty()) {
    SayReference r{std::string(head), std::string(section_of_item(head)), ""};
    if (colon != std::string_view::npos) r.quantity = without_spaces_round(reference.substr(colon + 1));
    return r;
  }
  const auto slash = reference.find('/');
  SayReference r{"", std::string(reference.substr(0, slash)), ""};
  if (slash != std::string_view::npos) r.quantity = reference.substr(slash + 1);
  return r;
}

}  // namespace gownsheaf
