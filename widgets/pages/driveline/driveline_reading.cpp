#include "widgets/pages/driveline/driveline_reading.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "geometry/statics/entered_setup.h"
#include "geometry/units/say.h"
#include "geometry/weights/entered_figures.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

std::string problemOf(const BenchState& state) {
    if (!state.solvedCar.driveline) {
        return say("No driveline is entered.");
    }
    if (!state.trace.ride.usable) {
        return say("The links do not hold the axle at ride height, so there is no driveline to compute.");
    }
    const Driveline& line = *state.solvedCar.driveline;
    const std::string reason = refusal(shaftSetupOf(line), line);
    return reason.empty() ? std::string() : say("The driveline can't be computed: %1.", reason);
}

// Every row, or evenly spread ones with both ends among them.
void readRows(const Trace& trace, DrivelineReading& reading) {
    const std::size_t count = trace.stations.size();
    const std::size_t rows = std::min(count, kMostDrivelineRows);
    reading.rows.reserve(rows);
    for (std::size_t row = 0; row < rows; ++row) {
        const std::size_t at = rows < 2 ? 0 : row * (count - 1) / (rows - 1);
        reading.rows.push_back(reading.rowAt(trace.stations[at]));
    }
}

}  // namespace

DrivelineRow DrivelineReading::rowAt(const Station& station) const {
    DrivelineRow row;
    row.travel = station[Figure::travel];
    row.usable = station.usable && reader.has_value();
    if (row.usable) {
        row.coasting = reader->read(station.pose);
        row.woundUp = reader->read(bolthole::woundUp(station.pose, windUp.value_or(0)));
    }
    return row;
}

DrivelineReading readDriveline(const BenchState& state) {
    DrivelineReading reading;
    reading.problem = problemOf(state);
    if (!reading.problem.empty()) {
        return reading;
    }
    reading.line = *state.solvedCar.driveline;
    reading.setup = shaftSetupOf(reading.line);
    reading.windUp = reading.line.shaft.windUp;
    reading.reader.emplace(reading.line, reading.setup, state.solvedCar.rearTireRadius);
    reading.reader->setRide(state.trace.ride.pose);
    reading.rideStation = state.trace.ride;
    reading.ride = reading.rowAt(state.trace.ride);
    const double windUp = reading.windUp.value_or(0);
    reading.coasting = sweepDriveline(*reading.reader, state.trace, 0);
    reading.woundUp = sweepDriveline(*reading.reader, state.trace, windUp);
    const AxlePose& pose = state.trace.ride.pose;
    reading.settings = pinionSettings(*reading.reader, state.trace.ride, pose);
    reading.settingsWoundUp = pinionSettings(*reading.reader, state.trace.ride, woundUp(pose, windUp));
    readRows(state.trace, reading);
    return reading;
}

DrivelineReading readDrivelineBriefly(const Car& car) {
    constexpr int kSteps = 17;
    BenchState bench;
    bench.solvedCar = car;
    bench.solvedCar.travel.steps = std::min(car.travel.steps, kSteps);
    bench.trace = computeTrace(bench.solvedCar);
    return readDriveline(bench);
}

QString jointWords(std::size_t joint, std::size_t joints) {
    return joint == 0            ? QCoreApplication::translate("Driveline", "front joint")
           : joint + 1 == joints ? QCoreApplication::translate("Driveline", "rear joint")
                                 : QCoreApplication::translate("Driveline", "carrier joint");
}

QString noseWords(double angle) {
    const QString size = angleText(std::abs(angle));
    if (size == angleText(0)) {
        return QCoreApplication::translate("Driveline", "level");
    }
    return angle > 0 ? QCoreApplication::translate("Driveline", "%1 nose up").arg(size)
                     : QCoreApplication::translate("Driveline", "%1 nose down").arg(size);
}

}  // namespace bolthole
