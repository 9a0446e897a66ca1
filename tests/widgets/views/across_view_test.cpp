// The rear and the top view: what is dragged, nudged and bolted there, with real mouse and keys.
#include "widgets/views/across_view.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QImage>
#include <QSignalSpy>
#include <QtTest/QTest>
#include <random>

#include "geometry/kinematics/roll.h"
#include "tests/support/bench_points.h"
#include "tests/support/car_generator.h"
#include "tests/support/text_notes.h"

namespace bolthole {
namespace {

constexpr double kSixteenth = 0.0254 / 16;
constexpr PointId kLowerAxle{PointId::Kind::hole, 0, End::axle, 0};
constexpr PointId kLowerAxleHigh{PointId::Kind::hole, 0, End::axle, 1};
constexpr PointId kUpperFront{PointId::Kind::hole, 1, End::chassis, 0};

Link setBackRod(const std::string& name, Eigen::Vector3d axle, Eigen::Vector3d chassis) {
    Link link;
    link.name = name;
    link.chassis.holes = {{-1, "front", chassis}};
    link.axle.holes = {{-1, "low", axle}, {-1, "high", axle + Eigen::Vector3d(0.02, 0.02, 0.04)}};
    return link;
}

BenchState stateOf(const Car& car) {
    BenchState state;
    state.car = state.solvedCar = car;
    state.trace = computeTrace(car);
    state.traceIsCurrent = true;
    state.cursor = state.trace.ride;
    return state;
}

// A triangulated four-link: held sideways by its uppers.
Car madeCar() {
    Car car;
    car.wheelbase = 2.8;
    car.rearTireRadius = car.frontTireRadius = 0.33;
    car.rearTrack = 1.5;
    car.frontTrack = 1.48;
    car.cornerWeights = {450, 450, 350, 350};
    car.cgHeight = 0.5;
    car.links = {setBackRod("lower", {0.01, 0.5, 0.2}, {0.5, 0.45, 0.26}),
                 setBackRod("upper", {0.05, 0.15, 0.5}, {0.3, 0.4, 0.46})};
    car.driveline = Driveline{0.02, {0.28, 0, 0.34}, 0.05, {1.5, 0, 0.39}};
    return car;
}

// One view with a document in small: what it asks for is applied and shown, as the window does.
class Across : public testing::TestWithParam<ViewPlane> {
  protected:
    Across() { begin(GetParam()); }

    void begin(ViewPlane plane) {
        ThemeKeeper::instance().choose(Appearance::light);
        view_ = std::make_unique<AcrossView>(plane);
        state_ = stateOf(madeCar());
        opened_ = state_.car;
        view_->resize(800, 500);
        view_->showState(state_);
        view_->show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(view_.get()));
        QObject::connect(view_.get(), &AcrossView::selected, [this](const PointId& id) {
            state_.selection = id;
            view_->showState(state_);
        });
        QObject::connect(view_.get(), &AcrossView::edited, [this](const Edit& edit, EditPhase phase) {
            phases_.push_back(phase);
            edits_.push_back(edit);
            const bool abandoned = phase == EditPhase::abandoned;
            const EditResult result = abandoned ? EditResult{opened_, ""} : bolthole::apply(state_.car, edit);
            EXPECT_EQ(result.refusal, "");
            const PointId selection = state_.selection;
            state_ = stateOf(result.car);
            state_.selection = selection;
            view_->showState(state_);
        });
    }

