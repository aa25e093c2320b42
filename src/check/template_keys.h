// The table of every key that a template file may hold: read by the checker, and offered as "did you mean".
#pragma once
#include <string_view>
#include <vector>

namespace gownsheaf {

enum class TemplateValue { text, id, word, yes_no, number, length, weight, percent, span, condition, texts, blocks, block };

struct TemplateKey {
  std::string_view block;  // "set", "sheet", "steps", "step", "after", "hours", "cloth kinds", "cloth kind"
  std::string_view key;
  TemplateValue value = TemplateValue::text;
  bool required = false;
  std::string_view words;  // closed list, separated by |
  std::string_view meaning;
};

const std::vector<TemplateKey>& template_keys();
const TemplateKey* find_template_key(std::string_view block, std::string_view key);
std::vector<std::string_view> words_of(const TemplateKey& key);
// Sheets that a packet set may name.
const std::vector<std::string_view>& sheet_words();

}  // namespace gownsheaf
