#include "geometry/kinematics/trace.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "geometry/units/say.h"
#include "geometry/units/text.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

double& figure(Station& station, Figure which) {
    return station.figures[static_cast<std::size_t>(which)];
}

// std::atan2(), which takes more than twice as long as std::atan(), only where that will not do: behind the
// up axis.
double angleUp(double up, double ahead) {
    return ahead > 0 ? std::atan(up / ahead) : std::atan2(up, ahead);
}

// Angle between two directions of any length, 0 to pi, accurate near 0 where the arc cosine is not.
double angleBetween(const Eigen::Vector3d& one, const Eigen::Vector3d& other) {
    return angleUp(one.cross(other).norm(), one.dot(other));
}

double sideViewInclination(const Eigen::Vector3d& direction) {
    return angleUp(direction.z(), direction.x());
}

Eigen::Vector3d inclined(double angle) {
    return {std::cos(angle), 0.0, std::sin(angle)};
}

void setUnreached(Station& station, double travel, double frontRatio) {
    station = Station{};
    figure(station, Figure::travel) = travel;
    figure(station, Figure::frontTravel) = frontRatio * travel;
}

}  // namespace

const std::array<FigureInfo, kFigureCount>& figureTable() {
    static constexpr std::array<FigureInfo, kFigureCount> kTable{{
        {Figure::travel, "travel", Quantity::length},
        {Figure::frontTravel, "front_travel", Quantity::length},
        {Figure::ground, "ground_deg", Quantity::angle},
        {Figure::axleX, "axle_x", Quantity::length},
        {Figure::icX, "ic_x", Quantity::length},
        {Figure::icZ, "ic_z", Quantity::length},
        {Figure::swingArmAngle, "svsa_angle_deg", Quantity::angle},
        {Figure::antiSquat, "anti_squat_pct", Quantity::percent},
        {Figure::pinion, "pinion_deg", Quantity::angle},
        {Figure::driveshaft, "driveshaft_deg", Quantity::angle},
        {Figure::pinionToDriveshaft, "pinion_to_driveshaft_deg", Quantity::angle},
        {Figure::frontJoint, "front_joint_deg", Quantity::angle},
        {Figure::rearJoint, "rear_joint_deg", Quantity::angle},
        {Figure::plunge, "plunge", Quantity::length},
    }};
    return kTable;
}

FigureReader::FigureReader(const Car& car)
    : wheelbase_(car.wheelbase),
      rearRadius_(car.rearTireRadius),
      frontRadius_(car.frontTireRadius),
      frontRatio_(car.travel.frontRatio),
      hasDriveline_(car.driveline.has_value()) {
    const CarBalance balance = balanceOf(car);
    cgX_ = balance.cgX(car.wheelbase);
    cgHeight_ = balance.height;
    if (car.driveline) {
        pinionJoint_ = car.driveline->pinionJoint - Eigen::Vector3d(0, 0, rearRadius_);
        pinionAxis_ = inclined(car.driveline->pinionAngle);
        outputJoint_ = car.driveline->outputJoint;
        outputAxis_ = inclined(car.driveline->outputAngle);
    }
}

void FigureReader::setRide(const AxlePose& pose) {
    rideShaftLength_ = shaft(pose, pose.rotation()).norm();
}

void FigureReader::read(const AxleSolver& solver, double travel, Station& station) const {
    station = Station{};  // its storage is used again, and a figure that does not exist here must not stay
    station.usable = true;
    station.pose = solver.pose();
    figure(station, Figure::travel) = travel;
    figure(station, Figure::frontTravel) = frontRatio_ * travel;
    figure(station, Figure::axleX) = station.pose.x;
    readGround(station);
    readSwingArm(solver.travelRates(), station);
    readInstantCenter(solver.travelRates(), station);
    if (hasDriveline_) {
        readDriveline(station);
    }
}