    [[nodiscard]] QPoint place(const PointId& id, bool mirrored = false) const {
        return view_->placeOf(id, mirrored).toPoint();
    }
    void move(QPoint at, Qt::KeyboardModifiers keys = Qt::NoModifier,
              Qt::MouseButtons held = Qt::LeftButton) {
        QMouseEvent event(QEvent::MouseMove, at, view_->mapToGlobal(at), Qt::NoButton, held, keys);
        QCoreApplication::sendEvent(view_.get(), &event);
    }
    QPoint press(const PointId& id, bool mirrored = false) {
        const QPoint from = place(id, mirrored);
        QTest::mousePress(view_.get(), Qt::LeftButton, Qt::NoModifier, from);
        return from;
    }
    void drag(const PointId& id, QPoint way, bool mirrored = false,
              Qt::KeyboardModifiers keys = Qt::NoModifier) {
        const QPoint from = press(id, mirrored);
        for (int step = 1; step <= 4; ++step) {
            move(from + way * step / 4, keys);
        }
        QTest::mouseRelease(view_.get(), Qt::LeftButton, keys, from + way);
    }
    void key(Qt::Key which, Qt::KeyboardModifiers keys = Qt::NoModifier) {
        QTest::keyClick(view_.get(), which, keys);
    }
    [[nodiscard]] Eigen::Vector3d at(const PointId& id) const { return *pointAt(state_.car, id); }
    [[nodiscard]] Eigen::Vector3d movedBy(const PointId& id) const { return at(id) - *pointAt(opened_, id); }

    std::unique_ptr<AcrossView> view_;
    BenchState state_;
    Car opened_;
    std::vector<EditPhase> phases_;
    std::vector<Edit> edits_;
};

class FromBehind : public Across {};
class FromAbove : public Across {};
INSTANTIATE_TEST_SUITE_P(View, FromBehind, testing::Values(ViewPlane::rear));
INSTANTIATE_TEST_SUITE_P(View, FromAbove, testing::Values(ViewPlane::top));
INSTANTIATE_TEST_SUITE_P(View, Across, testing::Values(ViewPlane::rear, ViewPlane::top));

// Behind the car, looking forward: its left is on the left, up is up, and fore and aft is not seen.
TEST_P(FromBehind, TheCarsLeftIsOnTheLeft) {
    const QPointF left = view_->placeOf(kLowerFront);
    const QPointF right = view_->placeOf(kLowerFront, true);
    EXPECT_LT(left.x(), right.x());
    EXPECT_NEAR(right.x() - left.x(), 2 * 0.45 * view_->camera().scale, 1e-6);
    EXPECT_LT(view_->placeOf(kUpperFront).y(), left.y());
    EXPECT_NEAR(left.y() - view_->placeOf(kUpperFront).y(), 0.2 * view_->camera().scale, 1e-6);
}

TEST_P(FromAbove, TheFrontIsOnTheRightAndTheLeftIsUp) {
    EXPECT_GT(view_->placeOf(kLowerFront).x(), view_->placeOf(kLowerAxle).x());
    EXPECT_LT(view_->placeOf(kLowerFront).y(), view_->placeOf(kLowerFront, true).y());
    EXPECT_NEAR(view_->placeOf(kLowerFront).x() - view_->placeOf(kUpperFront).x(),
                0.2 * view_->camera().scale, 1e-6);
}

// To the picture and back at any pose, turned any way: the point is seen exactly where it was dropped.
TEST_P(Across, WhatIsDroppedIsSeenWhereItWasDropped) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> any(-0.3, 0.3);
    const int depth = axesOf(GetParam()).depth;
    for (int round = 0; round < 200; ++round) {
        const AxlePose pose{any(random), any(random), 0.33 + any(random),
                            any(random), any(random), any(random)};
        const Eigen::Vector3d measured(any(random), any(random), 0.33 + any(random));
        const QPointF dropped(any(random), any(random));
        const Eigen::Vector3d back = measuredFromDrawn(GetParam(), pose, 0.33, dropped, measured);
        const QPointF seen = carriedInto(GetParam(), pose, 0.33, back);
        EXPECT_NEAR(seen.x(), dropped.x(), 1e-12);
        EXPECT_NEAR(seen.y(), dropped.y(), 1e-12);
        EXPECT_EQ(back[depth], measured[depth]);
    }
}

