#include "widgets/kit/number_field.h"

#include <QContextMenuEvent>
#include <QFocusEvent>
#include <QKeyEvent>
#include <QMenu>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollArea>
#include <QStyle>
#include <QWhatsThis>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

double inchStep(InchStyle style) {
    switch (style) {
        case InchStyle::sixteenths:
            return 1.0 / 16.0;
        case InchStyle::thirtySeconds:
            return 1.0 / 32.0;
        case InchStyle::decimal:
            break;
    }
    return 0.05;
}

double shownStep(Quantity quantity, NumberStyle style, bool coarse) {
    switch (quantity) {
        case Quantity::length:
            if (style.units == Units::metric) {
                return coarse ? 10.0 : 1.0;
            }
            return coarse ? 1.0 : inchStep(style.inches);
        case Quantity::angle:
        case Quantity::ratio:
        case Quantity::density:
        case Quantity::time:
        case Quantity::damping:
            return coarse ? 1.0 : 0.1;
        default:
            return coarse ? 10.0 : 1.0;
    }
}

bool isUncertaintyKey(const QKeyEvent& event) {
    return event.key() == Qt::Key_U && event.modifiers() == Qt::AltModifier;
}

bool isHowToKey(const QKeyEvent& event) {
    return event.key() == Qt::Key_F1 && event.modifiers() == Qt::NoModifier;
}

/// From the field's right edge to its last digit, px.
constexpr double kDotsInset = 5;

/// The next multiple of `step` beyond `value`; a value within a millionth of a multiple counts as on it.
double nextMultiple(double value, double step, bool up) {
    constexpr double kSlack = 1e-6;
    const double steps = value / step;
    const double next = up ? std::floor(steps + kSlack) + 1.0 : std::ceil(steps - kSlack) - 1.0;
    return next == 0.0 ? 0.0 : next * step;  // no negative zero
}

}  // namespace

double arrowStep(Quantity quantity, NumberStyle style, bool coarse) {
    return shownStep(quantity, style, coarse) * shownUnit(quantity, style.units);
}

void drawStartingDots(QPainter& painter, double left, double right, double y) {
    constexpr double kStep = 4;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().startingMark);
    for (double x = right - 1; x >= left; x -= kStep) {
        painter.drawEllipse(QPointF(x, y), 0.9, 0.9);
    }
    painter.restore();
}

QString wrappedToolTip(const QString& words) {
    return words.isEmpty() ? QString() : QStringLiteral("<p>%1</p>").arg(words.toHtmlEscaped());
}

NumberField::NumberField(Quantity quantity, QWidget* parent) : QLineEdit(parent), quantity_(quantity) {
    setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    setFocusPolicy(Qt::StrongFocus);
    connect(this, &QLineEdit::textEdited, this, [this] {
        if (!edited_) {
            edited_ = true;
            textUnits_ = style_.units;
        }
        setProblem(QString());
    });
}

void NumberField::setHowTo(const QString& words) {
    howTo_ = words;
    setToolTip(wrappedToolTip(words));
    refreshNote();
}

void NumberField::showNumber(std::optional<double> value, NumberStyle style) {
    if (rendered_ && value == value_ && style == style_) {
        return;
    }
    value_ = value;
    style_ = style;
    if (edited_) {
        refreshNote();
    } else {
        render();
    }
}

QSize NumberField::minimumSizeHint() const {
    constexpr int kBeside = 14;  // px: border, padding and the cursor's room
    const int text =
        std::max(fontMetrics().horizontalAdvance(this->text()), fontMetrics().horizontalAdvance(leastText_));
    const QSize plain = QLineEdit::minimumSizeHint();
    return {std::max(plain.width(), text + kBeside), plain.height()};
}

void NumberField::render() {
    const bool unitsChanged = textUnits_ != style_.units;
    textUnits_ = style_.units;
    const auto text = hasFocus() ? &exactText : &fieldText;
    const QString shown = value_ ? QString::fromStdString(text(*value_, quantity_, style_)) : QString();
    if (!rendered_ || this->text() != shown) {
        setText(shown);
        setCursorPosition(0);
        updateGeometry();
    }
    if (unitsChanged || !rendered_) {
        rendered_ = true;
        refreshNote();
    }
}

void NumberField::setOrigin(Origin origin) {
    if (origin_ != origin) {
        origin_ = origin;
        setProperty("unmeasured", origin != Origin::measured);
        style()->unpolish(this);
        style()->polish(this);
        refreshNote();
    }
}

void NumberField::setFault(const QString& reason) {
    if (fault_ != reason) {
        fault_ = reason;
        refreshNote();
    }
}

void NumberField::setWarning(const QString& reason) {
    if (warning_ != reason) {
        warning_ = reason;
        refreshNote();
    }
}

