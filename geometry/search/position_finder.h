// Where to put something that two coordinates place (a hole on its plate; with one of them, a rod's length)
// so that a car's figures come to lie within limits, moving it as little as will do.
//
// Sequential quadratic programming with the identity for a Hessian (Nocedal & Wright, "Numerical
// Optimization", 2nd ed. 2006, ch. 18, from memory, no page): in each step the limits and the walls are
// straightened at the present place, and the place nearest to home within all of them is the next. Where they
// have no place in common the step makes the misses least in squares within the walls (Gauss-Newton).
#pragma once

#include <Eigen/Core>
#include <vector>

#include "geometry/plates/nearest_point.h"
#include "geometry/search/target_figures.h"

namespace bolthole {

/// What is placed, and on what ground.
class Placement {
  public:
    Placement() = default;
    Placement(const Placement&) = delete;
    Placement& operator=(const Placement&) = delete;
    virtual ~Placement() = default;

    /// The figures with it placed at `at`, m. False: the car can't be assembled so.
    virtual bool figures(const Eigen::Vector2d& at, TargetFigures& figures) = 0;
    /// Lines it must keep within, straightened at `at`: an allowed place is within all of them, and any place
    /// within all of them is allowed.
    virtual void walls(const Eigen::Vector2d& at, std::vector<HalfPlane>& walls) const = 0;
    /// Whether a place is allowed.
    [[nodiscard]] virtual bool isAllowed(const Eigen::Vector2d& at) const = 0;
};

/// A place with what it comes to.
struct HolePosition {
    bool known = false;  ///< false: the car can't be assembled with it there
    Eigen::Vector2d at = Eigen::Vector2d::Zero();
    TargetFigures figures{};
    double miss = 0;  ///< missSize()
    [[nodiscard]] bool meets() const { return known && miss == 0; }
};
[[nodiscard]] HolePosition positionAt(Placement& placement, const TargetLimits& limits,
                                      const Eigen::Vector2d& at);

/// The place nearest to `home` that meets the limits, searched from `seed`, which must be allowed; where none
/// is found, the one that misses least. Local: other seeds may find other places.
[[nodiscard]] HolePosition findPosition(Placement& placement, const TargetLimits& limits,
                                        const Eigen::Vector2d& home, const HolePosition& seed);

}  // namespace bolthole
