#include "widgets/papers/sheets/setup_facts.h"

#include <QStringList>
#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/car/pass_fields.h"
#include "geometry/compare/comparison.h"
#include "geometry/uncertainty/ic_cloud.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/wall_chart_words.h"
#include "widgets/words/field_words.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/spring_words.h"
#include "widgets/words/starting_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

QString numberText(double value, Quantity quantity, NumberStyle style) {
    return QString::fromStdString(withUnit(fieldText(value, quantity, style), quantity, style.units));
}

QString holeOf(const Bracket& bracket) {
    return bracket.holes.size() < 2 ? QString(kDash) : QString::fromStdString(nameOfHoleInUse(bracket));
}

void addClicks(const QString& name, const std::optional<Damping>& damping, std::vector<SetupFact>& clicks) {
    if (!damping) {
        return;
    }
    const auto add = [&](const QString& words, const OptionalNumber& at) {
        if (at) {
            clicks.push_back({words.arg(name), QString::fromStdString(plainDecimal(*at))});
        }
    };
    add(tr("%1, bump"), damping->bump.at);
    add(tr("%1, rebound"), damping->rebound.at);
}

std::vector<SetupFact> clicksOf(const Car& car) {
    std::vector<SetupFact> clicks;
    addClicks(tr("front shock"), car.launch.front.damping, clicks);
    for (std::size_t item = 0; item < car.springs.size(); ++item) {
        const QString name = springName(car, static_cast<int>(item));
        const bool isPlain = name == QLatin1String("shock");
        addClicks(isPlain ? tr("rear shock") : name, car.springs[item].damping, clicks);
    }
    return clicks;
}

/// As a tape reads it, center to center.
QString rodText(double length, const NumberStyle& style) {
    return style.units == Units::metric
               ? lengthText(length, style.units)
               : QString::fromStdString(
                     withUnit(fieldText(length, Quantity::length, style), Quantity::length, style.units));
}

const Pass* lastWithPressures(const Car& car) {
    const auto last = std::find_if(car.passes.rbegin(), car.passes.rend(),
                                   [](const Pass& pass) { return pass.pressures.count() > 0; });
    return last == car.passes.rend() ? nullptr : &*last;
}

QString pressuresFrom(const Car& car) {
    const bool ofFront = car.wheelRates.front.pressure.has_value();
    const bool ofRear = car.wheelRates.rear.pressure.has_value();
    const bool ofPass = lastWithPressures(car) != nullptr && !(ofFront && ofRear);
    return !ofFront && !ofRear ? (ofPass ? tr("of the last pass that has them") : QString())
           : !ofPass           ? tr("as entered for the launch")
           : ofFront           ? tr("front as entered for the launch, rear of the last pass that has them")
                               : tr("rear as entered for the launch, front of the last pass that has them");
}

std::vector<SetupFact> pressuresOf(const Car& car, Units units) {
    const Pass* last = lastWithPressures(car);
    EnteredCorners now = last == nullptr ? EnteredCorners{} : last->pressures;
    if (const OptionalNumber& front = car.wheelRates.front.pressure) {
        now.leftFront = now.rightFront = *front / fileUnit(Quantity::pressure);
    }
    if (const OptionalNumber& rear = car.wheelRates.rear.pressure) {
        now.leftRear = now.rightRear = *rear / fileUnit(Quantity::pressure);
    }
    std::vector<SetupFact> pressures;
    const auto add = [&](const QString& name, const OptionalNumber& inFile) {
        if (inFile) {
            const double shown = toShown(*inFile, PassUnit::kilopascal, units);
            pressures.push_back({name, QStringLiteral("%1 %2").arg(
                                           QString::fromStdString(plainDecimal(std::round(10 * shown) / 10)),
                                           fromView(markOf(PassUnit::kilopascal, units)))});
        }
    };
    add(tr("left front"), now.leftFront);
    add(tr("right front"), now.rightFront);
    add(tr("left rear"), now.leftRear);
    add(tr("right rear"), now.rightRear);
    return pressures;
}

std::vector<SetupFact> weightsOf(const Car& car, Units units) {
    const auto mass = [&](double value) {
        return QString::fromStdString(
            withUnit(figureText(value, Quantity::mass, units), Quantity::mass, units));
    };
    const CornerWeights& corners = car.cornerWeights;
    return {{tr("left front"), mass(corners.leftFront)},
            {tr("right front"), mass(corners.rightFront)},
            {tr("left rear"), mass(corners.leftRear)},
            {tr("right rear"), mass(corners.rightRear)},
            {car.cornersAre == DriverSeat::aboard ? tr("all, driver aboard") : tr("all, driver out"),
             mass(corners.total())}};
}

std::vector<SetupFact> launchOf(const Car& car, NumberStyle style) {
    std::vector<SetupFact> launch;
    if (car.launch.engine.launchSpeed) {
        launch.push_back(
            {tr("engine at"), numberText(*car.launch.engine.launchSpeed, Quantity::speed, style)});
    }
    return launch;
}

constexpr std::array kFigures{Figure::antiSquat,  Figure::icX,        Figure::icZ,
                              Figure::pinion,     Figure::driveshaft, Figure::pinionToDriveshaft,
                              Figure::frontJoint, Figure::rearJoint};

