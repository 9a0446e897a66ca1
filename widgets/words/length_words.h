// What happens to the links' lengths where holes change, as a choice on screen.
#pragma once

#include <QString>
#include <array>

#include "geometry/combinations/hole_combination.h"

namespace bolthole {

/// All there are, in the order of a choice.
inline constexpr std::array kLengthTreatments{LengthTreatment::keep, LengthTreatment::refit,
                                              LengthTreatment::uppers};

/// "Refit every length", for a choice.
[[nodiscard]] QString lengthsLabel(LengthTreatment lengths);
/// What it does, in a sentence or two.
[[nodiscard]] QString lengthsHelp(LengthTreatment lengths);

}  // namespace bolthole
