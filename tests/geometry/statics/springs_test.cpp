// Springs, shocks, stops and straps through the travel.
#include "geometry/statics/springs.h"

#include <gmock/gmock.h>

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "tests/support/car_generator.h"
#include "tests/support/level_car.h"
#include "tests/support/made_parts.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

constexpr std::array kLayouts{Layout::triangulated,
                              Layout::apart,
                              Layout::threeLink,
                              Layout::torqueArm,
                              Layout::parallel,
                              Layout::parallelTrackBar,
                              Layout::triangulatedTrackBar,
                              Layout::ladderGuide};
constexpr double kLink = 0.5;  // m

// Level links all of one length, held sideways by a guide: the axle never pitches, and rising by z it moves
// forward on their circle.
Car circlingCar() {
    Car car = levelCar();
    const double radius = car.rearTireRadius;
    car.links[2] = makeLink("guide", LinkKind::guide, Side::center, {{0, 0, radius}, {0, 0, radius}});
    car.links[0].chassis.holes[0].at.x() = kLink;
    car.links[1].chassis.holes[0].at.x() = kLink;
    car.travel = {.bump = 0.08, .droop = 0.08, .steps = 33};
    return car;
}

double forwardAt(double travel) {
    return kLink - std::sqrt(kLink * kLink - travel * travel);
}

// From the axle's center plane at `y`, `tall` m straight up.
SuspensionPart upright(PartKind kind, double y, double tall) {
    const double center = circlingCar().rearTireRadius;
    return makePart("made", kind, Side::both, {{0, y, center + tall}, {0, y, center}});
}

// Length of such a part at a travel, by hand.
double uprightLength(double tall, double travel) {
    return std::hypot(forwardAt(travel), tall - travel);
}

}  // namespace

// By hand: a spring that leans sideways by s on a height of h, L long, on an axle that goes straight up:
// motion ratio h/L, and for one wheel k (h/L)^2 - F (s/L)^2/L. The links' circle turns no part of it.
TEST(Springs, LeaningSpringByHand) {
    const Car car = circlingCar();
    const double s = 0.12;
    const double h = 0.28;
    const double length = std::hypot(s, h);
    SuspensionPart spring = upright(PartKind::spring, 0.5, h);
    spring.chassis.holes[0].at.y() -= s;
    spring.rate = 30e3;
    spring.freeLength = length + 0.13;
    const SpringSweep sweep = computeSprings(car, std::array{spring});
    const std::size_t ride = 16;
    ASSERT_EQ(sweep.travel[ride], 0);
    ASSERT_EQ(sweep.row(ride).size(), 2U);
    for (const LineFigures& line : sweep.row(ride)) {
        EXPECT_NEAR(line.length, length, 1e-12);
        EXPECT_NEAR(line.motionRatio, h / length, 1e-12);
        EXPECT_NEAR(line.force, 30e3 * 0.13, 1e-6);
        EXPECT_NEAR(line.rate, 30e3 * h * h / length / length - 30e3 * 0.13 * s * s / std::pow(length, 3),
                    1e-2);
    }
    EXPECT_NEAR(sweep.wheelRate(ride), sweep.row(ride)[0].rate, 1e-9);
}

// By hand: two upright springs a base b apart are k each in travel and k b^2/2 in roll.
TEST(Springs, UprightSpringsByHand) {
    SuspensionPart spring = upright(PartKind::coilOver, 0.45, 0.3);
    spring.rate = 25e3;
    spring.freeLength = 0.45;
    const auto rates = springRates(circlingCar(), std::array{spring}, 0);
    ASSERT_TRUE(rates.has_value());
    EXPECT_NEAR(rates->wheel, 25e3, 1e-2);
    ASSERT_TRUE(rates->roll.has_value());
    EXPECT_NEAR(*rates->roll, 25e3 * 0.9 * 0.9 / 2, 1e-2);
}

