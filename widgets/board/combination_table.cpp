#include "widgets/board/combination_table.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>

#include "widgets/board/combination_dots.h"
#include "widgets/board/frozen_columns.h"
#include "widgets/kit/cut_cell.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/read_table.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kRowPad = 4;         // px over the text's height
constexpr int kCellPad = 16;       // px beside a text
constexpr int kTextPad = 30;       // the same where the widest text is the car's own, with nothing to spare
constexpr int kWidestStart = 330;  // px
constexpr int kEmptyInset = 20;    // px

/// Paints rows whole: the focus frame belongs to the table, not to one cell. `frozen` lies over the view's
/// left; null: nothing does.
class RowDelegate : public QStyledItemDelegate {
  public:
    RowDelegate(QObject* parent, const FrozenColumns* frozen)
        : QStyledItemDelegate(parent), frozen_(frozen) {}

  protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override {
        QStyledItemDelegate::initStyleOption(option, index);
        option->state &= ~QStyle::State_HasFocus;
        takeCutCell(*option, held());
    }
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        QStyledItemDelegate::paint(painter, option, index);
        QStyleOptionViewItem cell = option;
        cell.text = index.data().toString();
        if (index.data(kRestsOnStartsRole).toBool() && !takeCutCell(cell, held())) {
            dotFigure(*painter, option, index);
        }
    }

  private:
    [[nodiscard]] int held() const {
        if (frozen_ == nullptr || !frozen_->isVisible()) {
            return 0;
        }
        const auto* table = static_cast<const QAbstractItemView*>(parent());
        return frozen_->x() + frozen_->width() - table->viewport()->x();
    }

    // As under a field that holds a starting number.
    static void dotFigure(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index) {
        constexpr double kInset = 7;  // px between cell and text
        const QFontMetricsF metrics(index.data(Qt::FontRole).value<QFont>());
        const double room = option.rect.width() - 2 * kInset;
        const double width = std::min(metrics.horizontalAdvance(index.data().toString()), room);
        const bool isRight =
            index.data(Qt::TextAlignmentRole).value<Qt::Alignment>().testFlag(Qt::AlignRight);
        const double left = isRight ? option.rect.right() - kInset - width : option.rect.left() + kInset;
        drawStartingDots(painter, left, left + width, option.rect.bottom() - 0.5);
    }

    const FrozenColumns* frozen_;
};

}  // namespace

CombinationTable::CombinationTable(const CombinationList& list, QWidget* parent)
    : QTableView(parent), list_(list), model_(new CombinationTableModel(list, this)) {
    setObjectName(QStringLiteral("combinationTable"));
    setAccessibleName(tr("Table of hole combinations"));
    setModel(model_);
    chooseRows(*this);
    setMouseTracking(true);
    horizontalHeader()->setSectionsClickable(true);
    connect(horizontalHeader(), &QHeaderView::sectionClicked, this, &CombinationTable::sortBy);
    connect(this, &QAbstractItemView::entered, this,
            [this](const QModelIndex& index) { emit pointed(model_->itemAt(index.row())); });
    connect(this, &QAbstractItemView::viewportEntered, this, [this] { emit pointed(std::nullopt); });
    connect(this, &QAbstractItemView::doubleClicked, this, [this](const QModelIndex& index) {
        if (const std::optional<std::size_t> at = model_->itemAt(index.row())) {
            emit bolted(*at);
        }
    });
    buildFrozen();
    dress();
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &CombinationTable::dress);
}

void CombinationTable::buildFrozen() {
    frozen_ = new FrozenColumns(this);
    frozen_->setObjectName(QStringLiteral("frozenColumns"));
    frozen_->setItemDelegate(new RowDelegate(frozen_, nullptr));
    setItemDelegate(new RowDelegate(this, frozen_));
    connect(frozen_, &FrozenColumns::headerClicked, this, &CombinationTable::sortBy);
    connect(frozen_, &QAbstractItemView::entered, this, &QAbstractItemView::entered);
    connect(frozen_, &QAbstractItemView::viewportEntered, this, &QAbstractItemView::viewportEntered);
    connect(frozen_, &QAbstractItemView::doubleClicked, this, &QAbstractItemView::doubleClicked);
    connect(frozen_, &QAbstractItemView::clicked, this, [this] { setFocus(Qt::MouseFocusReason); });
}

void CombinationTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    if (frozen_ != nullptr) {
        frozen_->lieDown();
    }
}

void CombinationTable::dress() {
    setFont(textFont(TextSize::body));
    horizontalHeader()->setFont(textFont(TextSize::small));
    verticalHeader()->setDefaultSectionSize(QFontMetrics(font()).height() + kRowPad);
    setStyleSheet(QStringLiteral("QTableView { border: 2px solid %1; selection-background-color: %2; "
                                 "selection-color: %3; } QTableView:focus { border-color: %4; }"
                                 "QTableView::item { padding: 0px 6px; }"
                                 "QAbstractScrollArea::corner { background: transparent; border: none; }")
                      .arg(theme().card.name(), over(theme().focus, 0.22, theme().card).name(),
                           theme().ink.name(), theme().focus.name()));
    frozen_->setFont(font());
    frozen_->horizontalHeader()->setFont(horizontalHeader()->font());
    frozen_->setStyleSheet(QStringLiteral("QTableView, QTableView:focus { border: none; }"));
    frozen_->lieDown();
    viewport()->update();
}

