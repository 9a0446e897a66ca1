#include "widgets/side_points.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/entered_figures.h"
#include "widgets/unit_text.h"

namespace bolthole {

namespace {

constexpr double kNearIc = 2.2;  // m ahead of the axle: still in the first picture
constexpr double kFarIc = 8.0;   // m: beyond, "show all" leaves it to the edge marker

AxlePose poseOf(const BenchState& state) {
    if (const Station* station = drawnStation(state)) {
        return station->pose;
    }
    AxlePose measured;
    measured.z = state.car.rearTireRadius;
    return measured;
}

QPointF carried(const AxlePose& pose, double rearTireRadius, const Eigen::Vector3d& measured) {
    const Eigen::Vector3d at = pose.carry(measured - Eigen::Vector3d(0, 0, rearTireRadius));
    return {at.x(), at.z()};
}

void include(QRectF& box, double x, double z) {
    if (std::isfinite(x) && std::isfinite(z)) {
        box.setLeft(std::min(box.left(), x));
        box.setRight(std::max(box.right(), x));
        box.setTop(std::min(box.top(), z));
        box.setBottom(std::max(box.bottom(), z));
    }
}

QRectF tireAndLinks(const BenchState& state) {
    const double radius = state.car.rearTireRadius;
    QRectF box(QPointF(-radius, -0.06), QPointF(radius, 2 * radius));
    for (const Link& link : state.car.links) {
        for (const Bracket* bracket : {&link.axle, &link.chassis}) {
            for (const Hole& hole : bracket->holes) {
                include(box, hole.at.x(), hole.at.z());
            }
        }
    }
    return box;
}

}  // namespace

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

QPointF carriedToPicture(const BenchState& state, const Eigen::Vector3d& measured) {
    return carried(poseOf(state), state.car.rearTireRadius, measured);
}

Eigen::Vector3d measuredFromDrawn(const AxlePose& pose, double rearTireRadius, QPointF drawn,
                                  const Eigen::Vector3d& measured) {
    const Eigen::Vector3d center(0, 0, rearTireRadius);
    const Eigen::Vector3d now = pose.carry(measured - center);
    const Eigen::Vector3d wanted(drawn.x(), now.y(), drawn.y());
    const Eigen::Vector3d back =
        center + pose.rotation().transpose() * (wanted - Eigen::Vector3d(pose.x, pose.y, pose.z));
    return {back.x(), measured.y(), back.z()};
}

void SidePoints::rebuild(const BenchState& state) {
    points.clear();
    links.clear();
    closestHoles = 1.0;
    const AxlePose pose = poseOf(state);
    const double radius = state.car.rearTireRadius;
    for (std::size_t index = 0; index < state.car.links.size(); ++index) {
        const Link& link = state.car.links[index];
        const Role role = roleOf(link, radius);
        const int number = static_cast<int>(index);
        for (const End end : {End::chassis, End::axle}) {
            const Bracket& bracket = link.bracket(end);
            for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
                const Eigen::Vector3d& at = bracket.holes[hole].at;
                if (hole > 0) {
                    const Eigen::Vector3d way = at - bracket.holes[hole - 1].at;
                    const double gap = std::hypot(way.x(), way.z());
                    closestHoles = gap > 0 ? std::min(closestHoles, gap) : closestHoles;
                }
                points.push_back(
                    {.id = {PointId::Kind::hole, number, end, static_cast<int>(hole)},
                     .at = end == End::axle ? carried(pose, radius, at) : QPointF(at.x(), at.z()),
                     .inUse = static_cast<int>(hole) == bracket.use,
                     .role = role});
            }
        }
        const Eigen::Vector3d& axle = link.axle.inUse().at;
        const Eigen::Vector3d& chassis = link.chassis.inUse().at;
        const QPointF front(chassis.x(), chassis.z());
        if (link.side == Side::both) {
            links.push_back({number, role, carried(pose, radius, mirrored(axle)), front, true});
        }
        links.push_back({number, role, carried(pose, radius, axle), front, link.side == Side::right});
    }
    if (const auto& driveline = state.car.driveline) {
        points.push_back({.id = {PointId::Kind::joint, -1, End::axle, -1},
                          .at = carried(pose, radius, driveline->pinionJoint),
                          .inUse = true});
        points.push_back({.id = {PointId::Kind::joint, -1, End::chassis, -1},
                          .at = QPointF(driveline->outputJoint.x(), driveline->outputJoint.z()),
                          .inUse = true});
    }
}

QRectF linksBox(const BenchState& state) {
    QRectF box = tireAndLinks(state);
    const Station& ride = state.trace.ride;
    if (ride.usable && ride.icCarX > 0 && ride.icCarX < kNearIc && std::abs(ride.icCarZ) < 1.0) {
        include(box, ride.icCarX + 0.15, ride.icCarZ);
    } else {
        include(box, std::max(box.right(), 1.2), 0);
    }
    return box;
}

QRectF wholeBox(const BenchState& state) {
    QRectF box = tireAndLinks(state);
    include(box, state.car.wheelbase + state.car.frontTireRadius, 2 * state.car.frontTireRadius);
    include(box, 0, balanceOf(state.car).height);
    const Station& ride = state.trace.ride;
    if (ride.usable && std::abs(ride.icCarX) < kFarIc && std::abs(ride.icCarZ) < kFarIc / 2) {
        include(box, ride.icCarX, ride.icCarZ);
    }
    return box;
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
        return id.end == End::axle ? QStringLiteral("pinion joint") : QStringLiteral("output joint");
    }
    if (!pointAt(car, id)) {
        return {};
    }
    const Link& link = car.links[static_cast<std::size_t>(id.link)];
    const Hole& hole = link.bracket(id.end).holes[static_cast<std::size_t>(id.hole)];
    return QStringLiteral("%1, %2 hole '%3'")
        .arg(QString::fromStdString(link.name),
             id.end == End::axle ? QStringLiteral("axle") : QStringLiteral("chassis"),
             QString::fromStdString(hole.name));
}

QString pointPlace(const Car& car, const PointId& id, NumberStyle style) {
    const std::optional<Eigen::Vector3d> at = pointAt(car, id);
    if (!at) {
        return {};
    }
    const auto text = [&](double value) {
        return QString::fromStdString(fieldText(value, Quantity::length, style));
    };
    return QStringLiteral("%1 forward, %2 up, %3 out %4")
        .arg(text(at->x()), text(at->z()), text(at->y()), unitText(Quantity::length, style.units));
}

}  // namespace bolthole
