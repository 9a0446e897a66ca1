// The search for a target in the real window: searched off its thread, taken in one step of undo, set in the
// side view by mouse and keys.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QPushButton>
#include <QtTest/QTest>
#include <memory>

#include "app/controllers/target_controller.h"
#include "app/window/main_window.h"
#include "tests/support/window_bench.h"
#include "widgets/board/hole_board.h"
#include "widgets/pages/target/answer_card.h"
#include "widgets/pages/target/target_page.h"
#include "widgets/views/side_view.h"
#include "widgets/views/target_mark.h"
#include "widgets/views/view_deck.h"

namespace bolthole {
namespace {

class TargetInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override {
        openWindow(test::kWagonDemo, {1280, 800});
        QCoreApplication::processEvents();
    }

    [[nodiscard]] TargetPage& page() { return *window_->findChild<TargetPage*>(); }
    [[nodiscard]] TargetMark& mark() { return *window_->findChild<TargetMark*>(); }
    [[nodiscard]] TargetController& controller() { return *window_->findChild<TargetController*>(); }
    void showPage() {
        for (QAction* action : window_->findChildren<QAction*>()) {
            if (action->text() == page().title()) {
                action->trigger();
            }
        }
        ASSERT_TRUE(page().isVisible());
    }
    [[nodiscard]] bool isAnswered() {
        return QTest::qWaitFor([this] { return controller().answers() != nullptr; }, 20'000);
    }
    [[nodiscard]] int steps() { return window_->document().undoStack().index(); }
    static QPushButton* firstButton(const AnswerCard& card) {
        for (QPushButton* button : card.findChildren<QPushButton*>()) {
            if (button->isVisible() && button->isEnabled()) {
                return button;
            }
        }
        return nullptr;
    }
};

}  // namespace

TEST_F(TargetInTheWindow, TheDemosWindowIsAnsweredInAllFourGroups) {
    showPage();
    ASSERT_TRUE(isAnswered());
    EXPECT_EQ(page().meeting().rows().size(), 1U);
    EXPECT_EQ(page().nearest().rows().size(), 5U);
    EXPECT_EQ(page().holes().rows().size(), 2U);
    EXPECT_EQ(page().rods().rows().size(), 1U);
    EXPECT_FALSE(page().holes().rows().front().isMiss);
}

TEST_F(TargetInTheWindow, ANewHoleIsOneStepOfUndo) {
    showPage();
    ASSERT_TRUE(isAnswered());
    const Car before = window_->state().car;
    const TargetWindow target = *before.target;
    const int steps = this->steps();
    QPushButton* button = firstButton(page().holes());
    ASSERT_NE(button, nullptr);
    button->setFocus();
    QTest::keyClick(button, Qt::Key_Space);
    EXPECT_EQ(this->steps(), steps + 1);
    EXPECT_TRUE(window_->state().car.links[0].axle.inUse().planned);
    EXPECT_LE(window_->state().trace.ride[Figure::antiSquat], target.antiSquatHigh + 1e-4);
    EXPECT_GE(window_->state().trace.ride[Figure::antiSquat], target.antiSquatLow - 1e-4);
    ASSERT_TRUE(isAnswered());  // anew, for the car that came of it
    window_->document().undoStack().undo();
    EXPECT_EQ(window_->state().car.links, before.links);
}

TEST_F(TargetInTheWindow, AChangeCancelsTheSearchAndAsksAnew) {
    showPage();
    ASSERT_TRUE(isAnswered());
    const auto first = controller().answers();
    const TargetWindow other{.antiSquatLow = 200, .antiSquatHigh = 220};
    window_->document().apply(SetTarget{other}, EditPhase::whole, {});
    EXPECT_EQ(controller().answers(), nullptr);
    EXPECT_TRUE(controller().isRunning());
    ASSERT_TRUE(isAnswered());
    EXPECT_NE(controller().answers(), first);
    EXPECT_TRUE(controller().answers()->meeting.empty());
}

TEST_F(TargetInTheWindow, TheMarkIsShownByAKeyAndDraggedByTheMouse) {
    SideView& view = window_->sideView();
    view.setFocus();
    ASSERT_TRUE(QTest::qWaitFor([this] { return window_->boardState().complete; }, 20'000));
    EXPECT_FALSE(mark().isOn());
    QTest::keyClick(&view, Qt::Key_W);
    ASSERT_TRUE(mark().isOn());
    EXPECT_TRUE(mark().isVisible());
    ASSERT_TRUE(window_->state().targetCenter);
    const int steps = this->steps();
    const QPoint from = mark().place().toPoint();
    QTest::mousePress(&view, Qt::LeftButton, {}, from);
    ASSERT_TRUE(mark().isDragging());
    const QPoint to = from + QPoint(-60, 30);
    QTest::mouseMove(&view, to);
    EXPECT_THAT(mark().line().toStdString(), testing::HasSubstr("miss by"));
    EXPECT_EQ(this->steps(), steps);  // nothing is changed until it is let go
    QTest::mouseRelease(&view, Qt::LeftButton, {}, to);
    EXPECT_EQ(this->steps(), steps + 1);
    const TargetWindow& target = *window_->state().car.target;
    EXPECT_EQ(target.icNear, target.icFar);
    EXPECT_EQ(target.icLow, target.icHigh);
    const QPointF there = view.camera().toCar(to);
    const Eigen::Vector2d onTheGround = onGround(window_->state().trace.ride.ground, {there.x(), there.y()});
    EXPECT_NEAR(*target.icNear, onTheGround.x(), 0.005);
    EXPECT_NEAR(*target.icLow, onTheGround.y(), 0.005);
    ASSERT_TRUE(isAnswered());
    EXPECT_NE(mark().line(), QString());
}

TEST_F(TargetInTheWindow, CtrlArrowsMoveTheMarkAndEscapeGivesADragUp) {
    SideView& view = window_->sideView();
    view.setFocus();
    QTest::keyClick(&view, Qt::Key_W);
    ASSERT_TRUE(mark().isOn());
    QTest::keyClick(&view, Qt::Key_Up, Qt::ControlModifier);
    const Eigen::Vector2d first = *window_->state().targetCenter;
    QTest::keyClick(&view, Qt::Key_Up, Qt::ControlModifier);
    EXPECT_NEAR((*window_->state().targetCenter - first).norm(), 0.5 * kMetresPerInch, 1e-6);
    const int steps = this->steps();
    QTest::mousePress(&view, Qt::LeftButton, {}, mark().place().toPoint());
    QTest::mouseMove(&view, mark().place().toPoint() + QPoint(-50, 0));
    QTest::keyClick(&view, Qt::Key_Escape);
    EXPECT_FALSE(mark().isDragging());
    EXPECT_EQ(this->steps(), steps);
    QTest::keyClick(&view, Qt::Key_W);
    EXPECT_FALSE(mark().isOn());
    EXPECT_FALSE(window_->state().targetCenter);
}

}  // namespace bolthole
