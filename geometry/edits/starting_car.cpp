#include "geometry/edits/starting_car.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/faults.h"
#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/edits/starting_link.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kCgShare = 0.2;       // of the wheelbase
constexpr double kHighestCg = 1.7;     // of the rear tire radius
constexpr double kFrontCorner = 400;   // kg
constexpr double kRearCorner = 325;    // kg
constexpr double kTravelInch = 4;      // in, either way
constexpr double kTravelMetric = 0.1;  // m, either way

constexpr double kPinionAngle = 1.5 * kRadiansPerDegree;  // nose up
constexpr double kOutputAngle = 3.0 * kRadiansPerDegree;  // rising forward
constexpr double kOutputShare = 0.55;                     // of the wheelbase

void add(Car& car, LinkPattern pattern) {
    car.links.push_back(startingLink(car, pattern));
}

void addLinks(Car& car, LinkLayout layout) {
    switch (layout) {
        case LinkLayout::triangulatedFourLink:
            add(car, LinkPattern::lower);
            add(car, LinkPattern::splayedUpper);
            return;
        case LinkLayout::parallelFourLink:
            add(car, LinkPattern::parallelLower);
            add(car, LinkPattern::parallelUpper);
            return;
        case LinkLayout::threeLink:
            add(car, LinkPattern::lower);
            add(car, LinkPattern::thirdLink);
            return;
        case LinkLayout::ladderBars:
            add(car, LinkPattern::ladderBar);
            return;
        case LinkLayout::torqueArm:
            add(car, LinkPattern::lower);
            add(car, LinkPattern::torqueArm);
            return;
    }
}

}  // namespace

bool needsSidewaysHold(LinkLayout layout) {
    return layout != LinkLayout::triangulatedFourLink;
}

std::string refusal(const StartingCar& asked) {
    const std::vector<Fault> faults = findFaults(startingCar(asked));
    return faults.empty() ? std::string()
                          : say("no starting numbers fit that wheelbase and those tires: %1: %2",
                                faults.front().path, faults.front().reason);
}

Car startingCar(const StartingCar& asked) {
    Car car;
    car.title = asked.title;
    car.units = asked.units;
    car.wheelbase = asked.wheelbase;
    car.rearTireRadius = asked.rearTireRadius;
    car.frontTireRadius = asked.frontTireRadius;
    car.cornerWeights = {kFrontCorner, kFrontCorner, kRearCorner, kRearCorner};
    car.cgHeight = std::max(
        asTaped(std::min(kCgShare * asked.wheelbase, kHighestCg * asked.rearTireRadius), asked.units),
        5 * kMetresPerMillimetre);
    car.travel.bump = car.travel.droop =
        asked.units == Units::inch ? kTravelInch * kMetresPerInch : kTravelMetric;
    addLinks(car, asked.layout);
    if (needsSidewaysHold(asked.layout)) {
        add(car, asked.sideways == SidewaysHold::trackBar ? LinkPattern::trackBar : LinkPattern::wattsGuide);
    }
    car.driveline = startingDriveline(car);
    startFrom(car);
    for (const Field field : asked.typed) {
        setOrigin(car, {.field = field}, Origin::measured);
    }
    return car;
}

Driveline startingDriveline(const Car& car) {
    Driveline driveline;
    driveline.pinionAngle = kPinionAngle;
    driveline.outputAngle = kOutputAngle;
    driveline.pinionJoint = {11.0 * kMetresPerInch, 0, car.rearTireRadius};
    // In inches whatever the car's units, so that another choice of those changes no number.
    const double outputX = asTaped(kOutputShare * car.wheelbase, Units::inch);
    // The shaft rises by half of both: the joints bend alike, which cancels.
    const double rise = (outputX - driveline.pinionJoint.x()) * std::tan((kPinionAngle + kOutputAngle) / 2);
    driveline.outputJoint = {outputX, 0, car.rearTireRadius + asTaped(rise, Units::inch)};
    startFrom(driveline);
    return driveline;
}

}  // namespace bolthole
