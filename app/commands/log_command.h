// The command log: the car's passes as a table, or passes from a table into a car.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "app/commands/request.h"

namespace bolthole {

inline constexpr Option kImportOption{"--import", "F.csv", {}};

/// One line for standard error: what it is about, usually a file, and what is to say of it.
struct LogLine {
    std::string about;
    std::string what;
};

/// What the command came to.
struct LogOutcome {
    bool done = false;
    std::string result{};          ///< the table, or the whole car file
    std::vector<LogLine> lines{};  ///< why not; or, where it was done, headers that were passed over
};

/// Without --import the log of the car in the units asked for, else those of the car. With it the car file
/// with the table's passes read in; see importLog().
[[nodiscard]] LogOutcome runLog(const Request& request);

}  // namespace bolthole