void NumberField::setProblem(const QString& problem) {
    problem_ = problem;
    refreshNote();
}

QString NumberField::note() const {
    if (!problem_.isEmpty()) {
        return problem_;
    }
    if (edited_ && textUnits_ != style_.units) {
        return textUnits_ == Units::inch ? tr("begun before the units changed: still read in inch units")
                                         : tr("begun before the units changed: still read in metric units");
    }
    return fault_.isEmpty() ? warning_ : fault_;
}

QString NumberField::unitText() const {
    return bolthole::unitText(quantity_, textUnits_);
}

void NumberField::refreshNote() {
    const bool bad = hasProblem();
    if (property("problem").toBool() != bad) {
        setProperty("problem", bad);
        style()->unpolish(this);
        style()->polish(this);
    }
    const QString words = note();
    const QString start = origin_ == Origin::starting    ? tr("Starting number, not measured. ")
                          : origin_ == Origin::workedOut ? tr("Worked out, not measured. ")
                                                         : QString();
    const QString description = start + (words.isEmpty() ? howTo_ : words);
    if (accessibleDescription() != description) {
        setAccessibleDescription(description);
    }
    emit noteChanged();
}

TypedNumber NumberField::read() const {
    TypedNumber typed = readTyped(text().trimmed().toStdString(), quantity_, textUnits_);
    if (typed.value && check_) {
        typed.problem = check_(*typed.value);
        if (!typed.problem.empty()) {
            typed.value.reset();
        }
    }
    return typed;
}

std::optional<double> NumberField::typedNumber() const {
    return edited_ ? read().value : value_;
}

QString NumberField::refusalNow() const {
    return edited_ ? QString::fromStdString(read().problem) : QString();
}

QString unreadField(std::span<NumberField* const> fields) {
    for (const NumberField* field : fields) {
        const QString reason = field->refusalNow();
        if (!reason.isEmpty()) {
            const QString name = field->accessibleName();
            return capitalized(name) + QStringLiteral(": ") + reason;
        }
    }
    return {};
}

bool NumberField::commit() {
    if (!edited_) {
        return true;
    }
    if (text().trimmed().isEmpty() && mayBeEmpty_) {
        edited_ = false;
        setProblem(QString());
        emit cleared();
        render();
        return true;
    }
    const TypedNumber typed = read();
    if (!typed.value) {
        setProblem(QString::fromStdString(typed.problem));
        return false;
    }
    take(*typed.value);
    return true;
}

void NumberField::take(double value) {
    edited_ = false;
    setProblem(QString());
    emit committed(value);
    render();  // what the owner has shown by now: the new number, or the old one where it refused
}

void NumberField::restore() {
    edited_ = false;
    problem_.clear();
    render();
    refreshNote();
    selectWhereEntered();
}

// A selection where no keys arrive reads as one that will be typed over.
void NumberField::selectWhereEntered() {
    if (hasFocus()) {
        selectAll();
    }
}

void NumberField::enterNextNumber(QWidget* from) {
    QWidget* part = from->parentWidget();
    for (QWidget* around = part; around != nullptr; around = around->parentWidget()) {
        if (qobject_cast<QScrollArea*>(around) != nullptr) {
            part = around;
            break;
        }
    }
    // A widget counts as its own ancestor: back at the part itself the way has gone round.
    for (QWidget* next = from->nextInFocusChain();
         next != from && next != part && part != nullptr && part->isAncestorOf(next);
         next = next->nextInFocusChain()) {
        auto* field = qobject_cast<NumberField*>(next);
        if (field == nullptr || !field->isVisible() || !field->isEnabled()) {
            continue;
        }
        if (auto* list = qobject_cast<QScrollArea*>(part)) {
            list->ensureWidgetVisible(field, 0, 60);
        }
        field->setFocus(Qt::TabFocusReason);
        return;
    }
}

void NumberField::step(bool up, bool coarse) {
    const std::optional<double> from = edited_ ? read().value : value_ ? value_ : stepStart_;
    if (!from && !edited_) {
        return;
    }
    if (!from) {
        commit();  // marks what is wrong with the text
        return;
    }
    const double next = nextMultiple(*from, arrowStep(quantity_, style_, coarse), up);
    if (!check_ || check_(next).empty()) {
        stepping_ = true;
        take(next);
        stepping_ = false;
        selectWhereEntered();
    }
}