// The line tangent below both tires. With D from the rear to the front axle's center, it is D turned down by
// the angle whose sine is (front radius - rear radius) / |D|.
void FigureReader::readGround(Station& station) const {
    GroundLine& ground = station.ground;
    ground.frontCenterX = wheelbase_;
    ground.frontCenterZ = frontRadius_ + station[Figure::frontTravel];
    const double dx = ground.frontCenterX - station.pose.x;
    const double dz = ground.frontCenterZ - station.pose.z;
    const double distance = std::sqrt(dx * dx + dz * dz);
    const double sine = (frontRadius_ - rearRadius_) / distance;
    const double cosine = std::sqrt(1.0 - sine * sine);
    ground.alongX = (dx * cosine + dz * sine) / distance;
    ground.alongZ = (dz * cosine - dx * sine) / distance;
    ground.wheelbase = distance * cosine;
    ground.patchX = station.pose.x + rearRadius_ * ground.alongZ;
    ground.patchZ = station.pose.z - rearRadius_ * ground.alongX;
    figure(station, Figure::ground) = angleUp(ground.alongZ, ground.alongX);
}

// The patch moves with the housing, v = (dx, 1) + w x (patch - p); the swing arm is perpendicular to it.
// Anti-squat is the arm's slope over h / L (Barton & Fieldhouse, "Automotive Chassis Engineering", Springer
// 2018, sec. 3.11).
void FigureReader::readSwingArm(const AxleRates& rates, Station& station) const {
    const GroundLine& ground = station.ground;
    const double velocityX = rates.x + rates.pitch * (ground.patchZ - station.pose.z);
    const double velocityZ = 1.0 - rates.pitch * (ground.patchX - station.pose.x);
    const double along = velocityZ * ground.alongX - velocityX * ground.alongZ;
    const double above = -velocityZ * ground.alongZ - velocityX * ground.alongX;
    const double slope = above / along;
    const double cgAbove = ground.above(cgX_, cgHeight_);
    figure(station, Figure::swingArmAngle) = std::atan(slope);
    figure(station, Figure::antiSquat) = 100.0 * slope * ground.wheelbase / cgAbove;
}

// The point of the housing that stands still in side view: p + (1/w, -dx/w).
void FigureReader::readInstantCenter(const AxleRates& rates, Station& station) const {
    if (std::abs(rates.pitch) < kSlowestSwing) {
        return;
    }
    station.icCarX = station.pose.x + 1.0 / rates.pitch;
    station.icCarZ = station.pose.z - rates.x / rates.pitch;
    figure(station, Figure::icX) = station.ground.ahead(station.icCarX, station.icCarZ);
    figure(station, Figure::icZ) = station.ground.above(station.icCarX, station.icCarZ);
}

Eigen::Vector3d FigureReader::shaft(const AxlePose& pose, const Eigen::Matrix3d& rotation) const {
    return outputJoint_ - Eigen::Vector3d(pose.x, pose.y, pose.z) - rotation * pinionJoint_;
}

void FigureReader::readDriveline(Station& station) const {
    const Eigen::Matrix3d rotation = station.pose.rotation();
    const Eigen::Vector3d along = shaft(station.pose, rotation);
    const Eigen::Vector3d pinionAxis = rotation * pinionAxis_;
    const double ground = station[Figure::ground];
    const double pinion = sideViewInclination(pinionAxis) - ground;
    const double driveshaft = sideViewInclination(along) - ground;
    figure(station, Figure::pinion) = pinion;
    figure(station, Figure::driveshaft) = driveshaft;
    figure(station, Figure::pinionToDriveshaft) = pinion - driveshaft;
    figure(station, Figure::frontJoint) = angleBetween(outputAxis_, along);
    figure(station, Figure::rearJoint) = angleBetween(pinionAxis, along);
    figure(station, Figure::plunge) = along.norm() - rideShaftLength_;
}

double travelOfRow(const TravelRange& range, int index) {
    const double last = range.steps - 1;
    return index / last * range.bump - (last - index) / last * range.droop;
}

