// The axle in roll: what its figures must obey whatever the car, and the words.
#include "geometry/kinematics/roll.h"

#include <gmock/gmock.h>

#include <array>
#include <cmath>

#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"
#include "tests/support/plain_car.h"

namespace bolthole {

namespace {

using testing::AnyOf;
using testing::EndsWith;
using testing::StartsWith;

constexpr std::array kHeldInRoll{
    Layout::triangulated,   Layout::apart,         Layout::threeLink,        Layout::torqueArm,
    Layout::wattsThreeLink, Layout::parallelGuide, Layout::parallelTrackBar, Layout::triangulatedTrackBar,
    Layout::ladderGuide};

// Draws cars of every layout that is held in roll; every second one has lengths off from its holes.
template <typename Law>
void forEachCar(int count, const Law& law) {
    for (const Layout layout : kHeldInRoll) {
        CarGenerator generator(400 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < count; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            Car car = generator.draw(layout);
            if (number % 2 == 1) {
                generator.misbuild(car, 0.01);
            }
            law(car);
            if (testing::Test::HasFailure()) {
                return;
            }
        }
    }
}

}  // namespace

TEST(RollTrace, HasAnEvenRowEachHalfDegreeWithRideInTheMiddle) {
    const RollTrace trace = computeRollTrace(CarGenerator(1).draw(Layout::triangulated));
    ASSERT_EQ(trace.rows.size(), 13U);
    for (int row = 0; row < 13; ++row) {
        EXPECT_NEAR(trace.rows[static_cast<std::size_t>(row)].roll, (-3 + 0.5 * row) * kDegree, 1e-16);
        EXPECT_TRUE(trace.rows[static_cast<std::size_t>(row)].usable);
    }
    EXPECT_EQ(trace.rows[6].roll, 0.0);
    EXPECT_EQ(trace.rows[6].pose.y, trace.ride.pose.y);
    EXPECT_EQ(trace.rows[6].center, trace.ride.center);
    EXPECT_TRUE(trace.leftEnd.usable());
    EXPECT_TRUE(trace.rightEnd.usable());
}

TEST(RollTrace, EveryRowIsThePoseSolvedAlone) {
    forEachCar(6, [](const Car& car) {
        const RollTrace trace = computeRollTrace(car);
        for (const std::size_t row : {0U, 4U, 12U}) {
            const RollFigures alone = solveRoll(car, 0.0, trace.rows[row].roll);
            ASSERT_EQ(alone.usable, trace.rows[row].usable);
            EXPECT_NEAR(alone.pose.y, trace.rows[row].pose.y, 1e-10);
            EXPECT_NEAR(alone.center, trace.rows[row].center, 1e-8);
            EXPECT_NEAR(alone.bind, trace.rows[row].bind, 1e-10);
        }
        const RollFigures low = trace.travel.front();
        EXPECT_NEAR(low.travel, -car.travel.droop, 1e-15);
        EXPECT_NEAR(solveRoll(car, low.travel, 0).squareCenter, low.squareCenter, 1e-8);
    });
}

// The two rates against the quotient of small differences of solved poses, Richardson's extrapolation.
TEST(RollFigures, RatesAreThoseOfThePoses) {
    forEachCar(10, [](const Car& car) {
        const double roll = 1.5 * kDegree;
        const RollFigures at = solveRoll(car, 0.0, roll);
        const auto quotient = [&](double step, double AxlePose::*part) {
            return (solveRoll(car, 0.0, roll + step).pose.*part -
                    solveRoll(car, 0.0, roll - step).pose.*part) /
                   (2 * step);
        };
        const auto rate = [&](double AxlePose::*part) {
            return (4 * quotient(0.002, part) - quotient(0.004, part)) / 3;
        };
        EXPECT_NEAR(at.center, car.rearTireRadius + rate(&AxlePose::y), 1e-7);
        EXPECT_NEAR(at.steer, rate(&AxlePose::yaw), 1e-7);
    });
}

// Without roll: with it the rate of the turn about the upright is no longer all there is.
TEST(RollFigures, HeadingIsTheRateOfWhereTheAxlePoints) {
    forEachCar(10, [](const Car& car) {
        const auto quotient = [&](double step) {
            return (headingOf(solveRoll(car, 0.0, step).pose) - headingOf(solveRoll(car, 0.0, -step).pose)) /
                   (2 * step);
        };
        EXPECT_NEAR(solveRoll(car, 0.0, 0.0).heading, (4 * quotient(0.002) - quotient(0.004)) / 3, 1e-6);
    });
    AxlePose pose;
    pose.yaw = 0.02;
    EXPECT_NEAR(headingOf(pose), 0.02, 1e-15);
    pose.pitch = 0.3;
    EXPECT_NEAR(headingOf(pose), 0.02, 1e-15) << "a pitched housing turns about the axle's own line";
}

TEST(RollFigures, LeftAndRightSwapWithTheMirroredCar) {
    forEachCar(8, [](Car car) {
        const RollTrace trace = computeRollTrace(car);
        mirror(car);
        const RollTrace mirrored = computeRollTrace(car);
        for (std::size_t row = 0; row < trace.rows.size(); ++row) {
            const RollFigures& one = trace.rows[row];
            const RollFigures& other = mirrored.rows[trace.rows.size() - 1 - row];
            EXPECT_NEAR(one.pose.y, -other.pose.y, 1e-9);
            EXPECT_NEAR(one.pose.yaw, -other.pose.yaw, 1e-9);
            EXPECT_NEAR(one.center, other.center, 1e-8);
            EXPECT_NEAR(one.steer, other.steer, 1e-8);
            EXPECT_NEAR(one.bind, other.bind, 1e-9);
        }
    });
}

// The point of the axle that a guide holds does not move sideways, so the roll axis runs through it. Common
// knowledge of roll centers: Gillespie, "Fundamentals of Vehicle Dynamics", ch. 7, from memory, no page.
TEST(RollFigures, TheAxisRunsThroughAGuide) {
    CarGenerator generator(420);
    for (const Layout layout : {Layout::wattsThreeLink, Layout::torqueArm, Layout::ladderGuide}) {
        for (int number = 0; number < 20; ++number) {
            const Car car = generator.draw(layout);
            const RollFigures ride = computeRollTrace(car).ride;
            const Eigen::Vector3d guide = car.links.back().axle.inUse().at;
            EXPECT_NEAR(ride.center + std::tan(ride.axisAngle) * guide.x(), guide.z(), 1e-9);
            EXPECT_NEAR(std::tan(ride.axisAngle), ride.steer, 1e-12);
        }
    }
}

// And through a track bar that lies level and square to the car: both from memory as above.
TEST(RollFigures, TheAxisRunsThroughALevelTrackBar) {
    CarGenerator generator(421);
    for (int number = 0; number < 20; ++number) {
        Car car = generator.draw(Layout::threeLink);
        Link& bar = car.links.back();
        const Eigen::Vector3d onAxle = bar.axle.inUse().at;
        bar.chassis.holes[0].at.x() = onAxle.x();
        bar.chassis.holes[0].at.z() = onAxle.z();
        const RollFigures ride = computeRollTrace(car).ride;
        EXPECT_NEAR(ride.center + std::tan(ride.axisAngle) * onAxle.x(), onAxle.z(), 1e-9);
    }
}

// A housing that stands pitched is no other axle: the same car measured anew at that pose has the same axis
// and heading, and its own pitch is zero.
TEST(RollFigures, HeadingAndAxisDoNotDependOnWhereTheHousingWasMeasured) {
    CarGenerator generator(422);
    for (int number = 0; number < 20; ++number) {
        Car car = generator.draw(Layout::triangulated);
        generator.misbuild(car, 0.01);
        const RollFigures ride = computeRollTrace(car).ride;
        Car anew = car;
        for (Link& link : anew.links) {
            Eigen::Vector3d& at = link.axle.holes[0].at;
            at = ride.pose.carry(at - Eigen::Vector3d(0, 0, car.rearTireRadius));
            at.x() -= ride.pose.x;
            link.chassis.holes[0].at.x() -= ride.pose.x;
            link.length.reset();
        }
        const RollFigures again = computeRollTrace(anew).ride;
        EXPECT_GT(std::abs(ride.pose.pitch), 1e-5);
        EXPECT_NEAR(again.pose.pitch, 0, 1e-12);
        EXPECT_NEAR(again.steer, ride.heading / std::cos(ride.pose.pitch), 1e-9)
            << "a unit of roll about the pitched axis is its cosine about the car's";
        EXPECT_NEAR(again.axisAngle, ride.axisAngle, 1e-10);
        EXPECT_NEAR(again.squareCenter, ride.squareCenter, 1e-10);
        EXPECT_NEAR(ride.heading, ride.steer - std::sin(ride.pose.pitch), 1e-12);
    }
}

TEST(RollFigures, ATrackBarShiftsTheAxleThroughTravelByItsArc) {
    CarGenerator generator(423);
    for (int number = 0; number < 20; ++number) {
        const Car car = generator.draw(Layout::threeLink);
        const RollTrace trace = computeRollTrace(car);
        const Constraint bar = buildLinkage(car).constraints.back();
        for (const RollFigures& row : trace.travel) {
            ASSERT_TRUE(row.usable);
            EXPECT_NEAR((row.pose.carry(bar.onAxle) - bar.onChassis).norm(), bar.length, 1e-9);
        }
    }
}

TEST(RollTrace, NothingSidewaysIsSaidAndNoRowIsUsable) {
    CarGenerator generator(424);
    const RollTrace trace = computeRollTrace(generator.draw(Layout::parallel));
    EXPECT_EQ(trace.assembly.stop, Stop::underHeld);
    EXPECT_EQ(trace.assembly.freedom, Freedom::sideways);
    ASSERT_EQ(trace.rows.size(), 13U);
    for (const RollFigures& row : trace.rows) {
        EXPECT_FALSE(row.usable);
        EXPECT_TRUE(std::isnan(row.center));
    }
    EXPECT_EQ(trace.rows.front().roll, -3 * kDegree);
    Car car = generator.draw(Layout::wattsThreeLink);
    car.links.pop_back();
    EXPECT_EQ(describeRollEnd(computeRollTrace(car).assembly, car), "nothing holds the axle laterally");
}

// A bar of 20 mm out at the wheel: it hangs plumb once its end has dropped or risen by about its length.
TEST(RollTrace, EndsWhereALinkRunsOutAndSaysSo) {
    Car car = CarGenerator(425).draw(Layout::threeLink);
    const double height = car.rearTireRadius;
    car.links.back().axle.holes[0].at = {-0.14, 0.50, height};
    car.links.back().chassis.holes[0].at = {-0.14, 0.52, height};
    const RollTrace trace = computeRollTrace(car);
    ASSERT_TRUE(trace.assembly.usable());
    ASSERT_FALSE(trace.leftEnd.usable());
    EXPECT_NEAR(trace.leftEnd.roll, std::asin(0.02 / 0.50), 0.2 * kDegree);
    EXPECT_TRUE(trace.rows[10].usable);
    EXPECT_FALSE(trace.rows.back().usable);
    EXPECT_TRUE(std::isnan(trace.rows.back().bind));
    const std::string words = describeRollEnd(trace.leftEnd, car);
    EXPECT_THAT(words, StartsWith("link 'track bar' stops roll at 2."));
    EXPECT_THAT(words, EndsWith("° of body roll to the left"));
    EXPECT_THAT(describeRollEnd(trace.rightEnd, car), EndsWith("° of body roll to the right"));
    car.links.back().chassis.holes[0].at.y() = 1.0;
    EXPECT_EQ(describeRollEnd(computeRollTrace(car).leftEnd, car), "");
}

TEST(RollFigures, ExactlyHeldLinksNeverFight) {
    for (const Layout layout : kHeldInRoll) {
        const Car car = CarGenerator(426).draw(layout);
        const RollTrace trace = computeRollTrace(car);
        const std::vector<LinkMismatch> fight = fightingLinks(buildLinkage(car), trace.rows.back().pose);
        if (isExactlyHeld(layout)) {
            EXPECT_LE(trace.rows.back().bind, kFits);
            EXPECT_TRUE(fight.empty());
        } else {
            ASSERT_FALSE(fight.empty());
            EXPECT_NEAR(std::abs(fight.front().mismatch), trace.rows.back().bind, 1e-12);
        }
    }
}

TEST(RollFigures, SetUpForItLongerThanBuiltIsPlus) {
    const Car car = CarGenerator(427).draw(Layout::parallelGuide);
    const Linkage linkage = buildLinkage(car);
    const RollTrace trace = computeRollTrace(car);
    for (const LinkMismatch& link : fightingLinks(linkage, trace.rows.front().pose)) {
        const Constraint& rod = linkage.constraints[static_cast<std::size_t>(link.constraint)];
        const double apart = (trace.rows.front().pose.carry(rod.onAxle) - rod.onChassis).norm();
        EXPECT_NEAR(link.mismatch, apart - rod.length, 1e-12);
        EXPECT_THAT(constraintWords(rod, car), AnyOf(EndsWith("(left)"), EndsWith("(right)")));
    }
}

TEST(SteerWord, NamesTheSense) {
    EXPECT_EQ(steerWord(0.03), "roll oversteer");
    EXPECT_EQ(steerWord(-0.03), "roll understeer");
    EXPECT_EQ(steerWord(0.0001), "no roll steer");
    EXPECT_EQ(steerWord(std::nan("")), "");
}

// Positive roll is the body rolled left, in a right turn: it lifts the axle's left end against the body.
// Links rising toward the front then carry that end back and the right one forward: the axle steers left, out
// of the turn, which is oversteer. Reimpell, Stoll, Betzler, "The Automotive Chassis", from memory, no page.
TEST(SteerWord, LinksRisingTowardTheFrontSteerOver) {
    for (const double rise : {0.05, -0.05}) {
        Car car = plainCar();
        for (Link& link : car.links) {
            link.length.reset();
        }
        for (int pair = 0; pair < 2; ++pair) {
            Link& link = car.links[static_cast<std::size_t>(pair)];
            const double y = 0.45;
            link.axle.use = 0;
            link.axle.holes[0].at.y() = y;
            link.chassis.holes[0].at.y() = y;
            link.chassis.holes[0].at.z() = link.axle.holes[0].at.z() + rise;
        }
        EXPECT_EQ(steerWord(computeRollTrace(car).ride.steer),
                  rise > 0 ? "roll oversteer" : "roll understeer");
    }
}

}  // namespace bolthole
