#include "widgets/kit/sheet_parts.h"

#include <QAbstractItemView>
#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollArea>
#include <QToolButton>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "widgets/kit/theme.h"

namespace bolthole {

ToneLabel::ToneLabel(Tone tone, const QString& text, QWidget* parent) : QLabel(text, parent), tone_(tone) {
    setFont(textFont(tone == Tone::plain ? TextSize::body : TextSize::small, tone == Tone::heading));
    setTextFormat(Qt::PlainText);
    paintTone();
}

void ToneLabel::showText(const QString& text) {
    if (text != this->text()) {
        setText(text);
    }
}

void ToneLabel::setTone(Tone tone) {
    if (tone != tone_) {
        tone_ = tone;
        paintTone();
    }
}

void ToneLabel::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() == QEvent::ApplicationPaletteChange || event->type() == QEvent::StyleChange) {
        paintTone();
    }
}

void ToneLabel::paintTone() {
    const Theme& colors = theme();
    QColor color = colors.ink;
    if (tone_ == Tone::problem) {
        color = colors.problem;
    } else if (tone_ != Tone::plain) {
        color = colors.muted;
    }
    if (palette().color(QPalette::WindowText) != color) {
        QPalette toned = palette();
        toned.setColor(QPalette::WindowText, color);
        setPalette(toned);
    }
}

NoteLabel::NoteLabel(QWidget* parent) : ToneLabel(Tone::problem, QString(), parent) {
    setWordWrap(true);
    setContentsMargins(8, 0, 4, 2);
    hide();
}

void NoteLabel::watch(NumberField* field, const QString& name) {
    watched_.push_back({field, name});
    connect(field, &NumberField::noteChanged, this, &NoteLabel::refresh);
}

void NoteLabel::refresh() {
    QStringList lines;
    for (const Watched& watched : watched_) {
        const QString note = watched.field->note();
        if (!note.isEmpty()) {
            lines << (watched.name.isEmpty() ? note : watched.name + QStringLiteral(": ") + note);
        }
    }
    const QString text = lines.isEmpty() ? QString() : QStringLiteral("▲ ") + lines.join(u'\n');
    showText(text);
    setVisible(!text.isEmpty());
}

BoxRow::BoxRow(const QString& label, QWidget* editor, QWidget* parent)
    : QWidget(parent), layout_(new QHBoxLayout(this)), editor_(editor) {
    layout_->setContentsMargins(10, 3, 8, 3);
    layout_->setSpacing(4);
    auto* words = new QLabel(label, this);
    words->setBuddy(editor);
    layout_->addWidget(words);
    editor->setParent(this);
    editor->setProperty("quiet", true);
    editor->installEventFilter(this);
    if (qobject_cast<QLineEdit*>(editor) == nullptr) {
        layout_->addStretch(1);
        layout_->addWidget(editor);
    } else {
        layout_->addWidget(editor, 1);
    }
    setMinimumHeight(28);
}

void BoxRow::addTrailing(QWidget* widget) {
    layout_->addWidget(widget);
}

bool BoxRow::eventFilter(QObject* watched, QEvent* event) {
    const QEvent::Type type = event->type();
    if (type == QEvent::FocusIn || type == QEvent::FocusOut || type == QEvent::DynamicPropertyChange) {
        update();
    }
    return QWidget::eventFilter(watched, event);
}

void BoxRow::mousePressEvent(QMouseEvent* event) {
    editor_->setFocus(Qt::MouseFocusReason);
    if (auto* line = qobject_cast<QLineEdit*>(editor_)) {
        line->selectAll();
    }
    event->accept();
}

void BoxRow::paintEvent(QPaintEvent*) {
    const Theme& colors = theme();
    const bool bad = editor_->property("problem").toBool();
    const bool focused = editor_->hasFocus();
    const double width = bad || focused ? 2.0 : 1.0;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(bad ? colors.problem : focused ? colors.focus : colors.border, width));
    painter.setBrush(editor_->property("unmeasured").toBool() ? colors.starting : colors.card);
    const double inset = width / 2.0;
    painter.drawRoundedRect(QRectF(rect()).adjusted(inset, inset, -inset, -inset), 4, 4);
}

NumberRow::NumberRow(const QString& label, NumberField* field, QWidget* parent)
    : QWidget(parent), field_(field) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    box_ = new BoxRow(label, field, this);
    unit_ = new ToneLabel(ToneLabel::Tone::muted, field->unitText(), this);
    unit_->setMinimumWidth(unit_->fontMetrics().horizontalAdvance(QStringLiteral("mm")));
    box_->addTrailing(unit_);
    column->addWidget(box_);
    auto* note = new NoteLabel(this);
    note->watch(field);
    column->addWidget(note);
    connect(field, &NumberField::noteChanged, unit_, [this] { unit_->showText(field_->unitText()); });
}

