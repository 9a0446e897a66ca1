// A car's driveline at its poses: joint angles in space, what speed swing they leave, how far the slip yoke
// moves, and which pinion angle would cancel. Shafts of one piece, and of two with a carrier bearing.
#pragma once

#include <Eigen/Core>
#include <array>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/faults.h"
#include "geometry/kinematics/trace.h"
#include "geometry/statics/cardan.h"

namespace bolthole {

/// What there is to know of a driveshaft beyond Driveline. Joints are counted from the front.
struct ShaftSetup {
    /// Center of the joint behind the carrier bearing, car frame, m; absent: one piece. The front piece is
    /// held by the bearing and does not move.
    std::optional<Eigen::Vector3d> carrierJoint = std::nullopt;
    /// Of the front (or only) piece and the rear one: how far its rear yoke is turned from its front yoke,
    /// rad, clockwise seen from the rear; 0: in phase.
    std::array<double, 2> yokeOffset{};
    std::optional<SlipYoke> slip = std::nullopt;
    double windUp = 0;  ///< how far the housing turns nose up under power, rad: an allowance, as entered
    std::optional<double> engineSpeed = std::nullopt;  ///< rad/s, the highest
    std::optional<double> gear = std::nullopt;         ///< ratio of the gear it is reached in

    [[nodiscard]] std::size_t joints() const { return carrierJoint ? 3 : 2; }
    /// Speed of the shaft, rad/s; nothing without engine speed and gear.
    [[nodiscard]] std::optional<double> speed() const;

    bool operator==(const ShaftSetup&) const = default;
};
/// Why the setup can't be computed, in one sentence; empty: it can.
[[nodiscard]] std::string refusal(const ShaftSetup& setup, const Driveline& driveline);

/// The driveline at one pose. NaN: does not exist.
struct DrivelineFigures {
    std::size_t joints = 0;
    std::array<double, kMostJoints> angle{};  ///< working angle of each joint in space, rad
    double equivalent = 0;                    ///< equivalentAngle(), rad
    double swing = 0;        ///< of the pinion's speed over the engine side's, most - least of speedRatios()
    double shaftLength = 0;  ///< of the piece that reaches to the pinion, m
    double plunge = std::numeric_limits<double>::quiet_NaN();  ///< its length less that at ride, m

    [[nodiscard]] double rearJoint() const { return angle[joints - 1]; }
};

/// The pose with the housing turned nose up by `angle` (rad) about the axle's center, as power winds up
/// bushings.
[[nodiscard]] AxlePose woundUp(AxlePose pose, double angle);

/// Reads the driveline off poses. Allocates nothing.
class DrivelineReader {
  public:
    /// `measuredHeight`: of the axle's center, m. The setup must have no refusal.
    DrivelineReader(const Driveline& driveline, const ShaftSetup& setup, double measuredHeight);

    /// Takes the pose at travel 0, coasting: plunge is measured from there.
    void setRide(const AxlePose& pose);

    [[nodiscard]] DrivelineFigures read(const AxlePose& pose) const { return read(pose, 0.0); }
    /// With the housing, pinion joint and all, turned in its brackets by `turn` (rad, nose up +) about the
    /// axle's center.
    [[nodiscard]] DrivelineFigures read(const AxlePose& pose, double turn) const;

    /// Inclination of the pinion's axis in the car frame's side view, rad, nose up +.
    [[nodiscard]] double pinionInclination(const AxlePose& pose, double turn) const;

    /// How far the housing has to be turned from where it is at `pose` so that its joint bends as much as the
    /// joints before it do together, rad. `sense` +1: pinion and the shaft that drives the last piece point
    /// the same way (parallel); -1: opposite ways off that piece (broken back). NaN where nothing within
    /// 45 deg does, or where the joint would add to the others (its yokes out of phase, or a front piece that
    /// bends more at its front end).
    [[nodiscard]] double cancelingTurn(const AxlePose& pose, double sense) const;

