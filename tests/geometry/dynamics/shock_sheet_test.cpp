// A shock's forces as a person has them: a sheet, readings with a hung weight, an estimate.
#include "geometry/dynamics/shock_sheet.h"

#include <gmock/gmock.h>

#include <cmath>

#include "geometry/dynamics/damping_line.h"
#include "geometry/units/units.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

constexpr double kPound = 4.4482216152605;  // N: NIST SP 811, Appendix B, from memory
constexpr double kInchPerSecond = 0.0254;

TEST(ShockTable, IsReadByClickAndSpeed) {
    const ShockWay way =
        readShockTable("in/s\t0\t2\t4\n0\t0\t0\t0\n1\t20\t32\t55\n3\t41\t60\t90\n", Units::inch);
    ASSERT_TRUE(way.isThere());
    EXPECT_THAT(way.way.clicks, ElementsAre(0, 2, 4));
    ASSERT_EQ(way.speeds.size(), 2U) << "at rest a shock resists with nothing";
    EXPECT_NEAR(way.speeds[1], 3 * kInchPerSecond, 1e-15);
    EXPECT_NEAR(way.way.force[1][1], 60 * kPound, 1e-9);
    EXPECT_NEAR(way.way.force[2][0], 55 * kPound, 1e-9);
}

TEST(ShockTable, TakesCommasAsSeparatorsOrAsTheDecimalPoint) {
    const ShockWay comma = readShockTable("25, 90\n75, 180\n", Units::metric);
    ASSERT_TRUE(comma.isThere());
    EXPECT_NEAR(comma.way.force[0][1], 180, 1e-12);
    const ShockWay point = readShockTable("speed;force\n25,5;90,5\n", Units::metric);
    ASSERT_TRUE(point.isThere());
    EXPECT_NEAR(point.speeds[0], 0.0255, 1e-15);
    EXPECT_NEAR(point.way.force[0][0], 90.5, 1e-12);
}

TEST(ShockTable, RefusesARowWholeAndSaysWhy) {
    const ShockWay way = readShockTable("in/s 0 2\n1 20 32\n1 30 40\n2 30\n3 x 1\n", Units::inch);
    EXPECT_FALSE(way.isThere());
    ASSERT_EQ(way.refused.size(), 3U);
    EXPECT_EQ(way.refused[0].line, 3);
    EXPECT_THAT(way.refused[0].reason, HasSubstr("rising speeds"));
    EXPECT_THAT(way.refused[1].reason, HasSubstr("3 numbers"));
    EXPECT_THAT(way.refused[2].reason, HasSubstr("all numbers"));
}

TEST(ShockTable, ComesBackFromItsOwnText) {
    const ShockWay bump = readShockTable("in/s 0 2\n1 20 32\n3 41 60\n", Units::inch);
    const ShockWay rebound = readShockTable("in/s 0\n2 50\n", Units::inch);
    const std::optional<Damping> damping = joined(bump, rebound);
    ASSERT_TRUE(damping);
    EXPECT_EQ(refusal(*damping).reason, "");
    for (const bool isBump : {true, false}) {
        const ShockWay again = readShockTable(shockTableText(*damping, isBump, Units::inch), Units::inch);
        ASSERT_TRUE(again.isThere());
        const DampingWay& way = isBump ? damping->bump : damping->rebound;
        for (std::size_t row = 0; row < way.force.size(); ++row) {
            for (std::size_t at = 0; at < damping->speeds.size(); ++at) {
                EXPECT_NEAR(again.way.force[row][at], way.force[row][at], 0.001 * kPound);
            }
        }
    }
}

// Between its own speeds the joined table says what each alone says.
TEST(ShockTable, JoinsSpeedsAlongStraightLines) {
    const ShockWay bump = readShockTable("10 100\n30 160\n", Units::metric);
    const ShockWay rebound = readShockTable("20 300\n", Units::metric);
    const std::optional<Damping> damping = joined(bump, rebound);
    ASSERT_TRUE(damping);
    EXPECT_THAT(damping->speeds, ElementsAre(0.01, 0.02, 0.03));
    EXPECT_NEAR(damping->bump.force[0][1], 130, 1e-9);
    EXPECT_NEAR(damping->rebound.force[0][0], 150, 1e-9) << "through nothing at rest";
    EXPECT_NEAR(damping->rebound.force[0][2], 450, 1e-9) << "past the last speed with its slope";
    EXPECT_FALSE(joined(bump, readShockTable("", Units::metric)));
}

// Least squares through the origin: c = sum F v / sum v^2 (NIST/SEMATECH e-Handbook, sec. 4.4.3.1, from
// memory, of least squares in general).
TEST(ShockReadings, AreALineThroughEachClicksReadings) {
    const ShockWay way =
        readShockReadings("click weight stroke seconds\n0 20 4 2\n0 40 4 1\n4 20 4 4\n", Units::inch);
    ASSERT_TRUE(way.isThere());
    EXPECT_THAT(way.way.clicks, ElementsAre(0, 4));
    ASSERT_EQ(way.speeds.size(), 1U);
    EXPECT_NEAR(way.speeds[0], 4 * kInchPerSecond, 1e-15);
    // Click 0: 20 lb at 2 in/s, 40 lb at 4 in/s: 10 lb s/in. Click 4: 20 lb at 1 in/s: 20 lb s/in.
    EXPECT_NEAR(way.way.force[0][0], 40 * kPound, 1e-9);
    EXPECT_NEAR(way.way.force[1][0], 80 * kPound, 1e-9);
    EXPECT_FALSE(readShockReadings("0 20 4\n", Units::inch).isThere());
    EXPECT_FALSE(readShockReadings("0 20 4 0\n", Units::inch).isThere());
}

// Critical damping of a mass on a spring is 2 sqrt(k m) (D. Barton, J. Fieldhouse, Automotive Chassis
// Engineering, Springer 2018, sec. 3.13, from memory): 300 kg on 30 kN/m, 6000 N s/m.
TEST(EstimatedDamping, IsAPartOfCriticalDampingAtTheWheel) {
    const Damping damping = estimatedDamping(30'000, 300, 0.5);
    EXPECT_EQ(refusal(damping).reason, "");
    EXPECT_TRUE(damping.isEstimate);
    const double atShaft = damping.bump.force[0][0] / damping.speeds[0];
    EXPECT_NEAR(atShaft * 0.5 * 0.5, 0.2 * 6000, 1e-9);
    EXPECT_NEAR(damping.rebound.force[0][0] / damping.bump.force[0][0], 2, 1e-12);
}

TEST(EstimatedDamping, NeedsTheCarsOwnNumbers) {
    Car car = plainCar();
    car.wheelRates.front.wheel.reset();
    EXPECT_FALSE(estimatedDamping(car, -1));
    car.wheelRates.front.wheel = 25'000.0;
    car.launch.frontUnsprungMass = 80.0;
    car.launch.front.motionRatio = 0.6;
    const std::optional<Damping> damping = estimatedDamping(car, -1);
    ASSERT_TRUE(damping);
    const double mass = (car.cornerWeights.front() - 80) / 2;
    EXPECT_NEAR(damping->bump.force[0][0] / damping->speeds[0] * 0.36, 0.2 * 2 * std::sqrt(25'000 * mass),
                1e-6);
}

}  // namespace
}  // namespace bolthole
