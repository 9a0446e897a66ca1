#include "geometry/trials/launch_errors.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "geometry/uncertainty/varied_car.h"
#include "geometry/units/uncertainty_text.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

constexpr std::uint64_t kSeed = 20'261'128;
constexpr double kLeastSpeed = 500 * kRpm;  // a converter stalls no lower
constexpr double kLeastHeight = 0.01;       // m

/// Standard normal numbers by Box & Muller, "A Note on the Generation of Random Normal Deviates", Annals of
/// Mathematical Statistics 29, 1958 (from memory); the library's own differ between compilers.
class NormalSource {
  public:
    double next() { return std::sqrt(-2 * std::log(unit())) * std::cos(2 * std::numbers::pi * unit()); }
    double factor(double error) { return std::exp(error * next()); }

  private:
    double unit() { return (static_cast<double>(random_() >> 11U) + 0.5) * 0x1.0p-53; }

    std::mt19937_64 random_{kSeed};
};

void scale(std::optional<Damping>& damping, double factor) {
    if (!damping) {
        return;
    }
    for (DampingWay* way : {&damping->bump, &damping->rebound}) {
        for (std::vector<double>& row : way->force) {
            for (double& force : row) {
                force *= factor;
            }
        }
    }
}

double heightWith(const Car& car, const FieldId& id, double value) {
    return balanceOf(apply(car, SetNumber{id, value}).car).height;
}

}  // namespace

double cgHeightUncertainty(const Car& car) {
    const Car varied = withOwnHeight(withoutKept(car));
    double variance = 0;
    for (const CarInput& input : uncertainInputs(car)) {
        const double by = input.numberUncertainty.uncertainty;
        const double change =
            heightWith(varied, input.id, input.value + by) - heightWith(varied, input.id, input.value - by);
        variance += change * change / 4;
    }
    return std::sqrt(variance);
}

namespace {

/// The number's own standard uncertainty, as a part of it; `usual` where none is entered.
double ownPart(const Car& car, Field field, double usual) {
    const FieldId id{.field = field};
    const NumberUncertainty numberUncertainty = uncertaintyOf(car, id);
    const double value = numberAt(car, id).value_or(0);
    return numberUncertainty.own && value > 0 ? numberUncertainty.uncertainty / value : usual;
}

double dampingPart(bool isEstimate) {
    return isEstimate ? 0.5 / kCoverage95 : kDampingError;
}

}  // namespace

LaunchErrorSizes errorSizesOf(const Car& car) {
    LaunchErrorSizes sizes;
    sizes.friction = ownPart(car, Field::friction, kFrictionError);
    sizes.pitchInertia = ownPart(car, Field::pitchInertia, kInertiaError);
    sizes.turningInertia = ownPart(car, Field::wheelInertia, kInertiaError);
    const NumberUncertainty stall = uncertaintyOf(car, {.field = Field::stallSpeed});
    sizes.stallSpeed = stall.own ? stall.uncertainty : kStallError;
    sizes.frontDamping = dampingPart(car.launch.front.damping && car.launch.front.damping->isEstimate);
    sizes.rearDamping = dampingPart(std::ranges::any_of(
        car.springs, [](const SuspensionPart& part) { return part.damping && part.damping->isEstimate; }));
    sizes.cgHeight = cgHeightUncertainty(car);
    return sizes;
}

std::vector<LaunchError> drawLaunchErrors(std::size_t count, const LaunchErrorSizes& sizes) {
    NormalSource normal;
    std::vector<LaunchError> draws(count);
    for (LaunchError& draw : draws) {
        draw.friction = normal.factor(sizes.friction);
        draw.torque = normal.factor(sizes.torque);
        draw.rearDamping = normal.factor(sizes.rearDamping);
        draw.frontDamping = normal.factor(sizes.frontDamping);
        draw.pitchInertia = normal.factor(sizes.pitchInertia);
        draw.turningInertia = normal.factor(sizes.turningInertia);
        draw.stallSpeed = sizes.stallSpeed * normal.next();
        draw.cgHeight = sizes.cgHeight * normal.next();
    }
    return draws;
}

LaunchInputs withErrors(const LaunchInputs& inputs, const LaunchError& error) {
    LaunchInputs wrong = inputs;
    wrong.tires.friction *= error.friction;
    for (TorquePoint& point : wrong.engine.torque) {
        point.torque *= error.torque;
    }
    for (LaunchPart& part : wrong.parts) {
        scale(part.damping, error.rearDamping);
    }
    scale(wrong.front.damping, error.frontDamping);
    LaunchBodies& bodies = wrong.bodies;
    bodies.pitchInertia *= error.pitchInertia;
    for (double* inertia : {&bodies.housingInertia, &bodies.wheelInertia, &bodies.frontWheelInertia,
                            &bodies.drivelineInertia, &wrong.engine.inertia}) {
        *inertia *= error.turningInertia;
    }
    bodies.cgHeight = std::max(kLeastHeight, bodies.cgHeight + error.cgHeight);
    if (wrong.coupling.kind == CouplingKind::converter) {
        wrong.coupling.stallSpeed = std::max(kLeastSpeed, wrong.coupling.stallSpeed + error.stallSpeed);
    }
    return wrong;
}

}  // namespace bolthole
