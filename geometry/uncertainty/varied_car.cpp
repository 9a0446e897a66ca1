#include "geometry/uncertainty/varied_car.h"

#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

constexpr double kSameNumber = 1e-9;  // m

bool isMirrorLink(const Link& one, const Link& other) {
    const auto isMirrored = [&](End end) {
        return (one.bracket(end).inUse().at - mirrored(other.bracket(end).inUse().at))
                   .lpNorm<Eigen::Infinity>() <= kSameNumber;
    };
    return one.kind == other.kind && one.side != other.side && isMirrored(End::chassis) &&
           isMirrored(End::axle);
}

}  // namespace

Car withOwnHeight(const Car& car) {
    Car result = car;
    if (car.cgHeightFrom == CgHeightSource::estimate) {
        result.cgHeight = balanceOf(car).from.height;
        result.cgHeightFrom = CgHeightSource::entered;
    }
    return result;
}

VariedCar::VariedCar(const Car& car, LengthTreatment treatment, const HoleUse& use,
                     std::span<const CarInput> inputs)
    : bolted_(withOwnHeight(car), treatment), use_(use), inputs_(inputs.begin(), inputs.end()) {
    for (const CarInput& input : inputs_) {
        variedInputs_.push_back(variedInputOf(car, input.id));
        last_.push_back(input.value);
    }
    isBolted_ = bolted_.bolt(use_);
}

VariedCar::VariedInput VariedCar::variedInputOf(const Car& car, const FieldId& id) const {
    VariedInput varied{id, std::nullopt, 0, datumAxis(id.field), datumOf(id)};
    const bool isHole = id.field == Field::holeAt && id.end == End::chassis;
    if (isHole && car.links[static_cast<std::size_t>(id.link)].kind != LinkKind::rod) {
        FieldId follower = id;
        follower.end = End::axle;
        follower.hole = use_.of(id.link, End::axle);
        varied.offset = numberAt(car, follower).value_or(0) - numberAt(car, id).value_or(0);
        varied.follower = follower;
    }
    return varied;
}

// The input that is the error of what the number is measured from.
std::optional<std::size_t> VariedCar::datumOf(const FieldId& id) const {
    for (std::size_t input = 0; isFromDatum(id) && input < inputs_.size(); ++input) {
        if (datumAxis(inputs_[input].id.field) == static_cast<std::size_t>(id.axis)) {
            return input;
        }
    }
    return std::nullopt;
}

const Link* VariedCar::linkOf(std::size_t input) const {
    const int link = inputs_[input].id.link;
    return link < 0 ? nullptr : &bolted_.car().links[static_cast<std::size_t>(link)];
}

bool VariedCar::isAcross(std::size_t input, std::size_t other, double sign) const {
    const FieldId& id = inputs_[input].id;
    const FieldId& theirs = inputs_[other].id;
    return linkOf(other) != nullptr && theirs.field == id.field && theirs.end == id.end &&
           theirs.axis == id.axis && isMirrorLink(*linkOf(input), *linkOf(other)) &&
           std::abs(inputs_[other].value - sign * inputs_[input].value) <= kSameNumber;
}

void VariedCar::keepSymmetric() {
    for (std::size_t input = 0; input < inputs_.size(); ++input) {
        const Link* link = linkOf(input);
        VariedInput& varied = variedInputs_[input];
        varied.sign = inputs_[input].id.axis == 1 ? -1 : 1;
        if (varied.datum) {
            varied.isFixed = varied.datum == 1;
            continue;
        }
        if (link == nullptr || link->side == Side::both) {
            continue;
        }
        if (link->side == Side::center) {
            varied.isFixed = varied.sign < 0;
            continue;
        }
        for (std::size_t other = 0; other < inputs_.size() && !varied.mirror; ++other) {
            if (isAcross(input, other, varied.sign)) {
                varied.mirror = other;
            }
        }
    }
}

double VariedCar::valueOf(std::size_t input, std::span<const double> x) const {
    const VariedInput& varied = variedInputs_[input];
    const double estimate = inputs_[input].value;
    if (varied.isFixed) {
        return estimate;
    }
    if (!varied.mirror) {
        return x[input];
    }
    const double theirs = x[*varied.mirror] - inputs_[*varied.mirror].value;
    return estimate + (x[input] - estimate + varied.sign * theirs) / 2;
}

bool VariedCar::set(std::span<const double> x) {
    for (std::size_t input = 0; input < variedInputs_.size(); ++input) {
        const VariedInput& varied = variedInputs_[input];
        const double value = valueOf(input, x) + (varied.datumInput ? valueOf(*varied.datumInput, x) : 0);
        if (value == last_[input] || varied.datum) {
            continue;
        }
        last_[input] = value;
        bolted_.setNumber(varied.id, value);
        if (varied.follower) {
            bolted_.setNumber(*varied.follower, value + varied.offset);
        }
    }
    isBolted_ = bolted_.bolt(use_);
    return isBolted_;
}

}  // namespace bolthole
