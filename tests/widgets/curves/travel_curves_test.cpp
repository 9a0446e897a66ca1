#include "widgets/curves/travel_curves.h"

#include <gmock/gmock.h>
#include <qcustomplot.h>

#include <QSignalSpy>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "tests/support/made_bench.h"
#include "tests/support/made_units.h"
#include "widgets/curves/curve_card.h"
#include "widgets/kit/theme.h"
#include "widgets/scales/travel_slider.h"

namespace bolthole {
namespace {

using test::madeBench;
using test::MadeCurves;
using test::moveCursor;
using testing::HasSubstr;

/// Curves wired as the window wires them: what is asked for is shown.
class Bench {
  public:
    explicit Bench(const MadeCurves& made, QSize size = {700, 420}) : curves_(made), state(madeBench(made)) {
        ThemeKeeper::instance().choose(Appearance::light);
        view.resize(size);
        QObject::connect(&view, &TravelCurves::cursorMoved, [this](double travel) {
            asked.push_back(travel);
            moveCursor(state, curves_, travel);
            view.showCursor(state);
        });
        view.showTrace(state);
        view.show();
        [[maybe_unused]] const bool exposed = QTest::qWaitForWindowExposed(&view);
    }

    void remake(const MadeCurves& made) {
        curves_ = made;
        state = madeBench(made);
        view.showTrace(state);
    }
    [[nodiscard]] QCustomPlot& plot() { return *view.findChild<QCustomPlot*>(); }
    [[nodiscard]] const QCPGraphDataContainer& curve(const QString& name) {
        for (int i = 0; i < plot().graphCount(); ++i) {
            if (plot().graph(i)->name() == name) {
                return *plot().graph(i)->data();
            }
        }
        throw std::runtime_error("no such curve: " + name.toStdString());
    }
    [[nodiscard]] QCPRange range(int card) { return plot().axisRect(card)->axis(QCPAxis::atBottom)->range(); }
    /// Point on the plots at a travel.
    [[nodiscard]] QPoint at(double travel) const {
        const QRect plots = view.plotArea();
        const double share = (curves_.bump - travel) / (curves_.bump + curves_.droop);
        return {plots.center().x(), plots.top() + static_cast<int>(std::lround(share * plots.height()))};
    }

  private:
    MadeCurves curves_;

  public:
    BenchState state;
    TravelCurves view;
    std::vector<double> asked;
};

/// Passes infinity 2 in below ride: 1/distance is zero there, and exactly on a row.
MadeCurves throughInfinity() {
    MadeCurves made;
    made.inverseAtRide = 0.2;
    made.inverseSlope = 0.2 / (2 * kInch);
    return made;
}

TEST(TravelCurves, DragAsksForTravelWithinTheRange) {
    Bench bench({});
    QTest::mousePress(&bench.view, Qt::LeftButton, {}, bench.at(1 * kInch));
    ASSERT_EQ(bench.asked.size(), 1U);
    EXPECT_NEAR(bench.asked.back(), 1 * kInch, 0.02 * kInch);
    QTest::mouseMove(&bench.view, {350, -200});
    EXPECT_EQ(bench.asked.back(), 4 * kInch);
    QTest::mouseMove(&bench.view, {350, 2000});
    EXPECT_EQ(bench.asked.back(), -4 * kInch);
    QTest::mouseRelease(&bench.view, Qt::LeftButton, {}, {350, 2000});
    const std::size_t count = bench.asked.size();
    QTest::mouseMove(&bench.view, bench.at(2 * kInch));
    EXPECT_EQ(bench.asked.size(), count) << "hovering must not move the cursor";
}

TEST(TravelCurves, RideIsHitExactlyAndByDoubleClick) {
    Bench bench({});
    QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.at(2 * kInch));
    QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.at(0) + QPoint(0, 2));
    EXPECT_EQ(bench.asked.back(), 0.0);
    QTest::mouseDClick(&bench.view, Qt::LeftButton, {}, bench.at(-3 * kInch));
    EXPECT_EQ(bench.asked.back(), 0.0);
}

TEST(TravelCurves, KeysStepThroughTheRows) {
    Bench bench({});
    const double row = 8 * kInch / 80;
    const auto after = [&](Qt::Key key) {
        QTest::keyClick(&bench.view, key);
        return bench.asked.back();
    };
    EXPECT_NEAR(after(Qt::Key_Up), row, 1e-12);
    EXPECT_NEAR(after(Qt::Key_PageUp), 11 * row, 1e-12);
    EXPECT_NEAR(after(Qt::Key_Down), 10 * row, 1e-12);
    EXPECT_NEAR(after(Qt::Key_PageDown), 0.0, 1e-12);
    EXPECT_EQ(after(Qt::Key_Home), 4 * kInch);
    EXPECT_EQ(after(Qt::Key_End), -4 * kInch);
    EXPECT_EQ(after(Qt::Key_R), 0.0);
    const std::size_t count = bench.asked.size();
    QTest::keyClick(&bench.view, Qt::Key_R, Qt::ControlModifier);
    QTest::keyClick(&bench.view, Qt::Key_A);
    EXPECT_EQ(bench.asked.size(), count);
}

