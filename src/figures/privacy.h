// What may not leave the house: body measures, ease, people, fittings, pull, prices, and sums that would give them away.
#pragma once
#include <string_view>

#include "figures/figures.h"

namespace gownsheaf {

// Whether the name of an input that is no figure (`ease/waist`, `wearer/age`, `cloths/slate wool/price`) is a private key
// of the project file.
bool is_private_name(std::string_view input);

// Whether the figure's working, or the words of what it was guessed from, would give a private number away: it is private,
// or one of its inputs is, or an input that is private in this sense too. The chain ends at a figure that is printed for
// everybody and rests on nothing private.
bool sum_is_private(const Figure& figure, const Figures& figures);

}  // namespace gownsheaf
