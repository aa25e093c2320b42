#include "service/fields.h"

#include <charconv>

#include "files/files.h"

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

std::string sealed(std::string text) {
  const std::string whole = sha256(text);
  add_line(text, {"end", whole});
  return text;
}

std::optional<std::vector<FieldLine>> lines_of_sealed(std::string_view text) {
  const std::size_t last = text.size() < 2 ? std::string_view::npos : text.rfind('\n', text.size() - 2);
  if (last == std::string_view::npos) return std::nullopt;
  auto lines = lines_of_fields(text);
  if (!lines || lines->back() != FieldLine{"end", sha256(text.substr(0, last + 1))}) return std::nullopt;
  lines->pop_back();
  return lines;
}

std::optional<int> whole_count(const std::string& field) {
  int n = 0;
  const auto [end, fault] = std::from_chars(field.data(), field.data() + field.size(), n);
  if (fault != std::errc() || end != field.data() + field.size() || n < 0 || n > 2'000'000'000) return std::nullopt;
  return n;
}

}  // namespace gownsheaf
