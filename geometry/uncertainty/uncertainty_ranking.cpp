#include "geometry/uncertainty/uncertainty_ranking.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

#include "geometry/uncertainty/car_model.h"
#include "geometry/units/units.h"

namespace bolthole {

std::vector<InputShare> rankInputs(const Sensitivity& sensitivity, Eigen::Index output) {
    std::vector<InputShare> ranked;
    if (!sensitivity.known || !(sensitivity.uncertainty(output) > 0)) {
        return ranked;
    }
    for (Eigen::Index input = 0; input < sensitivity.change.cols(); ++input) {
        ranked.push_back({static_cast<std::size_t>(input), sensitivity.share(output, input),
                          sensitivity.change(output, input)});
    }
    std::ranges::stable_sort(ranked, std::greater<>{}, &InputShare::share);
    return ranked;
}

std::vector<InputShare> rankInputs(const TraceUncertainty& uncertainty, std::size_t place,
                                   std::size_t figure) {
    return std::isnan(uncertainty.of(place, figure))
               ? std::vector<InputShare>{}
               : rankInputs(uncertainty.sensitivity, rowOf(place, figure));
}

double uncertaintyWith(const Sensitivity& sensitivity, Eigen::Index output, Eigen::Index input,
                       double present, double other) {
    if (!sensitivity.known || (present == 0 && other != 0)) {
        return kNaN;
    }
    const double whole = sensitivity.uncertainty(output);
    const double part = sensitivity.change(output, input);
    const double changed = present == 0 ? 0.0 : part * other / present;
    return std::sqrt(std::max(0.0, whole * whole - part * part) + changed * changed);
}

double uncertaintyWith(const TraceUncertainty& uncertainty, std::size_t place, std::size_t figure,
                       std::size_t input, double other) {
    if (std::isnan(uncertainty.of(place, figure))) {
        return kNaN;
    }
    return uncertaintyWith(uncertainty.sensitivity, rowOf(place, figure), static_cast<Eigen::Index>(input),
                           uncertainty.inputs[input].numberUncertainty.uncertainty, other);
}

}  // namespace bolthole
