#include "widgets/views/target_mark.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/kit/theme.h"
#include "widgets/views/side_view.h"

namespace bolthole {

namespace {

constexpr double kHalf = 9;       // px, center to corner
constexpr double kReach = 13;     // px
constexpr double kEdgeRoom = 22;  // px

}  // namespace

Eigen::Vector2d onGround(const GroundLine& ground, const Eigen::Vector2d& at) {
    return {ground.ahead(at.x(), at.y()), ground.above(at.x(), at.y())};
}

Eigen::Vector2d inCar(const GroundLine& ground, const Eigen::Vector2d& onGround) {
    return {ground.patchX + onGround.x() * ground.alongX - onGround.y() * ground.alongZ,
            ground.patchZ + onGround.x() * ground.alongZ + onGround.y() * ground.alongX};
}

TargetMark::TargetMark(SideView& view) : QWidget(&view), view_(view) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setFocusPolicy(Qt::NoFocus);
    setObjectName(QStringLiteral("targetMark"));
    setAccessibleName(tr("Target instant center"));
    view.installEventFilter(this);
    setGeometry(view.rect());
    hide();
}

void TargetMark::showMark(const std::optional<Eigen::Vector2d>& at, Units units) {
    at_ = at;
    units_ = units;
    dragging_ = dragging_ && at_.has_value();
    setGeometry(view_.rect());
    setVisible(at_.has_value());
    update();
}

void TargetMark::showLine(const QString& line) {
    if (line_ != line) {
        line_ = line;
        setAccessibleDescription(line);
        update();
    }
}

QPointF TargetMark::place() const {
    if (!at_) {
        return {};
    }
    const QPointF at = view_.camera().toPicture({at_->x(), at_->y()});
    return {std::clamp(at.x(), kEdgeRoom, std::max(kEdgeRoom, view_.width() - kEdgeRoom)),
            std::clamp(at.y(), kEdgeRoom, std::max(kEdgeRoom, view_.height() - kEdgeRoom))};
}

bool TargetMark::isOver(QPointF at) const {
    const QPointF way = at - place();
    return at_ && std::hypot(way.x(), way.y()) <= kReach;
}

bool TargetMark::eventFilter(QObject*, QEvent* event) {
    switch (event->type()) {
        case QEvent::Resize:
            setGeometry(view_.rect());
            return false;
        case QEvent::MouseButtonPress:
            return press(*static_cast<QMouseEvent*>(event));
        case QEvent::MouseMove:
            return drag(*static_cast<QMouseEvent*>(event));
        case QEvent::MouseButtonRelease:
            return release(*static_cast<QMouseEvent*>(event));
        case QEvent::KeyPress:
            return key(*static_cast<QKeyEvent*>(event));
        case QEvent::ShortcutOverride:
            if (dragging_ && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
                event->accept();
                return true;
            }
            return false;
        default:
            return false;
    }
}

bool TargetMark::press(const QMouseEvent& event) {
    if (event.button() != Qt::LeftButton || view_.isDragging() || !isOver(event.position())) {
        return false;
    }
    dragging_ = true;
    view_.setFocus(Qt::MouseFocusReason);
    view_.setCursor(Qt::SizeAllCursor);
    return true;
}

bool TargetMark::drag(const QMouseEvent& event) {
    if (!dragging_) {
        const bool over = isOver(event.position()) && event.buttons() == Qt::NoButton;
        if (over != isHovered_) {
            isHovered_ = over;
            update();
        }
        return false;
    }
    const QPointF at = view_.camera().toCar(event.position());
    emit moved({at.x(), at.y()}, false);
    return true;
}

bool TargetMark::release(const QMouseEvent& event) {
    if (!dragging_ || event.button() != Qt::LeftButton) {
        return false;
    }
    dragging_ = false;
    view_.setCursor(Qt::ArrowCursor);
    const QPointF at = view_.camera().toCar(event.position());
    emit moved({at.x(), at.y()}, true);
    return true;
}

bool TargetMark::key(const QKeyEvent& event) {
    if (event.key() == Qt::Key_W && event.modifiers() == Qt::NoModifier) {
        emit toggled();
        return true;
    }
    if (dragging_ && event.key() == Qt::Key_Escape) {
        dragging_ = false;
        view_.setCursor(Qt::ArrowCursor);
        emit abandoned();
        return true;
    }
    if (!at_ || dragging_ || !event.modifiers().testFlag(Qt::ControlModifier)) {
        return false;
    }
    const double step = units_ == Units::inch ? kMetresPerInch / 2 : 0.01;
    Eigen::Vector2d by = Eigen::Vector2d::Zero();
    by.x() = step * ((event.key() == Qt::Key_Right ? 1 : 0) - (event.key() == Qt::Key_Left ? 1 : 0));
    by.y() = step * ((event.key() == Qt::Key_Up ? 1 : 0) - (event.key() == Qt::Key_Down ? 1 : 0));
    if (by.isZero()) {
        return false;
    }
    emit moved(*at_ + by, true);
    return true;
}

void TargetMark::paintMark(QPainter& painter, QPointF at) const {
    const Theme& now = theme();
    const std::array corners{at + QPointF(0, -kHalf), at + QPointF(kHalf, 0), at + QPointF(0, kHalf),
                             at + QPointF(-kHalf, 0)};
    painter.setPen(QPen(now.canvas, 5));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolygon(corners.data(), static_cast<int>(corners.size()));
    painter.setPen(QPen(isHovered_ || dragging_ ? now.focus : now.instantCenter, 2));
    painter.drawPolygon(corners.data(), static_cast<int>(corners.size()));
    painter.drawLine(at - QPointF(kHalf + 4, 0), at + QPointF(kHalf + 4, 0));
    painter.drawLine(at - QPointF(0, kHalf + 4), at + QPointF(0, kHalf + 4));
}

void TargetMark::paintEvent(QPaintEvent*) {
    if (!at_) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPointF at = place();
    paintMark(painter, at);
    const QString words = line_.isEmpty() ? tr("target IC") : tr("target IC: %1").arg(line_);
    painter.setFont(textFont(TextSize::small));
    const double most = std::min(320.0, width() - 40.0);
    QRectF box =
        painter.fontMetrics().boundingRect(QRect(0, 0, static_cast<int>(most), 200), Qt::TextWordWrap, words);
    box = box.adjusted(-5, -2, 5, 2);
    const bool left = at.x() + kReach + box.width() > width() - 6;
    box.moveTopLeft({left ? std::max(6.0, at.x() - kReach - box.width()) : at.x() + kReach,
                     std::max(6.0, at.y() - kReach - box.height())});
    QColor ground = theme().card;
    ground.setAlpha(235);
    painter.setPen(QPen(theme().border, 1));
    painter.setBrush(ground);
    painter.drawRoundedRect(box, 4, 4);
    painter.setPen(theme().ink);
    painter.drawText(box.adjusted(5, 2, -5, -2), Qt::TextWordWrap, words);
}

}  // namespace bolthole
