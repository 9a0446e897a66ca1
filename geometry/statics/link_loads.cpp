#include "geometry/statics/link_loads.h"

#include <Eigen/Geometry>
#include <Eigen/QR>
#include <Eigen/SVD>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include "geometry/statics/launch.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kSingular = 1e-10;    // of the largest: below, a direction nothing holds
constexpr double kDeterminate = 1e-9;  // share of an unknown that others could take over
constexpr double kRounding = 1e-6;     // of the loads, left over by a balance

constexpr Eigen::Index kEquations = 6;
constexpr int kMostUnknowns = 2 * 2 * static_cast<int>(kMaxLinks) + 2;

using Wrench = Eigen::Matrix<double, 6, 1>;  // force, N, then moment about the axle's center, N m
// A row an unknown: its wrench on the axle for one newton.
using Rows = Eigen::Matrix<double, Eigen::Dynamic, kEquations, Eigen::ColMajor, kMostUnknowns, kEquations>;
using Unknowns = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, kMostUnknowns, 1>;

Wrench wrench(const Eigen::Vector3d& force, const Eigen::Vector3d& arm) {
    Wrench both;
    both << force, arm.cross(force);
    return both;
}

Wrench couple(const Eigen::Vector3d& moment) {
    Wrench both;
    both << Eigen::Vector3d::Zero(), moment;
    return both;
}

// Which axes a constraint that is no rod holds.
std::array<bool, 3> heldAxes(LinkKind kind) {
    return {kind == LinkKind::pivot, kind == LinkKind::guide,
            kind == LinkKind::pivot || kind == LinkKind::slider};
}

int rowsOf(LinkKind kind) {
    return kind == LinkKind::pivot ? 2 : 1;
}

bool standsOn(const PartLine& line, Side side) {
    return line.side == side || line.side == Side::center;
}

}  // namespace

/// The balance of one pose: unit forces of the unknowns and what they have to hold.
struct LinkLoadSolver::Balance {
    const LinkLoadSolver& solver;
    Eigen::Vector3d center;
    Eigen::Matrix3d rotation;
    Rows rows;
    Wrench applied = Wrench::Zero();
    Unknowns forces;
    Unknowns
        determinate;  // 1 where statics alone determines the unknown, below where others could take its load

    Balance(const LinkLoadSolver& of, const AxlePose& pose)
        : solver(of), center(pose.x, pose.y, pose.z), rotation(pose.rotation()) {
        rows.setZero(std::max(of.unknowns_, kEquations), kEquations);  // too few are filled up with none
    }

    void addConstraints();
    void addParts(const AxlePose& pose);
    void apply(const GroundLine& ground, const AxleLoads& loads);
    double solve(double lever);
    void report(LinkLoads& loads) const;
    [[nodiscard]] Eigen::Vector3d rodUnit(const Constraint& rod) const {
        return (rod.onChassis - center - rotation * rod.onAxle).normalized();
    }
};

LinkLoadSolver::LinkLoadSolver(const Linkage& linkage, std::span<const SuspensionPart> parts,
                               std::span<const PartLine> lines)
    : linkage_(linkage), parts_(parts), lines_(lines) {
    assert(linkage.constraints.size() <= 2 * kMaxLinks);
    for (const Constraint& constraint : linkage.constraints) {
        unknowns_ += rowsOf(constraint.kind);
    }
    for (const PartLine& line : lines) {
        weights_[0] += weight(line, Side::left);
        weights_[1] += weight(line, Side::right);
    }
}

double LinkLoadSolver::weight(const PartLine& line, Side side) const {
    const SuspensionPart& part = parts_[static_cast<std::size_t>(line.part)];
    if (!part.carries() || !standsOn(line, side)) {
        return 0;
    }
    return part.rate.value_or(1.0) / (line.side == Side::center ? 2 : 1);
}

