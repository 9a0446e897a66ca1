// What every axis's labels must hold, whatever its scale.
#pragma once

#include <gmock/gmock.h>

#include <string>
#include <vector>

#include "widgets/scales/axis_ticks.h"

namespace bolthole::test {

/// Labels neither touch nor repeat nor leave their bounds.
inline void expectCalm(const std::vector<AxisTick>& ticks, const AxisOnScreen& axis,
                       const std::string& where) {
    ASSERT_FALSE(ticks.empty()) << where;
    EXPECT_LE(ticks.size(), static_cast<std::size_t>(kMostTicks)) << where;
    for (std::size_t i = 0; i < ticks.size(); ++i) {
        EXPECT_GE(ticks[i].labelLeft, axis.labelLeft) << where;
        EXPECT_LE(ticks[i].labelRight, axis.labelRight + 1e-9) << where;
        EXPECT_GE(ticks[i].at, axis.low - 1e-9) << where;
        EXPECT_LE(ticks[i].at, axis.high + 1e-9) << where;
        if (i > 0) {
            EXPECT_GE(ticks[i].labelLeft, ticks[i - 1].labelRight + kTickGap) << where;
            EXPECT_NE(ticks[i].label, ticks[i - 1].label) << where;
        }
    }
}

/// One label is enough only where two of its width have no room.
inline void expectTwoIfRoom(const std::vector<AxisTick>& ticks, const AxisOnScreen& axis,
                            const std::string& where) {
    if (ticks.size() == 1) {
        const double label = ticks.front().labelRight - ticks.front().labelLeft;
        EXPECT_GT(2.3 * label + kTickGap, axis.labelRight - axis.labelLeft) << where;
    }
}

}  // namespace bolthole::test