TEST(TravelCurves, FromBetweenRowsAKeyGoesToTheNextRow) {
    const TravelSpan span{-0.1, 0.1, 21};
    EXPECT_NEAR(*travelAfterKey(Qt::Key_Up, 0.013, span), 0.02, 1e-12);
    EXPECT_NEAR(*travelAfterKey(Qt::Key_Down, 0.013, span), 0.01, 1e-12);
    EXPECT_EQ(*travelAfterKey(Qt::Key_Up, 0.1, span), 0.1);
    EXPECT_EQ(*travelAfterKey(Qt::Key_Down, -0.1, span), -0.1);
    EXPECT_FALSE(travelAfterKey(Qt::Key_Space, 0.0, span).has_value());
}

TEST(TravelCurves, DistanceStaysOneSmoothLineThroughInfinity) {
    Bench bench(throughInfinity());
    std::vector<CurvePoint> whole;
    curvePoints(bench.state.trace, Figure::icX, CurveScale::inverseDistance, whole);
    ASSERT_EQ(whole.size(), 81U);
    EXPECT_EQ(whole[20].value, 0.0) << "the row at infinity";
    EXPECT_LT(whole.front().value, 0.0);
    EXPECT_GT(whole.back().value, 0.0);
    // The made 1/distance is linear in travel, so the line drawn must be, without a break and from end to
    // end.
    const double slope =
        (whole.back().value - whole.front().value) / (whole.back().travel - whole.front().travel);
    const QCPGraphDataContainer& points = bench.curve(QStringLiteral("IC distance"));
    ASSERT_GE(points.size(), 2);
    EXPECT_EQ(points.at(0)->key, whole.front().travel);
    EXPECT_EQ(points.at(points.size() - 1)->key, whole.back().travel);
    for (int i = 0; i < points.size(); ++i) {
        const QCPGraphData& point = *points.at(i);
        EXPECT_NEAR(point.value, whole.front().value + slope * (point.key - whole.front().travel), 1e-9);
    }
}

TEST(TravelCurves, HeightLeavesThePlotAtThePoleAndIsBrokenThere) {
    MadeCurves made = throughInfinity();
    made.inverseAtRide = 0.203;  // the pole between two rows
    Bench bench(made);
    const QCPGraphDataContainer& points = bench.curve(QStringLiteral("IC height"));
    const QCPRange range = bench.range(1);
    std::vector<int> breaks;
    for (int i = 0; i < points.size(); ++i) {
        if (std::isnan(points.at(i)->value)) {
            breaks.push_back(i);
        }
    }
    ASSERT_EQ(breaks.size(), 1U);
    const int pole = breaks.front();
    EXPECT_NEAR(points.at(pole)->key, -0.203 / made.inverseSlope, 1e-9);
    EXPECT_LT(points.at(pole - 1)->value, range.lower);
    EXPECT_GT(points.at(pole + 1)->value, range.upper);
    for (int i = 0; i < points.size(); ++i) {
        const double travel = points.at(i)->key;
        const double height =
            (made.tangent + made.tangentSlope * travel) / (made.inverseAtRide + made.inverseSlope * travel);
        if (i != pole) {
            EXPECT_NEAR(points.at(i)->value / height, 1.0, 1e-6) << "point " << i;
        }
    }
}

TEST(TravelCurves, ThePoleOnARowIsAGapToo) {
    std::vector<CurvePoint> points;
    const BenchState state = madeBench(throughInfinity());
    curvePoints(state.trace, Figure::icZ, CurveScale::throughInfinity, points);
    for (std::size_t i = 1; i < points.size(); ++i) {
        EXPECT_GE(points[i].travel, points[i - 1].travel);
        EXPECT_FALSE(points[i].value * points[i - 1].value < 0) << "a line across the plot at point " << i;
    }
}

