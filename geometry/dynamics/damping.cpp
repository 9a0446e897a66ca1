#include "geometry/dynamics/damping.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace bolthole {

namespace {

bool rises(const std::vector<double>& numbers) {
    return std::ranges::all_of(numbers, [](double number) { return std::isfinite(number); }) &&
           std::ranges::adjacent_find(numbers, std::ranges::greater_equal()) == numbers.end();
}

DampingFault refusal(const DampingRows& rows, std::size_t speeds, const std::string& path) {
    if (rows.clicks.empty() || rows.clicks.size() > kMaxDampingClicks || !rises(rows.clicks)) {
        return {path + ".clicks", "expected clicks that rise, at least one and at most 100"};
    }
    if (rows.force.size() != rows.clicks.size()) {
        return {path + ".force", "expected as many rows as there are clicks"};
    }
    for (const std::vector<double>& row : rows.force) {
        if (row.size() != speeds) {
            return {path + ".force", "expected a force for each speed in every row"};
        }
        if (!std::ranges::all_of(row, [](double force) { return std::isfinite(force) && force >= 0; })) {
            return {path + ".force", "expected forces of 0 or more"};
        }
    }
    return std::isfinite(rows.at) ? DampingFault{} : DampingFault{path + ".at", "expected a click"};
}

// The forces at the click in use, one a speed.
std::vector<double> forcesInUse(const DampingRows& rows) {
    const double at = std::clamp(rows.at, rows.clicks.front(), rows.clicks.back());
    const auto above = std::ranges::upper_bound(rows.clicks, at);
    if (above == rows.clicks.end()) {
        return rows.force.back();
    }
    const auto upper =
        static_cast<std::size_t>(above - rows.clicks.begin());  // at least 1, as at >= the first
    const double share = (at - rows.clicks[upper - 1]) / (*above - rows.clicks[upper - 1]);
    std::vector<double> forces = rows.force[upper - 1];
    for (std::size_t index = 0; index < forces.size(); ++index) {
        forces[index] = std::lerp(forces[index], rows.force[upper][index], share);
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
        line.bend(side * from, next - slope, side);
        slope = next;
        from = speeds[index];
        last = forces[index];
    }
}

}  // namespace

DampingFault refusal(const Damping& damping) {
    if (damping.speeds.empty() || damping.speeds.size() > kMaxDampingSpeeds || !rises(damping.speeds) ||
        !(damping.speeds.front() > 0)) {
        return {"speeds", "expected speeds above 0 that rise, at least one and at most 64"};
    }
    DampingFault fault = refusal(damping.bump, damping.speeds.size(), "bump");
    return fault.reason.empty() ? refusal(damping.rebound, damping.speeds.size(), "rebound") : fault;
}

KinkedLine dampingLine(const Damping& damping) {
    KinkedLine line;
    addWay(damping.speeds, forcesInUse(damping.bump), +1, line);
    addWay(damping.speeds, forcesInUse(damping.rebound), -1, line);
    return line;
}

}  // namespace bolthole