// A rod in tension pulls the axle toward its chassis end; everything else pushes it along an axis.
void LinkLoadSolver::Balance::addConstraints() {
    Eigen::Index row = 0;
    for (const Constraint& constraint : solver.linkage_.constraints) {
        const Eigen::Vector3d arm = rotation * constraint.onAxle;
        if (constraint.kind == LinkKind::rod) {
            rows.row(row++) = wrench(rodUnit(constraint), arm);
            continue;
        }
        const std::array<bool, 3> held = heldAxes(constraint.kind);
        for (std::size_t axis = 0; axis < held.size(); ++axis) {
            if (held[axis]) {
                rows.row(row++) = wrench(Eigen::Vector3d::Unit(static_cast<Eigen::Index>(axis)), arm);
            }
        }
    }
}

void LinkLoadSolver::Balance::addParts(const AxlePose& pose) {
    const Eigen::Index left = solver.unknowns_ - 2;
    for (const PartLine& line : solver.lines_) {
        const SuspensionPart& part = solver.parts_[static_cast<std::size_t>(line.part)];
        const LineState state = lineState(line, pose, rotation);
        const Wrench push = wrench(state.unit, state.arm);
        if (!part.carries()) {
            applied += part.force(state.length) * push;
            continue;
        }
        for (const auto& [row, side] : {std::pair(left, Side::left), std::pair(left + 1, Side::right)}) {
            const double whole = solver.weights_[static_cast<std::size_t>(row - left)];
            rows.row(row) += solver.weight(line, side) / whole * push.transpose();
        }
    }
}

void LinkLoadSolver::Balance::apply(const GroundLine& ground, const AxleLoads& loads) {
    const Eigen::Vector3d up(-ground.alongZ, 0, ground.alongX);
    const Eigen::Vector3d lateral = rotation.col(1);
    const Eigen::Vector3d heading = lateral.cross(up).normalized();
    const Eigen::Vector3d middle(ground.patchX - center.x(), 0, ground.patchZ - center.z());
    const Eigen::Vector3d push = loads.thrust / 2 * heading;
    applied += wrench(push + loads.leftTire * up, middle + loads.track / 2 * lateral);
    applied += wrench(push + loads.rightTire * up, middle - loads.track / 2 * lateral);
    applied += wrench(-loads.unsprungMass * (loads.gravity * up + loads.acceleration * heading),
                      rotation * loads.unsprungAt);
    const Eigen::Vector3d pinion(std::cos(loads.pinionAngle), 0, std::sin(loads.pinionAngle));
    applied += couple(-loads.shaftTorque * (rotation * pinion));
}

namespace {

using Square = Eigen::Matrix<double, kEquations, kEquations>;
using Factors = Eigen::ColPivHouseholderQR<Rows>;
// Of the unknowns: what they carry, then the independent mixtures of them that are held, each of length 1.
using Mixtures =
    Eigen::Matrix<double, Eigen::Dynamic, 1 + kEquations, Eigen::ColMajor, kMostUnknowns, 1 + kEquations>;

// The mixtures as `factors` mixes the unknowns, six at most: with rows P = Q R these solve R' m = -P'
// applied (G. H. Golub, C. F. Van Loan, "Matrix Computations", least squares of deficient rank; from memory).
void mix(const Factors& factors, const Wrench& applied, Mixtures& mixtures) {
    const Square upper = factors.matrixQR().topRows<kEquations>().triangularView<Eigen::Upper>();
    const Wrench sorted = factors.colsPermutation().transpose() * applied;
    auto carried = mixtures.col(0).head<kEquations>();
    auto held = mixtures.topRightCorner<kEquations, kEquations>();
    if (factors.rank() == kEquations) {
        carried = -upper.transpose().triangularView<Eigen::Lower>().solve(sorted);
        held.setIdentity();
        return;
    }
    const Eigen::JacobiSVD<Square, Eigen::NoQRPreconditioner> modes(
        upper, Eigen::ComputeFullU | Eigen::ComputeFullV);
    const Wrench& values = modes.singularValues();
    for (Eigen::Index mode = 0; mode < kEquations && values[mode] > kSingular * values[0]; ++mode) {
        held.col(mode) = modes.matrixU().col(mode);
        carried -= held.col(mode) * (modes.matrixV().col(mode).dot(sorted) / values[mode]);
    }
}

// The first `count` of them back to the unknowns: Q, one reflection after the other, as Eigen's product by
// blocks takes seconds to compile.
void unmix(const Factors& factors, Eigen::Index count, Mixtures& mixtures) {
    std::array<double, 1 + kEquations> space{};
    const Rows& reflections = factors.matrixQR();
    for (Eigen::Index at = kEquations - 1; at >= 0; --at) {
        const Eigen::Index below = reflections.rows() - at;
        mixtures.bottomLeftCorner(below, count)
            .applyHouseholderOnTheLeft(reflections.col(at).tail(below - 1), factors.hCoeffs()[at],
                                       space.data());
    }
}

}  // namespace

