#include "geometry/units/text.h"

#include <gmock/gmock.h>

#include <clocale>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <locale>
#include <random>
#include <string>
#include <vector>

#include "geometry/units/units.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

struct Typed {
    std::string text;
    double shown;  // in the unit the row's test states
};

void expectInches(const std::string& text, double inches) {
    const TypedNumber read = readTyped(text, Quantity::length, Units::inch);
    ASSERT_TRUE(read.value.has_value()) << "'" << text << "': " << read.problem;
    EXPECT_DOUBLE_EQ(*read.value, inches * kInch) << "'" << text << "'";
    EXPECT_EQ(read.problem, "");
}

void expectRefused(const std::string& text, const std::string& reason, Quantity quantity = Quantity::length,
                   Units units = Units::inch) {
    const TypedNumber read = readTyped(text, quantity, units);
    EXPECT_FALSE(read.value.has_value()) << "'" << text << "' read as " << read.value.value_or(0);
    EXPECT_THAT(read.problem, HasSubstr(reason)) << "'" << text << "'";
}

TEST(ReadTyped, ReadsInchesAsPeopleTypeThem) {
    const std::vector<Typed> table{
        {"12 3/8", 12.375},
        {"12-3/8", 12.375},
        {"12  3/8 ", 12.375},
        {" 12 3 / 8", 12.375},
        {"12\t3/8", 12.375},
        {"-12 3/8", -12.375},
        {"-12-3/8", -12.375},
        {"- 12 3/8", -12.375},
        {"+12 3/8", 12.375},
        {"12.375", 12.375},
        {"0012.3750", 12.375},
        {".5", 0.5},
        {"-.5", -0.5},
        {"5.", 5},
        {"3/8", 0.375},
        {"-3/8", -0.375},
        {"9/8", 1.125},
        {"12 0/8", 12},
        {"0", 0},
        {"-0", 0},
        {"12 3/8 in", 12.375},
        {"12 3/8in", 12.375},
        {"12 3/8 in.", 12.375},
        {"12 3/8 IN", 12.375},
        {"12 3/8 inches", 12.375},
        {"1 inch", 1},
        {"12 3/8\"", 12.375},
        {"12 3/8 \"", 12.375},
    };
    for (const Typed& row : table) {
        expectInches(row.text, row.shown);
    }
}

TEST(ReadTyped, ReadsFeetAndInches) {
    const std::vector<Typed> table{
        {"1 ft 2 1/2 in", 14.5},
        {"1ft 2.5in", 14.5},
        {"1' 2 1/2\"", 14.5},
        {"1'2 1/2\"", 14.5},
        {"1'-2 1/2\"", 14.5},
        {"1 ft", 12},
        {"9'", 108},
        {"9 feet 8 inches", 116},
        {"-1 ft 2 in", -14},
        {"1 1/2 ft", 18},
        {"1 ft 3/8 in", 12.375},
        {"1' .5\"", 12.5},
    };
    for (const Typed& row : table) {
        expectInches(row.text, row.shown);
    }
}

TEST(ReadTyped, ReadsTypographicSigns) {
    const std::vector<Typed> table{
        {"\u221212 3/8", -12.375},                                                    // minus sign
        {"12\u20133/8", 12.375},                                                      // en dash
        {"12\u00A03/8", 12.375},                                                      // no-break space
        {"12\u202F3/8", 12.375},                                                      // narrow no-break space
        {"12 3\u20448", 12.375},                                                      // fraction slash
        {"12\u215C", 12.375},                                                         // vulgar three eighths
        {"12 \u00BD", 12.5},           {"-\u00BC", -0.25}, {"12 3/8\u2033", 12.375},  // double prime
        {"12 3/8\u201D", 12.375},       // right double quotation mark
        {"1\u2032 2 1/2\u2033", 14.5},  // prime
        {"1\u2019 2\u201D", 14},        // right single quotation mark
    };
    for (const Typed& row : table) {
        expectInches(row.text, row.shown);
    }
}

TEST(ReadTyped, ReadsMetricUnitsInInchFields) {
    const std::vector<Typed> table{{"314 mm", 0.314},       {"314mm", 0.314},    {"31.4 cm", 0.314},
                                   {"0.314 m", 0.314},      {"-314 mm", -0.314}, {"314 millimeters", 0.314},
                                   {"314.325 mm", 0.314325}};
    for (const Typed& row : table) {
        for (const Units units : {Units::inch, Units::metric}) {
            const TypedNumber read = readTyped(row.text, Quantity::length, units);
            ASSERT_TRUE(read.value.has_value()) << row.text << ": " << read.problem;
            EXPECT_DOUBLE_EQ(*read.value, row.shown) << row.text;
        }
    }
}

