// A launch's curves over time, one below the other on one time axis.
#pragma once

#include "widgets/curves/curve_chart.h"
#include "widgets/pages/launch/launch_film.h"

namespace bolthole {

/// The cards in their order: rear load against what the thrust needs of it, thrust and grip, travel, slip,
/// engine and turbine, acceleration, distance. The baseline's curves are ghosts.
[[nodiscard]] std::vector<ChartCard> launchCurveCards(const LaunchFilm& film, const LaunchFilm* baseline,
                                                      Units units);

/// Shows them up to the film's end.
class LaunchCurves : public CurveChart {
    Q_OBJECT
  public:
    explicit LaunchCurves(QWidget* parent = nullptr);

    /// `baseline` may be null; `end`: of the time axis, s.
    void showFilms(const LaunchFilm& film, const LaunchFilm* baseline, double end, Units units);
};

}  // namespace bolthole
