#include "widgets/pages/days/pass_measures.h"

#include <cmath>

#include "geometry/passes/air.h"
#include "geometry/units/text.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

std::optional<double> shownOf(const OptionalNumber& inFile, PassUnit unit, Units units) {
    return inFile ? std::optional(toShown(*inFile, unit, units)) : std::nullopt;
}

OptionalNumber meanOf(const OptionalNumber& one, const OptionalNumber& other) {
    return one && other ? std::optional((*one + *other) / 2) : one ? one : other;
}

}  // namespace

QString measureName(PassMeasure measure) {
    switch (measure) {
        case PassMeasure::antiSquat:
            return tr("anti-squat at ride");
        case PassMeasure::icDistance:
            return tr("instant center's distance at ride");
        case PassMeasure::frontRebound:
            return tr("front rebound, clicks");
        case PassMeasure::rearRebound:
            return tr("rear rebound, clicks");
        case PassMeasure::rearPressure:
            return tr("rear tire pressure");
        case PassMeasure::launchRpm:
            return tr("launch rpm");
        case PassMeasure::airTemperature:
            return tr("air temperature");
        case PassMeasure::surfaceTemperature:
            return tr("surface temperature");
        case PassMeasure::densityAltitude:
            break;
    }
    return tr("density altitude");
}

QString measureUnit(PassMeasure measure, Units units) {
    switch (measure) {
        case PassMeasure::antiSquat:
            return QStringLiteral("%");
        case PassMeasure::icDistance:
            return unitText(Quantity::length, units);
        case PassMeasure::rearPressure:
            return passUnitText(PassField::leftRearPressure, units);
        case PassMeasure::launchRpm:
            return passUnitText(PassField::launchRpm, units);
        case PassMeasure::airTemperature:
        case PassMeasure::surfaceTemperature:
            return passUnitText(PassField::airTemperature, units);
        case PassMeasure::densityAltitude:
            return fromView(markOf(PassUnit::metre, units));
        default:
            return {};
    }
}

const Station& MeasureReader::rideOf(const Car& setup) {
    const auto [place, isNew] = rides_.try_emplace(&setup);
    if (isNew) {
        place->second = solveStation(setup, 0);
    }
    return place->second;
}

std::optional<double> MeasureReader::read(const PassBook& book, std::size_t row, PassMeasure measure) {
    const Pass& pass = book.passes()[row];
    const Car* setup = book.setupOf(row);
    const Units units = book.units();
    switch (measure) {
        case PassMeasure::antiSquat:
        case PassMeasure::icDistance: {
            if (setup == nullptr) {
                return std::nullopt;
            }
            const bool isDistance = measure == PassMeasure::icDistance;
            const double value = rideOf(*setup)[isDistance ? Figure::icX : Figure::antiSquat];
            const bool exists = std::isfinite(value) && (!isDistance || value > 0);
            const double unit = units == Units::inch ? kMetresPerInch : kMetresPerMillimetre;
            return exists ? std::optional(isDistance ? value / unit : value) : std::nullopt;
        }
        case PassMeasure::frontRebound:
            return setup == nullptr ? std::nullopt : frontRebound(*setup);
        case PassMeasure::rearRebound:
            return setup == nullptr ? std::nullopt : rearRebound(*setup);
        case PassMeasure::rearPressure:
            return shownOf(meanOf(pass.pressures.leftRear, pass.pressures.rightRear), PassUnit::kilopascal,
                           units);
        case PassMeasure::launchRpm:
            return pass.launchRpm;
        case PassMeasure::airTemperature:
            return shownOf(pass.air.temperature, PassUnit::celsius, units);
        case PassMeasure::surfaceTemperature:
            return shownOf(pass.surface.temperature, PassUnit::celsius, units);
        case PassMeasure::densityAltitude:
            break;
    }
    const Answer<double> altitude = densityAltitude(pass.air);
    return altitude ? std::optional(toShown(*altitude, PassUnit::metre, units)) : std::nullopt;
}

}  // namespace bolthole