  private:
    using Shafts = std::array<Eigen::Vector3d, kMostJoints + 1>;
    // The shafts' directions from the engine to the pinion, forward; returns the last piece's length.
    double shafts(const AxlePose& pose, double turn, Shafts& along) const;
    [[nodiscard]] double pinionThatCancels(const AxlePose& pose, double turn, double sense) const;

    Eigen::Vector3d pinionJoint_;  // from the axle's center, measured pose
    double pinionAngle_;
    Eigen::Vector3d outputAxis_;
    Eigen::Vector3d outputJoint_;
    std::optional<Eigen::Vector3d> carrierJoint_;
    std::array<double, 2> yokeOffset_;
    double rideLength_ = std::numeric_limits<double>::quiet_NaN();
};

/// A figure's largest or least in travel, and where.
struct AtTravel {
    double value = std::numeric_limits<double>::quiet_NaN();
    double travel = std::numeric_limits<double>::quiet_NaN();  ///< m
};

/// The driveline over a whole travel; NaN where no pose can be reached.
struct DrivelineSweep {
    std::size_t joints = 0;
    std::array<AtTravel, kMostJoints> largest;  ///< working angle of each joint, rad
    AtTravel equivalent;                        ///< largest, rad
    AtTravel swing;                             ///< largest
    AtTravel leastPlunge;                       ///< m, shaft farthest in
    AtTravel mostPlunge;                        ///< m, farthest out
};
/// Over the usable stations of `trace`, each with the housing wound up by `windUp` (rad). Allocates nothing.
[[nodiscard]] DrivelineSweep sweepDriveline(const DrivelineReader& reader, const Trace& trace, double windUp);

/// One way to set the pinion.
struct PinionSetting {
    double turn = 0;    ///< how far the housing has to be turned from where it is, rad, nose up +
    double pinion = 0;  ///< pinion's inclination at ride then, coasting, against the ground, rad, nose up +
    double left = 0;    ///< equivalent angle left at the chosen attitude, rad: 0 if all lies in one plane
};
/// Both ways to make the angles cancel at an attitude; nothing where none does.
struct PinionSettings {
    std::optional<PinionSetting> parallel;    ///< the pinion points the way the engine side does: a Z
    std::optional<PinionSetting> brokenBack;  ///< both point up to the shaft or down from it, as a W does
    /// The one meant: the nearer to the pinion as it is.
    bool parallelIsMeant = true;
};
/// Which pinion angle makes the last joint bend as much as the joints before it leave over: with one piece,
/// as the front joint. `ride`: travel 0, usable. `attitude`: the pose it is to cancel at, wound up or not.
/// The housing is turned about the axle's center, its links' points staying, as shims or new brackets would
/// do it; adjusted links move them by a little more, which the next trace shows.
[[nodiscard]] PinionSettings pinionSettings(const DrivelineReader& reader, const Station& ride,
                                            const AxlePose& attitude);

/// Bounds of joint angles: Dana Spicer, J3311-1-DSSP (2008). P. 5: at least 1 deg each, ends equal within
/// 1 deg; pp. 16-17: 1/2 deg at least. 3 deg of equivalent angle at most: Elbe and Dana, industrial
/// catalogues.
inline constexpr double kLeastJointAngle = 0.5 * kRadiansPerDegree;
inline constexpr double kEqualEnds = 1.0 * kRadiansPerDegree;
inline constexpr double kMostEquivalent = 3.0 * kRadiansPerDegree;

/// The number a warning points at.
enum class DrivelinePart { pinionAngle, yokeOffset, jointLimit, speed, slip };

/// Something that can be computed but looks wrong.
struct DrivelineWarning {
    DrivelinePart part = DrivelinePart::pinionAngle;
    Finding finding;
};
/// `ride`: coasting at travel 0; `sweep`: coasting or wound up, whichever is asked about.
[[nodiscard]] std::vector<DrivelineWarning> findDrivelineWarnings(const Driveline& driveline,
                                                                  const ShaftSetup& setup,
                                                                  const DrivelineFigures& ride,
                                                                  const DrivelineSweep& sweep, Units units);

}  // namespace bolthole
