#include "widgets/pages/days/pass_table.h"

#include <QClipboard>
#include <QContextMenuEvent>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <algorithm>
#include <memory>

#include "widgets/kit/pens.h"
#include "widgets/kit/read_table.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kRowRoom = 12;   // px over the text's height
constexpr int kCellRoom = 20;  // px beside a text

/// Rows with a hairline under them; a heading runs across, quiet.
class PassDelegate : public QStyledItemDelegate {
  public:
    PassDelegate(const PassTableModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const bool isHeading = !model_.passAt(index.row());
        if (isHeading) {
            paintHeading(painter, option.rect, index.data().toString());
        } else {
            QStyledItemDelegate::paint(painter, option, index);
        }
        painter->setPen(QPen(theme().grid, 1));
        painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    }

  protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override {
        QStyledItemDelegate::initStyleOption(option, index);
        option->state &= ~QStyle::State_HasFocus;
        // Room on the side a text stands at, so that a number and the words after it stay apart.
        constexpr int kRoom = 4;
        const bool isText = (option->displayAlignment & Qt::AlignLeft) != 0;
        option->features |= QStyleOptionViewItem::HasDecoration;
        option->decorationSize = {kRoom, 1};
        option->decorationPosition = isText ? QStyleOptionViewItem::Left : QStyleOptionViewItem::Right;
        // What is chosen keeps its colors: struck stays pale, a change stays marked.
        option->palette.setBrush(QPalette::HighlightedText, option->palette.brush(QPalette::Text));
    }

  private:
    static void paintHeading(QPainter* painter, const QRect& box, const QString& words) {
        painter->fillRect(box.adjusted(0, 0, 0, -1), over(theme().panel, 0.7, theme().card));
        painter->setFont(textFont(TextSize::small, true));
        painter->setPen(theme().muted);
        const QRect room = box.adjusted(9, 0, -9, 0);
        painter->drawText(room, static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter),
                          painter->fontMetrics().elidedText(words, Qt::ElideRight, room.width()));
    }

    const PassTableModel& model_;
};

/// Keeps a scroll bar at its end, where the last passes are, while that moves; once scrolled away it stays.
void stayAtEnd(QScrollBar* bar) {
    const auto isAtEnd = std::make_shared<bool>(true);
    QObject::connect(bar, &QScrollBar::valueChanged, bar,
                     [bar, isAtEnd](int value) { *isAtEnd = value == bar->maximum(); });
    QObject::connect(bar, &QScrollBar::rangeChanged, bar, [bar, isAtEnd](int, int end) {
        if (*isAtEnd) {
            bar->setValue(end);
        }
    });
}

/// The widest a column's texts get, as an example.
QString exampleOf(PassColumn column) {
    switch (column) {
        case PassColumn::number:
            return QStringLiteral("000");
        case PassColumn::time:
            return QStringLiteral("00:00");
        case PassColumn::setup:
            return QStringLiteral("AA");
        case PassColumn::rearPressure:
            return QStringLiteral("00.0");
        case PassColumn::rebound:
            return QStringLiteral("00 / 00");
        case PassColumn::launchRpm:
            return QStringLiteral("00000");
        case PassColumn::sixtyFoot:
        case PassColumn::threeThirty:
            return QStringLiteral("00.000");
        default:
            return {};
    }
}

}  // namespace

PassTable::PassTable(const PassBook& book, QWidget* parent)
    : QTableView(parent), model_(new PassTableModel(book, this)) {
    setObjectName(QStringLiteral("passTable"));
    setAccessibleName(tr("Log of passes"));
    setAccessibleDescription(tr(
        "Enter opens a pass with all its fields, N begins a new one, S strikes, Delete removes, B brings its "
        "setup back to the bench, Ctrl+C copies the row."));
    setModel(model_);
    setItemDelegate(new PassDelegate(*model_, this));
    chooseRows(*this);
    setTextElideMode(Qt::ElideRight);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    horizontalHeader()->setMinimumSectionSize(24);
    connect(this, &QAbstractItemView::doubleClicked, this, [this](const QModelIndex& index) {
        if (const std::optional<std::size_t> pass = model_->passAt(index.row())) {
            emit opened(*pass);
        }
    });
    stayAtEnd(verticalScrollBar());
    connect(horizontalHeader(), &QHeaderView::sectionResized, this, &PassTable::columnsMoved);
    connect(horizontalScrollBar(), &QScrollBar::valueChanged, this, &PassTable::columnsMoved);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &PassTable::dress);
    dress();
}

void PassTable::dress() {
    setFont(textFont(TextSize::body));
    horizontalHeader()->setFont(textFont(TextSize::small));
    verticalHeader()->setDefaultSectionSize(QFontMetrics(font()).height() + kRowRoom);
    setStyleSheet(QStringLiteral("QTableView { border: 2px solid %1; selection-background-color: %2; "
                                 "selection-color: %3; } QTableView:focus { border-color: %4; }"
                                 "QTableView::item { padding: 0px 6px; }"
                                 "QHeaderView::section { padding: 2px 9px; }")
                      .arg(theme().card.name(), over(theme().instantCenter, 0.13, theme().card).name(),
                           theme().ink.name(), over(theme().focus, 0.45, theme().card).name()));
    sizeColumns();
    viewport()->update();
}

void PassTable::refresh() {
    const int down = verticalScrollBar()->value();
    const bool wasAtEnd = down == verticalScrollBar()->maximum();
    showing_ = true;
    model_->refresh();
    spanHeadings();
    sizeColumns();
    showing_ = false;
    if (wasAtEnd) {
        scrollToBottom();
    } else {
        verticalScrollBar()->setValue(down);
    }
}

