#include "geometry/uncertainty/combination_uncertainty.h"

namespace bolthole {

TraceUncertainty computeRideUncertainty(const Car& car, LengthTreatment treatment, const HoleUse& use) {
    TraceUncertainty uncertainty;
    uncertainty.inputs = uncertainInputs(car, use);
    uncertainty.travels = {0.0};
    CarModel model(car, treatment, use, uncertainty.inputs, uncertainty.travels);
    differentiate(model, asInputs(uncertainty.inputs), uncertainty.sensitivity);
    uncertainty.starts = uncertainStarts(uncertainty.inputs);
    uncertainty.known = uncertainty.sensitivity.known;
    return uncertainty;
}

CombinationUncertaintySolver::CombinationUncertaintySolver(const Car& car, LengthTreatment treatment)
    : car_(withoutKept(car)),
      treatment_(treatment),
      presentUse_(holesInUse(car_)),
      present_(computeRideUncertainty(car_, LengthTreatment::keep, presentUse_)) {}

CombinationUncertainty CombinationUncertaintySolver::solve(const HoleUse& use) const {
    const TraceUncertainty uncertainty =
        use == presentUse_ ? present_ : computeRideUncertainty(car_, treatment_, use);
    constexpr auto kAntiSquat = static_cast<std::size_t>(Figure::antiSquat);
    return {.antiSquat = uncertainty.atRide(Figure::antiSquat),
            .inverse = uncertainty.inverseAtRide(),
            .antiSquatDifference = uncertaintyOfDifference(uncertainty, present_, 0, kAntiSquat),
            .inverseDifference = uncertaintyOfDifference(uncertainty, present_, 0, kInverseDistance)};
}

}  // namespace bolthole
