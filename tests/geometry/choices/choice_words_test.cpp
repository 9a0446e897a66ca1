// The words of geometry/choices/choice_figures.h.
#include <gtest/gtest.h>

#include <string>

#include "geometry/choices/choice_figures.h"
#include "tests/support/level_car.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

void flag(HoleChoice& choice, ChoiceProblem problem, double value, int link = -1, int other = -1) {
    choice.problems = static_cast<std::uint16_t>(choice.problems | 1U << static_cast<unsigned>(problem));
    choice.details[static_cast<std::size_t>(problem)] = {
        static_cast<std::int8_t>(link), static_cast<std::int8_t>(other), static_cast<float>(value)};
}

std::string wordsOf(ChoiceProblem problem, double value, int link = -1, int other = -1,
                    Units units = Units::inch) {
    HoleChoice choice;
    flag(choice, problem, value, link, other);
    return describeProblems(choice, levelCar(), units);
}

TEST(DescribeProblems, SaysNothingOfNone) {
    EXPECT_EQ(describeProblems(HoleChoice{}, levelCar(), Units::inch), "");
}

TEST(DescribeProblems, NamesEachWithWhatWasReached) {
    EXPECT_EQ(wordsOf(ChoiceProblem::notAssembled, kAbsent), "can't be assembled at ride");
    EXPECT_EQ(wordsOf(ChoiceProblem::notAssembled, kAbsent, 1), "can't be assembled at ride: upper");
    EXPECT_EQ(wordsOf(ChoiceProblem::droopRunsOut, -3.25 * kInch, 0),
              "lower stops travel at 3.25 in of droop");
    EXPECT_EQ(wordsOf(ChoiceProblem::bumpRunsOut, 2 * kInch, 1), "upper stops travel at 2.00 in of bump");
    EXPECT_EQ(wordsOf(ChoiceProblem::bumpRunsOut, 2 * kInch), "a link stops travel at 2.00 in of bump");
    EXPECT_EQ(wordsOf(ChoiceProblem::frontJoint, 4.5 * kDegree), "front driveshaft joint reaches 4.50\u00B0");
    EXPECT_EQ(wordsOf(ChoiceProblem::rearJoint, 4.5 * kDegree), "rear driveshaft joint reaches 4.50\u00B0");
    EXPECT_EQ(wordsOf(ChoiceProblem::rodEnd, 17 * kDegree, 2), "track bar rod-end misalignment 17.00\u00B0");
    EXPECT_EQ(wordsOf(ChoiceProblem::tooShort, 19.5 * kInch, 0), "lower can't be set as short as 19.50 in");
    EXPECT_EQ(wordsOf(ChoiceProblem::tooLong, 20.5 * kInch, 0), "lower can't be set as long as 20.50 in");
    EXPECT_EQ(wordsOf(ChoiceProblem::thread, 0.25 * kInch, 1), "upper would hold only 0.25 in of thread");
    EXPECT_EQ(wordsOf(ChoiceProblem::crossing, 0.5 * kInch, 0, 1),
              "lower and upper cross: 0.50 in between their centerlines");
}

TEST(DescribeProblems, JoinsSeveralAndSpeaksTheUnitsAskedFor) {
    HoleChoice choice;
    flag(choice, ChoiceProblem::tooLong, 0.52, 0);
    flag(choice, ChoiceProblem::bumpRunsOut, 0.06, 1);
    EXPECT_EQ(describeProblems(choice, levelCar(), Units::metric),
              "upper stops travel at 60.0 mm of bump; lower can't be set as long as 520.0 mm");
}

TEST(HoleNames, AreThoseThereIsAChoiceOf) {
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
