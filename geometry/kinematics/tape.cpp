#include "geometry/kinematics/tape.h"

#include <cmath>

namespace bolthole {

double shownHeight(double height, HeightDatum datum, double rearTireRadius) {
    return datum == HeightDatum::axleCenter ? height - rearTireRadius : height;
}

double heightFromShown(double shown, HeightDatum datum, double rearTireRadius) {
    return datum == HeightDatum::axleCenter ? shown + rearTireRadius : shown;
}

ForwardFigure forwardFromLength(const Eigen::Vector3d& known, const Eigen::Vector3d& sought, double length) {
    const Eigen::Vector3d apart = sought - known;
    ForwardFigure result;
    result.shortest = std::hypot(apart.y(), apart.z());
    if (!std::isfinite(length) || !(length > 0) || length < result.shortest) {
        return result;
    }
    // As a product of sum and difference: squaring first would lose digits when the link is nearly upright.
    const double foreAft = std::sqrt((length - result.shortest) * (length + result.shortest));
    result.forward = apart.x() < 0 ? known.x() - foreAft : known.x() + foreAft;
    return result;
}

}  // namespace bolthole
