// A car on level, parallel, very long links, of consistent units: its axle moves straight up and down and
// does not turn, so that textbook vehicles can be made of it.
#pragma once

#include "geometry/dynamics/launch_inputs.h"
#include "geometry/dynamics/launch_limits.h"
#include "geometry/dynamics/launch_run.h"

namespace bolthole {

/// Two pairs of level links of 50 m, 0.2 m apart.
inline Linkage levelLinks(double radius) {
    Linkage linkage;
    linkage.measuredHeight = radius;
    for (const double side : {+1.0, -1.0}) {
        for (const double up : {-0.1, +0.1}) {
            linkage.constraints.push_back({.kind = LinkKind::rod,
                                           .link = up > 0 ? 1 : 0,
                                           .side = side > 0 ? Side::left : Side::right,
                                           .onAxle = {0, side * 0.5, up},
                                           .onChassis = {50, side * 0.5, radius + up},
                                           .length = 50});
        }
    }
    return linkage;
}

/// Everything at wheel height, nothing damped, tires that do not hold along the ground, the scales as moments
/// have them; a clutch that slips all the way.
inline LaunchInputs levelLaunch(double total, double wheelbase, double cgAhead) {
    constexpr double kRadius = 0.3;
    LaunchInputs inputs;
    inputs.bodies = {.total = total,
                     .frontLoad = total * kStandardGravity * cgAhead / wheelbase,
                     .cgAhead = cgAhead,
                     .cgHeight = kRadius,
                     .rearUnsprung = 1e-6,
                     .frontUnsprung = 1e-6,
                     .pitchInertia = 1,
                     .wheelInertia = 1,
                     .wheelbase = wheelbase,
                     .rearRadius = kRadius,
                     .frontRadius = kRadius};
    inputs.tires = {.friction = 1e-12, .damping = 0, .rearRate = 1, .frontRate = 1};
    inputs.engine = {.torque = {{0, 100}}, .inertia = 1e9, .launchSpeed = 500, .revLimit = 1e4};
    inputs.coupling = {.kind = CouplingKind::clutch, .capacity = 1};
    inputs.front = {.wheelRate = 1, .droop = 10, .bump = 10};
    inputs.linkage = levelLinks(kRadius);
    inputs.rearWheelRate = 1;
    inputs.travel = {.bump = 0.05, .droop = 0.05};
    return inputs;
}

/// A car that only moves along: nothing turns its body, its tires hold and hardly creep.
inline LaunchInputs sleighLaunch(double total) {
    LaunchInputs inputs = levelLaunch(total, 3, 1.5);
    inputs.bodies.pitchInertia = 1e12;
    inputs.bodies.wheelInertia = 0.2;
    inputs.tires.rearRate = inputs.tires.frontRate = 2e5;
    inputs.tires.damping = 2000;
    inputs.tires.friction = 5;
    inputs.front.wheelRate = 2e4;
    inputs.rearWheelRate = 2e4;
    inputs.bodies.rearUnsprung = inputs.bodies.frontUnsprung = 50;
    inputs.release = 0;
    return inputs;
}

}  // namespace bolthole
