#include "geometry/weights/cg_height.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/units/say.h"
#include "geometry/units/text.h"
#include "geometry/units/uncertainty_text.h"

namespace bolthole {

namespace {

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

constexpr double kEstimatedHeight = 0.545;      // m
constexpr double kEstimateUncertainty = 0.050;  // m

/// Everything a height is computed from, as one row of numbers, so that each can be varied.
struct LiftInputs {
    double front;    // kg, level
    double rear;     // kg, level
    double reading;  // kg
    double rise;     // m, front over rear
    double wheelbase;
    double rearRadius;
    double frontRadius;
    bool readsFront;
};

LiftInputs inputsOf(const LiftTest& test, const LiftCar& car) {
    return {.front = test.level.front(),
            .rear = test.level.total() - test.level.front(),
            .reading = test.reading,
            .rise = test.raised == CarEnd::front ? test.lift : -test.lift,
            .wheelbase = car.wheelbase,
            .rearRadius = car.rearTireRadius,
            .frontRadius = car.frontTireRadius,
            .readsFront = test.read == CarEnd::front};
}

// s + d = L sin a + d cos a = C sin(a + c), with C and c the length and slope of the line between the wheels'
// centers.
double angleOf(const LiftInputs& in) {
    const double step = in.frontRadius - in.rearRadius;
    const double centers = std::hypot(in.wheelbase, step);
    return std::asin((in.rise + step) / centers) - std::asin(step / centers);
}

double heightOf(const LiftInputs& in) {
    const double angle = angleOf(in);
    if (angle == 0) {
        return kNoNumber;
    }
    const double total = in.front + in.rear;
    const double raisedFront = in.readsFront ? in.reading : total - in.reading;
    const double step = in.frontRadius - in.rearRadius;
    return in.rearRadius + step * raisedFront / total +
           in.wheelbase * (in.front - raisedFront) / total / std::tan(angle);
}

// What `uncertainty` of one input does to the height, m: to first order, from a thousandth of it either way.
double part(const LiftInputs& in, double LiftInputs::*input, double uncertainty) {
    constexpr double kStep = 1e-3;
    LiftInputs more = in;
    LiftInputs less = in;
    more.*input += kStep * uncertainty;
    less.*input -= kStep * uncertainty;
    return (heightOf(more) - heightOf(less)) / (2 * kStep);
}

std::string lengthText(double length, Units units) {
    return withUnit(figureText(length, Quantity::length, units), Quantity::length, units);
}

// What keeps a lift from being computed; empty: nothing.
std::string refusalOf(const LiftTest& test, const LiftCar& car, Units units) {
    if (!(test.lift > 0)) {
        return say("the car was not raised: expected a lift above 0");
    }
    const double angle = liftAngle(test, car);
    if (!std::isfinite(angle)) {
        return say(
            "a lift of %1 is more than the wheelbase of %2 allows: measure between the heights of both "
            "ends' tires",
            lengthText(test.lift, units), lengthText(car.wheelbase, units));
    }
    if (!(test.reading > 0) || !(test.reading < test.level.total())) {
        return say(
            "the axle weighed with the car raised should read more than 0 and less than the whole car");
    }
    if (!(liftHeight(test, car) > 0)) {
        return say(
            "these readings put the CG under the ground: check which end was raised and which was read");
    }
    return {};
}

// What makes a lift doubtful: a CG under the wheels' centers, which no car has (common practice, no source)
// and which a wrong end gives.
std::string remarkOn(const LiftTest& test, const LiftCar& car) {
    if (liftHeight(test, car) < std::min(car.rearTireRadius, car.frontTireRadius)) {
        return say(
            "these readings put the CG under the wheels' centers, where no car has it: check which end "
            "was raised and which was read");
    }
    return {};
}

}  // namespace

LiftCar liftCar(const Car& car) {
    return {car.wheelbase, car.rearTireRadius, car.frontTireRadius};
}

double LiftParts::total() const {
    return std::hypot(std::hypot(scales, lift), std::hypot(wheelbase, radii));
}

double liftAngle(const LiftTest& test, const LiftCar& car) {
    return angleOf(inputsOf(test, car));
}

double liftHeight(const LiftTest& test, const LiftCar& car) {
    return heightOf(inputsOf(test, car));
}

LiftParts liftParts(const LiftTest& test, const LiftCar& car, const LiftUncertainty& uncertainty) {
    const LiftInputs in = inputsOf(test, car);
    const double axle = std::sqrt(2.0) * uncertainty.scale;
    LiftParts parts;
    parts.scales = std::hypot(part(in, &LiftInputs::front, axle), part(in, &LiftInputs::rear, axle),
                              part(in, &LiftInputs::reading, axle));
    parts.lift = std::abs(part(in, &LiftInputs::rise, uncertainty.lift));
    parts.wheelbase = std::abs(part(in, &LiftInputs::wheelbase, uncertainty.wheelbase));
    parts.radii = std::hypot(part(in, &LiftInputs::rearRadius, uncertainty.radius),
                             part(in, &LiftInputs::frontRadius, uncertainty.radius));
    return parts;
}

CgHeightResult cgHeightByLift(const LiftTest& test, const LiftCar& car, const LiftUncertainty& uncertainty,
                              Units units) {
    CgHeightResult result;
    result.refusal = refusalOf(test, car, units);
    if (result.refusal.empty()) {
        result.value = CgHeight{.height = liftHeight(test, car),
                                .uncertainty = liftParts(test, car, uncertainty).total(),
                                .source = CgHeightSource::lift,
                                .remark = remarkOn(test, car)};
    }
    return result;
}

CgHeight estimatedCgHeight() {
    return {.height = kEstimatedHeight,
            .uncertainty = kEstimateUncertainty,
            .source = CgHeightSource::estimate,
            .remark = say(
                "estimated from other cars as they were built, not measured on this one: lift one end and "
                "weigh it")};
}

CgHeightResult cgHeightFrom(CgHeightSource source, double entered, const std::optional<LiftTest>& test,
                            const LiftCar& car, const LiftUncertainty& uncertainty, Units units) {
    switch (source) {
        case CgHeightSource::entered:
            return {CgHeight{.height = entered, .remark = {}}, {}};
        case CgHeightSource::estimate:
            return {estimatedCgHeight(), {}};
        case CgHeightSource::lift:
            break;
    }
    if (!test) {
        return {std::nullopt, say("no lift is entered: raise one end, weigh one axle and enter both")};
    }
    return cgHeightByLift(*test, car, uncertainty, units);
}

double cgHeightWithBallast(double height, double total, std::span<const MassAt> changes) {
    double moment = height * total;
    double mass = total;
    for (const MassAt& change : changes) {
        moment += change.mass * change.at.z();
        mass += change.mass;
    }
    return moment / mass;
}

std::string describe(const CgHeight& height, Units units) {
    // As the figure itself is written, or one height would have two roundings on one line.
    const auto withItsUnit = [units](const std::string& text) {
        return withUnit(text, Quantity::length, units);
    };
    const std::string size = withItsUnit(fineFigureText(height.height, Quantity::length, units));
    const std::string half =
        halfWidthText(height.uncertainty.value_or(0), Quantity::length, units, Fineness::fine);
    const std::string known = half.empty() ? size : say("%1 \u00B1 %2", size, withItsUnit(half));
    switch (height.source) {
        case CgHeightSource::entered:
            return say("CG height %1 as entered", known);
        case CgHeightSource::lift:
            return say("CG height %1 by the lift method", known);
        case CgHeightSource::estimate:
            break;
    }
    return say("CG height %1, estimated from other cars", known);
}

}  // namespace bolthole
