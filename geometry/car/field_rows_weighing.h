// Rows of the table of numbers: what was weighed, the lift and the wheel rates. See geometry/car/fields.h for
// what a row says. Read by geometry/car/field.h for the names alone and by geometry/car/field_table.cpp for
// everything; not guarded, as both read it.

BOLTHOLE_FIELD(otherLeftFront, .scope = Scope::car, .path = "weighing.other_corner_weights.left_front",
               .access = kAt<&Car::weighing, &EnteredWeighing::other, &EnteredCorners::leftFront>,
               .quantity = Quantity::mass, .limits = &kWeight, .words = "left front weight, other reading",
               .meaning = "Left front")

BOLTHOLE_FIELD(otherRightFront, .scope = Scope::car, .path = "weighing.other_corner_weights.right_front",
               .access = kAt<&Car::weighing, &EnteredWeighing::other, &EnteredCorners::rightFront>,
               .quantity = Quantity::mass, .limits = &kWeight, .words = "right front weight, other reading",
               .meaning = "Right front")

BOLTHOLE_FIELD(otherLeftRear, .scope = Scope::car, .path = "weighing.other_corner_weights.left_rear",
               .access = kAt<&Car::weighing, &EnteredWeighing::other, &EnteredCorners::leftRear>,
               .quantity = Quantity::mass, .limits = &kWeight, .words = "left rear weight, other reading",
               .meaning = "Left rear")

BOLTHOLE_FIELD(otherRightRear, .scope = Scope::car, .path = "weighing.other_corner_weights.right_rear",
               .access = kAt<&Car::weighing, &EnteredWeighing::other, &EnteredCorners::rightRear>,
               .quantity = Quantity::mass, .limits = &kWeight, .words = "right rear weight, other reading",
               .meaning = "Right rear")

BOLTHOLE_FIELD(scaleUncertainty, .scope = Scope::car, .path = "weighing.scale_uncertainty",
               .access = kAt<&Car::weighing, &EnteredWeighing::scaleUncertainty>, .quantity = Quantity::mass,
               .limits = &kWeightUncertainty, .words = "scale uncertainty",
               .meaning = "Standard uncertainty of one pad's reading; absent: 0.5 kg", .isMeasured = false,
               .label = "Pad, ±", .name = "scales, ± of one pad",
               .howTo = {"How far one pad's reading may be off: 95 of 100 lie within. Roll the car off and "
                         "on a few times; twice what the readings scatter is a good figure. Left empty, "
                         "± 1 kg (2.2 lb) is taken (common practice, no source)."})

BOLTHOLE_FIELD(driverMass, .scope = Scope::car, .path = "weighing.driver.mass",
               .access = kAt<&Car::weighing, &EnteredWeighing::driver, &EnteredDriver::mass>,
               .quantity = Quantity::mass, .limits = &kWeight, .words = "driver's weight",
               .meaning = "What the driver weighs as raced", .label = "Weight",
               .howTo = {"The driver dressed to drive, helmet and all, on a bathroom scale."})

BOLTHOLE_FIELD(
    driverAt, .scope = Scope::car, .path = "weighing.driver.at",
    .access = kAt<&Car::weighing, &EnteredWeighing::driver, &EnteredDriver::at>, .quantity = Quantity::length,
    .limits = &kPosition, .words = "driver", .uncertainty = kSeatUncertainty, .name = "driver's seat, %1",
    .howTo = {
        "From the rear axle's centerline forward to the driver's middle, seated: about a hand's width ahead "
        "of the seat's back, at the belt buckle.",
        "From the car's center plane to the middle of the seat; plus is left.",
        "From level ground up to the driver's middle, seated: about a hand's width over the seat cushion."})

BOLTHOLE_FIELD(padLeftFront, .scope = Scope::car, .path = "weighing.pads.left_front",
               .access = kAt<&Car::weighing, &EnteredWeighing::pads, &EnteredCorners::leftFront>,
               .quantity = Quantity::length, .limits = &kPadHeight, .words = "height of the left front pad",
               .meaning = "Left front", .label = "left", .name = "pad height, left front",
               .howTo = {"How high the top of this pad stands over any one level: a water level, a laser, or "
                         "a straight edge with a level on it from pad to pad. Take one pad as 0 and measure "
                         "the others against it, before the car rolls on. All four or none are used."})

BOLTHOLE_FIELD(padRightFront, .scope = Scope::car, .path = "weighing.pads.right_front",
               .access = kAt<&Car::weighing, &EnteredWeighing::pads, &EnteredCorners::rightFront>,
               .quantity = Quantity::length, .limits = &kPadHeight, .words = "height of the right front pad",
               .meaning = "Right front", .label = "right", .name = "pad height, right front",
               .howTo = {"How high the top of this pad stands over any one level: a water level, a laser, or "
                         "a straight edge with a level on it from pad to pad. Take one pad as 0 and measure "
                         "the others against it, before the car rolls on. All four or none are used."})

