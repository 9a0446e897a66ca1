#include "widgets/compare/difference_table.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "widgets/kit/group_header.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/read_table.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/readouts/uncertainty_delegate.h"
#include "widgets/scales/center_uncertainty.h"
#include "widgets/words/change_words.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

constexpr int kColumnsInGroup = 3;  // before, after, change
constexpr int kChange = 2;
constexpr int kCellMargin = 14;
constexpr int kUntoldRole = Qt::UserRole + 1;
constexpr int kTellingRole = Qt::UserRole + 2;
constexpr int kRowPad = 4;        // px over the text's height
constexpr int kMostStretch = 36;  // px a column may be wider than its contents

bool existsIn(const FigureChange& change) {
    return !std::isnan(change.before) || !std::isnan(change.after);
}

QString changeText(const FigureChange& change, Units units) {
    if (std::isnan(change.before) && !std::isnan(change.after)) {
        return DifferenceTable::tr("appears");
    }
    if (!std::isnan(change.before) && std::isnan(change.after)) {
        return DifferenceTable::tr("vanishes");
    }
    return change.isThroughInfinity
               ? DifferenceTable::tr("through ∞")
               : fineShownChange(change.before, change.after, quantityOf(change.figure), units);
}

QString cursorTitle(double travel, Units units) {
    const Quantity length = Quantity::length;
    return std::abs(travel) < 5e-5 ? DifferenceTable::tr("at the cursor: ride")
                                   : DifferenceTable::tr("at the cursor: %1 %2")
                                         .arg(signedFigure(travel, length, units), unitText(length, units));
}

}  // namespace

bool anythingDiffers(const Comparison& comparison) {
    if (!comparison.bolts.empty() || !comparison.lengths.empty() || !comparison.numbers.empty() ||
        !comparison.unshared.empty()) {
        return true;
    }
    constexpr double kRounding = 1e-6;  // of a telling change
    return std::ranges::any_of(kTravelPositions, [&](TravelPosition place) {
        const auto changes =
            changesAt(stationAt(comparison.before, place), stationAt(comparison.after, place));
        return std::ranges::any_of(changes, [](const FigureChange& change) {
            return change.tells() || change.weight() > kRounding;
        });
    });
}

DifferenceTable::DifferenceTable(QWidget* parent)
    : QTableWidget(0, kColumnsInGroup * kGroups, parent),
      header_(new GroupHeader(kColumnsInGroup, this)),
      uncertainty_(new UncertaintyDelegate(*this)) {
    setItemDelegate(uncertainty_);
    setObjectName(QStringLiteral("differences"));
    setAccessibleName(tr("Differences of the figures"));
    setHorizontalHeader(header_);
    QStringList labels;
    for (int group = 0; group < kGroups; ++group) {
        labels << tr("before") << tr("after") << tr("change");
    }
    setHorizontalHeaderLabels(labels);
    makeReadOnly(*this);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    verticalHeader()->setHighlightSections(false);
    dress();
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &DifferenceTable::dress);
}

void DifferenceTable::dress() {
    setFont(textFont(TextSize::body));
    verticalHeader()->setDefaultSectionSize(QFontMetrics(font()).height() + kRowPad);
    for (int row = 0; row < rowCount(); ++row) {
        dressRow(row);
    }
    layOutColumns();
}

// Before muted, after in ink, a telling change bold as well, one that can't be told muted; a quiet row is
// muted throughout.
void DifferenceTable::dressRow(int row) {
    for (int column = 0; column < columnCount(); ++column) {
        QTableWidgetItem& cell = *item(row, column);
        const bool bold = cell.data(Qt::UserRole).toBool();
        const bool isQuiet =
            row >= telling_ || column % kColumnsInGroup == 0 || cell.data(kUntoldRole).toBool();
        cell.setForeground(isQuiet && !bold ? theme().muted : theme().ink);
        cell.setFont(textFont(TextSize::body, bold));
    }
}

