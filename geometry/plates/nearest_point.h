// The point of a plane that is nearest to another and keeps on the right side of some lines.
#pragma once

#include <Eigen/Core>
#include <optional>
#include <span>

namespace bolthole {

/// All points p with inward . p >= offset; `inward` is a unit vector.
struct HalfPlane {
    Eigen::Vector2d inward = Eigen::Vector2d::UnitX();
    double offset = 0;

    /// How far inside a point lies, negative outside.
    [[nodiscard]] double room(const Eigen::Vector2d& point) const { return inward.dot(point) - offset; }
};

/// The point within all `walls` nearest to `from`; nothing where they have no point in common. It is `from`
/// itself, or its foot on one wall, or where two walls meet: the active set of a convex quadratic program in
/// two unknowns has at most two members (Nocedal & Wright, "Numerical Optimization", 2nd ed. 2006, ch. 16,
/// from memory, no page). Tries all, so for tens of walls, not thousands.
[[nodiscard]] std::optional<Eigen::Vector2d> nearestWithin(const Eigen::Vector2d& from,
                                                           std::span<const HalfPlane> walls);

/// A linear residual: value + slope * (p - at), any number of rows.
struct LinearMisfit {
    Eigen::VectorXd value;
    Eigen::MatrixX2d slope;
    Eigen::Vector2d at = Eigen::Vector2d::Zero();

    [[nodiscard]] double size(const Eigen::Vector2d& point) const;
};
/// The point within the walls where the residual is least in squares; of several the one nearest to where it
/// was taken. That point itself must lie within the walls.
[[nodiscard]] Eigen::Vector2d leastMisfit(const LinearMisfit& misfit, std::span<const HalfPlane> walls);

}  // namespace bolthole
