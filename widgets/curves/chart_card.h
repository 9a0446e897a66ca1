// One card of a chart as it stands on the screen.
#pragma once

#include <QPainter>
#include <QPixmap>
#include <QRectF>
#include <vector>

#include "widgets/curves/card_type.h"
#include "widgets/curves/chart_axis.h"
#include "widgets/curves/chart_data.h"
#include "widgets/curves/chart_drawing.h"
#include "widgets/scales/axis_ticks.h"
#include "widgets/scales/stable_range.h"

namespace bolthole {

/// How a chart is laid out; the same as long as it lives.
struct ChartLook {
    enum class Head {
        figure,  ///< a card of one curve shows its value alone; one of more has a key
        keys,    ///< every curve has its line in the key, with its value
        beside,  ///< the key stands at the right of the plot, without values
        none     ///< neither title nor key: what the chart stands in says both
    };
    Head head = Head::figure;
    bool isStacked = false;              ///< one card below the other, else side by side
    bool hasCursor = true;               ///< can be moved along the imposed axis
    bool canZoom = false;                ///< along the imposed axis
    bool picksPoints = false;            ///< marked points are picked by click and keys; without a cursor
    bool labelsImposed = true;           ///< the imposed axis has its labels, at left or below
    bool hasFrame = true;                ///< around each card
    ThemeColor ground = &Theme::window;  ///< behind the cards
    QSize size{560, 300};                ///< hint, px
    QSize leastSize{260, 160};           ///< px
};

/// The look of a chart that stands in a page's card as a part of it and has no cursor: without frame, on the
/// card's ground.
[[nodiscard]] ChartLook lookInCard(ChartLook::Head head, QSize size, QSize leastSize);

/// What a card needs to know of its chart to be painted.
struct ChartScene {
    const CardType& type;
    const ChartLook& look;
    const ChartAxis& axis;
    const std::vector<ImposedLabel>& ticks;
    bool isFocused = false;
    double alpha = 1;             ///< of curves; less where they are not of the car as it stands
    bool keysInTwoLines = false;  ///< values stand below the names of their series
    qsizetype baselineForm = 0;  ///< which of the words on its baseline a value shows, or its last: all alike
};

/// A point of a card's series.
struct ChartHit {
    int series = -1;
    int point = -1;
    double farness = 0;  ///< px

    [[nodiscard]] bool isThere() const { return series >= 0; }
};

/// A card on the screen: keeps its value axis still while its data move, and its face as a picture.
class ChartCardOnScreen {
  public:
    /// Takes the card's data and lets the value axis follow; `isMoving`: they are being dragged, and the axis
    /// keeps still. `card` stays where it is until the next call.
    void take(const ChartCard& card, bool isMoving);
    /// Puts the card, px, with its plot; `from` and `to`: what is shown of the imposed axis.
    void place(const QRectF& frame, const QRectF& plot, const ChartAxis& axis, double from, double to,
               const CardType& type);

    /// Frame, title, grid, labels, stretches: kept as a picture from the second time on that they are the
    /// same, since most steps of a drag leave them.
    void paintFace(QPainter& painter, const ChartScene& scene);
    /// The kept picture is of other fonts or colors.
    void forgetFace() {
        face_ = QPixmap();
        asked_ = {};
        laidOut_ = {};
    }
    /// Bands, curves, points, rules, events.
    void paintBody(QPainter& painter, const ChartScene& scene);
    /// Values at the cursor in the head, and a marker on each curve. `values`: one a series.
    void paintCursor(QPainter& painter, const ChartScene& scene, double cursor,
                     const std::vector<ChartValue>& values) const;
    /// Which of the words on a value's baseline has room, the longest first; the last has to.
    [[nodiscard]] qsizetype baselineForm(const CardType& type, const QStringList& texts) const;
    /// A ring around a point: the one hovered, or the one picked.
    void paintHit(QPainter& painter, const ChartHit& hit, bool isPicked) const;

    /// The nearest point at most `reach` px away; of series that mark their points, else of any.
    [[nodiscard]] ChartHit hit(QPointF at, double reach, bool markedOnly) const;

    [[nodiscard]] const ChartCard& card() const { return *card_; }
    [[nodiscard]] const QRectF& frame() const { return frame_; }
    [[nodiscard]] const ChartPlot& plot() const { return plot_; }
    [[nodiscard]] const std::vector<AxisTick>& ticks() const { return ticks_; }
    /// The line of a series as drawn, px.
    [[nodiscard]] const Stroke& stroke(std::size_t series) const { return strokes_[series]; }
    /// Where the imposed runs across, how many rows of events' words find room above the plot.
    static constexpr int kEventRows = 2;
    /// Where the events' words stand, px; null: no room.
    [[nodiscard]] std::vector<QRectF> eventPlaces(const QFontMetricsF& metrics) const;
    /// Where the notes' words stand, px; null: no room.
    [[nodiscard]] std::vector<QRectF> notePlaces(const QFontMetricsF& metrics) const;
    /// Height that the words of events and the headings of sections need above a plot whose values run up,
    /// px.
    [[nodiscard]] static double wordsAbove(const ChartCard& card, const CardType& type);
    /// Where it says that it rests on starting numbers, and in which words; null: it does not, empty: by its
    /// dots alone.
    [[nodiscard]] const QRectF& startingBox() const { return startingBox_; }
    [[nodiscard]] const QString& startingWords() const { return startingWords_; }
    /// Where it says how its value axis is spaced, px; null: nowhere.
    [[nodiscard]] const QRectF& axisBox() const { return axisBox_; }
    /// Rows the card's key needs.
    [[nodiscard]] static std::size_t keyRows(const ChartCard& card);
    /// The least width in which every series of a key of more than one has a whole name beside a value of
    /// three digits, px; 0: there is no such key.
    [[nodiscard]] static double keyWidth(const ChartCard& card, const CardType& type);
    /// What the key calls a series beside, or above, its value; cut where even the shortest name is too long.
    [[nodiscard]] QString keyName(const ChartScene& scene, const ChartSeries& series,
                                  const ChartValue& value) const;