void DifferenceTable::showState(const BenchState& state, const Comparison& comparison) {
    if (state.style != style_) {
        style_ = state.style;
        widths_.fill(0);
    }
    std::array<Ends, kGroups> places;
    for (std::size_t group = 0; group < kTravelPositions.size(); ++group) {
        places[group] = {stationAt(comparison.before, kTravelPositions[group]),
                         stationAt(comparison.after, kTravelPositions[group])};
    }
    places[kCursor] = {state.baseline ? &state.baseline->cursor : nullptr, &state.cursor};
    const std::vector<Mark> marks = selectedMarks();
    const std::vector<Figure> old = rows_;
    orderRows(places);
    for (int row = 0; row < rowCount(); ++row) {
        fillRow(row);
        for (int group = 0; group < kGroups; ++group) {
            fillGroup(row, group, places[static_cast<std::size_t>(group)], state);
        }
        dressRow(row);
        setRowHidden(row, row >= telling_ && !unfolded_);
    }
    header_->setGroups(
        {tr("at ride"), tr("full bump"), tr("full droop"), cursorTitle(state.cursorTravel, style_.units)});
    findCannotTell();
    uncertainty_->measure();
    if (rows_ != old) {
        select(marks);
    }
    layOutColumns();
}

void DifferenceTable::showCursor(const BenchState& state) {
    for (int row = 0; row < rowCount(); ++row) {
        fillGroup(row, kCursor, {state.baseline ? &state.baseline->cursor : nullptr, &state.cursor}, state);
        dressRow(row);
    }
    header_->setGroups(
        {tr("at ride"), tr("full bump"), tr("full droop"), cursorTitle(state.cursorTravel, style_.units)});
    uncertainty_->measure();
    layOutColumns();
}

// The cursor has no say: rows must not hop while it moves.
void DifferenceTable::orderRows(const std::array<Ends, kGroups>& places) {
    std::vector<Figure> quiet;
    rows_.clear();
    for (const FigureChange& atRide : changesAt(places[kRide].before, places[kRide].after)) {
        bool exists = false;
        bool tells = false;
        for (const int group : {kRide, kBump, kDroop}) {
            const Ends& ends = places[static_cast<std::size_t>(group)];
            const FigureChange change = changeAt(atRide.figure, ends.before, ends.after);
            exists = exists || existsIn(change);
            tells = tells || change.tells();
        }
        if (exists) {
            (tells ? rows_ : quiet).push_back(atRide.figure);
        }
    }
    telling_ = static_cast<int>(rows_.size());
    rows_.insert(rows_.end(), quiet.begin(), quiet.end());
    setRowCount(static_cast<int>(rows_.size()));
}

void DifferenceTable::fillRow(int row) {
    if (verticalHeaderItem(row) == nullptr) {
        setVerticalHeaderItem(row, new QTableWidgetItem);
        for (int column = 0; column < columnCount(); ++column) {
            auto* cell = new QTableWidgetItem;
            cell->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            setItem(row, column, cell);
        }
    }
    const QString words = figureWords(rows_[static_cast<std::size_t>(row)], style_.units);
    if (verticalHeaderItem(row)->text() != words) {
        verticalHeaderItem(row)->setText(words);
    }
}

// NaN where it is not to be seen or not known.
double DifferenceTable::uncertaintyOfChange(const BenchState& state, int group, Figure figure) const {
    if (!state.showsUncertainty || !state.baseline || !state.baseline->uncertainty.known ||
        !state.uncertainty.known) {
        return std::numeric_limits<double>::quiet_NaN();
    }
    const auto index = static_cast<std::size_t>(figure);
    if (group == kCursor) {
        return differenceUncertaintyAt(state.baseline->uncertainty, state.uncertainty, index,
                                       state.cursorTravel);
    }
    const std::size_t place = group == kRide ? 0 : group == kBump ? kUncertaintyStations : 1;
    return uncertaintyOfDifference(state.baseline->uncertainty, state.uncertainty, place, index);
}

void DifferenceTable::setChange(int row, int group, const FigureChange& change, double uncertainty) {
    const int column = kColumnsInGroup * group + kChange;
    setCell(row, column, changeText(change, style_.units));
    const QString plusMinus =
        std::isnan(change.change()) || change.isThroughInfinity
            ? QString()
            : uncertaintyWords(uncertainty, quantityOf(change.figure), style_.units, Fineness::fine);
    const bool isUntold = !plusMinus.isEmpty() && cannotTellApart(change.change(), uncertainty);
    QTableWidgetItem& cell = *item(row, column);
    UncertaintyDelegate::setPlusMinus(cell, isUntold ? tr("within %1").arg(plusMinus) : plusMinus);
    cell.setData(Qt::UserRole, change.tells() && !isUntold);
    cell.setData(kUntoldRole, isUntold);
    cell.setData(kTellingRole, change.tells());
    cell.setToolTip(wrappedToolTip(tipOf(row, group, plusMinus, isUntold)));
}

