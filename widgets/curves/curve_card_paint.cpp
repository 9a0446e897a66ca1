// What a card of the travel curves paints: its face behind the curves, its values and markers above them.
#include <algorithm>
#include <cmath>

#include "widgets/curves/curve_card.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kCorner = 6.0;
constexpr float kBandInk = 0.2F;
constexpr double kSample = 11.0;  // the piece of line in a key
constexpr double kKeyGap = 3.0;
constexpr double kWidestKey = 9.0;  // text heights; values of wide cards stay near their names
constexpr double kNarrowKey = 6.5;  // text heights; keys of narrower cards are set smaller

}  // namespace

void CurveCard::paintFace(QPainter& painter, const CardType& type, const std::vector<TravelTick>& travelTicks,
                          bool focused) {
    const qreal ratio = painter.device()->devicePixelRatioF();
    const Face face = faceNow(focused);
    if (facePicture_.isNull() || facePicture_.devicePixelRatio() != ratio || face != drawnFace_) {
        facePicture_ = QPixmap(card().size() * ratio);
        facePicture_.setDevicePixelRatio(ratio);
        facePicture_.fill(theme().window);
        QPainter picture(&facePicture_);
        picture.translate(-card().topLeft());
        drawFace(picture, type, travelTicks, focused);
        drawnFace_ = face;
    }
    painter.drawPixmap(card().topLeft(), facePicture_);
}

void CurveCard::drawFace(QPainter& painter, const CardType& type, const std::vector<TravelTick>& travelTicks,
                         bool focused) const {
    const QRectF frame = QRectF(card()).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(focused ? QPen(theme().focus, 2) : QPen(theme().border, 1));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(focused ? frame.adjusted(0.5, 0.5, -0.5, -0.5) : frame, kCorner, kCorner);
    painter.setBrush(Qt::NoBrush);
    paintTitle(painter, type);
    if (hasPoints_) {
        paintGrid(painter, travelTicks);
        paintTicks(painter, type);
        paintOutOfReach(painter, type);
        return;
    }
    if (hasUsableRows_) {
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        const QRectF upperHalf(plot().left(), plot().top(), plot().width(), plot().height() / 2.0);
        painter.drawText(upperHalf, Qt::AlignCenter | Qt::TextWordWrap, spec_.absent);
    }
}

void CurveCard::paintTitle(QPainter& painter, const CardType& type) const {
    const QRectF row(inner().left(), card().top() + CardType::kTopPad, inner().width(),
                     type.titleMetrics.height());
    painter.setFont(type.title);
    painter.setPen(theme().ink);
    painter.drawText(row, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, title_.title);
    if (title_.unitInTitle) {
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter, unitText());
    }
}

void CurveCard::paintGrid(QPainter& painter, const std::vector<TravelTick>& travelTicks) const {
    painter.setRenderHint(QPainter::Antialiasing, false);
    const QRectF at = plot();
    const double right = at.left() + at.width();
    const double bottom = at.top() + at.height();
    const auto across = [&](double travel, const QColor& color) {
        const double y = std::round(travelAxis().position(travel));
        painter.setPen(QPen(color, 1));
        painter.drawLine(QPointF(at.left(), y), QPointF(right, y));
    };
    const auto upright = [&](double x, const QColor& color) {
        painter.setPen(QPen(color, 1));
        painter.drawLine(QPointF(std::round(x), at.top()), QPointF(std::round(x), bottom));
    };
    for (const TravelTick& tick : travelTicks) {
        across(tick.travel, tick.travel == 0 ? theme().border : theme().grid);
    }
    for (const AxisTick& tick : ticks_) {
        upright(tick.position, theme().grid);
    }
    if (spec_.reference && *spec_.reference >= range_.low() && *spec_.reference <= range_.high()) {
        const double share = (*spec_.reference - range_.low()) / (range_.high() - range_.low());
        upright(at.left() + share * at.width(), theme().dark ? theme().border.lighter(130) : theme().border);
    }
    painter.setRenderHint(QPainter::Antialiasing);
}

void CurveCard::paintTicks(QPainter& painter, const CardType& type) const {
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const double baseline =
        plot().top() + plot().height() + CardType::kTickLabelGap + type.quietMetrics.ascent();
    for (const AxisTick& tick : ticks_) {
        painter.drawText(QPointF(tick.labelLeft, baseline), tick.label);
    }
}

void CurveCard::paintOutOfReach(QPainter& painter, const CardType& type) const {
    for (const OutOfReach& stretch : outOfReach_) {
        const double top = travelAxis().position(stretch.to);
        const QRectF zone(plot().left(), top, plot().width(), travelAxis().position(stretch.from) - top);
        painter.setPen(Qt::NoPen);
        painter.setBrush(
            QBrush(theme().dark ? theme().border.lighter(130) : theme().border, Qt::BDiagPattern));
        painter.drawRect(zone);
        painter.setBrush(Qt::NoBrush);
        painter.setFont(type.quiet);
        const QString words = QCoreApplication::translate("TravelCurves", "out of reach");
        const QRectF text =
            painter.boundingRect(zone, Qt::AlignCenter | Qt::TextWordWrap, words).adjusted(-4, -1, 4, 1);
        if (text.height() <= zone.height() && text.width() <= zone.width() + 8) {
            painter.fillRect(text, theme().card);
            painter.setPen(theme().muted);
            painter.drawText(zone, Qt::AlignCenter | Qt::TextWordWrap, words);
        }
    }
}

