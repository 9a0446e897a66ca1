#include "widgets/words/trial_words.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

constexpr std::size_t kReasonsSaid = 2;
constexpr double kFewMinutes = 20;  // up to there an estimate is no number to the minute anyway

QString timeText(double seconds, int decimals = 2) {
    return QString::number(seconds, 'f', decimals);
}
QString signedTime(double seconds) {
    const QString size = timeText(std::abs(seconds), 3);
    const bool isNothing = signedText(size) == size;
    return isNothing ? size : (seconds < 0 ? QString(kMinus) : QStringLiteral("+")) + size;
}
QString loadText(double force, Units units) {
    return fromView(withUnit(figureText(force, Quantity::force, units), Quantity::force, units));
}
// A size with its ±, without the sign: "180 ± 40 lbf".
QString loadWithUncertainty(double force, const std::optional<double>& uncertainty, Units units) {
    const QString plusMinus = uncertaintyWords(uncertainty.value_or(0), Quantity::force, units);
    const QString number = fromView(figureText(force, Quantity::force, units));
    return number + (plusMinus.isEmpty() ? QString() : u' ' + plusMinus) + u' ' +
           unitText(Quantity::force, units);
}
// What stands after ±, s: never shown as nothing.
QString timeUncertainty(double uncertainty) {
    return timeText(std::max(std::ceil(kCoverage95 * uncertainty * 1000) / 1000, 0.001), 3);
}

// So far apart that a range says more than a ±, and not both the same in print.
bool needsRange(const TrialFigure& figure) {
    const double change = *figure.change;
    const double low = figure.low.value_or(change);
    const double high = figure.high.value_or(change);
    return isLopsided(change, low, high) && std::max(change - low, high - change) > 0.001;
}

// Where some of the draws show none and a ± would say that all of them show some.
bool reachesNone(const TrialFigure& figure) {
    const double nearest =
        *figure.change < 0 ? -figure.high.value_or(*figure.change) : figure.low.value_or(*figure.change);
    return nearest <= 0 && std::abs(*figure.change) > kCoverage95 * figure.uncertainty.value_or(0);
}

QString clickWords(double clicks) {
    const int count = static_cast<int>(std::lround(std::abs(clicks)));
    return count == 1 ? tr("one click") : count == 2 ? tr("two clicks") : tr("%n clicks", count);
}

QString shockName(const FieldId& id, const Car& car) {
    switch (id.field) {
        case Field::frontBumpClick:
            return tr("front bump");
        case Field::frontReboundClick:
            return tr("front rebound");
        case Field::bumpClick:
            return tr("%1 bump").arg(QString::fromStdString(springWords(car, id.item)));
        default:
            return tr("%1 rebound").arg(QString::fromStdString(springWords(car, id.item)));
    }
}

// A number of a change as a person sets it.
QString setting(const FieldId& id, double value, Units units) {
    const Quantity quantity = quantityOf(id.field);
    return fromView(withUnit(figureText(value, quantity, units), quantity, units));
}

QString lengthSetting(double value, Units units) {
    return lengthText(value, units);
}

QString reasonWords(const ReasonPart& part, Units units) {
    using Kind = ReasonPart::Kind;
    const double by = part.before && part.after ? *part.after - *part.before : 0;
    const auto moved = [&](const QString& later, const QString& earlier) {
        return (by > 0 ? later : earlier).arg(timeText(std::abs(by)));
    };
    switch (part.kind) {
        case Kind::noseStops:
            return !part.after    ? tr("the nose no longer tops out")
                   : !part.before ? tr("the nose tops out, at %1 s").arg(timeText(*part.after))
                                  : moved(tr("the nose stops %1 s later"), tr("the nose stops %1 s sooner"));
        case Kind::frontTiresUp:
            return !part.after    ? tr("the front tires stay down")
                   : !part.before ? tr("the front tires leave the ground, at %1 s").arg(timeText(*part.after))
                                  : moved(tr("the front tires leave the ground %1 s later"),
                                          tr("the front tires leave the ground %1 s sooner"));
        case Kind::leastRearLoad:
            return (by > 0 ? tr("the rear tires keep %1 more") : tr("the rear tires keep %1 less"))
                .arg(loadText(std::abs(by), units));
        case Kind::hitLoad:
            return (by > 0 ? tr("the hit plants the rear tires with %1 more")
                           : tr("the hit plants the rear tires with %1 less"))
                .arg(loadText(std::abs(by), units));
        case Kind::spinning:
            return moved(tr("the tires spin %1 s longer"), tr("the tires spin %1 s less"));
    }
    return {};
}

