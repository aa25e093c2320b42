// One spelling of what reads alike (Unicode Standard Annex 15), by utf8proc.
#pragma once
#include <string>
#include <string_view>

namespace gownsheaf {

// In the composed form (NFC); bytes that are no UTF-8 as they are.
std::string composed_form(std::string_view utf8);
// Composed, and without the difference of large and small letters (full case folding).
std::string case_folded(std::string_view utf8);

}  // namespace gownsheaf
