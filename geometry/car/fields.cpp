#include "geometry/car/fields.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace bolthole {

namespace {

bool isIndexOf(int index, std::size_t size) {
    return index >= 0 && static_cast<std::size_t>(index) < size;
}

template <class CarT>
PartOf<CarT, Link>* linkIn(CarT& car, int link) {
    return isIndexOf(link, car.links.size()) ? &car.links[static_cast<std::size_t>(link)] : nullptr;
}

template <class BracketT>
auto* holeOf(BracketT& bracket, int hole) {
    return isIndexOf(hole, bracket.holes.size()) ? &bracket.holes[static_cast<std::size_t>(hole)] : nullptr;
}

template <class CarT>
PartOf<CarT, Hole>* holeIn(CarT& car, int link, End end, int hole) {
    auto* found = linkIn(car, link);
    return found == nullptr ? nullptr : holeOf(found->bracket(end), hole);
}

/// The load or spring of that index in its list.
template <class T, class CarT, class List>
PartOf<CarT, T>* itemIn(CarT& /*car*/, List& list, int item) {
    return isIndexOf(item, list.size()) ? &list[static_cast<std::size_t>(item)] : nullptr;
}

/// Where an entered number stands: the members that lead to it from the car, or from the driveline's shaft.
template <auto... path, class Root>
constexpr auto& follow(Root& root) {
    return (root.*....*path);
}

/// An entered number: where it stands in a thing of type Root, by itself and where that is const.
template <class Root>
struct EnteredRow {
    Field field;
    OptionalNumber* (*slot)(Root&);
    const OptionalNumber* (*constSlot)(const Root&);

