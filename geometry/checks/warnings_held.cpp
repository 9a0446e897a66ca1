#include "geometry/checks/warnings_held.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

/// What is left of a link's equations at a pose, m; the larger where it has two.
double mismatch(const Constraint& link, const AxlePose& pose) {
    const Eigen::Vector3d span = pose.carry(link.onAxle) - link.onChassis;
    switch (link.kind) {
        case LinkKind::rod:
            return std::abs(span.norm() - link.length);
        case LinkKind::pivot:
            return std::max(std::abs(span.x()), std::abs(span.z()));
        case LinkKind::slider:
            return std::abs(span.z());
        case LinkKind::guide:
            break;
    }
    return std::abs(span.y());
}

struct Misfit {
    double size = 0;    // m
    double travel = 0;  // m
    int link = -1;
};

Misfit largestMisfit(const Car& car, const Trace& trace) {
    const Linkage linkage = buildLinkage(car);
    Misfit worst;
    for (const Station& station : trace.stations) {
        for (const Constraint& link : linkage.constraints) {
            const double size = station.usable ? mismatch(link, station.pose) : 0;
            if (size > worst.size) {
                worst = {size, station[Figure::travel], link.link};
            }
        }
    }
    return worst;
}

bool works(const Link& link, double radius, Freedom freedom) {
    switch (freedom) {
        case Freedom::pitch:
            return link.kind == LinkKind::slider || link.kind == LinkKind::pivot ||
                   roleOf(link, radius) == Role::upper;
        case Freedom::foreAft:
            return roleOf(link, radius) == Role::lower;
        case Freedom::yaw:
            return link.side != Side::center;
        default:
            return roleOf(link, radius) == Role::crosswise;
    }
}

}  // namespace

FieldId fieldOfLink(const Car& car, int link) {
    const Link* found = findLink(car, link);
    return found == nullptr ? FieldId{}
                            : FieldId{.field = Field::holeAt,
                                      .link = link,
                                      .end = End::chassis,
                                      .hole = found->chassis.use,
                                      .axis = 0};
}

int linkFor(const Car& car, Freedom freedom) {
    const double radius = car.rearTireRadius;
    auto found =
        std::ranges::find_if(car.links, [&](const Link& link) { return works(link, radius, freedom); });
    if (found == car.links.end()) {
        found = std::ranges::find_if(
            car.links, [&](const Link& link) { return roleOf(link, radius) != Role::crosswise; });
    }
    const auto index = static_cast<int>(found - car.links.begin());
    return std::min(index, static_cast<int>(car.links.size()) - 1);
}

void addBindWarning(const Car& car, const Trace& trace, std::vector<Warning>& warnings) {
    if (!(trace.largestBind > kWorthSayingBind)) {
        return;
    }
    const Misfit worst = largestMisfit(car, trace);
    const auto length = [&](double value) {
        return withUnit(fineFigureText(std::abs(value), Quantity::length, car.units), Quantity::length,
                        car.units);
    };
    warnings.push_back(
        {linkPath(worst.link),
         fieldOfLink(car, worst.link),
         {Severity::wrong, say("the links hold the axle more than once"),
          say(worst.travel < 0 ? phrase("at %1 of droop %2 misfits by %3; bushings and brackets have to "
                                        "give that, or the links bind")
                               : phrase("at %1 of bump %2 misfits by %3; bushings and brackets have to "
                                        "give that, or the links bind"),
              length(worst.travel), linkWords(car, worst.link), length(worst.size))}});
}

}  // namespace bolthole
