#include "widgets/pages/fact_spread.h"

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

QString sureOf(const FactNumber& number, double uncertainty, Units units) {
    const std::string half = halfWidthText(uncertainty, number.quantity, units, number.fineness);
    if (half.empty()) {
        return {};
    }
    const QString text = number.unit.isEmpty()
                             ? QString::fromStdString(withUnit(half, number.quantity, units))
                             : QString::fromStdString(half) + QLatin1Char(' ') + number.unit;
    return QStringLiteral("± ") + text;
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

void FactSpread::compute(const CardFacts& cards, const Car& car, const ReadCards& read,
                         std::function<void()> whenKnown) {
    car_ = car;
    count_ = numbersOf(cards).size();
    spread_.clear();
    if (!whenKnown) {
        spread_ = spreadOf(cards, car, read);
        starts_ = startsOf(cards, car, read);
        return;
    }
    if (!jobs_) {
        jobs_ = std::make_unique<JobRunner>();
    }
    jobs_->start([this, cards, car, read, whenKnown = std::move(whenKnown)](const Job& job) {
        std::vector<double> spread = spreadOf(cards, car, read);
        std::vector<std::vector<FieldId>> starts = startsOf(cards, car, read);
        job.answer([this, spread = std::move(spread), starts = std::move(starts), whenKnown] {
            spread_ = spread;
            starts_ = starts;
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
                const double spread = spread_[number++];
                fact.sure = !isShown                  ? QString()
                            : fact.starting.isEmpty() ? sureOf(fact.number, spread, units)
                                                      : noSureWords();
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
