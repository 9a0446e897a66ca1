// The words of the pictures: names, tags, edge markers, scale bar.
#include <QFontMetricsF>
#include <QPainterPath>
#include <array>
#include <cmath>

#include "widgets/kit/kept_words.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/views/picture_drawing.h"

namespace bolthole {

// Grid lines every so much, m: the finest of a 1-2-5 (or inch) series that leaves 36 pixels between lines.
double PictureDrawing::gridSpacing() const {
    constexpr std::array kInches{1.0, 2.0, 4.0, 6.0, 12.0, 24.0, 48.0};
    constexpr std::array kMillimetres{20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0};
    for (std::size_t index = 0; index < kInches.size(); ++index) {
        const double spacing = state_.style.units == Units::inch ? kInches[index] * kMetresPerInch
                                                                 : kMillimetres[index] / 1000.0;
        if (spacing * camera_.scale >= 36) {
            return spacing;
        }
    }
    return 2.0;
}

// A line of text on a ground that quiets what lies below it; nothing in a null box.
void PictureDrawing::drawChip(const QRectF& box, const QString& text, const QColor& ground) {
    if (box.isNull()) {
        return;
    }
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(ground);
    painter_.drawRoundedRect(box, 3, 3);
    painter_.setPen(theme_.ink);
    drawLine(painter_, box, Qt::AlignCenter, text);
}

void PictureDrawing::drawTag(const QRectF& box, const QString& title, const QString& text,
                             const QColor& edge) {
    painter_.setPen(roundPen(edge, 1.0));
    painter_.setBrush(faded(theme_.card, 0.94));
    painter_.drawRoundedRect(box, 5, 5);
    const QRectF inside = box.adjusted(9, 5, -9, -5);
    painter_.setPen(theme_.muted);
    painter_.setFont(textFont(TextSize::small));
    drawLine(painter_, inside, Qt::AlignLeft | Qt::AlignTop, title);
    painter_.setPen(theme_.ink);
    painter_.setFont(textFont(TextSize::body, true));
    drawLine(painter_, inside, Qt::AlignLeft | Qt::AlignBottom, text);
    painter_.setFont(textFont(TextSize::small));
}

// A name beside each link: color is never the only sign.
void PictureDrawing::drawLinkNames() {
    for (const DrawnLink& link : points_.links) {
        if (link.farSide || link.mirrored) {
            continue;
        }
        const QString name =
            QString::fromStdString(state_.car.links[static_cast<std::size_t>(link.link)].name);
        // An arm reaches past the links: near its front end nothing else bears the name.
        const LinkKind kind = state_.car.links[static_cast<std::size_t>(link.link)].kind;
        const double share = kind == LinkKind::pivot || kind == LinkKind::slider ? 0.82 : 0.5;
        const QPointF middle = camera_.toPicture(link.axle + (link.chassis - link.axle) * share);
        constexpr double kWidest = 140;  // px
        const bool isWide = sizeOfLine(painter_.font(), name).width() > kWidest;
        const QString shown =
            isWide ? QFontMetricsF(painter_.font()).elidedText(name, Qt::ElideRight, kWidest) : name;
        const QSizeF size = sizeOfLine(painter_.font(), shown) + QSizeF(4, 0);
        const QRectF box = labels_.place(middle, size, 9, link.role == Role::lower ? 6 : 2);
        if (box.isNull()) {
            continue;
        }
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(faded(theme_.canvas, 0.75));
        painter_.drawRoundedRect(box, 3, 3);
        const QColor color = theme_.*roleInk(link.role);
        painter_.setPen(theme_.dark ? color : color.darker(120));
        drawLine(painter_, box, Qt::AlignCenter, shown);
    }
}

void PictureDrawing::drawMarkedPoints() {
    drawPointLabel(marks_.hovered, marks_.hoveredMirrored);
    if (marks_.tellsSelected && !(marks_.selected == marks_.hovered)) {
        drawPointLabel(marks_.selected, marks_.selectedMirrored);
    }
}

void PictureDrawing::drawPointLabel(const PointId& id, bool mirrored) {
    for (const DrawnPoint& point : points_.points) {
        if (id.kind == PointId::Kind::none || !(point.id == id) || point.mirrored != mirrored) {
            continue;
        }
        const QString name = pointName(state_.car, id) + (mirrored ? tr(", right side") : QString());
        const QString place = pointPlace(state_.car, id, state_.style);
        const QSizeF above = sizeOfLine(textFont(TextSize::small), name);
        const QSizeF below = sizeOfLine(textFont(TextSize::body, true), place);
        const QSizeF size(std::max(above.width(), below.width()) + 18, above.height() + below.height() + 10);
        const QRectF box = labels_.place(camera_.toPicture(point.at), size, 16, 3);
        if (!box.isNull()) {
            drawTag(box, name, place, theme_.focus);
        }
        return;
    }
}

// Two grid squares long, or one where there is no room for two; left out where there is none at all.
void PictureDrawing::drawScaleBar() {
    for (const double spacing : {2 * gridSpacing(), gridSpacing()}) {
        const SceneScaleBar bar{
            .length = spacing,
            .words = QStringLiteral("%1 %2")
                         .arg(qRound(spacing / shownUnit(Quantity::length, state_.style.units)))
                         .arg(unitText(Quantity::length, state_.style.units))};
        const QLineF line = lineOf(bar, {camera_, picture_}, style_);
        const QSizeF size = sizeOfLine(painter_.font(), bar.words);
        const QRectF words(line.p1() - QPointF(size.width() + 8, size.height() / 2), size);
        if (labels_.isFree(words.united(QRectF(line.p1(), line.p2()).adjusted(0, -4, 0, 4)))) {
            put(bar);
            drawLine(painter_, words, Qt::AlignCenter, bar.words);
            return;
        }
    }
}

void PictureDrawing::drawEdgeMarker(const QString& text, QPointF target, const QColor& color) {
    const QPointF center = picture_.center();
    const QPointF aim = camera_.toPicture(target);
    const QPointF way = aim - center;
    const QRectF inner = picture_.adjusted(14, 14, -14, -14);
    const double across = std::abs(way.x()) < 1e-9 ? 1e9 : inner.width() / 2 / std::abs(way.x());
    const double down = std::abs(way.y()) < 1e-9 ? 1e9 : inner.height() / 2 / std::abs(way.y());
    const QPointF tip = center + way * std::min(across, down);
    const QPointF along = unit(way);
    const QPointF side(-along.y(), along.x());
    QPainterPath arrow(tip);
    arrow.lineTo(tip - along * 13 + side * 7);
    arrow.lineTo(tip - along * 13 - side * 7);
    arrow.closeSubpath();
    painter_.fillPath(arrow, color);
    const int preferred =
        std::abs(along.x()) > std::abs(along.y()) ? (along.x() > 0 ? 4 : 0) : (along.y() > 0 ? 2 : 6);
    labels_.take(arrow.boundingRect());
    const QSizeF size = sizeOfLine(painter_.font(), text) + QSizeF(12, 6);
    QRectF box = labels_.place(tip - along * 8, size, 12, preferred);
    constexpr int kStepsInward = 8;  // an arrow without words says nothing
    for (int step = 1; box.isNull() && step <= kStepsInward; ++step) {
        box = labels_.place(tip - along * (8 + 24 * step), size, 12, preferred);
    }
    edgeMarkers_.push_back({arrow.boundingRect().united(box), target});
    drawChip(box, text, faded(theme_.card, 0.9));
}

}  // namespace bolthole
