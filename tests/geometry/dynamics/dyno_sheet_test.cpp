// Dyno sheets as they are copied: columns, headings, units, and every row that can't be read by its line.
#include "geometry/dynamics/dyno_sheet.h"

#include <gmock/gmock.h>

#include <string>

#include "geometry/units/units.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

// N m for a pound-force foot: NIST Special Publication 811, 2008, appendix B.8, 1.355 818 (from memory).
constexpr double kPoundFoot = 1.355818;

std::vector<TorquePoint> points(std::initializer_list<std::pair<double, double>> rows) {
    std::vector<TorquePoint> made;
    for (const auto& [rpm, torque] : rows) {
        made.push_back({rpm * kRpm, torque});
    }
    return made;
}

TEST(DynoSheet, RowsArePartedByTabsSemicolonsCommasOrSpaces) {
    const std::vector<TorquePoint> expected = points({{2000, 300}, {2500, 320.5}});
    for (const char* text : {"2000\t300\n2500\t320.5", "2000;300\r\n2500;320,5\r\n", "2000,300\n2500,320.5\n",
                             "2000 300\n2500   320.5", "  2000, 300\n\n  2500, 320.5\n",
                             "2,000\t300\n2,500\t320,5", "2000 300\n2500 320,5"}) {
        const DynoSheet sheet = readDynoSheet(text, TorqueUnit::newtonMetres);
        EXPECT_THAT(sheet.refused, IsEmpty()) << text;
        EXPECT_EQ(sheet.torque, expected) << text;
    }
}

TEST(DynoSheet, PoundFeetAreConverted) {
    const DynoSheet sheet = readDynoSheet("3000 400", TorqueUnit::poundFeet);
    ASSERT_THAT(sheet.torque, SizeIs(1));
    EXPECT_NEAR(sheet.torque[0].torque, 400 * kPoundFoot, 1e-3);
}

TEST(DynoSheet, ItsHeadingSaysColumnsAndUnit) {
    const DynoSheet sheet = readDynoSheet(
        "Time,Power (hp),Torque (lb-ft),Engine RPM,AFR\n"
        "0.1,171,300,3000,12.8\n0.2,236,310,4000,12.9\n",
        TorqueUnit::newtonMetres);
    EXPECT_TRUE(sheet.unitIsSaid);
    EXPECT_EQ(sheet.unit, TorqueUnit::poundFeet);
    ASSERT_THAT(sheet.torque, SizeIs(2));
    EXPECT_NEAR(sheet.torque[1].torque, 310 * kPoundFoot, 1e-3);
    EXPECT_DOUBLE_EQ(sheet.torque[1].speed, 4000 * kRpm);
    EXPECT_EQ(readDynoSheet("rpm\tN\u00B7m\n3000\t400", TorqueUnit::poundFeet).unit,
              TorqueUnit::newtonMetres);
}

TEST(DynoSheet, OneBadRowRefusesAllAndIsToldByItsLine) {
    const DynoSheet sheet = readDynoSheet("rpm torque\n2000 300\n2500 x\n2400\n3000 320\n3000 321\n99999 300",
                                          TorqueUnit::newtonMetres);
    EXPECT_THAT(sheet.torque, IsEmpty()) << "nothing half taken";
    EXPECT_THAT(sheet.refused,
                ElementsAre(testing::Field(&RefusedRow::line, 3), testing::Field(&RefusedRow::line, 4),
                            testing::Field(&RefusedRow::line, 6), testing::Field(&RefusedRow::line, 7)));
    EXPECT_THAT(sheet.refused[0].reason, HasSubstr("a speed in rpm and a torque"));
    EXPECT_THAT(sheet.refused[2].reason, HasSubstr("does not rise"));
    EXPECT_THAT(sheet.refused[3].reason, HasSubstr("range"));
}

TEST(DynoSheet, NumbersThatAreNoneAreRefused) {
    for (const char* text : {"nan 300", "2000 inf", "2000 1e400", "2000 3e2", "0x10 300", "1,2,3 300"}) {
        const DynoSheet sheet = readDynoSheet(std::string("1000 100\n") + text, TorqueUnit::newtonMetres);
        EXPECT_THAT(sheet.torque, IsEmpty()) << text;
        EXPECT_THAT(sheet.refused, SizeIs(1)) << text;
    }
}

TEST(DynoSheet, NothingIsNoSheetAndTooMuchIsRefused) {
    EXPECT_THAT(readDynoSheet("", TorqueUnit::poundFeet).refused, IsEmpty());
    EXPECT_THAT(readDynoSheet(" \n\n", TorqueUnit::poundFeet).torque, IsEmpty());
    std::string text;
    for (std::size_t row = 0; row <= kMaxTorqueRows; ++row) {
        text += std::to_string(1000 + row) + " 300\n";
    }
    const DynoSheet sheet = readDynoSheet(text, TorqueUnit::poundFeet);
    EXPECT_THAT(sheet.torque, IsEmpty());
    ASSERT_THAT(sheet.refused, SizeIs(1));
    EXPECT_THAT(sheet.refused[0].reason, HasSubstr("at most 200 rows, found 201"));
}

}  // namespace
}  // namespace bolthole