TEST(ReadTyped, TakesTheShownUnitWhereNoneIsTyped) {
    EXPECT_EQ(readTyped("314", Quantity::length, Units::metric).value, 0.314);
    EXPECT_EQ(readTyped("314.5", Quantity::length, Units::metric).value, 0.3145);
    EXPECT_EQ(readTyped("12 3/8 in", Quantity::length, Units::metric).value, 0.314325);
    EXPECT_EQ(readTyped("400", Quantity::mass, Units::metric).value, 400.0);
    EXPECT_EQ(readTyped("100", Quantity::mass, Units::inch).value, 45.359237);
    EXPECT_EQ(readTyped("45", Quantity::percent, Units::inch).value, 45.0);
    EXPECT_EQ(readTyped("-0.5", Quantity::ratio, Units::metric).value, -0.5);
    EXPECT_EQ(readTyped("81", Quantity::count, Units::inch).value, 81.0);
}

TEST(ReadTyped, GivesTheDoubleNearestToTheFractionMeant) {
    // 12 3/8 in is 314.325 mm exactly.
    EXPECT_EQ(readTyped("12 3/8", Quantity::length, Units::inch).value, 0.314325);
    EXPECT_EQ(readTyped("20 1/4", Quantity::length, Units::inch).value, 0.51435);
    EXPECT_EQ(readTyped("1 ft 2 1/2 in", Quantity::length, Units::inch).value, 0.3683);
    EXPECT_EQ(readTyped("1/16", Quantity::length, Units::inch).value, 0.0015875);
}

TEST(ReadTyped, ReadsAnglesAndWeights) {
    for (const char* text : {"2", "2\u00B0", "2 \u00B0", "2\u00BA", "2 deg", "2 degrees", "2.0", "4/2"}) {
        const TypedNumber read = readTyped(text, Quantity::angle, Units::metric);
        ASSERT_TRUE(read.value.has_value()) << text << ": " << read.problem;
        EXPECT_DOUBLE_EQ(*read.value, 2 * kRadiansPerDegree) << text;
    }
    EXPECT_DOUBLE_EQ(readTyped("-2 1/2\u00B0", Quantity::angle, Units::inch).value.value(),
                     -2.5 * kRadiansPerDegree);
    EXPECT_EQ(readTyped("18 kg", Quantity::mass, Units::inch).value, 18.0);
    EXPECT_DOUBLE_EQ(readTyped("40 lb", Quantity::mass, Units::metric).value.value(), 40 * 0.45359237);
    EXPECT_DOUBLE_EQ(readTyped("40 lbs.", Quantity::mass, Units::inch).value.value(), 40 * 0.45359237);
    EXPECT_EQ(readTyped("45 %", Quantity::percent, Units::inch).value, 45.0);
}

TEST(ReadTyped, RefusesCommasWithTheHint) {
    const std::string hint = "type 12.5 or 12 1/2";
    for (const char* text : {"12,5", "1,200", "1,200.5", "12,", ",5", "1.200,5", "12, 3/8", "1,2 mm"}) {
        expectRefused(text, hint);
        expectRefused(text, hint, Quantity::length, Units::metric);
    }
    expectRefused("1,200 lb", hint, Quantity::mass);
    expectRefused("2,5", hint, Quantity::angle);
}

TEST(ReadTyped, RefusesWhatIsNoNumber) {
    expectRefused("", "type a length, such as 12 3/8 in or 314 mm");
    expectRefused("   ", "type a length");
    expectRefused("\u00A0", "type a length");
    expectRefused("", "type an angle", Quantity::angle);
    expectRefused("abc", "'abc' is not a number");
    expectRefused("in", "'in' is not a number");
    expectRefused("inf", "'inf' is not a number");
    expectRefused("-inf", "'inf' is not a number");
    expectRefused("infinity", "is not a number");
    expectRefused("nan", "'nan' is not a number");
    expectRefused(".", "is not a number");
    expectRefused("-", "is not a number");
    expectRefused("--3", "is not a number");
    expectRefused("+-3", "is not a number");
    expectRefused("/8", "is not a number");
    expectRefused("1e5", "without an exponent");
    expectRefused("1E5", "without an exponent");
    expectRefused("1e-5", "without an exponent");
    expectRefused("0x1F", "'x' is not a unit known here");
    expectRefused("1.2.3", "more than one decimal point");
    expectRefused("1..2", "more than one decimal point");
    expectRefused(std::string(101, '1'), "too long");
    expectRefused(std::string("12\0003", 4), "left over");
    expectRefused("12\xff", "left over");
}

