#include "widgets/readouts/figure_table.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <array>

#include "widgets/kit/number_field.h"
#include "widgets/kit/theme.h"
#include "widgets/readouts/uncertainty_delegate.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

constexpr std::array kRows{
    Figure::antiSquat,  Figure::icX,       Figure::icZ,        Figure::swingArmAngle,
    Figure::axleX,      Figure::pinion,    Figure::driveshaft, Figure::pinionToDriveshaft,
    Figure::frontJoint, Figure::rearJoint, Figure::plunge,     Figure::ground};

enum Column { kDroop, kRide, kBump, kCursor, kColumns };

}  // namespace

FigureTable::FigureTable(QWidget* parent)
    : QTableWidget(static_cast<int>(kRows.size()), kColumns, parent),
      uncertainty_(new UncertaintyDelegate(*this)) {
    setItemDelegate(uncertainty_);
    setObjectName(QStringLiteral("figureTable"));
    setAccessibleName(tr("Figures through travel"));
    setHorizontalHeaderLabels({tr("full droop"), tr("ride"), tr("full bump"), tr("at cursor")});
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionMode(QAbstractItemView::ContiguousSelection);
    setShowGrid(false);
    setAlternatingRowColors(true);
    setFrameShape(QFrame::NoFrame);
    setWordWrap(false);
    setTabKeyNavigation(false);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    horizontalHeader()->setDefaultAlignment(Qt::AlignRight | Qt::AlignVCenter);
    horizontalHeader()->setHighlightSections(false);
    verticalHeader()->setHighlightSections(false);
    for (int row = 0; row < rowCount(); ++row) {
        setVerticalHeaderItem(row, new QTableWidgetItem);
        for (int column = 0; column < kColumns; ++column) {
            auto* item = new QTableWidgetItem;
            item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            setItem(row, column, item);
        }
    }
    dress();
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &FigureTable::dress);
}

void FigureTable::dress() {
    setFont(textFont(TextSize::body));
    const int rowHeight = QFontMetrics(font()).height() + 6;
    verticalHeader()->setDefaultSectionSize(rowHeight);
    for (int row = 0; row < rowCount(); ++row) {
        item(row, kCursor)->setFont(textFont(TextSize::body, true));
        item(row, kCursor)->setForeground(theme().instantCenter.lighter(theme().dark ? 100 : 95));
    }
}

void FigureTable::showState(const BenchState& state) {
    const Units units = state.style.units;
    for (int row = 0; row < rowCount(); ++row) {
        verticalHeaderItem(row)->setText(figureWords(kRows[static_cast<std::size_t>(row)], units));
    }
    const auto& stations = state.trace.stations;
    const std::array<const Station*, 3> ends{stations.empty() ? nullptr : &stations.front(),
                                             &state.trace.ride,
                                             stations.empty() ? nullptr : &stations.back()};
    for (int column = kDroop; column <= kBump; ++column) {
        const Station* station = ends[static_cast<std::size_t>(column)];
        showColumn(column, station, units);
        showUncertainty(column, state, station);
    }
    showCursor(state);
    const QString tip = state.showsUncertainty && state.uncertainty.known
                            ? wrappedToolTip(uncertaintyMeaning(state.solvedCar, units))
                            : QString();
    if (toolTip() != tip) {
        setToolTip(tip);
    }
}

void FigureTable::showCursor(const BenchState& state) {
    showColumn(kCursor, &state.cursor, state.style.units);
    showUncertainty(kCursor, state, &state.cursor);
    uncertainty_->measure();
    viewport()->update();
}

void FigureTable::showColumn(int column, const Station* station, Units units) {
    for (int row = 0; row < rowCount(); ++row) {
        const Figure figure = kRows[static_cast<std::size_t>(row)];
        const double value = station == nullptr ? emptyRow()[0] : (*station)[figure];
        const QString text = QString::fromStdString(fineFigureText(value, quantityOf(figure), units));
        if (item(row, column)->text() != text) {
            item(row, column)->setText(text);
        }
    }
}

void FigureTable::showUncertainty(int column, const BenchState& state, const Station* station) {
    for (int row = 0; row < rowCount(); ++row) {
        const Figure figure = kRows[static_cast<std::size_t>(row)];
        UncertaintyDelegate::setPlusMinus(*item(row, column),
                                          state.showsUncertainty && station != nullptr
                                              ? stationUncertaintyWords(state.uncertainty, *station, figure,
                                                                        state.style.units, Fineness::fine)
                                              : QString());
    }
}

void FigureTable::keyPressEvent(QKeyEvent* event) {
    if (!event->matches(QKeySequence::Copy) || selectedRanges().isEmpty()) {
        QTableWidget::keyPressEvent(event);
        return;
    }
    const QTableWidgetSelectionRange range = selectedRanges().constFirst();
    QStringList lines;
    for (int row = range.topRow(); row <= range.bottomRow(); ++row) {
        QStringList cells{verticalHeaderItem(row)->text()};
        for (int column = range.leftColumn(); column <= range.rightColumn(); ++column) {
            cells << item(row, column)->text();
        }
        lines << cells.join(QLatin1Char('\t'));
    }
    QGuiApplication::clipboard()->setText(lines.join(QLatin1Char('\n')));
}

}  // namespace bolthole