BOLTHOLE_FIELD(padLeftRear, .scope = Scope::car, .path = "weighing.pads.left_rear",
               .access = kAt<&Car::weighing, &EnteredWeighing::pads, &EnteredCorners::leftRear>,
               .quantity = Quantity::length, .limits = &kPadHeight, .words = "height of the left rear pad",
               .meaning = "Left rear", .label = "left", .name = "pad height, left rear",
               .howTo = {"How high the top of this pad stands over any one level: a water level, a laser, or "
                         "a straight edge with a level on it from pad to pad. Take one pad as 0 and measure "
                         "the others against it, before the car rolls on. All four or none are used."})

BOLTHOLE_FIELD(padRightRear, .scope = Scope::car, .path = "weighing.pads.right_rear",
               .access = kAt<&Car::weighing, &EnteredWeighing::pads, &EnteredCorners::rightRear>,
               .quantity = Quantity::length, .limits = &kPadHeight, .words = "height of the right rear pad",
               .meaning = "Right rear", .label = "right", .name = "pad height, right rear",
               .howTo = {"How high the top of this pad stands over any one level: a water level, a laser, or "
                         "a straight edge with a level on it from pad to pad. Take one pad as 0 and measure "
                         "the others against it, before the car rolls on. All four or none are used."})

BOLTHOLE_FIELD(
    ticketFront, .scope = Scope::car, .path = "weighing.axle_ticket.front",
    .access = kAt<&Car::weighing, &EnteredWeighing::ticket, &EnteredTicket::front>,
    .quantity = Quantity::mass, .limits = &kWeight, .words = "front axle on the truck-scale ticket",
    .meaning = "Front axle", .tool = MeasuringTool::otherScale, .label = "Front axle",
    .name = "truck-scale ticket, front axle",
    .howTo = {
        "From a truck scale's ticket or any other scale that takes a whole axle or the whole car. Nobody "
        "stands on the scale or between car and scale while it reads; engine off, car in park or chocked."})

BOLTHOLE_FIELD(
    ticketRear, .scope = Scope::car, .path = "weighing.axle_ticket.rear",
    .access = kAt<&Car::weighing, &EnteredWeighing::ticket, &EnteredTicket::rear>, .quantity = Quantity::mass,
    .limits = &kWeight, .words = "rear axle on the truck-scale ticket", .meaning = "Rear axle",
    .tool = MeasuringTool::otherScale, .label = "Rear axle", .name = "truck-scale ticket, rear axle",
    .howTo = {
        "From a truck scale's ticket or any other scale that takes a whole axle or the whole car. Nobody "
        "stands on the scale or between car and scale while it reads; engine off, car in park or chocked."})

BOLTHOLE_FIELD(
    ticketTotal, .scope = Scope::car, .path = "weighing.axle_ticket.total",
    .access = kAt<&Car::weighing, &EnteredWeighing::ticket, &EnteredTicket::total>,
    .quantity = Quantity::mass, .limits = &kWeight, .words = "total on the truck-scale ticket",
    .meaning = "Whole car", .tool = MeasuringTool::otherScale, .label = "Whole car",
    .name = "truck-scale ticket, whole car",
    .howTo = {
        "From a truck scale's ticket or any other scale that takes a whole axle or the whole car. Nobody "
        "stands on the scale or between car and scale while it reads; engine off, car in park or chocked."})

BOLTHOLE_FIELD(ticketUncertainty, .scope = Scope::car, .path = "weighing.axle_ticket.uncertainty",
               .access = kAt<&Car::weighing, &EnteredWeighing::ticket, &EnteredTicket::uncertainty>,
               .quantity = Quantity::mass, .limits = &kWeightUncertainty,
               .words = "uncertainty of the truck scale",
               .meaning = "Standard uncertainty of one reading; absent: 10 kg", .isMeasured = false,
               .label = "Its ±", .name = "truck-scale ticket, ±",
               .howTo = {
                   "How far one reading of that scale may be off: 95 of 100 lie within. Its smallest step is "
                   "the least. Left empty, ± 20 kg (43 lb) is taken (common practice, no source)."})

