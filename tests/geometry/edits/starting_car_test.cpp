// Cars to start from: each is a whole car that moves. What a ladder bar, a torque arm and equal parallel
// links do is told by construction, not by the solver.
#include "geometry/edits/starting_car.h"

#include <gmock/gmock.h>

#include <cmath>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/checks/warnings.h"
#include "geometry/edits/edit.h"
#include "geometry/edits/starting_link.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

/// Says that every number was measured as it stands.
void measureAll(Car& car) {
    for (const FieldId& id : startingNumbers(car)) {
        setOrigin(car, id, Origin::measured);
    }
}

using testing::HasSubstr;

std::vector<StartingCar> everyLayout() {
    std::vector<StartingCar> all;
    for (const LinkLayout layout : kLinkLayouts) {
        for (const SidewaysHold sideways : {SidewaysHold::trackBar, SidewaysHold::watts}) {
            if (sideways == SidewaysHold::trackBar || needsSidewaysHold(layout)) {
                all.push_back({.layout = layout, .sideways = sideways});
            }
        }
    }
    return all;
}

void expectWhole(const Car& car) {
    EXPECT_TRUE(findFaults(car).empty());
    const Trace trace = computeTrace(car);
    EXPECT_TRUE(trace.assembly.usable());
    EXPECT_TRUE(trace.bumpEnd.usable());
    EXPECT_TRUE(trace.droopEnd.usable());
    EXPECT_EQ(trace.heldBySymmetry, Freedom::none);
    EXPECT_TRUE(std::isfinite(trace.ride[Figure::antiSquat]));
    for (const Warning& warning : findWarnings(car)) {
        EXPECT_THAT(sentence(warning.finding), HasSubstr("not measured"));
    }
}

TEST(StartingCars, AreNine) {
    EXPECT_EQ(everyLayout().size(), 9U);
}

TEST(StartingCars, AreWholeAndReachTheirTravel) {
    for (StartingCar asked : everyLayout()) {
        for (const Units units : {Units::inch, Units::metric}) {
            SCOPED_TRACE(testing::Message()
                         << static_cast<int>(asked.layout) << ' ' << static_cast<int>(asked.sideways));
            asked.units = units;
            const Car car = startingCar(asked);
            expectWhole(car);
            const double travel = units == Units::inch ? 4 * kInch : 0.1;
            EXPECT_DOUBLE_EQ(car.travel.bump, travel);
            EXPECT_DOUBLE_EQ(car.travel.droop, travel);
            EXPECT_EQ(findWarnings(car).size(), 1U) << "the remark that nothing was measured";
        }
    }
}

// Common practice, no source: wheelbases of small and long cars, tires of 22 to 34 in.
TEST(StartingCars, FitOtherCars) {
    for (StartingCar asked : everyLayout()) {
        for (const double wheelbase : {90.0, 100.0, 120.0, 140.0}) {
            for (const double radius : {11.0, 13.0, 15.0, 17.0}) {
                SCOPED_TRACE(testing::Message()
                             << static_cast<int>(asked.layout) << ' ' << static_cast<int>(asked.sideways)
                             << ' ' << wheelbase << ' ' << radius);
                asked.wheelbase = wheelbase * kInch;
                asked.rearTireRadius = radius * kInch;
                asked.frontTireRadius = (radius - 1) * kInch;
                expectWhole(startingCar(asked));
            }
        }
    }
}

// Common practice, no source: what a street or strip car starts from lies between 80 and 160 % at ride.
TEST(StartingCars, ArePlausible) {
    for (const StartingCar& asked : everyLayout()) {
        const Trace trace = computeTrace(startingCar(asked));
        EXPECT_GT(trace.ride[Figure::antiSquat], 80) << static_cast<int>(asked.layout);
        EXPECT_LT(trace.ride[Figure::antiSquat], 160) << static_cast<int>(asked.layout);
        EXPECT_LT(trace.largestBind, 0.0016) << static_cast<int>(asked.layout);
    }
}

TEST(StartingCars, SayThatNobodyMeasuredThemUntilTheLastIsTyped) {
    Car car = startingCar({});
    EXPECT_EQ(car.notes, "");
    std::vector<FieldId> left = startingNumbers(car);
    for (; !left.empty(); left = startingNumbers(car)) {
        const std::vector<Warning> warnings = findWarnings(car);
        ASSERT_EQ(warnings.size(), 1U);
        EXPECT_EQ(warnings[0].id, left.front());
        EXPECT_THAT(sentence(warnings[0].finding), HasSubstr(std::to_string(left.size()) + " number"));
        car = apply(car, SetNumber{left.front(), *numberAt(car, left.front())}).car;
    }
    EXPECT_TRUE(findWarnings(car).empty());
}