TEST(TravelCurves, DistanceIsBrokenWhereTheCenterPassesOverTheContactPatch) {
    BenchState state = madeBench({});
    for (Station& station : state.trace.stations) {
        station.figures[static_cast<std::size_t>(Figure::icX)] = station[Figure::travel] + 0.0007;
    }
    std::vector<CurvePoint> points;
    curvePoints(state.trace, Figure::icX, CurveScale::inverseDistance, points);
    for (std::size_t i = 1; i < points.size(); ++i) {
        EXPECT_FALSE(points[i].value * points[i - 1].value < 0) << "a line across the plot at point " << i;
    }
}

// What thinning takes out cannot be seen: every point lies within a tenth of a pixel of the line that is
// left.
TEST(ThinPoints, LeavesTheLineWhereItWas) {
    const double kPerTravel = 2500;  // px/m
    for (const double bend : {0.0, 40.0, 900.0}) {
        std::vector<CurvePoint> whole;
        for (int row = 0; row < 200; ++row) {
            const double travel = row * 0.001;
            whole.push_back(
                {travel, row == 77 ? std::nan("") : bend * travel * travel + std::sin(40 * travel)});
        }
        std::vector<CurvePoint> thin = whole;
        thinPoints(thin, kPerTravel, 60);
        ASSERT_LT(thin.size(), whole.size() / 2);
        std::size_t next = 0;
        for (const CurvePoint& point : whole) {
            while (next < thin.size() && thin[next].travel < point.travel) {
                ++next;
            }
            ASSERT_LT(next, thin.size());
            if (thin[next].travel == point.travel) {
                EXPECT_TRUE(thin[next].value == point.value || std::isnan(point.value));
                continue;
            }
            const CurvePoint& from = thin[next - 1];
            const CurvePoint& to = thin[next];
            const double across = (to.value - from.value) * 60;
            const double up = (to.travel - from.travel) * kPerTravel;
            const double x = (point.value - from.value) * 60;
            const double y = (point.travel - from.travel) * kPerTravel;
            EXPECT_LE(std::abs(x * up - y * across) / std::hypot(across, up), 0.1 + 1e-9);
        }
    }
}

TEST(TravelCurves, CurvesHaveAGapWhereTheLinksDoNotReach) {
    MadeCurves made;
    made.unusableInDroop = 12;
    made.unusableInBump = 3;
    Bench bench(made);
    for (int i = 0; i < bench.plot().graphCount(); ++i) {
        const QCPGraph& graph = *bench.plot().graph(i);
        if (graph.data()->isEmpty()) {
            continue;  // a ghost's, and there is none
        }
        // No finite point where the links do not reach, and the line broken on the very first row beyond.
        int breaks = 0;
        for (const QCPGraphData& point : *graph.data()) {
            const int row = static_cast<int>(std::lround((point.key / kInch + 4) * 10));
            EXPECT_EQ(std::isnan(point.value), row < 12 || row >= 78)
                << graph.name().toStdString() << " row " << row;
            breaks += row == 11 || row == 78 ? 1 : 0;
        }
        EXPECT_EQ(breaks, 2) << graph.name().toStdString();
    }
    const std::vector<OutOfReach> stretches = outOfReach(bench.state.trace);
    ASSERT_EQ(stretches.size(), 2U);
    EXPECT_NEAR(stretches[0].from, -4 * kInch, 1e-12);
    EXPECT_NEAR(stretches[0].to, -2.8 * kInch, 1e-12);
    EXPECT_NEAR(stretches[1].from, 3.7 * kInch, 1e-12);
    EXPECT_NEAR(stretches[1].to, 4 * kInch, 1e-12);
}

TEST(TravelCurves, AxesKeepStillWhileTheCurvesWander) {
    Bench bench({});
    std::vector<QCPRange> before;
    for (int card = 0; card < 5; ++card) {
        before.push_back(bench.range(card));
    }
    for (int i = 0; i < 50; ++i) {
        MadeCurves made;
        made.inverseAtRide *= 1 + 0.01 * std::sin(i);
        made.tangent *= 1 + 0.01 * std::cos(i);
        bench.remake(made);
        for (int card = 0; card < 5; ++card) {
            EXPECT_EQ(bench.range(card), before[static_cast<std::size_t>(card)]) << "card " << card;
        }
    }
}

TEST(CurveCard, TitleAndUnitFitEveryWidth) {
    ThemeKeeper::instance().choose(Appearance::light);
    const CardType type;
    for (const CurveCardSpec& spec : curveCardSpecs()) {
        for (int width = 60; width < 300; width += 5) {
            const TitleFit fit = fitTitle(spec.titles, QStringLiteral("deg"), width, type);
            const double unit =
                fit.unitInTitle ? type.quietMetrics.horizontalAdvance(QStringLiteral("deg")) : 0;
            EXPECT_LE(type.titleMetrics.horizontalAdvance(fit.title) + unit, width)
                << fit.title.toStdString() << " in " << width;
        }
    }
}

