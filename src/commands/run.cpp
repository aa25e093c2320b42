#include "commands/commands.h"
#include "nest/nest.h"

namespace gownsheaf {

Order order_from(const Settings& settings) {
  Order order;
  order.project_path = settings.project;
  order.template_folder = settings.template_folder;
  order.font_root = settings.font_root;
  if (!settings.paper.empty()) order.paper = settings.paper;
  if (!settings.sheets.empty()) order.sheets = settings.sheets;
  if (!settings.size.empty()) order.size = settings.size;
  if (!settings.since.empty()) order.since = settings.since;
  order.work.lay_work = settings.effort == "quick" ? 2000 : settings.effort == "patient" ? 200000 : 8000;
  order.work.outline_work = settings.effort == "quick"     ? nest::kQuickWork
                            : settings.effort == "patient" ? nest::kPatientWork
                                                           : nest::kUsualWork;
  order.work.threads = settings.threads;
  return order;
}

int stopped(const Settings& settings, const Made& made, const Diagnostics& diag) {
  print_messages(settings, diag, made.sources);
  if (!made.readable) {
    say_fault(settings, made.fault);
    return 3;
  }
  if (diag.has_errors()) return 1;
  if (!made.unavailable.empty()) {
    say_fault(settings, made.unavailable);
    return 2;
  }
  return -1;
}

}  // namespace gownsheaf
