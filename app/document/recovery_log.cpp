#include "app/document/recovery_log.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QStandardPaths>
#include <algorithm>
#include <atomic>
#include <cerrno>
#include <cstring>
#include <utility>

#include "app/document/sha256.h"

namespace bolthole {

namespace {

using Json = nlohmann::ordered_json;

constexpr qint64 kMostLog = 16'000'000;   // bytes; past that a log starts anew with its newest record
constexpr qint64 kMostRead = 64'000'000;  // bytes; of a longer log only the end is read
constexpr qsizetype kHashDigits = 64;
const auto kPattern = QStringLiteral("*.boltlog");

QByteArray lineOf(const Json& record) {
    const std::string text = record.dump(-1, ' ', false, Json::error_handler_t::replace);
    const auto bytes = QByteArray::fromStdString(text);
    return sha256Of(bytes) + ' ' + bytes + '\n';
}

// The JSON of a line, or nothing where the line is damaged.
std::optional<Json> recordOf(QByteArrayView line) {
    if (line.size() <= kHashDigits + 1 || line[kHashDigits] != ' ' ||
        sha256Of(line.sliced(kHashDigits + 1)) != line.first(kHashDigits)) {
        return std::nullopt;
    }
    const QByteArrayView text = line.sliced(kHashDigits + 1);
    Json record = Json::parse(text.begin(), text.end(), nullptr, false);
    if (!record.is_object()) {
        return std::nullopt;
    }
    return record;
}

QString textAt(const Json& record, const char* key) {
    const auto found = record.find(key);
    return found != record.end() && found->is_string()
               ? QString::fromStdString(found->get_ref<const std::string&>())
               : QString();
}

RecoveryRecord readRecord(const Json& json) {
    RecoveryRecord record;
    record.when = QDateTime::fromString(textAt(json, "when"), Qt::ISODateWithMs).toLocalTime();
    record.what = textAt(json, "what");
    record.title = textAt(json, "title");
    record.file = textAt(json, "file");
    record.fileHash = textAt(json, "file_hash").toLatin1();
    const auto saved = json.find("saved");
    record.saved = saved != json.end() && saved->is_boolean() && saved->get<bool>();
    const auto car = json.find("car");
    record.carBytes = car != json.end() ? car->dump() : std::string();
    return record;
}

QByteArray headOf(const QString& file) {
    return lineOf({{"log", "bolthole-recovery"}, {"version", 1}, {"file", file.toStdString()}});
}

bool writeToDisk(const Descriptor& log, const QByteArray& bytes) {
    return writeAll(log, {bytes.constData(), static_cast<std::size_t>(bytes.size())}) &&
           ::fdatasync(log.number()) == 0;
}

bool isAbandoned(const QString& logFile) {
    const Descriptor log(::open(QFile::encodeName(logFile).constData(), O_RDONLY | O_CLOEXEC));
    return log.isOpen() && ::flock(log.number(), LOCK_SH | LOCK_NB) == 0;  // closing lets the lock go too
}

// What can be read of a log. A log that can't be opened gives nothing and stays.
std::optional<QByteArray> endOf(const QString& logFile) {
    QFile file(logFile);
    if (!file.open(QIODevice::ReadOnly)) {
        return std::nullopt;
    }
    file.seek(std::max<qint64>(0, file.size() - kMostRead));
    return file.read(kMostRead);
}

// The newest whole record of a log, from its end on; `damaged`: something behind it, or all, was not whole.
std::optional<Json> newestRecord(QByteArrayView log, bool& damaged) {
    damaged = !log.endsWith('\n');
    while (!log.isEmpty()) {
        log = log.endsWith('\n') ? log.chopped(1) : log;
        const qsizetype start = log.lastIndexOf('\n') + 1;
        if (std::optional<Json> record = recordOf(log.sliced(start))) {
            return record;
        }
        damaged = true;
        log = log.first(start);
    }
    return std::nullopt;
}

QStringList logsIn(const QString& folder) {
    QStringList files;
    for (const QFileInfo& info : QDir(folder).entryInfoList({kPattern}, QDir::Files)) {
        files.append(info.absoluteFilePath());
    }
    return files;
}

QString freshName() {
    static std::atomic<int> count{0};
    return QDateTime::currentDateTimeUtc().toString(QStringLiteral("yyyyMMdd-HHmmss-zzz-")) +
           QString::number(::getpid()) + QLatin1Char('-') + QString::number(++count);
}

}  // namespace

RecoveryLog::RecoveryLog(const QString& folder, const QString& file)
    : folder_(folder),
      file_(file),
      path_(folder + QLatin1Char('/') + freshName() + QStringLiteral(".boltlog")),
      writer_([this](const std::stop_token& stop) { writeWhatComes(stop); }) {}

RecoveryLog::~RecoveryLog() {
    writer_.request_stop();
    writer_.join();
}

void RecoveryLog::record(RecoveryPoint point) {
    const std::lock_guard guard(mutex_);
    if (removed_) {
        return;
    }
    pending_ = Pending{std::move(point), QDateTime::currentDateTimeUtc()};
    changed_.notify_all();
}

bool RecoveryLog::flush() {
    std::unique_lock guard(mutex_);
    changed_.wait(guard, [this] { return !pending_ && !writing_; });
    return written_;
}

void RecoveryLog::remove() {
    std::unique_lock guard(mutex_);
    removed_ = true;
    pending_.reset();
    changed_.notify_all();
    changed_.wait(guard, [this] { return !writing_; });
    if (log_.isOpen()) {
        QFile::remove(path_);
    }
}

void RecoveryLog::writeWhatComes(const std::stop_token& stop) {
    std::unique_lock guard(mutex_);
    while (changed_.wait(guard, stop, [this] { return pending_.has_value(); })) {
        const Pending pending = std::move(*pending_);
        pending_.reset();
        writing_ = true;
        guard.unlock();
        const bool written = write(pending);
        guard.lock();
        writing_ = false;
        written_ = written;
        changed_.notify_all();
    }
}

bool RecoveryLog::write(const Pending& pending) {
    const RecoveryPoint& point = pending.point;
    Json record{{"when", pending.when.toString(Qt::ISODateWithMs).toStdString()},
                {"what", point.what.toStdString()},
                {"title", point.car->title},
                {"saved", point.saved},
                {"file", file_.toStdString()},
                {"file_hash", point.fileHash.toStdString()}};
    if (!point.saved) {
        // What the writer of car files makes of it, so that unknown keys come back too.
        record["car"] = Json::parse(writeCar(*point.car, *point.source));
    }
    const QByteArray line = lineOf(record);
    const bool fits = log_.isOpen() && size_ + line.size() <= kMostLog;
    const bool written = fits ? append(line) : begin(line);
    report(written ? QString() : QString::fromLocal8Bit(std::strerror(errno)));
    return written;
}

// A new log with one record. It gets its name only once it is locked and whole, so that nobody takes it for
// an abandoned one, and a log that started anew is never missing.
bool RecoveryLog::begin(const QByteArray& record) {
    QDir().mkpath(folder_);
    const QByteArray name = QFile::encodeName(path_);
    const QByteArray temporary = name + ".new";
    Descriptor log(::open(temporary.constData(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600));
    if (!log.isOpen()) {
        return false;
    }
    const QByteArray bytes = headOf(file_) + record;
    if (::flock(log.number(), LOCK_EX | LOCK_NB) != 0 || !writeToDisk(log, bytes) ||
        ::rename(temporary.constData(), name.constData()) != 0) {
        const int error = errno;
        ::unlink(temporary.constData());
        errno = error;
        return false;
    }
    flushDirectoryOf(name.toStdString());
    log_ = std::move(log);
    size_ = bytes.size();
    return true;
}

// A record that did not fit is taken back, so that the next one starts on a line of its own.
bool RecoveryLog::append(const QByteArray& line) {
    if (writeToDisk(log_, line)) {
        size_ += line.size();
        return true;
    }
    const int error = errno;
    if (::ftruncate(log_.number(), size_) == 0) {
        ::lseek(log_.number(), size_, SEEK_SET);
    }
    errno = error;
    return false;
}

void RecoveryLog::report(const QString& reason) {
    if (reason != problem_) {
        problem_ = reason;
        emit problemChanged(reason);
    }
}

QString recoveryFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) +
           QStringLiteral("/bolthole/recovery");
}

