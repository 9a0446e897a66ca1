// Hole combinations of generated cars: laws that hold for every layout, combination and treatment.
#include <gmock/gmock.h>

#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "geometry/combinations/combination_figures.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

constexpr int kLayouts = static_cast<int>(Layout::ladderGuide) + 1;
constexpr int kCars = 6;
constexpr int kCombinations = 12;

struct Case {
    Layout layout;
    Car car;
    HoleUse use;
    std::string name;
};

/// Cars of every layout, every second one built off its holes, each with a few combinations of three holes a
/// bracket.
std::vector<Case> cases(std::uint64_t seed) {
    CarGenerator generator(seed);
    std::mt19937_64 random(seed);
    std::vector<Case> all;
    for (int layout = 0; layout < kLayouts; ++layout) {
        for (int number = 0; number < kCars; ++number) {
            Car car = generator.draw(static_cast<Layout>(layout));
            if (number % 2 == 1) {
                generator.misbuild(car, 0.005);
            }
            drillHoles(car, 3, 0.02);
            car.travel.steps = 21;
            const CombinationSpace space(car, {});
            for (int combination = 0; combination < kCombinations; ++combination) {
                all.push_back({static_cast<Layout>(layout), car, space.at(random() % space.count()),
                               "layout " + std::to_string(layout) + " car " + std::to_string(number)});
            }
        }
    }
    return all;
}

void expectSame(double one, double other, const std::string& what) {
    if (std::isnan(one) || std::isnan(other)) {
        EXPECT_EQ(std::isnan(one), std::isnan(other)) << what;
        return;
    }
    EXPECT_NEAR(one, other, 1e-9 * std::max(1.0, std::abs(other))) << what;
}

/// Every figure the solver gives, as computeTrace() gives it for the car carWithCombination() makes.
void expectTracesCombination(const HoleCombination& combination, const Car& car) {
    const Trace trace = computeTrace(car);
    ASSERT_EQ(combination.assembled, trace.assembly.usable());
    if (!combination.assembled) {
        return;
    }
    for (const FigureInfo& info : figureTable()) {
        expectSame(combination[info.figure], trace.ride[info.figure], std::string(info.column));
    }
    const Station& droop = trace.stations.front();
    const Station& bump = trace.stations.back();
    expectSame(combination.antiSquatDroop, droop[Figure::antiSquat], "anti-squat in droop");
    expectSame(combination.antiSquatBump, bump[Figure::antiSquat], "anti-squat in bump");
    expectSame(combination.pinionDroop, droop[Figure::pinion], "pinion in droop");
    expectSame(combination.pinionBump, bump[Figure::pinion], "pinion in bump");
    EXPECT_EQ(combination.has(CombinationProblem::droopRunsOut), !trace.droopEnd.usable());
    EXPECT_EQ(combination.has(CombinationProblem::bumpRunsOut), !trace.bumpEnd.usable());
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        if (car.links[link].kind == LinkKind::rod) {
            expectSame(combination.length[link], builtLength(car.links[link]), "length");
        } else {
            EXPECT_TRUE(std::isnan(combination.length[link]));
        }
    }
}

/// Against the car as it stands now.
void expectChangesAgainstNow(const HoleCombination& combination, const Car& before) {
    const Station now = solveStation(before, 0.0);
    ASSERT_TRUE(now.usable);
    if (combination.assembled) {
        expectSame(combination.axleShift, combination[Figure::axleX] - now[Figure::axleX], "axle shift");
        expectSame(combination.pinionChange, combination[Figure::pinion] - now[Figure::pinion],
                   "pinion change");
    }
}

void expectSolvedAsChosen(LengthTreatment treatment) {
    int assembled = 0;
    for (const Case& one : cases(51)) {
        SCOPED_TRACE(one.name);
        if (treatment == LengthTreatment::uppers && !hasUpperRod(one.car)) {
            continue;
        }
        const CarResult chosen = carWithCombination(one.car, one.use, treatment);
        ASSERT_TRUE(chosen.car) << chosen.refusal;
        CombinationSolver solver(one.car, treatment);
        HoleCombination combination;
        solver.solve(one.use, combination);
        EXPECT_EQ(combination.use, one.use);
        expectTracesCombination(combination, *chosen.car);
        expectChangesAgainstNow(combination, one.car);
        assembled += combination.assembled ? 1 : 0;
    }
    EXPECT_GT(assembled, 300);
}

