#include "widgets/compare/kept_list.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>

#include "widgets/kit/number_field.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

enum Role { kName = Qt::UserRole, kDate, kNote, kIsBaseline };

constexpr int kInset = 8;
constexpr int kLineGap = 1;

class StateDelegate : public QStyledItemDelegate {
  public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        const int name = QFontMetrics(textFont(TextSize::body, true)).height();
        const int note = QFontMetrics(textFont(TextSize::small)).height();
        return {120, name + note + kLineGap + 10};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        paintGround(*painter, option);
        const QRect inner = option.rect.adjusted(kInset, 5, -kInset, -5);
        paintFirstLine(*painter, inner, index);
        paintSecondLine(*painter, inner, index);
        painter->restore();
    }

  private:
    // Selected: a tinted ground with a bar; focused: the bar and a ring.
    static void paintGround(QPainter& painter, const QStyleOptionViewItem& option) {
        const bool selected = option.state.testFlag(QStyle::State_Selected);
        if (!selected && !option.state.testFlag(QStyle::State_MouseOver)) {
            return;
        }
        const QRectF ground = QRectF(option.rect).adjusted(1, 1, -1, -1);
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme().panel);
        painter.drawRoundedRect(ground, 4, 4);
        if (selected) {
            painter.setBrush(theme().focus);
            painter.drawRoundedRect(QRectF(ground.left(), ground.top() + 4, 3, ground.height() - 8), 1.5,
                                    1.5);
        }
        if (option.state.testFlag(QStyle::State_HasFocus)) {
            painter.setBrush(Qt::NoBrush);
            painter.setPen(QPen(theme().focus, 2));
            painter.drawRoundedRect(ground, 4, 4);
        }
    }

    static void paintFirstLine(QPainter& painter, const QRect& inner, const QModelIndex& index) {
        const QString date = index.data(kDate).toString();
        painter.setFont(textFont(TextSize::small));
        painter.setPen(theme().muted);
        const int dateWidth = painter.fontMetrics().horizontalAdvance(date);
        painter.drawText(inner, Qt::AlignTop | Qt::AlignRight, date);
        painter.setFont(textFont(TextSize::body, index.data(kIsBaseline).toBool()));
        painter.setPen(theme().ink);
        const int room = inner.width() - dateWidth - kInset;
        painter.drawText(
            inner, Qt::AlignTop | Qt::AlignLeft,
            painter.fontMetrics().elidedText(index.data(kName).toString(), Qt::ElideRight, room));
    }

    // The baseline wears the dashed ring it is drawn with everywhere, and the word.
    static void paintSecondLine(QPainter& painter, const QRect& inner, const QModelIndex& index) {
        QRect line = inner;
        if (index.data(kIsBaseline).toBool()) {
            painter.setFont(textFont(TextSize::small, true));
            painter.setPen(theme().ink);
            const int height = painter.fontMetrics().height();
            QPen ring(theme().ink, 1.5, Qt::CustomDashLine);
            ring.setDashPattern({2, 1.4});
            painter.setPen(ring);
            painter.setBrush(Qt::NoBrush);
            painter.drawEllipse(QPointF(line.left() + 5, line.bottom() + 1 - height / 2.0), 4, 4);
            const QString word = KeptList::tr("the baseline");
            line.setLeft(line.left() + 14);
            painter.setPen(theme().ink);
            painter.drawText(line, Qt::AlignBottom | Qt::AlignLeft, word);
            line.setLeft(line.left() + painter.fontMetrics().horizontalAdvance(word) + kInset);
        }
        painter.setFont(textFont(TextSize::small));
        painter.setPen(theme().muted);
        painter.drawText(
            line, Qt::AlignBottom | Qt::AlignLeft,
            painter.fontMetrics().elidedText(index.data(kNote).toString(), Qt::ElideRight, line.width()));
    }
};

}  // namespace

KeptList::KeptList(QWidget* parent) : QListWidget(parent) {
    setObjectName(QStringLiteral("keptSetups"));
    setAccessibleName(tr("Kept setups"));
    setAccessibleDescription(
        tr("Enter compares with the selected setup, F2 renames it, Delete deletes it; "
           "undo brings it back."));
    setItemDelegate(new StateDelegate(this));
    setFrameShape(QFrame::NoFrame);
    setMouseTracking(true);
    setUniformItemSizes(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    connect(this, &QListWidget::itemDoubleClicked, this,
            [this](const QListWidgetItem* item) { emit compareRequested(row(item)); });
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &KeptList::dress);
}

void KeptList::dress() {
    scheduleDelayedItemsLayout();
    viewport()->update();
}

void KeptList::showStates(const Car& car) {
    std::vector<Shown> states;
    for (std::size_t i = 0; i < car.kept.size(); ++i) {
        const KeptSetup& state = car.kept[i];
        states.push_back({QString::fromStdString(state.name), QString::fromStdString(state.date),
                          QString::fromStdString(state.note), car.baseline == static_cast<int>(i)});
    }
    if (states != shown_) {
        fill(states);
    }
}

void KeptList::fill(const std::vector<Shown>& states) {
    const bool isNew = states.size() > shown_.size();
    const int last = static_cast<int>(states.size()) - 1;
    const int keep = isNew ? last : std::min(std::max(currentRow(), 0), last);
    while (count() > static_cast<int>(states.size())) {
        delete takeItem(count() - 1);
    }
    while (count() < static_cast<int>(states.size())) {
        addItem(new QListWidgetItem);
    }
    for (int row = 0; row < count(); ++row) {
        const Shown& state = states[static_cast<std::size_t>(row)];
        QListWidgetItem& each = *item(row);
        each.setData(kName, state.name);
        each.setData(kDate, state.date);
        each.setData(kNote, state.note.simplified());
        each.setData(kIsBaseline, state.isBefore);
        QString spoken = state.name + QStringLiteral(", ") + state.date;
        spoken += state.isBefore ? tr(", the baseline") : QString();
        spoken += state.note.isEmpty() ? QString() : QStringLiteral(": ") + state.note.simplified();
        each.setData(Qt::AccessibleTextRole, spoken);
        each.setToolTip(wrappedToolTip(spoken));
    }
    shown_ = states;
    if (keep >= 0 && keep != currentRow()) {
        setCurrentRow(keep);
    }
}

std::optional<int> KeptList::selected() const {
    const int row = currentRow();
    return row >= 0 ? std::optional(row) : std::nullopt;
}

bool KeptList::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && selected()) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_F2 || key == Qt::Key_Delete) {
            event->accept();  // here they mean the state, whatever else they mean in the window
            return true;
        }
    }
    return QListWidget::event(event);
}

void KeptList::keyPressEvent(QKeyEvent* event) {
    const std::optional<int> state = selected();
    if (!state) {
        QListWidget::keyPressEvent(event);
        return;
    }
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            emit compareRequested(*state);
            return;
        case Qt::Key_F2:
            emit renameRequested(*state);
            return;
        case Qt::Key_Delete:
            emit deleteRequested(*state);
            return;
        default:
            QListWidget::keyPressEvent(event);
    }
}

}  // namespace bolthole
