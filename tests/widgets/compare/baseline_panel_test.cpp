// The baseline panel by real mouse and keys.
#include "widgets/compare/baseline_panel.h"

#include <gmock/gmock.h>

#include <QClipboard>
#include <QDate>
#include <QLineEdit>
#include <QMenu>
#include <QPlainTextEdit>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTimer>
#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "tests/support/baseline_bench.h"
#include "widgets/words/figure_words.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

class BaselinePanelTest : public test::BaselineBench {};

TEST_F(BaselinePanelTest, SaysWhatToDoWhileNothingIsKept) {
    EXPECT_EQ(message(), "Keep the current car, then move a bolt: the difference shows here.");
    EXPECT_FALSE(table()->isVisible());
    EXPECT_FALSE(list()->isVisible());
    for (const char* words : {"Compare with", "Swap", "Recover", "Rename…", "Delete"}) {
        EXPECT_FALSE(button(words)->isEnabled()) << words;
    }
}

// A length that both cars keep shows in no change and no figure's row.
TEST_F(BaselinePanelTest, SaysWhatNobodyMeasuredOfEitherCar) {
    const auto* said = panel_.findChild<QLabel*>(QStringLiteral("unmeasured"));
    state_.car.links[1].length = holeDistance(state_.car.links[1]);
    keep("as bolted");
    boltTop();
    EXPECT_FALSE(said->isVisible());
    setOrigin(state_.car, {.field = Field::linkLength, .link = 1}, Origin::workedOut);
    Car before = *state_.car.kept[0].car;
    setOrigin(before, {.field = Field::linkLength, .link = 1}, Origin::workedOut);
    state_.car.kept[0].car = std::make_shared<const Car>(before);
    show();
    EXPECT_TRUE(said->isVisible());
    EXPECT_EQ(said->text(), "Worked out, not measured: upper length");
    EXPECT_EQ(said->accessibleName(), said->text());
}

TEST_F(BaselinePanelTest, KeepAsksForANameAndANote) {
    click("Keep this setup…");
    QDialog* asked = dialog();
    ASSERT_NE(asked, nullptr);
    auto* name = asked->findChild<QLineEdit*>();
    EXPECT_EQ(name->text(), "middle / high") << "the current holes";
    const QString today = QDate::currentDate().toString(Qt::ISODate);
    bool showsToday = false;
    for (auto* label : asked->findChildren<QLabel*>()) {
        showsToday = showsToday || label->text() == today;
    }
    EXPECT_TRUE(showsToday);
    QTest::keyClick(name, Qt::Key_Backspace);
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_TRUE(asked->isVisible()) << "a state needs a name";
    QTest::keyClicks(name, "Monday");
    auto* note = asked->findChild<QPlainTextEdit*>();
    QTest::keyClicks(note, "dry");
    QTest::keyClick(note, Qt::Key_Tab);
    EXPECT_EQ(note->toPlainText(), "dry") << "Tab goes on";
    QTest::keyClick(name, Qt::Key_Return);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_EQ(lastEdit<KeepSetup>().name, "Monday");
    EXPECT_EQ(lastEdit<KeepSetup>().note, "dry");
    EXPECT_EQ(lastEdit<KeepSetup>().date, today.toStdString());
    EXPECT_EQ(list()->count(), 1);
    EXPECT_EQ(message(), "Nothing differs.");
    EXPECT_FALSE(table()->isVisible());
}

