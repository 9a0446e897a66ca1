#include "widgets/pages/fact_spread.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <string_view>
#include <unordered_map>
#include <utility>

#include "geometry/uncertainty/read_spread.h"
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
    return QCoreApplication::translate("FactSpread", "%1 to %2")
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

std::vector<double> spreadOf(const CardFacts& cards, const Car& car, const ReadCards& read) {
    const std::vector<const FactNumber*> numbers = numbersOf(cards);
    return readSpread(car, numbers.size(), readerOf(numbers, read));
}

std::vector<std::vector<FieldId>> startsOf(const CardFacts& cards, const Car& car, const ReadCards& read) {
    const std::vector<const FactNumber*> numbers = numbersOf(cards);
    return startsBehind(car, numbers.size(), readerOf(numbers, read));
}

namespace {

/// All that is said of how sure the numbers are.
struct Sure {
    std::vector<double> spread;
    std::vector<Coverage> ranges;
    std::vector<std::vector<FieldId>> starts;
};

Sure sureOfAll(const CardFacts& cards, const Car& car, const ReadCards& read) {
    Sure sure{spreadOf(cards, car, read), {}, startsOf(cards, car, read)};
    const std::vector<const FactNumber*> numbers = numbersOf(cards);
    for (std::size_t index = 0; index < numbers.size(); ++index) {
        if (sure.ranges.empty() && isNearNothing(*numbers[index], sure.spread[index])) {
            sure.ranges = readRanges(car, numbers.size(), readerOf(numbers, read));
        }
    }
    return sure;
}

}  // namespace

QString FactSpread::sureOf(const FactNumber& number, std::size_t index, Units units) const {
    if (!ranges_.empty() && ranges_[index].used > 0 && isNearNothing(number, spread_[index])) {
        return rangeText(number, ranges_[index], units);
    }
    return halfWidth(number, spread_[index], units);
}

void FactSpread::compute(const CardFacts& cards, const Car& car, const ReadCards& read,
                         std::function<void()> whenKnown) {
    car_ = car;
    count_ = numbersOf(cards).size();
    spread_.clear();
    const auto take = [this](const Sure& sure) {
        spread_ = sure.spread;
        ranges_ = sure.ranges;
        starts_ = sure.starts;
    };
    if (!whenKnown) {
        take(sureOfAll(cards, car, read));
        return;
    }
    if (!jobs_) {
        jobs_ = std::make_unique<JobRunner>();
    }
    jobs_->start([take, cards, car, read, whenKnown = std::move(whenKnown)](const Job& job) {
        job.answer([take, sure = sureOfAll(cards, car, read), whenKnown] {
            take(sure);
            whenKnown();
        });
    });
}

void FactSpread::addTo(CardFacts& cards, const Car& car, Units units, const ReadCards& read,
                       std::function<void()> whenKnown) {
    if (count_ != numbersOf(cards).size() || car_ != car) {
        compute(cards, car, read, std::move(whenKnown));
    }
    if (spread_.empty()) {
        return;
    }
    std::size_t number = 0;
    for (std::vector<Fact>& card : cards) {
        for (Fact& fact : card) {
            if (!fact.number.id.empty()) {
                const bool isShown = !std::isnan(fact.number.value);
                fact.starting = isShown ? startingWords(car, starts_[number]) : QString();
                fact.sure = !isShown                  ? QString()
                            : fact.starting.isEmpty() ? sureOf(fact.number, number, units)
                                                      : noSureWords();
                ++number;
            }
            number += static_cast<std::size_t>(std::ranges::count_if(
                fact.others, [](const FactNumber& other) { return !other.id.empty(); }));
        }
    }
}

void FactSpread::forget() {
    if (jobs_) {
        jobs_->cancel();
    }
    count_ = 0;
    spread_.clear();
}

}  // namespace bolthole
