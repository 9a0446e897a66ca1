// What keeps a car from being computed, and what looks wrong in one that can be.
#pragma once

#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"

namespace bolthole {

/// Something that keeps a car from being computed, at its place.
struct Fault {
    FieldId id;          ///< the number at fault; a number of the whole car where no single one is
    std::string path;    ///< JSON path
    std::string reason;  ///< what is wrong and what was expected
};

/// Everything that makes the car's numbers unusable: outside the limits, not finite. Empty: computable.
[[nodiscard]] std::vector<Fault> findFaults(const Car& car);

/// How much hangs on what looks wrong.
enum class Severity {
    danger,      ///< driven so, someone can get hurt or a part can break
    wrong,       ///< figures are wrong, or not what the car does
    unmeasured,  ///< it comes of starting numbers, which nobody measured
    check        ///< odd, left out or not known: figures may be right
};

/// What looks wrong, in words; lengths in the car's units.
struct Finding {
    Severity severity = Severity::wrong;
    std::string cause;    ///< what is the case
    std::string follows;  ///< what comes of it, or what to do; may be empty
};
/// "cause: follows", or the cause alone.
[[nodiscard]] std::string sentence(const Finding& finding);

/// Something that can be computed but looks wrong.
struct Warning {
    std::string path;  ///< JSON path
    FieldId id;
    Finding finding;
    bool isOfWhole = false;  ///< of the car; its field is but where to begin
};

}  // namespace bolthole
