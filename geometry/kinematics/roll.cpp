#include "geometry/kinematics/roll.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr double kFighting = 0.5;  // of the largest mismatch

// Turning rate of the axle for each unit of roll, car frame: the three rates about the three axes of
// R = Rz(yaw) Ry(pitch) Rx(roll).
Eigen::Vector3d turningRate(const AxlePose& pose, const AxleRates& rates) {
    const double sinYaw = std::sin(pose.yaw);
    const double cosYaw = std::cos(pose.yaw);
    const double sinPitch = std::sin(pose.pitch);
    const double cosPitch = std::cos(pose.pitch);
    const Eigen::Vector3d rollAxis(cosYaw * cosPitch, sinYaw * cosPitch, -sinPitch);
    const Eigen::Vector3d pitchAxis(-sinYaw, cosYaw, 0.0);
    return rollAxis + rates.pitch * pitchAxis + rates.yaw * Eigen::Vector3d::UnitZ();
}

RollFigures imposedOnly(double travel, double roll) {
    RollFigures figures;
    figures.travel = travel;
    figures.roll = roll;
    return figures;
}

}  // namespace

double headingOf(const AxlePose& pose) {
    const Eigen::Vector3d toTheLeft = pose.rotation().col(1);
    return std::atan2(-toTheLeft.x(), toTheLeft.y());
}

// With v = (dx, dy, 0) and w the turning rate, a point at (X, Z) from the axle's center moves sideways at
// dy + w_z X - w_x Z. Where that is zero lies the roll axis, of slope w_z / w_x; straight above the axle,
// square to the ground (X, Z) = h (-sin g, cos g), it is at h = dy / (w_x cos g + w_z sin g). After
// Gillespie, "Fundamentals of Vehicle Dynamics", ch. 7, and Milliken & Milliken, "Race Car Vehicle Dynamics",
// ch. 17 (both from memory, no page).
RollFigures RollReader::read(const AxleSolver& solver, double travel, double roll) const {
    Station station;
    ground_.read(solver, travel, station);
    const AxleRates rates = solver.rollRates();
    const Eigen::Vector3d turn = turningRate(station.pose, rates);
    RollFigures figures = imposedOnly(travel, roll);
    figures.usable = true;
    figures.pose = station.pose;
    figures.bind = solver.bind();
    figures.center = tireRadius_ + rates.y;
    const GroundLine& ground = station.ground;
    figures.squareCenter = tireRadius_ + rates.y / (turn.x() * ground.alongX + turn.z() * ground.alongZ);
    figures.steer = rates.yaw;
    figures.heading = turn.z();
    figures.axisAngle = std::atan2(turn.z(), turn.x()) - station[Figure::ground];
    return figures;
}

namespace {

// Rows first, first + direction, ... outward from ride; the first out of reach ends it.
MoveReport rollOutward(AxleSolver solver, const RollReader& reader, const RollRange& range, int direction,
                       std::vector<RollFigures>& rows) {
    MoveReport report;
    report.stop = Stop::reached;
    const int middle = (range.rows - 1) / 2;
    for (int row = middle; row >= 0 && row < range.rows; row += direction) {
        const double roll = range.rollOfRow(row);
        if (report.usable()) {
            report = solver.moveTo(0.0, roll);
        }
        rows[static_cast<std::size_t>(row)] =
            report.usable() ? reader.read(solver, 0.0, roll) : imposedOnly(0.0, roll);
    }
    return report;
}

void travelOutward(AxleSolver solver, const RollReader& reader, const TravelRange& range, int first,
                   int direction, std::vector<RollFigures>& rows) {
    bool reached = true;
    for (int row = first; row >= 0 && row < range.steps; row += direction) {
        const double travel = travelOfRow(range, row);
        reached = reached && solver.moveTo(travel).usable() && solver.bind() <= kLargestTravelBind;
        rows[static_cast<std::size_t>(row)] =
            reached ? reader.read(solver, travel, 0.0) : imposedOnly(travel, 0.0);
    }
}

void setUnreached(const Car& car, const RollRange& range, RollTrace& trace) {
    trace.ride = imposedOnly(0.0, 0.0);
    for (int row = 0; row < range.rows; ++row) {
        trace.rows[static_cast<std::size_t>(row)] = imposedOnly(0.0, range.rollOfRow(row));
    }
    for (int row = 0; row < car.travel.steps; ++row) {
        trace.travel[static_cast<std::size_t>(row)] = imposedOnly(travelOfRow(car.travel, row), 0.0);
    }
}

}  // namespace

