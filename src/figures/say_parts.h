// Words with figures set in: how steps, fitting checks and cautions are said.
#pragma once
#include <string>
#include <vector>

namespace gownsheaf {

// A {…} in a text of the templates: words, or a figure's key.
struct SayPart {
  std::string words;
  std::string figure;
};
using Say = std::vector<SayPart>;

}  // namespace gownsheaf
