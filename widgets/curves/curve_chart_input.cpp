// What mouse and keys do in a chart.
#include <QAbstractButton>
#include <QFocusEvent>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "widgets/curves/curve_chart.h"
#include "widgets/kit/number_field.h"

namespace bolthole {

namespace {

constexpr double kNear = 10;          // px; a point this near is meant
constexpr double kNearMark = 14;      // px; the same of one that is marked
constexpr double kClickStill = 4;     // px; a press that moves farther is no click
constexpr double kZoomStep = 1.25;    // a notch of the wheel
constexpr double kLeastView = 0.001;  // of the axis
constexpr double kLeastChosen = 6;    // px; a stretch shorter than this was not meant

}  // namespace

// Upright, and stacked, all cards share the imposed axis's place; else each has its own.
std::size_t CurveChart::cardAt(QPointF position) const {
    std::size_t card = 0;
    const auto edge = [&](std::size_t of) {
        const QRectF& frame = onScreen_[of].frame();
        return look_.isStacked && !axis_.isUpright ? position.y() >= frame.top()
                                                   : position.x() >= frame.left();
    };
    while (card + 1 < onScreen_.size() && edge(card + 1)) {
        ++card;
    }
    return card;
}

double CurveChart::along(QPointF position) const {
    return axis_.isUpright ? position.y() : position.x();
}

double CurveChart::imposedAt(QPointF position) const {
    const ChartPlot& plot = onScreen_[cardAt(position)].plot();
    const ImposedRange axis{plot.from, plot.to, plot.imposedPosition(plot.from),
                            plot.imposedPosition(plot.to)};
    return axis.imposedAt(along(position));
}

CurveChart::Hit CurveChart::hitAt(QPointF position, bool markedOnly) const {
    if (onScreen_.empty()) {
        return {};
    }
    const std::size_t card = cardAt(position);
    ChartHit hit = onScreen_[card].hit(position, kNearMark, true);
    if (!hit.isThere() && !markedOnly) {
        hit = onScreen_[card].hit(position, kNear, false);
    }
    return hit.isThere() ? Hit{static_cast<int>(card), hit} : Hit{};
}

void CurveChart::ask(double imposed) {
    const double within = axis_.clamp(imposed);
    if (look_.hasCursor && within != cursor_ && hasCurves()) {
        emit cursorMoved(within);
    }
}

void CurveChart::askAt(QPointF position) {
    if (onScreen_.empty()) {
        return;
    }
    const double home = axis_.clamp(axis_.home);
    const double homeAt = onScreen_[cardAt(position)].plot().imposedPosition(home);
    double imposed = std::clamp(imposedAt(position), shownFrom(), shownTo());
    if (axis_.kind == ChartAxis::Kind::labels && !axis_.labels.empty()) {
        imposed = std::ranges::min_element(axis_.labels, {}, [&](const ImposedLabel& label) {
                      return std::abs(label.at - imposed);
                  })->at;
    } else if (std::abs(along(position) - homeAt) <= axis_.snap) {
        imposed = home;
    }
    ask(imposed);
}

void CurveChart::hover(const Hit& hit) {
    if (!hit.isSame(hovered_)) {
        hovered_ = hit;
        emit hovered(hit.card, hit.at.series, hit.at.point);
        update();
    }
}

void CurveChart::mousePressEvent(QMouseEvent* event) {
    pressedAt_ = event->position();
    if (event->button() == Qt::RightButton && look_.canZoom && !onScreen_.empty()) {
        const double at = std::clamp(imposedAt(pressedAt_), shownFrom(), shownTo());
        chosen_ = Extent{at, at};
    } else if (event->button() == Qt::LeftButton) {
        pressed_ = hitAt(pressedAt_, true);
        if (pressed_.isThere()) {
            const ChartSeries& series = cards_[static_cast<std::size_t>(pressed_.card)]
                                            .series[static_cast<std::size_t>(pressed_.at.series)];
            ask(series.points[static_cast<std::size_t>(pressed_.at.point)].imposed);
        } else {
            askAt(pressedAt_);
        }
    } else {
        event->ignore();
    }
}

void CurveChart::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    if (std::hypot((at - pressedAt_).x(), (at - pressedAt_).y()) > kClickStill) {
        pressed_ = {};
    }
    if (chosen_ && (event->buttons() & Qt::RightButton) != 0) {
        const double from = std::clamp(imposedAt(pressedAt_), shownFrom(), shownTo());
        const double to = std::clamp(imposedAt(at), shownFrom(), shownTo());
        chosen_ = Extent{std::min(from, to), std::max(from, to)};
        update();
    } else if ((event->buttons() & Qt::LeftButton) != 0) {
        if (!pressed_.isThere()) {
            askAt(at);
        }
    } else if (event->buttons() == Qt::NoButton) {
        hover(hitAt(at, false));
    }
}

void CurveChart::mouseReleaseEvent(QMouseEvent* event) {
    const QPointF moved = event->position() - pressedAt_;
    const bool isClick = std::hypot(moved.x(), moved.y()) <= kClickStill;
    if (event->button() == Qt::RightButton && chosen_) {
        takeChosen();
    } else if (event->button() == Qt::LeftButton && isClick && (pressed_.isThere() || look_.picksPoints)) {
        const Hit hit = pressed_;
        pressed_ = {};
        emit pointPicked(hit.card, hit.at.series, hit.at.point);
    }
}