TEST(ReadTyped, RefusesBrokenFractions) {
    expectRefused("12 3", "two numbers side by side");
    expectRefused("1 200", "two numbers side by side");
    expectRefused("12-3", "two numbers side by side");
    expectRefused("12 3 mm", "two numbers side by side");
    expectRefused("12 .5", "two numbers side by side");
    expectRefused("12 9/8", "must be less than 1");
    expectRefused("12 8/8", "must be less than 1");
    expectRefused("3/0", "over 0");
    expectRefused("12 3/0", "over 0");
    expectRefused("3/", "missing after the '/'");
    expectRefused("12 3/", "missing after the '/'");
    expectRefused("3/x", "missing after the '/'");
    expectRefused("3/-8", "missing after the '/'");
    expectRefused("1.5/2", "made of whole numbers");
    expectRefused("3/8.5", "made of whole numbers");
    expectRefused("12.5 3/8", "not both");
    expectRefused("1/2/3", "left over");
    expectRefused("12 3/8 1/2", "left over");
    expectRefused("1/2 3/8", "left over");
    expectRefused("12 -3/8", "left over");
    expectRefused("12 - 3/8", "left over");
    expectRefused("12 + 3/8", "left over");
}

TEST(ReadTyped, RefusesFractionsWithoutAUnitWhereMillimetersAreShown) {
    expectRefused("12 3/8", "Add in or mm", Quantity::length, Units::metric);
    expectRefused("3/8", "Add in or mm", Quantity::length, Units::metric);
    EXPECT_EQ(readTyped("3/8 mm", Quantity::length, Units::metric).value, 0.000375);
    EXPECT_EQ(readTyped("12 1/2", Quantity::mass, Units::metric).value, 12.5);
}

TEST(ReadTyped, RefusesUnitsThatDoNotFit) {
    expectRefused("12 lb", "'lb' does not fit here: type a length");
    expectRefused("12 kg", "'kg' does not fit here");
    expectRefused("12\u00B0", "'deg' does not fit here");
    expectRefused("12 %", "'%' does not fit here");
    expectRefused("12 mm", "'mm' does not fit here: type a weight", Quantity::mass);
    expectRefused("12 in", "does not fit here: type an angle", Quantity::angle);
    expectRefused("12\"", "does not fit here", Quantity::angle);
    expectRefused("1'200", "does not fit here", Quantity::mass);
    expectRefused("81 mm", "does not fit here: type a whole number", Quantity::count);
    expectRefused("12 furlongs", "'furlongs' is not a unit known here");
    expectRefused("12 mmm", "'mmm' is not a unit");
    expectRefused("12 in in", "left over");
    expectRefused("12 in 3", "left over");
    expectRefused("12 mm 3 in", "left over");
    expectRefused("2 in 1 ft", "left over");
    expectRefused("$12", "is not a number");
    expectRefused("12 $", "left over");
}

TEST(ReadTyped, RefusesFeetFollowedByAnythingButInches) {
    expectRefused("1 ft 2", "after feet come inches");
    expectRefused("1'200", "after feet come inches");
    expectRefused("1 ft 2 mm", "after feet come inches");
    expectRefused("1 ft 2 ft", "after feet come inches");
    expectRefused("1 ft 2 lb", "after feet come inches");
    expectRefused("1 ft -2 in", "left over");
    expectRefused("1 ft x", "left over");
    expectRefused("1 ft 2 in 3", "left over");
    expectRefused("1 ft 2 3", "two numbers side by side");
}

