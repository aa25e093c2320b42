#include "calculate/joined_layers.h"

#include <algorithm>

#include "calculate/piecing.h"
#include "calculate/rounds.h"
#include "calculate/yardage.h"
#include "nest/nest.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kWork = 400;  // strips of one length: the first orders find the lay

// The parts of every breadth on one open length of the layer's cloth.
Length lay_of_parts(const LayerInput& in, const PiecedPanel& panel) {
  nest::Request request;
  nest::Strip strip;
  strip.width = in.usable;
  request.strips.push_back(strip);
  for (const PanelPart& p : panel.parts) {
    nest::Part part;
    part.outline = rectangle(in.cut_length, p.cut);
    part.copies = static_cast<int>(in.shell_breadths);
    request.parts.push_back(std::move(part));
  }
  const nest::Lay lay = nest::lay_parts(request, {kWork, 0});
  return lay.used.empty() ? Length{} : lay.used.front();
}

}  // namespace

std::optional<LayerWays> ways_to_join(const LayerInput& in) {
  const Length own = joined_round(1, in.width, in.seam, in.selvage);
  if (own >= in.shell_joined || own <= Length{} || in.shell_breadths < 1) return std::nullopt;
  LayerWays ways;
  const Length round = in.shell_breadths * in.shell_joined;
  const std::int64_t widths = breadths_for(round, in.width, in.seam, in.selvage);
  ways.in_pleats = {widths, widths * in.cut_length};
  PanelInput panel;
  panel.width = in.shell_joined + 2 * in.seam;
  panel.usable = in.usable;
  panel.seam = in.seam;
  panel.lose = in.lose;
  const auto pieced = piece_panel(panel);
  if (!pieced) return std::nullopt;
  ways.joins_in_each = static_cast<std::int64_t>(pieced->joins.size());
  ways.by_breadths = {in.shell_breadths * ways.joins_in_each, lay_of_parts(in, *pieced)};
  if (in.usable >= in.cut_length) ways.turned = LayerWay{0, round + 2 * in.seam};
  return ways;
}

std::optional<Shell> shell_of(const Project& project, const Piece& piece, const Cloth& layer) {
  if (!is_full_width(piece) || piece.from.empty()) return std::nullopt;
  if (!same_name(piece.from.front(), layer.named.name)) {  // one piece of several cloths
    const Cloth* outer = project.cloth(piece.from.front());
    return outer == nullptr ? std::nullopt : std::optional<Shell>({&piece, outer});
  }
  if (!layer.used_as.known()) return std::nullopt;
  if (*layer.used_as != UsedAs::lining && *layer.used_as != UsedAs::interlining) return std::nullopt;
  for (const Piece& other : project.pieces) {
    if (&other == &piece || other.from.empty() || !is_full_width(other) || !other.part_of.known() || !piece.part_of.known() ||
        *other.part_of != *piece.part_of)
      continue;
    const Cloth* outer = project.cloth(other.from.front());
    if (outer != nullptr && outer->used_as.known() && *outer->used_as == UsedAs::outer) return Shell{&other, outer};
  }
  return std::nullopt;
}

}  // namespace gownsheaf
