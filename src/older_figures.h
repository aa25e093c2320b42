// The older packet that --since names.
#pragma once
#include <optional>
#include <string>

#include "figures/changes.h"
#include "make_packet.h"

namespace gownsheaf {

struct Older {
  std::optional<OlderFigures> figures;  // none: no --since
  std::string fingerprint;              // of the older file's bytes
};

// A name ending in .json, or a file that begins with a brace and is not named as YAML, is read as figures; anything else
// is a project, read, checked and worked out like any other, with its own choice of size and the templates of today. Its
// errors go to diag with its own file and lines, its holds and warnings nowhere: they are of the past.
Older read_older(const Order& order, Made& made, Diagnostics& diag);

}  // namespace gownsheaf