TEST_P(Across, EveryHoleOfBothSidesIsThere) {
    for (const PointId& id : {kLowerFront, kLowerAxle, kLowerAxleHigh, kUpperFront}) {
        EXPECT_FALSE(view_->placeOf(id).isNull());
        EXPECT_FALSE(view_->placeOf(id, true).isNull());
    }
    EXPECT_FALSE(view_->placeOf({PointId::Kind::joint, -1, End::axle, -1}).isNull());
    DrawnPoints points;
    points.rebuild(state_, GetParam());
    EXPECT_EQ(points.points.size(), 2 * 2 * 3 + 2U);
    EXPECT_EQ(points.links.size(), 4U);
}

// A ladder bar has one bolt, at its front: it is drawn from the axle to there.
TEST_P(Across, ALadderBarRunsFromTheAxleToItsPivot) {
    state_.car.links[0].kind = LinkKind::pivot;
    state_.car.links[0].axle.holes[0].at = state_.car.links[0].chassis.holes[0].at;
    DrawnPoints points;
    points.rebuild(state_, GetParam());
    const DrawnLink& bar = points.links[1];
    ASSERT_FALSE(bar.mirrored);
    const QPointF root = inPlane(GetParam(), {0, 0.45, 0.33});
    EXPECT_NEAR(bar.axle.x(), root.x(), 1e-9);
    EXPECT_NEAR(bar.axle.y(), root.y(), 1e-9);
    EXPECT_EQ(bar.chassis, inPlane(GetParam(), {0.5, 0.45, 0.26}));
}

TEST_P(FromBehind, ADragSetsHowFarOutAndHowHigh) {
    drag(kLowerFront, {-16, -12});
    const double scale = view_->camera().scale;
    EXPECT_NEAR(movedBy(kLowerFront).y(), 16 / scale, kSixteenth);
    EXPECT_NEAR(movedBy(kLowerFront).z(), 12 / scale, kSixteenth);
    EXPECT_EQ(movedBy(kLowerFront).x(), 0);
    EXPECT_EQ(phases_.back(), EditPhase::dragged);
    EXPECT_EQ(state_.selection, kLowerFront);
}

TEST_P(FromAbove, ADragSetsHowFarForwardAndOut) {
    drag(kLowerFront, {20, 14});
    const double scale = view_->camera().scale;
    EXPECT_NEAR(movedBy(kLowerFront).x(), 20 / scale, kSixteenth);
    EXPECT_NEAR(movedBy(kLowerFront).y(), -14 / scale, kSixteenth);
    EXPECT_EQ(movedBy(kLowerFront).z(), 0);
}

// The right-hand hole of a pair: its left one goes the mirrored way.
TEST_P(FromBehind, TheRightSideMovesThePairMirrored) {
    for (const PointId& id : {kLowerFront, kLowerAxle}) {
        const QPointF left = view_->placeOf(id);
        const QPointF right = view_->placeOf(id, true);
        drag(id, {16, -12}, true);
        const double scale = view_->camera().scale;
        EXPECT_NEAR(movedBy(id).y(), 16 / scale, kSixteenth);
        EXPECT_NEAR(movedBy(id).z(), 12 / scale, 1.5 * kSixteenth);
        EXPECT_NEAR(view_->placeOf(id, true).x() - right.x(), 16, 1 + kSixteenth * scale);
        EXPECT_NEAR(view_->placeOf(id).x() - left.x(), -16, 1 + kSixteenth * scale);
    }
}

TEST_P(FromAbove, TheRightSideMovesThePairMirrored) {
    drag(kLowerFront, {10, 16}, true);
    const double scale = view_->camera().scale;
    EXPECT_NEAR(movedBy(kLowerFront).x(), 10 / scale, kSixteenth);
    EXPECT_NEAR(movedBy(kLowerFront).y(), 16 / scale, kSixteenth);
}

TEST_P(Across, SnapsToTheTapesFractionAndAltDoesNot) {
    const auto offTape = [&](int axis) {
        const double sixteenths = at(kLowerFront)[axis] / kSixteenth;
        return std::abs(sixteenths - std::round(sixteenths));
    };
    const PlaneAxes axes = axesOf(GetParam());
    drag(kLowerFront, {17, -13});
    EXPECT_LT(offTape(axes.across), 1e-6);
    EXPECT_LT(offTape(axes.up), 1e-6);
    drag(kLowerFront, {-7, 5}, false, Qt::AltModifier);
    EXPECT_GT(offTape(axes.across) + offTape(axes.up), 1e-3);
}

