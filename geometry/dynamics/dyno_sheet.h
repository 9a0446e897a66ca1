// An engine's torque by speed, read from the rows of a dyno sheet as they are copied.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/damping.h"

namespace bolthole {

/// What the torque's column is taken to be in where its heading does not say.
enum class TorqueUnit { poundFeet, newtonMetres };

/// A row that was refused.
struct RefusedRow {
    int line = 0;        ///< of the text, the first is 1
    std::string text;    ///< as it stands there, shortened
    std::string reason;  ///< "expected a speed and a torque"
};

/// What came of reading a sheet: all of its rows, or none and why.
struct DynoSheet {
    std::vector<TorquePoint> torque;  ///< speeds rising; empty where a row was refused
    std::vector<RefusedRow> refused;
    TorqueUnit unit = TorqueUnit::poundFeet;  ///< what the torques were read in
    bool unitIsSaid = false;                  ///< by the sheet's heading
};

/// Reads rows of engine speed in rpm and torque at the flywheel, between them tabs, semicolons, commas or
/// spaces. A heading says which columns they are ("rpm", "torque") and the unit ("lb-ft", "N m"); without one
/// the first two columns are taken and `usual` is the unit. Other columns are left alone. Thousands may be
/// parted by commas ("1,500"); a comma is the decimal point where columns are parted by tabs, semicolons or
/// spaces ("250,5"). A row that can't be read, is out of the car file's limits or does not rise refuses the
/// whole sheet.
[[nodiscard]] DynoSheet readDynoSheet(std::string_view text, TorqueUnit usual);

}  // namespace bolthole
