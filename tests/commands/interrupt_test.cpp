// What is told while a lay is searched, and what an interrupt leaves behind.
#include <fstream>

#include "support/catch.h"
#include "support/child.h"
#include "support/golden.h"
#include "support/program.h"

namespace fs = std::filesystem;
using gownsheaf_test::Child;
using gownsheaf_test::fresh_folder;
using gownsheaf_test::kTop;
using gownsheaf_test::run;
using gownsheaf_test::slurp;

namespace {

constexpr int kLong = 60'000;  // milliseconds; a busy machine

const std::string kDrawn = kTop + "/examples/ferry-keepers-spencer/project.yaml";

std::vector<std::string> patient(const fs::path& packet, std::vector<std::string> more = {}) {
  std::vector<std::string> arguments{"packet", kDrawn, "--effort", "patient", "--sheets", "binder", "-o", packet.string()};
  arguments.insert(arguments.end(), more.begin(), more.end());
  return arguments;
}

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

}  // namespace

TEST_CASE("an interrupt while a lay is searched leaves the old packet as it was", "[commands][interrupt]") {
  const fs::path folder = fresh_folder("commands-interrupt"), packet = folder / "spencer.pdf";
  std::ofstream(packet) << "%PDF-the old packet";
  Child on_terminal(patient(packet), true), quiet(patient(packet, {"-q"}), true), json(patient(packet, {"--log", "json"}), true);
  if (!on_terminal.ran() || !quiet.ran() || !json.ran()) {
    WARN("no terminal can be had here: interrupts at one are passed over");
    return;
  }
  CHECK(on_terminal.says(" %", kLong));
  CHECK(on_terminal.said().find("\rLaying out ") != std::string::npos);
  on_terminal.interrupt();
  CHECK(on_terminal.code() == 130);
  CHECK(on_terminal.said().find("nothing was written") != std::string::npos);
  CHECK_FALSE(quiet.says("Laying", 1));
  CHECK_FALSE(json.says("Laying", 1));
  for (Child* child : {&quiet, &json}) {
    child->interrupt();
    CHECK(child->code() == 130);
    CHECK(child->said().find("Laying") == std::string::npos);
    CHECK(child->said().find("nothing was written") != std::string::npos);
  }
  CHECK(slurp(packet.string()) == "%PDF-the old packet");
  CHECK(files_in(folder) == 1);
}

TEST_CASE("with --best-so-far an interrupt gives the best lay so far, and the packet says so", "[commands][interrupt]") {
  const fs::path folder = fresh_folder("commands-best-so-far"), packet = folder / "spencer.pdf";
  Child child(patient(packet, {"--best-so-far", "-v"}), false);
  REQUIRE(child.ran());
  CHECK(child.says("Laying out moss plaid.", kLong));  // -v names the cloth in a pipe too
  CHECK(child.said().find('\r') == std::string::npos);
  child.interrupt();
  CHECK(child.code() == 0);
  CHECK(child.said().find("warning [lay-cut-short]") != std::string::npos);
  CHECK(slurp((folder / "spencer.figures.json").string()).find("\"cut short\"") != std::string::npos);
  const auto words = run("pdftotext -layout '" + packet.string() + "' - 2>/dev/null");
  if (words.code != 0) {
    WARN("pdftotext is not installed: what the pages say is passed over");
    return;
  }
  const std::size_t first = words.out.find("Cut short.");
  CHECK(first < words.out.find('\f'));                                  // at a glance
  CHECK(words.out.find("Cut short.", first + 1) != std::string::npos);  // and on the layout
}
