#include "geometry/trials/launch_errors.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "geometry/edits/edit.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "geometry/uncertainty/varied_car.h"
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
        const double by = input.sureness.uncertainty;
        const double change =
            heightWith(varied, input.id, input.value + by) - heightWith(varied, input.id, input.value - by);
        variance += change * change / 4;
    }
    return std::sqrt(variance);
}

std::vector<LaunchError> drawLaunchErrors(std::size_t count, double cgHeightUncertainty) {
    NormalSource normal;
    std::vector<LaunchError> draws(count);
    for (LaunchError& draw : draws) {
        draw.friction = normal.factor(kFrictionError);
        draw.torque = normal.factor(kTorqueError);
        draw.rearDamping = normal.factor(kDampingError);
        draw.frontDamping = normal.factor(kDampingError);
        draw.pitchInertia = normal.factor(kInertiaError);
        draw.turningInertia = normal.factor(kInertiaError);
        draw.stallSpeed = kStallError * normal.next();
        draw.cgHeight = cgHeightUncertainty * normal.next();
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
