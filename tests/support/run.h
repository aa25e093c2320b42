// Runs a shell line and catches what it prints.
#pragma once
#include <array>
#include <cstdio>
#include <string>

namespace gownsheaf_test {

struct Ran {
  int code;
  std::string out;
};

inline Ran run(const std::string& line) {
  Ran ran{-1, ""};
  FILE* pipe = popen(line.c_str(), "r");
  if (pipe == nullptr) return ran;
  std::array<char, 4096> buffer{};
  for (std::size_t n = 0; (n = fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) ran.out.append(buffer.data(), n);
  const int status = pclose(pipe);
  ran.code = status >= 256 ? status / 256 : status;
  return ran;
}

}  // namespace gownsheaf_test
