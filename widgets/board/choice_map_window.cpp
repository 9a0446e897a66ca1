#include "widgets/board/choice_map_window.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/car.h"

namespace bolthole {

namespace {

constexpr double kGripReach = 5.0;      // px
constexpr double kInfinityReach = 4.0;  // px

bool isWithin(double value, double low, double high) {
    return value >= low - kGripReach && value <= high + kGripReach;
}

int gripOf(double value, double first, double last) {
    const double toFirst = std::abs(value - first);
    const double toLast = std::abs(value - last);
    if (std::min(toFirst, toLast) > kGripReach) {
        return 0;
    }
    return toFirst < toLast ? -1 : 1;
}

// The distance of so many inches or centimeters, the nearest double to it.
double distanceOf(double count, Units units) {
    return units == Units::inch ? count * 127.0 / 5000.0 : count / 100.0;
}

// The whole rectangle, outside the plot too, but finite: a distance of zero has no inverse.
QRectF wholeBox(const ChoiceMapScale& scale, const WantedWindow& wanted) {
    constexpr double kFar = 1e6;  // px
    const auto across = [&](double inverse) { return std::clamp(scale.x(inverse), -kFar, kFar); };
    return {QPointF(across(wanted.inverseNear()), scale.y(wanted.antiSquatHigh)),
            QPointF(across(wanted.inverseFar()), scale.y(wanted.antiSquatLow))};
}

// A far side for a window whose sides fell together: the first step beyond `near` along the axis.
std::optional<double> farBeyond(const ChoiceMapScale& scale, const WantedWindow& wanted, double x,
                                Units units) {
    constexpr int kMostPixels = 100;
    for (int pixel = 1; pixel < kMostPixels; ++pixel) {
        const std::optional<double> distance = snappedDistance(scale, x + pixel, units);
        if ((distance ? 1.0 / *distance : 0.0) < wanted.inverseNear()) {
            return distance;
        }
    }
    return *wanted.icNear * (*wanted.icNear > 0 ? 2.0 : 0.5);  // within an inch of the contact patch
}

}  // namespace

WindowGrip gripAt(const ChoiceMapScale& scale, const std::optional<WantedWindow>& wanted, QPointF place) {
    if (!wanted || scale.boxOf(*wanted).isEmpty()) {
        return {};
    }
    const QRectF box = wholeBox(scale, *wanted);
    if (!isWithin(place.x(), box.left(), box.right()) || !isWithin(place.y(), box.top(), box.bottom())) {
        return {};
    }
    return {.inside = box.contains(place),
            .across = gripOf(place.x(), box.left(), box.right()),
            .up = gripOf(place.y(), box.bottom(), box.top())};
}

std::optional<double> snappedDistance(const ChoiceMapScale& scale, double x, Units units) {
    const double inverse = scale.inverseAt(x);
    if (std::abs(x - scale.x(0.0)) < kInfinityReach || std::abs(inverse) * kMaxLength <= 1.0) {
        return std::nullopt;
    }
    const double unit = distanceOf(1.0, units);
    const double perPixel = std::abs(scale.inverseAt(x + 1) - inverse) / (inverse * inverse) / unit;
    const double step = perPixel > 1.0 ? niceStep(perPixel) : 1.0;
    const double steps = std::round(1.0 / inverse / unit / step);
    const double distance = distanceOf((steps == 0 ? std::copysign(1.0, inverse) : steps) * step, units);
    return std::abs(distance) > kMaxLength ? std::nullopt : std::optional(distance);
}

double snappedAntiSquat(const ChoiceMapScale& scale, double y) {
    const double perPixel = std::abs(scale.antiSquatAt(y + 1) - scale.antiSquatAt(y));
    const double step = perPixel > 1.0 ? niceStep(perPixel) : 1.0;
    return std::round(scale.antiSquatAt(y) / step) * step + 0.0;  // no negative zero
}

WantedWindow windowFrom(const ChoiceMapScale& scale, const QRectF& box, Units units) {
    const QRectF sorted = box.normalized();
    WantedWindow wanted{.icNear = snappedDistance(scale, sorted.left(), units),
                        .icFar = snappedDistance(scale, sorted.right(), units),
                        .antiSquatLow = snappedAntiSquat(scale, sorted.bottom()),
                        .antiSquatHigh = snappedAntiSquat(scale, sorted.top())};
    if (wanted.inverseNear() <= wanted.inverseFar()) {
        wanted.icFar = farBeyond(scale, wanted, sorted.right(), units);
    }
    for (double y = sorted.top() - 1; wanted.antiSquatHigh <= wanted.antiSquatLow; y -= 1) {
        wanted.antiSquatHigh = snappedAntiSquat(scale, y);
    }
    return wanted;
}

WindowDrag::WindowDrag(const ChoiceMapScale& scale, Units units, const std::optional<WantedWindow>& wanted,
                       WindowGrip grip, QPointF from)
    : scale_(scale), units_(units), wanted_(wanted), grip_(grip), from_(from) {}

WantedWindow WindowDrag::to(QPointF place) const {
    const QRectF& plot = scale_.plot();
    const QPointF inside(std::clamp(place.x(), plot.left(), plot.right()),
                         std::clamp(place.y(), plot.top(), plot.bottom()));
    const WantedWindow drawn = wanted_ && grip_.isEdge() ? resized(inside - from_)
                               : wanted_ && grip_.inside ? moved(inside - from_)
                                                         : windowFrom(scale_, {from_, inside}, units_);
    // What the map does not show stays wanted.
    WantedWindow wanted = wanted_.value_or(WantedWindow{});
    wanted.icNear = drawn.icNear;
    wanted.icFar = drawn.icFar;
    wanted.antiSquatLow = drawn.antiSquatLow;
    wanted.antiSquatHigh = drawn.antiSquatHigh;
    return wanted;
}

WantedWindow WindowDrag::moved(QPointF by) const {
    WantedWindow wanted = windowFrom(scale_, wholeBox(scale_, *wanted_).translated(by), units_);
    wanted.antiSquatHigh = wanted.antiSquatLow + (wanted_->antiSquatHigh - wanted_->antiSquatLow);
    return wanted;
}

// Sides that are not gripped keep their numbers, typed ones between the steps too.
WantedWindow WindowDrag::resized(QPointF by) const {
    const QRectF from = wholeBox(scale_, *wanted_);
    const QRectF box = from.adjusted(grip_.across < 0 ? by.x() : 0, grip_.up > 0 ? by.y() : 0,
                                     grip_.across > 0 ? by.x() : 0, grip_.up < 0 ? by.y() : 0);
    WantedWindow wanted = windowFrom(scale_, box, units_);
    if (grip_.across >= 0) {
        (box.width() < 0 ? wanted.icFar : wanted.icNear) = wanted_->icNear;
    }
    if (grip_.across <= 0) {
        (box.width() < 0 ? wanted.icNear : wanted.icFar) = wanted_->icFar;
    }
    if (grip_.up >= 0) {
        (box.height() < 0 ? wanted.antiSquatHigh : wanted.antiSquatLow) = wanted_->antiSquatLow;
    }
    if (grip_.up <= 0) {
        (box.height() < 0 ? wanted.antiSquatLow : wanted.antiSquatHigh) = wanted_->antiSquatHigh;
    }
    return wanted;
}

}  // namespace bolthole
