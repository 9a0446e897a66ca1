// The rows behind the hole board's table.
#include <QGuiApplication>
#include <algorithm>
#include <cmath>

#include "widgets/board/combination_dots.h"
#include "widgets/board/combination_table.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

QString spokenRank(const CombinationList& list, std::size_t at, bool present) {
    QString text = CombinationTableModel::tr("rank %1").arg(list.items()[at].rank + 1);
    text += present ? CombinationTableModel::tr(", current") : QString();
    return list.items()[at].problem ? text + CombinationTableModel::tr(", has a problem") : text;
}

}  // namespace

CombinationTableModel::CombinationTableModel(const CombinationList& list, QObject* parent)
    : QAbstractTableModel(parent), list_(list) {}

void CombinationTableModel::refresh() {
    std::vector<CombinationColumn> columns =
        list_.car() == nullptr ? std::vector<CombinationColumn>{} : combinationColumns(*list_.car());
    beginResetModel();
    car_ = list_.sharedCar();
    columns_ = std::move(columns);
    pointed_.reset();
    present_ = list_.present();
    if (std::ranges::find(columns_, sortedBy_) == columns_.end()) {
        sortedBy_ = {};
        order_ = Qt::AscendingOrder;
    }
    fillRows();
    endResetModel();
}

void CombinationTableModel::fillRows() {
    rows_.clear();
    for (const std::uint32_t at : list_.ranked()) {
        if (list_.items()[at].shown) {
            rows_.push_back(at);
        }
    }
    sortRows();
}

// Rows come in rank order and equal keys keep it, so every order is a whole one.
void CombinationTableModel::sortRows() {
    if (!isByRank()) {
        std::vector<double> keys(list_.items().size());
        for (const std::uint32_t at : rows_) {
            keys[at] = columnKey(sortedBy_, list_, at);
        }
        const bool down = order_ == Qt::DescendingOrder;
        std::ranges::stable_sort(rows_, [&](std::uint32_t one, std::uint32_t other) {
            const double a = keys[one];
            const double b = keys[other];
            if (std::isnan(a) || std::isnan(b)) {
                return !std::isnan(a) && std::isnan(b);
            }
            return down ? a > b : a < b;
        });
    }
    rowOf_.assign(list_.items().size(), -1);
    for (std::size_t row = 0; row < rows_.size(); ++row) {
        rowOf_[rows_[row]] = static_cast<int>(row);
    }
}

void CombinationTableModel::sort(int column, Qt::SortOrder order) {
    if (column < 0 || static_cast<std::size_t>(column) >= columns_.size()) {
        return;
    }
    const CombinationColumn& by = columns_[static_cast<std::size_t>(column)];
    if (by == sortedBy_ && order == order_) {
        return;
    }
    emit layoutAboutToBeChanged({}, QAbstractItemModel::VerticalSortHint);
    sortedBy_ = by;
    order_ = order;
    const QModelIndexList before = persistentIndexList();
    std::vector<std::uint32_t> items;
    for (const QModelIndex& index : before) {
        items.push_back(rows_[static_cast<std::size_t>(index.row())]);
    }
    fillRows();
    QModelIndexList after;
    for (qsizetype i = 0; i < before.size(); ++i) {
        after << index(rowOf_[items[static_cast<std::size_t>(i)]], before[i].column());
    }
    changePersistentIndexList(before, after);
    emit layoutChanged({}, QAbstractItemModel::VerticalSortHint);
    emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
    emit sorted();
}

int CombinationTableModel::sortColumn() const {
    const auto found = std::ranges::find(columns_, sortedBy_);
    return found == columns_.end() ? 0 : static_cast<int>(found - columns_.begin());
}

int CombinationTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int CombinationTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

std::optional<std::size_t> CombinationTableModel::itemAt(int row) const {
    if (row < 0 || static_cast<std::size_t>(row) >= rows_.size()) {
        return std::nullopt;
    }
    return rows_[static_cast<std::size_t>(row)];
}

std::optional<int> CombinationTableModel::rowOf(std::size_t at) const {
    return at < rowOf_.size() && rowOf_[at] >= 0 ? std::optional(rowOf_[at]) : std::nullopt;
}

void CombinationTableModel::touchRow(std::optional<std::size_t> at) {
    if (const std::optional<int> row = at ? rowOf(*at) : std::nullopt) {
        emit dataChanged(index(*row, 0), index(*row, columnCount() - 1), {Qt::BackgroundRole});
    }
}