// An arm rigid with the axle and pinned to the body turns about its pin: that is the instant center.
TEST(StartingCars, ALadderBarsCenterIsItsFrontPivot) {
    const Car car = startingCar({.layout = LinkLayout::ladderBars, .sideways = SidewaysHold::watts});
    const Eigen::Vector3d& pivot = car.links[0].chassis.holes[0].at;
    for (const double travel : {-0.1, -0.04, 0.0, 0.05, 0.1}) {
        const Station station = solveStation(car, travel);
        ASSERT_TRUE(station.usable);
        EXPECT_NEAR(station.icCarX, pivot.x(), 1e-9);
        EXPECT_NEAR(station.icCarZ, pivot.z(), 1e-9);
        const double apart = std::hypot(station.pose.x - pivot.x(), station.pose.z - pivot.z());
        EXPECT_NEAR(apart, std::hypot(pivot.x(), pivot.z() - car.rearTireRadius), 1e-12);
    }
}

// The slider's point moves fore and aft only, so the center stands straight over or under it; the lowers'
// line goes through it too. Worked here from the points as they stand after the travel.
TEST(StartingCars, ATorqueArmsCenterIsWhereItsVerticalMeetsTheLowersLine) {
    const Car car = startingCar({.layout = LinkLayout::torqueArm, .sideways = SidewaysHold::watts});
    const Eigen::Vector3d center(0, 0, car.rearTireRadius);
    const Link& lower = car.links[0];
    ASSERT_EQ(car.links[1].kind, LinkKind::slider);
    for (const double travel : {-0.1, -0.04, 0.0, 0.05, 0.1}) {
        const Station station = solveStation(car, travel);
        ASSERT_TRUE(station.usable);
        const Eigen::Vector3d front = station.pose.carry(car.links[1].axle.holes[0].at - center);
        const Eigen::Vector3d rear = station.pose.carry(lower.axle.holes[0].at - center);
        const Eigen::Vector3d& body = lower.chassis.holes[0].at;
        const double slope = (body.z() - rear.z()) / (body.x() - rear.x());
        EXPECT_NEAR(station.icCarX, front.x(), 1e-9);
        EXPECT_NEAR(station.icCarZ, rear.z() + slope * (front.x() - rear.x()), 1e-9);
    }
}

// A parallelogram carries its coupler without turning it.
TEST(StartingCars, EqualParallelLinksDoNotTurnTheAxle) {
    Car car = startingCar({.layout = LinkLayout::parallelFourLink, .sideways = SidewaysHold::watts});
    const Eigen::Vector3d up(0, 0, 9 * kInch);
    Link& upper = car.links[1];
    upper.chassis.holes[0].at = car.links[0].chassis.holes[0].at + up;
    upper.axle.holes[0].at = car.links[0].axle.holes[0].at + up;
    for (const double travel : {-0.1, -0.05, 0.05, 0.1}) {
        const Station station = solveStation(car, travel);
        ASSERT_TRUE(station.usable);
        EXPECT_NEAR(station.pose.pitch, 0, 1e-11);
    }
}

// The splayed uppers' crossing in plan holds the axle: without them nothing would.
TEST(StartingCars, ATriangulatedFourLinkNeedsNothingElseSideways) {
    Car car = startingCar({});
    EXPECT_EQ(car.links.size(), 2U);
    EXPECT_FALSE(needsSidewaysHold(LinkLayout::triangulatedFourLink));
    car.links[1].axle.holes[0].at.y() = car.links[1].chassis.holes[0].at.y();
    car.links[0].axle.holes[0].at.y() = car.links[0].chassis.holes[0].at.y();
    EXPECT_EQ(computeTrace(car).heldBySymmetry, Freedom::sideways);
}

TEST(StartingLinks, HaveNamesOfTheirOwnAndTheCarTakesThem) {
    Car car = startingCar({});
    for (int pattern = 0; pattern < static_cast<int>(LinkPattern::count); ++pattern) {
        const EditResult result = apply(car, AddLink{startingLink(car, static_cast<LinkPattern>(pattern))});
        ASSERT_EQ(result.refusal, "") << pattern;
        car = result.car;
    }
    EXPECT_EQ(car.links[2].name, "lower 2");
    EXPECT_EQ(car.links[3].name, "lower 3");
    EXPECT_EQ(car.links.back().name, "Watts guide");
}

TEST(StartingLinks, TurnIntoEveryKindAndTheCarTakesThem) {
    const Car car = startingCar({.layout = LinkLayout::torqueArm, .sideways = SidewaysHold::watts});
    for (int index = 0; index < 3; ++index) {
        for (const LinkKind kind : {LinkKind::rod, LinkKind::pivot, LinkKind::slider, LinkKind::guide}) {
            const Link turned = turnedInto(car, car.links[static_cast<std::size_t>(index)], kind);
            EXPECT_EQ(turned.kind, kind);
            EXPECT_EQ(apply(car, ChangeLink{index, turned}).refusal, "");
            if (kind != LinkKind::rod) {
                EXPECT_EQ(turned.axle.inUse().at, turned.chassis.inUse().at);
            }
        }
    }
}

