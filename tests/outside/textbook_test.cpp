// Worked examples and relations from textbooks. Beside each: where it stands, and what of it was recalled
// from memory or recomputed from the printed inputs.
#include <gmock/gmock.h>

#include <Eigen/LU>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"

namespace bolthole {

namespace {

using Eigen::Vector2d;

// A planar four-bar: ground pivots, lengths of crank, coupler and rocker. X is our x, Y our z. The crank is
// pinned at the first ground pivot.
struct FourBar {
    Vector2d crankPivot;
    Vector2d rockerPivot;
    double crank;
    double coupler;
    double rocker;

    [[nodiscard]] Vector2d crankPin(double crankAngle) const {
        return crankPivot + crank * Vector2d(std::cos(crankAngle), std::sin(crankAngle));
    }
    // Coupler's and rocker's common pin: the crossing of two circles. side +1: to the left of the line from
    // crank pin to rocker pivot.
    [[nodiscard]] Vector2d rockerPin(double crankAngle, double side) const {
        const Vector2d pin = crankPin(crankAngle);
        const Vector2d line = rockerPivot - pin;
        const double distance = line.norm();
        const double along = (distance * distance + coupler * coupler - rocker * rocker) / (2 * distance);
        const double across = std::sqrt(coupler * coupler - along * along);
        const Vector2d unit = line / distance;
        return pin + along * unit + side * across * Vector2d(-unit.y(), unit.x());
    }
};

// The four-bar as an axle on two center links: the coupler is the axle, its middle the axle's center, crank
// and rocker are the links. Symmetry holds y and yaw. Measured with the crank at `startAngle`.
class CouplerAxle {
  public:
    CouplerAxle(const FourBar& bar, double startAngle, double side)
        : bar_(bar), startPin_(bar.crankPin(startAngle)), startEnd_(bar.rockerPin(startAngle, side)) {
        const Vector2d center = (startPin_ + startEnd_) / 2;
        originX_ = center.x();
        Linkage linkage;
        linkage.measuredHeight = center.y();
        linkage.constraints = {rod(startPin_ - center, bar.crankPivot, bar.crank),
                               rod(startEnd_ - center, bar.rockerPivot, bar.rocker)};
        solver_.emplace(linkage, Drive::travel);
        crankOnAxle_ = linkage.constraints[0].onAxle;
        rockerOnAxle_ = linkage.constraints[1].onAxle;
        height_ = linkage.measuredHeight;
        EXPECT_TRUE(solver_->assemble().usable());
    }

    // Brings the coupler's middle to `height`.
    void moveCenterTo(double height) { EXPECT_TRUE(solver_->moveTo(height - height_).usable()); }

    [[nodiscard]] Vector2d crankPin() const { return at(crankOnAxle_); }
    [[nodiscard]] Vector2d rockerPin() const { return at(rockerOnAxle_); }
    [[nodiscard]] double crankAngle() const { return angleOf(crankPin() - bar_.crankPivot); }
    [[nodiscard]] double couplerAngle() const { return angleOf(rockerPin() - crankPin()); }
    [[nodiscard]] double rockerAngle() const { return angleOf(rockerPin() - bar_.rockerPivot); }

    // p + (1/w, -dx/w), in the four-bar's coordinates.
    [[nodiscard]] Vector2d instantCenter() const {
        const AxleRates& rates = solver_->travelRates();
        const AxlePose pose = solver_->pose();
        return {originX_ + pose.x + 1.0 / rates.pitch, pose.z - rates.x / rates.pitch};
    }
    // Angular velocities, counterclockwise, when the crank turns at `crankSpeed`: coupler, then rocker.
    [[nodiscard]] Vector2d speeds(double crankSpeed) const {
        const double crankRate = turnRate(crankPin(), bar_.crankPivot);
        const double scale = crankSpeed / crankRate;
        return {-solver_->travelRates().pitch * scale, turnRate(rockerPin(), bar_.rockerPivot) * scale};
    }

  private:
    static double angleOf(const Vector2d& v) { return std::atan2(v.y(), v.x()); }

    Constraint rod(const Vector2d& onAxle, const Vector2d& pivot, double length) const {
        Constraint link;
        link.onAxle = {onAxle.x(), 0, onAxle.y()};
        link.onChassis = {pivot.x() - originX_, 0, pivot.y()};
        link.length = length;
        return link;
    }
    [[nodiscard]] Vector2d at(const Eigen::Vector3d& onAxle) const {
        const Eigen::Vector3d point = solver_->pose().carry(onAxle);
        return {point.x() + originX_, point.z()};
    }
    // Counterclockwise angular velocity about `pivot` of a point of the coupler, per unit of travel.
    [[nodiscard]] double turnRate(const Vector2d& point, const Vector2d& pivot) const {
        const AxleRates& rates = solver_->travelRates();
        const Vector2d arm = point - Vector2d(originX_ + solver_->pose().x, solver_->pose().z);
        const Vector2d velocity(rates.x + rates.pitch * arm.y(), 1.0 - rates.pitch * arm.x());
        const Vector2d radius = point - pivot;
        return (radius.x() * velocity.y() - radius.y() * velocity.x()) / radius.squaredNorm();
    }

