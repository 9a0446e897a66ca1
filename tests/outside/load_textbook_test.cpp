// Weights, CG height, load transfer and launch against textbooks. Beside each: where it stands, and what of
// it was recalled from memory or recomputed from the printed inputs.
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/statics/braking.h"
#include "geometry/statics/launch.h"
#include "geometry/weights/cg_height.h"
#include "geometry/weights/weights.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {}  // namespace

// NIST SP 811, App. B (from memory; factors read elsewhere): 1 lbf 4.4482216152605 N, 1 lbf/in
// 175.12683524647636 N/m. Standard gravity is right if pounds are.
TEST(LoadTextbook, PoundForce) {
    EXPECT_NEAR(kPoundForce, 4.4482216152605, 1e-15);
    EXPECT_NEAR(kPoundPerInch, 175.12683524647636, 1e-12);
}

// R. N. Jazar, Vehicle Dynamics, 1st ed., Springer, Ex. 40, p. 41 (read): wheelbase 2.34 m, 2000 N under each
// front and 1800 N under each rear wheel: CG a1 = 1.1084 m behind the front and a2 = 1.2316 m ahead of the
// rear axle.
TEST(LoadTextbook, JazarCgForeAndAft) {
    const CornerWeights wheels{2000 / kStandardGravity, 2000 / kStandardGravity, 1800 / kStandardGravity,
                               1800 / kStandardGravity};
    const WeightFigures figures = weightFigures(wheels, {.wheelbase = 2.34});
    EXPECT_NEAR(figures.cgAhead, 1.2316, 5e-5);
    EXPECT_NEAR(2.34 - figures.cgAhead, 1.1084, 5e-5);
    EXPECT_FALSE(figures.cgLeft.has_value());
}

// R. N. Jazar, Vehicle Dynamics, 1st ed., Springer, eqs 2.87-2.88, p. 50 (read): under each front wheel m g
// a2/(2 l) - m g (h/l) (a/g)/2, under each rear wheel m g a1/(2 l) + m g (h/l) (a/g)/2; the front wheels
// leave the ground at a/g = a2/h.
TEST(LoadTextbook, JazarAccelerationOnTheLevel) {
    CarGenerator generator(61);
    for (int number = 0; number < 200; ++number) {
        const double m = generator.between(700, 2200);
        const double l = generator.between(2.2, 3.1);
        const double a1 = l * generator.between(0.35, 0.65);
        const double h = generator.between(0.4, 0.7);
        const StandingCar car{.mass = m, .wheelbase = l, .cgAhead = l - a1, .cgHeight = h};
        const double g = car.gravity;
        const double limit = g * (l - a1) / h;
        const double a = limit * generator.between(0.0, 1.0);
        const LaunchLoads loads = launchLoads(car, a);
        EXPECT_NEAR(loads.front / 2, 0.5 * m * g * (l - a1) / l - 0.5 * m * g * (h / l) * (a / g), 1e-9);
        EXPECT_NEAR(loads.rear / 2, 0.5 * m * g * a1 / l + 0.5 * m * g * (h / l) * (a / g), 1e-9);
        EXPECT_NEAR(loads.liftAcceleration, limit, 1e-12);
        EXPECT_FALSE(loads.wheelsUp);
    }
}

// R. C. Hibbeler, Engineering Mechanics: Dynamics, 12th ed., Prentice Hall, 2010, Ex. 17.5 (edition from
// memory; read in the printing with A. Gupta, p. 733): 2000 kg, CG 1.25 m from the front and 0.75 m from the
// rear wheels, 0.3 m high; the rear wheels slip at mu 0.25: 6.88 kN in front, 12.74 kN behind, 1.59 m/s^2,
// with g 9.81.
TEST(LoadTextbook, HibbelerSlippingRearWheels) {
    const StandingCar car{.mass = 2000, .wheelbase = 2.0, .cgAhead = 0.75, .cgHeight = 0.3, .gravity = 9.81};
    const double acceleration = gripAcceleration(car, 0.25);
    EXPECT_NEAR(acceleration, 1.59, 0.005);
    const LaunchLoads loads = launchLoads(car, acceleration);
    EXPECT_NEAR(loads.front, 6880, 5);
    EXPECT_NEAR(loads.rear, 12740, 5);
    EXPECT_NEAR(loads.thrust, 0.25 * loads.rear, 1e-9);
}