// Before and after are said too: their columns may be hidden.
QString DifferenceTable::tipOf(int row, int group, const QString& plusMinus, bool isUntold) const {
    const auto text = [&](int column) { return item(row, kColumnsInGroup * group + column)->text(); };
    QString ends = tr("Before %1, after %2.").arg(text(0), text(1));
    if (plusMinus.isEmpty()) {
        return ends;
    }
    const QString words =
        isUntold ? tr("%1 %2: %3, it is less than we can measure.")
                       .arg(text(kChange), plusMinus, cannotTellWords())
                 : tr("%1 %2: more than the measurements may be off.").arg(text(kChange), plusMinus);
    return ends + QLatin1Char(' ') + words;
}

void DifferenceTable::findCannotTell() {
    cannotTell_.clear();
    for (int row = 0; row < telling_; ++row) {
        const QTableWidgetItem& atRide = *item(row, kColumnsInGroup * kRide + kChange);
        if (atRide.data(kUntoldRole).toBool() && atRide.data(kTellingRole).toBool()) {
            cannotTell_.push_back(rows_[static_cast<std::size_t>(row)]);
        }
    }
}

void DifferenceTable::fillGroup(int row, int group, const Ends& ends, const BenchState& state) {
    const Figure figure = rows_[static_cast<std::size_t>(row)];
    const Quantity quantity = quantityOf(figure);
    const FigureChange change = changeAt(figure, ends.before, ends.after);
    const auto text = [&](double value) {
        return QString::fromStdString(fineFigureText(value, quantity, style_.units));
    };
    const int first = kColumnsInGroup * group;
    setCell(row, first, text(change.before));
    setCell(row, first + 1, text(change.after));
    setChange(row, group, change, uncertaintyOfChange(state, group, figure));
}

void DifferenceTable::setCell(int row, int column, const QString& text) {
    if (item(row, column)->text() != text) {
        item(row, column)->setText(text);
    }
}

void DifferenceTable::setUnfolded(bool unfolded) {
    unfolded_ = unfolded;
    for (int row = telling_; row < rowCount(); ++row) {
        setRowHidden(row, !unfolded_);
    }
}

int DifferenceTable::targetWidth(int column) const {
    const QFontMetrics plain(textFont(TextSize::body));
    const QFontMetrics bold(textFont(TextSize::body, true));
    const QFontMetrics label(textFont(TextSize::small));
    int width = label.horizontalAdvance(horizontalHeaderItem(column)->text());
    for (int row = 0; row < rowCount(); ++row) {
        const QTableWidgetItem& cell = *item(row, column);
        const QFontMetrics& metrics = cell.data(Qt::UserRole).toBool() ? bold : plain;
        width = std::max(width, metrics.horizontalAdvance(cell.text()));
    }
    return width + kCellMargin + uncertainty_->roomFor(column);
}

bool DifferenceTable::isIn(Extent extent, int column) {
    const int group = column / kColumnsInGroup;
    if (extent == Extent::everything || group == kRide) {
        return true;
    }
    return column % kColumnsInGroup == kChange && (group != kCursor || extent == Extent::changes);
}

// A change that stands alone is as wide as the name of its place.
int DifferenceTable::widthIn(Extent extent, int column) const {
    const int width = widths_[static_cast<std::size_t>(column)];
    const int group = column / kColumnsInGroup;
    return extent == Extent::everything || group == kRide ? width
                                                          : std::max(width, header_->nameWidth(group));
}

int DifferenceTable::widthOf(Extent extent) const {
    int sum = 0;
    for (int column = 0; column < columnCount(); ++column) {
        sum += isIn(extent, column) ? widthIn(extent, column) : 0;
    }
    return sum;
}

