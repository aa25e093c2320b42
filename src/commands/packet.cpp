#include "commands/commands.h"
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
  Diagnostics diag;
  const Made made = make_packet(order_from(settings), diag);
  if (const int code = stopped(settings, made, diag); code >= 0) return code;

  const std::string packet = settings.output.empty() ? packet_beside(settings.project) : settings.output;
  const std::string figures = without_ending(packet, ".pdf") + ".figures.json";
  const std::string calendar = without_ending(packet, ".pdf") + ".work.ics";
  std::vector<FileToWrite> files{{figures, made.figures_json}};
  if (!made.calendar.empty()) files.push_back({calendar, made.calendar});
  files.push_back({packet, made.pdf});
  if (const auto fault = write_whole(files)) {
    say_fault(settings, fault->sentence);
    return 3;
  }
  say(settings, std::to_string(made.pages) + " pages, figures in " + figures + (made.calendar.empty() ? "." : ", days in " + calendar + "."));
  std::printf("%s\n", packet.c_str());
  return 0;
}

}  // namespace gownsheaf
