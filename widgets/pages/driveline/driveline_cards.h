// What the driveline's curves show: joint angles, equivalent angle, speed swing and plunge over travel.
#pragma once

#include <vector>

#include "widgets/curves/chart_data.h"
#include "widgets/pages/driveline/driveline_reading.h"
#include "widgets/scales/travel_steps.h"

namespace bolthole {

/// The four cards: each curve coasting, with a ghost wound up behind it where a wind-up is entered. Bounds
/// are rules; one so far off that the curves would shrink to nothing is not reached.
[[nodiscard]] std::vector<ChartCard> drivelineCurveCards(const DrivelineReading& reading, Units units,
                                                         const std::vector<OutOfReach>& outOfReach);

/// What stands at the cursor in `cards`, which are the reading's.
[[nodiscard]] std::vector<std::vector<ChartValue>> drivelineCurveValues(const DrivelineReading& reading,
                                                                        const std::vector<ChartCard>& cards,
                                                                        const DrivelineRow& cursor);

}  // namespace bolthole
