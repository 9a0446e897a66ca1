// One card of the travel curves: its plot, its curves and the words about it.
#pragma once

#include <qcustomplot.h>

#include <QPainter>
#include <QPixmap>
#include <QSharedPointer>
#include <array>
#include <vector>

#include "widgets/curves/card_type.h"
#include "widgets/curves/curve_data.h"
#include "widgets/curves/sure_band.h"
#include "widgets/scales/axis_ticks.h"
#include "widgets/scales/stable_range.h"
#include "widgets/scales/travel_steps.h"

namespace bolthole {

/// The traces a card can show as ghosts beside the bench's own: null where there is none.
struct GhostTraces {
    const Trace* before = nullptr;
    const Trace* pointed = nullptr;
};

/// A card. Draws its face (behind the curves) and its cursor (above them) on the plot's layers; the curves
/// themselves are graphs of the plot.
class CurveCard {
  public:
    /// `axisRect` stands in `plot`, which owns it and the graphs.
    CurveCard(const CurveCardSpec& spec, QCustomPlot& plot, QCPAxisRect& axisRect);

    /// Takes the bands around the curves that are shown next; `spread`: null where they are not to be seen.
    void takeSpread(const Trace& trace, const TraceSpread* spread);
    /// Overwrites the curves and lets the range follow. `faded`: the trace is not of the car as it stands.
    void showTrace(const Trace& trace, const GhostTraces& ghosts, const TravelSpan& span, Units units,
                   bool faded);
    /// Takes the values at the cursor; `before`: those of the before at the same travel, or null.
    void showCursor(const Station& cursor, const Station* before);
    /// Takes how sure the value of a curve is, without unit; empty: nothing stands there.
    void showSure(std::size_t line, const QString& words) { lines_[line].sureText = words; }
    [[nodiscard]] const QString& sureText(std::size_t line = 0) const { return lines_[line].sureText; }
    [[nodiscard]] const CurveCardSpec& spec() const { return spec_; }
    /// Colors and line widths from the theme.
    void dress(bool faded);
    /// Whether the card's face (range, ticks, words, stretches out of reach) changed since the last call, so
    /// that place() is due.
    [[nodiscard]] bool takeFaceChange();
    /// Ticks and curves for the present size and range.
    void place(const CardType& type);

    /// Card, title, grid, tick labels, stretches out of reach: kept as a picture, and drawn anew only where
    /// they changed, since most steps of a drag leave them.
    void paintFace(QPainter& painter, const CardType& type, const std::vector<TravelTick>& travelTicks,
                   bool focused);
    /// The kept picture is of other fonts or colors.
    void forgetFace() { facePicture_ = QPixmap(); }
    /// The bands, below the curves.
    void paintBands(QPainter& painter) const;
    /// The band of a curve of the card.
    [[nodiscard]] const std::vector<BandPoint>& band(std::size_t line) const { return lines_[line].band; }
    /// Values at the cursor and a marker on each curve.
    void paintCursor(QPainter& painter, const CardType& type) const;

    /// The card on the screen, px, and the plot in it.
    [[nodiscard]] QRect card() const { return axisRect_.outerRect(); }
    [[nodiscard]] QRect plot() const { return axisRect_.rect(); }
    [[nodiscard]] QCPAxisRect& axisRect() { return axisRect_; }
    [[nodiscard]] const std::vector<AxisTick>& ticks() const { return ticks_; }
    /// "IC distance 58.2 in", one part a line of the card; figures that do not exist are left out.
    [[nodiscard]] QStringList spokenValues() const;

  private:
    // One graph of the plot.
    struct Curve {
        QCPGraph* graph = nullptr;
        QSharedPointer<QCPGraphDataContainer> points;  // what is drawn: `whole` thinned for the plot's size
        std::vector<CurvePoint> whole;
    };
    struct Line {
        const CurveLine* spec = nullptr;
        Curve own{};
        Curve before{};
        Curve pointed{};
        std::vector<BandPoint> band{};
        double cursorValue = std::numeric_limits<double>::quiet_NaN();  // in the axis's unit, NaN: none
        QString cursorText{};
        QString sureText{};         // shown where there is room
        QStringList beforeTexts{};  // "before 178, change −57", the longest first; empty without a before
    };

    // All that the face shows besides the theme.
    struct Face {
        QRect card;
        QRect plot;
        double low = 0;
        double high = 0;
        Units units = Units::inch;
        TravelSpan span;
        std::vector<OutOfReach> outOfReach;
        bool hasPoints = false;
        bool hasUsableRows = false;
        bool focused = false;
        bool operator==(const Face&) const = default;
    };

    [[nodiscard]] Face faceNow(bool focused) const;
    void drawFace(QPainter& painter, const CardType& type, const std::vector<TravelTick>& travelTicks,
                  bool focused) const;

    void fillGraphs();
    void fill(Curve& curve, double perTravel, double perValue);
    [[nodiscard]] Extent takeCurves(const Trace& trace, const GhostTraces& ghosts);
    void addLine(const CurveLine& spec, QCustomPlot& plot);
    [[nodiscard]] Curve addCurve(const QString& name, QCustomPlot& plot);
    [[nodiscard]] QString unitText() const;
    [[nodiscard]] QString valueText(const Station& cursor, const CurveLine& line) const;
    [[nodiscard]] QStringList beforeTexts(const Station& cursor, const Station& before,
                                          const CurveLine& line) const;
    [[nodiscard]] QRectF inner() const;
    [[nodiscard]] TravelOnScreen travelAxis() const;
    void paintGrid(QPainter& painter, const std::vector<TravelTick>& travelTicks) const;
    void paintOutOfReach(QPainter& painter, const CardType& type) const;
    void paintTicks(QPainter& painter, const CardType& type) const;
    void paintTitle(QPainter& painter, const CardType& type) const;
    void paintOneValue(QPainter& painter, const CardType& type) const;
    void paintKeyRow(QPainter& painter, const CardType& type, const Line& line, double top) const;
    void paintBefore(QPainter& painter, const CardType& type, const Line& line, double top) const;
    void paintMarkers(QPainter& painter) const;

    const CurveCardSpec& spec_;
    QCPAxisRect& axisRect_;
    std::vector<Line> lines_;
    std::vector<CurvePoint> points_;  // reused
    StableRange range_;
    Units units_ = Units::inch;
    TravelSpan span_;
    std::vector<OutOfReach> outOfReach_;
    std::vector<AxisTick> ticks_;
    TitleFit title_;
    double cursorTravel_ = 0;
    bool cursorUsable_ = false;
    bool hasPoints_ = false;
    bool hasUsableRows_ = false;
    Face shownFace_;
    Face drawnFace_;  // what the picture below shows
    QPixmap facePicture_;
    QSize filledFor_;  // size of the plot the graphs were filled for
};

}  // namespace bolthole
