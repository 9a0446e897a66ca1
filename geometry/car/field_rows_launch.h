// Rows of the table of numbers: the launch, the brakes and the tools. See geometry/car/fields.h for what a
// row says. Read by geometry/car/field.h for the names alone and by geometry/car/field_table.cpp for
// everything; not guarded, as both read it.

BOLTHOLE_FIELD(launchAcceleration, .scope = Scope::car, .path = "launch.acceleration_g",
               .access = kAt<&Car::launch, &EnteredLaunch::acceleration>, .quantity = Quantity::ratio,
               .limits = &kAcceleration, .words = "launch acceleration in g",
               .meaning = "Steady acceleration in g", .label = "Acceleration, g",
               .howTo = {"How hard the car leaves, as a multiple of gravity: the peak of a logger, smoothed "
                         "over a tenth of a second or so. Logged only on a closed course."})

BOLTHOLE_FIELD(sixtyFoot, .scope = Scope::car, .path = "launch.sixty_foot",
               .access = kAt<&Car::launch, &EnteredLaunch::sixtyFoot>, .quantity = Quantity::time,
               .limits = &kSeconds, .words = "60-ft time", .meaning = "Time for the first 60 ft",
               .label = "60-ft time",
               .howTo = {"From a time slip. Acceleration is taken to be even over the 60 ft, which it never "
                         "is, after a rollout: the clock starts when the front tire has rolled out of the "
                         "beam. An estimate (common practice, no source)."})

BOLTHOLE_FIELD(engineTorque, .scope = Scope::car, .path = "launch.engine_torque",
               .access = kAt<&Car::launch, &EnteredLaunch::engineTorque>, .quantity = Quantity::torque,
               .limits = &kTorque, .words = "engine torque", .meaning = "At the flywheel",
               .label = "Engine torque", .name = "engine torque at the flywheel",
               .howTo = {"At the flywheel, at the rpm it launches at. Torque measured at the wheels has the "
                         "losses in it already: then set efficiency to 100 %."})

BOLTHOLE_FIELD(converter, .scope = Scope::car, .path = "launch.converter",
               .access = kAt<&Car::launch, &EnteredLaunch::converter>, .quantity = Quantity::ratio,
               .limits = &kMultiple, .words = "converter multiplication",
               .meaning = "Multiplication of a torque converter; absent: 1", .label = "Converter",
               .name = "torque converter's multiplication",
               .howTo = {
                   "By how much the converter multiplies torque as the car leaves: its manufacturer's stall "
                   "ratio. With a clutch leave it empty: 1."})

BOLTHOLE_FIELD(launchGear, .scope = Scope::car, .path = "launch.gear",
               .access = kAt<&Car::launch, &EnteredLaunch::gear>, .quantity = Quantity::ratio,
               .limits = &kGear, .words = "launch gear ratio", .meaning = "Ratio of the gear it launches in",
               .label = "Gear ratio", .name = "ratio of the gear it launches in",
               .howTo = {"Turns of the engine for one of the driveshaft in the gear it launches in, from the "
                         "transmission's data."})

BOLTHOLE_FIELD(efficiency, .scope = Scope::car, .path = "launch.efficiency",
               .access = kAt<&Car::launch, &EnteredLaunch::efficiency>, .quantity = Quantity::percent,
               .limits = &kEfficiency, .words = "driveline efficiency",
               .meaning = "Of the driveline; absent: 100", .label = "Efficiency",
               .howTo = {"What of the engine's torque reaches the tires. Left empty, 100 %: nothing is lost, "
                         "which reads high."})

BOLTHOLE_FIELD(
    friction, .scope = Scope::car, .path = "launch.friction",
    .access = kAt<&Car::launch, &EnteredLaunch::friction>, .quantity = Quantity::ratio, .limits = &kFriction,
    .words = "tire friction", .meaning = "Most thrust over load of the rear tires", .label = "Tire friction",
    .howTo = {
        "The most the rear tires push forward over the load they carry: what the car pulled in g on its best "
        "pass, times its weight, over the rear axle's load in that launch. Caps what engine torque makes."})