void CombinationTable::refresh() {
    const int down = verticalScrollBar()->value();
    const int across = horizontalScrollBar()->value();
    showing_ = true;
    model_->refresh();
    sizeColumns();
    showing_ = false;
    verticalScrollBar()->setValue(down);
    horizontalScrollBar()->setValue(across);
    frozen_->hold(frozenCount(model_->columns()));
}

// A second click on a column turns its order about.
void CombinationTable::sortBy(int column) {
    const bool again = column == model_->sortColumn() && model_->sortOrder() == Qt::AscendingOrder;
    model_->sort(column, again ? Qt::DescendingOrder : Qt::AscendingOrder);
}

// Only where the columns are others: what the person has set stays.
void CombinationTable::sizeColumns() {
    if (list_.car() == nullptr || (model_->columns() == sizedFor_ && list_.lengths() == sizedLengths_ &&
                                   list_.style() == sizedStyle_)) {
        return;
    }
    sizedFor_ = model_->columns();
    sizedLengths_ = list_.lengths();
    sizedStyle_ = list_.style();
    frozen_->hold(0);  // as many as the car before held would be narrowed while they are being sized
    const QFontMetrics cell(textFont(TextSize::body, true));
    const QFontMetrics head(horizontalHeader()->font());
    for (int column = 0; column < model_->columnCount(); ++column) {
        const CombinationColumn& what = sizedFor_[static_cast<std::size_t>(column)];
        const QString title = columnTitle(what, *list_.car(), list_.style().units);
        const int icon = column == 0 ? kCombinationIcon : 0;
        const bool isOwn =
            what.kind == CombinationColumn::Kind::names || what.kind == CombinationColumn::Kind::hole;
        const int text =
            cell.horizontalAdvance(widestText(what, list_)) + icon + (isOwn ? kTextPad : kCellPad);
        const int width = std::max(text, head.horizontalAdvance(title) + 12 + kCellPad);
        setColumnWidth(column, std::min(width, kWidestStart));
    }
    frozen_->takeWidths();
}

void CombinationTable::showMarks(std::optional<std::size_t> selected, std::optional<std::size_t> pointed,
                                 bool reveal) {
    showing_ = true;
    model_->showPointed(pointed);
    const std::optional<int> row = selected ? model_->rowOf(*selected) : std::nullopt;
    if (!row) {
        if (currentIndex().isValid() || selectionModel()->hasSelection()) {
            selectionModel()->clear();
        }
    } else if (currentIndex().row() != *row || !selectionModel()->isRowSelected(*row, {})) {
        const int column = std::max(0, currentIndex().column());
        setAutoScroll(false);
        selectionModel()->setCurrentIndex(model_->index(*row, column),
                                          QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
        setAutoScroll(true);
    }
    if (row && reveal) {
        const int across = horizontalScrollBar()->value();
        scrollTo(model_->index(*row, 0));
        horizontalScrollBar()->setValue(across);
    }
    showing_ = false;
}

std::optional<std::size_t> CombinationTable::selectedItem() const {
    const QModelIndexList rows = selectionModel()->selectedRows();
    return rows.isEmpty() ? std::nullopt : model_->itemAt(rows.constFirst().row());
}

void CombinationTable::selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) {
    QTableView::selectionChanged(selected, deselected);
    if (!showing_) {
        emit picked(selectedItem());
    }
}

void CombinationTable::keyPressEvent(QKeyEvent* event) {
    const std::optional<std::size_t> at = selectedItem();
    if (!at && currentIndex().isValid() && (event->key() == Qt::Key_Down || event->key() == Qt::Key_Up)) {
        selectRow(currentIndex().row());  // the first key shows where one is
        return;
    }
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && at) {
        emit bolted(*at);
        return;
    }
    if (event->key() == Qt::Key_Escape && at) {
        emit picked(std::nullopt);
        return;
    }
    if (event->matches(QKeySequence::Copy) && at) {
        QStringList cells;
        for (int column = 0; column < model_->columnCount(); ++column) {
            cells << model_->index(currentIndex().row(), column).data().toString();
        }
        if (const QString starts = list_.startingWords(*at, CombinationList::Basis::weights);
            !starts.isEmpty()) {
            cells << starts;
        }
        QGuiApplication::clipboard()->setText(cells.join(QLatin1Char('\t')));
        return;
    }
    QTableView::keyPressEvent(event);
}

bool CombinationTable::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && selectionModel()->hasSelection() &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QTableView::event(event);
}

void CombinationTable::leaveEvent(QEvent* event) {
    emit pointed(std::nullopt);
    QTableView::leaveEvent(event);
}

void CombinationTable::paintEvent(QPaintEvent* event) {
    QTableView::paintEvent(event);
    if (model_->rowCount() == 0 && !list_.items().empty()) {
        QPainter painter(viewport());
        painter.setFont(textFont(TextSize::body));
        painter.setPen(theme().muted);
        painter.drawText(viewport()->rect().adjusted(kEmptyInset, 0, -kEmptyInset, 0),
                         Qt::AlignCenter | Qt::TextWordWrap, tr("No combination passes the filter."));
    }
}

}  // namespace bolthole
