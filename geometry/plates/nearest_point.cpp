#include "geometry/plates/nearest_point.h"

#include <cmath>
#include <limits>

#include "geometry/algebra/symmetric_modes.h"

namespace bolthole {

namespace {

constexpr double kOnWall = 1e-11;   // m
constexpr double kParallel = 1e-9;  // sine of the angle between two walls
constexpr double kUnheld = 1e-14;   // square of a singular value against the largest

bool isWithin(const Eigen::Vector2d& point, std::span<const HalfPlane> walls) {
    for (const HalfPlane& wall : walls) {
        if (!(wall.room(point) >= -kOnWall)) {
            return false;
        }
    }
    return true;
}

/// Calls `visit` with each point where two walls meet.
template <typename Visit>
void forEachCorner(std::span<const HalfPlane> walls, const Visit& visit) {
    for (std::size_t one = 0; one < walls.size(); ++one) {
        for (std::size_t other = one + 1; other < walls.size(); ++other) {
            const Eigen::Vector2d& a = walls[one].inward;
            const Eigen::Vector2d& b = walls[other].inward;
            const double turn = a.x() * b.y() - a.y() * b.x();
            if (std::abs(turn) > kParallel) {
                visit(Eigen::Vector2d((walls[one].offset * b.y() - walls[other].offset * a.y()) / turn,
                                      (walls[other].offset * a.x() - walls[one].offset * b.x()) / turn));
            }
        }
    }
}

// Of the least squares, with what nothing holds left where it is.
Eigen::Vector2d shortestSolution(const LinearMisfit& misfit) {
    const SymmetricModes<2> modes(misfit.slope.transpose().lazyProduct(misfit.slope));
    return modes.shortestSolution(misfit.slope.transpose().lazyProduct(misfit.value), kUnheld);
}

}  // namespace

std::optional<Eigen::Vector2d> nearestWithin(const Eigen::Vector2d& from, std::span<const HalfPlane> walls) {
    std::optional<Eigen::Vector2d> nearest;
    double least = std::numeric_limits<double>::infinity();
    const auto offer = [&](const Eigen::Vector2d& point) {
        const double distance = (point - from).squaredNorm();
        if (distance < least && isWithin(point, walls)) {
            least = distance;
            nearest = point;
        }
    };
    offer(from);
    if (nearest) {
        return nearest;
    }
    for (const HalfPlane& wall : walls) {
        if (wall.room(from) < 0) {  // within the others too, the foot is the nearest there can be
            offer(from - wall.room(from) * wall.inward);
        }
    }
    if (!nearest) {
        forEachCorner(walls, offer);
    }
    return nearest;
}

double LinearMisfit::size(const Eigen::Vector2d& point) const {
    return (value + slope * (point - at)).norm();
}

Eigen::Vector2d leastMisfit(const LinearMisfit& misfit, std::span<const HalfPlane> walls) {
    Eigen::Vector2d best = misfit.at;
    if (misfit.value.size() == 0) {
        return best;
    }
    double least = misfit.size(best);
    const auto offer = [&](const Eigen::Vector2d& point) {
        const double size = point.allFinite() ? misfit.size(point) : least;
        if (size < least && isWithin(point, walls)) {
            least = size;
            best = point;
        }
    };
    offer(misfit.at - shortestSolution(misfit));
    for (const HalfPlane& wall : walls) {
        const Eigen::Vector2d foot = misfit.at - wall.room(misfit.at) * wall.inward;
        const Eigen::Vector2d along(-wall.inward.y(), wall.inward.x());
        const Eigen::VectorXd slope = misfit.slope * along;
        const Eigen::VectorXd there = misfit.value + misfit.slope * (foot - misfit.at);
        offer(foot - along * (slope.dot(there) / slope.squaredNorm()));
    }
    forEachCorner(walls, offer);
    return best;
}

}  // namespace bolthole
