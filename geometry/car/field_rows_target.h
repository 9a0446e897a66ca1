// Rows of the table of numbers: the target. See geometry/car/fields.h for what a row says. Read by
// geometry/car/field.h for the names alone and by geometry/car/field_table.cpp for everything; not guarded,
// as both read it.

BOLTHOLE_FIELD(
    targetIcNear, .scope = Scope::target, .path = "ic_near", .access = kAt<&TargetWindow::icNear>,
    .quantity = Quantity::length, .limits = &kDistance, .words = "nearest target IC distance",
    .meaning =
        "Near side: distance ahead of the rear contact patch, behind it negative; absent: infinitely far. "
        "Sides count along 1/distance, so a window may run through infinity to behind the axle",
    .label = "IC, nearest", .name = "nearest target distance of the instant center",
    .howTo = {"At ride height, from the rear contact patch; minus is behind it. Both empty: any distance "
              "will do; one empty: infinitely far."})

BOLTHOLE_FIELD(targetIcFar, .scope = Scope::target, .path = "ic_far", .access = kAt<&TargetWindow::icFar>,
               .quantity = Quantity::length, .limits = &kDistance, .words = "farthest target IC distance",
               .meaning = "Far side, as ic_near", .label = "IC, farthest",
               .name = "farthest target distance of the instant center",
               .howTo = {"At ride height, from the rear contact patch; minus is behind it. Both empty: any "
                         "distance will do; one empty: infinitely far."})

BOLTHOLE_FIELD(targetLow, .scope = Scope::target, .path = "anti_squat_low",
               .access = kAt<&TargetWindow::antiSquatLow>, .quantity = Quantity::percent,
               .limits = &kTargetPercent, .words = "lowest target anti-squat", .meaning = "Least anti-squat",
               .label = "Anti-squat, min",
               .howTo = {"At ride height. 100: a steady pull neither opens nor closes the rear springs."})

BOLTHOLE_FIELD(targetHigh, .scope = Scope::target, .path = "anti_squat_high",
               .access = kAt<&TargetWindow::antiSquatHigh>, .quantity = Quantity::percent,
               .limits = &kTargetPercent, .words = "highest target anti-squat", .meaning = "Most anti-squat",
               .label = "Anti-squat, max", .name = "highest target anti-squat", .howTo = {"At ride height."})

BOLTHOLE_FIELD(targetIcLow, .scope = Scope::target, .path = "ic_low", .access = kAt<&TargetWindow::icLow>,
               .quantity = Quantity::length, .limits = &kDistance, .words = "lowest target IC height",
               .meaning = "Least height of the instant center above the ground; absent: any",
               .label = "IC height, min", .name = "lowest target height of the instant center",
               .howTo = {"Above the ground at ride height. Empty: any."})

BOLTHOLE_FIELD(targetIcHigh, .scope = Scope::target, .path = "ic_high", .access = kAt<&TargetWindow::icHigh>,
               .quantity = Quantity::length, .limits = &kDistance, .words = "highest target IC height",
               .meaning = "And the most", .label = "IC height, max",
               .name = "largest target height of the instant center",
               .howTo = {"Above the ground at ride height. Empty: any."})

BOLTHOLE_FIELD(targetChangeLow, .scope = Scope::target, .path = "anti_squat_change_low",
               .access = kAt<&TargetWindow::changeLow>, .quantity = Quantity::percent,
               .limits = &kTargetPercent, .words = "lowest target change of anti-squat through travel",
               .meaning = "Least of anti-squat at full bump minus at full droop; absent: any",
               .label = "Anti-squat change, min",
               .howTo = {"Anti-squat at full bump less that at full droop. Empty: any."})

BOLTHOLE_FIELD(targetChangeHigh, .scope = Scope::target, .path = "anti_squat_change_high",
               .access = kAt<&TargetWindow::changeHigh>, .quantity = Quantity::percent,
               .limits = &kTargetPercent, .words = "highest target change of anti-squat through travel",
               .meaning = "And the most", .label = "Anti-squat change, max",
               .name = "largest target change of anti-squat through travel",
               .howTo = {"Anti-squat at full bump less that at full droop. Empty: any."})

BOLTHOLE_FIELD(targetPinionChange, .scope = Scope::target, .path = "pinion_change",
               .access = kAt<&TargetWindow::pinionChange>, .quantity = Quantity::angle,
               .limits = &kJointLimit, .words = "largest target pinion change",
               .meaning = "Most the pinion may turn at ride, either way; absent: any",
               .label = "Pinion rotation, max", .name = "largest target change of the pinion's angle",
               .howTo = {"At ride height against now, nose up or down. Empty: any."})

BOLTHOLE_FIELD(
    targetJoint, .scope = Scope::target, .path = "joint_angle", .access = kAt<&TargetWindow::joint>,
    .quantity = Quantity::angle, .limits = &kJointLimit, .words = "largest target joint angle",
    .meaning = "Largest operating angle of either driveshaft joint in travel; absent: any",
    .label = "Joint operating angle, max",
    .howTo = {"The larger of the two driveshaft joints' operating angles anywhere in travel. Empty: any."})
