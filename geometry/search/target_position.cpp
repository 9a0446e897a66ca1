// The search for one new hole or one new length; see geometry/search/target_search.h.
#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/plates/plate_room.h"
#include "geometry/search/target_chance.h"
#include "geometry/search/target_reader.h"
#include "geometry/search/target_search.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr int kGrid = 9;           // places across and up a plate
constexpr int kFineGrid = 41;      // where none of these has room
constexpr int kSeedsByMiss = 3;    // searches start from so many of those that miss least
constexpr int kSeedsByHome = 2;    // and so many of those nearest to the hole in use
constexpr double kAtWall = 1e-6;   // m
constexpr double kAtLimit = 1e-4;  // scales

double roundToNanometer(double value) {
    return std::round(value * 1e9) / 1e9;
}

double pinionNow(const Car& car) {
    const Station now = solveStation(withPinion(car), 0);
    return now.usable ? now[Figure::pinion] : kAbsent;
}

std::vector<Eigen::Vector2d> gridOn(const Plate& plate, const HolePlacement& placement, int count) {
    Eigen::Vector2d low = plate.corners.front();
    Eigen::Vector2d high = low;
    for (const Eigen::Vector2d& corner : plate.corners) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    std::vector<Eigen::Vector2d> grid;
    for (int across = 0; across < count; ++across) {
        for (int up = 0; up < count; ++up) {
            const Eigen::Vector2d share((across + 0.5) / count, (up + 0.5) / count);
            const Eigen::Vector2d at = low + share.cwiseProduct(high - low);
            if (placement.isAllowed(at)) {
                grid.push_back(at);
            }
        }
    }
    return grid;
}

bool isBetter(const HolePosition& one, const HolePosition& other, const Eigen::Vector2d& home) {
    if (one.meets() != other.meets()) {
        return one.meets();
    }
    return one.meets() ? (one.at - home).norm() < (other.at - home).norm() : one.miss < other.miss;
}

/// Searches from the most promising of the places.
HolePosition bestFrom(std::vector<HolePosition> seeds, Placement& placement, const TargetLimits& limits,
                      const Eigen::Vector2d& home) {
    std::erase_if(seeds, [](const HolePosition& seed) { return !seed.known; });
    HolePosition best;
    best.miss = std::numeric_limits<double>::infinity();
    const auto searchFrom = [&](int count) {
        for (int index = 0; index < count && index < static_cast<int>(seeds.size()); ++index) {
            const HolePosition found =
                findPosition(placement, limits, home, seeds[static_cast<std::size_t>(index)]);
            best = !best.known || isBetter(found, best, home) ? found : best;
        }
    };
    std::ranges::stable_sort(
        seeds, [&](const HolePosition& a, const HolePosition& b) { return isBetter(a, b, home); });
    searchFrom(kSeedsByMiss);
    std::ranges::stable_sort(seeds, [&](const HolePosition& a, const HolePosition& b) {
        return (a.at - home).norm() < (b.at - home).norm();
    });
    searchFrom(kSeedsByHome);
    return best;
}

void addLimitStops(const TargetFigures& figures, const TargetLimits& limits, std::vector<TargetStop>& stops) {
    for (std::size_t index = 0; index < kTargetFigures; ++index) {
        const TargetLimit& limit = limits[index];
        const auto figure = static_cast<TargetFigure>(index);
        if (std::abs(figures[index] - limit.low) < kAtLimit * limit.scale) {
            stops.push_back({TargetStop::Kind::lowLimit, figure});
        } else if (std::abs(figures[index] - limit.high) < kAtLimit * limit.scale) {
            stops.push_back({TargetStop::Kind::highLimit, figure});
        }
    }
}

void addPlateStops(const Bracket& bracket, const HolePlacement& placement, const Eigen::Vector2d& at,
                   std::vector<TargetStop>& stops) {
    if (edgeRoom(bracket.plate->corners, at).distance < placement.edge() + kAtWall) {
        stops.push_back({TargetStop::Kind::edge});
    }
    for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
        if ((inSideView(bracket.holes[hole].at) - at).norm() < placement.spacing() + kAtWall) {
            stops.push_back({TargetStop::Kind::hole, TargetFigure::count, static_cast<int>(hole)});
        }
    }
}

