// Hole combinations counted, and what becomes of the lengths: geometry/combinations/hole_combination.h, by
// hand.
#include "geometry/combinations/hole_combination.h"

#include <gmock/gmock.h>

#include <cmath>
#include <string>
#include <vector>

#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"
#include "tests/support/level_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

AxlePose rideOf(const Car& car) {
    const Station ride = solveStation(car, 0.0);
    EXPECT_TRUE(ride.usable);
    return ride.pose;
}

Car chosen(const Car& car, const HoleUse& use, LengthTreatment treatment) {
    CarResult result = carWithCombination(car, use, treatment);
    EXPECT_EQ(result.refusal, "");
    EXPECT_TRUE(result.car.has_value());
    return result.car.value_or(car);
}

// The first link is slowest and the chassis comes before the axle, like the digits of a number.
TEST(CombinationSpace, CountsLikeDigits) {
    Car car = levelCar();
    car.links[1].chassis.holes.resize(1);
    const CombinationSpace space(car, {});
    ASSERT_EQ(space.count(), 8U);
    std::vector<std::string> counted;
    for (std::uint64_t index = 0; index < space.count(); ++index) {
        const HoleUse use = space.at(index);
        counted.push_back(std::to_string(use.of(0, End::chassis)) + std::to_string(use.of(0, End::axle)) +
                          std::to_string(use.of(1, End::chassis)) + std::to_string(use.of(1, End::axle)));
    }
    EXPECT_THAT(counted, ElementsAre("0000", "0001", "0100", "0101", "1000", "1001", "1100", "1101"));
}

TEST(CombinationSpace, EveryCombinationIsFoundAgain) {
    CarGenerator generator(41);
    for (int layout = 0; layout <= static_cast<int>(Layout::ladderGuide); ++layout) {
        Car car = generator.draw(static_cast<Layout>(layout));
        drillHoles(car, 3, 0.03);
        for (const bool tied : {false, true}) {
            const CombinationSpace space(car, {.tieSides = tied});
            for (std::uint64_t index = 0; index < space.count(); ++index) {
                ASSERT_EQ(space.indexOf(space.at(index)), index) << "layout " << layout;
            }
            ASSERT_EQ(space.at(space.present().value()), holesInUse(car));
        }
    }
}

TEST(CombinationSpace, WhatIsNotInItIsNotFound) {
    const Car car = levelCar();
    const CombinationSpace space(car, {});
    EXPECT_EQ(space.indexOf(useOf({{2, 0}})), std::nullopt);
    EXPECT_EQ(space.indexOf(useOf({{0, 2}})), std::nullopt) << "would carry into the next digit";
    EXPECT_EQ(space.indexOf(useOf({{0, 0}, {0, 0}, {1, 0}})), std::nullopt) << "a hole that is not there";
}

TEST(CombinationSpace, ACarWithoutCombinationHasOne) {
    for (const Car& car : {CarGenerator(1).draw(Layout::threeLink), Car{}}) {
        const CombinationSpace space(car, {});
        EXPECT_EQ(space.count(), 1U);
        EXPECT_EQ(space.at(0), holesInUse(car));
        EXPECT_EQ(space.present(), 0U);
    }
}

TEST(CombinationSpace, CrosswiseLinksCanBeLeftOut) {
    Car car = levelCar();
    drillHoles(car, 3, 0.02);
    EXPECT_EQ(CombinationSpace(car, {}).count(), 729U);
    const CombinationSpace space(car, {.crosswise = false});
    EXPECT_EQ(space.count(), 81U);
    EXPECT_EQ(space.at(80).of(2, End::axle), car.links[2].axle.use) << "stays bolted as it is";
    EXPECT_TRUE(space.present().has_value());
}

TEST(CombinationSpace, CountsUpToItsLimitAndNoFarther) {
    Car car = levelCar();
    const auto countWith = [&car](std::size_t links) {
        car.links.assign(links, makeLink("link", LinkKind::rod, Side::both, {in(20, 18, 7), in(0, 18, 7)}));
        drillHoles(car, kMaxHoles, 0.001);
        return CombinationSpace(car, {}).count();
    };
    EXPECT_EQ(countWith(1), 4096U);
    EXPECT_EQ(countWith(5), std::uint64_t{1} << 60U);
    EXPECT_EQ(countWith(6), CombinationSpace::kCountLimit);
    EXPECT_EQ(countWith(kMaxLinks), CombinationSpace::kCountLimit);
    const CombinationSpace space(car, {});
    EXPECT_EQ(space.indexOf(space.at(space.count() - 1)), space.count() - 1);
}

