#include "widgets/words/sure_reading.h"

#include <cmath>
#include <utility>

#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/units/sure_text.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

constexpr double kSameSpread = 1e-12;  // m: below this, two uncertainties are one

SureFigure figureOf(Figure figure, const char* name) {
    const auto row = static_cast<std::size_t>(figure);
    return {row, figureTable()[row].quantity, tr(name)};
}

QString inUnit(std::string number, Quantity quantity, Units units) {
    return QString::fromStdString(withUnit(std::move(number), quantity, units));
}

bool isDistance(const SureFigure& figure) {
    return figure.row == kInverseDistance;
}

/// What stands after the figure: "± 6", or for the distance of the instant center its two ends, which lie
/// unevenly: "52 to 71 in", "beyond 140 in".
QString spreadText(const SureFigure& figure, double estimate, double uncertainty, Units units,
                   Fineness fineness = Fineness::plain) {
    if (!isDistance(figure)) {
        const std::string text = sureText(uncertainty, figure.quantity, units, fineness);
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

QString valueText(const SureFigure& figure, double estimate, Units units) {
    if (!isDistance(figure)) {
        return inUnit(figureText(estimate, figure.quantity, units), figure.quantity, units);
    }
    return estimate == 0 ? QStringLiteral("∞")
                         : inUnit(figureText(1 / estimate, Quantity::length, units), Quantity::length, units);
}

QString toolWords(const Car& car, const CarInput& input) {
    const Sureness& sure = input.sureness;
    if (!sure.own) {
        const std::string_view name = nameOf(sure.tool);
        return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
    }
    const bool isCalipers =
        isForCalipers(input.id) &&
        std::abs(sure.uncertainty - uncertaintyOf(car, MeasuringTool::calipers)) < kSameSpread;
    return isCalipers ? tr("calipers") : tr("own ±");
}

/// Puts a reading together.
class Reader {
  public:
    Reader(const Car& car, const TraceSpread& spread, const SureFigure& figure, SurePlace place,
           NumberStyle style)
        : car_(car), spread_(spread), figure_(figure), placeName_(placeWords(place)), style_(style) {
        place_ = place == SurePlace::ride ? 0 : place == SurePlace::droop ? 1 : spread.travels.size() - 1;
        row_ = static_cast<Eigen::Index>(place_ * kModelFigures + figure.row);
    }

    [[nodiscard]] SureReading read() const {
        SureReading reading;
        const std::vector<InputShare> ranked = rankInputs(spread_, place_, figure_.row);
        if (ranked.empty()) {
            reading.problem = absence();
            return reading;
        }
        for (const InputShare& each : ranked) {
            reading.rows.push_back(rowOf(each));
        }
        reading.sentence = sentence(ranked[0], reading.rows[0]);
        if (spread_.sensitivity.bending(row_) > kMostBending) {
            reading.note =
                tr("The figure bends too much within these ± for a straight line to be a good "
                   "guide: take the order as it stands, and the shares as rough.");
        }
        return reading;
    }

  private:
    [[nodiscard]] double estimate() const { return spread_.sensitivity.value[row_]; }

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
        for (const std::size_t input : spread_.startsBehindFigure(place_, figure_.row)) {
            starts.push_back(spread_.inputs[input].id);
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

    [[nodiscard]] SureRow rowOf(const InputShare& each) const {
        const CarInput& input = spread_.inputs[each.input];
        const Quantity quantity = quantityOf(input.id.field);
        SureRow row;
        row.id = input.id;
        row.number = capitalized(QString::fromStdString(numberWords(car_, input.id)));
        row.value = datumAxis(input.id.field)
                        ? tr("shared by all points")
                        : inUnit(fieldText(input.value, quantity, style_), quantity, style_.units);
        row.plusMinus =
            input.starting ? noSureWords()
            : input.sureness.uncertainty == 0
                ? tr("exact")
                : QStringLiteral("± ") + halfWidthWords(input.sureness.uncertainty, quantity, style_.units);
        row.tool = input.starting ? tr("not measured") : toolWords(car_, input);
        row.share = each.share;
        row.ifExact = become(each, 0);
        const double calipers = uncertaintyOf(car_, MeasuringTool::calipers);
        if (isForCalipers(input.id) && calipers < input.sureness.uncertainty - kSameSpread) {
            row.withCalipers = become(each, calipers);
        }
        return row;
    }

    [[nodiscard]] QString become(const InputShare& each, double other) const {
        return spreadText(figure_, estimate(),
                          uncertaintyWith(spread_, place_, figure_.row, each.input, other), style_.units,
                          Fineness::fine);
    }

    [[nodiscard]] QString sentence(const InputShare& worst, const SureRow& row) const {
        const double uncertainty = spread_.of(place_, figure_.row);
        const QString between = isDistance(figure_) ? QStringLiteral(", ") : QStringLiteral(" ");
        const QString figure =
            tr("%1 at %2 is %3%4%5.")
                .arg(figure_.name, placeName_, valueText(figure_, estimate(), style_.units), between,
                     spreadText(figure_, estimate(), uncertainty, style_.units));
        const bool isGuess = spread_.inputs[worst.input].sureness.tool == MeasuringTool::estimate &&
                             !spread_.inputs[worst.input].sureness.own;
        const QString advice =
            isGuess ? tr("Measure this again or enter how sure it is, as its ± is a judgement: "
                         "%1. It makes %2 % of that.")
                    : tr("Measure this again: %1. It makes %2 % of that.");
        const QString name = QString::fromStdString(numberWords(car_, row.id));
        return figure + QLatin1Char(' ') + advice.arg(name).arg(std::lround(100 * worst.share));
    }

    const Car& car_;
    const TraceSpread& spread_;
    const SureFigure& figure_;
    QString placeName_;
    NumberStyle style_;
    std::size_t place_ = 0;
    Eigen::Index row_ = 0;
};

}  // namespace

const std::vector<SureFigure>& sureFigures() {
    static const std::vector<SureFigure> figures{
        figureOf(Figure::antiSquat, QT_TRANSLATE_NOOP("SurePage", "Anti-squat")),
        {kInverseDistance, Quantity::length, tr("Instant center's distance")},
        figureOf(Figure::icZ, QT_TRANSLATE_NOOP("SurePage", "Instant center's height")),
        figureOf(Figure::swingArmAngle, QT_TRANSLATE_NOOP("SurePage", "Swing arm's angle")),
        figureOf(Figure::pinion, QT_TRANSLATE_NOOP("SurePage", "Pinion angle")),
        figureOf(Figure::driveshaft, QT_TRANSLATE_NOOP("SurePage", "Driveshaft's angle")),
        figureOf(Figure::frontJoint, QT_TRANSLATE_NOOP("SurePage", "Front joint's angle")),
        figureOf(Figure::rearJoint, QT_TRANSLATE_NOOP("SurePage", "Rear joint's angle")),
        figureOf(Figure::plunge, QT_TRANSLATE_NOOP("SurePage", "Slip-yoke travel"))};
    return figures;
}

QString placeWords(SurePlace place) {
    switch (place) {
        case SurePlace::ride:
            return tr("ride height");
        case SurePlace::bump:
            return tr("full bump");
        case SurePlace::droop:
            break;
    }
    return tr("full droop");
}

SureReading readSure(const Car& car, const TraceSpread& spread, const SureFigure& figure, SurePlace place,
                     NumberStyle style) {
    if (!spread.known) {
        SureReading none;
        none.problem =
            tr("The car can't be computed as it stands, so nothing can be said of how sure it is.");
        return none;
    }
    return Reader(car, spread, figure, place, style).read();
}

QString halfWidthWords(double uncertainty, Quantity quantity, Units units) {
    const std::string text = halfWidthText(uncertainty, quantity, units, Fineness::fine);
    return text.empty() ? QStringLiteral("0") : inUnit(text, quantity, units);
}

QString surenessWords(const Car& car, const FieldId& id, Units units) {
    if (isStarting(car, id) && !surenessOf(car, id).own) {
        return tr("starting number, not measured");
    }
    const Sureness sure = surenessOf(car, id);
    const QString half = halfWidthWords(sure.uncertainty, quantityOf(id.field), units);
    return QStringLiteral("± %1 (%2)").arg(half, toolWords(car, {id, 0, sure}));
}

bool isForCalipers(const FieldId& id) {
    return quantityOf(id.field) == Quantity::length && id.field != Field::cgHeight;
}

}  // namespace bolthole
