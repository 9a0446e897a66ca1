#include "widgets/side_view.h"

#include <QAccessible>
#include <QApplication>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolButton>
#include <QToolTip>
#include <cmath>

namespace bolthole {

namespace {

constexpr double kPickRadius = 11;  // pixels
constexpr double kZoomStep = 1.15;
constexpr double kMargin = 34;  // pixels around a fitted box

double roundTo(double value, double step) {
    return std::round(value / step) * step;
}

}  // namespace

SideView::SideView(QWidget* parent) : QWidget(parent) {
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Side view of the rear links"));
    setObjectName(QStringLiteral("sideView"));
    addButtons();
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void SideView::addButtons() {
    const auto add = [this](const QString& text, const QString& name, const QString& tip, auto action) {
        auto* button = new QToolButton(this);
        button->setText(text);
        button->setToolTip(tip);
        button->setAccessibleName(name);
        button->setFocusPolicy(Qt::TabFocus);
        button->setCursor(Qt::ArrowCursor);
        connect(button, &QToolButton::clicked, this, action);
        buttons_.push_back(button);
    };
    add(tr("Links"), tr("Show the links"), tr("Show the rear links as large as they fit (L)"),
        [this] { showLinks(); });
    add(tr("All"), tr("Show all"), tr("Show the whole car, its CG and the instant center (A)"),
        [this] { showAll(); });
    add(QStringLiteral("+"), tr("Zoom in"), tr("Zoom in (+, or the mouse wheel)"),
        [this] { zoomBy(kZoomStep * kZoomStep, rect().center()); });
    add(QStringLiteral("\u2212"), tr("Zoom out"), tr("Zoom out (-, or the mouse wheel)"),
        [this] { zoomBy(1 / (kZoomStep * kZoomStep), rect().center()); });
}

void SideView::placeButtons() {
    int left = 8;
    for (QToolButton* button : buttons_) {
        button->adjustSize();
        button->move(left, height() - button->height() - 8);
        left += button->width() + 4;
    }
}

void SideView::showState(const BenchState& state) {
    const bool first = state_ == nullptr;
    state_ = &state;
    marks_.selected = state.selection;
    points_.rebuild(state);
    if (first) {
        refit();
    }
    updateAccessibleText();
    update();
}

void SideView::showLinks() {
    fitting_ = Fitting::links;
    refit();
}

void SideView::showAll() {
    fitting_ = Fitting::all;
    refit();
}

void SideView::refit() {
    if (state_ == nullptr || fitting_ == Fitting::byHand || width() < 50 || height() < 50) {
        return;
    }
    const QRectF box = fitting_ == Fitting::links ? linksBox(*state_) : wholeBox(*state_);
    // A tall view has sky to spare: lift the car a little, never so far that it floats.
    const double below = kMargin + 24 + std::max(0.0, 0.12 * (height() - 420.0));
    camera_.fit(box, QRectF(rect()).adjusted(kMargin, kMargin, -kMargin, -below));
    update();
}

void SideView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    placeButtons();
    refit();
}

void SideView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    if (state_ == nullptr) {
        painter.fillRect(rect(), theme().canvas);
        return;
    }
    marks_.keyboardFocus = hasFocus();
    SideDrawing drawing(painter, *state_, points_, camera_, rect(), marks_);
    drawing.draw();
    edgeMarkers_ = drawing.edgeMarkers();
    if (ring_ && hasFocus()) {
        painter.setPen(QPen(theme().focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

QPointF SideView::placeOf(const PointId& id) const {
    for (const DrawnPoint& point : points_.points) {
        if (point.id == id) {
            return camera_.toPicture(point.at);
        }
    }
    return {};
}

PointId SideView::pointUnder(QPointF place) const {
    PointId found;
    double nearest = kPickRadius;
    for (const DrawnPoint& point : points_.points) {
        const QPointF way = camera_.toPicture(point.at) - place;
        // A free hole hidden under a bolted one still loses to it.
        const double distance = std::hypot(way.x(), way.y()) + (point.inUse ? 0.0 : 0.5);
        if (distance < nearest) {
            nearest = distance;
            found = point.id;
        }
    }
    return found;
}

void SideView::setHovered(const PointId& id) {
    if (marks_.hovered == id) {
        return;
    }
    marks_.hovered = id;
    setCursor(id.kind == PointId::Kind::none ? Qt::ArrowCursor : Qt::PointingHandCursor);
    update();
}

void SideView::select(const PointId& id) {
    if (!(marks_.selected == id)) {
        marks_.selected = id;
        emit selected(id);
        update();
    }
}

bool SideView::followEdgeMarker(QPointF place) {
    for (const EdgeMarker& marker : edgeMarkers_) {
        if (marker.box.contains(place)) {
            showAll();
            return true;
        }
    }
    return false;
}

void SideView::mousePressEvent(QMouseEvent* event) {
    const bool left = event->button() == Qt::LeftButton;
    if (state_ == nullptr || press_.down || (!left && event->button() != Qt::MiddleButton)) {
        return;
    }
    press_ = {.down = true,
              .panning = false,
              .point = left ? pointUnder(event->position()) : PointId{},
              .at = event->position(),
              .cameraOrigin = camera_.origin};
    if (press_.point.kind == PointId::Kind::none && left && followEdgeMarker(event->position())) {
        press_.down = false;
    }
}

void SideView::mouseMoveEvent(QMouseEvent* event) {
    if (state_ == nullptr) {
        return;
    }
    if (press_.down && (event->buttons() & (Qt::LeftButton | Qt::MiddleButton)) == 0) {
        abandonDrag();  // the release went elsewhere: to a dialog that opened, or to another program
    }
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
    if (press_.point.kind != PointId::Kind::none) {
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

void SideView::startDrag() {
    const std::optional<Eigen::Vector3d> at = pointAt(state_->car, press_.point);
    if (!at) {
        return;
    }
    select(press_.point);
    marks_.hovered = press_.point;
    const Station* station = drawnStation(*state_);
    drag_ = {.active = true,
             .grab = placeOf(press_.point) - press_.at,
             .pose = station != nullptr ? station->pose : AxlePose{.z = state_->car.rearTireRadius},
             .measured = *at};
    setCursor(Qt::SizeAllCursor);
}

// Shift keeps to one direction; Alt leaves the snapping out.
void SideView::dragTo(QPointF place, Qt::KeyboardModifiers modifiers) {
    if (!drag_.active) {
        return;
    }
    const QPointF car = camera_.toCar(place + drag_.grab);
    Eigen::Vector3d at(car.x(), drag_.measured.y(), car.y());
    if (press_.point.end == End::axle) {
        at = measuredFromDrawn(drag_.pose, state_->car.rearTireRadius, car, drag_.measured);
    }
    if (!modifiers.testFlag(Qt::AltModifier)) {
        at.x() = roundTo(at.x(), snapStep());
        at.z() = roundTo(at.z(), snapStep());
    }
    if (modifiers.testFlag(Qt::ShiftModifier)) {
        const bool across = std::abs(at.x() - drag_.measured.x()) > std::abs(at.z() - drag_.measured.z());
        (across ? at.z() : at.x()) = across ? drag_.measured.z() : drag_.measured.x();
    }
    lastDragEdit_ = moveTo(press_.point, at);
    emit edited(lastDragEdit_, EditPhase::dragging);
}

Edit SideView::moveTo(const PointId& id, const Eigen::Vector3d& at) const {
    if (id.kind == PointId::Kind::joint) {
        return MoveJoint{.end = id.end, .at = at};
    }
    return MoveHole{.link = id.link, .end = id.end, .hole = id.hole, .at = at};
}

double SideView::snapStep() const {
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

void SideView::abandonDrag() {
    if (press_.down) {
        press_.down = press_.panning = false;
        setCursor(Qt::ArrowCursor);
    }
    if (drag_.active) {
        drag_.active = false;
        emit edited(lastDragEdit_, EditPhase::abandoned);
    }
}

void SideView::mouseReleaseEvent(QMouseEvent* event) {
    if (!press_.down || (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton)) {
        return;
    }
    const Press press = press_;
    press_.down = press_.panning = false;
    if (drag_.active) {
        drag_.active = false;
        emit edited(lastDragEdit_, EditPhase::dragged);
    } else if (!press.panning && event->button() == Qt::LeftButton) {
        click(press.point);
    }
    setCursor(Qt::ArrowCursor);
    marks_.hovered = {};
    setHovered(pointUnder(event->position()));
}

void SideView::click(const PointId& id) {
    const bool hole = id.kind == PointId::Kind::hole && pointAt(state_->car, id).has_value();
    select(id);
    if (hole && state_->car.links[static_cast<std::size_t>(id.link)].bracket(id.end).use != id.hole) {
        emit edited(UseHole{.link = id.link, .end = id.end, .hole = id.hole}, EditPhase::whole);
    }
}

void SideView::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && pointUnder(event->position()).kind == PointId::Kind::none) {
        showLinks();
        return;
    }
    mousePressEvent(event);
}

void SideView::wheelEvent(QWheelEvent* event) {
    const double notches = event->angleDelta().y() / 120.0;
    zoomBy(std::pow(kZoomStep, notches), event->position());
    event->accept();
}

void SideView::zoomBy(double factor, QPointF fixed) {
    fitting_ = Fitting::byHand;
    camera_.zoom(factor, fixed);
    update();
}

void SideView::keyPressEvent(QKeyEvent* event) {
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
            return click(marks_.selected);
        case Qt::Key_Escape:
            return drag_.active ? abandonDrag() : select({});
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

// Arrows move the selected point by one step of the tape; with nothing selected they pan.
bool SideView::nudge(int key, Qt::KeyboardModifiers modifiers) {
    QPointF way;
    switch (key) {
        case Qt::Key_Left:
            way = {-1, 0};
            break;
        case Qt::Key_Right:
            way = {1, 0};
            break;
        case Qt::Key_Up:
            way = {0, 1};
            break;
        case Qt::Key_Down:
            way = {0, -1};
            break;
        default:
            return false;
    }
    const std::optional<Eigen::Vector3d> at = pointAt(state_->car, marks_.selected);
    if (drag_.active) {
        return true;
    }
    if (!at) {
        fitting_ = Fitting::byHand;
        camera_.origin += QPointF(-way.x(), way.y()) * 40;
        update();
        return true;
    }
    const double step = snapStep() * (modifiers.testFlag(Qt::ShiftModifier) ? 4 : 1);
    const Eigen::Vector3d moved = *at + Eigen::Vector3d(way.x() * step, 0, way.y() * step);
    emit edited(moveTo(marks_.selected, moved), EditPhase::whole);
    return true;
}

void SideView::walkPoints(int step) {
    const int count = static_cast<int>(points_.points.size());
    if (count == 0) {
        return;
    }
    int index = step > 0 ? -1 : 0;
    for (int candidate = 0; candidate < count; ++candidate) {
        if (points_.points[static_cast<std::size_t>(candidate)].id == marks_.selected) {
            index = candidate;
        }
    }
    select(points_.points[static_cast<std::size_t>((index + step + count) % count)].id);
}

void SideView::leaveEvent(QEvent* event) {
    if (!press_.down) {
        setHovered({});
    }
    QWidget::leaveEvent(event);
}

// The frame is for the keyboard: neither a click nor the window's own activation raises it.
void SideView::focusInEvent(QFocusEvent* event) {
    ring_ = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason ||
            event->reason() == Qt::ShortcutFocusReason;
    update();
    QWidget::focusInEvent(event);
}

void SideView::focusOutEvent(QFocusEvent* event) {
    ring_ = false;
    update();
    QWidget::focusOutEvent(event);
}

bool SideView::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        auto* help = static_cast<QHelpEvent*>(event);
        const PointId id = pointUnder(help->pos());
        const bool used = id.kind == PointId::Kind::hole && state_ != nullptr &&
                          state_->car.links[static_cast<std::size_t>(id.link)].bracket(id.end).use == id.hole;
        if (id.kind == PointId::Kind::none) {
            QToolTip::hideText();
        } else {
            QToolTip::showText(
                help->globalPos(),
                used || id.kind == PointId::Kind::joint
                    ? tr("Drag to move it; arrow keys nudge. Shift: one direction only. Alt: no snapping.")
                    : tr("Click to bolt the link here; drag to move the hole."),
                this);
        }
        return true;
    }
    // Escape belongs to a drag under way before it belongs to any shortcut.
    if (event->type() == QEvent::ShortcutOverride && drag_.active &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void SideView::updateAccessibleText() {
    if (!QAccessible::isActive() || state_ == nullptr) {
        return;
    }
    const QString place = pointPlace(state_->car, state_->selection, state_->style);
    setAccessibleDescription(place.isEmpty()
                                 ? tr("No hole selected. Period and comma keys walk through the holes.")
                                 : pointName(state_->car, state_->selection) + QStringLiteral(": ") + place);
}

}  // namespace bolthole