TEST(CombinationSpace, TiedSidesMoveTogether) {
    Car car = levelCar();
    splitPairs(car);
    drillHoles(car, 2, 0.02);
    EXPECT_EQ(CombinationSpace(car, {}).count(), 1024U);
    const CombinationSpace space(car, {.tieSides = true});
    EXPECT_EQ(space.count(), 64U);
    for (std::uint64_t index = 0; index < space.count(); ++index) {
        const HoleUse use = space.at(index);
        for (const End end : {End::chassis, End::axle}) {
            ASSERT_EQ(use.of(0, end), use.of(1, end));
            ASSERT_EQ(use.of(2, end), use.of(3, end));
        }
    }
    car.links[0].axle.use = 1;
    EXPECT_EQ(CombinationSpace(car, {.tieSides = true}).present(), std::nullopt) << "bolted unlike";
    EXPECT_TRUE(CombinationSpace(car, {}).present().has_value());
}

TEST(MirrorPartners, AreTheSameButForTheirSide) {
    Car car = levelCar();
    splitPairs(car);  // lower left, lower right, upper left, upper right, track bar
    EXPECT_THAT(mirrorPartners(car), ElementsAre(1, 0, 3, 2, -1));
    car.links[3].axle.holes.push_back(car.links[3].axle.holes[0]);
    EXPECT_THAT(mirrorPartners(car), ElementsAre(1, 0, -1, -1, -1)) << "another number of holes";
    car.links[1].kind = LinkKind::pivot;
    EXPECT_THAT(mirrorPartners(car), ElementsAre(-1, -1, -1, -1, -1)) << "another kind";
    EXPECT_THAT(mirrorPartners(levelCar()), ElementsAre(-1, -1, -1)) << "pairs move together as it is";
}

TEST(Treatments, DefaultIsUppersWhereEveryUpperHasAnAdjuster) {
    Car car = levelCar();
    EXPECT_EQ(defaultTreatment(car), LengthTreatment::uppers);
    EXPECT_TRUE(hasUpperRod(car));
    car.links[0].adjuster.reset();
    EXPECT_EQ(defaultTreatment(car), LengthTreatment::uppers) << "a lower needs none";
    car.links[1].adjuster.reset();
    EXPECT_EQ(defaultTreatment(car), LengthTreatment::keep);
    car.links.erase(car.links.begin() + 1);
    EXPECT_EQ(defaultTreatment(car), LengthTreatment::keep);
    EXPECT_FALSE(hasUpperRod(car));
    car.links[0].role = Role::upper;
    EXPECT_TRUE(hasUpperRod(car)) << "the role written overrides";
    car.links[0].kind = LinkKind::pivot;
    EXPECT_FALSE(hasUpperRod(car)) << "a pivot has no length to set";
}

TEST(Treatments, AreNamedAndExplained) {
    EXPECT_EQ(nameOf(LengthTreatment::keep), "keep");
    EXPECT_EQ(nameOf(LengthTreatment::refit), "refit");
    EXPECT_EQ(nameOf(LengthTreatment::uppers), "uppers");
    EXPECT_THAT(std::string(wordsFor(LengthTreatment::keep)), HasSubstr("the axle moves"));
    EXPECT_THAT(std::string(wordsFor(LengthTreatment::refit)), HasSubstr("the axle stays"));
    EXPECT_THAT(std::string(wordsFor(LengthTreatment::uppers)), HasSubstr("the pinion keeps its angle"));
}

// By hand: lowers 2 in higher at the axle run 2 in up over a length kept at 20: their axle end stands
// sqrt(400 - 4) = 19.8997 behind the chassis, 0.1003 forward of where it was, 4 in below the center; the
// uppers hold 6 in above it. To first order the housing turns by 0.1003 / 10 rad nose up.
TEST(Treatments, KeepMovesTheAxle) {
    const Car car = levelCar();
    const Car after = chosen(car, useOf({{0, 1}}), LengthTreatment::keep);
    EXPECT_DOUBLE_EQ(after.links[0].length.value(), 20 * kInch);
    EXPECT_EQ(after.links[1].length, std::nullopt) << "still fits its holes";
    const AxlePose ride = rideOf(after);
    const double forward = 20 - std::sqrt(396.0);
    EXPECT_NEAR(ride.pitch, -forward / 10, 2e-4);
    EXPECT_NEAR(ride.x, 0.6 * forward * kInch, 1e-5);
}