const SetNumber* numberOf(const PaddockChange& change) {
    return change.edit.as<SetNumber>();
}

}  // namespace

QString trialTitle(const PaddockChange& change, const Car& car, Units units) {
    const SetNumber* set = numberOf(change);
    if (set == nullptr || !change.from) {
        return QString::fromStdString(change.words);
    }
    const QString from = setting(set->id, *change.from, units);
    const QString to = setting(set->id, set->value, units);
    switch (change.kind) {
        case ChangeKind::click:
            return capitalized(
                (change.isFirmer ? tr("%1 %2 firmer, %3 → %4") : tr("%1 %2 softer, %3 → %4"))
                    .arg(shockName(set->id, car), clickWords(set->value - *change.from), from, to));
        case ChangeKind::launchSpeed:
            return tr("Launch at %1, before %2").arg(to, from);
        case ChangeKind::frontDroop:
            return tr("Limit the front's droop to %1, before %2")
                .arg(lengthSetting(set->value, units), lengthSetting(*change.from, units));
        case ChangeKind::pressure:
            return (set->id.field == Field::rearPressure ? tr("Rear tires at %1, before %2")
                                                         : tr("Front tires at %1, before %2"))
                .arg(to, from);
        case ChangeKind::ballast: {
            const double by = set->value - *change.from;
            return (by > 0 ? tr("Move %1 %2 forward") : tr("Move %1 %2 back"))
                .arg(QString::fromStdString(ballastWords(car, set->id.item)),
                     lengthSetting(std::abs(by), units));
        }
        case ChangeKind::level:
            return tr("%1: %2 full, before %3")
                .arg(capitalized(QString::fromStdString(ballastWords(car, set->id.item))), to, from);
        case ChangeKind::holes:
            break;
    }
    return QString::fromStdString(change.words);
}

QString trialName(const PaddockChange& change, const Car& car, Units units) {
    const SetNumber* set = numberOf(change);
    if (set != nullptr && change.from && change.kind == ChangeKind::click) {
        return capitalized(tr("%1 %2 → %3")
                               .arg(shockName(set->id, car), setting(set->id, *change.from, units),
                                    setting(set->id, set->value, units)));
    }
    const QString title = trialTitle(change, car, units);
    return change.kind == ChangeKind::holes ? title : title.section(QStringLiteral(", "), 0, 0);
}

QString trialWhy(const LaunchTrial& trial, Units units) {
    QStringList said;
    for (const ReasonPart& part : trial.reasons) {
        if (said.size() < static_cast<qsizetype>(kReasonsSaid)) {
            said << reasonWords(part, units);
        }
    }
    const QString why = said.isEmpty() ? tr("Nothing in the two launches stands out.")
                                       : capitalized(said.join(tr(", and "))) + u'.';
    return trial.change.kind == ChangeKind::pressure
               ? why + u' ' + tr("Only the tires' rate is computed, not what pressure does to grip.")
               : why;
}

QString trialChange(const LaunchTrial& trial) {
    const std::optional<double>& change = trial.sixtyFootChange.change;
    return change ? signedTime(*change) : QString(kDash);
}

QString trialGain(const LaunchTrial& trial) {
    if (!trial.sixtyFootChange.change) {
        return QString(kDash);
    }
    const TrialFigure& gain = trial.sixtyFootChange;
    if (!gain.uncertainty) {
        return signedTime(*gain.change);
    }
    if (needsRange(gain) || reachesNone(gain)) {
        return tr("%1, from %2 to %3")
            .arg(signedTime(*gain.change), signedTime(*gain.low), signedTime(*gain.high));
    }
    return signedTime(*gain.change) + QStringLiteral(" ± ") + timeUncertainty(*gain.uncertainty);
}

