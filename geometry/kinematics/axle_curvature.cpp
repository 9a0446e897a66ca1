// The second derivative of the axle's pose along travel.
//
// Where the links are as many as the unknowns u, r(u, z) = 0 all along; elsewhere the gradient of the sum of
// squares, g = J^T r, is zero. Along the straight line that starts with the pose's own rates, u + s u', z +
// s, either has no first derivative, and its second is what u'' has to take back: J u'' = -d^2r/ds^2, or H
// u'' = -d^2g/ds^2, with the matrix that the rates were solved with.
#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/taylor.h"

namespace bolthole {

AxleSolver::Unknowns AxleSolver::secondAlongTravel() const {
    const TaylorTurn pitch(at_[kPitch], travelRate_[kPitch]);
    const TaylorTurn yaw(at_[kYaw], travelRate_[kYaw]);
    const TaylorTurn roll(at_[kRoll], 0);
    const TaylorVector center{Taylor{at_[kX], travelRate_[kX], 0}, Taylor{at_[kY], travelRate_[kY], 0},
                              Taylor{at_[kZ], 1, 0}};
    // The columns of R = Rz(yaw) Ry(pitch) Rx(roll).
    const TaylorVector pitchAxis{-1.0 * yaw.sine, yaw.cosine, Taylor{}};
    const TaylorVector ahead{yaw.cosine * pitch.cosine, yaw.sine * pitch.cosine, -1.0 * pitch.sine};
    const TaylorVector up{yaw.cosine * pitch.sine, yaw.sine * pitch.sine, pitch.cosine};
    const bool square = rowCount_ == kUnknowns;
    Unknowns second = Unknowns::Zero();
    for (int index = 0; index < linkRowCount_; ++index) {
        const Row& row = rows_[static_cast<std::size_t>(index)];
        TaylorVector arm;
        TaylorVector span;
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const Taylor left = roll.cosine * pitchAxis[axis] + roll.sine * up[axis];
            const Taylor top = roll.cosine * up[axis] - roll.sine * pitchAxis[axis];
            arm[axis] = row.onAxle.x() * ahead[axis] + row.onAxle.y() * left + row.onAxle.z() * top;
            span[axis] =
                center[axis] + arm[axis] - Taylor{row.onChassis[static_cast<Eigen::Index>(axis)], 0, 0};
        }
        TaylorVector direction{};
        Taylor mismatch;
        if (row.axis < 0) {
            const Taylor length = sqrt(dot(span, span));
            mismatch = length - Taylor{row.length, 0, 0};
            direction = {span[0] / length, span[1] / length, span[2] / length};
        } else {
            mismatch = span[static_cast<std::size_t>(row.axis)];
            direction[static_cast<std::size_t>(row.axis)].value = 1;
        }
        if (square) {
            second[index] = mismatch.second;
            continue;
        }
        const TaylorVector moment = cross(arm, direction);
        second[kX] += (mismatch * direction[0]).second;
        second[kY] += (mismatch * direction[1]).second;
        second[kPitch] += (mismatch * dot(pitchAxis, moment)).second;
        second[kYaw] += (mismatch * moment[2]).second;
    }
    return second;
}

AxleRates AxleSolver::travelCurvature() const {
    const Unknowns curvature = -factors_.solve(secondAlongTravel());
    return {curvature[kX], curvature[kY], curvature[kPitch], curvature[kYaw]};
}

}  // namespace bolthole
