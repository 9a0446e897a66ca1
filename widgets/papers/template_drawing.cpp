#include "widgets/papers/template_drawing.h"

#include <QPolygonF>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "widgets/kit/pens.h"
#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

constexpr double kThin = kThinnestLine;
constexpr double kOutlineLine = 0.4;
constexpr double kDrillLine = 0.5;
constexpr double kBeyond = 3.5;       // mm a center mark runs past its circle
constexpr double kDrillBeyond = 6.5;  // for a hole to be drilled
constexpr double kBareReach = 5;      // of a center mark without a circle
constexpr double kGap = 5;            // from the bracket to the first dimension
constexpr double kTick = 1.3;
constexpr double kOutside = 3;  // an edge distance's line runs past the edge
constexpr double kDigits = digit_height::kText;

QPen pen(double width) {
    return {Qt::black, std::max(width, kThin), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin};
}

QRectF boxOf(const TemplateScene& scene) {
    QPolygonF all;
    for (const QPointF& corner : scene.outline) {
        all << corner;
    }
    for (const TemplateHole& hole : scene.holes) {
        const QPointF around(scene.diameter / 2, scene.diameter / 2);
        all << hole.at - around << hole.at + around;
    }
    return all.boundingRect();
}

}  // namespace

TemplateDrawing::TemplateDrawing(QPainter& painter, const TemplateScene& scene, const PrintFonts& fonts)
    : painter_(painter), scene_(scene), fonts_(fonts), labels_(scene.content), bracket_(boxOf(scene)) {}

double TemplateDrawing::armOf(const TemplateHole& hole) const {
    return reach() + (hole.planned ? kDrillBeyond : kBeyond);
}

double TemplateDrawing::reach() const {
    return scene_.diameter > 0 ? scene_.diameter / 2 : kBareReach - kBeyond;
}

void TemplateDrawing::paint() {
    painter_.setBrush(Qt::NoBrush);
    keepOffLines();
    paintOutline();
    int order = 0;
    for (const TemplateHole& hole : scene_.holes) {
        paintHole(hole);
    }
    for (const bool planned : {true, false}) {
        for (const TemplateHole& hole : scene_.holes) {
            if (hole.planned == planned) {
                paintNumber(hole);
            }
        }
    }
    for (const TemplateHole& hole : scene_.holes) {
        if (hole.from >= 0) {
            paintDistances(hole, order++);
        }
    }
    for (const TemplateHole& hole : scene_.holes) {
        if (hole.hasEdge) {
            paintEdgeDistance(hole);
        }
    }
}

void TemplateDrawing::paintOutline() {
    if (scene_.outline.empty()) {
        return;
    }
    QPolygonF outline;
    for (const QPointF& corner : scene_.outline) {
        outline << corner;
    }
    painter_.setPen(pen(kOutlineLine));
    painter_.drawPolygon(outline);
    paintExtent();
}

// No label stands across a line.
void TemplateDrawing::keepOff(const QLineF& taken) {
    constexpr double kEvery = 1.5;
    const int steps = std::clamp(static_cast<int>(taken.length() / kEvery), 1, 300);
    for (int step = 0; step <= steps; ++step) {
        const QPointF at = taken.pointAt(static_cast<double>(step) / steps);
        labels_.take(QRectF(at - QPointF(0.4, 0.4), QSizeF(0.8, 0.8)));
    }
}

