#include "widgets/pages/brackets/bracket_picture.h"

#include <Eigen/Geometry>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "geometry/plates/plate_room.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/unit_text.h"
#include "widgets/scene/scene_hit.h"
#include "widgets/scene/scene_painter.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr double kReach = 11;          // px within which a corner or hole is picked
constexpr double kBareRadius = 0.008;  // m, of holes whose size is not known
constexpr double kRoom = 74;           // px around the bracket for dimensions and names

QRectF boxOf(const Bracket& bracket) {
    Eigen::AlignedBox2d box;
    const double radius = bracket.plate ? bracket.plate->holeDiameter / 2 : kBareRadius;
    for (const Hole& hole : bracket.holes) {
        const Eigen::Vector2d around = Eigen::Vector2d::Constant(radius);
        box.extend(inSideView(hole.at) - around);
        box.extend(inSideView(hole.at) + around);
    }
    if (bracket.plate) {
        for (const Eigen::Vector2d& corner : bracket.plate->corners) {
            box.extend(corner);
        }
    }
    return {QPointF(box.min().x(), box.min().y()), QPointF(box.max().x(), box.max().y())};
}

double snapped(double value, double step) {
    return std::round(value / step) * step;
}

}  // namespace

BracketPicture::BracketPicture(QWidget* parent) : QWidget(parent) {
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Picture of the bracket"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void BracketPicture::showBracket(const Bracket& bracket, NumberStyle style) {
    const int corners = cornerCount();
    before_.reset();
    scene_.refusal.clear();
    scene_.bracket = bracket;
    scene_.style = style;
    if (cornerCount() != corners) {
        scene_.selectedCorner = scene_.hoveredCorner = -1;
    }
    scene_.hoveredHole = -1;
    refit();
    describe();
    showNow();
}

int BracketPicture::cornerCount() const {
    return scene_.bracket.plate ? static_cast<int>(scene_.bracket.plate->corners.size()) : 0;
}

// In the middle, as large as its dimensions leave room for.
void BracketPicture::refit() {
    if (scene_.bracket.holes.empty()) {
        return;
    }
    const QRectF box = boxOf(scene_.bracket);
    const QSizeF room(std::max(width() - 2 * kRoom, 40.0), std::max(height() - 2 * kRoom, 40.0));
    camera_.scale = std::min(room.width() / box.width(), room.height() / box.height());
    camera_.origin = {width() / 2.0 - box.center().x() * camera_.scale,
                      height() / 2.0 + box.center().y() * camera_.scale};
}

void BracketPicture::resizeEvent(QResizeEvent*) {
    refit();
    showNow();
}

void BracketPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const SceneStyle style = SceneStyle::screen();
    paintSceneGround(painter, view(), style);
    paintScene(painter, drawing_, view(), style);
}

void BracketPicture::showNow() {
    composeBracket(drawing_, scene_, camera_);
    update();
}

int BracketPicture::cornerAt(QPointF place) const {
    return hitScene(drawing_, view(), SceneStyle::screen(), place, kReach, 0, kHoleIds - 1);
}

int BracketPicture::holeAt(QPointF place) const {
    const int id = hitScene(drawing_, view(), SceneStyle::screen(), place, kReach, kHoleIds);
    return id < 0 ? id : id - kHoleIds;
}

void BracketPicture::select(int corner) {
    scene_.selectedCorner = corner;
    describe();
    showNow();
}

void BracketPicture::mousePressEvent(QMouseEvent* event) {
    const int corner = event->button() == Qt::LeftButton ? cornerAt(event->position()) : -1;
    scene_.hasRing = false;
    select(corner);
    if (corner >= 0) {
        before_ = scene_.bracket.plate;
        grab_ = place(before_->corners[static_cast<std::size_t>(corner)]) - event->position();
    }
}

void BracketPicture::mouseMoveEvent(QMouseEvent* event) {
    if (before_) {
        const QPointF at = camera_.toCar(event->position() + grab_);
        const bool free = event->modifiers().testFlag(Qt::AltModifier);
        const double step = free ? 1e-6 : arrowStep(Quantity::length, scene_.style, false);
        moveCorner({snapped(at.x(), step), snapped(at.y(), step)});
        return;
    }
    const int corner = cornerAt(event->position());
    const int hole = corner < 0 ? holeAt(event->position()) : -1;
    if (corner != scene_.hoveredCorner || hole != scene_.hoveredHole) {
        scene_.hoveredCorner = corner;
        scene_.hoveredHole = hole;
        setCursor(corner < 0 ? Qt::ArrowCursor : Qt::SizeAllCursor);
        showNow();
    }
}

void BracketPicture::moveCorner(const Eigen::Vector2d& to) {
    scene_.bracket.plate->corners[static_cast<std::size_t>(scene_.selectedCorner)] = to;
    scene_.refusal = QString::fromStdString(refusal(*scene_.bracket.plate).reason);
    describe();
    showNow();
}