// The slope of the lengths of solved poses is the motion ratio, and of force times motion ratio the rate.
TEST(Springs, MotionRatioAndRateAreSlopes) {
    for (const Layout layout : kLayouts) {
        CarGenerator generator(300 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < 12; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            Car car = generator.draw(layout);
            car.travel = {.bump = 0.08, .droop = 0.08, .steps = 321};
            const std::array parts{drawSprings(generator, car.rearTireRadius)};
            const SpringSweep sweep = computeSprings(car, parts);
            const double step = sweep.travel[1] - sweep.travel[0];
            const auto slope = [&](std::size_t row, std::size_t line, auto value) {
                const auto at = [&](std::size_t of) { return value(sweep.row(of)[line]); };
                return (8 * (at(row + 1) - at(row - 1)) - (at(row + 2) - at(row - 2))) / (12 * step);
            };
            for (std::size_t row = 2; row + 2 < sweep.travel.size(); row += 12) {
                for (std::size_t line = 0; line < 2; ++line) {
                    const LineFigures& at = sweep.row(row)[line];
                    EXPECT_NEAR(at.motionRatio,
                                -slope(row, line, [](const LineFigures& of) { return of.length; }), 1e-8);
                    const auto push = [](const LineFigures& of) { return of.force * of.motionRatio; };
                    EXPECT_NEAR(at.rate, slope(row, line, push), 1e-6 * *parts[0].rate);
                }
            }
        }
    }
}

// What the wheels put in over the travel is what the springs hold: k stretch^2/2.
TEST(Springs, WorkOverTheTravelIsTheSpringsEnergy) {
    CarGenerator generator(310);
    for (int number = 0; number < 20; ++number) {
        Car car = generator.draw(Layout::apart);
        car.travel.steps = 101;
        const std::array parts{drawSprings(generator, car.rearTireRadius)};
        const SpringSweep sweep = computeSprings(car, parts);
        const double step = sweep.travel[1] - sweep.travel[0];
        double work = 0;
        double energy = 0;
        for (std::size_t row = 0; row < 101; ++row) {
            const double weight = row == 0 || row == 100 ? 1 : row % 2 == 1 ? 4 : 2;  // Simpson
            for (const LineFigures& line : sweep.row(row)) {
                work += weight * step / 3 * line.force * line.motionRatio;
                const double stored = line.force * line.force / (2 * *parts[0].rate);
                energy += row == 0 ? -stored : row == 100 ? stored : 0;
            }
        }
        EXPECT_NEAR(work / energy, 1, 1e-8);
    }
}

// By hand: a stop leaning forward by `lean`, squeezed by how far its pad comes along that line, which stays
// in the chassis. The pad moves forward by x(z) on the links' circle: squeeze s = x sin + z cos - gap. The
// wheel rate is the second difference of its energy k s^2/2 over the travel, and rises as the circle turns
// the pad into the stop. Along the line between the mounts it would fall: that line leans over ever more, the
// shorter it gets.
TEST(Springs, ASqueezedBumpStopsWheelRateIsItsEnergysAndRises) {
    Car car = circlingCar();
    car.travel = {.bump = 0.12, .droop = 0.01, .steps = 14};
    const double lean = 0.25;
    const double apart = 0.14;
    const double gap = 0.05;
    SuspensionPart stop = upright(PartKind::bumpStop, 0.4, apart * std::cos(lean));
    stop.chassis.holes[0].at.x() = apart * std::sin(lean);
    stop.rate = 80e3;
    stop.freeLength = apart - gap;
    const SpringSweep sweep = computeSprings(car, std::array{stop});
    const auto energyAt = [&](double z) {
        const double squeeze = forwardAt(z) * std::sin(lean) + z * std::cos(lean) - gap;
        return squeeze < 0 ? 0 : 80e3 * squeeze * squeeze / 2;
    };
    const double h = 1e-3;
    double before = 0;
    int squeezed = 0;
    for (std::size_t row = 0; row < sweep.travel.size(); ++row) {
        const double at = sweep.travel[row];
        if (at < gap / std::cos(lean) + 3 * h) {
            continue;
        }
        const double second = (16 * (energyAt(at + h) + energyAt(at - h)) - energyAt(at + 2 * h) -
                               energyAt(at - 2 * h) - 30 * energyAt(at)) /
                              (12 * h * h);
        EXPECT_NEAR(sweep.wheelRate(row) / second, 1, 1e-6) << at;
        EXPECT_GT(sweep.wheelRate(row), before) << at;
        before = sweep.wheelRate(row);
        ++squeezed;
    }
    EXPECT_GE(squeezed, 6);
}

