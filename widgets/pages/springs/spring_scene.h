// What picture and curves of the Springs page show of the findings.
#pragma once

#include "widgets/pages/springs/spring_curves.h"
#include "widgets/pages/springs/spring_findings.h"
#include "widgets/pages/springs/springs_picture.h"

namespace bolthole {

/// Axle and parts at `travel` (m).
[[nodiscard]] SpringsScene springsScene(const Car& car, const SpringFindings& found, double travel,
                                        std::span<const LineFigures> there, int chosen);

/// Curves of one of Car::springs, which is not refused. `there`: the lines' figures at `travel` (m).
[[nodiscard]] SpringCurveData springCurves(const Car& car, const SpringFindings& found, double travel,
                                           std::span<const LineFigures> there, int chosen);

}  // namespace bolthole
