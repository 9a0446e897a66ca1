// CG height: the uncertainty of a lift, what is refused, and which source speaks.
#include "geometry/weights/cg_height.h"

#include <gmock/gmock.h>

#include <cmath>
#include <random>

#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

const LiftCar kCar{.wheelbase = 2.8, .rearTireRadius = 0.34, .frontTireRadius = 0.33};

// A car of 1600 kg, CG 1.5 m ahead of the rear axle and `height` high, tires of one size, lifted by `lift`.
LiftTest liftOf(double height, double lift, double radius = 0.33) {
    LiftTest test;
    const double front = 1600 * 1.5 / 2.8;
    test.level = {front / 2, front / 2, (1600 - front) / 2, (1600 - front) / 2};
    test.lift = lift;
    const double angle = std::asin(lift / 2.8);
    test.reading = front - 1600 * (height - radius) * std::tan(angle) / 2.8;
    return test;
}

LiftCar oneSize() {
    return {.wheelbase = 2.8, .rearTireRadius = 0.33, .frontTireRadius = 0.33};
}

CgHeightResult byLift(const LiftTest& test, Units units = Units::inch) {
    return cgHeightByLift(test, oneSize(), {}, units);
}

}  // namespace

// With tires of one size h = r + L (F - F')/(W tan a), so that the parts can be written out.
TEST(CgHeight, UncertaintyByHand) {
    const double lift = 0.6;
    const LiftTest test = liftOf(0.55, lift);
    const LiftUncertainty uncertainty{.scale = 0.5, .lift = 0.003, .wheelbase = 0.004, .radius = 0.002};
    const LiftParts parts = liftParts(test, oneSize(), uncertainty);
    const double tangent = std::tan(std::asin(lift / 2.8));
    const double moved = test.level.front() - test.reading;
    const double axle = 0.5 * std::sqrt(2.0);
    const double perWeight = 2.8 / (1600 * tangent);                 // dh/dF and -dh/dF'
    const double perTotal = -2.8 * moved / (1600 * 1600 * tangent);  // dh/dW
    EXPECT_NEAR(parts.scales, axle * std::hypot(perWeight + perTotal, perTotal, perWeight), 1e-9);
    // L cot a = L sqrt(L^2/H^2 - 1)
    const double root = std::sqrt(std::pow(2.8 / lift, 2) - 1);
    EXPECT_NEAR(parts.lift, 0.003 * moved / 1600 * 2.8 * std::pow(2.8, 2) / std::pow(lift, 3) / root, 1e-9);
    EXPECT_NEAR(parts.wheelbase, 0.004 * moved / 1600 * (root + std::pow(2.8 / lift, 2) / root), 1e-9);
    // The step rf - rr moves the front wheels' lever, F'/W of it, and turns the car by (1 - cos a)/(L cos a).
    const double angle = std::atan(tangent);
    const double perStep = test.reading / 1600 - moved / 1600 / std::pow(std::sin(angle), 2) *
                                                     (1 - std::cos(angle)) / std::cos(angle);
    EXPECT_NEAR(parts.radii, 0.002 * std::hypot(1 - perStep, perStep), 1e-9);
    EXPECT_NEAR(parts.total(),
                std::sqrt(std::pow(parts.scales, 2) + std::pow(parts.lift, 2) + std::pow(parts.wheelbase, 2) +
                          std::pow(parts.radii, 2)),
                1e-12);
}

// JCGM 101: draws of all inputs spread as the first order says, where it holds (here a lift of 16 deg).
TEST(CgHeight, UncertaintyByDraws) {
    const LiftUncertainty uncertainty{.scale = 0.8, .lift = 0.004, .wheelbase = 0.005, .radius = 0.003};
    LiftTest test = liftOf(0.55, 0.78);
    test.raised = CarEnd::rear;
    test.reading = 900;  // the front axle with the rear raised
    std::mt19937_64 random(5);
    std::normal_distribution<double> normal;
    const auto off = [&](double& value, double by) { value += by * normal(random); };
    constexpr int kDraws = 40000;
    double sum = 0;
    double squares = 0;
    for (int draw = 0; draw < kDraws; ++draw) {
        LiftTest drawn = test;
        LiftCar car = kCar;
        for (double* corner : {&drawn.level.leftFront, &drawn.level.rightFront, &drawn.level.leftRear,
                               &drawn.level.rightRear}) {
            off(*corner, uncertainty.scale);
        }
        off(drawn.reading, uncertainty.scale);
        off(drawn.reading, uncertainty.scale);
        off(drawn.lift, uncertainty.lift);
        off(car.wheelbase, uncertainty.wheelbase);
        off(car.rearTireRadius, uncertainty.radius);
        off(car.frontTireRadius, uncertainty.radius);
        const double height = liftHeight(drawn, car);
        sum += height;
        squares += height * height;
    }
    const double mean = sum / kDraws;
    const double spread = std::sqrt(squares / kDraws - mean * mean);
    EXPECT_NEAR(liftParts(test, kCar, uncertainty).total(), spread, 0.02 * spread);
}

