// The single numbers of a measuring sheet, area by area, and what they are called there.
#pragma once

#include <QString>
#include <vector>

#include "widgets/papers/sheets/measuring_plan.h"

namespace bolthole {

/// How finely a tape is read: "to 1/16 in", "to 1 mm".
[[nodiscard]] QString planTapeStep(Units units);
/// Wheelbase, radii, tracks and what the front can move, lettered as the picture has them.
[[nodiscard]] std::vector<PlanNumber> planWheels();
/// Angles and slip yoke; the angles lettered.
[[nodiscard]] std::vector<PlanNumber> planDriveline();
/// What is to be known of one spring, shock, stop or strap.
[[nodiscard]] std::vector<PlanNumber> planSpring(const Car& car, int item);
/// Bump and droop of the rear axle.
[[nodiscard]] std::vector<PlanNumber> planTravel();
/// What each adjustable rod may be set to, and how far its ends may lean.
[[nodiscard]] std::vector<PlanLimits> planRodLimits(const Car& car);
/// The four scales, with and without the driver, and how high they stand.
[[nodiscard]] PlanTable planCorners(const Car& car);
/// Weights on other scales, and the lift.
[[nodiscard]] std::vector<PlanNumber> planWeighing(const Car& car);

}  // namespace bolthole
