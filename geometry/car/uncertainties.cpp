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

bool Uncertainties::isStarting(Field field, int axis) const {
    return std::ranges::binary_search(starting_, Mark{field, axis}, isMarkedBefore);
}

void Uncertainties::setStarting(Field field, int axis, bool starting) {
    const Mark mark{field, axis};
    const auto place = std::ranges::lower_bound(starting_, mark, isMarkedBefore);
    const bool isThere = place != starting_.end() && *place == mark;
    if (isThere && !starting) {
        starting_.erase(place);
    } else if (!isThere && starting) {
        starting_.insert(place, mark);
    }
}

}  // namespace bolthole
