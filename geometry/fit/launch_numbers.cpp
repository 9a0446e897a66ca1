#include "geometry/fit/launch_numbers.h"

#include <algorithm>

#include "geometry/car/scaled_tables.h"

namespace bolthole {

namespace {

// What a search may try at most.
struct Range {
    double low;
    double high;

    [[nodiscard]] double clamp(double value) const { return std::clamp(value, low, high); }
};
constexpr Range kFrictions{0.05, 10};
constexpr Range kScales{0.05, 20};
constexpr Range kStallSpeeds{500 * kRpm, 50'000 * kRpm};
constexpr Range kPeakSlips{0.1, 100};  // percent
constexpr double kPercentOfOne = 100;

}  // namespace

double& LaunchNumbers::of(LaunchNumber number) {
    switch (number) {
        case LaunchNumber::friction:
            return friction;
        case LaunchNumber::torqueScale:
            return torqueScale;
        case LaunchNumber::stallSpeed:
            return stallSpeed;
        case LaunchNumber::frontDampingScale:
            return frontDampingScale;
        case LaunchNumber::rearDampingScale:
            return rearDampingScale;
        case LaunchNumber::peakSlip:
            break;
    }
    return peakSlip;
}

LaunchNumbers numbersOf(const LaunchInputs& inputs) {
    return {.friction = inputs.tires.friction,
            .stallSpeed = inputs.coupling.stallSpeed,
            .peakSlip = inputs.tires.peakSlip * kPercentOfOne};
}

LaunchInputs withNumbers(const LaunchInputs& inputs, const LaunchNumbers& numbers) {
    LaunchInputs result = inputs;
    result.tires.friction = kFrictions.clamp(numbers.friction);
    result.tires.peakSlip = kPeakSlips.clamp(numbers.peakSlip) / kPercentOfOne;
    if (result.coupling.kind == CouplingKind::converter) {
        result.coupling.stallSpeed = kStallSpeeds.clamp(numbers.stallSpeed);
    }
    result.engine.torque = scaled(inputs.engine.torque, kScales.clamp(numbers.torqueScale));
    if (inputs.front.damping) {
        result.front.damping = scaled(*inputs.front.damping, kScales.clamp(numbers.frontDampingScale));
    }
    for (LaunchPart& part : result.parts) {
        if (part.damping) {
            part.damping = scaled(*part.damping, kScales.clamp(numbers.rearDampingScale));
        }
    }
    return result;
}

}  // namespace bolthole