QList<AbandonedLog> abandonedLogs(const QString& folder) {
    QList<AbandonedLog> found;
    for (const QString& logFile : logsIn(folder)) {
        const std::optional<QByteArray> log = isAbandoned(logFile) ? endOf(logFile) : std::nullopt;
        if (!log) {
            continue;
        }
        bool damaged = false;
        const std::optional<Json> newest = newestRecord(*log, damaged);
        if (newest && newest->contains("car")) {
            found.append({logFile, readRecord(*newest), damaged});
        } else if (newest && !damaged) {
            QFile::remove(logFile);  // saved, or nothing was ever changed
        }
    }
    std::ranges::sort(found, std::greater<>(), [](const AbandonedLog& log) { return log.newest.when; });
    return found;
}

void removeLog(const QString& logFile) {
    QFile::remove(logFile);
}

QStringList logsOpenOn(const QString& folder, const QString& file, const QString& own) {
    QStringList open;
    if (file.isEmpty()) {
        return open;
    }
    for (const QString& logFile : logsIn(folder)) {
        QFile log(logFile);
        if (logFile == own || isAbandoned(logFile) || !log.open(QIODevice::ReadOnly)) {
            continue;
        }
        QByteArray line = log.readLine();
        line.chop(1);
        const std::optional<Json> head = recordOf(line);
        if (head && textAt(*head, "file") == file) {
            open.append(logFile);
        }
    }
    return open;
}

}  // namespace bolthole
