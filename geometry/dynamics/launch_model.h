// The equations of motion of a launch: one half-car in side view, both sides alike.
//
// Lagrange's equations of the sprung mass, the axle on its solved linkage and the front wheels, of the rear
// wheels' spin and the driveline's, velocity terms included (H. Goldstein, "Classical Mechanics", ch. 1; from
// memory). Written in the axes of the chassis: with e1 forward and e3 up in it, a point at (a, c) has the
// acceleration
//   (A1 + c pitch'' + a'' - a pitch'^2 + 2 c' pitch',  A3 - a pitch'' + c'' - c pitch'^2 - 2 a' pitch'),
// A the origin's. Anti-squat is nowhere entered: it is what thrust and ring-gear torque do through the axle's
// x' and pitch'.
//
// Everything that has kinks is followed piece by piece (`Kinks`), so that what is integrated between two
// events is smooth. What a piece stands for goes on beyond its ends: natural only where pieces are chosen
// anew.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "geometry/dynamics/kinked_line.h"
#include "geometry/dynamics/launch_inputs.h"
#include "geometry/dynamics/launch_state.h"
#include "geometry/dynamics/linkage_table.h"

namespace bolthole {

/// What the kinks are in, in the order of LaunchModel::arguments(). After them two for each line of the rear:
/// its length (m) and the speed at which it gets shorter (m/s).
enum LaunchKink : std::size_t {
    kClock,        ///< s: end of the release
    kRearTire,     ///< N, load of the rear tires before it is kept from pulling: lift
    kFrontTire,    ///< N, the same of the front
    kFrontStops,   ///< m of front travel
    kFrontShock,   ///< m/s of shaft
    kTorqueCurve,  ///< rad/s of engine
    kSpeedRatio,   ///< converter: turbine over engine speed. Clutch: see LaunchModel::Clutch
    kLinkageEnd,   ///< m of rear travel: the table's ends
    kFixedKinks    ///< how many there are
};

/// Everything about one moment, as observe() leaves it and derive() completes it. SI.
struct LaunchMoment {
    double sine = 0;  ///< of the pitch
    double cosine = 1;
    TableValue x{};     ///< axle's x by rear travel
    TableValue turn{};  ///< axle's pitch against the chassis by rear travel
    double axleUp = 0;  ///< m, axle's center above the ground
    double axleForwardRate = 0;
    double axleUpRate = 0;
    double frontUp = 0;
    double frontUpRate = 0;
    double distance = 0;         ///< m, the front wheels' center from where it stood
    double housingTurnRate = 0;  ///< rad/s, d(pitch + turn)/dt
    double turbineSpeed = 0;     ///< rad/s
    double creep = 0;            ///< m/s, tread over the ground: R omega - x'
    double slip = 0;
    // From derive():
    double rearLoad = 0;    ///< N, both tires
    double frontLoad = 0;   ///< N, both tires
    double thrust = 0;      ///< N
    double ringTorque = 0;  ///< N m, + on the wheels
    double pumpTorque = 0;  ///< N m, what engine gives to converter or clutch
    double engineTorque = 0;
    double outputTorque = 0;  ///< N m, turbine's or clutch's, before gear, losses and release
    double suspension = 0;    ///< N on rear travel: springs, stops, shocks
};

/// Five generalized forces or accelerations: along e1 and e3, on pitch, rear and front travel.
using LaunchForces = std::array<double, 5>;

/// Takes inputs, then moments; allocates only in prepare().
class LaunchModel {
  public:
    /// Of a clutch: slipping with the engine the faster or the slower one, or locked. A converter only slips.
    enum class Clutch { engineFaster, engineSlower, locked };

    /// Builds tables for inputs without refusal. Not usable: the car can't be assembled, nothing else may be
    /// called.
    MoveReport prepare(const LaunchInputs& inputs);
    /// At rest, the engine at its launch speed; every kink's piece chosen for it.
    [[nodiscard]] LaunchState atRest() const;

    /// Reads geometry, speeds and the arguments of all kinks.
    void observe(double time, const LaunchState& state);
    /// Rates of the state last observed, on the pieces in use.
    void derive(LaunchState& rates);
    /// Chooses every piece by the arguments last observed; the clutch stays as it is.
    void choosePieces();

