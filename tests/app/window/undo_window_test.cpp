// Undo at the wrong moment: with the mouse down, with half-typed text, with a dialog open, and with what was
// selected gone from the car.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAction>
#include <QDialog>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QtTest/QTest>
#include <memory>

#include "app/window/main_window.h"
#include "tests/support/bench_points.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/views/side_view.h"

namespace bolthole {
namespace {

constexpr PointId kUpperFront{PointId::Kind::hole, 1, End::chassis, 0};

class UndoInTheWindow : public testing::Test {
  protected:
    void SetUp() override { start(QStringLiteral("light-coupe.bolt.json")); }
    void TearDown() override { history().setClean(); }
    void start(const QString& demo) {
        window_ = std::make_unique<MainWindow>(Settings{});
        window_->resize(1480, 920);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
        window_->openDemo(demo);
        QCoreApplication::processEvents();
        opened_ = window_->state().car;
    }

    [[nodiscard]] Document& document() { return window_->document(); }
    [[nodiscard]] QUndoStack& history() { return document().undoStack(); }
    [[nodiscard]] SideView& view() { return window_->sideView(); }
    [[nodiscard]] const Car& car() { return window_->state().car; }
    [[nodiscard]] QPoint place(const PointId& id) { return view().placeOf(id).toPoint(); }
    void press(const PointId& id) { QTest::mousePress(&view(), Qt::LeftButton, Qt::NoModifier, place(id)); }
    void move(QPoint at, Qt::MouseButtons buttons = Qt::LeftButton) {
        QMouseEvent event(QEvent::MouseMove, at, view().mapToGlobal(at), Qt::NoButton, buttons,
                          Qt::NoModifier);
        QCoreApplication::sendEvent(&view(), &event);
    }
    void release(QPoint at) { QTest::mouseRelease(&view(), Qt::LeftButton, Qt::NoModifier, at); }
    // A press and a few moves; the button stays down.
    QPoint dragBy(const PointId& id, QPoint way) {
        const QPoint from = place(id);
        press(id);
        for (int step = 1; step <= 8; ++step) {
            move(from + way * step / 8);
        }
        return from + way;
    }
    void click(const PointId& id) { QTest::mouseClick(&view(), Qt::LeftButton, Qt::NoModifier, place(id)); }
    // The one menu entry of this text, mnemonics left out.
    void choose(const QString& words) {
        for (QAction* action : window_->findChildren<QAction*>()) {
            if (action->text().remove(QLatin1Char('&')) == words) {
                action->trigger();
                return;
            }
        }
        FAIL() << "no entry " << words.toStdString();
    }
    [[nodiscard]] QLineEdit* field(const char* name) {
        for (QLineEdit* each : window_->findChildren<QLineEdit*>()) {
            if (each->accessibleName() == QLatin1String(name) && each->isVisible()) {
                return each;
            }
        }
        return nullptr;
    }
    [[nodiscard]] QDialog* dialog() { return qobject_cast<QDialog*>(QApplication::activeModalWidget()); }
    // A hole the last link could be bolted to.
    [[nodiscard]] PointId freeLastHole() {
        const auto link = static_cast<int>(car().links.size()) - 1;
        return {PointId::Kind::hole, link, End::axle, car().links.back().axle.use == 0 ? 1 : 0};
    }
    // The demo with fewer links is the baseline.
    void compareWithTwoLinks() {
        window_->compareWithFile(QStringLiteral(BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json"));
        ASSERT_TRUE(window_->state().baseline.has_value());
        ASSERT_LT(window_->state().baseline->car.links.size(), car().links.size());
    }

    std::unique_ptr<MainWindow> window_;
    Car opened_;
};

TEST_F(UndoInTheWindow, ADragIsOneStepHoweverManyMovesItHas) {
    release(dragBy(kLowerFront, {24, -16}));
    EXPECT_EQ(history().count(), 1);
    const Car once = car();
    release(dragBy(kLowerFront, {-16, 24}));
    EXPECT_EQ(history().count(), 2);
    choose(QStringLiteral("Undo"));
    EXPECT_EQ(car(), once);
    choose(QStringLiteral("Undo"));
    EXPECT_EQ(car(), opened_);
    EXPECT_FALSE(document().isEdited());
}

// A number typed wrong, seen and taken back: the curves are as tall as before.
TEST_F(UndoInTheWindow, TheCurvesAxesComeBackToo) {
    const auto* curves = window_->findChild<TravelCurves*>();
    const auto ranges = [&] {
        std::vector<std::pair<double, double>> all;
        for (const ChartCardOnScreen& card : curves->onScreen()) {
            all.emplace_back(card.plot().low, card.plot().high);
        }
        return all;
    };
    const auto before = ranges();
    for (const char* typed : {"3", "40", "100", "1000"}) {
        QLineEdit* wrong = field("height of the center of gravity");
        ASSERT_NE(wrong, nullptr);
        wrong->setFocus();
        wrong->selectAll();
        QTest::keyClicks(wrong, QString::fromLatin1(typed));
        QTest::keyClick(wrong, Qt::Key_Return);
        QCoreApplication::processEvents();
        EXPECT_NE(ranges(), before) << typed;
        choose(QStringLiteral("Undo"));
        QCoreApplication::processEvents();
        EXPECT_EQ(ranges(), before) << typed;
    }
}

TEST_F(UndoInTheWindow, ADragBackToWhereItBeganIsNoStep) {
    const QPoint from = place(kLowerFront);
    dragBy(kLowerFront, {24, -16});
    move(from);
    release(from);
    EXPECT_EQ(history().count(), 0);
    EXPECT_EQ(car(), opened_);
}

TEST_F(UndoInTheWindow, WithTheMouseDownTheRestOfTheDragDoesNothing) {
    release(dragBy(kLowerFront, {0, 16}));
    const QPoint at = dragBy(kUpperFront, {16, 0});
    choose(QStringLiteral("Undo"));
    EXPECT_EQ(car(), opened_);
    move(at + QPoint(30, 0));
    EXPECT_EQ(car(), opened_);
    release(at + QPoint(30, 0));
    EXPECT_EQ(car(), opened_);
    EXPECT_TRUE(history().canRedo()) << "the step undone is lost";
}

// Pressed, undone, released: the release bolts nothing and so loses no step.
TEST_F(UndoInTheWindow, WithTheMouseDownOnAHoleTheReleaseBoltsNothing) {
    release(dragBy(kLowerFront, {0, 16}));
    press(freeLastHole());
    const QPoint at = place(freeLastHole());
    choose(QStringLiteral("Undo"));
    release(at);
    EXPECT_EQ(car(), opened_);
    EXPECT_TRUE(history().canRedo());
}

// Another step in the middle of a drag gives the drag up; it is one step, and the drag is not taken up again.
TEST_F(UndoInTheWindow, SwappingInADragGivesTheDragUp) {
    compareWithTwoLinks();
    const QPoint at = dragBy(freeLastHole(), {20, 10});
    choose(QStringLiteral("Swap before and after"));
    ASSERT_EQ(history().count(), 2);
    ASSERT_EQ(car().links.size(), 2U);
    const Car swapped = car();
    move(at + QPoint(10, 10));
    EXPECT_EQ(car(), swapped);
    release(at + QPoint(10, 10));
    EXPECT_EQ(car(), swapped);
    EXPECT_EQ(history().count(), 2);
    EXPECT_FALSE(window_->findChild<NoticeBar*>()->isVisible());
}

TEST_F(UndoInTheWindow, SwappingWithAHolePressedBoltsNothing) {
    compareWithTwoLinks();
    const PointId hole = freeLastHole();
    const QPoint at = place(hole);
    press(hole);
    choose(QStringLiteral("Swap before and after"));
    const Car swapped = car();
    release(at);
    EXPECT_EQ(car(), swapped);
    EXPECT_FALSE(window_->findChild<NoticeBar*>()->isVisible());
}

// What was typed is of the car it was typed on: it is taken before the swap.
TEST_F(UndoInTheWindow, SwappingTakesHalfTypedTextFirst) {
    compareWithTwoLinks();
    QLineEdit* wheelbase = field("wheelbase");
    ASSERT_NE(wheelbase, nullptr);
    wheelbase->setFocus();
    wheelbase->selectAll();
    QTest::keyClicks(wheelbase, QStringLiteral("103"));
    choose(QStringLiteral("Swap before and after"));
    ASSERT_EQ(history().count(), 3);
    EXPECT_NEAR(car().wheelbase, window_->state().baseline->car.wheelbase, 1.0);
    EXPECT_NE(car().wheelbase, 103 * 0.0254);
    EXPECT_NEAR(window_->state().baseline->car.wheelbase, 103 * 0.0254, 1e-9);
}

// A release that went elsewhere, to a dialog that opened or another program, ends the drag.
TEST_F(UndoInTheWindow, ADragWhoseReleaseWentElsewhereIsGivenUp) {
    const QPoint at = dragBy(kLowerFront, {20, 10});
    ASSERT_NE(car(), opened_);
    move(at + QPoint(5, 5), Qt::NoButton);
    EXPECT_FALSE(view().isDragging());
    EXPECT_EQ(car(), opened_);
    move(at + QPoint(15, 5), Qt::NoButton);
    EXPECT_EQ(car(), opened_);
    EXPECT_EQ(history().count(), 0);
    release(dragBy(kLowerFront, {20, 10}));
    EXPECT_EQ(history().count(), 1) << "the next drag works";
}

TEST_F(UndoInTheWindow, TheKeyTakesTypingBackBeforeItTakesAStepBack) {
    release(dragBy(kLowerFront, {0, 16}));
    const Car moved = car();
    QLineEdit* wheelbase = field("wheelbase");
    ASSERT_NE(wheelbase, nullptr);
    wheelbase->setFocus();
    const QString shown = wheelbase->text();
    wheelbase->selectAll();
    QTest::keyClick(wheelbase, Qt::Key_1);
    ASSERT_EQ(wheelbase->text(), QStringLiteral("1"));
    QTest::keyClick(wheelbase, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(wheelbase->text(), shown);
    EXPECT_EQ(car(), moved);
}

TEST_F(UndoInTheWindow, TheEntryForgetsHalfTypedTextAndTakesTheStepBack) {
    release(dragBy(kLowerFront, {0, 16}));
    QLineEdit* wheelbase = field("wheelbase");
    ASSERT_NE(wheelbase, nullptr);
    const QString shown = wheelbase->text();
    wheelbase->setFocus();
    wheelbase->selectAll();
    QTest::keyClicks(wheelbase, QStringLiteral("101"));
    choose(QStringLiteral("Undo"));
    EXPECT_EQ(car(), opened_);
    EXPECT_EQ(wheelbase->text(), shown);
    view().setFocus();  // leaving the field takes nothing any more
    EXPECT_EQ(car(), opened_);
    EXPECT_TRUE(history().canRedo());
}

// With nothing typed in the notes the key is the window's.
TEST_F(UndoInTheWindow, TheKeyInUntouchedNotesTakesAStepBack) {
    release(dragBy(kLowerFront, {0, 16}));
    auto* notes = window_->findChild<QPlainTextEdit*>();
    ASSERT_NE(notes, nullptr);
    notes->setFocus();
    QTest::keyClick(notes, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(car(), opened_);
    QTest::keyClick(notes, Qt::Key_Y, Qt::ControlModifier);
    EXPECT_NE(car(), opened_);
    const Car moved = car();
    QTest::keyClicks(notes, QStringLiteral("x"));
    QTest::keyClick(notes, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(car(), moved) << "typed notes are taken back first";
    EXPECT_EQ(notes->toPlainText().toStdString(), moved.notes);
}

TEST_F(UndoInTheWindow, WithADialogOpenTheKeyStaysInIt) {
    release(dragBy(kLowerFront, {0, 16}));
    const Car moved = car();
    choose(QStringLiteral("Keep this setup…"));
    ASSERT_NE(dialog(), nullptr);
    auto* name = dialog()->findChild<QLineEdit*>();
    const QString offered = name->text();
    name->setFocus();
    for (int times = 0; times < 3; ++times) {
        QTest::keyClick(name, Qt::Key_Z, Qt::ControlModifier);
    }
    EXPECT_EQ(car(), moved);
    EXPECT_EQ(name->text(), offered);
    dialog()->accept();
    EXPECT_EQ(history().count(), 2);
    choose(QStringLiteral("Undo"));
    EXPECT_EQ(car(), moved);
    choose(QStringLiteral("Undo"));
    EXPECT_EQ(car(), opened_);
}

// A dialog that opens in a drag ends it: its release would go to the dialog.
TEST_F(UndoInTheWindow, ADialogOpenedInADragGivesTheDragUp) {
    for (const char* words : {"Keep this setup…", "Change tires or ride height…"}) {
        dragBy(kLowerFront, {0, 16});
        choose(QString::fromUtf8(words));
        ASSERT_NE(dialog(), nullptr) << words;
        EXPECT_FALSE(view().isDragging()) << words;
        EXPECT_EQ(car(), opened_) << words;
        dialog()->reject();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    EXPECT_EQ(history().count(), 0);
}

TEST_F(UndoInTheWindow, WhatWasSelectedComesBackWithTheStep) {
    click(kLowerFront);
    QTest::keyClick(&view(), Qt::Key_Up);
    click(kUpperFront);
    QTest::keyClick(&view(), Qt::Key_Up);
    ASSERT_GE(history().count(), 2);
    const int steps = history().count();
    choose(QStringLiteral("Undo"));
    choose(QStringLiteral("Redo"));
    EXPECT_EQ(window_->state().selection, kUpperFront);
    while (history().index() > 1) {
        choose(QStringLiteral("Undo"));
    }
    EXPECT_EQ(window_->state().selection, kLowerFront);
    while (history().index() < steps) {
        choose(QStringLiteral("Redo"));
    }
    EXPECT_EQ(window_->state().selection, kUpperFront);
}

// A hole of a link that the car on the bench no longer has can't stay selected.
TEST_F(UndoInTheWindow, ASelectionThatTheCarDoesNotHaveIsDropped) {
    compareWithTwoLinks();
    click(freeLastHole());
    // In side view the track bar's holes on axle and chassis lie on each other: the one found is as good.
    const PointId gone = window_->state().selection;
    ASSERT_EQ(gone.kind, PointId::Kind::hole);
    ASSERT_GE(gone.link, static_cast<int>(window_->state().baseline->car.links.size()));
    choose(QStringLiteral("Swap before and after"));
    EXPECT_EQ(window_->state().selection, PointId{});
    const Car swapped = car();
    QTest::keyClick(&view(), Qt::Key_Return);
    EXPECT_EQ(car(), swapped);
    EXPECT_FALSE(window_->findChild<NoticeBar*>()->isVisible());
    choose(QStringLiteral("Undo"));
    EXPECT_EQ(window_->state().selection, gone);
    choose(QStringLiteral("Redo"));
    EXPECT_EQ(window_->state().selection, PointId{});
}

}  // namespace
}  // namespace bolthole
