#include "widgets/pages/accuracy/accuracy_table.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/kit/number_field.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kShareRole = Qt::UserRole + 1;
constexpr int kBarWidth = 56;

/// The share as a bar, and in percent right of it.
class ShareBar : public QStyledItemDelegate {
  public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        QStyledItemDelegate::paint(painter, option, index);
        const double share = index.data(kShareRole).toDouble();
        const QRectF track(option.rect.left() + 8, option.rect.center().y() - 3, kBarWidth, 7);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        painter->setPen(QPen(theme().border, 1));
        painter->setBrush(theme().window);
        painter->drawRoundedRect(track, 3, 3);
        if (share > 0.004) {
            QRectF bar = track;
            bar.setWidth(std::max(3.0, share * track.width()));
            painter->setPen(Qt::NoPen);
            painter->setBrush(theme().instantCenter);
            painter->drawRoundedRect(bar, 3, 3);
        }
        painter->restore();
    }
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override {
        return QStyledItemDelegate::sizeHint(option, index) + QSize(kBarWidth + 16, 0);
    }
};

QString shareText(double share) {
    if (share == 0) {
        return QStringLiteral("0 %");
    }
    return share < 0.005 ? QStringLiteral("< 1 %") : QStringLiteral("%1 %").arg(std::lround(100 * share));
}

}  // namespace

AccuracyTable::AccuracyTable(QWidget* parent)
    : ReadTable(tr("What to measure again"),
                {tr("Number"), tr("Value"), tr("Accuracy"), tr("Taken with"), tr("Share"),
                 tr("With calipers"), tr("If exact")},
                parent) {
    setObjectName(QStringLiteral("accuracyTable"));
    setAccessibleDescription(
        tr("Enter goes to the number's own field; Tab to its plus or minus. C: taken "
           "with calipers. Delete: as its tool. Ctrl+C copies."));
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setItemDelegateForColumn(Column::share, new ShareBar(this));
    setMostRows(60);
    const std::array tips{
        tr("The measured number. Enter or a double click goes to its field."),
        tr("As it stands in the car."),
        tr("How far it may be off: 95 of 100 lie within."),
        tr("What such numbers are taken with; own ±: entered for this number alone."),
        tr("How much of the figure's spread, squared, stems from this number. All shares together make "
           "100 %."),
        tr("What the figure's ± would become if this one number were taken with calipers."),
        tr("What the figure's ± would become if this one number were free of error: no more can be gained "
           "by measuring it again.")};
    for (int column = 0; column < columnCount; ++column) {
        horizontalHeaderItem(column)->setToolTip(wrappedToolTip(tips[static_cast<std::size_t>(column)]));
    }
    connect(this, &QTableWidget::itemSelectionChanged, this, [this] {
        if (!showing_) {
            emit selectedChanged();
        }
    });
    connect(this, &QTableWidget::itemDoubleClicked, this, [this] {
        if (const FieldId* id = selected()) {
            emit numberRequested(*id);
        }
    });
}

void AccuracyTable::showRows(const std::vector<AccuracyRow>& rows, bool keepsNumber) {
    const bool keeps = keepsNumber && selected() != nullptr;
    const FieldId kept = keeps ? *selected() : FieldId{};
    const int column = std::max(0, currentColumn());
    showing_ = true;
    ids_.clear();
    setRows(static_cast<int>(rows.size()));
    for (int at = 0; at < static_cast<int>(rows.size()); ++at) {
        const AccuracyRow& row = rows[static_cast<std::size_t>(at)];
        ids_.push_back(row.id);
        setCell(at, Column::number, row.number, true);
        setCell(at, Column::value, row.value);
        setCell(at, Column::plusMinus, row.plusMinus);
        setCell(at, Column::tool, row.tool, true);
        setCell(at, Column::share, shareText(row.share));
        item(at, Column::share)->setData(kShareRole, row.share);
        setCell(at, Column::withCalipers,
                row.withCalipers.isEmpty() ? QString(QChar(0x2014)) : row.withCalipers);
        setCell(at, Column::ifExact, row.ifExact);
    }
    fit();
    const auto found = keeps ? std::ranges::find(ids_, kept) : ids_.end();
    if (!ids_.empty()) {
        const auto at = found == ids_.end() ? 0 : static_cast<int>(found - ids_.begin());
        setCurrentCell(at, column);
        selectRow(at);
    }
    showing_ = false;
}

bool AccuracyTable::selectNumber(const FieldId& id) {
    const auto found = std::ranges::find(ids_, id);
    if (found == ids_.end()) {
        return false;
    }
    const int at = static_cast<int>(found - ids_.begin());
    setCurrentCell(at, 0);
    selectRow(at);
    scrollToItem(item(at, 0));
    return true;
}

const FieldId* AccuracyTable::selected() const {
    const int row = currentRow();
    return row < 0 || row >= static_cast<int>(ids_.size()) ? nullptr : &ids_[static_cast<std::size_t>(row)];
}

// Delete must not reach a menu of the window before the table sees it.
bool AccuracyTable::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Delete || key == Qt::Key_Return || key == Qt::Key_Enter) {
            event->accept();
            return true;
        }
    }
    return ReadTable::event(event);
}

void AccuracyTable::keyPressEvent(QKeyEvent* event) {
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && selected() != nullptr) {
        emit numberRequested(*selected());
    } else if (event->key() == Qt::Key_C && event->modifiers() == Qt::NoModifier) {
        emit calipersRequested();
    } else if (event->key() == Qt::Key_Delete) {
        emit toolRequested();
    } else {
        ReadTable::keyPressEvent(event);
    }
}

}  // namespace bolthole
