#include "geometry/edits/ride_change.h"

#include <cmath>

#include "geometry/car/faults.h"
#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "geometry/units/say.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

// The new frame, given in the old one: its origin on the ground under the axle, and its x axis along the
// ground.
class NewFrame {
  public:
    NewFrame(const AxlePose& pose, double frontCenterX, double frontCenterZ, const RideChange& change) {
        const double dx = frontCenterX - pose.x;
        const double dz = frontCenterZ - pose.z;
        const double distance = std::hypot(dx, dz);
        // The line tangent below both tires, as in FigureReader.
        const double sine = (change.frontTireRadius - change.rearTireRadius) / distance;
        const double cosine = std::sqrt(1.0 - sine * sine);
        alongX_ = (dx * cosine + dz * sine) / distance;
        alongZ_ = (dz * cosine - dx * sine) / distance;
        originX_ = pose.x + change.rearTireRadius * alongZ_;
        originZ_ = pose.z - change.rearTireRadius * alongX_;
    }

    [[nodiscard]] Eigen::Vector3d at(const Eigen::Vector3d& old) const {
        const double x = old.x() - originX_;
        const double z = old.z() - originZ_;
        return {x * alongX_ + z * alongZ_, old.y(), z * alongX_ - x * alongZ_};
    }
    [[nodiscard]] double angle() const { return std::atan2(alongZ_, alongX_); }

  private:
    double alongX_ = 1;
    double alongZ_ = 0;
    double originX_ = 0;
    double originZ_ = 0;
};

std::string refuse(const Car& car, const RideChange& change) {
    if (std::string expected = refusal({.field = Field::rearTireRadius}, change.rearTireRadius);
        !expected.empty()) {
        return say("rear tire radius: expected %1", expected);
    }
    if (std::string expected = refusal({.field = Field::frontTireRadius}, change.frontTireRadius);
        !expected.empty()) {
        return say("front tire radius: expected %1", expected);
    }
    if (!(change.rearLower <= car.travel.bump && change.rearLower >= -car.travel.droop)) {
        return say(
            "the rear would stand past the end of its travel; expected a change within bump and droop");
    }
    if (!(std::abs(change.frontLower) < 0.5 * car.wheelbase) ||
        !(std::abs(change.frontTireRadius - change.rearTireRadius) < 0.5 * car.wheelbase)) {
        return say("the car would stand on its nose or tail; expected a change small against the wheelbase");
    }
    return {};
}

// A plate lies in side view; its own place sideways does not matter to it.
void movePlate(Bracket& bracket, const auto& moved) {
    if (bracket.plate) {
        for (Eigen::Vector2d& corner : bracket.plate->corners) {
            const Eigen::Vector3d at = moved(Eigen::Vector3d(corner.x(), 0, corner.y()));
            corner = {at.x(), at.z()};
        }
    }
}

void moveLinks(Car& car, const Car& old, const AxlePose& pose, const NewFrame& frame) {
    const Eigen::Vector3d center(0, 0, old.rearTireRadius);
    for (std::size_t index = 0; index < car.links.size(); ++index) {
        Link& link = car.links[index];
        if (link.kind == LinkKind::rod) {
            link.length = builtLength(old.links[index]);
        }
        for (Hole& hole : link.chassis.holes) {
            hole.at = frame.at(hole.at);
        }
        for (Hole& hole : link.axle.holes) {
            hole.at = frame.at(pose.carry(hole.at - center));
        }
        movePlate(link.chassis, [&frame](const Eigen::Vector3d& at) { return frame.at(at); });
        movePlate(link.axle, [&](const Eigen::Vector3d& at) { return frame.at(pose.carry(at - center)); });
    }
}

/// A point of the body; one not wholly known is forgotten, as nobody can say where it went.
void moveEntered(EnteredPoint& point, const NewFrame& frame) {
    const std::optional<Eigen::Vector3d> whole = point.whole();
    point = {};
    if (whole) {
        const Eigen::Vector3d moved = frame.at(*whole);
        point.at = {moved.x(), moved.y(), moved.z()};
    }
}

void moveSprings(Car& car, const Car& old, const AxlePose& pose, const NewFrame& frame) {
    const Eigen::Vector3d center(0, 0, old.rearTireRadius);
    for (SuspensionPart& part : car.springs) {
        for (Hole& hole : part.chassis.holes) {
            hole.at = frame.at(hole.at);
        }
        for (Hole& hole : part.axle.holes) {
            hole.at = frame.at(pose.carry(hole.at - center));
        }
    }
}