TEST_P(Across, ShiftKeepsOneDirection) {
    const PlaneAxes axes = axesOf(GetParam());
    drag(kLowerFront, {24, 6}, false, Qt::ShiftModifier);
    EXPECT_NE(movedBy(kLowerFront)[axes.across], 0);
    EXPECT_EQ(movedBy(kLowerFront)[axes.up], 0);
}

TEST_P(Across, EscapeAndALostReleaseGiveTheDragUp) {
    const QPoint from = press(kLowerFront);
    move(from + QPoint(14, 9));
    EXPECT_NE(state_.car, opened_);
    EXPECT_TRUE(view_->isDragging());
    key(Qt::Key_Escape);
    EXPECT_FALSE(view_->isDragging());
    EXPECT_EQ(phases_.back(), EditPhase::abandoned);
    EXPECT_EQ(state_.car, opened_);
    QTest::mouseRelease(view_.get(), Qt::LeftButton, Qt::NoModifier, from + QPoint(14, 9));
    EXPECT_EQ(phases_.back(), EditPhase::abandoned);

    press(kLowerFront);
    move(from + QPoint(14, 9));
    move(from + QPoint(18, 9), Qt::NoModifier, Qt::NoButton);  // released where the view could not hear it
    EXPECT_EQ(phases_.back(), EditPhase::abandoned);
    EXPECT_EQ(state_.car, opened_);
}

TEST_P(Across, AxleHolesFollowThePointerAwayFromRide) {
    state_.cursor = solveStation(state_.car, -0.08);
    ASSERT_TRUE(state_.cursor.usable);
    ASSERT_GT(std::abs(state_.cursor.pose.pitch), 1e-3);
    view_->showState(state_);
    const QPoint from = press(kLowerAxle);
    move(from + QPoint(-20, -10), Qt::AltModifier);
    const auto moved = *edits_.back().as<MoveHole>();
    const QPointF seen =
        view_->camera().toPicture(carriedInto(GetParam(), solveStation(opened_, -0.08).pose, 0.33, moved.at));
    EXPECT_NEAR(seen.x(), from.x() - 20, 1.0);
    EXPECT_NEAR(seen.y(), from.y() - 10, 1.0);
}

