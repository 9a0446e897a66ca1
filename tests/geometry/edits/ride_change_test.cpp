// Other tires and other ride heights: what must stay as it was, and what must follow.
#include "geometry/edits/ride_change.h"

#include <gtest/gtest.h>

#include <cmath>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

constexpr int kCars = 25;
constexpr std::array kAllLayouts{
    Layout::triangulated,   Layout::apart,    Layout::threeLink,     Layout::torqueArm,
    Layout::wattsThreeLink, Layout::parallel, Layout::parallelGuide, Layout::parallelTrackBar,
    Layout::ladderGuide};
// Cars whose axle stays square to the car, of links that know no direction of the frame.
constexpr std::array kSymmetric{Layout::triangulated, Layout::parallel, Layout::parallelGuide,
                                Layout::ladderGuide};

Car changed(const Car& car, const RideChange& change) {
    CarResult result = changeRide(car, change);
    EXPECT_TRUE(result.car.has_value()) << result.refusal;
    return result.car.value_or(car);
}

template <typename Check>
void forCars(const auto& layouts, const Check& check) {
    for (const Layout layout : layouts) {
        CarGenerator generator(300 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < kCars; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            Car car = generator.draw(layout);
            drillHoles(car, 2, 0.03);
            if (number % 3 == 1) {
                generator.misbuild(car, 0.005);
            }
            check(car, generator);
            if (testing::Test::HasFailure()) {
                return;
            }
        }
    }
}

/// Tires and heights anyhow.
RideChange anyChange(const Car& car, CarGenerator& generator) {
    return {.rearTireRadius = car.rearTireRadius + generator.between(-0.03, 0.05),
            .frontTireRadius = car.frontTireRadius + generator.between(-0.03, 0.03),
            .rearLower = generator.between(-0.05, 0.05),
            .frontLower = generator.between(-0.05, 0.05)};
}

RideChange backFrom(const RideChange& change, const Car& car) {
    return {.rearTireRadius = car.rearTireRadius,
            .frontTireRadius = car.frontTireRadius,
            .rearLower = -change.rearLower,
            .frontLower = -change.frontLower};
}

/// The largest distance of any hole or joint of one car from the other's.
double farthest(const Car& one, const Car& other) {
    double distance = 0;
    for (std::size_t link = 0; link < one.links.size(); ++link) {
        for (const End end : {End::chassis, End::axle}) {
            const auto& holes = one.links[link].bracket(end).holes;
            for (std::size_t hole = 0; hole < holes.size(); ++hole) {
                const auto& at = other.links[link].bracket(end).holes[hole].at;
                distance = std::max(distance, (holes[hole].at - at).norm());
            }
        }
    }
    distance = std::max(distance, (one.driveline->pinionJoint - other.driveline->pinionJoint).norm());
    return std::max(distance, (one.driveline->outputJoint - other.driveline->outputJoint).norm());
}

void expectSameNumbers(const Car& one, const Car& other, double tolerance) {
    EXPECT_NEAR(one.wheelbase, other.wheelbase, tolerance);
    EXPECT_NEAR(one.cgHeight, other.cgHeight, tolerance);
    EXPECT_NEAR(one.cornerWeights.leftFront, other.cornerWeights.leftFront, 1e3 * tolerance);
    EXPECT_NEAR(one.cornerWeights.rightRear, other.cornerWeights.rightRear, 1e3 * tolerance);
    EXPECT_NEAR(one.driveline->pinionAngle, other.driveline->pinionAngle, tolerance);
    EXPECT_NEAR(one.driveline->outputAngle, other.driveline->outputAngle, tolerance);
    EXPECT_NEAR(one.travel.bump, other.travel.bump, tolerance);
    EXPECT_NEAR(one.travel.droop, other.travel.droop, tolerance);
}

TEST(RideChange, NoChangeIsIdentity) {
    forCars(kAllLayouts, [](const Car& car, CarGenerator&) {
        EXPECT_TRUE(changed(car, noChange(car)) == car) << "lengths stay unwritten, too";
    });
}

