// A car of level links, so that what a hole combination does to it can be worked out by hand.
#pragma once

#include <array>
#include <initializer_list>
#include <vector>

#include "geometry/combinations/hole_combination.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"

namespace bolthole {

inline Eigen::Vector3d in(double x, double y, double z) {
    return Eigen::Vector3d(x, y, z) * kInch;
}

/// Two lowers 20 in long at 7 in, two uppers 15 in long at 19 in, all level and in planes y = const, and a
/// track bar at 13 in, the axle's height. Every bracket but the track bar's has a second hole 2 in higher.
inline Car levelCar() {
    Car car;
    car.wheelbase = 116 * kInch;
    car.rearTireRadius = car.frontTireRadius = 13 * kInch;
    car.cornerWeights = {470, 450, 360, 350};
    car.cgHeight = 22 * kInch;
    car.travel = {.bump = 3 * kInch, .droop = 3 * kInch};
    car.links = {makeLink("lower", LinkKind::rod, Side::both, {in(20, 18, 7), in(0, 18, 7)}),
                 makeLink("upper", LinkKind::rod, Side::both, {in(15, 18, 19), in(0, 18, 19)}),
                 makeLink("track bar", LinkKind::rod, Side::center, {in(-5, 20, 13), in(-5, -20, 13)})};
    for (Link& link : car.links) {
        link.adjuster = Adjuster{.pitch = 0.0015875};
    }
    for (std::size_t link : {0U, 1U}) {
        for (const End end : {End::chassis, End::axle}) {
            std::vector<Hole>& holes = car.links[link].bracket(end).holes;
            holes.push_back({-1, "high", holes[0].at + in(0, 0, 2)});
        }
    }
    return car;
}

/// The holes of each link, chassis and axle; what is not given is hole 0.
inline HoleUse useOf(std::initializer_list<std::array<int, 2>> links) {
    HoleUse use;
    int link = 0;
    for (const auto& [chassis, axle] : links) {
        use.set(link, End::chassis, chassis);
        use.set(link, End::axle, axle);
        ++link;
    }
    return use;
}

}  // namespace bolthole
