// A lining or interlining narrower than the shell's breadths: how it may be joined, each way with its cloth and its joins.
//
//   in pleats     the layer's own widths joined right round, the joins inside pleats: n = ceil(N J / joined width), n L, n joins
//   by breadths   each shell breadth lined by itself, the layer's outer seams over the shell's: J + 2 s pieced of its widths,
//                 laid out by nest/; N (k - 1) joins
//   turned        its length round the skirt, where its usable width is at least the cut length L: N J + 2 s, no joins
// N shell breadths, J the shell's width between seam lines, s seam. Arithmetic, no source; that they are hidden in pleats
// or over seams is common practice.
#pragma once
#include <optional>

#include "project/project.h"

namespace gownsheaf {

struct LayerInput {
  std::int64_t shell_breadths = 1;
  Length shell_joined;  // J
  Length cut_length, seam;
  Length width, usable, selvage;  // of the layer's cloth
  StripsLose lose = StripsLose::both_seams;
};
struct LayerWay {
  std::int64_t joins = 0;
  Length cloth;
};
struct LayerWays {
  LayerWay in_pleats, by_breadths;
  std::int64_t joins_in_each = 0;  // by breadths
  std::optional<LayerWay> turned;
};

// Nothing where the layer is as wide as the shell's breadths, or too narrow for its own seams.
std::optional<LayerWays> ways_to_join(const LayerInput& input);

// What the layer is held against: the shell's full breadths of the same part of the garment.
struct Shell {
  const Piece* piece = nullptr;
  const Cloth* cloth = nullptr;
};
std::optional<Shell> shell_of(const Project& project, const Piece& piece, const Cloth& layer);

}  // namespace gownsheaf