void computeRollTrace(const Car& car, const RollRange& range, RollTrace& trace) {
    AxleSolver solver(buildLinkage(car), Drive::roll);
    const RollReader reader(car);
    trace.rows.resize(static_cast<std::size_t>(range.rows));
    trace.travel.resize(static_cast<std::size_t>(car.travel.steps));
    trace.assembly = solver.assemble();
    trace.leftEnd = trace.rightEnd = trace.assembly;
    if (!trace.assembly.usable()) {
        setUnreached(car, range, trace);
        return;
    }
    trace.ride = reader.read(solver, 0.0, 0.0);
    trace.leftEnd = rollOutward(solver, reader, range, +1, trace.rows);
    trace.rightEnd = rollOutward(solver, reader, range, -1, trace.rows);
    int upward = 0;
    while (upward < car.travel.steps && travelOfRow(car.travel, upward) < 0) {
        ++upward;
    }
    travelOutward(solver, reader, car.travel, upward, +1, trace.travel);
    travelOutward(solver, reader, car.travel, upward - 1, -1, trace.travel);
}

RollTrace computeRollTrace(const Car& car, const RollRange& range) {
    RollTrace trace;
    computeRollTrace(car, range, trace);
    return trace;
}

RollFigures solveRoll(const Car& car, double travel, double roll) {
    AxleSolver solver(buildLinkage(car), Drive::roll);
    if (!solver.assemble().usable() || !solver.moveTo(travel, roll).usable()) {
        return imposedOnly(travel, roll);
    }
    return RollReader(car).read(solver, travel, roll);
}

std::string steerWord(double steer) {
    if (std::isnan(steer)) {
        return "";
    }
    if (std::abs(steer) < kNeutralSteer) {
        return say("no roll steer");
    }
    return steer > 0 ? say("roll oversteer") : say("roll understeer");
}

namespace {

// Of one constraint, by the table of equations in geometry/kinematics/linkage.h; of a pivot the larger of its
// two.
double mismatchOf(const Constraint& link, const AxlePose& pose) {
    const Eigen::Vector3d gap = pose.carry(link.onAxle) - link.onChassis;
    switch (link.kind) {
        case LinkKind::rod:
            return gap.norm() - link.length;
        case LinkKind::pivot:
            return std::abs(gap.x()) > std::abs(gap.z()) ? gap.x() : gap.z();
        case LinkKind::slider:
            return gap.z();
        case LinkKind::guide:
            return gap.y();
    }
    return 0.0;
}

}  // namespace

std::vector<LinkMismatch> fightingLinks(const Linkage& linkage, const AxlePose& pose) {
    std::vector<LinkMismatch> links;
    double largest = kFits;
    for (std::size_t index = 0; index < linkage.constraints.size(); ++index) {
        const double mismatch = mismatchOf(linkage.constraints[index], pose);
        links.push_back({static_cast<int>(index), mismatch});
        largest = std::max(largest, std::abs(mismatch));
    }
    std::erase_if(links, [largest](const LinkMismatch& link) {
        return std::abs(link.mismatch) <= kFighting * largest;
    });
    std::ranges::stable_sort(links, [](const LinkMismatch& a, const LinkMismatch& b) {
        return std::abs(a.mismatch) > std::abs(b.mismatch);
    });
    return links;
}

std::string constraintWords(const Constraint& constraint, const Car& car) {
    const std::string& name = car.links[static_cast<std::size_t>(constraint.link)].name;
    switch (constraint.side) {
        case Side::left:
            return say("%1 (left)", name);
        case Side::right:
            return say("%1 (right)", name);
        default:
            return name;
    }
}

std::string describeRollEnd(const MoveReport& report, const Car& car) {
    if (report.stop != Stop::outOfReach) {
        return report.stop == Stop::underHeld ? describe(report.freedom) : std::string();
    }
    const Linkage linkage = buildLinkage(car);
    const std::string who =
        report.constraint < 0
            ? say("a link")
            : say("link '%1'",
                  constraintWords(linkage.constraints[static_cast<std::size_t>(report.constraint)], car));
    const std::string roll = withUnit(fineFigureText(std::abs(report.roll), Quantity::angle, car.units),
                                      Quantity::angle, car.units);
    return report.roll < 0 ? say("%1 stops roll at %2 of body roll to the right", who, roll)
                           : say("%1 stops roll at %2 of body roll to the left", who, roll);
}

}  // namespace bolthole
