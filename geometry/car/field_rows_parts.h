// Rows of the table of numbers: ballast, springs and their mounts. See geometry/car/fields.h for what a row
// says. Read by geometry/car/field.h for the names alone and by geometry/car/field_table.cpp for everything;
// not guarded, as both read it.

BOLTHOLE_FIELD(ballastMass, .scope = Scope::ballast, .path = "mass", .access = kAt<&EnteredBallast::mass>,
               .quantity = Quantity::mass, .limits = &kWeight, .words = "weight", .meaning = "All of it",
               .label = "Weight, all of it", .name = "%1, weight of all of it",
               .howTo = {"What all of it weighs, on any scale. For what is in a tank, leave this empty and "
                         "enter volume and density; where both are there the weight counts."})

BOLTHOLE_FIELD(ballastVolume, .scope = Scope::ballast, .path = "volume",
               .access = kAt<&EnteredBallast::volume>, .quantity = Quantity::volume, .limits = &kVolume,
               .words = "volume", .meaning = "What it holds when full", .label = "Volume, full",
               .name = "%1, volume when full",
               .howTo = {"What the tank holds when full. No measuring with an open flame or running engine "
                         "about: fuel vapor burns."})

BOLTHOLE_FIELD(ballastDensity, .scope = Scope::ballast, .path = "density",
               .access = kAt<&EnteredBallast::density>, .quantity = Quantity::density, .limits = &kDensity,
               .words = "density", .meaning = "Of what fills it", .label = "Density", .name = "%1, density",
               .howTo = {"What one unit of volume of it weighs: the supplier's sheet, or weigh a known "
                         "volume. Not guessed here."})

BOLTHOLE_FIELD(ballastAt, .scope = Scope::ballast, .path = "at", .access = kAt<&EnteredBallast::at>,
               .quantity = Quantity::length, .limits = &kPosition, .words = "place",
               .uncertainty = kSeatUncertainty, .name = "%1, place, %2",
               .howTo = {
                   "From the rear axle's centerline forward to the load's middle; behind the axle is minus.",
                   "From the car's center plane to the load's middle; plus is left.",
                   "From level ground up to the load's middle. For a tank, the middle of the full tank."})

BOLTHOLE_FIELD(ballastWeighed, .scope = Scope::ballast, .path = "weighed",
               .access = kAt<&EnteredBallast::weighed>, .quantity = Quantity::percent, .limits = &kShare,
               .words = "part aboard when weighed", .meaning = "Part of it aboard when the scales were read",
               .fallback = kBallastWeighed, .label = "Aboard when weighed",
               .name = "%1, part aboard when weighed",
               .howTo = {"How much of it was in the car when the scales were read: 0 not there, 100 all of "
                         "it, between for a tank's level."})

BOLTHOLE_FIELD(ballastAboard, .scope = Scope::ballast, .path = "aboard",
               .access = kAt<&EnteredBallast::aboard>, .quantity = Quantity::percent, .limits = &kShare,
               .words = "part aboard now", .meaning = "Part of it aboard now", .fallback = kBallastAboard,
               .label = "Aboard now", .name = "%1, part aboard now",
               .howTo = {"How much of it is in the car that is computed: 0 not there, 100 all of it."})

BOLTHOLE_FIELD(springRate, .scope = Scope::spring, .path = "rate", .access = kAt<&SuspensionPart::rate>,
               .quantity = Quantity::rate, .limits = &kRate, .words = "rate", .meaning = "Spring rate")

BOLTHOLE_FIELD(springFreeLength, .scope = Scope::spring, .path = "free_length",
               .access = kAt<&SuspensionPart::freeLength>, .quantity = Quantity::length,
               .limits = &kPositiveLength, .words = "free length",
               .meaning = "Length at which it begins to push; a bump stop's unsqueezed")

BOLTHOLE_FIELD(springClosedLength, .scope = Scope::spring, .path = "closed_length",
               .access = kAt<&SuspensionPart::closedLength>, .quantity = Quantity::length,
               .limits = &kPositiveLength, .words = "compressed length",
               .meaning = "The shortest: coils touch, shock bottoms")

BOLTHOLE_FIELD(springOpenLength, .scope = Scope::spring, .path = "open_length",
               .access = kAt<&SuspensionPart::openLength>, .quantity = Quantity::length,
               .limits = &kPositiveLength, .words = "extended length",
               .meaning = "The longest: shock topped out, strap taut")

BOLTHOLE_FIELD(springPush, .scope = Scope::spring, .path = "push", .access = kAt<&SuspensionPart::push>,
               .quantity = Quantity::force, .limits = &kForce, .words = "push",
               .meaning = "What it pushes at any length: a shock's gas", .fallback = kNoPush, .isRare = true,
               .label = "Gas force", .name = "%1, gas force",
               .howTo = {"What it pushes at any length, the damper at rest: a gas shock's force on a "
                         "bathroom scale, held half in. 0 without gas."})

BOLTHOLE_FIELD(bumpClick, .scope = Scope::spring, .path = "damping.bump.at",
               .access = kAt<&SuspensionPart::damping, &Damping::bump, &DampingWay::at>,
               .quantity = Quantity::count, .limits = &kClick, .words = "bump click",
               .meaning = "The click it is set to", .label = "Bump, click", .name = "%1, bump click",
               .howTo = {
                   "Clicks of the bump adjuster as the table counts them, from the stop its manufacturer "
                   "says. A pair is set alike."})

BOLTHOLE_FIELD(reboundClick, .scope = Scope::spring, .path = "damping.rebound.at",
               .access = kAt<&SuspensionPart::damping, &Damping::rebound, &DampingWay::at>,
               .quantity = Quantity::count, .limits = &kClick, .words = "rebound click",
               .meaning = "The click it is set to", .label = "Rebound, click", .name = "%1, rebound click",
               .howTo = {
                   "Clicks of the rebound adjuster as the table counts them, from the stop its manufacturer "
                   "says. A pair is set alike."})

BOLTHOLE_FIELD(mountAt, .scope = Scope::mount, .path = "at", .access = kAt<&Hole::at>,
               .quantity = Quantity::length, .limits = &kPosition, .words = "hole")
