#include "widgets/board/combination_map.h"

#include <QAccessible>
#include <QApplication>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <cmath>

#include "widgets/board/combination_columns.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/picture_copy.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kLeastReach = 6.0;  // px about a dot that count as on it
constexpr double kDragStart = 4.0;   // px; less is a click

Qt::CursorShape cursorFor(const WindowGrip& grip, bool onDot, bool inPlot) {
    if (onDot) {
        return Qt::PointingHandCursor;
    }
    if (grip.across != 0 && grip.up != 0) {
        return grip.across == grip.up ? Qt::SizeBDiagCursor : Qt::SizeFDiagCursor;
    }
    if (grip.isEdge()) {
        return grip.across != 0 ? Qt::SizeHorCursor : Qt::SizeVerCursor;
    }
    if (grip.inside) {
        return Qt::SizeAllCursor;
    }
    return inPlot ? Qt::CrossCursor : Qt::ArrowCursor;
}

QPointF wayOf(int key) {
    switch (key) {
        case Qt::Key_Left:
            return {-1, 0};
        case Qt::Key_Right:
            return {1, 0};
        case Qt::Key_Up:
            return {0, -1};
        case Qt::Key_Down:
            return {0, 1};
        default:
            return {};
    }
}

}  // namespace

CombinationMap::CombinationMap(const CombinationList& list, QWidget* parent) : QWidget(parent), list_(list) {
    setObjectName(QStringLiteral("combinationMap"));
    setAccessibleName(tr("Map of hole combinations"));
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] {
        dots_ = {};
        layOut();
    });
    describe();
    offerPicture(*this);
}

// While a window or the car is dragged the axes keep still: it is read against them. Settled, the same
// combinations always stand on the same axes, however they came about.
void CombinationMap::refresh(bool isFinal) {
    if (!drag_) {
        if (isFinal && fittedFor_ != list_.version()) {
            fittedFor_ = list_.version();
            scale_.forget();
        }
        scale_.follow(list_.items(), list_.target());
    }
    pointed_.reset();
    selected_.reset();
    layOut();
}

void CombinationMap::layOut() {
    scale_.place(combinationPlot(size(), scale_));
    std::vector<std::optional<QPointF>> places = placesOf(list_, scale_);
    if (places != places_ || dotsVersion_ != list_.version() ||
        dots_.deviceIndependentSize() != QSizeF(size())) {
        dots_ = {};
        dotsVersion_ = list_.version();
    }
    places_ = std::move(places);
    update();
}

void CombinationMap::showMarks(std::optional<std::size_t> selected, std::optional<std::size_t> pointed) {
    if (selected != selected_ || pointed != pointed_) {
        selected_ = selected;
        pointed_ = pointed;
        describe();
        update();
    }
}

std::optional<QPointF> CombinationMap::placeOf(std::size_t at) const {
    return at < places_.size() ? places_[at] : std::nullopt;
}

TargetWindow CombinationMap::wholeWindow() const {
    return windowFrom(scale_, scale_.plot(), list_.style().units);
}

void CombinationMap::showBaseline(const std::optional<BaselineMark>& baseline) {
    if (baseline_ != baseline) {
        baseline_ = baseline;
        update();
    }
}

CombinationMapPicture CombinationMap::picture() const {
    return {.list = list_,
            .scale = scale_,
            .places = places_,
            .size = size(),
            .selected = selected_,
            .pointed = pointed_,
            .target = drag_ ? dragged_ : list_.target(),
            .focused = hasFocus(),
            .baseline = baseline_};
}

void CombinationMap::paintEvent(QPaintEvent*) {
    if (list_.car() == nullptr || places_.size() != list_.items().size()) {
        return;
    }
    const CombinationMapPicture picture = this->picture();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintMapGround(painter, picture);
    paintMapWindow(painter, picture);
    paintMapErrors(painter, picture);
    if (takesPixels(painter)) {
        const double ratio = devicePixelRatioF();
        if (dots_.isNull() || dots_.devicePixelRatio() != ratio) {
            dots_ = paintMapDots(picture, ratio);
        }
        painter.drawPixmap(0, 0, dots_);
    } else {
        paintMapDots(painter, picture);  // a picture that is saved in lines
    }
    paintMapWindowSides(painter, picture);
    paintMapMarks(painter, picture);
    paintMapBehindWords(painter, picture);
}

void CombinationMap::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    layOut();
}

// The best-ranked of the nearest.
std::optional<std::size_t> CombinationMap::dotUnder(QPointF place) const {
    const double reach = std::max(dotRadius(list_.shownCount(), scale_.plot()) + 2.0, kLeastReach);
    double nearest = reach * reach;
    std::optional<std::size_t> found;
    for (const std::uint32_t at : list_.ranked()) {
        if (at < places_.size() && places_[at]) {
            const QPointF away = *places_[at] - place;
            const double distance = QPointF::dotProduct(away, away);
            if (distance < nearest) {
                nearest = distance;
                found = at;
            }
        }
    }
    return found;
}

void CombinationMap::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && !drag_) {
        press_ = event->position();
    }
}

