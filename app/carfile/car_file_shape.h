// The description of the car file: one function an object, its keys in the order a new file gets them. Serves
// Reader and Writer alike. Private to car_file.cpp.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <optional>
#include <utility>

#include "app/carfile/car_file.h"
#include "app/carfile/car_file_io.h"
#include "app/carfile/car_file_numbers.h"
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

inline constexpr std::array<Word<Differential>, 3> kDifferentialWords{
    {{"open", Differential::open}, {"limited", Differential::limited}, {"locked", Differential::locked}}};
inline constexpr std::array<Word<Body>, 5> kBodyWords{{{"sedan", Body::sedan},
                                                       {"coupe", Body::coupe},
                                                       {"wagon", Body::wagon},
                                                       {"pickup", Body::pickup},
                                                       {"roadster", Body::roadster}}};
inline constexpr std::array<Word<CouplingKind>, 2> kCouplingWords{
    {{"converter", CouplingKind::converter}, {"clutch", CouplingKind::clutch}}};

/// A car without the marks of a file, as it stands in a kept setup.
struct KeptCar {
    Car car;
};

/// The numbers of a car that say the uncertainty of its tools.
struct Tools {
    Car& car;
};

template <typename Io>
void exchange(Io& io, Tools& tools) {
    Numbers<Io>(io, &tools.car, Scope::tool).rest();
}

/// The uncertainty of the numbers of one part: its own uncertainties, by the file's names of its numbers.
struct UncertaintiesOf {
    Uncertainties& uncertainties;
    Scope scope;
};

template <typename Io>
void exchangeUncertainty(Io& io, Uncertainties& uncertainties, const FieldRule& rule) {
    if (!rule.hasAxis) {
        OptionalNumber value = uncertainties.of(rule.field);
        io.optionalNumber(rule.path.data(), value, rule.field);
        uncertainties.set(rule.field, -1, value);
        return;
    }
    std::array<OptionalNumber, 3> values{uncertainties.of(rule.field, 0), uncertainties.of(rule.field, 1),
                                         uncertainties.of(rule.field, 2)};
    io.rarePoint(rule.path.data(), values, rule.field);
    for (int axis = 0; axis < 3; ++axis) {
        uncertainties.set(rule.field, axis, values[static_cast<std::size_t>(axis)]);
    }
}

template <typename Io>
void exchange(Io& io, UncertaintiesOf& of) {
    io.readUncertainties();
    for (const FieldRule* rule : rulesOf(of.scope)) {
        if (rule->isMeasured) {
            exchangeUncertainty(io, of.uncertainties, *rule);
        }
    }
}

template <typename Io>
void exchangeUncertainties(Io& io, Uncertainties& uncertainties, Scope scope) {
    UncertaintiesOf of{uncertainties, scope};
    io.rareObject("u", of);
    io.origins("starting", uncertainties, scope, Origin::starting);
    io.origins("worked_out", uncertainties, scope, Origin::workedOut);
}

/// Clicks as whole numbers; none where one of them is no whole number a click may be, which is refused then.
inline std::vector<int> wholeClicks(const std::vector<double>& clicks) {
    std::vector<int> whole;
    for (const double click : clicks) {
        if (!(std::abs(click) <= kMaxClick) || click != std::floor(click)) {
            return {};
        }
        whole.push_back(static_cast<int>(click));
    }
    return whole;
}

inline FieldId endOf(FieldId at, End end) {
    at.end = end;
    return at;
}

// A hole of a link or of a spring's mount. A reader's address says which; a writer has none, but what the
// hole has of uncertainties and of numbers nobody measured does.
template <typename Io>
void exchange(Io& io, Hole& hole) {
    const auto names = [](const auto& list) {
        return std::ranges::any_of(list, [](const auto& each) { return each.field == Field::mountAt; });
    };
    const bool isMount =
        io.at().item >= 0 || names(hole.uncertainties.all()) || names(hole.uncertainties.marks());
    io.text("name", hole.name);
    const Scope scope = isMount ? Scope::mount : Scope::hole;
    Numbers<Io>(io, &hole, scope).rest();
    io.rareFlag("planned", hole.planned);
    exchangeUncertainties(io, hole.uncertainties, scope);
}

template <typename Io>
void exchange(Io& io, Plate& plate) {
    io.corners("corners", plate.corners);
    io.plateNumber("hole_diameter", plate.holeDiameter, Quantity::length);
    io.plateNumber("edge_distance", plate.edgeDistance, Quantity::length);
    io.plateNumber("hole_spacing", plate.holeSpacing, Quantity::ratio);
    io.plateStarts("starting", plate);
    io.checkPlate(plate);
}

