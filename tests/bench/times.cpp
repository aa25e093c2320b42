// How long the commands take, as whole processes (medians of 20: by the clock, and of the processor, which a busy machine changes less),
// and how much of a packet is fonts and libharu: both taken by turns, so that a busy moment falls on both, and the middle of the ratios.
//   ninja -C build times && build/tests/times
#include <malloc.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include <fcntl.h>
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "make_packet.h"

extern char** environ;

namespace {

using Clock = std::chrono::steady_clock;

double processor_ms() {  // of this process and of those it waited for
  double sum = 0;
  for (const auto who : {RUSAGE_SELF, RUSAGE_CHILDREN}) {
    rusage used{};
    getrusage(who, &used);
    for (const timeval& t : {used.ru_utime, used.ru_stime})
      sum += 1000.0 * static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) / 1000;
  }
  return sum;
}

double middle(std::vector<double> of) {
  std::sort(of.begin(), of.end());
  return of[of.size() / 2];
}

struct Timed {
  std::string name;
  std::function<void()> run;
  std::vector<double> by_clock = {}, of_processor = {};
};

void time_by_turns(std::vector<Timed*> works) {
  for (int i = 0; i < 20; ++i) {
    for (Timed* work : works) {
      const auto begun = Clock::now();
      const double before = processor_ms();
      work->run();
      work->by_clock.push_back(std::chrono::duration<double, std::milli>(Clock::now() - begun).count());
      work->of_processor.push_back(processor_ms() - before);
    }
  }
  for (const Timed* work : works)
    std::printf("%-30s %6.1f ms, %6.1f ms of the processor\n", work->name.c_str(), middle(work->by_clock),
                middle(work->of_processor));
}

void tell(const std::string& what, const std::function<void()>& run) {
  Timed work{what, run};
  time_by_turns({&work});
}

void run(std::vector<std::string> words) {
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t quiet;
  posix_spawn_file_actions_init(&quiet);
  posix_spawn_file_actions_addopen(&quiet, 1, "/dev/null", O_WRONLY, 0);
  posix_spawn_file_actions_addopen(&quiet, 2, "/dev/null", O_WRONLY, 0);
  pid_t child = 0;
  posix_spawn(&child, arguments[0], &quiet, nullptr, arguments.data(), environ);
  int status = 0;
  waitpid(child, &status, 0);
  posix_spawn_file_actions_destroy(&quiet);
}

struct Kept : gownsheaf::nest::LayStore {
  std::map<std::string, std::string> all;
  std::optional<std::string> find(const std::string& key) override {
    const auto at = all.find(key);
    return at == all.end() ? std::nullopt : std::optional(at->second);
  }
  void keep(const std::string& key, const std::string& lay) override { all[key] = lay; }
};

}  // namespace

int main() {
  using namespace gownsheaf;
#ifdef M_TOP_PAD  // as the program's own main
  mallopt(M_TOP_PAD, 4 << 20);
  mallopt(M_TRIM_THRESHOLD, 256 << 20);
  mallopt(M_MMAP_THRESHOLD, 32 << 20);
#endif
  const std::string top = GOWNSHEAF_SOURCE_DIR, program = std::string(GOWNSHEAF_BINARY_DIR) + "/gownsheaf";
  const std::string out = std::string(GOWNSHEAF_BINARY_DIR) + "/tests/times.pdf";
  tell("gownsheaf --version", [&] { run({program, "--version"}); });
  for (const std::string example : {"wool-day-dress", "regatta-petticoat", "linen-skirt"}) {
    const std::string project = top + "/examples/" + example + "/project.yaml";
    tell(example + " check", [&] { run({program, "check", project}); });
    tell(example + " packet", [&] { run({program, "packet", project, "-o", out}); });
    Order order;
    order.project_path = project;
    order.template_folder = top + "/packet-templates";
    order.font_root = "/usr/share/fonts";
    // The same pages written again, in this process: what libharu and its fonts alone take.
    PaperDocument document;
    order.keep_document = &document;
    Diagnostics diag;
    make_packet(order, diag);
    FontFault fault;
    const std::unique_ptr<FontSet> fonts = open_fonts(order.font_root, fault);
    // A packet as batch makes it when lays are kept: templates and fonts are there, and no lay is searched.
    Kept kept;
    order.keep_document = nullptr;
    Diagnostics faults;
    std::vector<SourceText> sources;
    std::string no_use;
    const auto shared = load_shared(order.template_folder, order.font_root, faults, sources, no_use);
    if (!shared) return 1;
    order.shared = &*shared;
    order.work.store = &kept;
    Diagnostics none;
    make_packet(order, none);
    Timed whole{example + " lays kept", [&] {
                  Diagnostics again;
                  make_packet(order, again);
                }};
    Timed alone{example + " libharu alone", [&] { write_pdf(document, *fonts); }};
    time_by_turns({&whole, &alone});
    std::vector<double> ratios;
    for (std::size_t i = 0; i < whole.of_processor.size(); ++i) ratios.push_back(whole.of_processor[i] / alone.of_processor[i]);
    std::printf("%-30s %6.2f times libharu alone, %zu pages\n", (example + " ratio").c_str(), middle(ratios),
                document.pages.size());
  }
}
