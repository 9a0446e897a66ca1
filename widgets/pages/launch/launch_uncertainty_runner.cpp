#include "widgets/pages/launch/launch_uncertainty_runner.h"

#include <optional>
#include <utility>
#include <vector>

namespace bolthole {

namespace {

constexpr int kDelay = 120;  // ms

}  // namespace

LaunchUncertaintyRunner::LaunchUncertaintyRunner(QObject* parent) : QObject(parent) {}

void LaunchUncertaintyRunner::start(std::shared_ptr<const LaunchFilm> film,
                                    std::shared_ptr<const LaunchFilm> baseline) {
    jobs_.start(
        [this, film = std::move(film), baseline = std::move(baseline)](const Job& job) {
            const std::vector<LaunchError> errors = drawLaunchErrors(kDraws, errorSizesOf(film->car));
            const std::optional<LaunchUncertainties> uncertainties =
                drawLaunchUncertainties(film->inputs, baseline ? &baseline->inputs : nullptr, errors,
                                        [job] { return job.isCancelled(); });
            if (uncertainties) {
                job.answer([this, drawn = *uncertainties] { emit arrived(drawn); });
            }
        },
        {.delay = kDelay});
}

}  // namespace bolthole
