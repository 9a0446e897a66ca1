// The ghosts of the baseline and of a combination pointed at: in the curves, the strip and the side view.
#include <gmock/gmock.h>

#include <QLabel>
#include <QTest>

#include "tests/support/made_bench.h"
#include "tests/support/plain_car.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/readouts/figure_strip.h"
#include "widgets/views/side_view.h"

namespace bolthole {
namespace {

using test::madeBench;
using test::MadeCurves;

Ghost ghostOf(const BenchState& other) {
    return {other.car, other.trace, other.cursor, QStringLiteral("before")};
}

const ChartSeries& seriesNamed(const TravelCurves& view, const char* name) {
    for (const ChartCard& card : view.cards()) {
        for (const ChartSeries& series : card.series) {
            if (series.name == QLatin1String(name)) {
                return series;
            }
        }
    }
    throw std::runtime_error(std::string("no such curve: ") + name);
}

class Ghosts : public ::testing::Test {
  protected:
    Ghosts() {
        ThemeKeeper::instance().choose(Appearance::light);
        other_.tangent = 0.4;
    }
    MadeCurves own_;
    MadeCurves other_;
    BenchState state_ = madeBench(own_);
};

TEST_F(Ghosts, BothStandInEveryCardAndGoAgain) {
    TravelCurves view;
    view.resize(700, 420);
    state_.baseline = ghostOf(madeBench(other_));
    view.showTrace(state_);
    const auto points = [&](const char* name) { return seriesNamed(view, name).points; };
    EXPECT_TRUE(points("anti-squat, pointed at").empty());
    EXPECT_EQ(seriesNamed(view, "anti-squat, before").line, ChartLine::fineDashes) << "never color alone";
    ASSERT_FALSE(points("anti-squat, before").empty());
    EXPECT_NEAR(points("anti-squat, before").front().value,
                state_.baseline->trace.stations.front()[Figure::antiSquat], 1e-9);

    state_.pointed = state_.baseline;
    state_.baseline.reset();
    view.showTrace(state_);
    EXPECT_TRUE(points("anti-squat, before").empty());
    EXPECT_FALSE(points("anti-squat, pointed at").empty());
    state_.pointed.reset();
    view.showTrace(state_);
    EXPECT_TRUE(points("anti-squat, pointed at").empty());
}

TEST_F(Ghosts, TheDifferenceAtTheCursorIsSaid) {
    TravelCurves view;
    view.resize(900, 420);
    state_.baseline = ghostOf(madeBench(other_));
    view.showTrace(state_);
    const double was = state_.baseline->cursor[Figure::antiSquat];
    const double by = state_.cursor[Figure::antiSquat] - was;
    const QString words = QStringLiteral("before %1, change %2")
                              .arg(QString::fromStdString(figureText(was, Quantity::percent, Units::inch)),
                                   QString::fromStdString(figureText(by, Quantity::percent, Units::inch)));
    EXPECT_TRUE(view.accessibleDescription().contains(words))
        << view.accessibleDescription().toStdString() << "\nwanted " << words.toStdString();
}

TEST_F(Ghosts, TheStripNamesTheBaselineOnlyWhereThereIsOne) {
    FigureStrip strip;
    strip.resize(900, 90);
    strip.show();
    strip.showState(state_);
    auto* label = strip.findChild<QLabel*>(QStringLiteral("antiSquatFigureBaseline"));
    ASSERT_NE(label, nullptr);
    EXPECT_FALSE(label->isVisible());
    state_.baseline = ghostOf(madeBench(other_));
    strip.showState(state_);
    EXPECT_TRUE(label->isVisible());
    EXPECT_TRUE(label->text().startsWith(QStringLiteral("before "))) << label->text().toStdString();
    state_.baseline.reset();
    strip.showState(state_);
    EXPECT_FALSE(label->isVisible());
}

TEST(GhostInTheSideView, IsDrawnAndWithoutItThePictureIsAsItWas) {
    ThemeKeeper::instance().choose(Appearance::light);
    BenchState state;
    state.car = state.solvedCar = plainCar();
    state.trace = computeTrace(state.car);
    state.cursor = state.trace.ride;
    state.traceIsCurrent = true;
    SideView view;
    view.resize(760, 460);
    view.showState(state);
    const QImage plain = view.grab().toImage();
    Car other = state.car;
    other.links[0].axle.use = 1;
    const Trace trace = computeTrace(other);
    state.pointed = Ghost{other, trace, trace.ride, QStringLiteral("top")};
    view.showState(state);
    EXPECT_NE(view.grab().toImage(), plain);
    state.pointed.reset();
    view.showState(state);
    EXPECT_EQ(view.grab().toImage(), plain);
}

}  // namespace
}  // namespace bolthole
