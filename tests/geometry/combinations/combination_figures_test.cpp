// What hole combinations come to: geometry/combinations/combination_figures.h, by hand.
#include "geometry/combinations/combination_figures.h"

#include <gmock/gmock.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "tests/support/level_car.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

using testing::ElementsAre;

HoleCombination solved(const Car& car, const HoleUse& use,
                       LengthTreatment treatment = LengthTreatment::refit) {
    CombinationSolver solver(car, treatment);
    HoleCombination combination;
    solver.solve(use, combination);
    return combination;
}

std::uint16_t bitOf(CombinationProblem problem) {
    return static_cast<std::uint16_t>(1U << static_cast<unsigned>(problem));
}

const HoleCombination::Detail& detailOf(const HoleCombination& combination, CombinationProblem problem) {
    return combination.details[static_cast<std::size_t>(problem)];
}

/// That the combination has this problem and no other, at this link, having reached this.
void expectOnly(const HoleCombination& combination, CombinationProblem problem, int link, double value) {
    EXPECT_EQ(combination.problems, bitOf(problem));
    EXPECT_EQ(detailOf(combination, problem).link, link);
    EXPECT_NEAR(static_cast<double>(detailOf(combination, problem).value), value, 1e-6);
}

/// That the car as it stands, and bolted high at the lower axle with its rods reset, has no problem.
void expectNone(const Car& car) {
    EXPECT_EQ(solved(car, holesInUse(car), LengthTreatment::keep).problems, 0);
    EXPECT_EQ(solved(car, useOf({{0, 1}})).problems, 0);
}

const double kHighLength = std::sqrt(404.0) * kInch;  // of the lowers with the axle's high hole

/// A combination with nothing but what ranks it.
HoleCombination ranked(std::uint64_t index, double pinionDegrees, int bolts, int adjusters = 0) {
    HoleCombination combination;
    combination.index = index;
    combination.assembled = true;
    combination.pinionChange = pinionDegrees * kDegree;
    combination.boltsMoved = bolts;
    combination.adjustersTurned = adjusters;
    return combination;
}

HoleCombination mapped(double icX, double antiSquat) {
    HoleCombination combination;
    combination.assembled = true;
    combination.ride[static_cast<std::size_t>(Figure::icX)] = icX;
    combination.ride[static_cast<std::size_t>(Figure::antiSquat)] = antiSquat;
    return combination;
}

TEST(Work, CountsEveryBoltOnBothSides) {
    Car car = levelCar();
    drillHoles(car, 3, 0.02);
    EXPECT_EQ(solved(car, holesInUse(car)).boltsMoved, 0);
    HoleUse use = holesInUse(car);
    use.set(0, End::axle, 0);
    EXPECT_EQ(solved(car, use).boltsMoved, 2);
    use.set(1, End::chassis, 2);
    EXPECT_EQ(solved(car, use).boltsMoved, 4);
    use.set(2, End::axle, 2);
    EXPECT_EQ(solved(car, use).boltsMoved, 5) << "a track bar is one rod";
    splitPairs(car);
    drillHoles(car, 3, 0.02);
    use = holesInUse(car);
    use.set(1, End::axle, 0);
    EXPECT_EQ(solved(car, use).boltsMoved, 1) << "of a right rod alone";
}

TEST(Work, CountsAdjustersAndNewRodsApart) {
    Car car = levelCar();
    HoleCombination combination = solved(car, useOf({{0, 1}}));
    EXPECT_EQ(combination.adjustersTurned, 2);
    EXPECT_EQ(combination.newRods, 0);
    EXPECT_NEAR(combination.length[0], kHighLength, 1e-12);
    EXPECT_NEAR(combination.lengthChange[0], kHighLength - 20 * kInch, 1e-12);
    EXPECT_NEAR(combination.lengthChange[1], 0, 1e-12);
    EXPECT_TRUE(std::isnan(combination.length[3]));
    car.links[0].adjuster.reset();
    combination = solved(car, useOf({{0, 1}}));
    EXPECT_EQ(combination.adjustersTurned, 0);
    EXPECT_EQ(combination.newRods, 2);
    combination = solved(car, useOf({{0, 1}}), LengthTreatment::keep);
    EXPECT_EQ(combination.adjustersTurned + combination.newRods, 0);
    combination = solved(car, useOf({{0, 1}}), LengthTreatment::uppers);
    EXPECT_EQ(combination.adjustersTurned, 2);
    EXPECT_EQ(combination.newRods, 0);
}

