// The launch page in the real window: reached by its key, played, gone through by hand, clicks undone.
#include <gmock/gmock.h>

#include <QAction>
#include <QApplication>
#include <QMouseEvent>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <algorithm>
#include <memory>

#include "app/window/main_window.h"
#include "tests/support/window_bench.h"
#include "widgets/kit/number_field.h"
#include "widgets/pages/launch/click_stepper.h"
#include "widgets/pages/launch/figures_card.h"
#include "widgets/pages/launch/film_bar.h"
#include "widgets/pages/launch/launch_curves.h"
#include "widgets/pages/launch/launch_missing.h"
#include "widgets/pages/launch/launch_page.h"
#include "widgets/pages/launch/launch_picture.h"

namespace bolthole {
namespace {

class LaunchInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override {
        Settings settings;
        settings.keepsStill = false;
        openWindow(test::kCoupeDemo, {1280, 800}, settings);
        openPage(Qt::Key_9);
    }

    [[nodiscard]] LaunchPage& page() { return *window_->findChild<LaunchPage*>(); }
    [[nodiscard]] const Car& car() { return window_->document().car(); }
    [[nodiscard]] ClickStepper& click(int index) { return *page().findChildren<ClickStepper*>().at(index); }
    void key(Qt::Key pressed, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(QApplication::focusWidget() != nullptr ? QApplication::focusWidget() : window_.get(),
                        pressed, modifiers);
        QCoreApplication::processEvents();
    }
    [[nodiscard]] LaunchFiguresCard::Shown shown(LaunchFigure figure) {
        return page().figures().shown(figure);
    }
};

TEST_F(LaunchInTheWindow, IsEnteredByItsKeyAndShowsALaunch) {
    ASSERT_TRUE(page().isVisible());
    EXPECT_TRUE(page().isAncestorOf(QApplication::focusWidget()));
    ASSERT_TRUE(page().film());
    EXPECT_EQ(page().film()->run.end, LaunchEnd::done);
    EXPECT_NE(shown(LaunchFigure::toppedOut).value, "never") << "as it is set, this car tops out";
}

TEST_F(LaunchInTheWindow, PlusOnAClickChangesTheFiguresAndCtrlZTakesItBack) {
    const Car before = car();
    // Rebound holds the nose down. The least rear load is long past that.
    const QString toppedOut = shown(LaunchFigure::toppedOut).value;
    QTest::mouseClick(&click(1).more(), Qt::LeftButton);
    EXPECT_EQ(*car().launch.front.damping->rebound.at, *before.launch.front.damping->rebound.at + 1);
    EXPECT_NE(shown(LaunchFigure::toppedOut).value, toppedOut);
    EXPECT_THAT(window_->document().undoStack().undoText().toStdString(),
                testing::HasSubstr("rebound click of the front shocks"));
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(car(), before);
    EXPECT_EQ(shown(LaunchFigure::toppedOut).value, toppedOut);
}

TEST_F(LaunchInTheWindow, AClickIsTurnedByKeysInItsField) {
    const double before = *car().launch.front.damping->bump.at;
    window_->findChild<LaunchPage*>()->focusField({.field = Field::frontBumpClick});
    key(Qt::Key_Up);
    key(Qt::Key_Return);
    EXPECT_EQ(*car().launch.front.damping->bump.at, before + 1);
}

TEST_F(LaunchInTheWindow, SpacePlaysAndThePictureMoves) {
    page().picture().setFocus();
    const QImage still = page().picture().grab().toImage();
    key(Qt::Key_Space);
    ASSERT_TRUE(QTest::qWaitFor([this] { return page().player().time() > 0.1; }, 20'000));
    EXPECT_NE(page().picture().grab().toImage(), still);
    key(Qt::Key_Space);
    EXPECT_FALSE(page().player().isPlaying());
}

TEST_F(LaunchInTheWindow, AnotherPageStopsIt) {
    page().player().play();
    QTest::keyClick(window_.get(), Qt::Key_1, Qt::AltModifier);
    EXPECT_FALSE(page().isVisible());
    EXPECT_FALSE(page().player().isPlaying());
}

TEST_F(LaunchInTheWindow, DraggingTheTrackMovesPictureAndCurves) {
    FilmTrack& track = page().bar().track();
    const auto place = [&track](double time) {
        return QPoint(static_cast<int>(track.placeOf(time)), track.height() / 2);
    };
    QTest::mousePress(&track, Qt::LeftButton, {}, place(0.1));
    QMouseEvent move(QEvent::MouseMove, place(0.7), track.mapToGlobal(place(0.7)), Qt::NoButton,
                     Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&track, &move);
    QTest::mouseRelease(&track, Qt::LeftButton, {}, place(0.7));
    EXPECT_NEAR(page().player().time(), 0.7, 0.02);
    EXPECT_EQ(page().picture().time(), page().player().time());
    EXPECT_EQ(page().curves().cursor(), page().player().time());
}

TEST_F(LaunchInTheWindow, WhatWasKeptIsTheGhost) {
    window_->document().apply(KeepSetup{"as it came", "2031-05-04", {}, {}}, EditPhase::whole, {});
    EXPECT_EQ(click(1).was(), "");
    for (int press = 0; press < 4; ++press) {
        QTest::mouseClick(&click(1).more(), Qt::LeftButton);
    }
    ASSERT_TRUE(page().baseline());
    EXPECT_GT(page().film()->run.figures.toppedOut, page().baseline()->run.figures.toppedOut);
    EXPECT_EQ(click(1).was(), "was 1");
    ASSERT_TRUE(QTest::qWaitFor([this] { return !page().isDrawing(); }, 30'000));
    EXPECT_FALSE(shown(LaunchFigure::toppedOut).difference.isEmpty());  // with its ±, or that nobody can tell
}

TEST_F(LaunchInTheWindow, AMissingNumberLeadsToItsFieldAndBringsTheLaunchBack) {
    const double inertia = *car().launch.wheelInertia;
    window_->document().apply(ClearNumber{{.field = Field::wheelInertia}}, EditPhase::whole, {});
    EXPECT_FALSE(page().film());
    auto* button = page().findChild<LaunchMissing*>()->findChild<QPushButton*>();
    QTest::mouseClick(button, Qt::LeftButton);
    auto* field = qobject_cast<NumberField*>(QApplication::focusWidget());
    ASSERT_NE(field, nullptr);
    EXPECT_EQ(field->accessibleName(), "rear wheel inertia");
    window_->document().apply(SetNumber{{.field = Field::wheelInertia}, inertia}, EditPhase::whole, {});
    EXPECT_TRUE(page().film());
}

TEST_F(LaunchInTheWindow, KeptStillItIsGoneThroughByHandAlone) {
    QAction* still = nullptr;
    for (QAction* action : window_->findChildren<QAction*>()) {
        still = action->text() == QStringLiteral("&Keep pictures still") ? action : still;
    }
    ASSERT_NE(still, nullptr);
    EXPECT_FALSE(still->isChecked());
    still->trigger();
    page().picture().setFocus();
    key(Qt::Key_Space);
    EXPECT_FALSE(page().player().isPlaying());
    key(Qt::Key_Right);
    EXPECT_GT(page().player().time(), 0);
    still->trigger();
    key(Qt::Key_Space);
    EXPECT_TRUE(page().player().isPlaying());
}

TEST_F(LaunchInTheWindow, AHoleBoltedElsewhereChangesTheLaunch) {
    const std::optional<double> before = page().film()->run.figures.leastRearLoad;
    window_->document().apply(UseHole{0, End::axle, 0}, EditPhase::whole, {});
    EXPECT_NE(page().film()->run.figures.leastRearLoad, before);
}

}  // namespace
}  // namespace bolthole
