#include "widgets/scales/stable_range.h"

#include <gmock/gmock.h>

#include <cmath>
#include <limits>

namespace bolthole {
namespace {

TEST(StableRange, GrowsAtOnceAndShrinksOnlyWhenDataAreMuchSmaller) {
    const double none = -std::numeric_limits<double>::infinity();
    StableRange range(5.0);
    range.follow(100, 140, 1, none);
    EXPECT_LE(range.low(), 100);
    EXPECT_GE(range.high(), 140);
    EXPECT_FALSE(range.follow(105, 135, 1, none));
    EXPECT_FALSE(range.follow(108, 132, 1, none));
    EXPECT_TRUE(range.follow(100, 160, 1, none));
    EXPECT_GE(range.high(), 160);
    EXPECT_TRUE(range.follow(120, 125, 1, none));
    EXPECT_LT(range.high() - range.low(), 20);
    EXPECT_FALSE(range.follow(std::nan(""), 1, 1, none));
}

TEST(StableRange, DataThatGoToAndFroSettleIt) {
    const double none = -std::numeric_limits<double>::infinity();
    StableRange range(5.0);
    range.follow(100, 140, 1, none);
    EXPECT_TRUE(range.follow(130, 170, 1, none));
    EXPECT_LE(range.low(), 100);
    EXPECT_FALSE(range.follow(100, 140, 1, none));
    EXPECT_FALSE(range.follow(130, 170, 1, none));
    EXPECT_TRUE(range.follow(400, 440, 1, none));  // too far off to keep both in sight
    EXPECT_GT(range.low(), 300);
}

// A mistake typed and undone: the axis is as without it, however small the mistake was.
TEST(StableRange, SettledDataDontKeepTheRoomOthersNeeded) {
    const double none = -std::numeric_limits<double>::infinity();
    StableRange without(5.0);
    without.settle(100, 140, 1, none);
    for (const double most : {170.0, 190.0, 240.0, 2000.0}) {
        StableRange range(5.0);
        range.settle(100, 140, 1, none);
        range.settle(100, most, 1, none);
        EXPECT_GE(range.high(), most);
        range.settle(100, 140, 1, none);
        EXPECT_EQ(range.low(), without.low()) << most;
        EXPECT_EQ(range.high(), without.high()) << most;
    }
    EXPECT_FALSE(without.settle(101, 138, 1, none)) << "it keeps still for less";
    EXPECT_FALSE(without.settle(std::nan(""), 1, 1, none));
}

TEST(StableRange, AFlatCurveIsNotBlownUpAndTheFloorHolds) {
    const double none = -std::numeric_limits<double>::infinity();
    StableRange flat(5.0);
    flat.follow(121.0, 121.001, 1, none);
    EXPECT_GE(flat.high() - flat.low(), 5.0);
    StableRange joint(0.5);
    joint.follow(0.0, 0.02, 1, 0.0);
    EXPECT_EQ(joint.low(), 0.0);
    EXPECT_GE(joint.high(), 0.5);
}

}  // namespace
}  // namespace bolthole
