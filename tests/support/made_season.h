// Seasons of passes whose truth is known: launches of a car that differs from what is entered, with scatter.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <memory>
#include <numbers>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "geometry/edits/edit.h"
#include "tests/support/made_launch.h"

namespace bolthole {

/// The same numbers with every compiler: normal ones by Box and Muller.
class SeasonRandom {
  public:
    explicit SeasonRandom(std::uint64_t seed) : random_(seed) {}

    double unit() { return (static_cast<double>(random_() >> 11U) + 0.5) * 0x1.0p-53; }
    double normal() { return std::sqrt(-2 * std::log(unit())) * std::cos(2 * std::numbers::pi * unit()); }

  private:
    std::mt19937_64 random_;
};

/// What the car of a season is in truth. Numbers as CorrectLaunch has them, and a friction a surface.
struct SeasonTruth {
    std::vector<double> friction{1.25};
    std::vector<double> scatter{0.02};  ///< s, standard, of each surface
    double torqueScale = 1;
    double stallSpeed = 3600 * kRpm;
    double frontDampingScale = 1;
    double rearDampingScale = 1;
    double peakSlip = 10;
};

/// A car that can be launched, as entered.
inline Car seasonCar() {
    Car car = CarGenerator(2026).draw(Layout::triangulated);
    car.launch = makeLaunchSetup();
    dressForLaunch(car);
    return car;
}

/// The car's sixty foot in truth; nothing where it does not get there.
inline std::optional<double> trueSixtyFoot(const Car& entered, const SeasonTruth& truth, std::size_t surface,
                                           double launchRpm) {
    const EditResult corrected =
        bolthole::apply(entered, CorrectLaunch{.friction = truth.friction[surface],
                                               .stallSpeed = truth.stallSpeed,
                                               .peakSlip = truth.peakSlip,
                                               .torqueScale = truth.torqueScale,
                                               .frontDampingScale = truth.frontDampingScale,
                                               .rearDampingScale = truth.rearDampingScale});
    EXPECT_EQ(corrected.refusal, "");
    LaunchInputsResult inputs = launchInputsOf(corrected.car);
    if (!inputs.inputs) {
        ADD_FAILURE() << "the car lacks " << inputs.missing.front().path;
        return std::nullopt;
    }
    inputs.inputs->engine.launchSpeed = launchRpm * kRpm;
    const LaunchRun run = simulateLaunch(*inputs.inputs, {.every = 10});
    return run.end == LaunchEnd::done ? run.figures.sixtyFoot : std::nullopt;
}

/// A season of `count` passes: setups that differ by clicks and droop, launch rpm up and down, surfaces in
/// turn (named "lane 1", "lane 2", ...), times to the thousandth. A pass that does not get there has no time.
inline Car makeSeason(const SeasonTruth& truth, std::size_t count, SeasonRandom& random,
                      Car entered = seasonCar()) {
    const std::vector<std::vector<Edit>> setups{{},
                                                {SetNumber{{.field = Field::frontReboundClick}, 9}},
                                                {SetNumber{{.field = Field::frontReboundClick}, 1},
                                                 SetNumber{{.field = Field::reboundClick, .item = 1}, 1}},
                                                {SetNumber{{.field = Field::reboundClick, .item = 1}, 9},
                                                 SetNumber{{.field = Field::bumpClick, .item = 1}, 9}},
                                                {SetNumber{{.field = Field::frontDroop}, 0.05}}};
    const std::vector<double> launchRpms{2400, 3000, 1600, 2800, 2000, 3400};
    Car season = entered;
    for (std::size_t pass = 0; pass < count; ++pass) {
        Car setup = entered;
        for (const Edit& edit : setups[pass % setups.size()]) {
            EditResult edited = bolthole::apply(setup, edit);
            EXPECT_EQ(edited.refusal, "");
            setup = std::move(edited.car);
        }
        const std::size_t surface = pass % truth.friction.size();
        Pass entry;
        entry.number = static_cast<int>(pass) + 1;
        entry.date = "2026-11-20";
        entry.surface.name = "lane " + std::to_string(surface + 1);
        entry.launchRpm = launchRpms[pass % launchRpms.size()];
        if (const auto time = trueSixtyFoot(setup, truth, surface, *entry.launchRpm)) {
            const double clock = 0.010 * random.normal();
            entry.sixtyFoot =
                std::round((*time + truth.scatter[surface] * random.normal() + clock) * 1000) / 1000;
        }
        season.kept.push_back({-1, "setup " + std::to_string(pass + 1), "2026-11-20", "",
                               std::make_shared<const Car>(withoutKept(setup))});
        entry.setup = static_cast<int>(pass);
        season.passes.push_back(entry);
    }
    return season;
}

/// A truth drawn from what is taken for granted before: the priors of geometry/fit/launch_numbers.h.
inline SeasonTruth drawTruth(SeasonRandom& random, std::size_t surfaces = 1) {
    SeasonTruth truth;
    truth.friction.clear();
    truth.scatter.clear();
    for (std::size_t surface = 0; surface < surfaces; ++surface) {
        truth.friction.push_back(1.25 + 0.2 * random.normal());
        truth.scatter.push_back(0.02 * std::exp(0.7 * random.normal()));
    }
    truth.torqueScale = 1 + 0.15 * random.normal();
    truth.stallSpeed = (3600 + 200 * random.normal()) * kRpm;
    truth.frontDampingScale = 1 + 0.15 * random.normal();
    truth.rearDampingScale = 1 + 0.15 * random.normal();
    truth.peakSlip = 10 + 3 * random.normal();
    return truth;
}

}  // namespace bolthole
