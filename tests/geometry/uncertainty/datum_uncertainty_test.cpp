// What all points share: an error of the floor, the center plane or the line below the axle. Checked on a
// four-link whose instant center is found by intersecting two lines (lowers z = 8 + 0.1 x, uppers z = 20.4 -
// 0.2 x, inches: 41.333 ahead, 12.133 up; plane geometry), anti-squat being 100 (z/x) / (h/L) after W. F.
// Milliken, D. L. Milliken, Race Car Vehicle Dynamics (SAE 1995), ch. 17, from memory.
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/edits/edit.h"
#include "geometry/uncertainty/read_uncertainty.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "tests/support/car_generator.h"
#include "tests/support/exact_car.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

constexpr double kX = 124.0 / 3;  // in, of the instant center
constexpr double kZ = 8 + 0.1 * kX;
constexpr double kCgHeight = 20;
constexpr double kWheelbase = 110;
constexpr double kOff = 0.05 * kInch;  // standard uncertainty of a datum

double antiSquat(double x, double z) {
    return 100 * (z / x) / (kCgHeight / kWheelbase);
}

Car handCar() {
    Car car;
    car.wheelbase = kWheelbase * kInch;
    car.rearTireRadius = car.frontTireRadius = 13 * kInch;
    car.cornerWeights = {470, 450, 360, 350};
    car.cgHeight = kCgHeight * kInch;
    car.travel.bump = car.travel.droop = 2 * kInch;
    const auto in = [](double x, double y, double z) {
        return Eigen::Vector3d(Eigen::Vector3d(x, y, z) * kInch);
    };
    car.links = {makeLink("lower", LinkKind::rod, Side::both, {in(20, 18, 10), in(0, 18, 8)}),
                 makeLink("upper", LinkKind::rod, Side::both, {in(12, 12, 18), in(2, 12, 20)}),
                 makeLink("Watts", LinkKind::guide, Side::center, {in(-5, 0, 13), in(-5, 0, 13)})};
    return exactCar(car);
}

struct Shown {
    double x, z, antiSquat;
};
Shown uncertaintiesOf(const Car& car) {
    const TraceUncertainty uncertainty = computeUncertainty(car);
    EXPECT_TRUE(uncertainty.known);
    return {uncertainty.atRide(Figure::icX), uncertainty.atRide(Figure::icZ),
            uncertainty.atRide(Figure::antiSquat)};
}

TEST(DatumUncertainty, NoneIsCountedWhereNoneIsEntered) {
    const Shown none = uncertaintiesOf(handCar());
    EXPECT_NEAR(none.x, 0, 1e-12);
    EXPECT_NEAR(none.z, 0, 1e-12);
    EXPECT_NEAR(none.antiSquat, 0, 1e-9);
}

TEST(DatumUncertainty, AFloorThatLiesOffMovesTheCenterAsAWhole) {
    Car car = handCar();
    car.tools.floor = kOff;
    const Shown shown = uncertaintiesOf(car);
    EXPECT_NEAR(shown.x, 0, 1e-9);
    EXPECT_NEAR(shown.z, kOff, 1e-9);
    const double off = kOff / kInch;
    EXPECT_NEAR(shown.antiSquat, (antiSquat(kX, kZ + off) - antiSquat(kX, kZ - off)) / 2, 1e-5);
}

TEST(DatumUncertainty, ALineBelowTheAxleThatLiesOffMovesItForward) {
    Car car = handCar();
    car.tools.originLine = kOff;
    const Shown shown = uncertaintiesOf(car);
    EXPECT_NEAR(shown.x, kOff, 1e-9);
    EXPECT_NEAR(shown.z, 0, 1e-9);
    const double off = kOff / kInch;
    EXPECT_NEAR(shown.antiSquat, (antiSquat(kX - off, kZ) - antiSquat(kX + off, kZ)) / 2, 1e-5);
}

// Each point by itself would be off by the same and spread the center far more, as the lines then turn.
TEST(DatumUncertainty, IsLessThanTheSameErrorOfEachPoint) {
    Car shared = handCar();
    shared.tools.floor = kOff;
    Car each = handCar();
    for (int link = 0; link < 2; ++link) {
        for (const End end : {End::chassis, End::axle}) {
            FieldId id{.field = Field::holeAt, .link = link, .end = end, .hole = 0, .axis = 2};
            id.uncertainty = true;
            each = apply(each, SetNumber{id, kOff}).car;
        }
    }
    EXPECT_GT(uncertaintiesOf(each).z, 1.5 * uncertaintiesOf(shared).z);
}

// By the outside way of readUncertainty(), which varies the car and reads it anew.
TEST(DatumUncertainty, ReadsTheSameThroughTheWholeCar) {
    Car car = handCar();
    car.tools.floor = kOff;
    const std::vector<double> read =
        readUncertainty(car, 1, [](const Car& varied, std::span<double> numbers) {
            const Trace trace = computeTrace(varied);
            numbers[0] = trace.ride[Figure::antiSquat];
            return trace.ride.usable;
        });
    EXPECT_NEAR(read[0], uncertaintiesOf(car).antiSquat, 1e-3);
}

TEST(DatumUncertainty, ACenterPlaneThatLiesOffLeavesTheSideViewAlone) {
    Car car = handCar();
    car.tools.centerPlane = kOff;
    const Shown shown = uncertaintiesOf(car);
    EXPECT_NEAR(shown.x, 0, 1e-6);
    EXPECT_NEAR(shown.antiSquat, 0, 1e-3);
}

// What two states of one car share is no error of its own in each: of two CG heights the difference is off by
// the difference of what each is off by.
TEST(DatumUncertainty, IsOneErrorInBothStatesOfACar) {
    Car car = handCar();
    car.tools.originLine = kOff;
    Car other = car;
    other.cgHeight *= 1.25;
    const auto row = static_cast<std::size_t>(Figure::antiSquat);
    const double one = uncertaintiesOf(car).antiSquat;
    EXPECT_NEAR(uncertaintyOfDifference(computeUncertainty(car), computeUncertainty(other), 0, row),
                one - one / 1.25, 1e-6);
}

}  // namespace
}  // namespace bolthole
