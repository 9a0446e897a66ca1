// The description of the car file: one function an object, its keys in the order a new file gets them. Serves
// Reader and Writer alike. Private to car_file.cpp.
#pragma once

#include <algorithm>
#include <array>
#include <memory>
#include <optional>
#include <utility>

#include "app/carfile/car_file.h"
#include "app/carfile/car_file_io.h"
#include "app/carfile/passes_file_shape.h"
#include "geometry/car/fields.h"

namespace bolthole::detail {

inline constexpr std::array<Word<Units>, 2> kUnitWords{{{"inch", Units::inch}, {"metric", Units::metric}}};
inline constexpr std::array<Word<LinkKind>, 4> kKindWords{{{"rod", LinkKind::rod},
                                                           {"pivot", LinkKind::pivot},
                                                           {"slider", LinkKind::slider},
                                                           {"guide", LinkKind::guide}}};
inline constexpr std::array<Word<Side>, 4> kSideWords{
    {{"both", Side::both}, {"left", Side::left}, {"right", Side::right}, {"center", Side::center}}};
inline constexpr std::array<Word<Role>, 3> kRoleWords{
    {{"lower", Role::lower}, {"upper", Role::upper}, {"crosswise", Role::crosswise}}};

inline constexpr std::array<Word<DriverSeat>, 2> kCornerWords{
    {{"with_driver", DriverSeat::aboard}, {"without_driver", DriverSeat::out}}};
inline constexpr std::array<Word<DriverSeat>, 2> kDriverWords{
    {{"aboard", DriverSeat::aboard}, {"out", DriverSeat::out}}};
inline constexpr std::array<Word<CarEnd>, 2> kCarEndWords{{{"front", CarEnd::front}, {"rear", CarEnd::rear}}};
inline constexpr std::array<Word<CgHeightSource>, 3> kHeightWords{{{"entered", CgHeightSource::entered},
                                                                   {"lift", CgHeightSource::lift},
                                                                   {"estimate", CgHeightSource::estimate}}};
inline constexpr std::array<Word<LaunchFrom>, 3> kLaunchWords{{{"acceleration", LaunchFrom::acceleration},
                                                               {"sixty_foot", LaunchFrom::sixtyFoot},
                                                               {"torque", LaunchFrom::torque}}};
inline constexpr std::array<Word<PartKind>, 5> kPartWords{{{"spring", PartKind::spring},
                                                           {"shock", PartKind::shock},
                                                           {"coilover", PartKind::coilOver},
                                                           {"bump_stop", PartKind::bumpStop},
                                                           {"strap", PartKind::strap}}};

/// A car without the marks of a file, as it stands in a kept state.
struct KeptCar {
    Car car;
};

/// How sure the numbers of one part are: its own uncertainties, by the file's names of its numbers.
struct SpreadsOf {
    Spreads& spreads;
    Scope scope;
};

template <typename Io>
void exchangeSpread(Io& io, Spreads& spreads, const FieldRule& rule) {
    if (!rule.hasAxis) {
        OptionalNumber value = spreads.of(rule.field);
        io.optionalNumber(rule.path.data(), value, rule.field);
        spreads.set(rule.field, -1, value);
        return;
    }
    std::array<OptionalNumber, 3> values{spreads.of(rule.field, 0), spreads.of(rule.field, 1),
                                         spreads.of(rule.field, 2)};
    io.rarePoint(rule.path.data(), values, rule.field);
    for (int axis = 0; axis < 3; ++axis) {
        spreads.set(rule.field, axis, values[static_cast<std::size_t>(axis)]);
    }
}

template <typename Io>
void exchange(Io& io, SpreadsOf& of) {
    io.readSpreads();
    for (int index = 0; index < static_cast<int>(Field::count); ++index) {
        const FieldRule& rule = ruleOf(static_cast<Field>(index));
        if (rule.scope == of.scope && mayHaveSpread(rule.field)) {
            exchangeSpread(io, of.spreads, rule);
        }
    }
}

template <typename Io>
void exchangeSpreads(Io& io, Spreads& spreads, Scope scope) {
    SpreadsOf of{spreads, scope};
    io.rareObject("u", of);
}

inline FieldId endOf(FieldId at, End end) {
    at.end = end;
    return at;
}

template <typename Io>
void exchange(Io& io, CornerWeights& weights) {
    io.number("left_front", weights.leftFront, Field::leftFrontWeight);
    io.number("right_front", weights.rightFront, Field::rightFrontWeight);
    io.number("left_rear", weights.leftRear, Field::leftRearWeight);
    io.number("right_rear", weights.rightRear, Field::rightRearWeight);
}

template <typename Io>
void exchange(Io& io, TravelRange& travel) {
    constexpr TravelRange kDefault;
    io.number("bump", travel.bump, Field::bump, kDefault.bump);
    io.number("droop", travel.droop, Field::droop, kDefault.droop);
    io.whole("steps", travel.steps, Field::steps, kDefault.steps);
    io.number("front_ratio", travel.frontRatio, Field::frontRatio, kDefault.frontRatio);
}

// A hole of a link or of a spring's mount. A reader's address says which; a writer has none, but what the
// hole has of uncertainties does.
template <typename Io>
void exchange(Io& io, Hole& hole) {
    const bool isMount =
        io.at().item >= 0 || std::ranges::find(hole.spreads.all(), Field::mountAt, &Spreads::Own::field) !=
                                 hole.spreads.all().end();
    io.text("name", hole.name);
    io.point("at", hole.at, isMount ? Field::mountAt : Field::holeAt);
    io.rareFlag("planned", hole.planned);
    exchangeSpreads(io, hole.spreads, isMount ? Scope::mount : Scope::hole);
}

template <typename Io>
void exchange(Io& io, Plate& plate) {
    io.corners("corners", plate.corners);
    io.plateNumber("hole_diameter", plate.holeDiameter, Quantity::length);
    io.plateNumber("edge_distance", plate.edgeDistance, Quantity::length);
    io.plateNumber("hole_spacing", plate.holeSpacing, Quantity::ratio);
    io.checkPlate(plate);
}

template <typename Io>
void exchange(Io& io, Bracket& bracket) {
    io.list("holes", bracket.holes, 1, kMaxHoles, &FieldId::hole);
    io.index("use", bracket.use, bracket.holes.size());
    io.optionalObject("outline", bracket.plate);
}

template <typename Io>
void exchange(Io& io, Adjuster& adjuster) {
    io.number("pitch", adjuster.pitch, Field::adjusterPitch);
    io.whole("ends", adjuster.threadedEnds, Field::adjusterEnds);
    io.optionalNumber("shortest", adjuster.shortest, Field::adjusterShortest);
    io.optionalNumber("longest", adjuster.longest, Field::adjusterLongest);
    io.optionalNumber("engagement", adjuster.engagement, Field::adjusterEngagement);
    io.optionalNumber("engagement_at", adjuster.engagementAt, Field::adjusterEngagementAt);
    io.optionalNumber("least_engagement", adjuster.leastEngagement, Field::adjusterLeastEngagement);
}

template <typename Io>
void exchange(Io& io, Link& link) {
    io.text("name", link.name);
    io.word("kind", link.kind, kKindWords);
    io.word("side", link.side, kSideWords, std::optional(Side::both));
    io.optionalWord("role", link.role, kRoleWords);
    io.object("chassis", link.chassis, endOf(io.at(), End::chassis));
    io.object("axle", link.axle, endOf(io.at(), End::axle));
    io.optionalNumber("length", link.length, Field::linkLength);
    io.optionalObject("adjuster", link.adjuster);
    io.optionalNumber("rod_end_limit", link.rodEndLimit, Field::rodEndLimit);
    io.optionalNumber("rating", link.rating, Field::linkRating);
    exchangeSpreads(io, link.spreads, Scope::link);
}

template <typename Io>
void exchange(Io& io, EnteredSlip& slip) {
    io.optionalNumber("engagement", slip.engagement, Field::slipEngagement);
    io.optionalNumber("least_engagement", slip.leastEngagement, Field::slipLeast);
    io.optionalNumber("inward", slip.inward, Field::slipInward);
}

// The driveline's own keys beyond its end joints.
template <typename Io>
void exchangeShaft(Io& io, EnteredShaft& shaft) {
    io.rarePoint("carrier_joint", shaft.carrierJoint.at, Field::carrierJoint);
    io.optionalNumber("front_yoke_offset", shaft.frontYokeOffset, Field::frontYokeOffset);
    io.optionalNumber("rear_yoke_offset", shaft.rearYokeOffset, Field::rearYokeOffset);
    io.optionalNumber("wind_up", shaft.windUp, Field::windUp);
    io.optionalNumber("engine_speed", shaft.engineSpeed, Field::engineSpeed);
    io.optionalNumber("gear", shaft.gear, Field::shaftGear);
    io.rareObject("slip_yoke", shaft.slip);
}

template <typename Io>
void exchange(Io& io, Driveline& driveline) {
    io.number("pinion_angle", driveline.pinionAngle, Field::pinionAngle);
    io.point("pinion_joint", driveline.pinionJoint, Field::pinionJoint);
    io.number("output_angle", driveline.outputAngle, Field::outputAngle);
    io.point("output_joint", driveline.outputJoint, Field::outputJoint);
    io.optionalNumber("joint_limit", driveline.jointLimit, Field::jointLimit);
    exchangeShaft(io, driveline.shaft);
    exchangeSpreads(io, driveline.spreads, Scope::driveline);
}

// Four numbers, one a wheel: readings or, under "pads", heights.
template <typename Io>
void exchangeWheels(Io& io, EnteredCorners& corners, std::array<Field, 4> fields) {
    io.optionalNumber("left_front", corners.leftFront, fields[0]);
    io.optionalNumber("right_front", corners.rightFront, fields[1]);
    io.optionalNumber("left_rear", corners.leftRear, fields[2]);
    io.optionalNumber("right_rear", corners.rightRear, fields[3]);
}

/// The two sets of four that are entered, each with the fields it is made of.
struct OtherCorners {
    EnteredCorners& corners;
};
struct Pads {
    EnteredCorners& corners;
};

template <typename Io>
void exchange(Io& io, OtherCorners& other) {
    exchangeWheels(
        io, other.corners,
        {Field::otherLeftFront, Field::otherRightFront, Field::otherLeftRear, Field::otherRightRear});
}

template <typename Io>
void exchange(Io& io, Pads& pads) {
    exchangeWheels(io, pads.corners,
                   {Field::padLeftFront, Field::padRightFront, Field::padLeftRear, Field::padRightRear});
}

template <typename Io>
void exchange(Io& io, EnteredDriver& driver) {
    io.optionalNumber("mass", driver.mass, Field::driverMass);
    io.rarePoint("at", driver.at.at, Field::driverAt);
}

template <typename Io>
void exchange(Io& io, EnteredTicket& ticket) {
    io.optionalNumber("front", ticket.front, Field::ticketFront);
    io.optionalNumber("rear", ticket.rear, Field::ticketRear);
    io.optionalNumber("total", ticket.total, Field::ticketTotal);
    io.optionalNumber("uncertainty", ticket.uncertainty, Field::ticketUncertainty);
    io.rareWord("driver", ticket.driver, kDriverWords, DriverSeat::aboard);
}

template <typename Io>
void exchange(Io& io, EnteredWeighing& weighing) {
    OtherCorners other{weighing.other};
    Pads pads{weighing.pads};
    io.rareObject("other_corner_weights", other);
    io.optionalNumber("scale_uncertainty", weighing.scaleUncertainty, Field::scaleUncertainty);
    io.rareObject("driver", weighing.driver);
    io.rareObject("pads", pads);
    io.rareObject("axle_ticket", weighing.ticket);
}

template <typename Io>
void exchange(Io& io, EnteredLoad& load) {
    io.text("name", load.name);
    io.optionalNumber("mass", load.mass, Field::loadMass);
    io.optionalNumber("volume", load.volume, Field::loadVolume);
    io.optionalNumber("density", load.density, Field::loadDensity);
    io.rarePoint("at", load.at.at, Field::loadAt);
    io.number("weighed", load.weighed, Field::loadWeighed, EnteredLoad{}.weighed);
    io.number("aboard", load.aboard, Field::loadAboard, EnteredLoad{}.aboard);
    exchangeSpreads(io, load.spreads, Scope::load);
}

template <typename Io>
void exchange(Io& io, EnteredLift& lift) {
    io.rareWord("raised", lift.raised, kCarEndWords, CarEnd::front);
    io.optionalNumber("height", lift.height, Field::liftHeight);
    io.rareWord("read", lift.read, kCarEndWords, CarEnd::front);
    io.optionalNumber("reading", lift.reading, Field::liftReading);
    io.rareWord("driver", lift.driver, kDriverWords, DriverSeat::aboard);
}

/// The rates of one end, with the fields they are made of.
struct EndRates {
    EnteredRates& rates;
    Field wheel;
    Field tire;
    Field roll;
};

template <typename Io>
void exchange(Io& io, EndRates& end) {
    io.optionalNumber("wheel", end.rates.wheel, end.wheel);
    io.optionalNumber("tire", end.rates.tire, end.tire);
    io.optionalNumber("roll", end.rates.roll, end.roll);
}

template <typename Io>
void exchange(Io& io, EnteredWheelRates& rates) {
    EndRates front{rates.front, Field::frontWheelRate, Field::frontTireRate, Field::frontRollRate};
    EndRates rear{rates.rear, Field::rearWheelRate, Field::rearTireRate, Field::rearRollRate};
    io.rareObject("front", front);
    io.rareObject("rear", rear);
}

template <typename Io>
void exchange(Io& io, SuspensionPart& part) {
    io.text("name", part.name);
    io.word("kind", part.kind, kPartWords);
    io.word("side", part.side, kSideWords, std::optional(Side::both));
    io.object("chassis", part.chassis, endOf(io.at(), End::chassis));
    io.object("axle", part.axle, endOf(io.at(), End::axle));
    io.optionalNumber("rate", part.rate, Field::springRate);
    io.optionalNumber("free_length", part.freeLength, Field::springFreeLength);
    io.optionalNumber("closed_length", part.closedLength, Field::springClosedLength);
    io.optionalNumber("open_length", part.openLength, Field::springOpenLength);
    io.rareNumber("push", part.push, Field::springPush, 0);
    exchangeSpreads(io, part.spreads, Scope::spring);
}

template <typename Io>
void exchange(Io& io, EnteredLaunch& launch) {
    io.rareWord("from", launch.from, kLaunchWords, LaunchFrom::acceleration);
    io.optionalNumber("acceleration_g", launch.acceleration, Field::launchAcceleration);
    io.optionalNumber("sixty_foot", launch.sixtyFoot, Field::sixtyFoot);
    io.optionalNumber("engine_torque", launch.engineTorque, Field::engineTorque);
    io.optionalNumber("converter", launch.converter, Field::converter);
    io.optionalNumber("gear", launch.gear, Field::launchGear);
    io.optionalNumber("efficiency", launch.efficiency, Field::efficiency);
    io.optionalNumber("friction", launch.friction, Field::friction);
    io.optionalNumber("axle_ratio", launch.axleRatio, Field::axleRatio);
    io.optionalNumber("spring_base", launch.springBase, Field::springBase);
    io.optionalNumber("left_shift", launch.leftShift, Field::leftShift);
    io.optionalNumber("unsprung_mass", launch.unsprungMass, Field::unsprungMass);
    io.optionalNumber("load_factor", launch.loadFactor, Field::loadFactor);
}

template <typename Io>
void exchange(Io& io, EnteredBrakes& brakes) {
    io.optionalNumber("rear_share", brakes.rearShare, Field::brakeRearShare);
    io.optionalNumber("deceleration_g", brakes.deceleration, Field::brakeDeceleration);
}

template <typename Io>
void exchange(Io& io, EnteredTools& tools) {
    io.optionalNumber("tape", tools.tape, Field::tapeSpread);
    io.optionalNumber("calipers", tools.calipers, Field::caliperSpread);
    io.optionalNumber("angle_finder", tools.angleFinder, Field::angleFinderSpread);
}

// What was entered beside the links; all of it may be absent.
template <typename Io>
void exchangeEntered(Io& io, Car& car) {
    io.rareWord("cg_height_from", car.cgHeightFrom, kHeightWords, CgHeightSource::entered);
    io.rareObject("lift", car.lift);
    io.rareObject("weighing", car.weighing);
    io.optionalList("loads", car.loads, kMaxLoads, &FieldId::item);
    io.rareObject("wheel_rates", car.wheelRates);
    io.optionalList("springs", car.springs, kMaxSprings, &FieldId::item);
    io.rareObject("launch", car.launch);
    io.rareObject("brakes", car.brakes);
    io.rareObject("tools", car.tools);
    exchangeSpreads(io, car.spreads, Scope::car);
}

template <typename Io>
void exchange(Io& io, WantedWindow& wanted) {
    io.optionalNumber("ic_near", wanted.icNear, Field::wantedIcNear);
    io.optionalNumber("ic_far", wanted.icFar, Field::wantedIcFar);
    io.number("anti_squat_low", wanted.antiSquatLow, Field::wantedLow);
    io.number("anti_squat_high", wanted.antiSquatHigh, Field::wantedHigh);
    io.optionalNumber("ic_low", wanted.icLow, Field::wantedIcLow);
    io.optionalNumber("ic_high", wanted.icHigh, Field::wantedIcHigh);
    io.optionalNumber("anti_squat_change_low", wanted.changeLow, Field::wantedChangeLow);
    io.optionalNumber("anti_squat_change_high", wanted.changeHigh, Field::wantedChangeHigh);
    io.optionalNumber("pinion_change", wanted.pinionChange, Field::wantedPinionChange);
    io.optionalNumber("joint_angle", wanted.joint, Field::wantedJoint);
}

// What is said of the car itself; a kept state has the same keys.
template <typename Io>
void exchangeState(Io& io, Car& car) {
    io.optionalText("title", car.title);
    io.optionalText("notes", car.notes);
    io.word("units", car.units, kUnitWords, std::optional(Units::inch));
    io.number("wheelbase", car.wheelbase, Field::wheelbase);
    io.number("rear_tire_radius", car.rearTireRadius, Field::rearTireRadius);
    io.number("front_tire_radius", car.frontTireRadius, Field::frontTireRadius);
    io.optionalNumber("front_track", car.frontTrack, Field::frontTrack);
    io.optionalNumber("rear_track", car.rearTrack, Field::rearTrack);
    io.object("corner_weights", car.cornerWeights, io.at());
    io.rareWord("corner_weights_are", car.cornersAre, kCornerWords, DriverSeat::aboard);
    io.number("cg_height", car.cgHeight, Field::cgHeight);
    io.defaultedObject("travel", car.travel);
    io.list("links", car.links, 0, kMaxLinks, &FieldId::link);
    io.optionalObject("driveline", car.driveline);
    io.optionalObject("wanted", car.wanted);
    exchangeEntered(io, car);
}

template <typename Io>
void exchange(Io& io, KeptCar& kept) {
    exchangeState(io, kept.car);
}

template <typename Io>
void exchange(Io& io, KeptState& state) {
    KeptCar kept;
    if (state.car) {
        kept.car = *state.car;
    }
    io.text("name", state.name);
    io.optionalText("date", state.date);
    io.optionalText("note", state.note);
    io.object("car", kept, io.at());
    state.car = std::make_shared<const Car>(std::move(kept.car));
}

template <typename Io>
void exchange(Io& io, Car& car) {
    io.mark("bolthole-car", kCarFileVersion);
    exchangeState(io, car);
    io.optionalList("kept", car.kept, kMaxKept, &FieldId::link);
    io.optionalIndex("before", car.before, car.kept.size());
    io.rareText("state_name", car.stateName);
    io.rareText("state_note", car.stateNote);
    io.optionalList("passes", car.passes, kMaxPasses, &FieldId::item);
}

}  // namespace bolthole::detail
