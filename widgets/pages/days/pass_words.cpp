#include "widgets/pages/days/pass_words.h"

#include <QDate>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "geometry/passes/air.h"
#include "geometry/units/text.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr int kTimeDecimals = 3;

bool isTime(PassField field) {
    return ruleOf(field).unit == PassUnit::second;
}

QString rounded(double value, int decimals) {
    const double scale = std::pow(10.0, decimals);
    const QString text = QString::fromStdString(plainDecimal(std::round(value * scale) / scale));
    return text.startsWith(QLatin1Char('-')) ? kMinus + text.mid(1) : text;
}

}  // namespace

QString timeText(double seconds) {
    return QString::number(std::abs(seconds), 'f', kTimeDecimals);
}

QString signedTime(double seconds) {
    const QString text = timeText(seconds);
    return signedText(seconds < 0 ? kMinus + text : text);
}

QString passNumberText(const OptionalNumber& inFile, PassField field, Units units) {
    if (!inFile) {
        return {};
    }
    const PassUnit unit = ruleOf(field).unit;
    const double shown = toShown(*inFile, unit, units);
    if (isTime(field)) {
        return QString::number(shown, 'f', kTimeDecimals);
    }
    return rounded(shown,
                   unit == PassUnit::rpm || (unit == PassUnit::kilopascal && units == Units::metric) ? 0 : 1);
}

QString passUnitText(PassField field, Units units) {
    return fromView(markOf(ruleOf(field).unit, units));
}

QString passNumberWords(const OptionalNumber& inFile, PassField field, Units units) {
    return inFile ? passNumberText(inFile, field, units) + QLatin1Char(' ') + passUnitText(field, units)
                  : QString();
}

QString dayText(const std::string& date) {
    const QString text = QString::fromStdString(date);
    const QDate day = QDate::fromString(text, Qt::ISODate);
    return day.isValid() ? QLocale::c().toString(day, QStringLiteral("MMM d, yyyy")) : text;
}

QString surfaceText(const std::optional<SurfaceKind>& kind, const std::string& name) {
    QStringList parts;
    if (kind) {
        parts << said(nameOf(*kind));
    }
    if (!name.empty()) {
        parts << QString::fromStdString(name);
    }
    return parts.join(QStringLiteral(", "));
}

QString dayHeading(const Pass& pass, Units units) {
    QStringList parts{dayText(pass.date)};
    if (!pass.place.empty()) {
        parts << QString::fromStdString(pass.place);
    }
    const QString surface = surfaceText(pass.surface.kind, pass.surface.name);
    const QString ground = passNumberWords(pass.surface.temperature, PassField::surfaceTemperature, units);
    if (!surface.isEmpty() || !ground.isEmpty()) {
        parts << (surface.isEmpty() ? tr("surface %1").arg(ground)
                                    : (surface + QLatin1Char(' ') + ground).trimmed());
    }
    QStringList air;
    for (const PassField field : {PassField::airTemperature, PassField::airPressure, PassField::humidity}) {
        air << passNumberWords(numberOf(pass, field), field, units);
    }
    air.removeAll(QString());
    if (!air.isEmpty()) {
        parts << tr("air %1").arg(air.join(QStringLiteral(", ")));
    }
    if (const Answer<double> altitude = densityAltitude(pass.air)) {
        const double shown = toShown(*altitude, PassUnit::metre, units);
        parts << tr("density altitude %1 %2")
                     .arg(rounded(std::round(shown / 10) * 10, 0), fromView(markOf(PassUnit::metre, units)));
    }
    return parts.join(QStringLiteral("  ·  "));
}

QString seenWords(Seen seen) {
    return seen == Seen::spunAtHit ? tr("spun at the hit") : QString::fromStdString(nameOf(seen));
}

QString seenText(const Pass& pass) {
    QStringList parts;
    for (std::size_t at = 0; at < kSeenCount; ++at) {
        if (pass.seen[at]) {
            parts << seenWords(static_cast<Seen>(at));
        }
    }
    return parts.join(QStringLiteral(", "));
}

QString axlePressures(const OptionalNumber& left, const OptionalNumber& right, Units units) {
    QString one = passNumberText(left, PassField::leftRearPressure, units);
    const QString other = passNumberText(right, PassField::leftRearPressure, units);
    if (one == other || other.isEmpty()) {
        return one;
    }
    return (one.isEmpty() ? QString(kDash) : one) + QStringLiteral(" / ") + other;
}

OptionalNumber frontRebound(const Car& car) {
    return car.launch.front.damping ? car.launch.front.damping->rebound.at : std::nullopt;
}

OptionalNumber rearRebound(const Car& car) {
    for (const SuspensionPart& part : car.springs) {
        if (part.damping && part.damping->rebound.at) {
            return part.damping->rebound.at;
        }
    }
    return std::nullopt;
}

QString clicksText(const Car& setup) {
    const OptionalNumber front = frontRebound(setup);
    const OptionalNumber rear = rearRebound(setup);
    const auto text = [](const OptionalNumber& clicks) {
        return clicks ? rounded(*clicks, 1) : QString(kDash);
    };
    return front || rear ? text(front) + QStringLiteral(" / ") + text(rear) : QString();
}

QString labelOf(PassField field) {
    return capitalized(said(ruleOf(field).words));
}

QString howToMeasure(PassField field) {
    switch (field) {
        case PassField::surfaceTemperature:
            return tr(
                "In the rear tires' tracks a few car lengths from the line, with a probe or an infrared "
                "thermometer, in the minute before the pass.");
        case PassField::airTemperature:
            return tr("In the shade, a thermometer at chest height that has hung there for some minutes.");
        case PassField::airPressure:
            return tr(
                "What a barometer shows at the place itself, not the weather report's, which is reduced to "
                "the sea.");
        case PassField::humidity:
            return tr("Relative, in the shade, read with the temperature.");
        case PassField::leftFrontPressure:
        case PassField::rightFrontPressure:
        case PassField::leftRearPressure:
        case PassField::rightRearPressure:
            return tr(
                "Over the surroundings, with the same gauge each time, and always cold or always hot: in the "
                "lanes, just before the pass.");
        case PassField::launchRpm:
            return tr(
                "What the engine turned when the car was let go: the limiter's setting or a recorder's, not "
                "a glance at the dial.");
        case PassField::sixtyFoot:
            return tr("As the clock has it, from leaving the start beam to 60 ft.");
        case PassField::threeThirty:
            return tr("As the clock has it, at 330 ft.");
        case PassField::eighth:
            return tr("As the clock has it, at the eighth mile.");
        case PassField::eighthSpeed:
            return tr("The trap's speed at the eighth mile.");
        case PassField::quarter:
            return tr("As the clock has it, at the quarter mile.");
        default:
            return tr("The trap's speed at the quarter mile.");
    }
}

}  // namespace bolthole