// Of all that is drawn later on.
void TemplateDrawing::keepOffLines() {
    for (std::size_t corner = 0; corner < scene_.outline.size(); ++corner) {
        keepOff({scene_.outline[corner], scene_.outline[(corner + 1) % scene_.outline.size()]});
    }
    for (const TemplateHole& hole : scene_.holes) {
        const QPointF around(reach() + 0.5, reach() + 0.5);
        labels_.take(QRectF(hole.at - around, hole.at + around));
        const double arm = armOf(hole);
        keepOff({hole.at - QPointF(arm, 0), hole.at + QPointF(arm, 0)});
        keepOff({hole.at - QPointF(0, arm), hole.at + QPointF(0, arm)});
        if (hole.hasEdge) {
            keepOff({hole.at, hole.edge + kOutside * unit(hole.edge - hole.at)});
        }
        if (hole.from >= 0) {
            for (const QPointF& end : {hole.at, scene_.holes[static_cast<std::size_t>(hole.from)].at}) {
                keepOff({end, {end.x(), bracket_.bottom()}});
                keepOff({end, {bracket_.left(), end.y()}});
            }
        }
    }
}

// A new hole has a stronger circle and a longer cross than one that is there.
void TemplateDrawing::paintHole(const TemplateHole& hole) {
    if (scene_.diameter > 0) {
        painter_.setPen(pen(hole.planned ? kDrillLine : 0.3));
        painter_.drawEllipse(hole.at, scene_.diameter / 2, scene_.diameter / 2);
    }
    painter_.setPen(pen(kThin));
    const double arm = armOf(hole);
    line(hole.at - QPointF(arm, 0), hole.at + QPointF(arm, 0));
    line(hole.at - QPointF(0, arm), hole.at + QPointF(0, arm));
}

// The number stands in the circle itself, so that nobody can take one hole for another; a leader ties the
// words to it.
void TemplateDrawing::paintNumber(const TemplateHole& hole) {
    const PrintType type{hole.planned ? 3.0 : kDigits, true};
    const QString number = QString::number(hole.number);
    constexpr double kOff = 0.8;  // from the arms of the center mark
    const double corner = std::hypot(fonts_.width(number, type) + kOff, type.digits + kOff);
    const bool fitsInside = scene_.diameter > 0 && corner < scene_.diameter / 2;
    painter_.setPen(Qt::black);
    if (fitsInside) {
        fonts_.draw(painter_, hole.at + QPointF(kOff, -kOff), number, type);
    }
    QString text = number + (hole.planned ? tr(" DRILL") : QString());
    text += scene_.diameter > 0 ? QLatin1Char(' ') + scene_.diameterWords : QString();
    const QSizeF size(fonts_.width(text, type) + 1, type.digits + 1.2);
    const QRectF place = labels_.place(hole.at, size, reach() + 2.5, 1);
    if (!place.isNull()) {
        fonts_.draw(painter_, place.bottomLeft() + QPointF(0.5, -0.6), text, type);
        const QPointF end(std::clamp(hole.at.x(), place.left(), place.right()),
                          std::clamp(hole.at.y(), place.top(), place.bottom()));
        painter_.setPen(pen(kThin));
        line(hole.at + reach() * unit(end - hole.at), end);
    } else if (!fitsInside) {  // the number must be read all the same
        fonts_.draw(painter_, hole.at + QPointF(kOff, -kOff), number, type);
    }
}

// A free place along a line, on either side of it, the middle first; taken. Null: there is none.
QRectF TemplateDrawing::placeBeside(const QLineF& taken, QSizeF size) {
    const QPointF along = unit(taken.p2() - taken.p1());
    const bool stands = std::abs(along.y()) > 0.5;
    const double off = stands ? 0.6 + std::abs(along.x()) * size.height() / 2 + size.width() / 2
                              : 0.5 + std::abs(along.y()) * size.width() / 2 + size.height() / 2;
    for (const double share : {0.5, 0.7, 0.3, 0.85, 0.15}) {
        for (const double side : {-1.0, 1.0}) {
            QRectF box(QPointF(), size);
            box.moveCenter(taken.pointAt(share) + side * (stands ? QPointF(-off, 0) : QPointF(0, off)));
            if (labels_.isFree(box)) {
                labels_.take(box);
                return box;
            }
        }
    }
    return {};
}

