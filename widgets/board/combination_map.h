// The map of the hole board: every combination a dot, the target window a rectangle to be dragged.
#pragma once

#include <QPixmap>
#include <QWidget>
#include <optional>
#include <vector>

#include "widgets/board/combination_map_paint.h"
#include "widgets/board/combination_map_window.h"

namespace bolthole {

/// Mouse: a click picks a dot or, on empty ground, none; double-click bolts; a drag draws the target window,
/// or moves it or one of its sides. Keys: arrows walk to the nearest dot that way, Enter bolts, Delete takes
/// the window away, Escape gives up a drag or picks none. Combinations are named by their place in the list.
class CombinationMap : public QWidget {
    Q_OBJECT
  public:
    /// The list must outlive the map.
    explicit CombinationMap(const CombinationList& list, QWidget* parent = nullptr);

    /// The list, its filter or the target window has changed. `isFinal`: every combination is there and no
    /// drag is under way; then the axes are fitted anew.
    void refresh(bool isFinal);
    /// What is selected, and what is pointed at here or in the table.
    void showMarks(std::optional<std::size_t> selected, std::optional<std::size_t> pointed);

    /// The car compared with; nothing if there is none.
    void showBaseline(const std::optional<BaselineMark>& baseline);

    [[nodiscard]] std::optional<QPointF> placeOf(std::size_t at) const;
    [[nodiscard]] const CombinationMapScale& scale() const { return scale_; }
    [[nodiscard]] bool isDragging() const { return drag_.has_value(); }
    /// Gives up a drag under way.
    void abandonDrag();
    /// A window over all of the map: where typing begins while there is none.
    [[nodiscard]] TargetWindow wholeWindow() const;

    [[nodiscard]] QSize sizeHint() const override { return {420, 250}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {200, 60}; }

  signals:
    void pointed(const std::optional<std::size_t>& at);
    void picked(const std::optional<std::size_t>& at);
    void bolted(std::size_t at);
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

  private:
    [[nodiscard]] CombinationMapPicture picture() const;
    [[nodiscard]] std::optional<std::size_t> dotUnder(QPointF place) const;
    [[nodiscard]] std::optional<std::size_t> firstDot() const;
    [[nodiscard]] std::optional<std::size_t> dotToward(QPointF from, QPointF way) const;
    void layOut();
    void hover(QPointF place);
    void dragTo(QPointF place);
    void walk(int key);
    void showToolTip(QPoint local, QPoint global);
    void describe();

    const CombinationList& list_;
    int fittedFor_ = -1;  // the list's version the axes were last fitted to, settled
    CombinationMapScale scale_;
    std::vector<std::optional<QPointF>> places_;
    QPixmap dots_;          // null: to be painted anew
    int dotsVersion_ = -1;  // of the list
    std::optional<std::size_t> selected_;
    std::optional<std::size_t> pointed_;
    std::optional<BaselineMark> baseline_;
    std::optional<QPointF> press_;
    std::optional<WindowDrag> drag_;
    std::optional<TargetWindow> dragged_;
};

}  // namespace bolthole