namespace {

// Solves rows first, first + direction, ... outward from ride; the first row out of reach ends it.
MoveReport solveOutward(AxleSolver solver, const FigureReader& reader, const TravelRange& range, int first,
                        int direction, Trace& trace) {
    MoveReport report;
    report.stop = Stop::reached;
    for (int row = first; row >= 0 && row < range.steps; row += direction) {
        const double travel = travelOfRow(range, row);
        Station& station = trace.stations[static_cast<std::size_t>(row)];
        if (report.usable()) {
            report = solver.moveTo(travel);
        }
        if (!report.usable()) {
            setUnreached(station, travel, range.frontRatio);
            continue;
        }
        reader.read(solver, travel, station);
        trace.largestBind = std::max(trace.largestBind, solver.bind());
    }
    return report;
}

int firstRowAtOrAboveRide(const TravelRange& range) {
    int row = 0;
    while (row < range.steps && travelOfRow(range, row) < 0) {
        ++row;
    }
    return row;
}

}  // namespace

void computeTrace(const Car& car, Trace& trace) {
    computeTrace(car, buildLinkage(car), trace);
}

void computeTrace(const Car& car, const Linkage& linkage, Trace& trace) {
    AxleSolver solver(linkage, Drive::travel);
    FigureReader reader(car);
    trace.stations.resize(static_cast<std::size_t>(car.travel.steps));
    trace.largestBind = 0;
    trace.assembly = solver.assemble();
    trace.heldBySymmetry = solver.heldBySymmetry();
    trace.droopEnd = trace.bumpEnd = trace.assembly;
    if (!trace.assembly.usable()) {
        setUnreached(trace.ride, 0.0, car.travel.frontRatio);
        for (int row = 0; row < car.travel.steps; ++row) {
            setUnreached(trace.stations[static_cast<std::size_t>(row)], travelOfRow(car.travel, row),
                         car.travel.frontRatio);
        }
        return;
    }
    reader.setRide(solver.pose());
    reader.read(solver, 0.0, trace.ride);
    const int upward = firstRowAtOrAboveRide(car.travel);
    trace.bumpEnd = solveOutward(solver, reader, car.travel, upward, +1, trace);
    trace.droopEnd = solveOutward(solver, reader, car.travel, upward - 1, -1, trace);
}

Trace computeTrace(const Car& car) {
    Trace trace;
    computeTrace(car, trace);
    return trace;
}

Station solveStation(const Car& car, double travel) {
    AxleSolver solver(buildLinkage(car), Drive::travel);
    FigureReader reader(car);
    Station station;
    setUnreached(station, travel, car.travel.frontRatio);
    if (!solver.assemble().usable()) {
        return station;
    }
    reader.setRide(solver.pose());
    if (solver.moveTo(travel).usable()) {
        reader.read(solver, travel, station);
    }
    return station;
}

std::string describe(Freedom freedom) {
    switch (freedom) {
        case Freedom::foreAft:
            return say("nothing holds the axle fore and aft");
        case Freedom::sideways:
            return say("nothing holds the axle laterally");
        case Freedom::pitch:
            return say("nothing keeps the axle housing from turning over");
        case Freedom::yaw:
            return say("nothing holds the axle square to the car");
        case Freedom::none:
            break;
    }
    return "";
}

namespace {

std::string linkName(const MoveReport& report, const Car& car) {
    const Linkage linkage = buildLinkage(car);
    const Constraint& constraint = linkage.constraints[static_cast<std::size_t>(report.constraint)];
    const Link& link = car.links[static_cast<std::size_t>(constraint.link)];
    const bool set = link.side == Side::both || link.side == Side::center;
    return set                             ? say("link '%1'", link.name)
           : constraint.side == Side::left ? say("link '%1' (left)", link.name)
                                           : say("link '%1' (right)", link.name);
}

}  // namespace

std::string describe(const MoveReport& report, const Car& car, Units units) {
    if (report.stop == Stop::reached || report.stop == Stop::notRun) {
        return "";
    }
    if (report.stop == Stop::underHeld) {
        return describe(report.freedom);
    }
    const std::string travel = fineFigureText(std::abs(report.travel), Quantity::length, units) + " " +
                               std::string(unitMark(Quantity::length, units));
    const std::string who = report.constraint >= 0 ? linkName(report, car) : say("a link");
    const bool atRide = std::abs(report.travel) < 1e-9;
    if (atRide) {
        return say("%1 is too long or too short: the axle can't be assembled at ride", who);
    }
    return report.travel > 0 ? say("%1 stops travel at %2 of bump", who, travel)
                             : say("%1 stops travel at %2 of droop", who, travel);
}

}  // namespace bolthole