template <typename Io>
void exchange(Io& io, Bracket& bracket) {
    io.list("holes", bracket.holes, 1, kMaxHoles, &FieldId::hole);
    io.index("use", bracket.use, bracket.holes.size());
    io.optionalObject("outline", bracket.plate);
}

template <typename Io>
void exchange(Io& io, Link& link) {
    io.text("name", link.name);
    io.word("kind", link.kind, kKindWords);
    io.word("side", link.side, kSideWords, std::optional(Side::both));
    io.optionalWord("role", link.role, kRoleWords);
    io.object("chassis", link.chassis, endOf(io.at(), End::chassis));
    io.object("axle", link.axle, endOf(io.at(), End::axle));
    Numbers<Io> numbers(io, &link, Scope::link);
    numbers.only("length");
    numbers.optional("adjuster", link.adjuster);
    numbers.rest();
    exchangeUncertainties(io, link.uncertainties, Scope::link);
}

template <typename Io>
void exchange(Io& io, Driveline& driveline) {
    Numbers<Io>(io, &driveline, Scope::driveline).rest();
    exchangeUncertainties(io, driveline.uncertainties, Scope::driveline);
}

template <typename Io>
void exchange(Io& io, EnteredBallast& load) {
    io.text("name", load.name);
    Numbers<Io>(io, &load, Scope::ballast).rest();
    exchangeUncertainties(io, load.uncertainties, Scope::ballast);
}

template <typename Io>
void exchange(Io& io, SuspensionPart& part) {
    io.text("name", part.name);
    io.word("kind", part.kind, kPartWords);
    io.word("side", part.side, kSideWords, std::optional(Side::both));
    io.object("chassis", part.chassis, endOf(io.at(), End::chassis));
    io.object("axle", part.axle, endOf(io.at(), End::axle));
    Numbers<Io> numbers(io, &part, Scope::spring);
    numbers.take("damping");
    numbers.rest();
    numbers.optional("damping", part.damping);
    exchangeUncertainties(io, part.uncertainties, Scope::spring);
}

// The objects of the car that hold more than numbers. Each says where among its numbers its words stand: a
// new number needs no line here.
template <typename Io>
void exchangeLift(Numbers<Io>& numbers, EnteredLift& lift) {
    numbers.io().rareWord("raised", lift.raised, kCarEndWords, CarEnd::front);
    numbers.only("height");
    numbers.io().rareWord("read", lift.read, kCarEndWords, CarEnd::front);
    numbers.rest();
    numbers.io().rareWord("driver", lift.driver, kDriverWords, DriverSeat::aboard);
}

// One way of a shock's table; its click is a number like any other.
template <typename Io>
void exchangeWay(Numbers<Io>& numbers, DampingWay& way) {
    std::vector<double> clicks(way.clicks.begin(), way.clicks.end());
    numbers.io().row("clicks", clicks, Quantity::count, kMaxDampingRows);
    way.clicks = wholeClicks(clicks);
    numbers.io().table("force", way.force, {kMaxDampingRows, kMaxDampingSpeeds, {Quantity::force}});
    numbers.rest();
}

// A shock's forces, which stand at `path` of what holds them, or one way of them.
template <typename Io>
void exchangeDamping(Numbers<Io>& numbers, const std::string& path, Damping& damping) {
    if (numbers.path() == path + ".bump") {
        exchangeWay(numbers, damping.bump);
    } else if (numbers.path() == path + ".rebound") {
        exchangeWay(numbers, damping.rebound);
    } else {
        numbers.io().row("speeds", damping.speeds, Quantity::shaftSpeed, kMaxDampingSpeeds);
        numbers.object("bump");
        numbers.object("rebound");
        numbers.rest();
        numbers.io().rareFlag("estimate", damping.isEstimate);
        numbers.io().check(refusal(damping));
    }
}

template <typename Io>
void exchangeEngine(Numbers<Io>& numbers, EnteredEngine& engine) {
    Table rows;
    for (const TorquePoint& point : engine.torque) {
        rows.push_back({point.speed, point.torque});
    }
    numbers.io().table("torque", rows, {kMaxTorqueRows, 2, {Quantity::speed, Quantity::torque}});
    engine.torque.clear();
    for (const std::vector<double>& row : rows) {
        engine.torque.push_back({row[0], row[1]});
    }
    numbers.io().check(refusal(engine.torque));
    numbers.rest();
}

