#include "older_figures.h"

#include <algorithm>

#include "files/files.h"
#include "unicode/utf8.h"

namespace gownsheaf {
namespace {

bool ends_in(const std::string& name, std::string_view ending) {
  return name.size() >= ending.size() && name.compare(name.size() - ending.size(), ending.size(), ending) == 0;
}

bool begins_with_brace(const std::string& bytes) {
  const auto first = bytes.find_first_not_of(" \t\r\n");
  return first != std::string::npos && bytes[first] == '{';
}

void fail(Made& made, const std::string& sentence) {
  made.readable = false;
  made.fault = sentence;
}

// Old names of figures are printed; what no face holds would be an empty box.
bool all_printable(const OlderFigures& older, const Order& order, Made& made, const std::string& name) {
  std::string all;
  for (const Figure& f : older.figures.all()) {
    all += f.key;
    if (const auto* words = std::get_if<std::string>(&f.value)) all += *words;
  }
  if (std::all_of(all.begin(), all.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; })) return true;
  FontFault fault;
  const std::unique_ptr<FontSet> fonts = open_fonts(order.font_root, fault);
  if (!fonts) {
    fail(made, fault.sentence);
    return false;
  }
  const auto missing = not_covered(*fonts, all);
  if (missing.empty()) return true;
  fail(made, name + " holds the letter " + encode_utf8(missing.front()) + ", which no font here has.");
  return false;
}

}  // namespace

Older read_older(const Order& order, Made& made, Diagnostics& diag) {
  Older older;
  if (!order.since) return older;
  const std::string& name = *order.since;
  const FileResult<std::string> bytes = read_named_file(name, kLargestFiguresFile);
  if (!bytes.ok()) {
    fail(made, bytes.fault.sentence);
    return older;
  }
  older.fingerprint = sha256(*bytes.value);
  const bool yaml = ends_in(name, ".yaml") || ends_in(name, ".yml");
  const bool project = yaml || (!ends_in(name, ".json") && !begins_with_brace(*bytes.value));
  std::string figures = *bytes.value;
  if (project) {
    Order then;
    then.project_path = name;
    then.template_folder = order.template_folder;
    then.font_root = order.font_root;
    then.work = order.work;
    then.work.since = nullptr;
    Diagnostics of_then;
    Made past = make_figures(then, of_then);
    if (!past.readable) {
      fail(made, past.fault);
      return older;
    }
    if (of_then.has_errors()) {
      for (SourceText& source : past.sources) made.sources.push_back(std::move(source));
      for (const Diagnostic& d : of_then.sorted())
        if (d.severity == Severity::error) diag.add(d);
      return older;
    }
    figures = past.figures_json;
  }
  auto read = read_figures_json(figures, name);
  if (const auto* fault = std::get_if<WriteFault>(&read)) {
    fail(made, fault->sentence);
    return older;
  }
  older.figures = std::get<OlderFigures>(std::move(read));
  if (project) older.figures->private_known = true;
  if (!project && !all_printable(*older.figures, order, made, name)) older.figures.reset();
  return older;
}

}  // namespace gownsheaf
