// Run by the build: writes a C++ source with the table of src/check/kept_templates.h.
//   keep_templates OUTPUT.cpp FILE...
// A file in which read_yaml finds a fault is left out: the program then reads it at each start, and says so.
#include <cstdio>

#include "files/files.h"
#include "read/kept_entry.h"

using namespace gownsheaf;

namespace {

// In lines of 4096 bytes; every byte that is no plain letter as three octal digits.
std::string literal(std::string_view bytes) {
  std::string out = "std::string_view(\"";
  std::size_t n = 0;
  for (const char c : bytes) {
    if (n++ % 4096 == 4095) out += "\"\n    \"";
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x20 && byte < 0x7F && c != '"' && c != '\\' && c != '?') {
      out += c;
      continue;
    }
    out += '\\';
    for (const unsigned shift : {6u, 3u, 0u}) out += static_cast<char>('0' + ((byte >> shift) & 7u));
  }
  return out + "\", " + std::to_string(bytes.size()) + ")";
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fputs("usage: keep_templates OUTPUT.cpp FILE...\n", stderr);
    return 2;
  }
  std::string source =
      "// Written by src/setup/keep_templates.cpp.\n#include \"check/kept_templates.h\"\n\nnamespace gownsheaf {\n\n"
      "const std::vector<KeptTemplate>& kept_templates() {\n  static const std::vector<KeptTemplate> all{\n";
  for (int i = 2; i < argc; ++i) {
    const FileResult<std::string> bytes = read_named_file(argv[i], kLargestProjectFile);
    if (!bytes.ok()) {
      std::fputs((bytes.fault.sentence + "\n").c_str(), stderr);
      return 1;
    }
    const std::string name = file_name_of(argv[i]);
    Diagnostics diag;
    const Entry tree = read_yaml(*bytes.value, name, diag);
    if (!diag.in_order_found().empty()) continue;
    source += "    {" + literal(name) + ",\n    " + literal(*bytes.value) + ",\n    " + literal(sha256(*bytes.value)) +
              ",\n    " + literal(keep_entry(tree)) + "},\n";
  }
  source += "  };\n  return all;\n}\n\n}  // namespace gownsheaf\n";
  if (const auto fault = write_whole({{argv[1], source}})) {
    std::fputs((fault->sentence + "\n").c_str(), stderr);
    return 1;
  }
  return 0;
}