void CombinationTableModel::showPointed(std::optional<std::size_t> at) {
    if (at != pointed_) {
        const std::optional<std::size_t> before = std::exchange(pointed_, at);
        touchRow(before);
        touchRow(at);
    }
}

QVariant CombinationTableModel::decoration(std::size_t at) const {
    const bool problem = list_.items()[at].problem;
    const bool present = present_ == at;
    if (!problem && !present) {
        return {};
    }
    return dotIcon(problem ? DotKind::problem : DotKind::plain, present, kCombinationIcon,
                   qGuiApp->devicePixelRatio());
}

// Nobody is led by a bold figure that rests on what nobody measured.
QFont CombinationTableModel::fontOf(const CombinationColumn& column, std::size_t at) const {
    const bool isChief = present_ == at || column.kind == CombinationColumn::Kind::antiSquat;
    return textFont(TextSize::body, isChief && !restsOnStarts(column, at));
}

bool CombinationTableModel::restsOnStarts(const CombinationColumn& column, std::size_t at) const {
    const std::optional<CombinationList::Basis> basis = basisOf(column);
    return basis && list_.items()[at].assembled && list_.restsOnStarts(at, *basis);
}

QString CombinationTableModel::toolTip(const CombinationColumn& column, std::size_t at) const {
    if (column.kind == CombinationColumn::Kind::problem) {
        return wrappedToolTip(columnText(column, list_, at));
    }
    return restsOnStarts(column, at)
               ? wrappedToolTip(tr("Rests on %1").arg(list_.startingWords(at, *basisOf(column))))
               : QString();
}

QString CombinationTableModel::spoken(const CombinationColumn& column, std::size_t at) const {
    if (column.kind == CombinationColumn::Kind::rank) {
        return spokenRank(list_, at, present_ == at);
    }
    const QString text = columnText(column, list_, at);
    return restsOnStarts(column, at) ? tr("%1, rests on starting numbers").arg(text) : text;
}

QVariant CombinationTableModel::data(const QModelIndex& index, int role) const {
    const std::optional<std::size_t> at = itemAt(index.row());
    if (!at || static_cast<std::size_t>(index.column()) >= columns_.size() || car_ != list_.sharedCar()) {
        return {};
    }
    const CombinationColumn& column = columns_[static_cast<std::size_t>(index.column())];
    switch (role) {
        case Qt::DisplayRole:
            return columnText(column, list_, *at);
        case Qt::ToolTipRole:
            return toolTip(column, *at);
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(isNumeric(column) ? Qt::AlignRight | Qt::AlignVCenter
                                                         : Qt::AlignLeft | Qt::AlignVCenter);
        case Qt::FontRole:
            return fontOf(column, *at);
        case Qt::ForegroundRole:
            if (column.kind == CombinationColumn::Kind::problem) {
                return theme().problem;
            }
            return column.kind == CombinationColumn::Kind::antiSquatTravel ? theme().muted : theme().ink;
        case Qt::BackgroundRole:
            if (pointed_ == *at) {
                return over(theme().focus, 0.10, theme().card);
            }
            return present_ == *at ? QVariant(over(theme().instantCenter, 0.10, theme().card)) : QVariant();
        case Qt::DecorationRole:
            return index.column() == 0 ? decoration(*at) : QVariant();
        case Qt::AccessibleTextRole:
            return spoken(column, *at);
        case kRestsOnStartsRole:
            return restsOnStarts(column, *at);
        default:
            return {};
    }
}

QVariant CombinationTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 ||
        static_cast<std::size_t>(section) >= columns_.size() || car_ == nullptr) {
        return {};
    }
    const CombinationColumn& column = columns_[static_cast<std::size_t>(section)];
    switch (role) {
        case Qt::DisplayRole: {
            const QString title = columnTitle(column, *car_, list_.style().units);
            return column == sortedBy_
                       ? title + QLatin1Char(' ') + QChar(order_ == Qt::AscendingOrder ? 0x2191 : 0x2193)
                       : title;
        }
        case Qt::ToolTipRole:
            return wrappedToolTip(columnHelp(column, *car_));
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(isNumeric(column) ? Qt::AlignRight | Qt::AlignVCenter
                                                         : Qt::AlignLeft | Qt::AlignVCenter);
        default:
            return {};
    }
}

}  // namespace bolthole