    [[nodiscard]] OptionalNumber* of(Root& root) const { return slot(root); }
    [[nodiscard]] const OptionalNumber* of(const Root& root) const { return constSlot(root); }
};

template <class Root, auto... path>
constexpr EnteredRow<Root> entered(Field field) {
    return {field, [](Root& root) { return &follow<path...>(root); },
            [](const Root& root) { return &follow<path...>(root); }};
}

constexpr std::array kEntered{
    entered<Car, &Car::frontTrack>(Field::frontTrack),
    entered<Car, &Car::weighing, &EnteredWeighing::other, &EnteredCorners::leftFront>(Field::otherLeftFront),
    entered<Car, &Car::weighing, &EnteredWeighing::other, &EnteredCorners::rightFront>(
        Field::otherRightFront),
    entered<Car, &Car::weighing, &EnteredWeighing::other, &EnteredCorners::leftRear>(Field::otherLeftRear),
    entered<Car, &Car::weighing, &EnteredWeighing::other, &EnteredCorners::rightRear>(Field::otherRightRear),
    entered<Car, &Car::weighing, &EnteredWeighing::scaleUncertainty>(Field::scaleUncertainty),
    entered<Car, &Car::weighing, &EnteredWeighing::driver, &EnteredDriver::mass>(Field::driverMass),
    entered<Car, &Car::weighing, &EnteredWeighing::pads, &EnteredCorners::leftFront>(Field::padLeftFront),
    entered<Car, &Car::weighing, &EnteredWeighing::pads, &EnteredCorners::rightFront>(Field::padRightFront),
    entered<Car, &Car::weighing, &EnteredWeighing::pads, &EnteredCorners::leftRear>(Field::padLeftRear),
    entered<Car, &Car::weighing, &EnteredWeighing::pads, &EnteredCorners::rightRear>(Field::padRightRear),
    entered<Car, &Car::weighing, &EnteredWeighing::ticket, &EnteredTicket::front>(Field::ticketFront),
    entered<Car, &Car::weighing, &EnteredWeighing::ticket, &EnteredTicket::rear>(Field::ticketRear),
    entered<Car, &Car::weighing, &EnteredWeighing::ticket, &EnteredTicket::total>(Field::ticketTotal),
    entered<Car, &Car::weighing, &EnteredWeighing::ticket, &EnteredTicket::uncertainty>(
        Field::ticketUncertainty),
    entered<Car, &Car::lift, &EnteredLift::height>(Field::liftHeight),
    entered<Car, &Car::lift, &EnteredLift::reading>(Field::liftReading),
    entered<Car, &Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::wheel>(Field::frontWheelRate),
    entered<Car, &Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::tire>(Field::frontTireRate),
    entered<Car, &Car::wheelRates, &EnteredWheelRates::front, &EnteredRates::roll>(Field::frontRollRate),
    entered<Car, &Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::wheel>(Field::rearWheelRate),
    entered<Car, &Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::tire>(Field::rearTireRate),
    entered<Car, &Car::wheelRates, &EnteredWheelRates::rear, &EnteredRates::roll>(Field::rearRollRate),
    entered<Car, &Car::launch, &EnteredLaunch::acceleration>(Field::launchAcceleration),
    entered<Car, &Car::launch, &EnteredLaunch::sixtyFoot>(Field::sixtyFoot),
    entered<Car, &Car::launch, &EnteredLaunch::engineTorque>(Field::engineTorque),
    entered<Car, &Car::launch, &EnteredLaunch::converter>(Field::converter),
    entered<Car, &Car::launch, &EnteredLaunch::gear>(Field::launchGear),
    entered<Car, &Car::launch, &EnteredLaunch::efficiency>(Field::efficiency),
    entered<Car, &Car::launch, &EnteredLaunch::friction>(Field::friction),
    entered<Car, &Car::launch, &EnteredLaunch::axleRatio>(Field::axleRatio),
    entered<Car, &Car::launch, &EnteredLaunch::springBase>(Field::springBase),
    entered<Car, &Car::launch, &EnteredLaunch::leftShift>(Field::leftShift),
    entered<Car, &Car::launch, &EnteredLaunch::unsprungMass>(Field::unsprungMass),
    entered<Car, &Car::launch, &EnteredLaunch::loadFactor>(Field::loadFactor),
    entered<Car, &Car::brakes, &EnteredBrakes::rearShare>(Field::brakeRearShare),
    entered<Car, &Car::brakes, &EnteredBrakes::deceleration>(Field::brakeDeceleration),
};

constexpr std::array kShaft{
    entered<EnteredShaft, &EnteredShaft::frontYokeOffset>(Field::frontYokeOffset),
    entered<EnteredShaft, &EnteredShaft::rearYokeOffset>(Field::rearYokeOffset),
    entered<EnteredShaft, &EnteredShaft::windUp>(Field::windUp),
    entered<EnteredShaft, &EnteredShaft::engineSpeed>(Field::engineSpeed),
    entered<EnteredShaft, &EnteredShaft::gear>(Field::shaftGear),
    entered<EnteredShaft, &EnteredShaft::slip, &EnteredSlip::engagement>(Field::slipEngagement),
    entered<EnteredShaft, &EnteredShaft::slip, &EnteredSlip::leastEngagement>(Field::slipLeast),
    entered<EnteredShaft, &EnteredShaft::slip, &EnteredSlip::inward>(Field::slipInward),
};

template <class CarT, class Table, class RootT>
Slot<CarT> slotFrom(const Table& table, RootT& root, Field field) {
    const auto* found = std::ranges::find_if(table, [field](const auto& row) { return row.field == field; });
    return found == table.end() ? Slot<CarT>{} : Slot<CarT>{found->of(root)};
}

template <class CarT>
Slot<CarT> enteredSlot(CarT& car, Field field, int axis) {
    if (field == Field::driverAt) {
        return &car.weighing.driver.at.at[static_cast<std::size_t>(axis)];
    }
    return slotFrom<CarT>(kEntered, car, field);
}

template <class CarT>
Slot<CarT> shaftSlot(PartOf<CarT, EnteredShaft>& shaft, Field field, int axis) {
    if (field == Field::carrierJoint) {
        return &shaft.carrierJoint.at[static_cast<std::size_t>(axis)];
    }
    return slotFrom<CarT>(kShaft, shaft, field);
}

template <class CarT>
Slot<CarT> slotOfLoad(CarT& car, const FieldId& id) {
    auto* load = itemIn<EnteredLoad>(car, car.loads, id.item);
    if (load == nullptr) {
        return {};
    }
    switch (id.field) {
        case Field::loadMass:
            return &load->mass;
        case Field::loadVolume:
            return &load->volume;
        case Field::loadDensity:
            return &load->density;
        case Field::loadAt:
            return &load->at.at[static_cast<std::size_t>(id.axis)];
        case Field::loadWeighed:
            return &load->weighed;
        default:
            return &load->aboard;
    }
}

template <class CarT>
Slot<CarT> slotOfSpring(CarT& car, const FieldId& id) {
    auto* part = itemIn<SuspensionPart>(car, car.springs, id.item);
    if (part == nullptr) {
        return {};
    }
    switch (id.field) {
        case Field::springRate:
            return &part->rate;
        case Field::springFreeLength:
            return &part->freeLength;
        case Field::springClosedLength:
            return &part->closedLength;
        case Field::springOpenLength:
            return &part->openLength;
        default:
            return &part->push;
    }
}

template <class CarT>
Slot<CarT> slotOfCar(CarT& car, Field field, int axis) {
    switch (field) {
        case Field::wheelbase:
            return &car.wheelbase;
        case Field::rearTireRadius:
            return &car.rearTireRadius;
        case Field::frontTireRadius:
            return &car.frontTireRadius;
        case Field::rearTrack:
            return &car.rearTrack;
        case Field::leftFrontWeight:
            return &car.cornerWeights.leftFront;
        case Field::rightFrontWeight:
            return &car.cornerWeights.rightFront;
        case Field::leftRearWeight:
            return &car.cornerWeights.leftRear;
        case Field::rightRearWeight:
            return &car.cornerWeights.rightRear;
        case Field::cgHeight:
            return &car.cgHeight;
        case Field::bump:
            return &car.travel.bump;
        case Field::droop:
            return &car.travel.droop;
        case Field::steps:
            return &car.travel.steps;
        case Field::frontRatio:
            return &car.travel.frontRatio;
        default:
            return enteredSlot<CarT>(car, field, axis);
    }
}

template <class CarT>
Slot<CarT> slotOfAdjuster(PartOf<CarT, Adjuster>& adjuster, Field field) {
    switch (field) {
        case Field::adjusterPitch:
            return &adjuster.pitch;
        case Field::adjusterEnds:
            return &adjuster.threadedEnds;
        case Field::adjusterShortest:
            return &adjuster.shortest;
        case Field::adjusterLongest:
            return &adjuster.longest;
        case Field::adjusterEngagement:
            return &adjuster.engagement;
        case Field::adjusterEngagementAt:
            return &adjuster.engagementAt;
        default:
            return &adjuster.leastEngagement;
    }
}

template <class CarT>
Slot<CarT> slotOfLink(CarT& car, const FieldId& id) {
    auto* link = linkIn(car, id.link);
    if (link == nullptr) {
        return {};
    }
    if (id.field == Field::linkLength) {
        return &link->length;
    }
    if (id.field == Field::rodEndLimit) {
        return &link->rodEndLimit;
    }
    if (id.field == Field::linkRating) {
        return &link->rating;
    }
    if (!link->adjuster) {
        return {};
    }
    return slotOfAdjuster<CarT>(*link->adjuster, id.field);
}

template <class CarT>
Slot<CarT> slotOfDriveline(CarT& car, const FieldId& id) {
    if (!car.driveline) {
        return {};
    }
    switch (id.field) {
        case Field::pinionAngle:
            return &car.driveline->pinionAngle;
        case Field::outputAngle:
            return &car.driveline->outputAngle;
        case Field::jointLimit:
            return &car.driveline->jointLimit;
        case Field::pinionJoint:
            return &car.driveline->pinionJoint[id.axis];
        case Field::outputJoint:
            return &car.driveline->outputJoint[id.axis];
        default:
            return shaftSlot<CarT>(car.driveline->shaft, id.field, id.axis);
    }
}

template <class CarT>
Slot<CarT> slotOfWanted(CarT& car, Field field) {
    if (!car.wanted) {
        return {};
    }
    switch (field) {
        case Field::wantedIcNear:
            return &car.wanted->icNear;
        case Field::wantedIcFar:
            return &car.wanted->icFar;
        case Field::wantedLow:
            return &car.wanted->antiSquatLow;
        case Field::wantedHigh:
            return &car.wanted->antiSquatHigh;
        case Field::wantedIcLow:
            return &car.wanted->icLow;
        case Field::wantedIcHigh:
            return &car.wanted->icHigh;
        case Field::wantedChangeLow:
            return &car.wanted->changeLow;
        case Field::wantedChangeHigh:
            return &car.wanted->changeHigh;
        case Field::wantedPinionChange:
            return &car.wanted->pinionChange;
        default:
            return &car.wanted->joint;
    }
}

template <class CarT>
Slot<CarT> slotOfTool(CarT& car, Field field) {
    switch (field) {
        case Field::tapeSpread:
            return &car.tools.tape;
        case Field::caliperSpread:
            return &car.tools.calipers;
        default:
            return &car.tools.angleFinder;
    }
}

template <class CarT>
Slot<CarT> slotIn(CarT& car, const FieldId& id) {
    const FieldRule& rule = ruleOf(id.field);
    if (rule.hasAxis && !isIndexOf(id.axis, 3)) {
        return {};
    }
    switch (rule.scope) {
        case Scope::link:
            return slotOfLink(car, id);
        case Scope::driveline:
            return slotOfDriveline(car, id);
        case Scope::wanted:
            return slotOfWanted(car, id.field);
        case Scope::tool:
            return slotOfTool(car, id.field);
        case Scope::load:
            return slotOfLoad(car, id);
        case Scope::spring:
            return slotOfSpring(car, id);
        case Scope::mount: {
            auto* part = itemIn<SuspensionPart>(car, car.springs, id.item);
            auto* hole = part == nullptr ? nullptr : holeOf(part->bracket(id.end), id.hole);
            return hole == nullptr ? Slot<CarT>{} : Slot<CarT>{&hole->at[id.axis]};
        }
        case Scope::hole: {
            auto* hole = holeIn(car, id.link, id.end, id.hole);
            return hole == nullptr ? Slot<CarT>{} : Slot<CarT>{&hole->at[id.axis]};
        }
        case Scope::car:
            break;
    }
    return slotOfCar(car, id.field, id.axis);
}

/// The own uncertainties of the part that holds the number.
template <class CarT>
PartOf<CarT, Spreads>* spreadsIn(CarT& car, const FieldId& id) {
    const auto of = [](auto* part) { return part == nullptr ? nullptr : &part->spreads; };
    switch (ruleOf(id.field).scope) {
        case Scope::link:
            return of(linkIn(car, id.link));
        case Scope::hole:
            return of(holeIn(car, id.link, id.end, id.hole));
        case Scope::mount: {
            auto* part = itemIn<SuspensionPart>(car, car.springs, id.item);
            return part == nullptr ? nullptr : of(holeOf(part->bracket(id.end), id.hole));
        }
        case Scope::load:
            return of(itemIn<EnteredLoad>(car, car.loads, id.item));
        case Scope::spring:
            return of(itemIn<SuspensionPart>(car, car.springs, id.item));
        case Scope::driveline:
            return car.driveline ? &car.driveline->spreads : nullptr;
        default:
            return &car.spreads;
    }
}

}  // namespace

