#include "widgets/board/combination_map_window.h"

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
QRectF wholeBox(const CombinationMapScale& scale, const TargetWindow& target) {
    constexpr double kFar = 1e6;  // px
    const auto across = [&](double inverse) { return std::clamp(scale.x(inverse), -kFar, kFar); };
    return {QPointF(across(target.inverseNear()), scale.y(target.antiSquatHigh)),
            QPointF(across(target.inverseFar()), scale.y(target.antiSquatLow))};
}

// A far side for a window whose sides fell together: the first step beyond `near` along the axis.
std::optional<double> farBeyond(const CombinationMapScale& scale, const TargetWindow& target, double x,
                                Units units) {
    constexpr int kMostPixels = 100;
    for (int pixel = 1; pixel < kMostPixels; ++pixel) {
        const std::optional<double> distance = snappedDistance(scale, x + pixel, units);
        if ((distance ? 1.0 / *distance : 0.0) < target.inverseNear()) {
            return distance;
        }
    }
    return *target.icNear * (*target.icNear > 0 ? 2.0 : 0.5);  // within an inch of the contact patch
}

}  // namespace

WindowGrip gripAt(const CombinationMapScale& scale, const std::optional<TargetWindow>& target,
                  QPointF place) {
    if (!target || scale.boxOf(*target).isEmpty()) {
        return {};
    }
    const QRectF box = wholeBox(scale, *target);
    if (!isWithin(place.x(), box.left(), box.right()) || !isWithin(place.y(), box.top(), box.bottom())) {
        return {};
    }
    return {.inside = box.contains(place),
            .across = gripOf(place.x(), box.left(), box.right()),
            .up = gripOf(place.y(), box.bottom(), box.top())};
}

std::optional<double> snappedDistance(const CombinationMapScale& scale, double x, Units units) {
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

double snappedAntiSquat(const CombinationMapScale& scale, double y) {
    const double perPixel = std::abs(scale.antiSquatAt(y + 1) - scale.antiSquatAt(y));
    const double step = perPixel > 1.0 ? niceStep(perPixel) : 1.0;
    return std::round(scale.antiSquatAt(y) / step) * step + 0.0;  // no negative zero
}

TargetWindow windowFrom(const CombinationMapScale& scale, const QRectF& box, Units units) {
    const QRectF sorted = box.normalized();
    TargetWindow target{.icNear = snappedDistance(scale, sorted.left(), units),
                        .icFar = snappedDistance(scale, sorted.right(), units),
                        .antiSquatLow = snappedAntiSquat(scale, sorted.bottom()),
                        .antiSquatHigh = snappedAntiSquat(scale, sorted.top())};
    if (target.inverseNear() <= target.inverseFar()) {
        target.icFar = farBeyond(scale, target, sorted.right(), units);
    }
    for (double y = sorted.top() - 1; target.antiSquatHigh <= target.antiSquatLow; y -= 1) {
        target.antiSquatHigh = snappedAntiSquat(scale, y);
    }
    return target;
}

WindowDrag::WindowDrag(const CombinationMapScale& scale, Units units,
                       const std::optional<TargetWindow>& target, WindowGrip grip, QPointF from)
    : scale_(scale), units_(units), target_(target), grip_(grip), from_(from) {}

TargetWindow WindowDrag::to(QPointF place) const {
    const QRectF& plot = scale_.plot();
    const QPointF inside(std::clamp(place.x(), plot.left(), plot.right()),
                         std::clamp(place.y(), plot.top(), plot.bottom()));
    const TargetWindow drawn = target_ && grip_.isEdge() ? resized(inside - from_)
                               : target_ && grip_.inside ? moved(inside - from_)
                                                         : windowFrom(scale_, {from_, inside}, units_);
    // What the map does not show stays wanted.
    TargetWindow target = target_.value_or(TargetWindow{});
    target.icNear = drawn.icNear;
    target.icFar = drawn.icFar;
    target.antiSquatLow = drawn.antiSquatLow;
    target.antiSquatHigh = drawn.antiSquatHigh;
    return target;
}

TargetWindow WindowDrag::moved(QPointF by) const {
    TargetWindow target = windowFrom(scale_, wholeBox(scale_, *target_).translated(by), units_);
    target.antiSquatHigh = target.antiSquatLow + (target_->antiSquatHigh - target_->antiSquatLow);
    return target;
}

// Sides that are not gripped keep their numbers, typed ones between the steps too.
TargetWindow WindowDrag::resized(QPointF by) const {
    const QRectF from = wholeBox(scale_, *target_);
    const QRectF box = from.adjusted(grip_.across < 0 ? by.x() : 0, grip_.up > 0 ? by.y() : 0,
                                     grip_.across > 0 ? by.x() : 0, grip_.up < 0 ? by.y() : 0);
    TargetWindow target = windowFrom(scale_, box, units_);
    if (grip_.across >= 0) {
        (box.width() < 0 ? target.icFar : target.icNear) = target_->icNear;
    }
    if (grip_.across <= 0) {
        (box.width() < 0 ? target.icNear : target.icFar) = target_->icFar;
    }
    if (grip_.up >= 0) {
        (box.height() < 0 ? target.antiSquatHigh : target.antiSquatLow) = target_->antiSquatLow;
    }
    if (grip_.up <= 0) {
        (box.height() < 0 ? target.antiSquatLow : target.antiSquatHigh) = target_->antiSquatHigh;
    }
    return target;
}

}  // namespace bolthole