// The axles stay where they are in the body, so the way back is the way out whatever the radii.
TEST(RideChange, TiresThereAndBackGiveEveryPointAgain) {
    forCars(kSymmetric, [](const Car& car, CarGenerator& generator) {
        RideChange change = anyChange(car, generator);
        change.rearLower = change.frontLower = 0;
        const Car square = changed(car, {.rearTireRadius = car.rearTireRadius,
                                         .frontTireRadius = car.frontTireRadius,
                                         .rearLower = 0.001,
                                         .frontLower = 0.001});  // misbuilt ones: at their ride, too
        const Car back = changed(changed(square, change), backFrom(change, square));
        EXPECT_LT(farthest(square, back), 1e-9);
        expectSameNumbers(square, back, 1e-9);
    });
}

// Both ends alike: the frame does not turn, and down then up are along one line.
TEST(RideChange, LoweredAlikeAndRaisedAgainGivesEveryPointAgain) {
    forCars(kSymmetric, [](const Car& car, CarGenerator& generator) {
        const double more = generator.between(-0.02, 0.04);
        const double lower = generator.between(-0.05, 0.05);
        const RideChange change{.rearTireRadius = car.rearTireRadius + more,
                                .frontTireRadius = car.frontTireRadius + more,
                                .rearLower = lower,
                                .frontLower = lower};
        const Car built = changed(car, {.rearTireRadius = car.rearTireRadius,
                                        .frontTireRadius = car.frontTireRadius,
                                        .rearLower = 0.001,
                                        .frontLower = 0.001});
        const Car back = changed(changed(built, change), backFrom(change, built));
        EXPECT_LT(farthest(built, back), 1e-9);
        expectSameNumbers(built, back, 1e-9);
    });
}

// Lowered unlike at the ends, "down" is another direction on the way back; that is of the second order: the
// amount times the angle the ground turned by.
TEST(RideChange, AnyChangeComesBackToTheSecondOrder) {
    forCars(kSymmetric, [](const Car& car, CarGenerator& generator) {
        const Car built = changed(car, {.rearTireRadius = car.rearTireRadius,
                                        .frontTireRadius = car.frontTireRadius,
                                        .rearLower = 0.001,
                                        .frontLower = 0.001});
        const RideChange change = anyChange(built, generator);
        const Car there = changed(built, change);
        const double turned = std::abs(there.driveline->outputAngle - built.driveline->outputAngle);
        const double most = std::max(std::abs(change.rearLower), std::abs(change.frontLower));
        EXPECT_LT(farthest(built, changed(there, backFrom(change, built))), 2 * most * turned + 1e-9);
    });
}

TEST(RideChange, LengthsAndBracketsStayWhatTheyAre) {
    forCars(kAllLayouts, [](const Car& car, CarGenerator& generator) {
        const Car after = changed(car, anyChange(car, generator));
        for (std::size_t index = 0; index < car.links.size(); ++index) {
            const Link& before = car.links[index];
            const Link& link = after.links[index];
            if (link.kind == LinkKind::rod) {
                EXPECT_EQ(link.length, builtLength(before));
            }
            for (const End end : {End::chassis, End::axle}) {
                const auto& old = before.bracket(end).holes;
                const auto& holes = link.bracket(end).holes;
                EXPECT_NEAR((holes[1].at - holes[0].at).norm(), (old[1].at - old[0].at).norm(), 1e-12);
                EXPECT_EQ(holes[0].at.y(), old[0].at.y());
            }
        }
    });
}

/// Where the center of gravity stands in side view.
Eigen::Vector2d gravityOf(const Car& car) {
    return {car.wheelbase * car.cornerWeights.front() / car.cornerWeights.total(), car.cgHeight};
}

Eigen::Vector2d sideViewOf(const Eigen::Vector3d& at) {
    return {at.x(), at.z()};
}

