#include "widgets/board/frozen_columns.h"

#include <QApplication>
#include <QHeaderView>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>
#include <algorithm>
#include <iterator>
#include <numeric>

#include "widgets/kit/read_table.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {
constexpr double kFrozenShare = 0.6;  // of the table's width, at most
constexpr int kNarrowest = 60;        // px: a short word, and the mark of what was cut

// The widths of the first columns, made to fit into `room`: the last gives way first, as far as its head
// allows.
std::vector<int> fitted(std::vector<int> widths, const QHeaderView& heads, int room) {
    int over = std::accumulate(widths.begin(), widths.end(), 0) - room;
    for (std::size_t column = widths.size(); column-- > 0 && over > 0;) {
        const int least = std::max(kNarrowest, heads.sectionSizeHint(static_cast<int>(column)));
        const int given = std::min(std::max(widths[column] - least, 0), over);
        widths[column] -= given;
        over -= given;
    }
    return widths;
}

}  // namespace

FrozenColumns::FrozenColumns(QTableView* table) : QTableView(table), table_(table) {
    setModel(table->model());
    QItemSelectionModel* own = selectionModel();
    setSelectionModel(table->selectionModel());
    delete own;
    chooseRows(*this);
    setFocusPolicy(Qt::NoFocus);
    setMouseTracking(true);
    setAutoScroll(false);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
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
    const auto count = std::min(static_cast<std::ptrdiff_t>(wanted_), std::ssize(widths_));
    const std::vector<int> widths =
        fitted({widths_.begin(), widths_.begin() + count}, *table_->horizontalHeader(), share());
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
