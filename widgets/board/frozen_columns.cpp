#include "widgets/board/frozen_columns.h"

#include <QApplication>
#include <QHeaderView>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>
#include <algorithm>
#include <numeric>

#include "widgets/kit/theme.h"

namespace bolthole {

namespace {
constexpr double kFrozenShare = 0.62;  // of the table's width, at most
constexpr int kNarrowest = 76;         // px: a word, and the mark of what was cut

// The widths of the first `count`, made to fit into `room`: the last gives way first, as far as it can.
std::vector<int> fitted(const std::vector<int>& widths, int count, int room) {
    std::vector<int> narrower(widths.begin(), widths.begin() + count);
    int over = std::accumulate(narrower.begin(), narrower.end(), 0) - room;
    for (auto width = narrower.rbegin(); width != narrower.rend() && over > 0; ++width) {
        const int given = std::clamp(*width - kNarrowest, 0, over);
        *width -= given;
        over -= given;
    }
    return narrower;
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
    const std::vector<int> widths =
        fitted(widths_, std::min(wanted_, static_cast<int>(widths_.size())), share());
    fitting_ = true;
    for (int column = 0; const int width : widths) {
        table_->setColumnWidth(column++, width);
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