/// What the ± of the figures at ride is read from.
class PlusMinus {
  public:
    PlusMinus(const Car& car, const Trace& trace, Units units)
        : trace_(trace), units_(units), uncertainty_(computeUncertainty(car)) {
        // An angle without a sign is not even around a value near zero: drawn then, which takes its time.
        if (std::ranges::any_of(kFigures, [this](Figure figure) { return isDrawn(figure); })) {
            cloud_ = drawCloud(car, SamplePlan{});
        }
    }
    [[nodiscard]] QString of(Figure figure) const {
        const bool isFromCloud = isDrawn(figure) && cloud_ && cloud_->drawn > 0;
        return isFromCloud
                   ? drawnUncertaintyWords(*cloud_, figure, units_)
                   : stationUncertaintyWords(uncertainty_, trace_.ride, figure, units_, Fineness::fine);
    }

  private:
    [[nodiscard]] bool isDrawn(Figure figure) const {
        const bool isCenter = figure == Figure::icX || figure == Figure::icZ;
        return !isCenter && std::isfinite(trace_.ride[figure]) && uncertainty_.isNonlinearAtRide(figure);
    }

    const Trace& trace_;
    Units units_;
    TraceUncertainty uncertainty_;
    std::optional<IcCloud> cloud_;
};

std::vector<SetupFact> figuresOf(const Car& car, Units units) {
    const Trace trace = computeTrace(car);
    std::vector<SetupFact> figures;
    if (!trace.assembly.usable()) {
        return {{tr("The links"), tr("can’t be assembled at ride")}};
    }
    const PlusMinus plusMinusOf(car, trace, units);
    for (const Figure figure : kFigures) {
        const double value = trace.ride[figure];
        const Quantity quantity = quantityOf(figure);
        const bool isFar = figure == Figure::icX && std::abs(value) > kFarAway;
        if (std::isnan(value) && figure != Figure::icX) {
            continue;
        }
        const QString number = isFar || std::isnan(value)
                                   ? QString(kInfinity)
                                   : QString::fromStdString(fineFigureText(value, quantity, units));
        const QString plusMinus = isFar ? QString() : plusMinusOf.of(figure);
        const QString unit = unitText(quantity, units);
        const QString shown = plusMinus.isEmpty() ? number : tr("%1  (%2)").arg(number, plusMinus);
        const QString plain =
            plusMinus.startsWith(QChar(0xB1)) ? QStringLiteral("%1 %2").arg(number, plusMinus) : shown;
        figures.push_back(
            {figureWords(figure), quantity == Quantity::angle ? plain + unit : plain + ' ' + unit});
    }
    return figures;
}

QString joined(const std::vector<SetupFact>& facts) {
    QStringList list;
    for (const SetupFact& fact : facts) {
        list << QStringLiteral("%1 %2").arg(fact.name, fact.value);
    }
    return list.join(QStringLiteral("; "));
}

}  // namespace

SetupFacts setupFactsOf(const Car& car, NumberStyle style, bool figures) {
    SetupFacts facts;
    facts.car = QString::fromStdString(car.title).simplified();
    facts.setup = QString::fromStdString(car.stateName).simplified();
    facts.starting = startingHeading(car);
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        const Link& link = car.links[index];
        const bool isRod = link.kind == LinkKind::rod;
        QString name = linkName(car, static_cast<int>(index));
        if (link.side == Side::left || link.side == Side::right) {
            name = tr("%1, %2").arg(name, sideWords(link.side));
        }
        facts.links.push_back({name, holeOf(link.chassis), isRod ? holeOf(link.axle) : QString(kDash),
                               isRod ? rodText(builtLength(link), style) : QString()});
    }
    facts.clicks = clicksOf(car);
    facts.pressures = pressuresOf(car, style.units);
    facts.pressuresFrom = pressuresFrom(car);
    facts.weights = weightsOf(car, style.units);
    facts.launch = launchOf(car, style);
    if (figures) {
        facts.figures = figuresOf(car, style.units);
    }
    return facts;
}

QString setupText(const SetupFacts& facts, QDate date) {
    QStringList lines;
    lines << QStringLiteral("%1%2, %3")
                 .arg(facts.car.isEmpty() ? tr("Car") : facts.car,
                      facts.setup.isEmpty() ? QString() : tr(": %1").arg(facts.setup),
                      date.toString(Qt::ISODate));
    for (const SetupLink& link : facts.links) {
        QStringList parts;
        if (link.chassis != kDash) {
            parts << tr("chassis hole %1").arg(link.chassis);
        }
        if (link.axle != kDash) {
            parts << tr("axle hole %1").arg(link.axle);
        }
        if (!link.length.isEmpty()) {
            parts << tr("%1 center to center").arg(link.length);
        }
        lines << QStringLiteral("%1: %2").arg(
            link.name, parts.isEmpty() ? tr("one hole") : parts.join(QStringLiteral(", ")));
    }
    const auto add = [&lines](const QString& head, const std::vector<SetupFact>& of) {
        if (!of.empty()) {
            lines << QStringLiteral("%1: %2").arg(head, joined(of));
        }
    };
    add(tr("Clicks"), facts.clicks);
    add(tr("Tire pressures"), facts.pressures);
    add(tr("Weights"), facts.weights);
    add(tr("Launch"), facts.launch);
    for (std::size_t at = 0; at < facts.figures.size(); at += 2) {
        const auto first = facts.figures.begin() + static_cast<std::ptrdiff_t>(at);
        const auto end =
            first + static_cast<std::ptrdiff_t>(std::min<std::size_t>(2, facts.figures.size() - at));
        lines << joined({first, end});
    }
    if (!facts.starting.isEmpty()) {
        lines << facts.starting;
    }
    return lines.join('\n') + '\n';
}

}  // namespace bolthole
