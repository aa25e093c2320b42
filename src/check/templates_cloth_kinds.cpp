#include "check/template_block.h"

namespace gownsheaf {

void read_cloth_kinds(const Entry& file, Templates& into, TemplateNames& names, Diagnostics& diag) {
  const TemplateBlock block(file, "cloth kinds", diag);
  for (const Entry* e : block.blocks("list")) {
    const TemplateBlock row(*e, "cloth kind", diag);
    ClothKind kind;
    kind.kind = row.text("kind");
    kind.also = row.texts("also");
    kind.width = row.length("width");
    kind.weight = row.weight("weight");
    kind.thickness = row.length("thickness");
    kind.shrinks = row.percent("shrinks");
    kind.care = row.text("care");
    kind.frays = row.length("frays");
    kind.stiffness = row.text("stiffness");
    kind.lay = row.text("lay");
    kind.press = row.text("press");
    kind.label = row.label();
    if (kind.kind.empty()) continue;
    bool fresh = names.fresh("cloth kind", kind.kind, row.at("kind"), diag);
    for (const std::string& other : kind.also) fresh = names.fresh("cloth kind", other, row.at("also"), diag) && fresh;
    if (fresh) into.cloth_kinds.push_back(std::move(kind));
  }
}

}  // namespace gownsheaf
