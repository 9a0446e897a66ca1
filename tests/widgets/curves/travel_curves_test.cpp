#include "widgets/curves/travel_curves.h"

#include <gmock/gmock.h>

#include <QSignalSpy>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "tests/support/made_bench.h"
#include "tests/support/made_units.h"
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
    [[nodiscard]] const ChartSeries& curve(const char* name) const {
        for (const ChartCard& card : view.cards()) {
            for (const ChartSeries& series : card.series) {
                if (series.name == QLatin1String(name)) {
                    return series;
                }
            }
        }
        throw std::runtime_error(std::string("no such curve: ") + name);
    }
    [[nodiscard]] const ChartPlot& plot(std::size_t card) const { return view.onScreen()[card].plot(); }
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
    const std::vector<ChartPoint>& whole = bench.curve("IC distance").points;
    ASSERT_EQ(whole.size(), 81U);
    EXPECT_EQ(whole[20].value, 0.0) << "the row at infinity";
    EXPECT_LT(whole.front().value, 0.0);
    EXPECT_GT(whole.back().value, 0.0);
    // The made 1/distance is linear in travel, so the line drawn must be, without a break and from end to
    // end.
    const Stroke& drawn = bench.view.onScreen()[0].stroke(2);
    ASSERT_GE(drawn.size(), 2U);
    const ChartPlot& plot = bench.plot(0);
    const QLineF line(plot.at(whole.front().imposed, whole.front().value),
                      plot.at(whole.back().imposed, whole.back().value));
    EXPECT_NEAR(drawn.front().y(), line.y1(), 1e-6);
    EXPECT_NEAR(drawn.back().y(), line.y2(), 1e-6);
    for (const QPointF& point : drawn) {
        const double share = (point.y() - line.y1()) / line.dy();
        EXPECT_NEAR(point.x(), line.x1() + share * line.dx(), 1e-6);
    }
}

TEST(TravelCurves, HeightLeavesThePlotAtThePoleAndIsBrokenThere) {
    MadeCurves made = throughInfinity();
    made.inverseAtRide = 0.203;  // the pole between two rows
    Bench bench(made);
    const std::vector<ChartPoint>& points = bench.curve("IC height").points;
    std::vector<std::size_t> breaks;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (std::isnan(points[i].value)) {
            breaks.push_back(i);
        }
    }
    ASSERT_EQ(breaks.size(), 1U);
    const std::size_t pole = breaks.front();
    EXPECT_NEAR(points[pole].imposed, -0.203 / made.inverseSlope, 1e-9);
    EXPECT_LT(points[pole - 1].value, bench.plot(1).low);
    EXPECT_GT(points[pole + 1].value, bench.plot(1).high);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double travel = points[i].imposed;
        const double height =
            (made.tangent + made.tangentSlope * travel) / (made.inverseAtRide + made.inverseSlope * travel);
        if (i != pole) {
            EXPECT_NEAR(points[i].value / height, 1.0, 1e-6) << "point " << i;
        }
    }
}

TEST(TravelCurves, ThePoleOnARowIsAGapToo) {
    std::vector<ChartPoint> points;
    const BenchState state = madeBench(throughInfinity());
    curvePoints(state.trace, Figure::icZ, CurveScale::throughInfinity, nullptr, points);
    for (std::size_t i = 1; i < points.size(); ++i) {
        EXPECT_GE(points[i].imposed, points[i - 1].imposed);
        EXPECT_FALSE(points[i].value * points[i - 1].value < 0) << "a line across the plot at point " << i;
    }
}

TEST(TravelCurves, DistanceIsBrokenWhereTheCenterPassesOverTheContactPatch) {
    BenchState state = madeBench({});
    for (Station& station : state.trace.stations) {
        station.figures[static_cast<std::size_t>(Figure::icX)] = station[Figure::travel] + 0.0007;
    }
    std::vector<ChartPoint> points;
    curvePoints(state.trace, Figure::icX, CurveScale::inverseDistance, nullptr, points);
    for (std::size_t i = 1; i < points.size(); ++i) {
        EXPECT_FALSE(points[i].value * points[i - 1].value < 0) << "a line across the plot at point " << i;
    }
}

