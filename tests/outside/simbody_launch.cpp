#include "tests/outside/simbody_launch.h"

#include <Simbody.h>

#include <cmath>

namespace bolthole {

namespace {

using SimTK::Vec3;

// Bodies that only carry a coordinate weigh next to nothing: a hundred-millionth of an axle.
constexpr double kNothing = 1e-6;
constexpr double kClosed = 1e-13;  // m, rad
constexpr int kMostSteps = 30;

Vec3 toSimbody(const Eigen::Vector3d& v) {
    return {v.x(), v.y(), v.z()};
}

SimTK::Body::Rigid bodyOf(double mass, double inertia = kNothing, const Vec3& center = Vec3(0)) {
    const SimTK::Inertia about = SimTK::Inertia(inertia).shiftFromMassCenter(center, mass);
    return SimTK::Body::Rigid(SimTK::MassProperties(mass, center, about));
}

// Frames whose z axis is the parent's y, and whose x axis is the parent's z.
SimTK::Rotation zAlongY() {
    return SimTK::Rotation(-SimTK::Pi / 2, SimTK::XAxis);
}
SimTK::Rotation xAlongZ() {
    return SimTK::Rotation(-SimTK::Pi / 2, SimTK::YAxis);
}

}  // namespace

struct SimbodyLaunch::Model {
    RodsBodies masses;
    std::vector<RodsLine> lines;
    SimTK::MultibodySystem system;
    SimTK::SimbodyMatterSubsystem matter{system};
    SimTK::GeneralForceSubsystem forces{system};
    SimTK::Force::DiscreteForces applied{forces, matter};
    SimTK::MobilizedBody::Planar chassis;  // its coordinates: pitch, forward, down
    SimTK::MobilizedBody::Translation center;
    SimTK::MobilizedBody::Pin yaw;
    SimTK::MobilizedBody::Pin axle;
    SimTK::MobilizedBody::Slider axleForward;  // the rear unsprung mass, along the ground and up from there
    SimTK::MobilizedBody::Slider axleMass;
    SimTK::MobilizedBody::Pin housing;
    SimTK::MobilizedBody::Pin wheels;
    SimTK::MobilizedBody::Pin driveline;
    SimTK::MobilizedBody::Slider front;
    SimTK::MobilizedBody::Slider rolling;
    SimTK::State state;

    Model(const RodsBodies& bodies, const ReferenceAxle& links, std::vector<RodsLine> between);
    void addLink(const ReferenceLink& link);
    void couple();
    void couple(const std::vector<SimTK::MobilizedBodyIndex>& bodies, const std::vector<double>& factors);