std::string newName(const Bracket& bracket) {
    const auto isTaken = [&](const std::string& name) {
        return std::ranges::find(bracket.holes, name, &Hole::name) != bracket.holes.end();
    };
    std::string name = say("new");
    for (int number = 2; isTaken(name); ++number) {
        name = say("new %1", number);
    }
    return name;
}

TargetAnswer answerOf(const Car& car, LengthTreatment lengths, const HoleUse& use, const Car& now,
                      const TargetLimits& limits) {
    TargetAnswer answer;
    CombinationSolver(car, lengths).solve(use, answer.combination);
    answer.misses = missesOf(targetFiguresOf(answer.combination), limits);
    if (answer.misses.empty()) {
        answer.chance =
            ChanceJudge(now, limits)
                .chanceOf(car, lengths, use,
                          targetFiguresOf(answer.combination)[static_cast<std::size_t>(TargetFigure::joint)]);
    }
    return answer;
}

}  // namespace

NewHole searchHole(const Car& car, int link, End end, LengthTreatment lengths, const TargetLimits& limits) {
    const Bracket& bracket = car.links[static_cast<std::size_t>(link)].bracket(end);
    NewHole result;
    result.edit = {link, end, bracket.inUse(), lengths};
    result.edit.hole.id = -1;
    result.edit.hole.name = newName(bracket);
    result.edit.hole.planned = true;
    if (!bracket.plate || bracket.holes.size() >= kMaxHoles) {
        return result;
    }
    HolePlacement placement(car, result.edit, pinionNow(car));
    const Eigen::Vector2d home = inSideView(bracket.inUse().at);
    std::vector<Eigen::Vector2d> grid = gridOn(*bracket.plate, placement, kGrid);
    if (grid.empty()) {
        grid = gridOn(*bracket.plate, placement, kFineGrid);
    }
    std::vector<HolePosition> seeds;
    seeds.reserve(grid.size());
    for (const Eigen::Vector2d& at : grid) {
        seeds.push_back(positionAt(placement, limits, at));
    }
    const HolePosition best = bestFrom(std::move(seeds), placement, limits, home);
    if (!best.known) {
        return result;
    }
    result.hasRoom = true;
    result.edit.hole.at.x() = roundToNanometer(best.at.x());
    result.edit.hole.at.z() = roundToNanometer(best.at.y());
    result.moved = (best.at - home).norm();
    result.nearest = holeRoom(bracket, best.at, -1).hole;
    const Car drilled = *withHoleAdded(car, result.edit).car;
    result.answer = answerOf(drilled, lengths, useWithNewHole(drilled, result.edit), car, limits);
    addLimitStops(best.figures, limits, result.stops);
    addPlateStops(bracket, placement, best.at, result.stops);
    return result;
}

NewLength searchLength(const Car& car, int link, const TargetLimits& limits) {
    const Link& rod = car.links[static_cast<std::size_t>(link)];
    const LengthRange range = adjusterRange(rod);
    const double now = builtLength(rod);
    LengthPlacement placement(car, link, range, pinionNow(car));
    const Eigen::Vector2d home(now, 0);
    std::vector<HolePosition> seeds{positionAt(placement, limits, home)};
    for (int step = 0; step < kGrid; ++step) {
        const double share = step / (kGrid - 1.0);
        const double length = range.shortest + share * (range.longest - range.shortest);
        seeds.push_back(positionAt(placement, limits, {length, 0}));
    }
    const HolePosition best = bestFrom(std::move(seeds), placement, limits, home);
    NewLength result;
    result.link = link;
    result.length = best.known ? roundToNanometer(best.at.x()) : now;
    result.change = result.length - now;
    Car turned = car;
    turned.links[static_cast<std::size_t>(link)].length = result.length;
    result.answer = answerOf(turned, LengthTreatment::keep, holesInUse(car), car, limits);
    // Against the car as it stands, not against itself with the other length.
    result.answer.combination.pinionChange = best.figures[static_cast<std::size_t>(TargetFigure::pinion)];
    result.answer.misses = missesOf(targetFiguresOf(result.answer.combination), limits);
    addLimitStops(best.figures, limits, result.stops);
    if (result.length < range.shortest + kAtWall) {
        result.stops.push_back({TargetStop::Kind::shortest});
    } else if (result.length > range.longest - kAtWall) {
        result.stops.push_back({TargetStop::Kind::longest});
    }
    return result;
}

}  // namespace bolthole