// What thinning takes out cannot be seen: every point lies within a tenth of a pixel of the line that is
// left.
TEST(TraceStroke, LeavesTheLineWhereItWas) {
    ChartPlot plot{QRectF(0, 0, 300, 500), true, -40, 40, 0, 0.2};
    for (const double curvature : {0.0, 40.0, 900.0}) {
        std::vector<ChartPoint> whole;
        for (int row = 0; row <= 200; ++row) {
            const double travel = row * 0.001;
            whole.push_back({travel, row == 77 ? kNaN : curvature * travel * travel + std::sin(40 * travel)});
        }
        Stroke thin;
        traceStroke(whole, plot, 0.1, thin);
        ASSERT_LT(thin.size(), whole.size() / 2);
        std::size_t next = 1;
        for (const ChartPoint& point : whole) {
            if (std::isnan(point.value)) {
                continue;
            }
            const QPointF at = plot.at(point.imposed, point.value);
            while (next + 1 < thin.size() && !(thin[next].y() <= at.y() + 1e-9)) {
                ++next;  // travel runs up; a break compares false
            }
            const QLineF piece(std::isnan(thin[next - 1].x()) ? thin[next] : thin[next - 1], thin[next]);
            const QPointF way = at - piece.p1();
            const double off = piece.length() > 0
                                   ? std::abs(way.x() * piece.dy() - way.y() * piece.dx()) / piece.length()
                                   : std::hypot(way.x(), way.y());
            if (plot.area.contains(at)) {
                EXPECT_LE(off, 0.1 + 1e-9) << point.imposed;
            }
        }
    }
}

TEST(TravelCurves, CurvesHaveAGapWhereTheLinksDoNotReach) {
    MadeCurves made;
    made.unusableInDroop = 12;
    made.unusableInBump = 3;
    Bench bench(made);
    for (const ChartCard& card : bench.view.cards()) {
        for (const ChartSeries& series : card.series) {
            if (series.isGhost) {
                continue;
            }
            // No finite point where the links do not reach, and the line broken on the very first row beyond.
            int breaks = 0;
            for (const ChartPoint& point : series.points) {
                const int row = static_cast<int>(std::lround((point.imposed / kInch + 4) * 10));
                EXPECT_EQ(std::isnan(point.value), row < 12 || row >= 78)
                    << series.name.toStdString() << " row " << row;
                breaks += row == 11 || row == 78 ? 1 : 0;
            }
            EXPECT_EQ(breaks, 2) << series.name.toStdString();
        }
        EXPECT_EQ(card.stretches.size(), 2U);
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
    const auto ranges = [&] {
        std::vector<std::pair<double, double>> all;
        for (std::size_t card = 0; card < 5; ++card) {
            all.emplace_back(bench.plot(card).low, bench.plot(card).high);
        }
        return all;
    };
    const auto baseline = ranges();
    for (int i = 0; i < 50; ++i) {
        MadeCurves made;
        made.inverseAtRide *= 1 + 0.01 * std::sin(i);
        made.tangent *= 1 + 0.01 * std::cos(i);
        bench.remake(made);
        EXPECT_EQ(ranges(), baseline);
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
    const auto places = [&] {
        std::vector<const ChartPoint*> all;
        for (const ChartCard& card : bench.view.cards()) {
            for (const ChartSeries& series : card.series) {
                all.push_back(series.points.data());
            }
        }
        return all;
    };
    const auto baseline = places();
    MadeCurves made;
    made.tangent = 0.25;
    bench.remake(made);
    EXPECT_EQ(places(), baseline);
    EXPECT_NEAR(bench.curve("anti-squat").points[40].value, 125.0, 1e-9);
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
    const QImage baseline = bench.view.grab().toImage();
    QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.at(2 * kInch));
    const QImage moved = bench.view.grab().toImage();
    QTest::mouseClick(&bench.view, Qt::LeftButton, {}, bench.at(0));
    EXPECT_NE(baseline, moved);
    EXPECT_EQ(bench.view.grab().toImage(), baseline);
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
    EXPECT_EQ(bench.plot(0).area.top(), plots.top());
    EXPECT_EQ(bench.plot(0).area.bottom(), plots.top() + plots.height());
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
int paintedOver(const QImage& image, const TravelCurves& view) {
    const int scale = qRound(image.devicePixelRatio());
    int count = 0;
    for (const ChartCardOnScreen& on : view.onScreen()) {
        const QRect card = on.frame().toRect();
        const QRect inside = on.plot().area.toRect();
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
                    EXPECT_EQ(paintedOver(image, pair.curves()), 0) << name.toStdString();
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
