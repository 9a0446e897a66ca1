// The uncertainty of the hole combinations, on the board: two columns, a line, bars on the map.
#include "widgets/board/combination_uncertainty.h"

#include <gmock/gmock.h>

#include <QLabel>
#include <QTest>
#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "geometry/units/uncertainty_text.h"
#include "tests/support/board_bench.h"

namespace bolthole {
namespace {

using test::coupeCar;
using test::wagonCar;
using testing::HasSubstr;
using testing::StartsWith;

class CombinationUncertaintyTest : public test::BoardBench {
  protected:
    // As the second pass would fill it.
    void openAccuracy(const Car& car) {
        open(car);
        fillUncertainties(car);
        show();
    }
    void fillUncertainties(const Car& car) {
        const CombinationSpace space(car, {});
        const CombinationUncertaintySolver uncertaintySolver(car, LengthTreatment::keep);
        state_.uncertainties.clear();
        for (std::uint64_t index = 0; index < space.count(); ++index) {
            state_.uncertainties.push_back(uncertaintySolver.solve(space.at(index)));
        }
        state_.uncertaintyCount = state_.uncertainties.size();
    }
    int rowOf(std::uint64_t combination) {
        for (std::size_t at = 0; at < state_.combinations.size(); ++at) {
            if (state_.combinations[at].index == combination) {
                return table().combinations().rowOf(at).value_or(-1);
            }
        }
        return -1;
    }
    [[nodiscard]] double antiSquatOf(std::uint64_t combination) const {
        return std::ranges::find(state_.combinations, combination, &HoleCombination::index)
            ->ride[static_cast<std::size_t>(Figure::antiSquat)];
    }
    [[nodiscard]] double apart(std::uint64_t combination) const {
        return std::abs(antiSquatOf(combination) - antiSquatOf(*state_.present));
    }
    std::string line() { return part<QLabel>("boardUncertainty")->text().toStdString(); }
};

TEST_F(CombinationUncertaintyTest, WithoutAnUncertaintyItSaysWhy) {
    Car car = wagonCar();
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    openAccuracy(car);
    EXPECT_EQ(cell(rowOf(1), CombinationColumn::Kind::uncertainty).toStdString(), "no ±");
    QTest::mouseClick(&map(), Qt::LeftButton, {}, dot(1));
    EXPECT_EQ(line(), "No ±, as it rests on starting numbers: CG height.");
}

TEST_F(CombinationUncertaintyTest, KeptLengthsThatWereWorkedOutAreSaidToBe) {
    Car car = wagonCar();
    for (Link& link : car.links) {
        link.length = holeDistance(link);
    }
    const auto words = [this] { return part<QWidget>("boardCounts")->accessibleName().toStdString(); };
    open(car, LengthTreatment::keep);
    EXPECT_THAT(words(), testing::Not(testing::HasSubstr("worked out")));
    setOrigin(car, {.field = Field::linkLength, .link = 0}, Origin::workedOut);
    open(car, LengthTreatment::keep);
    EXPECT_THAT(words(), testing::StartsWith("1 length was worked out, not measured; "));
    setOrigin(car, {.field = Field::linkLength, .link = 1}, Origin::workedOut);
    open(car, LengthTreatment::keep);
    EXPECT_THAT(words(), testing::StartsWith("2 lengths were worked out, not measured; "));
    open(car, LengthTreatment::refit);
    EXPECT_THAT(words(), testing::Not(testing::HasSubstr("worked out")));
}

TEST_F(CombinationUncertaintyTest, TheColumnsWaitForTheSecondPass) {
    open(wagonCar());
    const std::uint64_t other = *state_.present == 0 ? 1 : 0;
    EXPECT_EQ(cell(rowOf(other), CombinationColumn::Kind::uncertainty).toStdString(), "—");
    EXPECT_EQ(cell(rowOf(other), CombinationColumn::Kind::toldApart).toStdString(), "—");
    fillUncertainties(wagonCar());
    show();
    const double half = kCoverage95 * state_.uncertainties[other].antiSquat;
    EXPECT_EQ(cell(rowOf(other), CombinationColumn::Kind::uncertainty).toStdString(),
              "± " + std::to_string(std::lround(half)));
}

TEST_F(CombinationUncertaintyTest, WhatCannotBeToldApartIsSaidSoAndTheRestToo) {
    // A second upper hole a sixteenth above the first, which no tape tells from it.
    Car car = wagonCar();
    car.links[1].chassis.holes[1].at = car.links[1].chassis.holes[0].at + Eigen::Vector3d(0, 0, 0.0004);
    openAccuracy(car);
    int alike = 0;
    int clear = 0;
    for (const HoleCombination& combination : state_.combinations) {
        const std::string text =
            cell(rowOf(combination.index), CombinationColumn::Kind::toldApart).toStdString();
        if (combination.index == *state_.present) {
            EXPECT_EQ(text, "");
            continue;
        }
        // Against 1.96 standard uncertainties of the difference (JCGM 100:2008, table G.1).
        const double limit = 1.959964 * state_.uncertainties[combination.index].antiSquatDifference;
        EXPECT_EQ(text, apart(combination.index) < limit ? "can't tell apart" : "yes");
        ++(apart(combination.index) < limit ? alike : clear);
    }
    EXPECT_GT(alike, 0);
    EXPECT_GT(clear, 0);
}

TEST_F(CombinationUncertaintyTest, TheLineSpeaksOfTheCombinationPointedAtOrSelected) {
    openAccuracy(wagonCar());
    EXPECT_FALSE(part<QLabel>("boardUncertainty")->isVisible());
    const std::uint64_t other = *state_.present == 0 ? 2 : 0;
    QTest::mouseClick(&map(), Qt::LeftButton, Qt::NoModifier, dot(other));
    const bool isAlike = cannotTellApart(apart(other), state_.uncertainties[other].antiSquatDifference);
    EXPECT_THAT(line(), StartsWith(isAlike ? "Can't tell these two apart: " : "Sure: "));
    EXPECT_THAT(line(), HasSubstr(std::to_string(std::lround(apart(other))) + " % ± "));
    QTest::mouseClick(&map(), Qt::LeftButton, Qt::NoModifier, dot(*state_.present));
    EXPECT_THAT(line(), StartsWith("Anti-squat "));
    QTest::keyClick(&map(), Qt::Key_Escape);
    QTest::mouseMove(&map(), QPoint(1, 1));
    EXPECT_EQ(line(), "");
}

// Bars where there are uncertainties: the picture differs below and above a dot, and with many combinations
// only by the marked ones.
TEST_F(CombinationUncertaintyTest, BarsStandOnTheMap) {
    open(wagonCar());
    const QImage bare = map().grab().toImage();
    fillUncertainties(wagonCar());
    show();
    const QImage barred = map().grab().toImage();
    EXPECT_NE(bare, barred);
    const CombinationMapScale& scale = map().scale();
    const auto differsAt = [&](std::uint64_t combination, double halfWidths) {
        const double up = halfWidths * kCoverage95 * state_.uncertainties[combination].antiSquat;
        const QPointF end(dot(combination).x(), scale.y(antiSquatOf(combination) + up));
        EXPECT_TRUE(scale.plot().contains(end));
        bool differs = false;
        for (int dx = -1; dx <= 1; ++dx) {
            const QPoint pixel = end.toPoint() + QPoint(dx, 0);
            differs = differs || bare.pixel(pixel) != barred.pixel(pixel);
        }
        return differs;
    };
    for (const HoleCombination& combination : state_.combinations) {
        if (combination.index == *state_.present) {
            continue;  // its mark is as large as its bars
        }
        EXPECT_TRUE(differsAt(combination.index, 0.9)) << combination.index;
        EXPECT_TRUE(differsAt(combination.index, -0.9)) << combination.index;
    }
}

TEST_F(CombinationUncertaintyTest, WithManyCombinationsOnlyTheMarkedOnesHaveBars) {
    open(coupeCar());
    ASSERT_GT(state_.combinations.size(), kFewCombinations);
    fillUncertainties(coupeCar());
    show();
    const QImage now = map().grab().toImage();
    state_.uncertainties[*state_.present] = {};
    ++state_.uncertaintyCount;
    show();
    const QImage none = map().grab().toImage();
    EXPECT_NE(now, none) << "the one in use has bars";
    state_.uncertainties.clear();
    ++state_.uncertaintyCount;
    show();
    EXPECT_EQ(map().grab().toImage(), none) << "and no other";
}

TEST_F(CombinationUncertaintyTest, SortsFromAlikeToClear) {
    openAccuracy(coupeCar());
    table().sortByColumn(columnOf(CombinationColumn::Kind::toldApart), Qt::AscendingOrder);
    const int first = rowOf(*state_.present);
    EXPECT_EQ(first, 0) << "the choice in use is like itself";
    EXPECT_EQ(cell(1, CombinationColumn::Kind::toldApart).toStdString(), "can't tell apart");
}

}  // namespace
}  // namespace bolthole