// From the center to the edge and on to the words outside the bracket.
void TemplateDrawing::paintEdgeDistance(const TemplateHole& hole) {
    const QPointF way = hole.edge - hole.at;
    const QPointF along = unit(way);
    painter_.setPen(pen(kThin));
    line(hole.at, hole.edge + kOutside * along);
    const QPointF across(-along.y(), along.x());
    for (const QPointF& end : {hole.at, hole.edge}) {
        line(end - kTick * across, end + kTick * across);
    }
    const QString& words = hole.edgeWords;
    const QSizeF size(fonts_.width(words, kTemplateText) + 1, kDigits + 1.2);
    if (const QRectF inside = placeBeside({hole.at + reach() * along, hole.edge}, size); !inside.isNull()) {
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, inside.bottomLeft() + QPointF(0.5, -0.6), words, kTemplateText);
        return;
    }
    const double degrees = std::atan2(-along.y(), along.x()) * 180 / std::numbers::pi;
    const int direction = (static_cast<int>(std::lround(degrees / 45)) + 8) % 8;
    const QRectF place = labels_.place(hole.edge + kOutside * along, size, 0.8, direction);
    if (!place.isNull()) {
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, place.bottomLeft() + QPointF(0.5, -0.6), words, kTemplateText);
    }
}

// How far a new hole is from an existing one: across below the bracket, upright left of it, each on a line
// of its own.
void TemplateDrawing::paintDistances(const TemplateHole& hole, int order) {
    const QPointF from = scene_.holes[static_cast<std::size_t>(hole.from)].at;
    const double below = bracket_.bottom() + kGap + 6 + kDimensionStep * order;
    const double beside = bracket_.left() - kGap - 6 - kDimensionStep * order;
    painter_.setPen(pen(kThin));
    for (const QPointF& end : {from, hole.at}) {
        line({end.x(), end.y() + reach() + kBeyond}, {end.x(), below + kTick});
        line({end.x() - reach() - kBeyond, end.y()}, {beside - kTick, end.y()});
    }
    const QString pair = QStringLiteral("%1\u2013%2: ").arg(hole.from + 1).arg(hole.number);
    paintAcross(below, from.x(), hole.at.x(), pair + hole.alongWords);
    paintUpright(beside, from.y(), hole.at.y(), pair + hole.upWords);
}

void TemplateDrawing::paintExtent() {
    const QRectF box = QPolygonF(QList<QPointF>(scene_.outline.begin(), scene_.outline.end())).boundingRect();
    const double above = box.top() - kGap - 4;
    const double beside = box.right() + kGap + 4;
    painter_.setPen(pen(kThin));
    for (const double x : {box.left(), box.right()}) {
        line({x, box.top() - 1.5}, {x, above - kTick});
    }
    for (const double y : {box.top(), box.bottom()}) {
        line({box.right() + 1.5, y}, {beside + kTick, y});
    }
    paintAcross(above, box.left(), box.right(), scene_.acrossWords);
    paintUpright(beside, box.top(), box.bottom(), scene_.heightWords);
}

// A dimension line with its words above the middle; beside the line where they are longer than it.
void TemplateDrawing::paintAcross(double y, double from, double to, const QString& words) {
    const auto [left, right] = std::minmax(from, to);
    painter_.setPen(pen(kThin));
    line({left, y}, {right, y});
    for (const double x : {left, right}) {
        line({x - kTick, y + kTick}, {x + kTick, y - kTick});
    }
    const double width = fonts_.width(words, kTemplateText);
    const bool fits = width + 1 < right - left;
    const QPointF at =
        fits ? QPointF((left + right) / 2 - width / 2, y - 1) : QPointF(right + kTick + 0.8, y + kDigits / 2);
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, at, words, kTemplateText);
    labels_.take(
        QRectF(std::min(left, at.x()), y - kDigits - 1, std::max(right - left, width) + 2, kDigits + 2));
}

