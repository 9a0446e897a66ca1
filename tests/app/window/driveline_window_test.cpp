// The driveline page in the real window: reached, filled in and taken back by keys alone.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QtTest/QTest>
#include <memory>
#include <set>

#include "app/window/main_window.h"
#include "tests/support/window_bench.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/kit/number_field.h"
#include "widgets/pages/driveline/driveline_page.h"
#include "widgets/pages/driveline/driveline_picture.h"
#include "widgets/pages/fact_card.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

class DrivelineInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override {
        openWindow(test::kWagonDemo, {1480, 920});
        QTest::keyClick(window_.get(), Qt::Key_3, Qt::AltModifier);
        QCoreApplication::processEvents();
        // As if nothing beyond the end joints had been measured.
        Driveline bare = window_->state().car.driveline.value();
        bare.shaft = {};
        window_->document().apply(SetDriveline{bare}, EditPhase::whole, {});
        QCoreApplication::processEvents();
        opened_ = window_->state().car;
    }

    [[nodiscard]] DrivelinePage& page() { return *window_->findChild<DrivelinePage*>(); }
    [[nodiscard]] NumberField* field(const char* name) {
        for (NumberField* each : page().findChildren<NumberField*>()) {
            if (each->accessibleName() == QLatin1String(name)) {
                return each;
            }
        }
        return nullptr;
    }
    void typeHere(const QString& text) {
        QWidget* focused = QApplication::focusWidget();
        QTest::keyClick(focused, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(focused, text);
        QTest::keyClick(focused, Qt::Key_Return);
    }

    Car opened_;
};

TEST_F(DrivelineInTheWindow, IsFilledInAndTakenBackByKeys) {
    ASSERT_TRUE(page().isVisible());
    EXPECT_TRUE(page().isAncestorOf(QApplication::focusWidget())) << "Alt+3 enters the page";
    EXPECT_FALSE(page().reading().windUp.has_value());
    const int steps = window_->document().undoStack().count();
    ASSERT_TRUE(tabTo(field("pinion wind-up under power, nose up")));
    typeHere(QStringLiteral("2.5"));
    ASSERT_TRUE(tabTo(field("highest engine speed")));
    typeHere(QStringLiteral("6000"));
    ASSERT_TRUE(tabTo(field("ratio of the gear at that engine speed")));
    typeHere(QStringLiteral("2"));
    EXPECT_NEAR(page().reading().windUp.value(), 2.5 * kRadiansPerDegree, 1e-12);
    EXPECT_NEAR(page().reading().setup.speed().value(), 3000 * kRpm, 1e-9);
    EXPECT_EQ(window_->document().undoStack().count(), steps + 3);
    for (int undone = 0; undone < 3; ++undone) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier);
    }
    EXPECT_EQ(window_->state().car, opened_);
    EXPECT_FALSE(page().reading().windUp.has_value());
    EXPECT_EQ(field("highest engine speed")->text(), QString());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(page().reading().windUp.has_value());
}

TEST_F(DrivelineInTheWindow, EveryFieldIsReachedByTab) {
    std::set<QString> reached;
    for (int steps = 0; steps < 120; ++steps) {
        reached.insert(QApplication::focusWidget()->accessibleName());
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    for (const NumberField* each : page().findChildren<NumberField*>()) {
        EXPECT_TRUE(reached.contains(each->accessibleName())) << each->accessibleName().toStdString();
    }
    EXPECT_TRUE(reached.contains(QStringLiteral("Driveline through travel")));
}

// Figures below the window's edge scroll in as the keyboard comes to them.
TEST_F(DrivelineInTheWindow, EveryCardIsScrolledInByTab) {
    window_->resize(1280, 800);
    QCoreApplication::processEvents();
    for (FactCard* card : page().findChildren<FactCard*>()) {
        ASSERT_TRUE(tabTo(card)) << card->accessibleName().toStdString();
        EXPECT_FALSE(card->visibleRegion().isEmpty()) << card->accessibleName().toStdString();
        EXPECT_EQ(card->visibleRegion().boundingRect(), card->rect());
    }
}

// One cursor for the whole window, both ways.
TEST_F(DrivelineInTheWindow, TheCursorIsTheBenchs) {
    auto* curves = page().findChild<CurveChart*>();
    const auto* picture = page().findChild<DrivelinePicture*>();
    ASSERT_TRUE(tabTo(curves));
    QTest::keyClick(curves, Qt::Key_End);
    EXPECT_NEAR(window_->state().cursorTravel, -opened_.travel.droop, 1e-12);
    EXPECT_THAT(picture->accessibleDescription().toStdString(), HasSubstr("4.0 in droop"));
    QTest::keyClick(window_.get(), Qt::Key_1, Qt::AltModifier);
    QTest::keyClick(window_->findChild<TravelCurves*>(), Qt::Key_Home);
    EXPECT_NEAR(window_->state().cursorTravel, opened_.travel.bump, 1e-12);
    QTest::keyClick(window_.get(), Qt::Key_3, Qt::AltModifier);
    EXPECT_THAT(picture->accessibleDescription().toStdString(), HasSubstr("4.0 in bump"));
}

TEST_F(DrivelineInTheWindow, OneIsAddedByKeysWhereThereIsNone) {
    window_->document().apply(SetDriveline{std::nullopt}, EditPhase::whole, {});
    QTest::keyClick(window_.get(), Qt::Key_1, Qt::AltModifier);
    QTest::keyClick(window_.get(), Qt::Key_3, Qt::AltModifier);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    ASSERT_TRUE(window_->state().car.driveline.has_value());
    EXPECT_EQ(QApplication::focusWidget(), field("pinion angle, nose up"));
}

TEST_F(DrivelineInTheWindow, RemovedAndBroughtBackTheFieldsComeAndGo) {
    window_->document().apply(SetDriveline{std::nullopt}, EditPhase::whole, {});
    QCoreApplication::processEvents();
    QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_FALSE(page().reading().isThere());
    EXPECT_EQ(field("highest engine speed"), nullptr);
    window_->document().undoStack().undo();
    QCoreApplication::processEvents();
    EXPECT_TRUE(page().reading().isThere());
    EXPECT_NE(field("highest engine speed"), nullptr);
}

}  // namespace
}  // namespace bolthole
