// What is made of paired draws, by hand and against printed samples.
#include "geometry/trials/paired_runs.h"

#include <gmock/gmock.h>

#include <atomic>
#include <stdexcept>
#include <vector>

#include "geometry/trials/launch_reason.h"
#include "geometry/units/parallel.h"
#include "geometry/units/uncertainty_text.h"

namespace bolthole {

namespace {

using testing::DoubleNear;

SetupRuns runsOf(double entered, const std::vector<double>& drawn) {
    SetupRuns runs{.end = LaunchEnd::done};
    runs.entered.sixtyFoot = entered;
    for (const double time : drawn) {
        runs.drawn.push_back({});
        runs.drawn.back().sixtyFoot = time;
    }
    return runs;
}

}  // namespace

// Hours of sleep gained by ten patients under two drugs: the differences have a mean of 1.58 and a standard
// deviation of 1.23 (Student, "The Probable Error of a Mean", Biometrika 6, 1908, sec. IX; from memory).
TEST(PairedRuns, UncertaintyOfADifferenceIsThatOfItsPairs) {
    const SetupRuns first = runsOf(0.75, {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2.0});
    const SetupRuns second = runsOf(2.33, {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4});
    const TrialFigure gained = compared(first, second, &LaunchFigures::sixtyFoot);
    EXPECT_THAT(*gained.change, DoubleNear(1.58, 1e-9));
    EXPECT_THAT(*gained.uncertainty, DoubleNear(1.23, 0.005));
    // Within 1.96 times that: not told apart by one pair of launches.
    EXPECT_FALSE(canTellApart(first, second));
    EXPECT_TRUE(canTellApart(first, runsOf(4, {3.7, 1.4, 2.8, 1.8, 2.9, 6.4, 6.7, 3.8, 3, 5.0})));
}

// By hand: the change as entered is +1 and none of the draws reaches the other side, though they scatter
// over more than the change itself; with one that does, nobody can tell.
TEST(PairedRuns, DrawsToOneSideTellApartHoweverFarTheyScatter) {
    const SetupRuns before = runsOf(2, {2, 2, 2, 2});
    const SetupRuns after = runsOf(3, {2.5, 3, 6, 12});
    const TrialFigure change = compared(before, after, &LaunchFigures::sixtyFoot);
    EXPECT_GT(kCoverage95 * *change.uncertainty, *change.change);
    EXPECT_DOUBLE_EQ(*change.low, 0.5);
    EXPECT_DOUBLE_EQ(*change.high, 10);
    EXPECT_TRUE(canTellApart(before, after));
    EXPECT_TRUE(canTellApart(after, before));
    EXPECT_FALSE(canTellApart(before, runsOf(3, {1.9, 3, 6, 12})));
}

TEST(PairedRuns, TimesNobodyCanTellApartCountHalf) {
    const SetupRuns before = runsOf(2, {2, 2, 2, 2});
    EXPECT_DOUBLE_EQ(chanceOfGain(before, runsOf(2, {1.9, 1.9, 2.1, 2.0001})), 0.625);
    EXPECT_DOUBLE_EQ(chanceOfGain(before, before), 0.5);
    EXPECT_FALSE(canTellApart(before, runsOf(2.0004, {2.0004, 2.0004})));
    EXPECT_TRUE(canTellApart(before, runsOf(2.0006, {2.0006, 2.0006})));
}

TEST(PairedRuns, OneThatGetsNowhereIsWorse) {
    const SetupRuns there = runsOf(2, {2, 2});
    SetupRuns nowhere = runsOf(2, {2, 2});
    nowhere.entered.sixtyFoot.reset();
    nowhere.drawn[0].sixtyFoot.reset();
    EXPECT_TRUE(canTellApart(there, nowhere));
    EXPECT_FALSE(canTellApart(nowhere, nowhere));
    EXPECT_DOUBLE_EQ(chanceOfGain(there, nowhere), 0.25);
    EXPECT_FALSE(compared(there, nowhere, &LaunchFigures::sixtyFoot).change);
}

TEST(PairedRuns, WhatAThreadThrowsArrives) {
    std::atomic<int> calls = 0;
    EXPECT_THROW(inParallel(3,
                            [&calls] {
                                if (++calls == 2) {
                                    throw std::runtime_error("no memory");
                                }
                            }),
                 std::runtime_error);
    EXPECT_EQ(calls, 3);
}

TEST(LaunchReason, SaysTheMostTellingFirst) {
    const LaunchTraits before{.sixtyFoot = 1.9, .toppedOut = 0.21, .leastLoad = 6000, .hitLoad = 9000};
    LaunchTraits after = before;
    after.toppedOut = 0.30;
    after.leastLoad = 6900;
    after.hitLoad = 9010;
    const std::vector<ReasonPart> reasons = reasonsFor(before, after, 10'000);
    ASSERT_EQ(reasons.size(), 2U);
    EXPECT_EQ(reasons[0].kind, ReasonPart::Kind::noseStops);
    EXPECT_EQ(reasons[1].kind, ReasonPart::Kind::leastRearLoad);
    EXPECT_EQ(*reasons[1].after, 6900);
    EXPECT_TRUE(reasonsFor(before, before, 10'000).empty());
}

// A stop that is met only past the finish is none.
TEST(LaunchReason, LeavesOutWhatComesTooLate) {
    const LaunchTraits before{.sixtyFoot = 1.9, .toppedOut = 0.2};
    const LaunchTraits after{.sixtyFoot = 1.9, .toppedOut = 2.2};
    const std::vector<ReasonPart> reasons = reasonsFor(before, after, 1e4);
    ASSERT_EQ(reasons.size(), 1U);
    EXPECT_FALSE(reasons[0].after);
}

}  // namespace bolthole
