// The table of differences: every figure before and after, at ride, full bump, full droop and the cursor.
#pragma once

#include <QTableWidget>
#include <array>
#include <vector>

#include "geometry/compare/comparison.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

class GroupHeader;
class UncertaintyDelegate;

/// Rows are figures: those whose change tells somewhere, the largest at ride on top, then the quiet ones,
/// hidden unless unfolded. Beside
/// a change stands how far it may be off; one that is within that is neither bold nor called telling. Figures
/// that neither car has are left out. Where there is no room for everything, the places beside ride show the
/// change alone, whose tip says before and after, and what stands at the cursor goes first. Ctrl+C copies
/// what is selected, or everything, as tab-separated text.
class DifferenceTable : public QTableWidget {
    Q_OBJECT
  public:
    explicit DifferenceTable(QWidget* parent = nullptr);

    /// Shows the comparison and the cursors of `state`. Selection and scroll stay with their figures.
    void showState(const BenchState& state, const Comparison& comparison);
    /// Takes the columns at the cursor alone.
    void showCursor(const BenchState& state);

    /// Whether the quiet rows are shown.
    void setUnfolded(bool unfolded);
    [[nodiscard]] int tellingCount() const { return telling_; }
    /// Of the figures that tell at ride, those whose change there is within what the measurements may be off.
    [[nodiscard]] const std::vector<Figure>& cannotTell() const { return cannotTell_; }
    [[nodiscard]] int quietCount() const { return static_cast<int>(rows_.size()) - telling_; }

    [[nodiscard]] QSize sizeHint() const override { return {700, 160}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {200, 40}; }

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    enum Group { kRide, kBump, kDroop, kCursor, kGroups };
    // What is shown: all of it, before and after at ride alone, that without the cursor.
    enum class Extent { everything, changes, noCursor };
    struct Ends {
        const Station* before = nullptr;
        const Station* after = nullptr;
    };
    struct Mark {
        Figure figure;
        int column;
    };

    void orderRows(const std::array<Ends, kGroups>& places);
    void fillRow(int row);
    void fillGroup(int row, int group, const Ends& ends, const BenchState& state);
    [[nodiscard]] double uncertaintyOfChange(const BenchState& state, int group, Figure figure) const;
    [[nodiscard]] QString tipOf(int row, int group, const QString& plusMinus, bool isUntold) const;
    void setChange(int row, int group, const FigureChange& change, double uncertainty);
    void findCannotTell();
    void setCell(int row, int column, const QString& text);
    void dressRow(int row);
    void dress();
    void layOutColumns();
    [[nodiscard]] static bool isIn(Extent extent, int column);
    [[nodiscard]] int widthIn(Extent extent, int column) const;
    [[nodiscard]] int widthOf(Extent extent) const;
    [[nodiscard]] int targetWidth(int column) const;
    [[nodiscard]] std::vector<Mark> selectedMarks() const;
    void select(const std::vector<Mark>& marks);
    [[nodiscard]] QString headingOf(int column) const;
    void copyCells() const;

    GroupHeader* header_;
    UncertaintyDelegate* uncertainty_;
    std::vector<Figure> cannotTell_;
    std::vector<Figure> rows_;
    int telling_ = 0;
    bool unfolded_ = false;
    NumberStyle style_;
    std::array<int, std::size_t{3} * kGroups>
        widths_{};  // grown to what was shown, so that nothing jumps in a drag
};

/// Whether the cars differ at all: something turned, or a figure that is not the same.
[[nodiscard]] bool anythingDiffers(const Comparison& comparison);

}  // namespace bolthole
