#include "nest/request.h"

namespace gownsheaf::nest {

std::string unsupported_request(const Request& r) {
  for (const Part& part : r.parts) {
    if (part.poses.empty()) return "a part without an allowed pose";
    if (part.copies < 0) return "a negative number of copies";
    if (part.lattice_across && part.lattice_across->step <= Length()) return "a lattice whose step is not above nothing";
    if (part.lattice_across && part.fixed_y) return "a fixed place and a lattice across the strip at once";
    if (part.clear_of_first_edge < Length()) return "less than nothing kept clear of an edge";
    if (part.lattice && part.lattice->step <= Length()) return "a lattice whose step is not above nothing";
    for (const int strip : part.strips) {
      if (strip < 0 || strip >= static_cast<int>(r.strips.size())) return "a part allowed on a strip that is not there";
    }
  }
  for (std::size_t i = 0; i < r.strips.size(); ++i) {
    if (!r.strips[i].length && i + 1 < r.strips.size()) return "an open strip that is not the last";
    if (r.strips[i].cost != r.strips[0].cost) return "strips of different cost";
  }
  if (r.gap < Length()) return "a negative gap";
  return "";
}

}  // namespace gownsheaf::nest