TEST(Work, AHairsBreadthIsNoAdjustment) {
    Car car = levelCar();
    car.links[2].axle.holes.push_back({-1, "near", car.links[2].axle.holes[0].at + in(0, -0.0015, 0)});
    EXPECT_EQ(solved(car, useOf({{0, 0}, {0, 0}, {0, 1}})).adjustersTurned, 0);
    car.links[2].axle.holes[1].at.y() -= 0.001 * kInch;
    EXPECT_EQ(solved(car, useOf({{0, 0}, {0, 0}, {0, 1}})).adjustersTurned, 1);
}

TEST(Problems, ACarWithoutLimitsHasNone) {
    expectNone(levelCar());
}

TEST(Problems, ARodThatCannotReachAtRide) {
    Car car = levelCar();
    car.links[0].chassis.holes.push_back({-1, "far", in(20, 18, 40)});
    for (const LengthTreatment treatment : {LengthTreatment::keep, LengthTreatment::uppers}) {
        const HoleCombination combination = solved(car, useOf({{2, 0}}), treatment);
        EXPECT_FALSE(combination.assembled);
        EXPECT_EQ(combination.problems, bitOf(CombinationProblem::notAssembled));
        EXPECT_TRUE(std::isnan(combination[Figure::antiSquat]));
        EXPECT_TRUE(std::isnan(combination.axleShift));
        EXPECT_NEAR(combination.length[0], 20 * kInch, 1e-12);
        EXPECT_EQ(combination.boltsMoved, 2);
    }
    expectNone(car);
}

// All rods 15 in long and both chassis holes 10 in up or down: a parallelogram of rods sqrt(15^2 + 10^2) =
// 18.0278 in long that stand upright after 8.0278 in more. Held by symmetry, the axle has more equations than
// unknowns and counts as out of reach where they miss by more than bushings give.
TEST(Problems, TravelThatRunsOut) {
    Car car = levelCar();
    car.links.pop_back();
    car.travel = {.bump = 9 * kInch, .droop = 9 * kInch, .steps = 37};
    for (Link& link : car.links) {
        std::vector<Hole>& holes = link.chassis.holes;
        holes[0].at.x() = 15 * kInch;
        holes[1].at = holes[0].at + in(0, 0, 10);
        holes.push_back({-1, "far down", holes[0].at - in(0, 0, 10)});
    }
    const double end = (std::sqrt(325.0) - 10) * kInch + kLargestTravelBind;
    const HoleCombination up = solved(car, useOf({{1, 0}, {1, 0}}));
    EXPECT_EQ(up.problems, bitOf(CombinationProblem::droopRunsOut));
    EXPECT_NEAR(static_cast<double>(detailOf(up, CombinationProblem::droopRunsOut).value), -end, 1e-5);
    EXPECT_GE(detailOf(up, CombinationProblem::droopRunsOut).link, 0);
    EXPECT_TRUE(std::isnan(up.antiSquatDroop));
    EXPECT_FALSE(std::isnan(up.antiSquatBump));
    const HoleCombination down = solved(car, useOf({{2, 0}, {2, 0}}));
    EXPECT_EQ(down.problems, bitOf(CombinationProblem::bumpRunsOut));
    EXPECT_NEAR(static_cast<double>(detailOf(down, CombinationProblem::bumpRunsOut).value), end, 1e-5);
    EXPECT_TRUE(std::isnan(down.antiSquatBump));
    expectNone(car);
}