void NumberField::renewToolTip() {
    QString tip = wrappedToolTip(howTo_);
    const std::string exact = value_ ? exactText(*value_, quantity_, style_) : std::string();
    if (value_ && exact != fieldText(*value_, quantity_, style_)) {
        tip += wrappedToolTip((origin_ == Origin::workedOut ? tr("Worked out as %1") : tr("Exactly %1"))
                                  .arg(QString::fromStdString(withUnit(exact, quantity_, style_.units))));
    }
    if (origin_ == Origin::workedOut) {
        tip += wrappedToolTip(
            tr("Worked out from other numbers, not measured: type what you measure once it is set."));
    } else if (origin_ == Origin::starting) {
        tip += wrappedToolTip(tr("Starting number, not measured: type what you measure."));
    } else if (const QString plusMinus = uncertaintyWords_ ? uncertaintyWords_() : QString();
               !plusMinus.isEmpty()) {
        tip += wrappedToolTip(tr("Accuracy: %1").arg(plusMinus));
    }
    setToolTip(tip);
}

bool NumberField::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        renewToolTip();
    }
    if (event->type() == QEvent::ShortcutOverride) {
        auto* key = static_cast<QKeyEvent*>(event);
        if ((uncertaintyWords_ && isUncertaintyKey(*key)) || (!howTo_.isEmpty() && isHowToKey(*key))) {
            event->accept();
            return true;
        }
        if (!edited_ && (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo))) {
            event->ignore();  // nothing typed: the window's own undo is meant
            return false;
        }
        if (edited_ && key->key() == Qt::Key_Escape) {
            event->accept();
            return true;
        }
    }
    return QLineEdit::event(event);
}

void NumberField::keyPressEvent(QKeyEvent* event) {
    if (uncertaintyWords_ && isUncertaintyKey(*event)) {
        if (commit()) {
            emit uncertaintyRequested();
        }
        return;
    }
    if (!howTo_.isEmpty() && isHowToKey(*event)) {
        sayHowTo();
        return;
    }
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (commit()) {
                selectWhereEntered();
                emit confirmed();
                if (hasFocus()) {
                    goOn();
                }
            }
            return;
        case Qt::Key_Escape:
            if (!edited_) {
                event->ignore();
                return;
            }
            restore();
            return;
        case Qt::Key_Up:
        case Qt::Key_Down:
            step(event->key() == Qt::Key_Up, event->modifiers().testFlag(Qt::ShiftModifier));
            return;
        default:
            QLineEdit::keyPressEvent(event);
    }
}

void NumberField::sayHowTo() {
    if (howToCall_) {
        howToCall_();
    } else {
        QWhatsThis::showText(mapToGlobal(QPoint(0, height())), wrappedToolTip(howTo_), this);
    }
}

void NumberField::focusInEvent(QFocusEvent* event) {
    if (!edited_) {
        render();  // the number itself, to type on
    }
    QLineEdit::focusInEvent(event);
    clickedInto_ = event->reason() == Qt::MouseFocusReason;
    emit entered();
}

// A click that enters the field selects the number, so that typing replaces it; one that drags over a part of
// it selects that, and the next click sets the cursor.
void NumberField::mouseReleaseEvent(QMouseEvent* event) {
    QLineEdit::mouseReleaseEvent(event);
    if (clickedInto_ && !hasSelectedText()) {
        selectAll();
    }
    clickedInto_ = false;
}

// While its window is not in front a field may lose the focus without being told.
void NumberField::changeEvent(QEvent* event) {
    QLineEdit::changeEvent(event);
    if (event->type() == QEvent::ActivationChange && hasSelectedText() && window()->focusWidget() != this) {
        deselect();
    }
}

void NumberField::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    // A menu or another window takes the focus only for a while: the typing goes on afterwards.
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) {
        commit();
        if (!edited_) {
            render();
        }
    }
}

// Dots below the digits, as under a word penciled in: the ground alone would tell it by color.
void NumberField::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    if (origin_ == Origin::measured || edited_ || text().isEmpty()) {
        return;
    }
    QPainter painter(this);
    const double wide = std::min<double>(fontMetrics().horizontalAdvance(text()), width() - 2 * kDotsInset);
    const double bottom = (height() + fontMetrics().height()) / 2.0 - 0.5;
    const double right = width() - textMargins().right() - kDotsInset;
    drawStartingDots(painter, right - wide, right, bottom);
}

void NumberField::wheelEvent(QWheelEvent* event) {
    event->ignore();  // scrolls the sheet; never changes a value
}

void NumberField::contextMenuEvent(QContextMenuEvent* event) {
    QMenu* menu = createStandardContextMenu();
    if (menu == nullptr) {
        return;
    }
    menu->setAttribute(Qt::WA_DeleteOnClose);
    if (!howTo_.isEmpty()) {
        menu->addSeparator();
        menu->addAction(tr("&How to measure this\tF1"), this, &NumberField::sayHowTo);
    }
    if (uncertaintyWords_) {
        menu->addSeparator();
        menu->addAction(tr("&Accuracy of this number…\tAlt+U"), this, [this] {
            if (commit()) {
                emit uncertaintyRequested();
            }
        });
    }
    menu->popup(event->globalPos());
}

}  // namespace bolthole
