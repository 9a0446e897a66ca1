// Link loads through the travel: the worst of them, and the loads they come from.
#include <gmock/gmock.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/statics/launch.h"
#include "geometry/statics/link_loads.h"
#include "tests/support/car_generator.h"
#include "tests/support/level_car.h"
#include "tests/support/made_parts.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

}  // namespace

TEST(LinkLoadSweepTest, KeepsTheWorst) {
    CarGenerator generator(424);
    const Car car = generator.draw(Layout::apart);
    Trace trace = computeTrace(car);
    trace.stations.front().usable = false;
    const Linkage linkage = buildLinkage(car);
    const std::array parts{drawSprings(generator, car.rearTireRadius)};
    const LoadCase load{
        .thrust = 7000, .axleRatio = 4.1, .leftShift = 300, .track = 1.45, .unsprungMass = 95};
    LinkLoadSweep sweep;
    sweepLinkLoads(car, linkage, trace, parts, load, sweep);
    ASSERT_EQ(sweep.joints, 4U);
    EXPECT_FALSE(sweep.unbalanced);
    EXPECT_TRUE(std::isnan(sweep.value(0, 0)));
    for (std::size_t joint = 0; joint < 4; ++joint) {
        double most = 0;
        double least = 0;
        for (std::size_t row = 1; row < trace.stations.size(); ++row) {
            most = std::max(most, sweep.value(row, joint));
            least = std::min(least, sweep.value(row, joint));
        }
        EXPECT_EQ(sweep.worst[joint].tension, most);
        EXPECT_EQ(sweep.worst[joint].compression, -least);
        EXPECT_EQ(sweep.worst[joint].largest(), std::max(most, -least));
        EXPECT_TRUE(sweep.worst[joint].determinate);
    }
    EXPECT_GT(sweep.worst[0].compression, 3000) << "lowers push the car";
    EXPECT_NE(sweep.worst[0].compressionAt, trace.stations[0][Figure::travel]);
}

// Above 100 % of anti-squat by far, at a thrust that lifts the front wheels, springs would have to pull.
TEST(LinkLoadSweepTest, SaysWhereASpringWouldHaveToPull) {
    Car car = levelCar();
    car.links[0].chassis.holes[0].at.z() += 0.25;
    car.travel.steps = 3;
    const Trace trace = computeTrace(car);
    ASSERT_GT(trace.ride[Figure::antiSquat], 300);
    const std::array parts{uprightSprings(1.0, car.rearTireRadius)};
    LinkLoadSweep sweep;
    const LoadCase load{.thrust = 9000, .axleRatio = 4, .track = 1.5, .unsprungMass = 90};
    sweepLinkLoads(car, buildLinkage(car), trace, parts, load, sweep);
    EXPECT_TRUE(sweep.springsPull);
    sweepLinkLoads(car, buildLinkage(car), trace, parts, {.thrust = 500, .axleRatio = 4, .track = 1.5},
                   sweep);
    EXPECT_FALSE(sweep.springsPull);
}

TEST(ThrustTest, TorqueTimesRatiosOrGrip) {
    const StandingCar car{.mass = 1600, .wheelbase = 2.8, .cgAhead = 1.4, .cgHeight = 0.55};
    DriveTorque drive{.engine = 500, .converter = 1, .gear = 2.5, .axle = 4, .efficiency = 0.9};
    const auto gripAt = [&](double friction) {
        return launchLoads(car, gripAcceleration(car, friction)).thrust;
    };
    const Thrust slick = thrustOf(drive, 0.33, gripAt(3.0));
    EXPECT_NEAR(slick.force, 500 * 2.5 * 4 * 0.9 / 0.33, 1e-9);
    EXPECT_FALSE(slick.byGrip);
    const Thrust street = thrustOf(drive, 0.33, gripAt(0.9));
    EXPECT_TRUE(street.byGrip);
    // mu N with N = N0 + F h/L, by hand: F = 0.9 x 7845.32/(1 - 0.9 x 0.55/2.8).
    EXPECT_NEAR(street.force, 0.9 * 800 * kStandardGravity / (1 - 0.9 * 0.55 / 2.8), 1e-8);
    drive.converter = 2;
    EXPECT_TRUE(thrustOf(drive, 0.33, gripAt(3.0)).force > slick.force ||
                thrustOf(drive, 0.33, gripAt(3.0)).byGrip);
}

TEST(LoadCaseTest, TireLoadsFollowTheThrust) {
    const Car car = levelCar();
    const GroundLine ground = computeTrace(car).ride.ground;
    const LoadCase load{.thrust = 5000, .axleRatio = 4, .leftShift = 250, .track = 1.5};
    const AxleLoads applied = axleLoads(car, ground, load);
    const double rear = 710 * kStandardGravity + 5000 * 22.0 / 116.0;
    EXPECT_NEAR(applied.leftTire, rear / 2 + 250, 1e-8);
    EXPECT_NEAR(applied.rightTire, rear / 2 - 250, 1e-8);
    EXPECT_NEAR(applied.shaftTorque, 5000 * 13 * kInch / 4, 1e-9);
    const AxleLoads lifted = axleLoads(car, ground, {.thrust = 1e6, .axleRatio = 4, .track = 1.5});
    EXPECT_NEAR(lifted.leftTire + lifted.rightTire, 1630 * kStandardGravity, 1e-7);
}

TEST(LoadCaseTest, RefusesWhatCanNotBe) {
    const Car car = levelCar();
    const LoadCase good{.thrust = 5000, .axleRatio = 4, .track = 1.5, .unsprungMass = 100};
    EXPECT_EQ(refusal(good, car), "");
    LoadCase bad = good;
    bad.thrust = std::nan("");
    EXPECT_THAT(refusal(bad, car), HasSubstr("thrust"));
    bad = good;
    bad.track = 0;
    EXPECT_THAT(refusal(bad, car), HasSubstr("track above 0"));
    bad = good;
    bad.unsprungMass = 710;
    EXPECT_THAT(refusal(bad, car), HasSubstr("unsprung mass"));
}

TEST(RatingTest, FactorTimesLoadOverRating) {
    EXPECT_DOUBLE_EQ(ratingUse(-12e3, 60e3, 2.5), 0.5);
    EXPECT_DOUBLE_EQ(ratingUse(30e3, 60e3, 3), 1.5);
}

}  // namespace bolthole
