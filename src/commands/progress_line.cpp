#include "commands/progress_line.h"

#include <unistd.h>

#include <cstdio>

namespace gownsheaf {
namespace {

constexpr std::size_t kColumns = 78;

}  // namespace

ProgressLine::ProgressLine(const Settings& settings)
    : settings_(settings), on_terminal_(!settings.quiet && settings.log == LogForm::plain && isatty(STDERR_FILENO) == 1) {}

void ProgressLine::tell(const std::string& cloth, double done) {
  const int percent = static_cast<int>(done * 100);
  if (cloth != cloth_) {
    wipe();
    say(settings_, "Laying out " + cloth + ".");
    cloth_ = cloth;
    search_ = 1;
  } else if (percent < percent_) {
    ++search_;
  } else if (percent == percent_) {
    return;
  }
  percent_ = percent;
  if (!on_terminal_) return;
  const std::string so_far = (search_ > 1 ? ", search " + std::to_string(search_) : "") + ": " + std::to_string(percent) + " %";
  std::string line = "Laying out " + cloth + so_far;
  if (line.size() > kColumns) line = "Laying out" + so_far;  // a name that would break the line
  const std::string rest(shown_.size() > line.size() ? shown_.size() - line.size() : 0, ' ');
  std::fprintf(stderr, "\r%s%s", line.c_str(), rest.c_str());
  std::fflush(stderr);
  shown_ = line;
}

void ProgressLine::wipe() {
  if (shown_.empty()) return;
  std::fprintf(stderr, "\r%s\r", std::string(shown_.size(), ' ').c_str());
  std::fflush(stderr);
  shown_.clear();
}

}  // namespace gownsheaf