// A shaft 48 in long that rises 1 in, both axes along it. Kept at their length, high lowers turn the pinion
// nose up by some 0.6 deg at ride.
TEST(Problems, DriveshaftJointsPastTheirLimit) {
    Car car = levelCar();
    car.travel = {.bump = 0, .droop = 0, .steps = 2};
    const double rise = std::atan2(1, 48);
    car.driveline = Driveline{rise, in(12, 0, 13), rise + 2 * kDegree, in(60, 0, 14)};
    const HoleCombination now = solved(car, holesInUse(car), LengthTreatment::keep);
    EXPECT_NEAR(now.worstFrontJoint, 2 * kDegree, 1e-9);
    EXPECT_NEAR(now.worstRearJoint, 0, 1e-9);
    car.driveline->jointLimit = 1.9 * kDegree;
    expectOnly(solved(car, holesInUse(car)), CombinationProblem::frontJoint, -1, 2 * kDegree);
    car.driveline->jointLimit = 2.1 * kDegree;
    expectNone(car);
    car.driveline->outputAngle = rise;
    car.driveline->jointLimit = 0.5 * kDegree;
    expectNone(car);
    const HoleCombination turned = solved(car, useOf({{0, 1}}), LengthTreatment::keep);
    EXPECT_EQ(turned.problems, bitOf(CombinationProblem::rearJoint));
    EXPECT_GT(turned.worstRearJoint, 0.5 * kDegree);
    car.driveline.reset();
    EXPECT_TRUE(std::isnan(solved(car, holesInUse(car)).worstFrontJoint));
}

// Two axle holes 3 in apart sideways: the bolts are square to the line to the middle of the two, atan(1.5/20)
// out, and the rod from the outer hole runs atan(3/20) out.
TEST(Problems, RodEndsPastTheirLimit) {
    Car car = levelCar();
    car.travel = {.bump = 0, .droop = 0, .steps = 2};
    car.links[0].axle.holes[1].at = in(0, 21, 7);
    const double lean = std::atan(3.0 / 20) - std::atan(1.5 / 20);
    for (const HoleUse& use : {useOf({{0, 1}}), useOf({{0, 0}})}) {
        const HoleCombination combination = solved(car, use);
        EXPECT_NEAR(combination.worstRodEnd, use.of(0, End::axle) == 1 ? lean : std::atan(1.5 / 20), 1e-12);
        EXPECT_EQ(combination.worstRodEndLink, 0);
        EXPECT_EQ(combination.problems, 0);
    }
    car.links[0].rodEndLimit = 4.25 * kDegree;
    expectOnly(solved(car, useOf({{0, 0}})), CombinationProblem::rodEnd, 0, std::atan(1.5 / 20));
    EXPECT_EQ(solved(car, useOf({{0, 1}})).problems, 0) << lean / kDegree;
    car.links[0].rodEndLimit.reset();
    car.links[1].rodEndLimit = 0.01 * kDegree;
    EXPECT_EQ(solved(car, useOf({{0, 0}})).problems, 0) << "the uppers do not lean";
}

// The track bar pulls the axle sideways and the axle takes the bar's end along fore and aft.
TEST(Problems, RodEndsLeanWithTheAxleInTravel) {
    const Car car = levelCar();
    const HoleCombination combination = solved(car, holesInUse(car));
    const Trace trace = computeTrace(car);
    double worst = 0;
    for (const Station& station : trace.stations) {
        for (const Constraint& rod : buildLinkage(car).constraints) {
            const Eigen::Vector3d along = rod.onChassis - station.pose.carry(rod.onAxle);
            const bool across = rod.link == 2;  // the bolts of what runs across lie fore and aft
            const Eigen::Vector3d bolt = Eigen::Vector3d::Unit(across ? 0 : 1);
            worst =
                std::max({worst, rodEndLean(along, bolt), rodEndLean(along, station.pose.rotation() * bolt)});
        }
    }
    EXPECT_NEAR(combination.worstRodEnd, worst, 1e-12);
    EXPECT_GT(worst, 0.1 * kDegree);
}

