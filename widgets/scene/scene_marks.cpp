// The marks of a scene: holes, joints, the halo of what is singled out, and the centers.
#include <algorithm>

#include "widgets/kit/kept_marks.h"
#include "widgets/kit/pens.h"
#include "widgets/scene/scene_things.h"

namespace bolthole {

namespace {

// Marks that are drawn through kept pictures.
enum MarkKind : int {
    freeHole,
    boltedHole,
    joint,
    haloOfHovered,
    haloOfSelected,
    ringOfSelected,
    gravityMark,
    instantMark
};

}  // namespace

double radiusOf(const SceneHole& hole, const SceneView& view, const SceneStyle& style) {
    const double bolted = hole.look == HoleLook::bolted && !style.isPrint ? 1.25 : 1;  // a head over the hole
    return hole.radius > 0 ? std::max(view.length(hole.radius), 0.6 * style.hole) : bolted * style.hole;
}

// On the screen alone: paper has nothing to point with.
void ThingPainter::halo(QPointF at, double radius, const SceneMarks& marks) {
    if (style_.isPrint || !(marks.hovered || marks.selected)) {
        return;
    }
    const double reach = radius + 6;
    const QPen pen = marks.selected ? style_.pen(&Theme::focus, marks.ring ? 2.5 : 1.5) : QPen(Qt::NoPen);
    const QColor fill = faded(theme().focus, marks.hovered ? 0.22 : 0.12);
    const MarkKind kind = !marks.selected ? haloOfHovered : marks.ring ? ringOfSelected : haloOfSelected;
    drawMarkAt(painter_, at, reach + pen.widthF(), {kind, reach, {fill.rgba()}},
               [&](QPainter& painter, QPointF center) {
                   painter.setPen(pen);
                   painter.setBrush(fill);
                   painter.drawEllipse(center, reach, reach);
               });
}

void ThingPainter::draw(const SceneHole& hole, const SceneMarks& marks) {
    const QPointF at = view_.place(hole.at);
    const double radius = radiusOf(hole, view_, style_);
    const SceneInk ink = marks.pastLimit ? &Theme::problem : &Theme::ink;
    halo(at, radius, marks);
    if (hole.look == HoleLook::planned) {
        plannedHole(at, radius, ink);
        return;
    }
    if (hole.look == HoleLook::former) {
        painter_.setPen(style_.pen({ink, SceneWeight::medium}));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawEllipse(at, kFormerRing * radius, kFormerRing * radius);
    }
    const bool isBolted = hole.look == HoleLook::bolted;
    const QPen pen = style_.pen({ink, SceneWeight::medium});
    const QBrush fill = style_.fill(isBolted ? ink : style_.ground);
    const QBrush center = style_.fill(&Theme::card);
    const bool hasCenter = isBolted && !style_.isPrint;
    drawMarkAt(painter_, at, radius + pen.widthF(),
               {isBolted ? boltedHole : freeHole,
                radius,
                {pen.color().rgba(), fill.color().rgba(), center.color().rgba()}},
               [&](QPainter& painter, QPointF middle) {
                   painter.setPen(pen);
                   painter.setBrush(fill);
                   painter.drawEllipse(middle, radius, radius);
                   if (hasCenter) {
                       painter.setPen(Qt::NoPen);
                       painter.setBrush(center);
                       painter.drawEllipse(middle, 0.45 * radius, 0.45 * radius);
                   }
               });
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::plannedHole(QPointF at, double radius, SceneInk ink) {
    painter_.setPen(style_.pen({ink, SceneWeight::strong, SceneDash::dashed}));
    painter_.setBrush(style_.patch());
    painter_.drawEllipse(at, radius, radius);
    painter_.setPen(style_.pen({ink, SceneWeight::hair}));
    cross(at, radius + 0.6 * style_.arrowHead);
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::draw(const SceneJoint& shape, const SceneMarks& marks) {
    const QPointF center = view_.place(shape.at);
    const double radius = std::max(style_.hole, view_.length(shape.radius));
    halo(center, radius, marks);
    const QPen pen = style_.pen({&Theme::ink, SceneWeight::medium});
    const QBrush fill = style_.fill(&Theme::card);
    drawMarkAt(painter_, center, radius + pen.widthF(),
               {MarkKind::joint, radius, {pen.color().rgba(), fill.color().rgba()}},
               [&](QPainter& painter, QPointF at) {
                   painter.setPen(pen);
                   painter.setBrush(fill);
                   painter.drawEllipse(at, radius, radius);
                   painter.drawLine(at - QPointF(radius, 0), at + QPointF(radius, 0));
                   painter.drawLine(at - QPointF(0, radius), at + QPointF(0, radius));
               });
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::gravity(QPointF at, double radius) {
    const QPen pen = style_.pen({&Theme::reference, SceneWeight::medium});
    const QBrush ground = style_.fill(style_.ground);
    const QBrush quarters = style_.fill(&Theme::reference);
    drawMarkAt(painter_, at, radius + pen.widthF(),
               {gravityMark, radius, {pen.color().rgba(), ground.color().rgba(), quarters.color().rgba()}},
               [&](QPainter& painter, QPointF middle) {
                   const QRectF box(middle - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius));
                   painter.setPen(Qt::NoPen);
                   painter.setBrush(ground);
                   painter.drawEllipse(box);
                   painter.setBrush(quarters);
                   painter.drawPie(box, 0, 90 * 16);
                   painter.drawPie(box, 180 * 16, 90 * 16);
                   painter.setBrush(Qt::NoBrush);
                   painter.setPen(pen);
                   painter.drawEllipse(box);
               });
}

void ThingPainter::instantCenter(QPointF at, double radius) {
    const QPen pen = style_.pen({&Theme::instantCenter, SceneWeight::strong});
    const QColor patch = style_.patch();
    drawMarkAt(painter_, at, radius + pen.widthF(), {instantMark, radius, {pen.color().rgba(), patch.rgba()}},
               [&](QPainter& painter, QPointF middle) {
                   const double dot = radius / 1.3 * 0.4;
                   painter.setPen(pen);
                   painter.setBrush(patch);
                   painter.drawEllipse(middle, radius, radius);
                   painter.setPen(Qt::NoPen);
                   painter.setBrush(pen.color());
                   painter.drawEllipse(middle, dot, dot);
               });
}

void ThingPainter::draw(const SceneCenter& center, const SceneMarks& marks) {
    const QPointF at = view_.place(center.at);
    const double size = style_.center;
    if (!view_.picture.contains(at)) {
        return;
    }
    const double round = 1.3 * size;
    if (center.kind == CenterKind::gravity) {
        gravity(at, 1.1 * size);
    } else if (center.kind == CenterKind::roll) {
        rollCenter(at, size, marks);
    } else if (marks.ghost != nullptr) {
        painter_.setPen(style_.pen({marks.ghost, SceneWeight::medium, SceneDash::dashed}));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawEllipse(at, round, round);
    } else {
        instantCenter(at, round);
    }
    painter_.setBrush(Qt::NoBrush);
}

void ThingPainter::rollCenter(QPointF at, double size, const SceneMarks& marks) {
    const bool isGhost = marks.ghost != nullptr;
    const SceneInk ink = isGhost ? marks.ghost : &Theme::instantCenter;
    painter_.setPen(style_.pen({ink, isGhost ? SceneWeight::medium : SceneWeight::strong,
                                isGhost ? SceneDash::dashed : SceneDash::solid}));
    painter_.setBrush(isGhost ? QBrush(Qt::NoBrush) : QBrush(style_.patch()));
    const QPointF corners[] = {at - QPointF(0, size), at + QPointF(size, 0), at + QPointF(0, size),
                               at - QPointF(size, 0)};
    painter_.drawConvexPolygon(corners, 4);
    if (!isGhost) {
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(style_.fill(ink));
        painter_.drawEllipse(at, 0.4 * size, 0.4 * size);
    }
}

}  // namespace bolthole
