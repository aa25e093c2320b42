// Letters of names, so that `Slate Wool` and `slate wool` are one name. Case only: names are NFC when they come here.
#pragma once
#include <string_view>

namespace gownsheaf {

char32_t next_letter(std::string_view& text);  // takes one code point off the front; a stray byte stands for itself
char32_t small_letter(char32_t letter);        // Latin, Greek and Cyrillic; other scripts have no case or are left as they are

}  // namespace gownsheaf
