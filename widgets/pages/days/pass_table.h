// The log: a row a pass, its day as a heading over it.
#pragma once

#include <QAbstractTableModel>
#include <QTableView>
#include <optional>
#include <vector>

#include "widgets/pages/days/pass_book.h"

namespace bolthole {

/// The columns of the log, left to right.
enum class PassColumn {
    number,
    time,
    setup,
    changes,
    rearPressure,
    rebound,
    launchRpm,
    sixtyFoot,
    threeThirty,
    seen
};
inline constexpr int kPassColumns = 10;

/// Rows of headings and passes. Texts are made when they are asked for, so that thousands of passes open at
/// once.
class PassTableModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    /// `book` must outlive the model.
    explicit PassTableModel(const PassBook& book, QObject* parent = nullptr);

    /// The book has changed.
    void refresh();

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

    /// The pass of a row, as a row of Car::passes; nothing for a heading.
    [[nodiscard]] std::optional<std::size_t> passAt(int row) const;
    [[nodiscard]] std::optional<int> rowOf(std::size_t pass) const;
    /// Text of a heading; empty for a pass.
    [[nodiscard]] QString headingAt(int row) const;

  private:
    [[nodiscard]] QString text(std::size_t pass, PassColumn column) const;
    [[nodiscard]] QString spoken(std::size_t pass) const;
    [[nodiscard]] QVariant color(std::size_t pass, PassColumn column) const;

    struct Row {
        std::size_t pass;
        bool isHeading;
    };
    const PassBook& book_;
    std::vector<Row> rows_;
    std::vector<int> rowOf_;
};

/// The view: one pass selected at a time.
class PassTable : public QTableView {
    Q_OBJECT
  public:
    explicit PassTable(const PassBook& book, QWidget* parent = nullptr);

    /// The book has changed: the scroll position stays, at the end if it was there.
    void refresh();
    [[nodiscard]] const PassTableModel& passes() const { return *model_; }
    /// What stands in an empty log.
    [[nodiscard]] static QString howToBegin();
    /// Shows a pass as selected and scrolls to it; nothing: none.
    void showSelected(std::optional<std::size_t> pass);
    /// Scrolls to a pass.
    void reveal(std::size_t pass);

  signals:
    void picked(const std::optional<std::size_t>& pass);
    void opened(std::size_t pass);            ///< Enter or a double click
    void removeRequested(std::size_t pass);   ///< Delete
    void strikeRequested(std::size_t pass);   ///< S
    void restoreRequested(std::size_t pass);  ///< B
    void entryRequested();                    ///< down past the last pass, or N
    void columnsMoved();                      ///< widths or the scroll position across changed
    void menuRequested(const QPoint& global);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) override;

  private:
    void dress();
    void sizeColumns();
    void spanHeadings();
    [[nodiscard]] std::optional<std::size_t> selectedPass() const;
    bool takeLetter(int key, std::size_t pass);

    PassTableModel* model_;
    bool showing_ = false;  // selection is shown, not made
};

}  // namespace bolthole
