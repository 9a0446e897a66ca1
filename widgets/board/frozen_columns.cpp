#include "widgets/board/frozen_columns.h"

#include <QApplication>
#include <QHeaderView>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>
#include <algorithm>

#include "widgets/kit/theme.h"

namespace bolthole {

namespace {
constexpr double kFrozenShare = 0.62;  // of the table's width, at most
constexpr int kNarrowest = 52;         // px: four letters and the mark of what was cut

// No column wider than this, and they fit into `room`; the narrowest where none fits.
int widestThatFits(const std::vector<int>& widths, int count, int room) {
    int widest = kNarrowest;
    for (const int most : widths) {
        int sum = 0;
        for (int column = 0; column < count; ++column) {
            sum += std::min(widths[static_cast<std::size_t>(column)], most);
        }
        if (sum <= room) {
            widest = std::max(widest, most);
        }
    }
    // Between two of the widths the columns wider than the smaller one share what is left.
    int sum = 0;
    int wider = 0;
    for (int column = 0; column < count; ++column) {
        const int width = widths[static_cast<std::size_t>(column)];
        sum += std::min(width, widest);
        wider += width > widest ? 1 : 0;
    }
    return wider > 0 ? widest + std::max(0, room - sum) / wider : widest;
}

}  // namespace

FrozenColumns::FrozenColumns(QTableView* table) : QTableView(table), table_(table) {
    setModel(table->model());
    QItemSelectionModel* own = selectionModel();
    setSelectionModel(table->selectionModel());
    delete own;
    setFocusPolicy(Qt::NoFocus);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setShowGrid(false);
    setWordWrap(false);
    setMouseTracking(true);
    setFrameShape(QFrame::NoFrame);
    setAutoScroll(false);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    verticalHeader()->hide();
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionsClickable(true);
    connect(horizontalHeader(), &QHeaderView::sectionClicked, this, &FrozenColumns::headerClicked);
    connect(horizontalHeader(), &QHeaderView::sectionResized, table,
            [table](int column, int, int width) { table->setColumnWidth(column, width); });
    connect(table->horizontalHeader(), &QHeaderView::sectionResized, this,
            [this](int column, int, int width) {
                if (!fitting_ && column < static_cast<int>(widths_.size())) {
                    widths_[static_cast<std::size_t>(column)] = width;
                    lieDown();
                }
            });
    connect(table->verticalScrollBar(), &QAbstractSlider::valueChanged, verticalScrollBar(),
            &QAbstractSlider::setValue);
    connect(table->horizontalScrollBar(), &QAbstractSlider::valueChanged, this,
            qOverload<>(&QWidget::update));
}

void FrozenColumns::hold(int count) {
    wanted_ = count;
    lieDown();
}

void FrozenColumns::takeWidths() {
    widths_.clear();
    for (int column = 0; column < table_->model()->columnCount(); ++column) {
        widths_.push_back(table_->columnWidth(column));
    }
}

int FrozenColumns::share() const {
    return static_cast<int>(kFrozenShare * table_->viewport()->width());
}

void FrozenColumns::fit() {
    const int count = std::min(wanted_, static_cast<int>(widths_.size()));
    const int widest = widestThatFits(widths_, count, share());
    fitting_ = true;
    for (int column = 0; column < count; ++column) {
        table_->setColumnWidth(column, std::min(widths_[static_cast<std::size_t>(column)], widest));
    }
    fitting_ = false;
}

void FrozenColumns::lieDown() {
    fit();
    const int most = share();
    int width = 0;
    held_ = 0;
    const QSignalBlocker quiet(horizontalHeader());
    for (int column = 0; column < table_->model()->columnCount(); ++column) {
        const int wide = table_->columnWidth(column);
        const bool shown = column == held_ && column < wanted_ && width + wide <= most;
        setColumnHidden(column, !shown);
        if (shown) {
            setColumnWidth(column, wide);
            width += wide;
            ++held_;
        }
    }
    verticalHeader()->setDefaultSectionSize(table_->verticalHeader()->defaultSectionSize());
    horizontalHeader()->setFixedHeight(table_->horizontalHeader()->height());
    const QRect seen = table_->viewport()->geometry();
    const int top = table_->horizontalHeader()->geometry().top();
    setGeometry(seen.left(), top, width, seen.bottom() + 1 - top);
    verticalScrollBar()->setValue(table_->verticalScrollBar()->value());
    setVisible(held_ > 0);
    raise();
    viewport()->update();
}

void FrozenColumns::wheelEvent(QWheelEvent* event) {
    QApplication::sendEvent(table_->viewport(), event);
}

// A line where the others go under.
void FrozenColumns::paintEvent(QPaintEvent* event) {
    QTableView::paintEvent(event);
    if (table_->horizontalScrollBar()->value() > 0) {
        QPainter painter(viewport());
        painter.fillRect(viewport()->width() - 1, 0, 1, viewport()->height(), theme().border);
    }
}

}  // namespace bolthole
