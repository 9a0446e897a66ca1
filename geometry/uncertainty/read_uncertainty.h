// The uncertainty of any numbers read off a car, whatever reads them.
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "geometry/uncertainty/propagation.h"
#include "geometry/uncertainty/uncertain_inputs.h"

namespace bolthole {

/// Reads numbers off a car that passed findFaults(): fills all of `numbers`, in any unit. NaN: that one does
/// not exist. False: none does.
using ReadNumbers = std::function<bool(const Car& car, std::span<double> numbers)>;

/// uncertainInputs() and every other measured number of the car: second readings, pads, tracks, springs and
/// their mounts. Of holes still only those in use.
[[nodiscard]] std::vector<CarInput> measuredInputs(const Car& car);

/// Standard uncertainties of the `count` numbers that `read` gives for the car as it is bolted, each in that
/// number's unit (JCGM 100:2008, 5.1.2): half of what the number changes by as each of measuredInputs() is
/// off by its own uncertainty, up and down, taken together, with what the second derivatives by one input
/// alone add (its note). Those count where a size is read that is nothing at the estimates, as an angle
/// between two shafts in line: first order would call it exact. NaN where the number does not exist on both
/// sides of some input, and where it rests on a number that nobody measured. Calls `read` twice an input:
/// some milliseconds, not for every step of a drag.
[[nodiscard]] std::vector<double> readUncertainty(const Car& car, std::size_t count, const ReadNumbers& read);

/// Where 95 of 100 of each number lie as all of measuredInputs() are off at random (JCGM 101:2008, cl. 7;
/// Coverage::low and high), in the number's unit, of kRangeDraws draws that are the same every time. For a
/// size near nothing, as an angle between two shafts, whose figure is no middle of where it may be. `used` of
/// a number is 0 where it is not known. Calls `read` once a draw.
inline constexpr std::size_t kRangeDraws = 500;
[[nodiscard]] std::vector<Coverage> readRanges(const Car& car, std::size_t count, const ReadNumbers& read);

/// For each of the numbers the starting numbers of the car, without an uncertainty of their own, that it
/// moves with. All empty where the car has none. Calls `read` twice for each such number.
[[nodiscard]] std::vector<std::vector<FieldId>> startsBehind(const Car& car, std::size_t count,
                                                             const ReadNumbers& read);

}  // namespace bolthole
