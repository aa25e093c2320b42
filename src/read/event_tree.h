// Inside the room: the parser's events gathered into entries.
#pragma once
#include <string>

#include "read/entry.h"
#include "read/source_lines.h"

namespace gownsheaf {

struct Gathered {
  Entry root;
  bool whole = false;  // the text was read to its end, with nothing amiss but what may be passed over
};

// `mended` is read; places and messages are those of `lines`, which has the same characters at the same places. What
// the parser itself cannot read is reported when it lies above line `quiet_from` (from 0); from there on it follows
// from a mistake already reported.
Gathered gather(const std::string& mended, const SourceLines& lines, std::size_t quiet_from, const ReadLimits& limits,
                Diagnostics& diag);

}  // namespace gownsheaf
