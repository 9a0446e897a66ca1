// The Springs page's figures against geometry worked out by hand, its picture and its curves.
#include <gmock/gmock.h>

#include "tests/support/await_jobs.h"
#include "tests/support/springs_bench.h"
#include "widgets/pages/springs/spring_findings.h"

namespace bolthole::test {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class Springs : public SpringsBench {};

// By hand: a spring that leans sideways by s on a height of h, L long, on an axle that goes straight up:
// motion ratio h/L, and for one wheel k (h/L)^2 - F (s/L)^2/L (motion ratio squared times rate, from memory:
// W. F. Milliken, D. L. Milliken, Race Car Vehicle Dynamics, SAE 1995, ch. 16; the rest its derivative).
TEST_F(Springs, ALeaningSpringByHand) {
    const double s = 0.12;
    const double h = 0.28;
    const double length = std::hypot(s, h);
    SuspensionPart spring = upright("coil", PartKind::spring, 0.5, h);
    spring.chassis.holes[0].at.y() -= s;
    spring.rate = 30e3;
    spring.freeLength = length + 0.13;
    showParts({spring});
    const QString card = QStringLiteral("Coil: spring, both sides");
    ASSERT_NEAR(length, 0.30463, 1e-5);
    EXPECT_EQ(fact(card, QStringLiteral("Length at ride")), "304.6 mm");
    EXPECT_EQ(fact(card, QStringLiteral("Motion ratio at ride")), "0.919") << 0.28 / 0.30463;
    EXPECT_EQ(fact(card, QStringLiteral("Pushes at ride")), "3900 N") << "30 N/mm times 130 mm";
    const double rate = 30e3 * h * h / length / length - 3900 * s * s / std::pow(length, 3);
    ASSERT_NEAR(rate, 23358, 1) << "25345 less 1987 N/m";
    EXPECT_EQ(fact(card, QStringLiteral("Wheel rate it makes")), "23.4 N/mm");
    EXPECT_EQ(fact(QStringLiteral("Rear wheel rate"), QStringLiteral("In use elsewhere")), "23.4 N/mm");
    // Both springs' forces times the cosine of their lean.
    EXPECT_NEAR(page_.findings().carried(), 2 * 3900 * h / length, 1e-6);
}

// Shorter than where it stands, it hangs loose at ride and does not come loose there.
TEST_F(Springs, ASpringThatIsLooseAtRideBeginsToPushInBump) {
    SuspensionPart spring = upright("coil", PartKind::spring, 0.5, 0.3);
    spring.rate = 30e3;
    spring.freeLength = 0.27;
    showParts({spring});
    const QString card = QStringLiteral("Coil: spring, both sides");
    EXPECT_EQ(fact(card, QStringLiteral("Begins to push")), "30.0 mm of bump");
    spring.freeLength = 0.33;
    showParts({spring});
    EXPECT_EQ(fact(card, QStringLiteral("Comes loose")), "30.0 mm of droop");
}

// What was computed aside of a car with one spring arrives when the page, out of sight, is to show one with
// three: it once read past the end of what was found of the first.
TEST_F(Springs, WhatComesLateOfAnotherCarIsDropped) {
    SuspensionPart spring = upright("coil", PartKind::spring, 0.5, 0.3);
    spring.rate = 30e3;
    spring.freeLength = 0.4;
    showParts({spring});
    const std::size_t found = page_.findings().items.size();
    page_.hide();
    SuspensionPart second = spring;
    second.name = "helper";
    SuspensionPart third = spring;
    third.name = "third";
    showParts({spring, second, third});
    ASSERT_TRUE(awaitJobs());
    EXPECT_EQ(page_.findings().items.size(), found) << "a hidden page computes nothing";
    EXPECT_EQ(fact(QStringLiteral("Third: spring, both sides"), QStringLiteral("Pushes at ride")), "none");
    page_.show();
    ASSERT_TRUE(awaitJobs());
    EXPECT_EQ(page_.findings().items.size(), 3U);
    EXPECT_EQ(fact(QStringLiteral("Third: spring, both sides"), QStringLiteral("Pushes at ride")), "3000 N");
}

// The rate entered goes before the springs' own, and the page says so.
TEST_F(Springs, AnEnteredRateIsTheOneInUse) {
    Car car = circlingCar();
    car.springs = {upright("coil", PartKind::spring, 0.5, 0.3)};
    car.springs[0].rate = 30e3;
    car.springs[0].freeLength = 0.4;
    car.wheelRates.rear.wheel = 21e3;
    show(car);
    EXPECT_EQ(fact(QStringLiteral("Rear wheel rate"), QStringLiteral("Springs make at ride")), "30.0 N/mm");
    EXPECT_EQ(fact(QStringLiteral("Rear wheel rate"), QStringLiteral("In use elsewhere")), "21.0 N/mm");
}

// Lengths, motion ratios and the rate over the travel, at the cursor moved by keys.
TEST_F(Springs, TheCursorByKeysShowsLengthsByHand) {
    SuspensionPart spring = upright("coil", PartKind::coilOver, 0.5, 0.3);
    spring.rate = 20e3;
    spring.freeLength = 0.5;
    showParts({spring});
    CurveChart& curves = page_.curves();
    curves.setFocus();
    for (const auto& [key, travel] :
         {std::pair(Qt::Key_Home, 0.08), {Qt::Key_End, -0.08}, {Qt::Key_R, 0.0}, {Qt::Key_Up, 0.005}}) {
        QTest::keyClick(&curves, key);
        EXPECT_NEAR(page_.travel(), travel, 1e-12);
        const auto& values = curves.values();
        EXPECT_NEAR(values[0][0].value, uprightLength(0.3, travel), 1e-9);
        EXPECT_NEAR(values[1][0].value, uprightRatio(0.3, travel), 1e-9);
        const auto push = [&](double at) {
            return 20e3 * (0.5 - uprightLength(0.3, at)) * uprightRatio(0.3, at);
        };
        constexpr double kStep = 1e-5;
        EXPECT_NEAR(values[2][0].value, (push(travel + kStep) - push(travel - kStep)) / (2 * kStep), 1.0);
    }
    const std::vector<ChartPoint>& lengths = curves.cards()[0].series[0].points;
    ASSERT_EQ(lengths.size(), 33U);
    EXPECT_NEAR(lengths.front().value, uprightLength(0.3, -0.08), 1e-9);
    EXPECT_NEAR(lengths.back().value, uprightLength(0.3, 0.08), 1e-9);
}

TEST_F(Springs, ADragInTheCurvesMovesTheCursorAndADoubleClickBringsItToRide) {
    showParts({upright("shock", PartKind::shock, 0.5, 0.4)});
    CurveChart& curves = page_.curves();
    const QRectF plots = curves.plotArea();
    const auto at = [&](double share) {
        return QPoint(curves.width() / 2, qRound(plots.top() + share * plots.height()));
    };
    QTest::mousePress(&curves, Qt::LeftButton, Qt::NoModifier, at(0.5));
    QTest::mouseMove(&curves, at(0.25));
    QTest::mouseRelease(&curves, Qt::LeftButton, Qt::NoModifier, at(0.25));
    EXPECT_NEAR(page_.travel(), 0.04, 0.002);
    QTest::mouseDClick(&curves, Qt::LeftButton, Qt::NoModifier, at(0.25));
    EXPECT_EQ(page_.travel(), 0);
    EXPECT_THAT(edits_, IsEmpty());
}

// By hand: the shock closes at 50 mm of bump and opens at 65 mm of droop, the stop is solid at 45.4 mm, the
// strap taut at 40.7 mm. Each button enters what is left, rounded down, as one edit.
TEST_F(Springs, WhatRunsOutFirstByHandAndTheTravelCutToIt) {
    SuspensionPart shock = upright("shock", PartKind::shock, 0.45, 0.35);
    shock.closedLength = uprightLength(0.35, 0.05);
    shock.openLength = uprightLength(0.35, -0.065);
    SuspensionPart stop = upright("stop", PartKind::bumpStop, 0.4, 0.1);
    stop.freeLength = uprightLength(0.1, 0.03);
    stop.closedLength = uprightLength(0.1, 0.0454);
    SuspensionPart strap = upright("strap", PartKind::strap, 0.3, 0.3);
    strap.openLength = uprightLength(0.3, -0.0407);
    showParts({shock, stop, strap});
    const QString card = QStringLiteral("What stops travel first");
    EXPECT_EQ(fact(card, QStringLiteral("Bump")), "45.4 mm");
    EXPECT_EQ(fact(card, QStringLiteral("Droop")), "40.7 mm");
    EXPECT_TRUE(says(QStringLiteral("Bump stop 'stop' (left) is closed at 45.4 mm of bump")));
    EXPECT_TRUE(says(QStringLiteral("Strap 'strap' (left) is all out at 40.7 mm of droop")));
    EXPECT_EQ(fact(QStringLiteral("Shock, both sides"), QStringLiteral("Bump left")), "50.0 mm");
    EXPECT_EQ(fact(QStringLiteral("Shock, both sides"), QStringLiteral("Droop left")), "65.0 mm");
    EXPECT_EQ(fact(QStringLiteral("Stop: bump stop, both sides"), QStringLiteral("Meets its pad")),
              "30.0 mm of bump");
    EXPECT_EQ(fact(QStringLiteral("Stop: bump stop, both sides"), QStringLiteral("Droop left")), "—");

    const auto button = [this](const QString& text) {
        for (QPushButton* each : page_.findChildren<QPushButton*>()) {
            if (each->text() == text && each->isVisibleTo(&page_)) {
                return each;
            }
        }
        return static_cast<QPushButton*>(nullptr);
    };
    ASSERT_NE(button(QStringLiteral("Limit bump to 45 mm")), nullptr);
    QTest::mouseClick(button(QStringLiteral("Limit bump to 45 mm")), Qt::LeftButton);
    ASSERT_NE(button(QStringLiteral("Limit droop to 40 mm")), nullptr);
    button(QStringLiteral("Limit droop to 40 mm"))->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    EXPECT_EQ(edits_.size(), 2U);
    EXPECT_NEAR(state_.car.travel.bump, 0.045, 1e-12);
    EXPECT_NEAR(state_.car.travel.droop, 0.040, 1e-12);
    EXPECT_TRUE(says(QStringLiteral("Nothing stops travel before the 45.0 mm of bump entered")));
    EXPECT_EQ(button(QStringLiteral("Limit bump to 45 mm")), nullptr);
}

// "Nothing runs out" is no news where lengths are missing, and the page says so.
TEST_F(Springs, MissingLengthsAreNamed) {
    SuspensionPart shock = upright("shock", PartKind::shock, 0.45, 0.35);
    shock.openLength = 0.5;
    showParts({shock, upright("strap", PartKind::strap, 0.3, 0.3)});
    EXPECT_TRUE(says(QStringLiteral("nobody knows what they end: shock (compressed), strap (taut).")));
    type(QStringLiteral("shock, compressed length"), QStringLiteral("200"));
    type(QStringLiteral("strap, length when taut"), QStringLiteral("390"));
    EXPECT_FALSE(says(QStringLiteral("nobody knows")));
}

TEST(SpringRounding, NeverGoesPastTheLimit) {
    EXPECT_NEAR(roundedDown({.travel = 3.1 * kInch}, Units::inch), (3 + 1.0 / 16) * kInch, 1e-12);
    EXPECT_NEAR(roundedDown({.travel = 3 * kInch - 1e-9}, Units::inch), 3 * kInch, 1e-12)
        << "found to a micrometer";
    EXPECT_NEAR(roundedDown({.travel = 0.0459}, Units::metric), 0.045, 1e-12);
    EXPECT_EQ(roundedDown({.travel = 0}, Units::metric), 0);
}

TEST_F(Springs, APartPastItsLimitAtRideSaysSo) {
    SuspensionPart shock = upright("shock", PartKind::shock, 0.45, 0.35);
    shock.closedLength = 0.36;
    showParts({shock});
    EXPECT_TRUE(says(QStringLiteral("past its compressed length of 360.0 mm already at ride")));
    EXPECT_TRUE(says(QStringLiteral("is closed at ride")));
    ASSERT_EQ(page_.picture().scene().parts.size(), 2U);
    EXPECT_TRUE(page_.picture().scene().parts[0].isPast);
}

// Past what ends the travel the rates say nothing: the curve stops there, and the stretch is marked.
TEST_F(Springs, NoWheelRateIsShownPastTheEnd) {
    SuspensionPart spring = upright("coil", PartKind::spring, 0.5, 0.3);
    spring.rate = 20e3;
    spring.freeLength = 0.5;
    spring.closedLength = uprightLength(0.3, 0.042);
    showParts({spring});
    const std::vector<ChartCard>& shown = page_.curves().cards();
    const std::vector<ChartStretch>& past = shown[2].stretches;
    ASSERT_EQ(past.size(), 1U);
    EXPECT_NEAR(past[0].from, 0.042, 2e-6);
    EXPECT_NEAR(past[0].to, 0.08, 1e-12);
    const std::vector<ChartPoint>& rate = shown[2].series[0].points;
    EXPECT_FALSE(std::isnan(rate[24].value)) << "40 mm";
    EXPECT_TRUE(std::isnan(rate[25].value)) << "45 mm";
    EXPECT_FALSE(std::isnan(shown[0].series[0].points[32].value)) << "the length goes on";
    page_.curves().setFocus();
    QTest::keyClick(&page_.curves(), Qt::Key_Home);
    EXPECT_TRUE(std::isnan(page_.curves().values()[2][0].value));
}

// By hand: two upright springs of 3900 N carry 7800 N; the rear tires of this car carry 710 kg.
TEST_F(Springs, SpringsThatCarryMoreThanTheTiresAreQuestioned) {
    SuspensionPart spring = upright("coil", PartKind::spring, 0.5, 0.3);
    spring.rate = 30e3;
    spring.freeLength = 0.43;
    Car car = circlingCar();
    car.cornerWeights.leftRear = 360;
    car.cornerWeights.rightRear = 350;
    car.springs = {spring};
    show(car);
    EXPECT_EQ(fact(QStringLiteral("Rear wheel rate"), QStringLiteral("Springs carry at ride")), "7800 N");
    ASSERT_LT(710 * 9.80665, 7800);
    EXPECT_TRUE(says(QStringLiteral("a length, rate, mount or weight is wrong")));
    type(QStringLiteral("coil, free length"), QStringLiteral("400"));
    EXPECT_EQ(fact(QStringLiteral("Rear wheel rate"), QStringLiteral("Springs carry at ride")), "6000 N");
    EXPECT_FALSE(says(QStringLiteral("a length, rate, mount or weight is wrong")));
    // 710 kg less 90 kg of axle: 6080.1 N. 6000 N are 80 too little, within one in twenty; 5400 N are not.
    car.springs[0].freeLength = 0.4;
    car.launch.unsprungMass = 90;
    show(car);
    EXPECT_TRUE(says(QStringLiteral("80 N too little: the scales leave them 6080 N")));
    EXPECT_FALSE(says(QStringLiteral("is wrong")));
    type(QStringLiteral("coil, free length"), QStringLiteral("390"));
    EXPECT_TRUE(says(QStringLiteral("a length, rate, mount or weight is wrong")));
}

// The picture is to scale: a part seen square on is as long in it as its length says.
TEST_F(Springs, ThePictureIsToScaleAndAClickPicksAPart) {
    SuspensionPart spring = upright("coil", PartKind::spring, 0.55, 0.3);
    SuspensionPart shock = upright("shock", PartKind::shock, 0.3, 0.4);
    showParts({spring, shock});
    SpringsPicture& picture = page_.picture();
    picture.grab();
    const auto& parts = picture.scene().parts;
    ASSERT_EQ(parts.size(), 4U);
    const auto drawn = [&](std::size_t part) {
        const QPointF span = picture.toPicture(parts[part].chassis) - picture.toPicture(parts[part].axle);
        return std::hypot(span.x(), span.y());
    };
    EXPECT_NEAR(drawn(2) / drawn(0), 0.4 / 0.3, 1e-9);
    EXPECT_LT(picture.toPicture(parts[0].chassis).x(), picture.toPicture(parts[1].chassis).x())
        << "left is at left from behind";
    EXPECT_EQ(picture.scene().chosen, 0);
    const QPointF middle = (picture.toPicture(parts[2].chassis) + picture.toPicture(parts[2].axle)) / 2;
    QTest::mouseClick(&picture, Qt::LeftButton, Qt::NoModifier, middle.toPoint());
    EXPECT_EQ(picture.scene().chosen, 1);
    EXPECT_EQ(page_.curves().cards()[0].subject, "1");
    auto* side = named<QAbstractButton>(QStringLiteral("Picture from the side"));
    ASSERT_NE(side, nullptr);
    const QImage behind = picture.grab().toImage();
    QTest::mouseClick(side, Qt::LeftButton);
    EXPECT_NE(picture.grab().toImage(), behind);
}

// A track bar's circle moves the axle sideways, so that left and right differ: both are shown.
TEST_F(Springs, SidesThatDifferAreBothShown) {
    Car car = levelCar();
    car.units = Units::metric;
    car.travel = {.bump = 0.08, .droop = 0.08, .steps = 33};
    car.springs = {makePart("shock", PartKind::shock, Side::both, {{-0.1, 0.35, 0.75}, {-0.1, 0.5, 0.3}})};
    show(car);
    page_.curves().setFocus();
    QTest::keyClick(&page_.curves(), Qt::Key_Home);
    const auto& length = page_.curves().values()[0];
    ASSERT_EQ(length.size(), 2U);
    // By hand: the track bar, level and as long as its holes are apart, draws the axle sideways by
    // c - sqrt(c^2 - z^2) toward its chassis end at the left.
    const double bar = 40 * kInch;
    const double shift = bar - std::sqrt(bar * bar - 0.08 * 0.08);
    // Each leans 0.15 m sideways on 0.4 m of length: twice 0.15/0.4 of the shift between them.
    EXPECT_NEAR(std::abs(length[0].value - length[1].value) / shift, 0.75, 0.1);
    EXPECT_EQ(page_.picture().scene().parts[1].label.contains(QStringLiteral("right")), true);
}

TEST_F(Springs, ACarThatCanNotBeComputedSaysSo) {
    Car car = circlingCar();
    car.springs = {upright("shock", PartKind::shock, 0.45, 0.35)};
    car.wheelbase = -1;
    show(car);
    EXPECT_TRUE(says(QStringLiteral("Not computed: as it stands it can't be")));
    EXPECT_EQ(fact(QStringLiteral("Shock, both sides"), QStringLiteral("Length at ride")), "none");
}

// A hidden page computes nothing.
TEST_F(Springs, AHiddenPageWaits) {
    page_.hide();
    showParts({upright("shock", PartKind::shock, 0.45, 0.35)});
    EXPECT_THAT(page_.findings().items, IsEmpty());
    page_.show();
    EXPECT_THAT(page_.findings().items, ElementsAre(0));
}

// By hand: upright, its length is off by what both mounts' heights are: two tapes of 1 mm, 1.96 times sqrt 2.
TEST_F(Springs, ALengthIsAsAccurateAsTheHeightsOfItsMounts) {
    Car car = circlingCar();
    car.springs = {upright("coil", PartKind::spring, 0.5, 0.3)};
    car.springs[0].rate = 30e3;
    car.springs[0].freeLength = 0.4;
    car.tools.tape = 1e-3;
    show(car);
    ASSERT_TRUE(awaitJobs());
    EXPECT_TRUE(says(QStringLiteral("± 2.8 mm; squeezed by")));
}

}  // namespace
}  // namespace bolthole::test
