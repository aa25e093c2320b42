// The one place that prints to standard error, through spdlog. Text of the user's is only ever an argument, never a
// format.
#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include "commands/commands.h"
#include "write/messages_json.h"

namespace gownsheaf {
namespace {

spdlog::logger& log() {
  static const std::shared_ptr<spdlog::logger> logger = [] {
    auto made = std::make_shared<spdlog::logger>("gownsheaf", std::make_shared<spdlog::sinks::stderr_sink_mt>());
    made->set_pattern("%v");
    return made;
  }();
  return *logger;
}

}  // namespace

void print_messages(const Settings& settings, const Diagnostics& diag, const std::vector<SourceText>& sources) {
  for (const Diagnostic& d : diag.sorted()) {
    if (settings.quiet && d.severity != Severity::error) continue;
    if (settings.log == LogForm::json) {
      log().info("{}", message_json(d));
    } else {
      std::string text = render(d, sources);
      while (!text.empty() && text.back() == '\n') text.pop_back();
      log().info("{}", text);
    }
  }
}

void say(const Settings& settings, const std::string& sentence) {
  if (!settings.verbose) return;
  log().info("{}", settings.log == LogForm::json ? info_json(sentence) : sentence);
}

void say_fault(const Settings& settings, const std::string& sentence) {
  log().info("{}", settings.log == LogForm::json ? info_json(sentence) : "gownsheaf: " + sentence);
}

bool would_write_over(const Settings& settings, const std::string& pdf, const std::string& option) {
  if (kind_at(pdf) != FolderEntry::Kind::file || holds_still(pdf, "") || begins_with(pdf, "%PDF-")) return false;
  say_fault(settings, "`" + pdf + "` is there already and is no PDF; nothing was written over. Choose another name: `" + option +
                          " NAME.pdf`.");
  return true;
}

}  // namespace gownsheaf