// J. L. Meriam, L. G. Kraige, Engineering Mechanics: Dynamics, 7th ed., Wiley, 2012 (edition from memory), SP
// 6/1, p. 422 (inputs read, results computed with g 32.2 ft/s^2): 3220 lb up a 10 % grade from rest to 44
// ft/s in 200 ft, CG 24 in high and 60 in from either axle: 804.4 lb of thrust, 1441.1 lb in front, 1762.9 lb
// behind.
TEST(LoadTextbook, MeriamUpTheGrade) {
    const StandingCar car{.mass = 100 * 32.2 * kPoundForce / (32.2 * kFoot),
                          .wheelbase = 120 * kMetresPerInch,
                          .cgAhead = 60 * kMetresPerInch,
                          .cgHeight = 24 * kMetresPerInch,
                          .grade = std::atan(0.10),
                          .gravity = 32.2 * kFoot};
    const double acceleration = 44.0 * 44.0 / (2 * 200) * kFoot;
    const LaunchLoads loads = launchLoads(car, acceleration);
    EXPECT_NEAR(loads.thrust / kPoundForce, 804.4, 0.05);
    EXPECT_NEAR(loads.front / kPoundForce, 1441.1, 0.05);
    EXPECT_NEAR(loads.rear / kPoundForce, 1762.9, 0.05);
}

// D. Barton, J. Fieldhouse, Automotive Chassis Engineering (Springer 2018), sec. 3.11, p. 197, eqs 3.63-3.69
// (read): rear deflection times rear rate is m a (h/L - e/d). With W 3000 lb, L 120 in, h 30 in, front 150
// and rear 100 lb/in, taken as a whole axle's and so halved for one wheel (computed): no rear deflection at
// e/d 0.25, no pitch at 0.416667.
TEST(LoadTextbook, BartonFieldhouseAttitude) {
    const StandingCar car{.mass = 3000 * kKilogramsPerPound,
                          .wheelbase = 120 * kMetresPerInch,
                          .cgAhead = 60 * kMetresPerInch,
                          .cgHeight = 30 * kMetresPerInch};
    const WheelRates front{.wheel = 75 * kPoundPerInch};
    const WheelRates rear{.wheel = 50 * kPoundPerInch};
    const LaunchLoads loads = launchLoads(car, 0.5 * kStandardGravity);
    const auto attitude = [&](double slope) { return *launchAttitude(car, loads, slope, front, rear); };
    EXPECT_NEAR(attitude(0.25).rearTravel, 0, 1e-15);
    EXPECT_NEAR(attitude(0.416667).pitch, 0, 1e-7);
    // 1500 lb x (0.25 - 0.1) over 100 lb/in, and 1500 lb x 0.25 over 150 lb/in.
    EXPECT_NEAR(attitude(0.1).rearTravel / kMetresPerInch, 2.25, 1e-9);
    EXPECT_NEAR(attitude(0.1).frontTravel / kMetresPerInch, -2.5, 1e-9);
    EXPECT_LT(attitude(0.1).pitch, 0) << "squat and a rising front: nose up";
}

// Constant acceleration from rest, s = a t^2/2 (any mechanics text): 60 ft in 2 s need 30 ft/s^2.
TEST(LoadTextbook, SixtyFootTime) {
    EXPECT_NEAR(accelerationFromSixtyFoot(2.0, 0), 30 * kFoot, 1e-12);
    EXPECT_NEAR(accelerationFromSixtyFoot(1.5, 0) / kStandardGravity, 53.3333 / 32.1740, 1e-5);
}

// The same law twice, v^2 = 2 a s and d = v t + a t^2/2 (any mechanics text): at 30 ft/s^2 a car that rolled
// 0.9 ft passes the beam at sqrt(54) ft/s and covers 60 ft in (sqrt(54 + 3600) - sqrt(54))/30 s.
TEST(LoadTextbook, SixtyFootTimeAfterARollout) {
    const double seconds = (std::sqrt(54.0 + 3600.0) - std::sqrt(54.0)) / 30;
    EXPECT_NEAR(accelerationFromSixtyFoot(seconds, 0.9 * kFoot), 30 * kFoot, 1e-12);
    // A 22-in tire past a beam at 1 9/16 in rolls 11.3 in (computed in launch_time_textbook_test.cpp): taken
    // from rest at the beam, the same time reads 28 % high, within the 20 to 32 % of usual rollouts.
    const double rolled = accelerationFromSixtyFoot(seconds, 11.3 / 12 * kFoot);
    EXPECT_NEAR(accelerationFromSixtyFoot(seconds, 0) / rolled, 1.28, 0.02);
}