BOLTHOLE_FIELD(axleRatio, .scope = Scope::car, .path = "launch.axle_ratio",
               .access = kAt<&Car::launch, &EnteredLaunch::axleRatio>, .quantity = Quantity::ratio,
               .limits = &kGear, .words = "axle ratio",
               .meaning = "Turns of the driveshaft for one of the wheels", .label = "Axle ratio",
               .howTo = {"Turns of the driveshaft for one of both wheels: from the tag, or count teeth, ring "
                         "gear over pinion. Needed for the driveshaft's torque."},
               .caution = Caution::lift)

BOLTHOLE_FIELD(springBase, .scope = Scope::car, .path = "launch.spring_base",
               .access = kAt<&Car::launch, &EnteredLaunch::springBase>, .quantity = Quantity::length,
               .limits = &kPositiveLength, .words = "spring spacing",
               .meaning = "Between the rear springs, laterally", .label = "Spring spacing",
               .howTo = {"Between the middles of the two rear springs, across the car. Where the springs' "
                         "mounts are entered, link loads take those instead."},
               .caution = Caution::lift)

BOLTHOLE_FIELD(leftShift, .scope = Scope::car, .path = "launch.left_shift",
               .access = kAt<&Car::launch, &EnteredLaunch::leftShift>, .quantity = Quantity::force,
               .limits = &kForce, .words = "load on the left rear tire over half",
               .meaning = "Load on the left rear tire over half the axle's",
               .label = "Extra load on left rear", .name = "load on the left rear tire over half the axle's",
               .howTo = {"How much more than half of the rear axle's load the left tire carries in the "
                         "launch. Left empty, it comes from the driveshaft's torque where tracks and wheel "
                         "rates are known; else both tires are taken to carry the same."})

BOLTHOLE_FIELD(
    unsprungMass, .scope = Scope::car, .path = "launch.unsprung_mass",
    .access = kAt<&Car::launch, &EnteredLaunch::unsprungMass>, .quantity = Quantity::mass, .limits = &kWeight,
    .words = "rear unsprung weight", .meaning = "Axle, wheels, brakes and half of what leads to it",
    .label = "Unsprung weight",
    .howTo = {
        "Axle, wheels, brakes and half of links, springs, shocks and driveshaft: weighed with the axle out, "
        "or added up from the parts. An axle is heavy: a helper or a hoist, never fingers under it."})

BOLTHOLE_FIELD(loadFactor, .scope = Scope::car, .path = "launch.load_factor",
               .access = kAt<&Car::launch, &EnteredLaunch::loadFactor>, .quantity = Quantity::ratio,
               .limits = &kLoadFactor, .words = "load factor",
               .meaning = "What link loads are multiplied by against a rating; absent: 1",
               .isMeasured = false, .label = "Load factor", .name = "load factor against ratings",
               .howTo = {"What static loads are multiplied by before they are held against a rating, for the "
                         "hit and for what is not known. A qualified person's choice; left empty, 1: none."})

BOLTHOLE_FIELD(frontUnsprungMass, .scope = Scope::car, .path = "launch.front_unsprung_mass",
               .access = kAt<&Car::launch, &EnteredLaunch::frontUnsprungMass>, .quantity = Quantity::mass,
               .limits = &kWeight, .words = "front unsprung weight",
               .meaning = "Front wheels, brakes and half of what leads to them",
               .label = "Front unsprung weight",
               .howTo = {"Front wheels, tires, brakes, spindles and half of arms, springs and shocks, both "
                         "sides: weighed off the car, or added up from the parts."})

BOLTHOLE_FIELD(
    pitchInertia, .scope = Scope::car, .path = "launch.pitch_inertia",
    .access = kAt<&Car::launch, &EnteredLaunch::pitchInertia>, .quantity = Quantity::inertia,
    .limits = &kInertia, .words = "pitch inertia",
    .meaning = "Moment of inertia of the sprung mass about the lateral axis through its own center",
    .label = "Pitch inertia",
    .howTo = {
        "How hard the body is to tip nose up: its moment of inertia about the lateral axis through its own "
        "center of gravity, wheels and axle left out. From a swing test, or an estimate, marked as one."})

BOLTHOLE_FIELD(housingInertia, .scope = Scope::car, .path = "launch.housing_inertia",
               .access = kAt<&Car::launch, &EnteredLaunch::housingInertia>, .quantity = Quantity::inertia,
               .limits = &kSmallInertia, .words = "axle housing inertia",
               .meaning = "Of the axle housing about the axle; absent: 0", .label = "Housing inertia",
               .howTo = {"Moment of inertia of the axle housing, with all that turns with it, about the "
                         "axle's centerline. Left empty, 0."})