BOLTHOLE_FIELD(liftHeight, .scope = Scope::car, .path = "lift.height",
               .access = kAt<&Car::lift, &EnteredLift::height>, .quantity = Quantity::length,
               .limits = &kPositiveLength, .words = "lift",
               .meaning = "How far that end's tires stood above the other end's", .label = "Raised by",
               .name = "lift: how far the end was raised",
               .howTo = {
                   "How much higher the tires of the raised end stand than those of the other end, at "
                   "the contact patches. A job for a shop that has the ramps, stops and restraints for "
                   "it: the car held so that it can't run off or tip, the wheels free to roll a little, "
                   "backup supports just clear of the raised end, nobody under, before or behind the "
                   "car. The ± beside the height says what this lift is worth."})

BOLTHOLE_FIELD(
    liftReading, .scope = Scope::car, .path = "lift.reading",
    .access = kAt<&Car::lift, &EnteredLift::reading>, .quantity = Quantity::mass, .limits = &kWeight,
    .words = "reading with one end raised", .meaning = "Both its tires", .label = "Axle then read",
    .name = "lift: reading of that axle with the car raised",
    .howTo = {"Both tires of the axle that stays on the ground, added, with the other end raised and "
              "settled: springs blocked at ride height, fluids and loads as they were when level, wheels "
              "free to roll a little, as a dragging brake falsifies the scales. Read it from beside the "
              "display, away from the car."})

BOLTHOLE_FIELD(frontWheelRate, .scope = Scope::car, .path = "wheel_rates.front.wheel",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::wheel>,
               .quantity = Quantity::rate, .limits = &kRate, .words = "front wheel rate",
               .meaning = "Body over one wheel, both wheels moving alike", .label = "Front wheel rate",
               .name = "front wheel rate, one wheel",
               .howTo = {
                   "How much more one wheel carries for each unit of length the body comes down over it, "
                   "both wheels moving alike, tire left out. From the spring's rate times its motion ratio "
                   "squared; or load the body over both front wheels with known weights, spread level, and "
                   "divide half their weight by how far it comes down at the wheels, tires left out."})

BOLTHOLE_FIELD(
    frontTireRate, .scope = Scope::car, .path = "wheel_rates.front.tire",
    .access = kAt<&Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::tire>,
    .quantity = Quantity::rate, .limits = &kRate, .words = "front tire rate",
    .meaning = "One tire; absent: taken as rigid", .label = "Front tire rate",
    .name = "front tire rate, one tire",
    .howTo = {
        "How much more one tire carries for each unit of length it is pressed flatter: from its manufacturer "
        "at "
        "race pressure, or by loading it on a scale: read load and height of the wheel's center twice, and "
        "divide the change of one by the change of the other. Left empty, tires are taken as rigid."})

BOLTHOLE_FIELD(
    frontRollRate, .scope = Scope::car, .path = "wheel_rates.front.roll",
    .access = kAt<&Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::roll>,
    .quantity = Quantity::rollRate, .limits = &kRollRate, .words = "front roll rate",
    .meaning = "Body leaning over this end's wheels, bar included; absent: springs at the wheels, no bar",
    .label = "Front roll rate", .name = "front roll rate, bar included",
    .howTo = {
        "Torque that leans the body over this end's wheels by one degree, bar included, tires left out. From "
        "the springs alone it is the wheel rate times half the square of the distance between them; the "
        "bar's own comes on top. Left empty, springs at the wheels and no bar are taken."})

BOLTHOLE_FIELD(rearWheelRate, .scope = Scope::car, .path = "wheel_rates.rear.wheel",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::wheel>,
               .quantity = Quantity::rate, .limits = &kRate, .words = "rear wheel rate",
               .meaning = "Body over one wheel, both wheels moving alike", .label = "Rear wheel rate",
               .name = "rear wheel rate, one wheel",
               .howTo = {"How much more one wheel carries for each unit of length the body comes down over "
                         "it, both wheels moving alike, tire left out. Left empty, it is computed from the "
                         "springs' mounts and rates on the Springs page."})

BOLTHOLE_FIELD(
    rearTireRate, .scope = Scope::car, .path = "wheel_rates.rear.tire",
    .access = kAt<&Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::tire>,
    .quantity = Quantity::rate, .limits = &kRate, .words = "rear tire rate",
    .meaning = "One tire; absent: taken as rigid", .label = "Rear tire rate",
    .name = "rear tire rate, one tire",
    .howTo = {
        "How much more one tire carries for each unit of length it is pressed flatter: from its manufacturer "
        "at "
        "race pressure, or by loading it on a scale: read load and height of the wheel's center twice, and "
        "divide the change of one by the change of the other. Left empty, tires are taken as rigid."})

