// Rows of the table of numbers: the driveline. See geometry/car/fields.h for what a row says. Read by
// geometry/car/field.h for the names alone and by geometry/car/field_table.cpp for everything; not guarded,
// as both read it.

BOLTHOLE_FIELD(pinionAngle, .scope = Scope::driveline, .path = "pinion_angle",
               .access = kAt<&Driveline::pinionAngle>, .quantity = Quantity::angle, .limits = &kAngle,
               .words = "pinion angle",
               .meaning = "Inclination of the pinion's axis at the measured pose, nose up +",
               .compared = Compared::always, .label = "Pinion, nose up", .name = "pinion angle, nose up",
               .howTo = {"Angle finder on a machined face of the pinion's yoke, at ride height, zeroed on "
                         "the level floor; nose up is plus. Transmission in neutral, ignition off."},
               .caution = Caution::bench)

BOLTHOLE_FIELD(
    pinionJoint, .scope = Scope::driveline, .path = "pinion_joint", .access = kAt<&Driveline::pinionJoint>,
    .quantity = Quantity::length, .limits = &kPosition, .words = "rear U-joint",
    .meaning = "Center of the rear joint, on the axle: forward, left, up", .compared = Compared::always,
    .name = "rear U-joint, %1",
    .howTo = {"From the axle's centerline forward to the center of the rear U-joint's cross, along the car. "
              "Drop a plumb bob from both and tape between the marks. Transmission in neutral, ignition off.",
              "Sideways from the car's center plane to the center of the rear U-joint; plus is left. "
              "Transmission in neutral, ignition off.",
              "From level ground up to the center of the rear U-joint's cross, the car at ride height. "
              "Transmission in neutral, ignition off."},
    .caution = Caution::bench)

BOLTHOLE_FIELD(
    outputAngle, .scope = Scope::driveline, .path = "output_angle", .access = kAt<&Driveline::outputAngle>,
    .quantity = Quantity::angle, .limits = &kAngle, .words = "output angle",
    .meaning = "Inclination of the transmission's output axis, rising forward +",
    .compared = Compared::always, .label = "Output, rising forward",
    .name = "transmission output angle, rising forward",
    .howTo = {"Angle finder on the transmission's output yoke or a face parallel to its shaft, zeroed on the "
              "level floor; rising toward the front is plus. Transmission in neutral, ignition off."},
    .caution = Caution::bench)

BOLTHOLE_FIELD(
    outputJoint, .scope = Scope::driveline, .path = "output_joint", .access = kAt<&Driveline::outputJoint>,
    .quantity = Quantity::length, .limits = &kPosition, .words = "front U-joint",
    .meaning = "Center of the front joint, on the chassis: forward, left, up", .compared = Compared::always,
    .name = "front U-joint, %1",
    .howTo = {"From the axle's centerline forward to the center of the front U-joint's cross, along the car. "
              "Drop a plumb bob from both and tape between the marks. Transmission in neutral, ignition off.",
              "Sideways from the car's center plane to the center of the front U-joint; plus is left. "
              "Transmission in neutral, ignition off.",
              "From level ground up to the center of the front U-joint's cross, the car at ride height. "
              "Transmission in neutral, ignition off."},
    .caution = Caution::bench)

BOLTHOLE_FIELD(
    jointLimit, .scope = Scope::driveline, .path = "joint_limit", .access = kAt<&Driveline::jointLimit>,
    .quantity = Quantity::angle, .limits = &kJointLimit, .words = "driveshaft joint angle limit",
    .meaning = "Largest operating angle of either driveshaft joint in travel; absent: no limit known",
    .isMeasured = false, .compared = Compared::never, .label = "Joint operating angle, max",
    .name = "driveshaft joints, largest operating angle",
    .howTo = {
        "The largest angle either driveshaft joint may work at anywhere in the travel, from the "
        "manufacturer's table for the speed it turns at, or from where its yokes would touch. Left empty, "
        "nothing is marked."})

BOLTHOLE_FIELD(
    carrierJoint, .scope = Scope::driveline, .path = "carrier_joint",
    .access = kAt<&Driveline::shaft, &EnteredShaft::carrierJoint>, .quantity = Quantity::length,
    .limits = &kPosition, .words = "carrier joint", .name = "carrier joint, %1",
    .howTo =
        {"From the rear axle's centerline forward to the center of the cross of the joint behind the carrier "
         "bearing, along the car. Drop a plumb bob from both and tape between the marks. Left empty, the "
         "shaft is of one piece.",
         "Sideways from the car's center plane to the center of the cross of the joint behind the carrier "
         "bearing; plus is left, 0 is in the center plane. Left empty, the shaft is of one piece.",
         "From level ground up to the center of the cross of the joint behind the carrier bearing, the car "
         "at ride height. Left empty, the shaft is of one piece."},
    .caution = Caution::shaft)

BOLTHOLE_FIELD(frontYokeOffset, .scope = Scope::driveline, .path = "front_yoke_offset",
               .access = kAt<&Driveline::shaft, &EnteredShaft::frontYokeOffset>, .quantity = Quantity::angle,
               .limits = &kAngle, .words = "yoke phasing of the front shaft",
               .meaning =
                   "How far the front (or only) shaft's rear yoke is turned from its front yoke, clockwise "
                   "seen from the rear; absent: in phase",
               .label = "Yoke phasing, front or only piece",
               .name = "yoke phasing of the front or only shaft",
               .howTo = {"How far the rear yoke of this shaft is turned from its front yoke: 0, or empty, "
                         "where both lie in one plane, as shafts are usually welded. Turn the shaft by hand "
                         "until the angle finder across the front yoke's bearing caps reads level, then read "
                         "it across the rear yoke's; plus is clockwise seen from the rear."},
               .caution = Caution::shaft)