    // Where a coordinate of a body stands among all.
    [[nodiscard]] int placeOf(const SimTK::MobilizedBody& body, int coordinate = 0) const {
        return body.getFirstUIndex(state) + coordinate;
    }
    [[nodiscard]] std::vector<int> dependents() const;
    bool close();
    void followRates();
    void applyLine(std::size_t line, double force);
    void push(const SimTK::MobilizedBody& body, const Vec3& force, const Vec3& station = Vec3(0)) {
        applied.addForceToBodyPoint(state, body, station, force);
    }
    void pushCoordinate(const SimTK::MobilizedBody& body, int coordinate, double force) {
        applied.setOneMobilityForce(state, body, SimTK::MobilizerUIndex(coordinate), force);
    }
};

SimbodyLaunch::Model::Model(const RodsBodies& bodies, const ReferenceAxle& links,
                            std::vector<RodsLine> between)
    : masses(bodies),
      lines(std::move(between)),
      chassis(matter.Ground(), zAlongY(),
              bodyOf(bodies.sprungMass, bodies.pitchInertia, Vec3(bodies.sprungX, 0, bodies.sprungZ)),
              zAlongY()),
      center(chassis, SimTK::Transform(), bodyOf(kNothing), SimTK::Transform()),
      yaw(center, SimTK::Transform(), bodyOf(kNothing), SimTK::Transform()),
      axle(yaw, zAlongY(), bodyOf(kNothing), zAlongY()),
      axleForward(matter.Ground(), SimTK::Transform(), bodyOf(kNothing), SimTK::Transform()),
      axleMass(axleForward, xAlongZ(), bodyOf(bodies.rearUnsprung), xAlongZ()),
      housing(matter.Ground(), zAlongY(), bodyOf(kNothing, bodies.housingInertia + kNothing), zAlongY()),
      wheels(matter.Ground(), zAlongY(), bodyOf(kNothing, bodies.wheelInertia), zAlongY()),
      driveline(matter.Ground(), zAlongY(), bodyOf(kNothing, bodies.drivelineInertia + kNothing), zAlongY()),
      front(chassis, SimTK::Transform(xAlongZ(), Vec3(bodies.wheelbase, 0, bodies.frontRadius)),
            bodyOf(bodies.frontUnsprung), xAlongZ()),
      rolling(matter.Ground(), SimTK::Transform(), bodyOf(bodies.frontRollingMass + kNothing),
              SimTK::Transform()) {
    for (const ReferenceLink& link : links.links) {
        addLink(link);
    }
    couple();
    state = system.realizeTopology();
    center.setQ(state, Vec3(0, 0, links.measuredHeight));
    axleMass.setOneQ(state, 0, links.measuredHeight);
    rolling.setOneQ(state, 0, bodies.wheelbase);
    system.realize(state, SimTK::Stage::Velocity);
}

void SimbodyLaunch::Model::addLink(const ReferenceLink& link) {
    const Vec3 onChassis = toSimbody(link.onChassis);
    const Vec3 onAxle = toSimbody(link.onAxle);
    const auto inPlane = [&](SimTK::CoordinateAxis normal) {
        SimTK::Constraint::PointInPlane(chassis, SimTK::UnitVec3(normal), onChassis[normal], axle, onAxle);
    };
    switch (link.kind) {
        case ReferenceLink::rod:
            SimTK::Constraint::Rod(chassis, onChassis, axle, onAxle, link.length);
            return;
        case ReferenceLink::sameX:
            return inPlane(SimTK::XAxis);
        case ReferenceLink::sameY:
            return inPlane(SimTK::YAxis);
        case ReferenceLink::sameZ:
            return inPlane(SimTK::ZAxis);
    }
}

// The bodies that stand apart follow those that have their motion.
void SimbodyLaunch::Model::couple() {
    SimTK::Constraint::PointOnLine(axleMass, SimTK::UnitVec3(SimTK::YAxis), Vec3(0), axle, Vec3(0));
    SimTK::Constraint::PointInPlane(rolling, SimTK::UnitVec3(SimTK::XAxis), 0, front, Vec3(0));
    couple({housing, chassis, axle}, {1, -1, -1});
    couple({driveline, wheels, housing}, {1, -1, 1});
}

// The first coordinates of bodies, each by its factor, add up to nothing.
void SimbodyLaunch::Model::couple(const std::vector<SimTK::MobilizedBodyIndex>& bodies,
                                  const std::vector<double>& factors) {
    SimTK::Vector coefficients(static_cast<int>(factors.size()) + 1, 0.0);
    for (std::size_t index = 0; index < factors.size(); ++index) {
        coefficients[static_cast<int>(index)] = factors[index];
    }
    SimTK::Constraint::CoordinateCoupler(
        matter, new SimTK::Function::Linear(coefficients), bodies,
        std::vector<SimTK::MobilizerQIndex>(bodies.size(), SimTK::MobilizerQIndex(0)));
}

// Every coordinate that the constraints give.
std::vector<int> SimbodyLaunch::Model::dependents() const {
    return {placeOf(center, 0), placeOf(center, 1), placeOf(yaw),       placeOf(axle),   placeOf(axleForward),
            placeOf(axleMass),  placeOf(housing),   placeOf(driveline), placeOf(rolling)};
}

namespace {

// Columns of the constraints' matrix, of these coordinates alone.
SimTK::Matrix columnsOf(const SimTK::Matrix& whole, const std::vector<int>& places) {
    SimTK::Matrix columns(whole.nrow(), static_cast<int>(places.size()));
    for (std::size_t index = 0; index < places.size(); ++index) {
        columns(static_cast<int>(index)) = whole(places[index]);
    }
    return columns;
}

}  // namespace

// Newton's steps on the coordinates that are not given. All of them are rates' own integrals here, so that
// one matrix serves both.
bool SimbodyLaunch::Model::close() {
    const std::vector<int> places = dependents();
    for (int step = 0; step < kMostSteps; ++step) {
        system.realize(state, SimTK::Stage::Velocity);
        const SimTK::Vector errors = state.getQErr();
        if (errors.size() > 0 && errors.normInf() <= kClosed) {
            return true;
        }
        SimTK::Matrix whole;
        matter.calcG(state, whole);
        SimTK::Vector change;
        SimTK::FactorLU(columnsOf(whole, places)).solve(errors, change);
        for (std::size_t index = 0; index < places.size(); ++index) {
            state.updQ()[places[index]] -= change[static_cast<int>(index)];
        }
    }
    system.realize(state, SimTK::Stage::Velocity);
    return state.getQErr().normInf() <= 100 * kClosed;
}

void SimbodyLaunch::Model::followRates() {
    const std::vector<int> places = dependents();
    for (const int place : places) {
        state.updU()[place] = 0;
    }
    system.realize(state, SimTK::Stage::Velocity);
    SimTK::Matrix whole;
    matter.calcG(state, whole);
    SimTK::Vector given = whole * state.getU();
    SimTK::Vector follow;
    SimTK::FactorLU(columnsOf(whole, places)).solve(given, follow);
    for (std::size_t index = 0; index < places.size(); ++index) {
        state.updU()[places[index]] = -follow[static_cast<int>(index)];
    }
    system.realize(state, SimTK::Stage::Velocity);
}

void SimbodyLaunch::Model::applyLine(std::size_t index, double force) {
    const RodsLine& line = lines[index];
    const Vec3 onChassis = toSimbody(line.onChassis);
    const Vec3 onAxle = toSimbody(line.onAxle);
    const Vec3 there = axle.findStationLocationInGround(state, onAxle);
    if (!line.alongMeasuredLine) {
        const Vec3 along = (there - chassis.findStationLocationInGround(state, onChassis)).normalize();
        push(axle, force * along, onAxle);
        push(chassis, -force * along, onChassis);
        return;
    }
    // A pad that slides under its stop: the stop pushes where the pad is.
    const Vec3 measured = onAxle + Vec3(0, 0, masses.rearRadius) - onChassis;
    const Vec3 along = chassis.expressVectorInGroundFrame(state, measured.normalize());
    push(axle, force * along, onAxle);
    push(chassis, -force * along, chassis.findStationAtGroundPoint(state, there));
}

SimbodyLaunch::SimbodyLaunch(const RodsBodies& bodies, const ReferenceAxle& axle,
                             const std::vector<RodsLine>& lines)
    : model_(std::make_unique<Model>(bodies, axle, lines)) {}

SimbodyLaunch::~SimbodyLaunch() = default;

bool SimbodyLaunch::moveTo(const RodsMotion& motion) {
    Model& model = *model_;
    SimTK::State& state = model.state;
    model.chassis.setQ(state, Vec3(motion.pitch, motion.forward, -motion.up));
    model.chassis.setU(state, Vec3(motion.pitchRate, motion.forwardRate, -motion.upRate));
    model.center.setOneQ(state, 2, model.masses.rearRadius + motion.rearTravel);
    model.center.setOneU(state, 2, motion.rearRate);
    model.front.setOneQ(state, 0, motion.frontTravel);
    model.front.setOneU(state, 0, motion.frontRate);
    if (!model.close()) {
        return false;
    }
    model.followRates();
    return true;
}

RodsRates SimbodyLaunch::rates(const RodsForces& forces) {
    Model& model = *model_;
    SimTK::State& state = model.state;
    model.applied.clearAllBodyForces(state);
    model.applied.clearAllMobilityForces(state);
    const RodsBodies& masses = model.masses;
    const Vec3 down(0, 0, -masses.gravity);
    model.push(model.chassis, masses.sprungMass * down, Vec3(masses.sprungX, 0, masses.sprungZ));
    model.push(model.axleMass, masses.rearUnsprung * down + Vec3(forces.thrust, 0, forces.rearLoad));
    model.push(model.front, masses.frontUnsprung * down + Vec3(0, 0, forces.frontLoad));
    for (std::size_t line = 0; line < forces.lines.size(); ++line) {
        model.applyLine(line, forces.lines[line]);
    }
    model.pushCoordinate(model.wheels, 0, forces.ringTorque - forces.thrust * forces.axleUp);
    model.pushCoordinate(model.housing, 0, -forces.ringTorque);
    model.pushCoordinate(model.chassis, 0, forces.onPitch);
    model.pushCoordinate(model.center, 2, forces.onRear);
    model.pushCoordinate(model.front, 0, forces.onFront);
    model.system.realize(state, SimTK::Stage::Acceleration);
    const Vec3 chassis = model.chassis.getUDot(state);
    return {chassis[1],
            -chassis[2],
            chassis[0],
            model.center.getOneUDot(state, 2),
            model.front.getOneUDot(state, 0),
            model.wheels.getOneUDot(state, 0),
            model.center.getOneQ(state, 0),
            model.axle.getOneQ(state, 0)};
}

}  // namespace bolthole
