// Blocks to slabs, and the keep rules between neighbours.
#include "layout/slab.h"

namespace gownsheaf {

namespace {

bool is_row(const Block& block) {
  return std::holds_alternative<PairRow>(block.what) || std::holds_alternative<StepBlock>(block.what) ||
         std::holds_alternative<ContentsLine>(block.what);
}

}  // namespace

Slabs slabs_of(const std::vector<Block>& blocks, const Bench& bench) {
  Slabs all;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    Slabs slabs = std::visit([&](const auto& block) { return slabs_of(block, bench); }, blocks[i].what);
    if (slabs.empty()) continue;
    const auto& what = blocks[i].what;
    const bool is_step = std::holds_alternative<StepBlock>(what);
    if (is_step && (i == 0 || !std::holds_alternative<StepBlock>(blocks[i - 1].what))) {
      slabs.front().rule_above = kHeavyRule;
      slabs.front().space_before = pt(bench.either(6, 4));
    }
    Slab& last = slabs.back();
    if (blocks[i].keep_with_next && last.keep == Slab::Keep::no) last.keep = Slab::Keep::soft;
    // White between two that stay together stays with both.
    if (last.gap && !all.empty() && all.back().keep != Slab::Keep::no) last.keep = all.back().keep;
    // A heading takes two rows with it.
    const bool after_heading = i > 0 && std::holds_alternative<Heading>(blocks[i - 1].what);
    if (after_heading && is_row(blocks[i]) && i + 1 < blocks.size() && what.index() == blocks[i + 1].what.index()) {
      last.keep = Slab::Keep::hard;
    }
    if (last.ends_page) last.keep = Slab::Keep::no;
    for (Slab& slab : slabs) all.push_back(std::move(slab));
  }
  return all;
}

}  // namespace gownsheaf