TEST(RideChange, TheCenterOfGravityStaysInTheBodyAndNoWeightIsLost) {
    forCars(kAllLayouts, [](const Car& car, CarGenerator& generator) {
        const Car after = changed(car, anyChange(car, generator));
        EXPECT_NEAR(after.cornerWeights.total(), car.cornerWeights.total(), 1e-9);
        EXPECT_NEAR(after.cornerWeights.leftRear / after.cornerWeights.rightRear,
                    car.cornerWeights.leftRear / car.cornerWeights.rightRear, 1e-12);
        EXPECT_NEAR(after.cornerWeights.leftFront / after.cornerWeights.rightFront,
                    car.cornerWeights.leftFront / car.cornerWeights.rightFront, 1e-12);
        for (std::size_t link = 0; link < car.links.size(); ++link) {
            for (std::size_t hole = 0; hole < 2; ++hole) {
                EXPECT_NEAR((gravityOf(after) - sideViewOf(after.links[link].chassis.holes[hole].at)).norm(),
                            (gravityOf(car) - sideViewOf(car.links[link].chassis.holes[hole].at)).norm(),
                            1e-12);
            }
        }
    });
}

void expectSameFigures(const Station& rebased, const Station& travelled) {
    ASSERT_TRUE(rebased.usable);
    ASSERT_TRUE(travelled.usable);
    for (const Figure figure :
         {Figure::icX, Figure::icZ, Figure::swingArmAngle, Figure::antiSquat, Figure::pinion,
          Figure::driveshaft, Figure::pinionToDriveshaft, Figure::frontJoint, Figure::rearJoint}) {
        const double there = travelled[figure];
        EXPECT_NEAR(rebased[figure], there, 1e-9 * std::max(1.0, std::abs(there)))
            << figureTable()[static_cast<std::size_t>(figure)].column;
    }
    EXPECT_NEAR(rebased[Figure::ground], 0, 1e-12) << "the new ground is what it is measured against";
    EXPECT_NEAR(rebased.ground.wheelbase, travelled.ground.wheelbase, 1e-9);
}

TEST(RideChange, TheRebasedCarAtRideIsTheOldOneAtThatTravel) {
    forCars(kAllLayouts, [](const Car& car, CarGenerator& generator) {
        RideChange change = noChange(car);
        change.rearLower = change.frontLower = generator.between(-0.06, 0.06);
        const Station travelled = solveStation(car, change.rearLower);
        expectSameFigures(solveStation(changed(car, change), 0), travelled);
    });
}

TEST(RideChange, AlsoWhereTheFrontMovesDifferently) {
    forCars(kSymmetric, [](Car car, CarGenerator& generator) {
        car.travel.frontRatio = generator.between(-1.0, 1.5);
        RideChange change = noChange(car);
        change.rearLower = generator.between(-0.06, 0.06);
        change.frontLower = car.travel.frontRatio * change.rearLower;
        const Station travelled = solveStation(car, change.rearLower);
        expectSameFigures(solveStation(changed(car, change), 0), travelled);
    });
}

TEST(RideChange, LargerRearTiresAloneLeaveTheInstantCenterInTheBody) {
    forCars(kSymmetric, [](const Car& car, CarGenerator& generator) {
        RideChange change = noChange(car);
        change.rearTireRadius += generator.between(0.005, 0.05);
        const Car after = changed(car, change);
        const Station old = solveStation(car, 0);
        const Station now = solveStation(after, 0);
        for (std::size_t link = 0; link < car.links.size(); ++link) {
            const double before =
                (Eigen::Vector2d(old.icCarX, old.icCarZ) - sideViewOf(car.links[link].chassis.inUse().at))
                    .norm();
            const double distance =
                (Eigen::Vector2d(now.icCarX, now.icCarZ) - sideViewOf(after.links[link].chassis.inUse().at))
                    .norm();
            EXPECT_NEAR(distance, before, 1e-9 * std::max(1.0, before));
        }
        // The line of the axle centers stays; what it makes with the line tangent below both tires does not.
        // Ordinary trigonometry, worked here from the centers.
        const double apart = std::hypot(car.wheelbase - old.pose.x, car.frontTireRadius - old.pose.z);
        const double turned = std::asin((car.frontTireRadius - old.pose.z) / apart) -
                              std::asin((car.frontTireRadius - change.rearTireRadius) / apart);
        EXPECT_NEAR(now[Figure::pinion], old[Figure::pinion] + old[Figure::ground] - turned, 1e-9)
            << "the nose goes down, and pinion and body with it";
        EXPECT_NEAR(after.driveline->outputAngle, car.driveline->outputAngle - turned, 1e-12);
        EXPECT_NEAR(now[Figure::frontJoint], old[Figure::frontJoint], 1e-9);
    });
}