// As much as there is room for.
void DifferenceTable::layOutColumns() {
    for (int column = 0; column < columnCount(); ++column) {
        int& width = widths_[static_cast<std::size_t>(column)];
        width = std::max(width, targetWidth(column));
    }
    Extent extent = Extent::everything;
    for (const Extent less : {Extent::changes, Extent::noCursor}) {
        extent = widthOf(extent) > viewport()->width() ? less : extent;
    }
    int shown = 0;
    for (int column = 0; column < columnCount(); ++column) {
        setColumnHidden(column, !isIn(extent, column));
        shown += isIn(extent, column) ? 1 : 0;
    }
    const int spare = std::clamp((viewport()->width() - widthOf(extent)) / shown, 0, kMostStretch);
    for (int column = 0; column < columnCount(); ++column) {
        const int width = widthIn(extent, column) + spare;
        if (isIn(extent, column) && columnWidth(column) != width) {
            setColumnWidth(column, width);
        }
    }
}

void DifferenceTable::resizeEvent(QResizeEvent* event) {
    QTableWidget::resizeEvent(event);
    layOutColumns();
}

// A hairline parts the groups, as in the header.
void DifferenceTable::paintEvent(QPaintEvent* event) {
    QTableWidget::paintEvent(event);
    QPainter painter(viewport());
    painter.setPen(theme().border);
    const int bottom = std::max(0, verticalHeader()->length() - verticalScrollBar()->value());
    for (int group = 1; group < kGroups; ++group) {
        if (const int first = header_->firstShown(group); first >= 0) {
            const int x = columnViewportPosition(first);
            painter.drawLine(x, 0, x, bottom);
        }
    }
}

std::vector<DifferenceTable::Mark> DifferenceTable::selectedMarks() const {
    std::vector<Mark> marks;
    for (const QModelIndex& index : selectedIndexes()) {
        marks.push_back({rows_[static_cast<std::size_t>(index.row())], index.column()});
    }
    if (const QModelIndex current = currentIndex(); current.isValid()) {
        marks.push_back({rows_[static_cast<std::size_t>(current.row())], current.column()});
    }
    return marks;
}

// The last mark is the current cell.
void DifferenceTable::select(const std::vector<Mark>& marks) {
    QItemSelection selection;
    QModelIndex current;
    for (const Mark& mark : marks) {
        const auto row = std::ranges::find(rows_, mark.figure);
        if (row != rows_.end()) {
            current = model()->index(static_cast<int>(row - rows_.begin()), mark.column);
            if (!selection.contains(current)) {
                selection.select(current, current);
            }
        }
    }
    const int scrolled = verticalScrollBar()->value();
    selectionModel()->select(selection, QItemSelectionModel::ClearAndSelect);
    selectionModel()->setCurrentIndex(current, QItemSelectionModel::NoUpdate);
    verticalScrollBar()->setValue(scrolled);
}

QString DifferenceTable::headingOf(int column) const {
    return header_->groups().value(column / kColumnsInGroup) + QLatin1Char(' ') +
           horizontalHeaderItem(column)->text();
}

void DifferenceTable::keyPressEvent(QKeyEvent* event) {
    if (!event->matches(QKeySequence::Copy)) {
        QTableWidget::keyPressEvent(event);
        return;
    }
    copyCells();
}

void DifferenceTable::copyCells() const {
    std::set<int> rows;
    std::set<int> columns;
    for (const QModelIndex& index : selectedIndexes()) {
        rows.insert(index.row());
        columns.insert(index.column());
    }
    const bool everything = rows.empty();
    QStringList heading{tr("figure")};
    for (int column = 0; column < columnCount(); ++column) {
        if (everything || columns.contains(column)) {
            heading << headingOf(column);
        }
    }
    QStringList lines{heading.join(QLatin1Char('\t'))};
    for (int row = 0; row < rowCount(); ++row) {
        if (isRowHidden(row) || !(everything || rows.contains(row))) {
            continue;
        }
        QStringList cells{verticalHeaderItem(row)->text()};
        for (int column = 0; column < columnCount(); ++column) {
            if (everything || columns.contains(column)) {
                cells << item(row, column)->text();
            }
        }
        lines << cells.join(QLatin1Char('\t'));
    }
    QGuiApplication::clipboard()->setText(lines.join(QLatin1Char('\n')));
}

}  // namespace bolthole
