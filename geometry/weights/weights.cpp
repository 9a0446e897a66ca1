#include "geometry/weights/weights.h"

#include <algorithm>
#include <cmath>

#include "geometry/units/say.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

// Moment of the tires about the middle, kg m, left heavier +.
double tireMoment(const CornerWeights& corners, double frontTrack, double rearTrack) {
    return (corners.leftFront - corners.rightFront) * frontTrack / 2 +
           (corners.leftRear - corners.rightRear) * rearTrack / 2;
}

// Corner weights that differ by `front` and `rear` on the axles and by the moments (kg m) of each axle.
CornerWeights shifted(const CornerWeights& from, const Stance& stance, double front, double rear,
                      double frontMoment, double rearMoment) {
    const double frontShift = frontMoment / *stance.frontTrack;
    const double rearShift = rearMoment / *stance.rearTrack;
    return {.leftFront = from.leftFront + front / 2 + frontShift,
            .rightFront = from.rightFront + front / 2 - frontShift,
            .leftRear = from.leftRear + rear / 2 + rearShift,
            .rightRear = from.rightRear + rear / 2 - rearShift};
}

// All changes as one: their mass, kg, and moments, kg m.
struct Change {
    double mass = 0;
    double foreAft = 0;   // about the rear axle
    double sideways = 0;  // about the middle, left +
};

Change sumOf(std::span<const MassAt> changes) {
    Change sum;
    for (const MassAt& change : changes) {
        sum.mass += change.mass;
        sum.foreAft += change.mass * change.at.x();
        sum.sideways += change.mass * change.at.y();
    }
    return sum;
}

bool isLifted(const CornerWeights& corners) {
    return !(std::min({corners.leftFront, corners.rightFront, corners.leftRear, corners.rightRear}) >= 0);
}

void addSideways(BallastedCar& car, const CornerWeights& weighed, const Stance& stance, const Change& change,
                 double frontGain) {
    const double frontTrack = *stance.frontTrack;
    const double rearTrack = *stance.rearTrack;
    car.cgLeft = (tireMoment(weighed, frontTrack, rearTrack) + change.sideways) / car.total;
    const double left = weighed.leftFront + weighed.leftRear + change.mass / 2;
    if (const std::optional<RollStiffness> stiffness = rollStiffness(stance)) {
        const double frontMoment = stiffness->frontShare() * change.sideways;
        car.corners = shifted(weighed, stance, frontGain, change.mass - frontGain, frontMoment,
                              change.sideways - frontMoment);
        const double share = 100 * (car.corners->leftFront + car.corners->leftRear) / car.total;
        car.leftPercent = {share, share};
        return;
    }
    const auto [low, high] =
        std::minmax({left + change.sideways / frontTrack, left + change.sideways / rearTrack});
    car.leftPercent = {100 * low / car.total, 100 * high / car.total};
}

}  // namespace

WeightFigures weightFigures(const CornerWeights& corners, const Stance& stance) {
    WeightFigures figures;
    figures.total = corners.total();
    figures.front = corners.front();
    figures.rear = corners.leftRear + corners.rightRear;
    figures.left = corners.leftFront + corners.leftRear;
    figures.right = corners.rightFront + corners.rightRear;
    figures.diagonal = corners.rightFront + corners.leftRear;
    figures.frontPercent = 100 * figures.front / figures.total;
    figures.leftPercent = 100 * figures.left / figures.total;
    figures.diagonalPercent = 100 * figures.diagonal / figures.total;
    figures.cgAhead = stance.wheelbase * figures.front / figures.total;
    if (stance.hasTracks()) {
        figures.cgLeft = tireMoment(corners, *stance.frontTrack, *stance.rearTrack) / figures.total;
    }
    return figures;
}

std::vector<MassAt> changesSinceWeighed(std::span<const Ballast> ballast) {
    std::vector<MassAt> changes;
    changes.reserve(ballast.size());
    for (const Ballast& load : ballast) {
        if (load.aboard != load.weighed) {
            changes.push_back({(load.aboard - load.weighed) * load.full(), load.at});
        }
    }
    return changes;
}

BallastResult withBallast(const CornerWeights& weighed, const Stance& stance,
                          std::span<const MassAt> changes) {
    const Change change = sumOf(changes);
    const double frontGain = change.foreAft / stance.wheelbase;
    BallastedCar car;
    car.total = weighed.total() + change.mass;
    car.front = weighed.front() + frontGain;
    car.rear = car.total - car.front;
    if (!(car.total > 0) || !(car.front >= 0) || !(car.rear >= 0)) {
        return {
            std::nullopt,
            say("with these loads an axle would carry less than nothing: check their masses and positions")};
    }
    car.frontPercent = 100 * car.front / car.total;
    car.cgAhead = stance.wheelbase * car.front / car.total;
    if (stance.hasTracks()) {
        addSideways(car, weighed, stance, change, frontGain);
    }
    if (car.corners && isLifted(*car.corners)) {
        return {
            std::nullopt,
            say("with these loads a corner would carry less than nothing: check their masses and positions")};
    }
    return {car, {}};
}

std::optional<double> PadFigures::worst() const {
    if (!byWarp) {
        return std::nullopt;
    }
    return std::max(std::abs(byWarp->leftFront), std::abs(byWarp->leftRear));
}

PadFigures padFigures(const PadHeights& pads, const CornerWeights& read, double cgHeight,
                      const Stance& stance) {
    PadFigures figures;
    const double front = pads.leftFront - pads.rightFront;
    const double rear = pads.leftRear - pads.rightRear;
    const double rise = (pads.leftFront + pads.rightFront - pads.leftRear - pads.rightRear) / 2;
    figures.warp = front - rear;
    figures.slope = rise / stance.wheelbase;
    figures.frontBySlope = -read.total() * cgHeight * figures.slope / stance.wheelbase;
    if (!stance.hasTracks()) {
        return figures;
    }
    const double meanTrack = (*stance.frontTrack + *stance.rearTrack) / 2;
    const double frontLean = front / *stance.frontTrack;
    const double rearLean = rear / *stance.rearTrack;
    figures.warp = (frontLean - rearLean) * meanTrack;
    figures.lean = (frontLean + rearLean) / 2;
    figures.leftByLean = -read.total() * cgHeight * *figures.lean / meanTrack;
    if (const std::optional<RollStiffness> stiffness = rollStiffness(stance)) {
        const double moment = stiffness->inSeries() * (frontLean - rearLean) / kStandardGravity;
        figures.byWarp = shifted({}, stance, 0, 0, moment, -moment);
    }
    return figures;
}

}  // namespace bolthole
