#include "geometry/search/position_finder.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bolthole {

namespace {

constexpr double kDifference = 1e-5;   // m, either way, for slopes
constexpr double kLongestStep = 0.03;  // m; the figures bend
constexpr double kConverged = 1e-10;   // m
constexpr int kMostSteps = 40;
constexpr int kMostHalvings = 5;
constexpr double kMargin = 1e-7;       // scales: what is met at a limit is met after rounding too
constexpr double kInsensitive = 1e-6;  // scales a meter: a figure that does not depend on the place

/// One search.
class Finder {
  public:
    Finder(Placement& placement, const TargetLimits& limits, const Eigen::Vector2d& home)
        : placement_(placement), limits_(limits), home_(home) {}

    HolePosition find(const HolePosition& seed) {
        now_ = seed;
        best_ = seed;
        for (int step = 0; step < kMostSteps; ++step) {
            if (!readSlopes()) {
                break;
            }
            const double moved = goOn();
            remember();
            if (moved < kConverged) {
                break;
            }
        }
        return best_;
    }

  private:
    bool readSlopes() {
        for (int axis = 0; axis < 2; ++axis) {
            Eigen::Vector2d shift = Eigen::Vector2d::Zero();
            shift[axis] = kDifference;
            TargetFigures up{};
            TargetFigures down{};
            if (!placement_.figures(now_.at + shift, up) || !placement_.figures(now_.at - shift, down)) {
                return false;
            }
            for (std::size_t index = 0; index < kTargetFigures; ++index) {
                slopes_[index][axis] = (up[index] - down[index]) / (2 * kDifference);
            }
        }
        return true;
    }
    /// Takes one step; how far it went, m.
    double goOn() {
        walls_.clear();
        placement_.walls(now_.at, walls_);
        const std::size_t plates = walls_.size();
        const bool solvable = addLimits();
        std::optional<Eigen::Vector2d> goal;
        if (solvable) {
            goal = nearestWithin(home_, walls_);
        }
        walls_.resize(plates);
        return goal ? moveTo(*goal, false) : moveTo(leastMisfit(misfit(), walls_), true);
    }
    /// False: a figure that is missed does not depend on the place.
    bool addLimits() {
        for (std::size_t index = 0; index < kTargetFigures; ++index) {
            const TargetLimit& limit = limits_[index];
            if (limit.isFree()) {
                continue;
            }
            const double steep = slopes_[index].norm();
            if (!(steep > kInsensitive * limit.scale)) {
                if (limit.outside(now_.figures[index]) > 0) {
                    return false;
                }
                continue;
            }
            const Eigen::Vector2d along = slopes_[index] / steep;
            const double here = along.dot(now_.at);
            const double margin = std::min(kMargin * limit.scale, (limit.high - limit.low) / 2);
            if (std::isfinite(limit.low)) {
                walls_.push_back({along, here + (limit.low + margin - now_.figures[index]) / steep});
            }
            if (std::isfinite(limit.high)) {
                walls_.push_back({-along, -here - (limit.high - margin - now_.figures[index]) / steep});
            }
        }
        return true;
    }
    [[nodiscard]] LinearMisfit misfit() const {
        LinearMisfit misfit;
        misfit.value.resize(kTargetFigures);
        misfit.slope.resize(kTargetFigures, 2);
        misfit.at = now_.at;
        Eigen::Index rows = 0;
        for (std::size_t index = 0; index < kTargetFigures; ++index) {
            const TargetLimit& limit = limits_[index];
            const double value = now_.figures[index];
            if (limit.outside(value) > 0 && std::isfinite(value) && slopes_[index].allFinite()) {
                const double margin = std::min(kMargin * limit.scale, (limit.high - limit.low) / 2);
                const double aim = std::clamp(value, limit.low + margin, limit.high - margin);
                misfit.value[rows] = (value - aim) / limit.scale;
                misfit.slope.row(rows) = slopes_[index].transpose() / limit.scale;
                ++rows;
            }
        }
        misfit.value.conservativeResize(rows);
        misfit.slope.conservativeResize(rows, 2);
        return misfit;
    }
    double moveTo(const Eigen::Vector2d& goal, bool mustImprove) {
        Eigen::Vector2d step = goal - now_.at;
        step *= std::min(1.0, kLongestStep / std::max(step.norm(), kConverged));
        for (int halving = 0; halving <= kMostHalvings; ++halving) {
            const HolePosition next = positionAt(placement_, limits_, now_.at + step);
            if (next.known && (!mustImprove || next.miss < now_.miss)) {
                now_ = next;
                return step.norm();
            }
            step /= 2;
        }
        return 0;
    }
    void remember() {
        const double distance = (now_.at - home_).norm();
        const double least = (best_.at - home_).norm();
        if (!placement_.isAllowed(now_.at)) {
            return;
        }
        if (now_.miss < best_.miss || (now_.miss == best_.miss && distance < least)) {
            best_ = now_;
        }
    }

    Placement& placement_;
    const TargetLimits& limits_;
    Eigen::Vector2d home_;
    HolePosition now_;
    HolePosition best_;
    std::array<Eigen::Vector2d, kTargetFigures> slopes_{};
    std::vector<HalfPlane> walls_;
};

}  // namespace

HolePosition positionAt(Placement& placement, const TargetLimits& limits, const Eigen::Vector2d& at) {
    HolePosition place;
    place.at = at;
    place.known = placement.figures(at, place.figures);
    place.miss = place.known ? missSize(place.figures, limits) : std::numeric_limits<double>::infinity();
    return place;
}

HolePosition findPosition(Placement& placement, const TargetLimits& limits, const Eigen::Vector2d& home,
                          const HolePosition& seed) {
    return Finder(placement, limits, home).find(seed);
}

}  // namespace bolthole
