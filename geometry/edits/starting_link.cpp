#include "geometry/edits/starting_link.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "geometry/car/starting_numbers.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

// The car the patterns were laid out for, in: wheelbase 108, rear tire radius 13 1/2.
constexpr double kWheelbase = 108 * kMetresPerInch;
constexpr double kRadius = 13.5 * kMetresPerInch;
constexpr double kUsualOut = 15.5;  // in, a pair's half distance

struct PointInInches {
    double forward;
    double left;
    double up;
};

/// In inches of that car.
struct PatternRow {
    LinkPattern pattern;
    std::string_view name;
    LinkKind kind;
    Side side;
    std::string_view front;
    PointInInches chassis;
    std::string_view rear;
    PointInInches axle;
};

constexpr std::array kPatterns{
    PatternRow{LinkPattern::lower,
               phrase("lower"),
               LinkKind::rod,
               Side::both,
               phrase("front"),
               {20.5, 17.5, 10.5},
               phrase("bracket"),
               {0.5, 19.5, 8.5}},
    PatternRow{LinkPattern::parallelLower,
               phrase("lower"),
               LinkKind::rod,
               Side::both,
               phrase("front"),
               {20.5, kUsualOut, 10},
               phrase("bracket"),
               {1, kUsualOut, 8.25}},
    PatternRow{LinkPattern::splayedUpper,
               phrase("upper"),
               LinkKind::rod,
               Side::both,
               phrase("front"),
               {12.5, 16, 18},
               phrase("ear"),
               {1, 6, 19.25}},
    PatternRow{LinkPattern::parallelUpper,
               phrase("upper"),
               LinkKind::rod,
               Side::both,
               phrase("front"),
               {13, kUsualOut, 16},
               phrase("bracket"),
               {1, kUsualOut, 17.25}},
    PatternRow{LinkPattern::thirdLink,
               phrase("third link"),
               LinkKind::rod,
               Side::center,
               phrase("front"),
               {15, 0, 18},
               phrase("bracket"),
               {1, 0, 19.5}},
    PatternRow{LinkPattern::ladderBar,
               phrase("ladder bar"),
               LinkKind::pivot,
               Side::both,
               phrase("front"),
               {34, 12, 8.5},
               phrase("arm"),
               {34, 12, 8.5}},
    PatternRow{LinkPattern::torqueArm,
               phrase("torque arm"),
               LinkKind::slider,
               Side::center,
               phrase("front"),
               {52, 0, 12},
               phrase("arm"),
               {52, 0, 12}},
    PatternRow{LinkPattern::trackBar,
               phrase("track bar"),
               LinkKind::rod,
               Side::center,
               phrase("frame"),
               {-5, 16, 12.5},
               phrase("housing"),
               {-5, -15.5, 12.5}},
    PatternRow{LinkPattern::wattsGuide,
               phrase("Watts guide"),
               LinkKind::guide,
               Side::center,
               phrase("center"),
               {-5, 0, 13.25},
               phrase("center"),
               {-5, 0, 13.25}},
};
static_assert(kPatterns.size() == static_cast<std::size_t>(LinkPattern::count));

double along(const Car& car, double inches) {
    return asTaped(inches * kMetresPerInch * car.wheelbase / kWheelbase, car.units);
}

double upright(const Car& car, double inches) {
    return asTaped(inches * kMetresPerInch * car.rearTireRadius / kRadius, car.units);
}

Bracket oneHole(std::string_view name, const Eigen::Vector3d& at) {
    return {{Hole{-1, say(name), at}}, 0};
}

Bracket bracketAt(const Car& car, std::string_view name, const PointInInches& place) {
    return oneHole(name, {along(car, place.forward), along(car, place.left), upright(car, place.up)});
}

std::string freeName(const Car& car, std::string_view plain) {
    std::string name = say(plain);
    const auto taken = [&] {
        return std::ranges::any_of(car.links, [&](const Link& link) { return link.name == name; });
    };
    for (int number = 2; taken(); ++number) {
        name = say("%1 %2", say(plain), number);
    }
    return name;
}