TEST(Treatments, ResetLeavesTheAxleAndSetsTheRods) {
    Car car = levelCar();
    car.links[0].length = 20.125 * kInch;  // built long: the axle does not stand where it was measured
    const Car after = chosen(car, useOf({{0, 1}, {1, 0}}), LengthTreatment::refit);
    EXPECT_NEAR(after.links[0].length.value(), std::sqrt(404.0) * kInch, 1e-15);
    EXPECT_EQ(after.links[1].length, std::nullopt);
    const AxlePose ride = rideOf(after);
    EXPECT_NEAR(ride.x, 0, 1e-12);
    EXPECT_NEAR(ride.pitch, 0, 1e-12);
}

TEST(Treatments, ResetNeedsNoAdjuster) {
    Car car = levelCar();
    car.links[0].adjuster.reset();
    const Car after = chosen(car, useOf({{0, 1}}), LengthTreatment::refit);
    EXPECT_NEAR(holeDistance(after.links[0]), std::sqrt(404.0) * kInch, 1e-15);
    EXPECT_NEAR(rideOf(after).x, 0, 1e-12);
}

TEST(Treatments, ResetMovesAPivotsPointOnItsArm) {
    Car car = CarGenerator(5).draw(Layout::ladderGuide);
    car.links[0].chassis.holes.push_back({-1, "high", car.links[0].chassis.holes[0].at + in(0, 0, 1)});
    const HoleUse use = useOf({{1, 0}});
    const Car after = chosen(car, use, LengthTreatment::refit);
    EXPECT_EQ(after.links[0].axle.holes[0].at, after.links[0].chassis.holes[1].at);
    EXPECT_NEAR(rideOf(after).pitch, 0, 1e-12);
    const Car kept = chosen(car, use, LengthTreatment::keep);
    EXPECT_EQ(kept.links[0].axle.holes[0].at, car.links[0].axle.holes[0].at);
    EXPECT_LT(rideOf(kept).pitch, -0.02) << "the arm's front goes up by an inch, the nose with it";
}

// By hand: the lowers keep 20 in over a rise of 2, so the housing goes forward by 20 - sqrt(396) without
// turning, and the uppers, level, are that much shorter. (The track bar, dragged along, pulls sideways by
// 0.0001 in, which moves nothing here by more than 1e-10 m.)
TEST(Treatments, UppersHoldThePinionsAngle) {
    const Car car = levelCar();
    const Car after = chosen(car, useOf({{0, 1}}), LengthTreatment::uppers);
    const double forward = 20 - std::sqrt(396.0);
    EXPECT_DOUBLE_EQ(after.links[0].length.value(), 20 * kInch);
    EXPECT_NEAR(after.links[1].length.value(), (15 - forward) * kInch, 1e-10);
    const AxlePose ride = rideOf(after);
    EXPECT_NEAR(ride.pitch, 0, 1e-12);
    EXPECT_NEAR(ride.x, forward * kInch, 1e-10);
}

// A lower 0.1 in long on the left alone: the axle yaws, and each upper, named for its side, follows. Nothing
// holds the axle sideways but the splayed uppers, which give way: y stays at 0.
TEST(Treatments, UppersFollowTheLowersYaw) {
    Car car = levelCar();
    car.links.pop_back();
    car.links[1].axle.holes[0].at.y() = 6 * kInch;
    splitPairs(car);
    car.links[0].length = 20.1 * kInch;
    const Car after = chosen(car, holesInUse(car), LengthTreatment::uppers);
    const AxlePose ride = rideOf(after);
    EXPECT_NEAR(ride.pitch, 0, 1e-12);
    EXPECT_NEAR(ride.y, 0, 1e-12);
    EXPECT_NEAR(ride.x, -0.05 * kInch, 1e-6);
    EXPECT_NEAR(ride.yaw, 0.1 / 36, 1e-6) << "the left side goes back by 0.1 in over 36 in of spacing";
    EXPECT_EQ(after.links[0].length, 20.1 * kInch);
    EXPECT_EQ(after.links[1].length, std::nullopt);
}

