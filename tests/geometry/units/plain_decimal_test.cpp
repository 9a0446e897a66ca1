// Numbers as the tables have them: twelve digits, no exponent, whatever the locale.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <random>
#include <string>

#include "geometry/units/text.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

TEST(PlainDecimal, WritesTwelveDigitsWithoutExponent) {
    EXPECT_EQ(plainDecimal(0), "0");
    EXPECT_EQ(plainDecimal(-0.0), "0");
    EXPECT_EQ(plainDecimal(1), "1");
    EXPECT_EQ(plainDecimal(-1.5), "-1.5");
    EXPECT_EQ(plainDecimal(100), "100");
    EXPECT_EQ(plainDecimal(0.1), "0.1");
    EXPECT_EQ(plainDecimal(1.0 / 3), "0.333333333333");
    EXPECT_EQ(plainDecimal(2.0 / 3), "0.666666666667");
    EXPECT_EQ(plainDecimal(-200.0 / 3), "-66.6666666667");
    EXPECT_EQ(plainDecimal(1234.567890123456), "1234.56789012");
    EXPECT_EQ(plainDecimal(0.000123456789012345), "0.000123456789012");
    EXPECT_EQ(plainDecimal(9.99999999999999), "10");
    EXPECT_EQ(plainDecimal(123456789012.4), "123456789012");
    EXPECT_EQ(plainDecimal(999999999999.7), "1000000000000");
    EXPECT_EQ(plainDecimal(1234567890123456), "1234567890120000");
    EXPECT_EQ(plainDecimal(-1e12), "-1000000000000");
    EXPECT_EQ(plainDecimal(1e22), "10000000000000000000000");
    EXPECT_EQ(plainDecimal(1.7e308), "17" + std::string(307, '0'));
    EXPECT_EQ(plainDecimal(1e-9), "0.000000001");
    EXPECT_EQ(plainDecimal(3e-16), "0");
    EXPECT_EQ(plainDecimal(-3e-16), "0");
    EXPECT_EQ(plainDecimal(5e-324), "0");
    EXPECT_EQ(plainDecimal(kNaN), "");
    EXPECT_EQ(plainDecimal(kEndless), "");
    EXPECT_EQ(plainDecimal(-kEndless), "");
}

TEST(PlainDecimal, ReadsBackToTwelveDigits) {
    std::mt19937_64 random(10);
    std::uniform_real_distribution<double> digits(-10, 10);
    for (int round = 0; round < 100'000; ++round) {
        const double value = digits(random) * std::pow(10.0, static_cast<int>(random() % 24) - 4);
        const std::string text = plainDecimal(value);
        ASSERT_EQ(text.find_first_not_of("-.0123456789"), std::string::npos) << text;
        const double read = std::strtod(text.c_str(), nullptr);
        ASSERT_LE(std::abs(read - value), std::abs(value) * 5.0001e-12 + 5e-16) << text;
        const bool trimmed =
            text.find('.') == std::string::npos || (text.back() != '0' && text.back() != '.');
        ASSERT_TRUE(trimmed) << text;
    }
}

}  // namespace
}  // namespace bolthole