TEST(TravelCurves, RefreshWritesIntoTheSameStorage) {
    Bench bench({});
    std::vector<const QCPGraphData*> before;
    for (int i = 0; i < bench.plot().graphCount(); ++i) {
        before.push_back(bench.plot().graph(i)->data()->isEmpty()
                             ? nullptr
                             : &*bench.plot().graph(i)->data()->constBegin());
    }
    MadeCurves made;
    made.tangent = 0.25;
    bench.remake(made);
    for (int i = 0; i < bench.plot().graphCount(); ++i) {
        if (before[static_cast<std::size_t>(i)] == nullptr) {
            continue;
        }
        EXPECT_EQ(&*bench.plot().graph(i)->data()->constBegin(), before[static_cast<std::size_t>(i)])
            << bench.plot().graph(i)->name().toStdString();
    }
    std::vector<CurvePoint> whole;
    curvePoints(bench.state.trace, Figure::antiSquat, CurveScale::plain, whole);
    EXPECT_NEAR(whole[40].value, 125.0, 1e-9);
    EXPECT_NEAR(bench.curve(QStringLiteral("anti-squat")).at(0)->value, whole[0].value, 1e-12);
}

TEST(TravelCurves, SpeaksTheValuesAtTheCursor) {
    Bench bench({});
    EXPECT_EQ(bench.view.accessibleName(), QStringLiteral("Travel curves"));
    const std::string ride = bench.view.accessibleDescription().toStdString();
    EXPECT_THAT(ride, HasSubstr("At ride"));
    EXPECT_THAT(ride, HasSubstr("IC distance 58.0 in"));
    EXPECT_THAT(ride, HasSubstr("anti-squat 120 %"));
    EXPECT_THAT(ride, HasSubstr("rear joint 0.5°"));
    QTest::keyClick(&bench.view, Qt::Key_Home);
    EXPECT_THAT(bench.view.accessibleDescription().toStdString(), HasSubstr("At 4.0 in bump"));
    bench.remake(throughInfinity());
    QTest::keyClick(&bench.view, Qt::Key_PageDown);
    QTest::keyClick(&bench.view, Qt::Key_PageDown);
    EXPECT_THAT(bench.view.accessibleDescription().toStdString(), HasSubstr("IC distance infinite"));
}

TEST(TravelCurves, WithoutACurveItSaysWhyAndTakesNoDrag) {
    Bench bench({});
    BenchState empty;
    empty.problem = "the left upper link is too short.";
    bench.view.showTrace(empty);
    EXPECT_EQ(bench.view.accessibleDescription(),
              QStringLiteral("No curve: the left upper link is too short."));
    QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.at(2 * kInch));
    EXPECT_TRUE(bench.asked.empty());
    bench.state.traceIsCurrent = false;
    bench.view.showTrace(bench.state);
    EXPECT_THAT(bench.view.accessibleDescription().toStdString(), HasSubstr("Last curve that worked"));
}

TEST(TravelCurves, TheCursorAloneLeavesTheCurvesAsTheyAre) {
    Bench bench({});
    const QImage before = bench.view.grab().toImage();
    QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.at(2 * kInch));
    const QImage moved = bench.view.grab().toImage();
    QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.at(0));
    EXPECT_NE(before, moved);
    EXPECT_EQ(bench.view.grab().toImage(), before);
}

TEST(TravelCurves, SliderLinesUpWithThePlots) {
    Bench bench({}, {560, 430});
    TravelSlider slider;
    QObject::connect(&bench.view, &TravelCurves::plotAreaChanged, &slider, &TravelSlider::alignTrack);
    slider.resize(50, 515);
    bench.view.resize(560, 515);
    const QRect plots = bench.view.plotArea();
    EXPECT_EQ(slider.track().top(), plots.top());
    EXPECT_EQ(slider.track().bottom(), plots.bottom());
    const QRect axisRect = bench.plot().axisRect(0)->rect();
    EXPECT_EQ(axisRect.top(), plots.top());
    EXPECT_EQ(axisRect.bottom(), plots.bottom());
}

/// Where BOLTHOLE_PICTURES names a folder, pictures are kept there to be looked at.
void keepPicture(const QPixmap& picture, const QString& name) {
    const QString folder = qEnvironmentVariable("BOLTHOLE_PICTURES");
    if (!folder.isEmpty()) {
        picture.save(folder + QStringLiteral("/curves_") + name + QStringLiteral(".png"));
    }
}

