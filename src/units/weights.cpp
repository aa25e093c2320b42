// Weights of cloth and thread, each made by one multiplication from the number written.
#include <stdexcept>

#include "units/quantities.h"

namespace gownsheaf {

Mass ounces(double oz) { return Mass{oz * kGramsPerOunce}; }

MassPerArea ounces_per_square_yard(double oz) { return MassPerArea{oz * kGramsPerSquareMetrePerOuncePerSquareYard}; }

MassPerArea momme(double m) { return MassPerArea{m * kGramsPerSquareMetrePerMomme}; }

// A running yard is a piece 36 in long and as wide as the cloth, so oz/yd² = oz · 36 in / width.
MassPerArea ounces_per_running_yard(double oz, Length width) {
  if (width.in_ticks() <= 0) throw std::invalid_argument("cloth needs a width above zero");
  return ounces_per_square_yard(oz * (Length::inches(36) / width));
}

}  // namespace gownsheaf
