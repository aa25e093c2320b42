// Files of fitting checks: gates and what is looked at there.
#include "check/template_block.h"

namespace gownsheaf {
namespace {

// A text with figures needs its words without them.
void check_text(const TemplateBlock& line, std::string_view key, std::string_view plain_key, Diagnostics& diag) {
  const Entry* text = line.entry(key);
  if (text != nullptr && check_lengths_and_figures(*text, true, diag).figures > 0 && line.entry(plain_key) == nullptr)
    line.error("key-missing", key,
               "`" + std::string(key) + "` holds a figure that some garment may not have, and nothing says it without.",
               std::string(plain_key) + ": the same in words and lengths alone");
  if (const Entry* plainly = line.entry(plain_key)) check_lengths_and_figures(*plainly, false, diag);
}

FittingLine line_of(const Entry& e, Diagnostics& diag) {
  const TemplateBlock block(e, "line", diag);
  FittingLine line;
  line.at = block.entry("at") != nullptr ? block.at("at") : e.at;
  line.look = block.text("at");
  line.how = block.text("how");
  line.allowed = block.text("allowed");
  line.plainly = block.text("plainly");
  line.remedy = block.text("remedy");
  line.remedy_plainly = block.text("remedy plainly");
  for (const char* key : {"at", "how"})
    if (block.text(key).find_first_of("{}") != std::string::npos)
      block.error("braces", key, "`" + std::string(key) + "` is words alone, without braces.", "lengths stand in `allowed`");
  check_text(block, "allowed", "plainly", diag);
  check_text(block, "remedy", "remedy plainly", diag);
  line.when = block.condition("when");
  check_fact_items(line.when, "", block.at("when"), diag);
  line.label = block.label();
  line.source = block.text("source");
  check_source(block, line.label, line.source);
  return line;
}

}  // namespace

void read_fitting_checks(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  const TemplateBlock block(file, "fitting checks", diag);
  for (const Entry* e : block.blocks("list")) {
    const TemplateBlock gate(*e, "gate", diag);
    FittingChecks checks;
    checks.at = gate.entry("gate") != nullptr ? gate.at("gate") : e->at;
    checks.gate = gate.text("gate");
    checks.title = gate.text("title");
    checks.when = gate.condition("when");
    check_fact_items(checks.when, "", gate.at("when"), diag);
    checks.wear = gate.texts("wear");
    checks.moves = gate.texts("moves");
    for (const Entry* line : gate.blocks("look")) checks.lines.push_back(line_of(*line, diag));
    if (const Entry* look = gate.entry("look"); look != nullptr && checks.lines.empty())
      gate.error("value-empty", "look", "`look` names nothing to look at.", "look: [{ at: Waist, … }]");
    const bool fresh = !checks.gate.empty() && names.fresh("gate", checks.gate, checks.at, diag);
    if (fresh && !checks.title.empty() && names.fresh("page of fittings", checks.title, gate.at("title"), diag))
      into.fitting_checks.push_back(std::move(checks));
  }
}

}  // namespace gownsheaf