// The track bar is level and 40 in long; its axle end 1 in lower needs 40.0125 in: kept at 40 it pulls the
// axle 0.0125 in to the left.
TEST(Treatments, UppersTakeThePlaceSidewaysFromTheTrackBar) {
    Car car = levelCar();
    car.links[2].axle.holes.push_back({-1, "low", in(-5, -20, 12)});
    const Car after = chosen(car, useOf({{0, 0}, {0, 0}, {0, 1}}), LengthTreatment::uppers);
    const AxlePose ride = rideOf(after);
    EXPECT_NEAR(ride.y, (40 - std::sqrt(1599.0)) * kInch, 1e-9);
    EXPECT_NEAR(ride.pitch, 0, 1e-9);
    EXPECT_EQ(after.links[2].length, 40 * kInch);
}

TEST(CarWithCombination, RefusesWhatIsNotThere) {
    Car car = levelCar();
    const auto refusalOf = [&car](const HoleUse& use, LengthTreatment treatment) {
        const CarResult result = carWithCombination(car, use, treatment);
        EXPECT_FALSE(result.car.has_value());
        return result.refusal;
    };
    EXPECT_EQ(refusalOf(useOf({{0, 2}}), LengthTreatment::keep), "'lower' has no hole 3 at the axle");
    EXPECT_EQ(refusalOf(useOf({{0, 0}, {5, 0}}), LengthTreatment::refit),
              "'upper' has no hole 6 at the chassis");
    car.links.erase(car.links.begin() + 1);
    EXPECT_EQ(refusalOf({}, LengthTreatment::uppers),
              "this car has no upper link to refit; expected keep or refit");
}

TEST(CarWithCombination, RefusesLowersThatCannotReach) {
    Car car = levelCar();
    car.links[0].chassis.holes.push_back({-1, "far", in(20, 18, 40)});  // 33 in above a 20 in rod's other end
    const CarResult result = carWithCombination(car, useOf({{2, 0}}), LengthTreatment::uppers);
    EXPECT_FALSE(result.car.has_value());
    EXPECT_THAT(result.refusal, HasSubstr("the lower rods can't be assembled at ride"));
    EXPECT_TRUE(carWithCombination(car, useOf({{2, 0}}), LengthTreatment::refit).car.has_value());
}

TEST(CarWithCombination, ThePresentCombinationChangesNothing) {
    CarGenerator generator(43);
    for (int layout = 0; layout <= static_cast<int>(Layout::ladderGuide); ++layout) {
        Car car = generator.draw(static_cast<Layout>(layout));
        for (const LengthTreatment treatment :
             {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
            if (treatment != LengthTreatment::uppers || hasUpperRod(car)) {
                EXPECT_EQ(chosen(car, holesInUse(car), treatment), car) << "layout " << layout;
            }
        }
    }
}

TEST(CarWithCombination, BoltsAndNothingElse) {
    Car car = levelCar();
    car.title = "Title";
    car.target = TargetWindow{.icNear = 1.0, .icFar = 2.0, .antiSquatLow = 90, .antiSquatHigh = 120};
    Car after = chosen(car, useOf({{1, 0}, {0, 1}}), LengthTreatment::keep);
    EXPECT_EQ(holesInUse(after), useOf({{1, 0}, {0, 1}}));
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        after.links[link].length = car.links[link].length;
        after.links[link].chassis.use = after.links[link].axle.use = 0;
    }
    EXPECT_EQ(after, car);
}

// Half an inch of thread was held at 20 in; the rod goes to sqrt(404): what was measured stays what it was.
TEST(CarWithCombination, AMeasuredEngagementKeepsItsLength) {
    Car car = levelCar();
    car.links[0].adjuster->engagement = 0.5 * kInch;
    const Car after = chosen(car, useOf({{0, 1}}), LengthTreatment::refit);
    EXPECT_EQ(after.links[0].adjuster->engagementAt, 20 * kInch);
    EXPECT_EQ(after.links[1].adjuster->engagementAt, std::nullopt) << "none was measured";
    const Car kept = chosen(car, useOf({{0, 1}}), LengthTreatment::keep);
    EXPECT_EQ(kept.links[0].adjuster->engagementAt, std::nullopt) << "the length is the one it was";
    const Car back = chosen(after, useOf({{0, 0}}), LengthTreatment::refit);
    EXPECT_EQ(back.links[0].adjuster->engagementAt, 20 * kInch);
}

}  // namespace
}  // namespace bolthole
