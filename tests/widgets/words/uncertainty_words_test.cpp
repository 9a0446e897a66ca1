// The uncertainty of a figure, in words, and drawn: bands, cloud and outline.
#include "widgets/words/uncertainty_words.h"

#include <gmock/gmock.h>

#include <QLabel>
#include <QTableWidget>
#include <algorithm>
#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "geometry/units/uncertainty_text.h"
#include "tests/support/plain_car.h"
#include "tests/support/text_notes.h"
#include "widgets/compare/difference_table.h"
#include "widgets/curves/chart_drawing.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/kit/theme.h"
#include "widgets/readouts/figure_strip.h"
#include "widgets/readouts/figure_table.h"
#include "widgets/readouts/uncertainty_delegate.h"
#include "widgets/scales/center_uncertainty.h"
#include "widgets/scales/distance_scale.h"
#include "widgets/views/side_cloud.h"
#include "widgets/views/side_view.h"

namespace bolthole {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

BenchState benchOf(const Car& car) {
    BenchState state;
    state.car = state.solvedCar = car;
    state.trace = computeTrace(state.car);
    state.cursor = state.trace.ride;
    state.traceIsCurrent = true;
    state.uncertainty = computeUncertainty(state.car);
    return state;
}

void drawCloudOf(BenchState& state) {
    state.cloud = std::make_shared<const IcCloud>(drawCloud(state.solvedCar, {.samples = 5'000, .seed = 3}));
}

// Lines all but parallel: a sixteenth puts the crossing anywhere.
Car parallelCar() {
    Car car = plainCar();
    car.links[0].chassis.holes[0].at.z() = 7.25 * kMetresPerInch;
    car.links[1].chassis.holes[0].at.z() = 18.98 * kMetresPerInch;
    return car;
}

class FigureUncertainty : public ::testing::Test {
  protected:
    FigureUncertainty() { ThemeKeeper::instance().choose(Appearance::light); }
};

TEST_F(FigureUncertainty, PlusMinusIsNinetyFiveInAHundred) {
    const BenchState state = benchOf(plainCar());
    const double half = kCoverage95 * state.uncertainty.atRide(Figure::antiSquat);
    ASSERT_GT(half, 1.0);
    EXPECT_EQ(cursorUncertaintyWords(state, Figure::antiSquat), QStringLiteral("± %1").arg(std::round(half)));
    const double inverse = inverseDistance(state.cursor);
    const double distance = kCoverage95 * state.uncertainty.inverseAtRide() / (inverse * inverse);
    EXPECT_THAT(centerUncertaintyWords(state).toStdString(),
                StartsWith(uncertaintyText(distance / kCoverage95, Quantity::length, Units::inch) + " × ± "));
}

TEST_F(FigureUncertainty, IsSilentWhereItIsNotToBeSeenOrNotKnown) {
    BenchState state = benchOf(plainCar());
    state.showsUncertainty = false;
    EXPECT_EQ(cursorUncertaintyWords(state, Figure::antiSquat), QString());
    EXPECT_EQ(centerUncertaintyWords(state), QString());
    EXPECT_EQ(uncertaintyTip(state, Figure::antiSquat), QString());
    state.showsUncertainty = true;
    state.uncertainty = TraceUncertainty{};
    EXPECT_EQ(cursorUncertaintyWords(state, Figure::antiSquat), QString());
    EXPECT_EQ(centerUncertaintyWords(state), QString());
}

TEST_F(FigureUncertainty, ACrossingOfNearlyParallelLinesMayBeAnywhere) {
    const BenchState state = benchOf(parallelCar());
    const InverseEnds ends =
        inverseEnds(*centerUncertaintyAt(state.uncertainty, 0), inverseDistance(state.cursor));
    ASSERT_TRUE(ends.throughInfinity());
    const QString nearest = QString::number(std::round(1 / ends.high / kMetresPerInch));
    EXPECT_EQ(centerUncertaintyWords(state), QStringLiteral("anywhere from %1 in to infinity").arg(nearest));
    EXPECT_EQ(cursorUncertaintyWords(state, Figure::icX), nearest + QStringLiteral(" to ∞"));
    EXPECT_EQ(cursorUncertaintyWords(state, Figure::icZ), QString());
}

TEST_F(FigureUncertainty, WhereFirstOrderFailsTheDrawnIntervalStandsAndIsCalledDrawn) {
    BenchState state = benchOf(plainCar());
    IcCloud cloud = drawCloud(state.solvedCar, {.samples = 5'000, .seed = 3});
    const auto antiSquat = static_cast<std::size_t>(Figure::antiSquat);
    cloud.firstOrder[antiSquat] = false;
    cloud.figures[antiSquat].low = 160;
    cloud.figures[antiSquat].high = 210;
    state.cloud = std::make_shared<const IcCloud>(cloud);
    EXPECT_EQ(cursorUncertaintyWords(state, Figure::antiSquat), QStringLiteral("160 to 210"));
    EXPECT_THAT(uncertaintyTip(state, Figure::antiSquat).toStdString(), HasSubstr("Drawn at random"));
    state.cursorTravel = 0.01;  // the cloud is of ride
    EXPECT_THAT(cursorUncertaintyWords(state, Figure::antiSquat).toStdString(), StartsWith("± "));
    EXPECT_THAT(uncertaintyTip(state, Figure::antiSquat).toStdString(), HasSubstr("first order"));
}

TEST_F(FigureUncertainty, TheMeaningNamesTheToolsAsTheyAreSet) {
    const QString words = uncertaintyMeaning(plainCar(), Units::inch);
    EXPECT_THAT(words.toStdString(), HasSubstr("tape ± 0.05 in"));
    EXPECT_THAT(words.toStdString(), HasSubstr("angle finder ± 0.57°"));
    Car careful = plainCar();
    careful.tools.tape = 0.001;
    EXPECT_THAT(uncertaintyMeaning(careful, Units::metric).toStdString(), HasSubstr("tape ± 2.0 mm"));
}

TEST_F(FigureUncertainty, TheStripAndTheTableSayIt) {
    BenchState state = benchOf(plainCar());
    FigureStrip strip;
    strip.resize(900, 110);
    strip.show();
    strip.showState(state);
    auto* plusMinus = strip.findChild<QLabel*>(QStringLiteral("antiSquatFigureUncertainty"));
    ASSERT_NE(plusMinus, nullptr);
    EXPECT_EQ(plusMinus->text(), cursorUncertaintyWords(state, Figure::antiSquat));
    EXPECT_TRUE(plusMinus->isVisible());
    EXPECT_THAT(plusMinus->toolTip().toStdString(), HasSubstr("of 100 cars"));
    FigureTable table;
    table.showState(state);
    EXPECT_EQ(table.item(0, 1)->data(UncertaintyDelegate::kRole).toString(),
              stationUncertaintyWords(state.uncertainty, state.trace.ride, Figure::antiSquat, Units::inch,
                                      Fineness::fine));
    EXPECT_FALSE(table.item(0, 1)->text().contains(QChar(0xb1))) << "what is copied is the number alone";
    state.showsUncertainty = false;
    strip.showState(state);
    table.showState(state);
    EXPECT_FALSE(plusMinus->isVisible());
    EXPECT_EQ(table.item(0, 1)->data(UncertaintyDelegate::kRole).toString(), QString());
}

// Beside a ± of the tape nobody would take the length for one that is yet to be set.
TEST_F(FigureUncertainty, TheStripSaysWhatWasWorkedOut) {
    Car car = plainCar();
    car.links[1].length = builtLength(car.links[1]);
    FigureStrip strip;
    strip.resize(900, 110);
    strip.show();
    const auto says = [&] {
        strip.showState(benchOf(car));
        test::TextNotes notes(strip.size());
        strip.render(&notes);
        return std::ranges::any_of(notes.notes(), [](const test::TextNotes::Note& note) {
            return note.text.contains(QStringLiteral("worked out, not measured: upper length"));
        });
    };
    EXPECT_FALSE(says());
    setOrigin(car, {.field = Field::linkLength, .link = 1}, Origin::workedOut);
    EXPECT_TRUE(says());
    strip.resize(330, 110);
    EXPECT_TRUE(says()) << "where there is little room the other words go";
}

TEST_F(FigureUncertainty, ABandIsThePlusMinusAroundEveryCurve) {
    BenchState state = benchOf(plainCar());
    TravelCurves view;
    view.resize(900, 420);
    view.showTrace(state);
    const std::vector<ChartPoint> antiSquat = view.cards()[2].series[2].points;
    ASSERT_EQ(antiSquat.size(), state.trace.stations.size());
    for (const ChartPoint& point : antiSquat) {
        const Station station = solveStation(state.car, point.imposed);
        const double half =
            kCoverage95 *
            uncertaintyAt(state.uncertainty, static_cast<std::size_t>(Figure::antiSquat), point.imposed);
        EXPECT_NEAR(point.low, station[Figure::antiSquat] - half, 1e-6);
        EXPECT_NEAR(point.high, station[Figure::antiSquat] + half, 1e-6);
    }
    state.showsUncertainty = false;
    view.showTrace(state);
    for (const ChartPoint& point : view.cards()[2].series[2].points) {
        EXPECT_TRUE(std::isnan(point.low) && std::isnan(point.high));
    }
}

TEST_F(FigureUncertainty, TheBandOfTheDistanceRunsInItsInverseAndTheHeightsOpensAtInfinity) {
    const BenchState state = benchOf(parallelCar());
    std::vector<ChartPoint> distance;
    std::vector<ChartPoint> height;
    curvePoints(state.trace, Figure::icX, CurveScale::inverseDistance, &state.uncertainty, distance);
    curvePoints(state.trace, Figure::icZ, CurveScale::throughInfinity, &state.uncertainty, height);
    // The rows alone: between them the height follows its asymptote to the pole.
    std::erase_if(height, [&](const ChartPoint& point) {
        return std::ranges::none_of(distance,
                                    [&](const ChartPoint& row) { return row.imposed == point.imposed; });
    });
    ASSERT_EQ(distance.size(), height.size());
    int open = 0;
    int closed = 0;
    for (std::size_t i = 0; i < distance.size(); ++i) {
        ASSERT_TRUE(std::isfinite(distance[i].low) && std::isfinite(distance[i].high));
        const bool mayBeFar = distance[i].low <= 0 && distance[i].high >= 0;
        EXPECT_EQ(std::isinf(height[i].low) && std::isinf(height[i].high), mayBeFar) << height[i].imposed;
        (mayBeFar ? open : closed) += 1;
    }
    EXPECT_GT(open, 0);
    EXPECT_GT(closed, 0);
}

TEST_F(FigureUncertainty, ABandIsPaintedInsideItsEndsAndCutOffAtThePlot) {
    QImage image(200, 200, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    const ChartPlot plot{QRectF(50, 50, 100, 100), true, 0, 10, -1, 1};
    fillBand(painter, {{-1, 5, 4, 6}, {0, 5, 4, 1e9}, {1, 5, 4, 6}}, plot, Qt::black);
    painter.end();
    EXPECT_EQ(image.pixelColor(100, 100), QColor(Qt::black)) << "between the ends";
    EXPECT_EQ(image.pixelColor(80, 100), QColor(Qt::white)) << "below the lower end";
    EXPECT_EQ(image.pixelColor(148, 100), QColor(Qt::black)) << "up to the plot's edge";
    EXPECT_EQ(image.pixelColor(152, 100), QColor(Qt::white)) << "and no farther";
    EXPECT_EQ(image.pixelColor(148, 148), QColor(Qt::white)) << "the band is narrow at droop";
}

QImage pictureOf(SideView& view, const BenchState& state) {
    view.showState(state);
    return view.grab().toImage();
}

TEST_F(FigureUncertainty, TheSideViewDrawsTheOutlineThenTheCloudAndOffMeansOff) {
    BenchState state = benchOf(plainCar());
    SideView view;
    view.resize(900, 500);
    view.showState(state);
    EXPECT_FALSE(showsCloud(state));
    EXPECT_TRUE(showsOutline(state));
    const QImage outlined = pictureOf(view, state);
    drawCloudOf(state);
    EXPECT_TRUE(showsCloud(state));
    const QImage clouded = pictureOf(view, state);
    state.showsUncertainty = false;
    EXPECT_FALSE(showsCloud(state) || showsOutline(state));
    const QImage without = pictureOf(view, state);
    EXPECT_NE(outlined, without);
    EXPECT_NE(clouded, without);
    EXPECT_NE(clouded, outlined);
    state.showsUncertainty = true;
    state.cursorTravel = 0.02;
    state.cursor = solveStation(state.car, 0.02);
    EXPECT_FALSE(showsCloud(state)) << "the cloud is of ride";
    EXPECT_TRUE(showsOutline(state));
}

// Far off, the cloud spreads over the county; the picture keeps its box.
TEST_F(FigureUncertainty, TheCloudDoesNotWidenTheWholePicture) {
    BenchState state = benchOf(parallelCar());
    SideView view;
    view.resize(900, 500);
    view.showState(state);
    view.showAll();
    const double scale = view.camera().scale;
    drawCloudOf(state);
    view.showState(state);
    view.showAll();
    EXPECT_EQ(view.camera().scale, scale);
}

class ChangeUncertainty : public FigureUncertainty {
  protected:
    // The baseline has the lower axle bolt in the other hole; or the same hole a hair higher.
    void compareWith(const Car& before) {
        state_ = benchOf(plainCar());
        BenchState other = benchOf(before);
        state_.baseline =
            Ghost{other.car, other.trace, other.cursor, QStringLiteral("before"), other.uncertainty};
        comparison_ = compareCars(before, state_.car);
        table_.showState(state_, comparison_);
    }
    [[nodiscard]] int rowOf(const QString& name) const {
        for (int row = 0; row < table_.rowCount(); ++row) {
            if (table_.verticalHeaderItem(row)->text().startsWith(name)) {
                return row;
            }
        }
        return -1;
    }

    BenchState state_;
    Comparison comparison_;
    DifferenceTable table_;
};

constexpr int kChangeAtRide = 2;

TEST_F(ChangeUncertainty, HasItsPlusMinusAndOneBeyondItHasNoRemark) {
    Car before = plainCar();
    before.links[0].axle.use = 1;
    compareWith(before);
    const int row = rowOf(QStringLiteral("Anti-squat"));
    ASSERT_GE(row, 0);
    const double uncertainty = uncertaintyOfDifference(state_.baseline->uncertainty, state_.uncertainty, 0,
                                                       static_cast<std::size_t>(Figure::antiSquat));
    EXPECT_EQ(table_.item(row, kChangeAtRide)->data(UncertaintyDelegate::kRole).toString().toStdString(),
              uncertaintyText(uncertainty, Quantity::percent, Units::inch, Fineness::fine));
    EXPECT_THAT(table_.cannotTell(), testing::Not(testing::Contains(Figure::antiSquat)));
    EXPECT_THAT(table_.item(row, kChangeAtRide)->toolTip().toStdString(), HasSubstr("more than"));
}

// A hole measured anew a fiftieth of an inch higher: no tape tells.
TEST_F(ChangeUncertainty, WithinWhatTheTapeMissesCannotBeTold) {
    Car before = plainCar();
    before.links[0].axle.holes[0].at.z() += 0.02 * kMetresPerInch;
    compareWith(before);
    table_.setUnfolded(true);
    const int row = rowOf(QStringLiteral("Instant center, ahead"));
    ASSERT_GE(row, 0);
    const QTableWidgetItem& cell = *table_.item(row, kChangeAtRide);
    EXPECT_THAT(cell.data(UncertaintyDelegate::kRole).toString().toStdString(), StartsWith("within ± "));
    EXPECT_THAT(cell.toolTip().toStdString(), HasSubstr("can't tell these two apart"));
    EXPECT_FALSE(cell.data(Qt::UserRole).toBool()) << "not bold";
}

}  // namespace
}  // namespace bolthole