QString trialExpected(const LaunchTrial& trial, Units units) {
    if (!trial.sixtyFootChange.change) {
        return tr("It does not get to 60 ft.");
    }
    QString words = tr("Expect 60 ft %1 s").arg(trialGain(trial));
    if (const std::optional<double>& load = trial.leastRearLoad.change) {
        const QString size = loadWithUncertainty(std::abs(*load), trial.leastRearLoad.uncertainty, units);
        words += (*load < 0 ? tr("; at the least %1 less on the rear tires")
                            : tr("; at the least %1 more on the rear tires"))
                     .arg(size);
    }
    return words + u'.';
}

QString trialChance(const LaunchTrial& trial) {
    return tr("helps in %1 of 100").arg(std::lround(100 * trial.chance));
}

QString trialEffort(const PaddockChange& change) {
    const QString bolts = change.bolts == 0   ? tr("no bolts")
                          : change.bolts == 1 ? tr("1 bolt")
                                              : tr("%n bolts", change.bolts);
    const double minutes = change.minutes < kFewMinutes ? change.minutes : std::round(change.minutes / 5) * 5;
    return minutes == 1 ? tr("%1, about a minute").arg(bolts)
                        : tr("%1, about %n minutes", static_cast<int>(std::lround(minutes))).arg(bolts);
}

QString trialProof(const LaunchTrial& trial) {
    const QString back = tr("three passes with it and three without don't show it: go back.");
    for (const ReasonPart& part : trial.reasons) {
        if (part.kind == ReasonPart::Kind::noseStops && part.before && part.after) {
            const QString between = timeText((*part.before + *part.after) / 2);
            return (*part.after > *part.before
                        ? tr("Wrong if a video still shows the nose stopping before %1 s, or if %2")
                        : tr("Wrong if a video still shows the nose stopping after %1 s, or if %2"))
                .arg(between, back);
        }
        if (part.kind == ReasonPart::Kind::frontTiresUp && !part.after) {
            return tr("Wrong if the front tires still leave the ground, or if %1").arg(back);
        }
    }
    return tr("Wrong if %1").arg(back);
}

QString trialUndo(const PaddockChange& change, const Car& car, Units units) {
    const SetNumber* set = numberOf(change);
    if (set == nullptr || !change.from) {
        return tr("The way back: the holes and rod lengths of before; Undo brings their numbers back.");
    }
    switch (change.kind) {
        case ChangeKind::click:
            return tr("The way back: %1 to click %2.")
                .arg(shockName(set->id, car), setting(set->id, *change.from, units));
        case ChangeKind::frontDroop:
        case ChangeKind::ballast:
            return tr("The way back: %1.").arg(lengthSetting(*change.from, units));
        default:
            return tr("The way back: %1.").arg(setting(set->id, *change.from, units));
    }
}

QString noTrialsWords(const std::vector<MissingInput>& missing, bool getsThere) {
    if (!missing.empty()) {
        if (missing.front().what.empty()) {
            return tr("Nothing can be tried yet: %1.").arg(QString::fromStdString(missing.front().reason));
        }
        QStringList lines;
        for (const MissingInput& input : missing) {
            lines << QString::fromStdString(input.what);
        }
        return tr("Nothing can be tried yet. A launch still needs: %1.")
            .arg(lines.join(QStringLiteral("; ")));
    }
    return getsThere ? QString()
                     : tr("The car as it stands does not get to 60 ft, so there is nothing to compare with.");
}

QString trialCaution() {
    return tr(
        "Compares setups on your car; no real car has been compared yet. Left out: drag, driveshaft "
        "twist, roll, bumps, shifts. Change one thing at a time, on a closed course.");
}

QStringList nextToTry(const LaunchTrials& trials, const Car& car, Units units) {
    if (!trials.complete || trials.trials.empty() || !trials.trials.front().sixtyFootChange.change) {
        return {};
    }
    const LaunchTrial& first = trials.trials.front();
    return {trialTitle(first.change, car, units) + QStringLiteral(": ") + trialChance(first) +
                QStringLiteral("; ") + trialEffort(first.change) + u'.',
            trialWhy(first, units) + u' ' + trialExpected(first, units),
            trialProof(first) + u' ' + trialUndo(first.change, car, units)};
}

}  // namespace bolthole
