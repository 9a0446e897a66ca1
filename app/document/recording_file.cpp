#include "app/document/recording_file.h"

#include <QFile>

#include "app/document/sha256.h"
#include "geometry/units/say.h"

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
        return {.problem = say("%1 is not beside the car's file. Put it there to see it.", pass.file)};
    }
    if (found->sha256 != pass.sha256) {
        return {.problem =
                    say("%1 is not the file that was recorded: its contents changed. Remove it and add it "
                        "anew if that is right.",
                        pass.file)};
    }
    ReadRecording result = readRecording(found->table, pass.columns);
    if (!result.problem.empty()) {
        result.problem = say("%1 can't be read: %2", pass.file, result.problem);
    }
    return result;
}

}  // namespace bolthole
