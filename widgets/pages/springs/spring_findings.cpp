#include "widgets/pages/springs/spring_findings.h"

#include <algorithm>
#include <cmath>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

SpringFindings withParts(const Car& car) {
    SpringFindings found;
    for (std::size_t item = 0; item < car.springs.size(); ++item) {
        found.refusals.push_back(refusal(car.springs[item]));
        if (found.refusals.back().empty()) {
            found.parts.push_back(car.springs[item]);
            found.items.push_back(static_cast<int>(item));
        }
    }
    return found;
}

}  // namespace

std::vector<std::size_t> SpringFindings::linesOf(int item) const {
    std::vector<std::size_t> lines;
    for (std::size_t line = 0; line < sweep.lines.size(); ++line) {
        if (items[static_cast<std::size_t>(sweep.lines[line].part)] == item) {
            lines.push_back(line);
        }
    }
    return lines;
}

double SpringFindings::wheelRateOf(int item, std::span<const LineFigures> figures) const {
    double sum = 0;
    for (const std::size_t line : linesOf(item)) {
        sum += figures[line].rate;
    }
    return sum / 2;
}

SpringFindings findSprings(const BenchState& state) {
    const Car& car = state.car;
    SpringFindings found = withParts(car);
    if (!state.faults.empty() || !state.traceIsCurrent) {
        found.problem = state.problem.empty() ? say("the car can't be assembled") : state.problem;
        return found;
    }
    computeSprings(car, found.parts, found.sweep);
    found.ride = lineFiguresAt(car, found.parts, 0);
    found.room = travelRoom(car, found.parts);
    found.made = springRates(car, found.parts, 0);
    found.stance = fullStanceOf(car);
    return found;
}

SpringFindings findSpringsAtRide(const Car& car) {
    SpringFindings found = withParts(car);
    Car brief = car;
    brief.travel.steps = kMinSteps;
    computeSprings(brief, found.parts, found.sweep);
    found.ride = lineFiguresAt(brief, found.parts, 0);
    found.room.lines.resize(found.sweep.lines.size());
    found.made = springRates(brief, found.parts, 0);
    found.stance = fullStanceOf(brief);
    return found;
}

double roundedDown(const TravelEnd& end, Units units) {
    constexpr double kFound = 2e-6;  // m, how exactly limits are found
    const double unit = units == Units::inch ? kMetresPerInch / 16 : kMetresPerMillimetre;
    return std::floor((end.travel + kFound) / unit) * unit;
}

}  // namespace bolthole
