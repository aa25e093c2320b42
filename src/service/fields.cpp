#include "service/fields.h"

#include <charconv>

namespace gownsheaf {

void add_line(std::string& text, const FieldLine& fields) {
  for (std::size_t i = 0; i < fields.size(); ++i) {
    if (i > 0) text += '\t';
    for (const char c : fields[i]) {
      if (c == '\t') text += "\\t";
      else if (c == '\n') text += "\\n";
      else if (c == '\\') text += "\\\\";
      else text += c;
    }
  }
  text += '\n';
}

std::optional<std::vector<FieldLine>> lines_of_fields(std::string_view text) {
  std::vector<FieldLine> lines;
  FieldLine line;
  std::string field;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\t' || c == '\n') {
      line.push_back(std::move(field));
      field.clear();
      if (c == '\n') {
        lines.push_back(std::move(line));
        line.clear();
      }
    } else if (c == '\\') {
      const char next = ++i < text.size() ? text[i] : '\0';
      if (next != 't' && next != 'n' && next != '\\') return std::nullopt;
      field += next == 't' ? '\t' : next == 'n' ? '\n' : '\\';
    } else {
      field += c;
    }
  }
  if (!line.empty() || !field.empty()) return std::nullopt;
  return lines;
}

std::optional<int> whole_count(const std::string& field) {
  int n = 0;
  const auto [end, fault] = std::from_chars(field.data(), field.data() + field.size(), n);
  if (fault != std::errc() || end != field.data() + field.size() || n < 0 || n > 2'000'000'000) return std::nullopt;
  return n;
}

}  // namespace gownsheaf
