// Side, rear and top view in the window: switching between them, and one car in all of them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAction>
#include <QActionGroup>
#include <QLineEdit>
#include <QToolButton>
#include <QtTest/QTest>
#include <memory>
#include <utility>

#include "app/window/main_window.h"
#include "tests/support/bench_points.h"
#include "tests/support/window_bench.h"
#include "widgets/views/across_view.h"
#include "widgets/views/side_view.h"
#include "widgets/views/view_deck.h"

namespace bolthole {
namespace {

// Counts what a widget paints.
class PaintCount : public QObject {
  public:
    explicit PaintCount(QWidget& widget) { widget.installEventFilter(this); }
    bool eventFilter(QObject* watched, QEvent* event) override {
        count += event->type() == QEvent::Paint ? 1 : 0;
        return QObject::eventFilter(watched, event);
    }
    int count = 0;
};

class ViewsInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override {
        openWindow(test::kWagonDemo, {1480, 920});
        QCoreApplication::processEvents();
    }

    [[nodiscard]] ViewDeck& views() { return window_->views(); }
    [[nodiscard]] const Car& car() { return window_->state().car; }
    [[nodiscard]] double lowerOut() { return car().links[0].chassis.holes[0].at.y(); }
    void key(Qt::Key which) {
        QTest::keyClick(window_.get(), which, Qt::ControlModifier);
        QCoreApplication::processEvents();
    }
    void drag(BenchPicture& view, const PointId& id, QPoint way, bool mirrored, bool release = true) {
        const QPoint from = view.placeOf(id, mirrored).toPoint();
        QTest::mousePress(&view, Qt::LeftButton, Qt::NoModifier, from);
        for (int step = 1; step <= 5; ++step) {
            const QPoint at = from + way * step / 5;
            QMouseEvent move(QEvent::MouseMove, at, view.mapToGlobal(at), Qt::NoButton, Qt::LeftButton,
                             Qt::NoModifier);
            QCoreApplication::sendEvent(&view, &move);
        }
        if (release) {
            QTest::mouseRelease(&view, Qt::LeftButton, Qt::NoModifier, from + way);
        }
    }
    // The car sheet shows the number somewhere.
    [[nodiscard]] bool sheetShows(const QString& text) {
        for (const QLineEdit* field : window_->findChildren<QLineEdit*>()) {
            if (field->isVisible() && field->text() == text) {
                return true;
            }
        }
        return false;
    }
};

TEST_F(ViewsInTheWindow, TheSideViewIsFirstAndKeysAndSwitchChange) {
    EXPECT_EQ(views().shown(), ViewDeck::Shown::side);
    EXPECT_TRUE(window_->sideView().isVisible());
    EXPECT_FALSE(views().rearView().isVisible());
    key(Qt::Key_4);
    EXPECT_TRUE(views().rearView().isVisible());
    EXPECT_FALSE(window_->sideView().isVisible());
    key(Qt::Key_5);
    EXPECT_TRUE(views().topView().isVisible());
    EXPECT_FALSE(views().rearView().isVisible());
    for (QToolButton* button : views().findChildren<QToolButton*>()) {
        if (button->text() == QStringLiteral("Side") && button->isVisible()) {
            QTest::mouseClick(button, Qt::LeftButton);
        }
    }
    EXPECT_EQ(views().shown(), ViewDeck::Shown::side);
    EXPECT_TRUE(window_->sideView().isVisible());
    EXPECT_TRUE(views().choices().actions().constFirst()->isChecked());
}

TEST_F(ViewsInTheWindow, ADragFromBehindIsOneStepThatAllFollow) {
    const Car opened = car();
    key(Qt::Key_4);
    drag(views().rearView(), kLowerFront, {-20, 0}, false);
    EXPECT_GT(lowerOut(), opened.links[0].chassis.holes[0].at.y());
    EXPECT_EQ(window_->document().undoStack().count(), 1);
    EXPECT_TRUE(
        sheetShows(QString::fromStdString(fieldText(lowerOut(), Quantity::length, window_->state().style))));
    key(Qt::Key_5);
    AcrossView& top = views().topView();
    EXPECT_NEAR(top.camera().toCar(top.placeOf(kLowerFront)).y(), lowerOut(), 1e-9);
    window_->document().undoStack().undo();
    EXPECT_EQ(car(), opened);
    EXPECT_NEAR(top.camera().toCar(top.placeOf(kLowerFront)).y(), lowerOut(), 1e-9);
}

TEST_F(ViewsInTheWindow, TheRightHandHoleMovesThePair) {
    const double before = lowerOut();
    key(Qt::Key_5);
    drag(views().topView(), kLowerFront, {0, 14}, true);
    EXPECT_GT(lowerOut(), before);
    EXPECT_EQ(window_->document().undoStack().count(), 1);
}

TEST_F(ViewsInTheWindow, TheSelectionIsSharedAndShownInTheSheet) {
    key(Qt::Key_4);
    QTest::mouseClick(&views().rearView(), Qt::LeftButton, Qt::NoModifier,
                      views().rearView().placeOf(kLowerFront).toPoint());
    EXPECT_EQ(window_->state().selection, kLowerFront);
    key(Qt::Key_3);
    const double before = car().links[0].chassis.holes[0].at.z();
    QTest::keyClick(&window_->sideView(), Qt::Key_Up);
    EXPECT_NEAR(car().links[0].chassis.holes[0].at.z() - before, 0.0254 / 16, 1e-12);
}

TEST_F(ViewsInTheWindow, SwitchingOrUndoingDuringADragGivesItUp) {
    const Car opened = car();
    key(Qt::Key_4);
    drag(views().rearView(), kLowerFront, {-20, 6}, false, false);
    EXPECT_NE(car(), opened);
    key(Qt::Key_5);
    EXPECT_FALSE(views().rearView().isDragging());
    EXPECT_EQ(car(), opened);
    EXPECT_EQ(window_->document().undoStack().count(), 0);
    // With a step to undo, a drag under way is given up first and the step undone is the one before it.
    key(Qt::Key_4);
    drag(views().rearView(), kLowerFront, {0, -10}, false);
    drag(views().rearView(), kLowerFront, {-20, 6}, false, false);
    key(Qt::Key_Z);
    EXPECT_FALSE(views().rearView().isDragging());
    EXPECT_EQ(car(), opened);
}

TEST_F(ViewsInTheWindow, AViewThatIsNotSeenPaintsNothing) {
    PaintCount rear(views().rearView());
    PaintCount top(views().topView());
    PaintCount side(window_->sideView());
    drag(window_->sideView(), kLowerFront, {0, 20}, false);
    QCoreApplication::processEvents();
    EXPECT_GT(side.count, 0);
    EXPECT_EQ(rear.count, 0);
    EXPECT_EQ(top.count, 0);
}

TEST_F(ViewsInTheWindow, AllThreeStandTogetherWhereThereIsRoom) {
    QAction* all = views().choices().actions().constLast();
    EXPECT_FALSE(all->isEnabled());
    window_->resize(1760, 1000);
    QCoreApplication::processEvents();
    ASSERT_TRUE(all->isEnabled());
    key(Qt::Key_6);
    EXPECT_TRUE(window_->sideView().isVisible());
    EXPECT_TRUE(views().rearView().isVisible());
    EXPECT_TRUE(views().topView().isVisible());
    // In a drag the others follow at each step.
    AcrossView& rear = views().rearView();
    const double before = rear.placeOf(kLowerFront).y();
    drag(window_->sideView(), kLowerFront, {0, -20}, false, false);
    EXPECT_LT(rear.placeOf(kLowerFront).y(), before);
    QTest::keyClick(&window_->sideView(), Qt::Key_Escape);
    EXPECT_EQ(rear.placeOf(kLowerFront).y(), before);
    // Too narrow: back to the side view, and together again when there is room.
    window_->resize(1480, 920);
    QCoreApplication::processEvents();
    EXPECT_EQ(views().shown(), ViewDeck::Shown::side);
    window_->resize(1760, 1000);
    QCoreApplication::processEvents();
    EXPECT_EQ(views().shown(), ViewDeck::Shown::all);
}

// Each view, also all three where the window that comes next is too narrow for them at first.
TEST_F(ViewsInTheWindow, TheViewChosenIsThereAtTheNextStart) {
    EXPECT_EQ(Settings::load().view, ViewDeck::Shown::side);
    window_->resize(1760, 1000);
    QCoreApplication::processEvents();
    for (const auto& [which, shown] :
         {std::pair{Qt::Key_4, ViewDeck::Shown::rear}, std::pair{Qt::Key_5, ViewDeck::Shown::top},
          std::pair{Qt::Key_6, ViewDeck::Shown::all}, std::pair{Qt::Key_3, ViewDeck::Shown::side}}) {
        key(which);
        ASSERT_TRUE(window_->close());
        window_ = std::make_unique<MainWindow>(Settings::load());
        window_->openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
        window_->resize(1760, 1000);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
        QCoreApplication::processEvents();
        EXPECT_EQ(views().shown(), shown);
        EXPECT_TRUE(views().choices().actions().at(static_cast<int>(shown))->isChecked());
        EXPECT_EQ(window_->sideView().isVisible(),
                  shown == ViewDeck::Shown::side || shown == ViewDeck::Shown::all);
    }
}

TEST_F(ViewsInTheWindow, TheViewChosenTakesTheKeyboard) {
    window_->sideView().setFocus();
    key(Qt::Key_4);
    EXPECT_TRUE(views().rearView().hasFocus());
    QTest::keyClick(&views().rearView(), Qt::Key_Period);
    EXPECT_EQ(window_->state().selection.kind, PointId::Kind::hole);
}

}  // namespace
}  // namespace bolthole
