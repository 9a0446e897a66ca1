// The equations of motion of geometry/dynamics/launch_model.h.
#include <algorithm>
#include <cmath>

#include "geometry/dynamics/launch_model.h"

namespace bolthole {

void LaunchModel::observe(double time, const LaunchState& y) {
    state_ = y;
    const LaunchBodies& bodies = inputs_.bodies;
    const LaunchTires& tires = inputs_.tires;
    LaunchMoment& now = now_;
    table_.read(y[kRearTravel], values_.data());
    now.x = values_[0];
    now.turn = values_[1];
    now.sine = std::sin(y[kPitch]);
    now.cosine = std::cos(y[kPitch]);
    const double turning = y[kPitchRate];

    const double axleZ = bodies.rearRadius + y[kRearTravel];
    const double axle1 = turning * axleZ + now.x.first * y[kRearRate];
    const double axle3 = y[kRearRate] - turning * now.x.value;
    now.axleUp = y[kUp] - now.x.value * now.sine + axleZ * now.cosine;
    now.axleForwardRate = y[kForwardRate] + axle1 * now.cosine + axle3 * now.sine;
    now.axleUpRate = y[kUpRate] - axle1 * now.sine + axle3 * now.cosine;

    const double frontZ = bodies.frontRadius + y[kFrontTravel];
    const double front3 = y[kFrontRate] - turning * bodies.wheelbase;
    now.frontUp = y[kUp] - bodies.wheelbase * now.sine + frontZ * now.cosine;
    now.frontUpRate = y[kUpRate] - turning * frontZ * now.sine + front3 * now.cosine;
    now.distance = y[kForward] + bodies.wheelbase * now.cosine + frontZ * now.sine - bodies.wheelbase;

    now.housingTurnRate = turning + now.turn.first * y[kRearRate];
    now.turbineSpeed = ratio_ * (y[kWheelSpin] - now.housingTurnRate);
    now.creep = now.axleUp * y[kWheelSpin] - now.axleForwardRate;
    now.slip = (y[kTread] + tires.lag * now.creep) / tires.relaxation;

    const double rearAtRest = bodies.total * bodies.gravity - bodies.frontLoad;
    arguments_[kClock] = time;
    arguments_[kRearTire] = rearAtRest + 2 * tires.rearRate * (bodies.rearRadius - now.axleUp) -
                            2 * tires.damping * now.axleUpRate;
    arguments_[kFrontTire] = bodies.frontLoad + 2 * tires.frontRate * (bodies.frontRadius - now.frontUp) -
                             2 * tires.damping * now.frontUpRate;
    arguments_[kFrontStops] = y[kFrontTravel];
    arguments_[kFrontShock] = inputs_.front.motionRatio * y[kFrontRate];
    arguments_[kTorqueCurve] = y[kEngineSpeed];
    if (hasConverter()) {
        arguments_[kSpeedRatio] = now.turbineSpeed / y[kEngineSpeed];
    } else if (clutch_ != Clutch::locked) {
        arguments_[kSpeedRatio] = y[kEngineSpeed] - now.turbineSpeed;
    }
    arguments_[kLinkageEnd] = y[kRearTravel];
    for (std::size_t line = 0; line < lines_.size(); ++line) {
        const TableValue& length = lineLength(line);
        arguments_[kFixedKinks + 2 * line] = length.value;
        arguments_[kFixedKinks + 2 * line + 1] = -length.first * y[kRearRate];
    }
}

double LaunchModel::lineForce(std::size_t line) const {
    return on(kFixedKinks + 2 * line);
}

double LaunchModel::lineDamping(std::size_t line) const {
    return on(kFixedKinks + 2 * line + 1);
}

void LaunchModel::derive(LaunchState& rates) {
    deriveTires();
    deriveSuspension();
    deriveDrive();
    solve(rates);
    if (clutch_ == Clutch::locked) {
        lockDrive(rates);
        if ((now_.pumpTorque >= 0) != lockedDriving_) {  // the losses go the other way
            lockedDriving_ = !lockedDriving_;
            deriveDrive();
            solve(rates);
            lockDrive(rates);
        }
    }
}

// Transient tread after H. B. Pacejka, "Tire and Vehicle Dynamics", chs. 7 and 8, its force by ch. 4 (from
// memory).
void LaunchModel::deriveTires() {
    now_.rearLoad = on(kRearTire);
    now_.frontLoad = on(kFrontTire);
    now_.thrust =
        now_.rearLoad * inputs_.tires.friction * std::sin(peakShape_ * std::atan(peakRise_ * now_.slip));
}

void LaunchModel::deriveSuspension() {
    double force = inputs_.rearWheelRate ? -2 * *inputs_.rearWheelRate * state_[kRearTravel] : 0;
    for (std::size_t line = 0; line < lines_.size(); ++line) {
        force += lines_[line].count * (lineForce(line) + lineDamping(line)) * lineLength(line).first;
    }
    now_.suspension = force;
}

double LaunchModel::clutchCapacity() const {
    return inputs_.coupling.capacity * on(kClock);
}

void LaunchModel::deriveDrive() {
    now_.engineTorque = on(kTorqueCurve) * limiter_[indices_[kTorqueCurve]].at(arguments_[kTorqueCurve]);
    drivelineInertia_ = inputs_.bodies.drivelineInertia * ratio_ * ratio_;
    if (clutch_ == Clutch::locked) {
        // The engine turns with the turbine: T = ratio eta (T_e - I_e ratio alpha), alpha that of the wheels
        // against the housing, is a torque and more inertia.
        const double passed = ratio_ * (lockedDriving_ ? inputs_.efficiency : 1 / inputs_.efficiency);
        drivelineInertia_ += passed * ratio_ * inputs_.engine.inertia;
        lockedTorque_ = now_.ringTorque = passed * now_.engineTorque;
        return;
    }
    slipDrive();
    const double loss = now_.outputTorque < 0 ? 1 / inputs_.efficiency : inputs_.efficiency;
    const double held = hasConverter() ? on(kClock) : 1;  // by the brakes, until they are off
    now_.ringTorque = ratio_ * now_.outputTorque * loss * held;
}

void LaunchModel::slipDrive() {
    if (hasConverter()) {
        const double speed = state_[kEngineSpeed];
        const double multiplied = multiplier_[indices_[kSpeedRatio]].at(arguments_[kSpeedRatio]);
        now_.pumpTorque = stallFactor_ * speed * speed * on(kSpeedRatio);
        now_.outputTorque = now_.pumpTorque * multiplied;
    } else {
        now_.pumpTorque = clutch_ == Clutch::engineFaster ? clutchCapacity() : -clutchCapacity();
        now_.outputTorque = now_.pumpTorque;
    }
}

// What the lock carries, from the accelerations found with it.
void LaunchModel::lockDrive(const LaunchState& rates) {
    const double alpha = rates[kEngineSpeed] / ratio_;
    const double inertia = inputs_.engine.inertia * ratio_;
    now_.pumpTorque = now_.outputTorque = now_.engineTorque - inertia * alpha;
    const double passed = ratio_ * (lockedDriving_ ? inputs_.efficiency : 1 / inputs_.efficiency);
    now_.ringTorque = passed * now_.pumpTorque;
    arguments_[kSpeedRatio] = now_.pumpTorque / clutchCapacity();
}

LaunchForces LaunchModel::drivingForces(double thrust, double torque) const {
    const LaunchMoment& now = now_;
    const double axleZ = inputs_.bodies.rearRadius + state_[kRearTravel];
    const double along1 = thrust * now.cosine;
    const double along3 = thrust * now.sine;
    return {along1, along3, axleZ * along1 - now.x.value * along3 - torque,
            now.x.first * along1 + along3 - torque * now.turn.first, 0};
}

// Gravity, tires and what the velocities make, on the five coordinates: for every body the force at its
// center less mass times the acceleration it has while the coordinates' own are zero.
LaunchForces LaunchModel::bodyForces() const {
    const LaunchMoment& now = now_;
    const LaunchBodies& bodies = inputs_.bodies;
    const double spin = state_[kPitchRate];
    const double spin2 = spin * spin;
    const double rearRate = state_[kRearRate];
    const double gravity1 = bodies.gravity * now.sine;
    const double gravity3 = -bodies.gravity * now.cosine;
    const double axleX = now.x.value;
    const double axleZ = bodies.rearRadius + state_[kRearTravel];
    const double frontX = bodies.wheelbase;
    const double frontZ = bodies.frontRadius + state_[kFrontTravel];
    const double wheelMass = bodies.frontWheelInertia / (bodies.frontRadius * bodies.frontRadius);

    const double sprung1 = rest_.sprungMass * (gravity1 + spin2 * rest_.sprungX);
    const double sprung3 = rest_.sprungMass * (gravity3 + spin2 * rest_.sprungZ);
    const double axle1 = bodies.rearUnsprung * (gravity1 + spin2 * axleX - 2 * spin * rearRate -
                                                now.x.second * rearRate * rearRate) +
                         now.thrust * now.cosine - now.rearLoad * now.sine;
    const double axle3 =
        bodies.rearUnsprung * (gravity3 + spin2 * axleZ + 2 * spin * now.x.first * rearRate) +
        now.thrust * now.sine + now.rearLoad * now.cosine;
    const double drift1 = spin2 * frontX - 2 * spin * state_[kFrontRate];
    const double drift3 = spin2 * frontZ;
    const double rolling = wheelMass * (drift1 * now.cosine + drift3 * now.sine);
    const double front1 =
        bodies.frontUnsprung * (gravity1 + drift1) - now.frontLoad * now.sine + rolling * now.cosine;
    const double front3 =
        bodies.frontUnsprung * (gravity3 + drift3) + now.frontLoad * now.cosine + rolling * now.sine;
    return {sprung1 + axle1 + front1, sprung3 + axle3 + front3,
            rest_.sprungZ * sprung1 - rest_.sprungX * sprung3 + axleZ * axle1 - axleX * axle3 +
                frontZ * front1 - frontX * front3,
            now.x.first * axle1 + axle3, front3};
}

namespace {

// Solves the symmetric positive 5 x 5 system, of whose matrix the lower half is given, by Cholesky's
// factors without roots (G. H. Golub, C. F. Van Loan, "Matrix Computations", ch. 4; from memory).
void solveInPlace(std::array<std::array<double, 5>, 5>& m, LaunchForces& b) {
    for (std::size_t column = 0; column < 5; ++column) {
        const double inverse = 1 / m[column][column];
        for (std::size_t row = column + 1; row < 5; ++row) {
            const double share = m[row][column] * inverse;
            b[row] -= share * b[column];
            for (std::size_t other = column + 1; other <= row; ++other) {
                m[row][other] -= share * m[other][column];
            }
        }
        b[column] *= inverse;
        for (std::size_t row = column + 1; row < 5; ++row) {
            m[row][column] *= inverse;
        }
    }
    for (std::size_t column = 5; column-- > 1;) {
        for (std::size_t row = 0; row < column; ++row) {
            b[row] -= m[column][row] * b[column];
        }
    }
}

}  // namespace

void LaunchModel::solve(LaunchState& rates) {
    const LaunchMoment& now = now_;
    const LaunchBodies& bodies = inputs_.bodies;
    const double turn1 = now.turn.first;
    const double curvature = now.turn.second * state_[kRearRate] * state_[kRearRate];
    // The wheels' spin is taken out first: J w' + D (w' - a) = T - F R, with a the housing's acceleration.
    const double together = bodies.wheelInertia + drivelineInertia_;
    const double onWheels = now.ringTorque - now.thrust * now.axleUp;
    const double housing = bodies.housingInertia + drivelineInertia_ * bodies.wheelInertia / together;
    const double couple = -now.ringTorque + drivelineInertia_ / together * onWheels - housing * curvature;

    LaunchForces forces = bodyForces();
    forces[2] += couple + rest_.onPitch;
    forces[3] += couple * turn1 + now.suspension + rest_.onRear;
    forces[4] += frontForce() - 2 * inputs_.front.motionRatio * frontShaftForce() + rest_.onFront;

    const double axleMass = bodies.rearUnsprung;
    const double frontMass = bodies.frontUnsprung;
    const double sprungMass = rest_.sprungMass;
    const double axleX = now.x.value;
    const double axleZ = bodies.rearRadius + state_[kRearTravel];
    const double frontX = bodies.wheelbase;
    const double frontZ = bodies.frontRadius + state_[kFrontTravel];
    const double x1 = now.x.first;
    std::array<std::array<double, 5>, 5> mass{};
    mass[0] = {bodies.total};
    mass[1] = {0, bodies.total};
    mass[2] = {sprungMass * rest_.sprungZ + axleMass * axleZ + frontMass * frontZ,
               -(sprungMass * rest_.sprungX + axleMass * axleX + frontMass * frontX),
               sprungMass * (rest_.sprungX * rest_.sprungX + rest_.sprungZ * rest_.sprungZ) +
                   axleMass * (axleX * axleX + axleZ * axleZ) +
                   frontMass * (frontX * frontX + frontZ * frontZ) + bodies.pitchInertia + housing};
    mass[3] = {axleMass * x1, axleMass, axleMass * (axleZ * x1 - axleX) + housing * turn1,
               axleMass * (x1 * x1 + 1) + housing * turn1 * turn1};
    mass[4] = {0, frontMass, -frontMass * frontX, 0, frontMass};
    // Front wheels that roll are more mass along the ground.
    const double wheelMass = bodies.frontWheelInertia / (bodies.frontRadius * bodies.frontRadius);
    const LaunchForces along{now.cosine, now.sine, frontZ * now.cosine - frontX * now.sine, 0, now.sine};
    for (std::size_t row = 0; row < 5; ++row) {
        for (std::size_t column = 0; column <= row; ++column) {
            mass[row][column] += wheelMass * along[row] * along[column];
        }
    }
    solveInPlace(mass, forces);

    const double housingTurn = forces[2] + turn1 * forces[3] + curvature;
    std::copy_n(&state_[kForwardRate], 5, &rates[kForward]);
    rates[kForwardRate] = forces[0] * now.cosine + forces[1] * now.sine;
    rates[kUpRate] = forces[1] * now.cosine - forces[0] * now.sine;
    rates[kPitchRate] = forces[2];
    rates[kRearRate] = forces[3];
    rates[kFrontRate] = forces[4];
    rates[kWheelSpin] = (onWheels + drivelineInertia_ * housingTurn) / together;
    rates[kTread] = now.creep - std::abs(now.axleForwardRate) * state_[kTread] / inputs_.tires.relaxation;
    rates[kEngineSpeed] = clutch_ == Clutch::locked
                              ? ratio_ * (rates[kWheelSpin] - housingTurn)
                              : (now.engineTorque - now.pumpTorque) / inputs_.engine.inertia;
}

}  // namespace bolthole
