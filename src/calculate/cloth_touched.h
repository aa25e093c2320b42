// Which cloth a message is about: it names the cloth, a piece cut from it, or a run or round that such a piece is in.
#pragma once
#include <string_view>

#include "diagnostics/diagnostics.h"
#include "project/project.h"

namespace gownsheaf {

// `item` is a cloth's name, or a piece's (then every cloth of the piece counts). The message's section settles which kind
// of name it holds; without a section any may be meant.
bool hold_touches(const Diagnostic& message, std::string_view item, const Project& project);

}  // namespace gownsheaf