  private:
    // All that the face shows besides theme, fonts and the chart's look.
    struct Face {
        QRectF frame;
        ChartPlot plot;
        ChartAxis axis;
        QStringList titles;
        QString unitText;
        QString absent;
        std::vector<ChartStretch> stretches;
        std::vector<double> references;
        bool hasValues = false;
        QString startingWords;
        QRectF startingBox;
        QString axisWords;
        QRectF axisBox;
        bool isFocused = false;
        bool operator==(const Face&) const = default;
    };

    // All that title and ticks follow from besides the fonts.
    struct Layout {
        QRectF frame;
        ChartPlot plot;
        double unit = 0;
        QString unitText;
        QStringList titles;
        ChartScale scale = ChartScale::plain;
        QString axisWords;
        bool operator==(const Layout&) const = default;
    };

    [[nodiscard]] Face faceNow(const ChartScene& scene) const;
    [[nodiscard]] QRectF inner() const;
    void placeTicks(const CardType& type);
    void drawFace(QPainter& painter, const ChartScene& scene) const;
    void drawTitle(QPainter& painter, const CardType& type) const;
    void drawGrid(QPainter& painter, const ChartScene& scene) const;
    void drawTickLabels(QPainter& painter, const ChartScene& scene) const;
    void drawImposedLabels(QPainter& painter, const ChartScene& scene) const;
    void drawLowerRow(QPainter& painter, const ChartScene& scene, double top) const;
    void drawStretches(QPainter& painter, const CardType& type) const;
    void measureWords(const CardType& type);
    void placeStartingMark();
    void placeAxisWords();
    [[nodiscard]] bool isCrossed(const QRectF& place) const;
    void drawStartingMark(QPainter& painter, const CardType& type) const;
    void drawAxisWords(QPainter& painter, const CardType& type) const;
    void paintSeries(QPainter& painter, const ChartSeries& series, const Stroke& stroke, double alpha) const;
    void paintMarks(QPainter& painter, const ChartSeries& series, const QColor& ink) const;
    void paintRules(QPainter& painter, const CardType& type) const;
    void paintRuleWords(QPainter& painter, const CardType& type, const ChartRule& rule,
                        std::vector<QRectF>& taken) const;
    [[nodiscard]] int pointsUnder(const QRectF& place) const;
    void paintEvents(QPainter& painter, const CardType& type) const;
    void paintSections(QPainter& painter, const CardType& type) const;
    void paintNotes(QPainter& painter, const CardType& type) const;
    void paintFigure(QPainter& painter, const ChartScene& scene, const ChartValue& value) const;
    void paintKey(QPainter& painter, const ChartScene& scene, const std::vector<ChartValue>& values) const;
    void paintKeyRow(QPainter& painter, const ChartScene& scene, const ChartSeries& series,
                     const ChartValue& value, double top) const;
    void paintKeySample(QPainter& painter, const ChartSeries& series, double left, double middle,
                        double alpha) const;
    void paintKeyValue(QPainter& painter, const ChartScene& scene, const ChartValue& value,
                       const QRectF& row) const;
    [[nodiscard]] QRectF keyRow(const ChartScene& scene, double top) const;
    [[nodiscard]] bool hasSmallValues(const ChartScene& scene) const;
    void paintKeyBeside(QPainter& painter, const ChartScene& scene) const;
    void paintBaseline(QPainter& painter, const ChartScene& scene, const QStringList& texts,
                       double top) const;

    const ChartCard* card_ = nullptr;
    StableRange range_{1e-3};
    double takenUnit_ = 0;
    double takenSpan_ = 0;
    QString takenSubject_;
    bool hasValues_ = false;
    QRectF frame_;
    ChartPlot plot_;
    std::vector<AxisTick> ticks_;
    TitleFit title_;
    std::vector<Stroke> strokes_;
    // Words and what they take, px: longest first those that fit the plot.
    struct Measured {
        QString words;
        QSizeF size;
    };
    std::vector<Measured> startingFits_;  // upward ones are taller than wide
    QString startingWords_;               // as shown; empty: the dots alone
    QRectF startingBox_;                  // null: no number is a starting one
    QSizeF axisSize_;
    QRectF axisBox_;  // null: no room
    Layout laidOut_;
    Face asked_;
    Face drawn_;
    QPixmap face_;  // of what was drawn
};

}  // namespace bolthole
