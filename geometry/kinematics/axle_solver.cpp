#include "geometry/kinematics/axle_solver.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cassert>
#include <cmath>

#include "geometry/algebra/symmetric_modes.h"
#include "geometry/units/upper_vectors.h"

namespace bolthole {

namespace {

constexpr double kConverged = 1e-11;     // m and rad, last Newton correction
constexpr double kRoundingFloor = 1e-8;  // a correction this small that no longer shrinks is rounding
constexpr double kLargestStep = 5e-3;    // m, or 5 mrad of roll
constexpr double kSmallestStep = 1e-9;   // m or rad: how closely the end of the travel is found
// m/m or rad/m. Rates grow without bound toward the end of the travel; a pose steeper than this would be too
// near the end to move back from, and is not taken.
constexpr double kSteepest = 300;
constexpr double kCorrectionShare =
    0.1;  // of the step; a larger first correction means the step was too long
constexpr double kNearby =
    0.05;  // m or rad: the farthest a varied measurement moves the axle in one correction
constexpr double kUnheldRatio = 1e-12;  // squared ratio of singular values below which a freedom is unheld
// m; a mismatch below leaves the second derivatives out: of rates, and of a first correction, which is then
// off by that share of itself.
constexpr double kWorthCurvature = 1e-12;
constexpr double kWorthConverging = 1e-7;
constexpr int kMostIterations = 12;

}  // namespace

void AxleSolver::Frame::place(const Coordinates& at) {
    center = {at[kX], at[kY], at[kZ]};
    turn.turnTo(at[kRoll], at[kPitch], at[kYaw]);
}

AxleSolver::AxleSolver(const Linkage& linkage, Drive drive)
    : drive_(drive),
      measuredHeight_(linkage.measuredHeight),
      mirrorSymmetric_(drive == Drive::travel && linkage.isMirrorSymmetric()) {
    clearUpperVectors();
    assert(linkage.constraints.size() <= 2 * kMaxLinks);
    for (std::size_t index = 0; index < linkage.constraints.size(); ++index) {
        addRows(linkage.constraints[index], static_cast<int>(index));
    }
    linkRowCount_ = rowCount_;
    resizeRows();
}

void AxleSolver::addRows(const Constraint& constraint, int index) {
    const auto add = [&](int axis) {
        rows_[static_cast<std::size_t>(rowCount_++)] = {constraint.onAxle, constraint.onChassis,
                                                        constraint.length, axis, index};
    };
    switch (constraint.kind) {
        case LinkKind::rod:
            add(-1);
            break;
        case LinkKind::pivot:
            add(0);
            add(2);
            break;
        case LinkKind::slider:
            add(2);
            break;
        case LinkKind::guide:
            add(1);
            break;
    }
}

void AxleSolver::resizeRows() {
    residual_.setZero(rowCount_);
    misfit0_.setZero(rowCount_);
    jacobian_.setZero(rowCount_, 6);
}

void AxleSolver::evaluate(const Coordinates& at, double misfit) {
    frame_.place(at);
    gram_.setZero();
    gradient_.setZero();
    for (int index = 0; index < linkRowCount_; ++index) {
        const Row& row = rows_[static_cast<std::size_t>(index)];
        const Eigen::Vector3d arm = frame_.turn.rotation * row.onAxle;
        const Eigen::Vector3d span = frame_.center + arm - row.onChassis;
        Eigen::Vector3d direction;
        double value = 0;
        double length = 0;
        if (row.axis < 0) {
            length = span.norm();
            direction = span / length;
            value = length - row.length;
        } else {
            direction = Eigen::Vector3d::Unit(row.axis);
            value = span[row.axis];
        }
        // Turning about an axis e moves the end by e x arm; along the direction that is e . (arm x
        // direction).
        const Eigen::Vector3d moment = arm.cross(direction);
        Coordinates slope;
        slope << direction.x(), direction.y(), frame_.turn.pitchAxis.dot(moment), moment.z(), direction.z(),
            frame_.turn.rotation.col(0).dot(moment);
        setRow(index, value - misfit * misfit0_[index], slope);
        if (rowCount_ != kUnknowns) {
            ends_[static_cast<std::size_t>(index)] = {arm, direction, length};
        }
    }
    if (rowCount_ > linkRowCount_) {  // symmetry rows: y = 0 and yaw = 0, at one metre per radian
        setRow(linkRowCount_, at[kY], Coordinates::Unit(kY));
        setRow(linkRowCount_ + 1, at[kYaw], Coordinates::Unit(kYaw));
    }
}

void AxleSolver::setRow(int index, double mismatch, const Coordinates& slope) {
    residual_[index] = mismatch;
    jacobian_.row(index) = slope.transpose();
    if (rowCount_ != kUnknowns) {
        gram_.noalias() += slope * slope.transpose();
        gradient_ += mismatch * slope.head<kUnknowns>();
    }
}

// What translations add to the curvature: one with another, and with the turns.
void AxleSolver::addCarried(double stiffness, const std::array<Eigen::Vector3d, 3>& carried, Curvature& sum) {
    for (int axis = 0; axis < 3; ++axis) {
        const Coordinate move = kMoves[static_cast<std::size_t>(axis)];
        sum(move, move) += stiffness;
        for (std::size_t turn = 0; turn < kTurns.size(); ++turn) {
            sum(move, kTurns[turn]) += carried[turn][axis];
            sum(kTurns[turn], move) += carried[turn][axis];
        }
    }
}

// Sum over the rows of mismatch times second derivative: what Gauss-Newton leaves out. With it, rates are
// true derivatives of the least-squares pose and Newton's method stays quadratic where the links bind. Of a
// rod's mismatch, with n its length, u its direction and m_i the end's move with coordinate i, it is (m_i .
// m_j - (u . m_i)(u . m_j)) / n
// + u . (second move); only turns have one, e_outer x (e_inner x arm).
//
// A translation moves every end alike, so that their part of the products is gathered once, after the rows.
AxleSolver::Curvature AxleSolver::bindCurvature() const {
    const std::array<Eigen::Vector3d, 3> axes{Eigen::Vector3d::UnitZ(), frame_.turn.pitchAxis,
                                              frame_.turn.rotation.col(0)};
    Curvature sum = Curvature::Zero();
    double stiffness = 0;
    std::array<Eigen::Vector3d, 3> carried{Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(),
                                           Eigen::Vector3d::Zero()};
    for (int index = 0; index < linkRowCount_; ++index) {
        const AxleEnd& end = ends_[static_cast<std::size_t>(index)];
        const double mismatch = residual_[index];
        std::array<Eigen::Vector3d, 3> moves;
        for (std::size_t turn = 0; turn < axes.size(); ++turn) {
            moves[turn] = axes[turn].cross(end.arm);
        }
        double share = 0;
        if (end.length > 0) {
            share = mismatch / end.length;
            const Coordinates slope = jacobian_.row(index);
            sum.noalias() -= (share * slope) * slope.transpose();
            stiffness += share;
        }
        for (std::size_t outer = 0; outer < axes.size(); ++outer) {
            const Eigen::Vector3d turned = mismatch * end.direction.cross(axes[outer]) + share * moves[outer];
            carried[outer] += share * moves[outer];
            for (std::size_t inner = outer; inner < axes.size(); ++inner) {
                const double term = turned.dot(moves[inner]);
                sum(kTurns[outer], kTurns[inner]) += term;
                if (inner != outer) {
                    sum(kTurns[inner], kTurns[outer]) += term;
                }
            }
        }
    }
    addCarried(stiffness, carried, sum);
    return sum;
}

bool AxleSolver::factorize(TakeCurvature take) {
    if (rowCount_ == kUnknowns) {
        factors_.compute(jacobian_.topLeftCorner<kUnknowns, kUnknowns>());
    } else {
        const double least = take == TakeCurvature::forRates ? kWorthCurvature : kWorthConverging;
        if (residual_.lpNorm<Eigen::Infinity>() > least) {
            gram_ += bindCurvature();
        }
        factors_.compute(gram_.topLeftCorner<kUnknowns, kUnknowns>());
    }
    const double determinant = factors_.determinant();
    if (!std::isfinite(determinant) || determinant == 0.0) {
        return false;
    }
    return !determinantKnown_ || (determinant > 0) == determinantPositive_;
}

// Newton's correction of the unknowns at the last evaluation.
AxleSolver::Unknowns AxleSolver::correction() const {
    return factors_.solve(rowCount_ == kUnknowns ? Unknowns(residual_.head<kUnknowns>()) : gradient_);
}

AxleSolver::Unknowns AxleSolver::rateAgainst(Coordinate imposed) const {
    const bool square = rowCount_ == kUnknowns;
    return -factors_.solve(square ? Unknowns(jacobian_.col(imposed).head<kUnknowns>())
                                  : Unknowns(gram_.block<kUnknowns, 1>(0, imposed)));
}

// Change of the unknowns per share of the misfit still allowed.
AxleSolver::Unknowns AxleSolver::rateAgainstMisfit() const {
    const bool square = rowCount_ == kUnknowns;
    return factors_.solve(square ? Unknowns(misfit0_.head<kUnknowns>())
                                 : Unknowns(jacobian_.leftCols<kUnknowns>().transpose() * misfit0_));
}

namespace {

// How strongly the rows of the Jacobian's `columns` hold the unknowns' motions: squares.
SymmetricModes<4> heldMotions(const auto& columns) {
    return SymmetricModes<4>(columns.transpose().lazyProduct(columns));
}

}  // namespace

Freedom AxleSolver::findFreedom() {
    const SymmetricModes<4> held = heldMotions(jacobian_.leftCols<kUnknowns>());
    if (held.values()[kUnknowns - 1] > kUnheldRatio * held.values()[0]) {
        return Freedom::none;
    }
    Eigen::Index strongest = 0;
    // Turns count by what they move at the tire's tread.
    const Unknowns lever(1.0, 1.0, measuredHeight_, measuredHeight_);
    held.vector(kUnknowns - 1).cwiseProduct(lever).cwiseAbs().maxCoeff(&strongest);
    constexpr std::array kNames{Freedom::foreAft, Freedom::sideways, Freedom::pitch, Freedom::yaw};
    return kNames[static_cast<std::size_t>(strongest)];
}

// Returns the freedom still unheld after symmetry has done what it can.
Freedom AxleSolver::holdBySymmetry(bool mirrorSymmetric) {
    const Freedom unheld = findFreedom();
    if (unheld == Freedom::none || !mirrorSymmetric) {
        return unheld;
    }
    rowCount_ = linkRowCount_ + 2;
    resizeRows();
    evaluate(at_, 0.0);
    const Freedom left = findFreedom();
    if (left == Freedom::none) {
        symmetryFreedom_ = unheld;
    }
    return left;
}

MoveReport AxleSolver::assemble() {
    at_ << 0, 0, 0, 0, measuredHeight_, 0;
    imposed_ = {.z = measuredHeight_, .roll = 0.0, .misfit = 1.0};
    evaluate(at_, 0.0);
    if (const Freedom freedom = holdBySymmetry(mirrorSymmetric_); freedom != Freedom::none) {
        MoveReport failure = report(Stop::underHeld);
        failure.freedom = freedom;
        return failure;
    }
    misfit0_ = residual_;
    evaluate(at_, imposed_.misfit);
    if (!factorize()) {
        return report(Stop::outOfReach);
    }
    determinantPositive_ = factors_.determinant() > 0;
    determinantKnown_ = true;
    accept(at_, imposed_, rateAgainst(kZ));
    return follow({.z = measuredHeight_, .roll = 0.0, .misfit = 0.0});
}

MoveReport AxleSolver::moveTo(double travel, double roll) {
    assert(determinantKnown_ && imposed_.misfit == 0.0);
    return follow({.z = measuredHeight_ + travel, .roll = roll, .misfit = 0.0});
}

bool AxleSolver::startNear(const AxleSolver& near) {
    const bool needsSymmetry = near.symmetryFreedom_ != Freedom::none;
    if (linkRowCount_ != near.linkRowCount_ || (needsSymmetry && !mirrorSymmetric_)) {
        return false;
    }
    rowCount_ = near.rowCount_;
    symmetryFreedom_ = near.symmetryFreedom_;
    resizeRows();
    determinantPositive_ = near.determinantPositive_;
    determinantKnown_ = true;
    at_ = near.at_;
    at_[kZ] += measuredHeight_ - near.measuredHeight_;
    imposed_ = {.z = at_[kZ], .roll = at_[kRoll], .misfit = 0.0};
    Coordinates trial = at_;
    if (!correct(trial, 0.0, kNearby)) {
        return false;
    }
    const Unknowns travelRate = rateAgainst(kZ);
    if (!(travelRate.lpNorm<Eigen::Infinity>() <= kSteepest)) {
        return false;
    }
    at_ = trial;
    accept(trial, imposed_, travelRate);
    return true;
}

MoveReport AxleSolver::follow(const Imposed& goal) {
    const Imposed start = imposed_;
    const double misfitSize = misfit0_.lpNorm<Eigen::Infinity>();
    const double distance = std::abs(goal.z - start.z) + std::abs(goal.roll - start.roll) +
                            std::abs(goal.misfit - start.misfit) * misfitSize;
    double done = 0;
    double step = std::min(distance, kLargestStep);
    while (done < distance) {
        const double next = std::min(done + step, distance);
        const double share = next / distance;
        const Imposed target = next == distance
                                   ? goal
                                   : Imposed{.z = std::lerp(start.z, goal.z, share),
                                             .roll = std::lerp(start.roll, goal.roll, share),
                                             .misfit = std::lerp(start.misfit, goal.misfit, share)};
        if (tryStep(target)) {
            done = next;
            step = std::min(2 * step, kLargestStep);
        } else if (step *= 0.5; step < kSmallestStep) {
            return report(Stop::outOfReach);
        }
    }
    imposed_ = goal;
    return report(Stop::reached);
}

bool AxleSolver::tryStep(const Imposed& target) {
    Coordinates trial = predict(target);
    const double stepSize = (trial - at_).lpNorm<Eigen::Infinity>();
    if (correct(trial, target.misfit, kCorrectionShare * stepSize + kConverged)) {
        const Unknowns travelRate = rateAgainst(kZ);
        if (travelRate.lpNorm<Eigen::Infinity>() <= kSteepest) {
            accept(trial, target, travelRate);
            return true;
        }
    }
    // Leave Jacobian and factors as they were, for the next, shorter try or the final report.
    evaluate(at_, imposed_.misfit);
    factorize();
    return false;
}

AxleSolver::Coordinates AxleSolver::predict(const Imposed& target) const {
    const double dz = target.z - imposed_.z;
    const double droll = target.roll - imposed_.roll;
    const double dmisfit = target.misfit - imposed_.misfit;
    Unknowns change = travelRate_ * dz;
    if (droll != 0.0) {
        change += rateAgainst(kRoll) * droll;
    } else if (dmisfit != 0.0) {
        change += rateAgainstMisfit() * dmisfit;
    } else {
        change += travelCurvature_ * (0.5 * dz * dz);
    }
    Coordinates trial = at_;
    trial.head<kUnknowns>() += change;
    trial[kZ] = target.z;
    trial[kRoll] = target.roll;
    return trial;
}

bool AxleSolver::correct(Coordinates& trial, double misfit, double allowedCorrection) {
    double last = allowedCorrection;
    for (int iteration = 0; iteration < kMostIterations; ++iteration) {
        evaluate(trial, misfit);
        if (!factorize(iteration == 0 ? TakeCurvature::toConverge : TakeCurvature::forRates)) {
            return false;
        }
        const Unknowns change = correction();
        const double size = change.lpNorm<Eigen::Infinity>();
        const bool stalled = iteration > 1 && size < kRoundingFloor && size > 0.5 * last;
        if (!(size <= last) && !stalled) {  // grows, or is not a number
            return false;
        }
        trial.head<kUnknowns>() -= change;
        if (size < kConverged || stalled) {
            if (iteration == 0 && rowCount_ != kUnknowns) {  // the rates still lack what that one left out
                evaluate(trial, misfit);
                if (!factorize()) {
                    return false;
                }
            }
            return drive_ == Drive::roll || bind() <= kLargestTravelBind;
        }
        last = size;
    }
    return false;
}

void AxleSolver::accept(const Coordinates& trial, const Imposed& target, const Unknowns& travelRate) {
    const double dz = trial[kZ] - at_[kZ];
    const bool travelOnly = target.roll == imposed_.roll && target.misfit == imposed_.misfit;
    const Unknowns before = travelRate_;
    at_ = trial;
    imposed_ = target;
    travelRate_ = travelRate;
    // From a hair's breadth, or where roll changed too, the quotient would be noise and throw the predictor
    // far enough to land on another branch.
    const bool telling = travelOnly && std::abs(dz) >= kSmallestStep;
    travelCurvature_ = telling ? Unknowns((travelRate_ - before) / dz) : Unknowns::Zero();
    travelRates_ = {travelRate_[kX], travelRate_[kY], travelRate_[kPitch], travelRate_[kYaw]};
}

AxlePose AxleSolver::pose() const {
    return {
        .x = at_[kX], .y = at_[kY], .z = at_[kZ], .roll = at_[kRoll], .pitch = at_[kPitch], .yaw = at_[kYaw]};
}

AxleRates AxleSolver::rollRates() const {
    const Unknowns rate = rateAgainst(kRoll);
    return {rate[kX], rate[kY], rate[kPitch], rate[kYaw]};
}

double AxleSolver::bind() const {
    return linkRowCount_ == 0 ? 0.0 : residual_.head(linkRowCount_).lpNorm<Eigen::Infinity>();
}

MoveReport AxleSolver::report(Stop stop) const {
    return {.stop = stop,
            .travel = at_[kZ] - measuredHeight_,
            .roll = at_[kRoll],
            .constraint = stop == Stop::outOfReach ? constraintAtFault() : -1,
            .freedom = Freedom::none};
}

// Where the links run out, the motion they resist least is (nearly) free, and the rows it strains share the
// load that cannot be carried: the one with the largest share is at fault. Where they bind, it is the largest
// mismatch.
// While assembling, it is the one whose length is farthest from its holes.
int AxleSolver::constraintAtFault() const {
    Rows share = imposed_.misfit > 0 ? misfit0_ : residual_;
    if (imposed_.misfit == 0 && bind() < 0.5 * kLargestTravelBind) {
        const auto columns = jacobian_.leftCols<kUnknowns>();
        share = columns * heldMotions(columns).vector(kUnknowns - 1);
    }
    Eigen::Index worst = 0;
    share.head(linkRowCount_).cwiseAbs().maxCoeff(&worst);
    return rows_[static_cast<std::size_t>(worst)].constraint;
}

}  // namespace bolthole
