// Finds the axle's pose for imposed travel and roll, and its rates of change, by continuation.
//
// Unknowns: x, y, pitch, yaw. Imposed: height z, roll, and while assembling the share of the lengths' misfit
// that is still allowed. The constraints of geometry/kinematics/linkage.h are driven to zero by Newton's
// method; where they outnumber the unknowns, their unweighted sum of squares (m^2) is made stationary, second
// derivatives included, and the largest mismatch left is the bind.
//
// Method: predictor-corrector continuation (Allgower & Georg, "Introduction to Numerical Continuation
// Methods", SIAM 2003, ch. 2; from memory, no page). A step is taken only if the corrector converges with a
// first correction small against the step and the determinant keeps its sign; else it is halved. So the other
// assembly branch is never reached: the branches meet only where the determinant is zero.
#pragma once

#include <Eigen/Core>
#include <Eigen/LU>
#include <array>

#include "geometry/kinematics/linkage.h"

namespace bolthole {

/// A freedom of the axle that the links leave unheld.
enum class Freedom { none, foreAft, sideways, pitch, yaw };

/// Why the solver stopped.
enum class Stop {
    notRun,      ///< nothing was attempted yet
    reached,     ///< the imposed travel and roll were reached
    outOfReach,  ///< the links allow no assembly that far
    underHeld    ///< the links leave a freedom of the axle unheld
};

/// What came of a move. Starts pessimistic: usable only after a move that reached its goal.
struct MoveReport {
    Stop stop = Stop::notRun;
    double travel = 0;                ///< travel reached, m
    double roll = 0;                  ///< roll reached, rad
    int constraint = -1;              ///< the constraint at fault, index into Linkage::constraints, or -1
    Freedom freedom = Freedom::none;  ///< what is not held, if underHeld
    [[nodiscard]] bool usable() const { return stop == Stop::reached; }
};

/// Rates of the four unknowns per unit of an imposed motion (per m of travel or per rad of roll).
struct AxleRates {
    double x = 0;      ///< m/m or m/rad
    double y = 0;      ///< m/m or m/rad
    double pitch = 0;  ///< rad/m or rad/rad
    double yaw = 0;    ///< rad/m or rad/rad
};

/// Which motion will be imposed. In travel alone a mirror-symmetric car may do without a lateral locator, and
/// a mismatch past kLargestTravelBind counts as out of reach; in roll neither holds.
enum class Drive { travel, roll };

/// Mismatch of an over-held car in travel beyond which it counts as out of reach, m: more than bushings give.
/// A judgement, common practice, no source.
inline constexpr double kLargestTravelBind = 0.010;

/// A point on the solution path: pose, rates, mismatch. Allocates nothing, construction included.
class AxleSolver {
  public:
    /// Resolves the rows of `linkage`, which has at most kMaxLinks links (twice as many constraints). Solves
    /// nothing.
    AxleSolver(const Linkage& linkage, Drive drive);

    /// Brings the axle from its measured pose to travel 0 with the lengths built, on the branch that was
    /// measured. Fails with underHeld or outOfReach; then pose() is not an assembled pose.
    MoveReport assemble();

    /// Moves on from the present pose to `travel` (m, bump +) and `roll` (rad). Only after a usable
    /// assemble(). On failure the pose is the last one that can be assembled, and the report names the link
    /// that ran out.
    MoveReport moveTo(double travel, double roll = 0.0);

    /// Instead of assemble() and moveTo(): starts at the travel and roll where `near` stands, which solves
    /// the same links with their numbers a little off, as when a measurement is varied. Newton's method
    /// alone, no continuation: false, and nothing here usable, where it does not settle close by and on the
    /// same branch.
    [[nodiscard]] bool startNear(const AxleSolver& near);

    /// The present pose, car frame.
    [[nodiscard]] AxlePose pose() const;
    /// d(x, y, pitch, yaw)/d(travel) at the present pose, by one back-substitution.
    [[nodiscard]] const AxleRates& travelRates() const { return travelRates_; }
    /// d^2(x, y, pitch, yaw)/d(travel)^2 at the present pose: the equations that give the rates,
    /// differentiated once more along travel, so exact to rounding, where links bind as well. In 1/m and
    /// rad/m^2.
    [[nodiscard]] AxleRates travelCurvature() const;
    /// d(x, y, pitch, yaw)/d(roll) at the present pose, by one back-substitution.
    [[nodiscard]] AxleRates rollRates() const;
    /// Largest mismatch of any constraint, m; zero to rounding where the axle is exactly held.
    [[nodiscard]] double bind() const;
    /// What no link holds, where y and yaw are held at zero only because the car is mirror-symmetric; else
    /// none.
    [[nodiscard]] Freedom heldBySymmetry() const { return symmetryFreedom_; }

