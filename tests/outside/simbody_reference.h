// The same linkage solved by Simbody, a multibody library that shares no equation with this project.
//
// Simbody: M. A. Sherman, A. Seth, S. L. Delp, "Simbody: multibody dynamics for biomedical research",
// Procedia IUTAM 2 (2011) 241-261 (from memory); used as the library Debian ships.
#pragma once

#include <Eigen/Core>
#include <memory>
#include <vector>

#include "tests/outside/reference_links.h"

namespace bolthole {

/// What holds an axle still under a load.
struct ReferenceForces {
    std::vector<double>
        links;                ///< N, a link each: tension of a rod, else the force on the axle along its axis
    double acceleration = 0;  ///< largest of any coordinate, m/s^2 or rad/s^2: 0 where the load is balanced
};

/// An axle on a chain of Simbody mobilizers: translation, then pins about z, y and x, which is the rotation
/// order of AxlePose. Links are Simbody's own Constraint::Rod and Constraint::PointInPlane; height and roll
/// are locked and the rest is left to Simbody's Assembler, in steps small enough to stay on the branch that
/// was measured. An Assembler closes exactly held linkages only; over-held ones that do not fit fail.
class SimbodyReference {
  public:
    /// Builds the system; the axle stands at its measured pose, not yet assembled.
    explicit SimbodyReference(const ReferenceAxle& axle);
    ~SimbodyReference();
    SimbodyReference(const SimbodyReference&) = delete;
    SimbodyReference& operator=(const SimbodyReference&) = delete;

    /// Goes on from the present pose to `travel` (m) and `roll` (rad). False if Simbody found no assembly to
    /// 1e-13 m on the way; the pose is then of no use.
    [[nodiscard]] bool moveTo(double travel, double roll = 0.0);

    /// Where Simbody's own body transform puts a point of the axle, car frame, m. `fromCenter`: m, from the
    /// axle's center at the measured pose.
    [[nodiscard]] Eigen::Vector3d carry(const Eigen::Vector3d& fromCenter) const;

    /// The multipliers of Simbody's constraints at the present pose, at rest, under `force` (N) and `moment`
    /// (N m, about the axle's center), car frame, on a body of 4 kg and inertias of a few kg m^2. Nothing but
    /// the links holds it, so what they do not hold accelerates it.
    [[nodiscard]] ReferenceForces linkForces(const Eigen::Vector3d& force, const Eigen::Vector3d& moment);

  private:
    struct Model;
    [[nodiscard]] bool assembleAt(double travel, double roll);

    std::unique_ptr<Model> model_;
    double travel_ = 0;
    double roll_ = 0;
};

}  // namespace bolthole
