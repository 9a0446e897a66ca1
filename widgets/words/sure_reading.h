// What the page "Accuracy" says of one figure: where its spread stems from, and what to measure again.
#pragma once

#include <QString>
#include <vector>

#include "geometry/uncertainty/spread_ranking.h"
#include "geometry/units/text.h"

namespace bolthole {

/// A figure that can be chosen. `row` as in ModelRow; the instant center's distance stands as its 1/distance.
struct SureFigure {
    std::size_t row = 0;
    Quantity quantity = Quantity::percent;
    QString name;
};
/// All that can be chosen, anti-squat first.
[[nodiscard]] const std::vector<SureFigure>& sureFigures();

/// Where in its travel.
enum class SurePlace { ride, bump, droop };
/// "ride height", "full bump", "full droop".
[[nodiscard]] QString placeWords(SurePlace place);

/// One measured number.
struct SureRow {
    FieldId id;
    QString number;        ///< its name
    QString value;         ///< as a tape reads it, with its unit
    QString plusMinus;     ///< "± 0.05 in", "exact"
    QString tool;          ///< "tape", "own ±"
    double share = 0;      ///< of the spread's square, 0 to 1
    QString withCalipers;  ///< what the figure's ± would become; empty where calipers do not apply or help
    QString ifExact;       ///< what it would become if the number were free of error
};

/// Everything about one figure at one place.
struct SureReading {
    QString problem;   ///< why there is nothing; empty: there is
    QString sentence;  ///< the figure, its ±, and what to measure again
    QString note;      ///< where a straight line is no good guide; else empty
    std::vector<SureRow> rows;
};
[[nodiscard]] SureReading readSure(const Car& car, const TraceSpread& spread, const SureFigure& figure,
                                   SurePlace place, NumberStyle style);

/// A number's own ± or its tool's, with unit and tool: "± 0.05 in (tape)".
[[nodiscard]] QString surenessWords(const Car& car, const FieldId& id, Units units);
/// The half-width alone with its unit: "0.05 in"; "0" for what is exact.
[[nodiscard]] QString halfWidthWords(double uncertainty, Quantity quantity, Units units);
/// Whether calipers can take the number: a length.
[[nodiscard]] bool isForCalipers(const FieldId& id);

}  // namespace bolthole