// The whole drag is one change; an outline that can't be springs back.
void BracketPicture::mouseReleaseEvent(QMouseEvent* event) {
    if (!before_ || event->button() != Qt::LeftButton) {
        return;
    }
    const Plate moved = *scene_.bracket.plate;
    const bool isChange = scene_.refusal.isEmpty() && moved != *before_;
    abandonDrag();
    if (isChange) {
        emit plateRequested(moved);
    }
}

void BracketPicture::abandonDrag() {
    scene_.bracket.plate = before_;
    scene_.refusal.clear();
    before_.reset();
    describe();
    showNow();
}

void BracketPicture::leaveEvent(QEvent*) {
    scene_.hoveredCorner = scene_.hoveredHole = -1;
    showNow();
}

void BracketPicture::focusInEvent(QFocusEvent* event) {
    const bool byKey = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason ||
                       event->reason() == Qt::ShortcutFocusReason;
    scene_.hasRing = byKey;
    if (byKey && scene_.selectedCorner < 0 && cornerCount() > 0) {
        select(0);
    }
    showNow();
}

void BracketPicture::focusOutEvent(QFocusEvent*) {
    if (before_) {
        abandonDrag();
    }
    scene_.hasRing = false;
    showNow();
}

void BracketPicture::nudge(const Eigen::Vector2d& way, bool coarse) {
    if (scene_.selectedCorner < 0) {
        return;
    }
    const double step = arrowStep(Quantity::length, scene_.style, false) * (coarse ? 4 : 1);
    Plate moved = *scene_.bracket.plate;
    moved.corners[static_cast<std::size_t>(scene_.selectedCorner)] += step * way;
    if (refusal(moved).reason.empty()) {
        scene_.hasRing = true;
        emit plateRequested(moved);
    }
}

bool BracketPicture::takeKey(int key, bool shift) {
    const int count = cornerCount();
    switch (key) {
        case Qt::Key_Left:
            nudge({-1, 0}, shift);
            return true;
        case Qt::Key_Right:
            nudge({1, 0}, shift);
            return true;
        case Qt::Key_Up:
            nudge({0, 1}, shift);
            return true;
        case Qt::Key_Down:
            nudge({0, -1}, shift);
            return true;
        case Qt::Key_Period:
        case Qt::Key_Comma:
            if (count > 0) {
                const int step = key == Qt::Key_Period ? 1 : count - 1;
                scene_.hasRing = true;
                select(scene_.selectedCorner < 0 ? 0 : (scene_.selectedCorner + step) % count);
            }
            return true;
        case Qt::Key_Escape:
            if (scene_.selectedCorner < 0) {
                return false;
            }
            before_ ? abandonDrag() : select(-1);
            return true;
        default:
            return false;
    }
}

void BracketPicture::keyPressEvent(QKeyEvent* event) {
    const bool plain = (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) == 0;
    if (!plain || !takeKey(event->key(), event->modifiers().testFlag(Qt::ShiftModifier))) {
        QWidget::keyPressEvent(event);
    }
}

QString BracketPicture::tipAt(QPointF place) const {
    const Bracket& bracket = scene_.bracket;
    if (const int corner = cornerAt(place); corner >= 0) {
        return tr("Corner %1: drag it, or . and , to choose and arrows to nudge").arg(corner + 1);
    }
    const int hole = holeAt(place);
    if (hole < 0) {
        return {};
    }
    const Hole& entered = bracket.holes[static_cast<std::size_t>(hole)];
    QStringList lines{holeName(bracket, hole) + (entered.planned       ? tr(": planned, not drilled yet")
                                                 : bracket.use == hole ? tr(": the link is bolted here")
                                                                       : tr(": existing"))};
    for (const std::string& trouble :
         plateTroubles(bracket, inSideView(entered.at), hole, scene_.style.units)) {
        lines << QStringLiteral("▲ ") + QString::fromStdString(trouble);
    }
    return lines.join(u'\n');
}

bool BracketPicture::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        QToolTip::showText(help->globalPos(), tipAt(QPointF(help->pos())), this);
        return true;
    }
    return QWidget::event(event);
}

void BracketPicture::describe() {
    const auto holes = static_cast<int>(scene_.bracket.holes.size());
    QString words = holes == 1 ? tr("1 hole") : tr("%n holes", nullptr, holes);
    words +=
        cornerCount() == 0 ? tr(", no plate entered") : tr(", outline of %n corners", nullptr, cornerCount());
    if (scene_.selectedCorner >= 0 && scene_.selectedCorner < cornerCount()) {
        const Eigen::Vector2d& at =
            scene_.bracket.plate->corners[static_cast<std::size_t>(scene_.selectedCorner)];
        const auto text = [this](double value) {
            return QString::fromStdString(withUnit(fieldText(value, Quantity::length, scene_.style),
                                                   Quantity::length, scene_.style.units));
        };
        words += tr("; corner %1 at %2 forward, %3 up")
                     .arg(scene_.selectedCorner + 1)
                     .arg(text(at.x()), text(at.y()));
    }
    if (!scene_.refusal.isEmpty()) {
        words += QStringLiteral("; ") + scene_.refusal;
    }
    setAccessibleDescription(words);
}

}  // namespace bolthole
