#include "widgets/pages/launch/spread_runner.h"

#include <optional>
#include <utility>
#include <vector>

namespace bolthole {

namespace {

constexpr int kSettling = 120;  // ms

}  // namespace

SpreadRunner::SpreadRunner(QObject* parent) : QObject(parent) {}

void SpreadRunner::start(std::shared_ptr<const LaunchFilm> film, std::shared_ptr<const LaunchFilm> before) {
    jobs_.start(
        [this, film = std::move(film), before = std::move(before)](const Job& job) {
            const std::vector<LaunchError> errors = drawLaunchErrors(kDraws, errorSizesOf(film->car));
            const std::optional<LaunchSpreads> spreads =
                drawLaunchSpreads(film->inputs, before ? &before->inputs : nullptr, errors,
                                  [job] { return job.isCancelled(); });
            if (spreads) {
                job.answer([this, drawn = *spreads] { emit arrived(drawn); });
            }
        },
        {.settling = kSettling});
}

}  // namespace bolthole