BOLTHOLE_FIELD(
    rearRollRate, .scope = Scope::car, .path = "wheel_rates.rear.roll",
    .access = kAt<&Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::roll>,
    .quantity = Quantity::rollRate, .limits = &kRollRate, .words = "rear roll rate",
    .meaning = "Body leaning over this end's wheels, bar included; absent: springs at the wheels, no bar",
    .label = "Rear roll rate", .name = "rear roll rate, bar included",
    .howTo = {
        "Torque that leans the body over the rear wheels by one degree, bar included, tires left out. A live "
        "axle's springs stand closer together than its wheels, so it leans more easily than its wheel rate "
        "says. Left empty, it is computed from the springs where they are known, without a bar."})

BOLTHOLE_FIELD(frontTirePressure, .scope = Scope::car, .path = "wheel_rates.front.tire_pressure",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::tirePressure>,
               .quantity = Quantity::pressure, .limits = &kPressure,
               .words = "pressure of the front tire rate",
               .meaning = "Over the air around, at which `tire` was read; absent: not known",
               .label = "Rate read at", .name = "front tires, pressure the rate was read at",
               .howTo = {
                   "What the tire had when its rate was read, by the gauge you use at the track, cold or "
                   "hot as you hold it there."})

BOLTHOLE_FIELD(frontOtherTire, .scope = Scope::car, .path = "wheel_rates.front.other_tire",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::otherTire>,
               .quantity = Quantity::rate, .limits = &kRate, .words = "front tire rate at another pressure",
               .meaning = "One tire, at `other_pressure`; absent: the rate is one for all pressures",
               .label = "Second rate", .name = "front tire rate at another pressure, one tire",
               .howTo = {
                   "The same tire read once more, a few psi higher or lower. Between the two readings the "
                   "rate is taken along a straight line."})

BOLTHOLE_FIELD(frontOtherPressure, .scope = Scope::car, .path = "wheel_rates.front.other_pressure",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::otherPressure>,
               .quantity = Quantity::pressure, .limits = &kPressure,
               .words = "other pressure of the front tire rate", .meaning = "At which `other_tire` was read",
               .label = "Second read at", .name = "front tires, pressure the other rate was read at",
               .howTo = {"What the tire had at the second reading of its rate."})

BOLTHOLE_FIELD(frontPressure, .scope = Scope::car, .path = "wheel_rates.front.pressure",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::pressure>,
               .quantity = Quantity::pressure, .limits = &kPressure, .words = "front tire pressure",
               .meaning = "What the tires have now; absent: that at which `tire` was read",
               .label = "Pressure now", .name = "front tires, pressure now",
               .howTo = {"What both front tires have as the car would launch now. With the rate read at two "
                         "pressures this sets the tire rate; what pressure does to grip and to the loaded "
                         "radius is not computed."})

BOLTHOLE_FIELD(rearTirePressure, .scope = Scope::car, .path = "wheel_rates.rear.tire_pressure",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::tirePressure>,
               .quantity = Quantity::pressure, .limits = &kPressure,
               .words = "pressure of the rear tire rate",
               .meaning = "Over the air around, at which `tire` was read; absent: not known",
               .label = "Rate read at", .name = "rear tires, pressure the rate was read at",
               .howTo = {
                   "What the tire had when its rate was read, by the gauge you use at the track, cold or "
                   "hot as you hold it there."})

BOLTHOLE_FIELD(rearOtherTire, .scope = Scope::car, .path = "wheel_rates.rear.other_tire",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::otherTire>,
               .quantity = Quantity::rate, .limits = &kRate, .words = "rear tire rate at another pressure",
               .meaning = "One tire, at `other_pressure`; absent: the rate is one for all pressures",
               .label = "Second rate", .name = "rear tire rate at another pressure, one tire",
               .howTo = {
                   "The same tire read once more, a few psi higher or lower. Between the two readings the "
                   "rate is taken along a straight line."})

BOLTHOLE_FIELD(rearOtherPressure, .scope = Scope::car, .path = "wheel_rates.rear.other_pressure",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::otherPressure>,
               .quantity = Quantity::pressure, .limits = &kPressure,
               .words = "other pressure of the rear tire rate", .meaning = "At which `other_tire` was read",
               .label = "Second read at", .name = "rear tires, pressure the other rate was read at",
               .howTo = {"What the tire had at the second reading of its rate."})

BOLTHOLE_FIELD(rearPressure, .scope = Scope::car, .path = "wheel_rates.rear.pressure",
               .access = kAt<&Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::pressure>,
               .quantity = Quantity::pressure, .limits = &kPressure, .words = "rear tire pressure",
               .meaning = "What the tires have now; absent: that at which `tire` was read",
               .label = "Pressure now", .name = "rear tires, pressure now",
               .howTo = {"What both rear tires have as the car would launch now. With the rate read at two "
                         "pressures this sets the tire rate; what pressure does to grip and to the loaded "
                         "radius is not computed."})