bool isArm(LinkKind kind) {
    return kind == LinkKind::pivot || kind == LinkKind::slider;
}

/// The points of a pattern in place of the link's own.
void startAnew(const Car& car, LinkPattern pattern, Link& link) {
    const Link fresh = startingLink(car, pattern);
    link.side = fresh.side;
    link.chassis = fresh.chassis;
    link.axle = fresh.axle;
}

void moveSideways(Link& link, const auto& moved) {
    for (const End end : {End::chassis, End::axle}) {
        for (Hole& hole : link.bracket(end).holes) {
            hole.at.y() = moved(hole.at.y());
        }
    }
}

/// Coordinates across the car that were put in are starting numbers.
void startWhereMoved(Link& moved, const Link& link) {
    for (const End end : {End::chassis, End::axle}) {
        std::vector<Hole>& holes = moved.bracket(end).holes;
        for (std::size_t hole = 0; hole < holes.size(); ++hole) {
            if (link.bracket(end).holes[hole].at.y() == 0) {
                holes[hole].uncertainties.setOrigin(Field::holeAt, 1, Origin::starting);
            }
        }
    }
}

}  // namespace

double asTaped(double length, Units units) {
    const double unit = units == Units::inch ? 6.35 : 5.0;  // mm
    // Whole hundredths, so that the car file shows no more: a quarter inch is 6.35 mm exactly.
    const double hundredths = std::round(std::round(length / kMetresPerMillimetre / unit) * unit * 100);
    return fromMillimetres(hundredths / 100);
}

Link startingLink(const Car& car, LinkPattern pattern) {
    const PatternRow& row = kPatterns[static_cast<std::size_t>(pattern)];
    Link link;
    link.name = freeName(car, row.name);
    link.kind = row.kind;
    link.side = row.side;
    link.chassis = bracketAt(car, row.front, row.chassis);
    link.axle = bracketAt(car, row.rear, row.axle);
    startFrom(link);
    return link;
}

Link turnedInto(const Car& car, const Link& link, LinkKind kind) {
    Link turned = link;
    if (kind == link.kind) {
        return turned;
    }
    turned.kind = kind;
    turned.length.reset();
    turned.adjuster.reset();
    turned.rodEndLimit.reset();
    turned.role.reset();
    if (kind == LinkKind::guide) {
        startAnew(car, LinkPattern::wattsGuide, turned);
    } else if (link.kind == LinkKind::guide) {
        startAnew(car,
                  kind == LinkKind::rod     ? LinkPattern::trackBar
                  : kind == LinkKind::pivot ? LinkPattern::ladderBar
                                            : LinkPattern::torqueArm,
                  turned);
    } else if (isArm(kind)) {
        turned.axle = oneHole(phrase("arm"), link.chassis.inUse().at);
        turned.axle.holes.front().uncertainties = link.chassis.inUse().uncertainties;
    } else {
        const Eigen::Vector3d& front = link.chassis.inUse().at;
        turned.axle = oneHole(phrase("bracket"), {along(car, 0.5), front.y(), upright(car, 8.5)});
        startFrom(turned.axle.holes.front());
    }
    return turned;
}

Link movedTo(const Car& car, const Link& link, Side side) {
    Link moved = link;
    moved.side = side;
    const bool wasRight = link.side == Side::right;
    const bool isRight = side == Side::right;
    const bool crosswise = roleOf(link, car.rearTireRadius) == Role::crosswise;
    if (side == Side::center && !crosswise) {
        moveSideways(moved, [](double) { return 0.0; });
    } else if (link.side == Side::center && !crosswise) {
        const double out = along(car, kUsualOut);
        moveSideways(moved, [&](double y) { return (isRight ? -1 : 1) * (y == 0 ? out : std::abs(y)); });
        startWhereMoved(moved, link);
    } else if (wasRight != isRight && side != Side::center && link.side != Side::center) {
        moveSideways(moved, [](double y) { return y == 0 ? 0.0 : -y; });
    }
    return moved;
}

}  // namespace bolthole
