#include "widgets/words/uncertainty_words.h"

#include <QStringList>
#include <cmath>

#include "geometry/uncertainty/uncertain_inputs.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/scales/center_uncertainty.h"
#include "widgets/scales/distance_scale.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

/// 1/distance known to this share of itself still gives ends that lie about evenly around the distance.
constexpr double kEvenShare = 0.15;

QString interval(double low, double high, Figure figure, Units units) {
    return QString::fromStdString(intervalText(low, high, quantityOf(figure), units));
}

QString wholeLength(double metres, Units units) {
    return QString::number(std::round(metres / shownUnit(Quantity::length, units)), 'f', 0);
}

bool isAtRide(const BenchState& state) {
    return std::abs(state.cursorTravel) < kAtRide;
}

/// What is known of an instant center's place.
struct CenterKnown {
    CenterUncertainty uncertainty{};
    double inverse = 0;
    double height = 0;
    double ofHeight = 0;  // standard uncertainty
    InverseEnds ends{};   // drawn where that is known and first order fails
    bool isEven = true;   // ± says it
    double low = 0;       // ends of the height
    double high = 0;
};

std::optional<CenterKnown> centerKnown(const TraceUncertainty& uncertainty, const Station& station) {
    const std::optional<CenterUncertainty> center = centerUncertaintyAt(uncertainty, station[Figure::travel]);
    const double inverse = inverseDistance(station);
    if (!center || !std::isfinite(inverse)) {
        return std::nullopt;
    }
    CenterKnown known{.uncertainty = *center, .inverse = inverse, .height = station[Figure::icZ]};
    known.ofHeight = center->ofHeight(inverse, station[Figure::swingArmAngle]);
    known.ends = inverseEnds(*center, inverse);
    known.isEven = (known.ends.high - known.ends.low) / 2 < kEvenShare * std::abs(inverse);
    known.low = known.height - kCoverage95 * known.ofHeight;
    known.high = known.height + kCoverage95 * known.ofHeight;
    return known;
}

// The same at the bench's cursor, drawn where first order fails.
std::optional<CenterKnown> cursorCenter(const BenchState& state) {
    std::optional<CenterKnown> known = centerKnown(state.uncertainty, state.cursor);
    if (known && isDrawn(state, Figure::icX)) {
        const Coverage& drawn = state.cloud->figures[kInverseDistance];
        known->ends = {drawn.low, drawn.high};
        known->isEven = false;
    }
    if (known && isDrawn(state, Figure::icZ)) {
        known->low = state.cloud->of(Figure::icZ).low;
        known->high = state.cloud->of(Figure::icZ).high;
        known->isEven = false;
    }
    return known;
}

QString distanceWords(const CenterKnown& known, Units units, Fineness fineness) {
    if (known.ends.throughInfinity()) {
        return known.ends.high > 0 ? tr("%1 to ∞").arg(wholeLength(1.0 / known.ends.high, units))
                                   : QString(QChar(0x221e));
    }
    return known.isEven ? uncertaintyWords(known.uncertainty.ofInverse() / (known.inverse * known.inverse),
                                           Quantity::length, units, fineness)
                        : interval(1.0 / known.ends.high, 1.0 / known.ends.low, Figure::icX, units);
}

// Where the center may be infinitely far its height is anything.
QString heightWords(const CenterKnown& known, Units units, Fineness fineness) {
    if (known.ends.throughInfinity()) {
        return {};
    }
    return known.isEven ? uncertaintyWords(known.ofHeight, Quantity::length, units, fineness)
                        : interval(known.low, known.high, Figure::icZ, units);
}

QString centerWords(const std::optional<CenterKnown>& known, Figure figure, Units units, Fineness fineness) {
    if (!known) {
        return {};
    }
    return figure == Figure::icX ? distanceWords(*known, units, fineness)
                                 : heightWords(*known, units, fineness);
}

bool isCenter(Figure figure) {
    return figure == Figure::icX || figure == Figure::icZ;
}

/// The row of a figure in an uncertainty; the place of the instant center stands there as 1/distance.
std::size_t uncertaintyRow(Figure figure) {
    return isCenter(figure) ? kInverseDistance : static_cast<std::size_t>(figure);
}

}  // namespace

QString uncertaintyWords(double uncertainty, Quantity quantity, Units units, Fineness fineness) {
    return QString::fromStdString(uncertaintyText(uncertainty, quantity, units, fineness));
}

std::vector<FieldId> startsBehind(const TraceUncertainty& uncertainty, Figure figure) {
    std::vector<FieldId> ids;
    if (uncertainty.known) {
        for (const std::size_t place : uncertainty.startsBehindFigure(0, uncertaintyRow(figure))) {
            ids.push_back(uncertainty.inputs[place].id);
        }
    }
    return ids;
}