NameField::NameField(QWidget* parent) : QLineEdit(parent) {
    setMaxLength(200);
}

void NameField::showName(const std::string& name) {
    if (name == name_) {
        return;
    }
    const bool typing = isModified();
    name_ = name;
    if (!typing) {
        restore();
    }
}

void NameField::restore() {
    setText(QString::fromStdString(name_));
    setCursorPosition(0);
}

void NameField::commit() {
    if (!isModified()) {
        return;
    }
    const std::string typed = text().trimmed().toStdString();
    if (typed != name_ && (mayBeBlank_ || !typed.empty())) {
        setModified(false);
        emit renamed(typed);
    }
    restore();
}

bool NameField::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (!isModified() && (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo))) {
            event->ignore();
            return false;
        }
        if (isModified() && key->key() == Qt::Key_Escape) {
            event->accept();
            return true;
        }
    }
    return QLineEdit::event(event);
}

void NameField::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        commit();
        NumberField::enterNextNumber(this);
        return;
    }
    if (event->key() == Qt::Key_Escape && isModified()) {
        restore();
        return;
    }
    QLineEdit::keyPressEvent(event);
}

void NameField::focusInEvent(QFocusEvent* event) {
    QLineEdit::focusInEvent(event);
    emit entered();
}

void NameField::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) {
        commit();
    }
}

HoleMark::HoleMark(QWidget* parent) : QRadioButton(parent) {
    setAutoExclusive(false);
    setAttribute(Qt::WA_Hover);
    setCursor(Qt::PointingHandCursor);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void HoleMark::showState(bool inUse, Role role) {
    if (isChecked() != inUse) {
        setChecked(inUse);
    }
    if (role_ != role) {
        role_ = role;
        update();
    }
}

QSize HoleMark::sizeHint() const {
    return {20, 24};
}

void HoleMark::paintEvent(QPaintEvent*) {
    const Theme& colors = theme();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPointF center = QRectF(rect()).center();
    if (hasFocus()) {
        painter.setPen(QPen(colors.focus, 2));
        painter.drawEllipse(center, 8.5, 8.5);
    }
    const bool hover = underMouse();
    const QColor ring = isChecked() || hover ? colors.ink : colors.metal;
    painter.setPen(QPen(ring, 1.5));
    painter.setBrush(isChecked() ? roleColor(role_) : colors.card);
    painter.drawEllipse(center, 5.25, 5.25);
    if (isChecked()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(colors.card);
        painter.drawEllipse(center, 1.75, 1.75);
    }
}

// The style sheet takes the style's bevelled arrow away; a plain one stands in its place.
void CalmCombo::paintEvent(QPaintEvent* event) {
    QComboBox::paintEvent(event);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(isEnabled() ? theme().muted : theme().border);
    const QPointF tip(width() - 11.0, height() / 2.0 + 2.5);
    painter.drawPolygon(QPolygonF({tip, tip + QPointF(-4, -5), tip + QPointF(4, -5)}));
}

void CalmCombo::showPopup() {
    constexpr int kBeside = 30;  // px: padding, border and a scroll bar's room
    view()->setMinimumWidth(view()->sizeHintForColumn(0) + kBeside);
    QComboBox::showPopup();
}

void CalmCombo::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

QAbstractButton* smallButton(const QString& text, const QString& accessibleName, const QString& toolTip,
                             QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setText(text);
    button->setAccessibleName(accessibleName);
    button->setToolTip(wrappedToolTip(toolTip));
    button->setProperty("small", true);
    button->setFocusPolicy(Qt::StrongFocus);
    button->setFont(textFont(TextSize::small));
    return button;
}

void keepPlace(QWidget* part, bool shown) {
    QSizePolicy policy = part->sizePolicy();
    policy.setRetainSizeWhenHidden(true);
    part->setSizePolicy(policy);
    part->setVisible(shown);
}

void retireScrolled(QScrollArea& area) {
    QWidget* old = area.takeWidget();
    if (old == nullptr) {
        return;
    }
    // The call may come out of a signal of one of these.
    for (QWidget* part : old->findChildren<QWidget*>()) {
        part->blockSignals(true);
    }
    old->hide();
    old->deleteLater();
}

QColor roleColor(Role role) {
    const Theme& colors = theme();
    switch (role) {
        case Role::lower:
            return colors.lower;
        case Role::upper:
            return colors.upper;
        case Role::crosswise:
            break;
    }
    return colors.crosswise;
}

}  // namespace bolthole
