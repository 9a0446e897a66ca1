// The axle in roll: roll center, roll axis, roll steer, sideways shift, and how the links bind.
#pragma once

#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/linkage.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {

/// The axle's figures at one imposed travel and roll. SI; NaN where not usable. The chassis stands still:
/// positive roll lifts the axle's left end, which is the body rolling to its left.
struct RollFigures {
    double travel = 0;  ///< as imposed, m
    double roll = 0;    ///< as imposed, rad
    bool usable = false;
    AxlePose pose;
    double bind = std::numeric_limits<double>::quiet_NaN();  ///< largest mismatch of any link, m
    /// Roll center above the ground by the rates at this pose: tire radius + dy/droll, m. At a travel other
    /// than ride take `squareCenter`.
    double center = std::numeric_limits<double>::quiet_NaN();
    /// Roll center above this pose's ground line, measured square to it: the point straight above the axle in
    /// the plane square to the ground that does not move sideways as the axle rolls, m. At ride it differs
    /// from `center` only by the cosine of the housing's pitch.
    double squareCenter = std::numeric_limits<double>::quiet_NaN();
    /// dyaw/droll with the yaw of ISO 8855, rad/rad: + is roll oversteer, the body rolls left and the rear
    /// axle steers left.
    double steer = std::numeric_limits<double>::quiet_NaN();
    /// How far the axle's centerline turns in plan for each unit of roll, rad/rad. As `steer` where the
    /// housing stands at the pitch it was measured at; a housing pitched by p brings sin p into `steer`
    /// alone.
    double heading = std::numeric_limits<double>::quiet_NaN();
    /// Inclination of the roll axis against the ground line, rad, rising toward the front +. Of a pose
    /// without roll: the line through the roll center whose points do not move sideways as the axle rolls.
    double axisAngle = std::numeric_limits<double>::quiet_NaN();
};

/// Where the axle points in plan, rad: how far its centerline is turned out of square, left +. Unlike the yaw
/// of ISO 8855 it does not depend on the pitch the housing was measured at.
[[nodiscard]] double headingOf(const AxlePose& pose);

/// Reads the figures of solved poses against one car. Holds the car's numbers; allocates nothing. The
/// equations stand in roll.cpp.
class RollReader {
  public:
    explicit RollReader(const Car& car) : ground_(car), tireRadius_(car.rearTireRadius) {}

    /// All figures at the solver's present pose, which was moved to `travel` (m) and `roll` (rad).
    [[nodiscard]] RollFigures read(const AxleSolver& solver, double travel, double roll) const;

  private:
    FigureReader ground_;
    double tireRadius_;
};

/// A range of roll at ride, the same to either side.
struct RollRange {
    double most = 3.0 * kRadiansPerDegree;  ///< rad, > 0
    int rows = 13;                          ///< odd, so that 0 is a row; at least 3

    /// Roll of row `index`, rad: evenly spaced, body rolled right first, exactly 0 in the middle.
    [[nodiscard]] double rollOfRow(int index) const {
        return most * ((2.0 * index - (rows - 1)) / (rows - 1));
    }
};

/// Everything about one car in roll.
struct RollTrace {
    MoveReport assembly;              ///< whether the car can be assembled at ride and is held in roll
    RollFigures ride;                 ///< travel 0, no roll
    std::vector<RollFigures> rows;    ///< at ride, a row a roll of the range
    MoveReport rightEnd;              ///< how the move toward the most negative roll ended
    MoveReport leftEnd;               ///< and toward the most positive
    std::vector<RollFigures> travel;  ///< no roll, a row a step of the car's travel, full droop first
};

/// Solves the whole range of roll at ride, and the travel without roll. A row the links do not reach is not
/// usable, in travel also one they bind at by more than kLargestTravelBind. In roll nothing is held by
/// symmetry: where nothing holds the axle sideways `assembly` says so and no row is usable. The car must have
/// passed findFaults(). Reuses the storage of `trace`: no allocation a pose after the first call with as many
/// rows.
void computeRollTrace(const Car& car, const RollRange& range, RollTrace& trace);
[[nodiscard]] RollTrace computeRollTrace(const Car& car, const RollRange& range = {});

/// Solves one pose. Not usable where the links do not reach. The car must have passed findFaults().
[[nodiscard]] RollFigures solveRoll(const Car& car, double travel, double roll);

/// Steer below which an axle is said to keep its heading, rad/rad. A judgement, common practice, no source.
inline constexpr double kNeutralSteer = 0.0005;

/// The word for the sense of a roll steer: "roll oversteer", "roll understeer", "no roll steer"; empty for
/// NaN.
[[nodiscard]] std::string steerWord(double steer);

/// One link of a car that does not fit at a pose.
struct LinkMismatch {
    int constraint = 0;   ///< index into Linkage::constraints
    double mismatch = 0;  ///< m; of a rod + where it would have to be longer than built
};

/// A mismatch below is rounding: the links fit, m.
inline constexpr double kFits = 1e-8;

/// The links that fight at `pose`: those whose mismatch is more than half the largest, largest first. Empty
/// where all fit.
[[nodiscard]] std::vector<LinkMismatch> fightingLinks(const Linkage& linkage, const AxlePose& pose);

/// "lower (left)", "track bar": the link of a constraint, with its side unless it stands in the middle.
[[nodiscard]] std::string constraintWords(const Constraint& constraint, const Car& car);

/// One sentence: why the move ended, at which roll and at which link; empty where it reached.
[[nodiscard]] std::string describeRollEnd(const MoveReport& report, const Car& car);

}  // namespace bolthole
