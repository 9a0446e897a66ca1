#include "app/controllers/cloud_runner.h"

#include <cstdint>
#include <utility>

namespace bolthole {

namespace {

constexpr int kCloudDelay = 120;  // ms
constexpr std::uint64_t kSeed = 20'081'001;

}  // namespace

CloudRunner::CloudRunner(QObject* parent) : QObject(parent) {}

void CloudRunner::start(std::shared_ptr<const Car> car) {
    jobs_.start(
        [this, car = std::move(car)](const Job& job) {
            SamplePlan plan{.seed = kSeed, .threads = jobThreads()};
            plan.isCancelled = [job] { return job.isCancelled(); };
            const auto cloud = std::make_shared<const IcCloud>(drawCloud(*car, plan));
            if (cloud->drawn > 0) {
                job.answer([this, cloud] { emit arrived(cloud); });
            }
        },
        {.delay = kCloudDelay});
}

}  // namespace bolthole
