// How stiff the car stands on its four wheels: the rates that were entered, and what they make in roll.
#pragma once

#include <optional>

namespace bolthole {

/// Rates of one end of the car, its two wheels alike. Every rate that is given is above 0.
struct WheelRates {
    double wheel = 0;                           ///< N/m, body over one wheel, both wheels moving alike
    std::optional<double> tire = std::nullopt;  ///< N/m, one tire; absent: taken as rigid
    /// N m/rad, body leaning over this end's wheels, bar included. A live axle's springs stand closer
    /// together than its wheels, so it leans more easily than its wheel rate says. Absent: springs at the
    /// wheels, no bar.
    std::optional<double> roll = std::nullopt;

    bool operator==(const WheelRates&) const = default;
};

/// Where the four wheels stand and how stiff. What is absent was not entered.
struct Stance {
    double wheelbase = 0;                             ///< m
    std::optional<double> frontTrack = std::nullopt;  ///< m, between the middles of the contact patches
    std::optional<double> rearTrack = std::nullopt;   ///< m
    std::optional<WheelRates> front = std::nullopt;
    std::optional<WheelRates> rear = std::nullopt;

    [[nodiscard]] bool hasTracks() const { return frontTrack && rearTrack; }

    bool operator==(const Stance&) const = default;
};

/// Roll of the body over one end's wheels, N m/rad, tires left out. Two springs of rate k, a track t apart,
/// make k t^2/2.
[[nodiscard]] double suspensionRoll(const WheelRates& rates, double track);
/// What the tires of one end give in roll, rad per N m: 2/(k t^2), 0 where they are rigid.
[[nodiscard]] double tireRollGive(const WheelRates& rates, double track);
/// Roll of the body over the ground at one end, N m/rad: suspension and tires in series.
[[nodiscard]] double rollStiffness(const WheelRates& rates, double track);
/// What the body sinks over the ground at one end for each newton on one wheel, m/N: suspension and tire in
/// series.
[[nodiscard]] double rideGive(const WheelRates& rates);

/// Roll of the body over the ground at both ends, N m/rad.
struct RollStiffness {
    double front = 0;
    double rear = 0;

    /// Of what leans the body, the part each end holds.
    [[nodiscard]] double frontShare() const { return front / (front + rear); }
    /// Of a moment that twists the ends against each other, N m for each radian of twist.
    [[nodiscard]] double inSeries() const { return front * rear / (front + rear); }
};
/// Nothing where tracks or rates are not known.
[[nodiscard]] std::optional<RollStiffness> rollStiffness(const Stance& stance);

}  // namespace bolthole
