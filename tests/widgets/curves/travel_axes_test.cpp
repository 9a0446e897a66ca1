// The value axes of the travel curves once a mistake is undone, and their keys where there is little room.
#include <gmock/gmock.h>

#include <QHelpEvent>
#include <QTest>
#include <QToolTip>
#include <utility>

#include "tests/support/made_bench.h"
#include "tests/support/made_units.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

using test::madeBench;
using test::MadeCurves;

class TravelAxes : public testing::Test {
  protected:
    TravelAxes() {
        ThemeKeeper::instance().choose(Appearance::light);
        view_.resize(700, 420);
        show({});
        view_.show();
    }
    void show(const MadeCurves& made) {
        state_ = madeBench(made);
        view_.showTrace(state_);
    }
    [[nodiscard]] std::vector<ChartPlot> plots() const {
        std::vector<ChartPlot> all;
        for (const ChartCardOnScreen& card : view_.onScreen()) {
            all.push_back(card.plot());
        }
        return all;
    }

    BenchState state_;
    TravelCurves view_;
};

TEST_F(TravelAxes, ComeBackFromAMistakeThatWasUndone) {
    const std::vector<ChartPlot> before = plots();
    for (const double much : {2.0, 2.5, 6.0, 100.0}) {
        MadeCurves mistake;
        mistake.tangentSlope *= much;
        mistake.inverseSlope *= much;
        show(mistake);
        EXPECT_NE(plots(), before);
        show({});
        EXPECT_EQ(plots(), before) << much;
    }
}

// An axis that jumps to and fro in a drag can't be read.
TEST_F(TravelAxes, KeepStillInADrag) {
    MadeCurves wider;
    wider.tangentSlope *= 2;
    view_.setMoving(true);
    show(wider);
    const std::vector<ChartPlot> moving = plots();
    show({});
    EXPECT_EQ(plots()[2], moving[2]);
}

// Beside the side view in a window of 1280 x 800 a card is 72 px wide; 375 are the least the curves may have.
TEST_F(TravelAxes, NamesInNarrowKeysAreWhole) {
    for (const int width : {375, 386, 420, 480, 560, 800}) {
        view_.resize(width, 330);
        for (const double travel : {0.0, 4 * kMetresPerInch, -4 * kMetresPerInch}) {
            test::moveCursor(state_, {}, travel);
            view_.showCursor(state_);
            for (const std::size_t card : {3U, 4U}) {
                const std::vector<ChartSeries>& series = view_.cards()[card].series;
                for (std::size_t i = 0; i < series.size(); ++i) {
                    const QString shown = view_.keyName(card, i);
                    EXPECT_TRUE(series[i].isGhost || series[i].keyNames.contains(shown))
                        << shown.toStdString() << " in " << width << " px";
                }
            }
        }
        EXPECT_GT(plots()[3].area.height(), 150);
    }
}

// The distance's steps are unlike: it says so along its axis, off the curve, and in its tip.
TEST_F(TravelAxes, TheDistanceSaysHowItIsSpaced) {
    const ChartCardOnScreen& distance = view_.onScreen()[0];
    ASSERT_FALSE(distance.axisBox().isNull());
    EXPECT_TRUE(distance.card().axisWords.contains(QStringLiteral("1/distance")));
    for (const ChartPoint& point : distance.card().series[0].points) {
        EXPECT_FALSE(distance.axisBox().contains(distance.plot().at(point.imposed, point.value)));
    }
    EXPECT_TRUE(view_.onScreen()[2].axisBox().isNull()) << "anti-squat is spaced evenly";
    for (const auto& [card, words] :
         {std::pair{0U, "1/distance"}, std::pair{1U, "stands without the curve"}}) {
        const QPoint at = view_.onScreen()[card].frame().center().toPoint();
        QHelpEvent help(QEvent::ToolTip, at, view_.mapToGlobal(at));
        QCoreApplication::sendEvent(&view_, &help);
        EXPECT_THAT(QToolTip::text().toStdString(), testing::HasSubstr(words));
    }
}

}  // namespace
}  // namespace bolthole
