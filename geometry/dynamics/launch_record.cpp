// What LaunchSimulator keeps of the steps it takes: rows, clock, extremes, events.
#include <algorithm>
#include <cmath>

#include "geometry/dynamics/launch_limits.h"
#include "geometry/dynamics/launch_run.h"

namespace bolthole {

namespace {

constexpr double kRounding = 1e-9;    // s, of a row's time
constexpr int kMostHalvings = 40;     // of finding when a distance is run
constexpr double kSameShare = 1e-12;  // of a step

}  // namespace

void LaunchSimulator::startRecord() {
    LaunchRun& run = *run_;
    run.end = LaunchEnd::notRun;
    run.endTime = run.endTravel = 0;
    run.links = {};
    run.figures = {};
    run.rows.clear();
    run.events.clear();
    run.steps = run.rejected = run.crossings = 0;
    run.evaluations = 0;
    run.events.reserve(kMostEvents);
    if (options_.every > 0 && std::isfinite(options_.every)) {
        run.rows.reserve(std::min<std::size_t>(
            kMostRows, static_cast<std::size_t>(std::min(kMostTime / options_.every, 1e6)) + 2));
    }
    stop_ = kMostTime;
    nextRow_ = 0;
    clockStart_.reset();
}

// The step at hand was taken up to `share`.
void LaunchSimulator::record(double share) {
    recordClock(share);
    recordExtremes(share);
    writeRows(share);
    if (timeAt(share) >= stop_ - kRounding) {
        time_ = stop_;
        finish(run_->figures.fromRelease ? LaunchEnd::done : LaunchEnd::timeOut);
    }
}

void LaunchSimulator::recordClock(double share) {
    const double distance = sampleAt(share).distance;
    const double rollout = model_.inputs().rollout;
    if (!clockStart_ && distance >= rollout) {
        clockStart_ = rollout > 0 ? timeAt(shareOfDistance(rollout, share)) : 0;
        note(LaunchEventKind::clockStarted, *clockStart_);
    }
    LaunchFigures& figures = run_->figures;
    if (!figures.fromRelease && distance >= rollout + kSixtyFeet) {
        const double at = timeAt(shareOfDistance(rollout + kSixtyFeet, share));
        figures.fromRelease = at;
        figures.sixtyFoot = at - *clockStart_;
        note(LaunchEventKind::sixtyFeet, at);
        const double least = std::max(at, kLeastTime);
        stop_ = std::min(kMostTime, std::ceil(least / options_.every - kRounding) * options_.every);
    }
}

// Where between the beginning of the step, which is short of it, and `share` the distance is run.
double LaunchSimulator::shareOfDistance(double distance, double share) {
    double low = 0;
    double high = share;
    for (int halving = 0; halving < kMostHalvings && high - low > kSameShare; ++halving) {
        const double middle = (low + high) / 2;
        observeAt(middle);
        (model_.moment().distance < distance ? low : high) = middle;
    }
    return high;
}

void LaunchSimulator::recordExtremes(double share) {
    const std::optional<double>& finish = run_->figures.fromRelease;
    double end = share;
    if (finish && tried_ > 0) {
        end = std::min(end, (*finish - time_) / tried_);  // below 0: over before this step
    }
    const double begin =
        tried_ > 0 ? std::clamp((kAfterTheHit - time_) / tried_, 0.0, std::max(end, 0.0)) : 0;
    if (begin > 0) {
        searchExtremes(0, begin, false);
    }
    if (end > begin) {
        searchExtremes(begin, end, true);
    }
    last_ = sampleAt(share);
}

LaunchSimulator::Sample LaunchSimulator::sampleNow() const {
    const KinkedLine::Piece& tire = model_.pieces()[kRearTire];
    return {.load = tire.at(model_.arguments()[kRearTire]),
            .slip = model_.moment().slip,
            .distance = model_.moment().distance};
}

LaunchSimulator::Sample LaunchSimulator::sampleAt(double share) {
    if (share == 0) {
        return last_;
    }
    if (share == 1) {
        return end_;
    }
    if (share == 1.0 / 2) {
        return middle_;
    }
    observeAt(share);
    return sampleNow();
}

namespace {

// Where a parabola through values at 0, 1/2 and 1 turns, if between; above its ends for `upward` -1, below
// for +1.
std::optional<double> turningPoint(double first, double middle, double last, double upward) {
    const double curvature = 2 * (first - 2 * middle + last);
    const double slope = -3 * first + 4 * middle - last;
    const double at = -slope / (2 * curvature);
    return upward * curvature > 0 && at > 0 && at < 1 ? std::optional(at) : std::nullopt;
}

}  // namespace

// Extremes between the two shares: at the ends, halfway, and where parabolas through these turn.
void LaunchSimulator::searchExtremes(double low, double high, bool load) {
    const double half = (low + high) / 2;
    const Sample first = sampleAt(low);
    const Sample middle = sampleAt(half);
    const Sample last = sampleAt(high);
    keep(first, low, load);
    keep(middle, half, load);
    keep(last, high, load);
    const auto look = [&](std::optional<double> at) {
        if (at) {
            const double share = low + *at * (high - low);
            keep(sampleAt(share), share, load);
        }
    };
    look(turningPoint(first.slip, middle.slip, last.slip, -1));
    if (load) {
        look(turningPoint(first.load, middle.load, last.load, +1));
    }
}

void LaunchSimulator::keep(const Sample& sample, double share, bool load) {
    LaunchFigures& figures = run_->figures;
    figures.largestSlip = std::max(figures.largestSlip, sample.slip);
    const double carried = std::max(0.0, sample.load);  // at a lift rounding leaves it a hair below nothing
    if (load && (!figures.leastRearLoad || carried < *figures.leastRearLoad)) {
        figures.leastRearLoad = carried;
        figures.leastRearLoadAt = timeAt(share);
    }
}

void LaunchSimulator::writeRows(double share) {
    const double until = std::min(timeAt(share), stop_) + kRounding;
    for (double time = 0; (time = static_cast<double>(nextRow_) * options_.every) <= until; ++nextRow_) {
        if (run_->rows.size() == kMostRows) {
            return;
        }
        const double at = tried_ > 0 ? std::clamp((time - time_) / tried_, 0.0, share) : 0;
        step_.at(at, probe_);
        derive(time, probe_, probeRates_);
        const LaunchMoment& now = model_.moment();
        run_->rows.push_back({.time = time,
                              .distance = now.distance,
                              .speed = now.axleForwardRate,
                              .acceleration = probeRates_[kForwardRate],
                              .engineSpeed = probe_[kEngineSpeed],
                              .turbineSpeed = now.turbineSpeed,
                              .slip = now.slip,
                              .rearTravel = probe_[kRearTravel],
                              .frontTravel = probe_[kFrontTravel],
                              .pitch = probe_[kPitch],
                              .rearLoad = now.rearLoad,
                              .frontLoad = now.frontLoad,
                              .thrust = now.thrust,
                              .grip = model_.inputs().tires.friction * now.rearLoad,
                              .forward = probe_[kForward],
                              .up = probe_[kUp],
                              .wheelSpin = probe_[kWheelSpin]});
    }
}

void LaunchSimulator::note(LaunchEventKind kind, double time, int part) {
    LaunchFigures& figures = run_->figures;
    if (kind == LaunchEventKind::toppedOut && !figures.toppedOut) {
        figures.toppedOut = time;
    } else if (kind == LaunchEventKind::frontTiresUp && !figures.frontUp) {
        figures.frontUp = time;
    }
    if (run_->events.size() < kMostEvents) {
        run_->events.push_back({kind, time, part});
    }
}

void LaunchSimulator::noteFront(const Crossing& crossing) {
    const bool upper = model_.pieceIndex(kFrontStops) + (crossing.direction < 0 ? 1U : 0U) == 2;
    if (upper) {
        note(crossing.direction > 0 ? LaunchEventKind::bottomed : LaunchEventKind::offBottom, time_);
    } else {
        note(crossing.direction > 0 ? LaunchEventKind::offTop : LaunchEventKind::toppedOut, time_);
    }
}

// The model has left the piece `left`.
void LaunchSimulator::noteCrossing(const Crossing& crossing, const KinkedLine::Piece& left) {
    const bool up = crossing.direction > 0;
    switch (crossing.kink) {
        case kClock:
            return note(LaunchEventKind::released, time_);
        case kRearTire:
            return note(up ? LaunchEventKind::rearTiresDown : LaunchEventKind::rearTiresUp, time_);
        case kFrontTire:
            return note(up ? LaunchEventKind::frontTiresDown : LaunchEventKind::frontTiresUp, time_);
        case kFrontStops:
            return noteFront(crossing);
        case kSpeedRatio:
            if (model_.hasConverter()) {
                const double coupled = model_.inputs().coupling.couplingRatio;
                if ((up ? left.high : left.low) == coupled) {
                    note(up ? LaunchEventKind::coupled : LaunchEventKind::uncoupled, time_);
                }
            } else if (model_.clutch() == LaunchModel::Clutch::locked) {
                note(LaunchEventKind::locked, time_);
            } else if (left.low == -1 && left.high == 1) {
                note(LaunchEventKind::slipping, time_);
            }
            return;
        default:
            break;
    }
    if (crossing.kink >= kFixedKinks && (crossing.kink - kFixedKinks) % 2 == 0) {
        const std::size_t line = (crossing.kink - kFixedKinks) / 2;
        const bool met = std::abs(model_.pieces()[crossing.kink].slope) > std::abs(left.slope);
        note(met ? LaunchEventKind::partMet : LaunchEventKind::partFree, time_,
             static_cast<int>(model_.lines()[line].part));
    }
}

}  // namespace bolthole
