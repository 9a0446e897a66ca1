// Rows of the table of numbers: the car itself. See geometry/car/fields.h for what a row says. Read by
// geometry/car/field.h for the names alone and by geometry/car/field_table.cpp for everything; not guarded,
// as both read it.

BOLTHOLE_FIELD(wheelbase, .scope = Scope::car, .path = "wheelbase", .access = kAt<&Car::wheelbase>,
               .quantity = Quantity::length, .limits = &kPositiveLength, .words = "wheelbase",
               .meaning = "Distance of the axles, fore and aft", .compared = Compared::always,
               .label = "Wheelbase",
               .howTo = {"Rear to front wheel center along the ground, wheels straight ahead. Plumb both "
                         "hubs to the floor on each side and take the mean of left and right."})

BOLTHOLE_FIELD(
    rearTireRadius, .scope = Scope::car, .path = "rear_tire_radius", .access = kAt<&Car::rearTireRadius>,
    .quantity = Quantity::length, .limits = &kPositiveLength, .words = "rear tire radius",
    .meaning =
        "Loaded radius of the rear tires: height of the axle's center above the ground at the measured pose",
    .compared = Compared::always, .label = "Rear tire radius", .name = "rear tire radius, loaded",
    .howTo = {"From the ground up to the center of the rear axle with the car's weight on the tires at race "
              "pressure. The loaded radius, not half the tire's diameter."})

BOLTHOLE_FIELD(frontTireRadius, .scope = Scope::car, .path = "front_tire_radius",
               .access = kAt<&Car::frontTireRadius>, .quantity = Quantity::length, .limits = &kPositiveLength,
               .words = "front tire radius", .meaning = "Loaded radius of the front tires",
               .compared = Compared::always, .label = "Front tire radius",
               .name = "front tire radius, loaded",
               .howTo = {
                   "From the ground up to the center of the front hub with the car's weight on the tires."})

BOLTHOLE_FIELD(rearTrack, .scope = Scope::car, .path = "rear_track", .access = kAt<&Car::rearTrack>,
               .quantity = Quantity::length, .limits = &kPositiveLength, .words = "rear track",
               .meaning = "Distance of the rear tires' centers; may be absent", .compared = Compared::always,
               .label = "Rear track",
               .howTo = {"Between the middles of the rear treads, at the ground. Needed for where the CG "
                         "lies laterally; may be left empty."})

BOLTHOLE_FIELD(
    leftFrontWeight, .scope = Scope::car, .path = "corner_weights.left_front",
    .access = kAt<&Car::cornerWeights, &CornerWeights::leftFront>, .quantity = Quantity::mass,
    .limits = &kWeight, .words = "left front weight", .meaning = "Left front", .compared = Compared::always,
    .label = "left", .name = "corner weight, left front",
    .howTo = {"Scale reading under the left front tire: car level on four scales at ride height, tires at "
              "pressure, fuel aboard as entered on the Weights page, driver in or out as chosen there. Roll "
              "it on, bounce both ends, let it settle. Chock the wheels before anyone works around the car."})

BOLTHOLE_FIELD(
    rightFrontWeight, .scope = Scope::car, .path = "corner_weights.right_front",
    .access = kAt<&Car::cornerWeights, &CornerWeights::rightFront>, .quantity = Quantity::mass,
    .limits = &kWeight, .words = "right front weight", .meaning = "Right front", .compared = Compared::always,
    .label = "right", .name = "corner weight, right front",
    .howTo = {"Scale reading under the right front tire: car level on four scales at ride height, tires at "
              "pressure, fuel aboard as entered on the Weights page, driver in or out as chosen there. Roll "
              "it on, bounce both ends, let it settle. Chock the wheels before anyone works around the car."})

BOLTHOLE_FIELD(
    leftRearWeight, .scope = Scope::car, .path = "corner_weights.left_rear",
    .access = kAt<&Car::cornerWeights, &CornerWeights::leftRear>, .quantity = Quantity::mass,
    .limits = &kWeight, .words = "left rear weight", .meaning = "Left rear", .compared = Compared::always,
    .label = "left", .name = "corner weight, left rear",
    .howTo = {"Scale reading under the left rear tire: car level on four scales at ride height, tires at "
              "pressure, fuel aboard as entered on the Weights page, driver in or out as chosen there. Roll "
              "it on, bounce both ends, let it settle. Chock the wheels before anyone works around the car."})