template <typename Io>
void exchangeLaunch(Numbers<Io>& numbers, EnteredLaunch& launch) {
    if (numbers.path() == "launch") {
        numbers.io().rareWord("from", launch.from, kLaunchWords, LaunchFrom::acceleration);
        numbers.io().optionalWord("differential", launch.differential, kDifferentialWords);
    } else if (numbers.path() == "launch.engine") {
        exchangeEngine(numbers, launch.engine);
    } else if (numbers.path() == "launch.coupling") {
        numbers.io().optionalWord("kind", launch.coupling.kind, kCouplingWords);
    } else if (numbers.path() == "launch.front") {
        numbers.take("damping");
        numbers.rest();
        numbers.optional("damping", launch.front.damping);
    } else if (numbers.path().starts_with("launch.front.damping")) {
        exchangeDamping(numbers, "launch.front.damping", *launch.front.damping);
    }
    numbers.rest();
}

// What stands in an object of its own within a part: `numbers` are those of one such object.
template <typename Io>
void exchangeInside(Numbers<Io>& numbers) {
    auto* part = numbers.template part<SuspensionPart>();
    if (part != nullptr && numbers.path().starts_with("damping")) {
        exchangeDamping(numbers, "damping", *part->damping);
    } else if (auto* car = numbers.template part<Car>()) {
        if (numbers.path() == "lift") {
            exchangeLift(numbers, car->lift);
        } else if (numbers.path() == "weighing") {
            numbers.only("other_corner_weights");
        } else if (numbers.path() == "weighing.axle_ticket") {
            numbers.rest();
            numbers.io().rareWord("driver", car->weighing.ticket.driver, kDriverWords, DriverSeat::aboard);
        } else if (numbers.path().starts_with("launch")) {
            exchangeLaunch(numbers, car->launch);
        }
    }
    numbers.rest();
}

template <typename Io>
void exchange(Io& io, InnerNumbers<Io>& inner) {
    Numbers<Io> numbers(io, inner.outer, inner.path);
    exchangeInside(numbers);
}

template <typename Io>
void exchange(Io& io, TargetWindow& target) {
    Numbers<Io>(io, &target, Scope::target).rest();
}

// What was entered beside the links; all of it may be absent.
template <typename Io>
void exchangeEntered(Io& io, Car& car, Numbers<Io>& numbers) {
    io.rareWord("cg_height_from", car.cgHeightFrom, kHeightWords, CgHeightSource::entered);
    numbers.only("lift");
    numbers.only("weighing");
    io.optionalList("loads", car.ballast, kMaxBallast, &FieldId::item);
    numbers.only("wheel_rates");
    io.optionalList("springs", car.springs, kMaxSprings, &FieldId::item);
    numbers.rest();
    Tools tools{car};
    io.rareObject("tools", tools);
    exchangeUncertainties(io, car.uncertainties, Scope::car);
}

// What is said of the car itself; a kept setup has the same keys.
template <typename Io>
void exchangeState(Io& io, Car& car) {
    io.optionalText("title", car.title);
    io.optionalText("notes", car.notes);
    io.word("units", car.units, kUnitWords, std::optional(Units::inch));
    io.optionalWord("body", car.body, kBodyWords);
    Numbers<Io> numbers(io, &car, Scope::car);
    for (const char* key : {"wheelbase", "rear_tire_radius", "front_tire_radius", "front_track", "rear_track",
                            "corner_weights"}) {
        numbers.only(key);
    }
    io.rareWord("corner_weights_are", car.cornersAre, kCornerWords, DriverSeat::aboard);
    numbers.only("cg_height");
    numbers.only("travel");
    io.list("links", car.links, 0, kMaxLinks, &FieldId::link);
    io.optionalObject("driveline", car.driveline);
    io.optionalObject("wanted", car.target);
    exchangeEntered(io, car, numbers);
}

template <typename Io>
void exchange(Io& io, KeptCar& kept) {
    exchangeState(io, kept.car);
}

template <typename Io>
void exchange(Io& io, KeptSetup& state) {
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
    io.optionalIndex("before", car.baseline, car.kept.size());
    io.rareText("state_name", car.stateName);
    io.rareText("state_note", car.stateNote);
    io.optionalList("passes", car.passes, kMaxPasses, &FieldId::item);
}

}  // namespace bolthole::detail