TEST(Problems, LengthsOutsideTheAdjuster) {
    Car car = levelCar();
    Adjuster& adjuster = *car.links[0].adjuster;
    adjuster.shortest = 19.9 * kInch;
    adjuster.longest = 20.2 * kInch;
    expectNone(car);
    adjuster.longest = 20.05 * kInch;
    expectOnly(solved(car, useOf({{0, 1}})), CombinationProblem::tooLong, 0, kHighLength);
    adjuster.longest.reset();
    adjuster.shortest = 20.15 * kInch;
    expectOnly(solved(car, useOf({{0, 1}})), CombinationProblem::tooShort, 0, kHighLength);
    adjuster.shortest = kHighLength + 0.5 * kNoAdjustment;
    EXPECT_EQ(solved(car, useOf({{0, 1}})).problems, 0) << "as long as can be told";
}

// Half an inch of thread held at 20 in; 0.0998 in longer leaves 0.4501 in each of two ends, 0.4002 in one.
TEST(Problems, TooLittleThread) {
    Car car = levelCar();
    Adjuster& adjuster = *car.links[0].adjuster;
    adjuster.engagement = 0.5 * kInch;
    expectNone(car);
    adjuster.leastEngagement = 0.44 * kInch;
    expectNone(car);
    adjuster.leastEngagement = 0.46 * kInch;
    const double longer = kHighLength - 20 * kInch;
    expectOnly(solved(car, useOf({{0, 1}})), CombinationProblem::thread, 0, 0.5 * kInch - longer / 2);
    adjuster.threadedEnds = 1;
    adjuster.leastEngagement = 0.44 * kInch;
    expectOnly(solved(car, useOf({{0, 1}})), CombinationProblem::thread, 0, 0.5 * kInch - longer);
    adjuster.engagement.reset();
    expectNone(car);
}

// From (0, 7) to (20, 25) a lower passes the level upper at x = 13.3 in, in the same plane y = 18 in.
TEST(Problems, RodsThatCross) {
    Car car = levelCar();
    car.links[0].chassis.holes.push_back({-1, "crossed", in(20, 18, 25)});
    const HoleUse crossed = useOf({{2, 0}});
    car.links.pop_back();  // without the track bar the axle stays in the middle
    const auto aside = [&](double inches) {
        Car moved = car;
        for (const End end : {End::chassis, End::axle}) {
            for (Hole& hole : moved.links[0].bracket(end).holes) {
                hole.at.y() += inches * kInch;
            }
        }
        return solved(moved, crossed);
    };
    const HoleCombination combination = aside(0);
    expectOnly(combination, CombinationProblem::crossing, 0, 0);
    EXPECT_EQ(detailOf(combination, CombinationProblem::crossing).other, 1);
    expectOnly(aside(0.9), CombinationProblem::crossing, 0, 0.9 * kInch);
    EXPECT_EQ(aside(1.1).problems, 0) << "passes at more than " << kCrossingDistance << " m";
    expectNone(car);
}

TEST(Problems, AreSeveralAtOnce) {
    Car car = levelCar();
    car.links[0].adjuster->longest = 20.05 * kInch;
    car.links[0].adjuster->engagement = 0.5 * kInch;
    car.links[0].adjuster->leastEngagement = 0.46 * kInch;
    EXPECT_EQ(solved(car, useOf({{0, 1}})).problems,
              bitOf(CombinationProblem::tooLong) | bitOf(CombinationProblem::thread));
}