// A figure at ride stands for it through the travel: the same links and heights make it. One that is exact at
// ride rests on nothing there, and has a neighbor to ask.
bool restsOnStarts(const TraceUncertainty& uncertainty, const Station& station, Figure figure) {
    if (!station.usable || !uncertainty.known || std::isnan(station[figure])) {
        return false;
    }
    const std::size_t row = uncertaintyRow(figure);
    const std::size_t last = uncertainty.travels.size() - 1;
    const bool atRide = std::abs(station[Figure::travel]) < kAtRide;
    return !uncertainty.startsBehindFigure(0, row).empty() ||
           (!atRide && last > 0 && !uncertainty.startsBehindFigure(last, row).empty());
}

bool isDrawn(const BenchState& state, Figure figure) {
    return state.showsUncertainty && state.cloud && state.cloud->drawn > 0 && isAtRide(state) &&
           !state.cloud->holds(figure);
}

QString drawnUncertaintyWords(const IcCloud& cloud, Figure figure, Units units) {
    const Coverage& drawn = cloud.of(figure);
    return interval(drawn.low, drawn.high, figure, units);
}

QString stationUncertaintyWords(const TraceUncertainty& uncertainty, const Station& station, Figure figure,
                                Units units, Fineness fineness) {
    if (!station.usable) {
        return {};
    }
    if (restsOnStarts(uncertainty, station, figure)) {
        return noUncertaintyWords();
    }
    if (isCenter(figure)) {
        return centerWords(centerKnown(uncertainty, station), figure, units, fineness);
    }
    return std::isnan(station[figure])
               ? QString()
               : uncertaintyWords(
                     uncertaintyAt(uncertainty, static_cast<std::size_t>(figure), station[Figure::travel]),
                     quantityOf(figure), units, fineness);
}

QString cursorUncertaintyWords(const BenchState& state, Figure figure) {
    if (!state.showsUncertainty || !state.cursor.usable) {
        return {};
    }
    if (restsOnStarts(state.uncertainty, state.cursor, figure)) {
        return noUncertaintyWords();
    }
    if (isCenter(figure)) {
        return centerWords(cursorCenter(state), figure, state.style.units, Fineness::plain);
    }
    if (isDrawn(state, figure)) {
        const Coverage& drawn = state.cloud->of(figure);
        return interval(drawn.low, drawn.high, figure, state.style.units);
    }
    return stationUncertaintyWords(state.uncertainty, state.cursor, figure, state.style.units);
}

QString centerUncertaintyWords(const BenchState& state) {
    if (state.showsUncertainty && restsOnStarts(state.uncertainty, state.cursor, Figure::icX)) {
        return noUncertaintyWords();
    }
    const std::optional<CenterKnown> known =
        state.showsUncertainty && state.cursor.usable ? cursorCenter(state) : std::nullopt;
    if (!known) {
        return {};
    }
    const QString unit = unitText(Quantity::length, state.style.units);
    if (!known->ends.throughInfinity()) {
        return QStringLiteral("%1 × %2 %3")
            .arg(distanceWords(*known, state.style.units, Fineness::plain),
                 heightWords(*known, state.style.units, Fineness::plain), unit);
    }
    return known->ends.high > 0 ? tr("anywhere from %1 %2 to infinity")
                                      .arg(wholeLength(1.0 / known->ends.high, state.style.units), unit)
                                : tr("anywhere from infinity to behind the axle");
}

QString uncertaintyMeaning(const Car& car, Units units) {
    const auto tool = [&](MeasuringTool which, Quantity quantity) {
        const double uncertainty = uncertaintyOf(car, which);
        const QString half =
            QString::fromStdString(halfWidthText(uncertainty, quantity, units, Fineness::fine));
        const std::string_view name = nameOf(which);
        return QStringLiteral("%1 ± %2%3%4")
            .arg(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())), half,
                 quantity == Quantity::angle ? QString() : QStringLiteral(" "), unitText(quantity, units));
    };
    return tr("±: of 100 cars measured like this one, 95 lie within. It rests on %1, and on what is entered "
              "of single numbers.")
        .arg(QStringList{tool(MeasuringTool::tape, Quantity::length),
                         tool(MeasuringTool::angleFinder, Quantity::angle),
                         tool(MeasuringTool::scales, Quantity::mass)}
                 .join(QStringLiteral(", ")));
}

QString uncertaintyTip(const BenchState& state, Figure figure) {
    if (!state.showsUncertainty || !state.uncertainty.known) {
        return {};
    }
    if (const std::vector<FieldId> starts = startsBehind(state.uncertainty, figure); !starts.empty()) {
        return tr("No ±, as it rests on %1. Nobody knows how far those are off: measure them.")
            .arg(startingWords(state.solvedCar, starts));
    }
    const QString how = isDrawn(state, figure)
                            ? tr("Drawn at random, as a straight line is no good guide here.")
                            : tr("To first order.");
    return uncertaintyMeaning(state.solvedCar, state.style.units) + QLatin1Char(' ') + how;
}

QString cannotTellWords() {
    return tr("can't tell these two apart");
}

}  // namespace bolthole
