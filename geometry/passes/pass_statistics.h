// What the passes of a car say: scatter, the gain of a setup, the trend of a day. Struck passes and those
// without a sixty-foot time count nowhere. Repeats are passes of one setup with the same tire pressures and
// launch rpm, on one surface (name and kind) and day.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/passes/statistics.h"

namespace bolthole {

/// Which passes are meant; what is absent is not asked for.
struct Where {
    std::optional<std::string> surfaceName = std::nullopt;
    std::optional<SurfaceKind> surfaceKind = std::nullopt;
    std::optional<std::string> date = std::nullopt;

    [[nodiscard]] bool holds(const Pass& pass) const;
};

/// Passes that differ by nothing that is known.
struct Repeats {
    int setup = 0;                    ///< index into Car::kept
    std::vector<std::size_t> passes;  ///< rows of Car::passes, in order
    std::vector<double> sixtyFoot;    ///< s, of each
};
/// Every group of repeats, those of one pass too, in the order of their first pass. Passes that stand on no
/// kept setup belong to none.
[[nodiscard]] std::vector<Repeats> repeatsOf(const Car& car, const Where& where = {});

/// How much the sixty-foot time of one setup scatters, s, pooled over all repeats.
[[nodiscard]] Answer<Scatter> scatterOf(const Car& car, const Where& where = {});

/// The sixty-foot times of a setup, in short.
[[nodiscard]] Sample sampleOf(const Car& car, int setup, const Where& where = {});

/// Two setups against each other.
struct SetupComparison {
    Sample first;
    Sample second;
    Answer<Difference> difference;  ///< second minus first, s
    /// How many passes each needs in all so that a difference as large as the one seen would be told apart;
    /// by the scatter of all repeats. The true difference may be smaller, and then it takes more.
    Answer<int> needed;

    /// How many more that is for the setup that was run less; 0 where both were run often enough.
    [[nodiscard]] int more() const;
};
[[nodiscard]] SetupComparison compareSetups(const Car& car, int first, int second, const Where& where = {});
/// The same of any two samples, by a scatter from all repeats.
[[nodiscard]] SetupComparison compareSamples(const Sample& first, const Sample& second,
                                             const Answer<Scatter>& scatter);

/// The comparison as one sentence without its full stop: "second is quicker by 0.031 s, ±0.012 s", "can't
/// tell these apart, 3 more passes each would", "one pass proves nothing".
[[nodiscard]] std::string verdict(const SetupComparison& comparison);

/// Trend of the sixty-foot time over a day, s for each hour where every counted pass of the day has a time of
/// day, else s for each pass.
struct DayDrift {
    Answer<Drift> drift;
    bool isByHour = false;
};
[[nodiscard]] DayDrift driftOf(const Car& car, const std::string& date);
/// When the pass of a row was run, as driftOf() counts: hours since midnight, else the row itself.
[[nodiscard]] double momentOf(const Car& car, std::size_t row, bool byHour);

}  // namespace bolthole
