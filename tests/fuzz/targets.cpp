#include "fuzz/targets.h"

#include <algorithm>
#include <stdexcept>

#include "calculate/calculate.h"
#include "check/check.h"
#include "check/template_block.h"
#include "outline/outline.h"
#include "outline/pick.h"
#include "units/read.h"

namespace gownsheaf::fuzz {
namespace {

// Every message has a sentence and a place that is in the file, or none; it can be shown.
void told_well(const Diagnostics& diag, const std::string& bytes) {
  std::size_t lines = 1;
  for (const char c : bytes) lines += c == '\n' || c == '\r' ? 1 : 0;
  for (const Diagnostic& d : diag.sorted()) {
    if (d.sentence.empty() || d.code.empty()) throw std::runtime_error("a message without words");
    if (d.at.line < 0 || static_cast<std::size_t>(d.at.line) > lines + 1)
      throw std::runtime_error("`" + d.code + "` stands in no line of the file");
  }
}

const Templates& library() {
  static const Templates templates = [] {
    Diagnostics diag;
    std::vector<SourceText> sources;
    return load_templates(GOWNSHEAF_SOURCE_DIR "/packet-templates", diag, sources);
  }();
  return templates;
}

void yaml(const std::string& bytes) {
  Diagnostics diag;
  read_yaml(bytes, "project.yaml", diag, {.keys = key_words()});
  told_well(diag, bytes);
}

void check(const std::string& bytes) {
  Diagnostics diag;
  const Entry source = read_yaml(bytes, "project.yaml", diag, {.keys = key_words()});
  if (source.kind != Entry::Kind::nothing) {
    const Project project = check_project(source, library(), diag, {}, [](const std::string& relative) {
      return DrawingFile{{}, "There is no such file.", relative};
    });
    WorkOptions quick;
    quick.lay_work = 0;
    quick.outline_work = 0;
    quick.search_all = false;
    calculate(project, library(), quick, diag);
  }
  told_well(diag, bytes);
}

void svg(const std::string& bytes) {
  Diagnostics diag;
  const auto drawing = read_svg(bytes, "pieces.svg", diag);
  told_well(diag, bytes);
  if (!drawing) {
    if (!diag.has_errors()) throw std::runtime_error("a drawing was refused without a word");
    return;
  }
  for (const DrawnOutline& o : drawing->outlines) {
    if (o.lines.empty()) throw std::runtime_error("an outline without a line");
    Diagnostics picking;
    if (!o.drawn.id.empty() && !pick_outline(*drawing, {o.drawn.id, {}, {}}, picking) && !picking.has_errors())
      throw std::runtime_error("an outline was not picked, without a word");
  }
}

void templates(const std::string& bytes) {
  Diagnostics diag;
  const Entry file = read_yaml(bytes, "steps.yaml", diag);
  Templates all;
  TemplateNames names;
  read_template_file(file, all, names, diag);
  check_step_library(all, diag);
  told_well(diag, bytes);
}

template <class T>
void in_its_text(const ReadResult<T>& read, std::string_view text) {
  if (read.ok()) return;
  const Misread& fault = read.fault();
  if (fault.sentence.empty() || fault.at < 0 || fault.length < 0 || static_cast<std::size_t>(fault.at) > text.size())
    throw std::runtime_error("a misreading without a place or words");
}

void quantities(const std::string& bytes) {
  for (std::size_t from = 0; from <= bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', from), bytes.size());
    const std::string_view text = std::string_view(bytes).substr(from, end - from);
    from = end + 1;
    in_its_text(read_length(text, "it"), text);
    in_its_text(read_mass(text, "it"), text);
    in_its_text(read_cloth_weight(text, "it"), text);
    in_its_text(read_force(text, "it"), text);
    in_its_text(read_pressure(text, "it"), text);
    in_its_text(read_line_load(text, "it"), text);
    in_its_text(read_angle(text, "it"), text);
    in_its_text(read_percent(text, "it"), text);
    in_its_text(read_ratio(text, "it"), text);
    in_its_text(read_count(text, "it"), text);
    in_its_text(read_number(text, "it"), text);
    in_its_text(read_day(text, "it"), text);
    in_its_text(read_span(text, "it"), text);
    in_its_text(read_money(text, "it"), text);
    in_its_text(read_rate(text, "it"), text);
    in_its_text(read_fineness(text, "it"), text);
  }
}

}  // namespace

const std::vector<Target>& targets() {
  static const std::vector<Target> all{
      {"yaml", yaml}, {"check", check}, {"svg", svg}, {"templates", templates}, {"quantities", quantities}};
  return all;
}

const Target* target(std::string_view name) {
  for (const Target& t : targets())
    if (name == t.name) return &t;
  return nullptr;
}

}  // namespace gownsheaf::fuzz
