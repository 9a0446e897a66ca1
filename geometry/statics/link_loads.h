// What the links carry: the axle, its wheels locked to the housing, cut free as one body in balance.
//
// Static: no shock factor beyond the one entered, no damper force but what is entered, no turning inertia.
#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/kinematics/linkage.h"
#include "geometry/kinematics/standing_car.h"
#include "geometry/kinematics/trace.h"
#include "geometry/statics/suspension_part.h"
#include "geometry/units/say.h"

namespace bolthole {

/// To be shown wherever link loads are, by say().
inline constexpr std::string_view kLinkLoadWarning = phrase(
    "Static loads, with no shock factor beyond the one entered. Welds and brackets belong to a qualified "
    "person.");

/// To be shown beside every load that JointLoad does not call determinate.
inline constexpr std::string_view kSharedLoadNote = phrase(
    "More links hold the axle than need to. How they share the load is not determined by statics: it "
    "depends on how stiff they are and how well they fit. The figure is one possible share.");

/// What drives the car.
struct DriveTorque {
    double engine = 0;      ///< N m, at the flywheel
    double converter = 1;   ///< multiplication of a torque converter
    double gear = 1;        ///< ratio
    double axle = 1;        ///< ratio: turns of the driveshaft for one of the wheels
    double efficiency = 1;  ///< of all of it, above 0 to 1

    bool operator==(const DriveTorque&) const = default;
};
/// Thrust of both rear tires, N.
struct Thrust {
    double force = 0;
    bool byGrip = false;  ///< the tires hold no more; the engine would
};
/// Torque times ratios over the loaded radius (m), capped by the most the tires hold, N: as
/// gripAcceleration() or openGripThrust() has it.
[[nodiscard]] Thrust thrustOf(const DriveTorque& drive, double tireRadius, double mostGrip);

/// Everything that acts on the axle beside links and springs, forces in N.
struct AxleLoads {
    double thrust = 0;       ///< both patches together, half each, forward +
    double leftTire = 0;     ///< load of the left patch, square to the ground
    double rightTire = 0;    ///< of the right
    double track = 0;        ///< m, between the patches' middles
    double shaftTorque = 0;  ///< N m of the driveshaft, + presses the axle's left end down
    double pinionAngle = 0;  ///< rad, of the pinion's axis at the measured pose, about which that torque acts
    double unsprungMass = 0;  ///< kg: axle, wheels, brakes and half of what leads to it
    Eigen::Vector3d unsprungAt = Eigen::Vector3d::Zero();  ///< its CG, m, from the axle's center as measured
    double acceleration = 0;  ///< m/s^2 of that mass; 0: the links pass on all the thrust, which reads high
    double gravity = kStandardGravity;  ///< m/s^2
};

/// What holds one link's end, N.
struct JointLoad {
    int link = 0;  ///< index into Car::links
    Side side = Side::center;
    double axial = std::numeric_limits<double>::quiet_NaN();  ///< rods: tension +, compression -
    /// On the axle, car frame. Bracket hole and joint at either end of a rod carry the same, on the chassis
    /// turned around.
    Eigen::Vector3d force = Eigen::Vector3d::Zero();
    /// Statics alone determines it. Else redundant links share the load by their stiffness and their fit,
    /// which nobody knows: the figure is then the share that makes the sum of squares of all forces least.
    bool determinate = true;

    /// Axial load of a rod, amount of the force at anything else, N.
    [[nodiscard]] double value() const { return std::isnan(axial) ? force.norm() : axial; }
};

/// The balance of one pose.
struct LinkLoads {
    std::array<JointLoad, 2 * kMaxLinks> joints;  ///< in the order of Linkage::constraints
    std::size_t count = 0;
    /// Force of the springs of each side along their lines, N, + pushes. They carry what is left in travel
    /// and roll, so these are what balance asks of them, whatever length they have. Below 0 no spring can:
    /// the axle falls away from the body until one of them is loose, and the figures do not hold.
    double leftSprings = 0;
    double rightSprings = 0;
    bool springsDeterminate = true;
    double unbalanced = 0;  ///< N: what nothing holds of the loads; above rounding the rest is of no use

