#include "geometry/statics/driveline_figures.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kSamePlace = 1e-6;                       // m
constexpr double kNoAngle = 1e-9;                         // rad
constexpr double kFarthestTurn = 45 * kRadiansPerDegree;  // of a housing

Eigen::Vector3d inclined(double angle) {
    return {std::cos(angle), 0.0, std::sin(angle)};
}

// The housing turned nose up by `turn` within the axle.
Eigen::Matrix3d turnedUp(double turn) {
    return Eigen::AngleAxisd(-turn, Eigen::Vector3d::UnitY()).toRotationMatrix();
}

double sideViewInclination(const Eigen::Vector3d& direction) {
    return std::atan2(direction.z(), direction.x());
}

void takeLarger(AtTravel& worst, double value, double travel) {
    if (!(value <= worst.value)) {
        worst = {value, travel};
    }
}

}  // namespace

std::optional<double> ShaftSetup::speed() const {
    return engineSpeed && gear ? std::optional(driveshaftSpeed(*engineSpeed, *gear)) : std::nullopt;
}

std::string refusal(const ShaftSetup& setup, const Driveline& driveline) {
    const Eigen::Vector3d front = setup.carrierJoint.value_or(driveline.outputJoint);
    if (!(front.x() - driveline.pinionJoint.x() > kSamePlace)) {
        return setup.carrierJoint ? say("expected the joint behind the carrier bearing ahead of the pinion's")
                                  : say("expected the transmission's joint ahead of the pinion's");
    }
    if (setup.carrierJoint && !(driveline.outputJoint.x() - front.x() > kSamePlace)) {
        return say("expected the joint behind the carrier bearing behind the transmission's");
    }
    if ((setup.engineSpeed && !(*setup.engineSpeed >= 0)) || (setup.gear && !(*setup.gear > 0))) {
        return say("expected an engine speed of at least 0 and a gear ratio above 0");
    }
    const SlipYoke slip = setup.slip.value_or(SlipYoke{});
    if (!(slip.engagement >= 0 && slip.leastEngagement >= 0 && slip.inward >= 0)) {
        return say("expected lengths of at least 0 for the slip yoke");
    }
    return {};
}

AxlePose woundUp(AxlePose pose, double angle) {
    pose.pitch -= angle;
    return pose;
}

DrivelineReader::DrivelineReader(const Driveline& driveline, const ShaftSetup& setup, double measuredHeight)
    : pinionJoint_(driveline.pinionJoint - Eigen::Vector3d(0, 0, measuredHeight)),
      pinionAngle_(driveline.pinionAngle),
      outputAxis_(inclined(driveline.outputAngle)),
      outputJoint_(driveline.outputJoint),
      carrierJoint_(setup.carrierJoint),
      yokeOffset_(setup.yokeOffset) {}

void DrivelineReader::setRide(const AxlePose& pose) {
    rideLength_ = read(pose).shaftLength;
}

double DrivelineReader::shafts(const AxlePose& pose, double turn, Shafts& along) const {
    const Eigen::Matrix3d rotation = pose.rotation() * turnedUp(turn);
    std::size_t count = 0;
    along[count++] = outputAxis_;
    if (carrierJoint_) {
        along[count++] = (outputJoint_ - *carrierJoint_).normalized();
    }
    const Eigen::Vector3d reach = carrierJoint_.value_or(outputJoint_) -
                                  Eigen::Vector3d(pose.x, pose.y, pose.z) - rotation * pinionJoint_;
    const double length = reach.norm();
    along[count++] = reach / length;
    along[count] = rotation * inclined(pinionAngle_);
    return length;
}

DrivelineFigures DrivelineReader::read(const AxlePose& pose, double turn) const {
    Shafts along;
    DrivelineFigures figures;
    figures.shaftLength = shafts(pose, turn, along);
    const std::size_t count = carrierJoint_ ? 4 : 3;
    const JointTrain train = jointTrain({along.data(), count}, yokeOffset_);
    figures.joints = train.joints;
    figures.angle = train.angle;
    figures.equivalent = equivalentAngle(train);
    figures.swing = speedRatios(train).swing();
    figures.plunge = figures.shaftLength - rideLength_;
    return figures;
}

double DrivelineReader::pinionInclination(const AxlePose& pose, double turn) const {
    return sideViewInclination(pose.rotation() * inclined(pinionAngle_ + turn));
}

