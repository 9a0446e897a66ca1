#include "widgets/views/picture_drawing.h"

#include <algorithm>
#include <cmath>

#include "geometry/kinematics/linkage.h"
#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

// Holes of one bracket stand apart as long as they can still be told from dots.
SceneStyle styleOf(const DrawnPoints& points, const SideCamera& camera) {
    SceneStyle style = SceneStyle::screen();
    style.hole = std::clamp(0.36 * points.closestHoles * camera.scale, 2.6, 4.2);
    return style;
}

}  // namespace

PictureDrawing::PictureDrawing(QPainter& painter, const BenchState& state, const DrawnPoints& points,
                               const SideCamera& camera, QRectF picture, const PictureMarks& marks,
                               ViewPlane plane)
    : painter_(painter),
      state_(state),
      points_(points),
      camera_(camera),
      picture_(picture),
      marks_(marks),
      theme_(theme()),
      station_(drawnStation(state)),
      plane_(plane),
      labels_(picture.adjusted(4, 4, -4, -4)),
      style_(styleOf(points, camera)),
      view_{camera, picture},
      things_(painter, scene_, view_, style_) {}

void PictureDrawing::putPath(const QPolygonF& through, const SceneStroke& stroke) {
    scene_.clear();
    scene_.addPath(through, true).stroke = stroke;
    things_.draw(scene_.items.back());
}

void PictureDrawing::putRay(QPointF from, QPointF way, const SceneStroke& stroke) {
    put(SceneLine{.from = from, .to = {from, way}, .stroke = stroke});
}

bool PictureDrawing::inPicture(QPointF point, double margin) const {
    return picture_.adjusted(margin, margin, -margin, -margin).contains(point);
}

QString PictureDrawing::distanceText(double metres) const {
    return QString::fromStdString(figureText(metres, Quantity::length, state_.style.units));
}

StillKey PictureDrawing::cameraKey() const {
    StillKey key;
    key.tell(picture_);
    key.tell(camera_.scale);
    key.tell(camera_.origin);
    key.tell(gridSpacing());
    key.tell(theme_.canvas.rgba());
    return key;
}

void PictureDrawing::drawBehind(StillLayers* layers) {
    if (layers == nullptr || station_ == nullptr || !takesPixels(painter_)) {
        drawBackdrop();
        if (station_ != nullptr) {
            drawAxle();
        }
        return;
    }
    StillKey backdrop = cameraKey();
    tellBackdrop(backdrop);
    StillKey withAxle = backdrop;
    tellAxle(withAxle);
    const auto showBackdrop = [&](QPainter& painter) {
        layers->backdrop.show(painter, picture_, backdrop,
                              [this](QPainter& still) { on(still)->drawBackdrop(); });
    };
    const auto paintBoth = [&](QPainter& still) {
        showBackdrop(still);
        on(still)->drawAxle();
    };
    if (!layers->withAxle.showIfStill(painter_, picture_, withAxle, paintBoth)) {
        showBackdrop(painter_);
        drawAxle();
    }
}

void PictureDrawing::drawGrid() {
    const double spacing = gridSpacing();
    const QPointF low = camera_.toCar(picture_.bottomLeft());
    const QPointF high = camera_.toCar(picture_.topRight());
    painter_.setRenderHint(QPainter::Antialiasing, false);
    painter_.setPen(QPen(theme_.grid, 1.0));
    for (double x = std::ceil(low.x() / spacing) * spacing; x <= high.x(); x += spacing) {
        const double across = picture(x, 0).x();
        painter_.drawLine(QPointF(across, picture_.top()), QPointF(across, picture_.bottom()));
    }
    for (double z = std::ceil(low.y() / spacing) * spacing; z <= high.y(); z += spacing) {
        const double down = picture(0, z).y();
        painter_.drawLine(QPointF(picture_.left(), down), QPointF(picture_.right(), down));
    }
    painter_.setRenderHint(QPainter::Antialiasing, true);
}

void PictureDrawing::drawLinks() {
    for (const DrawnLink& link : points_.links) {
        put(SceneLink{.chassis = link.chassis,
                      .axle = link.axle,
                      .role = link.role,
                      .farSide = link.farSide && link.axle != link.chassis,
                      .eyes = false},
            {.isStale = !state_.traceIsCurrent});
    }
}

void PictureDrawing::drawPoints() {
    for (const bool used : {false, true}) {
        for (const DrawnPoint& point : points_.points) {
            if (point.inUse == used) {
                drawPoint(point);
            }
        }
    }
}

void PictureDrawing::drawPoint(const DrawnPoint& point) {
    const QPointF at = camera_.toPicture(point.at);
    const QPointF reach(style_.hole, style_.hole);
    labels_.take(QRectF(at - reach, at + reach));
    const SceneMarks marks{.hovered = point.id == marks_.hovered,
                           .selected = point.id == marks_.selected,
                           .ring = marks_.keyboardFocus};
    if (point.id.kind == PointId::Kind::joint) {
        put(SceneJoint{.at = point.at}, marks);
    } else {
        put(SceneHole{.at = point.at, .look = point.inUse ? HoleLook::bolted : HoleLook::free}, marks);
    }
}

void PictureDrawing::drawGhostLinks(const Ghost& ghost, SceneInk ink) {
    for (const Constraint& constraint : buildLinkage(ghost.car).constraints) {
        if (plane_ != ViewPlane::side || constraint.side != Side::right) {
            put(SceneLink{.chassis = inPlane(plane_, constraint.onChassis),
                          .axle = inPlane(plane_, ghost.cursor.pose.carry(constraint.onAxle))},
                {.ghost = ink});
        }
    }
}

}  // namespace bolthole