// Where neither end of a coarse sweep is reached, ride still is.
TEST(Figures, RideCountsInTravel) {
    Car car = levelCar();
    car.travel = {.bump = 30 * kInch, .droop = 30 * kInch, .steps = 2};
    car.links[0].axle.holes[1].at = in(0, 21, 7);
    car.links[0].rodEndLimit = 4 * kDegree;
    car.driveline = Driveline{0, in(12, 0, 13), 2 * kDegree, in(60, 0, 13)};
    car.driveline->jointLimit = 1 * kDegree;
    const HoleCombination combination = solved(car, holesInUse(car));
    EXPECT_EQ(combination.problems,
              bitOf(CombinationProblem::droopRunsOut) | bitOf(CombinationProblem::bumpRunsOut) |
                  bitOf(CombinationProblem::rodEnd) | bitOf(CombinationProblem::frontJoint));
    EXPECT_NEAR(combination.worstFrontJoint, 2 * kDegree, 1e-9);
    EXPECT_NEAR(combination.worstRodEnd, std::atan(1.5 / 20), 1e-9);
}

// Without a driveline the housing's own turn stands for the pinion's, nose up +.
TEST(Figures, PinionChangeNeedsNoDriveline) {
    Car car = levelCar();
    const HoleCombination without = solved(car, useOf({{0, 1}}), LengthTreatment::keep);
    car.driveline = Driveline{0.02, in(12, 0, 13), 0.02, in(60, 0, 14)};
    const HoleCombination with = solved(car, useOf({{0, 1}}), LengthTreatment::keep);
    EXPECT_GT(without.pinionChange, 0.5 * kDegree);
    EXPECT_NEAR(without.pinionChange, with.pinionChange, 1e-12);
    EXPECT_NEAR(without.axleShift, with.axleShift, 1e-12);
}

// As it stands the car can't be assembled: combinations that can have figures, but no changes.
TEST(Figures, ChangesNeedACarThatCanBeAssembledNow) {
    Car car = levelCar();
    car.links[1].length = 2 * kInch;
    const HoleCombination now = solved(car, holesInUse(car), LengthTreatment::keep);
    EXPECT_FALSE(now.assembled);
    EXPECT_EQ(detailOf(now, CombinationProblem::notAssembled).link, 1);
    const HoleCombination reset = solved(car, holesInUse(car));
    EXPECT_TRUE(reset.assembled);
    EXPECT_TRUE(std::isnan(reset.axleShift));
    EXPECT_TRUE(std::isnan(reset.pinionChange));
    EXPECT_NEAR(reset.lengthChange[1], 13 * kInch, 1e-12);
}

TEST(RodEndLean, IsTheAngleOutOfTheBoltsSquare) {
    const Eigen::Vector3d bolt = Eigen::Vector3d::UnitY();
    EXPECT_NEAR(rodEndLean({1, 0, 0}, bolt), 0, 1e-15);
    EXPECT_NEAR(rodEndLean({3, 0, -4}, bolt), 0, 1e-15) << "turning about the bolt is no lean";
    EXPECT_NEAR(rodEndLean({2, 2, 0}, bolt), 45 * kDegree, 1e-15);
    EXPECT_NEAR(rodEndLean({-2, -2, 0}, bolt), 45 * kDegree, 1e-15);
    EXPECT_NEAR(rodEndLean({3, 5, 4}, bolt), 45 * kDegree, 1e-15);
    EXPECT_NEAR(rodEndLean({0, 7, 0}, bolt), 90 * kDegree, 1e-15);
    EXPECT_NEAR(rodEndLean({1, 1e-9, 0}, bolt), 1e-9, 1e-18);
}

