#include "geometry/statics/launch_attitude.h"

#include <cmath>
#include <limits>

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

    /// N by which one rear spring pushes more at that travel than what stands on it; 0: it rests there. NaN
    /// where the arm has no slope.
    [[nodiscard]] double excess(double rearTravel) const {
        const LaunchAttitude attitude = at(rearTravel);
        const auto slopes = arm_.at(rearTravel, with_.rideGround + attitude.pitch);
        if (!slopes) {
            return std::numeric_limits<double>::quiet_NaN();
        }
        const double byLinks =
            with_.loads.thrust * slopes->patch - with_.unsprungMass * with_.acceleration * slopes->center;
        return with_.rear.wheel * rearTravel - (moved(attitude) - byLinks) / 2;
    }

  private:
    [[nodiscard]] LaunchAttitude standing(double rearTravel, double movedLoad) const {
        const double onTire = movedLoad / 2;
        const auto give = [onTire](const WheelRates& rates) { return rates.tire ? onTire / *rates.tire : 0; };
        LaunchAttitude attitude;
        attitude.rearTravel = rearTravel;
        attitude.frontTravel = -onTire / with_.front.wheel;
        if (with_.frontDroop && attitude.frontTravel < -*with_.frontDroop) {
            attitude.frontTravel = -*with_.frontDroop;
            attitude.frontToppedOut = true;
        }
        attitude.rearRise = -rearTravel - give(with_.rear);
        attitude.frontRise = -attitude.frontTravel + give(with_.front);
        attitude.pitch = std::atan2(attitude.rearRise - attitude.frontRise, with_.standing.wheelbase);
        return attitude;
    }

    const AttitudeCase& with_;
    SwingArm& arm_;
};

// The zero between two travels of which one pushes too much and the other too little: regula falsi, in which
// an end that stays counts half (the "Illinois" rule; e.g. W. H. Press et al., Numerical Recipes, ch. 9, from
// memory).
double restBetween(const Rest& rest, double one, double other) {
    double atOne = rest.excess(one);
    double atOther = rest.excess(other);
    constexpr int kRounds = 60;
    constexpr double kClose = 1e-13;  // m
    for (int round = 0; round < kRounds && std::abs(other - one) > kClose && atOther != 0; ++round) {
        const double next = (one * atOther - other * atOne) / (atOther - atOne);
        const double atNext = rest.excess(next);
        if ((atNext < 0) != (atOther < 0)) {
            one = other;
            atOne = atOther;
        } else {
            atOne /= 2;
        }
        other = next;
        atOther = atNext;
    }
    return other;
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
