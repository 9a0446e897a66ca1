// The hole board as a person uses it: one selection between map and table, bolting, the header, and what it
// says where there is nothing to choose.
#include "widgets/board/hole_board.h"

#include <gmock/gmock.h>

#include <QCheckBox>
#include <QComboBox>
#include <QHeaderView>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QSignalSpy>
#include <QStandardItemModel>
#include <algorithm>

#include "geometry/car/starting_numbers.h"
#include "tests/support/board_bench.h"
#include "widgets/board/hole_board_message.h"
#include "widgets/kit/number_field.h"

namespace bolthole::test {
namespace {

using Kind = CombinationColumn::Kind;

class HoleBoardTest : public BoardBench {
  protected:
    void pick(std::uint64_t combination) { QTest::mouseClick(&map(), Qt::LeftButton, {}, dot(combination)); }
    const HoleUse& use(std::size_t combination) { return state_.combinations[combination].use; }
    void expectBolts(std::size_t combination, LengthTreatment lengths) {
        ASSERT_EQ(edits_.size(), 1U);
        EXPECT_EQ(edits_[0].second, EditPhase::whole);
        const auto& chosen = *edits_[0].first.as<ChooseHoles>();
        EXPECT_EQ(chosen.use, use(combination));
        EXPECT_EQ(chosen.lengths, lengths);
    }
    QString message() {
        auto* label = part<QLabel>("boardMessage");
        return label->isVisible() ? label->text() : QString();
    }
    QString order() { return part<QLabel>("boardOrder")->text(); }
};

TEST_F(HoleBoardTest, ADotPickedOnTheMapIsTheSelectedRowAndPointedAt) {
    open(wagonCar());
    for (const std::size_t combination : {0U, 3U, 5U}) {
        pick(combination);
        EXPECT_EQ(selectedUse(), use(combination));
        EXPECT_EQ(pointed_.back(), use(combination));
    }
    EXPECT_TRUE(edits_.empty());
}

TEST_F(HoleBoardTest, ARowPickedInTheTableIsMarkedOnTheMap) {
    open(wagonCar());
    const QImage before = map().grab().toImage();
    QTest::mouseClick(table().viewport(), Qt::LeftButton, {},
                      table().visualRect(table().combinations().index(2, 1)).center());
    EXPECT_EQ(pointed_.back(), selectedUse());
    EXPECT_NE(map().grab().toImage(), before);
}

TEST_F(HoleBoardTest, EnterADoubleClickAndTheButtonBolt) {
    open(wagonCar(), LengthTreatment::uppers);
    pick(4);
    QTest::keyClick(&map(), Qt::Key_Return);
    expectBolts(4, LengthTreatment::uppers);
    edits_.clear();
    QTest::keyClick(&table(), Qt::Key_Enter);
    expectBolts(4, LengthTreatment::uppers);
    edits_.clear();
    QTest::mouseDClick(&map(), Qt::LeftButton, {}, dot(1));
    expectBolts(1, LengthTreatment::uppers);
    edits_.clear();
    pick(0);
    QTest::mouseClick(part<QPushButton>("boltCombination"), Qt::LeftButton);
    expectBolts(0, LengthTreatment::uppers);
}

TEST_F(HoleBoardTest, WhatIsBoltedAlreadyOrCannotBeAssembledIsNotBolted) {
    bench_.car = wagonCar();
    state_ = solvedBoard(bench_.car);
    state_.combinations[1] = HoleCombination{.use = use(1), .index = 1, .assembled = false, .problems = 1};
    openWindow();
    auto* button = part<QPushButton>("boltCombination");
    EXPECT_FALSE(button->isEnabled());
    pick(*state_.present);
    EXPECT_FALSE(button->isEnabled());
    EXPECT_THAT(button->toolTip().toStdString(), testing::HasSubstr("bolted to these holes now"));
    const int row = *table().combinations().rowOf(1);
    table().selectRow(row);
    EXPECT_EQ(selectedUse(), use(1));
    EXPECT_FALSE(button->isEnabled());
    QTest::keyClick(&table(), Qt::Key_Return);
    EXPECT_TRUE(edits_.empty());
}

TEST_F(HoleBoardTest, PointingGoesAndTheSelectionStaysPointedAt) {
    open(wagonCar());
    QTest::mouseMove(&map(), dot(3));
    EXPECT_EQ(pointed_.back(), use(3));
    QTest::mouseMove(&map(), map().scale().plot().topRight().toPoint() + QPoint(-3, 3));
    EXPECT_EQ(pointed_.back(), std::nullopt);
    pick(5);
    QTest::mouseMove(&map(), dot(1));
    EXPECT_EQ(pointed_.back(), use(1));
    QEvent leave(QEvent::Leave);
    QCoreApplication::sendEvent(&map(), &leave);
    EXPECT_EQ(pointed_.back(), use(5));
    EXPECT_EQ(selectedUse(), use(5));
    QTest::mouseMove(table().viewport(), table().visualRect(table().combinations().index(0, 1)).center());
    EXPECT_EQ(pointed_.back(), state_.combinations[*table().combinations().itemAt(0)].use);
}

TEST_F(HoleBoardTest, AClickOnEmptyGroundAndEscapeDeselect) {
    open(wagonCar());
    const QPoint empty = map().scale().plot().topRight().toPoint() + QPoint(-4, 4);
    pick(3);
    QTest::mouseClick(&map(), Qt::LeftButton, {}, empty);
    EXPECT_EQ(selectedUse(), std::nullopt);
    EXPECT_EQ(pointed_.back(), std::nullopt);
    pick(3);
    QTest::keyClick(&map(), Qt::Key_Escape);
    EXPECT_EQ(selectedUse(), std::nullopt);
    EXPECT_TRUE(edits_.empty());
}

TEST_F(HoleBoardTest, ArrowKeysWalkTheTableAndTheMap) {
    open(wagonCar());
    table().setFocus();
    table().selectRow(0);
    QTest::keyClick(&table(), Qt::Key_Down);
    EXPECT_EQ(selectedUse(), state_.combinations[*table().combinations().itemAt(1)].use);
    EXPECT_EQ(pointed_.back(), selectedUse());
    pick(*state_.present);
    const QPoint before = dot(*state_.present);
    QTest::keyClick(&map(), Qt::Key_Left);
    const std::optional<HoleUse> left = selectedUse();
    ASSERT_TRUE(left.has_value());
    const auto found = std::ranges::find(state_.combinations, *left, &HoleCombination::use);
    EXPECT_LT(dot(found->index).x(), before.x());
    QTest::keyClick(&map(), Qt::Key_Right);
    EXPECT_GT(dot(std::ranges::find(state_.combinations, *selectedUse(), &HoleCombination::use)->index).x(),
              dot(found->index).x());
}

// New combinations come five times a second in a drag of a hole.
TEST_F(HoleBoardTest, WhatThePersonSetStaysWhileCombinationsComeAnew) {
    open(coupeCar());
    QTest::mouseClick(table().horizontalHeader()->viewport(), Qt::LeftButton, {},
                      {table().columnViewportPosition(2) + 10, 8});
    table().setColumnWidth(1, 123);
    part<QLineEdit>("combinationFilter")->setFocus();
    table().selectRow(40);
    const HoleUse selected = *selectedUse();
    table().verticalScrollBar()->setValue(30);
    table().horizontalScrollBar()->setValue(60);
    const auto said = pointed_.size();
    Car moved = coupeCar();
    moved.links[0].chassis.holes[1].at.z() += 0.003;
    bench_.car = moved;
    state_ = solvedBoard(moved);
    std::ranges::reverse(state_.combinations);
    show();
    EXPECT_EQ(selectedUse(), selected);
    EXPECT_EQ(table().verticalScrollBar()->value(), 30);
    EXPECT_EQ(table().horizontalScrollBar()->value(), 60);
    EXPECT_EQ(table().combinations().sortColumn(), 2);
    EXPECT_EQ(table().columnWidth(1), 123);
    EXPECT_TRUE(part<QLineEdit>("combinationFilter")->hasFocus());
    EXPECT_EQ(pointed_.size(), said);
}

TEST_F(HoleBoardTest, ACombinationNotYetComputedStaysSelected) {
    open(wagonCar());
    pick(5);
    const HoleUse selected = use(5);
    const BoardState whole = state_;
    state_.combinations.resize(2);
    state_.complete = false;
    state_.car = std::make_shared<const Car>(bench_.car);
    show();
    EXPECT_EQ(pointed_.back(), selected);
    EXPECT_THAT(part<QWidget>("boardCounts")->accessibleName().toStdString(), testing::HasSubstr("2 of 6"));
    state_ = whole;
    show();
    EXPECT_EQ(selectedUse(), selected);
    state_.combinations.resize(2);
    show();
    EXPECT_EQ(pointed_.back(), std::nullopt);
}

TEST_F(HoleBoardTest, TheBoardMovedOnUnderItShowsNothingWrong) {
    open(wagonCar());
    const BoardState before = state_;
    state_.combinations.clear();
    QApplication::processEvents();
    EXPECT_EQ(cell(0, Kind::antiSquat), QString());
    EXPECT_FALSE(board_->grab().isNull());
    state_ = before;
    show();
    EXPECT_THAT(cell(0, Kind::antiSquat).toStdString(), testing::EndsWith(" %"));
}

TEST_F(HoleBoardTest, TheLengthTreatmentIsChosenInTheHeader) {
    open(wagonCar(), LengthTreatment::keep);
    QSignalSpy spy(board_.get(), &HoleBoard::lengthsChosen);
    auto* combo = part<QComboBox>("lengthTreatment");
    combo->setFocus();
    QTest::keyClick(combo, Qt::Key_Down);
    ASSERT_EQ(spy.count(), 1);
    EXPECT_EQ(spy[0][0].value<LengthTreatment>(), LengthTreatment::refit);
    const auto words = part<QWidget>("boardCounts")->accessibleName().toStdString();
    EXPECT_EQ(words, "6 combinations, " + std::string(wordsFor(LengthTreatment::keep)));
}

// Kept lengths that a refit worked out are no more measured than the refit was.
// On the panel's other pages nobody sees what is selected here.
TEST_F(HoleBoardTest, OutOfSightItPointsAtNothing) {
    open(wagonCar());
    pick(4);
    EXPECT_EQ(pointed_.back(), use(4));
    board_->hide();
    EXPECT_EQ(pointed_.back(), std::nullopt);
    show();
    EXPECT_EQ(pointed_.back(), std::nullopt);
    board_->show();
    EXPECT_EQ(pointed_.back(), use(4)) << "it is still selected";
}

TEST_F(HoleBoardTest, WithoutAnUpperRodTheUppersCannotBeSetAndItSaysWhy) {
    Car car = wagonCar();
    open(car);
    const auto* items = qobject_cast<QStandardItemModel*>(part<QComboBox>("lengthTreatment")->model());
    const int uppers = static_cast<int>(LengthTreatment::uppers);
    EXPECT_TRUE(items->item(uppers)->isEnabled());
    car.links[1].role = Role::lower;
    bench_.car = car;
    state_ = solvedBoard(car);
    show();
    EXPECT_FALSE(items->item(uppers)->isEnabled());
    EXPECT_THAT(items->item(uppers)->toolTip().toStdString(), testing::HasSubstr("no upper link"));
}

TEST_F(HoleBoardTest, TheScopeIsOfferedOnlyWhereItMatters) {
    open(wagonCar());
    auto* sides = part<QCheckBox>("sidesTogether");
    auto* crosswise = part<QCheckBox>("crosswiseToo");
    EXPECT_FALSE(sides->isVisible());
    EXPECT_FALSE(crosswise->isVisible());
    Car car = coupeCar();
    Link right = car.links[1];
    car.links[1].side = Side::left;
    right.side = Side::right;
    car.links.push_back(right);
    bench_.car = car;
    state_ = solvedBoard(car, LengthTreatment::keep, {.tieSides = true});
    show();
    EXPECT_TRUE(sides->isVisible());
    EXPECT_TRUE(sides->isChecked());
    EXPECT_EQ(crosswise->text(), "Track bar too");
    QSignalSpy spy(board_.get(), &HoleBoard::scopeChosen);
    QTest::mouseClick(crosswise, Qt::LeftButton, {}, {8, crosswise->height() / 2});
    ASSERT_EQ(spy.count(), 1);
    EXPECT_EQ(spy[0][0].value<CombinationScope>(), (CombinationScope{.tieSides = true, .crosswise = false}));
}

TEST_F(HoleBoardTest, TheOrderIsWrittenDown) {
    open(wagonCar());
    EXPECT_THAT(order().toStdString(), testing::StartsWith("Drag a window on the map to say what you want. "
                                                           "Order: least pinion change"));
    bench_.car.target = TargetWindow{1.2, 1.6, 100, 140};
    show();
    EXPECT_THAT(order().toStdString(),
                testing::StartsWith("Order: inside the target window first, then least pinion change"));
    EXPECT_THAT(order().toStdString(), testing::HasSubstr("then fewest bolts moved"));
    table().combinations().sort(columnOf(Kind::antiSquat), Qt::DescendingOrder);
    EXPECT_THAT(order().toStdString(),
                testing::StartsWith("Sorted by Anti-squat; click Rank for the order: "));
}

TEST_F(HoleBoardTest, WhyThereIsNothingToSee) {
    state_.problem = "the wheelbase must be above 0";
    openWindow();
    EXPECT_EQ(message(), state_.problem);
    state_.problem.clear();
    show();
    EXPECT_EQ(message(), "Computing the combinations…");
    Car one = wagonCar();
    one.links[0].axle.holes.resize(1);
    one.links[0].axle.use = 0;
    one.links[1].chassis.holes.resize(1);
    bench_.car = one;
    state_ = solvedBoard(one);
    show();
    EXPECT_EQ(message(), "Every bracket has one hole: add holes in the car sheet to compare.");
    bench_.car = wagonCar();
    state_ = solvedBoard(bench_.car);
    show();
    EXPECT_EQ(message(), QString());
}

TEST_F(HoleBoardTest, OnlyTheTrackBarLeftOutIsSaid) {
    Car car = coupeCar();
    for (Link& link : car.links) {
        if (link.name != "track bar") {
            link.chassis.holes.resize(1);
            link.axle.holes.resize(1);
            link.chassis.use = link.axle.use = 0;
        }
    }
    open(car);
    EXPECT_EQ(message(), QString());
    state_ = solvedBoard(car, LengthTreatment::keep, {.crosswise = false});
    show();
    EXPECT_THAT(message().toStdString(), testing::HasSubstr("take part"));
    EXPECT_TRUE(part<QCheckBox>("crosswiseToo")->isVisible());
}

TEST_F(HoleBoardTest, TooManyCombinationsAreAskedAbout) {
    bench_.car = wagonCar();
    state_.car = std::make_shared<const Car>(bench_.car);
    state_.total = 234'567;
    state_.mayCompute = false;
    openWindow();
    EXPECT_THAT(message().toStdString(),
                testing::MatchesRegex("This car has 234,567 combinations; computing them takes about .*"));
    QSignalSpy spy(board_.get(), &HoleBoard::computeRequested);
    auto* button = part<QPushButton>("computeAll");
    ASSERT_TRUE(button->isVisible());
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_EQ(spy.count(), 1);
    state_.total = CombinationSpace::kCountLimit;
    show();
    EXPECT_FALSE(button->isVisible());
    EXPECT_THAT(message().toStdString(), testing::HasSubstr("more than can be compared at once"));
}

TEST(BoardMessages, TimesAreSaidToOneDigit) {
    EXPECT_EQ(aboutSeconds(0.3), "about a second");
    EXPECT_EQ(aboutSeconds(17.2), "about 20 s");
    EXPECT_EQ(aboutSeconds(600), "about 10 min");
    EXPECT_EQ(aboutSeconds(3 * 3600), "about 3 h");
}

TEST_F(HoleBoardTest, TheTargetNumbersAreTypedToo) {
    Car car = wagonCar();
    car.target = TargetWindow{50 * kMetresPerInch, 66 * kMetresPerInch, 105, 135};
    open(car);
    const auto field = [&](const QString& name) {
        for (auto* candidate : board_->findChildren<NumberField*>()) {
            if (candidate->accessibleName() == name) {
                return candidate;
            }
        }
        ADD_FAILURE() << name.toStdString();
        return part<NumberField>("");
    };
    const auto type = [&](const QString& name, const QString& text) {
        field(name)->setFocus();
        field(name)->selectAll();
        QTest::keyClicks(field(name), text);
        QTest::keyClick(field(name), Qt::Key_Return);
    };
    const QString nearest = "Target IC distance, nearest";
    type(nearest, "45 1/2");
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_NEAR(*bench_.car.target->icNear, 45.5 * kMetresPerInch, 1e-12);
    EXPECT_EQ(bench_.car.target->antiSquatHigh, 135);
    type(nearest, "plenty");
    type(nearest, "70");
    EXPECT_EQ(edits_.size(), 1U);
    EXPECT_TRUE(field(nearest)->hasProblem());
    EXPECT_THAT(field(nearest)->note().toStdString(), testing::HasSubstr("farther out"));
    QTest::keyClick(field(nearest), Qt::Key_Escape);
    field("Target IC distance, farthest")->clear();
    QTest::keyClick(field("Target IC distance, farthest"), Qt::Key_Space);
    QTest::keyClick(field("Target IC distance, farthest"), Qt::Key_Return);
    EXPECT_EQ(bench_.car.target->icFar, std::nullopt);
    QTest::mouseClick(part<QWidget>("clearTarget"), Qt::LeftButton);
    EXPECT_EQ(bench_.car.target, std::nullopt);
    type("Target anti-squat, min", "100");
    ASSERT_TRUE(bench_.car.target.has_value());
    EXPECT_EQ(bench_.car.target->antiSquatLow, 100);
    EXPECT_GT(bench_.car.target->antiSquatHigh, 100);
    EXPECT_GT(bench_.car.target->inverseNear(), bench_.car.target->inverseFar());
}

TEST_F(HoleBoardTest, EveryPartHasANameAndCanBeReached) {
    Car car = coupeCar();
    open(car);
    std::vector<QWidget*> reached;
    QWidget* first = part<QComboBox>("lengthTreatment");
    first->setFocus();
    for (int tab = 0; tab < 30; ++tab) {
        QWidget* at = QApplication::focusWidget();
        ASSERT_NE(at, nullptr);
        if (std::ranges::find(reached, at) != reached.end()) {
            break;
        }
        reached.push_back(at);
        const auto* button = qobject_cast<QAbstractButton*>(at);
        EXPECT_FALSE(at->accessibleName().isEmpty() && (button == nullptr || button->text().isEmpty()))
            << at->metaObject()->className();
        QTest::keyClick(at, Qt::Key_Tab);
    }
    for (QWidget* part :
         std::initializer_list<QWidget*>{&map(), &table(), part<QLineEdit>("combinationFilter")}) {
        EXPECT_NE(std::ranges::find(reached, part), reached.end());
    }
}

TEST_F(HoleBoardTest, DarkAndLightAndUnitsDiffer) {
    open(coupeCar());
    const QImage light = board_->grab().toImage();
    ThemeKeeper::instance().choose(Appearance::dark);
    const QImage dark = board_->grab().toImage();
    ThemeKeeper::instance().choose(Appearance::light);
    EXPECT_GT(light.pixelColor(4, 4).lightness(), dark.pixelColor(4, 4).lightness() + 100);
    const QString inches = cell(0, Kind::instantCenter);
    bench_.style.units = Units::metric;
    show();
    EXPECT_NE(cell(0, Kind::instantCenter), inches);
    EXPECT_THAT(columnTitle({Kind::instantCenter}, bench_.car, Units::metric).toStdString(),
                testing::HasSubstr("mm"));
}

TEST_F(HoleBoardTest, ALowBoardKeepsMapAndTable) {
    open(coupeCar());
    board_->resize(board_->minimumSizeHint());
    QApplication::processEvents();
    EXPECT_EQ(board_->height(), 170);
    EXPECT_FALSE(part<QLabel>("boardOrder")->isVisible());
    EXPECT_GE(map().height(), 60);
    EXPECT_GE(table().height(), 60);
    EXPECT_GE(map().width(), 200);
}

TEST_F(HoleBoardTest, SixtyFiveThousandCombinationsAreShownSortedAndFiltered) {
    Car car = wagonCar();
    for (Link& link : car.links) {
        for (const End end : {End::chassis, End::axle}) {
            const Hole hole = link.bracket(end).holes.front();
            link.bracket(end).holes.assign(16, hole);
            link.bracket(end).use = 0;
        }
    }
    bench_.car = car;
    const HoleCombination like = solvedBoard(wagonCar()).combinations[0];
    const CombinationSpace space(car, {});
    state_.total = space.count();
    ASSERT_EQ(state_.total, kManyCombinations);
    state_.car = std::make_shared<const Car>(car);
    state_.present = space.present();
    state_.complete = true;
    state_.combinations.assign(kManyCombinations, like);
    for (std::size_t index = 0; index < kManyCombinations; ++index) {
        HoleCombination& combination = state_.combinations[index];
        combination.index = index;
        combination.use = space.at(index);
        combination.ride[static_cast<std::size_t>(Figure::icX)] =
            1 / (1.5 - 0.00002 * static_cast<double>(index));
        combination.ride[static_cast<std::size_t>(Figure::antiSquat)] =
            50 + static_cast<double>(index % 997) / 5;
    }
    openWindow();
    EXPECT_EQ(table().combinations().rowCount(), static_cast<int>(kManyCombinations));
    EXPECT_FALSE(board_->grab().isNull());
    table().combinations().sort(columnOf(Kind::antiSquat), Qt::DescendingOrder);
    EXPECT_EQ(cell(0, Kind::antiSquat), "249 %");
    pick(30'000);
    EXPECT_TRUE(selectedUse().has_value());
    bench_.car.target = TargetWindow{1 / 1.2, 1 / 1.1, 100, 120};
    show();
    QTest::mouseClick(part<QCheckBox>("targetOnly"), Qt::LeftButton, {}, {8, 10});
    const auto target = std::ranges::count_if(state_.combinations, [&](const HoleCombination& combination) {
        return meetsTarget(combination, *bench_.car.target);
    });
    EXPECT_EQ(table().combinations().rowCount(), target);
    EXPECT_GT(target, 0);
}

}  // namespace
}  // namespace bolthole::test