// `lever` (m) makes forces of the moments; it changes no solution that balances. Returns what is left over,
// N. Where several do, the forces are those of least norm.
double LinkLoadSolver::Balance::solve(double lever) {
    rows.rightCols<3>() /= lever;
    applied.tail<3>() /= lever;
    Factors factors(rows.rows(), kEquations);
    factors.setThreshold(kSingular);
    factors.compute(rows);
    Mixtures mixtures = Mixtures::Zero(rows.rows(), 1 + kEquations);
    mix(factors, applied, mixtures);
    const bool isSquare = factors.rank() == rows.rows();  // then statics determines all there is
    unmix(factors, isSquare ? 1 : mixtures.cols(), mixtures);
    forces = mixtures.col(0);
    determinate.setOnes(rows.rows());
    if (!isSquare) {
        determinate = mixtures.rightCols<kEquations>().rowwise().squaredNorm();
    }
    return (rows.transpose() * forces + applied).norm();
}

void LinkLoadSolver::Balance::report(LinkLoads& loads) const {
    const auto isDeterminate = [this](Eigen::Index unknown) {
        return determinate[unknown] > 1 - kDeterminate;
    };
    loads.count = 0;
    Eigen::Index row = 0;
    for (const Constraint& constraint : solver.linkage_.constraints) {
        JointLoad& joint = loads.joints[loads.count++];
        joint = {.link = constraint.link, .side = constraint.side};
        if (constraint.kind == LinkKind::rod) {
            joint.determinate = isDeterminate(row);
            joint.axial = forces[row++];
            joint.force = joint.axial * rodUnit(constraint);
            continue;
        }
        const std::array<bool, 3> held = heldAxes(constraint.kind);
        for (std::size_t axis = 0; axis < held.size(); ++axis) {
            if (held[axis]) {
                joint.determinate = joint.determinate && isDeterminate(row);
                joint.force[static_cast<Eigen::Index>(axis)] = forces[row++];
            }
        }
    }
    loads.leftSprings = forces[row];
    loads.rightSprings = forces[row + 1];
    loads.springsDeterminate = isDeterminate(row) && isDeterminate(row + 1);
}

void LinkLoadSolver::solve(const AxlePose& pose, const GroundLine& ground, const AxleLoads& applied,
                           LinkLoads& loads) const {
    Balance balance(*this, pose);
    balance.addConstraints();
    balance.addParts(pose);
    balance.apply(ground, applied);
    loads.unbalanced = balance.solve(linkage_.measuredHeight);
    balance.report(loads);
}

SuspensionPart uprightSprings(double apart, double axleHeight) {
    constexpr double kTall = 0.3;  // m; any
    SuspensionPart springs;
    springs.axle.holes = {{-1, "", {0, apart / 2, axleHeight}}};
    springs.chassis.holes = {{-1, "", {0, apart / 2, axleHeight + kTall}}};
    return springs;
}

Thrust thrustOf(const DriveTorque& drive, double tireRadius, double mostGrip) {
    const double torque = drive.engine * drive.converter * drive.gear * drive.axle * drive.efficiency;
    const double byEngine = torque / tireRadius;
    return {.force = std::min(byEngine, mostGrip), .byGrip = byEngine > mostGrip};
}

