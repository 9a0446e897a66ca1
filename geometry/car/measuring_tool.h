// What the numbers of a car are taken with, and the uncertainty of each tool unless the person says
// otherwise.
#pragma once

#include <string_view>

#include "geometry/units/units.h"

namespace bolthole {

/// What a number was taken with, unless an uncertainty of its own is entered.
enum class MeasuringTool { tape, calipers, angleFinder, scales, otherScale, estimate };
/// "tape", "calipers", "angle finder", "scales", "the other scale", "estimate".
[[nodiscard]] std::string_view nameOf(MeasuringTool tool);

/// What numbers of that quantity are usually taken with.
[[nodiscard]] constexpr MeasuringTool toolFor(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return MeasuringTool::tape;
        case Quantity::angle:
            return MeasuringTool::angleFinder;
        case Quantity::mass:
            return MeasuringTool::scales;
        default:
            return MeasuringTool::estimate;
    }
}

/// A tape read to the nearest sixteenth at both ends: the difference of two readings is off by at most a
/// sixteenth, triangular, so u = 1/16 in / sqrt 6 (JCGM 100:2008, 4.3.9, note 1). m.
inline constexpr double kTapeUncertainty = kMetresPerInch / 16.0 / 2.449489742783178;
/// Calipers over a bolt and back to a hole's center: within a tenth of a millimeter either way, rectangular
/// (JCGM 100, 4.3.7, for the formula); the tenth is common practice, no source. m.
inline constexpr double kCaliperUncertainty = 1e-4 / 1.7320508075688772;
/// An angle finder set by hand on a machined face: within half a degree either way, rectangular; the half
/// degree is common practice, no source. rad.
inline constexpr double kAngleFinderUncertainty = 0.5 * kRadiansPerDegree / 1.7320508075688772;
/// A CG height that somebody typed: half an inch, a judgement, common practice, no source. m. That of one
/// which is an estimate stands with estimatedCgHeight().
inline constexpr double kEnteredCgUncertainty = 0.5 * kMetresPerInch;
/// Where a load or a driver sits, in each direction: an inch. A judgement, common practice, no source. m.
inline constexpr double kSeatUncertainty = kMetresPerInch;

}  // namespace bolthole
