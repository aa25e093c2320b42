// Files of cautions.
#include "check/template_block.h"

namespace gownsheaf {

void read_cautions(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  const TemplateBlock block(file, "cautions", diag);
  for (const Entry* e : block.blocks("list")) {
    const TemplateBlock row(*e, "caution", diag);
    Caution caution;
    caution.at = row.entry("about") != nullptr ? row.at("about") : e->at;
    caution.about = row.text("about");
    caution.say = row.text("say");
    if (const Entry* say = row.entry("say")) check_lengths_and_figures(*say, false, diag);
    caution.defers_to = row.text("defers to");
    caution.when = row.condition("when");
    check_fact_items(caution.when, "", row.at("when"), diag);
    caution.label = row.label();
    caution.source = row.text("source");
    check_source(row, caution.label, caution.source);
    if (!caution.about.empty() && names.fresh("caution", caution.about, caution.at, diag))
      into.cautions.push_back(std::move(caution));
  }
}

}  // namespace gownsheaf
