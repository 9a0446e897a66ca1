// The sixty-foot times of the passes as a picture: one after the other, or against a number.
#pragma once

#include <QWidget>
#include <optional>
#include <utility>
#include <vector>

#include "widgets/pages/days/pass_book.h"
#include "widgets/pages/days/pass_measures.h"

class QPainter;

namespace bolthole {

/// Draws the timed passes of a book. One after the other: days apart, a dashed line where something changed
/// with what it was, the letter of what they were run with over them, its mean as a line and where its true
/// mean lies as a band. Against a number: a mark a pass with its letter. Marks tell the surface by shape.
/// Click or arrow keys pick a pass, Esc none.
class PassPlot : public QWidget {
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

    [[nodiscard]] QSize sizeHint() const override { return {760, 240}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {360, 170}; }

  signals:
    void picked(const std::optional<std::size_t>& pass);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

  private:
    struct Mark {
        std::size_t pass;
        double at;  // along the plot: in passes, or in the measure's unit
        QPointF place;
    };
    /// Passes of one run on one surface and day that stand side by side.
    struct Stretch {
        std::size_t first;  // marks
        std::size_t last;
        bool beginsDay;
        QString change;
        Sample sample{};  // all repeats of it
    };
    void step(bool right);
    void makeMarks();
    [[nodiscard]] std::vector<std::size_t> drawnRows() const;
    void makeStretches();
    void layOut();
    [[nodiscard]] QRectF plotBox() const;
    [[nodiscard]] double heightOf(double time) const;
    [[nodiscard]] double alongOf(double at) const;
    [[nodiscard]] std::optional<std::size_t> markNear(QPointF at) const;
    [[nodiscard]] std::optional<std::size_t> markOf(std::size_t pass) const;
    [[nodiscard]] double bandSide(const Stretch& stretch, bool right) const;

    // pass_plot_paint.cpp
    void paintTimeAxis(QPainter& painter) const;
    void paintMeasureAxis(QPainter& painter) const;
    void paintStretch(QPainter& painter, const Stretch& stretch) const;
    void paintBand(QPainter& painter, const Stretch& stretch) const;
    void paintNumbers(QPainter& painter) const;
    void paintDays(QPainter& painter) const;
    void paintLetters(QPainter& painter) const;
    void paintMarks(QPainter& painter) const;
    void paintEmpty(QPainter& painter) const;

    const PassBook& book_;
    MeasureReader reader_;
    std::optional<PassMeasure> measure_;
    std::optional<std::size_t> selected_;
    std::vector<Mark> marks_;
    std::vector<Stretch> stretches_;
    int missing_ = 0;
    double slow_ = 1;  // s, ends of the axis
    double quick_ = 0;
    double low_ = 0;  // ends of the axis along
    double high_ = 1;
};

/// Draws the mark of a surface at a place: a ring for the street, a square for a prepped track, a triangle
/// for an unprepped one, a hollow diamond where it was not said. Pale where `isStruck`.
void paintSurfaceMark(QPainter& painter, QPointF at, const std::optional<SurfaceKind>& kind, bool isStruck);

/// The key to the marks of the surfaces that passes of a book were run on, in one line.
class SurfaceKey : public QWidget {
    Q_OBJECT
  public:
    explicit SurfaceKey(const PassBook& book, QWidget* parent = nullptr);
    void refresh();
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    [[nodiscard]] static QString nameFor(const std::optional<SurfaceKind>& kind);
    const PassBook& book_;
    std::vector<std::optional<SurfaceKind>> kinds_;
};

}  // namespace bolthole
