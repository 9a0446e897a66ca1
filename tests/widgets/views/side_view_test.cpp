// The side view's camera, points and drawing: to scale, nothing lost, the same place on screen and in the
// car.
#include "widgets/views/side_view.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QHelpEvent>
#include <QImage>
#include <QSignalSpy>
#include <QToolTip>
#include <QtTest/QTest>
#include <algorithm>
#include <random>

#include "tests/support/text_notes.h"
#include "widgets/kit/pens.h"

namespace bolthole {
namespace {

Link rod(const std::string& name, Eigen::Vector3d axle, Eigen::Vector3d chassis) {
    Link link;
    link.name = name;
    link.chassis.holes = {{-1, "front", chassis}};
    link.axle.holes = {{-1, "low", axle}, {-1, "high", axle + Eigen::Vector3d(0, 0, 0.03)}};
    return link;
}

BenchState madeState() {
    BenchState state;
    Car& car = state.car;
    car.wheelbase = 2.8;
    car.rearTireRadius = car.frontTireRadius = 0.33;
    car.cornerWeights = {450, 450, 350, 350};
    car.cgHeight = 0.5;
    car.links = {rod("lower", {0.01, 0.5, 0.2}, {0.5, 0.45, 0.26}),
                 rod("upper", {0.05, 0.15, 0.5}, {0.3, 0.4, 0.46})};
    car.driveline = Driveline{0.02, {0.28, 0, 0.34}, 0.05, {1.5, 0, 0.39}};
    state.solvedCar = car;
    state.trace = computeTrace(car);
    state.traceIsCurrent = true;
    state.cursor = state.trace.ride;
    return state;
}

TEST(SideCamera, ScreenAndCarAreInverse) {
    SideCamera camera;
    camera.fit(QRectF(QPointF(-0.4, -0.1), QPointF(1.6, 0.9)), QRectF(0, 0, 800, 500));
    std::mt19937 random(3);
    std::uniform_real_distribution<double> any(-3, 3);
    for (int round = 0; round < 100; ++round) {
        const QPointF car(any(random), any(random));
        const QPointF back = camera.toCar(camera.toPicture(car));
        EXPECT_NEAR(back.x(), car.x(), 1e-12);
        EXPECT_NEAR(back.y(), car.y(), 1e-12);
    }
}

// One scale for both directions, front to the right, up to the top.
TEST(SideCamera, IsToScale) {
    SideCamera camera;
    camera.fit(QRectF(QPointF(-0.4, -0.1), QPointF(1.6, 0.9)), QRectF(0, 0, 800, 900));
    const QPointF origin = camera.toPicture(0, 0);
    EXPECT_NEAR(camera.toPicture(1, 0).x() - origin.x(), camera.scale, 1e-9);
    EXPECT_NEAR(origin.y() - camera.toPicture(0, 1).y(), camera.scale, 1e-9);
    EXPECT_NEAR(camera.scale, 400, 1e-9);
}

TEST(SideCamera, ZoomKeepsThePointUnderThePointer) {
    SideCamera camera;
    const QPointF pointer(321, 123);
    const QPointF before = camera.toCar(pointer);
    camera.zoom(1.7, pointer);
    EXPECT_NEAR(camera.toCar(pointer).x(), before.x(), 1e-12);
    EXPECT_NEAR(camera.toCar(pointer).y(), before.y(), 1e-12);
    camera.zoom(1e9, pointer);
    EXPECT_LE(camera.scale, 20'000);
}

TEST(DrawnPoints, EveryHoleAndJointIsThere) {
    const BenchState state = madeState();
    DrawnPoints points;
    points.rebuild(state);
    EXPECT_EQ(points.points.size(), 2 * 3 + 2U);
    EXPECT_EQ(points.links.size(), 4U);
    EXPECT_NEAR(points.closestHoles, 0.03, 1e-12);
}

// What is drawn can be dragged back to where it was measured, at any pose of the axle.
TEST(DrawnPoints, DrawnPositionLeadsBackToTheMeasuredOne) {
    BenchState state = madeState();
    for (const std::size_t row : {0U, 25U, 80U}) {
        state.cursor = state.trace.stations[row];
        ASSERT_TRUE(state.cursor.usable);
        const Eigen::Vector3d measured(0.02, 0.5, 0.22);
        const QPointF drawn = carriedToPicture(state, measured);
        const Eigen::Vector3d back =
            measuredFromDrawn(ViewPlane::side, state.cursor.pose, state.car.rearTireRadius, drawn, measured);
        EXPECT_NEAR((back - measured).norm(), 0, 1e-9) << row;
    }
}

TEST(Clipped, KeepsWhatIsInside) {
    const QRectF box(0, 0, 10, 10);
    const auto through = clipped(QLineF(-5, 5, 15, 5), box);
    ASSERT_TRUE(through.has_value());
    EXPECT_EQ(through->p1(), QPointF(0, 5));
    EXPECT_EQ(through->p2(), QPointF(10, 5));
    EXPECT_FALSE(clipped(QLineF(-5, 11, 15, 12), box).has_value());
    EXPECT_EQ(clipped(QLineF(1, 1, 2, 2), box), QLineF(1, 1, 2, 2));
    EXPECT_FALSE(clipped(QLineF(-3, -1, -3, 20), box).has_value());
}

class View : public testing::Test {
  protected:
    View() : state_(madeState()) {
        ThemeKeeper::instance().choose(Appearance::light);
        view_.resize(800, 500);
        view_.showState(state_);
        view_.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&view_));
    }

