// Slips of the pen in a pass.
#include "geometry/passes/pass_warnings.h"

#include <gtest/gtest.h>

namespace bolthole {
namespace {

Pass timed(double sixtyFoot) {
    Pass pass;
    pass.number = 1;
    pass.date = "2026-11-20";
    pass.sixtyFoot = sixtyFoot;
    return pass;
}

TEST(PassWarnings, ATimeNoCarTakesIsASlip) {
    EXPECT_EQ(slipIn(timed(19.5), {}), "60 ft of 19.5 s: hardly a car takes that");
    EXPECT_EQ(slipIn(timed(1.95), {}), "");
    EXPECT_NE(slipIn(timed(0.195), {}), "");
    EXPECT_EQ(slipIn(Pass{}, {}), "");
}

TEST(PassWarnings, SoIsOneAThirdOffTheLastPassOnTheSameSurface) {
    Pass before = timed(1.95);
    Pass next = timed(2.9);
    next.number = 2;
    EXPECT_EQ(slipIn(next, {before}), "60 ft of 2.9 s, and 1.95 s the pass before");
    EXPECT_EQ(slipIn(next, {before, next}), slipIn(next, {before})) << "it is no reason against itself";
    next.sixtyFoot = 2.3;
    EXPECT_EQ(slipIn(next, {before}), "");
    next.sixtyFoot = 2.9;
    before.surface.name = "another strip";
    EXPECT_EQ(slipIn(next, {before}), "");
    before.surface.name.clear();
    before.struck = true;
    EXPECT_EQ(slipIn(next, {before}), "");
}

TEST(PassWarnings, SoIsATimeInThePressuresBox) {
    Pass pass = timed(1.95);
    pass.pressures.leftRear = 1.94 * 6.894757;
    EXPECT_EQ(slipIn(pass, {}), "a tire pressure no tire is driven at");
    pass.pressures.leftRear = 16 * 6.894757;
    pass.launchRpm = 16;
    EXPECT_EQ(slipIn(pass, {}), "launched at 16 rpm: no engine idles there");
}

}  // namespace
}  // namespace bolthole
