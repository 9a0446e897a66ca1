#include "widgets/scales/axis_ticks.h"

#include <gmock/gmock.h>

#include "tests/support/calm_ticks.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

using test::expectCalm;
using test::expectTwoIfRoom;

TEST(AxisTicks, LinearLabelsNeverTouchAtAnyWidth) {
    ThemeKeeper::instance().choose(Appearance::light);
    const QFontMetricsF metrics(textFont(TextSize::small));
    for (int width = 60; width <= 400; width += 7) {
        for (const double span : {0.5, 1.0, 5.0, 7.0, 12.0, 45.0, 260.0, 1800.0}) {
            for (const double center : {0.0, 3.3, -9.7, 121.0, -640.0}) {
                const AxisOnScreen axis{center - span / 2, center + span / 2, 8, width - 8.0, 4, width - 4.0};
                const auto ticks = linearTicks(axis, 1.0, metrics);
                const std::string where = std::to_string(width) + " px, " + std::to_string(center) + " +- " +
                                          std::to_string(span / 2);
                expectCalm(ticks, axis, where);
                if (width >= 75) {
                    expectTwoIfRoom(ticks, axis, where);
                }
            }
        }
    }
}

TEST(AxisTicks, NiceStepsAndTexts) {
    EXPECT_DOUBLE_EQ(niceStep(0.03), 0.05);
    EXPECT_DOUBLE_EQ(niceStep(0.2), 0.2);
    EXPECT_DOUBLE_EQ(niceStep(7), 10);
    EXPECT_EQ(tickText(-0.5, 0.5), QString(QChar(0x2212)) + QStringLiteral("0.5"));
    EXPECT_EQ(tickText(-1e-17, 0.5), QStringLiteral("0.0"));
    EXPECT_EQ(tickText(125, 25), QStringLiteral("125"));
}

}  // namespace
}  // namespace bolthole
