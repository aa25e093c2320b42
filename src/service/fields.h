// Lines of fields, as records and the answers of workers are kept: a word, then what belongs to it, each after a tab. Tabs, line
// ends and backslashes in a field are written \t, \n and \\. Small, and read back strictly.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf {

using FieldLine = std::vector<std::string>;
void add_line(std::string& text, const FieldLine& fields);
// Nothing where a line is not ended or an escape is none of the three.
std::optional<std::vector<FieldLine>> lines_of_fields(std::string_view text);

// A file of lines that is kept: its last line, `end`, holds a hash of all before it. The lines without that one, or nothing where it was
// cut off or a byte of it changed.
std::string sealed(std::string text);
std::optional<std::vector<FieldLine>> lines_of_sealed(std::string_view text);

std::optional<int> whole_count(const std::string& field);  // 0 to 2,000,000,000

}  // namespace gownsheaf
