#include "tests/outside/simbody_reference.h"

#include <Simbody.h>

#include <algorithm>
#include <cmath>
#include <exception>
#include <functional>
#include <vector>

namespace bolthole {

namespace {

constexpr double kTolerance = 1e-13;   // m
constexpr double kTravelStep = 0.015;  // m
constexpr double kRollStep = 0.0131;   // rad, three quarters of a degree

SimTK::Vec3 toSimbody(const Eigen::Vector3d& v) {
    return {v.x(), v.y(), v.z()};
}

// A frame whose z axis points along the named axis of its parent: a Pin there turns about that axis.
SimTK::Transform zAlongY() {
    return SimTK::Rotation(-SimTK::Pi / 2, SimTK::XAxis);
}
SimTK::Transform zAlongX() {
    return SimTK::Rotation(SimTK::Pi / 2, SimTK::YAxis);
}

}  // namespace

struct SimbodyReference::Model {
    SimTK::MultibodySystem system;
    SimTK::SimbodyMatterSubsystem matter{system};
    SimTK::GeneralForceSubsystem forces{system};
    SimTK::Force::DiscreteForces load{forces, matter};
    // The masses play no part: only positions, and forces in balance, are asked for.
    SimTK::Body::Rigid body{SimTK::MassProperties(1.0, SimTK::Vec3(0), SimTK::UnitInertia(1))};
    SimTK::MobilizedBody::Translation center;
    SimTK::MobilizedBody::Pin yaw;
    SimTK::MobilizedBody::Pin pitch;
    SimTK::MobilizedBody::Pin roll;
    SimTK::State state;
    double measuredHeight;
    // The force of each link, once accelerations are realized.
    std::vector<std::function<double(const SimTK::State&)>> linkForces;

    explicit Model(const ReferenceAxle& axle);
    void addLink(const ReferenceLink& link);
    void addPlane(SimTK::CoordinateAxis normal, const ReferenceLink& link);
};

SimbodyReference::Model::Model(const ReferenceAxle& axle)
    : center(matter.Ground(), SimTK::Transform(), body, SimTK::Transform()),
      yaw(center, SimTK::Transform(), body, SimTK::Transform()),
      pitch(yaw, zAlongY(), body, zAlongY()),
      roll(pitch, zAlongX(), body, zAlongX()),
      measuredHeight(axle.measuredHeight) {
    for (const ReferenceLink& link : axle.links) {
        addLink(link);
    }
    state = system.realizeTopology();
    center.setQ(state, SimTK::Vec3(0, 0, measuredHeight));
    system.realize(state, SimTK::Stage::Position);
}

void SimbodyReference::Model::addLink(const ReferenceLink& link) {
    switch (link.kind) {
        case ReferenceLink::rod: {
            const SimTK::Constraint::Rod rod(matter.Ground(), toSimbody(link.onChassis), roll,
                                             toSimbody(link.onAxle), link.length);
            linkForces.emplace_back([rod](const SimTK::State& at) { return rod.getRodTension(at); });
            return;
        }
        case ReferenceLink::sameX:
            return addPlane(SimTK::XAxis, link);
        case ReferenceLink::sameY:
            return addPlane(SimTK::YAxis, link);
        case ReferenceLink::sameZ:
            return addPlane(SimTK::ZAxis, link);
    }
}

void SimbodyReference::Model::addPlane(SimTK::CoordinateAxis normal, const ReferenceLink& link) {
    const SimTK::Real height = toSimbody(link.onChassis)[normal];
    const SimTK::Constraint::PointInPlane plane(matter.Ground(), SimTK::UnitVec3(normal), height, roll,
                                                toSimbody(link.onAxle));
    // Its own getForceOnFollowerPoint() is declared but not in the library. Multipliers are counted against
    // forces that are applied.
    linkForces.emplace_back([plane](const SimTK::State& at) { return -plane.getMultiplier(at); });
}

SimbodyReference::SimbodyReference(const ReferenceAxle& axle) : model_(std::make_unique<Model>(axle)) {}

SimbodyReference::~SimbodyReference() = default;

bool SimbodyReference::moveTo(double travel, double roll) {
    const double travelFrom = travel_;
    const double rollFrom = roll_;
    const double span =
        std::max(std::abs(travel - travelFrom) / kTravelStep, std::abs(roll - rollFrom) / kRollStep);
    const int steps = std::max(1, static_cast<int>(std::ceil(span)));
    for (int step = 1; step <= steps; ++step) {
        const double share = static_cast<double>(step) / steps;
        if (!assembleAt(travelFrom + share * (travel - travelFrom), rollFrom + share * (roll - rollFrom))) {
            return false;
        }
    }
    return true;
}

bool SimbodyReference::assembleAt(double travel, double roll) {
    Model& model = *model_;
    model.center.setOneQ(model.state, 2, model.measuredHeight + travel);
    model.roll.setAngle(model.state, roll);
    SimTK::Assembler assembler(model.system);
    assembler.setAccuracy(10 * kTolerance).setErrorTolerance(kTolerance);
    assembler.lockQ(model.center.getMobilizedBodyIndex(), SimTK::MobilizerQIndex(2));
    assembler.lockMobilizer(model.roll.getMobilizedBodyIndex());
    try {
        assembler.assemble(model.state);
    } catch (const std::exception&) {
        return false;
    }
    model.system.realize(model.state, SimTK::Stage::Position);
    travel_ = travel;
    roll_ = roll;
    return true;
}

Eigen::Vector3d SimbodyReference::carry(const Eigen::Vector3d& fromCenter) const {
    const SimTK::Vec3 at = model_->roll.findStationLocationInGround(model_->state, toSimbody(fromCenter));
    return {at[0], at[1], at[2]};
}

ReferenceForces SimbodyReference::linkForces(const Eigen::Vector3d& force, const Eigen::Vector3d& moment) {
    Model& model = *model_;
    model.load.setOneBodyForce(model.state, model.roll,
                               SimTK::SpatialVec(toSimbody(moment), toSimbody(force)));
    model.system.realize(model.state, SimTK::Stage::Acceleration);
    ReferenceForces found;
    for (const auto& linkForce : model.linkForces) {
        found.links.push_back(linkForce(model.state));
    }
    const SimTK::Vector& accelerations = model.state.getUDot();
    for (int index = 0; index < accelerations.size(); ++index) {
        found.acceleration = std::max(found.acceleration, std::abs(accelerations[index]));
    }
    return found;
}

}  // namespace bolthole
