// A recording against a computed launch, sample by sample.
#pragma once

#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "geometry/passes/recording.h"

namespace bolthole {

/// What of a computed launch a recorded kind is; null for the time and for the driveshaft, which a launch
/// does not tell.
[[nodiscard]] double LaunchRow::*computedOf(Recorded kind);

/// A sample and what the launch has at its time, SI.
struct RecordedSample {
    double time = 0;  ///< s from the release
    double recorded = 0;
    double computed = 0;

    [[nodiscard]] double residual() const { return recorded - computed; }
};

/// One kind, in the order of time.
struct RecordedMisfit {
    Recorded kind = Recorded::speed;
    std::vector<RecordedSample> samples{};

    /// Root of the mean of the squares; the samples must not be empty.
    [[nodiscard]] double rms() const;
    /// The sample that lies farthest off; the samples must not be empty.
    [[nodiscard]] const RecordedSample& farthest() const;
};

/// Of every kind that is both recorded and computed: the samples from the release at `start`, s of the
/// recording's clock, to the last row. Between rows the launch is taken as straight. Samples without a number
/// are left out, kinds without samples too.
[[nodiscard]] std::vector<RecordedMisfit> misfitsOf(const Recording& recording, double start,
                                                    const std::vector<LaunchRow>& rows);

}  // namespace bolthole
