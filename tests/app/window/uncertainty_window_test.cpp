// Uncertainty, in the real window: bands follow a drag, the cloud comes when the car has settled and goes
// with the next change, Ctrl+U takes all of it away.
#include <gmock/gmock.h>

#include <QAction>
#include <QLabel>
#include <QTest>

#include "app/window/main_window.h"
#include "tests/support/bench_points.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/views/side_view.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

class UncertaintyWindow : public ::testing::Test {
  protected:
    UncertaintyWindow() {
        window_.resize(1480, 920);
        window_.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&window_));
        window_.openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
    }
    ~UncertaintyWindow() override { window_.document().undoStack().setClean(); }

    [[nodiscard]] const BenchState& state() const { return window_.state(); }
    [[nodiscard]] bool cloudComes() {
        return QTest::qWaitFor([this] { return state().cloud != nullptr; }, kPatience);
    }
    /// The points of anti-squat that have a band.
    [[nodiscard]] std::vector<ChartPoint> band() {
        std::vector<ChartPoint> points = window_.findChild<TravelCurves*>()->cards()[2].series[2].points;
        std::erase_if(points, [](const ChartPoint& point) { return std::isnan(point.low); });
        return points;
    }
    [[nodiscard]] PointId lowerHole() const {
        PointId id = kLowerFront;
        id.hole = state().car.links[0].chassis.use;
        return id;
    }
    [[nodiscard]] QAction& uncertaintyAction() {
        for (QAction* action : window_.findChildren<QAction*>()) {
            if (action->shortcut() == QKeySequence(QStringLiteral("Ctrl+U"))) {
                return *action;
            }
        }
        throw std::runtime_error("no Ctrl+U");
    }
    [[nodiscard]] QString stripWords() {
        return window_.findChild<QLabel*>(QStringLiteral("antiSquatFigureUncertainty"))->text();
    }

    MainWindow window_{Settings{}};
};

TEST_F(UncertaintyWindow, BandsFollowADragAndTheCloudComesWhenItEnds) {
    ASSERT_TRUE(cloudComes());
    const std::shared_ptr<const IcCloud> first = state().cloud;
    const double before = state().uncertainty.atRide(Figure::icX);
    const std::vector<ChartPoint> bandBefore = band();
    SideView& view = window_.sideView();
    const QPoint from = view.placeOf(lowerHole()).toPoint();
    QTest::mousePress(&view, Qt::LeftButton, Qt::NoModifier, from);
    QTest::mouseMove(&view, from + QPoint(0, 8));
    QTest::mouseMove(&view, from + QPoint(0, 20));
    ASSERT_TRUE(window_.document().isDragging());
    EXPECT_EQ(state().cloud, nullptr) << "no cloud in a drag";
    EXPECT_NE(state().uncertainty.atRide(Figure::icX), before);
    ASSERT_EQ(band().size(), bandBefore.size());
    EXPECT_NE(band()[3].low, bandBefore[3].low);
    EXPECT_NE(band()[3].high, bandBefore[3].high);
    QTest::qWait(600);
    EXPECT_EQ(state().cloud, nullptr) << "not while the hole is held either";
    QTest::mouseRelease(&view, Qt::LeftButton, Qt::NoModifier, from + QPoint(0, 20));
    ASSERT_TRUE(cloudComes());
    EXPECT_NE(state().cloud, first);
    EXPECT_EQ(state().cloud->points.size(), kCloudPoints);
    // JCGM 101:2008, cl. 8: the drawn figures are the ones to hold first order against; on this car it does.
    const Coverage& antiSquat = state().cloud->of(Figure::antiSquat);
    EXPECT_NEAR(antiSquat.uncertainty, state().uncertainty.atRide(Figure::antiSquat),
                0.03 * antiSquat.uncertainty);
    EXPECT_NEAR(antiSquat.mean, state().trace.ride[Figure::antiSquat], 0.2 * antiSquat.uncertainty);
}

TEST_F(UncertaintyWindow, TheCloudGoesWithTheNextChangeAndTheSameCarGivesTheSameCloud) {
    ASSERT_TRUE(cloudComes());
    const std::vector<std::array<float, 2>> points = state().cloud->points;
    window_.document().apply(SetNumber{{.field = Field::wheelbase}, state().car.wheelbase + 0.01},
                             EditPhase::whole, {});
    EXPECT_EQ(state().cloud, nullptr);
    ASSERT_TRUE(cloudComes());
    EXPECT_NE(state().cloud->of(Figure::antiSquat).mean, 0);
    window_.document().undoStack().undo();
    EXPECT_EQ(state().cloud, nullptr);
    ASSERT_TRUE(cloudComes());
    EXPECT_EQ(state().cloud->points, points);
}

TEST_F(UncertaintyWindow, ControlUTakesAllOfItAwayAndBringsItBack) {
    ASSERT_TRUE(cloudComes());
    EXPECT_THAT(stripWords().toStdString(), HasSubstr("±"));
    EXPECT_FALSE(band().empty());
    const QImage with = window_.sideView().grab().toImage();
    uncertaintyAction().trigger();
    EXPECT_EQ(stripWords(), QString());
    EXPECT_TRUE(band().empty());
    EXPECT_NE(window_.sideView().grab().toImage(), with);
    EXPECT_FALSE(Settings::load().showsUncertainty) << "remembered";
    uncertaintyAction().trigger();
    EXPECT_THAT(stripWords().toStdString(), HasSubstr("±"));
    EXPECT_FALSE(band().empty());
    EXPECT_EQ(window_.sideView().grab().toImage(), with);
    EXPECT_TRUE(Settings::load().showsUncertainty);
}

TEST_F(UncertaintyWindow, TheBaselineHasAnUncertaintyOfItsOwn) {
    window_.document().apply(KeepSetup{"Monday", "2026-01-05", "", std::make_shared<const Car>(state().car)},
                             EditPhase::whole, {});
    ASSERT_TRUE(state().baseline.has_value());
    EXPECT_TRUE(state().baseline->uncertainty.known);
    EXPECT_EQ(state().baseline->uncertainty.atRide(Figure::antiSquat),
              state().uncertainty.atRide(Figure::antiSquat));
    EXPECT_NEAR(uncertaintyOfDifference(state().baseline->uncertainty, state().uncertainty, 0,
                                        static_cast<std::size_t>(Figure::antiSquat)),
                0, 1e-6)
        << "the same car, measured once";
}

}  // namespace
}  // namespace bolthole
