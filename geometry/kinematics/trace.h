// The trace: every figure of the axle through its travel, one row a step.
#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/linkage.h"

namespace bolthole {

/// The figures of one pose. SI: m, rad, and percent for anti-squat. NaN: the figure does not exist there.
/// All but axleX are against the ground line under both tires, from the rear contact patch, x along the
/// ground.
enum class Figure : std::size_t {
    travel,              ///< axle center above its measured height, bump +
    frontTravel,         ///< front axle's travel
    ground,              ///< ground angle in the car frame, + when it rises toward the front
    axleX,               ///< axle center fore and aft, car frame
    icX,                 ///< instant center ahead of the rear contact patch
    icZ,                 ///< instant center above the ground
    swingArmAngle,       ///< side-view swing arm, rear contact patch to instant center
    antiSquat,           ///< percent; 100: the swing arm meets the CG height above the front patch
    pinion,              ///< inclination of the pinion's axis, nose up +
    driveshaft,          ///< inclination of the driveshaft, rising forward +
    pinionToDriveshaft,  ///< pinion minus driveshaft
    frontJoint,          ///< 3-D angle between output axis and driveshaft
    rearJoint,           ///< 3-D angle between pinion axis and driveshaft
    plunge,              ///< driveshaft length minus its length at ride, + pulls the slip yoke out
    count
};
inline constexpr std::size_t kFigureCount = static_cast<std::size_t>(Figure::count);

/// Column name (without unit suffix) and quantity of each figure, in the order of the sweep's columns. The
/// one table behind CSV headers, curves and readouts. Angle columns already carry `_deg` and anti-squat
/// `_pct`.
struct FigureInfo {
    Figure figure;
    std::string_view column;
    Quantity quantity;
};
[[nodiscard]] const std::array<FigureInfo, kFigureCount>& figureTable();

using FigureRow = std::array<double, kFigureCount>;

/// A row whose every figure is NaN.
[[nodiscard]] constexpr FigureRow emptyRow() {
    FigureRow row{};
    row.fill(std::numeric_limits<double>::quiet_NaN());
    return row;
}

/// The ground line under both tires at one pose, with what stands on it. Car frame, side view (x, z), m.
struct GroundLine {
    double patchX = 0;  ///< rear contact patch
    double patchZ = 0;
    double alongX = 1;  ///< unit vector along the ground, toward the front
    double alongZ = 0;
    double wheelbase = 0;     ///< distance of the contact patches along the ground
    double frontCenterX = 0;  ///< front axle's center
    double frontCenterZ = 0;

    /// How far a point stands ahead of the rear contact patch, along the ground.
    [[nodiscard]] double ahead(double x, double z) const {
        return (x - patchX) * alongX + (z - patchZ) * alongZ;
    }
    /// How far a point stands above the ground line.
    [[nodiscard]] double above(double x, double z) const {
        return (z - patchZ) * alongX - (x - patchX) * alongZ;
    }
};

/// One solved pose with all its figures.
struct Station {
    bool usable = false;  ///< false: the links do not reach here; all figures but the two travels are NaN
    AxlePose pose;
    GroundLine ground;
    FigureRow figures = emptyRow();
    double icCarX = std::numeric_limits<double>::quiet_NaN();  ///< instant center in the car frame, m
    double icCarZ = std::numeric_limits<double>::quiet_NaN();

    [[nodiscard]] double operator[](Figure figure) const { return figures[static_cast<std::size_t>(figure)]; }
};

/// Everything computed for one car: ride, and the travel from full droop to full bump.
struct Trace {
    MoveReport assembly;  ///< whether the car can be assembled at ride; the rest is usable only then
    /// What no link holds, where y and yaw are held only because the car is mirror-symmetric; else none.
    Freedom heldBySymmetry = Freedom::none;
    Station ride;                   ///< travel 0 with the holes and lengths now in use
    std::vector<Station> stations;  ///< car.travel.steps rows, full droop first
    MoveReport droopEnd;            ///< how the move toward full droop ended
    MoveReport bumpEnd;             ///< how the move toward full bump ended
    double largestBind = 0;         ///< over all usable stations, m
};

/// Reads the figures of solved poses against one car. Holds the car's numbers; allocates nothing.
class FigureReader {
  public:
    explicit FigureReader(const Car& car);

    /// Takes the pose at travel 0: plunge is measured from the driveshaft's length there.
    void setRide(const AxlePose& pose);
    /// All figures at the solver's present pose, which was moved to `travel` (m). The equations stand in
    /// trace.cpp.
    void read(const AxleSolver& solver, double travel, Station& station) const;

  private:
    void readGround(Station& station) const;
    void readSwingArm(const AxleRates& rates, Station& station) const;
    void readInstantCenter(const AxleRates& rates, Station& station) const;
    void readDriveline(Station& station) const;
    // From the pinion joint to the output joint, car frame.
    [[nodiscard]] Eigen::Vector3d shaft(const AxlePose& pose, const Eigen::Matrix3d& rotation) const;

    double wheelbase_;
    double rearRadius_;
    double frontRadius_;
    double frontRatio_;
    double cgX_ = 0;
    double cgHeight_ = 0;
    bool hasDriveline_;
    Eigen::Vector3d pinionJoint_ = Eigen::Vector3d::Zero();  // from the axle's center, measured pose
    Eigen::Vector3d pinionAxis_ = Eigen::Vector3d::Zero();   // unit, measured pose
    Eigen::Vector3d outputJoint_ = Eigen::Vector3d::Zero();  // car frame
    Eigen::Vector3d outputAxis_ = Eigen::Vector3d::Zero();   // unit, car frame
    double rideShaftLength_ = std::numeric_limits<double>::quiet_NaN();
};

/// Travel of row `index` of `range`, m: evenly spaced, both ends included, exactly 0 where 0 is a row.
[[nodiscard]] double travelOfRow(const TravelRange& range, int index);

/// Solves the whole travel. The car must have passed findFaults(). Reuses the storage of `trace`: no
/// allocation after the first call with as many steps.
void computeTrace(const Car& car, Trace& trace);
/// The same where the linkage is already built, as buildLinkage() builds it.
void computeTrace(const Car& car, const Linkage& linkage, Trace& trace);
[[nodiscard]] Trace computeTrace(const Car& car);

/// Solves one pose at `travel` (m), anywhere in the range or out of it. Not usable where the links do not
/// reach. The car must have passed findFaults().
[[nodiscard]] Station solveStation(const Car& car, double travel);

/// One sentence: why the move stopped, at which travel, and which link or freedom is at fault; empty if it
/// reached. Lengths in `units`.
[[nodiscard]] std::string describe(const MoveReport& report, const Car& car, Units units);

/// The words for a freedom nothing holds: "nothing holds the axle laterally".
[[nodiscard]] std::string describe(Freedom freedom);

/// Turning less than this per meter of travel, rad/m, the axle is taken to have its instant center at
/// infinity.
inline constexpr double kSlowestSwing = 1e-6;

}  // namespace bolthole
