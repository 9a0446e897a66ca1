// The ghosts of the before and of a choice pointed at: in the curves, the strip and the side view.
#include <gmock/gmock.h>
#include <qcustomplot.h>

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

const QCPGraph* graphNamed(const QWidget& view, const QString& name) {
    const auto* plot = view.findChild<QCustomPlot*>();
    for (int i = 0; i < plot->graphCount(); ++i) {
        if (plot->graph(i)->name() == name) {
            return plot->graph(i);
        }
    }
    return nullptr;
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
    state_.before = ghostOf(madeBench(other_));
    view.showTrace(state_);
    const QCPGraph* before = graphNamed(view, QStringLiteral("anti-squat, before"));
    const QCPGraph* pointed = graphNamed(view, QStringLiteral("anti-squat, pointed at"));
    ASSERT_NE(before, nullptr);
    ASSERT_NE(pointed, nullptr);
    EXPECT_FALSE(before->data()->isEmpty());
    EXPECT_TRUE(pointed->data()->isEmpty());
    EXPECT_EQ(before->pen().style(), Qt::CustomDashLine) << "never color alone";
    const double shown = before->data()->constBegin()->value;
    EXPECT_NEAR(shown, state_.before->trace.stations.front()[Figure::antiSquat], 1e-9);

    state_.pointed = state_.before;
    state_.before.reset();
    view.showTrace(state_);
    EXPECT_TRUE(before->data()->isEmpty());
    EXPECT_FALSE(pointed->data()->isEmpty());
    state_.pointed.reset();
    view.showTrace(state_);
    EXPECT_TRUE(pointed->data()->isEmpty());
}

TEST_F(Ghosts, TheDifferenceAtTheCursorIsSaid) {
    TravelCurves view;
    view.resize(900, 420);
    state_.before = ghostOf(madeBench(other_));
    view.showTrace(state_);
    const double was = state_.before->cursor[Figure::antiSquat];
    const double by = state_.cursor[Figure::antiSquat] - was;
    const QString words = QStringLiteral("before %1, change %2")
                              .arg(QString::fromStdString(figureText(was, Quantity::percent, Units::inch)),
                                   QString::fromStdString(figureText(by, Quantity::percent, Units::inch)));
    EXPECT_TRUE(view.accessibleDescription().contains(words))
        << view.accessibleDescription().toStdString() << "\nwanted " << words.toStdString();
}

TEST_F(Ghosts, TheStripNamesTheBeforeOnlyWhereThereIsOne) {
    FigureStrip strip;
    strip.resize(900, 90);
    strip.show();
    strip.showState(state_);
    auto* label = strip.findChild<QLabel*>(QStringLiteral("antiSquatFigureBefore"));
    ASSERT_NE(label, nullptr);
    EXPECT_FALSE(label->isVisible());
    state_.before = ghostOf(madeBench(other_));
    strip.showState(state_);
    EXPECT_TRUE(label->isVisible());
    EXPECT_TRUE(label->text().startsWith(QStringLiteral("before "))) << label->text().toStdString();
    state_.before.reset();
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
