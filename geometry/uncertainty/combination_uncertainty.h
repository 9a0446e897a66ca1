// The uncertainty of the figures of hole combinations at ride, and which of them can be told from the one in
// use.
#pragma once

#include <limits>

#include "geometry/uncertainty/trace_uncertainty.h"

namespace bolthole {

/// Standard uncertainties of one combination at ride. NaN: not known, or the figure does not exist there.
struct CombinationUncertainty {
    double antiSquat = std::numeric_limits<double>::quiet_NaN();  ///< percent
    double inverse = std::numeric_limits<double>::quiet_NaN();    ///< of 1/distance, 1/m
    /// Of the difference to the combination the car is bolted to, 0 for that one: what both rest on cancels.
    double antiSquatDifference = std::numeric_limits<double>::quiet_NaN();
    double inverseDifference = std::numeric_limits<double>::quiet_NaN();
};

/// The uncertainty of a car bolted to `use` under `treatment`, at ride alone. The car must have passed
/// findFaults() and, for `uppers`, have an upper rod.
[[nodiscard]] TraceUncertainty computeRideUncertainty(const Car& car, LengthTreatment treatment,
                                                      const HoleUse& use);

/// Computes one combination after another of one car; the one it is bolted to with its lengths as they are.
/// Not for several threads at once.
class CombinationUncertaintySolver {
  public:
    /// The car as for computeRideUncertainty().
    CombinationUncertaintySolver(const Car& car, LengthTreatment treatment);

    [[nodiscard]] CombinationUncertainty solve(const HoleUse& use) const;

  private:
    Car car_;
    LengthTreatment treatment_;
    HoleUse presentUse_;
    TraceUncertainty present_;
};

}  // namespace bolthole