void PassTable::spanHeadings() {
    clearSpans();
    for (int row = 0; row < model_->rowCount(); ++row) {
        if (!model_->passAt(row)) {
            setSpan(row, 0, 1, kPassColumns);
        }
    }
}

// The words share what the numbers leave.
void PassTable::sizeColumns() {
    const QFontMetrics cell(textFont(TextSize::body, true));
    const QFontMetrics head(horizontalHeader()->font());
    int left = viewport()->width();
    for (int section = 0; section < kPassColumns; ++section) {
        const QString example = exampleOf(static_cast<PassColumn>(section));
        if (example.isEmpty()) {
            continue;
        }
        const QString title = model_->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString();
        const int width =
            std::max(cell.horizontalAdvance(example), head.horizontalAdvance(title)) + kCellRoom;
        setColumnWidth(section, width);
        left -= width;
    }
    constexpr int kLeastWords = 130;
    const int changes = std::max(kLeastWords, left * 57 / 100);
    setColumnWidth(static_cast<int>(PassColumn::changes), changes);
    setColumnWidth(static_cast<int>(PassColumn::seen), std::max(kLeastWords, left - changes));
    emit columnsMoved();
}

// Its last passes stay in sight when it gets lower, as it does when the plot appears above it.
void PassTable::resizeEvent(QResizeEvent* event) {
    const bool wasAtEnd = verticalScrollBar()->value() == verticalScrollBar()->maximum();
    QTableView::resizeEvent(event);
    sizeColumns();
    if (wasAtEnd && event->oldSize().isValid()) {
        scrollToBottom();
    }
}

void PassTable::reveal(std::size_t pass) {
    if (const std::optional<int> row = model_->rowOf(pass)) {
        scrollTo(model_->index(*row, 0));
    }
}

void PassTable::showSelected(std::optional<std::size_t> pass) {
    showing_ = true;
    const std::optional<int> row = pass ? model_->rowOf(*pass) : std::nullopt;
    if (!row) {
        selectionModel()->clear();
    } else if (!selectionModel()->isRowSelected(*row, {})) {
        const QModelIndex index = model_->index(*row, 0);
        selectionModel()->setCurrentIndex(index,
                                          QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
        scrollTo(index);
    }
    showing_ = false;
}

std::optional<std::size_t> PassTable::selectedPass() const {
    const QModelIndexList rows = selectionModel()->selectedRows();
    return rows.isEmpty() ? std::nullopt : model_->passAt(rows.constFirst().row());
}

void PassTable::selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) {
    QTableView::selectionChanged(selected, deselected);
    if (!showing_) {
        emit picked(selectedPass());
    }
}

bool PassTable::takeLetter(int key, std::size_t pass) {
    switch (key) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            emit opened(pass);
            return true;
        case Qt::Key_Delete:
            emit removeRequested(pass);
            return true;
        case Qt::Key_S:
            emit strikeRequested(pass);
            return true;
        case Qt::Key_B:
            emit restoreRequested(pass);
            return true;
        case Qt::Key_Escape:
            emit picked(std::nullopt);
            return true;
        default:
            return false;
    }
}

void PassTable::keyPressEvent(QKeyEvent* event) {
    const std::optional<std::size_t> pass = selectedPass();
    const bool isPlain = event->modifiers() == Qt::NoModifier || event->modifiers() == Qt::KeypadModifier;
    if (isPlain && pass && takeLetter(event->key(), *pass)) {
        return;
    }
    const bool isLast = currentIndex().row() == model_->rowCount() - 1;
    if (isPlain && (event->key() == Qt::Key_N || (event->key() == Qt::Key_Down && isLast))) {
        emit entryRequested();
        return;
    }
    if (event->matches(QKeySequence::Copy) && pass) {
        QStringList cells;
        for (int column = 0; column < kPassColumns; ++column) {
            cells << model_->index(currentIndex().row(), column).data().toString();
        }
        QGuiApplication::clipboard()->setText(cells.join(QLatin1Char('\t')));
        return;
    }
    QTableView::keyPressEvent(event);
}

// Keys of a pass must not reach a menu of the window before the table sees them.
bool PassTable::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && selectedPass()) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Delete || key == Qt::Key_Escape || key == Qt::Key_Return || key == Qt::Key_Enter) {
            event->accept();
            return true;
        }
    }
    return QTableView::event(event);
}

void PassTable::paintEvent(QPaintEvent* event) {
    QTableView::paintEvent(event);
    if (model_->rowCount() > 0) {
        return;
    }
    QPainter painter(viewport());
    painter.setFont(textFont(TextSize::body));
    painter.setPen(theme().muted);
    constexpr int kWidest = 520;
    const int side = std::max(24, (viewport()->width() - kWidest) / 2);
    painter.drawText(viewport()->rect().adjusted(side, 0, -side, 0),
                     static_cast<int>(Qt::AlignCenter | Qt::TextWordWrap), howToBegin());
}

QString PassTable::howToBegin() {
    return tr(
        "No pass yet.\n\nType what is known of the first one in the row below and press Enter: it is kept "
        "with the "
        "car as it stands, so that in a week it is still known which click it was. Each new pass then copies "
        "the "
        "last, and what was changed is found by comparison.\n\nOnly where it is allowed and safe: the rules "
        "of the "
        "place and of the sanctioning body come first.");
}

void PassTable::contextMenuEvent(QContextMenuEvent* event) {
    if (selectedPass()) {
        emit menuRequested(event->globalPos());
    }
}

}  // namespace bolthole
