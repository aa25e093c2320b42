// How long each step takes, from the library's rates and the garment's figures, at the maker's own pace.
//
// Minutes for one, times how many (a count; inches of a length), plus what it takes in any case. Where the figure is not
// known the library's time for the whole stands. By the maker's practice: expert 7/10, new to this 3/2; then for threading,
// tidying and unpicking 15 in the hundred, or what she says; fittings take as long for anybody. Her own rate for a kind of
// work stands as it is. `takes` of her own wins over all. A stitching rate counts 10 stitches to the inch. Sewn by hand
// throughout: machine seams at the rate of back stitch (48 s an inch), other machine steps twice their time. Rounded to 5
// minutes, at least 5. All rates are common practice unless the step's source says otherwise; docs/formulas.md, step times.
#pragma once
#include "calculate/step_instances.h"
#include "figures/figures.h"
#include "figures/plans.h"

namespace gownsheaf {

inline constexpr std::int64_t kMinute = 60'000;  // milliseconds
Span time_of(const StepInstance& step, const Project& project, const Figures& figures);
// Figures `steps/ID/takes`, so that figures.json holds them and an older packet's are compared.
void add_step_times(const Project& project, const std::vector<PlannedStep>& work, Figures& figures);
// Whole minutes of a span, rounded up.
std::int64_t minutes_of(Span span);

}  // namespace gownsheaf
