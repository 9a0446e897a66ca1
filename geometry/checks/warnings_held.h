// Warnings about how the links hold the axle, and which link to look at for them. Part of findWarnings() in
// geometry/edits/edit.h, which is what others call.
#pragma once

#include <vector>

#include "geometry/car/faults.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {

/// A number of a link to be led to: its chassis hole in use. Of the whole car where there is no such link.
[[nodiscard]] FieldId fieldOfLink(const Car& car, int link);

/// The link to look at first where nothing holds `freedom`: one whose work that would be, else the first that
/// runs fore and aft, else the last one. -1: the car has no links.
[[nodiscard]] int linkFor(const Car& car, Freedom freedom);

/// Mismatch in travel above which links are said to bind, m: what a tape reads. Common practice, no source.
inline constexpr double kWorthSayingBind = kMetresPerInch / 16;

/// Adds the warning that the links misfit in travel by more than kWorthSayingBind, about the link that
/// misfits most. `trace`: of `car`, which passed findFaults().
void addBindWarning(const Car& car, const Trace& trace, std::vector<Warning>& warnings);

}  // namespace bolthole
