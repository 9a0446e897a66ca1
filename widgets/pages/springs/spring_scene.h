// What picture and curves of the Springs page show of the findings.
#pragma once

#include "widgets/curves/chart_axis.h"
#include "widgets/curves/chart_data.h"
#include "widgets/pages/springs/spring_findings.h"
#include "widgets/pages/springs/springs_picture.h"

namespace bolthole {

/// Axle and parts at `travel` (m).
[[nodiscard]] SpringsScene springsScene(const Car& car, const SpringFindings& found, double travel,
                                        std::span<const LineFigures> there, int chosen);

/// What the curves of a part show.
struct SpringChart {
    ChartAxis axis;
    std::vector<ChartCard> cards;                 ///< length, motion ratio, wheel rate
    std::vector<std::vector<ChartValue>> values;  ///< at the cursor, one a series
};
/// Of one of Car::springs, which is not refused. `there`: the lines' figures at `travel` (m), the cursor's.
[[nodiscard]] SpringChart springChart(const Car& car, const SpringFindings& found, double travel,
                                      std::span<const LineFigures> there, int chosen);

}  // namespace bolthole
