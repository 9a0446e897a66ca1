// What mouse and keys do in a picture of the bench.
#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <cmath>

#include "widgets/scene/scene_hit.h"
#include "widgets/views/bench_picture.h"

namespace bolthole {

namespace {

constexpr double kPickRadius = 11;  // pixels
constexpr double kZoomStep = 1.15;

double roundTo(double value, double step) {
    return std::round(value / step) * step;
}

Edit moveTo(const PointId& id, const Eigen::Vector3d& at) {
    if (id.kind == PointId::Kind::joint) {
        return MoveJoint{.end = id.end, .at = at};
    }
    return MoveHole{.link = id.link, .end = id.end, .hole = id.hole, .at = at};
}

// The way an arrow key points; none for any other.
QPointF wayOf(int key) {
    switch (key) {
        case Qt::Key_Left:
            return {-1, 0};
        case Qt::Key_Right:
            return {1, 0};
        case Qt::Key_Up:
            return {0, 1};
        case Qt::Key_Down:
            return {0, -1};
        default:
            return {};
    }
}

}  // namespace

// Last comes what is hit first where two lie on each other: the first of the car's.
void BenchPicture::rebuildHoles() {
    holes_.clear();
    for (std::size_t index = points_.points.size(); index-- > 0;) {
        const DrawnPoint& point = points_.points[index];
        holes_.add(SceneHole{.at = point.at, .look = point.inUse ? HoleLook::bolted : HoleLook::free},
                   static_cast<int>(index));
    }
}

BenchPicture::Picked BenchPicture::pointUnder(QPointF place) const {
    const int found = hitScene(holes_, {camera_, QRectF(rect())}, SceneStyle::screen(), place, kPickRadius);
    if (found < 0) {
        return {};
    }
    const DrawnPoint& point = points_.points[static_cast<std::size_t>(found)];
    return {point.id, point.mirrored};
}

// Where the pointer is still at the same point: farther off its tip goes.
QRect BenchPicture::aroundPoint(QPoint place) const {
    const Picked point = pointUnder(place);
    const QPoint center = placeOf(point.id, point.mirrored).toPoint();
    constexpr auto kReach = static_cast<int>(kPickRadius);
    return {center - QPoint(kReach, kReach), center + QPoint(kReach, kReach)};
}

bool BenchPicture::followEdgeMarker(QPointF place) {
    for (const EdgeMarker& marker : edgeMarkers_) {
        if (marker.box.contains(place)) {
            showAll();
            return true;
        }
    }
    return false;
}

void BenchPicture::mousePressEvent(QMouseEvent* event) {
    const bool left = event->button() == Qt::LeftButton;
    if (state_ == nullptr || press_.down || (!left && event->button() != Qt::MiddleButton)) {
        return;
    }
    press_ = {.down = true,
              .panning = false,
              .point = left ? pointUnder(event->position()) : Picked{},
              .at = event->position(),
              .cameraOrigin = camera_.origin};
    if (press_.point.id.kind == PointId::Kind::none && left && followEdgeMarker(event->position())) {
        press_.down = false;
    }
}

void BenchPicture::mouseMoveEvent(QMouseEvent* event) {
    if (state_ == nullptr) {
        return;
    }
    if (press_.down && (event->buttons() & (Qt::LeftButton | Qt::MiddleButton)) == 0) {
        abandonDrag();  // the release went elsewhere: to a dialog that opened, or to another program
    }
    pointer_ = event->position();
    if (!press_.down) {
        setHovered(pointUnder(event->position()));
        return;
    }
    const QPointF way = event->position() - press_.at;
    const bool started =
        drag_.active || press_.panning || way.manhattanLength() >= QApplication::startDragDistance() / 2.0;
    if (!started) {
        return;
    }
    if (press_.point.id.kind != PointId::Kind::none) {
        if (!drag_.active) {
            startDrag();
        }
        dragTo(event->position(), event->modifiers());
        return;
    }
    press_.panning = true;
    fitting_ = Fitting::byHand;
    setCursor(Qt::ClosedHandCursor);
    camera_.origin = press_.cameraOrigin + way;
    update();
}

void BenchPicture::startDrag() {
    const std::optional<Eigen::Vector3d> at = pointAt(state_->car, press_.point.id);
    if (!at) {
        return;
    }
    select(press_.point, false);
    marks_.hovered = press_.point.id;
    marks_.hoveredMirrored = press_.point.mirrored;
    drag_ = {.active = true,
             .grab = placeOf(press_.point.id, press_.point.mirrored) - press_.at,
             .pose = drawnPose(*state_),
             .measured = *at};
    setCursor(Qt::SizeAllCursor);
}

// Where the dragged point would be measured if it were seen at `shown`. The right-hand hole of a pair is
// given by the left one.
Eigen::Vector3d BenchPicture::measuredAt(QPointF shown) const {
    const bool mirrors = press_.point.mirrored;
    const Eigen::Vector3d held = mirrors ? mirrored(drag_.measured) : drag_.measured;
    const Eigen::Vector3d at =
        press_.point.id.end == End::axle
            ? measuredFromDrawn(plane_, drag_.pose, state_->car.rearTireRadius, shown, held)
            : withPlane(plane_, shown, held);
    return mirrors ? mirrored(at) : at;
}

// Shift keeps to one direction; Alt leaves the snapping out.
void BenchPicture::dragTo(QPointF place, Qt::KeyboardModifiers modifiers) {
    if (!drag_.active) {
        return;
    }
    Eigen::Vector3d at = measuredAt(camera_.toCar(place + drag_.grab));
    const auto [across, up, depth, sense] = axesOf(plane_);
    if (!modifiers.testFlag(Qt::AltModifier)) {
        at[across] = roundTo(at[across], snapStep());
        at[up] = roundTo(at[up], snapStep());
    }
    if (modifiers.testFlag(Qt::ShiftModifier)) {
        const bool sideways =
            std::abs(at[across] - drag_.measured[across]) > std::abs(at[up] - drag_.measured[up]);
        const int kept = sideways ? up : across;
        at[kept] = drag_.measured[kept];
    }
    lastDragEdit_ = moveTo(press_.point.id, at);
    emit edited(lastDragEdit_, EditPhase::dragging);
}

double BenchPicture::snapStep() const {
    if (state_->style.units == Units::metric) {
        return 0.001;
    }
    switch (state_->style.inches) {
        case InchStyle::sixteenths:
            return kMetresPerInch / 16;
        case InchStyle::thirtySeconds:
            return kMetresPerInch / 32;
        case InchStyle::decimal:
            break;
    }
    return kMetresPerInch / 20;
}

void BenchPicture::abandonDrag() {
    if (press_.down) {
        press_.down = press_.panning = false;
        setCursor(Qt::ArrowCursor);
    }
    if (drag_.active) {
        drag_.active = false;
        emit edited(lastDragEdit_, EditPhase::abandoned);
    }
}

void BenchPicture::mouseReleaseEvent(QMouseEvent* event) {
    if (!press_.down || (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton)) {
        return;
    }
    const Press press = press_;
    press_.down = press_.panning = false;
    if (drag_.active) {
        drag_.active = false;
        emit edited(lastDragEdit_, EditPhase::dragged);
    } else if (!press.panning && event->button() == Qt::LeftButton) {
        click(press.point, false);
    }
    setCursor(Qt::ArrowCursor);
    marks_.hovered = {};
    if (rect().contains(event->position().toPoint())) {
        setHovered(pointUnder(event->position()));
    } else {
        pointer_.reset();
    }
}

void BenchPicture::click(const Picked& point, bool byKey) {
    const PointId& id = point.id;
    const bool hole = id.kind == PointId::Kind::hole && pointAt(state_->car, id).has_value();
    select(point, byKey);
    if (hole && state_->car.links[static_cast<std::size_t>(id.link)].bracket(id.end).use != id.hole) {
        emit edited(UseHole{.link = id.link, .end = id.end, .hole = id.hole}, EditPhase::whole);
    }
}

void BenchPicture::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && pointUnder(event->position()).id.kind == PointId::Kind::none) {
        showLinks();
        return;
    }
    mousePressEvent(event);
}

