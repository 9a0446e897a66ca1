// Waits for what is computed off the window's thread.
#pragma once

#include <QTest>

#include "widgets/kit/job_runner.h"

namespace bolthole::test {

/// Until no job is waited for, a minute at most; whether that came.
[[nodiscard]] inline bool awaitJobs() {
    constexpr int kPatience = 60'000;  // ms
    return QTest::qWaitFor([] { return jobsUnderWay() == 0; }, kPatience);
}

}  // namespace bolthole::test
