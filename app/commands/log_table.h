// The log of a car's passes as CSV, and passes read from such a table.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"

namespace bolthole {

/// The car's passes as CSV, a row a pass, in `units`. After RFC 4180; the columns are those of the man page.
/// What was not entered is an empty field. A setup is written by its name, or as #4, counted from 1, where
/// several have that name or the name begins with '#'. A surface is "street: north lane", "street", or ":
/// north lane" where its kind is not known but the name alone would be taken for one; "north lane" otherwise.
[[nodiscard]] std::string logTable(const Car& car, Units units);

/// Passes read into a car, or why none were.
struct ImportedLog {
    Car car;                            ///< with the passes; as it was where `problems` is not empty
    std::vector<std::string> problems;  ///< "row 4, sixty_foot_s: expected ..., found 'abc'"
    std::vector<std::string> unknown;   ///< headers that mean nothing here, as they stand in the file
};

/// Reads what logTable() writes, in either units by the headers' suffixes, columns in any order and none
/// needed but number and date; what is computed (density altitude, changes) is not read. A row with the
/// number and date of a pass the car has changes that pass, in what the file has columns for: an empty field
/// clears it. Any other row adds a pass where its day and time belong. All rows are read or none.
[[nodiscard]] ImportedLog importLog(const Car& car, std::string_view csv);

}  // namespace bolthole