// In roll too, the rate is the slope of the springs' moment: their energy's second difference.
TEST(Springs, RollRateIsTheSecondDifferenceOfEnergy) {
    CarGenerator generator(311);
    for (const Layout layout : {Layout::triangulated, Layout::threeLink, Layout::parallelGuide}) {
        for (int number = 0; number < 10; ++number) {
            const Car car = generator.draw(layout);
            const std::array parts{drawSprings(generator, car.rearTireRadius)};
            std::vector<PartLine> lines;
            buildPartLines(parts, car.rearTireRadius, lines);
            AxleSolver solver(buildLinkage(car), Drive::roll);
            ASSERT_TRUE(solver.assemble().usable());
            const auto energyAt = [&](double roll) {
                AxleSolver rolled = solver;
                EXPECT_TRUE(rolled.moveTo(0.02, roll).usable());
                double sum = 0;
                for (const PartLine& line : lines) {
                    const double length = (rolled.pose().carry(line.onAxle) - line.onChassis).norm();
                    const double force = parts[0].force(length);
                    sum += force * force / (2 * *parts[0].rate);
                }
                return sum;
            };
            const double h = 4e-3;
            const double second = (16 * (energyAt(h) + energyAt(-h)) - (energyAt(2 * h) + energyAt(-2 * h)) -
                                   30 * energyAt(0)) /
                                  (12 * h * h);
            const auto rates = springRates(car, parts, 0.02);
            ASSERT_TRUE(rates && rates->roll);
            EXPECT_NEAR(*rates->roll / second, 1, 1e-6);
        }
    }
}

TEST(Springs, LooseSpringsAndShocksCarryNothing) {
    SuspensionPart spring = upright(PartKind::spring, 0.5, 0.3);
    spring.rate = 30e3;
    spring.freeLength = 0.26;
    SuspensionPart shock = upright(PartKind::shock, 0.4, 0.4);
    EXPECT_FALSE(springRates(circlingCar(), std::array{spring, shock}, 0).has_value());
    const SpringSweep sweep = computeSprings(circlingCar(), std::array{spring, shock});
    EXPECT_EQ(sweep.row(16)[0].force, 0);
    EXPECT_EQ(sweep.row(16)[2].force, 0);
    EXPECT_GT(sweep.row(32)[0].force, 0) << "in bump it meets again";
    shock.push = 150;
    EXPECT_EQ(computeSprings(circlingCar(), std::array{spring, shock}).row(0)[2].force, 150);
}

TEST(Springs, WhatTheLinksDoNotReachIsAbsent) {
    Car car = circlingCar();
    car.links[0].chassis.holes[0].at.x() = car.links[1].chassis.holes[0].at.x() = 0.06;
    const SuspensionPart spring = upright(PartKind::spring, 0.5, 0.3);
    const SpringSweep sweep = computeSprings(car, std::array{spring});
    EXPECT_TRUE(std::isnan(sweep.row(0)[0].length));
    EXPECT_TRUE(std::isnan(sweep.wheelRate(32)));
    EXPECT_FALSE(std::isnan(sweep.row(16)[0].length));
    EXPECT_FALSE(springRates(car, std::array{spring}, 0.08).has_value());
}

