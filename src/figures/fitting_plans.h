// What the fitting checklist and the cautions print. Numbers of the garment stand as figures, named in the parts.
#pragma once
#include <string>
#include <vector>

#include "diagnostics/diagnostics.h"
#include "figures/say_parts.h"

namespace gownsheaf {

struct FittingChange {  // one finding, worked out on the pattern; all private
  std::string fitting, where;
  Say found;   // "loose by 5/8 in"
  Say change;  // "take in 1/16 in at each of 10 edges: side back"
  Say left;    // "1/2 in is left: sew a second mock-up", or empty
  SourceSpan at;
};

struct LayerWorn {
  std::string layer;
  bool still_to_make = false;
  std::string ready_by;
};

struct FittingCheckPlan {
  std::string look, how;
  Say allowed, allowed_plainly;  // plainly: where a private figure may not be shown
  Say remedy, remedy_plainly;
  std::string condition;  // what is left to ask, or ""
};

struct FittingPlan {  // one gate, one page
  std::string gate, title;
  int step = 0;       // number of its step in the order of work; 0 = none
  int next_step = 0;  // the first step that waits for it
  std::vector<LayerWorn> wear;
  std::vector<FittingCheckPlan> checks;
  std::vector<std::string> moves;
  std::string fitting;                 // the last one held at this gate, or ""
  std::string signed_on;               // its day in words, or ""
  std::vector<FittingChange> changes;  // of that fitting
};

struct CautionPlan {
  std::string about;
  Say say;
  std::string defers_to;
  std::string condition;
};

}  // namespace gownsheaf