TEST(RideChange, TheStopsStayWhereTheyAre) {
    const Car car = plainCar();
    RideChange change = noChange(car);
    change.rearLower = 0.02;
    const Car after = changed(car, change);
    EXPECT_NEAR(after.travel.bump, car.travel.bump - 0.02, 1e-15);
    EXPECT_NEAR(after.travel.droop, car.travel.droop + 0.02, 1e-15);
}

TEST(RideChange, IsOneEditAndKeepsTheRest) {
    Car car = apply(plainCar(), KeepSetup{"Monday", "2026-11-02", "", nullptr}).car;
    car.target = TargetWindow{1.0, 2.0, 100, 150};
    RideChange change = noChange(car);
    change.rearTireRadius = 14 * kMetresPerInch;
    change.frontLower = -0.5 * kMetresPerInch;
    const EditResult result = apply(car, ChangeRide{change});
    EXPECT_EQ(result.refusal, "");
    EXPECT_EQ(result.car.kept, car.kept);
    EXPECT_EQ(result.car.baseline, car.baseline);
    EXPECT_EQ(result.car.target, car.target);
    EXPECT_EQ(result.car.rearTireRadius, 14 * kMetresPerInch);
    EXPECT_EQ(describe(ChangeRide{change}, car),
              "Change ride: rear tires to radius 14 in, front lower by -1/2 in");
}

void expectRefused(const RideChange& change, const std::string& reason) {
    const CarResult result = changeRide(plainCar(), change);
    EXPECT_FALSE(result.car.has_value());
    EXPECT_NE(result.refusal.find(reason), std::string::npos) << result.refusal;
    EXPECT_TRUE(apply(plainCar(), ChangeRide{change}).car == plainCar());
}

TEST(RideChange, RefusesWhatCannotBe) {
    const RideChange none = noChange(plainCar());
    RideChange change = none;
    change.rearTireRadius = 0;
    expectRefused(change, "rear tire radius: expected a length above 0");
    change = none;
    change.frontTireRadius = std::nan("");
    expectRefused(change, "front tire radius: expected");
    change = none;
    change.rearLower = 0.11;
    expectRefused(change, "past the end of its travel");
    change.rearLower = -0.11;
    expectRefused(change, "past the end of its travel");
    change.rearLower = std::nan("");
    expectRefused(change, "past the end of its travel");
    change = none;
    change.frontLower = 2;
    expectRefused(change, "nose or tail");
    change = none;
    change.rearTireRadius = 3;
    expectRefused(change, "nose or tail");
}

TEST(RideChange, RefusesTravelTheLinksDoNotReach) {
    Car car = plainCar();
    car.travel.bump = car.travel.droop = 1.0;
    RideChange change = noChange(car);
    change.rearLower = 0.9;
    EXPECT_EQ(changeRide(car, change).refusal, "the links do not reach that ride height");
}

TEST(RideChange, RefusesACenterOfGravityThatLeavesTheAxles) {
    Car car = plainCar();
    car.cornerWeights = {4, 4, 900, 900};
    car.cgHeight = 2.0;
    RideChange change = noChange(car);
    change.frontLower = -0.3;
    EXPECT_NE(changeRide(car, change).refusal.find("center of gravity"), std::string::npos);
}

}  // namespace
}  // namespace bolthole
