#include "geometry/car/damping.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <string_view>

#include "geometry/units/say.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr double kMaxShaftSpeed = 100;    // m/s
constexpr double kMaxForce = 1e7;         // N
constexpr double kMaxEngineTorque = 1e5;  // N m
constexpr double kMaxEngineSpeed = 50'000 * kRpm;

std::string indexed(std::string_view name, std::size_t index) {
    return std::string(name) + "[" + std::to_string(index) + "]";
}

bool isWithin(double value, double low, double high) {
    return value >= low && value <= high;  // not a number is not
}

/// The first that is not above the one before it, or the size.
template <class Numbers>
std::size_t firstThatFalls(const Numbers& numbers) {
    const auto found = std::adjacent_find(numbers.begin(), numbers.end(), std::greater_equal<>());
    return found == numbers.end() ? numbers.size() : static_cast<std::size_t>(found - numbers.begin()) + 1;
}

TableFault refuseSpeeds(const std::vector<double>& speeds) {
    if (speeds.empty() || speeds.size() > kMaxDampingSpeeds) {
        return {"speeds", say("expected 1 to %1 speeds, found %2", kMaxDampingSpeeds, speeds.size())};
    }
    for (std::size_t index = 0; index < speeds.size(); ++index) {
        if (!isWithin(speeds[index], 0, kMaxShaftSpeed) || speeds[index] == 0) {
            return {indexed("speeds", index), say("expected a speed above 0 and at most 100000 mm/s")};
        }
    }
    const std::size_t falls = firstThatFalls(speeds);
    return falls == speeds.size() ? TableFault{}
                                  : TableFault{indexed("speeds", falls), say("expected rising speeds")};
}

TableFault refuseClicks(const DampingWay& way) {
    const auto isClick = [](int click) { return std::abs(click) <= kMaxClick; };
    if (way.clicks.empty() || way.clicks.size() > kMaxDampingRows ||
        !std::ranges::all_of(way.clicks, isClick) || firstThatFalls(way.clicks) < way.clicks.size()) {
        return {"clicks", say("expected 1 to %1 rising whole numbers from -1000 to 1000", kMaxDampingRows)};
    }
    const auto every = static_cast<std::size_t>(way.clicks.back() - way.clicks.front()) + 1;
    const bool isRange = way.clicks.size() == 2 && way.force.size() == every;
    const bool fits = isRange || way.force.size() == way.clicks.size();
    if (!fits || way.force.size() > kMaxDampingRows) {
        return {"force", say("expected a row a click, %1, at most %2, found %3", way.clicks.size(),
                             kMaxDampingRows, way.force.size())};
    }
    return {};
}

TableFault refuseForces(const DampingWay& way, std::size_t speeds) {
    for (std::size_t row = 0; row < way.force.size(); ++row) {
        const std::vector<double>& forces = way.force[row];
        if (forces.size() != speeds) {
            return {indexed("force", row),
                    say("expected a force at each of the %1 speeds, found %2", speeds, forces.size())};
        }
        for (std::size_t index = 0; index < forces.size(); ++index) {
            if (!isWithin(forces[index], 0, kMaxForce)) {
                return {indexed(indexed("force", row), index), say("expected a force from 0 to 10000 kN")};
            }
        }
    }
    return {};
}

TableFault refuseWay(const DampingWay& way, std::size_t speeds) {
    TableFault fault = refuseClicks(way);
    return fault.reason.empty() ? refuseForces(way, speeds) : fault;
}

}  // namespace

TableFault refusal(const Damping& damping) {
    TableFault fault = refuseSpeeds(damping.speeds);
    if (!fault.reason.empty()) {
        return fault;
    }
    const std::size_t speeds = damping.speeds.size();
    for (const auto& [name, way] :
         {std::pair("bump.", &damping.bump), std::pair("rebound.", &damping.rebound)}) {
        fault = refuseWay(*way, speeds);
        if (!fault.reason.empty()) {
            return {name + fault.path, fault.reason};
        }
    }
    return {};
}

TableFault refusal(const std::vector<TorquePoint>& torque) {
    if (torque.size() > kMaxTorqueRows) {
        return {"torque", say("expected at most %1 rows, found %2", kMaxTorqueRows, torque.size())};
    }
    double before = -1;
    for (std::size_t row = 0; row < torque.size(); ++row) {
        const TorquePoint& point = torque[row];
        if (!isWithin(point.speed, 0, kMaxEngineSpeed) || point.speed <= before) {
            return {indexed("torque", row) + "[0]", say("expected rising speeds from 0 to 50000 rpm")};
        }
        if (!isWithin(point.torque, -kMaxEngineTorque, kMaxEngineTorque)) {
            return {indexed("torque", row) + "[1]", say("expected a torque within 100000 N m")};
        }
        before = point.speed;
    }
    return {};
}

}  // namespace bolthole
