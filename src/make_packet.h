// The main path: project file to packet, all stages in order.
#pragma once
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "calculate/calculate.h"
#include "diagnostics/diagnostics.h"
#include "files/files.h"
#include "fonts/font_set.h"
#include "templates/templates.h"
#include "write/write.h"

namespace gownsheaf {

// What many packets share: read once, then only looked at. Fonts keep what they looked up, so: one thread at a time.
struct LoadedOnce {
  std::shared_ptr<const Templates> templates;
  std::unique_ptr<FontSet> fonts;
  std::string template_marks, font_marks;  // of the bytes of all those files
};
// Faults of templates go to diag, with their lines in `sources`; `fault` is set for fonts, or where no template can be used.
std::optional<LoadedOnce> load_shared(const std::string& template_folder, const std::string& font_root, Diagnostics& diag,
                                      std::vector<SourceText>& sources, std::string& fault);

struct Order {
  std::string project_path;
  // Not empty: the project is read only below this folder, which its path begins with, and no link is followed on the way to it
  // or to its drawings. For files of strangers.
  std::string confined_below;
  bool trust_paths = false;  // drawings may lie anywhere, behind links and `..` too
  // Told what it is made of (as Made::project_mark and Made::drawings) once the file is read, and again with each drawing: for whoever
  // must know it even where the rest comes to no end.
  std::function<void(const std::string& mark, const std::vector<std::string>& drawings)> when_read = {};
  const LoadedOnce* shared = nullptr;  // then template_folder and font_root are not read again
  std::string template_folder;
  std::string font_root;
  std::optional<std::string> paper, sheets, size;  // options win over the project
  std::optional<std::string> since;                // an older project file or figures.json, to say what changed
  WorkOptions work;
  bool best_so_far = false;                // `work.watch` stopped: a packet of the lays as they are then, instead of none
  bool with_listing = false;               // Made::listing is filled; for tests
  PaperDocument* keep_document = nullptr;  // the finished pages are copied there; for the benchmark
};

// What a list of packets says of one.
struct ClothTotal {
  std::string cloth, needed;
};
struct PacketFacts {
  std::string title, wearer;  // initials; "" where not known, and in a set for others
  std::vector<ClothTotal> cloths;
  int holds = 0, warnings = 0;  // open ones
  bool shared = false;          // a set for others
};

struct Made {
  bool readable = true;  // false: a file or font could not be read (exit 3); see `fault`
  std::string fault;
  bool interrupted = false;  // stopped, and no packet was wanted of what there was
  std::string unavailable;   // not empty: wrong use (exit 2), e.g. the set `group`
  std::string pdf, figures_json, listing;
  std::string calendar;             // for a calendar program; empty where no day is known, and in a set for others
  std::vector<SourceText> sources;  // for rendering messages
  int pages = 0;
  PacketFacts about;  // for a list of packets
  // What it was made of, for whoever asks later whether it is current: a hash of the project file and of the drawings, which are
  // named in the order they were asked for.
  std::string project_mark;
  std::vector<std::string> drawings;
};

// Everything, or what could be made before errors stopped it. Messages are in diag.
Made make_packet(const Order& order, Diagnostics& diag);
// Reads, checks and calculates with the quick shelf lay; writes nothing.
Made check_only(const Order& order, Diagnostics& diag);
// The same up to figures.json.
Made make_figures(const Order& order, Diagnostics& diag);

// The mark of a project (Made::project_mark) from the bytes of the file and, in their order, of its drawings; nothing for one that
// could not be read.
std::string project_mark(std::string_view project, const std::vector<std::optional<std::string>>& drawings);
// A drawing as the packet reads it.
FileResult<std::string> read_drawing(const Order& order, const std::string& relative);
FileResult<std::string> read_project(const Order& order);

}  // namespace gownsheaf