// With the joints where `turn` leaves them, the angle the pinion needs within the axle: its axis (cos p, 0,
// sin p) makes the angle of the joints before it with the last piece's direction d, of which only the side
// view's share turns with p: |(dx, dz)| cos(p - inclination of d) = cos(angle).
double DrivelineReader::pinionThatCancels(const AxlePose& pose, double turn, double sense) const {
    Shafts along;
    shafts(pose, turn, along);
    const std::size_t last = carrierJoint_ ? 2 : 1;
    const double wanted = equivalentAngle(jointTrain({along.data(), last + 1}, yokeOffset_));
    const Eigen::Matrix3d toAxle = pose.rotation().transpose();
    const Eigen::Vector3d shaft = toAxle * along[last];
    const Eigen::Vector3d driving = toAxle * along[last - 1];
    const double inclination = sideViewInclination(shaft);
    const double cosine = std::cos(wanted) / std::hypot(shaft.x(), shaft.z());
    // Rounding may lift the cosine over 1 where the joint bends in plan alone.
    const double operatingAngle = std::acos(cosine < 1 + 1e-12 ? std::min(cosine, 1.0) : cosine);
    return inclination + std::copysign(operatingAngle, sense * (sideViewInclination(driving) - inclination));
}

// Turning the housing moves its joint too, and with it the shaft; by bisection, as what is needed falls short
// of what is there by less and less as the housing turns up.
double DrivelineReader::cancelingTurn(const AxlePose& pose, double sense) const {
    const auto missing = [&](double turn) {
        return pinionThatCancels(pose, turn, sense) - (pinionAngle_ + turn);
    };
    double low = -kFarthestTurn;
    double high = kFarthestTurn;
    if (!(missing(low) >= 0 && missing(high) <= 0)) {
        return std::numeric_limits<double>::quiet_NaN();
    }
    for (int halving = 0; halving < 60; ++halving) {
        const double middle = (low + high) / 2;
        (missing(middle) > 0 ? low : high) = middle;
    }
    const double turn = (low + high) / 2;
    const DrivelineFigures figures = read(pose, turn);
    const bool found = std::abs(missing(turn)) < kNoAngle;
    const bool adds = figures.equivalent > figures.rearJoint() + kNoAngle;
    return found && !adds ? turn : std::numeric_limits<double>::quiet_NaN();
}

DrivelineSweep sweepDriveline(const DrivelineReader& reader, const Trace& trace, double windUp) {
    DrivelineSweep sweep;
    for (const Station& station : trace.stations) {
        if (!station.usable) {
            continue;
        }
        const double travel = station[Figure::travel];
        const DrivelineFigures figures = reader.read(woundUp(station.pose, windUp));
        sweep.joints = figures.joints;
        for (std::size_t joint = 0; joint < figures.joints; ++joint) {
            takeLarger(sweep.largest[joint], figures.angle[joint], travel);
        }
        takeLarger(sweep.equivalent, figures.equivalent, travel);
        takeLarger(sweep.swing, figures.swing, travel);
        takeLarger(sweep.mostPlunge, figures.plunge, travel);
        if (!(figures.plunge >= sweep.leastPlunge.value)) {
            sweep.leastPlunge = {figures.plunge, travel};
        }
    }
    return sweep;
}

namespace {

std::optional<PinionSetting> settingOf(const DrivelineReader& reader, const Station& ride,
                                       const AxlePose& attitude, double sense) {
    const double turn = reader.cancelingTurn(attitude, sense);
    if (std::isnan(turn)) {
        return std::nullopt;
    }
    return PinionSetting{.turn = turn,
                         .pinion = reader.pinionInclination(ride.pose, turn) - ride[Figure::ground],
                         .left = reader.read(attitude, turn).equivalent};
}

}  // namespace

PinionSettings pinionSettings(const DrivelineReader& reader, const Station& ride, const AxlePose& attitude) {
    PinionSettings settings{.parallel = settingOf(reader, ride, attitude, +1),
                            .brokenBack = settingOf(reader, ride, attitude, -1)};
    settings.parallelIsMeant =
        settings.parallel &&
        (!settings.brokenBack || std::abs(settings.parallel->turn) <= std::abs(settings.brokenBack->turn));
    return settings;
}

}  // namespace bolthole
