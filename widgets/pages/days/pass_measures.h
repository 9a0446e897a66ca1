// What the sixty-foot time of a pass can be drawn against.
#pragma once

#include <QString>
#include <map>
#include <optional>
#include <vector>

#include "geometry/kinematics/trace.h"
#include "widgets/pages/days/pass_book.h"

namespace bolthole {

/// A number of a pass, of its setup or of its air.
enum class PassMeasure {
    antiSquat,
    icDistance,
    frontRebound,
    rearRebound,
    rearPressure,
    launchRpm,
    airTemperature,
    surfaceTemperature,
    densityAltitude
};
inline constexpr int kPassMeasures = 9;

/// "anti-squat at ride".
[[nodiscard]] QString measureName(PassMeasure measure);
/// Mark of the unit its values are in; empty for clicks.
[[nodiscard]] QString measureUnit(PassMeasure measure, Units units);

/// Reads measures off passes; each setup is solved once, when it is first asked about.
class MeasureReader {
  public:
    /// In the unit of measureUnit(); nothing where it was not entered or can't be computed. Left and right
    /// rear pressures are averaged; an instant center that is not ahead of the axle has no distance.
    [[nodiscard]] std::optional<double> read(const PassBook& book, std::size_t row, PassMeasure measure);
    /// Forgets the setups of a book that changed.
    void clear() { rides_.clear(); }

  private:
    [[nodiscard]] const Station& rideOf(const Car& setup);

    std::map<const Car*, Station> rides_;
};

}  // namespace bolthole
