// Which measured numbers a figure's uncertainty stems from, and what it would become if one were measured
// again.
#pragma once

#include <vector>

#include "geometry/uncertainty/trace_uncertainty.h"

namespace bolthole {

/// What one measured number adds to the uncertainty of a figure.
struct InputShare {
    std::size_t input = 0;  ///< its place in TraceUncertainty::inputs
    double share = 0;       ///< of the figure's variance, 0 to 1
    double change = 0;  ///< of the figure when the number grows by its standard uncertainty, SI or percent
};

/// Every input with what it adds to an output's variance (JCGM 100:2008, 5.1.2 and 5.1.3), the largest
/// first, equal ones in their own order. Empty where the output does not exist or nothing is uncertain.
[[nodiscard]] std::vector<InputShare> rankInputs(const Sensitivity& sensitivity, Eigen::Index output);
/// The same of a figure; `place` and `figure` as in TraceUncertainty::of().
[[nodiscard]] std::vector<InputShare> rankInputs(const TraceUncertainty& uncertainty, std::size_t place,
                                                 std::size_t figure);

/// Standard uncertainty of an output if `input` had the standard uncertainty `other` instead of `present`,
/// all else as it is. To first order exact, as each input's part is proportional to its uncertainty. NaN
/// where the output does not exist, or where the input is exact now and would not be.
[[nodiscard]] double uncertaintyWith(const Sensitivity& sensitivity, Eigen::Index output, Eigen::Index input,
                                     double present, double other);
/// The same of a figure.
[[nodiscard]] double uncertaintyWith(const TraceUncertainty& uncertainty, std::size_t place,
                                     std::size_t figure, std::size_t input, double other);

}  // namespace bolthole