void CurveCard::paintBands(QPainter& painter) const {
    const BandPlot at{QRectF(plot()), range_.low(), range_.high(), span_.droop, span_.bump};
    for (const Line& line : lines_) {
        QColor color = line.own.graph->pen().color();
        color.setAlphaF(color.alphaF() * kBandInk);
        paintBand(painter, line.band, at, color);
    }
}

void CurveCard::paintCursor(QPainter& painter, const CardType& type) const {
    if (!hasPoints_) {
        return;
    }
    if (lines_.size() == 1) {
        paintOneValue(painter, type);
    } else {
        double top = card().top() + CardType::kTopPad + type.titleMetrics.height() + CardType::kRowGap;
        for (const Line& line : lines_) {
            paintKeyRow(painter, type, line, top);
            top += type.bodyMetrics.height();
            paintBefore(painter, type, line, top);
            top += type.withBefore ? type.quietMetrics.height() : 0.0;
        }
    }
    paintMarkers(painter);
}

void CurveCard::paintOneValue(QPainter& painter, const CardType& type) const {
    const QString unit = title_.unitInTitle || !cursorUsable_ ? QString() : unitText();
    const double unitWidth = unit.isEmpty() ? 0.0 : type.quietMetrics.horizontalAdvance(unit) + 3.0;
    const QString& value = lines_.front().cursorText;
    const bool big = type.figureMetrics.horizontalAdvance(value) + unitWidth <= inner().width();
    const QFontMetricsF& metrics = big ? type.figureMetrics : type.bodyMetrics;
    const double top = card().top() + CardType::kTopPad + type.titleMetrics.height() + CardType::kRowGap;
    const double baseline = top + type.figureMetrics.ascent();
    painter.setFont(big ? type.figure : type.body);
    painter.setPen(cursorUsable_ ? theme().ink : theme().muted);
    painter.drawText(QPointF(inner().left(), baseline), value);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const double from = inner().left() + metrics.horizontalAdvance(value) + 3.0;
    painter.drawText(QPointF(from, baseline), unit);
    const double sureFrom = from + unitWidth + 2.0;
    const QString& sure = lines_.front().sureText;
    if (sureFrom + type.quietMetrics.horizontalAdvance(sure) <= inner().right()) {
        painter.drawText(QPointF(sureFrom, baseline), sure);
    }
    paintBefore(painter, type, lines_.front(), top + type.figureMetrics.height());
}

// Under a value: what it was before and by how much it changed.
void CurveCard::paintBefore(QPainter& painter, const CardType& type, const Line& line, double top) const {
    const QRectF row(inner().left(), top, inner().width(), type.quietMetrics.height());
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    for (const QString& text : line.beforeTexts) {
        if (type.quietMetrics.horizontalAdvance(text) <= row.width() || text == line.beforeTexts.last()) {
            painter.drawText(row, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, text);
            return;
        }
    }
}

void CurveCard::paintKeyRow(QPainter& painter, const CardType& type, const Line& line, double top) const {
    const double height = type.bodyMetrics.height();
    const QRectF row(inner().left(), top, std::min(inner().width(), kWidestKey * height), height);
    const double middle = std::round(row.center().y()) + 0.5;
    painter.setPen(line.own.graph->pen());
    painter.drawLine(QPointF(row.left(), middle), QPointF(row.left() + kSample, middle));
    const double from = row.left() + kSample + kKeyGap;
    const bool narrow = inner().width() < height * kNarrowKey;
    const QFontMetricsF& metrics = narrow ? type.smallBoldMetrics : type.bodyMetrics;
    painter.setFont(narrow ? type.smallBold : type.body);
    painter.setPen(cursorUsable_ ? theme().ink : theme().muted);
    painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter | Qt::TextDontClip, line.cursorText);
    const double room = row.right() - metrics.horizontalAdvance(line.cursorText) - kKeyGap - from;
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    for (const QString& name : line.spec->keyNames) {
        if (type.quietMetrics.horizontalAdvance(name) <= room) {
            painter.drawText(QRectF(from, row.top(), room, row.height()), Qt::AlignLeft | Qt::AlignVCenter,
                             name);
            break;
        }
    }
    const double sureFrom = row.right() + kKeyGap;
    if (sureFrom + type.quietMetrics.horizontalAdvance(line.sureText) <= inner().right()) {
        painter.drawText(QRectF(sureFrom, row.top(), inner().right() - sureFrom, row.height()),
                         Qt::AlignLeft | Qt::AlignVCenter, line.sureText);
    }
}

void CurveCard::paintMarkers(QPainter& painter) const {
    if (!cursorUsable_) {
        return;
    }
    const double y = std::floor(travelAxis().position(cursorTravel_)) + 0.5;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(theme().card);
    for (const Line& line : lines_) {
        const bool second = &line != &lines_.front();
        if (std::isnan(line.cursorValue) || line.cursorValue < range_.low() ||
            line.cursorValue > range_.high()) {
            continue;
        }
        const double x = axisRect_.axis(QCPAxis::atBottom)->coordToPixel(line.cursorValue) + 0.5;
        painter.setPen(QPen(line.own.graph->pen().color(), 2));
        const double radius = second ? 3.4 : 4.4;
        painter.drawEllipse(QPointF(x, y), radius, radius);
    }
    painter.setBrush(Qt::NoBrush);
}

}  // namespace bolthole