BOLTHOLE_FIELD(
    wheelInertia, .scope = Scope::car, .path = "launch.wheel_inertia",
    .access = kAt<&Car::launch, &EnteredLaunch::wheelInertia>, .quantity = Quantity::inertia,
    .limits = &kInertia, .words = "rear wheel inertia",
    .meaning = "Of both rear wheels with tires and axle shafts", .label = "Rear wheels' inertia",
    .howTo = {"Moment of inertia of both rear wheels together, with tires, axle shafts, ring gear and brake "
              "rotors or drums, about the axle: from a swing test of one wheel, doubled, or from the parts."})

BOLTHOLE_FIELD(frontWheelInertia, .scope = Scope::car, .path = "launch.front_wheel_inertia",
               .access = kAt<&Car::launch, &EnteredLaunch::frontWheelInertia>, .quantity = Quantity::inertia,
               .limits = &kSmallInertia, .words = "front wheel inertia",
               .meaning = "Of both front wheels with tires; absent: 0", .label = "Front wheels' inertia",
               .howTo = {"Moment of inertia of both front wheels together, with tires and brake rotors, "
                         "about their axle. Left empty, 0."})

BOLTHOLE_FIELD(
    drivelineInertia, .scope = Scope::car, .path = "launch.driveline_inertia",
    .access = kAt<&Car::launch, &EnteredLaunch::drivelineInertia>, .quantity = Quantity::inertia,
    .limits = &kSmallInertia, .words = "driveline inertia",
    .meaning = "Of all that turns with the driveshaft, on the turbine's side; absent: 0",
    .label = "Driveline inertia",
    .howTo = {
        "Moment of inertia of all that rotates at the transmission's input speed in the gear it launches in: "
        "turbine or clutch disc, gears and, taken back to that speed, the driveshaft. Left empty, 0."})

BOLTHOLE_FIELD(release, .scope = Scope::car, .path = "launch.release",
               .access = kAt<&Car::launch, &EnteredLaunch::release>, .quantity = Quantity::time,
               .limits = &kShortTime, .words = "time of release",
               .meaning = "Time from the release until brakes or clutch have let go; absent: 0.05",
               .isMeasured = false, .label = "Release",
               .howTo = {"How long brakes or clutch take to let go. Left empty, 0.05 s is taken; a "
                         "judgement, common practice, no source."})

BOLTHOLE_FIELD(rollout, .scope = Scope::car, .path = "launch.rollout",
               .access = kAt<&Car::launch, &EnteredLaunch::rollout>, .quantity = Quantity::length,
               .limits = &kTravelLength, .words = "rollout",
               .meaning = "How far the front wheel moves before the clock starts; absent: 0",
               .label = "Rollout",
               .howTo = {"How far the front wheels roll in the beam before the clock starts: roll the car by "
                         "hand from where the second bulb lights to where it goes out, engine off. Left "
                         "empty, the launch in time takes 0, and a 60-ft time the front tire's chord at "
                         "1 9/16 in above the ground (common practice, no source)."})

BOLTHOLE_FIELD(tirePeakSlip, .scope = Scope::car, .path = "launch.tire.peak_slip",
               .access = kAt<&Car::launch, &EnteredLaunch::tire, &EnteredTire::peakSlip>,
               .quantity = Quantity::percent, .limits = &kEfficiency, .words = "slip at the most thrust",
               .meaning = "Slip at which a rear tire pushes most; absent: 10", .label = "Slip at most thrust",
               .howTo = {"How much faster than the ground the tread runs where the tire pushes most. Left "
                         "empty, 10 %; common practice, no source."})

BOLTHOLE_FIELD(tireSliding, .scope = Scope::car, .path = "launch.tire.sliding",
               .access = kAt<&Car::launch, &EnteredLaunch::tire, &EnteredTire::sliding>,
               .quantity = Quantity::percent, .limits = &kEfficiency, .words = "thrust left when sliding",
               .meaning = "What is left of the most thrust far beyond that slip; absent: 85",
               .label = "Left when sliding",
               .howTo = {"What part of its most thrust the tire still makes when it spins far beyond that "
                         "slip. Left empty, 85 %; common practice, no source."})

