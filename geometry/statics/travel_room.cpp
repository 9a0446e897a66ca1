// travelRoom() of geometry/statics/springs.h and its words.
#include <algorithm>
#include <cmath>

#include "geometry/statics/springs.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr double kStep = 2.5e-3;  // m; a part that closes and opens again within one is not noticed
constexpr int kHalvings = 20;     // of a step: to nanometres

/// Marches from ride one way and notes where each line meets its limits.
class RoomFinder {
  public:
    RoomFinder(std::span<const SuspensionPart> parts, TravelRoom& room) : parts_(parts), room_(room) {}

    /// Up to `farthest` (m) in `direction` (+1 bump, -1 droop) from `ride`. Returns how far the links reach;
    /// nothing if all the way.
    std::optional<double> march(const AxleSolver& ride, double direction, double farthest);

  private:
    /// A step of the march: the solver where it began and where it ended, m from ride.
    struct Step {
        const AxleSolver& before;
        const AxleSolver& after;
        double from;
        double to;
    };
    void check(std::size_t line, const Step& step);
    void findFree(std::size_t line, double freeLength, const Step& step);
    template <typename Margin>
    [[nodiscard]] double crossing(const Step& step, const Margin& margin) const;
    [[nodiscard]] double lengthOf(std::size_t line, const AxleSolver& solver) const {
        return lineState(room_.lines[line].line, solver.pose(), solver.pose().rotation()).length;
    }

    std::span<const SuspensionPart> parts_;
    TravelRoom& room_;
    double direction_ = 1;
};

std::optional<double> RoomFinder::march(const AxleSolver& ride, double direction, double farthest) {
    direction_ = direction;
    AxleSolver before = ride;
    double from = 0;
    while (from < farthest) {
        AxleSolver after = before;
        const double goal = std::min(from + kStep, farthest);
        const MoveReport report = after.moveTo(direction * goal);
        const Step step{before, after, from, std::abs(report.travel)};
        for (std::size_t line = 0; line < room_.lines.size(); ++line) {
            check(line, step);
        }
        if (!report.usable()) {
            return step.to;
        }
        before = after;
        from = goal;
    }
    return std::nullopt;
}

void RoomFinder::check(std::size_t line, const Step& step) {
    LineRoom& room = room_.lines[line];
    const SuspensionPart& part = parts_[static_cast<std::size_t>(room.line.part)];
    std::optional<TravelEnd>& end = direction_ > 0 ? room.bump : room.droop;
    // A limit is met where its margin falls below nothing; past it already at ride, where it still falls.
    const auto meet = [&](double limit, double sign, TravelStop stop) {
        const auto margin = [&](const AxleSolver& solver) { return sign * (lengthOf(line, solver) - limit); };
        const double before = margin(step.before);
        if (!(margin(step.after) < std::min(before, 0.0))) {
            return;
        }
        const double at = before > 0 ? crossing(step, margin) : step.from;
        if (!end || at < end->travel) {
            end = {.travel = at, .stop = stop, .line = static_cast<int>(line)};
        }
    };
    if (!end && part.closedLength) {
        meet(*part.closedLength, +1, TravelStop::closed);
    }
    if (!end && part.openLength) {
        meet(*part.openLength, -1, TravelStop::open);
    }
    if (part.freeLength) {
        findFree(line, *part.freeLength, step);
    }
}

void RoomFinder::findFree(std::size_t line, double freeLength, const Step& step) {
    const auto slack = [&](const AxleSolver& solver) { return lengthOf(line, solver) - freeLength; };
    const double before = slack(step.before);
    if (before * slack(step.after) > 0) {
        return;
    }
    const double sign = before < 0 ? -1 : 1;
    const auto margin = [&](const AxleSolver& solver) { return sign * slack(solver); };
    const double at = before == 0 ? step.from : crossing(step, margin);
    std::optional<double>& free = room_.lines[line].free;
    if (!free || at < std::abs(*free)) {
        free = direction_ * at;
    }
}

// Where the margin, above nothing before the step, falls below it.
template <typename Margin>
double RoomFinder::crossing(const Step& step, const Margin& margin) const {
    double inside = step.from;
    double outside = step.to;
    for (int halving = 0; halving < kHalvings; ++halving) {
        const double middle = (inside + outside) / 2;
        AxleSolver solver = step.before;
        const bool reached = solver.moveTo(direction_ * middle).usable();
        (reached && margin(solver) > 0 ? inside : outside) = middle;
    }
    return inside;
}

TravelEnd firstEnd(const TravelRoom& room, double range, const std::optional<double>& links,
                   std::optional<TravelEnd> LineRoom::*end) {
    TravelEnd first{.travel = range};
    if (links && *links < first.travel) {
        first = {.travel = *links, .stop = TravelStop::links};
    }
    for (const LineRoom& line : room.lines) {
        if (line.*end && (line.*end)->before(first)) {
            first = *(line.*end);
        }
    }
    return first;
}

}  // namespace

TravelRoom travelRoom(const Car& car, std::span<const SuspensionPart> parts) {
    TravelRoom room;
    std::vector<PartLine> lines;
    buildPartLines(parts, car.rearTireRadius, lines);
    AxleSolver ride(buildLinkage(car), Drive::travel);
    room.assembled = ride.assemble().usable();
    if (!room.assembled) {
        return room;
    }
    for (const PartLine& line : lines) {
        const double length = lineState(line, ride.pose(), ride.pose().rotation()).length;
        room.lines.push_back({.line = line, .length = length});
    }
    RoomFinder finder(parts, room);
    const auto up = finder.march(ride, +1, std::max(kFarthestTravel, car.travel.bump));
    const auto down = finder.march(ride, -1, std::max(kFarthestTravel, car.travel.droop));
    room.bump = firstEnd(room, car.travel.bump, up, &LineRoom::bump);
    room.droop = firstEnd(room, car.travel.droop, down, &LineRoom::droop);
    return room;
}

TravelRange cutTo(const TravelRoom& room, TravelRange range) {
    range.bump = std::min(range.bump, room.bump.travel);
    range.droop = std::min(range.droop, room.droop.travel);
    return range;
}

namespace {

std::string partWords(const PartLine& line, std::span<const SuspensionPart> parts) {
    const SuspensionPart& part = parts[static_cast<std::size_t>(line.part)];
    const std::string name =
        part.name.empty() ? say(nameOf(part.kind)) : say("%1 '%2'", say(nameOf(part.kind)), part.name);
    return line.side == Side::center ? name
           : line.side == Side::left ? say("%1 (left)", name)
                                     : say("%1 (right)", name);
}

}  // namespace

std::string describe(const TravelEnd& end, bool bump, const TravelRoom& room,
                     std::span<const SuspensionPart> parts, Units units) {
    const std::string size =
        withUnit(fineFigureText(end.travel, Quantity::length, units), Quantity::length, units);
    const std::string where = bump ? say("%1 of bump", size) : say("%1 of droop", size);
    switch (end.stop) {
        case TravelStop::range:
            return say("nothing stops travel before the %1 entered", where);
        case TravelStop::links:
            return say("the links reach no further than %1", where);
        case TravelStop::closed:
        case TravelStop::open:
            break;
    }
    const std::string part = partWords(room.lines[static_cast<std::size_t>(end.line)].line, parts);
    const std::string at = end.travel > 0 ? where : say("ride");
    return end.stop == TravelStop::closed ? say("%1 is closed at %2", part, at)
                                          : say("%1 is all out at %2", part, at);
}

}  // namespace bolthole
