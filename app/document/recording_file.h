// The file that a pass's recording stands in, beside the car's.
#pragma once

#include <QByteArray>
#include <QString>
#include <optional>

#include "geometry/car/pass_recording.h"
#include "geometry/passes/recording.h"

namespace bolthole {

/// The largest file that is taken for a recording.
inline constexpr qint64 kMostRecordingBytes = qint64{64} * 1024 * 1024;
/// What is read without anybody noticing: some 10 ms a megabyte.
inline constexpr qint64 kReadAtOnce = qint64{1024} * 1024;

/// The bytes of a file no larger than kMostRecordingBytes; nothing where it can't be read.
[[nodiscard]] std::optional<QByteArray> recordingBytes(const QString& path);

/// A recording's file, read.
struct RecordingTable {
    std::string sha256;  ///< of its bytes, in hexadecimal digits
    CsvRows table;
};
[[nodiscard]] RecordingTable recordingTable(const QByteArray& bytes);

/// The recording a pass says it has, out of the table that was found under its name (null: none was), or a
/// sentence that says why there is none: it is not there, its contents are not those that were hashed, it
/// can't be read.
[[nodiscard]] ReadRecording recordingOf(const PassRecording& pass, const RecordingTable* found);

}  // namespace bolthole
