// The words of geometry/combinations/combination_figures.h.
#include <gtest/gtest.h>

#include <string>

#include "geometry/combinations/combination_figures.h"
#include "tests/support/level_car.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

void flag(HoleCombination& combination, CombinationProblem problem, double value, int link = -1,
          int other = -1) {
    combination.problems =
        static_cast<std::uint16_t>(combination.problems | 1U << static_cast<unsigned>(problem));
    combination.details[static_cast<std::size_t>(problem)] = {
        static_cast<std::int8_t>(link), static_cast<std::int8_t>(other), static_cast<float>(value)};
}

std::string wordsOf(CombinationProblem problem, double value, int link = -1, int other = -1,
                    Units units = Units::inch) {
    HoleCombination combination;
    flag(combination, problem, value, link, other);
    return describeProblems(combination, levelCar(), units);
}

TEST(DescribeProblems, SaysNothingOfNone) {
    EXPECT_EQ(describeProblems(HoleCombination{}, levelCar(), Units::inch), "");
}

TEST(DescribeProblems, NamesEachWithWhatWasReached) {
    EXPECT_EQ(wordsOf(CombinationProblem::notAssembled, kAbsent), "can't be assembled at ride");
    EXPECT_EQ(wordsOf(CombinationProblem::notAssembled, kAbsent, 1), "can't be assembled at ride: upper");
    EXPECT_EQ(wordsOf(CombinationProblem::droopRunsOut, -3.25 * kInch, 0),
              "lower stops travel at 3.25 in of droop");
    EXPECT_EQ(wordsOf(CombinationProblem::bumpRunsOut, 2 * kInch, 1),
              "upper stops travel at 2.00 in of bump");
    EXPECT_EQ(wordsOf(CombinationProblem::bumpRunsOut, 2 * kInch), "a link stops travel at 2.00 in of bump");
    EXPECT_EQ(wordsOf(CombinationProblem::frontJoint, 4.5 * kDegree),
              "front driveshaft joint reaches 4.50\u00B0");
    EXPECT_EQ(wordsOf(CombinationProblem::rearJoint, 4.5 * kDegree),
              "rear driveshaft joint reaches 4.50\u00B0");
    EXPECT_EQ(wordsOf(CombinationProblem::rodEnd, 17 * kDegree, 2),
              "track bar rod-end misalignment 17.00\u00B0");
    EXPECT_EQ(wordsOf(CombinationProblem::tooShort, 19.5 * kInch, 0),
              "lower can't be set as short as 19.50 in");
    EXPECT_EQ(wordsOf(CombinationProblem::tooLong, 20.5 * kInch, 0),
              "lower can't be set as long as 20.50 in");
    EXPECT_EQ(wordsOf(CombinationProblem::thread, 0.25 * kInch, 1),
              "upper would hold only 0.25 in of thread");
    EXPECT_EQ(wordsOf(CombinationProblem::crossing, 0.5 * kInch, 0, 1),
              "lower and upper cross: 0.50 in between their centerlines");
}

TEST(DescribeProblems, JoinsSeveralAndSpeaksTheUnitsAskedFor) {
    HoleCombination combination;
    flag(combination, CombinationProblem::tooLong, 0.52, 0);
    flag(combination, CombinationProblem::bumpRunsOut, 0.06, 1);
    EXPECT_EQ(describeProblems(combination, levelCar(), Units::metric),
              "upper stops travel at 60.0 mm of bump; lower can't be set as long as 520.0 mm");
}

TEST(HoleNames, AreThoseThereIsACombinationOf) {
    Car car = levelCar();
    car.links[0].chassis.holes[0].name = "";
    EXPECT_EQ(holeNames(useOf({{0, 1}, {1, 0}}), car), "1 / high / high / rear");
    car.links[1].chassis.holes.pop_back();
    EXPECT_EQ(holeNames(useOf({{1, 0}}), car), "high / rear / rear");
    for (Link& link : car.links) {
        link.chassis.holes.resize(1);
        link.axle.holes.resize(1);
    }
    EXPECT_EQ(holeNames({}, car), "");
}

}  // namespace
}  // namespace bolthole