// By hand: the shock closes at 50 mm of bump and opens at 65 mm of droop, the stop, whose axis is upright and
// stays, meets at 30 mm and is solid at 45 mm, the strap is taut at 40 mm.
TEST(TravelRoomTest, ByHand) {
    SuspensionPart shock = upright(PartKind::shock, 0.45, 0.35);
    shock.closedLength = uprightLength(0.35, 0.05);
    shock.openLength = uprightLength(0.35, -0.065);
    SuspensionPart stop = upright(PartKind::bumpStop, 0.4, 0.1);
    stop.freeLength = 0.1 - 0.03;
    stop.closedLength = 0.1 - 0.045;
    SuspensionPart strap = upright(PartKind::strap, 0.3, 0.3);
    strap.openLength = uprightLength(0.3, -0.04);
    const std::array parts{shock, stop, strap};
    const TravelRoom room = travelRoom(circlingCar(), parts);
    ASSERT_TRUE(room.assembled);
    ASSERT_EQ(room.lines.size(), 6U);
    ASSERT_TRUE(room.lines[0].bump && room.lines[0].droop && room.lines[2].bump && room.lines[4].droop);
    EXPECT_NEAR(room.lines[0].length, 0.35, 1e-12);
    EXPECT_NEAR(room.lines[0].bump->travel, 0.05, 1e-6);
    EXPECT_NEAR(room.lines[0].droop->travel, 0.065, 1e-6);
    EXPECT_NEAR(room.lines[2].bump->travel, 0.045, 1e-6);
    EXPECT_FALSE(room.lines[2].droop.has_value());
    ASSERT_TRUE(room.lines[2].free.has_value());
    EXPECT_NEAR(*room.lines[2].free, 0.03, 1e-6);
    EXPECT_NEAR(room.bump.travel, 0.045, 1e-6);
    EXPECT_EQ(room.bump.stop, TravelStop::closed);
    EXPECT_EQ(room.bump.line, 2);
    EXPECT_NEAR(room.droop.travel, 0.04, 1e-6);
    EXPECT_EQ(room.droop.stop, TravelStop::open);
    EXPECT_EQ(room.droop.line, 4);
    const TravelRange cut = cutTo(room, circlingCar().travel);
    EXPECT_NEAR(cut.bump, 0.045, 1e-6);
    EXPECT_NEAR(cut.droop, 0.04, 1e-6);
    EXPECT_EQ(cut.steps, 33);
    EXPECT_EQ(describe(room.bump, true, room, parts, Units::metric),
              "bump stop 'made' (left) is closed at 45.0 mm of bump");
    EXPECT_EQ(describe(room.droop, false, room, parts, Units::metric),
              "strap 'made' (left) is all out at 40.0 mm of droop");
}

TEST(TravelRoomTest, NothingRunsOut) {
    const SuspensionPart shock = upright(PartKind::shock, 0.45, 0.35);
    const TravelRoom room = travelRoom(circlingCar(), std::array{shock});
    EXPECT_EQ(room.bump.stop, TravelStop::range);
    EXPECT_EQ(room.bump.travel, 0.08);
    EXPECT_EQ(cutTo(room, circlingCar().travel), circlingCar().travel);
    EXPECT_THAT(describe(room.droop, false, room, {}, Units::inch), HasSubstr("before the 3.15 in of droop"));
}

// The links' circle of 60 mm ends before the 80 mm entered.
TEST(TravelRoomTest, LinksRunOut) {
    Car car = circlingCar();
    car.links[0].chassis.holes[0].at.x() = car.links[1].chassis.holes[0].at.x() = 0.06;
    const TravelRoom room = travelRoom(car, {});
    EXPECT_EQ(room.bump.stop, TravelStop::links);
    EXPECT_NEAR(room.bump.travel, 0.06, 1e-3);
    EXPECT_LT(room.bump.travel, 0.06);
    EXPECT_THAT(describe(room.bump, true, room, {}, Units::metric), HasSubstr("the links reach no further"));
}

