#include "widgets/scene/scene_things.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "widgets/kit/pens.h"
#include "widgets/scene/scene_springs.h"

namespace bolthole {

namespace {

constexpr int kSpokes = 5;
constexpr double kRim = 0.6;         // of a tire's radius
constexpr double kTickShare = 0.5;   // of an arrow's head, half a tick across a line's end
constexpr double kHaloLink = 6;      // width from which on a link stands out from what lies below it
constexpr double kRoleLineLink = 4;  // and bears the line that tells its role
constexpr double kGhostLink = 2.2;   // px: thinner than a link, so that both are seen where they coincide

QPointF squareTo(QPointF along) {
    return {-along.y(), along.x()};
}

}  // namespace

SceneInk roleInk(Role role) {
    return role == Role::lower ? &Theme::lower : role == Role::upper ? &Theme::upper : &Theme::crosswise;
}

QLineF lineOf(const SceneDimension& dimension, const SceneView& view) {
    const QPointF from = view.place(dimension.from);
    const QPointF to = view.place(dimension.to);
    const QPointF aside = dimension.aside * squareTo(unit(to - from));
    return {from + aside, to + aside};
}

QLineF lineOf(const SceneScaleBar& bar, const SceneView& view, const SceneStyle& style) {
    const double inset = style.isPrint ? 4 : 13;
    const QPointF right = view.picture.bottomRight() - QPointF(inset, inset);
    return {right - QPointF(view.length(bar.length), 0), right};
}

// Color is never the only sign here either: the baseline has short dashes, another ghost long ones.
QPen ghostLinkPen(SceneInk ink, const SceneStyle& style) {
    const double wide = style.isPrint ? style.width(SceneWeight::strong) : kGhostLink;
    const QList<double> dashes = ink == &Theme::baseline ? QList<double>{1.6, 1.6} : QList<double>{4.0, 2.0};
    return dashedPen(style.color(ink, 0.75), wide, dashes);
}

void ThingPainter::draw(const SceneItem& item) {
    std::visit([&](const auto& shape) { draw(shape, item.marks); }, item.shape);
}

SceneInk ThingPainter::inkOf(const SceneMarks& marks, SceneInk plain) {
    if (marks.pastLimit) {
        return &Theme::problem;
    }
    if (marks.selected || marks.hovered) {
        return &Theme::focus;
    }
    return marks.ghost == nullptr ? plain : marks.ghost;
}

void ThingPainter::clippedLine(QPointF from, QPointF to) {
    if (const auto seen = clipped(QLineF(from, to), view_.picture)) {
        painter_.drawLine(*seen);
    }
}

void ThingPainter::cross(QPointF at, double reach) {
    painter_.drawLine(at - QPointF(reach, 0), at + QPointF(reach, 0));
    painter_.drawLine(at - QPointF(0, reach), at + QPointF(0, reach));
}

void ThingPainter::tick(QPointF at, QPointF way) {
    const QPointF across = kTickShare * style_.arrowHead * squareTo(way);
    painter_.drawLine(at - across, at + across);
}

void ThingPainter::draw(const SceneGround& ground, const SceneMarks&) {
    const QRectF& picture = view_.picture;
    const QPointF at = view_.place(ground.at);
    const QPointF along = view_.place(ground.at + ground.along) - at;
    const double rise = along.x() == 0 ? 0 : along.y() / along.x();
    const QPointF left(picture.left(), at.y() + (picture.left() - at.x()) * rise);
    const QPointF right(picture.right(), at.y() + (picture.right() - at.x()) * rise);
    if (!style_.isPrint && std::min(left.y(), right.y()) < picture.bottom()) {
        const QPolygonF earth{left,
                              right,
                              {picture.right(), std::max(picture.bottom(), right.y())},
                              {picture.left(), std::max(picture.bottom(), left.y())}};
        painter_.save();
        painter_.setClipRect(picture, Qt::IntersectClip);
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(style_.fill(&Theme::earth, style_.earth));
        painter_.drawPolygon(earth);
        painter_.restore();
    }
    painter_.setPen(style_.isPrint ? style_.pen(&Theme::ink, 0.6) : style_.pen(&Theme::metal, 1.5));
    clippedLine(left, right);
}

// A tire that is pressed flatter than at rest is flat where it stands.
void ThingPainter::draw(const SceneWheel& wheel, const SceneMarks& marks) {
    const QPointF center = view_.place(wheel.center);
    const double round = view_.length(wheel.radius);
    if (!view_.picture.intersects(QRectF(center - QPointF(round, round), QSizeF(2 * round, 2 * round)))) {
        return;
    }
    const bool isGhost = marks.ghost != nullptr;
    SceneStroke stroke{inkOf(marks, &Theme::metal), SceneWeight::medium,
                       isGhost ? SceneDash::dashed : SceneDash::solid};
    const bool isFlat = std::isfinite(wheel.flat);
    if (isFlat) {
        painter_.save();
        const double ground = view_.place({0, wheel.flat}).y() + style_.width(SceneWeight::medium) / 2;
        painter_.setClipRect(QRectF(view_.picture.topLeft(), QPointF(view_.picture.right(), ground)),
                             Qt::IntersectClip);
    }
    painter_.setPen(style_.pen(stroke));
    painter_.setBrush(isGhost || style_.isPrint ? Qt::NoBrush : style_.fill(&Theme::metalFill, 0.75));
    painter_.drawEllipse(center, round, round);
    if (isFlat) {
        painter_.restore();
    }
    stroke.weight = SceneWeight::hair;
    painter_.setPen(style_.pen(stroke));
    if (!isGhost && !style_.isPrint) {
        painter_.setBrush(over(theme().*style_.ground, 0.85, theme().metalFill));
        painter_.drawEllipse(center, kRim * round, kRim * round);
    }
    std::isnan(wheel.turn) ? cross(center, style_.hole) : spokes(wheel);
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::spokes(const SceneWheel& wheel) {
    const QPointF center = view_.place(wheel.center);
    const double round = view_.length(wheel.radius);
    for (int spoke = 0; spoke < kSpokes; ++spoke) {
        const double angle = wheel.turn + 2 * std::numbers::pi * spoke / kSpokes;  // clockwise, as y is down
        const QPointF way(std::cos(angle), std::sin(angle));
        painter_.drawLine(center + 0.12 * round * way, center + 0.54 * round * way);
        if (spoke == 0) {  // one mark on the tread, to see it turn by
            painter_.drawLine(center + 0.74 * round * way, center + 0.9 * round * way);
        }
    }
}

void ThingPainter::draw(const SceneTire& tire, const SceneMarks& marks) {
    const QSizeF size(view_.length(tire.size.width()), view_.length(tire.size.height()));
    const double corner = std::min(size.width(), size.height()) / 4;
    const QRectF body(QPointF(-size.width() / 2, -size.height() / 2), size);
    painter_.save();
    painter_.translate(view_.place(tire.center));
    painter_.rotate(-tire.turn * 180 / std::numbers::pi);
    painter_.setPen(style_.pen({inkOf(marks, &Theme::metal), SceneWeight::thin, SceneDash::dotted}));
    painter_.setBrush(style_.isPrint ? Qt::NoBrush : style_.fill(&Theme::metalFill, 0.75));
    painter_.drawRoundedRect(body, corner, corner);
    // The wheel's middle plane: what the track is measured between.
    painter_.setPen(style_.pen({&Theme::metal, SceneWeight::hair, SceneDash::dashDot, 0.8}));
    painter_.drawLine(size.height() > size.width() ? QLineF(0, body.top(), 0, body.bottom())
                                                   : QLineF(body.left(), 0, body.right(), 0));
    painter_.restore();
}

void ThingPainter::draw(const SceneTube& tube, const SceneMarks& marks) {
    const QPointF from = view_.place(tube.from);
    const QPointF to = view_.place(tube.to);
    const QPointF across = view_.length(tube.radius) * squareTo(unit(to - from));
    const QPointF corners[] = {from + across, to + across, to - across, from - across};
    painter_.setPen(style_.pen({inkOf(marks, &Theme::metal), SceneWeight::thin}));
    painter_.setBrush(style_.fill(&Theme::metal, tube.strength));
    painter_.drawConvexPolygon(corners, 4);
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::draw(const SceneHousing& housing, const SceneMarks& marks) {
    const QPointF center = view_.place(housing.center);
    const double round = view_.length(housing.radius);
    painter_.setPen(style_.pen({inkOf(marks, &Theme::metal), SceneWeight::thin}));
    painter_.setBrush(style_.fill(&Theme::metal, 0.25));
    if (housing.nose) {
        const QPointF nose = view_.place(*housing.nose);
        const QPointF across = squareTo(unit(nose - center));
        const QPointF corners[] = {center + across * (0.8 * round), nose + across * (0.22 * round),
                                   nose - across * (0.22 * round), center - across * (0.8 * round)};
        painter_.drawConvexPolygon(corners, 4);
    }
    painter_.drawEllipse(center, round, round);
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::draw(const SceneLink& link, const SceneMarks& marks) {
    const QPointF chassis = view_.place(link.chassis);
    const QPointF axle = view_.place(link.axle);
    if (marks.ghost != nullptr) {
        return ghostLink(link, marks.ghost);
    }
    const SceneInk ink = marks.pastLimit ? &Theme::problem : roleInk(link.role);
    if (!style_.isPrint && style_.link >= kHaloLink && !link.farSide) {
        painter_.setPen(style_.pen(style_.ground, style_.link + 3));
        painter_.drawLine(axle, chassis);
    }
    QPen pen = style_.pen(ink, style_.link, link.farSide ? 0.4 : 1);
    pen.setStyle(marks.isStale ? Qt::DashLine : Qt::SolidLine);
    painter_.setPen(pen);
    painter_.drawLine(axle, chassis);
    if (!style_.isPrint && style_.link >= kRoleLineLink && link.role != Role::lower && !link.farSide) {
        constexpr double kCore = 0.26;  // of the link's width
        const double core = kCore * style_.link;
        const QColor light = theme().*style_.ground;
        painter_.setPen(link.role == Role::upper ? QPen(light, core, Qt::SolidLine, Qt::FlatCap)
                                                 : dashedPen(light, core, {5.0, 3.0}));
        clippedLine(axle, chassis);
    }
    if (link.eyes) {
        eyes(link, style_.pen(ink, style_.width(SceneWeight::medium)));
    }
}

void ThingPainter::eyes(const SceneLink& link, const QPen& pen) {
    const QPointF chassis = view_.place(link.chassis);
    const double half = 0.9 * style_.hole;
    painter_.setPen(pen);
    painter_.setBrush(style_.fill(&Theme::card));
    painter_.drawRect(QRectF(chassis - QPointF(half, half), QSizeF(2 * half, 2 * half)));
    painter_.drawEllipse(view_.place(link.axle), 0.95 * style_.hole, 0.95 * style_.hole);
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::ghostLink(const SceneLink& link, SceneInk ink) {
    const QPointF chassis = view_.place(link.chassis);
    const QPointF axle = view_.place(link.axle);
    painter_.setPen(ghostLinkPen(ink, style_));
    clippedLine(axle, chassis);
    if (!link.eyes) {
        return;
    }
    painter_.setPen(style_.pen({ink, SceneWeight::thin, SceneDash::solid, 0.75}));
    painter_.setBrush(Qt::NoBrush);
    for (const QPointF& end : {axle, chassis}) {
        painter_.drawEllipse(end, 1.6 * style_.hole, 1.6 * style_.hole);
    }
}

void ThingPainter::draw(const SceneHandle& handle, const SceneMarks& marks) {
    const QPointF at = view_.place(handle.at);
    const double half = 1.1 * style_.hole + (marks.hovered ? 1 : 0);
    if (marks.selected && marks.ring) {
        painter_.setPen(style_.pen({&Theme::focus, SceneWeight::strong}));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawEllipse(at, half + 6, half + 6);
    }
    painter_.setPen(style_.pen({inkOf(marks, &Theme::ink), SceneWeight::thin}));
    painter_.setBrush(style_.fill(marks.selected ? &Theme::focus : &Theme::card));
    painter_.drawRect(QRectF(at - QPointF(half, half), QSizeF(2 * half, 2 * half)));
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::draw(const SceneMount& mount, const SceneMarks& marks) {
    const QPointF at = view_.place(mount.at);
    const double size = (mount.inUse ? 1.0 : 0.8) * style_.hole;
    const SceneInk ink = inkOf(marks, mount.ink);
    painter_.setPen(style_.pen({ink, SceneWeight::thin}));
    painter_.setBrush(style_.fill(mount.inUse ? ink : &Theme::card));
    if (mount.onChassis) {
        painter_.drawRect(QRectF(at - QPointF(size, size), QSizeF(2 * size, 2 * size)));
    } else {
        painter_.drawEllipse(at, size, size);
    }
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::draw(const SceneSpring& spring, const SceneMarks& marks) {
    SymbolLook look;
    look.ink = style_.color(inkOf(marks, &Theme::ink));
    look.fill = style_.color(&Theme::card);
    look.width = style_.width(marks.selected ? SceneWeight::strong : SceneWeight::medium);
    look.unit = style_.hole / 4;
    look.slack = spring.slack;
    look.stopIsMeasured = spring.stopLength.has_value();
    const QPointF span = spring.axle - spring.chassis;
    const double length = std::hypot(span.x(), span.y());
    if (spring.stopLength && length > 0) {
        look.stopShare = *spring.stopLength / length;
    }
    drawPartSymbol(painter_, spring.kind, view_.place(spring.chassis), view_.place(spring.axle), look);
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::draw(const SceneCross& cross, const SceneMarks& marks) {
    const QPointF at = view_.place(cross.at);
    const double reach = style_.hole;
    painter_.setPen(style_.pen({inkOf(marks, &Theme::ink), SceneWeight::medium}));
    painter_.drawLine(at - QPointF(reach, reach), at + QPointF(reach, reach));
    painter_.drawLine(at - QPointF(reach, -reach), at + QPointF(reach, -reach));
}

void ThingPainter::draw(const SceneArrow& arrow, const SceneMarks& marks) {
    const QPointF from = view_.place(arrow.from);
    const QPointF to = from + arrow.way;
    const QPointF back = to - style_.arrowHead * unit(arrow.way);
    const QPointF across = 0.55 * style_.arrowHead * squareTo(unit(arrow.way));
    SceneStroke stroke = arrow.stroke;
    stroke.ink = inkOf(marks, stroke.ink);
    painter_.setPen(style_.pen(stroke));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawLine(from, to);
    stroke.dash = SceneDash::solid;  // the head's lines are, whatever the shaft's
    painter_.setPen(style_.pen(stroke));
    const QPointF head[] = {back + across, to, back - across};
    painter_.drawPolyline(head, 3);
}

void ThingPainter::draw(const SceneLine& line, const SceneMarks& marks) {
    SceneStroke stroke = line.stroke;
    stroke.ink = inkOf(marks, stroke.ink);
    painter_.setPen(style_.pen(stroke));
    clippedLine(view_.place(line.from), view_.place(line.to));
}

QPolygonF ThingPainter::outlineOf(const ScenePath& path) const {
    QPolygonF outline;
    outline.reserve(static_cast<qsizetype>(path.count));
    for (std::size_t at = path.first; at < path.first + path.count; ++at) {
        outline << view_.place(scene_.points[at]);
    }
    return outline;
}

void ThingPainter::draw(const ScenePath& path, const SceneMarks& marks) {
    const QPolygonF outline = outlineOf(path);
    if (path.isClosed && path.fill.ink != nullptr) {
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(style_.fill(path.fill.ink, path.fill.strength));
        painter_.drawPolygon(outline);
    }
    if (path.band > 0) {
        band(path, outline);
    }
    SceneStroke stroke = path.stroke;
    stroke.ink = inkOf(marks, stroke.ink);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(style_.pen(stroke));
    path.isClosed ? painter_.drawPolygon(outline) : painter_.drawPolyline(outline);
}

// The outline's own clip cuts the band. Cutting paths with each other fails where their sides nearly
// coincide, as in a plate that stands a hair off level.
void ThingPainter::band(const ScenePath& path, const QPolygonF& outline) {
    QPainterPath inside;
    inside.addPolygon(outline);
    inside.closeSubpath();
    const QColor ink = style_.isPrint ? Qt::black : faded(theme().reference, theme().dark ? 0.45 : 0.35);
    painter_.save();
    painter_.setClipPath(inside, Qt::IntersectClip);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(QBrush(ink, Qt::BDiagPattern), 2 * view_.length(path.band), Qt::SolidLine,
                         Qt::FlatCap, Qt::RoundJoin));
    painter_.drawPath(inside);
    painter_.restore();
}

void ThingPainter::draw(const SceneDimension& dimension, const SceneMarks& marks) {
    const QLineF line = lineOf(dimension, view_);
    SceneStroke stroke = dimension.stroke;
    stroke.ink = inkOf(marks, stroke.ink);
    painter_.setPen(style_.pen(stroke));
    painter_.drawLine(line);
    const QPointF way = unit(line.p2() - line.p1());
    tick(line.p1(), way);
    tick(line.p2(), way);
}

void ThingPainter::draw(const SceneScaleBar& bar, const SceneMarks&) {
    const QLineF line = lineOf(bar, view_, style_);
    if (line.x1() < view_.picture.left()) {
        return;
    }
    painter_.setPen(style_.pen({&Theme::muted, SceneWeight::thin}));
    painter_.drawLine(line);
    tick(line.p1(), {1, 0});
    tick(line.p2(), {1, 0});
}

}  // namespace bolthole
