// The instant center of each side by itself.
#include "geometry/kinematics/side_centers.h"

#include <gmock/gmock.h>

#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"
#include "tests/support/plain_car.h"

namespace bolthole {

namespace {

// Worked by hand: lowers from (0, 8) to (20, 10), uppers from (2, 20) to (12, 18), inches, side view. Lines
// z = 8 + 0.1 x and z = 20.4 - 0.2 x meet at x = 12.4/0.3 = 41.333, z = 12.133.
Car handCenters() {
    Car car = plainCar();
    car.rearTireRadius = car.frontTireRadius = 13 * kInch;
    car.links[0].chassis.holes = {hole("", 20, 18, 10)};
    car.links[0].axle.holes = {hole("", 0, 21, 8)};
    car.links[0].axle.use = 0;
    car.links[1].chassis.holes = {hole("", 12, 18, 18)};
    car.links[1].axle.holes = {hole("", 2, 6, 20)};
    return car;
}

SideCenters centersOf(const Car& car) {
    return sideCenters(car, computeTrace(car).ride);
}

void expectAt(const SideCenter& center, double ahead, double above) {
    EXPECT_EQ(center.state, SideCenterState::there);
    EXPECT_NEAR(center.ahead, ahead, 1e-9);
    EXPECT_NEAR(center.above, above, 1e-9);
}

}  // namespace

TEST(SideCenters, AreTheCrossingWorkedByHand) {
    const SideCenters centers = centersOf(handCenters());
    EXPECT_FALSE(centers.apart);
    for (const SideCenter& center : {centers.left, centers.right, centers.axle}) {
        expectAt(center, 12.4 / 0.3 * kInch, (8 + 1.24 / 0.3) * kInch);
    }
}

// With the right upper's front hole at (12, 19): z = 20.2 - 0.1 x meets z = 8 + 0.1 x at (61, 14.1).
TEST(SideCenters, DifferWhereTheSidesDo) {
    Car car = handCenters();
    splitPairs(car);
    car.links[3].chassis.holes[0].at.z() = 19 * kInch;
    const SideCenters centers = centersOf(car);
    EXPECT_TRUE(centers.apart);
    expectAt(centers.left, 12.4 / 0.3 * kInch, (8 + 1.24 / 0.3) * kInch);
    expectAt(centers.right, 61 * kInch, 14.1 * kInch);
    EXPECT_GT(centers.axle.ahead, centers.left.ahead);
    EXPECT_LT(centers.axle.ahead, centers.right.ahead);
}

TEST(SideCenters, AreTheAxlesOwnWhereNothingDiffersAndNoBarShiftsIt) {
    CarGenerator generator(500);
    for (const Layout layout : {Layout::triangulated, Layout::torqueArm, Layout::wattsThreeLink,
                                Layout::parallelGuide, Layout::ladderGuide}) {
        for (int number = 0; number < 20; ++number) {
            Car car = generator.draw(layout);
            const SideCenters centers = centersOf(car);
            if (layout == Layout::wattsThreeLink) {
                continue;  // a third link off the middle sends the two sides apart in travel
            }
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            EXPECT_FALSE(centers.apart);
            EXPECT_NEAR(1 / centers.left.ahead, 1 / centers.axle.ahead, 1e-8);
            EXPECT_NEAR(centers.left.ahead, centers.right.ahead, 1e-9 * std::abs(centers.left.ahead));
        }
    }
}

// A ladder bar turns about its own front pivot, whatever the other side does.
TEST(SideCenters, OfALadderBarIsItsPivot) {
    Car car = CarGenerator(501).draw(Layout::ladderGuide);
    splitPairs(car);
    car.links[1].chassis.holes[0].at.x() += 0.05;
    car.links[1].axle.holes[0].at.x() += 0.05;
    const SideCenters centers = centersOf(car);
    const Eigen::Vector3d left = car.links[0].chassis.inUse().at;
    const Eigen::Vector3d right = car.links[1].chassis.inUse().at;
    EXPECT_TRUE(centers.apart);
    EXPECT_NEAR(centers.left.carX, left.x(), 1e-6);
    EXPECT_NEAR(centers.left.carZ, left.z(), 1e-6);
    EXPECT_NEAR(centers.right.carX - centers.left.carX, right.x() - left.x(), 1e-6);
}

TEST(SideCenters, OfATorqueArmLieOverItsSlide) {
    const Car car = CarGenerator(502).draw(Layout::torqueArm);
    const Eigen::Vector3d slide = car.links[1].chassis.inUse().at;
    const Link& lower = car.links[0];
    const Eigen::Vector3d rear = lower.axle.inUse().at;
    const Eigen::Vector3d front = lower.chassis.inUse().at;
    const double slope = (front.z() - rear.z()) / (front.x() - rear.x());
    const SideCenters centers = centersOf(car);
    EXPECT_NEAR(centers.left.carX, slide.x(), 1e-9);
    EXPECT_NEAR(centers.left.carZ, rear.z() + slope * (slide.x() - rear.x()), 1e-9);
}

TEST(SideCenters, SayWhyThereIsNone) {
    Car parallel = handCenters();
    parallel.links[1].chassis.holes[0].at.z() = 21 * kInch;
    parallel.links[1].axle.holes[0].at.z() = 20 * kInch;
    parallel.links[1].chassis.holes[0].at.x() = 12 * kInch;
    EXPECT_EQ(centersOf(parallel).left.state, SideCenterState::parallel);
    EXPECT_NE(describe(SideCenterState::parallel), "");
    Car oneSided = handCenters();  // both uppers on the left
    splitPairs(oneSided);
    oneSided.links[3].side = Side::left;
    const SideCenters centers = centersOf(oneSided);
    EXPECT_EQ(centers.right.state, SideCenterState::tooFew);
    EXPECT_TRUE(std::isnan(centers.right.ahead));
    EXPECT_EQ(sideCenters(handCenters(), Station{}).left.state, SideCenterState::notSolved);
}

}  // namespace bolthole
