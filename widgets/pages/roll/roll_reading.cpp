#include "widgets/pages/roll/roll_reading.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "geometry/units/say.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr double kNeverMeets = 1e-3;  // m between the ends' distances from the middle: parallel in plan

std::string problemOf(const BenchState& state, const RollReading& reading) {
    const MoveReport& assembly = reading.roll.assembly;
    if (assembly.usable()) {
        return {};
    }
    if (assembly.stop == Stop::underHeld) {
        return say(
            "Roll can't be computed: %1. A track bar, a guide or links that run together in plan would.",
            describe(assembly.freedom));
    }
    return say("Roll can't be computed: %1.", describe(assembly, reading.car, state.style.units));
}

// Where the line of each mirrored pair of rods crosses the center plane at ride.
std::vector<LinkCrossing> crossingsOf(const Car& car, const Linkage& linkage, const AxlePose& ride) {
    std::vector<LinkCrossing> crossings;
    for (const Constraint& rod : linkage.constraints) {
        const Link& link = car.links[static_cast<std::size_t>(rod.link)];
        if (link.side != Side::both || rod.side != Side::left || rod.kind != LinkKind::rod) {
            continue;
        }
        const Eigen::Vector3d rear = ride.carry(rod.onAxle);
        const Eigen::Vector3d along = rod.onChassis - rear;
        if (std::abs(along.y()) > kNeverMeets) {
            const Eigen::Vector3d met = rear - rear.y() / along.y() * along;
            crossings.push_back({QString::fromStdString(link.name), met.x(), met.z()});
        }
    }
    return crossings;
}

std::optional<RollTrace> rollOfBaseline(const BenchState& state) {
    if (!state.baseline || !state.baseline->trace.ride.usable) {
        return std::nullopt;
    }
    Car car = withoutKept(state.baseline->car);
    car.travel.steps = std::min(car.travel.steps, kMostRollTravelRows);
    RollTrace roll = computeRollTrace(car);
    return roll.assembly.usable() ? std::optional(std::move(roll)) : std::nullopt;
}

}  // namespace

RollReading readRoll(const BenchState& state) {
    RollReading reading;
    reading.car = withoutKept(state.solvedCar);
    reading.car.travel.steps = std::min(reading.car.travel.steps, kMostRollTravelRows);
    reading.centers = sideCenters(reading.car, state.trace.ride);
    if (!state.trace.ride.usable) {
        reading.problem =
            say("The links do not hold the axle at ride height, so there is no roll to compute.");
        return reading;
    }
    reading.rideGround = state.trace.ride.ground;
    computeRollTrace(reading.car, {}, reading.roll);
    reading.problem = problemOf(state, reading);
    buildLinkage(reading.car, reading.linkage);
    if (reading.isThere()) {
        reading.baseline = rollOfBaseline(state);
        reading.crossings = crossingsOf(reading.car, reading.linkage, reading.roll.ride.pose);
    }
    return reading;
}

RollReading readRollBriefly(const Car& car) {
    RollReading reading;
    reading.car = car;
    reading.car.travel.steps = kMinSteps;
    const Trace trace = computeTrace(reading.car);
    reading.centers = sideCenters(reading.car, trace.ride);
    reading.roll.ride = reading.atTravel(0);
    reading.roll.travel = {reading.atTravel(-car.travel.droop), reading.atTravel(car.travel.bump)};
    reading.roll.assembly = trace.assembly;
    return reading;
}

QString rollWords(double roll) {
    const std::string number = fineFigureText(std::abs(roll), Quantity::angle, Units::inch);
    const QString size = QString::fromStdString(withUnit(number, Quantity::angle, Units::inch));
    if (roll == 0) {
        return QCoreApplication::translate("Roll", "no body roll");
    }
    return roll > 0 ? QCoreApplication::translate("Roll", "%1 body roll left").arg(size)
                    : QCoreApplication::translate("Roll", "%1 body roll right").arg(size);
}

}  // namespace bolthole
