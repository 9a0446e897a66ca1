// Forces, torques, rates, volumes, densities, times and speeds: their units, shown and typed.
#include <gmock/gmock.h>

#include <array>
#include <cmath>
#include <random>
#include <string>

#include "geometry/units/text.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

// NIST SP 811, Guide for the Use of the International System of Units, App. B, from memory but for lbf and
// lbf/in, whose factors were read.
TEST(ForceUnits, FollowThePublishedFactors) {
    const auto inch = [](Quantity quantity) { return shownUnit(quantity, Units::inch); };
    EXPECT_DOUBLE_EQ(inch(Quantity::force), 4.4482216152605);    // N
    EXPECT_DOUBLE_EQ(inch(Quantity::rate), 175.12683524647636);  // N/m
    EXPECT_NEAR(inch(Quantity::torque), 1.355818, 5e-7);         // N m
    EXPECT_NEAR(inch(Quantity::volume), 3.785412e-3, 5e-10);     // m^3
    EXPECT_NEAR(inch(Quantity::density), 1.198264e2, 5e-5);      // kg/m^3
    EXPECT_NEAR(inch(Quantity::speed), 1.047198e-1, 5e-8);       // rad/s of 1 rpm
    EXPECT_NEAR(inch(Quantity::rollRate), 1.355818 * 180 / std::acos(-1.0), 5e-5);
    EXPECT_DOUBLE_EQ(fileUnit(Quantity::rate), 1000);     // N/mm
    EXPECT_DOUBLE_EQ(fileUnit(Quantity::volume), 0.001);  // L
}

double read(std::string_view text, Quantity quantity, Units units) {
    const TypedNumber typed = readTyped(text, quantity, units);
    EXPECT_TRUE(typed.value) << text << ": " << typed.problem;
    return typed.value.value_or(std::nan(""));
}

TEST(ForceUnits, AreTypedAsTheTradeWritesThem) {
    constexpr double kPound = 4.4482216152605;
    EXPECT_DOUBLE_EQ(read("250 lb", Quantity::force, Units::metric), 250 * kPound);
    EXPECT_DOUBLE_EQ(read("250 lbf", Quantity::force, Units::metric), 250 * kPound);
    EXPECT_DOUBLE_EQ(read("1.2 kN", Quantity::force, Units::inch), 1200);
    EXPECT_DOUBLE_EQ(read("175", Quantity::rate, Units::inch), 175 * kPound / 0.0254);
    for (const char* text : {"175 lb/in", "175 lbf/in", "175lb/in"}) {
        EXPECT_DOUBLE_EQ(read(text, Quantity::rate, Units::metric), 175 * kPound / 0.0254) << text;
    }
    EXPECT_DOUBLE_EQ(read("31 N/mm", Quantity::rate, Units::inch), 31'000);
    for (const char* text : {"400 lb-ft", "400 ft-lb", "400 lbf·ft", "400 lbft"}) {
        EXPECT_NEAR(read(text, Quantity::torque, Units::metric), 400 * kPound * 0.3048, 1e-9) << text;
    }
    EXPECT_DOUBLE_EQ(read("540 N·m", Quantity::torque, Units::inch), 540);
    EXPECT_DOUBLE_EQ(read("540 Nm", Quantity::torque, Units::inch), 540);
    EXPECT_DOUBLE_EQ(read("18 1/2 gal", Quantity::volume, Units::metric), 18.5 * 0.003785411784);
    EXPECT_DOUBLE_EQ(read("60 L", Quantity::volume, Units::inch), 0.06);
    EXPECT_DOUBLE_EQ(read("0.745 kg/L", Quantity::density, Units::inch), 745);
    EXPECT_DOUBLE_EQ(read("1.62", Quantity::time, Units::inch), 1.62);
    EXPECT_DOUBLE_EQ(read("6200 rpm", Quantity::speed, Units::inch), 6200 * kRpm);
    EXPECT_NEAR(read("200 lbf·ft/°", Quantity::rollRate, Units::metric),
                200 * kPound * 0.3048 * 180 / std::acos(-1.0), 1e-6);
    EXPECT_DOUBLE_EQ(read("40 lb", Quantity::mass, Units::metric), 40 * 0.45359237);  // still a mass here
}

TEST(ForceUnits, OfAnotherKindAreRefused) {
    const auto problem = [](std::string_view text, Quantity quantity) {
        return readTyped(text, quantity, Units::inch).problem;
    };
    EXPECT_THAT(problem("175 lb", Quantity::rate), HasSubstr("does not fit here: type a rate"));
    EXPECT_THAT(problem("31 N/mm", Quantity::force), HasSubstr("does not fit here: type a force"));
    EXPECT_THAT(problem("3 kg", Quantity::force), HasSubstr("does not fit here"));
    EXPECT_THAT(problem("3 lb/ft", Quantity::rate), HasSubstr("'lb/ft' is not a unit known here"));
    EXPECT_THAT(problem("1,62", Quantity::time), HasSubstr("comma"));
}

// What a field shows, with its unit beside it, is taken back as the same text.
TEST(ForceUnits, WhatIsShownCanBeTyped) {
    constexpr std::array kQuantities{Quantity::force,  Quantity::torque,  Quantity::rate, Quantity::rollRate,
                                     Quantity::volume, Quantity::density, Quantity::time, Quantity::speed};
    std::mt19937_64 random(5);
    std::uniform_real_distribution<double> size(0.01, 9000);
    for (const Quantity quantity : kQuantities) {
        for (const Units units : {Units::inch, Units::metric}) {
            for (int round = 0; round < 200; ++round) {
                const double value = size(random) * shownUnit(quantity, units);
                const std::string shown = fieldText(value, quantity, {units, InchStyle::sixteenths});
                const double back = read(withUnit(shown, quantity, units), quantity, units);
                ASSERT_EQ(fieldText(back, quantity, {units, InchStyle::sixteenths}), shown);
                ASSERT_EQ(read(shown, quantity, units), back);
            }
        }
    }
}

}  // namespace
}  // namespace bolthole
