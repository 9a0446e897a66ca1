#include "app/document/recording_file.h"

#include <QFile>

#include "app/document/sha256.h"

namespace bolthole {

std::optional<QByteArray> recordingBytes(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly) || file.size() > kMostRecordingBytes) {
        return std::nullopt;
    }
    return file.readAll();
}

RecordingTable recordingTable(const QByteArray& bytes) {
    return {sha256Of(bytes).toStdString(),
            readCsv(std::string_view(bytes.data(), static_cast<std::size_t>(bytes.size())),
                    kMostRecordedRows + 1)};
}

ReadRecording recordingOf(const PassRecording& pass, const RecordingTable* found) {
    if (found == nullptr) {
        return {.problem = pass.file + " is not beside the car's file. Put it there to see it."};
    }
    if (found->sha256 != pass.sha256) {
        return {.problem = pass.file +
                           " is not the file that was recorded: its contents changed. Remove it and add it "
                           "anew if that is right."};
    }
    ReadRecording result = readRecording(found->table, pass.columns);
    if (!result.problem.empty()) {
        result.problem = pass.file + " can't be read: " + result.problem;
    }
    return result;
}

}  // namespace bolthole
