// The plans' part of figures.json: lays, pleat runs, order of work, may I cut.
#pragma once
#include <nlohmann/json.hpp>

#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

using Json = nlohmann::ordered_json;  // members stay in the order written

struct JsonScope {
  const Figures& figures;
  ShownIn shown_in;
  bool hide_private;
};

Json may_cut_json(const Plans& plans, const JsonScope& scope);
Json lays_json(const Plans& plans, const JsonScope& scope);
Json pleats_json(const Plans& plans, const JsonScope& scope);
Json work_json(const Plans& plans, const JsonScope& scope);

}  // namespace gownsheaf
