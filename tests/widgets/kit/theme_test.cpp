// Words can be read in both themes.
#include "widgets/kit/theme.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace bolthole::test {
namespace {

// Relative luminance: W3C, Web Content Accessibility Guidelines (WCAG) 2.2, definition of the term, from
// memory.
double luminance(const QColor& color) {
    const auto linear = [](double part) {
        return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(color.redF()) + 0.7152 * linear(color.greenF()) + 0.0722 * linear(color.blueF());
}

// The same, definition of "contrast ratio".
double contrast(const QColor& one, const QColor& other) {
    const double first = luminance(one);
    const double second = luminance(other);
    return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

struct Named {
    const char* name;
    QColor Theme::*color;
};
constexpr std::array kGrounds{Named{"card", &Theme::card}, Named{"canvas", &Theme::canvas},
                              Named{"panel", &Theme::panel}};
constexpr std::array kOtherGrounds{Named{"window", &Theme::window}, Named{"earth", &Theme::earth}};
constexpr std::array kWords{Named{"ink", &Theme::ink}, Named{"muted", &Theme::muted},
                            Named{"focus", &Theme::focus}, Named{"problem", &Theme::problem}};
constexpr std::array kLabels{
    Named{"lower", &Theme::lower}, Named{"upper", &Theme::upper}, Named{"crosswise", &Theme::crosswise},
    Named{"instant center", &Theme::instantCenter}, Named{"before", &Theme::baseline}};

class Contrast : public testing::TestWithParam<bool> {
  protected:
    template <typename Words, typename Grounds>
    void expectReadable(const Words& words, const Grounds& grounds) const {
        const Theme colors = GetParam() ? Theme::darkOne() : Theme::light();
        for (const Named& word : words) {
            for (const Named& ground : grounds) {
                EXPECT_GE(contrast(colors.*word.color, colors.*ground.color), 4.5)  // SC 1.4.3
                    << word.name << " on " << ground.name;
            }
        }
    }
};

// Black on white is 21:1 and a color against itself 1:1, as the definition says.
TEST(ContrastRatio, HasTheEndsTheStandardNames) {
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 1e-9);
    EXPECT_NEAR(contrast(Qt::gray, Qt::gray), 1, 1e-9);
}

TEST_P(Contrast, WordsStandOutOnEveryGround) {
    expectReadable(kWords, kGrounds);
    expectReadable(kWords, kOtherGrounds);
}

TEST_P(Contrast, LabelsStandOutWhereTheyAreDrawn) {
    expectReadable(kLabels, kGrounds);
}

INSTANTIATE_TEST_SUITE_P(BothThemes, Contrast, testing::Bool(),
                         [](const auto& chosen) { return chosen.param ? "Dark" : "Light"; });

}  // namespace
}  // namespace bolthole::test