// What a lift is worth its ± says; nobody is told to lift higher.
TEST(CgHeight, SmallLiftsAreWorthLittleByTheirUncertainty) {
    const CgHeight small = byLift(liftOf(0.55, 0.10)).value.value();
    const CgHeight middle = byLift(liftOf(0.55, 0.30)).value.value();
    const CgHeight large = byLift(liftOf(0.55, 0.75)).value.value();
    EXPECT_GT(*small.uncertainty, 2 * *middle.uncertainty);
    EXPECT_GT(*middle.uncertainty, 2 * *large.uncertainty);
    EXPECT_NEAR(small.height, 0.55, 1e-12);
    for (const CgHeight& height : {small, middle, large}) {
        EXPECT_EQ(height.remark, "");
    }
}

TEST(CgHeight, RefusesWhatNoLiftGives) {
    const auto refusal = [](const LiftTest& test) {
        const CgHeightResult result = byLift(test, Units::metric);
        EXPECT_FALSE(result.value.has_value());
        return result.refusal;
    };
    LiftTest test = liftOf(0.55, 0.7);
    test.lift = 0;
    EXPECT_THAT(refusal(test), HasSubstr("expected a lift above 0"));
    test.lift = std::nan("");
    EXPECT_THAT(refusal(test), HasSubstr("expected a lift above 0"));
    test.lift = 2.9;
    EXPECT_THAT(refusal(test), HasSubstr("2900 mm is more than the wheelbase of 2800 mm"));
    test = liftOf(0.55, 0.7);
    test.reading = 1600;
    EXPECT_THAT(refusal(test), HasSubstr("less than the whole car"));
    test.reading = 0;
    EXPECT_THAT(refusal(test), HasSubstr("more than 0"));
    test = liftOf(-0.05, 0.7);
    EXPECT_THAT(refusal(test), HasSubstr("under the ground: check which end was raised"));
}

TEST(CgHeight, WrongEndIsNoticed) {
    LiftTest test = liftOf(0.55, 0.75);
    test.raised = CarEnd::rear;  // it was the front that was raised
    const CgHeight height = byLift(test).value.value();
    EXPECT_NEAR(height.height, 0.33 - (0.55 - 0.33), 1e-12);
    EXPECT_THAT(height.remark, HasSubstr("under the wheels' centers"));
}

TEST(CgHeight, ReadingEitherAxleIsTheSame) {
    LiftTest test = liftOf(0.55, 0.7);
    const double front = liftHeight(test, kCar);
    test.read = CarEnd::rear;
    test.reading = test.level.total() - test.reading;
    EXPECT_NEAR(liftHeight(test, kCar), front, 1e-12);
}

TEST(CgHeight, SaysWhereItComesFrom) {
    const auto from = [](CgHeightSource source, const std::optional<LiftTest>& test) {
        return cgHeightFrom(source, 0.533, test, oneSize(), {}, Units::metric);
    };
    const CgHeight entered = from(CgHeightSource::entered, liftOf(0.55, 0.75)).value.value();
    EXPECT_EQ(describe(entered, Units::metric), "CG height 533.0 mm as entered");
    const CgHeight lift = from(CgHeightSource::lift, liftOf(0.55, 0.75)).value.value();
    EXPECT_THAT(describe(lift, Units::metric),
                testing::MatchesRegex("CG height 550\\.0 mm ± [0-9]+ mm by the lift method"));
    const CgHeight estimate = from(CgHeightSource::estimate, std::nullopt).value.value();
    EXPECT_EQ(describe(estimate, Units::metric), "CG height 545.0 mm ± 98 mm, estimated from other cars");
    CgHeight typed = entered;
    typed.height = 0.59055;
    typed.uncertainty = 0.0127;
    EXPECT_EQ(describe(typed, Units::inch), "CG height 23.25 in ± 0.98 in as entered")
        << "rounded as the figure beside it is";
    EXPECT_THAT(estimate.remark, HasSubstr("not measured on this one"));
    const CgHeightResult none = from(CgHeightSource::lift, std::nullopt);
    EXPECT_FALSE(none.value.has_value());
    EXPECT_THAT(none.refusal, HasSubstr("no lift is entered"));
}

TEST(CgHeight, BallastMovesIt) {
    const std::vector<MassAt> changes{{100, {1, 0, 0.75}}, {-60, {-0.5, 0, 0.35}}};
    const double height = cgHeightWithBallast(0.55, 1500, changes);
    EXPECT_NEAR(height, (1500 * 0.55 + 75 - 21) / 1540, 1e-12);
    EXPECT_DOUBLE_EQ(cgHeightWithBallast(0.55, 1500, {}), 0.55);
}

}  // namespace bolthole
