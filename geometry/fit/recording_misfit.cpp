#include "geometry/fit/recording_misfit.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace bolthole {

namespace {

// Rows in the order of time; `time` lies between the first and the last.
double valueAt(const std::vector<LaunchRow>& rows, double LaunchRow::*value, double time) {
    const auto after = std::ranges::upper_bound(rows, time, {}, &LaunchRow::time);
    if (after == rows.end()) {
        return rows.back().*value;
    }
    const LaunchRow& from = *(after - 1);
    const double share = (time - from.time) / (after->time - from.time);
    return std::lerp(from.*value, *after.*value, share);
}

}  // namespace

double LaunchRow::*computedOf(Recorded kind) {
    switch (kind) {
        case Recorded::speed:
            return &LaunchRow::speed;
        case Recorded::acceleration:
            return &LaunchRow::acceleration;
        case Recorded::engineSpeed:
            return &LaunchRow::engineSpeed;
        case Recorded::frontTravel:
            return &LaunchRow::frontTravel;
        case Recorded::rearTravel:
            return &LaunchRow::rearTravel;
        case Recorded::time:
        case Recorded::shaftSpeed:
            break;
    }
    return nullptr;
}

double RecordedMisfit::rms() const {
    assert(!samples.empty());
    double sum = 0;
    for (const RecordedSample& sample : samples) {
        sum += sample.residual() * sample.residual();
    }
    return std::sqrt(sum / static_cast<double>(samples.size()));
}

const RecordedSample& RecordedMisfit::farthest() const {
    assert(!samples.empty());
    return *std::ranges::max_element(
        samples, {}, [](const RecordedSample& sample) { return std::abs(sample.residual()); });
}

std::vector<RecordedMisfit> misfitsOf(const Recording& recording, double start,
                                      const std::vector<LaunchRow>& rows) {
    std::vector<RecordedMisfit> misfits;
    for (std::size_t index = 0; index < kRecordedKinds && !rows.empty(); ++index) {
        const auto kind = static_cast<Recorded>(index);
        double LaunchRow::*const value = computedOf(kind);
        if (value == nullptr || !recording.has(kind)) {
            continue;
        }
        RecordedMisfit misfit{.kind = kind};
        for (std::size_t row = 0; row < recording.time.size(); ++row) {
            const double time = recording.time[row] - start;
            const double recorded = recording.of(kind)[row];
            if (time >= rows.front().time && time <= rows.back().time && !std::isnan(recorded)) {
                misfit.samples.push_back({time, recorded, valueAt(rows, value, time)});
            }
        }
        if (!misfit.samples.empty()) {
            misfits.push_back(std::move(misfit));
        }
    }
    return misfits;
}

}  // namespace bolthole
