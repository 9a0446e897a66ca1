// The uncertainty of single numbers, in the real window: from a field to its ±, undone, and on the hole
// board.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QHelpEvent>
#include <QTest>
#include <cmath>
#include <memory>

#include "app/window/main_window.h"
#include "tests/support/bench_points.h"
#include "tests/support/window_bench.h"
#include "widgets/board/hole_board.h"
#include "widgets/fields/car_sheet.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/accuracy/accuracy_page.h"
#include "widgets/pages/accuracy/accuracy_table.h"

namespace bolthole {
namespace {

class AccuracyPageInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override { openWindow(test::kWagonDemo, {1280, 800}); }

    [[nodiscard]] AccuracyPage& page() { return *window_->findChild<AccuracyPage*>(); }
    [[nodiscard]] AccuracyTable& table() { return *page().findChild<AccuracyTable*>(); }
    [[nodiscard]] const Car& car() const { return window_->state().car; }
    [[nodiscard]] const BoardState& board() const { return window_->boardState(); }
    NumberField* sheetField(const QString& name) {
        for (NumberField* field : window_->findChild<CarSheet*>()->findChildren<NumberField*>()) {
            if (field->accessibleName() == name) {
                return field;
            }
        }
        return nullptr;
    }
    bool waitForUncertainties() {
        return QTest::qWaitFor(
            [this] { return !board().uncertainties.empty() && board().uncertaintyCount == board().total; },
            kPatience);
    }
};

TEST_F(AccuracyPageInTheWindow, IsEnteredByItsKey) {
    openPage(Qt::Key_8);
    ASSERT_TRUE(page().isVisible());
    EXPECT_TRUE(page().reading().problem.isEmpty());
    EXPECT_GT(table().rowCount(), 10);
}

TEST_F(AccuracyPageInTheWindow, CalipersByKeyAreOneStepOfUndo) {
    openPage(Qt::Key_8);
    table().setFocus();
    const Car before = car();
    const int steps = window_->document().undoStack().count();
    QString sentence = page().reading().sentence;
    for (int row = 0; page().reading().rows[static_cast<std::size_t>(row)].withCalipers.isEmpty(); ++row) {
        QTest::keyClick(&table(), Qt::Key_Down);
    }
    const FieldId id = *table().selected();
    QTest::keyClick(&table(), Qt::Key_C);
    EXPECT_NEAR(uncertaintyOf(car(), id).uncertainty, kCaliperUncertainty, 1e-15);
    EXPECT_EQ(window_->document().undoStack().count(), steps + 1);
    EXPECT_NE(page().reading().rows.size(), 0U);
    QTest::keyClick(&table(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(car(), before);
    EXPECT_EQ(page().reading().sentence, sentence);
}

TEST_F(AccuracyPageInTheWindow, EnterGoesToTheNumbersField) {
    openPage(Qt::Key_8);
    table().setFocus();
    ASSERT_TRUE(table().selectNumber({.field = Field::wheelbase}));
    QTest::keyClick(&table(), Qt::Key_Return);
    auto* field = qobject_cast<NumberField*>(QApplication::focusWidget());
    ASSERT_NE(field, nullptr);
    EXPECT_NEAR(*field->number(), car().wheelbase, 1e-12);
}

TEST_F(AccuracyPageInTheWindow, AFieldOfTheCarSheetAsksForItsUncertainty) {
    NumberField* wheelbase = sheetField(QStringLiteral("wheelbase"));
    ASSERT_NE(wheelbase, nullptr);
    wheelbase->setFocus();
    QTest::keyClick(wheelbase, Qt::Key_U, Qt::AltModifier);
    ASSERT_TRUE(page().isVisible());
    ASSERT_NE(table().selected(), nullptr);
    EXPECT_EQ(table().selected()->field, Field::wheelbase);
    auto* own = qobject_cast<NumberField*>(QApplication::focusWidget());
    ASSERT_NE(own, nullptr);
    QTest::keyClicks(own, QStringLiteral("1/2"));
    QTest::keyClick(own, Qt::Key_Return);
    EXPECT_NEAR(uncertaintyOf(car(), {.field = Field::wheelbase}).uncertainty,
                0.5 * kMetresPerInch / 1.959964, 1e-9);
}

TEST_F(AccuracyPageInTheWindow, AFieldsTipSaysItsUncertainty) {
    NumberField* wheelbase = sheetField(QStringLiteral("wheelbase"));
    ASSERT_NE(wheelbase, nullptr);
    QHelpEvent help(QEvent::ToolTip, QPoint(4, 4), wheelbase->mapToGlobal(QPoint(4, 4)));
    QApplication::sendEvent(wheelbase, &help);
    EXPECT_THAT(wheelbase->toolTip().toStdString(), testing::HasSubstr("Accuracy: ± 0.05 in (tape)"));
}

TEST_F(AccuracyPageInTheWindow, TheBoardsSecondPassComesAndFollowsTheCar) {
    ASSERT_TRUE(waitForUncertainties());
    const std::vector<CombinationUncertainty> first = board().uncertainties;
    EXPECT_EQ(first.size(), board().combinations.size());
    const HoleUse now = holesInUse(car());
    const CombinationUncertainty expected = CombinationUncertaintySolver(car(), board().lengths).solve(now);
    EXPECT_NEAR(first[*board().present].antiSquat, expected.antiSquat, 1e-9);
    EXPECT_NEAR(first[*board().present].antiSquatDifference, 0, 1e-6);
    // With a better tape all are less uncertain.
    const SetNumber tape{{.field = Field::tapeUncertainty}, kCaliperUncertainty};
    EXPECT_EQ(window_->document().apply(tape, EditPhase::whole, {}), QString());
    ASSERT_TRUE(QTest::qWaitFor(
        [this] {
            return board().car && board().car->tools.tape && !board().uncertainties.empty() &&
                   board().uncertaintyCount == board().total;
        },
        kPatience));
    EXPECT_LT(board().uncertainties[*board().present].antiSquat, first[*board().present].antiSquat);
}

}  // namespace
}  // namespace bolthole
