// The car files that commands are given, and what is said of them on standard error.
#pragma once

#include <optional>
#include <string>

#include "app/commands/request.h"
#include "geometry/car/car.h"

namespace bolthole {

/// One line on standard error: "bolthole: FILE: what is wrong".
void complain(const std::string& about, const std::string& what);

/// A readable car in the units asked for; else complains.
[[nodiscard]] std::optional<Car> readFor(const Request& request, const std::string& file);
/// The same for what prints figures: says on standard error which of their numbers nobody measured, as the
/// columns have no room for it.
[[nodiscard]] std::optional<Car> readForFigures(const Request& request, const std::string& file);

}  // namespace bolthole
