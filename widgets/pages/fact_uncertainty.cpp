#include "widgets/pages/fact_uncertainty.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <string_view>
#include <unordered_map>
#include <utility>

#include "geometry/uncertainty/read_uncertainty.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

using NumbersById = std::unordered_map<std::string_view, double>;

NumbersById byId(const CardFacts& cards) {
    NumbersById values;
    for (const FactNumber* number : numbersOf(cards)) {
        values.emplace(number->id, number->value);
    }
    return values;
}

QString halfWidth(const FactNumber& number, double uncertainty, Units units) {
    const std::string half = halfWidthText(uncertainty, number.quantity, units, number.fineness);
    if (half.empty()) {
        return {};
    }
    const QString text = number.unit.isEmpty()
                             ? QString::fromStdString(withUnit(half, number.quantity, units))
                             : QString::fromStdString(half) + QLatin1Char(' ') + number.unit;
    return QStringLiteral("± ") + text;
}

// How far from nothing, in standard uncertainties, a size is as good as any number: then hardly a draw gets
// there.
constexpr double kFarFromNothing = 4;

bool isNearNothing(const FactNumber& number, double uncertainty) {
    return number.hasNoSign && std::abs(number.value) < kFarFromNothing * uncertainty;
}

QString rangeText(const FactNumber& number, const Coverage& range, Units units) {
    const auto text = [&](double value) {
        return number.fineness == Fineness::fine ? fineFigureText(value, number.quantity, units)
                                                 : figureText(value, number.quantity, units);
    };
    return QCoreApplication::translate("FactUncertainty", "%1 to %2")
        .arg(QString::fromStdString(text(range.low)),
             QString::fromStdString(withUnit(text(range.high), number.quantity, units)));
}

}  // namespace

std::vector<const FactNumber*> numbersOf(const CardFacts& cards) {
    std::vector<const FactNumber*> numbers;
    const auto add = [&numbers](const FactNumber& number) {
        if (!number.id.empty()) {
            numbers.push_back(&number);
        }
    };
    for (const std::vector<Fact>& card : cards) {
        for (const Fact& fact : card) {
            add(fact.number);
            std::ranges::for_each(fact.others, add);
        }
    }
    return numbers;
}

namespace {

/// Reads numbersOf() of other cars, by their ids.
ReadNumbers readerOf(const std::vector<const FactNumber*>& numbers, const ReadCards& read) {
    return [&numbers, &read](const Car& varied, std::span<double> values) {
        const CardFacts theirs = read(varied);
        const NumbersById found = byId(theirs);
        std::ranges::transform(numbers, values.begin(), [&found](const FactNumber* number) {
            const auto same = found.find(number->id);
            return same == found.end() ? std::numeric_limits<double>::quiet_NaN() : same->second;
        });
        return true;
    };
}

}  // namespace

std::vector<double> uncertaintiesOf(const CardFacts& cards, const Car& car, const ReadCards& read) {
    const std::vector<const FactNumber*> numbers = numbersOf(cards);
    std::vector<double> uncertainties = readUncertainty(car, numbers.size(), readerOf(numbers, read));
    std::ranges::transform(
        numbers, uncertainties, uncertainties.begin(),
        [](const FactNumber* number, double fromCar) { return number->ownUncertainty.value_or(fromCar); });
    return uncertainties;
}

std::vector<std::vector<FieldId>> startsOf(const CardFacts& cards, const Car& car, const ReadCards& read) {
    const std::vector<const FactNumber*> numbers = numbersOf(cards);
    return startsBehind(car, numbers.size(), readerOf(numbers, read));
}

namespace {

/// All that is said of the uncertainty of the numbers.
struct RowUncertainties {
    std::vector<double> uncertainty;
    std::vector<Coverage> ranges;
    std::vector<std::vector<FieldId>> starts;
};

RowUncertainties uncertaintyOfAll(const CardFacts& cards, const Car& car, const ReadCards& read) {
    RowUncertainties rows{uncertaintiesOf(cards, car, read), {}, startsOf(cards, car, read)};
    const std::vector<const FactNumber*> numbers = numbersOf(cards);
    for (std::size_t index = 0; index < numbers.size(); ++index) {
        if (rows.ranges.empty() && isNearNothing(*numbers[index], rows.uncertainty[index])) {
            rows.ranges = readRanges(car, numbers.size(), readerOf(numbers, read));
        }
    }
    return rows;
}

}  // namespace

QString FactUncertainty::plusMinusOf(const FactNumber& number, std::size_t index, Units units) const {
    if (!ranges_.empty() && ranges_[index].used > 0 && isNearNothing(number, uncertainty_[index])) {
        return rangeText(number, ranges_[index], units);
    }
    return halfWidth(number, uncertainty_[index], units);
}

void FactUncertainty::compute(const CardFacts& cards, const Car& car, const ReadCards& read,
                              std::function<void()> whenKnown) {
    car_ = car;
    count_ = numbersOf(cards).size();
    uncertainty_.clear();
    const auto take = [this](const RowUncertainties& rows) {
        uncertainty_ = rows.uncertainty;
        ranges_ = rows.ranges;
        starts_ = rows.starts;
    };
    if (!whenKnown) {
        take(uncertaintyOfAll(cards, car, read));
        return;
    }
    if (!jobs_) {
        jobs_ = std::make_unique<JobRunner>();
    }
    jobs_->start([take, cards, car, read, whenKnown = std::move(whenKnown)](const Job& job) {
        job.answer([take, rows = uncertaintyOfAll(cards, car, read), whenKnown] {
            take(rows);
            whenKnown();
        });
    });
}

void FactUncertainty::addTo(CardFacts& cards, const Car& car, Units units, const ReadCards& read,
                            std::function<void()> whenKnown) {
    if (count_ != numbersOf(cards).size() || car_ != car) {
        compute(cards, car, read, std::move(whenKnown));
    }
    if (uncertainty_.empty()) {
        return;
    }
    std::size_t number = 0;
    for (std::vector<Fact>& card : cards) {
        for (Fact& fact : card) {
            if (!fact.number.id.empty()) {
                const bool isShown = !std::isnan(fact.number.value);
                fact.starting = isShown ? startingWords(car, starts_[number]) : QString();
                fact.plusMinus = !isShown                  ? QString()
                                 : fact.starting.isEmpty() ? plusMinusOf(fact.number, number, units)
                                                           : noUncertaintyWords();
                ++number;
            }
            number += static_cast<std::size_t>(std::ranges::count_if(
                fact.others, [](const FactNumber& other) { return !other.id.empty(); }));
        }
    }
}

void FactUncertainty::forget() {
    if (jobs_) {
        jobs_->cancel();
    }
    count_ = 0;
    uncertainty_.clear();
}

}  // namespace bolthole
