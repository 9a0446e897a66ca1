#include "widgets/words/accuracy_reading.h"

#include <cmath>
#include <utility>

#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

constexpr double kSameUncertainty = 1e-12;  // m: below this, two uncertainties are one

AccuracyFigure figureOf(Figure figure, const char* name) {
    const auto row = static_cast<std::size_t>(figure);
    return {row, figureTable()[row].quantity, tr(name)};
}

QString inUnit(std::string number, Quantity quantity, Units units) {
    return QString::fromStdString(withUnit(std::move(number), quantity, units));
}

bool isDistance(const AccuracyFigure& figure) {
    return figure.row == kInverseDistance;
}

/// What stands after the figure: "± 6", or for the distance of the instant center its two ends, which lie
/// unevenly: "52 to 71 in", "beyond 140 in".
QString figureUncertaintyText(const AccuracyFigure& figure, double estimate, double uncertainty, Units units,
                              Fineness fineness = Fineness::plain) {
    if (!isDistance(figure)) {
        const std::string text = uncertaintyText(uncertainty, figure.quantity, units, fineness);
        return text.empty() ? QStringLiteral("± 0") : QString::fromStdString(text);
    }
    const double half = kCoverage95 * uncertainty;
    const double most = estimate + half;
    const double least = estimate - half;
    if (most > 0 && least < 0) {
        const auto end = [&](double inverse) {
            return inUnit(figureText(1 / inverse, Quantity::length, units), Quantity::length, units);
        };
        return estimate >= 0 ? tr("anywhere beyond %1").arg(end(most))
                             : tr("anywhere behind %1").arg(end(least));
    }
    return inUnit(intervalText(1 / most, 1 / least, Quantity::length, units), Quantity::length, units);
}

QString valueText(const AccuracyFigure& figure, double estimate, Units units) {
    if (!isDistance(figure)) {
        return inUnit(figureText(estimate, figure.quantity, units), figure.quantity, units);
    }
    return estimate == 0 ? QStringLiteral("∞")
                         : inUnit(figureText(1 / estimate, Quantity::length, units), Quantity::length, units);
}

QString toolWords(const Car& car, const CarInput& input) {
    const NumberUncertainty& known = input.numberUncertainty;
    if (originOf(car, input.id) == Origin::workedOut) {
        return tr("worked out");
    }
    if (!known.own) {
        return said(nameOf(known.tool));
    }
    const bool isCalipers =
        isForCalipers(input.id) &&
        std::abs(known.uncertainty - uncertaintyOf(car, MeasuringTool::calipers)) < kSameUncertainty;
    return isCalipers ? tr("calipers") : tr("own ±");
}

/// Puts a reading together.
class Reader {
  public:
    Reader(const Car& car, const TraceUncertainty& uncertainty, const AccuracyFigure& figure,
           AccuracyPosition place, NumberStyle style)
        : car_(car),
          uncertainty_(uncertainty),
          figure_(figure),
          placeName_(positionWords(place)),
          style_(style) {
        place_ = place == AccuracyPosition::ride    ? 0
                 : place == AccuracyPosition::droop ? 1
                                                    : uncertainty.travels.size() - 1;
        row_ = static_cast<Eigen::Index>(place_ * kModelFigures + figure.row);
    }

    [[nodiscard]] AccuracyReading read() const {
        AccuracyReading reading;
        const std::vector<InputShare> ranked = rankInputs(uncertainty_, place_, figure_.row);
        if (ranked.empty()) {
            reading.problem = absence();
            return reading;
        }
        for (const InputShare& each : ranked) {
            reading.rows.push_back(rowOf(each));
        }
        reading.sentence = sentence(ranked[0], reading.rows[0]);
        if (uncertainty_.sensitivity.nonlinearity(row_) > kMostNonlinearity) {
            reading.note =
                tr("The figure bends too much within these ± for a straight line to be a good "
                   "guide: take the order as it stands, and the shares as rough.");
        }
        return reading;
    }

  private:
    [[nodiscard]] double estimate() const { return uncertainty_.sensitivity.value[row_]; }

    [[nodiscard]] QString absence() const {
        if (!car_.driveline && figure_.row >= static_cast<std::size_t>(Figure::driveshaft) &&
            !isDistance(figure_)) {
            return tr("%1 needs a driveline, and none is entered.").arg(figure_.name);
        }
        if (std::isnan(estimate())) {
            return tr("%1 does not exist at %2: the links do not reach it, or what it needs is not entered.")
                .arg(figure_.name, placeName_);
        }
        std::vector<FieldId> starts;
        for (const std::size_t input : uncertainty_.startsBehindFigure(place_, figure_.row)) {
            starts.push_back(uncertainty_.inputs[input].id);
        }
        if (!starts.empty()) {
            return tr("%1 at %2 is %3, without ±: it rests on %4. Nobody measured those, so nobody knows how "
                      "far it is off. Measure them first.")
                .arg(figure_.name, placeName_, valueText(figure_, estimate(), style_.units),
                     startingWords(car_, starts));
        }
        return tr("%1 at %2 is %3, and nothing that was measured moves it.")
            .arg(figure_.name, placeName_, valueText(figure_, estimate(), style_.units));
    }

