// Numbers in cells. What readCsv() makes of whole files stands with the commands that use it.
#include "geometry/units/csv.h"

#include <gtest/gtest.h>

namespace bolthole {
namespace {

TEST(CsvNumber, IsANumberAndNothingElse) {
    EXPECT_EQ(csvNumber("2.5"), 2.5);
    EXPECT_EQ(csvNumber("-1e3"), -1000);
    for (const char* none : {"", " 1", "1 ", "1,5", "+1", "2.5 s", "nan", "inf", "1e999", "0x10"}) {
        EXPECT_FALSE(csvNumber(none)) << none;
    }
}

}  // namespace
}  // namespace bolthole
