#include "commands/commands.h"
#include "commands/interrupt.h"
#include "commands/progress_line.h"
#include "files/files.h"

#include <cstdio>

namespace gownsheaf {
namespace {

std::string without_ending(const std::string& path, const std::string& ending) {
  const bool has = path.size() > ending.size() && path.compare(path.size() - ending.size(), ending.size(), ending) == 0;
  return has ? path.substr(0, path.size() - ending.size()) : path;
}

std::string packet_beside(const std::string& project) {
  return without_ending(without_ending(project, ".yaml"), ".yml") + ".pdf";
}

}  // namespace

int run_packet(const Settings& settings) {
  const std::string packet = settings.output.empty() ? packet_beside(settings.project) : settings.output;
  if (would_write_over(settings, packet, "-o")) return 2;
  Diagnostics diag;
  const HeardInterrupts heard;
  ProgressLine progress(settings);
  LayWatch watch;
  watch.stop = &HeardInterrupts::came();
  watch.tell = [&](const std::string& cloth, double done) { progress.tell(cloth, done); };
  Order order = order_from(settings);
  order.work.watch = &watch;
  order.best_so_far = settings.best_so_far;
  const Made made = make_packet(order, diag);
  progress.wipe();
  if (made.interrupted || (HeardInterrupts::came() && !settings.best_so_far)) {
    say_fault(settings, "Interrupted: nothing was written. With --best-so-far an interrupt gives the best lay so far.");
    return kInterrupted;
  }
  if (const int code = stopped(settings, made, diag); code >= 0) return code;

  const std::string figures = without_ending(packet, ".pdf") + ".figures.json";
  const std::string calendar = without_ending(packet, ".pdf") + ".work.ics";
  std::vector<FileToWrite> files{{figures, made.figures_json}};
  if (!made.calendar.empty()) files.push_back({calendar, made.calendar});
  files.push_back({packet, made.pdf});
  if (const auto fault = write_whole(files)) {
    say_fault(settings, fault->sentence);
    return 3;
  }
  say(settings, std::to_string(made.pages) + " pages, figures in " + figures +
                    (made.calendar.empty() ? "." : ", days in " + calendar + "."));
  std::printf("%s\n", packet.c_str());
  return 0;
}

}  // namespace gownsheaf
