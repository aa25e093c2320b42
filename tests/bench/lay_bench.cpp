// How dense a lay is of one of the public strip-packing instances.
//   ninja -C build lay-bench
//   build/lay-bench INSTANCE.json [--seconds S | --work N | --effort quick|usual|patient] [--seed N] [--threads T] [--out LAYOUT.json]
// --seconds is processor time, S for each of two cores: 2 S of the whole process, however many threads share it, so that
// a figure does not depend on what else the machine does.
#include <sys/resource.h>

#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <string>

#include "nest/nest.h"

using namespace gownsheaf;
using nlohmann::json;

namespace {

double processor_seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

struct Options {
  std::string instance, out;
  double seconds = 0;
  std::int64_t work = nest::kUsualWork;
  std::uint32_t seed = 1;
  int threads = 2;
};

bool read_options(int count, char** words, Options& o) {
  for (int i = 1; i < count; ++i) {
    const std::string word = words[i];
    if (word.rfind("--", 0) != 0) {
      o.instance = word;
      continue;
    }
    if (i + 1 == count) return false;
    const std::string value = words[++i];
    if (word == "--seconds") o.seconds = std::atof(value.c_str());
    else if (word == "--work") o.work = std::atoll(value.c_str());
    else if (word == "--seed") o.seed = static_cast<std::uint32_t>(std::atoll(value.c_str()));
    else if (word == "--threads") o.threads = std::atoi(value.c_str());
    else if (word == "--out") o.out = value;
    else if (word == "--effort" && value == "quick") o.work = nest::kQuickWork;
    else if (word == "--effort" && value == "usual") o.work = nest::kUsualWork;
    else if (word == "--effort" && value == "patient") o.work = nest::kPatientWork;
    else return false;
  }
  return !o.instance.empty();
}

}  // namespace

int main(int count, char** words) {
  Options options;
  if (!read_options(count, words, options)) {
    std::cerr
        << "lay-bench INSTANCE.json [--seconds S | --work N | --effort quick|usual|patient] [--seed N] [--threads T] [--out LAYOUT.json]\n";
    return 2;
  }
  std::ifstream file(options.instance);
  const json instance = json::parse(file, nullptr, false);
  if (!instance.is_object() || !instance.contains("pieces")) {
    std::cerr << options.instance << ": not an instance\n";
    return 2;
  }
  // A power of ten that makes the strip 1 to 10 million ticks wide.
  const double width = instance["strip_width"];
  double scale = 1;
  while (width * scale < 1e6) scale *= 10;
  nest::Request request;
  request.seed = options.seed;
  request.threads = options.threads;
  request.work = options.work;
  request.strips.push_back({Length::ticks(static_cast<std::int64_t>(std::floor(width * scale))), std::nullopt, {}, 1});
  double area = 0;
  for (const json& piece : instance["pieces"]) {
    nest::Part part;
    double twice = 0;
    const json& outline = piece["outline"];
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const double x = outline[i][0], y = outline[i][1], nx = outline[(i + 1) % outline.size()][0],
                   ny = outline[(i + 1) % outline.size()][1];
      twice += x * ny - nx * y;
      part.outline.push_back({Length::ticks(std::llround(x * scale)), Length::ticks(std::llround(y * scale))});
    }
    part.copies = piece["count"];
    area += std::abs(twice) / 2 * part.copies;
    part.poses.clear();
    for (const json& turn : piece["allowed_rotations_deg"]) {
      const double degrees = turn;
      const int quarters = static_cast<int>(degrees / 90);
      part.poses.push_back({quarters, false, static_cast<int>(std::lround((degrees - quarters * 90) * 1000))});
      if (piece.value("may_be_mirrored", false)) part.poses.push_back({quarters, true, part.poses.back().millidegrees});
    }
    request.parts.push_back(std::move(part));
  }
  const auto begun = std::chrono::steady_clock::now();
  const double processor = processor_seconds();
  std::function<double(std::int64_t)> spent;
  if (options.seconds > 0) spent = [&](std::int64_t) { return (processor_seconds() - processor) / (2 * options.seconds); };
  const nest::Lay lay = nest::lay_parts(request, {options.work, options.work}, spent);
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
  if (!lay.unsupported.empty() || !lay.left_out.empty()) {
    std::cerr << "not laid: " << (lay.unsupported.empty() ? "parts left out" : lay.unsupported) << '\n';
    return 1;
  }
  json placements = json::array();
  for (const nest::Placed& p : lay.placed) {
    const json& piece = instance["pieces"][static_cast<std::size_t>(p.part)];
    // The instance turns about 0, 0: where does the turned outline's least corner come to lie?
    const double turn = (p.pose.quarter_turns * 90 + p.pose.millidegrees / 1000.0);
    double c = std::cos(turn * 3.14159265358979323846 / 180), s = std::sin(turn * 3.14159265358979323846 / 180);
    if (p.pose.millidegrees == 0) {
      const int q = ((p.pose.quarter_turns % 4) + 4) % 4;
      c = q == 0 ? 1 : q == 2 ? -1 : 0;
      s = q == 1 ? 1 : q == 3 ? -1 : 0;
    }
    double least_x = 1e300, least_y = 1e300;
    for (const json& corner : piece["outline"]) {
      const double x = p.pose.mirrored ? -corner[0].get<double>() : corner[0].get<double>(), y = corner[1];
      least_x = std::min(least_x, x * c - y * s);
      least_y = std::min(least_y, x * s + y * c);
    }
    json placement = {{"id", piece["id"]},
                      {"tx", static_cast<double>(p.at.x.in_ticks()) / scale - least_x},
                      {"ty", static_cast<double>(p.at.y.in_ticks()) / scale - least_y}};
    for (const json& allowed : piece["allowed_rotations_deg"]) {
      if (std::abs(allowed.get<double>() - turn) < 1e-9) placement["rot"] = allowed;
    }
    if (p.pose.mirrored) placement["mirror"] = true;
    placements.push_back(placement);
  }
  if (!options.out.empty()) std::ofstream(options.out) << json{{"placements", placements}}.dump() << '\n';
  const double used = static_cast<double>(lay.used[0].in_ticks()) / scale;
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  std::printf("density %.3f  length %.6g  bound %.6g  steps %lld  seconds %.2f  processor %.2f  memory %ld MiB\n",
              100 * area / (width * used), used, static_cast<double>(lay.bound.in_ticks()) / scale,
              static_cast<long long>(lay.work), seconds, processor_seconds() - processor, usage.ru_maxrss / 1024);
  return 0;
}
