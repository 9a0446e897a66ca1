// SIGKILL at random moments of editing, writing down passes and saving in the real window: every edit older
// than a second is in the file or in the recovery log, and both can be read. BOLTHOLE_KILLS says how many;
// 500 take about ten minutes.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <signal.h>

#include <QCoreApplication>
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <QtTest/QTest>
#include <algorithm>
#include <chrono>
#include <cmath>
#include <iostream>
#include <memory>
#include <random>

#include "app/document/recovery_log.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

qint64 now() {
    const auto time = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(time).count();
}

// One window that is edited in a folder of its own, to be killed.
class Victim {
  public:
    explicit Victim(unsigned seed) : killAfter_(200 + static_cast<int>(seed * 7919U % 2800U)) {
        EXPECT_TRUE(QFile::copy(QString::fromStdString(test::kWagonFile), file()));
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("XDG_DATA_HOME"), folder_.path());
        environment.insert(QStringLiteral("XDG_CONFIG_HOME"), folder_.path());
        process_.setProcessEnvironment(environment);
        process_.start(QCoreApplication::applicationDirPath() + QStringLiteral("/edit_until_killed"),
                       {file(), QString::number(seed)});
    }
    [[nodiscard]] QString file() const { return folder_.filePath(QStringLiteral("car.bolt.json")); }
    // Kills it some while after its first edit.
    void kill() {
        ASSERT_TRUE(process_.waitForReadyRead(30000)) << "no edit was made";
        const qint64 due = process_.peek(100).split('\n').first().split(' ').last().toLongLong() + killAfter_;
        while (now() < due) {
            process_.waitForReadyRead(static_cast<int>(due - now()));
        }
        killed_ = now();
        ::kill(static_cast<pid_t>(process_.processId()), SIGKILL);
        process_.waitForFinished();
        ASSERT_EQ(process_.exitStatus(), QProcess::CrashExit)
            << process_.readAllStandardError().toStdString();
    }
    // The newest edit that must not be lost; 0: none was old enough.
    [[nodiscard]] int newestThatCounts() {
        int newest = 0;
        for (const QByteArray& line : process_.readAllStandardOutput().split('\n')) {
            const QList<QByteArray> words = line.split(' ');
            if (words.size() == 2 && words[1].toLongLong() <= killed_ - 1000) {
                newest = words[0].toInt();
            }
        }
        return newest;
    }
    // The newest edit that can be had back, from log or file.
    [[nodiscard]] int newestKept() const {
        const ReadResult saved = readCarFile(file().toStdString());
        EXPECT_TRUE(saved.loaded) << "the file can't be read: " << saved.problem.line();
        int newest = saved.loaded ? numberOf(saved.loaded->car) : -1;
        for (const AbandonedLog& log : abandonedLogs(folder_.filePath(QStringLiteral("bolthole/recovery")))) {
            const ReadResult kept = readCar(log.newest.carBytes);
            EXPECT_TRUE(kept.loaded) << "the log can't be read: " << kept.problem.line();
            newest = std::max(newest, kept.loaded ? numberOf(kept.loaded->car) : -1);
        }
        return newest;
    }

  private:
    static int numberOf(const Car& car) {
        const double wheelbase = car.wheelbase * 1000.0;
        const int byWheelbase =
            wheelbase > 2900 ? 0 : static_cast<int>(std::lround((wheelbase - 2000.0) * 100.0));
        const int byPass = car.passes.empty() ? 0 : car.passes.back().number;
        EXPECT_TRUE(car.passes.empty() ||
                    car.kept.at(static_cast<std::size_t>(*car.passes.back().setup)).car != nullptr);
        return std::max(byWheelbase, byPass);
    }

    QTemporaryDir folder_;
    QProcess process_;
    int killAfter_;  // ms after its first edit
    qint64 killed_ = 0;
};

TEST(Kill, LosesNoEditOlderThanASecond) {
    const int wanted =
        qEnvironmentVariableIsSet("BOLTHOLE_KILLS") ? qEnvironmentVariableIntValue("BOLTHOLE_KILLS") : 12;
    constexpr int kAtOnce = 6;
    int counted = 0;
    for (int done = 0; done < wanted; done += kAtOnce) {
        std::vector<std::unique_ptr<Victim>> victims;
        for (int each = 0; each < std::min(kAtOnce, wanted - done); ++each) {
            victims.push_back(std::make_unique<Victim>(static_cast<unsigned>(done + each + 1)));
        }
        for (const auto& victim : victims) {
            victim->kill();
            const int must = victim->newestThatCounts();
            EXPECT_GE(victim->newestKept(), must);
            counted += must > 0 ? 1 : 0;
        }
    }
    std::cout << counted << " of " << wanted << " windows had edits older than a second\n";
    EXPECT_GT(counted, wanted / 3) << "too few windows were old enough to prove anything";
}

}  // namespace
}  // namespace bolthole