BOLTHOLE_FIELD(tireRelaxation, .scope = Scope::car, .path = "launch.tire.relaxation",
               .access = kAt<&Car::launch, &EnteredLaunch::tire, &EnteredTire::relaxation>,
               .quantity = Quantity::length, .limits = &kPositiveLength,
               .words = "relaxation length of the tires",
               .meaning = "How far a tire rolls until its tread has followed; absent: 300",
               .label = "Relaxation length",
               .howTo = {"How far the tire rolls until its tread has wound up by two thirds. Left empty, 300 "
                         "mm (12 in); common practice, no source."})

BOLTHOLE_FIELD(
    tireLag, .scope = Scope::car, .path = "launch.tire.lag",
    .access = kAt<&Car::launch, &EnteredLaunch::tire, &EnteredTire::lag>, .quantity = Quantity::time,
    .limits = &kShortTime, .words = "lag of the tires' thrust",
    .meaning = "By how much the thrust follows the tread's speed beside its deflection; absent: 0.005",
    .label = "Lag",
    .howTo = {"A short time by which the tread damps its own winding up. Left empty, 0.005 s; a judgement, "
              "no source."})

BOLTHOLE_FIELD(tireDamping, .scope = Scope::car, .path = "launch.tire.damping",
               .access = kAt<&Car::launch, &EnteredLaunch::tire, &EnteredTire::damping>,
               .quantity = Quantity::damping, .limits = &kDamping, .words = "damping of the tires",
               .meaning = "Of one tire, upright; absent: 0.1", .label = "Tire damping",
               .howTo = {"How hard one tire resists being pressed flatter by how fast that goes. Left empty, "
                         "0.1 N s/mm; a judgement, no source."})

BOLTHOLE_FIELD(engineInertia, .scope = Scope::car, .path = "launch.engine.inertia",
               .access = kAt<&Car::launch, &EnteredLaunch::engine, &EnteredEngine::inertia>,
               .quantity = Quantity::inertia, .limits = &kInertia, .words = "engine inertia",
               .meaning = "Crankshaft, flywheel or flexplate, and a converter's pump",
               .label = "Engine inertia",
               .howTo = {"Moment of inertia of all that rotates at engine speed: crankshaft, flywheel or "
                         "flexplate with clutch cover, or the converter's pump with its oil, and balancer."})

BOLTHOLE_FIELD(launchSpeed, .scope = Scope::car, .path = "launch.engine.launch_rpm",
               .access = kAt<&Car::launch, &EnteredLaunch::engine, &EnteredEngine::launchSpeed>,
               .quantity = Quantity::speed, .limits = &kSpeed, .words = "launch rpm",
               .meaning = "Engine speed held before the release", .label = "Launch rpm",
               .howTo = {
                   "What the engine is held at before the release: the two-step's setting, or the data log."})

BOLTHOLE_FIELD(revLimit, .scope = Scope::car, .path = "launch.engine.rev_limit",
               .access = kAt<&Car::launch, &EnteredLaunch::engine, &EnteredEngine::revLimit>,
               .quantity = Quantity::speed, .limits = &kSpeed, .words = "rev limit",
               .meaning = "Engine speed from which its torque is cut", .isMeasured = false,
               .label = "Rev limit",
               .howTo = {"Engine speed at which the limiter cuts in, in the gear it launches in."})

BOLTHOLE_FIELD(stallSpeed, .scope = Scope::car, .path = "launch.coupling.stall_rpm",
               .access = kAt<&Car::launch, &EnteredLaunch::coupling, &EnteredCoupling::stallSpeed>,
               .quantity = Quantity::speed, .limits = &kSpeed, .words = "stall speed of the converter",
               .meaning = "Engine speed at full torque with the turbine held", .label = "Stall rpm",
               .howTo = {"Engine speed at full torque with the wheels held: the converter's stall in this "
                         "car, from the data log at the release against the brakes."})

BOLTHOLE_FIELD(couplingRatio, .scope = Scope::car, .path = "launch.coupling.coupling_ratio",
               .access = kAt<&Car::launch, &EnteredLaunch::coupling, &EnteredCoupling::ratio>,
               .quantity = Quantity::ratio, .limits = &kCouplingRatio,
               .words = "coupling ratio of the converter",
               .meaning = "Turbine over engine speed from which a converter multiplies no more; absent: 0.88",
               .label = "Coupling ratio",
               .howTo = {"Turbine speed over engine speed from which the converter multiplies torque no "
                         "more: from its manufacturer. Left empty, 0.88; common practice, no source."})

