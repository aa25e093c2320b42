// How long the commands take, as whole processes (median of 20), and how much of a packet is fonts and libharu.
//   ninja -C build times && build/tests/times
#include <spawn.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <fcntl.h>
#include <functional>
#include <string>
#include <vector>

#include "make_packet.h"

extern char** environ;

namespace {

using Clock = std::chrono::steady_clock;

double median_ms(const std::function<void()>& work) {
  std::vector<double> times;
  for (int i = 0; i < 20; ++i) {
    const auto begun = Clock::now();
    work();
    times.push_back(std::chrono::duration<double, std::milli>(Clock::now() - begun).count());
  }
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
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

}  // namespace

int main() {
  using namespace gownsheaf;
  const std::string top = GOWNSHEAF_SOURCE_DIR, program = std::string(GOWNSHEAF_BINARY_DIR) + "/gownsheaf";
  const std::string out = std::string(GOWNSHEAF_BINARY_DIR) + "/tests/times.pdf";
  std::printf("gownsheaf --version           %6.1f ms\n", median_ms([&] { run({program, "--version"}); }));
  for (const std::string example : {"wool-day-dress", "linen-skirt"}) {
    const std::string project = top + "/examples/" + example + "/project.yaml";
    std::printf("%-14s check          %6.1f ms\n", example.c_str(), median_ms([&] { run({program, "check", project}); }));
    std::printf("%-14s packet         %6.1f ms\n", example.c_str(), median_ms([&] { run({program, "packet", project, "-o", out}); }));
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
    std::printf("%-14s libharu alone  %6.1f ms of it, %zu pages\n", example.c_str(),
                median_ms([&] { write_pdf(document, *fonts); }), document.pages.size());
  }
}
