#include "widgets/kit/calm_style.h"

#include <QIcon>
#include <QPainter>
#include <QStyleOption>
#include <algorithm>

#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kBox = 15;  // px, of a check box and a radio button

QRectF squareIn(const QRect& rect) {
    const double side = std::min({rect.width(), rect.height(), kBox}) - 1.5;
    QRectF square(0, 0, side, side);
    square.moveCenter(QRectF(rect).center());
    return square;
}

// The ground of a box or ring: filled where it is on.
void paintGround(QPainter* painter, const QStyleOption& option) {
    const Theme& colors = theme();
    const bool enabled = option.state.testFlag(QStyle::State_Enabled);
    const bool on = option.state.testAnyFlags(QStyle::State_On | QStyle::State_NoChange);
    const bool near = option.state.testAnyFlags(QStyle::State_HasFocus | QStyle::State_MouseOver);
    const QColor edge = !enabled ? colors.border : near || on ? colors.focus : colors.muted;
    painter->setPen(QPen(edge, option.state.testFlag(QStyle::State_HasFocus) ? 2.0 : 1.3));
    painter->setBrush(on ? (enabled ? colors.focus : colors.border) : colors.card);
}

void paintCheckBox(QPainter* painter, const QStyleOption& option) {
    paintGround(painter, option);
    const QRectF box = squareIn(option.rect);
    painter->drawRoundedRect(box, 3, 3);
    painter->setPen(QPen(theme().card, 2.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter->setBrush(Qt::NoBrush);
    const auto at = [&](double across, double down) {
        return QPointF(box.left() + across * box.width(), box.top() + down * box.height());
    };
    if (option.state.testFlag(QStyle::State_On)) {
        painter->drawPolyline(QPolygonF{at(0.22, 0.54), at(0.43, 0.74), at(0.79, 0.28)});
    } else if (option.state.testFlag(QStyle::State_NoChange)) {
        painter->drawLine(at(0.25, 0.5), at(0.75, 0.5));
    }
}

void paintRadioButton(QPainter* painter, const QStyleOption& option) {
    paintGround(painter, option);
    const QRectF ring = squareIn(option.rect);
    painter->drawEllipse(ring);
    if (option.state.testFlag(QStyle::State_On)) {
        painter->setPen(Qt::NoPen);
        painter->setBrush(theme().card);
        painter->drawEllipse(ring.center(), ring.width() * 0.2, ring.width() * 0.2);
    }
}

// A round mark with a sign, as drawn for a message: i, ? or !.
QIcon signIcon(const QString& sign, const QColor& color) {
    QIcon icon;
    for (const int size : {16, 32, 48, 64}) {
        QPixmap picture(size, size);
        picture.fill(Qt::transparent);
        QPainter painter(&picture);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(color, size / 16.0));
        const double inset = size / 10.0;
        painter.drawEllipse(QRectF(inset, inset, size - 2 * inset, size - 2 * inset));
        QFont font = textFont(TextSize::body, true);
        font.setPixelSize(size / 2);
        painter.setFont(font);
        painter.drawText(picture.rect(), Qt::AlignCenter, sign);
        painter.end();
        icon.addPixmap(picture);
    }
    return icon;
}

}  // namespace

CalmStyle::CalmStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

void CalmStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                              const QWidget* widget) const {
    if (element != PE_IndicatorCheckBox && element != PE_IndicatorItemViewItemCheck &&
        element != PE_IndicatorRadioButton) {
        QProxyStyle::drawPrimitive(element, option, painter, widget);
        return;
    }
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    element == PE_IndicatorRadioButton ? paintRadioButton(painter, *option) : paintCheckBox(painter, *option);
    painter->restore();
}

// Nothing between two parts until the pointer is there.
void CalmStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                            const QWidget* widget) const {
    if (element != CE_Splitter) {
        QProxyStyle::drawControl(element, option, painter, widget);
    } else if (option->state.testFlag(QStyle::State_MouseOver)) {
        painter->fillRect(option->rect, theme().border);
    }
}

QIcon CalmStyle::standardIcon(StandardPixmap which, const QStyleOption* option, const QWidget* widget) const {
    switch (which) {
        case SP_MessageBoxInformation:
            return signIcon(QStringLiteral("i"), theme().focus);
        case SP_MessageBoxQuestion:
            return signIcon(QStringLiteral("?"), theme().focus);
        case SP_MessageBoxWarning:
        case SP_MessageBoxCritical:
            return signIcon(QStringLiteral("!"), theme().problem);
        default:
            return QProxyStyle::standardIcon(which, option, widget);
    }
}

int CalmStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    switch (metric) {
        case PM_IndicatorWidth:
        case PM_IndicatorHeight:
        case PM_ExclusiveIndicatorWidth:
        case PM_ExclusiveIndicatorHeight:
            return kBox;
        case PM_MessageBoxIconSize:
            return 32;
        default:
            return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

}  // namespace bolthole
