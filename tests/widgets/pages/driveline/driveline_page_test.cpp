// The driveline page as in a window: typed by keys, read as shown, its figures held against books.
#include "widgets/pages/driveline/driveline_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QGridLayout>
#include <QPushButton>
#include <QRegularExpression>
#include <QTest>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <span>

#include "tests/support/await_jobs.h"
#include "tests/support/made_units.h"
#include "tests/support/sheet_bench.h"
#include "tests/support/typing.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/driveline/driveline_picture.h"
#include "widgets/pages/fact_card.h"
#include "widgets/scales/travel_slider.h"

namespace bolthole {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

const QString kAtRide = QStringLiteral("Joints and speed variation at ride");
const QString kInTravel = QStringLiteral("Largest over the travel");
const QString kAtSpeed = QStringLiteral("At the shaft's highest speed");
const QString kPlunge = QStringLiteral("Slip yoke");
const QString kCancels = QStringLiteral("Pinion angle that cancels");

// A row of a card as a person sees it.
struct SeenFact {
    std::string value;
    std::string remark;
    bool isProblem = false;

    [[nodiscard]] double number() const {
        QString text = QString::fromStdString(value);
        text.replace(QChar(0x2212), QLatin1Char('-'));
        const QRegularExpressionMatch match =
            QRegularExpression(QStringLiteral("-?[0-9]+(\\.[0-9]+)?")).match(text);
        EXPECT_TRUE(match.hasMatch()) << value;
        const double size = match.captured().toDouble();
        return text.contains(QStringLiteral("nose down")) ? -size : size;
    }
};

// In the center plane: pinion joint at the axle's center height, shaft level and 1220 mm long.
Car carWithLevelShaft() {
    Car car = test::inventedCar();
    car.driveline = Driveline{};
    car.driveline->pinionJoint = {0.28, 0, car.rearTireRadius};
    car.driveline->outputJoint = {1.5, 0, car.rearTireRadius};
    return car;
}

class DrivelinePageTest : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    DrivelinePageTest() {
        QObject::connect(&page_, &WorkPage::edited, &page_, [this](const Edit& edit) {
            const EditResult result = bolthole::apply(state_.car, edit);
            EXPECT_EQ(result.refusal, "");
            state_.car = result.car;
            solve();
        });
        QObject::connect(&page_, &DrivelinePage::cursorMoved, &page_, [this](double travel) {
            state_.cursorTravel = travel;
            state_.cursor = solveStation(state_.solvedCar, travel);
        });
        page_.resize(1200, 900);
        page_.show();
        QApplication::setActiveWindow(&page_);
        open(carWithLevelShaft());
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
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
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
    void type(const QString& name, const QString& text) {
        auto* field = named<NumberField>(name);
        ASSERT_NE(field, nullptr) << name.toStdString();
        test::typeInto(*field, text);
        EXPECT_EQ(field->note().toStdString(), "");
    }
    void typeAngles(double output, double pinion) {
        type("transmission output angle, rising forward", QString::number(output));
        type("pinion angle, nose up", QString::number(pinion));
    }
    void typeMillimetres(const QString& name, double value) {
        type(name, QString::number(value, 'f', 4) + QStringLiteral(" mm"));
    }

    // The visible labels of a card's row: label, value, remark.
    SeenFact fact(const QString& card, const QString& label, int which = 0) {
        const auto* shown = named<FactCard>(card);
        EXPECT_TRUE(shown != nullptr && shown->isVisible());
        const auto* grid = shown->findChild<QGridLayout*>();
        SeenFact seen;
        int row = -1;
        for (int index = 0; index < grid->count(); ++index) {
            const auto* text = qobject_cast<ToneLabel*>(grid->itemAt(index)->widget());
            int at = 0;
            int column = 0;
            int spans = 0;
            grid->getItemPosition(index, &at, &column, &spans, &spans);
            if (column == 0 && text->isVisible() && text->text() == label && which-- == 0) {
                row = at;
            }
            if (at != row || column == 0 || !text->isVisible()) {
                continue;
            }
            (column == 1 ? seen.value : seen.remark) = text->text().toStdString();
            seen.isProblem = text->palette().color(QPalette::WindowText) == theme().problem;
        }
        EXPECT_GE(row, 0) << label.toStdString();
        return seen;
    }