// Limits farther out than the travel entered are found too; they cut nothing.
TEST(TravelRoomTest, LooksFartherThanTheTravelEntered) {
    SuspensionPart shock = upright(PartKind::shock, 0.45, 0.35);
    shock.closedLength = uprightLength(0.35, 0.12);
    const TravelRoom room = travelRoom(circlingCar(), std::array{shock});
    ASSERT_TRUE(room.lines[0].bump.has_value());
    EXPECT_NEAR(room.lines[0].bump->travel, 0.12, 1e-6);
    EXPECT_EQ(room.bump.stop, TravelStop::range);
}

// Past its limit at ride: no bump at all, and droop, which opens it, is free.
TEST(TravelRoomTest, ClosedAlreadyAtRide) {
    SuspensionPart shock = upright(PartKind::shock, 0.45, 0.35);
    shock.closedLength = 0.36;
    shock.openLength = uprightLength(0.35, -0.03);
    const std::array parts{shock};
    const TravelRoom room = travelRoom(circlingCar(), parts);
    EXPECT_EQ(room.bump.travel, 0);
    EXPECT_EQ(room.bump.stop, TravelStop::closed);
    EXPECT_NEAR(room.droop.travel, 0.03, 1e-6);
    EXPECT_EQ(describe(room.bump, true, room, parts, Units::inch), "shock 'made' (left) is closed at ride");
}

TEST(TravelRoomTest, ACarThatCanNotBeAssembledHasNone) {
    Car car = circlingCar();
    car.links.resize(1);
    EXPECT_FALSE(travelRoom(car, {}).assembled);
}

// A pad at its free length exactly at ride meets there.
TEST(TravelRoomTest, MeetsAtRide) {
    SuspensionPart stop = upright(PartKind::bumpStop, 0.4, 0.1);
    stop.freeLength = travelRoom(circlingCar(), std::array{stop}).lines[0].length;
    const TravelRoom room = travelRoom(circlingCar(), std::array{stop});
    ASSERT_TRUE(room.lines[0].free.has_value());
    EXPECT_EQ(*room.lines[0].free, 0);
}

TEST(SuspensionPartTest, RefusesWhatCanNotBe) {
    SuspensionPart part = upright(PartKind::coilOver, 0.4, 0.3);
    EXPECT_EQ(refusal(part), "");
    part.rate = 30e3;
    EXPECT_THAT(refusal(part), HasSubstr("free length beside the rate"));
    part.freeLength = 0.4;
    EXPECT_EQ(refusal(part), "");
    part.closedLength = 0.45;
    EXPECT_THAT(refusal(part), HasSubstr("compressed length below the free length"));
    part.closedLength = 0.25;
    part.openLength = 0.2;
    EXPECT_THAT(refusal(part), HasSubstr("compressed length below the extended length"));
    part.openLength = std::nan("");
    EXPECT_THAT(refusal(part), HasSubstr("above 0"));
    part.openLength = 0.5;
    part.push = INFINITY;
    EXPECT_THAT(refusal(part), HasSubstr("expected a force"));
    part.push = 0;
    part.axle = part.chassis;
    EXPECT_THAT(refusal(part), HasSubstr("at the same place"));
}

TEST(SuspensionPartTest, PairsAreMirrored) {
    const SuspensionPart pair = makePart("a", PartKind::shock, Side::both, {{0.1, 0.3, 0.7}, {0, 0.4, 0.3}});
    const SuspensionPart one =
        makePart("b", PartKind::shock, Side::right, {{0.1, -0.3, 0.7}, {0, -0.4, 0.3}});
    std::vector<PartLine> lines;
    buildPartLines(std::array{pair, one}, 0.33, lines);
    ASSERT_EQ(lines.size(), 3U);
    EXPECT_EQ(lines[0].onAxle, Eigen::Vector3d(0, 0.4, 0.3 - 0.33));
    EXPECT_EQ(lines[1].side, Side::right);
    EXPECT_EQ(lines[1].onAxle, lines[2].onAxle);
    EXPECT_EQ(lines[1].onChassis, lines[2].onChassis);
    EXPECT_EQ(lines[2].part, 1);
}

}  // namespace bolthole