TEST_F(BaselinePanelTest, ASetupKeptRightAfterBoltingIsOfferedTheCarBeforeTheBolting) {
    const QString offer = QStringLiteral("Compare with the car before the last bolting");
    const auto before = std::make_shared<const Car>(state_.car);
    ASSERT_NE(button(offer), nullptr);
    EXPECT_FALSE(button(offer)->isVisible());
    boltTop();
    keep("as bolted");
    EXPECT_EQ(message(), "Nothing differs.");
    EXPECT_FALSE(button(offer)->isVisible()) << "nobody knows the car before";
    panel_.offerBeforeBolting(before);
    show();
    ASSERT_TRUE(button(offer)->isVisible());
    EXPECT_NE(button(offer)->focusPolicy() & Qt::TabFocus, 0);
    button(offer)->setFocus();
    QTest::keyClick(button(offer), Qt::Key_Space);
    EXPECT_EQ(lastEdit<KeepSetup>().name, "middle / high");
    EXPECT_EQ(*state_.car.baselineSetup()->car, withoutKept(*before));
    EXPECT_TRUE(table()->isVisible());
    EXPECT_FALSE(button(offer)->isVisible());
    make(SetBaseline{0});
    ASSERT_TRUE(button(offer)->isVisible());
    click(offer);
    EXPECT_EQ(lastEdit<SetBaseline>().state, 1) << "it is kept already";
    EXPECT_EQ(state_.car.kept.size(), 2U);
}

TEST_F(BaselinePanelTest, TheDefaultNameIsNotTakenTwice) {
    keep("middle / high");
    panel_.askKeep();
    EXPECT_EQ(dialog()->findChild<QLineEdit*>()->text(), "middle / high, 2");
    QTest::keyClick(dialog(), Qt::Key_Escape);
    EXPECT_EQ(dialog(), nullptr);
    EXPECT_TRUE(edits_.empty());
}

TEST_F(BaselinePanelTest, TheTableHoldsBothCarsFigures) {
    keep("Monday");
    boltTop();
    EXPECT_EQ(message(), "");
    ASSERT_TRUE(table()->isVisible());
    const Trace before = computeTrace(*state_.car.kept[0].car);
    const Trace after = computeTrace(state_.car);
    const auto text = [](double value, Quantity quantity) {
        return fineFigureText(value, quantity, Units::inch);
    };
    const std::vector stations{std::pair{&before.ride, &after.ride},
                               {&before.stations.back(), &after.stations.back()},
                               {&before.stations.front(), &after.stations.front()},
                               {&before.ride, &after.ride}};
    int column = 0;
    for (const auto& [from, to] : stations) {
        EXPECT_EQ(cell("Anti-squat, %", column), text((*from)[Figure::antiSquat], Quantity::percent));
        EXPECT_EQ(cell("Anti-squat, %", column + 1), text((*to)[Figure::antiSquat], Quantity::percent));
        const double change =
            std::round(10 * (*to)[Figure::antiSquat]) / 10 - std::round(10 * (*from)[Figure::antiSquat]) / 10;
        EXPECT_EQ(cell("Anti-squat, %", column + 2),
                  (change > 0 ? "+" : "") + text(change, Quantity::percent))
            << "what stands beside it, taken from each other";
        EXPECT_EQ(cell("Instant center, ahead, in", column + 1), text((*to)[Figure::icX], Quantity::length));
        column += 3;
    }
    EXPECT_THAT(cell("Anti-squat, %", 2), HasSubstr("\u2212")) << "the lowers' axle end went up";
}

TEST_F(BaselinePanelTest, WhatTellsStandsInFrontAndTheRestIsFolded) {
    keep("Monday");
    boltTop();
    const std::vector<FigureChange> order = changesAt(&comparison_->before.ride, &comparison_->after.ride);
    for (int row = 0; row < 3; ++row) {
        EXPECT_EQ(table()->verticalHeaderItem(row)->text(),
                  figureWords(order[static_cast<std::size_t>(row)].figure, Units::inch));
    }
    ASSERT_TRUE(fold()->isVisible());
    EXPECT_THAT(fold()->text().toStdString(), HasSubstr("without a change big enough to matter"));
    const int ground = rowOf("Ground angle, °");
    ASSERT_GE(ground, 0);
    EXPECT_TRUE(table()->isRowHidden(ground)) << "both ends go alike: the ground stays level";
    QTest::mouseClick(fold(), Qt::LeftButton);
    EXPECT_FALSE(table()->isRowHidden(ground));
    show();
    EXPECT_FALSE(table()->isRowHidden(ground)) << "stays unfolded";
    fold()->setFocus();
    QTest::keyClick(fold(), Qt::Key_Space);
    EXPECT_TRUE(table()->isRowHidden(ground));
}

