// Draws a number in a table's cell with its uncertainty beside it.
#pragma once

#include <QStyledItemDelegate>

class QTableWidget;
class QTableWidgetItem;

namespace bolthole {

/// The cell's text stays the number alone, for copying; what kRole holds stands muted to its right, in a
/// strip as wide as the widest of the table, so that the numbers stay in one line.
class UncertaintyDelegate : public QStyledItemDelegate {
    Q_OBJECT
  public:
    static constexpr int kRole = Qt::UserRole + 40;

    explicit UncertaintyDelegate(QTableWidget& table);

    /// Sets "± 4" of a cell, empty for none; screen readers hear it after the number.
    static void setPlusMinus(QTableWidgetItem& item, const QString& plusMinus);
    /// Takes the width of the widest; once cells were set.
    void measure();
    /// What a column with any needs beside its numbers, px; 0 where it has none.
    [[nodiscard]] int roomFor(int column) const;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

  private:
    [[nodiscard]] QFont font() const;

    QTableWidget& table_;
    std::vector<int> widths_;  // by column
};

}  // namespace bolthole
