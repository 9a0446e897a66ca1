// The leading columns of a table, which stay in sight while the others scroll.
#pragma once

#include <QTableView>
#include <vector>

namespace bolthole {

/// Lies over the left of a table, shows its first columns again, and follows it: rows, heights, widths,
/// selection. The table keeps the keys; what is clicked or pointed at here is the table's to answer: the
/// signals of QAbstractItemView.
class FrozenColumns : public QTableView {
    Q_OBJECT
  public:
    /// `table` is the parent and has its model already. Its columns must stay in their order.
    explicit FrozenColumns(QTableView* table);

    /// Holds the first `count` columns, narrower than they would be where they would take more than their
    /// share of the table, and fewer where even that is too much.
    void hold(int count);
    /// The table's columns have the widths now that they should have where there is room.
    void takeWidths();
    /// Lies down anew, after the table was resized or given columns.
    void lieDown();
    /// How many are held now.
    [[nodiscard]] int held() const { return held_; }

  signals:
    void headerClicked(int column);

  protected:
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    void fit();
    [[nodiscard]] int share() const;

    QTableView* table_;
    std::vector<int> widths_;  // px, where there is room
    bool fitting_ = false;     // widths are set here, not by the person
    int wanted_ = 0;
    int held_ = 0;
};

}  // namespace bolthole
