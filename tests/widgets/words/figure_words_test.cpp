// Figures and lengths in words.
#include "widgets/words/figure_words.h"

#include <gtest/gtest.h>

#include <limits>

#include "widgets/words/change_words.h"

namespace bolthole {
namespace {

TEST(TapeLength, IsTheFractionItsFieldShowsWhateverTheStep) {
    const double length = 16.601 * kMetresPerInch;
    for (const InchStyle step : {InchStyle::sixteenths, InchStyle::thirtySeconds}) {
        const NumberStyle style{Units::inch, step};
        EXPECT_EQ(tapeLengthText(length, style), "16 19/32");
        EXPECT_EQ(fieldText(length, Quantity::length, style), "\u2248 16 19/32") << "as the sheet has it";
        EXPECT_EQ(tapeLengthText(20.953125 * kMetresPerInch, style), "20 61/64") << "entered so";
    }
    EXPECT_EQ(tapeLengthText(length, {Units::inch, InchStyle::decimal}), "16.60");
    EXPECT_EQ(tapeLengthText(length, {Units::metric, InchStyle::sixteenths}), "421.7")
        << "a whole mm is 1/25 in";
    EXPECT_EQ(tapeLengthText(std::numeric_limits<double>::quiet_NaN(), {}), "\u2014");
}

// By hand: 10.04 and 10.16 stand as 10.0 and 10.2, so that a reader expects +0.2, though 0.12 is the change.
TEST(ShownChange, AddsUpWithWhatStandsBesideIt) {
    EXPECT_EQ(fineShownChange(10.04, 10.16, Quantity::percent, Units::inch), "+0.2");
    EXPECT_EQ(fineShownChange(10.16, 10.04, Quantity::percent, Units::inch), "\u22120.2");
    EXPECT_EQ(fineShownChange(-0.04, 0.04, Quantity::percent, Units::inch), "0.0");
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(fineShownChange(nothing, 1, Quantity::percent, Units::inch), "\u2014");
}

}  // namespace
}  // namespace bolthole