    BenchState state_;
    DrivelinePage page_;
};

// The speed of the last of some shafts in one plane, yokes in phase, over that of the first, by the quotient
// of small turns; each joint after GWB, catalogue (read): tan(out) = tan(in)/cos(angle), and each next one's
// driving yoke a quarter turn on, in the plane.
double turnsOut(std::span<const double> angles, double in) {
    double turn = in;
    double quarter = 0;
    for (const double angle : angles) {
        const double from = turn + quarter;
        const double whole = std::round(from / std::numbers::pi) * std::numbers::pi;
        turn = whole + std::atan(std::tan(from - whole) / std::cos(angle)) - quarter;
        quarter = std::numbers::pi / 2 - quarter;
    }
    return turn;
}
double swingOf(std::span<const double> angles) {
    double least = 10;
    double most = 0;
    constexpr double kStep = 1e-4;
    for (double in = 0.01; in < 2 * std::numbers::pi; in += 0.003) {
        const double ratio = (turnsOut(angles, in + kStep) - turnsOut(angles, in - kStep)) / (2 * kStep);
        if (ratio > 0.5 && ratio < 2) {  // not across the seam of the arc tangent
            least = std::min(least, ratio);
            most = std::max(most, ratio);
        }
    }
    return most - least;
}

// Dana Spicer, J3311-1-DSSP (2008), p. 10 (read): side 2.15 deg, top 2.50 deg: compound angle 3.3 deg; 3.2956
// exactly (computed).
TEST_F(DrivelinePageTest, ShowsSpicersCompoundAngle) {
    const double radius = state_.car.rearTireRadius;
    typeMillimetres("front U-joint, left", 1220 * std::tan(2.50 * kDegree));
    typeMillimetres("front U-joint, height", 1000 * radius + 1220 * std::tan(2.15 * kDegree));
    for (const char* joint : {"Front joint", "Rear joint"}) {
        EXPECT_NEAR(fact(kAtRide, joint).number(), 3.3, 0.05);
        EXPECT_NEAR(fact(kAtRide, joint).number(), 3.2956, 0.006);
    }
    EXPECT_NEAR(fact(kAtRide, "Equivalent angle").number(), 0, 0.01) << "both ends parallel";
    EXPECT_THAT(
        named<DrivelinePicture>("Driveline from the side, to scale")->accessibleDescription().toStdString(),
        HasSubstr("front joint 3.30°"));
}

// A table after SAE AE-7, Universal Joint and Driveshaft Design Manual, sec. 3.1.1 (read): second joints that
// leave the same 7.3 deg behind first ones of 0 to 9 deg, all to 0.1 deg.
TEST_F(DrivelinePageTest, ShowsTheEquivalentAngleOfTheSaeTable) {
    constexpr std::array kSecond{7.3, 7.4, 7.6, 7.9, 8.3, 8.9, 9.5, 10.1, 10.8, 11.6};
    for (std::size_t first = 0; first < kSecond.size(); ++first) {
        typeAngles(static_cast<double>(first), kSecond[first]);
        const SeenFact equivalent = fact(kAtRide, "Equivalent angle");
        EXPECT_NEAR(equivalent.number(), 7.3, 0.1 * kSecond[first] / 7.3 + 0.005) << first;
        EXPECT_TRUE(equivalent.isProblem);
        EXPECT_NEAR(fact(kAtRide, "Front joint").number(), static_cast<double>(first), 0.006);
        EXPECT_NEAR(fact(kAtRide, "Rear joint").number(), kSecond[first], 0.006);
    }
}

// Elbe and Dana, industrial catalogues (read): U = 0.0027 at 3 deg. GWB's formula gives the same for any.
TEST_F(DrivelinePageTest, ShowsTheCataloguesSpeedSwing) {
    typeAngles(3, 0);
    EXPECT_EQ(fact(kAtRide, "Equivalent angle").value, "3.00°");
    EXPECT_NEAR(fact(kAtRide, "Speed variation").number(), 0.27, 0.005);
    typeAngles(11, 0);
    EXPECT_NEAR(fact(kAtRide, "Speed variation").number(), 100 * swingOf(std::array{11 * kDegree}), 0.006);
    typeAngles(9, 4);
    EXPECT_NEAR(fact(kAtRide, "Speed variation").number(),
                100 * swingOf(std::array{9 * kDegree, 4 * kDegree}), 0.006);
}

// R. S. Khurmi, J. K. Gupta, Theory of Machines, 14th ed., Eurasia, 2009, Ex. 9.7, p. 254 (read): two 20 deg
// joints, forks of the shaft between square to each other, 500 rpm: 566.24 and 441.5 rpm. A field's angle
// stays below 90 deg: 89.99.
TEST_F(DrivelinePageTest, ShowsKhurmisJointsOutOfPhase) {
    typeAngles(20, 20);
    EXPECT_NEAR(fact(kAtRide, "Speed variation").number(), 0, 0.005);
    EXPECT_FALSE(fact(kAtRide, "Equivalent angle").isProblem);
    type("yoke phasing of the front or only shaft", "89.99");
    EXPECT_NEAR(fact(kAtRide, "Speed variation").number(), 100 * (566.24 - 441.5) / 500, 0.02);
    EXPECT_TRUE(fact(kAtRide, "Equivalent angle").isProblem);
    EXPECT_THAT(fact(kAtRide, "Equivalent angle").remark, HasSubstr("in phase"));
}

// T. Bevan, The Theory of Machines, 3rd ed., Dorling, 2005, ch. 4, Ex. 1, p. 138 (read): one joint of 20 deg
// at 1000 rpm: 1370 rad/s^2.
TEST_F(DrivelinePageTest, ShowsBevansPeakAcceleration) {
    EXPECT_EQ(fact(kAtSpeed, "Pinion's acceleration").value, "—");
    typeAngles(20, 0);
    type("highest engine speed", "2500");
    EXPECT_THAT(fact(kAtSpeed, "Shaft speed").remark, HasSubstr("gear's ratio is not entered"));
    type("ratio of the gear at that engine speed", "2.5");
    EXPECT_EQ(fact(kAtSpeed, "Shaft speed").value, "1000 rpm");
    EXPECT_NEAR(fact(kAtSpeed, "Pinion's acceleration").number(), 1370, 1);
}

// Dana Limited, "Driveline Operating Angle Calculator" (Spicer, web page, rule 3, read, no edition): 3000 rpm
// 5.8 deg, 5000 rpm 3.2 deg, where it ends.
TEST_F(DrivelinePageTest, ShowsTheAngleLimitAtTheShaftsSpeed) {
    EXPECT_EQ(fact(kAtSpeed, "Angle that allows").value, "—");
    EXPECT_THAT(fact(kAtSpeed, "Angle that allows").remark, HasSubstr("not known"));
    typeAngles(5, 4.5);
    type("highest engine speed", "6000");
    type("ratio of the gear at that engine speed", "2");
    EXPECT_NEAR(fact(kAtSpeed, "Angle that allows").number(), 5.8, 0.006);
    EXPECT_FALSE(fact(kAtSpeed, "Angle that allows").isProblem);
    type("ratio of the gear at that engine speed", "1");
    EXPECT_EQ(fact(kAtSpeed, "Angle that allows").value, "less than 3.2°");
    EXPECT_TRUE(fact(kAtSpeed, "Angle that allows").isProblem);
}

// Dana Spicer, J3311-1-DSSP (2008): ends equal within 1 deg (p. 5), joints at least 1/2 deg (pp. 16-17).
TEST_F(DrivelinePageTest, MarksUnequalEndsAndStraightJoints) {
    typeAngles(2, 0.9);
    EXPECT_NEAR(fact(kAtRide, "Front against rear").number(), 1.1, 0.006);
    EXPECT_TRUE(fact(kAtRide, "Front against rear").isProblem);
    EXPECT_FALSE(fact(kAtRide, "Rear joint").isProblem);
    typeAngles(1.2, 0.4);
    EXPECT_FALSE(fact(kAtRide, "Front against rear").isProblem);
    EXPECT_TRUE(fact(kAtRide, "Rear joint").isProblem);
    EXPECT_THAT(fact(kAtRide, "Rear joint").remark, HasSubstr("J3311-1-DSSP"));
}

// Front piece rising forward by 1 deg under an output of 3.5, rear one level, pinion 4 deg up: joints of 2.5,
// 1 and 4 deg. The swing is that of three of GWB's joints in a row.
TEST_F(DrivelinePageTest, ComputesATwoPieceShaftOnceItsJointIsWhole) {
    typeAngles(3.5, 4);
    typeMillimetres("front U-joint, height", 1000 * state_.car.rearTireRadius + 500 * std::tan(1 * kDegree));
    type("carrier joint, forward", "1000 mm");
    typeMillimetres("carrier joint, height", 1000 * state_.car.rearTireRadius);
    EXPECT_EQ(page_.reading().setup.joints(), 2U);
    const auto notes = page_.findChildren<ToneLabel*>();
    EXPECT_TRUE(std::ranges::any_of(notes, [](const ToneLabel* label) {
        return label->isVisible() && label->text().contains(QStringLiteral("are all entered"));
    }));
    type("carrier joint, left", "0");
    EXPECT_NEAR(fact(kAtRide, "Front joint").number(), 2.5, 0.006);
    EXPECT_NEAR(fact(kAtRide, "Carrier joint").number(), 1, 0.006);
    EXPECT_NEAR(fact(kAtRide, "Rear joint").number(), 4, 0.006);
    const double swing = swingOf(std::array{2.5 * kDegree, 1 * kDegree, 4 * kDegree});
    EXPECT_NEAR(fact(kAtRide, "Speed variation").number(), 100 * swing, 0.006);
    EXPECT_EQ(fact(kCancels, "Parallel (Z)").value, "—")
        << "front joint over carrier joint: nothing to cancel";
    const auto* picture = page_.findChild<DrivelinePicture*>();
    EXPECT_GT(picture->positionOfJoint(0).x(), picture->positionOfJoint(1).x()) << "front to the right";
    EXPECT_GT(picture->positionOfJoint(1).x(), picture->positionOfJoint(2).x());
}

// By hand, all in one plane: a parallel pinion lies as the output does, a broken-back one as much the other
// way off the shaft. Turned as the page says, joint and all, the car has nothing left.
TEST_F(DrivelinePageTest, DoingWhatItSaysCancels) {
    typeAngles(3, 1);
    const SeenFact parallel = fact(kCancels, "Parallel (Z)");
    EXPECT_EQ(parallel.value, "3.00° nose up");
    EXPECT_THAT(parallel.remark, HasSubstr("the one meant"));
    EXPECT_THAT(parallel.remark, HasSubstr("turn the housing 2.00° nose up"));
    EXPECT_THAT(fact(kCancels, "Broken back (W)").remark, Not(HasSubstr("the one meant")));
    typeAngles(3, 3);
    typeMillimetres("rear U-joint, forward", 280 * std::cos(2 * kDegree));
    typeMillimetres("rear U-joint, height", 1000 * state_.car.rearTireRadius + 280 * std::sin(2 * kDegree));
    EXPECT_EQ(fact(kAtRide, "Equivalent angle").value, "0.00°");
    EXPECT_EQ(fact(kAtRide, "Speed variation").value, "0.00 %");
    EXPECT_THAT(fact(kCancels, "Parallel (Z)").remark, HasSubstr("where the housing is"));
}

// Under power the setting lies lower by the wind-up: the housing brings the rest.
TEST_F(DrivelinePageTest, WindUpIsTakenOffTheSetting) {
    typeAngles(3, 1);
    EXPECT_EQ(fact(kCancels, "To cancel under power").value, "—");
    type("pinion wind-up under power, nose up", "2");
    EXPECT_EQ(fact(kCancels, "Parallel (Z)", 1).value, "1.00° nose up");
    EXPECT_THAT(fact(kCancels, "Parallel (Z)", 1).remark, HasSubstr("where the housing is"));
    EXPECT_THAT(fact(kAtRide, "Equivalent angle").remark, HasSubstr("wound up 0.00°"));
}

// The distance of the two joints' centers, off the solved poses.
TEST_F(DrivelinePageTest, ShowsPlungeAndASlipYokeTooShort) {
    double most = 0;
    double least = 0;
    const Driveline& line = *state_.car.driveline;
    const Eigen::Vector3d center(0, 0, state_.car.rearTireRadius);
    const auto length = [&](const Station& at) {
        return (line.outputJoint - at.pose.carry(line.pinionJoint - center)).norm();
    };
    for (const Station& station : state_.trace.stations) {
        most = std::max(most, length(station) - length(state_.trace.ride));
        least = std::min(least, length(station) - length(state_.trace.ride));
    }
    EXPECT_NEAR(fact(kPlunge, "Farthest out").number(), most / kMetresPerInch, 0.006);
    EXPECT_NEAR(fact(kPlunge, "Farthest in").number(), -least / kMetresPerInch, 0.006);
    EXPECT_GT(most - least, 0.004);
    EXPECT_EQ(fact(kPlunge, "Travel to the least engagement").value, "—");
    EXPECT_THAT(fact(kPlunge, "Travel to the least engagement").remark, HasSubstr("least engagement"));

    type("slip yoke engagement at ride height", "2 1/2");
    type("least slip yoke engagement", "2");
    type("slip yoke travel to bottoming at ride height", "2");
    EXPECT_NEAR(fact(kPlunge, "Travel to the least engagement").number(), 0.5 - most / kMetresPerInch, 0.006);
    EXPECT_NEAR(fact(kPlunge, "Travel to bottoming").number(), 2 + least / kMetresPerInch, 0.006);
    EXPECT_FALSE(fact(kPlunge, "Travel to the least engagement").isProblem ||
                 fact(kPlunge, "Travel to bottoming").isProblem);

    type("least slip yoke engagement", "3");
    type("slip yoke travel to bottoming at ride height", "0.05");
    EXPECT_TRUE(fact(kPlunge, "Travel to the least engagement").isProblem);
    EXPECT_THAT(fact(kPlunge, "Travel to the least engagement").remark, HasSubstr("can come out"));
    EXPECT_TRUE(fact(kPlunge, "Travel to bottoming").isProblem);
    EXPECT_THAT(fact(kPlunge, "Travel to bottoming").remark, HasSubstr("jams"));
}

TEST_F(DrivelinePageTest, MarksAJointPastItsLimitAndSaysWhere) {
    EXPECT_THAT(fact(kInTravel, "Front joint").remark, HasSubstr("no limit entered"));
    type("driveshaft joints, largest operating angle", "3");
    const SeenFact front = fact(kInTravel, "Front joint");
    const auto joint = [](const Station& station) { return station[Figure::frontJoint]; };
    const double most = joint(std::ranges::max(state_.trace.stations, {}, joint));
    ASSERT_GT(most, 3 * kDegree);
    EXPECT_NEAR(front.number(), most / kDegree, 0.006);
    EXPECT_TRUE(front.isProblem && front.remark.find("at 4.0 in ") != std::string::npos);
    type("driveshaft joints, largest operating angle", "20");
    EXPECT_FALSE(fact(kInTravel, "Front joint").isProblem);
}

TEST_F(DrivelinePageTest, BoundsNearTheCurvesAreDrawnAndFarOnesAreNot) {
    const auto shown = [&] {
        const ChartCardOnScreen& joints = page_.findChild<CurveChart*>()->onScreen().front();
        return joints.plot().shows(joints.card().rules.front().at);
    };
    type("driveshaft joints, largest operating angle", "7");
    EXPECT_TRUE(shown());
    type("driveshaft joints, largest operating angle", "80");
    EXPECT_FALSE(shown());
}

TEST_F(DrivelinePageTest, ACarWithoutDrivelineIsOfferedOne) {
    Car car = test::inventedCar();
    car.driveline.reset();
    open(car);
    EXPECT_FALSE(named<FactCard>(kAtRide)->isVisible());
    EXPECT_FALSE(page_.findChild<CurveChart*>()->isVisible());
    EXPECT_EQ(named<NumberField>("pinion angle, nose up"), nullptr);
    EXPECT_EQ(named<NumberField>("slip yoke engagement at ride height"), nullptr);
    QPushButton* add = nullptr;
    for (QPushButton* button : page_.findChildren<QPushButton*>()) {
        add = button->text() == QStringLiteral("Add driveline") ? button : add;
    }
    ASSERT_NE(add, nullptr);
    add->setFocus();
    QTest::keyClick(add, Qt::Key_Space);
    ASSERT_TRUE(state_.car.driveline.has_value());
    EXPECT_TRUE(named<FactCard>(kAtRide)->isVisible());
    EXPECT_TRUE(named<NumberField>("pinion angle, nose up")->hasFocus());
    const auto labels = page_.findChildren<ToneLabel*>();
    EXPECT_TRUE(std::ranges::any_of(labels, [](const ToneLabel* label) {
        return label->isVisible() && label->text().contains(QStringLiteral("not measured: pinion angle"));
    }));
}

TEST_F(DrivelinePageTest, AShaftThatCannotBeSaysWhy) {
    Car car = carWithLevelShaft();
    car.driveline->outputJoint.x() = 0.1;
    open(car);
    EXPECT_FALSE(named<FactCard>(kAtRide)->isVisible());
    const auto labels = page_.findChildren<ToneLabel*>();
    EXPECT_TRUE(std::ranges::any_of(labels, [](const ToneLabel* label) {
        return label->isVisible() && label->text().contains(QStringLiteral("ahead of the pinion's"));
    }));
}

// By keys and by mouse the cursor moves curves, slider and picture together.
TEST_F(DrivelinePageTest, TheCursorMovesThePicture) {
    auto* curves = page_.findChild<CurveChart*>();
    const auto* picture = page_.findChild<DrivelinePicture*>();
    const auto* slider = page_.findChild<TravelSlider*>();
    const auto said = [&] { return picture->accessibleDescription().toStdString(); };
    EXPECT_THAT(said(), StartsWith("At ride: "));
    curves->setFocus(Qt::TabFocusReason);
    QTest::keyClick(curves, Qt::Key_Home);
    EXPECT_NEAR(state_.cursorTravel, state_.car.travel.bump, 1e-12);
    EXPECT_THAT(said(), StartsWith("At 4.0 in bump: "));
    EXPECT_THAT(curves->accessibleDescription().toStdString(), StartsWith("At 4.0 in bump: front joint"));
    EXPECT_NEAR(slider->travel(), state_.cursorTravel, 1e-12);
    const double high = picture->positionOfJoint(1).y();
    const QRect plots = curves->plotArea();
    QTest::mouseClick(curves, Qt::LeftButton, Qt::NoModifier, QPoint(plots.center().x(), plots.bottom() - 2));
    EXPECT_LT(state_.cursorTravel, -0.9 * state_.car.travel.droop);
    EXPECT_GT(picture->positionOfJoint(1).y() - picture->positionOfJoint(0).y(),
              high - picture->positionOfJoint(0).y());
    QTest::mouseDClick(curves, Qt::LeftButton, Qt::NoModifier, plots.center());
    EXPECT_EQ(state_.cursorTravel, 0);
}

// Along and across the same scale: a shaft's inclination in the picture is its own.
TEST_F(DrivelinePageTest, ThePictureIsToScale) {
    typeMillimetres("front U-joint, height", 1000 * state_.car.rearTireRadius + 100);
    const auto* picture = page_.findChild<DrivelinePicture*>();
    const QPointF shaft = picture->positionOfJoint(0) - picture->positionOfJoint(1);
    EXPECT_NEAR(-shaft.y() / shaft.x(), 100.0 / 1220.0, 1e-9);
}

TEST_F(DrivelinePageTest, NonsenseIsRefusedInPlace) {
    const Car before = state_.car;
    for (const auto& [name, text] : {std::pair{"highest engine speed", "-3"},
                                     {"ratio of the gear at that engine speed", "0"},
                                     {"slip yoke engagement at ride height", "long"},
                                     {"pinion wind-up under power, nose up", "90"}}) {
        auto* field = named<NumberField>(name);
        ASSERT_NE(field, nullptr) << name;
        field->setFocus();
        QTest::keyClicks(field, text);
        QTest::keyClick(field, Qt::Key_Return);
        EXPECT_NE(field->note(), QString()) << name;
        EXPECT_EQ(state_.car, before);
        QTest::keyClick(field, Qt::Key_Escape);
    }
}

TEST_F(DrivelinePageTest, EveryFieldSaysHowItIsMeasured) {
    const auto fields = page_.findChildren<NumberField*>();
    EXPECT_EQ(fields.size(), 20) << "3 angles, 3 points, 3 of power, 3 of the slip yoke, 2 of the yokes";
    for (const NumberField* field : fields) {
        EXPECT_GT(field->toolTip().size(), 80) << field->accessibleName().toStdString();
    }
}

TEST_F(DrivelinePageTest, MetricIsShownInMillimetres) {
    state_.style.units = Units::metric;
    solve();
    EXPECT_THAT(fact(kPlunge, "Farthest in").value, EndsWith(" mm"));
    EXPECT_THAT(fact(kInTravel, "Front joint").remark, HasSubstr("at 102 mm "));
}

// By hand: a pinion angle read within a standard quarter degree, and nothing else of it: 1.96 times that.
TEST_F(DrivelinePageTest, ThePinionIsAsAccurateAsItsAngleFinder) {
    state_.car.tools.angleFinder = 0.25 * kRadiansPerDegree;
    solve();
    ASSERT_TRUE(test::awaitJobs());
    EXPECT_THAT(fact(kCancels, "Pinion at ride now").remark, StartsWith("± 0.49°; "));
    // An angle without a sign, near nothing: where it may be.
    EXPECT_THAT(fact(kAtRide, "Equivalent angle").remark,
                testing::ContainsRegex("^0\\.[0-9]+ to 0\\.[0-9]+°"));
    state_.showsUncertainty = false;
    solve();
    EXPECT_THAT(fact(kCancels, "Pinion at ride now").remark, testing::Not(HasSubstr("±")));
}

}  // namespace
}  // namespace bolthole