  private:
    // Order of the coordinates in all vectors below: four unknowns, then the two imposed.
    enum Coordinate { kX, kY, kPitch, kYaw, kZ, kRoll };
    static constexpr int kUnknowns = 4;
    static constexpr std::array kTurns{kYaw, kPitch, kRoll};  // outermost first
    static constexpr std::array kMoves{kX, kY, kZ};
    static constexpr int kMaxRows = 2 * 2 * static_cast<int>(kMaxLinks) + 2;
    using Coordinates = Eigen::Matrix<double, 6, 1>;
    using Unknowns = Eigen::Vector4d;
    using Rows = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, kMaxRows, 1>;
    using Jacobian = Eigen::Matrix<double, Eigen::Dynamic, 6, Eigen::RowMajor, kMaxRows, 6>;
    using Curvature = Eigen::Matrix<double, 6, 6>;
    // Where the axle stands and how it is turned; the third axis of its turns is the car frame's z.
    struct Frame {
        Eigen::Vector3d center = Eigen::Vector3d::Zero();
        AxleTurn turn;

        void place(const Coordinates& at);
    };

    // One scalar equation. axis -1: a rod; 0..2: the difference along that axis; symmetry rows: see
    // evaluate().
    struct Row {
        Eigen::Vector3d onAxle = Eigen::Vector3d::Zero();
        Eigen::Vector3d onChassis = Eigen::Vector3d::Zero();
        double length = 0;
        int axis = -1;
        int constraint = -1;
    };
    // What an evaluation finds of a row and its second derivatives need again, all in the car frame.
    struct AxleEnd {
        Eigen::Vector3d arm;        // from the axle's center to the end, m
        Eigen::Vector3d direction;  // along which it is held
        double length;              // of a rod, m; 0: no rod
    };
    struct Imposed {
        double z = 0;
        double roll = 0;
        double misfit =
            0;  // share of the mismatch at the measured pose still allowed: 1 as measured, 0 assembled
    };

    void addRows(const Constraint& constraint, int index);
    void resizeRows();
    [[nodiscard]] Freedom findFreedom();
    [[nodiscard]] Freedom holdBySymmetry(bool mirrorSymmetric);
    MoveReport follow(const Imposed& goal);
    bool tryStep(const Imposed& target);
    [[nodiscard]] Coordinates predict(const Imposed& target) const;
    bool correct(Coordinates& trial, double misfit, double allowedCorrection);
    void accept(const Coordinates& trial, const Imposed& target, const Unknowns& travelRate);
    void evaluate(const Coordinates& at, double misfit);
    [[nodiscard]] Curvature bindCurvature() const;
    static void addCarried(double stiffness, const std::array<Eigen::Vector3d, 3>& carried, Curvature& sum);
    // What the curvature of the mismatch is taken for: rates, which need every bit of it, or a first
    // correction, which comes close enough without little.
    enum class TakeCurvature { forRates, toConverge };
    bool factorize(TakeCurvature take = TakeCurvature::forRates);
    void setRow(int index, double mismatch, const Coordinates& slope);
    [[nodiscard]] Unknowns correction() const;
    [[nodiscard]] Unknowns rateAgainst(Coordinate imposed) const;
    [[nodiscard]] Unknowns rateAgainstMisfit() const;
    [[nodiscard]] Unknowns secondAlongTravel() const;
    [[nodiscard]] MoveReport report(Stop stop) const;
    [[nodiscard]] int constraintAtFault() const;

    std::array<Row, kMaxRows> rows_;
    std::array<AxleEnd, kMaxRows> ends_;  // over-held only: of the last evaluation
    int rowCount_ = 0;
    int linkRowCount_ = 0;  // without the symmetry rows
    Drive drive_;
    double measuredHeight_;
    bool mirrorSymmetric_;
    Freedom symmetryFreedom_ = Freedom::none;

    Coordinates at_ = Coordinates::Zero();
    Imposed imposed_;
    Rows misfit0_;
    Frame frame_;  // of the last evaluation
    Rows residual_;
    Jacobian jacobian_;
    // Over-held only: J^T J, plus the curvature of the mismatch once factorized; and J^T times the mismatch.
    Curvature gram_ = Curvature::Zero();
    Unknowns gradient_ = Unknowns::Zero();
    Eigen::PartialPivLU<Eigen::Matrix4d> factors_;
    bool determinantPositive_ = true;
    bool determinantKnown_ = false;

    AxleRates travelRates_;
    Unknowns travelRate_ = Unknowns::Zero();
    // The second derivative along travel, from the last two points: makes the predictor second order.
    Unknowns travelCurvature_ = Unknowns::Zero();
};

}  // namespace bolthole
