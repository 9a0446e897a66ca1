// What the papers say of a setup, and the sheets they stand on.
#include "widgets/papers/sheets/setup_facts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "geometry/car/starting_numbers.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/plain_car.h"
#include "widgets/papers/sheets/sheets.h"
#include "widgets/words/figure_words.h"

namespace bolthole {
namespace {

constexpr NumberStyle kInchStyle{Units::inch, InchStyle::sixteenths};

Pass passWith(int number, const EnteredCorners& pressures) {
    Pass pass;
    pass.number = number;
    pass.date = "2026-11-20";
    pass.pressures = pressures;
    return pass;
}

TEST(SetupFacts, NamesHolesWhereThereIsACombination) {
    const SetupFacts facts = setupFactsOf(plainCar(), kInchStyle, false);
    ASSERT_EQ(facts.links.size(), 3U);
    EXPECT_EQ(facts.links[0].chassis, QString(QChar(0x2014)));
    EXPECT_EQ(facts.links[0].axle, "bottom");
    EXPECT_EQ(facts.links[2].length, "") << "a guide has no length";
    EXPECT_TRUE(facts.figures.empty());
    // Lower: 19.5, 3 and 3.25 in apart: 19.996 by Pythagoras, which no tape reads.
    EXPECT_EQ(facts.links[0].length, QStringLiteral("\u2248 20 in"));
}

// 220 kPa are 31.908 psi and 124 kPa are 17.985 by 6.894757 kPa to the psi (NIST SP 811, Appendix B, from
// memory).
TEST(SetupFacts, TakesPressuresFromTheLastPassThatHasThem) {
    Car car = plainCar();
    EXPECT_TRUE(setupFactsOf(car, kInchStyle, false).pressures.empty());
    car.passes = {passWith(1, {.leftRear = 100}), passWith(2, {.leftFront = 220, .leftRear = 124}),
                  passWith(3, {})};
    const SetupFacts facts = setupFactsOf(car, kInchStyle, false);
    ASSERT_EQ(facts.pressures.size(), 2U);
    EXPECT_EQ(facts.pressures[0].value, "31.9 psi");
    EXPECT_EQ(facts.pressures[1].name, "left rear");
    EXPECT_EQ(facts.pressures[1].value, "18 psi");
    EXPECT_EQ(setupFactsOf(car, {Units::metric}, false).pressures[0].value, "220 kPa");
    // What was entered for the launch counts before.
    car.wheelRates.rear.pressure = 103.5e3;
    const SetupFacts now = setupFactsOf(car, kInchStyle, false);
    ASSERT_EQ(now.pressures.size(), 3U);
    EXPECT_EQ(now.pressures[2].name, "right rear");
    EXPECT_EQ(now.pressures[2].value, "15 psi");
    EXPECT_EQ(facts.pressuresFrom, "of the last pass that has them");
    EXPECT_EQ(now.pressuresFrom, "rear as entered for the launch, front of the last pass that has them");
    car.passes.clear();
    EXPECT_EQ(setupFactsOf(car, kInchStyle, false).pressuresFrom, "as entered for the launch");
    car.wheelRates.rear.pressure.reset();
    EXPECT_EQ(setupFactsOf(car, kInchStyle, false).pressuresFrom, "");
}

TEST(SetupFacts, SaysTheClicksThatAreSet) {
    Car car = plainCar();
    EXPECT_TRUE(setupFactsOf(car, kInchStyle, false).clicks.empty());
    car.launch.front.damping = Damping{};
    car.launch.front.damping->rebound.at = 7;
    const SetupFacts facts = setupFactsOf(car, kInchStyle, false);
    ASSERT_EQ(facts.clicks.size(), 1U);
    EXPECT_EQ(facts.clicks[0].name, "front shock, rebound");
    EXPECT_EQ(facts.clicks[0].value, "7");
}

TEST(SetupFacts, GivesFiguresWithTheirUncertainty) {
    const SetupFacts facts = setupFactsOf(plainCar(), kInchStyle, true);
    ASSERT_FALSE(facts.figures.empty());
    EXPECT_EQ(facts.figures[0].name, "Anti-squat");
    EXPECT_TRUE(facts.figures[0].value.contains(QChar(0xB1))) << qPrintable(facts.figures[0].value);
    EXPECT_TRUE(facts.figures[0].value.endsWith(" %"));
}

TEST(SetupText, IsAFewLinesForAnybody) {
    Car car = plainCar();
    car.stateName = "street";
    const QString text = setupText(setupFactsOf(car, kInchStyle, true), QDate(2026, 11, 28));
    EXPECT_TRUE(text.startsWith(
        "Plain: street, 2026-11-28\nlower: axle hole bottom, \u2248 20 in center to center\n"))
        << qPrintable(text);
    EXPECT_TRUE(text.contains("all, driver aboard 3594 lb")) << "1630 kg";
    EXPECT_LE(text.count('\n'), 14);
}

// 0.2 ± 0.6 would go below zero, where the angle between two shafts can't be.
TEST(SetupText, AnAngleWithoutASignNearZeroHasAnIntervalNoPlusMinus) {
    Car car = plainCar();
    const auto front = [&] { return computeTrace(car).ride[Figure::frontJoint]; };
    const double angle = front();
    car.driveline->outputAngle += angle - 0.2 * kRadiansPerDegree;
    if (front() > angle) {
        car.driveline->outputAngle -= 2 * (angle - 0.2 * kRadiansPerDegree);
    }
    ASSERT_NEAR(front(), 0.2 * kRadiansPerDegree, 1e-3);
    const SetupFacts facts = setupFactsOf(car, kInchStyle, true);
    const auto fact = std::ranges::find(facts.figures, figureWords(Figure::frontJoint), &SetupFact::name);
    ASSERT_NE(fact, facts.figures.end());
    EXPECT_THAT(fact->value.toStdString(),
                testing::MatchesRegex("0\\.[0-9]+  \\(0\\.[0-9] to [01]\\.[0-9]\\).*"));
}

TEST(SetupText, SaysWhichNumbersNobodyMeasured) {
    Car car = plainCar();
    EXPECT_FALSE(
        setupText(setupFactsOf(car, kInchStyle, true), QDate(2026, 11, 28)).contains("not measured"));
    setOrigin(car, {.field = Field::wheelbase}, Origin::starting);
    EXPECT_TRUE(setupText(setupFactsOf(car, kInchStyle, true), QDate(2026, 11, 28))
                    .contains("Starting numbers, not measured: wheelbase"));
}

// Every sheet of every page paints, also of a car that has nothing beside its links.
TEST(Sheets, PaintABareCar) {
    Car car = plainCar();
    car.title.clear();
    car.springs.clear();
    car.ballast.clear();
    car.driveline.reset();
    for (const SheetKind kind : {SheetKind::measuring, SheetKind::testDay, SheetKind::setup}) {
        for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
            const auto sheets = makeSheet(kind, car, kInchStyle, QDate(2026, 11, 28), pageOf(kind, paper));
            ASSERT_GE(sheets->sheetCount(), 1);
            for (int index = 0; index < sheets->sheetCount(); ++index) {
                QImage page(600, 600, QImage::Format_Grayscale8);
                page.fill(Qt::white);
                QPainter painter(&page);
                painter.scale(2, 2);
                sheets->paintSheet(painter, index);
                painter.end();
                QImage empty(page.size(), page.format());
                empty.fill(Qt::white);
                EXPECT_NE(page, empty) << nameOf(kind).toStdString() << ", sheet " << index;
            }
        }
    }
}

}  // namespace
}  // namespace bolthole
