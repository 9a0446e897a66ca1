#include "geometry/search/target_reader.h"

#include <algorithm>
#include <cmath>

#include "geometry/plates/plate_room.h"
#include "geometry/search/target_chance.h"

namespace bolthole {

namespace {

constexpr double kRoundingRoom = 1e-7;  // m: a place that is rounded to whole nanometers keeps the rules
constexpr double kFarWall = 0.06;       // m; twice as far as a step goes
constexpr double kLeastAway = 1e-6;     // m: on a hole's center no direction leads away from it

double figureOf(const Station& station, Figure figure) {
    return station.usable ? station[figure] : kAbsent;
}

double jointOf(const Station& station) {
    return station.usable ? std::fmax(station[Figure::frontJoint], station[Figure::rearJoint]) : 0.0;
}

}  // namespace

TargetReader::TargetReader(const Car& car, LengthTreatment treatment, const HoleUse& use, double pinionNow,
                           bool hasDriveline)
    : bolted_(car, treatment), use_(use), pinionNow_(pinionNow), hasDriveline_(hasDriveline) {}

bool TargetReader::figures(TargetFigures& figures) {
    if (!bolted_.bolt(use_)) {
        return false;
    }
    AxleSolver ride(bolted_.linkage(), Drive::travel);
    if (!ride.assemble().usable()) {
        return false;
    }
    FigureReader reader(bolted_.car());
    reader.setRide(ride.pose());
    std::array<Station, 3> stations;
    reader.read(ride, 0, stations[0]);
    const std::array travels{-bolted_.car().travel.droop, bolted_.car().travel.bump};
    for (std::size_t end = 0; end < travels.size(); ++end) {
        AxleSolver solver = ride;
        if (solver.moveTo(travels[end]).usable()) {
            reader.read(solver, travels[end], stations[end + 1]);
        }
    }
    const double distance = stations[0][Figure::icX];
    figures = {std::isnan(distance) ? 0.0 : 1 / distance,
               stations[0][Figure::icZ],
               stations[0][Figure::antiSquat],
               figureOf(stations[2], Figure::antiSquat) - figureOf(stations[1], Figure::antiSquat),
               stations[0][Figure::pinion] - pinionNow_,
               hasDriveline_ ? std::max({jointOf(stations[0]), jointOf(stations[1]), jointOf(stations[2])})
                             : kAbsent};
    return true;
}

namespace {

TargetReader readerWithHole(const Car& car, const PlanHole& edit, double pinionNow) {
    const Car drilled = *withHoleAdded(withPinion(car), edit).car;
    return {drilled, edit.lengths, useWithNewHole(drilled, edit), pinionNow, car.driveline.has_value()};
}

}  // namespace

HolePlacement::HolePlacement(const Car& car, const PlanHole& edit, double pinionNow)
    : bracket_(car.links[static_cast<std::size_t>(edit.link)].bracket(edit.end)),
      edge_(std::max(bracket_.plate->edgeDistance, bracket_.plate->holeDiameter / 2) + kRoundingRoom),
      spacing_(bracket_.plate->holeSpacing * bracket_.plate->holeDiameter + kRoundingRoom),
      reader_(readerWithHole(car, edit, pinionNow)) {
    for (const int link : linksToDrill(car, edit.link)) {
        const Bracket& bracket = car.links[static_cast<std::size_t>(link)].bracket(edit.end);
        FieldId id{.field = Field::holeAt,
                   .link = link,
                   .end = edit.end,
                   .hole = static_cast<int>(bracket.holes.size()),
                   .axis = 0};
        across_.push_back(id);
        id.axis = 2;
        up_.push_back(id);
    }
}

bool HolePlacement::figures(const Eigen::Vector2d& at, TargetFigures& figures) {
    for (const FieldId& id : across_) {
        reader_.setNumber(id, at.x());
    }
    for (const FieldId& id : up_) {
        reader_.setNumber(id, at.y());
    }
    return reader_.figures(figures);
}

// The distance to a side and to a hole's center is convex in the place: straightened, it is never more than
// it is. A side's straightened wall has the whole side behind it, so that no step within it leads across.
void HolePlacement::walls(const Eigen::Vector2d& at, std::vector<HalfPlane>& walls) const {
    const auto keepFrom = [&](const Eigen::Vector2d& point, double distance) {
        const Eigen::Vector2d away = at - point;
        if (away.norm() > kLeastAway && away.norm() - distance < kFarWall) {
            const Eigen::Vector2d inward = away.normalized();
            walls.push_back({inward, inward.dot(point) + distance});
        }
    };
    const std::vector<Eigen::Vector2d>& corners = bracket_.plate->corners;
    for (std::size_t corner = 0; corner < corners.size(); ++corner) {
        keepFrom(edgeRoom({corners[corner], corners[(corner + 1) % corners.size()]}, at).nearest, edge_);
    }
    for (const Hole& hole : bracket_.holes) {
        keepFrom(inSideView(hole.at), spacing_);
    }
}

bool HolePlacement::isAllowed(const Eigen::Vector2d& at) const {
    const EdgeRoom room = edgeRoom(bracket_.plate->corners, at);
    return room.inside && room.distance >= edge_ - kRoundingRoom / 2 &&
           holeRoom(bracket_, at, -1).distance >= spacing_ - kRoundingRoom / 2;
}

LengthRange adjusterRange(const Link& rod) {
    const double now = builtLength(rod);
    const Adjuster& adjuster = *rod.adjuster;
    std::optional<double> longest = adjuster.longest;
    if (const std::optional<double> held = engagementAt(rod, now); held && adjuster.leastEngagement) {
        const double byThread = now + (*held - *adjuster.leastEngagement) * adjuster.threadedEnds;
        longest = std::min(longest.value_or(byThread), byThread);
    }
    return {std::min(now, adjuster.shortest.value_or(now - kFreeAdjustment)),
            std::max(now, longest.value_or(now + kFreeAdjustment)),
            adjuster.shortest.has_value() && longest.has_value()};
}

LengthPlacement::LengthPlacement(const Car& car, int link, const LengthRange& range, double pinionNow)
    : id_{.field = Field::linkLength, .link = link},
      range_(range),
      reader_(withPinion(car), LengthTreatment::keep, holesInUse(car), pinionNow, car.driveline.has_value()) {
}

bool LengthPlacement::figures(const Eigen::Vector2d& at, TargetFigures& figures) {
    reader_.setNumber(id_, at.x());
    return reader_.figures(figures);
}

void LengthPlacement::walls(const Eigen::Vector2d&, std::vector<HalfPlane>& walls) const {
    walls.push_back({Eigen::Vector2d::UnitX(), range_.shortest});
    walls.push_back({-Eigen::Vector2d::UnitX(), -range_.longest});
}

bool LengthPlacement::isAllowed(const Eigen::Vector2d& at) const {
    return at.x() >= range_.shortest - kRoundingRoom && at.x() <= range_.longest + kRoundingRoom;
}

}  // namespace bolthole