TEST_P(FromBehind, ArrowsNudgeTheWayTheyPoint) {
    QTest::mouseClick(view_.get(), Qt::LeftButton, Qt::NoModifier, place(kLowerFront));
    key(Qt::Key_Left);
    EXPECT_NEAR(movedBy(kLowerFront).y(), kSixteenth, 1e-12);
    key(Qt::Key_Up, Qt::ShiftModifier);
    EXPECT_NEAR(movedBy(kLowerFront).z(), 4 * kSixteenth, 1e-12);
    // Taken at its right-hand hole, that one goes the way of the arrow.
    QTest::mouseClick(view_.get(), Qt::LeftButton, Qt::NoModifier, place(kLowerFront, true));
    key(Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_NEAR(movedBy(kLowerFront).y(), -3 * kSixteenth, 1e-12);
    EXPECT_EQ(movedBy(kLowerFront).x(), 0);
}

TEST_P(FromAbove, ArrowsNudgeTheWayTheyPoint) {
    QTest::mouseClick(view_.get(), Qt::LeftButton, Qt::NoModifier, place(kLowerFront));
    key(Qt::Key_Right);
    EXPECT_NEAR(movedBy(kLowerFront).x(), kSixteenth, 1e-12);
    key(Qt::Key_Down);
    EXPECT_NEAR(movedBy(kLowerFront).y(), -kSixteenth, 1e-12);
    EXPECT_EQ(movedBy(kLowerFront).z(), 0);
}

TEST_P(Across, AClickOrEnterBoltsAFreeHoleOnEitherSide) {
    QTest::mouseClick(view_.get(), Qt::LeftButton, Qt::NoModifier, place(kLowerAxleHigh, true));
    EXPECT_EQ(state_.car.links[0].axle.use, 1);
    view_->setFocus();
    key(Qt::Key_Escape);
    EXPECT_EQ(state_.selection, PointId{});
    for (int step = 0; step < 20 && !(state_.selection == kLowerAxle); ++step) {
        key(Qt::Key_Period);
    }
    ASSERT_EQ(state_.selection, kLowerAxle);
    key(Qt::Key_Return);
    EXPECT_EQ(state_.car.links[0].axle.use, 0);
}

// Walking names each hole once, the pairs' right-hand ones not apart, and comes round again.
TEST_P(Across, PeriodAndCommaWalkThroughTheHoles) {
    key(Qt::Key_Period);
    const PointId first = state_.selection;
    std::vector<PointId> seen;
    do {
        seen.push_back(state_.selection);
        key(Qt::Key_Period);
    } while (!(state_.selection == first) && seen.size() < 50);
    EXPECT_EQ(seen.size(), 2 * 3 + 2U);
    key(Qt::Key_Comma);
    EXPECT_EQ(state_.selection, seen.back());
}

TEST_P(Across, AJointIsDraggedLikeAHole) {
    constexpr PointId kOutput{PointId::Kind::joint, -1, End::chassis, -1};
    view_->showAll();
    drag(kOutput, {12, 0});
    EXPECT_NE(edits_.back().as<MoveJoint>(), nullptr);
    EXPECT_NE(movedBy(kOutput)[axesOf(GetParam()).across], 0);
}

TEST_P(Across, PaintsTheLinkInItsColorInBothLooks) {
    for (const Appearance look : {Appearance::dark, Appearance::light}) {
        ThemeKeeper::instance().choose(look);
        const QImage picture = view_->grab().toImage();
        for (const bool mirrored : {false, true}) {
            const QPointF middle =
                (view_->placeOf(kLowerAxle, mirrored) + view_->placeOf(kLowerFront, mirrored)) / 2;
            EXPECT_EQ(picture.pixelColor((middle * picture.devicePixelRatio()).toPoint()), theme().lower);
        }
    }
}

// The ghost of another car stands there on both sides, and goes again.
TEST_P(Across, GhostsStandOnBothSides) {
    const QImage plain = view_->grab().toImage();
    Car other = state_.car;
    other.links[0].chassis.holes[0].at += Eigen::Vector3d(0.1, 0.12, 0.14);
    const Trace trace = computeTrace(other);
    state_.baseline = Ghost{other, trace, trace.ride, QStringLiteral("before")};
    view_->showState(state_);
    const QImage ghosted = view_->grab().toImage();
    const QPointF way = wayInCar(GetParam(), {1, 0}).x() == 0 ? QPointF(-0.12, 0.14) : QPointF(0.1, 0.12);
    for (const bool mirrored : {false, true}) {
        QPointF by = way;
        if (mirrored) {
            (GetParam() == ViewPlane::rear ? by.rx() : by.ry()) *= -1;
        }
        const QPoint end =
            (view_->placeOf(kLowerFront, mirrored) + QPointF(by.x(), -by.y()) * view_->camera().scale)
                .toPoint();
        const QRect around(end - QPoint(12, 12), QSize(25, 25));
        EXPECT_NE(ghosted.copy(around), plain.copy(around)) << mirrored;
    }
    state_.baseline.reset();
    view_->showState(state_);
    EXPECT_EQ(view_->grab().toImage(), plain);
}

TEST_P(FromBehind, TheRollCenterIsThatOfTheTravelDrawn) {
    for (const double travel : {0.0, -0.06}) {
        state_.cursor = solveStation(state_.car, travel);
        const std::optional<DrawnRollCenter> center = drawnRollCenter(state_);
        ASSERT_TRUE(center.has_value());
        EXPECT_EQ(center->height, solveRoll(state_.car, travel, 0).squareCenter);
        const GroundLine& ground = state_.cursor.ground;
        EXPECT_NEAR(center->at.y() - ground.patchZ, center->height * ground.alongX, 1e-12);
        EXPECT_NEAR(center->at.x(), 0, 1e-12);
    }
    // Lowers alone do not hold the axle sideways in roll: nothing is drawn.
    state_.car.links[1].chassis.holes[0].at.y() = state_.car.links[1].axle.holes[0].at.y();
    state_.car.links[0].chassis.holes[0].at.y() = state_.car.links[0].axle.holes[0].at.y();
    state_ = stateOf(state_.car);
    EXPECT_FALSE(drawnRollCenter(state_).has_value());
}

// What can't be computed shows the last good picture with the holes as they are, dashed.
TEST_P(Across, AFaultyCarIsStillDrawnAndCanBeDraggedBack) {
    const QImage good = view_->grab().toImage();
    state_.car.links[0].chassis.holes[0].at.x() += 0.5;
    state_.traceIsCurrent = false;
    state_.problem = "lower: does not reach";
    view_->showState(state_);
    EXPECT_NE(view_->grab().toImage(), good);
    drag(kUpperFront, {10, 0});
    EXPECT_FALSE(edits_.empty());
}

TEST_P(Across, AnEmptyCarIsPaintedAndHasNothingToPick) {
    BenchState empty;
    view_->showState(empty);
    EXPECT_FALSE(view_->grab().toImage().isNull());
    QTest::mouseClick(view_.get(), Qt::LeftButton, Qt::NoModifier, {400, 250});
    key(Qt::Key_Period);
    key(Qt::Key_Return);
    EXPECT_TRUE(edits_.empty());
    view_->showState(state_);
}

TEST_P(Across, HasANameAndFitsTheWholeCar) {
    EXPECT_FALSE(view_->accessibleName().isEmpty());
    const double links = view_->camera().scale;
    key(Qt::Key_Plus);
    EXPECT_GT(view_->camera().scale, links);
    key(Qt::Key_A);
    const QRectF whole = acrossWholeBox(state_, GetParam());
    for (const QPointF corner : {whole.topLeft(), whole.bottomRight()}) {
        EXPECT_TRUE(QRectF(view_->rect()).contains(view_->camera().toPicture(corner)));
    }
    key(Qt::Key_L);
    EXPECT_NEAR(view_->camera().scale, links, 1e-9);
}

// No two texts cover each other, nor does one stand on a button or run out of the picture, whatever the
// layout.
TEST_P(Across, NoTwoTextsCoverEachOther) {
    const QRectF area(0, 0, 560, 400);
    const QRectF button(8, 364, 60, 28);
    CarGenerator generator(7);
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                Layout::parallelTrackBar, Layout::ladderGuide}) {
        Car car = generator.draw(layout);
        car.rearTrack = 1.5;
        const BenchState state = stateOf(car);
        DrawnPoints points;
        points.rebuild(state, GetParam());
        SideCamera camera;
        camera.fit(acrossLinksBox(state, GetParam()), area.adjusted(34, 34, -34, -58));
        PictureMarks marks;
        marks.selected = kLowerFront;
        test::TextNotes paper(area.size().toSize());
        QPainter painter(&paper);
        AcrossDrawing drawing(painter, state, points, camera, area, marks, GetParam());
        drawing.keepFree(button);
        drawing.draw();
        painter.end();
        EXPECT_GE(paper.notes().size(), 6U);
        for (const test::TextNotes::Note& one : paper.notes()) {
            EXPECT_TRUE(area.contains(one.box)) << one.text.toStdString();
            EXPECT_FALSE(button.intersects(one.box)) << one.text.toStdString();
            for (const test::TextNotes::Note& other : paper.notes()) {
                EXPECT_FALSE(&one != &other && one.box.intersects(other.box))
                    << static_cast<int>(layout) << ": " << one.text.toStdString() << " over "
                    << other.text.toStdString();
            }
        }
    }
}

}  // namespace
}  // namespace bolthole
