// How ± is written.
#include "geometry/units/uncertainty_text.h"

#include <gmock/gmock.h>

#include <limits>

#include "geometry/uncertainty/propagation.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

// The standard uncertainty whose ± is `half`.
double uncertaintyFor(double half) {
    return half / kCoverage95;
}

// JCGM 100:2008, 7.2.6: at most two significant digits.
TEST(UncertaintyText, HasAtMostTwoSignificantDigits) {
    const auto inches = [](double half) {
        return uncertaintyText(uncertaintyFor(half * kInch), Quantity::length, Units::inch);
    };
    EXPECT_EQ(inches(4.34), "± 4.3");
    EXPECT_EQ(inches(12.34), "± 12");
    EXPECT_EQ(inches(123.4), "± 120");
    EXPECT_EQ(inches(1234), "± 1200");
    EXPECT_EQ(inches(9.96), "± 10");
    EXPECT_EQ(inches(99.6), "± 100");
}

TEST(UncertaintyText, NeverHasMoreDecimalsThanTheFigure) {
    EXPECT_EQ(uncertaintyText(uncertaintyFor(0.437 * kInch), Quantity::length, Units::inch), "± 0.4");
    EXPECT_EQ(uncertaintyText(uncertaintyFor(0.437 * kInch), Quantity::length, Units::inch, Fineness::fine),
              "± 0.44");
    EXPECT_EQ(uncertaintyText(uncertaintyFor(0.0043), Quantity::length, Units::metric), "± 4");
    EXPECT_EQ(uncertaintyText(uncertaintyFor(0.0043), Quantity::length, Units::metric, Fineness::fine),
              "± 4.3");
    EXPECT_EQ(uncertaintyText(uncertaintyFor(8.6), Quantity::percent, Units::inch), "± 9");
    EXPECT_EQ(uncertaintyText(uncertaintyFor(0.56 * kRadiansPerDegree), Quantity::angle, Units::inch),
              "± 0.6");
}

// What the tape may miss is small here, but it is not nothing.
TEST(UncertaintyText, RoundsUpWhatWouldShowAsNothing) {
    EXPECT_EQ(uncertaintyText(uncertaintyFor(0.01 * kInch), Quantity::length, Units::inch), "± 0.1");
    EXPECT_EQ(uncertaintyText(uncertaintyFor(0.2), Quantity::percent, Units::inch), "± 1");
}

TEST(UncertaintyText, IsEmptyWhereNothingIsKnownOrUncertain) {
    EXPECT_EQ(uncertaintyText(0.0, Quantity::length, Units::inch), "");
    EXPECT_EQ(uncertaintyText(std::numeric_limits<double>::quiet_NaN(), Quantity::angle, Units::inch), "");
    EXPECT_EQ(uncertaintyText(std::numeric_limits<double>::infinity(), Quantity::length, Units::inch), "");
}

TEST(UncertaintyText, IntervalsHaveWholeUnitsWhereTheyAreWide) {
    EXPECT_EQ(intervalText(52.2 * kInch, 71.4 * kInch, Quantity::length, Units::inch), "52 to 71");
    EXPECT_EQ(intervalText(3.14 * kInch, 4.36 * kInch, Quantity::length, Units::inch), "3.1 to 4.4");
    EXPECT_EQ(intervalText(-80 * kInch, -52 * kInch, Quantity::length, Units::inch), "\u221280 to \u221252");
    EXPECT_EQ(intervalText(0, std::numeric_limits<double>::infinity(), Quantity::length, Units::inch), "");
}

TEST(UncertaintyText, AnIntervalFarToOneSideIsLopsided) {
    EXPECT_FALSE(isLopsided(2, 1, 3));
    EXPECT_FALSE(isLopsided(2, 1, 4)) << "twice as far is not more than twice";
    EXPECT_TRUE(isLopsided(2, 1, 4.1));
    EXPECT_TRUE(isLopsided(-2, -4.1, -1));
    EXPECT_TRUE(isLopsided(2, 2, 3)) << "all of it to one side";
    EXPECT_TRUE(isLopsided(2, 3, 4)) << "the value lies outside";
    EXPECT_FALSE(isLopsided(2, 2, 2));
    EXPECT_FALSE(isLopsided(2, 1, std::numeric_limits<double>::infinity()));
}

}  // namespace
}  // namespace bolthole
