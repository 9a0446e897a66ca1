// The sixty-foot times of the passes as a picture: one after the other, or against a number.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "widgets/curves/curve_chart.h"
#include "widgets/pages/days/pass_book.h"
#include "widgets/pages/days/pass_measures.h"

namespace bolthole {

/// Draws the timed passes of a book. One after the other: days apart, a dashed line where something changed
/// with what it was, the letter of what they were run with over them, its mean as a line and where its true
/// mean lies as a band. Against a number: a mark a pass with its letter. Marks tell the surface by shape.
/// Click or arrow keys pick a pass, Esc none.
class PassPlot : public CurveChart {
    Q_OBJECT
  public:
    /// `book` must outlive the plot.
    explicit PassPlot(const PassBook& book, QWidget* parent = nullptr);

    /// The book has changed.
    void refresh();
    /// Draws against a number; nothing: one after the other.
    void setMeasure(std::optional<PassMeasure> measure);
    void showSelected(std::optional<std::size_t> pass);
    /// Where the mark of a pass stands in the widget; nothing: it has none.
    [[nodiscard]] std::optional<QPointF> placeOf(std::size_t pass) const;
    /// The timed passes that are drawn one after the other, as rows of Car::passes: of a long log the last
    /// ones, or those around the one picked.
    [[nodiscard]] std::pair<std::size_t, std::size_t> span() const;
    /// Timed passes that lack the number they are drawn against.
    [[nodiscard]] int missing() const { return missing_; }

  signals:
    void picked(const std::optional<std::size_t>& pass);

  private:
    void takePasses();
    void ringSelected();
    [[nodiscard]] std::vector<std::size_t> drawnRows() const;
    [[nodiscard]] std::optional<std::size_t> markOf(std::size_t pass) const;

    const PassBook& book_;
    MeasureReader reader_;
    std::optional<PassMeasure> measure_;
    std::optional<std::size_t> selected_;
    std::vector<std::size_t> marked_;  // rows of Car::passes, as the points of the card's last series
    int missing_ = 0;
};

/// The key to the marks of the surfaces that passes of a book were run on: in one line where there is room,
/// else in several.
class SurfaceKey : public QWidget {
    Q_OBJECT
  public:
    explicit SurfaceKey(const PassBook& book, QWidget* parent = nullptr);
    void refresh();
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] int heightForWidth(int width) const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    [[nodiscard]] static QString nameFor(const std::optional<SurfaceKind>& kind);
    [[nodiscard]] int widthOf(const std::optional<SurfaceKind>& kind) const;
    /// Where each surface stands in so many px of width, from its left and its line's top; in order.
    [[nodiscard]] std::vector<QPoint> positions(int width) const;
    const PassBook& book_;
    std::vector<std::optional<SurfaceKind>> kinds_;
};

}  // namespace bolthole
