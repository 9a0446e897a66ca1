#include "widgets/scales/stable_range.h"

#include <algorithm>
#include <cmath>

#include "widgets/scales/axis_ticks.h"

namespace bolthole {

namespace {
/// Room beside the data, as a share of their span; and the share of the range below which it shrinks.
constexpr double kRoom = 0.06;
constexpr double kShrinkBelow = 0.4;
/// Share of the range that the data's own may come to before it takes its place.
constexpr double kSettleBelow = 0.85;
}  // namespace

bool StableRange::follow(double least, double most, double unit, double floor) {
    if (!std::isfinite(least) || !std::isfinite(most)) {
        return false;
    }
    const double wanted = std::max((most - least) * (1.0 + 2.0 * kRoom), minimumSpan_);
    const bool inside = least >= low_ && most <= high_;
    // Rounding outward can double the span that is asked for; a range is too wide only well beyond that.
    const bool tooWide = wanted < kShrinkBelow * (high_ - low_);
    if (!fresh_ && inside && !tooWide) {
        return false;
    }
    const double center = (least + most) / 2;
    const double step = niceStep(wanted / 6 / unit) * unit;
    const double oldLow = low_;
    const double oldHigh = high_;
    low_ = std::max(std::floor((center - wanted / 2) / step) * step, floor);
    high_ = std::max(std::ceil((center + wanted / 2) / step) * step, low_ + minimumSpan_);
    // A drag goes to and fro: data that left on one side come back, and the end they came from stays.
    const double grownLow = std::min(low_, oldLow);
    const double grownHigh = std::max(high_, oldHigh);
    if (!fresh_ && wanted >= kShrinkBelow * (grownHigh - grownLow)) {
        low_ = grownLow;
        high_ = grownHigh;
    }
    fresh_ = false;
    return low_ != oldLow || high_ != oldHigh;
}

bool StableRange::settle(double least, double most, double unit, double floor) {
    const bool changed = follow(least, most, unit, floor);
    StableRange own(minimumSpan_);
    own.follow(least, most, unit, floor);
    if (own.fresh_ || own.high_ - own.low_ >= kSettleBelow * (high_ - low_)) {
        return changed;
    }
    *this = own;
    return true;
}

}  // namespace bolthole
