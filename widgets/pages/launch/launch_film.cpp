#include "widgets/pages/launch/launch_film.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace bolthole {

namespace {

struct RowPosition {
    std::size_t index;
    double share;  // of the way to the next row
};

/// `rows` must not be empty.
RowPosition rowPositionAt(const std::vector<LaunchRow>& rows, double time) {
    const auto next = std::ranges::upper_bound(rows, time, std::ranges::less{},
                                               [](const LaunchRow& row) { return row.time; });
    if (next == rows.begin()) {
        return {0, 0};
    }
    const auto index = static_cast<std::size_t>(next - rows.begin()) - 1;
    if (next == rows.end()) {
        return {index, 0};
    }
    return {index, (time - rows[index].time) / (next->time - rows[index].time)};
}

constexpr std::array kColumns{&LaunchRow::time,         &LaunchRow::distance,    &LaunchRow::speed,
                              &LaunchRow::acceleration, &LaunchRow::engineSpeed, &LaunchRow::turbineSpeed,
                              &LaunchRow::slip,         &LaunchRow::rearTravel,  &LaunchRow::frontTravel,
                              &LaunchRow::pitch,        &LaunchRow::rearLoad,    &LaunchRow::frontLoad,
                              &LaunchRow::thrust,       &LaunchRow::grip,        &LaunchRow::forward,
                              &LaunchRow::up,           &LaunchRow::wheelSpin};
static_assert(sizeof(LaunchRow) == kColumns.size() * sizeof(double), "a column is not read between rows");

}  // namespace

LaunchRow LaunchFilm::at(double time) const {
    if (run.rows.empty()) {
        return {};
    }
    const auto [index, share] = rowPositionAt(run.rows, time);
    LaunchRow row = run.rows[index];
    if (share > 0) {
        for (double LaunchRow::*column : kColumns) {
            row.*column = std::lerp(run.rows[index].*column, run.rows[index + 1].*column, share);
        }
    }
    return row;
}

double LaunchFilm::rearTurnAt(double time) const {
    if (run.rows.empty()) {
        return 0;
    }
    const auto [index, share] = rowPositionAt(run.rows, time);
    return share > 0 ? std::lerp(rearTurn[index], rearTurn[index + 1], share) : rearTurn[index];
}

std::shared_ptr<const LaunchFilm> filmOf(const Car& car, const LaunchInputs& inputs,
                                         LaunchSimulator& simulator, const QString& called) {
    auto film = std::make_shared<LaunchFilm>(LaunchFilm{.car = car, .inputs = inputs, .called = called});
    simulator.run(inputs, {.every = kReadingStep}, film->run);
    film->reading = readLaunch(inputs, film->run);
    double turn = 0;
    for (std::size_t index = 0; index < film->run.rows.size(); ++index) {
        const LaunchRow& row = film->run.rows[index];
        if (index > 0) {
            const LaunchRow& last = film->run.rows[index - 1];
            turn += (row.time - last.time) * (row.wheelSpin + last.wheelSpin) / 2;
        }
        film->rearTurn.push_back(turn);
    }
    return film;
}

FilmPose::FilmPose(const LaunchFilm& film, double time)
    : row_(film.at(time)),
      station_(solveStation(film.car, row_.rearTravel)),
      cosine_(std::cos(row_.pitch)),
      sine_(std::sin(row_.pitch)) {
    if (!station_.usable) {
        station_.pose = {};
        station_.pose.z = film.car.rearTireRadius;
    }
    rearCenter_ = ofBody(station_.pose.x, station_.pose.z);
    frontCenter_ = ofBody(film.car.wheelbase, film.car.frontTireRadius + row_.frontTravel);
    center_ = ofBody(station_.icCarX, station_.icCarZ);
}

QPointF FilmPose::ofBody(double x, double z) const {
    return {cosine_ * x + sine_ * z, row_.up - sine_ * x + cosine_ * z};
}

}  // namespace bolthole
