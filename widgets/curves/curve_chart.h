// The one widget for curves: cards given as data over one imposed axis, with one cursor through all of them.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "widgets/curves/chart_card.h"

class QAbstractButton;
class QHelpEvent;

namespace bolthole {

/// Cards side by side or stacked. Press and drag to move the cursor, or use the keys of
/// ChartAxis::afterKey(); double click goes home. A point that is marked can be hovered, which rings it and
/// tells its values, and picked by a click; where the look picks points also by Left and Right, one after the
/// other in the order of their series, and Escape, or a click beside all, picks none. Where the look allows
/// it, Ctrl and the wheel, + and -, or a drag with the right button zoom along the imposed axis; a button in
/// the plot, and Escape, show all of it again.
///
/// Showing the same kind of cards again uses the storage of the last ones.
class CurveChart : public QWidget {
    Q_OBJECT
  public:
    /// `name`: for screen readers.
    explicit CurveChart(const QString& name, const ChartLook& look = {}, QWidget* parent = nullptr);
    ~CurveChart() override;

    /// Takes axis and cards; value axes keep still where they can. The cursor stays, its values are read off
    /// the cards until showCursor() says others.
    void showCards(const ChartAxis& axis, const std::vector<ChartCard>& cards);
    /// Puts the cursor and reads the values off the cards.
    void showCursor(double imposed);
    /// Puts the cursor with what stands there, one a series of each card; `words`: the place, for screen
    /// readers, empty: ChartAxis::words().
    void showCursor(double imposed, const std::vector<std::vector<ChartValue>>& values,
                    const QString& words = {});
    /// Whether what is shown next is being dragged: its value axes keep still where they can.
    void setMoving(bool moving) { isMoving_ = moving; }
    /// Whether the curves are paler, as they are not of the car as it stands.
    void setFaded(bool faded);
    /// A boxed message over the plots, empty for none; and what screen readers hear before the values.
    void showMessage(const QString& words);

    /// Rings a point until cards are shown again, and says it to screen readers; -1 each: none.
    void showPicked(int card, int series, int point);

    /// Shows a part of the imposed axis, at least a thousandth of it.
    void zoomTo(double from, double to);
    void showAll();
    [[nodiscard]] bool isZoomed() const { return view_.has_value(); }
    /// What is shown of the imposed axis.
    [[nodiscard]] double shownFrom() const { return view_ ? view_->least : axis_.low; }
    [[nodiscard]] double shownTo() const { return view_ ? view_->most : axis_.high; }

    /// The plots in this widget, px, for a slider beside upright ones; the first card's where the imposed
    /// runs across.
    [[nodiscard]] QRect plotArea() const;
    [[nodiscard]] const ChartAxis& axis() const { return axis_; }
    [[nodiscard]] const std::vector<ChartCard>& cards() const { return cards_; }
    [[nodiscard]] const std::vector<ChartCardOnScreen>& onScreen() const { return onScreen_; }
    [[nodiscard]] const std::vector<std::vector<ChartValue>>& values() const { return values_; }
    [[nodiscard]] double cursor() const { return cursor_; }
    [[nodiscard]] const CardType& type() const { return *type_; }
    /// What a card's key calls a series beside its value at the cursor.
    [[nodiscard]] QString keyName(std::size_t card, std::size_t series) const;
    /// What hovering a point tells: series, place, value with its unit and its error.
    [[nodiscard]] QString pointWords(int card, int series, int point) const;

    [[nodiscard]] QSize sizeHint() const override { return look_.size; }
    [[nodiscard]] QSize minimumSizeHint() const override;

  signals:
    void cursorMoved(double imposed);               ///< the person moved the cursor
    void hovered(int card, int series, int point);  ///< the nearest point; -1 each: none is near
    /// The person picked a marked point; -1 each: none any more, where the look picks points.
    void pointPicked(int card, int series, int point);
    void zoomed(double from, double to);       ///< the person chose another part of the axis
    void plotAreaChanged(const QRect& plots);  ///< plotArea() changed

  protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    struct Hit {
        int card = -1;
        ChartHit at{};

        [[nodiscard]] bool isThere() const { return card >= 0; }
        [[nodiscard]] bool isSame(const Hit& other) const {
            return card == other.card && at.series == other.at.series && at.point == other.at.point;
        }
    };

    void dress();
    void layOut();
    void placeCard(std::size_t card, const QRectF& frame);
    void placeSideBySide();
    void placeStacked();
    void placeWayBack();
    void showFreshBody();
    void readValues();
    void describeInWords();
    [[nodiscard]] double headerOf(std::size_t card) const;
    [[nodiscard]] double header() const;
    [[nodiscard]] int footer() const;
    [[nodiscard]] double gutter() const;
    [[nodiscard]] bool hasCurves() const;
    [[nodiscard]] ChartScene scene() const;
    [[nodiscard]] double gap() const;
    [[nodiscard]] double cardEdge(std::size_t card) const;
    [[nodiscard]] bool needsTwoLines() const;

    void paintBody(QPainter& painter);
    void paintGutter(QPainter& painter) const;
    void paintCursor(QPainter& painter) const;
    void paintChosen(QPainter& painter) const;
    void paintMessage(QPainter& painter) const;

    [[nodiscard]] std::size_t cardAt(QPointF position) const;
    [[nodiscard]] double along(QPointF position) const;
    [[nodiscard]] qsizetype baselineForm() const;
    [[nodiscard]] double imposedAt(QPointF position) const;
    [[nodiscard]] Hit hitAt(QPointF position, bool markedOnly) const;
    void ask(double imposed);
    void askAt(QPointF position);
    void hover(const Hit& hit);
    void zoomAround(double imposed, double factor);
    void setView(const std::optional<Extent>& view);
    void takeChosen();
    bool zoomByKey(int key);
    bool pickByKey(int key);
    [[nodiscard]] Hit firstMarked() const;
    bool showTip(const QHelpEvent& event);
    void setRing(bool shown);

    ChartLook look_;
    ChartAxis axis_;
    std::vector<ChartCard> cards_;
    std::vector<ChartCardOnScreen> onScreen_;
    std::unique_ptr<CardType> type_;
    std::vector<ImposedLabel> ticks_;
    std::vector<std::vector<ChartValue>> values_;
    QString cursorWords_;
    QString message_;
    double cursor_ = 0;
    bool faded_ = false;
    bool isMoving_ = false;
    bool keysInTwoLines_ = false;
    bool ring_ = false;
    std::optional<Extent> view_;
    QAbstractButton* wayBack_ = nullptr;

    Hit hovered_;
    Hit pressed_;
    Hit picked_;
    QPointF pressedAt_;
    std::optional<Extent> chosen_;  // by the right button, along the imposed axis

    QPixmap body_;             // what the cursor stands on
    bool bodyIsNew_ = true;    // painted straight next: in a drag it would be kept in vain
    bool bodyIsKept_ = false;  // in body_
    QRect announced_;
};

}  // namespace bolthole
