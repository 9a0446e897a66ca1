#include "geometry/car/fields.h"

#include <cmath>

#include "geometry/units/say.h"

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

/// The part that the number `id` belongs to.
template <class CarT>
Part<CarT> partIn(CarT& car, const FieldId& id) {
    switch (ruleOf(id.field).scope) {
        case Scope::link:
            return linkIn(car, id.link);
        case Scope::hole:
            return holeIn(car, id.link, id.end, id.hole);
        case Scope::mount: {
            auto* part = itemIn<SuspensionPart>(car, car.springs, id.item);
            return part == nullptr ? nullptr : holeOf(part->bracket(id.end), id.hole);
        }
        case Scope::ballast:
            return itemIn<EnteredBallast>(car, car.ballast, id.item);
        case Scope::spring:
            return itemIn<SuspensionPart>(car, car.springs, id.item);
        case Scope::driveline:
            return car.driveline ? &*car.driveline : nullptr;
        case Scope::target:
            return car.target ? &*car.target : nullptr;
        case Scope::car:
        case Scope::tool:
            break;
    }
    return &car;
}

/// The own uncertainties of the part that holds the number.
template <class CarT>
PartOf<CarT, Uncertainties>* uncertaintiesIn(CarT& car, const FieldId& id) {
    const auto of = [](auto* part) -> PartOf<CarT, Uncertainties>* {
        if constexpr (std::is_same_v<std::remove_cvref_t<decltype(*part)>, TargetWindow>) {
            return nullptr;  // nothing of it is measured
        } else {
            return part == nullptr ? nullptr : &part->uncertainties;
        }
    };
    return std::visit(of, partIn(car, id));
}

}  // namespace

Slot<Car> slotOf(Car& car, const FieldId& id) {
    return ruleOf(id.field).access.slot(partIn(car, id), id.axis);
}

Slot<const Car> slotOf(const Car& car, const FieldId& id) {
    return ruleOf(id.field).access.constSlot(partIn(car, id), id.axis);
}

const Uncertainties* uncertaintiesAt(const Car& car, const FieldId& id) {
    return mayHaveUncertainty(id.field) ? uncertaintiesIn(car, id) : nullptr;
}

Uncertainties* uncertaintiesAt(Car& car, const FieldId& id) {
    return mayHaveUncertainty(id.field) ? uncertaintiesIn(car, id) : nullptr;
}

const Uncertainties* partMarksAt(const Car& car, const FieldId& id) {
    return uncertaintiesIn(car, id);
}

Uncertainties* partMarksAt(Car& car, const FieldId& id) {
    return uncertaintiesIn(car, id);
}

const Link* findLink(const Car& car, int link) {
    return linkIn(car, link);
}

const Hole* findHole(const Car& car, int link, End end, int hole) {
    return holeIn(car, link, end, hole);
}

const EnteredBallast* findBallast(const Car& car, int item) {
    return itemIn<EnteredBallast>(car, car.ballast, item);
}

const SuspensionPart* findSpring(const Car& car, int item) {
    return itemIn<SuspensionPart>(car, car.springs, item);
}

bool mayBeAbsent(const Car& car, const FieldId& id) {
    return id.uncertainty || std::holds_alternative<const OptionalNumber*>(slotOf(car, id));
}

Quantity quantityOf(Field field) {
    return ruleOf(field).quantity;
}

std::optional<double> numberIn(const Slot<const Car>& slot) {
    struct Reader {
        std::optional<double> operator()(std::monostate) const { return std::nullopt; }
        std::optional<double> operator()(const double* number) const { return *number; }
        std::optional<double> operator()(const int* number) const { return *number; }
        std::optional<double> operator()(const std::optional<double>* number) const { return *number; }
    };
    return std::visit(Reader{}, slot);
}

std::optional<double> numberAt(const Car& car, const FieldId& id) {
    if (id.uncertainty) {
        const Uncertainties* uncertainties = uncertaintiesAt(car, id);
        return uncertainties == nullptr ? std::nullopt : uncertainties->of(id.field, id.axis);
    }
    return numberIn(slotOf(car, id));
}

std::string refusal(const FieldId& id, double value) {
    const FieldRule& rule = ruleOf(id.field);
    const Limits& limits = id.uncertainty ? uncertaintyLimits(id.field) : *rule.limits;
    const bool high = limits.highIsOpen ? value < limits.high : value <= limits.high;
    const bool low = limits.lowIsOpen ? value > limits.low : value >= limits.low;
    const bool whole = id.uncertainty || rule.quantity != Quantity::count || value == std::floor(value);
    return low && high && whole ? std::string() : say(limits.expected);
}

}  // namespace bolthole