void TemplateDrawing::paintUpright(double x, double from, double to, const QString& words) {
    const auto [top, bottom] = std::minmax(from, to);
    painter_.setPen(pen(kThin));
    line({x, top}, {x, bottom});
    for (const double y : {top, bottom}) {
        line({x - kTick, y + kTick}, {x + kTick, y - kTick});
    }
    const double width = fonts_.width(words, kTemplateText);
    const bool fits = width + 1 < bottom - top;
    const double along = fits ? (top + bottom) / 2 : top - kTick - 0.8 - width / 2;
    painter_.save();
    painter_.translate(x - 1, along);
    painter_.rotate(-90);
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, {-width / 2, 0}, words, kTemplateText);
    painter_.restore();
    const double first = std::min(top, along - width / 2);
    labels_.take(QRectF(x - kDigits - 1, first, kDigits + 2, std::max(bottom, along + width / 2) - first));
}

void paintMetricRuler(QPainter& painter, QPointF start, const PrintFonts& fonts) {
    painter.setPen(pen(0.3));
    painter.drawLine(start, start + QPointF(kMetricRuler, 0));
    painter.setPen(pen(kThin));
    for (int tick = 0; tick <= 100; ++tick) {
        const double height = tick % 10 == 0 ? 4.5 : tick % 5 == 0 ? 3.2 : 2;
        const QPointF foot = start + QPointF(tick, 0);
        painter.drawLine(foot, foot - QPointF(0, height));
        if (tick % 10 == 0) {
            const QString text = tick == 100 ? QStringLiteral("100 mm") : QString::number(tick);
            fonts.draw(painter, foot - QPointF(0, 5.2), text, {2.0, false}, Qt::AlignHCenter);
        }
    }
}

void paintInchRuler(QPainter& painter, QPointF start, const PrintFonts& fonts) {
    constexpr int kTicks = 64;  // sixteenths
    constexpr double kSixteenth = kInchRuler / kTicks;
    painter.setPen(pen(0.3));
    painter.drawLine(start, start - QPointF(0, kInchRuler));
    painter.setPen(pen(kThin));
    for (int tick = 0; tick <= kTicks; ++tick) {
        const double width = tick % 16 == 0 ? 4.5 : tick % 8 == 0 ? 3.2 : tick % 4 == 0 ? 2.4 : 1.5;
        const QPointF foot = start - QPointF(0, tick * kSixteenth);
        painter.drawLine(foot, foot + QPointF(width, 0));
        if (tick % 16 == 0) {
            const QString text = tick == kTicks ? QStringLiteral("4 in") : QString::number(tick / 16);
            fonts.draw(painter, foot + QPointF(5.2, 1), text, {2.0, false});
        }
    }
}

namespace {

void paintArrow(QPainter& painter, QPointF from, QPointF to) {
    const QPointF along = unit(to - from);
    const QPointF across(-along.y(), along.x());
    painter.setPen(pen(0.7));
    painter.drawLine(from, to - 2 * along);
    painter.setPen(Qt::NoPen);
    painter.setBrush(Qt::black);
    painter.drawPolygon(QPolygonF{{to, to - 4 * along + 1.6 * across, to - 4 * along - 1.6 * across}});
    painter.setBrush(Qt::NoBrush);
    painter.setPen(Qt::black);
}

}  // namespace

void paintDirections(QPainter& painter, QPointF at, TemplateFace face, const PrintFonts& fonts) {
    const bool right = face == TemplateFace::right;
    const PrintType type{3.4, true};
    const QPointF corner = at + QPointF(right ? 6 : 34, 18);
    const double sense = right ? 1 : -1;
    paintArrow(painter, corner, corner + QPointF(sense * 16, 0));
    paintArrow(painter, corner, corner - QPointF(0, 16));
    fonts.draw(painter, corner + QPointF(sense * 17.5, 1.7), tr("FRONT"), type,
               right ? Qt::AlignLeft : Qt::AlignRight);
    fonts.draw(painter, corner + QPointF(sense * 2.5, -13), tr("UP"), type,
               right ? Qt::AlignLeft : Qt::AlignRight);
}

}  // namespace bolthole