TEST(ApproachOf, IsTheCommonPerpendicular) {
    const Approach skew = approachOf({0, 0, 0}, {2, 0, 0}, {1, -1, 3}, {1, 1, 3});
    EXPECT_DOUBLE_EQ(skew.distance, 3);
    EXPECT_TRUE(skew.betweenEnds);
    const Approach past = approachOf({0, 0, 0}, {2, 0, 0}, {3, -1, 3}, {3, 1, 3});
    EXPECT_DOUBLE_EQ(past.distance, 3);
    EXPECT_FALSE(past.betweenEnds);
    EXPECT_FALSE(approachOf({0, 0, 0}, {2, 0, 0}, {1, 1, 3}, {1, 2, 3}).betweenEnds) << "the other one's";
    const Approach meeting = approachOf({0, 0, 0}, {2, 2, 0}, {0, 2, 0}, {2, 0, 0});
    EXPECT_NEAR(meeting.distance, 0, 1e-15);
    EXPECT_TRUE(meeting.betweenEnds);
    EXPECT_FALSE(approachOf({0, 0, 0}, {2, 0, 0}, {2, 0, 0}, {2, 2, 0}).betweenEnds) << "at a common end";
    const Approach parallel = approachOf({0, 0, 0}, {2, 0, 0}, {0, 1, 0}, {2, 1, 0});
    EXPECT_EQ(parallel.distance, kEndless);
    EXPECT_FALSE(parallel.betweenEnds);
}

// 3/4-16, both ends: 1/8 in a turn. One end: 1/16 in a turn, in halves.
TEST(AdjusterTurns, ByHand) {
    const Adjuster both{.pitch = kInch / 16, .threadedEnds = 2};
    EXPECT_DOUBLE_EQ(adjusterTurns(kInch, both), 8);
    EXPECT_DOUBLE_EQ(adjusterTurns(-kInch / 16, both), -0.5);
    EXPECT_DOUBLE_EQ(adjusterTurns(0.01 * kInch, both), 0.08);
    const Adjuster one{.pitch = kInch / 16, .threadedEnds = 1};
    EXPECT_DOUBLE_EQ(adjusterTurns(kInch, one), 16);
    EXPECT_DOUBLE_EQ(adjusterTurns(0.05 * kInch, one), 1) << "0.8 turns";
    EXPECT_DOUBLE_EQ(adjusterTurns(-0.04 * kInch, one), -0.5) << "0.64 turns";
    EXPECT_DOUBLE_EQ(adjusterTurns(0.01 * kInch, one), 0) << "0.16 turns";
}

TEST(EngagementAt, ALongerRodHoldsLess) {
    Link rod = levelCar().links[0];
    EXPECT_EQ(engagementAt(rod, 20 * kInch), std::nullopt);
    rod.adjuster->engagement = 1.0 * kInch;
    EXPECT_NEAR(engagementAt(rod, 20 * kInch).value(), 1.0 * kInch, 1e-15);
    EXPECT_NEAR(engagementAt(rod, 20.5 * kInch).value(), 0.75 * kInch, 1e-15);
    rod.adjuster->engagementAt = 19 * kInch;
    EXPECT_NEAR(engagementAt(rod, 20 * kInch).value(), 0.5 * kInch, 1e-15);
    rod.adjuster->threadedEnds = 1;
    EXPECT_NEAR(engagementAt(rod, 20 * kInch).value(), 0, 1e-15);
    rod.adjuster.reset();
    EXPECT_EQ(engagementAt(rod, 20 * kInch), std::nullopt);
}

TEST(Target, IsAWindowEdgesIncluded) {
    const TargetWindow window{.icNear = 1.0, .icFar = 2.0, .antiSquatLow = 90, .antiSquatHigh = 120};
    for (const double distance : {1.0, 1.5, 2.0}) {
        for (const double antiSquat : {90.0, 100.0, 120.0}) {
            EXPECT_TRUE(meetsTarget(mapped(distance, antiSquat), window));
        }
        EXPECT_FALSE(meetsTarget(mapped(distance, 89.9), window));
        EXPECT_FALSE(meetsTarget(mapped(distance, 120.1), window));
        EXPECT_FALSE(meetsTarget(mapped(distance, kAbsent), window));
    }
    for (const double distance : {0.99, 2.01, -1.5, kAbsent, 1e9}) {
        EXPECT_FALSE(meetsTarget(mapped(distance, 100), window)) << distance;
    }
    HoleCombination apart = mapped(1.5, 100);
    apart.assembled = false;
    EXPECT_FALSE(meetsTarget(apart, window));
}

