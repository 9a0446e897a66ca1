#include "geometry/car/uncertainties.h"

#include <algorithm>
#include <tuple>

namespace bolthole {

namespace {

bool comesBefore(const Uncertainties::Own& one, const Uncertainties::Own& other) {
    return std::tie(one.field, one.axis) < std::tie(other.field, other.axis);
}

bool isMarkedBefore(const Uncertainties::Mark& one, const Uncertainties::Mark& other) {
    return std::tie(one.field, one.axis) < std::tie(other.field, other.axis);
}

}  // namespace

std::optional<double> Uncertainties::of(Field field, int axis) const {
    const auto found = std::ranges::lower_bound(all_, Own{field, axis, 0}, comesBefore);
    const bool isThere = found != all_.end() && found->field == field && found->axis == axis;
    return isThere ? std::optional(found->value) : std::nullopt;
}

void Uncertainties::set(Field field, int axis, std::optional<double> value) {
    const auto place = std::ranges::lower_bound(all_, Own{field, axis, 0}, comesBefore);
    const bool isThere = place != all_.end() && place->field == field && place->axis == axis;
    if (isThere && value) {
        place->value = *value;
    } else if (isThere) {
        all_.erase(place);
    } else if (value) {
        all_.insert(place, {field, axis, *value});
    }
}

Origin Uncertainties::originOf(Field field, int axis) const {
    const auto place = std::ranges::lower_bound(marks_, Mark{field, axis}, isMarkedBefore);
    const bool isThere = place != marks_.end() && place->field == field && place->axis == axis;
    return isThere ? place->origin : Origin::measured;
}

void Uncertainties::setOrigin(Field field, int axis, Origin origin) {
    const Mark mark{field, axis, origin};
    const auto place = std::ranges::lower_bound(marks_, mark, isMarkedBefore);
    const bool isThere = place != marks_.end() && place->field == field && place->axis == axis;
    if (isThere && origin == Origin::measured) {
        marks_.erase(place);
    } else if (isThere) {
        place->origin = origin;
    } else if (origin != Origin::measured) {
        marks_.insert(place, mark);
    }
}

}  // namespace bolthole
