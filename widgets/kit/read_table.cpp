#include "widgets/kit/read_table.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QStyledItemDelegate>
#include <algorithm>

#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

/// Cells with room on the side their text stands at, so that a number and the words after it stay apart.
class SpacedCells : public QStyledItemDelegate {
  public:
    using QStyledItemDelegate::QStyledItemDelegate;

  protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override {
        QStyledItemDelegate::initStyleOption(option, index);
        constexpr int kRoom = 4;
        const bool isText = (option->displayAlignment & Qt::AlignLeft) != 0;
        option->features |= QStyleOptionViewItem::HasDecoration;
        option->decorationSize = {kRoom, 1};
        option->decorationPosition = isText ? QStyleOptionViewItem::Left : QStyleOptionViewItem::Right;
    }
};

}  // namespace

void makeReadOnly(QTableWidget& table) {
    table.setAccessibleDescription(
        ReadTable::tr("Ctrl+C copies the selected cells, or everything, as a table."));
    table.setEditTriggers(QAbstractItemView::NoEditTriggers);
    table.setSelectionMode(QAbstractItemView::ContiguousSelection);
    table.setShowGrid(false);
    table.setAlternatingRowColors(true);
    table.setFrameShape(QFrame::NoFrame);
    table.setWordWrap(false);
    table.setTabKeyNavigation(false);
    table.setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
}

void chooseRows(QTableView& table) {
    table.setSelectionBehavior(QAbstractItemView::SelectRows);
    table.setSelectionMode(QAbstractItemView::SingleSelection);
    table.setEditTriggers(QAbstractItemView::NoEditTriggers);
    table.setTabKeyNavigation(false);
    table.setShowGrid(false);
    table.setWordWrap(false);
    table.setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    table.setFrameShape(QFrame::NoFrame);
    table.verticalHeader()->hide();
    table.verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    table.horizontalHeader()->setHighlightSections(false);
}

ReadTable::ReadTable(const QString& name, const QStringList& headings, QWidget* parent)
    : QTableWidget(0, static_cast<int>(headings.size()), parent) {
    setAccessibleName(name);
    setHorizontalHeaderLabels(headings);
    makeReadOnly(*this);
    setFont(textFont(TextSize::body));
    setItemDelegate(new SpacedCells(this));
    horizontalHeader()->setStyleSheet(QStringLiteral("QHeaderView::section { padding: 2px 9px; }"));
    verticalHeader()->hide();
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultSectionSize(QFontMetrics(font()).height() + 6);
    horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setDefaultAlignment(Qt::AlignRight | Qt::AlignVCenter);
}

void ReadTable::setMostRows(int rows) {
    mostRows_ = rows;
}

void ReadTable::setRows(int rows) {
    setRowCount(rows);
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columnCount(); ++column) {
            if (item(row, column) == nullptr) {
                setItem(row, column, new QTableWidgetItem);
            }
        }
    }
}

void ReadTable::setCell(int row, int column, const QString& text, bool isText) {
    QTableWidgetItem& cell = *item(row, column);
    if (cell.text() != text) {
        cell.setText(text);
    }
    const Qt::Alignment side = isText ? Qt::AlignLeft : Qt::AlignRight;
    cell.setTextAlignment(side | Qt::AlignVCenter);
    if (QTableWidgetItem* heading = horizontalHeaderItem(column)) {
        heading->setTextAlignment(side | Qt::AlignVCenter);
    }
}

void ReadTable::setStrong(int row, bool strong) {
    for (int column = 0; column < columnCount(); ++column) {
        item(row, column)->setFont(textFont(TextSize::body, strong));
    }
}

void ReadTable::setProblem(int row, int column, bool problem) {
    item(row, column)->setForeground(problem ? theme().problem : theme().ink);
}

void ReadTable::fit() {
    for (int column = 0; column < columnCount(); ++column) {
        if (horizontalHeader()->sectionResizeMode(column) != QHeaderView::Stretch) {
            resizeColumnToContents(column);
        }
    }
    const int rows = std::clamp(rowCount(), 1, mostRows_);
    const int frame = 2 * frameWidth() + 14;  // a horizontal scroll bar's height, should one be needed
    setFixedHeight(horizontalHeader()->sizeHint().height() + rows * verticalHeader()->defaultSectionSize() +
                   frame);
}

void ReadTable::copyCells() const {
    QTableWidgetSelectionRange range(0, 0, rowCount() - 1, columnCount() - 1);
    if (!selectedRanges().isEmpty()) {
        range = selectedRanges().constFirst();
    }
    QStringList lines;
    QStringList cells;
    for (int column = range.leftColumn(); column <= range.rightColumn(); ++column) {
        cells << horizontalHeaderItem(column)->text();
    }
    lines << cells.join(QLatin1Char('\t'));
    for (int row = range.topRow(); row <= range.bottomRow(); ++row) {
        cells.clear();
        for (int column = range.leftColumn(); column <= range.rightColumn(); ++column) {
            cells << item(row, column)->text();
        }
        lines << cells.join(QLatin1Char('\t'));
    }
    QGuiApplication::clipboard()->setText(lines.join(QLatin1Char('\n')));
}

void ReadTable::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) {
        copyCells();
        return;
    }
    QTableWidget::keyPressEvent(event);
}

}  // namespace bolthole
