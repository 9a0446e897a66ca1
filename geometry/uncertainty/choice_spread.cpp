#include "geometry/uncertainty/choice_spread.h"

namespace bolthole {

TraceSpread computeRideSpread(const Car& car, LengthTreatment treatment, const HoleUse& use) {
    TraceSpread spread;
    spread.inputs = uncertainInputs(car, use);
    spread.travels = {0.0};
    CarModel model(car, treatment, use, spread.inputs, spread.travels);
    differentiate(model, asInputs(spread.inputs), spread.sensitivity);
    spread.starts = unsureStarts(spread.inputs);
    spread.known = spread.sensitivity.known;
    return spread;
}

ChoiceSpreader::ChoiceSpreader(const Car& car, LengthTreatment treatment)
    : car_(withoutKept(car)),
      treatment_(treatment),
      presentUse_(holesInUse(car_)),
      present_(computeRideSpread(car_, LengthTreatment::keep, presentUse_)) {}

ChoiceSpread ChoiceSpreader::solve(const HoleUse& use) const {
    const TraceSpread spread = use == presentUse_ ? present_ : computeRideSpread(car_, treatment_, use);
    constexpr auto kAntiSquat = static_cast<std::size_t>(Figure::antiSquat);
    return {.antiSquat = spread.atRide(Figure::antiSquat),
            .inverse = spread.inverseAtRide(),
            .antiSquatDifference = spreadOfDifference(spread, present_, 0, kAntiSquat),
            .inverseDifference = spreadOfDifference(spread, present_, 0, kInverseDistance)};
}

}  // namespace bolthole
