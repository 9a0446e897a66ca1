// A pass as a logger or a phone recorded it: read from its table, its start found, its own 60 ft.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/pass_recording.h"
#include "geometry/units/csv.h"

namespace bolthole {

/// The most rows of a recording's table: 100 s at 1 kHz.
inline constexpr std::size_t kMostRecordedRows = 100'000;

/// Samples in the order of time, SI.
struct Recording {
    std::vector<double> time;  ///< s, of the table's own clock, rising
    /// By Recorded, one a sample; empty: not recorded, NaN: no number stood there. That of the time is empty.
    std::array<std::vector<double>, kRecordedKinds> values{};

    [[nodiscard]] const std::vector<double>& of(Recorded kind) const {
        return values[static_cast<std::size_t>(kind)];
    }
    [[nodiscard]] bool has(Recorded kind) const { return !of(kind).empty(); }
};

/// A recording, or why there is none, with the row.
struct ReadRecording {
    Recording recording{};
    std::string problem{};  ///< empty: read
};

/// What the columns of a table seem to be by their headers ("Time (s)", "GPS Speed (mph)", "RPM"); nothing of
/// what no header names, and nothing twice. A unit in brackets is taken, else the usual one. In the
/// order of Recorded.
[[nodiscard]] std::vector<RecordedColumn> guessColumns(const std::vector<std::string>& headers);

/// Reads a table whose first row has the headers. Refuses one without the columns named, a time that is no
/// number or does not rise, and fewer than three rows. Cells of other columns may be empty.
[[nodiscard]] ReadRecording readRecording(const CsvRows& table, const std::vector<RecordedColumn>& columns);

/// When the car began to move, s of the table's clock: where the acceleration, recorded or of the speed, last
/// was below kStartAcceleration before it stayed above for kStartHold. Nothing where it never does, or
/// neither is recorded.
[[nodiscard]] std::optional<double> findStart(const Recording& recording);
inline constexpr double kStartAcceleration = 1.0;  ///< m/s^2; a judgement, common practice, no source
inline constexpr double kStartHold = 0.2;          ///< s

/// Seconds from leaving the start beam, `rollout` m after `start`, to 60 ft beyond it: the speed summed up
/// by the trapezoidal rule, or the acceleration twice where no speed is recorded. Nothing where the recording
/// ends before.
[[nodiscard]] std::optional<double> recordedSixtyFoot(const Recording& recording, double start,
                                                      double rollout);

}  // namespace bolthole
