// A recording against a launch: by hand.
#include "geometry/fit/recording_misfit.h"

#include <gmock/gmock.h>

#include <cmath>
#include <limits>

namespace bolthole {
namespace {

using testing::SizeIs;

/// Constant acceleration a: speed a t; a row every half second to 2 s.
std::vector<LaunchRow> rowsOf(double acceleration) {
    std::vector<LaunchRow> rows;
    for (int row = 0; row <= 4; ++row) {
        LaunchRow& each = rows.emplace_back();
        each.time = 0.5 * row;
        each.acceleration = acceleration;
        each.speed = acceleration * each.time;
    }
    return rows;
}

Recording recordingOf(std::vector<double> time, std::vector<double> speed) {
    Recording recording{.time = std::move(time)};
    recording.values[static_cast<std::size_t>(Recorded::speed)] = std::move(speed);
    return recording;
}

// The speed is a straight line, so that nothing is lost between rows: residuals 0.5, -0.1 and 0 at 0, 0.75
// and 2 s. Their root mean square is sqrt(0.26/3).
TEST(RecordedMisfit, IsTakenSampleBySampleFromTheRelease) {
    const std::vector<RecordedMisfit> misfits =
        misfitsOf(recordingOf({9, 10, 10.75, 12, 13}, {3, 0.5, 4.4, 12, 20}), 10, rowsOf(6));
    ASSERT_THAT(misfits, SizeIs(1)) << "before the release and past the last row nothing counts";
    EXPECT_EQ(misfits[0].kind, Recorded::speed);
    ASSERT_THAT(misfits[0].samples, SizeIs(3));
    EXPECT_NEAR(misfits[0].samples[0].residual(), 0.5, 1e-12);
    EXPECT_NEAR(misfits[0].samples[1].computed, 4.5, 1e-12);
    EXPECT_NEAR(misfits[0].samples[1].residual(), -0.1, 1e-12);
    EXPECT_NEAR(misfits[0].samples[2].residual(), 0, 1e-12);
    EXPECT_NEAR(misfits[0].rms(), std::sqrt(0.26 / 3), 1e-12);
    EXPECT_NEAR(misfits[0].farthest().time, 0, 1e-12);
}

TEST(RecordedMisfit, WhatIsNoNumberOrHasNoCurveIsLeftOut) {
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    Recording recording = recordingOf({10, 11, 12}, {nothing, 6, nothing});
    recording.values[static_cast<std::size_t>(Recorded::shaftSpeed)] = {1, 2, 3};
    recording.values[static_cast<std::size_t>(Recorded::acceleration)] = {nothing, nothing, nothing};
    const std::vector<RecordedMisfit> misfits = misfitsOf(recording, 10, rowsOf(6));
    ASSERT_THAT(misfits, SizeIs(1));
    EXPECT_THAT(misfits[0].samples, SizeIs(1));
    EXPECT_THAT(misfitsOf(recording, 10, {}), SizeIs(0));
    EXPECT_EQ(computedOf(Recorded::time), nullptr);
}

}  // namespace
}  // namespace bolthole
