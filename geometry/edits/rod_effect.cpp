#include "geometry/edits/rod_effect.h"

#include "geometry/edits/edit.h"
#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/linkage.h"
#include "geometry/kinematics/trace.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

/// A car in which `rod` stands by itself, and its index there.
struct Apart {
    Car car;
    std::size_t link = 0;
};

Apart takenApart(const Car& car, const RodSide& rod) {
    Apart apart{withoutKept(car), static_cast<std::size_t>(rod.link)};
    // What is fitted to its holes stands as it is now: only the one rod is to change.
    for (Link& link : apart.car.links) {
        if (link.kind == LinkKind::rod && !link.length) {
            link.length = builtLength(link);
        }
    }
    Link& link = apart.car.links[apart.link];
    if (link.side != Side::both) {
        return apart;
    }
    Link right = link;
    right.side = Side::right;
    for (const End end : {End::chassis, End::axle}) {
        for (Hole& hole : right.bracket(end).holes) {
            hole.at = mirrored(hole.at);
        }
    }
    link.side = Side::left;
    apart.car.links.insert(apart.car.links.begin() + rod.link + 1, std::move(right));
    apart.link += rod.side == Side::right ? 1 : 0;
    return apart;
}

struct Standing {
    MoveReport report;
    AxlePose pose;
    double bind = 0;
};

Standing standing(const Car& car) {
    AxleSolver solver(buildLinkage(car), Drive::roll);
    Standing result{solver.assemble(), {}, 0};
    if (result.report.usable()) {
        result.pose = solver.pose();
        result.bind = solver.bind();
    }
    return result;
}

}  // namespace

std::vector<RodSide> rodSides(const Car& car) {
    std::vector<RodSide> rods;
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        const Link& link = car.links[index];
        const int number = static_cast<int>(index);
        if (link.kind != LinkKind::rod) {
            continue;
        }
        if (link.side == Side::both) {
            rods.push_back({number, Side::left});
            rods.push_back({number, Side::right});
        } else {
            rods.push_back({number, link.side});
        }
    }
    return rods;
}

RodEffectResult rodEffect(const Car& car, const RodSide& rod, double change, Units units) {
    Apart apart = takenApart(car, rod);
    const Standing before = standing(apart.car);
    if (!before.report.usable()) {
        return {std::nullopt, describe(before.report, apart.car, units)};
    }
    *apart.car.links[apart.link].length += change;
    if (!(*apart.car.links[apart.link].length > 0)) {
        return {std::nullopt, say("a rod can't be that short")};
    }
    const Standing after = standing(apart.car);
    if (!after.report.usable()) {
        return {std::nullopt, describe(after.report, apart.car, units)};
    }
    return {RodEffect{.pinion = before.pose.pitch - after.pose.pitch,
                      .yaw = after.pose.yaw - before.pose.yaw,
                      .forward = after.pose.x - before.pose.x,
                      .left = after.pose.y - before.pose.y,
                      .bind = after.bind - before.bind},
            {}};
}

std::optional<double> lengthDifference(const Car& car, int link) {
    if (!isHalfOfPair(car, link)) {
        return std::nullopt;
    }
    const Link& one = car.links[static_cast<std::size_t>(link)];
    for (const Link& other : car.links) {
        const bool isPartner = other.name == one.name && other.kind == one.kind && other.side != one.side &&
                               (other.side == Side::left || other.side == Side::right);
        if (isPartner && one.kind == LinkKind::rod) {
            const double difference = builtLength(one) - builtLength(other);
            return one.side == Side::left ? difference : -difference;
        }
    }
    return std::nullopt;
}

}  // namespace bolthole