BOLTHOLE_FIELD(clutchCapacity, .scope = Scope::car, .path = "launch.coupling.capacity",
               .access = kAt<&Car::launch, &EnteredLaunch::coupling, &EnteredCoupling::capacity>,
               .quantity = Quantity::torque, .limits = &kTorque, .words = "capacity of the clutch",
               .meaning = "Most torque a clutch carries", .label = "Clutch capacity",
               .howTo = {"The most torque the clutch carries before it slips: from its manufacturer, for the "
                         "spring load it has."})

BOLTHOLE_FIELD(frontDroop, .scope = Scope::car, .path = "launch.front.droop",
               .access = kAt<&Car::launch, &EnteredLaunch::front, &EnteredFront::droop>,
               .quantity = Quantity::length, .limits = &kTravelLength, .words = "front droop travel",
               .meaning = "Front wheels down from ride until the front tops out", .isMeasured = false,
               .label = "Front droop",
               .howTo = {"How far a front wheel can drop from ride height until shock or limiter stops it. "
                         "Stands under the frame, a jack under the arm only to lower it, wheels chocked."})

BOLTHOLE_FIELD(frontBump, .scope = Scope::car, .path = "launch.front.bump",
               .access = kAt<&Car::launch, &EnteredLaunch::front, &EnteredFront::bump>,
               .quantity = Quantity::length, .limits = &kTravelLength, .words = "front bump travel",
               .meaning = "Front wheels up from ride until the front bottoms", .isMeasured = false,
               .label = "Front bump",
               .howTo = {"How far a front wheel can rise from ride height before its stop takes over: tape "
                         "the gap and divide by how much the stop moves for each unit the wheel does."})

BOLTHOLE_FIELD(
    frontMotionRatio, .scope = Scope::car, .path = "launch.front.motion_ratio",
    .access = kAt<&Car::launch, &EnteredLaunch::front, &EnteredFront::motionRatio>,
    .quantity = Quantity::ratio, .limits = &kMotionRatio, .words = "motion ratio of the front shocks",
    .meaning = "Shock travel for a front wheel travel of 1; absent: 1", .label = "Front shock ratio",
    .howTo = {"How far a front shock shortens for each unit its wheel rises: raise the wheel by a small "
              "amount without its spring and measure both. Left empty, 1: the shock stands at the wheel."})

BOLTHOLE_FIELD(frontBumpClick, .scope = Scope::car, .path = "launch.front.damping.bump.at",
               .access = kAt<&Car::launch, &EnteredLaunch::front, &EnteredFront::damping, &Damping::bump,
                             &DampingWay::at>,
               .quantity = Quantity::count, .limits = &kClick, .words = "bump click of the front shocks",
               .meaning = "The click it is set to", .label = "Front bump, click",
               .howTo = {"Clicks of the bump adjuster of both front shocks as the table counts them, from "
                         "the stop its manufacturer says."})

BOLTHOLE_FIELD(frontReboundClick, .scope = Scope::car, .path = "launch.front.damping.rebound.at",
               .access = kAt<&Car::launch, &EnteredLaunch::front, &EnteredFront::damping, &Damping::rebound,
                             &DampingWay::at>,
               .quantity = Quantity::count, .limits = &kClick, .words = "rebound click of the front shocks",
               .meaning = "The click it is set to", .label = "Front rebound, click",
               .howTo = {"Clicks of the rebound adjuster of both front shocks as the table counts them, from "
                         "the stop its manufacturer says."})

BOLTHOLE_FIELD(brakeRearShare, .scope = Scope::car, .path = "brakes.rear_share",
               .access = kAt<&Car::brakes, &EnteredBrakes::rearShare>, .quantity = Quantity::percent,
               .limits = &kShare, .words = "rear share of the brake force",
               .meaning = "Rear brakes' part of the whole brake force", .label = "Rear share",
               .howTo = {"What part of the whole braking force the rear brakes make: from the brakes' data "
                         "or a roller brake tester."})

