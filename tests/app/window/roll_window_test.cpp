// The roll page in the real window: reached and read by keys alone, with the bench's cursor.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QtTest/QTest>
#include <memory>
#include <stdexcept>

#include "app/window/main_window.h"
#include "tests/support/window_bench.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/kit/number_field.h"
#include "widgets/pages/fact_card.h"
#include "widgets/pages/roll/roll_page.h"

namespace bolthole {
namespace {

using testing::StartsWith;

class RollInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override {
        openWindow(test::kCoupeDemo, {1280, 800});
        openPage(Qt::Key_7);
    }

    [[nodiscard]] RollPage& page() { return *window_->findChild<RollPage*>(); }
    [[nodiscard]] CurveChart& curves(const char* name) {
        for (CurveChart* each : page().findChildren<CurveChart*>()) {
            if (each->accessibleName() == QLatin1String(name)) {
                return *each;
            }
        }
        throw std::runtime_error(name);
    }
};

}  // namespace

TEST_F(RollInTheWindow, IsEnteredByItsKey) {
    ASSERT_TRUE(page().isVisible());
    EXPECT_TRUE(page().isAncestorOf(QApplication::focusWidget()));
    EXPECT_TRUE(page().reading().isThere());
    EXPECT_EQ(page().reading().roll.rows.size(), 13U);
}

TEST_F(RollInTheWindow, ANumberTypedHereIsOneStepOfUndo) {
    const double before = window_->state().car.rearTireRadius;
    const int steps = window_->document().undoStack().count();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("13"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QCoreApplication::processEvents();
    EXPECT_NEAR(window_->state().car.rearTireRadius, 13 * kMetresPerInch, 1e-12);
    EXPECT_EQ(window_->document().undoStack().count(), steps + 1);
    EXPECT_EQ(page().reading().car.rearTireRadius, window_->state().car.rearTireRadius);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier);
    QCoreApplication::processEvents();
    EXPECT_EQ(window_->state().car.rearTireRadius, before);
    EXPECT_EQ(page().reading().car.rearTireRadius, before);
}

TEST_F(RollInTheWindow, TheTravelCursorIsTheBenchsBothWays) {
    CurveChart& travel = curves("Roll center and shift through travel");
    ASSERT_TRUE(tabTo(&travel));
    QTest::keyClick(&travel, Qt::Key_End);
    EXPECT_NEAR(window_->state().cursorTravel, -window_->state().car.travel.droop, 1e-12);
    EXPECT_THAT(travel.accessibleDescription().toStdString(), StartsWith("At 4.0 in droop"));
    QTest::keyClick(window_.get(), Qt::Key_1, Qt::AltModifier);
    QTest::keyClick(window_->findChild<TravelCurves*>(), Qt::Key_Home);
    QTest::keyClick(window_.get(), Qt::Key_7, Qt::AltModifier);
    EXPECT_THAT(travel.accessibleDescription().toStdString(), StartsWith("At 4.0 in bump"));
}

TEST_F(RollInTheWindow, TheRollCursorGoesByKeysAndChangesNoCar) {
    const Car car = window_->state().car;
    CurveChart& roll = curves("Curves against roll");
    ASSERT_TRUE(tabTo(&roll));
    QTest::keyClick(&roll, Qt::Key_Home);
    EXPECT_NEAR(page().shownRoll().roll, -3 * kRadiansPerDegree, 1e-12);
    EXPECT_EQ(window_->state().car, car);
}

// Figures below the window's edge scroll in as the keyboard comes to them.
TEST_F(RollInTheWindow, EveryCardIsScrolledInByTab) {
    for (FactCard* card : page().findChildren<FactCard*>()) {
        ASSERT_TRUE(tabTo(card)) << card->accessibleName().toStdString();
        EXPECT_EQ(card->visibleRegion().boundingRect(), card->rect()) << card->accessibleName().toStdString();
    }
}

}  // namespace bolthole