    BenchState state_;
    SideView view_;
};

// The bolted hole's ring and the ground are really painted: the picture has the link's color on the link and
// the earth's below the ground.
TEST_F(View, PaintsTheLinkAndTheGround) {
    const QImage picture = view_.grab().toImage();
    const double ratio = picture.devicePixelRatio();
    const QPointF axle = view_.placeOf({PointId::Kind::hole, 0, End::axle, 0});
    const QPointF chassis = view_.placeOf({PointId::Kind::hole, 0, End::chassis, 0});
    const QPointF middle = (axle + chassis) / 2 * ratio;
    EXPECT_EQ(picture.pixelColor(middle.toPoint()), theme().lower);
    const QPointF below = (view_.camera().toPicture(0.9, 0) + QPointF(0, 6)) * ratio;
    EXPECT_EQ(picture.pixelColor(below.toPoint()), theme().earth);
}

TEST_F(View, ADragTellsEveryStepAndItsEnd) {
    QSignalSpy spy(&view_, &SideView::edited);
    const QPoint from = view_.placeOf({PointId::Kind::hole, 1, End::chassis, 0}).toPoint();
    QTest::mousePress(&view_, Qt::LeftButton, Qt::NoModifier, from);
    QTest::mouseMove(&view_, from + QPoint(0, 8));
    QTest::mouseMove(&view_, from + QPoint(0, 16));
    QTest::mouseRelease(&view_, Qt::LeftButton, Qt::NoModifier, from + QPoint(0, 16));
    ASSERT_GE(spy.count(), 2);
    EXPECT_EQ(spy.constLast().at(1).value<EditPhase>(), EditPhase::dragged);
    const auto move = *spy.constLast().at(0).value<Edit>().as<MoveHole>();
    EXPECT_EQ(move.link, 1);
    EXPECT_NEAR(move.at.x(), 0.3, 0.0254 / 16);
    EXPECT_NEAR(0.46 - move.at.z(), 16 / view_.camera().scale, 0.0254 / 16);
    EXPECT_EQ(move.at.y(), 0.4);
}

TEST_F(View, TheWheelZoomsAndLetterLBringsTheLinksBack) {
    const double before = view_.camera().scale;
    QWheelEvent wheel(QPointF(200, 200), view_.mapToGlobal(QPointF(200, 200)), {}, {0, 120}, Qt::NoButton,
                      Qt::NoModifier, Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(&view_, &wheel);
    EXPECT_GT(view_.camera().scale, before);
    QTest::keyClick(&view_, Qt::Key_L);
    EXPECT_NEAR(view_.camera().scale, before, 1e-9);
}

// Far instant centers get a marker at the edge, and clicking it shows all.
TEST_F(View, TheEdgeMarkerLeadsToWhatIsOutside) {
    QPixmap target(800, 500);
    QPainter painter(&target);
    DrawnPoints points;
    points.rebuild(state_);
    SideCamera close;
    close.fit(QRectF(QPointF(-0.2, 0.1), QPointF(0.3, 0.5)), QRectF(0, 0, 800, 500));
    const PictureMarks marks;
    SideDrawing drawing(painter, state_, points, close, QRectF(0, 0, 800, 500), marks);
    drawing.draw();
    ASSERT_EQ(drawing.edgeMarkers().size(), 2U);
    for (const EdgeMarker& marker : drawing.edgeMarkers()) {
        EXPECT_TRUE(QRectF(0, 0, 800, 500).contains(marker.box));
        EXPECT_FALSE(QRectF(0, 0, 800, 500).contains(close.toPicture(marker.target)));
    }
}

// More weight in front moves the CG ahead, here out of the picture as it was.
TEST_F(View, RefitsWhenWhatItShowsNoLongerFits) {
    const auto cgPlace = [this] { return view_.camera().toPicture(0.75 * state_.car.wheelbase, 0.5); };
    const auto weighAnew = [this] {
        state_.car.cornerWeights = state_.solvedCar.cornerWeights = {600, 600, 200, 200};
        view_.showState(state_);
    };
    const QRectF inside = QRectF(view_.rect()).adjusted(12, 12, -12, -12);
    const double before = view_.camera().scale;
    ASSERT_FALSE(inside.contains(cgPlace()));
    const QPoint hole = view_.placeOf({PointId::Kind::hole, 0, End::axle, 0}).toPoint();
    QTest::mousePress(&view_, Qt::LeftButton, Qt::NoModifier, hole);
    weighAnew();
    EXPECT_EQ(view_.camera().scale, before) << "not under the hand";
    QTest::mouseRelease(&view_, Qt::LeftButton, Qt::NoModifier, hole);
    view_.showState(state_);
    EXPECT_TRUE(inside.contains(cgPlace()));
    EXPECT_LT(view_.camera().scale, before);
}

TEST_F(View, WhatWasZoomedByHandStays) {
    QTest::keyClick(&view_, Qt::Key_Plus);
    const double zoomed = view_.camera().scale;
    state_.car.cornerWeights = state_.solvedCar.cornerWeights = {600, 600, 200, 200};
    view_.showState(state_);
    EXPECT_EQ(view_.camera().scale, zoomed);
}

// The tag of a hole is the pointer's: it goes with it, also when the hole was bolted by a click. What the
// keyboard chose has it until the next click.
TEST_F(View, TheTagGoesWithThePointer) {
    const PointId high{PointId::Kind::hole, 0, End::axle, 1};
    const QString name = pointName(state_.car, high);
    const auto isTagged = [&] {
        test::TextNotes notes(view_.size());
        view_.render(&notes);
        return std::ranges::find(notes.notes(), name, &test::TextNotes::Note::text) != notes.notes().end();
    };
    const QPoint hole = view_.placeOf(high).toPoint();
    QTest::mouseMove(&view_, hole);
    EXPECT_TRUE(isTagged());
    QTest::mouseClick(&view_, Qt::LeftButton, Qt::NoModifier, hole);
    EXPECT_TRUE(isTagged()) << "the pointer is there";
    QEvent gone(QEvent::Leave);
    QCoreApplication::sendEvent(&view_, &gone);
    EXPECT_FALSE(isTagged());
    for (int step = 0; step < 8 && !isTagged(); ++step) {
        QTest::keyClick(&view_, Qt::Key_Period);
    }
    EXPECT_TRUE(isTagged()) << "chosen by key";
    QTest::keyClick(&view_, Qt::Key_Escape);
    EXPECT_FALSE(isTagged());
}

// A hole that moved away is pointed at no longer, though the pointer stands still.
TEST_F(View, TheTagGoesWhenTheHoleMovesAway) {
    const PointId high{PointId::Kind::hole, 0, End::axle, 1};
    const QString name = pointName(state_.car, high);
    const auto tags = [&] {
        test::TextNotes notes(view_.size());
        view_.render(&notes);
        return std::ranges::count(notes.notes(), name, &test::TextNotes::Note::text);
    };
    const QPointF hole = view_.placeOf(high);
    QMouseEvent move(QEvent::MouseMove, hole, view_.mapToGlobal(hole), Qt::NoButton, Qt::NoButton,
                     Qt::NoModifier);
    QCoreApplication::sendEvent(&view_, &move);
    ASSERT_EQ(tags(), 1);
    state_.car.links[0].axle.holes[1].at.z() -= 0.12;
    view_.showState(state_);
    EXPECT_EQ(tags(), 0);
}

TEST_F(View, TheTipGoesWhenThePointerLeavesTheHole) {
    const QPoint hole = view_.placeOf({PointId::Kind::hole, 0, End::axle, 1}).toPoint();
    QHelpEvent help(QEvent::ToolTip, hole, view_.mapToGlobal(hole));
    QCoreApplication::sendEvent(&view_, &help);
    ASSERT_TRUE(QToolTip::isVisible());
    const QPoint away = hole + QPoint(60, 60);
    QMouseEvent move(QEvent::MouseMove, away, view_.mapToGlobal(away), Qt::NoButton, Qt::NoButton,
                     Qt::NoModifier);
    QCoreApplication::sendEvent(&view_, &move);
    EXPECT_TRUE(QTest::qWaitFor([] { return !QToolTip::isVisible(); }, 1000));
}

// An arrow at the edge says what it points at, also where its neighborhood is full.
TEST_F(View, NoArrowAtTheEdgeIsWithoutWords) {
    QPixmap target(800, 500);
    QPainter painter(&target);
    DrawnPoints points;
    points.rebuild(state_);
    SideCamera close;
    close.fit(QRectF(QPointF(-0.2, 0.1), QPointF(0.3, 0.5)), QRectF(0, 0, 800, 500));
    const PictureMarks marks;
    SideDrawing drawing(painter, state_, points, close, QRectF(0, 0, 800, 500), marks);
    for (const QRectF& full : {QRectF(600, 0, 200, 500), QRectF(0, 0, 800, 130)}) {
        drawing.keepFree(full);
    }
    drawing.draw();
    ASSERT_EQ(drawing.edgeMarkers().size(), 2U);
    for (const EdgeMarker& marker : drawing.edgeMarkers()) {
        EXPECT_GT(marker.box.width(), 60) << "an arrow alone is 14 px wide";
    }
}

// What stands still is kept as a picture; the units' own grid is part of it.
TEST_F(View, AnotherUnitHasAnotherGrid) {
    const QImage inches = view_.grab().toImage();
    state_.style.units = Units::metric;
    view_.showState(state_);
    const QImage kept = view_.grab().toImage();
    SideView fresh;
    fresh.resize(view_.size());
    fresh.showState(state_);
    fresh.show();
    const QImage drawn = fresh.grab().toImage();
    const QRect sky(0, 0, view_.width() / 4, 60);  // grid alone
    EXPECT_EQ(kept.copy(sky), drawn.copy(sky));
    EXPECT_NE(kept.copy(sky), inches.copy(sky));
}

TEST_F(View, DarkAndLightDiffer) {
    const QImage light = view_.grab().toImage();
    ThemeKeeper::instance().choose(Appearance::dark);
    const QImage dark = view_.grab().toImage();
    ThemeKeeper::instance().choose(Appearance::light);
    EXPECT_GT(light.pixelColor(790, 20).lightness(), dark.pixelColor(790, 20).lightness() + 100);
}

}  // namespace
}  // namespace bolthole
