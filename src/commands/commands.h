// One file a command: arguments in, exit code out. Results go to standard output, messages to standard error.
//   0 done (holds and warnings printed) · 1 the project has errors · 2 wrong use · 3 a file or font could not be read
//   or written · 4 a fault of ours · 130 interrupted, nothing written
#pragma once
#include <string>
#include <vector>

#include "make_packet.h"

namespace gownsheaf {

enum class LogForm { plain, json };

struct Settings {
  std::string project, output, garment;
  std::string paper, sheets, size, since, effort = "usual";
  bool key_tables = false;  // schema: the tables of the docs instead
  std::string template_folder, font_root;
  LogForm log = LogForm::plain;
  bool quiet = false, verbose = false, best_so_far = false;
  int threads = 1;
  // batch and watch; `project` is the folder of projects, `output` that of packets
  int jobs = 0, memory_limit = 512;
  int time_limit = 0;  // seconds; 0: by the effort
  bool trust_paths = false, keep_going = true, keep_lays = true;
  std::string shard, prune;
  int settle = 400, scan_every = 0;
  bool once = false;
  std::string health;
};

int run_packet(const Settings& settings);
int run_check(const Settings& settings);
int run_figures(const Settings& settings);
int run_schema(const Settings& settings);
int run_start(const Settings& settings);
int run_batch_command(const Settings& settings);
int run_watch_command(const Settings& settings);
int run_outlines(const Settings& settings);  // project: the drawing; output: the sheet, or ""

// Parses the command line and runs the command. Catches everything: a fault of ours is exit 4 with a sentence.
int run_program(int argc, const char* const* argv);

// Shared by the commands.
Order order_from(const Settings& settings);
void print_messages(const Settings& settings, const Diagnostics& diag, const std::vector<SourceText>& sources);
void say(const Settings& settings, const std::string& sentence);        // progress, only with -v
void say_fault(const Settings& settings, const std::string& sentence);  // always
// Whether something stands in a PDF's place that is none, such as the project itself or a drawing: a slip of `-o`. Says so.
bool would_write_over(const Settings& settings, const std::string& pdf, const std::string& option);
// Exit code of a run that did not finish, or -1 when all is well. Prints what stopped it.
int stopped(const Settings& settings, const Made& made, const Diagnostics& diag);

}  // namespace gownsheaf
