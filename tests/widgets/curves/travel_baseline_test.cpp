// What the cards of the travel curves say beside a kept setup.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/support/made_bench.h"
#include "tests/support/text_notes.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/change_words.h"

namespace bolthole {
namespace {

/// Made curves, and others as the kept setup they stand beside.
BenchState besideAnother() {
    BenchState state = test::madeBench({});
    test::MadeCurves other;
    other.tangent *= 0.9;
    const BenchState before = test::madeBench(other);
    state.baseline = Ghost{before.car, before.trace, before.cursor, "before"};
    return state;
}

// One notation: what it was, and either the change or what it is; the change is what the table of differences
// says, a figure finer than the two beside it.
TEST(TravelBaseline, TheCursorSaysWhatItWasAndTheChangeOfTheTable) {
    ThemeKeeper::instance().choose(Appearance::light);
    const BenchState state = besideAnother();
    TravelCurves view;
    view.showTrace(state);
    const double was = state.baseline->cursor[Figure::antiSquat];
    const double is = state.cursor[Figure::antiSquat];
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
        EXPECT_EQ(there.baseline[2],
                  QStringLiteral("Δ ") + fineShownChange(was, is, Quantity::percent, Units::inch));
        ++said;
    }
    EXPECT_EQ(said, 1);
}

// Cards of one width with words of different lengths: "14.1 → 14.1" beside "0.0" reads as two kinds of
// figures.
TEST(TravelBaseline, AllCardsSayItInTheSameForm) {
    ThemeKeeper::instance().choose(Appearance::light);
    const BenchState state = besideAnother();
    TravelCurves view;
    std::set<qsizetype> forms;
    for (int width = 300; width <= 1500; width += 20) {
        view.resize(width, 420);
        view.showTrace(state);
        test::TextNotes notes(view.size());
        view.render(&notes);
        QStringList painted;
        for (const test::TextNotes::Note& note : notes.notes()) {
            painted << note.text;
        }
        const auto isOfAll = [&](qsizetype form) {
            return std::ranges::all_of(view.values(), [&](const std::vector<ChartValue>& card) {
                return std::ranges::all_of(card, [&](const ChartValue& value) {
                    return value.baseline.size() < 3 || painted.contains(value.baseline[form]);
                });
            });
        };
        qsizetype form = 0;
        while (form < 3 && !isOfAll(form)) {
            ++form;
        }
        EXPECT_LT(form, 3) << width << " px: " << painted.join(QStringLiteral(" | ")).toStdString();
        forms.insert(form);
    }
    EXPECT_GT(forms.size(), 1U) << "wide enough for more than one form";
}

}  // namespace
}  // namespace bolthole
