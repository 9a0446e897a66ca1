// Numbers typed as one divided by another: half of what a tape reads across a tire.
#include <gmock/gmock.h>

#include "geometry/units/text.h"

namespace bolthole {
namespace {

std::optional<double> typedLength(const char* text, Units units = Units::inch) {
    return readTyped(text, Quantity::length, units).value;
}

TEST(TypedDivision, DividesWhereTheSlashStandsByItself) {
    constexpr double kOneInch = 0.0254;
    EXPECT_DOUBLE_EQ(typedLength("26 3/4 / 2").value(), 13.375 * kOneInch);
    EXPECT_DOUBLE_EQ(typedLength("26 3/4 in / 2").value(), 13.375 * kOneInch);
    EXPECT_DOUBLE_EQ(typedLength("26.75 / 2").value(), 13.375 * kOneInch);
    EXPECT_DOUBLE_EQ(typedLength("27 / 2").value(), 13.5 * kOneInch);
    EXPECT_DOUBLE_EQ(typedLength("3 / 8").value(), 0.375 * kOneInch);
    EXPECT_DOUBLE_EQ(typedLength("-27 / 2").value(), -13.5 * kOneInch);
    EXPECT_DOUBLE_EQ(typedLength("9 ft / 4").value(), 27 * kOneInch);
    EXPECT_DOUBLE_EQ(typedLength("1 ft 2 1/2 in / 2").value(), 7.25 * kOneInch);
    EXPECT_DOUBLE_EQ(typedLength("680 / 2", Units::metric).value(), 0.34);
    EXPECT_DOUBLE_EQ(typedLength("680 mm / 2").value(), 0.34);
    EXPECT_DOUBLE_EQ(readTyped("3100 / 2", Quantity::mass, Units::metric).value.value(), 1550);
}

TEST(TypedDivision, RefusesWhatHasNoValueOrIsNoDivision) {
    const auto refusal = [](const char* text) {
        return readTyped(text, Quantity::length, Units::inch).problem;
    };
    EXPECT_THAT(refusal("26 3/4 / 0"), testing::HasSubstr("divided by 0"));
    EXPECT_THAT(refusal("26 3/4 / "), testing::HasSubstr("missing after the '/'"));
    EXPECT_THAT(refusal("26 3/4 / x"), testing::HasSubstr("missing after the '/'"));
    EXPECT_THAT(refusal("26 3/4/2"), testing::HasSubstr("left over"));
    EXPECT_THAT(refusal("26 3/4 / 2 / 2"), testing::HasSubstr("left over"));
}

}  // namespace
}  // namespace bolthole
