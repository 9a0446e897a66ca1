// What the cards of the travel curves say beside a kept setup.
#include <gtest/gtest.h>

#include "tests/support/made_bench.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {
namespace {

// One notation: what it was, and either the change or what it is; the change is that of the numbers shown.
TEST(TravelBaseline, TheCursorSaysWhatItWasAndTheChangeThatAddsUp) {
    ThemeKeeper::instance().choose(Appearance::light);
    BenchState state = test::madeBench({});
    test::MadeCurves other;
    other.tangent *= 0.9;
    const BenchState before = test::madeBench(other);
    state.baseline = Ghost{before.car, before.trace, before.cursor, "before"};
    TravelCurves view;
    view.showTrace(state);
    const auto whole = [](QString text) { return text.replace(kMinus, QLatin1Char('-')).toInt(); };
    int said = 0;
    for (std::size_t card = 0; card < view.cards().size(); ++card) {
        if (view.cards()[card].titles.front() != QStringLiteral("Anti-squat")) {
            continue;
        }
        const ChartValue& there = view.values()[card].back();
        ASSERT_EQ(there.baseline.size(), 3);
        const QStringList ends = there.baseline[1].split(QStringLiteral(" → "));
        ASSERT_EQ(ends.size(), 2) << there.baseline[1].toStdString();
        EXPECT_EQ(ends[1], there.text);
        EXPECT_EQ(whole(there.baseline[2]), whole(ends[1]) - whole(ends[0]));
        ++said;
    }
    EXPECT_EQ(said, 1);
}

}  // namespace
}  // namespace bolthole
