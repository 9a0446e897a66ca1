// The hole board's map: an honest place for every combination, and the target window under the mouse.
#include "widgets/board/combination_map.h"

#include <gmock/gmock.h>

#include <QFile>
#include <QImage>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "tests/support/board_bench.h"
#include "tests/support/made_units.h"
#include "tests/support/text_notes.h"
#include "widgets/board/combination_dots.h"
#include "widgets/board/combination_map_paint.h"
#include "widgets/kit/label_placer.h"
#include "widgets/kit/picture_copy.h"

namespace bolthole::test {
namespace {

double& figure(HoleCombination& combination, Figure which) {
    return combination.ride[static_cast<std::size_t>(which)];
}

class CombinationMapTest : public BoardBench {
  protected:
    QPointF place(std::uint64_t combination) {
        return board_->placeOf(combination).value_or(QPointF(-1, -1));
    }
    QRectF box() { return map().scale().boxOf(*bench_.car.target); }
    void openTarget() {
        Car car = wagonCar();
        car.target = TargetWindow{50 * kInch, 66 * kInch, 105, 135};
        open(car);
    }
    void drag(QPoint from, QPoint to) {
        QTest::mousePress(&map(), Qt::LeftButton, {}, from);
        QTest::mouseMove(&map(), from + (to - from) / 2);
        QTest::mouseMove(&map(), to);
        QTest::mouseRelease(&map(), Qt::LeftButton, {}, to);
    }
    std::vector<EditPhase> phases() {
        std::vector<EditPhase> phases;
        for (const auto& edit : edits_) {
            phases.push_back(edit.second);
        }
        return phases;
    }
};

TEST_F(CombinationMapTest, DotsLieByInverseDistanceAndAntiSquat) {
    open(wagonCar());
    const CombinationMapScale& scale = map().scale();
    for (const HoleCombination& combination : state_.combinations) {
        const QPointF at = place(combination.index);
        EXPECT_NEAR(scale.inverseAt(at.x()), 1 / combination[Figure::icX], 1e-9);
        EXPECT_NEAR(scale.antiSquatAt(at.y()), combination[Figure::antiSquat], 1e-9);
        EXPECT_TRUE(scale.plot().contains(at));
    }
}

// Saved as a drawing, every dot is one, however many lie on the map.
TEST_F(CombinationMapTest, ADrawingHasItsDotsAsOutlinesAndNoPixels) {
    open(wagonCar());
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("map.svg"));
    ASSERT_TRUE(savePicture(map(), name));
    QFile file(name);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(file.readAll());
    EXPECT_FALSE(text.contains(QStringLiteral("<image")));
    std::vector<QPointF> centers;
    const QRegularExpression circle(
        QStringLiteral("<(?:circle|ellipse) cx=\"([-0-9.e]+)\" cy=\"([-0-9.e]+)\""));
    for (auto match = circle.globalMatch(text); match.hasNext();) {
        const QRegularExpressionMatch one = match.next();
        centers.emplace_back(one.captured(1).toDouble(), one.captured(2).toDouble());
    }
    for (const HoleCombination& combination : state_.combinations) {
        const QPointF at = place(combination.index);
        EXPECT_TRUE(std::ranges::any_of(centers, [&](QPointF center) {
            return std::hypot(center.x() - at.x(), center.y() - at.y()) < 0.6;
        })) << combination.index;
    }
    EXPECT_GE(centers.size(), state_.combinations.size());
}

// Dragged far away and back, or undone: the axes are as they were.
TEST_F(CombinationMapTest, TheSameCombinationsAlwaysStandOnTheSameAxes) {
    open(wagonCar());
    const CombinationMapScale& scale = map().scale();
    const std::array baseline{scale.leastInverse(), scale.mostInverse(), scale.leastAntiSquat(),
                              scale.mostAntiSquat()};
    const BoardState there = state_;
    Car far = wagonCar();
    for (Hole& hole : far.links[0].chassis.holes) {
        hole.at.z() += 0.06;
    }
    state_ = solvedBoard(far);
    state_.inDrag = true;
    show();
    EXPECT_NE(scale.mostAntiSquat() - scale.leastAntiSquat(), baseline[3] - baseline[2])
        << "grows in the drag";
    state_ = there;
    show();
    const std::array after{scale.leastInverse(), scale.mostInverse(), scale.leastAntiSquat(),
                           scale.mostAntiSquat()};
    EXPECT_EQ(after, baseline);
}

TEST_F(CombinationMapTest, BarsLieAboutTheirDotAndKeepNamesOff) {
    open(wagonCar());
    state_.uncertainties.assign(state_.total, CombinationUncertainty{.antiSquat = 6, .inverse = 0.03});
    state_.uncertaintyCount = state_.total;
    show();
    LabelPlacer placer(map().scale().plot());
    std::vector<std::optional<QPointF>> places;
    for (const HoleCombination& combination : state_.combinations) {
        places.emplace_back(place(combination.index));
    }
    CombinationList list;
    list.take(bench_, state_);
    const CombinationMapPicture picture{.list = list,
                                        .scale = map().scale(),
                                        .places = places,
                                        .size = map().size(),
                                        .selected = {},
                                        .pointed = {},
                                        .target = {}};
    for (std::size_t at = 0; at < places.size(); ++at) {
        const std::vector<QRectF> bars = errorBars(picture, at);
        ASSERT_EQ(bars.size(), 2U);
        EXPECT_TRUE(bars[0].contains(*places[at]));
        EXPECT_TRUE(bars[1].contains(*places[at]));
        EXPECT_GT(bars[0].width(), bars[0].height());
        EXPECT_GT(bars[1].height(), bars[1].width());
        for (const QRectF& bar : bars) {
            placer.take(bar);
        }
    }
    for (const std::optional<QPointF>& each : places) {
        const QRectF name = placer.place(*each, QSizeF(40, 12), 9.5, 0, 1);
        if (!name.isNull()) {
            const QPointF away = name.center() - *each;
            EXPECT_LT(std::hypot(std::abs(away.x()) - 20, std::abs(away.y()) - 6), 9.5 * 1.5)
                << "a name stands at its dot or not at all";
        }
    }
}

// Near at left, then far, then infinity, then behind the axle, where far behind comes first.
TEST_F(CombinationMapTest, InfinityAndBehindTheAxleHaveAPlace) {
    bench_.car = wagonCar();
    state_ = solvedBoard(bench_.car);
    figure(state_.combinations[1], Figure::icX) = kAbsent;
    figure(state_.combinations[1], Figure::icZ) = kAbsent;
    figure(state_.combinations[2], Figure::icX) = -100 * kInch;
    figure(state_.combinations[5], Figure::icX) = -60 * kInch;
    openWindow();
    const CombinationMapScale& scale = map().scale();
    ASSERT_TRUE(scale.reachesInfinity());
    EXPECT_NEAR(place(1).x(), scale.x(0.0), 1e-9);
    EXPECT_GT(place(1).x(), place(0).x());
    EXPECT_GT(place(2).x(), place(1).x());
    EXPECT_GT(place(5).x(), place(2).x());
    EXPECT_TRUE(scale.plot().contains(place(5)));
    EXPECT_EQ(cell(*table().combinations().rowOf(1), CombinationColumn::Kind::instantCenter), "∞");
    const auto ticks = scale.distanceTicks(kInch, QFontMetricsF(textFont(TextSize::small)));
    EXPECT_TRUE(std::ranges::any_of(ticks, [](const AxisTick& tick) { return tick.label == "∞"; }));
    EXPECT_TRUE(std::ranges::any_of(ticks, [](const AxisTick& tick) { return tick.label.startsWith("−"); }));
}

TEST_F(CombinationMapTest, ThePastInfinityGroundIsMarked) {
    open(coupeCar());
    const CombinationMapScale& scale = map().scale();
    ASSERT_LT(scale.leastInverse(), 0);
    const QImage picture = map().grab().toImage();
    const QPoint behind(static_cast<int>(scale.plot().right()) - 5, static_cast<int>(scale.plot().top()) + 5);
    EXPECT_EQ(picture.pixelColor(behind), theme().panel);
}

TEST_F(CombinationMapTest, WhatCannotBeAssembledHasNoPlace) {
    bench_.car = wagonCar();
    state_ = solvedBoard(bench_.car);
    state_.combinations[2].assembled = false;
    openWindow();
    EXPECT_EQ(board_->placeOf(2), std::nullopt);
    EXPECT_TRUE(board_->placeOf(3).has_value());
}

// One combination far out goes to the edge and leaves the others their room.
TEST_F(CombinationMapTest, AFarOutlierSquashesNothing) {
    bench_.car = coupeCar();
    state_ = solvedBoard(bench_.car);
    const double usual = 300;
    figure(state_.combinations[7], Figure::antiSquat) = 20'000;
    figure(state_.combinations[9], Figure::icX) = 0.05;
    openWindow();
    const CombinationMapScale& scale = map().scale();
    EXPECT_LT(scale.mostAntiSquat(), 2 * usual);
    EXPECT_EQ(place(7).y(), scale.plot().top());
    EXPECT_EQ(place(9).x(), scale.plot().left());
    CombinationList::Item outside;
    outside.inverse = 1 / state_.combinations[7][Figure::icX];
    outside.antiSquat = 20'000;
    EXPECT_EQ(beyond(outside, scale), QPoint(0, -1));
}

TEST(CombinationMapScale, TheBulkLeavesOutWhatIsFarOut) {
    std::vector<double> values{1, 2, 3, 4, 5, 6, 7, 8, 9, 1000, -500};
    const Bulk bulk = bulkOf(values, 0.1);
    EXPECT_EQ(bulk.least, 1);
    EXPECT_EQ(bulk.most, 9);
    std::vector<double> same{5, 5, 5, 5, 5.1, 90};
    EXPECT_EQ(bulkOf(same, 1.0).most, 5.1);
    std::vector<double> one{42};
    EXPECT_EQ(bulkOf(one, 1.0).least, 42);
}

TEST_F(CombinationMapTest, TicksNeverTouch) {
    open(coupeCar());
    const QFontMetricsF metrics(textFont(TextSize::small));
    CombinationMapScale scale = map().scale();
    for (const double unit : {kInch, 0.001}) {
        for (const double width : {120.0, 240.0, 500.0, 900.0}) {
            scale.place({40, 5, width, 90});
            const auto ticks = scale.distanceTicks(unit, metrics);
            ASSERT_GE(ticks.size(), 2U);
            for (std::size_t i = 1; i < ticks.size(); ++i) {
                EXPECT_GT(ticks[i].labelLeft, ticks[i - 1].labelRight + kTickGap);
            }
            const auto rows = scale.antiSquatTicks(metrics);
            ASSERT_GE(rows.size(), 2U);
            for (std::size_t i = 1; i < rows.size(); ++i) {
                EXPECT_GT(rows[i - 1].position - rows[i].position, metrics.height());
            }
        }
    }
}

TEST_F(CombinationMapTest, ADragOnEmptyGroundDrawsAWindow) {
    open(wagonCar());
    const CombinationMapScale scale = map().scale();
    const QPoint from = scale.at(1 / (52 * kInch), 141).toPoint();
    const QPoint to = scale.at(1 / (70 * kInch), 104).toPoint();
    drag(from, to);
    ASSERT_GE(edits_.size(), 3U);
    EXPECT_EQ(edits_.front().second, EditPhase::dragging);
    EXPECT_EQ(edits_.back().second, EditPhase::dragged);
    ASSERT_TRUE(bench_.car.target.has_value());
    const TargetWindow& target = *bench_.car.target;
    const double nearest = *target.icNear / kInch;
    const double farthest = *target.icFar / kInch;
    EXPECT_NEAR(nearest, std::round(nearest), 1e-9);
    EXPECT_NEAR(farthest, std::round(farthest), 1e-9);
    EXPECT_NEAR(nearest, 52, 1);
    EXPECT_NEAR(farthest, 70, 1);
    EXPECT_EQ(target.antiSquatLow, std::round(target.antiSquatLow));
    EXPECT_NEAR(target.antiSquatLow, 104, 1);
    EXPECT_NEAR(target.antiSquatHigh, 141, 1);
    EXPECT_EQ(pointed_.empty() ? std::nullopt : pointed_.back(), std::nullopt);
}

TEST_F(CombinationMapTest, MetricWindowsSnapToCentimeters) {
    bench_.style.units = Units::metric;
    open(wagonCar());
    const CombinationMapScale scale = map().scale();
    drag(scale.at(1 / 1.3, 100).toPoint(), scale.at(1 / 1.1, 130).toPoint());
    const double nearest = *bench_.car.target->icNear * 100;
    EXPECT_NEAR(nearest, std::round(nearest), 1e-9);
    EXPECT_NEAR(nearest, 110, 1);
    EXPECT_NEAR(*bench_.car.target->icFar, 1.3, 0.015);
}

TEST_F(CombinationMapTest, AWindowMayRunThroughInfinityToBehind) {
    open(coupeCar());
    const CombinationMapScale scale = map().scale();
    drag(scale.at(1 / (90 * kInch), 120).toPoint(), scale.at(-1 / (60 * kInch), -100).toPoint());
    EXPECT_NEAR(*bench_.car.target->icNear / kInch, 90, 3);
    EXPECT_NEAR(*bench_.car.target->icFar / kInch, -60, 2);
    edits_.clear();
    bench_.car.target.reset();
    show();
    drag(scale.at(1 / (90 * kInch), 120).toPoint(), {static_cast<int>(scale.x(0.0)) + 1, dot(0).y()});
    EXPECT_EQ(bench_.car.target->icFar, std::nullopt);
}

TEST_F(CombinationMapTest, EscapeAbandonsADrag) {
    openTarget();
    const TargetWindow baseline = *bench_.car.target;
    const QPoint inside = box().center().toPoint();
    QTest::mousePress(&map(), Qt::LeftButton, {}, inside);
    QTest::mouseMove(&map(), inside + QPoint(30, 10));
    EXPECT_NE(*bench_.car.target, baseline);
    QTest::keyClick(&map(), Qt::Key_Escape);
    EXPECT_EQ(phases(), (std::vector{EditPhase::dragging, EditPhase::abandoned}));
    EXPECT_EQ(*bench_.car.target, baseline);
    QTest::mouseRelease(&map(), Qt::LeftButton, {}, inside + QPoint(30, 10));
    EXPECT_EQ(edits_.size(), 2U);
    EXPECT_FALSE(map().isDragging());
}

TEST_F(CombinationMapTest, AReleaseThatWentElsewhereEndsTheDrag) {
    openTarget();
    const TargetWindow baseline = *bench_.car.target;
    const QPoint inside = box().center().toPoint();
    QTest::mousePress(&map(), Qt::LeftButton, {}, inside);
    QTest::mouseMove(&map(), inside + QPoint(30, 10));
    const QPoint later = inside + QPoint(60, 20);
    QMouseEvent move(QEvent::MouseMove, later, map().mapToGlobal(later), Qt::NoButton, Qt::NoButton,
                     Qt::NoModifier);
    QCoreApplication::sendEvent(&map(), &move);
    EXPECT_EQ(phases(), (std::vector{EditPhase::dragging, EditPhase::abandoned}));
    EXPECT_EQ(*bench_.car.target, baseline);
    EXPECT_FALSE(map().isDragging());
}

TEST_F(CombinationMapTest, TheWindowIsMovedWhole) {
    openTarget();
    const QRectF from = box();
    drag(from.center().toPoint(), from.center().toPoint() + QPoint(-20, -30));
    const TargetWindow& moved = *bench_.car.target;
    EXPECT_EQ(moved.antiSquatHigh - moved.antiSquatLow, 30);
    EXPECT_GT(moved.antiSquatLow, 105);
    EXPECT_NEAR(box().width(), from.width(), 4);
    EXPECT_NEAR(box().left(), from.left() - 20, 4);
}

TEST_F(CombinationMapTest, ASideIsDraggedAloneAndTheOthersKeepTheirNumbers) {
    Car car = wagonCar();
    car.target = TargetWindow{50.25 * kInch, 66 * kInch, 105.5, 135};
    open(car);
    drag(QPointF(box().right(), box().center().y()).toPoint(),
         QPointF(box().right() + 25, box().center().y()).toPoint());
    EXPECT_EQ(bench_.car.target->icNear, car.target->icNear);
    EXPECT_GT(*bench_.car.target->icFar, 67 * kInch);
    EXPECT_EQ(bench_.car.target->antiSquatLow, 105.5);
    const double farthest = *bench_.car.target->icFar;
    drag(box().topLeft().toPoint(), box().topLeft().toPoint() + QPoint(-10, -20));
    EXPECT_LT(*bench_.car.target->icNear, 50 * kInch);
    EXPECT_GT(bench_.car.target->antiSquatHigh, 136);
    EXPECT_EQ(*bench_.car.target->icFar, farthest);
    EXPECT_EQ(bench_.car.target->antiSquatLow, 105.5);
}

TEST_F(CombinationMapTest, ASideDraggedPastTheOtherTurnsTheWindowAbout) {
    openTarget();
    drag(QPointF(box().right(), box().center().y()).toPoint(),
         QPointF(box().left() - 40, box().center().y()).toPoint());
    EXPECT_EQ(*bench_.car.target->icFar, 50 * kInch);
    EXPECT_LT(*bench_.car.target->icNear, 50 * kInch);
}

TEST_F(CombinationMapTest, TheSmallestDragStillGivesAWindow) {
    open(wagonCar());
    const QPoint from = map().scale().plot().center().toPoint();
    drag(from, from + QPoint(0, 9));
    const TargetWindow& target = *bench_.car.target;
    EXPECT_GT(target.inverseNear(), target.inverseFar());
    EXPECT_GT(target.antiSquatHigh, target.antiSquatLow);
}

TEST_F(CombinationMapTest, CursorShapesTellWhatADragWouldDo) {
    openTarget();
    const auto shapeAt = [&](QPointF at) {
        QTest::mouseMove(&map(), at.toPoint());
        return map().cursor().shape();
    };
    EXPECT_EQ(shapeAt({box().left(), box().top() + box().height() / 3}), Qt::SizeHorCursor);
    EXPECT_EQ(shapeAt({box().left() + box().width() / 3, box().top()}), Qt::SizeVerCursor);
    EXPECT_EQ(shapeAt(box().topLeft()), Qt::SizeFDiagCursor);
    EXPECT_EQ(shapeAt(box().topRight()), Qt::SizeBDiagCursor);
    EXPECT_EQ(shapeAt(box().center() - QPointF(0, box().height() / 4)), Qt::SizeAllCursor);
    EXPECT_EQ(shapeAt(map().scale().plot().topRight() + QPointF(-4, 4)), Qt::CrossCursor);
    EXPECT_EQ(shapeAt(place(5)), Qt::PointingHandCursor);
}

TEST_F(CombinationMapTest, DeleteTakesTheWindowAway) {
    openTarget();
    const QImage with = map().grab().toImage();
    map().setFocus();
    QTest::keyClick(&map(), Qt::Key_Delete);
    EXPECT_EQ(phases(), std::vector{EditPhase::whole});
    EXPECT_EQ(bench_.car.target, std::nullopt);
    EXPECT_NE(map().grab().toImage(), with);
    QTest::keyClick(&map(), Qt::Key_Delete);
    EXPECT_EQ(edits_.size(), 1U);
}

// Shapes differ without color, too.
TEST(CombinationDots, AProblemHasAShapeOfItsOwn) {
    const auto shape = [](DotKind kind, bool present) {
        return dotIcon(kind, present, 15, 1.0).toImage().convertToFormat(QImage::Format_Alpha8);
    };
    EXPECT_NE(shape(DotKind::plain, false), shape(DotKind::problem, false));
    EXPECT_NE(shape(DotKind::plain, false), shape(DotKind::plain, true));
    const auto gray = [](DotKind kind) {
        return dotIcon(kind, true, 15, 1.0).toImage().convertToFormat(QImage::Format_Grayscale8);
    };
    EXPECT_NE(gray(DotKind::plain), gray(DotKind::problem));
}

/// All words on the map, a line each.
std::string wordsOn(QWidget& map) {
    TextNotes notes(map.size());
    map.render(&notes);
    QStringList said;
    for (const TextNotes::Note& note : notes.notes()) {
        said << note.text;
    }
    return said.join(QLatin1Char('\n')).toStdString();
}

// High or low, the map says what its axes are and what its names stand for.
TEST_F(CombinationMapTest, SaysWhatTheNamesStandFor) {
    open(wagonCar());
    for (const int height : {90, 240}) {
        map().resize(420, height);
        const std::string words = wordsOn(map());
        EXPECT_THAT(words, testing::HasSubstr("names: lower axle / upper chassis")) << height;
        EXPECT_THAT(words, testing::HasSubstr("IC distance, in")) << height;
        EXPECT_THAT(words, testing::HasSubstr("Anti-squat, %")) << height;
    }
}

// A name cut in the middle stands for nothing.
TEST_F(CombinationMapTest, SaysThatItRestsOnStartingNumbers) {
    Car car = coupeCar();
    for (const bool isStart : {false, true}) {
        setOrigin(car, {.field = Field::cgHeight}, isStart ? Origin::starting : Origin::measured);
        open(car);
        for (const int height : {90, 240}) {
            map().resize(360, height);
            EXPECT_EQ(wordsOn(map()).find("starting numbers") != std::string::npos, isStart) << height;
        }
    }
}

TEST_F(CombinationMapTest, WithoutRoomForAllNamesItSaysNoneOfThem) {
    open(coupeCar());
    for (const int height : {90, 240}) {
        map().resize(400, height);
        const std::string words = wordsOn(map());
        EXPECT_THAT(words, testing::Not(testing::HasSubstr("\u2026"))) << height;
        EXPECT_THAT(words, testing::Not(testing::HasSubstr("names:"))) << height;
        EXPECT_THAT(words, testing::HasSubstr("IC distance, in")) << height;
    }
}

// The name of a selected one stands in the quarter where it hides the fewest points.
TEST_F(CombinationMapTest, ASelectedNameCoversNoPoint) {
    open(wagonCar());
    map().resize(320, 150);
    for (const HoleCombination& combination : state_.combinations) {
        const auto at = static_cast<std::size_t>(&combination - state_.combinations.data());
        map().showMarks(at, std::nullopt);
        TextNotes notes(map().size());
        map().render(&notes);
        const QString name = QString::fromStdString(holeNames(combination.use, bench_.car));
        for (const TextNotes::Note& note : notes.notes()) {
            for (const HoleCombination& other : state_.combinations) {
                EXPECT_FALSE(note.text == name && note.box.contains(place(other.index)))
                    << name.toStdString() << " over " << holeNames(other.use, bench_.car);
            }
        }
    }
}

TEST_F(CombinationMapTest, ThePresentCombinationIsLabelledNow) {
    open(wagonCar());
    const QImage with = map().grab().toImage();
    state_.present.reset();
    show();
    EXPECT_NE(map().grab().toImage(), with);
}

}  // namespace
}  // namespace bolthole::test
