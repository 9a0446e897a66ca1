#include "widgets/scales/distance_scale.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "tests/support/calm_ticks.h"
#include "tests/support/made_units.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

using test::expectCalm;
using test::expectTwoIfRoom;

TEST(DistanceScale, InfinityIsLabelledWhereItIsOnTheAxis) {
    const QFontMetricsF metrics(textFont(TextSize::small));
    const auto ticks = distanceTicks({-0.2, 0.7, 0, 90, -5, 95}, kInch, metrics);
    const auto infinite =
        std::find_if(ticks.begin(), ticks.end(), [](const AxisTick& t) { return t.at == 0; });
    ASSERT_NE(infinite, ticks.end());
    EXPECT_EQ(infinite->label, QString(QChar(0x221e)));
    for (const AxisTick& tick : distanceTicks({0.2, 0.7, 0, 90, -5, 95}, kInch, metrics)) {
        EXPECT_NEAR(1 / tick.at / kInch, tick.label.toDouble(), 1e-6) << tick.label.toStdString();
    }
}

TEST(DistanceScale, LabelsNeverTouchAtAnyWidth) {
    ThemeKeeper::instance().choose(Appearance::light);
    const QFontMetricsF metrics(textFont(TextSize::small));
    for (const double unit : {kInch, kMetresPerMillimetre}) {
        for (int width = 60; width <= 400; width += 7) {
            for (const double low : {-5.0, -0.8, -0.1, 0.05, 0.3, 0.62, 1.4}) {
                for (const double span : {0.12, 0.3, 0.9, 3.0}) {
                    const AxisOnScreen axis{low, low + span, 8, width - 8.0, 4, width - 4.0};
                    const auto ticks = distanceTicks(axis, unit, metrics);
                    const std::string where = std::to_string(width) + " px from " + std::to_string(low) +
                                              " span " + std::to_string(span);
                    expectCalm(ticks, axis, where);
                    if (width >= 75) {
                        expectTwoIfRoom(ticks, axis, where);
                    }
                }
            }
        }
    }
}

}  // namespace
}  // namespace bolthole
