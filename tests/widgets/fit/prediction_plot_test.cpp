// Predicted against run: what the plot shows of each pass.
#include <gmock/gmock.h>

#include <QTest>

#include "widgets/fit/fit_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

FittedPass passAt(double run, double predicted, double weight = 1) {
    FittedPass pass;
    pass.run = run;
    pass.fitted = predicted;
    pass.predicted = predicted;
    pass.predictedU = 0.010;
    pass.weight = weight;
    return pass;
}

class PredictionPlotTest : public testing::Test {
  protected:
    PredictionPlotTest() {
        ThemeKeeper::instance().choose(Appearance::light);
        plot_.resize(380, 190);
        plot_.showPasses(
            {passAt(2.20, 2.21), passAt(2.30, 2.37), passAt(2.40, 2.39), passAt(3.90, 2.30, 0.01)},
            {QStringLiteral("one"), QStringLiteral("two"), QStringLiteral("three"), QStringLiteral("four")});
        plot_.show();
    }
    [[nodiscard]] const ChartSeries& passes() const { return plot_.cards().front().series.back(); }

    PredictionPlot plot_;
};

TEST_F(PredictionPlotTest, PutsRunUpAndPredictedAcrossOnTheSameScale) {
    const ChartPlot& plot = plot_.onScreen().front().plot();
    EXPECT_TRUE(plot.isUpright);
    EXPECT_EQ(plot.low, plot.from);
    EXPECT_EQ(plot.high, plot.to);
    const QPointF one = plot.at(2.20, 2.21);
    const QPointF three = plot.at(2.40, 2.39);
    EXPECT_LT(one.x(), three.x());
    EXPECT_GT(one.y(), three.y());
    const ChartSeries& diagonal = plot_.cards().front().series.front();
    for (const ChartPoint& end : diagonal.points) {
        EXPECT_EQ(end.imposed, end.value);
    }
    // Half widths at 95 %: 1.96 standard ones.
    EXPECT_NEAR(passes().points[0].high - passes().points[0].low, 2 * 1.96 * 0.010, 1e-4);
}

TEST_F(PredictionPlotTest, MarksWhatLiesOutsideAndPutsAMistakeAtTheEdge) {
    const ChartPlot& plot = plot_.onScreen().front().plot();
    EXPECT_EQ(passes().marks[0].mark, ChartMark::circle);
    EXPECT_EQ(passes().marks[1].mark, ChartMark::diamond) << "0.07 s off, seven times its standard one";
    EXPECT_TRUE(passes().marks[1].isFilled);
    EXPECT_FALSE(passes().marks[3].isFilled);
    EXPECT_LT(plot.to, 2.6) << "a mistake does not stretch the axes";
    EXPECT_EQ(passes().points[3].imposed, plot.to);
    EXPECT_EQ(plot_.pointWords(0, 1, 3).toStdString(),
              "four: run 3.900 s, predicted 2.300 ± 0.020 s\nso far off that it hardly counts");
    EXPECT_EQ(plot_.pointWords(0, 1, 0).toStdString(), "one: run 2.200 s, predicted 2.210 ± 0.020 s");
}

TEST_F(PredictionPlotTest, SaysEveryPassToScreenReaders) {
    EXPECT_EQ(plot_.accessibleName(), "Predicted against run");
    EXPECT_EQ(plot_.accessibleDescription(),
              "one: run 2.200 s, predicted 2.210 s; two: run 2.300 s, predicted 2.370 s; three: run 2.400 s, "
              "predicted 2.390 s; four: run 3.900 s, predicted 2.300 s");
}

}  // namespace
}  // namespace bolthole