    [[nodiscard]] const LaunchMoment& moment() const { return now_; }
    /// Of the kinks: where each stands, in LaunchKink's order. The one of a locked clutch is right only after
    /// derive().
    [[nodiscard]] const std::vector<double>& arguments() const { return arguments_; }
    [[nodiscard]] const std::vector<KinkedLine::Piece>& pieces() const { return pieces_; }
    [[nodiscard]] std::size_t pieceIndex(std::size_t kink) const { return indices_[kink]; }
    /// Takes the next piece of a kink, upward (+1) or downward (-1). At the table's end the table is made
    /// longer first; false where it can't be. A clutch locks, opens or slips the other way, by the moment
    /// last derived.
    bool cross(std::size_t kink, int direction);
    [[nodiscard]] Clutch clutch() const { return clutch_; }
    [[nodiscard]] const LinkageTable& table() const { return table_; }
    [[nodiscard]] const LaunchInputs& inputs() const { return inputs_; }
    [[nodiscard]] bool hasConverter() const { return inputs_.coupling.kind == CouplingKind::converter; }

    /// What thrust and ring-gear torque alone are on the five coordinates at the moment last observed: the
    /// torque as if the wheels were held, -T d(pitch + turn).
    [[nodiscard]] LaunchForces drivingForces(double thrust, double torque) const;

    /// A part of the rear that stands for `count` alike.
    struct Line {
        std::size_t part = 0;  ///< index into LaunchInputs::parts
        double count = 1;
    };
    [[nodiscard]] const std::vector<Line>& lines() const { return lines_; }
    /// Of the moment last observed.
    [[nodiscard]] const TableValue& lineLength(std::size_t line) const { return values_[2 + line]; }
    /// N, + pushes the mounts apart, one part: what springs and stops do, and what the shock does.
    [[nodiscard]] double lineForce(std::size_t line) const;
    [[nodiscard]] double lineDamping(std::size_t line) const;
    /// N on front travel, both wheels: springs and stops, and shocks (one shaft's force, N).
    [[nodiscard]] double frontForce() const { return on(kFrontStops); }
    [[nodiscard]] double frontShaftForce() const { return on(kFrontShock); }
    /// N or N m that hold the rest pose: on pitch, rear and front travel. And the sprung mass, kg, and its
    /// center in the car frame, m.
    struct Rest {
        double onPitch = 0;
        double onRear = 0;
        double onFront = 0;
        double sprungMass = 0;
        double sprungX = 0;
        double sprungZ = 0;
    };
    [[nodiscard]] const Rest& rest() const { return rest_; }

  private:
    void placeBodies();
    void addLines();
    void addKinks();
    void addEngine();
    void addConverter();
    void balanceRest();
    void use(std::size_t kink, std::size_t piece);
    [[nodiscard]] double on(std::size_t kink) const { return pieces_[kink].at(arguments_[kink]); }
    [[nodiscard]] double clutchCapacity() const;
    void setClutch(Clutch clutch);
    void deriveTires();
    void deriveDrive();
    void slipDrive();
    void lockDrive(const LaunchState& rates);
    void deriveSuspension();
    [[nodiscard]] LaunchForces bodyForces() const;
    void solve(LaunchState& rates);

    LaunchInputs inputs_;
    LinkageTable table_;
    std::vector<TableLine> tableLines_;
    std::vector<Line> lines_;
    Rest rest_;
    double ratio_ = 1;     // engine turns for one of the wheels
    double peakRise_ = 0;  // B and C of the tire's curve
    double peakShape_ = 0;
    double stallFactor_ = 0;  // converter: pump torque over engine speed squared, at stall

    std::vector<KinkedLine> kinks_;
    std::vector<std::size_t> indices_;
    std::vector<KinkedLine::Piece> pieces_;
    std::vector<double> arguments_;
    KinkedLine limiter_;     // by the pieces of kTorqueCurve
    KinkedLine multiplier_;  // torque ratio by the pieces of kSpeedRatio
    Clutch clutch_ = Clutch::engineFaster;

    std::vector<TableValue> values_;
    LaunchState state_{};
    LaunchMoment now_;
    double drivelineInertia_ = 0;  // at the wheels, with the engine's where it is locked
    double lockedTorque_ = 0;      // ring gear's where locked, before the engine's inertia
    bool lockedDriving_ = true;    // which way the losses go
};

}  // namespace bolthole
