#include "geometry/edits/next_hole.h"

#include <algorithm>
#include <string>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kApart = 0.001;  // m; nearer, two holes lie on one another

std::string freeHoleName(const Bracket& bracket) {
    const auto taken = [&](const std::string& name) {
        return std::ranges::any_of(bracket.holes, [&](const Hole& hole) { return hole.name == name; });
    };
    std::size_t number = bracket.holes.size() + 1;  // as the measuring sheet calls it
    std::string name = say("no. %1", number);
    while (taken(name)) {
        name = say("no. %1", ++number);
    }
    return name;
}

}  // namespace

Hole nextHole(const Bracket& bracket, Units units) {
    Hole added;
    added.name = freeHoleName(bracket);
    added.at = bracket.holes.back().at;
    Eigen::Vector3d step(0, 0, units == Units::inch ? kMetresPerInch : 0.025);
    if (bracket.holes.size() > 1) {
        const Eigen::Vector3d along = added.at - bracket.holes[bracket.holes.size() - 2].at;
        step = along.norm() > kApart ? along : step;
    }
    const auto onAnother = [&](const Hole& hole) { return (hole.at - added.at).norm() < kApart; };
    do {
        added.at += step;
    } while (std::ranges::any_of(bracket.holes, onAnother));
    return added;
}

}  // namespace bolthole
