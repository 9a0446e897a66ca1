// What a pass says of its recording: a logger's or phone's table that is kept in a file of its own.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/damping.h"

namespace bolthole {

/// What a column of a recording can be. Time first: without it there is no recording.
enum class Recorded {
    time,
    speed,         ///< of the car along the ground
    acceleration,  ///< of the car along the ground
    engineSpeed,
    shaftSpeed,   ///< of the driveshaft
    frontTravel,  ///< of the front suspension, bump +
    rearTravel    ///< of the rear axle, bump +
};
inline constexpr std::size_t kRecordedKinds = 7;
/// As the car file spells them, in the order of Recorded: "time", "engine_speed".
[[nodiscard]] const std::array<std::string_view, kRecordedKinds>& recordedKeys();

/// A unit that a column can be in, and what one of it is in SI (of a speed of turning rad/s).
struct RecordedUnit {
    std::string_view mark;  ///< "km/h"; as the car file spells it
    double size;
};
/// The units of a kind, the usual one first.
[[nodiscard]] const std::vector<RecordedUnit>& unitsOf(Recorded kind);

/// One column that is used.
struct RecordedColumn {
    Recorded is = Recorded::time;
    std::string header{};  ///< as it stands in the table's first row
    std::string unit{};    ///< one of unitsOf(is)

    bool operator==(const RecordedColumn&) const = default;
};

/// The column's unit, which must be one of its kind's.
[[nodiscard]] const RecordedUnit& unitOf(const RecordedColumn& column);

/// Where a pass's recording is and how to read it.
struct PassRecording {
    std::string file{};    ///< name without folder; it lies beside the car's file
    std::string sha256{};  ///< of its bytes, in hexadecimal digits
    double start = 0;      ///< of the table's own time, s: the release
    std::vector<RecordedColumn> columns{};

    bool operator==(const PassRecording&) const = default;
};

/// Limit of the start, s, either way.
inline constexpr double kMostRecordedTime = 1e9;

/// Why a text is no file's name without a folder, no hash, no header: what was expected; empty: it is one.
[[nodiscard]] std::string refuseFileName(std::string_view text);
[[nodiscard]] std::string refuseHash(std::string_view text);
[[nodiscard]] std::string refuseHeader(std::string_view text);
/// What is wrong with it as a whole, at its place: no column for the time or none beside it, a kind twice, a
/// unit the kind does not have; or one of the above. An empty reason: nothing.
[[nodiscard]] TableFault refusal(const PassRecording& recording);

}  // namespace bolthole