void CombinationMap::mouseMoveEvent(QMouseEvent* event) {
    const QPointF place = event->position();
    if (press_ && (event->buttons() & Qt::LeftButton) == 0) {
        abandonDrag();  // the release went elsewhere: to a dialog that opened, or to another program
    }
    if (!press_) {
        hover(place);
        return;
    }
    if (!drag_) {
        const QRectF reach = scale_.plot().adjusted(-5, -5, 5, 5);
        if ((place - *press_).manhattanLength() < kDragStart || !reach.contains(*press_)) {
            return;
        }
        drag_.emplace(scale_, list_.style().units, list_.target(), gripAt(scale_, list_.target(), *press_),
                      *press_);
        emit pointed(std::nullopt);
    }
    dragTo(place);
}

void CombinationMap::dragTo(QPointF place) {
    dragged_ = drag_->to(place);
    update();
    emit edited(SetTarget{dragged_}, EditPhase::dragging);
}

void CombinationMap::hover(QPointF place) {
    const std::optional<std::size_t> dot = dotUnder(place);
    setCursor(
        cursorFor(gripAt(scale_, list_.target(), place), dot.has_value(), scale_.plot().contains(place)));
    emit pointed(dot);
}

void CombinationMap::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !press_) {
        return;
    }
    const QPointF from = *press_;
    press_.reset();
    if (!drag_) {
        emit picked(dotUnder(from));
        return;
    }
    drag_.reset();
    emit edited(SetTarget{dragged_}, EditPhase::dragged);
    hover(event->position());
}

void CombinationMap::abandonDrag() {
    press_.reset();
    if (drag_) {
        drag_.reset();
        update();
        emit edited(SetTarget{dragged_}, EditPhase::abandoned);
    }
}

void CombinationMap::mouseDoubleClickEvent(QMouseEvent* event) {
    const std::optional<std::size_t> dot = dotUnder(event->position());
    if (event->button() == Qt::LeftButton && dot) {
        emit bolted(*dot);
    }
}

void CombinationMap::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Left:
        case Qt::Key_Right:
        case Qt::Key_Up:
        case Qt::Key_Down:
            return walk(event->key());
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (selected_ && !drag_) {
                emit bolted(*selected_);
            }
            return;
        case Qt::Key_Delete:
        case Qt::Key_Backspace:
            if (list_.target() && !drag_) {
                emit edited(SetTarget{std::nullopt}, EditPhase::whole);
            }
            return;
        case Qt::Key_Escape:
            if (drag_) {
                return abandonDrag();
            }
            if (selected_) {
                emit picked(std::nullopt);
                return;
            }
            break;
        default:
            break;
    }
    QWidget::keyPressEvent(event);
}

void CombinationMap::walk(int key) {
    if (drag_) {
        return;
    }
    const std::optional<QPointF> from = selected_ ? placeOf(*selected_) : std::nullopt;
    if (const std::optional<std::size_t> next = from ? dotToward(*from, wayOf(key)) : firstDot()) {
        emit picked(next);
    }
}

// Where a walk from nowhere begins: at the present combination, or the best.
std::optional<std::size_t> CombinationMap::firstDot() const {
    const std::optional<std::size_t> present = list_.present();
    if (present && placeOf(*present)) {
        return present;
    }
    for (const std::uint32_t at : list_.ranked()) {
        if (placeOf(at)) {
            return at;
        }
    }
    return std::nullopt;
}

// The nearest dot within 50 degrees of the way, what lies straight ahead counting for nearer.
std::optional<std::size_t> CombinationMap::dotToward(QPointF from, QPointF way) const {
    constexpr double kAside = 2.0;
    constexpr double kWidest = 1.2;
    double least = std::numeric_limits<double>::infinity();
    std::optional<std::size_t> found;
    for (const std::uint32_t at : list_.ranked()) {
        if (at >= places_.size() || !places_[at]) {
            continue;
        }
        const QPointF step = *places_[at] - from;
        const double along = QPointF::dotProduct(step, way);
        const double aside = std::abs(step.x() * way.y() - step.y() * way.x());
        if (along > 0.5 && aside <= kWidest * along && along + kAside * aside < least) {
            least = along + kAside * aside;
            found = at;
        }
    }
    return found;
}

void CombinationMap::leaveEvent(QEvent* event) {
    if (!press_) {
        emit pointed(std::nullopt);
    }
    QWidget::leaveEvent(event);
}

void CombinationMap::focusInEvent(QFocusEvent* event) {
    update();
    QWidget::focusInEvent(event);
}

void CombinationMap::focusOutEvent(QFocusEvent* event) {
    update();
    QWidget::focusOutEvent(event);
}

bool CombinationMap::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        showToolTip(help->pos(), help->globalPos());
        return true;
    }
    // Escape belongs to a drag or a selection before it belongs to any shortcut.
    if (event->type() == QEvent::ShortcutOverride && (drag_ || selected_) &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void CombinationMap::showToolTip(QPoint local, QPoint global) {
    const std::optional<std::size_t> dot = drag_ ? std::nullopt : dotUnder(local);
    const HoleCombination* combination = dot ? list_.combination(*dot) : nullptr;
    if (combination == nullptr) {
        QToolTip::hideText();
        return;
    }
    QToolTip::showText(global, wrappedToolTip(combinationInWords(list_, *dot)), this);
}

void CombinationMap::describe() {
    const std::optional<std::size_t> at = pointed_ ? pointed_ : selected_;
    setAccessibleDescription(
        at && list_.car() != nullptr
            ? combinationInWords(list_, *at)
            : tr("IC distance across, anti-squat up. Arrow keys walk from one to the next, Enter "
                 "bolts, Delete takes the target window away. The window's numbers can be "
                 "typed below."));
}

}  // namespace bolthole
