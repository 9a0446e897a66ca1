#include "widgets/pages/measure/measuring_walk.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

void addArea(const PlanArea& area, std::size_t index, std::vector<WalkStop>& stops) {
    for (const PlanTable& table : area.tables) {
        for (const PlanRow& row : table.rows) {
            for (std::size_t column = 0; column < row.fields.size(); ++column) {
                if (row.fields[column]) {
                    stops.push_back({index, QString::number(row.number),
                                     QStringLiteral("%1: %2").arg(row.name, table.heads[column]),
                                     *row.fields[column], &table == &area.tables.front()});
                }
            }
        }
    }
    for (const PlanNumber& number : area.numbers) {
        stops.push_back({index, signOf(number), number.label, number.id});
    }
    for (const PlanLimits& limits : area.limits) {
        for (const PlanNumber& number : limits.numbers) {
            stops.push_back({index, {}, QStringLiteral("%1: %2").arg(limits.name, number.label), number.id});
        }
    }
}

}  // namespace

MeasuringWalk measuringWalk(const Car& car) {
    MeasuringWalk walk{measuringPlan(car), {}};
    for (std::size_t area = 0; area < walk.areas.size(); ++area) {
        addArea(walk.areas[area], area, walk.stops);
    }
    return walk;
}

std::optional<std::size_t> firstLeft(const Car& car, const MeasuringWalk& walk) {
    const auto found =
        std::ranges::find_if(walk.stops, [&](const WalkStop& stop) { return !isMeasured(car, stop.id); });
    return found == walk.stops.end() ? std::nullopt
                                     : std::optional(static_cast<std::size_t>(found - walk.stops.begin()));
}

std::size_t countLeft(const Car& car, const MeasuringWalk& walk) {
    return static_cast<std::size_t>(
        std::ranges::count_if(walk.stops, [&](const WalkStop& stop) { return !isMeasured(car, stop.id); }));
}

QString leftWords(const Car& car, const MeasuringWalk& walk) {
    const auto left = static_cast<int>(countLeft(car, walk));
    const auto count = [&](Origin origin) {
        return static_cast<int>(std::ranges::count_if(walk.stops, [&](const WalkStop& stop) {
            return numberAt(car, stop.id) && originOf(car, stop.id) == origin;
        }));
    };
    const int starting = count(Origin::starting);
    const int workedOut = count(Origin::workedOut);
    QString words = left == 1 ? tr(", 1 box left to fill") : tr(", %n boxes left to fill", left);
    if (starting > 0) {
        words += starting == 1 ? tr(", 1 of them a starting number")
                               : tr(", %n of them starting numbers", starting);
    }
    if (workedOut > 0) {
        words += workedOut == 1 ? tr(", 1 worked out") : tr(", %n worked out", workedOut);
    }
    return words;
}

std::array<double, 2> closestTwo(const std::array<double, 3>& readings) {
    const auto [a, b, c] = readings;
    const double first = std::abs(a - c);
    const double second = std::abs(b - c);
    if (std::abs(a - b) < std::min(first, second)) {
        return {a, b};
    }
    return first < second ? std::array{a, c} : std::array{b, c};
}

Edit editOfReadings(const Car& car, const FieldId& id, double first, std::optional<double> second) {
    const SetNumber mean{id, second ? (first + *second) / 2 : first};
    if (!mayHaveUncertainty(id.field)) {
        return mean;
    }
    FieldId uncertainty = id;
    uncertainty.uncertainty = true;
    // Two equal readings don't make a tape any finer.
    const bool hasOwn = numberAt(car, uncertainty).has_value();
    const Car without = hasOwn ? bolthole::apply(car, ClearNumber{uncertainty}).car : car;
    const double tool = uncertaintyOf(without, id).uncertainty;
    // One reading says nothing of its own ±, and that of readings it takes the place of is theirs.
    const double read = second ? std::abs(first - *second) / kCoverage95 : 0;
    if (read <= tool && !hasOwn) {
        return mean;
    }
    return SetNumbers{{mean, {uncertainty, std::max(read, tool)}}};
}

}  // namespace bolthole
