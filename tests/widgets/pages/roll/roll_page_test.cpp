// The roll page with what a window would do around it: read as it is shown, moved by mouse and keys.
#include "widgets/pages/roll/roll_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QRegularExpression>
#include <QTest>
#include <algorithm>
#include <cmath>

#include "tests/support/await_jobs.h"
#include "tests/support/made_units.h"
#include "tests/support/sheet_bench.h"
#include "tests/support/text_notes.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/fact_card.h"
#include "widgets/pages/roll/roll_facts.h"
#include "widgets/pages/roll/roll_picture.h"
#include "widgets/scales/travel_slider.h"

namespace bolthole {
namespace {

using test::inches;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

const QString kCenter = QStringLiteral("Roll center and roll axis");
const QString kShift = QStringLiteral("Axle lateral shift through travel");
const QString kBind = QStringLiteral("Bind in roll");
const QString kSides = QStringLiteral("Instant centers of each side at ride");

Link guideAt(double x, double z) {
    Link guide = test::makeLink("guide", Side::center, {{-1, "middle", inches(x, 0, z)}},
                                {{-1, "middle", inches(x, 0, z)}});
    guide.kind = LinkKind::guide;
    return guide;
}

// Four links in upright planes 16 in from the middle, lowers rising by `lower`, uppers by `upper` inches in
// 20 and 12, and a guide straight above the axle.
Car parallelCar(double lower, double upper) {
    Car car = test::inventedCar();
    car.rearTrack = 60 * kMetresPerInch;
    car.links = {test::makeLink("lower", Side::both, {{-1, "", inches(20, 16, 8 + lower)}},
                                {{-1, "", inches(0, 16, 8)}}),
                 test::makeLink("upper", Side::both, {{-1, "", inches(12, 16, 19 + upper)}},
                                {{-1, "", inches(0, 16, 19)}}),
                 guideAt(0, 11)};
    return car;
}

class RollPageTest : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    RollPageTest() {
        QObject::connect(&page_, &WorkPage::edited, &page_, [this](const Edit& edit) {
            state_.car = bolthole::apply(state_.car, edit).car;
            solve();
        });
        QObject::connect(&page_, &RollPage::cursorMoved, &page_, [this](double travel) {
            state_.cursorTravel = travel;
            state_.cursor = solveStation(state_.solvedCar, travel);
        });
        page_.resize(1200, 900);
        page_.show();
        QApplication::setActiveWindow(&page_);
        open(parallelCar(2, -1));
    }
    void open(const Car& car) {
        state_.car = car;
        solve();
    }
    void solve() {
        state_.solvedCar = state_.car;
        state_.trace = computeTrace(state_.car);
        state_.traceIsCurrent = true;
        state_.cursor = solveStation(state_.car, state_.cursorTravel);
        page_.showState(state_);
        QApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
    }
    template <class Kind>
    Kind* named(const QString& name) {
        for (Kind* widget : page_.findChildren<Kind*>()) {
            if (widget->accessibleName() == name) {
                return widget;
            }
        }
        return nullptr;
    }
    // What a card says, label by label.
    // Labels that say what a dashed curve is.
    int explained() {
        const QList<QLabel*> labels = page_.findChildren<QLabel*>();
        return static_cast<int>(std::ranges::count_if(labels, [](const QLabel* each) {
            return each->text().contains(QStringLiteral("Dashed: before."));
        }));
    }
    std::string said(const QString& card) {
        QStringList texts;
        for (const ToneLabel* label : named<FactCard>(card)->findChildren<ToneLabel*>()) {
            if (label->isVisible()) {
                texts << label->text();
            }
        }
        return texts.join(QLatin1Char('|')).toStdString();
    }
    // The number of a row.
    double number(const QString& card, const QString& label) {
        for (const ToneLabel* value : named<FactCard>(card)->findChildren<ToneLabel*>()) {
            if (value->isVisible() && value->accessibleName() == label) {
                QString text = value->text();
                text.replace(QChar(0x2212), QLatin1Char('-'));
                return QRegularExpression(QStringLiteral("-?[0-9]+(\\.[0-9]+)?"))
                    .match(text)
                    .captured()
                    .toDouble();
            }
        }
        ADD_FAILURE() << "no row " << label.toStdString();
        return std::nan("");
    }
    CurveChart& rollCurves() { return *named<CurveChart>(QStringLiteral("Curves against roll")); }
    CurveChart& travelCurves() {
        return *named<CurveChart>(QStringLiteral("Roll center and shift through travel"));
    }
    RollPicture& picture() { return *page_.findChild<RollPicture*>(); }

