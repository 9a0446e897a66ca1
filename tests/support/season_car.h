// A season of passes on a car, made up for the tests of the page that shows them.
#pragma once

#include <memory>
#include <string>

#include "geometry/edits/edit.h"
#include "tests/support/plain_car.h"

namespace bolthole {

/// A pass of a setup as the made-up seasons have them; `at`: minutes after noon.
inline Pass madePass(int number, int setup, double sixtyFoot, const std::string& date = "2026-11-20",
                     int at = 0) {
    Pass pass;
    pass.number = number;
    pass.date = date;
    const auto two = [](int value) { return (value < 10 ? "0" : "") + std::to_string(value); };
    pass.time = two(12 + at / 60) + ":" + two(at % 60);
    pass.place = "airstrip";
    pass.setup = setup;
    pass.surface = {SurfaceKind::street, "north lane", 11};
    pass.air = {7, 1002, 71};
    pass.pressures = {220, 220, 117.2, 117.2};
    pass.launchRpm = 2500;
    pass.sixtyFoot = sixtyFoot;
    return pass;
}

/// The plain car with two kept setups, lower axle hole bottom and top, and on each as many passes as times
/// are given; the bench stands as the second.
inline Car seasonCar(const std::vector<double>& first, const std::vector<double>& second) {
    Car car = plainCar();
    car.kept.push_back({-1, "first setup", "2026-11-20", "", std::make_shared<const Car>(plainCar())});
    Car top = apply(plainCar(), UseHole{0, End::axle, 1}).car;
    car.kept.push_back({-1, "lower axle hole 'top'", "2026-11-20", "", std::make_shared<const Car>(top)});
    car.links = top.links;
    int number = 0;
    for (const double time : first) {
        ++number;
        car.passes.push_back(madePass(number, 0, time, "2026-11-20", 10 * number));
    }
    for (const double time : second) {
        ++number;
        car.passes.push_back(madePass(number, 1, time, "2026-11-20", 10 * number));
    }
    return car;
}

/// A season of so many passes, 25 a day, a setup of its own for every five, each a kept car of its own.
inline Car longSeason(int passes) {
    Car car = plainCar();
    const Car top = apply(plainCar(), UseHole{0, End::axle, 1}).car;
    for (int at = 0; at < passes; ++at) {
        if (at % 5 == 0) {
            const int setup = at / 5;
            Car kept = setup % 2 == 0 ? plainCar() : top;
            kept.cgHeight += 0.0001 * setup;
            car.kept.push_back({-1, "setup " + std::to_string(setup), "2020-01-01", "",
                                std::make_shared<const Car>(std::move(kept))});
        }
        const int day = at / 25;
        const auto two = [](int value) { return (value < 10 ? "0" : "") + std::to_string(value); };
        const std::string date =
            std::to_string(2020 + day / 336) + "-" + two(1 + day % 336 / 28) + "-" + two(1 + day % 28);
        car.passes.push_back(
            madePass(at % 25 + 1, at / 5, 2.2 + 0.001 * (at * 7 % 31), date, 10 * (at % 25)));
    }
    return car;
}

}  // namespace bolthole
