// A car complete enough to be launched: invented numbers of a street car on slicks.
#pragma once

#include <numbers>
#include <utility>
#include <vector>

#include "geometry/dynamics/launch_inputs.h"
#include "geometry/dynamics/launch_limits.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_parts.h"

namespace bolthole {

/// Two clicks: a soft and a hard row, the middle in use.
inline Damping makeDamping(double bump, double rebound) {
    Damping damping;
    damping.speeds = {0.025, 0.05, 0.125, 0.25, 0.5};
    const auto rows = [](double scale) {
        DampingWay way;
        way.clicks = {0, 10};
        for (const double click : {0.5, 1.5}) {
            std::vector<double> row;
            for (const double share : {0.25, 0.45, 0.8, 1.1, 1.6}) {
                row.push_back(scale * click * share);
            }
            way.force.push_back(row);
        }
        way.at = 5;
        return way;
    };
    damping.bump = rows(bump);
    damping.rebound = rows(rebound);
    return damping;
}

/// The rest of a launch with a converter.
inline EnteredLaunch makeLaunchSetup() {
    EnteredLaunch setup;
    setup.frontUnsprungMass = 75;
    setup.pitchInertia = 1900;
    setup.housingInertia = 1.6;
    setup.wheelInertia = 4.2;
    setup.frontWheelInertia = 1.8;
    setup.drivelineInertia = 0.06;
    for (const auto& [rpm, torque] : {std::pair{1000.0, 380.0},
                                      {2000.0, 480.0},
                                      {3000.0, 560.0},
                                      {4000.0, 610.0},
                                      {5000.0, 590.0},
                                      {6000.0, 520.0},
                                      {6800.0, 420.0}}) {
        setup.engine.torque.push_back({rpm * kRpm, torque});
    }
    setup.engine.inertia = 0.28;
    setup.engine.launchSpeed = 2400 * kRpm;
    setup.engine.revLimit = 6500 * kRpm;
    setup.coupling.kind = CouplingKind::converter;
    setup.coupling.stallSpeed = 3600 * kRpm;
    setup.coupling.capacity = 900;
    setup.front.droop = 0.09;
    setup.front.bump = 0.07;
    setup.front.motionRatio = 0.7;
    setup.front.damping = makeDamping(700, 1100);
    return setup;
}

/// What the car file has of a launch, onto any car, where it is not there yet; with springs, shocks, bump
/// stops and straps at its rear where it has none.
inline void dressForLaunch(Car& car) {
    car.launch.unsprungMass = car.launch.unsprungMass.value_or(118);
    car.launch.friction = car.launch.friction.value_or(1.25);
    car.launch.gear = car.launch.gear.value_or(2.48);
    car.launch.axleRatio = car.launch.axleRatio.value_or(3.73);
    car.launch.efficiency = car.launch.efficiency.value_or(85);
    car.launch.converter = car.launch.converter.value_or(1.9);
    car.wheelRates.front.wheel = car.wheelRates.front.wheel.value_or(24.5e3);
    car.wheelRates.front.tire = car.wheelRates.front.tire.value_or(225e3);
    car.wheelRates.rear.tire = car.wheelRates.rear.tire.value_or(205e3);
    if (car.springs.empty()) {
        const double radius = car.rearTireRadius;
        SuspensionPart coil = makePart("coil", PartKind::spring, Side::both,
                                       {{0.038, 0.42, radius + 0.21}, {0.038, 0.42, radius - 0.035}});
        coil.rate = 30e3;
        coil.freeLength = 0.355;
        SuspensionPart shock = makePart("shock", PartKind::shock, Side::both,
                                        {{0.12, 0.38, radius + 0.35}, {-0.06, 0.43, radius - 0.1}});
        shock.closedLength = 0.33;
        shock.openLength = 0.62;
        SuspensionPart stop = makePart("bump stop", PartKind::bumpStop, Side::both,
                                       {{0.013, 0.48, radius + 0.194}, {0.013, 0.48, radius + 0.054}});
        stop.rate = 80e3;
        stop.freeLength = 0.07;
        stop.closedLength = 0.016;
        SuspensionPart strap = makePart("strap", PartKind::strap, Side::both,
                                        {{-0.15, 0.45, radius + 0.21}, {-0.15, 0.45, radius - 0.05}});
        strap.openLength = 0.385;
        car.springs = {coil, shock, stop, strap};
    }
    for (SuspensionPart& part : car.springs) {
        if (part.kind == PartKind::shock || part.kind == PartKind::coilOver) {
            part.damping = makeDamping(800, 1300);
        }
    }
}

/// Inputs of a drawn car, dressed. The generator's cars all have what findFaults() asks.
inline LaunchInputs makeLaunch(Car car, const EnteredLaunch& setup = makeLaunchSetup()) {
    const EnteredLaunch entered = car.launch;
    car.launch = setup;
    car.launch.unsprungMass = entered.unsprungMass;
    car.launch.friction = entered.friction;
    car.launch.gear = entered.gear;
    car.launch.axleRatio = entered.axleRatio;
    car.launch.efficiency = entered.efficiency;
    car.launch.converter = entered.converter;
    dressForLaunch(car);
    LaunchInputsResult result = launchInputsOf(car);
    return result.inputs ? std::move(*result.inputs) : LaunchInputs{};
}

}  // namespace bolthole
