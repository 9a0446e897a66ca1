#include "widgets/kit/section.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <QVBoxLayout>

#include "widgets/kit/number_field.h"
#include "widgets/kit/theme.h"

namespace bolthole {

SectionHeader::SectionHeader(QWidget* parent) : QAbstractButton(parent) {
    setCheckable(true);
    setAttribute(Qt::WA_Hover);
    setChecked(true);
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setFont(textFont(TextSize::small, true));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(this, &QAbstractButton::toggled, this, &SectionHeader::tellState);
    tellState();
}

void SectionHeader::tellState() {
    const QString fold = isChecked() ? tr("unfolded") : tr("folded: %1").arg(summary_);
    const QString state = warning_.isEmpty() ? fold : tr("%1; %2").arg(warning_, fold);
    if (accessibleDescription() != state) {
        setAccessibleDescription(state);
    }
    updateGeometry();
}

void SectionHeader::showTexts(const QString& title, const QString& summary) {
    if (title == text() && summary == summary_) {
        return;
    }
    summary_ = summary;
    if (title != text()) {
        setText(title);
        setAccessibleName(title);
    }
    tellState();
    if (!isChecked()) {
        update();
    }
}

void SectionHeader::showWarning(const QString& why) {
    if (why == warning_) {
        return;
    }
    if (warning_.isEmpty()) {
        plainTip_ = toolTip();
    }
    warning_ = why;
    setToolTip(why.isEmpty() ? plainTip_ : wrappedToolTip(QStringLiteral("▲ ") + why));
    tellState();
    update();
}

QSize SectionHeader::sizeHint() const {
    const int line = fontMetrics().height();
    const int lines = showsSummary() ? 2 * line + 2 : line;
    return {120, lines + 8};
}

void SectionHeader::paintEvent(QPaintEvent*) {
    const Theme& colors = theme();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (hasFocus()) {
        painter.setPen(QPen(colors.focus, 2));
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 4, 4);
    }
    const int line = fontMetrics().height();
    int left = 4;
    if (!warning_.isEmpty()) {
        const QString mark = QStringLiteral("▲ ");
        painter.setPen(colors.problem);
        painter.drawText(QRect(left, 4, width(), line), Qt::AlignVCenter, mark);
        left += fontMetrics().horizontalAdvance(mark);
    }
    const int textWidth = width() - 22 - left;
    painter.setPen(underMouse() ? colors.ink : colors.muted);
    painter.drawText(QRect(left, 4, textWidth, line), Qt::AlignVCenter,
                     fontMetrics().elidedText(text(), Qt::ElideRight, textWidth));
    QPainterPath chevron;
    const QPointF tip(width() - 12.0, 4 + line / 2.0);
    const double flip = isChecked() ? -1.0 : 1.0;
    chevron.moveTo(tip + QPointF(-4, -2 * flip));
    chevron.lineTo(tip + QPointF(0, 2 * flip));
    chevron.lineTo(tip + QPointF(4, -2 * flip));
    painter.strokePath(chevron, QPen(painter.pen().color(), 1.5));
    if (showsSummary()) {
        const QFont plain = textFont(TextSize::small);
        painter.setFont(plain);
        painter.setPen(colors.ink);
        const QString shown = QFontMetrics(plain).elidedText(summary_, Qt::ElideRight, width() - 12);
        painter.drawText(QRect(4, 6 + line, width() - 8, line), Qt::AlignVCenter, shown);
    }
}

void SectionHeader::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Left:
            setChecked(false);
            return;
        case Qt::Key_Right:
            setChecked(true);
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            toggle();
            return;
        default:
            QAbstractButton::keyPressEvent(event);
    }
}

Section::Section(const QString& title, QWidget* parent)
    : QWidget(parent), header_(new SectionHeader(this)), box_(new QWidget(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(header_);
    body_ = new QVBoxLayout(box_);
    body_->setContentsMargins(0, 0, 0, 0);
    body_->setSpacing(5);
    column->addWidget(box_);
    header_->showTexts(title, QString());
    connect(header_, &QAbstractButton::toggled, box_, &QWidget::setVisible);
}

}  // namespace bolthole
