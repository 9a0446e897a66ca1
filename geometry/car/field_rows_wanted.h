// Rows of the table of numbers: the target. See geometry/car/fields.h for what a row says. Read by
// geometry/car/field.h for the names alone and by geometry/car/field_table.cpp for everything; not guarded,
// as both read it.

BOLTHOLE_FIELD(
    wantedIcNear, .scope = Scope::wanted, .path = "ic_near", .place = kAt<&WantedWindow::icNear>,
    .quantity = Quantity::length, .limits = &kDistance, .words = "nearest target IC distance",
    .meaning =
        "Near side: distance ahead of the rear contact patch, behind it negative; absent: infinitely far. "
        "Sides count along 1/distance, so a window may run through infinity to behind the axle",
    .label = "IC, nearest", .name = "nearest target distance of the instant center",
    .howTo = {"At ride height, from the rear contact patch; minus is behind it. Both empty: any distance "
              "will do; one empty: infinitely far."})

BOLTHOLE_FIELD(wantedIcFar, .scope = Scope::wanted, .path = "ic_far", .place = kAt<&WantedWindow::icFar>,
               .quantity = Quantity::length, .limits = &kDistance, .words = "farthest target IC distance",
               .meaning = "Far side, as ic_near", .label = "IC, farthest",
               .name = "farthest target distance of the instant center",
               .howTo = {"At ride height, from the rear contact patch; minus is behind it. Both empty: any "
                         "distance will do; one empty: infinitely far."})

BOLTHOLE_FIELD(wantedLow, .scope = Scope::wanted, .path = "anti_squat_low",
               .place = kAt<&WantedWindow::antiSquatLow>, .quantity = Quantity::percent,
               .limits = &kWantedPercent, .words = "lowest target anti-squat", .meaning = "Least anti-squat",
               .label = "Anti-squat, min",
               .howTo = {"At ride height. 100: a steady pull neither opens nor closes the rear springs."})

BOLTHOLE_FIELD(wantedHigh, .scope = Scope::wanted, .path = "anti_squat_high",
               .place = kAt<&WantedWindow::antiSquatHigh>, .quantity = Quantity::percent,
               .limits = &kWantedPercent, .words = "highest target anti-squat", .meaning = "Most anti-squat",
               .label = "Anti-squat, max", .name = "highest target anti-squat", .howTo = {"At ride height."})

BOLTHOLE_FIELD(wantedIcLow, .scope = Scope::wanted, .path = "ic_low", .place = kAt<&WantedWindow::icLow>,
               .quantity = Quantity::length, .limits = &kDistance, .words = "lowest target IC height",
               .meaning = "Least height of the instant center above the ground; absent: any",
               .label = "IC height, min", .name = "lowest target height of the instant center",
               .howTo = {"Above the ground at ride height. Empty: any."})

BOLTHOLE_FIELD(wantedIcHigh, .scope = Scope::wanted, .path = "ic_high", .place = kAt<&WantedWindow::icHigh>,
               .quantity = Quantity::length, .limits = &kDistance, .words = "highest target IC height",
               .meaning = "And the most", .label = "IC height, max",
               .name = "largest target height of the instant center",
               .howTo = {"Above the ground at ride height. Empty: any."})

BOLTHOLE_FIELD(wantedChangeLow, .scope = Scope::wanted, .path = "anti_squat_change_low",
               .place = kAt<&WantedWindow::changeLow>, .quantity = Quantity::percent,
               .limits = &kWantedPercent, .words = "lowest target change of anti-squat through travel",
               .meaning = "Least of anti-squat at full bump minus at full droop; absent: any",
               .label = "Anti-squat change, min",
               .howTo = {"Anti-squat at full bump less that at full droop. Empty: any."})

BOLTHOLE_FIELD(wantedChangeHigh, .scope = Scope::wanted, .path = "anti_squat_change_high",
               .place = kAt<&WantedWindow::changeHigh>, .quantity = Quantity::percent,
               .limits = &kWantedPercent, .words = "highest target change of anti-squat through travel",
               .meaning = "And the most", .label = "Anti-squat change, max",
               .name = "largest target change of anti-squat through travel",
               .howTo = {"Anti-squat at full bump less that at full droop. Empty: any."})

BOLTHOLE_FIELD(wantedPinionChange, .scope = Scope::wanted, .path = "pinion_change",
               .place = kAt<&WantedWindow::pinionChange>, .quantity = Quantity::angle, .limits = &kJointLimit,
               .words = "largest target pinion change",
               .meaning = "Most the pinion may turn at ride, either way; absent: any",
               .label = "Pinion rotation, max", .name = "largest target change of the pinion's angle",
               .howTo = {"At ride height against now, nose up or down. Empty: any."})

BOLTHOLE_FIELD(
    wantedJoint, .scope = Scope::wanted, .path = "joint_angle", .place = kAt<&WantedWindow::joint>,
    .quantity = Quantity::angle, .limits = &kJointLimit, .words = "largest target joint angle",
    .meaning = "Largest operating angle of either driveshaft joint in travel; absent: any",
    .label = "Joint operating angle, max",
    .howTo = {"The larger of the two driveshaft joints' operating angles anywhere in travel. Empty: any."})
