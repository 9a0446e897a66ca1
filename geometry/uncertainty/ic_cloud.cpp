#include "geometry/uncertainty/ic_cloud.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>

#include "geometry/uncertainty/trace_uncertainty.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

/// The model's row at ride, then the instant center in the car frame.
class CloudModel final : public MeasurementModel {
  public:
    CloudModel(const Car& car, std::span<const CarInput> inputs)
        : model_(car, LengthTreatment::keep, holesInUse(car), inputs, {0.0}) {}

    [[nodiscard]] std::size_t outputs() const override { return kModelFigures + 2; }
    bool evaluate(std::span<const double> x, std::span<double> y) override {
        const bool exists = model_.evaluate(x, y.first(kModelFigures));
        y[kModelFigures] = model_.station().icCarX;
        y[kModelFigures + 1] = model_.station().icCarZ;
        return exists;
    }

  private:
    CarModel model_;
};

/// Inputs that no figure at ride answers to stay at their estimates: drawing them would only cost time.
std::vector<UncertainInput> withoutIdle(const std::vector<CarInput>& inputs, const Sensitivity& sensitivity) {
    std::vector<UncertainInput> result = asInputs(inputs);
    for (std::size_t input = 0; input < result.size(); ++input) {
        const auto column = sensitivity.change.col(static_cast<Eigen::Index>(input));
        if ((column.array().isNaN() || column.array() == 0).all()) {
            result[input].uncertainty = 0;
        }
    }
    return result;
}

void keepPoints(const Samples& samples, IcCloud& cloud) {
    for (Eigen::Index row = 0; row < samples.rows() && cloud.points.size() < kCloudPoints; ++row) {
        const double x = samples(row, kModelFigures);
        const double z = samples(row, kModelFigures + 1);
        if (std::isfinite(x) && std::isfinite(z)) {
            cloud.points.push_back({static_cast<float>(x), static_cast<float>(z)});
        }
    }
}

double distanceAt(double inverse) {
    return inverse == 0 ? std::numeric_limits<double>::infinity() : 1.0 / inverse;
}

void readFigures(const Samples& samples, const Sensitivity& sensitivity, IcCloud& cloud) {
    std::vector<double> column(static_cast<std::size_t>(samples.rows()));
    for (std::size_t figure = 0; figure < kModelFigures; ++figure) {
        const auto index = static_cast<Eigen::Index>(figure);
        column.assign(samples.col(index).begin(), samples.col(index).end());
        cloud.figures[figure] = coverageOf(column);
        cloud.firstOrder[figure] =
            firstOrderHolds(sensitivity.value[index], sensitivity.uncertainty(index), cloud.figures[figure]);
    }
    cloud.drawn = cloud.figures[kInverseDistance].used;
    cloud.infinite = cloud.drawn - cloud.figures[static_cast<std::size_t>(Figure::icX)].used;
    cloud.nearEnd = distanceAt(cloud.figures[kInverseDistance].high);
    cloud.farEnd = distanceAt(cloud.figures[kInverseDistance].low);
}

}  // namespace

IcCloud drawCloud(const Car& car, const SamplePlan& plan) {
    const std::vector<CarInput> inputs = uncertainInputs(car);
    const std::vector<UncertainInput> all = asInputs(inputs);
    CloudModel model(car, inputs);
    Sensitivity sensitivity;
    differentiate(model, all, sensitivity);
    IcCloud cloud;
    if (!sensitivity.known || !uncertainStarts(inputs).empty()) {
        return cloud;
    }
    const Samples samples = drawSamples([&] { return std::make_unique<CloudModel>(car, inputs); },
                                        withoutIdle(inputs, sensitivity), plan);
    if (plan.isCancelled && plan.isCancelled()) {
        return cloud;
    }
    keepPoints(samples, cloud);
    readFigures(samples, sensitivity, cloud);
    return cloud;
}

}  // namespace bolthole