TEST_F(BaselinePanelTest, SaysWhatWasTurned) {
    state_.car.links[0].length = holeDistance(state_.car.links[0]);
    state_.car.links[1].length = holeDistance(state_.car.links[1]);
    keep("Monday");
    boltTop();
    // 3/4-16 UNF, both ends threaded: 3.175 mm a turn.
    make(SetNumber{{.field = Field::linkLength, .link = 1}, *state_.car.links[1].length + 2.5 * 0.003175});
    make(SetNumber{{.field = Field::rearTireRadius}, 14 * kMetresPerInch});
    EXPECT_THAT(lines(), testing::ElementsAre("Lower, axle: bolt from middle to top, 2 bolts",
                                              testing::AllOf(HasSubstr("Upper length: "),
                                                             HasSubstr("2.50 turns longer, 2 links")),
                                              "Rear tire radius, loaded: from 13 1/2 to 14 in"));
    QApplication::clipboard()->clear();
    auto* changes = part<QListWidget>("changes");
    changes->setFocus();
    QTest::keyClick(changes, Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(QApplication::clipboard()->text().count('\n'), 2);
}

TEST_F(BaselinePanelTest, AFigureThatOnlyOneCarHasAppearsOrVanishes) {
    keep("Monday");
    make(SetDriveline{std::nullopt});
    EXPECT_EQ(cell("Pinion angle, °", 1), "\u2014");
    EXPECT_EQ(cell("Pinion angle, °", 2), "vanishes");
    QTest::mouseClick(button("Swap"), Qt::LeftButton);
    EXPECT_EQ(cell("Pinion angle, °", 0), "\u2014");
    EXPECT_EQ(cell("Pinion angle, °", 2), "appears");
    make(SetDriveline{std::nullopt});
    boltTop();
    EXPECT_EQ(rowOf("Pinion angle, °"), -1) << "neither car has it";
}

TEST_F(BaselinePanelTest, TheCursorHasAColumnOfItsOwn) {
    keep("Monday");
    boltTop();
    state_.cursorTravel = 2 * kMetresPerInch;
    moveCursor();
    panel_.showCursor(state_, comparison());
    const Station before = solveStation(*state_.car.kept[0].car, state_.cursorTravel);
    EXPECT_EQ(cell("Anti-squat, %", 9),
              fineFigureText(before[Figure::antiSquat], Quantity::percent, Units::inch));
    EXPECT_EQ(cell("Anti-squat, %", 0),
              fineFigureText(comparison_->before.ride[Figure::antiSquat], Quantity::percent, Units::inch));
}

TEST_F(BaselinePanelTest, SelectionAndScrollStayWithTheirFigures) {
    panel_.resize(700, 240);
    keep("Monday");
    boltTop();
    table()->setFocus();
    table()->setCurrentCell(rowOf("Anti-squat, %"), 1);
    table()->horizontalScrollBar()->setValue(20);
    const int scrolled = table()->verticalScrollBar()->value();
    make(SetNumber{{.field = Field::pinionAngle}, 0.1});  // another order
    EXPECT_EQ(table()->verticalHeaderItem(table()->currentRow())->text(), "Anti-squat, %");
    ASSERT_EQ(table()->selectedItems().size(), 1);
    EXPECT_EQ(table()->selectedItems().front()->row(), table()->currentRow());
    EXPECT_EQ(table()->currentColumn(), 1);
    EXPECT_EQ(table()->horizontalScrollBar()->value(), 20);
    EXPECT_EQ(table()->verticalScrollBar()->value(), scrolled);
    list()->setFocus();
    show();
    EXPECT_TRUE(list()->hasFocus()) << "focus is not taken away";
}

TEST_F(BaselinePanelTest, CopiesTabSeparated) {
    keep("Monday");
    boltTop();
    table()->setFocus();
    QTest::keyClick(table(), Qt::Key_C, Qt::ControlModifier);
    const QStringList all = QApplication::clipboard()->text().split('\n');
    EXPECT_EQ(all.front(),
              "figure\tat ride before\tat ride after\tat ride change\tfull bump before\t"
              "full bump after\tfull bump change\tfull droop before\tfull droop after\t"
              "full droop change\tat the cursor: ride before\tat the cursor: ride after\t"
              "at the cursor: ride change");
    for (const QString& line : all) {
        EXPECT_EQ(line.count('\t'), 12);
    }
    int shown = 0;
    for (int row = 0; row < table()->rowCount(); ++row) {
        shown += table()->isRowHidden(row) ? 0 : 1;
    }
    EXPECT_EQ(all.size(), shown + 1);
    const int row = rowOf("Anti-squat, %");
    table()->setRangeSelected({row, 1, row, 2}, true);
    QTest::keyClick(table(), Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(QApplication::clipboard()->text().toStdString(),
              "figure\tat ride after\tat ride change\nAnti-squat, %\t" + cell("Anti-squat, %", 1) + "\t" +
                  cell("Anti-squat, %", 2));
}

TEST_F(BaselinePanelTest, EnterComparesWithTheSelectedState) {
    keep("Monday", "first");
    boltTop();
    keep("Tuesday");
    list()->setFocus();
    EXPECT_EQ(list()->currentRow(), 1) << "what was kept last is selected";
    QTest::keyClick(list(), Qt::Key_Up);
    QTest::keyClick(list(), Qt::Key_Return);
    EXPECT_EQ(lastEdit<SetBaseline>().state, 0);
    EXPECT_EQ(state_.car.baseline, 0);
    EXPECT_THAT(list()->item(0)->data(Qt::AccessibleTextRole).toString().toStdString(),
                testing::AllOf(HasSubstr("Monday"), HasSubstr("the baseline"), HasSubstr("first")));
    click("Don't compare");
    EXPECT_FALSE(state_.car.baseline);
    EXPECT_THAT(message(), HasSubstr("Choose a kept setup"));
    click("Compare with");
    EXPECT_EQ(state_.car.baseline, 0);
    const QRect second = list()->visualItemRect(list()->item(1));
    QTest::mouseClick(list()->viewport(), Qt::LeftButton, {}, second.center());
    QTest::mouseDClick(list()->viewport(), Qt::LeftButton, {}, second.center());
    EXPECT_EQ(state_.car.baseline, 1);
    EXPECT_EQ(message(), "Nothing differs.");
}

TEST_F(BaselinePanelTest, DeletesAndUndoes) {
    keep("Monday");
    keep("Tuesday");
    list()->setFocus();
    QTest::keyClick(list(), Qt::Key_Delete);
    EXPECT_EQ(lastEdit<RemoveKept>().state, 1);
    EXPECT_EQ(list()->count(), 1);
    EXPECT_EQ(list()->currentRow(), 0);
    undo();
    EXPECT_EQ(list()->count(), 2);
    click("Delete");
    EXPECT_EQ(list()->count(), 1);
    EXPECT_THAT(button("Delete")->toolTip().toStdString(), HasSubstr("undo"));
}

TEST_F(BaselinePanelTest, RenamesWithF2) {
    keep("Monday", "old note");
    list()->setFocus();
    QTest::keyClick(list(), Qt::Key_F2);
    ASSERT_NE(dialog(), nullptr);
    auto* name = dialog()->findChild<QLineEdit*>();
    EXPECT_EQ(name->text(), "Monday");
    EXPECT_EQ(dialog()->findChild<QPlainTextEdit*>()->toPlainText(), "old note");
    QTest::keyClicks(name, "First night");
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_EQ(lastEdit<DescribeKept>().name, "First night");
    EXPECT_EQ(state_.car.kept[0].name, "First night");
    EXPECT_EQ(state_.car.kept[0].note, "old note");
}

TEST_F(BaselinePanelTest, SwapsAndBringsBack) {
    keep("Monday");
    boltTop();
    click("Swap");
    EXPECT_EQ(state_.car.links[0].axle.use, 1);
    EXPECT_EQ(state_.car.kept[0].name, "after Monday");
    EXPECT_EQ(lastEdit<SwapBaseline>().date, QDate::currentDate().toString(Qt::ISODate).toStdString());
    click("Recover");
    EXPECT_EQ(lastEdit<RestoreKept>().state, 0);
    EXPECT_EQ(state_.car.links[0].axle.use, 0);
    EXPECT_EQ(message(), "Nothing differs.");
}

TEST_F(BaselinePanelTest, SaysWhyThereIsNoTable) {
    keep("Monday");
    state_.car.cgHeight = -1;
    show();
    EXPECT_THAT(message(), testing::AllOf(HasSubstr("can't be computed"), HasSubstr("cg_height")));
    EXPECT_FALSE(button("Keep this setup…")->isEnabled());
    EXPECT_FALSE(table()->isVisible());
    state_.car.cgHeight = 0.5;
    state_.car.links[0].length = 3.0;
    show();
    EXPECT_THAT(message(), HasSubstr("The current car can't be assembled: "));
    EXPECT_FALSE(lines().empty()) << "what was turned is said all the same";
    QTest::mouseClick(button("Swap"), Qt::LeftButton);
    EXPECT_THAT(message(), HasSubstr("'after Monday' can't be assembled: "));
    panel_.showState(state_, nullptr);
    EXPECT_THAT(message(), HasSubstr("'after Monday' can't be assembled: "));
}

TEST_F(BaselinePanelTest, UnlikeLinksAreSaid) {
    keep("Monday");
    make(RenameLink{2, "panhard"});
    EXPECT_THAT(lines(),
                testing::ElementsAre("Track bar: only in the baseline", "Panhard: only in the current car"));
    EXPECT_THAT(message(), "");
    EXPECT_THAT(fold()->text().toStdString(), HasSubstr("figures without a change big enough to matter"));
}

TEST_F(BaselinePanelTest, UnitsChangeNothingButTheNumbersShown) {
    keep("Monday");
    make(SetUnits{Units::metric});
    state_.style.units = Units::metric;
    show();
    EXPECT_EQ(message(), "Nothing differs.");
    boltTop();
    EXPECT_EQ(cell("Instant center, ahead, mm", 1),
              fineFigureText(comparison_->after.ride[Figure::icX], Quantity::length, Units::metric));
}

TEST_F(BaselinePanelTest, TheSheetAndTheOtherFileAreAskedFor) {
    QSignalSpy preview(&panel_, &BaselinePanel::sheetPreviewRequested);
    QSignalSpy file(&panel_, &BaselinePanel::sheetFileRequested);
    QSignalSpy other(&panel_, &BaselinePanel::otherCarRequested);
    click("Another car file…");
    EXPECT_EQ(other.size(), 1);
    QToolButton* sheet = nullptr;
    for (auto* each : panel_.findChildren<QToolButton*>()) {
        sheet = each->accessibleName() == "Change sheet" ? each : sheet;
    }
    ASSERT_NE(sheet, nullptr);
    EXPECT_FALSE(sheet->isEnabled()) << "there is nothing to print yet";
    keep("Monday");
    ASSERT_TRUE(sheet->isEnabled());
    QTimer::singleShot(0, [&] { QTest::keyClick(sheet->menu(), Qt::Key_Down); });
    QTimer::singleShot(0, [&] { QTest::keyClick(sheet->menu(), Qt::Key_Return); });
    QTest::mouseClick(sheet, Qt::LeftButton);
    EXPECT_EQ(preview.size(), 1);
    sheet->menu()->actions().at(1)->trigger();
    EXPECT_EQ(file.size(), 1);
}

TEST_F(BaselinePanelTest, EveryPartHasANameAndATip) {
    keep("Monday");
    boltTop();
    for (auto* each : panel_.findChildren<QPushButton*>()) {
        EXPECT_FALSE(each->toolTip().isEmpty()) << each->text().toStdString();
        EXPECT_TRUE(each->text().contains('&')) << each->text().toStdString() << " has no key";
    }
    for (QWidget* each : std::initializer_list<QWidget*>{list(), table(), part<QListWidget>("changes")}) {
        EXPECT_FALSE(each->accessibleName().isEmpty());
    }
}

}  // namespace
}  // namespace bolthole
