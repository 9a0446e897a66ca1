#include "widgets/fit/fit_words.h"

#include <QStringList>
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr double kExpectedShare = 0.95;
constexpr double kInPercent = 100;

/// How a number is written: its factor to what is shown, and as what.
struct Writing {
    double factor;
    Quantity quantity;
};
Writing writingOf(LaunchNumber number) {
    switch (number) {
        case LaunchNumber::friction:
            return {1, Quantity::ratio};
        case LaunchNumber::stallSpeed:
            return {1, Quantity::speed};
        case LaunchNumber::peakSlip:
            return {1, Quantity::percent};
        case LaunchNumber::torqueScale:
        case LaunchNumber::frontDampingScale:
        case LaunchNumber::rearDampingScale:
            break;
    }
    return {kInPercent, Quantity::percent};
}

}  // namespace

QString fittedWords(const FittedNumber& number, bool hasSurfaces) {
    switch (number.number) {
        case LaunchNumber::friction:
            return hasSurfaces ? tr("Friction, %1").arg(QString::fromStdString(number.surface))
                               : tr("Tire friction");
        case LaunchNumber::torqueScale:
            return tr("Torque");
        case LaunchNumber::stallSpeed:
            return tr("Stall speed");
        case LaunchNumber::frontDampingScale:
            return tr("Front damping");
        case LaunchNumber::rearDampingScale:
            return tr("Rear damping");
        case LaunchNumber::peakSlip:
            break;
    }
    return tr("Slip at the peak");
}

QString fittedText(LaunchNumber number, double value, double uncertainty) {
    const Writing writing = writingOf(number);
    const std::string text = figureText(value * writing.factor, writing.quantity, Units::metric);
    const std::string plusMinus =
        uncertaintyText(uncertainty * writing.factor, writing.quantity, Units::metric);
    return QString::fromStdString(
        withUnit(plusMinus.empty() ? text : text + " " + plusMinus, writing.quantity, Units::metric));
}

QString toldText(const FittedNumber& number) {
    constexpr double kMostTold = 99;
    return tr("%1 %").arg(std::round(std::clamp(number.toldPercent(), 0.0, kMostTold)));
}

QString insideWords(const LaunchFit& fit) {
    const double expected = kExpectedShare * static_cast<double>(fit.passes.size());
    return tr("Each pass predicted without itself: %1 of %2 inside their ± (%3 expected)")
        .arg(fit.inside())
        .arg(fit.passes.size())
        .arg(std::round(expected));
}

QString faredWords(const LaunchFit& fit) {
    if (fit.end != FitEnd::done) {
        return {};
    }
    const bool isCorrected = std::ranges::none_of(fit.numbers, [](const FittedNumber& number) {
        return std::abs(number.after - number.before) > kCoverage95 * number.afterU;
    });
    const auto count = static_cast<double>(fit.passes.size());
    const double fewest =
        kExpectedShare * count - 2 * std::sqrt(count * kExpectedShare * (1 - kExpectedShare));
    if (static_cast<double>(fit.inside()) < fewest) {
        return insideWords(fit) + QStringLiteral(". ") +
               tr("Fewer than there should be: the model does not hold for these passes, nor can these "
                  "trials be trusted. Look at the passes outside.");
    }
    return insideWords(fit) + QStringLiteral(". ") +
           (isCorrected ? tr("The launch's numbers agree with what they teach.")
                        : tr("What they teach is not taken over yet, so these trials go by the numbers as "
                             "entered: on Test days, Take it over."));
}

QString noFitWords(const LaunchFit& fit, const Car& car) {
    switch (fit.end) {
        case FitEnd::done:
            return {};
        case FitEnd::missing: {
            const auto count = static_cast<int>(fit.missing.size());
            return tr("The launch can't be computed yet, so the passes can't teach it anything. ") +
                   (count == 1 ? tr("It lacks one number, which the Launch page asks for.")
                               : tr("It lacks %n numbers, which the Launch page lists.", count));
        }
        case FitEnd::noPass: {
            const QString unused = unusedWords(fit, car);
            return unused.isEmpty()
                       ? tr("Enter passes with their 60 ft, and this says what they teach of friction, "
                            "torque, stall and damping, and predicts the next one.")
                       : unused;
        }
        case FitEnd::notDone:
        case FitEnd::cancelled:
            break;
    }
    return tr("Not fitted.");
}

QString unusedWords(const LaunchFit& fit, const Car& car) {
    std::vector<std::pair<std::string, std::vector<std::size_t>>> byReason;  // in the passes' order
    for (const UnusedPass& pass : fit.unused) {
        auto found = std::ranges::find(byReason, pass.reason, [](const auto& one) { return one.first; });
        if (found == byReason.end()) {
            found = byReason.insert(found, {pass.reason, {}});
        }
        found->second.push_back(pass.row);
    }
    QStringList lines;
    for (const auto& [reason, rows] : byReason) {
        const QString first = QString::fromStdString(passWords(car.passes[rows.front()]));
        const auto more = static_cast<int>(rows.size()) - 1;
        const QString passes = more == 0 ? first : tr("%1 and %n more", more).arg(first);
        lines += tr("Left out: %1, %2").arg(passes, QString::fromStdString(reason));
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace bolthole