    FourBar bar_;
    Vector2d startPin_;
    Vector2d startEnd_;
    double originX_ = 0;
    double height_ = 0;
    Eigen::Vector3d crankOnAxle_;
    Eigen::Vector3d rockerOnAxle_;
    std::optional<AxleSolver> solver_;
};

}  // namespace

// P. E. Nikravesh, Planar Multibody Dynamics, CRC Press, 2008 (title and edition from memory; values read):
// crank 1, coupler 3, rocker 2.2, second ground pivot (2, 0.5); at a crank angle of pi/2 and 2 pi rad/s:
// coupler 0.578180 and rocker 1.335740 rad, 0.709860 and 3.480717 rad/s. The coupler's instant center (0,
// -7.851305) is computed from those.
TEST(Textbook, NikraveshFourBar) {
    const FourBar bar{{0, 0}, {2, 0.5}, 1.0, 3.0, 2.2};
    CouplerAxle axle(bar, 1.35, 1.0);
    axle.moveCenterTo(1.0 + 1.5 * std::sin(0.578180));
    EXPECT_NEAR(axle.crankAngle(), std::numbers::pi / 2, 5e-6);
    EXPECT_NEAR(axle.couplerAngle(), 0.578180, 5e-6);
    EXPECT_NEAR(axle.rockerAngle(), 1.335740, 5e-6);
    const Vector2d speeds = axle.speeds(2 * std::numbers::pi);
    EXPECT_NEAR(speeds[0], 0.709860, 5e-5);
    EXPECT_NEAR(speeds[1], 3.480717, 5e-5);
    EXPECT_NEAR(axle.instantCenter().x(), 0.0, 1e-4);
    EXPECT_NEAR(axle.instantCenter().y(), -7.851305, 5e-4);
}

// R. S. Khurmi, J. K. Gupta, Theory of Machines, 14th ed., Eurasia, 2009 (edition as its Python companion,
// FOSSEE, names it), Ex. 6.1, p. 126: AB 300, BC = CD 360 mm (read), AD 600 mm and angle BAD 60 deg (from
// memory), 100 rpm. Printed, as drawn: instant center 500 mm from B, coupler 6.283 rad/s. Recomputed: 498.40
// mm, 6.3034 rad/s, instant center (399.20, 691.43) mm from A.
TEST(Textbook, KhurmiGuptaInstantCenter) {
    const FourBar bar{{0, 0}, {600, 0}, 300, 360, 360};
    const CouplerAxle axle(bar, 60 * kDegree, 1.0);
    const Vector2d center = axle.instantCenter();
    EXPECT_NEAR(center.x(), 399.20, 0.005);
    EXPECT_NEAR(center.y(), 691.43, 0.005);
    EXPECT_NEAR((center - axle.crankPin()).norm(), 498.40, 0.005);
    EXPECT_NEAR((center - axle.crankPin()).norm(), 500, 2);  // as drawn
    const double coupler = std::abs(axle.speeds(100 * 2 * std::numbers::pi / 60)[0]);
    EXPECT_NEAR(coupler, 6.3034, 5e-5);
    EXPECT_NEAR(coupler, 6.283, 0.03);  // as drawn
}

// R. L. Norton, Design of Machinery, 5th ed., McGraw-Hill, 2012, Ex. 4-1 (from memory): crank 40, coupler
// 120, rocker 80, ground 100, crank at 40 deg: open 20.298 and 57.325 deg, crossed -60.978 and -98.005 deg,
// recomputed. Each branch is reached from another crank angle of the same branch and left on it.
TEST(Textbook, NortonOpenAndCrossed) {
    const FourBar bar{{0, 0}, {100, 0}, 40, 120, 80};
    CouplerAxle open(bar, 55 * kDegree, 1.0);
    open.moveCenterTo(40 * std::sin(40 * kDegree) + 60 * std::sin(20.298 * kDegree));
    EXPECT_NEAR(open.crankAngle() / kDegree, 40, 2e-3);
    EXPECT_NEAR(open.couplerAngle() / kDegree, 20.298, 1e-3);
    EXPECT_NEAR(open.rockerAngle() / kDegree, 57.325, 1e-3);
    CouplerAxle crossed(bar, 55 * kDegree, -1.0);
    crossed.moveCenterTo(40 * std::sin(40 * kDegree) - 60 * std::sin(60.978 * kDegree));
    EXPECT_NEAR(crossed.crankAngle() / kDegree, 40, 2e-3);
    EXPECT_NEAR(crossed.couplerAngle() / kDegree, -60.978, 1e-3);
    EXPECT_NEAR(crossed.rockerAngle() / kDegree, -98.005, 1e-3);
}

namespace {

// A symmetric car whose side-view lines meet at (`icX`, `icZ`) from the rear patch, at ride; m. CG height h
// and wheelbase L as given, tires of one size, so that the ground is level.
Car carWithInstantCenter(double icX, double icZ, double cgHeight, double wheelbase) {
    Car car;
    car.wheelbase = wheelbase;
    car.rearTireRadius = car.frontTireRadius = 0.33;
    car.cornerWeights = {400, 400, 300, 300};
    car.cgHeight = cgHeight;
    const auto toward = [&](double x, double y, double z, double share) -> Ends {
        return {{x + share * (icX - x), y, z + share * (icZ - z)}, {x, y, z}};
    };
    car.links = {makeLink("lower", LinkKind::rod, Side::both, toward(0.01, 0.5, 0.21, 0.35)),
                 makeLink("upper", LinkKind::rod, Side::both, toward(-0.02, 0.3, 0.47, 0.2)),
                 makeLink("guide", LinkKind::guide, Side::center, {{0, 0, 0.33}, {0, 0, 0.33}})};
    return car;
}

}  // namespace

// D. Barton, J. Fieldhouse, Automotive Chassis Engineering (Springer, 2018), sec. 3.11, p. 197,
// eqs 3.63-3.69: full anti-squat where the swing arm's e/d equals h/L.
TEST(Textbook, BartonFieldhouseFullAntiSquat) {
    CarGenerator generator(3);
    for (int number = 0; number < 200; ++number) {
        const double h = generator.between(0.4, 0.7);
        const double wheelbase = generator.between(2.3, 3.1);
        const double d = generator.between(1.0, 4.0);
        const Trace trace = computeTrace(carWithInstantCenter(d, d * h / wheelbase, h, wheelbase));
        EXPECT_NEAR(trace.ride[Figure::antiSquat], 100.0, 1e-9);
    }
}

// The same source: rear deflection times rear rate is m a (h/L - e/d), zero pitch at e/d = (h/L)(1 + kr/kf).
// With W 3000 lb, L 120 in, h 30 in, front 150 and rear 100 lb/in (computed from these): full anti-squat at
// e/d 0.25, zero pitch at 0.416667, which is 166.667 % and lifts the rear as much as the front.
TEST(Textbook, BartonFieldhouseZeroPitch) {
    const double h = 30 * kMetresPerInch;
    const double wheelbase = 120 * kMetresPerInch;
    const double slope = (30.0 / 120.0) * (1 + 100.0 / 150.0);
    EXPECT_NEAR(slope, 0.416667, 5e-7);
    const Trace trace = computeTrace(carWithInstantCenter(1.5, 1.5 * slope, h, wheelbase));
    EXPECT_NEAR(std::tan(trace.ride[Figure::swingArmAngle]), 0.416667, 5e-7);
    EXPECT_NEAR(trace.ride[Figure::antiSquat], 166.667, 5e-4);
    // Per lb of thrust m a, in inches: the rear end rises on its springs what the front rises on its own.
    const double antiSquat = trace.ride[Figure::antiSquat] / 100;
    const double rearSquat = (1 - antiSquat) * (30.0 / 120.0) / 100.0;
    const double frontRise = (30.0 / 120.0) / 150.0;
    EXPECT_NEAR(rearSquat, -frontRise, 1e-8);
}

namespace {

// The axle with its wheels cut free, in side view: thrust at the patch, the load that acceleration adds
// there, two two-force links along their lines and what is left for the springs over the axle's center.
// Solves the three equations of equilibrium; returns the springs' added load, N.
double springLoad(const Car& car, const AxlePose& pose, double thrust, double transfer) {
    Eigen::Matrix3d matrix;  // columns: lower pair's tension, upper pair's tension, springs pressing down
    for (Eigen::Index column = 0; column < 2; ++column) {
        const Link& link = car.links[static_cast<std::size_t>(column)];
        const Eigen::Vector3d arm =
            pose.carry(link.axle.inUse().at - Eigen::Vector3d(0, 0, car.rearTireRadius));
        const Eigen::Vector3d span = link.chassis.inUse().at - arm;
        const Vector2d unit = Vector2d(span.x(), span.z()).normalized();
        const Vector2d fromCenter(arm.x() - pose.x, arm.z() - pose.z);
        matrix.col(column) << unit.x(), unit.y(), fromCenter.x() * unit.y() - fromCenter.y() * unit.x();
    }
    matrix.col(2) << 0, -1, 0;
    // The patch is a tire radius under the center: thrust turns the axle by thrust times radius.
    const Eigen::Vector3d applied(thrust, transfer, car.rearTireRadius * thrust);
    return matrix.partialPivLu().solve(-applied)[2];
}

}  // namespace

// R. N. Jazar, Vehicle Dynamics, 1st ed., Springer, eqs 2.87-2.88, p. 50 (read): each rear wheel gains m g
// (h/l)(a/g)/2. Statics of the free axle says how much of it reaches the springs; anti-squat is the rest.
// Through the travel, both axles moving together, so that the ground stays level.
TEST(Textbook, AntiSquatIsTheLoadTransferTheSpringsDoNotSee) {
    CarGenerator generator(5);
    for (const Layout layout : {Layout::triangulated, Layout::wattsThreeLink, Layout::parallelGuide}) {
        for (int number = 0; number < 80; ++number) {
            Car car = generator.draw(layout);
            car.frontTireRadius = car.rearTireRadius;
            car.travel.steps = 9;
            const Trace trace = computeTrace(car);
            for (const Station& station : trace.stations) {
                ASSERT_TRUE(station.usable);
                const double mass = car.cornerWeights.total();
                const double acceleration = 4.0;  // m/s^2; any
                const double height = car.cgHeight - station[Figure::travel];
                const double base = car.wheelbase - station.pose.x;
                const double transfer = 2 * 0.5 * mass * acceleration * height / base;
                const double springs = springLoad(car, station.pose, mass * acceleration, transfer);
                EXPECT_NEAR(station[Figure::antiSquat], 100 * (1 - springs / transfer), 1e-8)
                    << "car " << number << ", travel " << station[Figure::travel];
            }
        }
    }
}

// Worked by hand, no source: lowers from axle (0, 8) to chassis (20, 10), uppers from (2, 20) to (12, 18) in;
// lines z = 8 + 0.1 x and z = 20.4 - 0.2 x, which cross at (41.333, 12.133); slope 0.293548. CG 20, wheelbase
// 110 in: h/L 0.181818, anti-squat 161.45 %.
TEST(Textbook, CaseByHand) {
    const auto inches = [](double x, double y, double z) -> Eigen::Vector3d {
        return Eigen::Vector3d(x, y, z) * kMetresPerInch;
    };
    Car car = carWithInstantCenter(1, 0.5, 20 * kMetresPerInch, 110 * kMetresPerInch);
    car.links[0].chassis.holes[0].at = inches(20, 19, 10);
    car.links[0].axle.holes[0].at = inches(0, 21, 8);
    car.links[1].chassis.holes[0].at = inches(12, 18, 18);
    car.links[1].axle.holes[0].at = inches(2, 6, 20);
    const Trace trace = computeTrace(car);
    EXPECT_NEAR(trace.ride[Figure::icX] / kMetresPerInch, 41.333, 5e-4);
    EXPECT_NEAR(trace.ride[Figure::icZ] / kMetresPerInch, 12.133, 5e-4);
    EXPECT_NEAR(std::tan(trace.ride[Figure::swingArmAngle]), 0.293548, 5e-7);
    EXPECT_NEAR(trace.ride[Figure::antiSquat], 161.45, 5e-3);
}

// Dana Spicer, J3311-1-DSSP (2008), p. 10: 2.50 deg in side view (measured) and 2.15 deg in top view
// (calculated) make a compound angle of 3.3 deg (read); by the square root of the squares 3.2974, in space
// 3.2956 deg exactly (computed).
TEST(Textbook, SpicerCompoundJointAngle) {
    Car car = carWithInstantCenter(1.5, 0.3, 0.5, 2.7);
    Driveline line;
    line.pinionJoint = {0.28, 0, 0.33};
    line.outputJoint =
        line.pinionJoint + 1.2 * Eigen::Vector3d(1, std::tan(2.15 * kDegree), std::tan(2.50 * kDegree));
    car.driveline = line;
    const Trace trace = computeTrace(car);
    for (const Figure joint : {Figure::frontJoint, Figure::rearJoint}) {
        EXPECT_NEAR(trace.ride[joint] / kDegree, 3.3, 0.05);
        EXPECT_NEAR(trace.ride[joint] / kDegree, 3.2956, 5e-5);
    }
    EXPECT_NEAR(trace.ride[Figure::driveshaft] / kDegree, 2.50, 1e-9);
}

}  // namespace bolthole
