// What the travel curves show: one card a quantity, and how a trace becomes points of a curve.
#pragma once

#include <vector>

#include "geometry/kinematics/trace.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "widgets/curves/chart_data.h"

namespace bolthole {

/// One curve of a card. Where a card has two, each is named; the second is drawn dash-dotted.
struct CurveLine {
    Figure figure = Figure::travel;
    QString name;               ///< for screen readers: "pinion to driveshaft"
    QStringList keyNames = {};  ///< in the card, the longest that fits; empty on a card of one curve
};

/// How values lie along a card's axis.
enum class CurveScale {
    plain,            ///< the figure itself, SI
    inverseDistance,  ///< 1/distance, 1/m; see distance_scale.h
    throughInfinity   ///< the figure itself; it goes to infinity where the instant center does
};

/// What one card of the travel curves shows, on screen and on paper.
struct CurveCardSpec {
    QStringList titles;  ///< the longest that fits is shown
    Quantity quantity = Quantity::length;
    CurveScale scale = CurveScale::plain;
    double minimumSpan = 0;  ///< of the axis, in its own unit: a flat curve is not blown up to noise
    double least = -std::numeric_limits<double>::infinity();  ///< ends of what the axis may show
    double most = std::numeric_limits<double>::infinity();
    bool neverBelowLeast = false;     ///< values below `least` cannot occur; the axis does not go there
    std::optional<double> reference;  ///< a value worth a line: 0, 100 %, infinity
    QString axisWords;                ///< how the axis is spaced, where that is not plain
    QString about;                    ///< how the card is to be read, in its tool tip
    QString absent;                   ///< said in the card when no row has a figure
    std::vector<CurveLine> lines;
};

/// The five cards, from left to right.
[[nodiscard]] const std::vector<CurveCardSpec>& curveCardSpecs();

/// The card as a chart has it, without any curve: titles, unit, scale, reference.
[[nodiscard]] ChartCard emptyCard(const CurveCardSpec& spec, Units units);

/// Where a station lies on a card's axis, in the axis's unit (SI, or 1/m); NaN: nowhere.
[[nodiscard]] double axisValue(const Station& station, Figure figure, CurveScale scale);

/// Overwrites `points` with the curve through a trace, droop first; its storage is used again. The line is
/// broken where the links do not reach. A `throughInfinity` line follows its asymptote between the two rows
/// where the instant center passes infinity (its tangent and 1/distance are smooth there) and is broken at
/// the pole; an `inverseDistance` line is broken where the instant center passes over the contact patch.
///
/// With an `uncertainty` that is known each point has the ends of its figure: value -+ kCoverage95 times the
/// standard uncertainty. On an `inverseDistance` axis that is the uncertainty of 1/distance; a
/// `throughInfinity` figure can be anything where the instant center may be infinitely far.
void curvePoints(const Trace& trace, Figure figure, CurveScale scale, const TraceUncertainty* uncertainty,
                 std::vector<ChartPoint>& points);

/// Extent over all lines of a card, within the ends the axis may show. For a line through infinity, only rows
/// whose instant center is within 5 m count, unless there are none.
[[nodiscard]] Extent curveExtent(const Trace& trace, const CurveCardSpec& spec);

}  // namespace bolthole