std::string refusal(const LoadCase& load, const Car& car) {
    if (!std::isfinite(load.thrust) || !std::isfinite(load.leftShift) || !std::isfinite(load.acceleration)) {
        return say("expected a number for thrust, shift of the tires' loads and acceleration");
    }
    if (!(load.axleRatio > 0) || !(load.track > 0)) {
        return say("expected an axle ratio and a rear track above 0");
    }
    const double rear = car.cornerWeights.leftRear + car.cornerWeights.rightRear;
    if (!(load.unsprungMass >= 0 && load.unsprungMass < rear)) {
        return say("expected an unsprung mass of at least 0 and below what the rear tires carry");
    }
    return {};
}

AxleLoads axleLoads(const Car& car, const GroundLine& ground, const LoadCase& load) {
    const StandingCar standing = standingCar(car, ground);
    const double rear = standing.rear() + std::min(standing.transfer(load.thrust), standing.front());
    AxleLoads applied;
    applied.thrust = load.thrust;
    applied.leftTire = rear / 2 + load.leftShift;
    applied.rightTire = rear / 2 - load.leftShift;
    applied.track = load.track;
    applied.shaftTorque = driveshaftTorque(load.thrust, car.rearTireRadius, load.axleRatio);
    applied.pinionAngle = car.driveline ? car.driveline->pinionAngle : 0;
    applied.unsprungMass = load.unsprungMass;
    applied.acceleration = load.acceleration;
    return applied;
}

namespace {

void takeWorst(WorstLoad& worst, const JointLoad& joint, double travel) {
    const double value = joint.value();
    worst.determinate = worst.determinate && joint.determinate;
    if (value > worst.tension) {
        worst.tension = value;
        worst.tensionAt = travel;
    }
    if (-value > worst.compression) {
        worst.compression = -value;
        worst.compressionAt = travel;
    }
}

}  // namespace

void sweepLinkLoads(const Car& car, const Linkage& linkage, const Trace& trace,
                    std::span<const SuspensionPart> parts, const LoadCase& load, LinkLoadSweep& sweep) {
    constexpr double kAbsent = std::numeric_limits<double>::quiet_NaN();
    buildPartLines(parts, linkage.measuredHeight, sweep.lines);
    const LinkLoadSolver solver(linkage, parts, sweep.lines);
    sweep.joints = linkage.constraints.size();
    sweep.values.assign(trace.stations.size() * sweep.joints, kAbsent);
    sweep.springs.assign(trace.stations.size(), {kAbsent, kAbsent});
    sweep.worst.assign(sweep.joints, WorstLoad{});
    sweep.unbalanced = false;
    sweep.springsPull = false;
    LinkLoads loads;
    for (std::size_t index = 0; index < trace.stations.size(); ++index) {
        const Station& station = trace.stations[index];
        if (!station.usable) {
            continue;
        }
        const AxleLoads applied = axleLoads(car, station.ground, load);
        solver.solve(station.pose, station.ground, applied, loads);
        for (std::size_t joint = 0; joint < sweep.joints; ++joint) {
            sweep.values[index * sweep.joints + joint] = loads.joints[joint].value();
            takeWorst(sweep.worst[joint], loads.joints[joint], station[Figure::travel]);
        }
        sweep.springs[index] = {loads.leftSprings, loads.rightSprings};
        sweep.springsPull = sweep.springsPull || std::min(loads.leftSprings, loads.rightSprings) < 0;
        sweep.unbalanced = sweep.unbalanced || isUnbalanced(loads, applied);
    }
}

bool isUnbalanced(const LinkLoads& loads, const AxleLoads& applied) {
    const double size = std::abs(applied.thrust) + std::abs(applied.leftTire) + std::abs(applied.rightTire);
    return !(loads.unbalanced <= kRounding * size);
}

double ratingUse(double load, double rating, double factor) {
    return std::abs(load) * factor / rating;
}

}  // namespace bolthole