BOLTHOLE_FIELD(rearYokeOffset, .scope = Scope::driveline, .path = "rear_yoke_offset",
               .access = kAt<&Driveline::shaft, &EnteredShaft::rearYokeOffset>, .quantity = Quantity::angle,
               .limits = &kAngle, .words = "yoke phasing of the rear shaft",
               .meaning =
                   "How far the rear shaft's rear yoke is turned from its front yoke, clockwise seen from "
                   "the rear; absent: in phase",
               .label = "Yoke phasing, rear piece",
               .howTo = {"How far the rear yoke of this shaft is turned from its front yoke: 0, or empty, "
                         "where both lie in one plane, as shafts are usually welded. Turn the shaft by hand "
                         "until the angle finder across the front yoke's bearing caps reads level, then read "
                         "it across the rear yoke's; plus is clockwise seen from the rear."},
               .caution = Caution::shaft)

BOLTHOLE_FIELD(
    windUp, .scope = Scope::driveline, .path = "wind_up",
    .access = kAt<&Driveline::shaft, &EnteredShaft::windUp>, .quantity = Quantity::angle, .limits = &kAngle,
    .words = "pinion wind-up under power",
    .meaning = "How far the housing turns nose up under power, an allowance", .label = "Pinion wind-up",
    .name = "pinion wind-up under power, nose up",
    .howTo = {
        "How far the pinion's nose rises under full power as bushings and brackets give. An allowance, not a "
        "measurement: nobody reads an angle finder beside a car that pulls. Rod ends give little, rubber "
        "bushings more (common practice, no source). Left empty, only coasting is computed."})

BOLTHOLE_FIELD(
    engineSpeed, .scope = Scope::driveline, .path = "engine_speed",
    .access = kAt<&Driveline::shaft, &EnteredShaft::engineSpeed>, .quantity = Quantity::speed,
    .limits = &kSpeed, .words = "highest engine speed", .meaning = "Highest engine speed",
    .label = "Highest engine speed",
    .howTo = {
        "The highest speed the engine reaches in the gear below, from the tachometer's or the data log's "
        "memory, not from a test in the shop. The driveshaft turns at engine speed over the gear's ratio."})

BOLTHOLE_FIELD(shaftGear, .scope = Scope::driveline, .path = "gear",
               .access = kAt<&Driveline::shaft, &EnteredShaft::gear>, .quantity = Quantity::ratio,
               .limits = &kGear, .words = "gear at that speed",
               .meaning = "Ratio of the gear it is reached in", .label = "In a gear of ratio",
               .name = "ratio of the gear at that engine speed",
               .howTo = {"The transmission's ratio in the gear in which that engine speed is reached: 1 for "
                         "direct drive, below 1 for an overdrive; from the manufacturer's list."})

BOLTHOLE_FIELD(
    slipEngagement, .scope = Scope::driveline, .path = "slip_yoke.engagement",
    .access = kAt<&Driveline::shaft, &EnteredShaft::slip, &EnteredSlip::engagement>,
    .quantity = Quantity::length, .limits = &kEngagement, .words = "slip yoke engagement",
    .meaning = "Spline that is held", .label = "Engagement", .name = "slip yoke engagement at ride height",
    .howTo =
        {"Length of spline that the output shaft and the slip yoke share at ride height. Wrap tape around "
         "the yoke's barrel at the seal, take the shaft down, measure from the tape to the barrel's open "
         "end, and take off how far inside the seal the output shaft's end stands and what either lacks of "
         "spline at its end. The shaft is heavy: two people, or a strap, and a pan for the oil."},
    .caution = Caution::shaft)

BOLTHOLE_FIELD(
    slipLeast, .scope = Scope::driveline, .path = "slip_yoke.least_engagement",
    .access = kAt<&Driveline::shaft, &EnteredShaft::slip, &EnteredSlip::leastEngagement>,
    .quantity = Quantity::length, .limits = &kEngagement, .words = "least slip yoke engagement",
    .meaning = "Spline that must stay held", .isMeasured = false, .label = "Engagement, least",
    .howTo = {
        "Length of spline that must stay held anywhere in the travel: the figure of the yoke's or the "
        "transmission's manufacturer. Where there is none, ask a driveshaft shop; none is assumed here."})

BOLTHOLE_FIELD(
    slipInward, .scope = Scope::driveline, .path = "slip_yoke.inward",
    .access = kAt<&Driveline::shaft, &EnteredShaft::slip, &EnteredSlip::inward>, .quantity = Quantity::length,
    .limits = &kEngagement, .words = "slip yoke travel inward",
    .meaning = "How far it can go in before it bottoms", .label = "Travel to bottoming",
    .name = "slip yoke travel to bottoming at ride height",
    .howTo =
        {"How far the yoke can go in from where it stands at ride height before it bottoms. Tape around the "
         "barrel at the seal at ride height; with the rear joint undone and the shaft held up by a strap, "
         "push the yoke in by hand until it stops, and measure from the tape to where the seal is then."},
    .caution = Caution::shaft)
