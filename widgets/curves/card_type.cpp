#include "widgets/curves/card_type.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/kept_words.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kPlotGap = 9;       // above the plot
constexpr double kUnitGap = 8.0;  // at least, between title and unit

QFont sectionFont() {
    QFont font = textFont(TextSize::body, true);
    font.setPointSizeF(font.pointSizeF() * 1.4);
    return font;
}

}  // namespace

CardType::CardType()
    : title(textFont(TextSize::body, true)),
      body(textFont(TextSize::body, true)),
      quiet(textFont(TextSize::small)),
      smallBold(textFont(TextSize::small, true)),
      section(sectionFont()),
      titleMetrics(title),
      bodyMetrics(body),
      quietMetrics(quiet),
      smallBoldMetrics(smallBold),
      sectionMetrics(section) {}

int CardType::header() const {
    const double below = withBaseline ? quietMetrics.height() : 0.0;
    const double values = 2.0 * (bodyMetrics.height() + below);
    return static_cast<int>(std::ceil(kTopPad + titleMetrics.height() + kRowGap + values + kPlotGap));
}

int CardType::footer() const {
    return static_cast<int>(std::ceil(2.0 * kTickLabelGap + quietMetrics.height()));
}

int CardType::lowerRow() const {
    return static_cast<int>(std::ceil(kRowGap + quietMetrics.height()));
}

TitleFit fitTitle(const QStringList& titles, const QString& unit, double width, const CardType& type) {
    if (titles.isEmpty()) {
        return {};
    }
    const double besideUnit = width - widthOfLine(type.quiet, unit) - kUnitGap;
    if (widthOfLine(type.title, titles.first()) <= besideUnit) {
        return {titles.first(), true};
    }
    for (const QString& title : titles) {
        if (widthOfLine(type.title, title) <= width) {
            return {title, false};
        }
    }
    return {type.titleMetrics.elidedText(titles.last(), Qt::ElideRight, width), false};
}

}  // namespace bolthole
