#include "geometry/statics/launch_attitude.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numeric>

namespace bolthole {

SwingArm::SwingArm(const Car& car)
    : range_(car.travel),
      radius_(car.rearTireRadius),
      solver_(buildLinkage(car), Drive::travel),
      reader_(car) {
    if (solver_.assemble().usable()) {
        reader_.setRide(solver_.pose());
    }
}

std::optional<ArmSlopes> SwingArm::at(double travel, double ground) {
    if (!solver_.moveTo(travel).usable()) {
        return std::nullopt;
    }
    reader_.read(solver_, travel, station_);
    const double slope = std::tan(station_[Figure::swingArmAngle]);
    if (std::isnan(slope)) {
        return std::nullopt;
    }
    // From the axle's center, which no lean moves; an instant center at infinity is as far from there.
    const double ahead = station_[Figure::icX];
    const double inverse = std::isfinite(ahead) ? 1 / ahead : 0;
    const double level = slope - radius_ * inverse;
    ArmSlopes slopes;
    slopes.center = std::tan(std::atan(level) + station_[Figure::ground] - ground);
    slopes.patch = slopes.center + radius_ * inverse * std::hypot(1, slopes.center) / std::hypot(1, level);
    return slopes;
}

namespace {

/// How the car stands once the rear has gone to a travel, the front where its springs leave it.
class Rest {
  public:
    Rest(const AttitudeCase& with, SwingArm& arm) : with_(with), arm_(arm) {}

    // The load moved depends on how high the CG has risen, and that on the load.
    [[nodiscard]] LaunchAttitude at(double rearTravel) const {
        LaunchAttitude attitude = standing(rearTravel, with_.loads.transfer);
        constexpr int kRounds = 14;  // each takes nine tenths of what is missing, or more
        for (int round = 0; round < kRounds; ++round) {
            attitude = standing(rearTravel, moved(attitude));
        }
        return attitude;
    }

    /// N the front axle has lost to the rear.
    [[nodiscard]] double moved(const LaunchAttitude& attitude) const {
        const StandingCar& car = with_.standing;
        const double ahead = car.cgAhead / car.wheelbase;
        const double lift = std::lerp(attitude.rearRise, attitude.frontRise, ahead);
        return with_.loads.transfer + with_.loads.thrust * lift / car.wheelbase;
    }

    /// m by which the axle stands higher against the body than the springs would leave it; 0: it rests there.
    /// NaN where the arm has no slope.
    [[nodiscard]] double excess(double rearTravel) const {
        const LaunchAttitude here = at(rearTravel);
        const auto slopes = arm_.at(rearTravel, with_.rideGround + here.pitch);
        if (!slopes) {
            return std::numeric_limits<double>::quiet_NaN();
        }
        LaunchLoads loads = with_.loads;
        loads.transfer = moved(here);
        const double ownForce = with_.unsprungMass * with_.acceleration;
        const double ownPart = loads.thrust > 0 ? ownForce / loads.thrust : 0;
        const auto left = launchAttitude(with_.standing, loads, slopes->patch - ownPart * slopes->center,
                                         with_.front, with_.rear);
        return left ? rearTravel - left->rearTravel : std::numeric_limits<double>::quiet_NaN();
    }

  private:
    [[nodiscard]] LaunchAttitude standing(double rearTravel, double movedBallast) const {
        return attitudeAt(with_.standing, rearTravel, movedBallast, with_.front, with_.rear,
                          with_.frontDroop);
    }

    const AttitudeCase& with_;
    SwingArm& arm_;
};

// The zero between two travels of which one pushes too much and the other too little.
double restBetween(const Rest& rest, double one, double other) {
    namespace tools = boost::math::tools;
    std::uintmax_t rounds = 60;
    const auto [low, high] =
        tools::toms748_solve([&rest](double travel) { return rest.excess(travel); }, std::min(one, other),
                             std::max(one, other), tools::eps_tolerance<double>(), rounds);
    return std::midpoint(low, high);
}

// The first travel from ride on toward `end` past which the excess has the other sign.
std::optional<double> firstRest(const Rest& rest, double end) {
    constexpr int kSteps = 16;
    const bool below = rest.excess(0) < 0;
    double last = 0;
    for (int step = 1; step <= kSteps; ++step) {
        const double next = end * step / kSteps;
        const double excess = rest.excess(next);
        if (std::isnan(excess)) {
            return std::nullopt;
        }
        if ((excess < 0) != below) {
            return restBetween(rest, last, next);
        }
        last = next;
    }
    return std::nullopt;
}

}  // namespace

std::optional<LaunchAttitude> attitudeOnPath(const AttitudeCase& with, SwingArm& arm) {
    const Rest rest(with, arm);
    const double atRide = rest.excess(0);
    if (std::isnan(atRide)) {
        return std::nullopt;
    }
    const auto found = firstRest(rest, atRide < 0 ? arm.range().bump : -arm.range().droop);
    if (!found) {
        return std::nullopt;
    }
    const LaunchAttitude attitude = rest.at(*found);
    const bool isFrontDown = rest.moved(attitude) <= with.standing.front();
    return isFrontDown ? std::optional(attitude) : std::nullopt;
}

}  // namespace bolthole
