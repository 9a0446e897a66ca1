// How sure the hole choices are, on the board: two columns, a line, bars on the map.
#include "widgets/board/choice_sure.h"

#include <gmock/gmock.h>

#include <QLabel>
#include <QTest>
#include <cmath>

#include "geometry/units/sure_text.h"
#include "tests/support/board_bench.h"

namespace bolthole {
namespace {

using test::coupeCar;
using test::wagonCar;
using testing::HasSubstr;
using testing::StartsWith;

class ChoiceSureTest : public test::BoardBench {
  protected:
    // As the second pass would fill it.
    void openSure(const Car& car) {
        open(car);
        fillSpreads(car);
        show();
    }
    void fillSpreads(const Car& car) {
        const ChoiceSpace space(car, {});
        const ChoiceSpreader spreader(car, LengthTreatment::keep);
        state_.spreads.clear();
        for (std::uint64_t index = 0; index < space.count(); ++index) {
            state_.spreads.push_back(spreader.solve(space.at(index)));
        }
        state_.spreadCount = state_.spreads.size();
    }
    int rowOf(std::uint64_t choice) {
        for (std::size_t at = 0; at < state_.choices.size(); ++at) {
            if (state_.choices[at].index == choice) {
                return table().choices().rowOf(at).value_or(-1);
            }
        }
        return -1;
    }
    [[nodiscard]] double antiSquatOf(std::uint64_t choice) const {
        return std::ranges::find(state_.choices, choice, &HoleChoice::index)
            ->ride[static_cast<std::size_t>(Figure::antiSquat)];
    }
    [[nodiscard]] double apart(std::uint64_t choice) const {
        return std::abs(antiSquatOf(choice) - antiSquatOf(*state_.present));
    }
    std::string line() { return part<QLabel>("boardSure")->text().toStdString(); }
};

TEST_F(ChoiceSureTest, TheColumnsWaitForTheSecondPass) {
    open(wagonCar());
    const std::uint64_t other = *state_.present == 0 ? 1 : 0;
    EXPECT_EQ(cell(rowOf(other), ChoiceColumn::Kind::sure).toStdString(), "—");
    EXPECT_EQ(cell(rowOf(other), ChoiceColumn::Kind::toldApart).toStdString(), "—");
    fillSpreads(wagonCar());
    show();
    const double half = kCoverage95 * state_.spreads[other].antiSquat;
    EXPECT_EQ(cell(rowOf(other), ChoiceColumn::Kind::sure).toStdString(),
              "± " + std::to_string(std::lround(half)));
}

TEST_F(ChoiceSureTest, WhatCannotBeToldApartIsSaidSoAndTheRestToo) {
    // A second upper hole a sixteenth above the first, which no tape tells from it.
    Car car = wagonCar();
    car.links[1].chassis.holes[1].at = car.links[1].chassis.holes[0].at + Eigen::Vector3d(0, 0, 0.0004);
    openSure(car);
    int alike = 0;
    int sure = 0;
    for (const HoleChoice& choice : state_.choices) {
        const std::string text = cell(rowOf(choice.index), ChoiceColumn::Kind::toldApart).toStdString();
        if (choice.index == *state_.present) {
            EXPECT_EQ(text, "");
            continue;
        }
        // Against 1.96 standard uncertainties of the difference (JCGM 100:2008, table G.1).
        const double limit = 1.959964 * state_.spreads[choice.index].antiSquatDifference;
        EXPECT_EQ(text, apart(choice.index) < limit ? "can't tell apart" : "yes");
        ++(apart(choice.index) < limit ? alike : sure);
    }
    EXPECT_GT(alike, 0);
    EXPECT_GT(sure, 0);
}

TEST_F(ChoiceSureTest, TheLineSpeaksOfTheChoicePointedAtOrSelected) {
    openSure(wagonCar());
    EXPECT_FALSE(part<QLabel>("boardSure")->isVisible());
    const std::uint64_t other = *state_.present == 0 ? 2 : 0;
    QTest::mouseClick(&map(), Qt::LeftButton, Qt::NoModifier, dot(other));
    const bool isAlike = cannotTellApart(apart(other), state_.spreads[other].antiSquatDifference);
    EXPECT_THAT(line(), StartsWith(isAlike ? "Can't tell these two apart: " : "Sure: "));
    EXPECT_THAT(line(), HasSubstr(std::to_string(std::lround(apart(other))) + " % ± "));
    QTest::mouseClick(&map(), Qt::LeftButton, Qt::NoModifier, dot(*state_.present));
    EXPECT_THAT(line(), StartsWith("Anti-squat "));
    QTest::keyClick(&map(), Qt::Key_Escape);
    QTest::mouseMove(&map(), QPoint(1, 1));
    EXPECT_EQ(line(), "");
}

// Bars where there are spreads: the picture differs below and above a dot, and with many choices only by the
// marked ones.
TEST_F(ChoiceSureTest, BarsStandOnTheMap) {
    open(wagonCar());
    const QImage bare = map().grab().toImage();
    fillSpreads(wagonCar());
    show();
    const QImage barred = map().grab().toImage();
    EXPECT_NE(bare, barred);
    const ChoiceMapScale& scale = map().scale();
    const auto differsAt = [&](std::uint64_t choice, double halfWidths) {
        const double up = halfWidths * kCoverage95 * state_.spreads[choice].antiSquat;
        const QPointF end(dot(choice).x(), scale.y(antiSquatOf(choice) + up));
        EXPECT_TRUE(scale.plot().contains(end));
        bool differs = false;
        for (int dx = -1; dx <= 1; ++dx) {
            const QPoint pixel = end.toPoint() + QPoint(dx, 0);
            differs = differs || bare.pixel(pixel) != barred.pixel(pixel);
        }
        return differs;
    };
    for (const HoleChoice& choice : state_.choices) {
        if (choice.index == *state_.present) {
            continue;  // its mark is as large as its bars
        }
        EXPECT_TRUE(differsAt(choice.index, 0.9)) << choice.index;
        EXPECT_TRUE(differsAt(choice.index, -0.9)) << choice.index;
    }
}

TEST_F(ChoiceSureTest, WithManyChoicesOnlyTheMarkedOnesHaveBars) {
    open(coupeCar());
    ASSERT_GT(state_.choices.size(), kFewChoices);
    fillSpreads(coupeCar());
    show();
    const QImage now = map().grab().toImage();
    state_.spreads[*state_.present] = {};
    ++state_.spreadCount;
    show();
    const QImage none = map().grab().toImage();
    EXPECT_NE(now, none) << "the one in use has bars";
    state_.spreads.clear();
    ++state_.spreadCount;
    show();
    EXPECT_EQ(map().grab().toImage(), none) << "and no other";
}

TEST_F(ChoiceSureTest, SortsFromAlikeToSure) {
    openSure(coupeCar());
    table().sortByColumn(columnOf(ChoiceColumn::Kind::toldApart), Qt::AscendingOrder);
    const int first = rowOf(*state_.present);
    EXPECT_EQ(first, 0) << "the choice in use is like itself";
    EXPECT_EQ(cell(1, ChoiceColumn::Kind::toldApart).toStdString(), "can't tell apart");
}

}  // namespace
}  // namespace bolthole
