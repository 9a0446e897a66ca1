// Small texts of numbers.
#include "widgets/kit/unit_text.h"

#include <gtest/gtest.h>

#include <limits>

namespace bolthole::test {
namespace {

// The random user once read "1e+04 threads per inch".
TEST(UnitText, DigitsThatCountAreNeverAPowerOfTen) {
    EXPECT_EQ(digitsText(16, 3), "16");
    EXPECT_EQ(digitsText(12.7, 3), "12.7");
    EXPECT_EQ(digitsText(10'160, 3), "10200");
    EXPECT_EQ(digitsText(0.07646, 2), "0.076");
    EXPECT_EQ(digitsText(-123.4, 2), "-120");
    EXPECT_EQ(digitsText(0, 2), "0");
    EXPECT_EQ(digitsText(std::numeric_limits<double>::infinity(), 2), QString(kDash));
}

}  // namespace
}  // namespace bolthole::test
