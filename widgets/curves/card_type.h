// Type of the cards of curves, and how a card's title is fitted.
#pragma once

#include <QFont>
#include <QFontMetricsF>
#include <QString>
#include <QStringList>

namespace bolthole {

/// Fonts of the cards with their metrics, and the heights that follow from them. Taken anew when the theme
/// changes.
struct CardType {
    CardType();

    static constexpr int kPad = 6;     ///< inside the card, left and right
    static constexpr int kTopPad = 7;  ///< above the title
    static constexpr int kRowGap = 3;  ///< under the title
    static constexpr int kTickLabelGap = 5;
    static constexpr int kGroupGap = 10;  ///< between the labels of two groups of places

    QFont title;
    QFont body;       ///< values
    QFont quiet;      ///< units, tick labels, names in keys
    QFont smallBold;  ///< values of narrow two-curve cards
    QFont section;    ///< titles of sections
    QFontMetricsF titleMetrics;
    QFontMetricsF bodyMetrics;
    QFontMetricsF quietMetrics;
    QFontMetricsF smallBoldMetrics;
    QFontMetricsF sectionMetrics;

    bool withBaseline = false;  ///< every value has a line below it for the baseline and the change

    /// Height above and below the plot, px.
    [[nodiscard]] int header() const;
    [[nodiscard]] int footer() const;
    /// Height of a second row of labels below the plot, px.
    [[nodiscard]] int lowerRow() const;
};

/// How a card's title line is fitted to its width.
struct TitleFit {
    QString title;
    bool unitInTitle = true;  ///< false: the unit follows the value instead
};

/// The longest title that leaves room for `unit` beside it; failing that the longest alone; failing that the
/// shortest, cut with an ellipsis. Nothing of no titles.
[[nodiscard]] TitleFit fitTitle(const QStringList& titles, const QString& unit, double width,
                                const CardType& type);

}  // namespace bolthole