TEST(ReadTyped, EveryRefusalGivesAReasonAndEveryValueIsFinite) {
    const std::string alphabet = "0123456789 ./-+'\",eminftlbkgd%\xC2\xB0\xE2\x88\x92x";
    std::mt19937_64 random(7);
    for (int round = 0; round < 200'000; ++round) {
        std::string text;
        for (std::size_t length = random() % 9; length > 0; --length) {
            text += alphabet[random() % alphabet.size()];
        }
        const auto quantity = static_cast<Quantity>(random() % 6);
        const TypedNumber read = readTyped(text, quantity, random() % 2 == 0 ? Units::inch : Units::metric);
        ASSERT_NE(read.value.has_value(), !read.problem.empty()) << text;
        ASSERT_TRUE(std::isfinite(read.value.value_or(0))) << text;
        ASSERT_TRUE(!read.value || text.find_first_of("0123456789") != std::string::npos) << text;
        ASSERT_TRUE(!read.value || text.find(',') == std::string::npos) << text;
    }
}

TEST(ReadTyped, AgreesWithTheCLibraryOnPlainDecimals) {
    std::mt19937_64 random(8);
    for (int round = 0; round < 20'000; ++round) {
        const std::string text =
            std::to_string(random() % 100'000) + "." + std::to_string(random() % 1'000'000'000);
        const double expected = std::strtod(text.c_str(), nullptr);
        ASSERT_EQ(readTyped(text, Quantity::ratio, Units::inch).value, expected) << text;
    }
}

TEST(FieldText, ShowsInchesAsOnATape) {
    const auto text = [](double inches) {
        return fieldText(inches * kInch, Quantity::length, {Units::inch, InchStyle::sixteenths});
    };
    EXPECT_EQ(text(12.375), "12 3/8");
    EXPECT_EQ(text(12.5), "12 1/2");
    EXPECT_EQ(text(12.0625), "12 1/16");
    EXPECT_EQ(text(12.15625), "12 5/32");
    EXPECT_EQ(text(12.015625), "12 1/64");
    EXPECT_EQ(text(116), "116");
    EXPECT_EQ(text(0), "0");
    EXPECT_EQ(text(-0.0), "0");
    EXPECT_EQ(text(0.375), "3/8");
    EXPECT_EQ(text(-0.375), "-3/8");
    EXPECT_EQ(text(-12.375), "-12 3/8");
    EXPECT_EQ(text(12.37500001), "12 3/8") << "a rounding";
    EXPECT_EQ(text(12.3754), "\u2248 12 3/8");
    EXPECT_EQ(text(12.3746), "\u2248 12 3/8");
    EXPECT_EQ(text(21.3436), "\u2248 21 11/32");
    EXPECT_EQ(text(-21.3436), "\u2248 -21 11/32");
    EXPECT_EQ(text(11.9998), "\u2248 12");
    EXPECT_EQ(text(12.3), "\u2248 12 5/16");
    EXPECT_EQ(text(0.3937007874), "\u2248 13/32");
    EXPECT_EQ(text(0.0004), "\u2248 0") << "below an eighth a tape says too little";
    EXPECT_EQ(text(-0.0004), "\u2248 0");
    EXPECT_EQ(text(0.05), "0.05");
    EXPECT_EQ(text(0.0714285), "\u2248 0.071");
    EXPECT_EQ(text(1e9), "1000000000");
}

TEST(FieldText, FollowsTheStyle) {
    EXPECT_EQ(fieldText(12.375 * kInch, Quantity::length, {Units::inch, InchStyle::decimal}), "12.375");
    EXPECT_EQ(fieldText(12.33333 * kInch, Quantity::length, {Units::inch, InchStyle::decimal}),
              "\u2248 12.333");
    EXPECT_EQ(fieldText(12.15625 * kInch, Quantity::length, {Units::inch, InchStyle::thirtySeconds}),
              "12 5/32");
    const NumberStyle metric{Units::metric, InchStyle::sixteenths};
    EXPECT_EQ(fieldText(0.314321, Quantity::length, metric), "314.32");
    EXPECT_EQ(fieldText(0.3145, Quantity::length, metric), "314.5");
    EXPECT_EQ(fieldText(2.9464, Quantity::length, metric), "2946.4");
    EXPECT_EQ(fieldText(-0.000001, Quantity::length, metric), "0");
}

TEST(FieldText, ShowsOtherQuantities) {
    const NumberStyle inch;
    const NumberStyle metric{Units::metric, InchStyle::sixteenths};
    EXPECT_EQ(fieldText(1.5 * kRadiansPerDegree, Quantity::angle, inch), "1.5");
    EXPECT_EQ(fieldText(-3.257 * kRadiansPerDegree, Quantity::angle, metric), "-3.26");
    EXPECT_EQ(fieldText(850.26 * 0.45359237, Quantity::mass, inch), "850.3");
    EXPECT_EQ(fieldText(385.257, Quantity::mass, metric), "385.26");
    EXPECT_EQ(fieldText(81, Quantity::count, inch), "81");
    EXPECT_EQ(fieldText(1.0, Quantity::ratio, inch), "1");
    EXPECT_EQ(fieldText(-0.33333, Quantity::ratio, inch), "-0.3333");
    EXPECT_EQ(fieldText(45.5, Quantity::percent, inch), "45.5");
}

