// The table of the hole board: every combination a row.
#pragma once

#include <QAbstractTableModel>
#include <QPixmap>
#include <QTableView>
#include <optional>
#include <vector>

#include "widgets/board/combination_columns.h"

namespace bolthole {

/// Role of a cell: whether it shows a figure that rests on a starting number.
inline constexpr int kRestsOnStartsRole = Qt::UserRole + 1;

/// The rows the filter lets through, sorted. Texts are made when they are asked for.
class CombinationTableModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    /// The list must outlive the model.
    explicit CombinationTableModel(const CombinationList& list, QObject* parent = nullptr);

    /// The list or its filter has changed. The column sorted by stays, or rank where it is gone.
    void refresh();
    void sort(int column, Qt::SortOrder order) override;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

    /// Place in the list of a row, and the row of a place; nothing if the filter holds it back.
    [[nodiscard]] std::optional<std::size_t> itemAt(int row) const;
    [[nodiscard]] std::optional<int> rowOf(std::size_t at) const;
    [[nodiscard]] const std::vector<CombinationColumn>& columns() const { return columns_; }
    [[nodiscard]] int sortColumn() const;
    [[nodiscard]] Qt::SortOrder sortOrder() const { return order_; }
    [[nodiscard]] bool isByRank() const {
        return sortedBy_ == CombinationColumn{} && order_ == Qt::AscendingOrder;
    }
    /// Tints the row pointed at.
    void showPointed(std::optional<std::size_t> at);

  signals:
    void sorted();

  private:
    [[nodiscard]] QVariant decoration(std::size_t at) const;
    [[nodiscard]] QFont fontOf(const CombinationColumn& column, std::size_t at) const;
    [[nodiscard]] bool restsOnStarts(const CombinationColumn& column, std::size_t at) const;
    [[nodiscard]] QString toolTip(const CombinationColumn& column, std::size_t at) const;
    [[nodiscard]] QString spoken(const CombinationColumn& column, std::size_t at) const;
    void fillRows();
    void sortRows();
    void touchRow(std::optional<std::size_t> at);

    const CombinationList& list_;
    std::shared_ptr<const Car> car_;  // the columns are for
    std::vector<CombinationColumn> columns_;
    std::vector<std::uint32_t> rows_;
    std::vector<int> rowOf_;  // of the list's items; -1: not shown
    std::optional<std::size_t> present_;
    std::optional<std::size_t> pointed_;
    CombinationColumn sortedBy_;
    Qt::SortOrder order_ = Qt::AscendingOrder;
};

class FrozenColumns;

/// The view: one row selected at a time, pointing and picking told apart.
class CombinationTable : public QTableView {
    Q_OBJECT
  public:
    explicit CombinationTable(const CombinationList& list, QWidget* parent = nullptr);

    /// The list or its filter has changed: scroll position, sort order and column widths stay.
    void refresh();
    /// What is selected and pointed at; `reveal` scrolls to it.
    void showMarks(std::optional<std::size_t> selected, std::optional<std::size_t> pointed, bool reveal);
    [[nodiscard]] CombinationTableModel& combinations() { return *model_; }

  signals:
    void pointed(const std::optional<std::size_t>& at);
    void picked(const std::optional<std::size_t>& at);
    void bolted(std::size_t at);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;
    bool event(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) override;

  private:
    void dress();
    void sizeColumns();
    void sortBy(int column);
    void buildFrozen();
    [[nodiscard]] std::optional<std::size_t> selectedItem() const;

    const CombinationList& list_;
    CombinationTableModel* model_;
    FrozenColumns* frozen_ = nullptr;  // rank, holes and problem
    std::vector<CombinationColumn> sizedFor_;
    LengthTreatment sizedLengths_ = LengthTreatment::keep;
    NumberStyle sizedStyle_;
    bool showing_ = false;  // selection is shown, not made
};

}  // namespace bolthole