Slot<Car> slotOf(Car& car, const FieldId& id) {
    return slotIn(car, id);
}

Slot<const Car> slotOf(const Car& car, const FieldId& id) {
    return slotIn(car, id);
}

const Spreads* spreadsAt(const Car& car, const FieldId& id) {
    return mayHaveSpread(id.field) ? spreadsIn(car, id) : nullptr;
}

Spreads* spreadsAt(Car& car, const FieldId& id) {
    return mayHaveSpread(id.field) ? spreadsIn(car, id) : nullptr;
}

const Link* findLink(const Car& car, int link) {
    return linkIn(car, link);
}

const Hole* findHole(const Car& car, int link, End end, int hole) {
    return holeIn(car, link, end, hole);
}

const EnteredLoad* findLoad(const Car& car, int item) {
    return itemIn<EnteredLoad>(car, car.loads, item);
}

const SuspensionPart* findSpring(const Car& car, int item) {
    return itemIn<SuspensionPart>(car, car.springs, item);
}

bool mayBeAbsent(const Car& car, const FieldId& id) {
    return id.spread || std::holds_alternative<const OptionalNumber*>(slotOf(car, id));
}

Quantity quantityOf(Field field) {
    return ruleOf(field).quantity;
}

std::optional<double> numberAt(const Car& car, const FieldId& id) {
    struct Reader {
        std::optional<double> operator()(std::monostate) const { return std::nullopt; }
        std::optional<double> operator()(const double* number) const { return *number; }
        std::optional<double> operator()(const int* number) const { return *number; }
        std::optional<double> operator()(const std::optional<double>* number) const { return *number; }
    };
    if (id.spread) {
        const Spreads* spreads = spreadsAt(car, id);
        return spreads == nullptr ? std::nullopt : spreads->of(id.field, id.axis);
    }
    return std::visit(Reader{}, slotOf(car, id));
}

std::string refusal(const FieldId& id, double value) {
    const FieldRule& rule = ruleOf(id.field);
    const Limits& limits = id.spread ? spreadLimits(id.field) : *rule.limits;
    const bool high = limits.highIsOpen ? value < limits.high : value <= limits.high;
    const bool low = limits.lowIsOpen ? value > limits.low : value >= limits.low;
    const bool whole = id.spread || rule.quantity != Quantity::count || value == std::floor(value);
    return low && high && whole ? std::string() : std::string(limits.expected);
}

}  // namespace bolthole
