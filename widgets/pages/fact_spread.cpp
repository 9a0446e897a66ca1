#include "widgets/pages/fact_spread.h"

#include <QHash>
#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/uncertainty/read_spread.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

/// Which row of a card: the so many-th of those with that label.
struct RowName {
    std::size_t card = 0;
    QString label;
    int which = 0;
};

const Fact* find(const RowName& name, const CardFacts& cards) {
    if (name.card >= cards.size()) {
        return nullptr;
    }
    int which = 0;
    for (const Fact& fact : cards[name.card]) {
        if (fact.label == name.label && which++ == name.which) {
            return &fact;
        }
    }
    return nullptr;
}

/// A row with a number.
struct Row {
    RowName name;
    Fact* fact = nullptr;
};

std::vector<Row> rowsWithNumber(CardFacts& cards) {
    std::vector<Row> rows;
    for (std::size_t card = 0; card < cards.size(); ++card) {
        QHash<QString, int> seen;
        for (Fact& fact : cards[card]) {
            const int which = seen[fact.label]++;
            if (!std::isnan(fact.number.value)) {
                rows.push_back({{card, fact.label, which}, &fact});
            }
        }
    }
    return rows;
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

void FactSpread::addTo(CardFacts& cards, const Car& car, Units units,
                       const std::function<CardFacts(const Car& car)>& read) {
    const std::vector<Row> rows = rowsWithNumber(cards);
    const ReadNumbers numbers = [&](const Car& varied, std::span<double> values) {
        const CardFacts theirs = read(varied);
        std::ranges::transform(rows, values.begin(), [&](const Row& row) {
            const Fact* fact = find(row.name, theirs);
            return fact == nullptr ? std::numeric_limits<double>::quiet_NaN() : fact->number.value;
        });
        return true;
    };
    if (spread_.size() != rows.size() || car_ != car) {
        spread_ = readSpread(car, rows.size(), numbers);
        car_ = car;
    }
    for (std::size_t row = 0; row < rows.size(); ++row) {
        rows[row].fact->sure = sureOf(rows[row].fact->number, spread_[row], units);
    }
}

}  // namespace bolthole
