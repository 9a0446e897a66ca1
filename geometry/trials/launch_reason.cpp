#include "geometry/trials/launch_reason.h"

#include <algorithm>
#include <cmath>

#include "geometry/dynamics/launch_limits.h"

namespace bolthole {

namespace {

constexpr double kTellingTime = 0.005;  // s
constexpr double kTellingLoad = 0.01;   // of the car's weight
constexpr double kTellingWeight = 1;
constexpr double kHappensOrNot = 8;  // in telling times: more than most that only moves

using Kind = ReasonPart::Kind;

/// Collects what differs.
class Reasons {
  public:
    void addTime(Kind kind, const std::optional<double>& before, const std::optional<double>& after) {
        if (before && after) {
            add({kind, before, after, std::abs(*after - *before) / kTellingTime});
        } else if (before || after) {
            add({kind, before, after, kHappensOrNot});
        }
    }
    void addLoad(Kind kind, const std::optional<double>& before, const std::optional<double>& after,
                 double weight) {
        if (before && after) {
            add({kind, before, after, std::abs(*after - *before) / (kTellingLoad * weight)});
        }
    }
    std::vector<ReasonPart> take() {
        std::ranges::stable_sort(parts_, std::greater<>{}, &ReasonPart::weight);
        return std::move(parts_);
    }

  private:
    void add(const ReasonPart& part) {
        if (part.weight >= kTellingWeight) {
            parts_.push_back(part);
        }
    }

    std::vector<ReasonPart> parts_;
};

}  // namespace

LaunchTraits traitsOf(const LaunchRun& run, const LaunchInputs& inputs) {
    const LaunchFigures& figures = run.figures;
    LaunchTraits traits{.sixtyFoot = figures.sixtyFoot,
                        .toppedOut = figures.toppedOut,
                        .frontUp = figures.frontUp,
                        .leastLoad = figures.leastRearLoad};
    const double finish = figures.fromRelease.value_or(run.endTime);
    double last = 0;
    for (const LaunchRow& row : run.rows) {
        if (row.time <= kAfterTheHit) {
            traits.hitLoad = std::max(traits.hitLoad, row.rearLoad);
        }
        if (row.time <= finish && row.slip > kSpinning * inputs.tires.peakSlip) {
            traits.spinning += row.time - last;
        }
        last = row.time;
    }
    return traits;
}

std::vector<ReasonPart> reasonsFor(const LaunchTraits& before, const LaunchTraits& after, double weight) {
    Reasons reasons;
    // What comes after the finish decides nothing.
    const auto inTime = [](const std::optional<double>& time, const LaunchTraits& traits) {
        return time && time < traits.sixtyFoot.value_or(kMostTime) ? time : std::nullopt;
    };
    reasons.addTime(Kind::noseStops, inTime(before.toppedOut, before), inTime(after.toppedOut, after));
    reasons.addTime(Kind::frontTiresUp, inTime(before.frontUp, before), inTime(after.frontUp, after));
    reasons.addTime(Kind::spinning, before.spinning, after.spinning);
    reasons.addLoad(Kind::leastRearLoad, before.leastLoad, after.leastLoad, weight);
    reasons.addLoad(Kind::hitLoad, before.hitLoad, after.hitLoad, weight);
    return reasons.take();
}

}  // namespace bolthole