void moveBallast(Car& car, const NewFrame& frame) {
    moveEntered(car.weighing.driver.at, frame);
    for (EnteredBallast& load : car.ballast) {
        moveEntered(load.at, frame);
    }
}

void moveDriveline(Car& car, const Car& old, const AxlePose& pose, const NewFrame& frame) {
    if (!car.driveline) {
        return;
    }
    const Eigen::Vector3d center(0, 0, old.rearTireRadius);
    car.driveline->pinionJoint = frame.at(pose.carry(car.driveline->pinionJoint - center));
    car.driveline->outputJoint = frame.at(car.driveline->outputJoint);
    moveEntered(car.driveline->shaft.carrierJoint, frame);
    car.driveline->pinionAngle -= pose.pitch + frame.angle();
    car.driveline->outputAngle -= frame.angle();
}

// The CG stays in the body; its new place along the new wheelbase says how the axles share the weight.
std::string moveWeights(Car& car, const Car& old, const NewFrame& frame) {
    CornerWeights& weights = car.cornerWeights;
    const double share = weights.front() / weights.total();
    const double height = balanceOf(old).from.height;
    const Eigen::Vector3d center = frame.at({old.wheelbase * share, 0, height});
    const double newShare = center.x() / car.wheelbase;
    if (!(newShare > 0 && newShare < 1 && center.z() > 0)) {
        return say("the center of gravity would not stand between the axles any more");
    }
    weights.leftFront *= newShare / share;
    weights.rightFront *= newShare / share;
    weights.leftRear *= (1 - newShare) / (1 - share);
    weights.rightRear *= (1 - newShare) / (1 - share);
    car.cgHeight = center.z();
    if (const CgHeightSource source = balanceOf(old).from.source; source != CgHeightSource::entered) {
        setOrigin(car, {.field = Field::cgHeight},
                  source == CgHeightSource::estimate ? Origin::starting : Origin::measured);
    }
    car.cgHeightFrom = CgHeightSource::entered;
    return {};
}

}  // namespace

RideChange noChange(const Car& car) {
    return {.rearTireRadius = car.rearTireRadius, .frontTireRadius = car.frontTireRadius};
}

namespace {

// A radius that was typed for the change is a starting number no more.
void markTyped(Car& moved, const Car& car) {
    for (const Field field : {Field::rearTireRadius, Field::frontTireRadius}) {
        if (numberAt(moved, {.field = field}) != numberAt(car, {.field = field})) {
            setOrigin(moved, {.field = field}, Origin::measured);
        }
    }
}

}  // namespace

CarResult changeRide(const Car& car, const RideChange& change) {
    if (std::string reason = refuse(car, change); !reason.empty()) {
        return {std::nullopt, std::move(reason)};
    }
    if (change == noChange(car)) {
        return {car, {}};
    }
    const Station station = solveStation(car, change.rearLower);
    if (!station.usable) {
        return {std::nullopt, say("the links do not reach that ride height")};
    }
    const AxlePose pose{.x = station.pose.x, .z = station.pose.z, .pitch = station.pose.pitch};
    const double frontZ = car.frontTireRadius + change.frontLower;
    const NewFrame frame(pose, car.wheelbase, frontZ, change);
    Car moved = car;
    moved.rearTireRadius = change.rearTireRadius;
    moved.frontTireRadius = change.frontTireRadius;
    moved.wheelbase = frame.at({car.wheelbase, 0, frontZ}).x();
    moved.travel.bump -= change.rearLower;
    moved.travel.droop += change.rearLower;
    moveLinks(moved, car, pose, frame);
    moveSprings(moved, car, pose, frame);
    moveBallast(moved, frame);
    moveDriveline(moved, car, pose, frame);
    markTyped(moved, car);
    if (std::string reason = moveWeights(moved, car, frame); !reason.empty()) {
        return {std::nullopt, std::move(reason)};
    }
    if (const std::vector<Fault> faults = findFaults(moved); !faults.empty()) {
        return {std::nullopt, say("%1: %2", faults.front().path, faults.front().reason)};
    }
    return {std::move(moved), {}};
}

}  // namespace bolthole
