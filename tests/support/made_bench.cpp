#include "tests/support/made_bench.h"

#include <cmath>

namespace bolthole::test {

namespace {

double& figure(Station& station, Figure which) {
    return station.figures[static_cast<std::size_t>(which)];
}

double rowTravel(const MadeCurves& curves, int row) {
    const int middle = (curves.rows - 1) / 2;
    const bool evenSides = curves.bump == curves.droop && curves.rows % 2 == 1;
    return evenSides && row == middle
               ? 0.0
               : -curves.droop + (curves.bump + curves.droop) * row / (curves.rows - 1);
}

void addInstantCenter(const MadeCurves& curves, double travel, Station& station) {
    const double inverse = curves.inverseAtRide + curves.inverseSlope * travel;
    const double tangent = curves.tangent + curves.tangentSlope * travel;
    figure(station, Figure::swingArmAngle) = std::atan(tangent);
    figure(station, Figure::antiSquat) = 100 * tangent / 0.2;
    if (std::abs(inverse) > 1e-9) {
        figure(station, Figure::icX) = 1 / inverse;
        figure(station, Figure::icZ) = tangent / inverse;
    }
}

void addDriveline(double travel, Station& station) {
    const double degrees = kRadiansPerDegree;
    const double t = travel / kMetresPerInch;
    figure(station, Figure::pinion) = (1.4 - 1.05 * t - 0.06 * t * t) * degrees;
    figure(station, Figure::pinionToDriveshaft) = (-0.5 - 0.7 * t) * degrees;
    figure(station, Figure::frontJoint) = std::abs(2.2 + 0.5 * t) * degrees;
    figure(station, Figure::rearJoint) = std::sqrt(0.25 + 0.45 * t * t) * degrees;
}

}  // namespace

Station madeStation(const MadeCurves& curves, double travel) {
    Station station;
    const double row = (curves.bump + curves.droop) / (curves.rows - 1);
    figure(station, Figure::travel) = travel;
    const bool reached = travel > -curves.droop + (curves.unusableInDroop - 0.5) * row &&
                         travel < curves.bump - (curves.unusableInBump - 0.5) * row;
    if (!reached) {
        return station;
    }
    station.usable = true;
    addInstantCenter(curves, travel, station);
    if (curves.driveline) {
        addDriveline(travel, station);
    }
    return station;
}

BenchState madeBench(const MadeCurves& curves) {
    BenchState state;
    state.car.travel = {curves.bump, curves.droop, curves.rows, 1.0};
    state.solvedCar = state.car;
    state.trace.assembly.stop = Stop::reached;
    state.trace.ride = madeStation(curves, 0.0);
    for (int row = 0; row < curves.rows; ++row) {
        state.trace.stations.push_back(madeStation(curves, rowTravel(curves, row)));
    }
    state.traceIsCurrent = true;
    moveCursor(state, curves, 0.0);
    return state;
}

void moveCursor(BenchState& state, const MadeCurves& curves, double travel) {
    state.cursorTravel = travel;
    state.cursor = madeStation(curves, travel);
}

}  // namespace bolthole::test
