// Which measured numbers of a car its figures rest on, and how sure each is.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/choices/hole_choice.h"
#include "geometry/uncertainty/propagation.h"

namespace bolthole {

/// What a number was taken with, unless an uncertainty of its own is entered.
enum class MeasuringTool { tape, calipers, angleFinder, scales, otherScale, estimate };
/// "tape", "calipers", "angle finder", "scales", "the other scale", "estimate".
[[nodiscard]] std::string_view nameOf(MeasuringTool tool);

/// A tape read to the nearest sixteenth at both ends: the difference of two readings is off by at most a
/// sixteenth, triangular, so u = 1/16 in / sqrt 6 (JCGM 100:2008, 4.3.9, note 1). m.
inline constexpr double kTapeSpread = kMetresPerInch / 16.0 / 2.449489742783178;
/// Calipers over a bolt and back to a hole's center: within a tenth of a millimeter either way, rectangular
/// (JCGM 100, 4.3.7, for the formula); the tenth is common practice, no source. m.
inline constexpr double kCaliperSpread = 1e-4 / 1.7320508075688772;
/// An angle finder set by hand on a machined face: within half a degree either way, rectangular; the half
/// degree is common practice, no source. rad.
inline constexpr double kAngleFinderSpread = 0.5 * kRadiansPerDegree / 1.7320508075688772;
/// A CG height that somebody typed: half an inch, a judgement, common practice, no source. m. That of one
/// which is an estimate stands with estimatedCgHeight().
inline constexpr double kEnteredCgSpread = 0.5 * kMetresPerInch;
/// Where a load or a driver sits, in each direction: an inch. A judgement, common practice, no source. m.
inline constexpr double kSeatSpread = kMetresPerInch;

/// How sure one number is.
struct Sureness {
    double uncertainty = 0;  ///< standard, SI
    MeasuringTool tool = MeasuringTool::tape;
    bool own = false;  ///< entered for this number, not the tool's
    Spread spread = Spread::normal;
};
/// Of the number that `id` names: its own, or that of the tool such numbers are taken with. What was built to
/// a number (a written length) is taken with the tape too. The lift's reading is the sum of two tires'.
[[nodiscard]] Sureness surenessOf(const Car& car, const FieldId& id);
/// The standard uncertainty of a tool as entered for the car, or the one it has by default, SI. A ticket's
/// scale without one: as the pads.
[[nodiscard]] double uncertaintyOf(const Car& car, MeasuringTool tool);

/// One measured number, with the estimate that stands in the car.
struct CarInput {
    FieldId id;
    double value = 0;  ///< SI
    Sureness sureness;
};

/// Every measured number that the figures of the car, bolted to `use`, may rest on: holes in use (a mirrored
/// pair's are one measurement), written lengths, wheelbase, radii, weights, what the CG height in use is made
/// of, driver and loads where they count, driveline. In the order a person walks around the car.
[[nodiscard]] std::vector<CarInput> uncertainInputs(const Car& car, const HoleUse& use);
/// The same for the holes in use.
[[nodiscard]] std::vector<CarInput> uncertainInputs(const Car& car);
/// As propagation takes them.
[[nodiscard]] std::vector<UncertainInput> asInputs(std::span<const CarInput> inputs);

/// Name of a number in a person's words: "lower axle hole 'top', up".
[[nodiscard]] std::string numberWords(const Car& car, const FieldId& id);

}  // namespace bolthole
