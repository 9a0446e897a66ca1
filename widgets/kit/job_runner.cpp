#include "widgets/kit/job_runner.h"

#include <QMetaObject>
#include <QSemaphore>
#include <QThread>
#include <QThreadPool>
#include <algorithm>
#include <atomic>
#include <exception>

#include "geometry/units/upper_vectors.h"
#include "widgets/kit/freed_memory.h"

namespace bolthole {

namespace {

// Not Qt's own pool: its painter waits for that one while it draws.
QThreadPool& jobPool() {
    static QThreadPool pool;
    return pool;
}

// Threads for what may not take time from a drag. A thread that was given the lowest priority can't be raised
// again by everybody, so these are others.
QThreadPool& asidePool() {
    static QThreadPool pool;
    pool.setThreadPriority(QThread::IdlePriority);
    pool.setMaxThreadCount(std::max(1, QThread::idealThreadCount() - 1));
    return pool;
}

int& waitedFor() {
    static int count = 0;
    return count;
}

}  // namespace

struct Job::Shared {
    JobRunner* runner = nullptr;  // outlives the workers: it waits for them
    JobRunner::Work work;
    std::atomic<bool> cancelled = false;
    int workers = 0;        // that were started
    std::atomic<int> left;  // of them, still to end
    QSemaphore ended;       // one for each that did
};

bool Job::isCancelled() const {
    return shared_->cancelled.load();
}

void Job::report(double share) const {
    answer([runner = shared_->runner, share] { emit runner->progressed(share); });
}

void Job::answer(std::function<void()> take) const {
    if (shared_->cancelled) {
        return;
    }
    QMetaObject::invokeMethod(
        shared_->runner,
        [shared = shared_, take = std::move(take)] {
            if (!shared->cancelled) {
                take();
            }
        },
        Qt::QueuedConnection);
}

JobRunner::JobRunner(QObject* parent) : QObject(parent) {
    delay_.setSingleShot(true);
    connect(&delay_, &QTimer::timeout, this, &JobRunner::launch);
}

JobRunner::~JobRunner() {
    cancel();
    for (const std::weak_ptr<Job::Shared>& each : dropped_) {
        if (const auto shared = each.lock()) {
            shared->ended.acquire(shared->workers);
        }
    }
}

void JobRunner::start(Work work, const JobPlan& plan) {
    cancel();
    running_ = std::make_shared<Job::Shared>();
    ++waitedFor();
    running_->runner = this;
    running_->work = std::move(work);
    plan_ = plan;
    if (plan.delay > 0) {
        delay_.start(plan.delay);
    } else {
        launch();
    }
}

void JobRunner::launch() {
    QThreadPool& pool = plan_.aside ? asidePool() : jobPool();
    running_->workers = std::clamp(plan_.workers, 1, pool.maxThreadCount());
    running_->left = running_->workers;
    for (int worker = 0; worker < running_->workers; ++worker) {
        pool.start([shared = running_] { JobRunner::work(shared); });
    }
}

void JobRunner::cancel() {
    delay_.stop();
    if (running_) {
        running_->cancelled = true;
        drop();
    }
}

// Keeps track of who has to be waited for at the end.
void JobRunner::drop() {
    std::erase_if(dropped_, [](const std::weak_ptr<Job::Shared>& each) { return each.expired(); });
    dropped_.push_back(running_);
    running_.reset();
    --waitedFor();
    returnFreedMemorySoon();
}

// On a thread of a pool.
void JobRunner::work(const std::shared_ptr<Job::Shared>& shared) {
    const Job job(shared);
    QString reason;
    try {
        if (!shared->cancelled) {
            clearUpperVectors();
            shared->work(job);
        }
    } catch (const std::exception& error) {
        reason = tr("This could not be computed: %1").arg(QString::fromLocal8Bit(error.what()));
    } catch (...) {
        reason = tr("This could not be computed; the cause is not known");
    }
    const bool last = --shared->left == 0;
    if (last || !reason.isEmpty()) {
        job.answer([shared, reason] { shared->runner->end(shared, reason); });
    }
    shared->ended.release();
}

// The queue to the window's thread keeps the order: every answer of the workers was taken before.
void JobRunner::end(const std::shared_ptr<Job::Shared>& shared, const QString& reason) {
    if (reason.isEmpty()) {
        drop();
        emit finished();
    } else {
        shared->cancelled = true;
        drop();
        emit failed(reason);
        emit JobNews::instance().failed(reason);
    }
}

JobNews& JobNews::instance() {
    static JobNews news;
    return news;
}

int jobsUnderWay() {
    return waitedFor();
}

int jobThreads() {
    return jobPool().maxThreadCount();
}

}  // namespace bolthole
