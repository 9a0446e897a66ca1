// Integrates equations given as a function with SUNDIALS' CVODE.
#pragma once

#include <functional>
#include <vector>

namespace bolthole {

/// Writes the rates of a state at a time.
using ReferenceSystem = std::function<void(double time, const double* state, double* rates)>;

/// States at each of `times`, which rise from the first, at which the state is `start`: variable-order Adams
/// (implicit) with fixed-point iteration, errors a step relative `tolerance`, and absolute `tolerance` times
/// `scale`. Empty where CVODE gave up.
[[nodiscard]] std::vector<std::vector<double>> integrateByReference(const ReferenceSystem& system,
                                                                    const std::vector<double>& start,
                                                                    const std::vector<double>& scale,
                                                                    const std::vector<double>& times,
                                                                    double tolerance);

}  // namespace bolthole
