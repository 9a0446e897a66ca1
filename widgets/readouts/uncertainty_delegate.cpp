#include "widgets/readouts/uncertainty_delegate.h"

#include <QApplication>
#include <QPainter>
#include <QTableWidget>
#include <algorithm>

#include "widgets/kit/cut_cell.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kGap = 5;   // between number and ±
constexpr int kEdge = 4;  // at the cell's right edge

}  // namespace

UncertaintyDelegate::UncertaintyDelegate(QTableWidget& table) : QStyledItemDelegate(&table), table_(table) {}

QFont UncertaintyDelegate::font() const {
    return textFont(TextSize::small);
}

void UncertaintyDelegate::setPlusMinus(QTableWidgetItem& item, const QString& plusMinus) {
    if (item.data(kRole).toString() == plusMinus) {
        return;
    }
    item.setData(kRole, plusMinus);
    item.setData(Qt::AccessibleTextRole,
                 plusMinus.isEmpty() ? QVariant() : QVariant(item.text() + ' ' + plusMinus));
}

void UncertaintyDelegate::measure() {
    const QFontMetrics metrics(font());
    widths_.assign(static_cast<std::size_t>(table_.columnCount()), 0);
    for (int column = 0; column < table_.columnCount(); ++column) {
        for (int row = 0; row < table_.rowCount(); ++row) {
            const QTableWidgetItem* item = table_.item(row, column);
            const QString plusMinus = item == nullptr ? QString() : item->data(kRole).toString();
            if (!plusMinus.isEmpty()) {
                int& width = widths_[static_cast<std::size_t>(column)];
                width = std::max(width, metrics.horizontalAdvance(plusMinus) + kGap);
            }
        }
    }
}

int UncertaintyDelegate::roomFor(int column) const {
    return static_cast<std::size_t>(column) < widths_.size() ? widths_[static_cast<std::size_t>(column)] : 0;
}

void UncertaintyDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                                const QModelIndex& index) const {
    const int room = roomFor(index.column());
    QStyleOptionViewItem cell = option;
    initStyleOption(&cell, index);
    const bool isCut = takeCutCell(cell);
    const QString number = cell.text;
    if (!isCut && room > 0) {
        cell.text.clear();
    }
    const QStyle* style = cell.widget == nullptr ? QApplication::style() : cell.widget->style();
    style->drawControl(QStyle::CE_ItemViewItem, &cell, painter, cell.widget);
    if (isCut || room == 0) {
        return;
    }
    const bool selected = (cell.state & QStyle::State_Selected) != 0;
    const QRect inner = cell.rect.adjusted(0, 0, -kEdge, 0);
    painter->save();
    painter->setFont(cell.font);
    painter->setPen(cell.palette.color(selected ? QPalette::HighlightedText : QPalette::Text));
    painter->drawText(inner.adjusted(0, 0, -room, 0), Qt::AlignRight | Qt::AlignVCenter, number);
    painter->setFont(font());
    if (!selected) {
        painter->setPen(theme().muted);
    }
    painter->drawText(QRect(inner.right() - room + kGap + 1, inner.top(), room - kGap, inner.height()),
                      Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, index.data(kRole).toString());
    painter->restore();
}

}  // namespace bolthole