/// Slider and curves side by side as in the window.
class Pair : public QWidget {
  public:
    Pair() : slider_(this), curves_(this) {
        connect(&curves_, &TravelCurves::plotAreaChanged, &slider_, &TravelSlider::alignTrack);
    }
    void show(const BenchState& state, QSize size) {
        const int width = slider_.sizeHint().width();
        setPalette(QPalette(theme().window));
        resize(size + QSize(width + 6, 0));
        slider_.setGeometry(0, 0, width, size.height());
        curves_.setGeometry(width + 6, 0, size.width(), size.height());
        slider_.showTrace(state);
        curves_.showTrace(state);
        QWidget::show();
    }
    [[nodiscard]] TravelCurves& curves() { return curves_; }

  private:
    TravelSlider slider_;
    TravelCurves curves_;
};

/// Counts pixels of the cards' side borders, header and footer included, that are painted over.
int paintedOver(const QImage& image, QCustomPlot& plot) {
    const int scale = qRound(image.devicePixelRatio());
    int count = 0;
    for (int i = 0; i < plot.axisRectCount(); ++i) {
        const QRect card = plot.axisRect(i)->outerRect();
        const QRect inside = plot.axisRect(i)->rect();
        for (const int x : {card.left(), card.right()}) {
            for (int y = card.top() + 9; y < card.bottom() - 9; ++y) {
                const bool beside = y >= inside.top() - 1 && y <= inside.bottom() + 1;  // the cursor's dots
                count += !beside && image.pixelColor(x * scale, y * scale) != theme().border ? 1 : 0;
            }
        }
    }
    return count;
}

TEST(TravelCurves, NothingRunsOutOfItsCardAtAnySizeThemeOrUnit) {
    MadeCurves partly = throughInfinity();
    partly.unusableInDroop = 9;
    for (const bool dark : {false, true}) {
        ThemeKeeper::instance().choose(dark ? Appearance::dark : Appearance::light);
        for (const Units units : {Units::inch, Units::metric}) {
            for (const int width : {430, 700, 1400}) {
                for (const int height : {300, 520, 900}) {
                    const MadeCurves made = height == 520 ? partly : MadeCurves();
                    BenchState state = madeBench(made);
                    state.style.units = units;
                    moveCursor(state, made, 1.3 * kInch);
                    Pair pair;
                    pair.show(state, {width, height});
                    const QString name =
                        QStringLiteral("%1_%2_%3x%4")
                            .arg(dark ? QStringLiteral("dark") : QStringLiteral("light"),
                                 units == Units::inch ? QStringLiteral("inch") : QStringLiteral("mm"))
                            .arg(width)
                            .arg(height);
                    keepPicture(pair.grab(), name);
                    const QImage image = pair.curves().grab().toImage();
                    EXPECT_EQ(paintedOver(image, *pair.curves().findChild<QCustomPlot*>()), 0)
                        << name.toStdString();
                }
            }
        }
    }
    ThemeKeeper::instance().choose(Appearance::light);
}

TEST(TravelCurves, OutOfReachStaleAndEmptyStatesLookDifferent) {
    MadeCurves made;
    made.unusableInBump = 15;
    made.driveline = false;
    BenchState state = madeBench(made);
    moveCursor(state, made, 3.6 * kInch);
    Pair pair;
    pair.show(state, {560, 420});
    const QPixmap unreached = pair.grab();
    moveCursor(state, made, 0.0);
    state.traceIsCurrent = false;
    state.problem = "The right upper link runs out at 2.1 in of bump.";
    pair.show(state, {560, 420});
    const QPixmap stale = pair.grab();
    BenchState nothing;
    nothing.problem = "Nothing holds the axle sideways.";
    pair.show(nothing, {560, 420});
    const QPixmap empty = pair.grab();
    keepPicture(unreached, QStringLiteral("unreached"));
    keepPicture(stale, QStringLiteral("stale"));
    keepPicture(empty, QStringLiteral("empty"));
    EXPECT_NE(unreached.toImage(), stale.toImage());
    EXPECT_NE(stale.toImage(), empty.toImage());
}

TEST(TravelCurves, KeyboardFocusShowsARing) {
    Bench bench({});
    const QImage without = bench.view.grab().toImage();
    bench.view.activateWindow();
    bench.view.clearFocus();
    bench.view.setFocus(Qt::TabFocusReason);
    ASSERT_TRUE(QTest::qWaitFor([&] { return bench.view.hasFocus(); }));
    const QPixmap ringed = bench.view.grab();
    keepPicture(ringed, QStringLiteral("ring"));
    EXPECT_NE(ringed.toImage(), without);
    bench.view.clearFocus();
    EXPECT_EQ(bench.view.grab().toImage(), without);
}

}  // namespace
}  // namespace bolthole