AxlePose rideOf(const Case& one, LengthTreatment treatment) {
    const CarResult chosen = carWithCombination(one.car, one.use, treatment);
    EXPECT_TRUE(chosen.car) << chosen.refusal;
    const Station ride = solveStation(chosen.car.value_or(one.car), 0.0);
    EXPECT_TRUE(ride.usable);
    return ride.pose;
}

}  // namespace

TEST(CombinationProperty, SolvedAsChosenKeep) {
    expectSolvedAsChosen(LengthTreatment::keep);
}

TEST(CombinationProperty, SolvedAsChosenReset) {
    expectSolvedAsChosen(LengthTreatment::refit);
}

TEST(CombinationProperty, SolvedAsChosenUppers) {
    expectSolvedAsChosen(LengthTreatment::uppers);
}

TEST(CombinationProperty, KeepKeepsEveryLength) {
    for (const Case& one : cases(52)) {
        const CarResult chosen = carWithCombination(one.car, one.use, LengthTreatment::keep);
        ASSERT_TRUE(chosen.car);
        for (std::size_t link = 0; link < one.car.links.size(); ++link) {
            if (one.car.links[link].kind == LinkKind::rod) {
                EXPECT_DOUBLE_EQ(builtLength(chosen.car->links[link]), builtLength(one.car.links[link]));
            } else {
                EXPECT_EQ(chosen.car->links[link].axle.holes, one.car.links[link].axle.holes);
            }
        }
    }
}

// Pivots and sliders too, and however the car is built now.
TEST(CombinationProperty, ResetLeavesTheAxleAtItsMeasuredPose) {
    for (const Case& one : cases(53)) {
        SCOPED_TRACE(one.name);
        const AxlePose ride = rideOf(one, LengthTreatment::refit);
        EXPECT_NEAR(ride.x, 0, 1e-9);
        EXPECT_NEAR(ride.y, 0, 1e-9);
        EXPECT_NEAR(ride.z, one.car.rearTireRadius, 1e-9);
        EXPECT_NEAR(ride.pitch, 0, 1e-9);
        EXPECT_NEAR(ride.yaw, 0, 1e-9);
    }
}

TEST(CombinationProperty, UppersHoldThePitchAndKeepTheOtherLengths) {
    int held = 0;
    for (const Case& one : cases(54)) {
        SCOPED_TRACE(one.name);
        if (!hasUpperRod(one.car)) {
            continue;
        }
        const CarResult chosen = carWithCombination(one.car, one.use, LengthTreatment::uppers);
        ASSERT_TRUE(chosen.car) << chosen.refusal;
        for (std::size_t link = 0; link < one.car.links.size(); ++link) {
            const Link& before = one.car.links[link];
            if (before.kind == LinkKind::rod && roleOf(before, one.car.rearTireRadius) != Role::upper) {
                EXPECT_DOUBLE_EQ(builtLength(chosen.car->links[link]), builtLength(before));
            }
        }
        // Where a splayed pair of uppers and a track bar fight, the pair would need two lengths and gets one.
        const bool fights = one.layout == Layout::triangulatedTrackBar;
        EXPECT_NEAR(rideOf(one, LengthTreatment::uppers).pitch, 0, fights ? 0.1 * kRadiansPerDegree : 1e-9);
        held += fights ? 0 : 1;
    }
    EXPECT_GT(held, 200);
}

// A combination is the same whatever was computed before it.
TEST(CombinationProperty, CombinationsDoNotDependOnTheirOrder) {
    CarGenerator generator(55);
    for (int layout = 0; layout < kLayouts; ++layout) {
        Car car = generator.draw(static_cast<Layout>(layout));
        drillHoles(car, 2, 0.03);
        car.travel.steps = 11;
        for (const LengthTreatment treatment :
             {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
            if (treatment == LengthTreatment::uppers && !hasUpperRod(car)) {
                continue;
            }
            const CombinationSpace space(car, {});
            CombinationSolver worn(car, treatment);
            HoleCombination before;
            for (std::uint64_t index = space.count(); index-- > 0;) {
                worn.solve(space.at(index), before);
                HoleCombination after;
                CombinationSolver(car, treatment).solve(space.at(index), after);
                ASSERT_EQ(before.assembled, after.assembled);
                ASSERT_EQ(before.problems, after.problems);
                ASSERT_TRUE(before.assembled ? before[Figure::antiSquat] == after[Figure::antiSquat] &&
                                                   before.worstRodEndLink == after.worstRodEndLink
                                             : true);
            }
        }
    }
}

}  // namespace bolthole
