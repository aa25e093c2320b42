// The words of the project file for the closed choices of closings and bones.
#include "project/closing.h"

namespace gownsheaf {

std::string_view word_for(Fasten f) {
  switch (f) {
    case Fasten::hooks_and_eyes: return "hooks and eyes";
    case Fasten::hooks_and_bars: return "hooks and bars";
    case Fasten::hooks_and_loops: return "hooks and loops";
    case Fasten::buttons: return "buttons";
    case Fasten::snaps: return "snaps";
    case Fasten::lacing: return "lacing";
    case Fasten::buckle: return "buckle";
    case Fasten::ties: return "ties";
    case Fasten::drawstring: return "drawstring";
    case Fasten::busk: return "busk";
  }
  return "";
}

std::string_view word_for(PlacketFinish f) {
  switch (f) {
    case PlacketFinish::continuous_lap: return "continuous lap";
    case PlacketFinish::separate_underlap: return "separate underlap";
    case PlacketFinish::faced: return "faced";
  }
  return "";
}

std::string_view word_for(Meets m) {
  switch (m) {
    case Meets::edge_to_edge: return "edge to edge";
    case Meets::overlapping: return "overlapping";
  }
  return "";
}

std::string_view word_for(DrawnTo d) {
  switch (d) {
    case DrawnTo::meeting_line: return "meeting line";
    case DrawnTo::fold: return "fold";
    case DrawnTo::cut_edge: return "cut edge";
  }
  return "";
}

std::string_view word_for(LaceAs l) {
  switch (l) {
    case LaceAs::cross: return "cross";
    case LaceAs::spiral: return "spiral";
    case LaceAs::staggered_spiral: return "staggered spiral";
    case LaceAs::straight: return "straight";
    case LaceAs::shop: return "shop";
  }
  return "";
}

std::string_view word_for(BoneKind b) {
  switch (b) {
    case BoneKind::whalebone: return "whalebone";
    case BoneKind::featherbone: return "featherbone";
    case BoneKind::flat_steel: return "flat steel";
    case BoneKind::spiral_steel: return "spiral steel";
    case BoneKind::synthetic_whalebone: return "synthetic whalebone";
    case BoneKind::cane: return "cane";
    case BoneKind::cord: return "cord";
  }
  return "";
}

}  // namespace gownsheaf