BOLTHOLE_FIELD(brakeDeceleration, .scope = Scope::car, .path = "brakes.deceleration_g",
               .access = kAt<&Car::brakes, &EnteredBrakes::deceleration>, .quantity = Quantity::ratio,
               .limits = &kAcceleration, .words = "deceleration in g", .meaning = "Steady deceleration in g",
               .label = "Deceleration, g",
               .howTo = {"How hard it brakes, as a multiple of gravity: from a logger. Braking tests only on "
                         "a closed course."})

BOLTHOLE_FIELD(
    tapeUncertainty, .scope = Scope::tool, .path = "tape", .access = kAt<&Car::tools, &EnteredTools::tape>,
    .quantity = Quantity::length, .limits = &kLengthUncertainty, .words = "uncertainty of the tape",
    .meaning = "Of one length or coordinate; absent: a tape read to a sixteenth at both ends",
    .label = "Tape", .name = "tape, plus or minus",
    .howTo = {
        "How far one length taken with the tape may be off: 95 of 100 lie within. Left empty, a tape read to "
        "the nearest sixteenth at both ends is taken; the sixteenth is common practice, no source."})

BOLTHOLE_FIELD(caliperUncertainty, .scope = Scope::tool, .path = "calipers",
               .access = kAt<&Car::tools, &EnteredTools::calipers>, .quantity = Quantity::length,
               .limits = &kLengthUncertainty, .words = "uncertainty of the calipers", .label = "Calipers",
               .name = "calipers, plus or minus",
               .howTo = {"How far one length taken with calipers, over a bolt and back to a hole's center, "
                         "may be off: 95 of 100 lie within. Left empty, anything within a tenth of a "
                         "millimeter is taken to be as likely; common practice, no source."})

BOLTHOLE_FIELD(angleFinderUncertainty, .scope = Scope::tool, .path = "angle_finder",
               .access = kAt<&Car::tools, &EnteredTools::angleFinder>, .quantity = Quantity::angle,
               .limits = &kAngleUncertainty, .words = "uncertainty of the angle finder",
               .label = "Angle finder", .name = "angle finder, plus or minus",
               .howTo = {"How far one angle may be off: 95 of 100 lie within. Left empty, anything within "
                         "half a degree is taken to be as likely; common practice, no source."})

BOLTHOLE_FIELD(floorUncertainty, .scope = Scope::tool, .path = "floor",
               .access = kAt<&Car::tools, &EnteredTools::floor>, .quantity = Quantity::length,
               .limits = &kLengthUncertainty, .words = "uncertainty of the floor under the car",
               .meaning =
                   "Shared by the heights of all points, as the floor they are taped from is not where "
                   "the tires stand; absent: none",
               .label = "Floor", .name = "floor, plus or minus",
               .howTo = {"How far the floor where the heights are taped may lie off the plane of the rear "
                         "tires' contact patches: 95 of 100 lie within. Hold a straightedge or a level "
                         "between the two. All points share it. Left empty, none is counted."})

BOLTHOLE_FIELD(centerPlaneUncertainty, .scope = Scope::tool, .path = "center_plane",
               .access = kAt<&Car::tools, &EnteredTools::centerPlane>, .quantity = Quantity::length,
               .limits = &kLengthUncertainty, .words = "uncertainty of the car's center plane",
               .meaning = "Shared by the lateral places of all points; absent: none", .label = "Center plane",
               .name = "center plane, plus or minus",
               .howTo = {"How far the line that lateral places are taped from may lie off the car's middle: "
                         "95 of 100 lie within. Halve the distance between two like points left and right, "
                         "at both ends of the car. All points share it. Left empty, none is counted."})

BOLTHOLE_FIELD(originLineUncertainty, .scope = Scope::tool, .path = "origin_line",
               .access = kAt<&Car::tools, &EnteredTools::originLine>, .quantity = Quantity::length,
               .limits = &kLengthUncertainty, .words = "uncertainty of the line below the rear axle",
               .meaning = "Shared by the places forward of the rear axle of all points; absent: none",
               .label = "Line below the axle", .name = "line below the rear axle, plus or minus",
               .howTo = {"How far the line on the floor that places forward are taped from may lie off the "
                         "rear axle's center: 95 of 100 lie within. A plumb line from both ends of the axle "
                         "tells. All points share it. Left empty, none is counted."})
