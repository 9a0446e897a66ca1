// The recovery log: what is written comes back, whatever happens to the log or the disk.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <QDir>
#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <csignal>
#include <random>

#include "app/document/recovery_log.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

class RecoveryLogTest : public testing::Test {
  protected:
    void SetUp() override {
        ReadResult read = readCarFile(test::kWagonFile);
        ASSERT_TRUE(read.loaded);
        car_ = read.loaded->car;
        source_ = std::make_shared<const nlohmann::ordered_json>(read.loaded->source);
    }
    [[nodiscard]] QString folder() const { return folder_.filePath(QStringLiteral("logs")); }
    [[nodiscard]] RecoveryPoint point(double wheelbase, bool saved = false) const {
        auto car = std::make_shared<Car>(car_);
        car->wheelbase = wheelbase;
        return {QStringLiteral("Set wheelbase to %1 mm").arg(wheelbase * 1000), saved, "00ff", car, source_};
    }
    // Writes records of the given wheelbases, each flushed, and leaves the log as a killed program does.
    [[nodiscard]] QString abandon(const std::vector<double>& wheelbases) const {
        RecoveryLog log(folder(), QStringLiteral("/shop/car.bolt.json"));
        for (const double wheelbase : wheelbases) {
            log.record(point(wheelbase));
            log.flush();
        }
        return log.logFile();
    }
    static double wheelbaseOf(const AbandonedLog& log) {
        const ReadResult read = readCar(log.newest.carBytes);
        return read.loaded ? read.loaded->car.wheelbase : -1;
    }

    QTemporaryDir folder_;
    Car car_;
    std::shared_ptr<const nlohmann::ordered_json> source_;
};

TEST_F(RecoveryLogTest, GivesBackTheNewestCarWithWhenWhatAndWhere) {
    const QDateTime before = QDateTime::currentDateTime();
    const QString file = abandon({2.7, 2.8, 2.9});
    const QList<AbandonedLog> logs = abandonedLogs(folder());
    ASSERT_EQ(logs.size(), 1);
    const RecoveryRecord& newest = logs[0].newest;
    EXPECT_EQ(logs[0].logFile, file);
    EXPECT_FALSE(logs[0].damaged);
    EXPECT_EQ(newest.what, "Set wheelbase to 2900 mm");
    EXPECT_EQ(newest.title, QString::fromStdString(car_.title));
    EXPECT_EQ(newest.file, "/shop/car.bolt.json");
    EXPECT_EQ(newest.fileHash, "00ff");
    EXPECT_LE(before.msecsTo(newest.when), 5000);
    EXPECT_GE(before.msecsTo(newest.when), -1);
    const ReadResult read = readCar(newest.carBytes);
    ASSERT_TRUE(read.loaded) << read.problem.line();
    Car expected = car_;
    expected.wheelbase = 2.9;
    EXPECT_EQ(read.loaded->car, expected);
}

TEST_F(RecoveryLogTest, ALogThatIsWrittenIsNotAbandonedAndSaysItsFile) {
    RecoveryLog log(folder(), QStringLiteral("/shop/car.bolt.json"));
    log.record(point(2.7));
    log.flush();
    EXPECT_TRUE(abandonedLogs(folder()).isEmpty());
    EXPECT_EQ(logsOpenOn(folder(), QStringLiteral("/shop/car.bolt.json"), {}), QStringList{log.logFile()});
    EXPECT_TRUE(logsOpenOn(folder(), QStringLiteral("/shop/other.bolt.json"), {}).isEmpty());
    EXPECT_TRUE(logsOpenOn(folder(), QStringLiteral("/shop/car.bolt.json"), log.logFile()).isEmpty());
}

TEST_F(RecoveryLogTest, WhatWasSavedIsNotOffered) {
    {
        RecoveryLog log(folder(), {});
        log.record(point(2.7));
        log.flush();
        log.record(point(2.7, true));
    }
    EXPECT_TRUE(abandonedLogs(folder()).isEmpty());
    EXPECT_TRUE(QDir(folder()).entryList(QDir::Files).isEmpty()) << "a log with nothing to lose stays";
}

TEST_F(RecoveryLogTest, ARemovedLogIsGoneAndStaysGone) {
    RecoveryLog log(folder(), {});
    log.record(point(2.7));
    log.remove();
    log.record(point(2.8));
    log.flush();
    EXPECT_TRUE(QDir(folder()).entryList(QDir::Files).isEmpty());
}

TEST_F(RecoveryLogTest, OfManyAtOnceTheLastIsKept) {
    RecoveryLog log(folder(), {});
    for (int step = 0; step < 2000; ++step) {
        log.record(point(2.0 + 0.001 * step));
    }
    log.flush();
    const QString copy = folder() + QStringLiteral("/copy.boltlog");
    ASSERT_TRUE(QFile::copy(log.logFile(), copy));
    const QList<AbandonedLog> logs = abandonedLogs(folder());
    ASSERT_EQ(logs.size(), 1);
    EXPECT_DOUBLE_EQ(wheelbaseOf(logs[0]), 3.999);
}

// Cut anywhere, as when the power went in the middle of a write.
TEST_F(RecoveryLogTest, CutAnywhereItGivesWhatCameBefore) {
    const QString name = abandon({2.5, 2.6});
    QFile file(name);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    const QByteArray whole = file.readAll();
    const qsizetype head = whole.indexOf('\n') + 1;
    const qsizetype second = whole.indexOf('\n', head) + 1;
    for (qsizetype length = whole.size(); length >= head; length -= length > second + 80 ? 37 : 1) {
        if (length < second - 80) {
            length = head;
        }
        file.resize(length);
        const QList<AbandonedLog> logs = abandonedLogs(folder());
        const double expected =
            length >= whole.size() - 1 ? 2.6 : 2.5;  // a record without its line end is whole
        if (length < second - 1) {
            EXPECT_TRUE(logs.isEmpty()) << length;
        } else {
            ASSERT_EQ(logs.size(), 1) << length;
            EXPECT_DOUBLE_EQ(wheelbaseOf(logs[0]), expected) << length;
            EXPECT_EQ(logs[0].damaged, length != whole.size() && length != second) << length;
        }
    }
}

