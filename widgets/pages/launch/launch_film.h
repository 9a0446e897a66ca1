// A launch as it is played: its rows, read between them, and where the car's parts stand at any time.
#pragma once

#include <QPointF>
#include <QString>
#include <memory>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/dynamics/launch_reading.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {

/// One launch of one car. Copied nowhere: pages share it.
struct LaunchFilm {
    Car car;  ///< kept setups left out
    LaunchInputs inputs{};
    LaunchRun run{};  ///< rows kReadingStep apart
    LaunchReading reading{};
    std::vector<double> rearTurn{};  ///< rad the rear wheels have turned at each row
    QString called{};                ///< as the ghost: "before", or the change it shows

    /// Up to where there are rows, s; 0 where there are none.
    [[nodiscard]] double end() const { return run.rows.empty() ? 0 : run.rows.back().time; }
    /// The row at `time` s, straight lines between those there are, the first and last beyond the ends.
    [[nodiscard]] LaunchRow at(double time) const;
    /// rad the rear wheels have turned since the release.
    [[nodiscard]] double rearTurnAt(double time) const;
};

/// Runs the launch of a car with the numbers for it. `called`: what it is called as the ghost of another.
[[nodiscard]] std::shared_ptr<const LaunchFilm> filmOf(const Car& car, const LaunchInputs& inputs,
                                                       LaunchSimulator& simulator,
                                                       const QString& called = {});

/// A moment of a film as the side view needs it: points against the ground, x forward, y up, m, x from where
/// the rear axle's origin stands now (the picture goes along with the car).
class FilmPose {
  public:
    FilmPose(const LaunchFilm& film, double time);

    [[nodiscard]] const LaunchRow& row() const { return row_; }
    [[nodiscard]] const Station& station() const { return station_; }
    /// A point of the body, car frame.
    [[nodiscard]] QPointF ofBody(double x, double z) const;
    [[nodiscard]] QPointF rearCenter() const { return rearCenter_; }
    [[nodiscard]] QPointF frontCenter() const { return frontCenter_; }
    /// The instant center; not finite where there is none.
    [[nodiscard]] QPointF instantCenter() const { return center_; }

  private:
    LaunchRow row_;
    Station station_;
    double cosine_;
    double sine_;
    QPointF rearCenter_;
    QPointF frontCenter_;
    QPointF center_;
};

}  // namespace bolthole
