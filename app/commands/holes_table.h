// Every hole combination of a car as a table: CSV after RFC 4180.
#pragma once

#include <memory>

#include "app/carfile/file_writing.h"
#include "geometry/combinations/hole_combination.h"

namespace bolthole {

/// What the table is made of.
struct HolesTable {
    /// Must have passed findFaults() and, for `uppers`, have an upper rod; its units are used.
    std::shared_ptr<const Car> car;
    LengthTreatment lengths = LengthTreatment::keep;
    CombinationScope scope;
    bool uncertainty = false;  ///< with columns that say the uncertainty of the figures
};

/// Whether any combination can be assembled at ride. Stops at the first; looks through all only where none
/// can.
[[nodiscard]] bool anyAssembled(const HolesTable& table);

/// Writes the table piece by piece: a header of column names with the unit of lengths (_in or _mm), then a
/// row a combination in the order of CombinationSpace. Each row holds the hole in use at every end of every
/// link (its number where it has no name), whether it is how the car is bolted, the figures at ride and
/// anti-squat at both ends of travel, each rod's length, the problems in words, and how the lengths were
/// treated. A combination that can't be assembled keeps its row, its figures and lengths are empty; so is a
/// figure that does not exist. With `uncertainty`, after all these, for each figure a column of its name and
/// "_u": its standard uncertainty in its own unit, empty where it is not known. Computes on all cores, as
/// many rows at a time as they keep busy with. False: `write` gave up.
[[nodiscard]] bool writeHolesTable(const HolesTable& table, const WriteBytes& write);

}  // namespace bolthole