void CurveChart::takeChosen() {
    const Extent chosen = *chosen_;
    chosen_.reset();
    const ChartPlot& plot = onScreen_.front().plot();
    const double length = std::abs(plot.imposedPosition(chosen.most) - plot.imposedPosition(chosen.least));
    if (length >= kLeastChosen) {
        setView(chosen);
    }
    update();
}

void CurveChart::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        ask(axis_.home);
    }
}

void CurveChart::leaveEvent(QEvent*) {
    hover({});
}

void CurveChart::wheelEvent(QWheelEvent* event) {
    // Without Ctrl the wheel scrolls the page the chart stands on.
    if (!look_.canZoom || onScreen_.empty() || (event->modifiers() & Qt::ControlModifier) == 0) {
        event->ignore();
        return;
    }
    zoomAround(imposedAt(event->position()), std::pow(kZoomStep, -event->angleDelta().y() / 120.0));
    event->accept();
}

void CurveChart::zoomAround(double imposed, double factor) {
    const double at = std::clamp(imposed, shownFrom(), shownTo());
    setView(Extent{at + (shownFrom() - at) * factor, at + (shownTo() - at) * factor});
}

void CurveChart::zoomTo(double from, double to) {
    const double whole = axis_.high - axis_.low;
    const double span = std::clamp(to - from, kLeastView * whole, whole);
    const double low = std::clamp((from + to - span) / 2, axis_.low, axis_.high - span);
    view_ = span >= whole * (1 - 1e-9) ? std::nullopt : std::optional(Extent{low, low + span});
    layOut();
}

void CurveChart::showAll() {
    view_.reset();
    layOut();
}

void CurveChart::setView(const std::optional<Extent>& view) {
    view ? zoomTo(view->least, view->most) : showAll();
    emit zoomed(shownFrom(), shownTo());
}

bool CurveChart::zoomByKey(int key) {
    if (!look_.canZoom) {
        return false;
    }
    if (key == Qt::Key_Plus || key == Qt::Key_Equal || key == Qt::Key_Minus) {
        zoomAround(cursor_, key == Qt::Key_Minus ? kZoomStep : 1 / kZoomStep);
        return true;
    }
    if (key == Qt::Key_Escape && isZoomed()) {
        setView(std::nullopt);
        return true;
    }
    return false;
}

CurveChart::Hit CurveChart::firstMarked() const {
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        for (std::size_t series = 0; series < cards_[card].series.size(); ++series) {
            if (cards_[card].series[series].marksPoints && !cards_[card].series[series].points.empty()) {
                return {static_cast<int>(card), {static_cast<int>(series), 0}};
            }
        }
    }
    return {};
}

// The first step goes to the end it comes from.
bool CurveChart::pickByKey(int key) {
    if (key == Qt::Key_Escape && picked_.isThere()) {
        emit pointPicked(-1, -1, -1);
        return true;
    }
    const Hit from = picked_.isThere() ? picked_ : firstMarked();
    if ((key != Qt::Key_Left && key != Qt::Key_Right) || !from.isThere()) {
        return false;
    }
    const auto& series =
        cards_[static_cast<std::size_t>(from.card)].series[static_cast<std::size_t>(from.at.series)];
    const int last = static_cast<int>(series.points.size()) - 1;
    const int next = key == Qt::Key_Right ? from.at.point + 1 : from.at.point - 1;
    const int first = key == Qt::Key_Right ? 0 : last;
    setRing(true);
    emit pointPicked(from.card, from.at.series, picked_.isThere() ? std::clamp(next, 0, last) : first);
    return true;
}

void CurveChart::keyPressEvent(QKeyEvent* event) {
    const bool isPlain = (event->modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier)) == Qt::NoModifier;
    if (isPlain && (zoomByKey(event->key()) || (look_.picksPoints && pickByKey(event->key())))) {
        return;
    }
    const bool isShifted = (event->modifiers() & Qt::ShiftModifier) != 0;
    const std::optional<double> imposed =
        isPlain && !isShifted && look_.hasCursor ? axis_.afterKey(event->key(), cursor_) : std::nullopt;
    if (!imposed) {
        QWidget::keyPressEvent(event);
        return;
    }
    setRing(true);
    ask(*imposed);
}

bool CurveChart::showTip(const QHelpEvent& event) {
    const Hit hit = hitAt(event.pos(), true);
    if (hit.isThere()) {
        QToolTip::showText(event.globalPos(), pointWords(hit.card, hit.at.series, hit.at.point), this);
        return true;
    }
    for (const ChartCardOnScreen& each : onScreen_) {
        if (each.frame().contains(event.pos()) && !each.card().about.isEmpty()) {
            QToolTip::showText(event.globalPos(), wrappedToolTip(each.card().about), this,
                               each.frame().toAlignedRect());
            return true;
        }
    }
    QToolTip::hideText();
    return false;
}

bool CurveChart::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip && showTip(*static_cast<QHelpEvent*>(event))) {
        return true;
    }
    if (event->type() == QEvent::ShortcutOverride && picked_.isThere() &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

// The ring is for the keyboard: neither a click that drags the cursor nor the window's own activation raises
// it.
void CurveChart::focusInEvent(QFocusEvent* event) {
    setRing(event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason ||
            event->reason() == Qt::ShortcutFocusReason);
}

void CurveChart::focusOutEvent(QFocusEvent*) {
    setRing(false);
}

void CurveChart::setRing(bool shown) {
    if (ring_ != shown) {
        ring_ = shown;
        showFreshBody();
    }
}

}  // namespace bolthole
