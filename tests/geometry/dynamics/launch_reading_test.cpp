// The figures read off a launch's rows.
#include "geometry/dynamics/launch_reading.h"

#include <gtest/gtest.h>

namespace bolthole {
namespace {

LaunchInputs gripping() {
    LaunchInputs inputs;
    inputs.tires.friction = 1.5;
    return inputs;
}

// Four rows by hand: 0.1 s apart, 1,000 N on the rear tires, the body rising 10, 30 and then 20 mm.
LaunchRun byHand() {
    LaunchRun run;
    run.end = LaunchEnd::done;
    run.figures.sixtyFoot = 0.65;
    run.figures.fromRelease = 0.7;
    for (const double rise : {0.0, 0.010, 0.030, 0.020}) {
        LaunchRow row;
        row.time = 0.3 + 0.1 * static_cast<double>(run.rows.size());
        row.rearLoad = 1000;
        row.grip = 1500;
        row.thrust = 1200 + 1e4 * rise;
        row.rearTravel = -rise;
        run.rows.push_back(row);
    }
    return run;
}

TEST(LaunchReading, SeparationIsTheBodysRiseAndItsFastestStep) {
    const LaunchReading reading = readLaunch(gripping(), byHand());
    EXPECT_DOUBLE_EQ(*reading[LaunchFigure::separation], 0.030);
    EXPECT_NEAR(*reading[LaunchFigure::separationRate], 0.2, 1e-12);  // 20 mm in 0.1 s
    EXPECT_EQ(reading[LaunchFigure::sixtyFoot], 0.65);
}

TEST(LaunchReading, GripLeftIsWhatThrustLeavesOfIt) {
    LaunchRun run = byHand();
    EXPECT_DOUBLE_EQ(*readLaunch(gripping(), run)[LaunchFigure::gripLeft], 0) << "1,500 of 1,500 N are taken";
    run.rows[2].thrust = 1200;
    EXPECT_NEAR(*readLaunch(gripping(), run)[LaunchFigure::gripLeft], 100 - 100 * 1400.0 / 1500, 1e-9);
    run.rows[1].slip = 0.5;
    EXPECT_DOUBLE_EQ(*readLaunch(gripping(), run)[LaunchFigure::gripLeft], 0) << "spinning tires have none";
    run.rows[1].slip = 0;
    run.rows[2].grip = 0;  // in the air
    run.rows[2].thrust = 0;
    EXPECT_NEAR(*readLaunch(gripping(), run)[LaunchFigure::gripLeft], 100 - 100 * 1400.0 / 1500, 1e-9);
}

TEST(LaunchReading, WhatComesBeforeTheHitIsOverOrAfterSixtyFeetCountsNot) {
    LaunchRun run = byHand();
    run.rows[2].thrust = 1200;
    LaunchRow early = run.rows[0];
    early.time = 0.1;
    early.thrust = 1500;
    run.rows.insert(run.rows.begin(), early);
    LaunchRow late = run.rows.back();
    late.time = 0.8;
    late.thrust = 1500;
    late.rearTravel = -0.1;
    run.rows.push_back(late);
    const LaunchReading reading = readLaunch(gripping(), run);
    EXPECT_NEAR(*reading[LaunchFigure::gripLeft], 100 - 100 * 1400.0 / 1500, 1e-9);
    EXPECT_DOUBLE_EQ(*reading[LaunchFigure::separation], 0.030);
}

TEST(LaunchReading, ARunWithoutRowsHasNoFigures) {
    for (const std::optional<double>& figure : readLaunch(gripping(), LaunchRun{}).figures) {
        EXPECT_FALSE(figure.has_value());
    }
}

}  // namespace
}  // namespace bolthole
