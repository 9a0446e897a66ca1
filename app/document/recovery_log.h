// The recovery log: what stands between a pulled battery and a lost measurement.
//
// One file a window, one line a record: the SHA-256 of the rest of the line in hexadecimal, a space, and a
// JSON object. The first line says which file the window has open; every further one is a whole car as it
// stood after a change. A line whose hash does not fit is damage and is passed over. The window holds a lock
// on its log (flock), which the system lets go when the program ends in whatever way: a log without a lock
// was abandoned.
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QObject>
#include <QString>
#include <QStringList>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <nlohmann/json.hpp>
#include <optional>
#include <thread>

#include "app/carfile/car_file.h"
#include "app/carfile/descriptor.h"

namespace bolthole {

/// A document after a change, as it is handed to the log.
struct RecoveryPoint {
    QString what;         ///< the change in words: "Move lower axle hole 'top' to ..."
    bool saved = false;   ///< nothing to lose: the car is as its file, or was never changed
    QByteArray fileHash;  ///< SHA-256 of the file as last read or written, hexadecimal; empty: never saved
    std::shared_ptr<const Car> car;                        ///< never null
    std::shared_ptr<const nlohmann::ordered_json> source;  ///< what the car was read from; never null
};

/// A record as it was read back.
struct RecoveryRecord {
    QDateTime when;  ///< local time
    QString what;
    QString title;  ///< the car's
    QString file;   ///< absolute path; empty: never saved
    QByteArray fileHash;
    bool saved = false;
    std::string carBytes;  ///< the car file
};

/// Writes one window's log. record() returns at once; another thread writes and flushes to the disk. Where
/// the disk is slower than the changes come, the newest one waits and those before it are passed over.
class RecoveryLog : public QObject {
    Q_OBJECT
  public:
    /// Starts a log in `folder` (made if missing) for a document that is `file` (absolute; empty: never
    /// saved).
    RecoveryLog(const QString& folder, const QString& file);
    /// Writes what waits. The log stays on the disk unless remove() was called.
    ~RecoveryLog() override;

    void record(RecoveryPoint point);
    /// Waits until the newest record is on the disk, or could not be written; gives which.
    bool flush();
    /// The document is saved or given up: the log goes, and nothing is written any more.
    void remove();

    [[nodiscard]] const QString& logFile() const { return path_; }

  signals:
    /// The state of the writing changed: why nothing can be kept, or empty: it is kept again. Emitted from
    /// the writing thread.
    void problemChanged(const QString& reason);

  private:
    struct Pending {
        RecoveryPoint point;
        QDateTime when;
    };
    void writeWhatComes(const std::stop_token& stop);
    [[nodiscard]] bool write(const Pending& pending);
    [[nodiscard]] bool begin(const QByteArray& record);
    [[nodiscard]] bool append(const QByteArray& line);
    void report(const QString& reason);

    QString folder_;
    QString file_;
    QString path_;
    Descriptor log_;        // open and locked while there is a log
    qint64 size_ = 0;       // of what is whole in the log, bytes
    QString problem_;       // as last reported
    bool removed_ = false;  // guarded, as pending_ and writing_ are
    std::optional<Pending> pending_;
    bool writing_ = false;
    bool written_ = false;  // the newest record that was dealt with
    std::mutex mutex_;
    std::condition_variable_any changed_;
    std::jthread writer_;  // last: ends before what it uses
};

/// Where logs live on this machine for this person.
[[nodiscard]] QString recoveryFolder();

/// A log that nobody writes any more, and the newest whole record in it that was not saved.
struct AbandonedLog {
    QString logFile;
    RecoveryRecord newest;
    bool damaged = false;  ///< something behind that record could not be read
};

/// What programs that ended without saving left in `folder`, newest first. Logs that hold nothing unsaved are
/// removed on the way.
[[nodiscard]] QList<AbandonedLog> abandonedLogs(const QString& folder);

/// Removes an abandoned log.
void removeLog(const QString& logFile);

/// Logs in `folder` that are being written now for `file` (absolute path), `own` left out.
[[nodiscard]] QStringList logsOpenOn(const QString& folder, const QString& file, const QString& own);

}  // namespace bolthole