BOLTHOLE_FIELD(
    rightRearWeight, .scope = Scope::car, .path = "corner_weights.right_rear",
    .access = kAt<&Car::cornerWeights, &CornerWeights::rightRear>, .quantity = Quantity::mass,
    .limits = &kWeight, .words = "right rear weight", .meaning = "Right rear", .compared = Compared::always,
    .label = "right", .name = "corner weight, right rear",
    .howTo = {"Scale reading under the right rear tire: car level on four scales at ride height, tires at "
              "pressure, fuel aboard as entered on the Weights page, driver in or out as chosen there. Roll "
              "it on, bounce both ends, let it settle. Chock the wheels before anyone works around the car."})

BOLTHOLE_FIELD(
    cgHeight, .scope = Scope::car, .path = "cg_height", .access = kAt<&Car::cgHeight>,
    .quantity = Quantity::length, .limits = &kPositiveLength, .words = "CG height",
    .meaning = "Height of the center of gravity above the ground at the measured pose",
    .tool = MeasuringTool::estimate, .compared = Compared::always, .label = "CG height",
    .name = "height of the center of gravity",
    .howTo = {"Height of the whole car's center of gravity above the ground at ride height: from "
              "weighing with one end raised, or an honest estimate. Raising an end for weighing is for a "
              "shop with the ramps, stops and restraints for it: see the Weights page."})

BOLTHOLE_FIELD(bump, .scope = Scope::car, .path = "travel.bump",
               .access = kAt<&Car::travel, &TravelRange::bump>, .quantity = Quantity::length,
               .limits = &kTravelLength, .words = "bump travel", .meaning = "Rear axle up from ride",
               .fallback = TravelRange{}.bump, .isMeasured = false, .compared = Compared::always,
               .label = "Bump",
               .howTo = {"How far the axle can rise from ride height before the stops take over: tape the "
                         "gap between stop and pad."},
               .caution = Caution::bench)

BOLTHOLE_FIELD(droop, .scope = Scope::car, .path = "travel.droop",
               .access = kAt<&Car::travel, &TravelRange::droop>, .quantity = Quantity::length,
               .limits = &kTravelLength, .words = "droop travel", .meaning = "Rear axle down from ride",
               .fallback = TravelRange{}.droop, .isMeasured = false, .compared = Compared::always,
               .label = "Droop",
               .howTo = {
                   "How far the axle can drop from ride height until shocks or straps are at their end. "
                   "Stands under the frame, a jack under the axle only to lower it, wheels chocked."})

BOLTHOLE_FIELD(
    steps, .scope = Scope::car, .path = "travel.steps", .access = kAt<&Car::travel, &TravelRange::steps>,
    .quantity = Quantity::count, .limits = &kSteps, .words = "travel steps",
    .meaning = "Rows of the sweep, evenly spaced, both ends included", .fallback = TravelRange{}.steps,
    .compared = Compared::never, .label = "Rows of the sweep", .name = "rows of the sweep",
    .howTo = {
        "How many positions are computed from full droop to full bump, both ends included: 2 to 100,000."})

BOLTHOLE_FIELD(frontRatio, .scope = Scope::car, .path = "travel.front_ratio",
               .access = kAt<&Car::travel, &TravelRange::frontRatio>, .quantity = Quantity::ratio,
               .limits = &kRatio, .words = "front travel ratio",
               .meaning =
                   "Front travel for a rear travel of 1: 1 both ends together, 0 rear only, negative one up "
                   "and the other down",
               .fallback = TravelRange{}.frontRatio, .isMeasured = false, .compared = Compared::always,
               .label = "Front per rear travel", .name = "front travel per rear travel",
               .howTo = {"How far the front axle moves for each inch of the rear: 1 both ends together, 0 "
                         "rear only, minus: one end rises while the other drops."})

BOLTHOLE_FIELD(frontTrack, .scope = Scope::car, .path = "front_track", .access = kAt<&Car::frontTrack>,
               .quantity = Quantity::length, .limits = &kPositiveLength, .words = "front track",
               .meaning = "Distance of the front tires' centers; may be absent", .label = "Front track",
               .howTo = {"Between the middles of the front treads, at the ground, wheels straight ahead. "
                         "Needed for where the CG lies laterally; may be left empty."})
