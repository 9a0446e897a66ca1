#include "geometry/dynamics/launch_run.h"

#include <algorithm>
#include <cmath>

#include "geometry/dynamics/launch_limits.h"
#include "geometry/units/say.h"
#include "geometry/units/upper_vectors.h"

namespace bolthole {

namespace {

// Errors a step may make at tolerance 1: m, rad; their rates; rad/s of wheels, m of tread, rad/s of engine.
constexpr LaunchState kScale{1e-6, 5e-7, 2e-7, 5e-7, 5e-7, 5e-5, 2e-5, 1e-5, 5e-5, 5e-5, 2e-4, 5e-7, 2e-3};

constexpr double kFirstWidth = 1e-4;  // s
constexpr double kMostWidth = 0.02;   // s: what happens twice within a step would not be noticed
constexpr double kLeastWidth = 1e-11;
constexpr int kMostAttempts = 100'000;
constexpr int kMostStanding = 20;
constexpr int kMostTries = 40;       // of finding a crossing
constexpr double kSameTime = 1e-11;  // s; how closely a crossing is found
constexpr double kHalf = 0.5;
constexpr double kNoTime = 1e-12;  // s; a step that short is none

}  // namespace

LaunchRun simulateLaunch(const LaunchInputs& inputs, const LaunchOptions& options) {
    LaunchSimulator simulator;
    LaunchRun run;
    simulator.run(inputs, options, run);
    return run;
}

void LaunchSimulator::run(const LaunchInputs& inputs, const LaunchOptions& options, LaunchRun& run,
                          Observer* observer) {
    run_ = &run;
    observer_ = observer;
    options_ = options;
    over_ = false;
    startRecord();
    run.refusal = refusal(inputs);
    if (run.refusal.empty() && !(options.every > 0 && options.tolerance > 0)) {
        run.refusal = say("expected a time between rows and a tolerance above 0");
    }
    if (!run.refusal.empty()) {
        run.end = LaunchEnd::refused;
        return;
    }
    const MoveReport ride = model_.prepare(inputs);
    if (!ride.usable()) {
        run.links = ride;
        run.end = LaunchEnd::noRide;
        return;
    }
    start();
    integrate();
}

void LaunchSimulator::start() {
    for (std::size_t index = 0; index < kLaunchStateSize; ++index) {
        scale_[index] = kScale[index] * options_.tolerance;
    }
    time_ = 0;
    tried_ = 0;
    width_ = kFirstWidth;
    lastError_ = 1;
    standing_ = 0;
    state_ = model_.atRest();
    step_ = {};
    model_.observe(0, state_);
    model_.choosePieces();
    derive(0, state_, rates_);
    startArguments_ = model_.arguments();
    endArguments_ = startArguments_;
    end_ = middle_ = last_ = sampleNow();
    if (state_[kEngineSpeed] < kStalledSpeed) {
        finish(LaunchEnd::stalled);
    }
}

void LaunchSimulator::integrate() {
    clearUpperVectors();
    step_.step(0, state_, rates_, 0, [this](double time, const LaunchState& state, LaunchState& rates) {
        derive(time, state, rates);
    });
    step_.prepareDense();
    record(0);
    for (int attempts = 0; !over_; ++attempts) {
        if (attempts == kMostAttempts || !(width_ >= kLeastWidth)) {
            finish(LaunchEnd::unfollowed);
        } else if (attempt()) {
            advance();
        }
    }
}

void LaunchSimulator::derive(double time, const LaunchState& state, LaunchState& rates) {
    model_.observe(time, state);
    model_.derive(rates);
    ++run_->evaluations;
}

// Tries a step of the width at hand; the next one's width follows from how it went (E. Hairer, S. P. Norsett,
// G. Wanner, "Solving Ordinary Differential Equations I", sec. II.4, and for the last error's part
// "Solving Ordinary Differential Equations II", sec. IV.2; from memory).
bool LaunchSimulator::attempt() {
    tried_ = std::min(width_, kMostWidth);
    step_.step(
        time_, state_, rates_, tried_,
        [this](double time, const LaunchState& state, LaunchState& rates) { derive(time, state, rates); });
    const double error = std::max(step_.error(scale_), 1e-6);
    if (!(error <= 1)) {
        ++run_->rejected;
        width_ = tried_ * (std::isfinite(error) ? std::max(0.2, 0.9 * std::pow(error, -0.2)) : 0.1);
        return false;
    }
    const double factor = 0.9 * std::pow(error, -0.17) * std::pow(lastError_, 0.04);
    width_ = tried_ * std::clamp(factor, 0.2, 5.0);
    lastError_ = std::max(error, 1e-3);
    ++run_->steps;
    return true;
}

// Takes the step up to where it first leaves a piece.
void LaunchSimulator::advance() {
    step_.prepareDense();
    const Crossing crossing = firstCrossing();
    if (observer_ != nullptr) {
        observer_->stepped(model_, step_, time_, tried_, crossing.share);
    }
    record(crossing.share);
    if (over_) {
        return;
    }
    if (crossing.found()) {
        cross(crossing);
        return;
    }
    standing_ = 0;
    time_ += tried_;
    state_ = step_.newState();
    rates_ = step_.newRates();
    if (!std::isfinite(state_[kForward])) {
        finish(LaunchEnd::unfollowed);
    } else if (isOverBackwards()) {
        finish(LaunchEnd::overBackwards);
    }
}

// The whole car's center as it stands in the body at rest: nothing brings the nose down again once it is
// behind the wheels the car turns about.
bool LaunchSimulator::isOverBackwards() const {
    const LaunchBodies& bodies = model_.inputs().bodies;
    const double pitch = state_[kPitch];
    return bodies.cgAhead * std::cos(pitch) + (bodies.cgHeight - bodies.rearRadius) * std::sin(pitch) < 0;
}

void LaunchSimulator::observeAt(double share) {
    step_.at(share, probe_);
    model_.observe(timeAt(share), probe_);
    if (model_.clutch() == LaunchModel::Clutch::locked) {  // what it carries comes with the accelerations
        model_.derive(probeRates_);
        ++run_->evaluations;
    }
}

// The first kink, but one, whose argument last observed is not on its piece.
LaunchSimulator::Crossing LaunchSimulator::firstViolated(std::size_t but) const {
    const std::vector<double>& arguments = model_.arguments();
    const std::vector<KinkedLine::Piece>& pieces = model_.pieces();
    for (std::size_t kink = 0; kink < arguments.size(); ++kink) {
        if (!pieces[kink].holds(arguments[kink]) && kink != but) {
            return {.kink = kink, .direction = arguments[kink] > pieces[kink].high ? +1 : -1};
        }
    }
    return {};
}

// How far past its end of the piece an argument is, + outside.
double LaunchSimulator::excess(const Crossing& crossing, const std::vector<double>& arguments) const {
    const KinkedLine::Piece& piece = model_.pieces()[crossing.kink];
    return crossing.direction > 0 ? arguments[crossing.kink] - piece.high
                                  : piece.low - arguments[crossing.kink];
}

// The model has observed the end of the step. Looked at halfway, too, so that a short visit is not missed.
LaunchSimulator::Crossing LaunchSimulator::firstCrossing() {
    const Crossing atEnd = firstViolated(kNoKink);
    endArguments_ = model_.arguments();
    end_ = sampleNow();
    observeAt(kHalf);
    middle_ = sampleNow();
    if (standing_ > kMostStanding) {  // goes nowhere: take the step as it is, and the pieces it ends on
        observeAt(1);
        model_.choosePieces();
        startArguments_ = endArguments_;
        return {};
    }
    if (Crossing atMiddle = firstViolated(kNoKink); atMiddle.found()) {
        atMiddle.share = kHalf;
        return earliest(atMiddle, 0, startArguments_);
    }
    if (atEnd.found()) {
        startArguments_ = model_.arguments();
        observeAt(1);
        return earliest(atEnd, kHalf, startArguments_);
    }
    std::swap(startArguments_, endArguments_);
    return {};
}

// Of the kinks that are left by the end of the crossing's share, the one left first: the root of the first
// one found is where the others are looked at again.
LaunchSimulator::Crossing LaunchSimulator::earliest(Crossing crossing, double low,
                                                    const std::vector<double>& lowArguments) {
    for (int tries = 0; tries < kMostTries; ++tries) {
        double from = low;
        double fromExcess = excess(crossing, lowArguments);
        double to = crossing.share;
        double toExcess = excess(crossing, model_.arguments());
        int moved = 0;  // which end did last
        for (int halving = 0; halving < kMostTries && (to - from) * tried_ > kSameTime; ++halving) {
            // False position, an end that stays twice halved (the "Illinois" rule; M. Dowell, P. Jarratt, BIT
            // 11, 1971, from memory).
            const double share =
                fromExcess < 0 ? from + (to - from) * fromExcess / (fromExcess - toExcess) : from;
            observeAt(share);
            const double here = excess(crossing, model_.arguments());
            if (here < 0) {
                from = share;
                fromExcess = here;
                toExcess /= moved < 0 ? 2 : 1;
                moved = -1;
            } else {
                to = share;
                toExcess = here;
                fromExcess /= moved > 0 ? 2 : 1;
                moved = +1;
            }
        }
        crossing.share = to;
        observeAt(to);
        const Crossing other = firstViolated(crossing.kink);
        if (!other.found()) {
            break;
        }
        crossing = {.share = to, .kink = other.kink, .direction = other.direction};
    }
    return crossing;
}

void LaunchSimulator::cross(const Crossing& crossing) {
    const double width = crossing.share * tried_;
    standing_ = width > kNoTime ? 0 : standing_ + 1;
    ++run_->crossings;
    step_.at(crossing.share, state_);
    time_ += width;
    derive(time_, state_, rates_);
    const KinkedLine::Piece left = model_.pieces()[crossing.kink];
    if (!model_.cross(crossing.kink, crossing.direction) && crossing.kink == kLinkageEnd) {
        run_->links = model_.table().end(crossing.direction);
        finish(LaunchEnd::linksEnd);
        return;
    }
    noteCrossing(crossing, left);
    if (state_[kEngineSpeed] <= kStalledSpeed && crossing.kink == kTorqueCurve && crossing.direction < 0) {
        finish(LaunchEnd::stalled);
        return;
    }
    derive(time_, state_, rates_);
    startArguments_ = model_.arguments();
}

void LaunchSimulator::finish(LaunchEnd end) {
    over_ = true;
    run_->end = end;
    run_->endTime = time_;
    run_->endTravel = state_[kRearTravel];
}

}  // namespace bolthole