// Five digits of an inertia, in either unit; what is typed back shows the same again.
TEST(FieldText, ShowsOfAnInertiaWhatItCanMean) {
    NumberStyle metric;
    metric.units = Units::metric;
    EXPECT_EQ(fieldText(3300.123, Quantity::inertia, metric), "3300.1");
    EXPECT_EQ(fieldText(1.234, Quantity::inertia, metric), "1.234");
    NumberStyle inch;
    inch.units = Units::inch;
    EXPECT_EQ(fieldText(3300.0, Quantity::inertia, inch),
              "78310");  // lb ft^2: 3300/0.04214011 (NIST SP 811, from memory)
    const auto typed = readTyped("78310", Quantity::inertia, Units::inch);
    ASSERT_TRUE(typed.value);
    EXPECT_EQ(fieldText(*typed.value, Quantity::inertia, inch), "78310");
}

TEST(FieldText, IsEmptyForWhatIsNoNumber) {
    for (const double value : {kNaN, kEndless, -kEndless}) {
        EXPECT_EQ(fieldText(value, Quantity::length, {}), "");
        EXPECT_EQ(fieldText(value, Quantity::mass, {Units::metric, InchStyle::decimal}), "");
    }
}

// What is shown as it is, and the number to type on, read back to what is shown.
void expectShowsTheSameAgain(double value, Quantity quantity, NumberStyle style) {
    const std::string text = fieldText(value, quantity, style);
    const std::string exact = exactText(value, quantity, style);
    const TypedNumber read = readTyped(exact, quantity, style.units);
    ASSERT_TRUE(read.value.has_value()) << exact << ": " << read.problem;
    ASSERT_EQ(exactText(*read.value, quantity, style), exact) << value;
    if (text.find("\u2248") == std::string::npos) {
        ASSERT_EQ(fieldText(*read.value, quantity, style), text) << value;
    }
}

TEST(FieldText, ShowsNoFourDecimalsOfAnInch) {
    std::mt19937_64 random(5);
    std::uniform_real_distribution<double> size(-3, 3);
    for (int round = 0; round < 20'000; ++round) {
        const NumberStyle style{Units::inch, static_cast<InchStyle>(random() % 3)};
        const std::string text = fieldText(size(random), Quantity::length, style);
        const std::size_t point = text.find('.');
        ASSERT_TRUE(point == std::string::npos || text.size() - point <= 4) << text;
    }
}

TEST(FieldText, ExactlyIsWhatStandsInTheCar) {
    const NumberStyle style;
    EXPECT_EQ(exactText(21.3436 * kInch, Quantity::length, style), "21.3436");
    EXPECT_EQ(exactText(12.375 * kInch, Quantity::length, style), "12 3/8");
    EXPECT_EQ(exactText(0.01, Quantity::length, style), "0.393701");
    EXPECT_EQ(exactText(0.314321, Quantity::length, {Units::metric, InchStyle::sixteenths}), "314.32");
    EXPECT_FALSE(readTyped("\u2248 12 3/8", Quantity::length, Units::inch).value) << "never guessed";
}

TEST(FieldText, ReadsBackToWhatIsShown) {
    std::mt19937_64 random(9);
    std::uniform_real_distribution<double> size(-5, 5);
    for (int round = 0; round < 30'000; ++round) {
        const auto quantity = static_cast<Quantity>(random() % 6);
        const NumberStyle style{random() % 2 == 0 ? Units::inch : Units::metric,
                                static_cast<InchStyle>(random() % 3)};
        expectShowsTheSameAgain(size(random), quantity, style);
        expectShowsTheSameAgain(size(random) * 1e-4, quantity, style);
        expectShowsTheSameAgain(size(random) * 1e5, quantity, style);
    }
}

