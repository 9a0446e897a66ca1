#include "tests/support/car_generator.h"

#include <utility>

namespace bolthole {

namespace {

template <typename Change>
void forEachHole(Car& car, const Change& change) {
    for (Link& link : car.links) {
        for (const End end : {End::chassis, End::axle}) {
            for (Hole& hole : link.bracket(end).holes) {
                change(link, hole.at);
            }
        }
    }
}

}  // namespace

bool isExactlyHeld(Layout layout) {
    switch (layout) {
        case Layout::triangulated:
        case Layout::apart:
        case Layout::threeLink:
        case Layout::torqueArm:
        case Layout::wattsThreeLink:
            return true;
        default:
            return false;
    }
}

double CarGenerator::between(double low, double high) {
    // 53 random bits: std::uniform_real_distribution differs between standard libraries.
    return low + (high - low) * static_cast<double>(random_() >> 11U) * 0x1p-53;
}

Eigen::Vector3d CarGenerator::within(const Eigen::Vector3d& low, const Eigen::Vector3d& high) {
    const double x = between(low.x(), high.x());
    const double y = between(low.y(), high.y());
    return {x, y, between(low.z(), high.z())};
}

Car CarGenerator::draw(Layout layout) {
    Car car;
    car.title = "Generated";
    car.wheelbase = between(2.4, 3.0);
    car.rearTireRadius = between(0.30, 0.38);
    car.frontTireRadius = between(0.29, 0.34);
    car.cornerWeights = {between(350, 500), between(350, 500), between(250, 450), between(250, 450)};
    car.cgHeight = between(0.45, 0.62);
    car.travel.bump = 0.09;
    car.travel.droop = 0.09;
    addLinks(car, layout);
    car.driveline = driveline(car.rearTireRadius);
    return car;
}

void CarGenerator::addLinks(Car& car, Layout layout) {
    const double radius = car.rearTireRadius;
    switch (layout) {
        case Layout::threeLink:
            car.links = {lower(), thirdLink(radius), trackBar(radius)};
            return;
        case Layout::torqueArm:
            car.links = {lower(), slider(radius), guide(radius)};
            return;
        case Layout::wattsThreeLink:
            car.links = {lower(), thirdLink(radius), guide(radius)};
            return;
        case Layout::ladderGuide:
            car.links = {pivot(radius), guide(radius)};
            return;
        default:
            addFourLinks(car, layout);
    }
}

void CarGenerator::addFourLinks(Car& car, Layout layout) {
    const double radius = car.rearTireRadius;
    const bool splayed =
        layout == Layout::triangulated || layout == Layout::apart || layout == Layout::triangulatedTrackBar;
    car.links = {lower(), upper(radius, splayed)};
    if (!splayed) {
        for (Link& link : car.links) {
            link.axle.holes[0].at.y() = link.chassis.holes[0].at.y();
        }
    }
    if (layout == Layout::apart) {
        setApart(car);
    } else if (layout == Layout::parallelGuide) {
        car.links.push_back(guide(radius));
    } else if (layout == Layout::parallelTrackBar || layout == Layout::triangulatedTrackBar) {
        car.links.push_back(trackBar(radius));
    }
}

Link CarGenerator::lower() {
    return makeLink(
        "lower", LinkKind::rod, Side::both,
        {within({0.42, 0.38, 0.19}, {0.70, 0.50, 0.30}), within({-0.02, 0.42, 0.16}, {0.05, 0.55, 0.25})});
}

Link CarGenerator::upper(double radius, bool splayed) {
    const double inner = splayed ? 0.06 : 0.30;
    const double outer = splayed ? 0.20 : 0.45;
    return makeLink("upper", LinkKind::rod, Side::both,
                    {within({0.24, 0.38, radius + 0.04}, {0.45, 0.50, radius + 0.18}),
                     within({-0.06, inner, radius + 0.09}, {0.04, outer, radius + 0.20})});
}

Link CarGenerator::thirdLink(double radius) {
    return makeLink("third link", LinkKind::rod, Side::center,
                    {within({0.30, -0.08, radius + 0.05}, {0.50, 0.08, radius + 0.15}),
                     within({-0.05, -0.08, radius + 0.10}, {0.04, 0.08, radius + 0.20})});
}

Link CarGenerator::trackBar(double radius) {
    return makeLink("track bar", LinkKind::rod, Side::center,
                    {within({-0.16, 0.42, radius - 0.04}, {-0.12, 0.50, radius + 0.06}),
                     within({-0.16, -0.55, radius - 0.05}, {-0.12, -0.42, radius + 0.03})});
}

Link CarGenerator::guide(double radius) {
    const Eigen::Vector3d at = within({-0.15, 0, radius - 0.05}, {-0.10, 0, radius + 0.03});
    return makeLink("guide", LinkKind::guide, Side::center, {at, at});
}

Link CarGenerator::slider(double radius) {
    const Eigen::Vector3d at = within({0.7, 0, radius - 0.08}, {1.1, 0, radius + 0.05});
    return makeLink("torque arm", LinkKind::slider, Side::center, {at, at});
}

Link CarGenerator::pivot(double radius) {
    const Eigen::Vector3d at = within({0.8, 0.25, radius - 0.10}, {1.1, 0.45, radius + 0.02});
    return makeLink("ladder bar", LinkKind::pivot, Side::both, {at, at});
}

void CarGenerator::setApart(Car& car) {
    splitPairs(car);
    forEachHole(car, [this](const Link&, Eigen::Vector3d& at) {
        at += within({-0.025, -0.025, -0.025}, {0.025, 0.025, 0.025});
    });
}

Driveline CarGenerator::driveline(double radius) {
    Driveline line;
    line.pinionAngle = between(-0.02, 0.06);
    line.pinionJoint = within({0.25, -0.02, radius - 0.03}, {0.32, 0.02, radius + 0.02});
    line.outputAngle = between(0.0, 0.07);
    line.outputJoint = within({1.3, -0.02, radius + 0.02}, {1.7, 0.02, radius + 0.09});
    return line;
}

void CarGenerator::misbuild(Car& car, double share) {
    for (Link& link : car.links) {
        if (link.kind == LinkKind::rod) {
            link.length = holeDistance(link) * (1.0 + between(-share, share));
        }
    }
}

Link makeLink(std::string name, LinkKind kind, Side side, const Ends& ends) {
    Link link;
    link.name = std::move(name);
    link.kind = kind;
    link.side = side;
    link.chassis.holes = {Hole{-1, "front", ends.chassis}};
    link.axle.holes = {Hole{-1, "rear", ends.axle}};
    return link;
}

void splitPairs(Car& car) {
    std::vector<Link> links;
    for (const Link& link : car.links) {
        if (link.side != Side::both) {
            links.push_back(link);
            continue;
        }
        for (const Side side : {Side::left, Side::right}) {
            Link one = link;
            one.side = side;
            one.name += side == Side::left ? " left" : " right";
            const double sign = side == Side::left ? 1.0 : -1.0;
            one.chassis.holes[0].at.y() *= sign;
            one.axle.holes[0].at.y() *= sign;
            links.push_back(one);
        }
    }
    car.links = std::move(links);
}

void drillHoles(Car& car, int count, double step) {
    for (Link& link : car.links) {
        for (const End end : {End::chassis, End::axle}) {
            Bracket& bracket = link.bracket(end);
            const Eigen::Vector3d at = bracket.inUse().at;
            bracket.holes.clear();
            bracket.use = (count - 1) / 2;
            for (int hole = 0; hole < count; ++hole) {
                const Eigen::Vector3d up(0, 0, (hole - bracket.use) * step);
                bracket.holes.push_back({-1, "hole " + std::to_string(hole + 1), at + up});
            }
        }
    }
}

void mirror(Car& car) {
    forEachHole(car, [](const Link& link, Eigen::Vector3d& at) {
        if (link.side != Side::both) {
            at.y() = -at.y();
        }
    });
    for (Link& link : car.links) {
        if (link.side == Side::left || link.side == Side::right) {
            link.side = link.side == Side::left ? Side::right : Side::left;
        }
    }
    if (car.driveline) {
        car.driveline->pinionJoint.y() *= -1.0;
        car.driveline->outputJoint.y() *= -1.0;
    }
}

void shiftSideways(Car& car, double offset) {
    forEachHole(car, [offset](const Link&, Eigen::Vector3d& at) { at.y() += offset; });
    if (car.driveline) {
        car.driveline->pinionJoint.y() += offset;
        car.driveline->outputJoint.y() += offset;
    }
}

}  // namespace bolthole
