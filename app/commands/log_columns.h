// The columns of the log that are not plain numbers, each with how it is written and read. Private to the
// log.
#pragma once

#include <string>
#include <string_view>

#include "geometry/car/car.h"

namespace bolthole {

/// A column of the log without a unit.
struct LogColumn {
    std::string_view name;
    std::string (*write)(const Pass& pass, const Car& car);
    std::string (*read)(Pass& pass, const std::string& cell, const Car& car);
};

/// The column of that name, or null.
[[nodiscard]] const LogColumn* findLogColumn(std::string_view name);

/// "yes" or "no".
[[nodiscard]] std::string_view yesOrNo(bool value);

}  // namespace bolthole
