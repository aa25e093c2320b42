// Replay: what a fuzzer once found (tests/fuzz/kept/TARGET-*), and mutations of the project's own files from a fixed seed.
#include <algorithm>
#include <string>
#include <vector>

#include "files/files.h"
#include "fuzz/targets.h"
#include "support/catch.h"
#include "support/random_draws.h"
#include "support/rounds.h"

using namespace gownsheaf;

namespace {

const std::string kTop = GOWNSHEAF_SOURCE_DIR;

std::vector<std::string> files_in(const std::string& folder, const std::string& ending, const std::string& beginning = "") {
  std::vector<std::string> all;
  const auto names = list_files(kTop + "/" + folder, ending);
  REQUIRE(names.ok());
  for (const std::string& name : *names.value)
    if (name.starts_with(beginning)) all.push_back(*read_below(kTop + "/" + folder, name, kLargestProjectFile).value);
  return all;
}

std::vector<std::string> seeds_for(const std::string& target) {
  if (target == "svg") return files_in("examples/lamplighter-jacket", ".svg");
  if (target == "templates") return files_in("packet-templates", ".yaml");
  if (target == "quantities")
    return {
        "13 1/2 in\n2 yd 6 in\n34.5 cm\n8 oz/yd\u00B2\n3 %\n2 h 30 min\n2031-05-02\n1/2 in less\n20 deg\n5.40 GBP per yd\n27 tex\n"};
  std::vector<std::string> all = files_in("examples/linen-skirt", ".yaml");
  for (std::string& more : files_in("examples/stage-bodice", ".yaml")) all.push_back(std::move(more));
  return all;
}

// Bytes changed, cut out, doubled, or taken from elsewhere in the same text.
std::string mutated(draws::Draws& draw, std::string text) {
  static constexpr char kSigns[] = "{}[]:,-#&*!|>%@\"' \t\n0123456789/.+=~<x\0\x01\xC2\xBD\xFF";
  static const std::string signs(kSigns, sizeof kSigns - 1);
  for (std::int64_t n = draw.of(1, 6); n > 0 && !text.empty(); --n) {
    const auto at = static_cast<std::size_t>(draw.of(0, static_cast<std::int64_t>(text.size()) - 1));
    const auto length = static_cast<std::size_t>(draw.of(1, 40));
    switch (draw.of(0, 3)) {
      case 0: text[at] = signs[static_cast<std::size_t>(draw.of(0, static_cast<std::int64_t>(signs.size()) - 1))]; break;
      case 1: text.erase(at, length); break;
      case 2: text.insert(at, text.substr(at, length)); break;
      default:
        text.insert(at, text.substr(static_cast<std::size_t>(draw.of(0, static_cast<std::int64_t>(text.size()) - 1)), length));
    }
  }
  return text;
}

}  // namespace

TEST_CASE("whatever was once found stays mended", "[fuzz]") {
  for (const fuzz::Target& target : fuzz::targets())
    for (const std::string& bytes : files_in("tests/fuzz/kept", ".input", std::string(target.name) + "-")) {
      INFO(target.name << ": " << bytes);
      CHECK_NOTHROW(target.run(bytes));
    }
}

TEST_CASE("law: changed files come back with words and places", "[fuzz][laws]") {
  for (const fuzz::Target& target : fuzz::targets()) {
    const std::vector<std::string> seeds = seeds_for(target.name);
    REQUIRE_FALSE(seeds.empty());
    draws::Draws draw(29);
    for (int round = 0; round < kLawRounds / 25; ++round) {
      const std::string bytes =
          mutated(draw, seeds[static_cast<std::size_t>(draw.of(0, static_cast<std::int64_t>(seeds.size()) - 1))]);
      INFO(target.name << ", round " << round << ": " << bytes);
      REQUIRE_NOTHROW(target.run(bytes));
    }
  }
}
