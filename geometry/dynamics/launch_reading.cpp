#include "geometry/dynamics/launch_reading.h"

#include <algorithm>

#include "geometry/dynamics/launch_limits.h"

namespace bolthole {

namespace {

/// Percent, or nothing where the tires carry nothing.
std::optional<double> gripLeftAt(const LaunchInputs& inputs, const LaunchRow& row) {
    if (!(row.grip > 0)) {
        return std::nullopt;
    }
    return row.slip > inputs.tires.peakSlip ? 0 : 100 * std::max(0.0, 1 - row.thrust / row.grip);
}

void keepLeast(std::optional<double>& least, const std::optional<double>& value) {
    if (value) {
        least = least ? std::min(*least, *value) : *value;
    }
}

void keepMost(std::optional<double>& most, double value) {
    most = most ? std::max(*most, value) : value;
}

}  // namespace

Quantity quantityOf(LaunchFigure figure) {
    switch (figure) {
        case LaunchFigure::leastLoad:
            return Quantity::force;
        case LaunchFigure::gripLeft:
        case LaunchFigure::largestSlip:
            return Quantity::percent;
        case LaunchFigure::separation:
            return Quantity::length;
        case LaunchFigure::separationRate:
            return Quantity::shaftSpeed;
        default:
            return Quantity::time;
    }
}

LaunchReading readLaunch(const LaunchInputs& inputs, const LaunchRun& run) {
    LaunchReading reading;
    const auto at = [&reading](LaunchFigure figure) -> std::optional<double>& {
        return reading.figures[static_cast<std::size_t>(figure)];
    };
    at(LaunchFigure::sixtyFoot) = run.figures.sixtyFoot;
    at(LaunchFigure::fromRelease) = run.figures.fromRelease;
    at(LaunchFigure::leastLoad) = run.figures.leastRearLoad;
    at(LaunchFigure::toppedOut) = run.figures.toppedOut;
    at(LaunchFigure::frontUp) = run.figures.frontUp;
    if (run.rows.empty()) {
        return reading;
    }
    at(LaunchFigure::largestSlip) = 100 * run.figures.largestSlip;
    const double stop = run.figures.fromRelease.value_or(run.endTime);
    const LaunchRow* before = nullptr;
    for (const LaunchRow& row : run.rows) {
        if (row.time > stop) {
            break;
        }
        if (row.time >= kAfterTheHit) {
            keepLeast(at(LaunchFigure::gripLeft), gripLeftAt(inputs, row));
        }
        keepMost(at(LaunchFigure::separation), -row.rearTravel);
        if (before != nullptr) {
            keepMost(at(LaunchFigure::separationRate),
                     (before->rearTravel - row.rearTravel) / (row.time - before->time));
        }
        before = &row;
    }
    return reading;
}

}  // namespace bolthole
