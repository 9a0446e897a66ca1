// What the change sheet says of what nobody measured, and of changes that can't be told or mean nothing.
#include <gmock/gmock.h>

#include "geometry/car/starting_numbers.h"
#include "tests/support/plain_car.h"
#include "widgets/papers/change_sheet_words.h"

namespace bolthole {
namespace {

SheetWords toldBetween(const Car& before, const Car& after) {
    return sheetWordsOf(compareCars(before, after), {Units::inch, InchStyle::sixteenths});
}

// Half a hundredth of an inch is no order for a new link.
// What to set is a tape's mark near the length, and where a length comes from decides whether to trust it.
TEST(ChangeSheet, SaysNearlyAndWhatNobodyTaped) {
    Car before = plainCar();
    before.links[1].length = 10 * kMetresPerInch;
    Car after = before;
    after.links[1].length = 10.51 * kMetresPerInch;
    const auto cells = [&] { return toldBetween(before, after).lengths.rows.at(0).cells; };
    EXPECT_EQ(cells()[1], "10 in");
    EXPECT_EQ(cells()[2], "≈ 10 1/2 in");
    setOrigin(before, {.field = Field::linkLength, .link = 1}, Origin::workedOut);
    EXPECT_EQ(cells()[1], "10 in, not measured");
    before.links[1].length.reset();
    EXPECT_TRUE(cells()[1].endsWith(" by its holes")) << cells()[1].toStdString();
}

// A change that can't be told is not set in bold as one to expect; the page says below that it can't be told.
TEST(ChangeSheet, WhatCannotBeToldIsNotBold) {
    Car before = plainCar();
    Car after = before;
    after.links[1].chassis.holes[0].at.z() += 0.03 * kMetresPerInch;
    const SheetWords words = toldBetween(before, after);
    const std::string said = words.accuracy.join(' ').toStdString();
    ASSERT_THAT(said, testing::HasSubstr("less than we can measure"));
    int untold = 0;
    for (const FigureLine& line : words.figures) {
        const bool isUntold = line.tells[0] && !line.isSure[0];
        const std::string name = line.name.section(',', 0, -2).toLower().toStdString();
        EXPECT_EQ(isUntold, said.find(name, said.find("less than we can measure")) != std::string::npos)
            << name;
        untold += isUntold ? 1 : 0;
    }
    EXPECT_GT(untold, 0);
}

TEST(ChangeSheet, AnInstantCenterThatWentThroughInfinityHasNoChange) {
    Car before = plainCar();
    Car after = before;
    after.links[1].chassis.holes[0].at.z() += 12 * kMetresPerInch;
    const Trace from = computeTrace(before);
    const Trace to = computeTrace(after);
    ASSERT_LT(from.ride[Figure::icX] * to.ride[Figure::icX], 0);
    for (const FigureLine& line : toldBetween(before, after).figures) {
        if (line.name.startsWith("Instant center")) {
            EXPECT_EQ(line.cells[0][2], QString(QChar(0x2014)));
        }
    }
    for (const FigureChange& change : changesAt(&from.ride, &to.ride)) {
        const bool isCenter = change.figure == Figure::icX || change.figure == Figure::icZ;
        EXPECT_EQ(change.isThroughInfinity, isCenter);
    }
}

}  // namespace
}  // namespace bolthole
