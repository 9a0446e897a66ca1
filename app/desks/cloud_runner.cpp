#include "app/desks/cloud_runner.h"

#include <QThread>
#include <algorithm>
#include <atomic>
#include <utility>

namespace bolthole {

namespace {

constexpr int kCloudSettling = 120;  // ms
constexpr std::uint64_t kSeed = 20'081'001;

}  // namespace

struct CloudRunner::Running {
    Running(std::shared_ptr<const Car> asked, quint64 number) : car(std::move(asked)), job(number) {}

    std::shared_ptr<const Car> car;
    quint64 job;
    std::atomic<bool> cancelled = false;
};

CloudRunner::CloudRunner(QObject* parent) : QObject(parent) {
    wait_.setSingleShot(true);
    wait_.setInterval(kCloudSettling);
    pool_.setMaxThreadCount(1);
    connect(&wait_, &QTimer::timeout, this, &CloudRunner::draw);
    connect(this, &CloudRunner::drawn, this, &CloudRunner::take, Qt::QueuedConnection);
}

CloudRunner::~CloudRunner() {
    cancel();
    pool_.waitForDone();
}

void CloudRunner::start(std::shared_ptr<const Car> car) {
    cancel();
    running_ = std::make_shared<Running>(std::move(car), ++lastJob_);
    wait_.start();
}

void CloudRunner::cancel() {
    wait_.stop();
    if (running_) {
        running_->cancelled = true;
        running_.reset();
    }
}

void CloudRunner::draw() {
    pool_.start([this, running = running_] {
        SamplePlan plan{.seed = kSeed, .threads = std::max(1, QThread::idealThreadCount())};
        plan.isCancelled = [running] { return running->cancelled.load(); };
        auto cloud = std::make_shared<IcCloud>(drawCloud(*running->car, plan));
        emit drawn(cloud, running->job, QPrivateSignal());
    });
}

void CloudRunner::take(const std::shared_ptr<IcCloud>& cloud, quint64 job) {
    if (!running_ || running_->job != job) {
        return;  // of a car changed since
    }
    running_.reset();
    if (cloud->drawn > 0) {
        emit arrived(cloud);
    }
}

}  // namespace bolthole