// A rod made an arm is pinned where its front was.
TEST(StartingLinks, ARodBecomesAnArmFromItsFront) {
    const Car car = startingCar({});
    const Link arm = turnedInto(car, car.links[0], LinkKind::pivot);
    EXPECT_EQ(arm.chassis.holes[0].at, car.links[0].chassis.holes[0].at);
    EXPECT_EQ(arm.axle.holes[0].at, car.links[0].chassis.holes[0].at);
    EXPECT_EQ(turnedInto(car, car.links[0], LinkKind::rod), car.links[0]);
}

TEST(StartingLinks, MoveToOtherSides) {
    const Car car = startingCar({.layout = LinkLayout::threeLink});
    const Link& lower = car.links[0];
    const Link right = movedTo(car, lower, Side::right);
    EXPECT_EQ(right.axle.holes[0].at, mirrored(lower.axle.holes[0].at));
    EXPECT_EQ(movedTo(car, right, Side::both), lower);
    EXPECT_EQ(movedTo(car, lower, Side::left).axle, lower.axle);
    EXPECT_EQ(movedTo(car, lower, Side::center).axle.holes[0].at.y(), 0);
    EXPECT_GT(movedTo(car, car.links[1], Side::both).axle.holes[0].at.y(), 0.3);
    EXPECT_LT(movedTo(car, car.links[1], Side::right).axle.holes[0].at.y(), -0.3);
    const Link& bar = car.links[2];
    EXPECT_EQ(movedTo(car, bar, Side::left).axle, bar.axle) << "a crosswise rod keeps its ends";
}

// What is under-held or held more than once leads to a link.
TEST(HeldWarnings, LeadToALink) {
    Car car = startingCar({});
    measureAll(car);
    car.links.pop_back();
    std::vector<Warning> warnings = findWarnings(car);
    ASSERT_EQ(warnings.size(), 1U);
    EXPECT_THAT(sentence(warnings[0].finding), HasSubstr("turning over"));
    EXPECT_EQ(warnings[0].id.field, Field::holeAt);
    EXPECT_EQ(warnings[0].id.link, 0);

    car = startingCar({.layout = LinkLayout::ladderBars});
    measureAll(car);
    car.links.pop_back();
    warnings = findWarnings(car);
    ASSERT_EQ(warnings.size(), 1U);
    EXPECT_THAT(sentence(warnings[0].finding), HasSubstr("laterally"));
    EXPECT_EQ(warnings[0].id.link, 0);

    car = startingCar({.layout = LinkLayout::parallelFourLink, .sideways = SidewaysHold::watts});
    measureAll(car);
    car.links.push_back(startingLink(car, LinkPattern::torqueArm));
    measureAll(car);
    warnings = findWarnings(car);
    ASSERT_FALSE(warnings.empty());
    EXPECT_THAT(sentence(warnings.back().finding), HasSubstr("hold the axle more than once"));
    EXPECT_EQ(warnings.back().id.field, Field::holeAt);
    EXPECT_GE(warnings.back().id.link, 0);
    EXPECT_EQ(warnings.back().path, "links[" + std::to_string(warnings.back().id.link) + "]");
}

// A car that can't be computed can be saved and not opened again: it is never started.
TEST(StartingCars, NumbersThatNothingFitsAreRefused) {
    EXPECT_EQ(refusal(StartingCar{}), "");
    StartingCar giant;
    giant.rearTireRadius = kMaxLength;
    EXPECT_THAT(refusal(giant), HasSubstr("no starting numbers fit that wheelbase and those tires"));
    int fitted = 0;
    for (const LinkLayout layout : kLinkLayouts) {
        for (const double wheelbase : {1e-4, 0.1, 1.0, 2.7, 20.0, 100.0}) {
            for (const double rear : {1e-4, 0.05, 0.34, 2.0, 50.0, 100.0}) {
                for (const double front : {1e-4, 0.3, 100.0}) {
                    StartingCar asked{.layout = layout};
                    asked.wheelbase = wheelbase;
                    asked.rearTireRadius = rear;
                    asked.frontTireRadius = front;
                    const bool fits = refusal(asked).empty();
                    EXPECT_EQ(findFaults(startingCar(asked)).empty(), fits);
                    fitted += fits ? 1 : 0;
                }
            }
        }
    }
    EXPECT_GT(fitted, 100);
}

}  // namespace
}  // namespace bolthole
