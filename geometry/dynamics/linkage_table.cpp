#include "geometry/dynamics/linkage_table.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>

namespace bolthole {

namespace {

constexpr double kSpacing = 0.010;      // m between nodes
constexpr double kLeastSpacing = 1e-3;  // m; closer nodes are not asked for by isClose()
constexpr double kEndSpacing = 20e-6;   // m; how closely the end of the links' reach is found
// m and rad; a cubic through two nodes may differ from the polynomial used by so much halfway, which then is
// off itself by far less.
constexpr double kClose = 1e-8;

/// Numbers of one polynomial of degree 5 in the distance from the lower node.
struct Quintic {
    std::array<double, 6> c;
};

Quintic through(const TableValue& low, const TableValue& high, double width) {
    const double rise = high.value - low.value - low.first * width - low.second * width * width / 2;
    const double slope = (high.first - low.first - low.second * width) * width;
    const double bend = (high.second - low.second) * width * width;
    const double cube = width * width * width;
    return {{low.value, low.first, low.second / 2, (10 * rise - 4 * slope + bend / 2) / cube,
             (-15 * rise + 7 * slope - bend) / (cube * width),
             (6 * rise - 3 * slope + bend / 2) / (cube * width * width)}};
}

// How the axle moves with travel, and how that changes: center and turning, car frame.
struct AxleBend {
    AxleMotion motion;
    AxleMotion change;
    double pitch = 0;  // its second derivative
};

AxleBend bendOf(const AxleSolver& solver) {
    const AxlePose pose = solver.pose();
    const AxleRates& rates = solver.travelRates();
    const AxleRates curvature = solver.travelCurvature();
    AxleBend bend{.motion = travelMotion(pose, rates),
                  .change = travelMotion(pose, curvature),
                  .pitch = curvature.pitch};
    bend.change.velocity.z() = 0;
    // The pitch axis turns with yaw: d/dz (pitch' axis) adds pitch' yaw' z x axis, and axis = (-sin, cos, 0)
    // yaw.
    bend.change.turning -=
        rates.pitch * rates.yaw * Eigen::Vector3d(std::cos(pose.yaw), std::sin(pose.yaw), 0);
    return bend;
}

}  // namespace

MoveReport LinkageTable::begin(const Linkage& linkage, std::span<const TableLine> lines) {
    lines_.clear();
    for (const TableLine& line : lines) {
        lines_.push_back({.onAxle = line.onAxle, .onChassis = line.onChassis});
        if (line.alongFixedAxis) {
            lines_.back().fixAxis(linkage.measuredHeight);
        }
    }
    quantities_ = 2 + lines_.size();
    nodes_.resize(2 * kMostSteps + 1);
    pieces_.resize(std::max(pieces_.size(), 2 * kMostSteps * quantities_ * kPieceSize));
    first_ = last_ = piece_ = kMiddle;
    bumpStep_ = droopStep_ = kSpacing;
    bumpSolver_.emplace(linkage, Drive::travel);
    const MoveReport report = bumpSolver_->assemble();
    bumpEnd_ = droopEnd_ = report;
    if (report.usable()) {
        droopSolver_ = bumpSolver_;
        nodes_[kMiddle] = 0;
        readNode(*bumpSolver_, 0, bumpNode_);
        droopNode_ = bumpNode_;
    }
    return report;
}

void LinkageTable::readNode(const AxleSolver& solver, double travel, Node& node) const {
    node.travel = travel;
    node.values.resize(quantities_);
    const AxlePose pose = solver.pose();
    const AxleBend bend = bendOf(solver);
    node.values[kX] = {pose.x, bend.motion.velocity.x(), bend.change.velocity.x()};
    node.values[kPitch] = {pose.pitch, solver.travelRates().pitch, bend.pitch};
    const Eigen::Matrix3d rotation = pose.rotation();
    for (std::size_t index = 0; index < lines_.size(); ++index) {
        const LineState state = lineState(lines_[index], pose, rotation);
        const Eigen::Vector3d velocity = bend.motion.at(state.arm);
        const Eigen::Vector3d change =
            bend.change.at(state.arm) + bend.motion.turning.cross(bend.motion.turning.cross(state.arm));
        node.values[2 + index] = {state.length, state.unit.dot(velocity), state.bend(velocity, change)};
    }
}

bool LinkageTable::isClose(const Node& from, const Node& to) const {
    const double width = to.travel - from.travel;
    for (std::size_t index = 0; index < quantities_; ++index) {
        // Halfway the two polynomials differ by what a cubic's second derivatives lack at both ends.
        const TableValue& low = from.values[index];
        const TableValue& high = to.values[index];
        const double slope = (high.value - low.value) / width;
        const double missing = low.second + high.second - 2 * (high.first - low.first) / width;
        const double odd = high.second - low.second - 6 * (high.first + low.first - 2 * slope) / width;
        if (!(std::abs(missing) * width * width / 64 <= kClose &&
              std::abs(odd) * width * width / 64 <= kClose)) {
            return false;
        }
    }
    return true;
}

bool LinkageTable::extend(int direction) {
    const bool bump = direction > 0;
    std::optional<AxleSolver>& solver = bump ? bumpSolver_ : droopSolver_;
    Node& node = bump ? bumpNode_ : droopNode_;
    MoveReport& end = bump ? bumpEnd_ : droopEnd_;
    double& step = bump ? bumpStep_ : droopStep_;
    const bool full = bump ? last_ == 2 * kMostSteps : first_ == 0;
    while (!full && std::abs(node.travel) < kFarthest && step >= kEndSpacing) {
        const double travel = node.travel + direction * step;
        AxleSolver ahead = *solver;
        const MoveReport report = ahead.moveTo(travel);
        if (report.usable()) {
            readNode(ahead, travel, trial_);
        }
        if (!report.usable() || (step > kLeastSpacing && !isClose(node, trial_))) {
            if (!report.usable()) {
                end = report;
            }
            step /= 2;
            continue;
        }
        const std::size_t added = bump ? ++last_ : --first_;
        nodes_[added] = travel;
        writePiece(bump ? added - 1 : added, bump ? node : trial_, bump ? trial_ : node);
        std::swap(node, trial_);
        *solver = ahead;
        if (end.usable()) {  // nowhere near the end of what the links reach
            step = std::min(2 * step, kSpacing);
        }
        return true;
    }
    return false;
}

void LinkageTable::cover(double low, double high) {
    while (highest() < high && extend(+1)) {
    }
    while (lowest() > low && extend(-1)) {
    }
}

void LinkageTable::writePiece(std::size_t piece, const Node& low, const Node& high) {
    double* at = &pieces_[piece * quantities_ * kPieceSize];
    for (std::size_t index = 0; index < quantities_; ++index, at += kPieceSize) {
        const Quintic quintic = through(low.values[index], high.values[index], high.travel - low.travel);
        std::ranges::copy(quintic.c, at);
    }
}

void LinkageTable::read(double travel, TableValue* values) {
    std::size_t piece = std::clamp(piece_, first_, last_ - 1);
    while (piece > first_ && travel < nodes_[piece]) {
        --piece;
    }
    while (piece + 1 < last_ && travel > nodes_[piece + 1]) {
        ++piece;
    }
    piece_ = piece;
    const double d = travel - nodes_[piece];
    const double* c = &pieces_[piece * quantities_ * kPieceSize];
    for (std::size_t index = 0; index < quantities_; ++index, c += kPieceSize) {
        values[index] = {.value = c[0] + d * (c[1] + d * (c[2] + d * (c[3] + d * (c[4] + d * c[5])))),
                         .first = c[1] + d * (2 * c[2] + d * (3 * c[3] + d * (4 * c[4] + d * 5 * c[5]))),
                         .second = 2 * c[2] + d * (6 * c[3] + d * (12 * c[4] + d * 20 * c[5]))};
    }
}

}  // namespace bolthole
