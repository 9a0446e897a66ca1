#include "geometry/dynamics/damping_line.h"

#include <cmath>
#include <vector>

namespace bolthole {

namespace {

// The forces at the click in use, one a speed.
std::vector<double> forcesInUse(const DampingWay& way) {
    const double at = way.at.value_or(way.clickOf(0));
    std::size_t upper = 0;
    while (upper < way.force.size() && way.clickOf(upper) <= at) {
        ++upper;
    }
    if (upper == 0 || upper == way.force.size()) {
        return upper == 0 ? way.force.front() : way.force.back();
    }
    const int below = way.clickOf(upper - 1);
    const double share = (at - below) / (way.clickOf(upper) - below);
    std::vector<double> forces = way.force[upper - 1];
    for (std::size_t index = 0; index < forces.size(); ++index) {
        forces[index] = std::lerp(forces[index], way.force[upper][index], share);
    }
    return forces;
}

// Adds one way of the shock: side +1 bump, -1 rebound.
void addWay(const std::vector<double>& speeds, const std::vector<double>& forces, int side,
            KinkedLine& line) {
    double from = 0;
    double last = 0;
    double slope = 0;
    for (std::size_t index = 0; index < speeds.size(); ++index) {
        const double next = (forces[index] - last) / (speeds[index] - from);
        line.addKink(side * from, next - slope, side);
        slope = next;
        from = speeds[index];
        last = forces[index];
    }
}

}  // namespace

KinkedLine dampingLine(const Damping& damping) {
    KinkedLine line;
    addWay(damping.speeds, forcesInUse(damping.bump), +1, line);
    addWay(damping.speeds, forcesInUse(damping.rebound), -1, line);
    return line;
}

}  // namespace bolthole
