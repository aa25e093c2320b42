// A tree that read_yaml made, as bytes: the delivered templates are read once, when the program is built, so that a start
// need not read them again.
#pragma once
#include <string>
#include <string_view>

#include "read/entry.h"

namespace gownsheaf {

// All of the tree but the name of its file.
std::string keep_entry(const Entry& root);

// The tree again, as if read from `file_name`. `kept` is what keep_entry returned; cut short it gives kind nothing.
Entry kept_entry(std::string_view kept, const std::string& file_name);

}  // namespace gownsheaf