// T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE 1992), ch. 2, traction of a solid rear axle with an
// open differential (from memory): each tire gains or loses F r/(N t) x Kf/(Kf + Kr), with F the thrust, r
// the tire radius, N the axle ratio, t the track and K the ends' roll stiffnesses.
TEST(LoadTextbook, GillespieLateralTransferOfALiveAxle) {
    CarGenerator generator(62);
    for (int number = 0; number < 200; ++number) {
        const double track = generator.between(1.3, 1.6);
        const double front = generator.between(10e3, 60e3);
        const double rear = generator.between(10e3, 60e3);
        const Stance stance{.wheelbase = 2.7,
                            .frontTrack = generator.between(1.3, 1.6),
                            .rearTrack = track,
                            .front = WheelRates{.wheel = 1, .roll = front},
                            .rear = WheelRates{.wheel = 1, .roll = rear}};
        const StandingCar car{.mass = 1500, .wheelbase = 2.7, .cgAhead = 1.4, .cgHeight = 0.55};
        const LaunchLoads loads = launchLoads(car, 5.0);
        const double radius = generator.between(0.3, 0.36);
        const double ratio = generator.between(3, 4.6);
        const CornerWeights even{389, 389, 361, 361};
        const auto sides =
            launchSides(car, loads, even, driveshaftTorque(loads.thrust, radius, ratio), stance);
        ASSERT_TRUE(sides.has_value());
        const double shift = loads.thrust * radius / (ratio * track) * front / (front + rear);
        EXPECT_NEAR(sides->leftRear, loads.rear / 2 + shift, 1e-8);
        EXPECT_NEAR(sides->rightRear, loads.rear / 2 - shift, 1e-8);
    }
}

// R. N. Jazar, Vehicle Dynamics, 1st ed., Springer, eqs 2.29-2.32, p. 43 (read), derives the lift method, and
// the course notes "Vehicle Inertial Measurements", Notes_07_04, which cite ISO 10392, write it (read) as sin
// a = H/L, b = L F/W, h = rr + (rf - rr) b/L + (b - L F'/W) cot a with the front raised; with the rear raised
// the bracket's sign flips. The same with tires of one size; with others to the second order of their
// difference.
TEST(LoadTextbook, JazarLiftMethod) {
    CarGenerator generator(63);
    for (int number = 0; number < 200; ++number) {
        const bool oneSize = number % 2 == 0;
        const LiftCar car{.wheelbase = generator.between(2.3, 3.1),
                          .rearTireRadius = 0.33,
                          .frontTireRadius = oneSize ? 0.33 : generator.between(0.31, 0.35)};
        LiftTest test;
        test.level = {420, 400, 360, 350};
        test.raised = number % 4 < 2 ? CarEnd::front : CarEnd::rear;
        test.lift = generator.between(0.3, 0.9);
        const double sign = test.raised == CarEnd::front ? 1 : -1;
        test.reading = 820 - sign * generator.between(5, 60);
        const double b = car.wheelbase * 820 / 1530;
        const double cotangent = std::sqrt(std::pow(car.wheelbase / test.lift, 2) - 1);
        const double step = car.frontTireRadius - car.rearTireRadius;
        const double handout = car.rearTireRadius + step * b / car.wheelbase +
                               sign * (b - car.wheelbase * test.reading / 1530) * cotangent;
        // The two differ by step times what of the weight moved, and by the angle's own share of step.
        EXPECT_NEAR(liftHeight(test, car), handout, oneSize ? 1e-12 : 0.1 * std::abs(step));
    }
}

// Measured CG heights of passenger cars, published by NHTSA (G. J. Heydinger et al., Measured Vehicle
// Inertial Parameters, SAE 1999-01-1336, title from memory, carries the measurements): decade means 0.524,
// 0.542, 0.530, 0.545, 0.553 m (1970s to 2010s); 404 single cars, mean 0.545, standard deviation 0.027,
// lowest 0.450, highest 0.675 m (read in a chart's data; see estimatedCgHeight()).
TEST(LoadTextbook, EstimateHoldsMeasuredCars) {
    const CgHeight estimate = estimatedCgHeight();
    ASSERT_TRUE(estimate.uncertainty.has_value());
    for (const double mean : {0.524, 0.542, 0.530, 0.545, 0.553}) {
        EXPECT_NEAR(estimate.height, mean, *estimate.uncertainty);
    }
    EXPECT_NEAR(estimate.height, 0.545, 5e-4);
    EXPECT_GT(*estimate.uncertainty, 1.5 * 0.027) << "wider than the cars measured as built";
    EXPECT_LT(std::abs(estimate.height - 0.450), 2 * *estimate.uncertainty);
    EXPECT_LT(std::abs(estimate.height - 0.675), 3 * *estimate.uncertainty);
}

}  // namespace bolthole