// Along 1/distance: from 5 m ahead through infinity to 10 m behind.
TEST(Target, AWindowRunsThroughInfinity) {
    TargetWindow window{.icNear = 5.0, .icFar = -10.0, .antiSquatLow = 0, .antiSquatHigh = 200};
    for (const double distance : {5.0, 50.0, 1e9, kAbsent, -1e9, -50.0, -10.0}) {
        EXPECT_TRUE(meetsTarget(mapped(distance, 100), window)) << distance;
    }
    for (const double distance : {4.9, 0.5, -9.9, -1.0}) {
        EXPECT_FALSE(meetsTarget(mapped(distance, 100), window)) << distance;
    }
    window.icFar.reset();  // up to infinity, and no farther
    EXPECT_TRUE(meetsTarget(mapped(1e9, 100), window));
    EXPECT_TRUE(meetsTarget(mapped(kAbsent, 100), window));
    EXPECT_FALSE(meetsTarget(mapped(-1e9, 100), window));
    window = {.icNear = std::nullopt, .icFar = -10.0, .antiSquatLow = 0, .antiSquatHigh = 200};
    EXPECT_TRUE(meetsTarget(mapped(-50, 100), window));
    EXPECT_TRUE(meetsTarget(mapped(kAbsent, 100), window));
    EXPECT_FALSE(meetsTarget(mapped(50, 100), window));
}

TEST(InverseDistance, IsZeroAtInfinity) {
    EXPECT_EQ(inverseDistance(mapped(2, 100)), 0.5);
    EXPECT_EQ(inverseDistance(mapped(-2, 100)), -0.5);
    EXPECT_EQ(inverseDistance(mapped(kAbsent, 100)), 0);
}

TEST(Rank, ByPinionThenBoltsThenAdjustersThenTheTable) {
    const std::vector<HoleCombination> combinations{ranked(0, 1.0, 0),     ranked(1, -0.2, 4),
                                                    ranked(2, 0.21, 2, 2), ranked(3, 0.18, 2, 0),
                                                    ranked(4, 0, 8),       ranked(5, 0.22, 2, 0)};
    EXPECT_THAT(rankCombinations(combinations, std::nullopt), ElementsAre(4, 3, 5, 2, 1, 0));
}

TEST(Rank, NewRodsAreWorkToo) {
    std::vector<HoleCombination> combinations{ranked(0, 0, 2), ranked(1, 0, 2, 2)};
    combinations[0].newRods = 4;
    EXPECT_THAT(rankCombinations(combinations, std::nullopt), ElementsAre(1, 0));
}

TEST(Rank, TargetFirstAndWhatCannotBeAssembledLast) {
    std::vector<HoleCombination> combinations{ranked(0, 0, 0), ranked(1, 0, 0), ranked(2, 5, 8),
                                              ranked(3, 0.1, 2)};
    combinations[0].assembled = false;
    for (const auto& [at, distance, antiSquat] :
         {std::tuple{0U, 1.5, 100.0}, {1U, 5.0, 100.0}, {2U, 1.5, 100.0}, {3U, 1.5, 95.0}}) {
        combinations[at].ride = mapped(distance, antiSquat).ride;
    }
    const TargetWindow window{.icNear = 1.0, .icFar = 2.0, .antiSquatLow = 90, .antiSquatHigh = 120};
    EXPECT_THAT(rankCombinations(combinations, window), ElementsAre(3, 2, 1, 0));
    EXPECT_THAT(rankCombinations(combinations, std::nullopt), ElementsAre(1, 3, 2, 0));
    EXPECT_THAT(rankCombinations({}, window), ElementsAre());
}

}  // namespace
}  // namespace bolthole