    [[nodiscard]] AccuracyRow rowOf(const InputShare& each) const {
        const CarInput& input = uncertainty_.inputs[each.input];
        const Quantity quantity = quantityOf(input.id.field);
        AccuracyRow row;
        row.id = input.id;
        row.number = capitalized(QString::fromStdString(numberWords(car_, input.id)));
        row.value = datumAxis(input.id.field)
                        ? tr("shared by all points")
                        : inUnit(fieldText(input.value, quantity, style_), quantity, style_.units);
        row.plusMinus = input.starting ? noUncertaintyWords()
                        : input.numberUncertainty.uncertainty == 0
                            ? tr("exact")
                            : QStringLiteral("± ") +
                                  halfWidthWords(input.numberUncertainty.uncertainty, quantity, style_.units);
        row.tool = input.starting ? tr("not measured") : toolWords(car_, input);
        row.share = each.share;
        row.ifExact = become(each, 0);
        const double calipers = uncertaintyOf(car_, MeasuringTool::calipers);
        if (isForCalipers(input.id) && calipers < input.numberUncertainty.uncertainty - kSameUncertainty) {
            row.withCalipers = become(each, calipers);
        }
        return row;
    }

    [[nodiscard]] QString become(const InputShare& each, double other) const {
        return figureUncertaintyText(figure_, estimate(),
                                     uncertaintyWith(uncertainty_, place_, figure_.row, each.input, other),
                                     style_.units, Fineness::fine);
    }

    [[nodiscard]] QString sentence(const InputShare& worst, const AccuracyRow& row) const {
        const double uncertainty = uncertainty_.of(place_, figure_.row);
        const QString between = isDistance(figure_) ? QStringLiteral(", ") : QStringLiteral(" ");
        const QString figure =
            tr("%1 at %2 is %3%4%5.")
                .arg(figure_.name, placeName_, valueText(figure_, estimate(), style_.units), between,
                     figureUncertaintyText(figure_, estimate(), uncertainty, style_.units));
        const bool isGuess =
            uncertainty_.inputs[worst.input].numberUncertainty.tool == MeasuringTool::estimate &&
            !uncertainty_.inputs[worst.input].numberUncertainty.own;
        const bool isWorkedOut = originOf(car_, row.id) == Origin::workedOut;  // never measured yet
        const QString advice =
            isWorkedOut ? tr("Measure this, it was worked out: %1. It makes %2 % of that.")
            : isGuess   ? tr("Measure this again or enter how sure it is, as its ± is a judgement: "
                               "%1. It makes %2 % of that.")
                        : tr("Measure this again: %1. It makes %2 % of that.");
        const QString name = QString::fromStdString(numberWords(car_, row.id));
        return figure + QLatin1Char(' ') + advice.arg(name).arg(std::lround(100 * worst.share));
    }

    const Car& car_;
    const TraceUncertainty& uncertainty_;
    const AccuracyFigure& figure_;
    QString placeName_;
    NumberStyle style_;
    std::size_t place_ = 0;
    Eigen::Index row_ = 0;
};

}  // namespace

const std::vector<AccuracyFigure>& accuracyFigures() {
    static const std::vector<AccuracyFigure> figures{
        figureOf(Figure::antiSquat, QT_TRANSLATE_NOOP("AccuracyPage", "Anti-squat")),
        {kInverseDistance, Quantity::length, tr("Instant center's distance")},
        figureOf(Figure::icZ, QT_TRANSLATE_NOOP("AccuracyPage", "Instant center's height")),
        figureOf(Figure::swingArmAngle, QT_TRANSLATE_NOOP("AccuracyPage", "Swing arm's angle")),
        figureOf(Figure::pinion, QT_TRANSLATE_NOOP("AccuracyPage", "Pinion angle")),
        figureOf(Figure::driveshaft, QT_TRANSLATE_NOOP("AccuracyPage", "Driveshaft's angle")),
        figureOf(Figure::frontJoint, QT_TRANSLATE_NOOP("AccuracyPage", "Front joint's angle")),
        figureOf(Figure::rearJoint, QT_TRANSLATE_NOOP("AccuracyPage", "Rear joint's angle")),
        figureOf(Figure::plunge, QT_TRANSLATE_NOOP("AccuracyPage", "Slip-yoke travel"))};
    return figures;
}

QString positionWords(AccuracyPosition place) {
    switch (place) {
        case AccuracyPosition::ride:
            return tr("ride height");
        case AccuracyPosition::bump:
            return tr("full bump");
        case AccuracyPosition::droop:
            break;
    }
    return tr("full droop");
}

AccuracyReading readAccuracy(const Car& car, const TraceUncertainty& uncertainty,
                             const AccuracyFigure& figure, AccuracyPosition place, NumberStyle style) {
    if (!uncertainty.known) {
        AccuracyReading none;
        none.problem =
            tr("The car can't be computed as it stands, so nothing can be said of how sure it is.");
        return none;
    }
    return Reader(car, uncertainty, figure, place, style).read();
}

QString halfWidthWords(double uncertainty, Quantity quantity, Units units) {
    const std::string text = halfWidthText(uncertainty, quantity, units, Fineness::fine);
    return text.empty() ? QStringLiteral("0") : inUnit(text, quantity, units);
}

QString numberUncertaintyWords(const Car& car, const FieldId& id, Units units) {
    if (isStarting(car, id) && !uncertaintyOf(car, id).own) {
        return tr("starting number, not measured");
    }
    const NumberUncertainty known = uncertaintyOf(car, id);
    const QString half = halfWidthWords(known.uncertainty, quantityOf(id.field), units);
    return QStringLiteral("± %1 (%2)").arg(half, toolWords(car, {id, 0, known}));
}

bool isForCalipers(const FieldId& id) {
    return quantityOf(id.field) == Quantity::length && id.field != Field::cgHeight;
}

}  // namespace bolthole
