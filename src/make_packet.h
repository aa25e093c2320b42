// The main path: project file to packet, all stages in order.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "calculate/calculate.h"
#include "diagnostics/diagnostics.h"
#include "fonts/font_set.h"
#include "write/write.h"

namespace gownsheaf {

struct Order {
  std::string project_path;
  std::string template_folder;
  std::string font_root;
  std::optional<std::string> paper, sheets, size;  // options win over the project
  std::optional<std::string> since;     // an older project file or figures.json, to say what changed
  WorkOptions work;
  bool best_so_far = false;             // `work.watch` stopped: a packet of the lays as they are then, instead of none
  bool with_listing = false;            // Made::listing is filled; for tests
  PaperDocument* keep_document = nullptr;  // the finished pages are copied there; for the benchmark
};

struct Made {
  bool readable = true;                 // false: a file or font could not be read (exit 3); see `fault`
  std::string fault;
  bool interrupted = false;             // stopped, and no packet was wanted of what there was
  std::string unavailable;              // not empty: wrong use (exit 2), e.g. the set `group`
  std::string pdf, figures_json, listing;
  std::string calendar;                 // for a calendar program; empty where no day is known, and in a set for others
  std::vector<SourceText> sources;      // for rendering messages
  int pages = 0;
};

// Everything, or what could be made before errors stopped it. Messages are in diag.
Made make_packet(const Order& order, Diagnostics& diag);
// Reads, checks and calculates with the quick shelf lay; writes nothing.
Made check_only(const Order& order, Diagnostics& diag);
// The same up to figures.json.
Made make_figures(const Order& order, Diagnostics& diag);

}  // namespace gownsheaf
