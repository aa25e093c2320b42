#include "outline/style.h"

#include <algorithm>

#include "outline/numbers.h"

namespace gownsheaf {
namespace {

constexpr std::array<std::string_view, kProperties> kNames = {"display",   "visibility", "fill-rule",
                                                              "clip-path", "mask",       "transform"};

bool name_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_' ||
         static_cast<unsigned char>(c) >= 0x80;
}

std::string without_comments(std::string_view css) {
  std::string out;
  for (std::size_t i = 0; i < css.size(); ++i) {
    if (css.compare(i, 2, "/*") == 0) {
      const std::size_t end = css.find("*/", i + 2);
      if (end == std::string_view::npos) break;
      i = end + 1;
      out += ' ';
    } else {
      out += css[i];
    }
  }
  return out;
}

// Past the block that opens at `from`; the end of the text when it never closes.
std::size_t past_block(std::string_view css, std::size_t from) {
  int depth = 0;
  for (std::size_t i = from; i < css.size(); ++i) {
    if (css[i] == '{') ++depth;
    if (css[i] == '}' && --depth <= 0) return i + 1;
  }
  return css.size();
}

template <class Each>
void each_part(std::string_view text, char between, Each each) {
  while (true) {
    const std::size_t end = text.find(between);
    each(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return;
    text.remove_prefix(end + 1);
  }
}

}  // namespace

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f'; };
  for (std::size_t i = 0; i < text.size();) {
    if (blank(text[i])) {
      ++i;
      continue;
    }
    const std::size_t from = i;
    while (i < text.size() && !blank(text[i])) ++i;
    words.push_back(text.substr(from, i - from));
  }
  return words;
}

std::vector<StyleSheet::Declaration> StyleSheet::declarations(std::string_view text) {
  std::vector<Declaration> out;
  each_part(text, ';', [&](std::string_view part) {
    const std::size_t colon = part.find(':');
    if (colon == std::string_view::npos) return;
    const auto name = std::find(kNames.begin(), kNames.end(), trimmed(part.substr(0, colon)));
    if (name == kNames.end()) return;
    std::string_view value = trimmed(part.substr(colon + 1));
    bool important = false;
    if (const std::size_t mark = value.find('!'); mark != std::string_view::npos) {
      important = trimmed(value.substr(mark + 1)) == "important";
      value = trimmed(value.substr(0, mark));
    }
    out.push_back({static_cast<Property>(name - kNames.begin()), std::string(value), important});
  });
  return out;
}

void StyleSheet::add_rule(std::string_view selectors, std::string_view body) {
  const std::vector<Declaration> said = declarations(body);
  if (said.empty()) return;
  each_part(selectors, ',', [&](std::string_view selector) {
    Rule rule;
    rule.declarations = said;
    std::size_t i = 0;
    const auto name = [&] {
      const std::size_t from = i;
      while (i < selector.size() && name_letter(selector[i])) ++i;
      return std::string(selector.substr(from, i - from));
    };
    if (i < selector.size() && selector[i] == '*') ++i;
    else rule.tag = name();
    while (i < selector.size() && (selector[i] == '.' || selector[i] == '#')) {
      const bool is_class = selector[i++] == '.';
      std::string word = name();
      if (word.empty()) break;
      if (is_class) rule.classes.push_back(std::move(word));
      else rule.id = std::move(word);
    }
    if (i < selector.size() || selector.empty()) {
      unread_ = true;
      return;
    }
    rule.weight = (rule.id.empty() ? 0 : 10000) + 100 * static_cast<int>(std::min<std::size_t>(rule.classes.size(), 99)) +
                  (rule.tag.empty() ? 0 : 1);
    rule.order = count_++;
    if (too_many()) return;
    const std::string key = !rule.id.empty()        ? "#" + rule.id
                            : !rule.classes.empty() ? "." + rule.classes[0]
                            : rule.tag.empty()      ? "*"
                                                    : rule.tag;
    by_key_[key].push_back(std::move(rule));
  });
}

void StyleSheet::add(std::string_view css_text) {
  const std::string held = without_comments(css_text);
  const std::string_view css = held;
  for (std::size_t i = 0; i < css.size();) {
    const std::size_t brace = css.find('{', i), semicolon = css.find(';', i);
    const std::string_view head = trimmed(css.substr(i, std::min(brace, semicolon) - i));
    if (!head.empty() && head[0] == '@') {
      imports_ = imports_ || head.substr(0, 7) == "@import";
      if (semicolon < brace) {
        i = semicolon + 1;
      } else {
        if (brace == std::string_view::npos) return;
        i = past_block(css, brace);
        unread_ = unread_ || head.substr(0, 6) == "@media";
      }
      continue;
    }
    if (brace == std::string_view::npos) return;
    const std::size_t end = past_block(css, brace);
    const std::size_t body_end = end > brace + 1 && css[end - 1] == '}' ? end - 1 : end;
    add_rule(trimmed(css.substr(i, brace - i)), css.substr(brace + 1, body_end - brace - 1));
    i = end;
  }
}

Properties StyleSheet::properties(std::string_view tag, std::string_view id, std::string_view classes,
                                  const Properties& attributes, std::string_view style) const {
  const std::vector<std::string_view> words = words_of(classes);
  std::vector<const Rule*> matching;
  const auto look = [&](const std::string& key) {
    const auto found = by_key_.find(key);
    if (found == by_key_.end()) return;
    for (const Rule& rule : found->second) {
      const bool fits = (rule.tag.empty() || rule.tag == tag) && (rule.id.empty() || rule.id == id) &&
                        std::all_of(rule.classes.begin(), rule.classes.end(), [&](const std::string& c) {
                          return std::find(words.begin(), words.end(), c) != words.end();
                        });
      if (fits) matching.push_back(&rule);
    }
  };
  if (!by_key_.empty()) {
    look("*");
    look(std::string(tag));
    for (const std::string_view word : words) look("." + std::string(word));
    look("#" + std::string(id));
  }
  std::sort(matching.begin(), matching.end(),
            [](const Rule* a, const Rule* b) { return a->weight != b->weight ? a->weight < b->weight : a->order < b->order; });
  Properties out = attributes;
  std::array<bool, kProperties> settled{};
  const auto take = [&](const Declaration& d) {
    const auto which = static_cast<std::size_t>(d.property);
    if (settled[which] && !d.important) return;
    settled[which] = d.important;
    out[which] = d.value;
  };
  for (const Rule* rule : matching)
    for (const Declaration& d : rule->declarations) take(d);
  for (const Declaration& d : declarations(style)) take(d);
  return out;
}

}  // namespace gownsheaf
