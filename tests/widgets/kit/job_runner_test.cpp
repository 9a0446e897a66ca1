// Work on other threads: the latest alone counts, in order, and what goes wrong is said.
#include "widgets/kit/job_runner.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <QSignalSpy>
#include <QTest>
#include <QThread>
#include <array>
#include <atomic>
#include <fstream>
#include <memory>
#include <stdexcept>
#include <vector>

#include "geometry/units/parallel.h"
#include "tests/support/await_jobs.h"
#include "tests/support/watched.h"

namespace bolthole::test {
namespace {

TEST(JobRunner, AnswersOnTheWindowsThreadInOrderAndThenEnds) {
    JobRunner runner;
    std::vector<int> taken;
    bool elsewhere = false;
    int takenAtEnd = -1;
    QObject::connect(&runner, &JobRunner::finished, [&] { takenAtEnd = static_cast<int>(taken.size()); });
    QThread* const window = QThread::currentThread();
    runner.start([&](const Job& job) {
        elsewhere = QThread::currentThread() != window;
        for (int number = 0; number < 100; ++number) {
            job.answer([&, number] {
                EXPECT_EQ(QThread::currentThread(), window);
                taken.push_back(number);
            });
        }
    });
    EXPECT_TRUE(runner.isRunning());
    EXPECT_TRUE(taken.empty());
    ASSERT_TRUE(awaitJobs());
    EXPECT_FALSE(runner.isRunning());
    EXPECT_TRUE(elsewhere);
    ASSERT_EQ(taken.size(), 100U);
    EXPECT_TRUE(std::ranges::is_sorted(taken));
    EXPECT_EQ(takenAtEnd, 100);
}

TEST(JobRunner, OfMoreThanOneTheLatestAloneArrives) {
    JobRunner runner;
    std::vector<int> taken;
    for (int number = 0; number < 50; ++number) {
        runner.start(
            [&taken, number](const Job& job) { job.answer([&taken, number] { taken.push_back(number); }); },
            {.workers = 2, .aside = number % 2 == 0});
    }
    ASSERT_TRUE(awaitJobs());
    EXPECT_FALSE(taken.empty());
    EXPECT_TRUE(std::ranges::all_of(taken, [](int number) { return number == 49; }));
}

TEST(JobRunner, WaitsForAMomentOfQuiet) {
    JobRunner runner;
    std::atomic<int> ran = 0;
    for (int number = 0; number < 20; ++number) {
        runner.start([&ran](const Job&) { ++ran; }, {.delay = 20});
    }
    ASSERT_TRUE(awaitJobs());
    EXPECT_EQ(ran, 1);
}

TEST(JobRunner, SaysAnExceptionAndGoesOnWithTheNextJob) {
    JobRunner runner;
    const QSignalSpy failed(&runner, &JobRunner::failed);
    const QSignalSpy news(&JobNews::instance(), &JobNews::failed);
    const QSignalSpy finished(&runner, &JobRunner::finished);
    runner.start([](const Job&) { throw std::runtime_error("the well is dry"); }, {.workers = 2});
    ASSERT_TRUE(awaitJobs());
    QTest::qWait(20);
    ASSERT_EQ(failed.size(), 1);
    EXPECT_TRUE(failed.front().front().toString().contains(QStringLiteral("the well is dry")));
    EXPECT_EQ(news.size(), 1);
    EXPECT_EQ(finished.size(), 0);
    bool answered = false;
    runner.start([&answered](const Job& job) { job.answer([&answered] { answered = true; }); });
    ASSERT_TRUE(awaitJobs());
    EXPECT_TRUE(answered);
}

TEST(JobRunner, MayGoWhileItsJobRuns) {
    std::atomic<bool> stopped = false;
    bool answered = false;
    {
        JobRunner runner;
        std::atomic<bool> began = false;
        runner.start([&](const Job& job) {
            began = true;
            while (!job.isCancelled()) {
                QThread::yieldCurrentThread();
            }
            job.answer([&answered] { answered = true; });
            stopped = true;
        });
        ASSERT_TRUE(QTest::qWaitFor([&] { return began.load(); }));
    }
    EXPECT_TRUE(stopped);
    QCoreApplication::processEvents();
    EXPECT_FALSE(answered);
    EXPECT_EQ(jobsUnderWay(), 0);
}

TEST(JobRunner, TellsHowFarItIs) {
    JobRunner runner;
    const QSignalSpy progress(&runner, &JobRunner::progressed);
    runner.start([](const Job& job) {
        job.report(0.25);
        job.report(1);
    });
    ASSERT_TRUE(awaitJobs());
    ASSERT_EQ(progress.size(), 2);
    EXPECT_EQ(progress.front().front().toDouble(), 0.25);
}

double residentMegabytes() {
    std::ifstream pages("/proc/self/statm");
    double all = 0;
    double resident = 0;
    pages >> all >> resident;
    return resident * static_cast<double>(sysconf(_SC_PAGESIZE)) / 1e6;
}

// Blocks of a hole combination's size, of which a few stay and hold the ones before them in the C library's
// heap.
TEST(JobRunner, WhatJobsHaveFreedIsGivenBackToTheSystem) {
    if (isWatched()) {
        GTEST_SKIP() << "AddressSanitizer keeps what is freed to watch it";
    }
    JobRunner runner;
    const double before = residentMegabytes();
    double freed = 0;
    std::vector<std::unique_ptr<std::array<char, 100>>> kept;
    runner.start([&](const Job& job) {
        job.answer([&] {
            std::vector<std::unique_ptr<std::array<char, 100>>> blocks(2'000'000);
            for (auto& block : blocks) {
                block = std::make_unique<std::array<char, 100>>();
            }
            for (std::size_t index = 0; index < blocks.size(); index += 1000) {
                kept.push_back(std::move(blocks[index]));
            }
            kept.push_back(std::move(blocks.back()));
            blocks.clear();
            freed = residentMegabytes();
        });
    });
    ASSERT_TRUE(awaitJobs());
    ASSERT_GT(freed, before + 150) << "the C library gives it back by itself: nothing is left to test";
    EXPECT_TRUE(QTest::qWaitFor([&] { return residentMegabytes() < before + 60; }, 20'000))
        << residentMegabytes() << " MB after " << before;
}

TEST(InParallel, RunsOnEachThreadAndThrowsToTheCaller) {
    std::atomic<int> ran = 0;
    inParallel(3, [&ran] { ++ran; });
    EXPECT_EQ(ran, 3);
    EXPECT_THROW(inParallel(3,
                            [&ran] {
                                ++ran;
                                throw std::runtime_error("no");
                            }),
                 std::runtime_error);
    EXPECT_EQ(ran, 6);
}

}  // namespace
}  // namespace bolthole::test