    [[nodiscard]] std::span<const JointLoad> all() const { return std::span(joints).first(count); }
};

/// Solves the balance at any number of poses of one linkage. Allocates nothing after its construction.
///
/// Six equations of equilibrium, six unknowns in an axle held exactly: four constraint forces, which are the
/// columns of the transposed constraint Jacobian, and the springs left and right, which carry the two
/// motions the links leave free. In an over-held axle there are more, and the solution of least norm is
/// taken.
class LinkLoadSolver {
  public:
    /// `lines`: of all `parts`. Springs and coilovers carry: those of one side share its force as their rates
    /// are (beside one with a rate one without carries next to nothing), one at the center belongs half to
    /// either side. Everything else pushes by its force at its length; straps are taken to be slack. All
    /// three must outlive the solver.
    LinkLoadSolver(const Linkage& linkage, std::span<const SuspensionPart> parts,
                   std::span<const PartLine> lines);

    /// At a pose the linkage can be assembled in, on its ground.
    void solve(const AxlePose& pose, const GroundLine& ground, const AxleLoads& applied,
               LinkLoads& loads) const;

  private:
    struct Balance;
    // How much of its side's force a spring takes, before division by the side's sum.
    [[nodiscard]] double weight(const PartLine& line, Side side) const;

    const Linkage& linkage_;
    std::span<const SuspensionPart> parts_;
    std::span<const PartLine> lines_;
    Eigen::Index unknowns_ = 2;        // scalar constraints and the springs of both sides
    std::array<double, 2> weights_{};  // of the springs left and right, summed
};

/// Upright springs of any rate over the axle's center, `apart` (m), for a car whose springs were not
/// measured.
[[nodiscard]] SuspensionPart uprightSprings(double apart, double axleHeight);

/// What is to be computed at every pose of a travel.
struct LoadCase {
    double thrust = 0;        ///< N, both rear tires
    double axleRatio = 1;     ///< of the axle: the driveshaft turns with thrust x radius / ratio
    double leftShift = 0;     ///< N the left rear tire carries more than half the axle's load
    double track = 0;         ///< m, rear
    double unsprungMass = 0;  ///< kg
    double acceleration = 0;  ///< m/s^2, as in AxleLoads

    bool operator==(const LoadCase&) const = default;
};
/// Why the case can't be computed, in one sentence; empty: it can.
[[nodiscard]] std::string refusal(const LoadCase& load, const Car& car);
/// The loads at one station: the tires carry what the whole car's statics gives them at that thrust (as
/// launchLoads(), never more than the front wheels' lift).
[[nodiscard]] AxleLoads axleLoads(const Car& car, const GroundLine& ground, const LoadCase& load);

/// The largest loads of one joint in travel, N, and where, m.
struct WorstLoad {
    double tension = 0;  ///< rods: 0 or more; anything else: the amount
    double tensionAt = std::numeric_limits<double>::quiet_NaN();
    double compression = 0;  ///< 0 or more
    double compressionAt = std::numeric_limits<double>::quiet_NaN();
    bool determinate = true;  ///< at every travel, as JointLoad

    [[nodiscard]] double largest() const { return std::max(tension, compression); }
};

/// Link loads through the travel.
struct LinkLoadSweep {
    std::size_t joints = 0;
    std::vector<PartLine> lines;  ///< of the parts
    std::vector<double> values;   ///< N, JointLoad::value(), a row a station of the trace; NaN: not reached
    std::vector<std::array<double, 2>> springs;  ///< N, left and right at each station
    std::vector<WorstLoad> worst;                ///< a joint each, in the order of Linkage::constraints
    bool unbalanced = false;   ///< somewhere nothing holds part of the loads: nothing here is of use
    bool springsPull = false;  ///< somewhere a spring would have to pull

    [[nodiscard]] double value(std::size_t station, std::size_t joint) const {
        return values[station * joints + joint];
    }
};
/// Over the usable stations of `trace`. Uses the storage of `sweep` again: allocates nothing for each pose.
/// `parts` with no refusal, at least one of them a spring.
void sweepLinkLoads(const Car& car, const Linkage& linkage, const Trace& trace,
                    std::span<const SuspensionPart> parts, const LoadCase& load, LinkLoadSweep& sweep);

/// Whether nothing holds part of the loads: more than a millionth of thrust and tire loads is left over.
[[nodiscard]] bool isUnbalanced(const LinkLoads& loads, const AxleLoads& applied);

/// How much of a part's rating a load takes, 1: all of it; `factor`: what the load is multiplied by, entered.
[[nodiscard]] double ratingUse(double load, double rating, double factor);

}  // namespace bolthole
