#include "geometry/dynamics/linkage_table.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>

namespace bolthole {

namespace {

constexpr double kSpacing = 0.010;     // m between nodes
constexpr double kEndSpacing = 20e-6;  // m; how closely the end of the links' reach is found
constexpr double kCreep = 1e-6;        // m
// m and rad; a cubic through two nodes may differ from the polynomial used by so much halfway, which then is
// off itself by far less.
constexpr double kClose = 1e-8;

// Each way, ride left out: room for nodes as close as isClose() may ask all the way to kFarthest, and for
// those toward an end.
constexpr std::size_t kMostNodes = 1600;

bool isSameConstraint(const Constraint& one, const Constraint& other) {
    return one.kind == other.kind && one.side == other.side && one.onAxle == other.onAxle &&
           one.onChassis == other.onChassis && one.length == other.length;
}

/// Numbers of one polynomial of degree 5 in the distance from the lower node.
struct Quintic {
    std::array<double, 6> c;
};

Quintic through(const TableValue& low, const TableValue& high, double width) {
    const double rise = high.value - low.value - low.first * width - low.second * width * width / 2;
    const double slope = (high.first - low.first - low.second * width) * width;
    const double curvature = (high.second - low.second) * width * width;
    const double cube = width * width * width;
    return {{low.value, low.first, low.second / 2, (10 * rise - 4 * slope + curvature / 2) / cube,
             (-15 * rise + 7 * slope - curvature) / (cube * width),
             (6 * rise - 3 * slope + curvature / 2) / (cube * width * width)}};
}

// How the axle moves with travel, and how that changes: center and turning, car frame.
struct TravelDerivatives {
    AxleMotion motion;
    AxleMotion change;
    double pitch = 0;  // its second derivative
};

TravelDerivatives travelDerivativesOf(const AxleSolver& solver) {
    const AxlePose pose = solver.pose();
    const AxleRates& rates = solver.travelRates();
    const AxleRates curvature = solver.travelCurvature();
    TravelDerivatives derivatives{.motion = travelMotion(pose, rates),
                                  .change = travelMotion(pose, curvature),
                                  .pitch = curvature.pitch};
    derivatives.change.velocity.z() = 0;
    // The pitch axis turns with yaw: d/dz (pitch' axis) adds pitch' yaw' z x axis, and axis = (-sin, cos, 0)
    // yaw.
    derivatives.change.turning -=
        rates.pitch * rates.yaw * Eigen::Vector3d(std::cos(pose.yaw), std::sin(pose.yaw), 0);
    return derivatives;
}

}  // namespace

MoveReport LinkageTable::begin(const Linkage& linkage, std::span<const TableLine> lines) {
    if (isSolved(linkage, lines)) {
        bump_.covered = droop_.covered = 0;
        bump_.piece = droop_.piece = 0;
        return ride_;
    }
    linkage_ = linkage;
    asked_.assign(lines.begin(), lines.end());
    lines_.clear();
    for (const TableLine& line : lines) {
        lines_.push_back({.onAxle = line.onAxle, .onChassis = line.onChassis});
        if (line.alongFixedAxis) {
            lines_.back().fixAxis(linkage.measuredHeight);
        }
    }
    quantities_ = 2 + lines_.size();
    rideSolver_.emplace(linkage, Drive::travel);
    ride_ = rideSolver_->assemble();
    if (ride_.usable()) {
        readNode(*rideSolver_, 0, trial_);
    }
    start(bump_, trial_);
    start(droop_, trial_);
    return ride_;
}

bool LinkageTable::isSolved(const Linkage& linkage, std::span<const TableLine> lines) const {
    return ride_.usable() && linkage.measuredHeight == linkage_.measuredHeight &&
           std::ranges::equal(linkage.constraints, linkage_.constraints, isSameConstraint) &&
           std::ranges::equal(lines, asked_);
}

void LinkageTable::start(Way& way, const Node& ride) {
    way.nodes.assign(1, 0.0);
    way.pieces.clear();
    way.covered = way.piece = 0;
    way.solver = rideSolver_;
    way.outermost = ride;
    way.step = kSpacing;
    way.end = ride_;
    way.failedAt = 0;
}

void LinkageTable::readNode(const AxleSolver& solver, double travel, Node& node) const {
    node.travel = travel;
    node.values.resize(quantities_);
    const AxlePose pose = solver.pose();
    const TravelDerivatives derivatives = travelDerivativesOf(solver);
    node.values[kX] = {pose.x, derivatives.motion.velocity.x(), derivatives.change.velocity.x()};
    node.values[kPitch] = {pose.pitch, solver.travelRates().pitch, derivatives.pitch};
    const Eigen::Matrix3d rotation = pose.rotation();
    for (std::size_t index = 0; index < lines_.size(); ++index) {
        const LineState state = lineState(lines_[index], pose, rotation);
        const Eigen::Vector3d velocity = derivatives.motion.at(state.arm);
        const Eigen::Vector3d change =
            derivatives.change.at(state.arm) +
            derivatives.motion.turning.cross(derivatives.motion.turning.cross(state.arm));
        node.values[2 + index] = {state.length, state.unit.dot(velocity), state.curvature(velocity, change)};
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
    Way& way = direction > 0 ? bump_ : droop_;
    const bool isThere = way.covered + 1 < way.nodes.size();  // solved for a run before this one
    if (isThere || solveNext(way, direction)) {
        ++way.covered;
        return true;
    }
    return false;
}

bool LinkageTable::solveNext(Way& way, int direction) {
    while (way.nodes.size() <= kMostNodes && std::abs(way.outermost.travel) < kFarthest &&
           way.step >= kEndSpacing) {
        const double travel = way.outermost.travel + direction * way.step;
        AxleSolver ahead = *way.solver;
        const MoveReport report = ahead.moveTo(travel);
        if (!report.usable()) {
            way.end = report;
            way.failedAt = travel;
            way.step /= 2;
            continue;
        }
        readNode(ahead, travel, trial_);
        if (!isClose(way.outermost, trial_)) {
            way.step /= 2;
            if (way.step >= kEndSpacing || turnsCorner(way, direction)) {
                continue;
            }
        }
        add(way, direction);
        *way.solver = ahead;
        return true;
    }
    return false;
}

// A long step may pass what a short one can't: where links that are one too many lock, the path turns sharply
// onto one on which they bind. Creeps over the last bit and notes where the solver finds it too steep.
bool LinkageTable::turnsCorner(Way& way, int direction) const {
    AxleSolver ahead = *way.solver;
    for (int step = 1; step * kCreep <= 4 * kEndSpacing; ++step) {
        const double travel = way.outermost.travel + direction * step * kCreep;
        const MoveReport report = ahead.moveTo(travel);
        if (!report.usable()) {
            way.end = report;
            way.failedAt = travel;
            return true;
        }
    }
    return false;
}

// Takes the node on trial.
void LinkageTable::add(Way& way, int direction) {
    const bool bump = direction > 0;
    const double travel = trial_.travel;
    way.nodes.push_back(travel);
    writePiece(way, bump ? way.outermost : trial_, bump ? trial_ : way.outermost);
    std::swap(way.outermost, trial_);
    if (!way.end.usable() && std::abs(travel) >= std::abs(way.failedAt)) {
        way.end = ride_;  // a step too long for the solver, not the end of what the links reach
    }
    if (way.end.usable()) {
        way.step = std::clamp(2 * way.step, kEndSpacing, kSpacing);
    }
}

void LinkageTable::cover(double low, double high) {
    while (highest() < high && extend(+1)) {
    }
    while (lowest() > low && extend(-1)) {
    }
}

void LinkageTable::writePiece(Way& way, const Node& low, const Node& high) const {
    for (std::size_t index = 0; index < quantities_; ++index) {
        const Quintic quintic = through(low.values[index], high.values[index], high.travel - low.travel);
        way.pieces.insert(way.pieces.end(), quintic.c.begin(), quintic.c.end());
    }
}

void LinkageTable::read(double travel, TableValue* values) {
    const bool inBump = travel > 0 ? bump_.covered > 0 : droop_.covered == 0;
    Way& way = inBump ? bump_ : droop_;
    const double outward = inBump ? travel : -travel;
    std::size_t piece = std::min(way.piece, way.covered - 1);
    while (piece > 0 && outward < std::abs(way.nodes[piece])) {
        --piece;
    }
    while (piece + 1 < way.covered && outward >= std::abs(way.nodes[piece + 1])) {
        ++piece;
    }
    way.piece = piece;
    const double d = travel - way.nodes[inBump ? piece : piece + 1];  // from the lower node
    const double* c = &way.pieces[piece * quantities_ * kPieceSize];
    for (std::size_t index = 0; index < quantities_; ++index, c += kPieceSize) {
        values[index] = {.value = c[0] + d * (c[1] + d * (c[2] + d * (c[3] + d * (c[4] + d * c[5])))),
                         .first = c[1] + d * (2 * c[2] + d * (3 * c[3] + d * (4 * c[4] + d * 5 * c[5]))),
                         .second = 2 * c[2] + d * (6 * c[3] + d * (12 * c[4] + d * 20 * c[5]))};
    }
}

}  // namespace bolthole
