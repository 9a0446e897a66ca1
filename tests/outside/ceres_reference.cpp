#include "tests/outside/ceres_reference.h"

#include <ceres/ceres.h>
#include <ceres/rotation.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace bolthole {

namespace {

constexpr double kTravelStep = 0.01;   // m
constexpr double kRollStep = 0.00873;  // rad, half a degree

// The axle's point in the car frame. The turns are made one after the other about the fixed axes, x first,
// by Ceres' own rotation of a point: Rz(yaw) Ry(pitch) Rx(roll).
template <typename T>
void carryPoint(const T* unknowns, double height, double roll, const Eigen::Vector3d& fromCenter, T* at) {
    const T start[3] = {T(fromCenter.x()), T(fromCenter.y()), T(fromCenter.z())};
    const T aboutX[3] = {T(roll), T(0), T(0)};
    const T aboutY[3] = {T(0), unknowns[2], T(0)};
    const T aboutZ[3] = {T(0), T(0), unknowns[3]};
    T rolled[3];
    T pitched[3];
    ceres::AngleAxisRotatePoint(aboutX, start, rolled);
    ceres::AngleAxisRotatePoint(aboutY, rolled, pitched);
    ceres::AngleAxisRotatePoint(aboutZ, pitched, at);
    at[0] += unknowns[0];
    at[1] += unknowns[1];
    at[2] += T(height);
}

// The misfit of one link, m.
struct Misfit {
    ReferenceLink link;
    double height;
    double roll;

    template <typename T>
    bool operator()(const T* unknowns, T* misfit) const {
        T gap[3];
        carryPoint(unknowns, height, roll, link.onAxle, gap);
        for (int axis = 0; axis < 3; ++axis) {
            gap[axis] -= T(link.onChassis[axis]);
        }
        if (link.kind == ReferenceLink::rod) {
            using std::sqrt;
            *misfit = sqrt(gap[0] * gap[0] + gap[1] * gap[1] + gap[2] * gap[2]) - T(link.length);
        } else {
            *misfit = gap[link.kind - ReferenceLink::sameX];
        }
        return true;
    }
};

ceres::Solver::Options tightOptions() {
    ceres::Solver::Options options;
    options.linear_solver_type = ceres::DENSE_QR;
    options.logging_type = ceres::SILENT;
    options.max_num_iterations = 500;
    options.function_tolerance = 0;
    options.gradient_tolerance = 1e-17;
    options.parameter_tolerance = 1e-15;
    return options;
}

}  // namespace

CeresReference::CeresReference(ReferenceAxle axle) : axle_(std::move(axle)) {}

bool CeresReference::moveTo(double travel, double roll) {
    const double travelFrom = travel_;
    const double rollFrom = roll_;
    const double span =
        std::max(std::abs(travel - travelFrom) / kTravelStep, std::abs(roll - rollFrom) / kRollStep);
    const int steps = std::max(1, static_cast<int>(std::ceil(span)));
    for (int step = 1; step <= steps; ++step) {
        const double share = static_cast<double>(step) / steps;
        if (!minimizeAt(travelFrom + share * (travel - travelFrom), rollFrom + share * (roll - rollFrom))) {
            return false;
        }
    }
    return true;
}

bool CeresReference::minimizeAt(double travel, double roll) {
    ceres::Problem problem;
    for (const ReferenceLink& link : axle_.links) {
        auto* misfit = new Misfit{link, axle_.measuredHeight + travel, roll};  // the problem owns it
        problem.AddResidualBlock(new ceres::AutoDiffCostFunction<Misfit, 1, 4>(misfit), nullptr, unknowns_);
    }
    ceres::Solver::Summary summary;
    ceres::Solve(tightOptions(), &problem, &summary);
    travel_ = travel;
    roll_ = roll;
    return summary.termination_type == ceres::CONVERGENCE;
}

Eigen::Vector3d CeresReference::carry(const Eigen::Vector3d& fromCenter) const {
    Eigen::Vector3d at;
    carryPoint(unknowns_, axle_.measuredHeight + travel_, roll_, fromCenter, at.data());
    return at;
}

double CeresReference::bind() const {
    double largest = 0;
    for (const ReferenceLink& link : axle_.links) {
        double misfit = 0;
        Misfit{link, axle_.measuredHeight + travel_, roll_}(unknowns_, &misfit);
        largest = std::max(largest, std::abs(misfit));
    }
    return largest;
}

}  // namespace bolthole