TEST_F(RecoveryLogTest, AByteChangedAnywhereIsNoticed) {
    const QString name = abandon({2.5, 2.6});
    QFile file(name);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    const QByteArray whole = file.readAll();
    const qsizetype second = whole.indexOf('\n', whole.indexOf('\n') + 1) + 1;
    std::mt19937 random(5);
    for (int run = 0; run < 300; ++run) {
        QByteArray bytes = whole;
        const auto at =
            static_cast<qsizetype>(random() % static_cast<std::size_t>(whole.size() - second)) + second;
        bytes[at] = static_cast<char>(bytes[at] ^ static_cast<char>(1U << (random() % 8)));
        file.seek(0);
        file.write(bytes);
        file.flush();
        const QList<AbandonedLog> logs = abandonedLogs(folder());
        ASSERT_EQ(logs.size(), 1) << at;
        EXPECT_DOUBLE_EQ(wheelbaseOf(logs[0]), at == whole.size() - 1 ? 2.6 : 2.5) << at;
        EXPECT_TRUE(logs[0].damaged) << at;
    }
}

TEST_F(RecoveryLogTest, RubbishIsPassedOver) {
    ASSERT_TRUE(QDir().mkpath(folder()));
    std::mt19937 random(7);
    for (int run = 0; run < 40; ++run) {
        QFile file(folder() + QStringLiteral("/%1.boltlog").arg(run));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        QByteArray bytes(static_cast<qsizetype>(random() % 4000), '\0');
        std::ranges::generate(bytes, [&] { return static_cast<char>(random() % 4 == 0 ? '\n' : random()); });
        file.write(bytes);
    }
    EXPECT_TRUE(abandonedLogs(folder()).isEmpty());
}

TEST_F(RecoveryLogTest, ALongLogStartsAnewWithItsNewestRecord) {
    car_.notes.assign(3'000'000, 'n');
    RecoveryLog log(folder(), {});
    for (int step = 0; step < 12; ++step) {
        log.record(point(2.0 + step));
        log.flush();
        EXPECT_LT(QFileInfo(log.logFile()).size(), 16'100'000);
    }
    EXPECT_EQ(QDir(folder()).entryList(QDir::Files).size(), 1);
    const QString copy = folder() + QStringLiteral("/copy.boltlog");
    ASSERT_TRUE(QFile::copy(log.logFile(), copy));
    const QList<AbandonedLog> logs = abandonedLogs(folder());
    ASSERT_EQ(logs.size(), 1);
    EXPECT_DOUBLE_EQ(wheelbaseOf(logs[0]), 13.0);
}

TEST_F(RecoveryLogTest, AFolderThatCannotBeMadeIsSaid) {
    QFile inTheWay(folder());
    ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
    RecoveryLog log(folder(), {});
    QSignalSpy problems(&log, &RecoveryLog::problemChanged);
    log.record(point(2.7));
    log.flush();
    ASSERT_TRUE(problems.count() == 1 || problems.wait());
    EXPECT_EQ(problems[0][0].toString(), "Not a directory");
    ASSERT_TRUE(inTheWay.remove());
    log.record(point(2.8));
    log.flush();
    ASSERT_TRUE(problems.count() == 2 || problems.wait());
    EXPECT_EQ(problems[1][0].toString(), "") << "it is kept again";
    EXPECT_TRUE(QFile::exists(log.logFile()));
}

// A limit on the size of files stands in for a full disk: a write ends short in the middle of a record.
TEST_F(RecoveryLogTest, OnAFullDiskTheRecordsBeforeStayAndTheNextOneFits) {
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit normal{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &normal), 0);
    QString logFile;
    {
        RecoveryLog log(folder(), {});
        QSignalSpy problems(&log, &RecoveryLog::problemChanged);
        log.record(point(2.5));
        EXPECT_TRUE(log.flush());
        logFile = log.logFile();
        rlimit full = normal;
        full.rlim_cur = static_cast<rlim_t>(QFileInfo(logFile).size()) + 1000;
        ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &full), 0);
        log.record(point(2.6));
        EXPECT_FALSE(log.flush()) << "not on the disk";
        ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &normal), 0);
        ASSERT_TRUE(problems.count() == 1 || problems.wait());
        EXPECT_EQ(problems[0][0].toString(), "File too large");
        const QString copy = folder() + QStringLiteral("/copy.boltlog");
        ASSERT_TRUE(QFile::copy(logFile, copy));
        const QList<AbandonedLog> logs = abandonedLogs(folder());
        ASSERT_EQ(logs.size(), 1);
        EXPECT_DOUBLE_EQ(wheelbaseOf(logs[0]), 2.5);
        EXPECT_FALSE(logs[0].damaged) << "the part that did not fit was taken back";
        removeLog(copy);
        log.record(point(2.7));
    }
    const QList<AbandonedLog> logs = abandonedLogs(folder());
    ASSERT_EQ(logs.size(), 1);
    EXPECT_DOUBLE_EQ(wheelbaseOf(logs[0]), 2.7);
    EXPECT_FALSE(logs[0].damaged);
}

}  // namespace
}  // namespace bolthole
