// Words of the other scale readings, which depend on where the driver sat for the corner weights.
#include <algorithm>

#include "geometry/car/fields.h"
#include "widgets/kit/translation.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

std::optional<FieldWords> otherReadingWords(const Car& car, const FieldId& id) {
    constexpr std::array<const char*, 4> kWheels{"left front", "right front", "left rear", "right rear"};
    constexpr std::array<const char*, 2> kSides{"left", "right"};
    const auto* found = std::ranges::find(kOtherCornerFields, id.field);
    if (found == kOtherCornerFields.end()) {
        return std::nullopt;
    }
    const auto wheel = static_cast<std::size_t>(found - kOtherCornerFields.begin());
    const QString driver =
        car.cornersAre == DriverSeat::aboard ? tr("without the driver") : tr("with the driver");
    return FieldWords{
        tr(kSides[wheel % 2]), tr("other reading, %1, %2").arg(tr(kWheels[wheel]), driver),
        tr("Scale reading under this tire in a second weighing with the driver the other way, nothing else "
           "changed: same pads, fuel and loads, car rolled on and settled the same way, wheels chocked "
           "before anyone climbs in or out. The difference of the two readings is the driver. All four "
           "or none are used.")};
}

}  // namespace bolthole
