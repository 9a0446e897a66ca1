// The table of geometry/car/fields.h: kind, limits, words and place in the car file of every number.
#include <array>

#include "geometry/car/fields.h"

namespace bolthole {

namespace {

constexpr double kRightAngle = 90.0 * kRadiansPerDegree;
constexpr double kLargestMass = 1e6;        // kg
constexpr double kLargestFrontRatio = 100;  // keeps the front axle's travel a sane length
constexpr double kLargestPitch = 0.1;       // m
constexpr double kLargestPercent = 10'000;
constexpr double kLargestEngagement = 1.0;  // m

constexpr Limits kPositiveLength{0, kMaxLength, true, false, "a length above 0 and at most 100 m"};
constexpr Limits kTravelLength{0, kMaxLength, false, false, "a length from 0 to 100 m"};
constexpr Limits kPosition{-kMaxLength, kMaxLength, false, false, "a position within 100 m of the origin"};
constexpr Limits kWeight{0, kLargestMass, true, false, "a weight above 0 and at most 1000 metric tons"};
constexpr Limits kSteps{kMinSteps, kMaxSteps, false, false, "a whole number from 2 to 100000"};
constexpr Limits kRatio{-kLargestFrontRatio, kLargestFrontRatio, false, false, "a number from -100 to 100"};
constexpr Limits kPitch{0, kLargestPitch, true, false, "a thread pitch above 0 and at most 100 mm"};
constexpr Limits kEngagement{0, kLargestEngagement, false, false, "a length of thread from 0 to 1 m"};
constexpr Limits kJointLimit{0, kRightAngle, true, true, "an angle above 0 and below 90 degrees"};
constexpr Limits kDistance{-kMaxLength, kMaxLength, false, false, "a distance within 100 m"};
constexpr Limits kWantedPercent{-kLargestPercent, kLargestPercent, false, false,
                                "a percentage from -10000 to 10000"};
constexpr Limits kEnds{1, 2, false, false, "1 or 2"};
constexpr Limits kSpread{0, 1000, true, false, "a weight above 0 and at most 1000 kg"};
constexpr Limits kPadHeight{-1, 1, false, false, "a height from -1 to 1 m"};
constexpr Limits kRate{0, 5e7, true, false, "a rate above 0 and at most 50000 N/mm"};
constexpr Limits kRollRate{0, 800'000 / kRadiansPerDegree, true, false,
                           "a roll rate above 0 and at most 800000 N m/deg"};
constexpr Limits kAcceleration{0, 10, true, false, "a number of g above 0 and at most 10"};
constexpr Limits kSeconds{0, 60, true, false, "a time above 0 and at most 60 s"};
constexpr Limits kTorque{0, 1e5, true, false, "a torque above 0 and at most 100000 N m"};
constexpr Limits kMultiple{1, 10, false, false, "a multiplication from 1 to 10"};
constexpr Limits kGear{0, 100, true, false, "a ratio above 0 and at most 100"};
constexpr Limits kEfficiency{0, 100, true, false, "a percentage above 0 and at most 100"};
constexpr Limits kFriction{0, 10, true, false, "a friction above 0 and at most 10"};
constexpr Limits kForce{-1e7, 1e7, false, false, "a force within 10000 kN"};
constexpr Limits kPositiveForce{0, 5e7, true, false, "a force above 0 and at most 50000 kN"};
constexpr Limits kLoadFactor{1, 100, false, false, "a factor from 1 to 100"};
constexpr Limits kShare{0, 100, false, false, "a percentage from 0 to 100"};
constexpr Limits kSpeed{0, 50'000 * kRpm, true, false, "a speed above 0 and at most 50000 rpm"};
constexpr Limits kVolume{0, 10, true, false, "a volume above 0 and at most 10000 L"};
constexpr Limits kDensity{0, 25'000, true, false, "a density above 0 and at most 25 kg/L"};
constexpr Limits kAngle{-kRightAngle, kRightAngle, true, true, "an angle between -90 and 90 degrees"};

constexpr Limits kLengthSpread{0, 1, false, false, "an uncertainty from 0 to 1 m"};
constexpr Limits kAngleSpread{0, 45 * kRadiansPerDegree, false, false, "an uncertainty from 0 to 45 degrees"};
constexpr Limits kMassSpread{0, 1000, false, false, "an uncertainty from 0 to 1000 kg"};
constexpr Limits kOtherSpread{0, 1e7, false, false, "an uncertainty of 0 or more"};

// In the order of Field.
constexpr std::array kRules{
    FieldRule{Field::wheelbase, Quantity::length, Scope::car, false, "wheelbase", "wheelbase",
              &kPositiveLength},
    FieldRule{Field::rearTireRadius, Quantity::length, Scope::car, false, "rear_tire_radius",
              "rear tire radius", &kPositiveLength},
    FieldRule{Field::frontTireRadius, Quantity::length, Scope::car, false, "front_tire_radius",
              "front tire radius", &kPositiveLength},
    FieldRule{Field::rearTrack, Quantity::length, Scope::car, false, "rear_track", "rear track",
              &kPositiveLength},
    FieldRule{Field::leftFrontWeight, Quantity::mass, Scope::car, false, "corner_weights.left_front",
              "left front weight", &kWeight},
    FieldRule{Field::rightFrontWeight, Quantity::mass, Scope::car, false, "corner_weights.right_front",
              "right front weight", &kWeight},
    FieldRule{Field::leftRearWeight, Quantity::mass, Scope::car, false, "corner_weights.left_rear",
              "left rear weight", &kWeight},
    FieldRule{Field::rightRearWeight, Quantity::mass, Scope::car, false, "corner_weights.right_rear",
              "right rear weight", &kWeight},
    FieldRule{Field::cgHeight, Quantity::length, Scope::car, false, "cg_height", "CG height",
              &kPositiveLength},
    FieldRule{Field::bump, Quantity::length, Scope::car, false, "travel.bump", "bump travel", &kTravelLength},
    FieldRule{Field::droop, Quantity::length, Scope::car, false, "travel.droop", "droop travel",
              &kTravelLength},
    FieldRule{Field::steps, Quantity::count, Scope::car, false, "travel.steps", "travel steps", &kSteps},
    FieldRule{Field::frontRatio, Quantity::ratio, Scope::car, false, "travel.front_ratio",
              "front travel ratio", &kRatio},
    FieldRule{Field::holeAt, Quantity::length, Scope::hole, true, "at", "hole", &kPosition},
    FieldRule{Field::linkLength, Quantity::length, Scope::link, false, "length", "length", &kPositiveLength},
    FieldRule{Field::adjusterPitch, Quantity::length, Scope::link, false, "adjuster.pitch", "thread pitch",
              &kPitch},
    FieldRule{Field::adjusterEnds, Quantity::count, Scope::link, false, "adjuster.ends", "threaded ends",
              &kEnds},
    FieldRule{Field::adjusterShortest, Quantity::length, Scope::link, false, "adjuster.shortest",
              "shortest length", &kPositiveLength},
    FieldRule{Field::adjusterLongest, Quantity::length, Scope::link, false, "adjuster.longest",
              "longest length", &kPositiveLength},
    FieldRule{Field::adjusterEngagement, Quantity::length, Scope::link, false, "adjuster.engagement",
              "thread engagement", &kEngagement},
    FieldRule{Field::adjusterEngagementAt, Quantity::length, Scope::link, false, "adjuster.engagement_at",
              "length at that engagement", &kPositiveLength},
    FieldRule{Field::adjusterLeastEngagement, Quantity::length, Scope::link, false,
              "adjuster.least_engagement", "least thread engagement", &kEngagement},
    FieldRule{Field::rodEndLimit, Quantity::angle, Scope::link, false, "rod_end_limit", "rod-end angle limit",
              &kJointLimit},
    FieldRule{Field::pinionAngle, Quantity::angle, Scope::driveline, false, "pinion_angle", "pinion angle",
              &kAngle},
    FieldRule{Field::pinionJoint, Quantity::length, Scope::driveline, true, "pinion_joint", "pinion joint",
              &kPosition},
    FieldRule{Field::outputAngle, Quantity::angle, Scope::driveline, false, "output_angle", "output angle",
              &kAngle},
    FieldRule{Field::outputJoint, Quantity::length, Scope::driveline, true, "output_joint", "output joint",
              &kPosition},
    FieldRule{Field::jointLimit, Quantity::angle, Scope::driveline, false, "joint_limit",
              "driveshaft joint angle limit", &kJointLimit},
    FieldRule{Field::wantedIcNear, Quantity::length, Scope::wanted, false, "ic_near",
              "nearest wanted IC distance", &kDistance},
    FieldRule{Field::wantedIcFar, Quantity::length, Scope::wanted, false, "ic_far",
              "farthest wanted IC distance", &kDistance},
    FieldRule{Field::wantedLow, Quantity::percent, Scope::wanted, false, "anti_squat_low",
              "least wanted anti-squat", &kWantedPercent},
    FieldRule{Field::wantedHigh, Quantity::percent, Scope::wanted, false, "anti_squat_high",
              "most wanted anti-squat", &kWantedPercent},
    FieldRule{Field::frontTrack, Quantity::length, Scope::car, false, "front_track", "front track",
              &kPositiveLength},
    FieldRule{Field::otherLeftFront, Quantity::mass, Scope::car, false,
              "weighing.other_corner_weights.left_front", "left front weight, other reading", &kWeight},
    FieldRule{Field::otherRightFront, Quantity::mass, Scope::car, false,
              "weighing.other_corner_weights.right_front", "right front weight, other reading", &kWeight},
    FieldRule{Field::otherLeftRear, Quantity::mass, Scope::car, false,
              "weighing.other_corner_weights.left_rear", "left rear weight, other reading", &kWeight},
    FieldRule{Field::otherRightRear, Quantity::mass, Scope::car, false,
              "weighing.other_corner_weights.right_rear", "right rear weight, other reading", &kWeight},
    FieldRule{Field::scaleUncertainty, Quantity::mass, Scope::car, false, "weighing.scale_uncertainty",
              "scale uncertainty", &kSpread},
    FieldRule{Field::driverMass, Quantity::mass, Scope::car, false, "weighing.driver.mass", "driver's weight",
              &kWeight},
    FieldRule{Field::driverAt, Quantity::length, Scope::car, true, "weighing.driver.at", "driver",
              &kPosition},
    FieldRule{Field::padLeftFront, Quantity::length, Scope::car, false, "weighing.pads.left_front",
              "height of the left front pad", &kPadHeight},
    FieldRule{Field::padRightFront, Quantity::length, Scope::car, false, "weighing.pads.right_front",
              "height of the right front pad", &kPadHeight},
    FieldRule{Field::padLeftRear, Quantity::length, Scope::car, false, "weighing.pads.left_rear",
              "height of the left rear pad", &kPadHeight},
    FieldRule{Field::padRightRear, Quantity::length, Scope::car, false, "weighing.pads.right_rear",
              "height of the right rear pad", &kPadHeight},
    FieldRule{Field::ticketFront, Quantity::mass, Scope::car, false, "weighing.axle_ticket.front",
              "front axle on the other scale", &kWeight},
    FieldRule{Field::ticketRear, Quantity::mass, Scope::car, false, "weighing.axle_ticket.rear",
              "rear axle on the other scale", &kWeight},
    FieldRule{Field::ticketTotal, Quantity::mass, Scope::car, false, "weighing.axle_ticket.total",
              "total on the other scale", &kWeight},
    FieldRule{Field::ticketUncertainty, Quantity::mass, Scope::car, false, "weighing.axle_ticket.uncertainty",
              "uncertainty of the other scale", &kSpread},
    FieldRule{Field::liftHeight, Quantity::length, Scope::car, false, "lift.height", "lift",
              &kPositiveLength},
    FieldRule{Field::liftReading, Quantity::mass, Scope::car, false, "lift.reading",
              "reading with one end raised", &kWeight},
    FieldRule{Field::frontWheelRate, Quantity::rate, Scope::car, false, "wheel_rates.front.wheel",
              "front wheel rate", &kRate},
    FieldRule{Field::frontTireRate, Quantity::rate, Scope::car, false, "wheel_rates.front.tire",
              "front tire rate", &kRate},
    FieldRule{Field::frontRollRate, Quantity::rollRate, Scope::car, false, "wheel_rates.front.roll",
              "front roll rate", &kRollRate},
    FieldRule{Field::rearWheelRate, Quantity::rate, Scope::car, false, "wheel_rates.rear.wheel",
              "rear wheel rate", &kRate},
    FieldRule{Field::rearTireRate, Quantity::rate, Scope::car, false, "wheel_rates.rear.tire",
              "rear tire rate", &kRate},
    FieldRule{Field::rearRollRate, Quantity::rollRate, Scope::car, false, "wheel_rates.rear.roll",
              "rear roll rate", &kRollRate},
    FieldRule{Field::launchAcceleration, Quantity::ratio, Scope::car, false, "launch.acceleration_g",
              "launch acceleration in g", &kAcceleration},
    FieldRule{Field::sixtyFoot, Quantity::time, Scope::car, false, "launch.sixty_foot", "60-ft time",
              &kSeconds},
    FieldRule{Field::engineTorque, Quantity::torque, Scope::car, false, "launch.engine_torque",
              "engine torque", &kTorque},
    FieldRule{Field::converter, Quantity::ratio, Scope::car, false, "launch.converter",
              "converter multiplication", &kMultiple},
    FieldRule{Field::launchGear, Quantity::ratio, Scope::car, false, "launch.gear", "launch gear ratio",
              &kGear},
    FieldRule{Field::efficiency, Quantity::percent, Scope::car, false, "launch.efficiency",
              "driveline efficiency", &kEfficiency},
    FieldRule{Field::friction, Quantity::ratio, Scope::car, false, "launch.friction",
              "friction of the rear tires", &kFriction},
    FieldRule{Field::axleRatio, Quantity::ratio, Scope::car, false, "launch.axle_ratio", "axle ratio",
              &kGear},
    FieldRule{Field::springBase, Quantity::length, Scope::car, false, "launch.spring_base",
              "distance between the rear springs", &kPositiveLength},
    FieldRule{Field::leftShift, Quantity::force, Scope::car, false, "launch.left_shift",
              "load on the left rear tire over half", &kForce},
    FieldRule{Field::unsprungMass, Quantity::mass, Scope::car, false, "launch.unsprung_mass",
              "rear unsprung weight", &kWeight},
    FieldRule{Field::loadFactor, Quantity::ratio, Scope::car, false, "launch.load_factor", "load factor",
              &kLoadFactor},
    FieldRule{Field::brakeRearShare, Quantity::percent, Scope::car, false, "brakes.rear_share",
              "rear share of the brake force", &kShare},
    FieldRule{Field::brakeDeceleration, Quantity::ratio, Scope::car, false, "brakes.deceleration_g",
              "deceleration in g", &kAcceleration},
    FieldRule{Field::carrierJoint, Quantity::length, Scope::driveline, true, "carrier_joint", "carrier joint",
              &kPosition},
    FieldRule{Field::frontYokeOffset, Quantity::angle, Scope::driveline, false, "front_yoke_offset",
              "yoke offset of the front shaft", &kAngle},
    FieldRule{Field::rearYokeOffset, Quantity::angle, Scope::driveline, false, "rear_yoke_offset",
              "yoke offset of the rear shaft", &kAngle},
    FieldRule{Field::windUp, Quantity::angle, Scope::driveline, false, "wind_up",
              "pinion wind-up under power", &kAngle},
    FieldRule{Field::engineSpeed, Quantity::speed, Scope::driveline, false, "engine_speed",
              "highest engine speed", &kSpeed},
    FieldRule{Field::shaftGear, Quantity::ratio, Scope::driveline, false, "gear", "gear at that speed",
              &kGear},
    FieldRule{Field::slipEngagement, Quantity::length, Scope::driveline, false, "slip_yoke.engagement",
              "slip yoke engagement", &kEngagement},
    FieldRule{Field::slipLeast, Quantity::length, Scope::driveline, false, "slip_yoke.least_engagement",
              "least slip yoke engagement", &kEngagement},
    FieldRule{Field::slipInward, Quantity::length, Scope::driveline, false, "slip_yoke.inward",
              "slip yoke travel inward", &kEngagement},
    FieldRule{Field::linkRating, Quantity::force, Scope::link, false, "rating", "rating", &kPositiveForce},
    FieldRule{Field::loadMass, Quantity::mass, Scope::load, false, "mass", "weight", &kWeight},
    FieldRule{Field::loadVolume, Quantity::volume, Scope::load, false, "volume", "volume", &kVolume},
    FieldRule{Field::loadDensity, Quantity::density, Scope::load, false, "density", "density", &kDensity},
    FieldRule{Field::loadAt, Quantity::length, Scope::load, true, "at", "place", &kPosition},
    FieldRule{Field::loadWeighed, Quantity::percent, Scope::load, false, "weighed",
              "part aboard when weighed", &kShare},
    FieldRule{Field::loadAboard, Quantity::percent, Scope::load, false, "aboard", "part aboard now", &kShare},
    FieldRule{Field::springRate, Quantity::rate, Scope::spring, false, "rate", "rate", &kRate},
    FieldRule{Field::springFreeLength, Quantity::length, Scope::spring, false, "free_length", "free length",
              &kPositiveLength},
    FieldRule{Field::springClosedLength, Quantity::length, Scope::spring, false, "closed_length",
              "closed length", &kPositiveLength},
    FieldRule{Field::springOpenLength, Quantity::length, Scope::spring, false, "open_length", "open length",
              &kPositiveLength},
    FieldRule{Field::springPush, Quantity::force, Scope::spring, false, "push", "push", &kForce},
    FieldRule{Field::mountAt, Quantity::length, Scope::mount, true, "at", "hole", &kPosition},
    FieldRule{Field::tapeSpread, Quantity::length, Scope::tool, false, "tape", "uncertainty of the tape",
              &kLengthSpread},
    FieldRule{Field::caliperSpread, Quantity::length, Scope::tool, false, "calipers",
              "uncertainty of the calipers", &kLengthSpread},
    FieldRule{Field::angleFinderSpread, Quantity::angle, Scope::tool, false, "angle_finder",
              "uncertainty of the angle finder", &kAngleSpread},
    FieldRule{Field::wantedIcLow, Quantity::length, Scope::wanted, false, "ic_low", "least wanted IC height",
              &kDistance},
    FieldRule{Field::wantedIcHigh, Quantity::length, Scope::wanted, false, "ic_high", "most wanted IC height",
              &kDistance},
    FieldRule{Field::wantedChangeLow, Quantity::percent, Scope::wanted, false, "anti_squat_change_low",
              "least wanted change of anti-squat through travel", &kWantedPercent},
    FieldRule{Field::wantedChangeHigh, Quantity::percent, Scope::wanted, false, "anti_squat_change_high",
              "most wanted change of anti-squat through travel", &kWantedPercent},
    FieldRule{Field::wantedPinionChange, Quantity::angle, Scope::wanted, false, "pinion_change",
              "most wanted pinion change", &kJointLimit},
    FieldRule{Field::wantedJoint, Quantity::angle, Scope::wanted, false, "joint_angle",
              "largest wanted joint angle", &kJointLimit},
};

constexpr bool rulesAreInOrder() {
    for (std::size_t index = 0; index < kRules.size(); ++index) {
        if (kRules[index].field != static_cast<Field>(index)) {
            return false;
        }
    }
    return kRules.size() == static_cast<std::size_t>(Field::count);
}
static_assert(rulesAreInOrder());

}  // namespace

const FieldRule& ruleOf(Field field) {
    return kRules[static_cast<std::size_t>(field)];
}

const Limits& spreadLimits(Field field) {
    switch (quantityOf(field)) {
        case Quantity::length:
            return kLengthSpread;
        case Quantity::angle:
            return kAngleSpread;
        case Quantity::mass:
            return kMassSpread;
        default:
            return kOtherSpread;
    }
}

bool mayHaveSpread(Field field) {
    switch (field) {
        case Field::bump:
        case Field::droop:
        case Field::frontRatio:
        case Field::rodEndLimit:
        case Field::jointLimit:
        case Field::scaleUncertainty:
        case Field::ticketUncertainty:
        case Field::adjusterPitch:
        case Field::adjusterShortest:
        case Field::adjusterLongest:
        case Field::adjusterLeastEngagement:
        case Field::slipLeast:
        case Field::linkRating:
        case Field::loadFactor:
        case Field::count:
            return false;
        default:
            break;
    }
    const FieldRule& rule = ruleOf(field);
    return rule.quantity != Quantity::count && rule.scope != Scope::wanted && rule.scope != Scope::tool;
}

}  // namespace bolthole
