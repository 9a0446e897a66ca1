#include "widgets/state/drawn_points.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

const Station* drawnStation(const BenchState& state) {
    if (state.cursor.usable) {
        return &state.cursor;
    }
    const Station* nearest = state.trace.ride.usable ? &state.trace.ride : nullptr;
    double gap = std::numeric_limits<double>::infinity();
    for (const Station& station : state.trace.stations) {
        const double distance = std::abs(station[Figure::travel] - state.cursorTravel);
        if (station.usable && distance < gap) {
            gap = distance;
            nearest = &station;
        }
    }
    return nearest;
}

AxlePose drawnPose(const BenchState& state) {
    if (const Station* station = drawnStation(state)) {
        return station->pose;
    }
    AxlePose measured;
    measured.z = state.car.rearTireRadius;
    return measured;
}

QPointF carriedInto(ViewPlane plane, const AxlePose& pose, double rearTireRadius,
                    const Eigen::Vector3d& measured) {
    return inPlane(plane, pose.carry(measured - Eigen::Vector3d(0, 0, rearTireRadius)));
}

void DrawnPoints::rebuild(const BenchState& state, ViewPlane plane) {
    points.clear();
    links.clear();
    closestHoles = 1.0;
    const double radius = state.car.rearTireRadius;
    for (std::size_t index = 0; index < state.car.links.size(); ++index) {
        const Role role = roleOf(state.car.links[index], radius);
        addHoles(state, plane, static_cast<int>(index), role);
        addLink(state, plane, static_cast<int>(index), role);
    }
    if (const auto& driveline = state.car.driveline) {
        points.push_back({.id = {PointId::Kind::joint, -1, End::axle, -1},
                          .at = carriedInto(plane, drawnPose(state), radius, driveline->pinionJoint),
                          .inUse = true});
        points.push_back({.id = {PointId::Kind::joint, -1, End::chassis, -1},
                          .at = inPlane(plane, driveline->outputJoint),
                          .inUse = true});
    }
}

void DrawnPoints::addHoles(const BenchState& state, ViewPlane plane, int link, Role role) {
    const Link& part = state.car.links[static_cast<std::size_t>(link)];
    const AxlePose pose = drawnPose(state);
    const bool both = part.side == Side::both && plane != ViewPlane::side;
    for (const End end : {End::chassis, End::axle}) {
        const Bracket& bracket = part.bracket(end);
        const auto place = [&](const Eigen::Vector3d& at) {
            return end == End::axle ? carriedInto(plane, pose, state.car.rearTireRadius, at)
                                    : inPlane(plane, at);
        };
        for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
            const Eigen::Vector3d& at = bracket.holes[hole].at;
            if (hole > 0) {
                const QPointF way = inPlane(plane, at - bracket.holes[hole - 1].at);
                const double gap = std::hypot(way.x(), way.y());
                closestHoles = gap > 0 ? std::min(closestHoles, gap) : closestHoles;
            }
            DrawnPoint point{.id = {PointId::Kind::hole, link, end, static_cast<int>(hole)},
                             .at = place(at),
                             .inUse = static_cast<int>(hole) == bracket.use,
                             .role = role};
            points.push_back(point);
            if (both) {
                point.at = place(mirrored(at));
                point.mirrored = true;
                points.push_back(point);
            }
        }
    }
}

// A rod runs from hole to hole. An arm that is rigid with the axle meets the chassis in one point: it is
// drawn from the axle's line, wherever its own bends may be, to that point.
void DrawnPoints::addLink(const BenchState& state, ViewPlane plane, int link, Role role) {
    const Link& part = state.car.links[static_cast<std::size_t>(link)];
    const AxlePose pose = drawnPose(state);
    const bool arm = part.kind == LinkKind::pivot || part.kind == LinkKind::slider;
    const Eigen::Vector3d& axle = part.axle.inUse().at;
    const Eigen::Vector3d& chassis = part.chassis.inUse().at;
    const double radius = state.car.rearTireRadius;
    const Eigen::Vector3d root = arm ? Eigen::Vector3d(0, axle.y(), radius) : axle;
    const Eigen::Vector3d far = arm ? axle : chassis;
    const auto end = [&](const Eigen::Vector3d& at) {
        return arm ? carriedInto(plane, pose, radius, at) : inPlane(plane, at);
    };
    const bool side = plane == ViewPlane::side;
    if (part.side == Side::both) {
        links.push_back(
            {link, role, carriedInto(plane, pose, radius, mirrored(root)), end(mirrored(far)), true, side});
    }
    links.push_back({link, role, carriedInto(plane, pose, radius, root), end(far), false,
                     side && part.side == Side::right});
}

std::optional<Eigen::Vector3d> pointAt(const Car& car, const PointId& id) {
    if (id.kind == PointId::Kind::joint && car.driveline) {
        return id.end == End::axle ? car.driveline->pinionJoint : car.driveline->outputJoint;
    }
    if (id.kind != PointId::Kind::hole || id.link < 0 || id.hole < 0 ||
        static_cast<std::size_t>(id.link) >= car.links.size()) {
        return std::nullopt;
    }
    const auto& holes = car.links[static_cast<std::size_t>(id.link)].bracket(id.end).holes;
    if (static_cast<std::size_t>(id.hole) >= holes.size()) {
        return std::nullopt;
    }
    return holes[static_cast<std::size_t>(id.hole)].at;
}

QString pointName(const Car& car, const PointId& id) {
    if (id.kind == PointId::Kind::joint) {
        return id.end == End::axle ? tr("rear U-joint") : tr("front U-joint");
    }
    if (!pointAt(car, id)) {
        return {};
    }
    const Link& link = car.links[static_cast<std::size_t>(id.link)];
    const Hole& hole = link.bracket(id.end).holes[static_cast<std::size_t>(id.hole)];
    const QString name =
        tr("%1, %2 hole '%3'")
            .arg(QString::fromStdString(link.name), id.end == End::axle ? tr("axle") : tr("chassis"),
                 QString::fromStdString(hole.name));
    return hole.uncertainties.marks().empty() ? name : tr("%1, not measured").arg(name);
}

QString pointPlace(const Car& car, const PointId& id, NumberStyle style) {
    const std::optional<Eigen::Vector3d> at = pointAt(car, id);
    if (!at) {
        return {};
    }
    const auto text = [&](double value) {
        return QString::fromStdString(fieldText(value, Quantity::length, style));
    };
    const bool isMirrored =
        id.kind == PointId::Kind::hole && car.links[static_cast<std::size_t>(id.link)].side == Side::both;
    return tr("forward %1, height %2, %3 %4 %5")
        .arg(text(at->x()), text(at->z()), isMirrored ? tr("out") : tr("left"), text(at->y()),
             unitText(Quantity::length, style.units));
}

}  // namespace bolthole