void BenchPicture::wheelEvent(QWheelEvent* event) {
    const double notches = event->angleDelta().y() / 120.0;
    zoomBy(std::pow(kZoomStep, notches), event->position());
    event->accept();
}

void BenchPicture::zoomBy(double factor, QPointF fixed) {
    fitting_ = Fitting::byHand;
    camera_.zoom(factor, fixed);
    update();
}

void BenchPicture::keyPressEvent(QKeyEvent* event) {
    if (state_ == nullptr || nudge(event->key(), event->modifiers())) {
        return;
    }
    switch (event->key()) {
        case Qt::Key_Period:
            return walkPoints(+1);
        case Qt::Key_Comma:
            return walkPoints(-1);
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Space:
            return click({marks_.selected, marks_.selectedMirrored}, true);
        case Qt::Key_Escape:
            return drag_.active ? abandonDrag() : select({}, false);
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            return zoomBy(kZoomStep, rect().center());
        case Qt::Key_Minus:
            return zoomBy(1 / kZoomStep, rect().center());
        case Qt::Key_L:
            return showLinks();
        case Qt::Key_A:
            return showAll();
        default:
            QWidget::keyPressEvent(event);
    }
}

// Arrows move the selected point by one step of the tape, the way they point in the picture; with nothing
// selected they pan.
bool BenchPicture::nudge(int key, Qt::KeyboardModifiers modifiers) {
    const QPointF way = wayOf(key);
    if (way.isNull()) {
        return false;
    }
    if (drag_.active) {
        return true;
    }
    const std::optional<Eigen::Vector3d> at = pointAt(state_->car, marks_.selected);
    if (!at) {
        fitting_ = Fitting::byHand;
        camera_.origin += QPointF(-way.x(), way.y()) * 40;
        update();
        return true;
    }
    marks_.tellsSelected = true;
    const double step = snapStep() * (modifiers.testFlag(Qt::ShiftModifier) ? 4 : 1);
    const Eigen::Vector3d seen = wayInCar(plane_, way * step);
    emit edited(moveTo(marks_.selected, *at + (marks_.selectedMirrored ? mirrored(seen) : seen)),
                EditPhase::whole);
    return true;
}

// From hole to hole; the right-hand ones of the pairs go with their left ones.
void BenchPicture::walkPoints(int step) {
    const int count = static_cast<int>(points_.points.size());
    if (count == 0) {
        return;
    }
    const auto at = [&](int index) -> const DrawnPoint& {
        return points_.points[static_cast<std::size_t>(index)];
    };
    int index = step > 0 ? -1 : 0;
    for (int candidate = 0; candidate < count; ++candidate) {
        if (at(candidate).id == marks_.selected && !at(candidate).mirrored) {
            index = candidate;
        }
    }
    do {
        index = (index + step + count) % count;
    } while (at(index).mirrored);
    select({at(index).id, false}, true);
}

}  // namespace bolthole