    BenchState state_;
    RollPage page_;
};

// The point a guide holds does not move sideways: straight above the axle it is the roll center. Gillespie,
// "Fundamentals of Vehicle Dynamics", ch. 7, from memory, no page.
TEST_F(RollPageTest, ShowsTheGuidesHeightAsRollCenter) {
    EXPECT_NEAR(number(kCenter, "Roll center at ride"), 11.00, 0.005);
    EXPECT_THAT(named<RollPicture>("Rear axle from behind, to scale")->accessibleDescription().toStdString(),
                HasSubstr("roll center 11.0"));
    EXPECT_THAT(said(kShift), HasSubstr("A guide holds"));
    // At the axle's own center, which no pitch moves, it is the same height above the ground at every travel.
    Car car = parallelCar(2, -1);
    car.links.back() = guideAt(0, 13.5);
    open(car);
    for (const char* at : {"Roll center at ride", "At full bump", "At full droop"}) {
        EXPECT_NEAR(number(kCenter, at), 13.50, 0.005) << at;
    }
    EXPECT_THAT(said(kShift), HasSubstr("the axle stays where it is"));
}

// Parallel links at equal slopes turn the axle about an axis of their slope: 2 in 20. Both rise toward the
// front: oversteer (Reimpell, Stoll, Betzler, "The Automotive Chassis", from memory, no page).
TEST_F(RollPageTest, ShowsTheAxisSlopeAndTheWordForTheSteer) {
    open(parallelCar(2, 1.2));
    EXPECT_NEAR(number(kCenter, "Roll axis"), std::atan(0.1) / kDegree, 0.006);
    EXPECT_NEAR(number(kCenter, "Roll steer"), 0.100, 0.0006);
    EXPECT_THAT(said(kCenter), HasSubstr("rises toward the front, 10.0 in 100"));
    EXPECT_THAT(said(kCenter), HasSubstr("roll oversteer: the body rolls left and the rear axle steers left, "
                                         "by 0.30° at 3° of roll"));
    open(parallelCar(-2, -1.2));
    EXPECT_THAT(said(kCenter), HasSubstr("falls toward the front"));
    EXPECT_THAT(said(kCenter), HasSubstr("roll understeer"));
    open(parallelCar(0, 0));
    EXPECT_THAT(said(kCenter), HasSubstr("no roll steer"));
    EXPECT_THAT(said(kCenter), HasSubstr("level"));
}

// Derived, no source, for small angles: a roll |s1 - s2| u1 u2 max(u1, u2) / (u1^2 + u2^2), here with slopes
// 0.1 and -1/12, 16 in off the middle.
TEST_F(RollPageTest, ShowsTheBindOfLinksThatFightAndNamesThem) {
    const double one = 0.1;
    const double two = -1.0 / 12;
    const double u = 1 / std::hypot(1, one);
    const double v = 1 / std::hypot(1, two);
    const double each = 16 * kDegree * (one - two) * u * v * std::max(u, v) / (u * u + v * v);
    EXPECT_NEAR(number(kBind, QStringLiteral("At 1° of roll")), each, 0.001);
    EXPECT_NEAR(number(kBind, QStringLiteral("At 2° of roll")), 2 * each, 0.002);
    EXPECT_NEAR(number(kBind, QStringLiteral("At 3° of roll")), 3 * each, 0.004);
    for (const char* words : {"lower (left)", "lower (right)", "upper (left)", "upper (right)", "bushings",
                              "rod ends", "qualified person"}) {
        EXPECT_THAT(said(kBind), HasSubstr(words));
    }
}

TEST_F(RollPageTest, SaysWhereNothingBinds) {
    Car car = parallelCar(2, -1);
    car.links[1] = test::makeLink("third link", Side::center, {{-1, "", inches(14, 0, 18)}},
                                  {{-1, "", inches(0, 0, 19)}});
    open(car);
    EXPECT_THAT(said(kBind), HasSubstr("every link fits"));
    EXPECT_THAT(said(kBind), HasSubstr("Nothing binds"));
}

TEST_F(RollPageTest, SaysWhyThereIsNoRoll) {
    Car car = parallelCar(2, -1);
    car.links.pop_back();
    open(car);
    EXPECT_FALSE(page_.reading().isThere());
    EXPECT_FALSE(named<FactCard>(kCenter)->isVisible());
    EXPECT_FALSE(rollCurves().isVisible());
    EXPECT_TRUE(named<FactCard>(kSides)->isVisible()) << "the sides need no locator";
    bool isSaid = false;
    for (const ToneLabel* label : page_.findChildren<ToneLabel*>()) {
        isSaid = isSaid || (label->isVisible() &&
                            label->text().contains(QStringLiteral("nothing holds the axle laterally")));
    }
    EXPECT_TRUE(isSaid);
    open(parallelCar(2, -1));
    EXPECT_TRUE(rollCurves().isVisible());
}

// By hand: lowers z = 8 + 0.1 x; left uppers z = 19 - x/12 meet them at x = 60, z = 14; right ones, whose
// front hole is 1 1/2 in higher, z = 19 + x/24: at x = 188.57, z = 26.86.
TEST_F(RollPageTest, ShowsTheInstantCenterOfEachSide) {
    EXPECT_NEAR(number(kSides, "Left side"), 60, 0.006);
    EXPECT_THAT(said(kSides), HasSubstr("Left and right are alike"));
    Car car = parallelCar(2, -1);
    Link left = car.links[1];
    left.side = Side::left;
    Link right = car.links[1];
    right.side = Side::right;
    right.chassis.holes[0].at = inches(12, -16, 19.5);
    right.axle.holes[0].at = inches(0, -16, 19);
    car.links = {car.links[0], left, right, car.links[2]};
    open(car);
    EXPECT_NEAR(number(kSides, "Left side"), 60, 0.006);
    EXPECT_NEAR(number(kSides, "Right side"), 11 / (0.1 - 1.0 / 24), 0.006);
    EXPECT_THAT(said(kSides), HasSubstr("14.00 in above the ground"));
    EXPECT_THAT(said(kSides), HasSubstr("set apart"));
}

TEST_F(RollPageTest, KeysRollTheAxle) {
    CurveChart& curves = rollCurves();
    curves.setFocus(Qt::TabFocusReason);
    EXPECT_NEAR(page_.shownRoll().roll, 2 * kDegree, 1e-12);
    const auto press = [&](int key) {
        QTest::keyClick(&curves, static_cast<Qt::Key>(key));
        return page_.shownRoll().roll / kDegree;
    };
    EXPECT_NEAR(press(Qt::Key_Right), 2.25, 1e-12);
    EXPECT_NEAR(press(Qt::Key_Left), 2.0, 1e-12);
    EXPECT_NEAR(press(Qt::Key_PageDown), 1.0, 1e-12);
    EXPECT_NEAR(press(Qt::Key_Home), -3.0, 1e-12);
    EXPECT_NEAR(press(Qt::Key_Left), -3.0, 1e-12) << "no farther";
    EXPECT_THAT(curves.accessibleDescription().toStdString(), StartsWith("At 3.00° body roll right: "));
    EXPECT_NEAR(press(Qt::Key_End), 3.0, 1e-12);
    EXPECT_EQ(press(Qt::Key_0), 0.0);
    EXPECT_THAT(curves.accessibleDescription().toStdString(), HasSubstr("no body roll"));
    EXPECT_THAT(curves.accessibleDescription().toStdString(), HasSubstr("bind 0.000 in"));
}

TEST_F(RollPageTest, TheMouseRollsTheAxleInAnyCard) {
    CurveChart& curves = rollCurves();
    for (const ChartCardOnScreen& card : curves.onScreen()) {
        const QRectF plot = card.plot().area;
        QTest::mouseClick(&curves, Qt::LeftButton, {}, QPointF(plot.right(), plot.center().y()).toPoint());
        EXPECT_NEAR(page_.shownRoll().roll / kDegree, 3.0, 0.05);
        QTest::mouseClick(&curves, Qt::LeftButton, {}, plot.center().toPoint());
        EXPECT_NEAR(page_.shownRoll().roll / kDegree, 0.0, 0.05);
    }
}

// To scale: the guide's point is the roll center, whatever the roll, and a length is as long up as across.
TEST_F(RollPageTest, ThePictureIsToScaleAndShowsTheRollCenter) {
    rollCurves().setFocus();
    for (const Qt::Key key : {Qt::Key_Home, Qt::Key_0, Qt::Key_End}) {
        QTest::keyClick(&rollCurves(), key);
        const QPointF at = picture().placeOfCenter().value();
        EXPECT_NEAR(at.x(), picture().place(page_.shownRoll().pose.y, 0).x(), 1e-9);
        EXPECT_NEAR(picture().place(0, 0).y() - at.y(),
                    (page_.shownRoll().pose.z + page_.shownRoll().center - state_.car.rearTireRadius) *
                        (picture().place(0, 0).x() - picture().place(1, 0).x()),
                    1e-9);
    }
    EXPECT_LT(picture().place(0.5, 0).x(), picture().place(-0.5, 0).x()) << "the car's left at the left";
}

TEST_F(RollPageTest, TheTravelCursorIsTheBenchs) {
    CurveChart& curves = travelCurves();
    curves.setFocus(Qt::TabFocusReason);
    QTest::keyClick(&curves, Qt::Key_Home);
    EXPECT_NEAR(state_.cursorTravel, state_.car.travel.bump, 1e-12);
    EXPECT_THAT(curves.accessibleDescription().toStdString(), StartsWith("At 4.0 in bump: roll center "));
    EXPECT_NEAR(page_.findChild<TravelSlider*>()->travel(), state_.car.travel.bump, 1e-12);
    QTest::keyClick(&curves, Qt::Key_R);
    EXPECT_EQ(state_.cursorTravel, 0.0);
}

// The arc of a level bar 40 in long, 20 in to either side of the middle and nothing else in play: at 4 in it
// has drawn the axle by 40 - sqrt(40^2 - 4^2) in. Its links are level and parallel, so that nothing else
// moves the axle.
TEST_F(RollPageTest, ShowsTheArcOfATrackBar) {
    Car car = parallelCar(0, 0);
    car.links.back() = test::makeLink("track bar", Side::center, {{-1, "", inches(0, 20, 13.5)}},
                                      {{-1, "", inches(0, -20, 13.5)}});
    open(car);
    const double arc = 40 - std::sqrt(40.0 * 40 - 16);
    EXPECT_NEAR(number(kShift, "At full bump"), arc, 0.01);
    EXPECT_THAT(said(kShift), HasSubstr("to the left of where it is at ride"));
    EXPECT_THAT(said(kShift), HasSubstr("A track bar swings"));
}

TEST_F(RollPageTest, WithoutATrackItSaysSoAndDrawsNoTires) {
    Car car = parallelCar(2, -1);
    car.rearTrack.reset();
    open(car);
    EXPECT_TRUE(page_.reading().isThere());
    EXPECT_FALSE(picture().grab().isNull());
}

// Lower pairs set closer at the front meet, and the page knows where: by hand 16 in apart at x = 0 and 8 in
// at x = 20: at x = 40, and as high.
TEST_F(RollPageTest, FindsWhereAPairsLinesMeet) {
    Car car = parallelCar(0, 0);
    car.links[0].chassis.holes[0].at = inches(20, 8, 10);
    open(car);
    ASSERT_EQ(page_.reading().crossings.size(), 1U);
    EXPECT_EQ(page_.reading().crossings[0].name, QStringLiteral("lower"));
    EXPECT_NEAR(page_.reading().crossings[0].x, 40 * kMetresPerInch, 1e-9);
    EXPECT_NEAR(page_.reading().crossings[0].z, 12 * kMetresPerInch, 1e-9);
}

TEST_F(RollPageTest, MetricIsShownInMillimeters) {
    state_.style.units = Units::metric;
    solve();
    EXPECT_NEAR(number(kCenter, "Roll center at ride"), 279.4, 0.06);
    EXPECT_THAT(said(kSides), HasSubstr(" mm"));
    EXPECT_THAT(said(kSides), Not(HasSubstr(" in above")));
    EXPECT_EQ(rollCurves().cards()[0].unitText, QStringLiteral("mm"));
}

// Both themes paint every picture and curve.
TEST_F(RollPageTest, PaintsLightAndDark) {
    for (const Appearance look : {Appearance::dark, Appearance::light}) {
        ThemeKeeper::instance().choose(look);
        const QImage shown = page_.grab().toImage();
        int colored = 0;
        const QColor line = theme().instantCenter;
        for (int y = 0; y < shown.height(); y += 1) {
            for (int x = 380; x < shown.width(); x += 1) {
                colored += shown.pixelColor(x, y) == line ? 1 : 0;
            }
        }
        EXPECT_GT(colored, 300);
    }
}

TEST_F(RollPageTest, EveryPartHasItsNameAndIsReachedByTab) {
    for (FactCard* card : page_.findChildren<FactCard*>()) {
        EXPECT_NE(card->accessibleName(), QString());
        EXPECT_TRUE(card->focusPolicy() & Qt::TabFocus);
    }
    for (CurveChart* curves : page_.findChildren<CurveChart*>()) {
        EXPECT_NE(curves->accessibleName(), QString());
        EXPECT_NE(curves->toolTip(), QString());
        EXPECT_TRUE(curves->focusPolicy() & Qt::TabFocus);
    }
}

TEST_F(RollPageTest, SpeaksOfPitchWhereTheHousingStandsPitched) {
    EXPECT_THAT(said(kCenter), Not(HasSubstr("roll table's")));
    Car car = parallelCar(2, -1);
    car.links[1].length = 11.7 * kMetresPerInch;
    open(car);
    EXPECT_THAT(said(kCenter), HasSubstr("roll table's"));
}

TEST_F(RollPageTest, EveryCardSaysTheUncertaintyOfItsFiguresWhereThatIsToBeSeen) {
    ASSERT_TRUE(test::awaitJobs());
    for (const QString& card : {kCenter, kSides}) {
        EXPECT_THAT(said(card), HasSubstr("± ")) << card.toStdString();
    }
    state_.showsUncertainty = false;
    solve();
    for (const QString& card : {kCenter, kSides}) {
        EXPECT_THAT(said(card), Not(HasSubstr("±"))) << card.toStdString();
    }
}

// The baseline's curves are those it had on the bench, and its figures stand beside the new ones.
TEST_F(RollPageTest, TheBaselineStaysInCurvesAndFacts) {
    EXPECT_EQ(rollCurves().cards()[1].series.size(), 1U);
    EXPECT_THAT(said(kCenter), Not(HasSubstr("before")));
    const ChartSeries steer = rollCurves().cards()[1].series[0];
    const ChartSeries center = travelCurves().cards()[0].series[0];
    const std::string steerWas = steerText(page_.reading().roll.ride.heading).toStdString();
    state_.baseline = Ghost{state_.car, state_.trace, state_.cursor, QStringLiteral("as it was")};
    open(parallelCar(4, -1));
    const std::vector<ChartSeries>& steerNow = rollCurves().cards()[1].series;
    ASSERT_EQ(steerNow.size(), 2U);
    EXPECT_EQ(explained(), 2) << "over both charts";
    ASSERT_EQ(steerNow[1].points.size(), steer.points.size());
    for (std::size_t row = 0; row < steer.points.size(); ++row) {
        EXPECT_EQ(steerNow[1].points[row].value, steer.points[row].value);
    }
    EXPECT_NE(steerNow[0].points.front().value, steer.points.front().value);
    EXPECT_EQ(travelCurves().cards()[0].series[1].points.front().value, center.points.front().value);
    EXPECT_THAT(said(kCenter), HasSubstr("before: " + steerWas));
    EXPECT_THAT(said(kShift), HasSubstr("before: "));
    EXPECT_THAT(said(kBind), HasSubstr("before: "));
    state_.baseline.reset();
    solve();
    EXPECT_EQ(rollCurves().cards()[1].series.size(), 1U);
    EXPECT_THAT(said(kCenter), Not(HasSubstr("before")));
    EXPECT_EQ(explained(), 0);
}

// The dash-dotted lines of both pictures.
TEST_F(RollPageTest, ThePicturesNameTheirLines) {
    open(parallelCar(4, -1));
    QStringList said;
    for (QWidget* picture : std::initializer_list<QWidget*>{page_.findChild<RollPicture*>(),
                                                            page_.findChild<RollAxisPicture*>()}) {
        picture->resize(500, 250);
        test::TextNotes notes(picture->size());
        picture->render(&notes);
        for (const test::TextNotes::Note& note : notes.notes()) {
            said << note.text;
        }
    }
    EXPECT_TRUE(said.contains(QStringLiteral("body's middle")));
    EXPECT_EQ(said.filter(QStringLiteral("roll axis: ")).size(), 1);
}

}  // namespace
}  // namespace bolthole
