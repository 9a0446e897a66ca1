#include "widgets/words/figure_words.h"

#include <QCoreApplication>
#include <array>
#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "geometry/units/uncertainty_text.h"
#include "geometry/weights/entered_figures.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

const char* wordsOf(Figure figure) {
    switch (figure) {
        case Figure::antiSquat:
            return QT_TRANSLATE_NOOP("FigureWords", "Anti-squat");
        case Figure::icX:
            return QT_TRANSLATE_NOOP("FigureWords", "Instant center, ahead");
        case Figure::icZ:
            return QT_TRANSLATE_NOOP("FigureWords", "Instant center, above ground");
        case Figure::swingArmAngle:
            return QT_TRANSLATE_NOOP("FigureWords", "Swing arm angle");
        case Figure::axleX:
            return QT_TRANSLATE_NOOP("FigureWords", "Axle fore-aft shift");
        case Figure::pinion:
            return QT_TRANSLATE_NOOP("FigureWords", "Pinion angle");
        case Figure::driveshaft:
            return QT_TRANSLATE_NOOP("FigureWords", "Driveshaft angle");
        case Figure::pinionToDriveshaft:
            return QT_TRANSLATE_NOOP("FigureWords", "Pinion to driveshaft");
        case Figure::frontJoint:
            return QT_TRANSLATE_NOOP("FigureWords", "Front joint angle");
        case Figure::rearJoint:
            return QT_TRANSLATE_NOOP("FigureWords", "Rear joint angle");
        case Figure::plunge:
            return QT_TRANSLATE_NOOP("FigureWords", "Slip-yoke travel, + out");
        case Figure::ground:
            return QT_TRANSLATE_NOOP("FigureWords", "Ground angle");
        default:
            return "";
    }
}

}  // namespace

QString figureWords(Figure figure) {
    return QCoreApplication::translate("FigureWords", wordsOf(figure));
}

QString figureWords(Figure figure, Units units) {
    return QStringLiteral("%1, %2").arg(figureWords(figure), unitText(quantityOf(figure), units));
}

Quantity quantityOf(Figure figure) {
    return figureTable()[static_cast<std::size_t>(figure)].quantity;
}

QString cgHeightWords(const Car& car, NumberStyle style) {
    const auto words = [](const char* text) { return QCoreApplication::translate("FigureWords", text); };
    const CarBalance balance = balanceOf(car);
    const QString height = QString::fromStdString(
        withUnit(fieldText(balance.height, Quantity::length, style), Quantity::length, style.units));
    const bool isStart =
        balance.from.source == CgHeightSource::entered && isStarting(car, {.field = Field::cgHeight});
    QString text = words(isStart ? "%1, a starting number" : "%1, as entered").arg(height);
    const QString uncertainty = QString::fromStdString(
        halfWidthText(balance.from.uncertainty.value_or(0), Quantity::length, style.units, Fineness::fine));
    if (!uncertainty.isEmpty() && !isStart) {
        constexpr std::array kSources{QT_TRANSLATE_NOOP("FigureWords", "%1 ± %2, as entered"),
                                      QT_TRANSLATE_NOOP("FigureWords", "%1 ± %2, by the lift method"),
                                      QT_TRANSLATE_NOOP("FigureWords", "%1 ± %2, an estimate")};
        text = words(kSources[static_cast<std::size_t>(balance.from.source)]).arg(height, uncertainty);
    }
    const bool loaded = balance.total != car.cornerWeights.total();
    return loaded ? words("%1, with what is aboard now").arg(text) : text;
}

QString tapeLengthText(double length, NumberStyle style) {
    if (!std::isfinite(length)) {
        return QString(kDash);
    }
    if (style.units == Units::metric || style.inches == InchStyle::decimal) {
        return fromView(fineFigureText(length, Quantity::length, style.units));
    }
    // The field's fraction: rounded to a coarser step here, one link would have two lengths.
    return fromView(fieldText(length, Quantity::length, style)).remove(QStringLiteral("\u2248 "));
}

}  // namespace bolthole
