// What the page "Accuracy" says of one figure: where its uncertainty stems from, and what to measure again.
#pragma once

#include <QString>
#include <vector>

#include "geometry/uncertainty/uncertainty_ranking.h"
#include "geometry/units/text.h"

namespace bolthole {

/// A figure that can be chosen. `row` as in ModelRow; the instant center's distance stands as its 1/distance.
struct AccuracyFigure {
    std::size_t row = 0;
    Quantity quantity = Quantity::percent;
    QString name;
};
/// All that can be chosen, anti-squat first.
[[nodiscard]] const std::vector<AccuracyFigure>& accuracyFigures();

/// Where in its travel.
enum class AccuracyPosition { ride, bump, droop };
/// "ride height", "full bump", "full droop".
[[nodiscard]] QString positionWords(AccuracyPosition place);

/// One measured number.
struct AccuracyRow {
    FieldId id;
    QString number;        ///< its name
    QString value;         ///< as a tape reads it, with its unit
    QString plusMinus;     ///< "± 0.05 in", "exact"
    QString tool;          ///< "tape", "own ±"
    double share = 0;      ///< of the uncertainty's square, 0 to 1
    QString withCalipers;  ///< what the figure's ± would become; empty where calipers do not apply or help
    QString ifExact;       ///< what it would become if the number were free of error
};

/// Everything about one figure at one place.
struct AccuracyReading {
    QString problem;   ///< why there is nothing; empty: there is
    QString sentence;  ///< the figure, its ±, and what to measure again
    QString note;      ///< where a straight line is no good guide; else empty
    std::vector<AccuracyRow> rows;
};
[[nodiscard]] AccuracyReading readAccuracy(const Car& car, const TraceUncertainty& uncertainty,
                                           const AccuracyFigure& figure, AccuracyPosition place,
                                           NumberStyle style);

/// A number's own ± or its tool's, with unit and tool: "± 0.05 in (tape)".
[[nodiscard]] QString numberUncertaintyWords(const Car& car, const FieldId& id, Units units);
/// The half-width alone with its unit: "0.05 in"; "0" for what is exact.
[[nodiscard]] QString halfWidthWords(double uncertainty, Quantity quantity, Units units);
/// Whether calipers can take the number: a length.
[[nodiscard]] bool isForCalipers(const FieldId& id);

}  // namespace bolthole