TEST(FieldText, ReadsBackEveryFractionExactly) {
    for (int parts = -3 * 64; parts <= 200 * 64; ++parts) {
        const double value = parts * 127.0 / (64 * 5000.0);
        for (const InchStyle inches : {InchStyle::sixteenths, InchStyle::thirtySeconds}) {
            const std::string text = fieldText(value, Quantity::length, {Units::inch, inches});
            ASSERT_EQ(text.find('.'), std::string::npos) << text;
            ASSERT_EQ(readTyped(text, Quantity::length, Units::inch).value, value) << text;
        }
    }
}

TEST(FigureText, RoundsForReading) {
    EXPECT_EQ(figureText(58.25 * kInch + 1e-9, Quantity::length, Units::inch), "58.3");
    EXPECT_EQ(figureText(58 * kInch, Quantity::length, Units::inch), "58.0");
    EXPECT_EQ(figureText(1.4796, Quantity::length, Units::metric), "1480");
    EXPECT_EQ(figureText(-0.52 * kRadiansPerDegree, Quantity::angle, Units::inch), "\u22120.5");
    EXPECT_EQ(figureText(-0.02 * kRadiansPerDegree, Quantity::angle, Units::inch), "0.0");
    EXPECT_EQ(figureText(121.4, Quantity::percent, Units::inch), "121");
    EXPECT_EQ(figureText(100, Quantity::mass, Units::inch), "220");
    EXPECT_EQ(figureText(100.4, Quantity::mass, Units::metric), "100");
    EXPECT_EQ(figureText(81, Quantity::count, Units::metric), "81");
    for (const double value : {kNaN, kEndless, -kEndless}) {
        EXPECT_EQ(figureText(value, Quantity::length, Units::inch), "\u2014");
        EXPECT_EQ(fineFigureText(value, Quantity::angle, Units::inch), "\u2014");
    }
}

TEST(FigureText, FineHasOneDigitMore) {
    EXPECT_EQ(fineFigureText(58.25 * kInch, Quantity::length, Units::inch), "58.25");
    EXPECT_EQ(fineFigureText(1.47964, Quantity::length, Units::metric), "1479.6");
    EXPECT_EQ(fineFigureText(-0.524 * kRadiansPerDegree, Quantity::angle, Units::inch), "\u22120.52");
    EXPECT_EQ(fineFigureText(121.44, Quantity::percent, Units::inch), "121.4");
}

TEST(UnitMark, NamesTheShownUnit) {
    EXPECT_EQ(unitMark(Quantity::length, Units::inch), "in");
    EXPECT_EQ(unitMark(Quantity::length, Units::metric), "mm");
    EXPECT_EQ(unitMark(Quantity::mass, Units::inch), "lb");
    EXPECT_EQ(unitMark(Quantity::mass, Units::metric), "kg");
    EXPECT_EQ(unitMark(Quantity::angle, Units::inch), "\u00B0");
    EXPECT_EQ(unitMark(Quantity::percent, Units::metric), "%");
    EXPECT_EQ(unitMark(Quantity::ratio, Units::inch), "");
    EXPECT_EQ(unitMark(Quantity::count, Units::inch), "");
    EXPECT_EQ(withUnit("12 3/8", Quantity::length, Units::inch), "12 3/8 in");
    EXPECT_EQ(withUnit("2.5", Quantity::angle, Units::inch), "2.5\u00B0");
    EXPECT_EQ(withUnit("81", Quantity::count, Units::inch), "81");
}

TEST(Text, KnowsNoLocale) {
    // Where the system has no such locale, this one with a decimal comma still shows what the C++ side does.
    struct Comma : std::numpunct<char> {
        char do_decimal_point() const override { return ','; }
        char do_thousands_sep() const override { return '.'; }
        std::string do_grouping() const override { return "\3"; }
    };
    const std::locale before = std::locale::global(std::locale(std::locale::classic(), new Comma));
    std::setlocale(LC_ALL, "de_DE.UTF-8");
    EXPECT_EQ(fieldText(2.9464123, Quantity::length, {Units::metric, InchStyle::decimal}), "2946.41");
    EXPECT_EQ(fieldText(1234.5 * kInch, Quantity::length, {}), "1234 1/2");
    EXPECT_EQ(plainDecimal(1234.5), "1234.5");
    EXPECT_EQ(figureText(30, Quantity::length, Units::metric), "30000");
    EXPECT_EQ(readTyped("1234.5", Quantity::ratio, Units::inch).value, 1234.5);
    std::setlocale(LC_ALL, "C");
    std::locale::global(before);
}

}  // namespace
}  // namespace bolthole
