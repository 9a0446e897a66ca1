#include "app/commands/uncertainty_lines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>

#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/ic_cloud.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "geometry/uncertainty/uncertainty_ranking.h"
#include "geometry/units/uncertainty_text.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostToMeasure = 3;
constexpr double kLeastShare = 0.01;  // what adds less is not worth the walk

struct FigureName {
    Figure figure;
    std::string_view words;
};
constexpr std::array<FigureName, 11> kNames{{
    {Figure::ground, "ground angle"},
    {Figure::axleX, "axle fore and aft"},
    {Figure::icX, "instant center ahead"},
    {Figure::icZ, "instant center up"},
    {Figure::swingArmAngle, "swing arm angle"},
    {Figure::antiSquat, "anti-squat"},
    {Figure::pinion, "pinion"},
    {Figure::driveshaft, "driveshaft"},
    {Figure::pinionToDriveshaft, "pinion to driveshaft"},
    {Figure::frontJoint, "front joint"},
    {Figure::rearJoint, "rear joint"},
}};

class UncertaintyLines {
  public:
    explicit UncertaintyLines(const Car& car) : car_(car), uncertainty_(computeUncertainty(car)) {
        const bool isNonlinear = std::ranges::any_of(
            kNames, [this](const FigureName& name) { return uncertainty_.isNonlinearAtRide(name.figure); });
        if (isNonlinear) {
            cloud_ = drawCloud(car, SamplePlan{});
        }
    }

    std::vector<std::string> write() const {
        std::vector<std::string> lines;
        for (const FigureName& name : kNames) {
            const Quantity quantity = figureTable()[static_cast<std::size_t>(name.figure)].quantity;
            const std::string plusMinus = plusMinusOf(name.figure, quantity);
            if (!plusMinus.empty()) {
                lines.push_back(std::string(name.words) + " at ride " + plusMinus + toMeasure(name.figure));
            }
        }
        return lines;
    }

  private:
    // "121.3 % ± 6.2 (95 in 100, first order)"; empty where there is nothing to say.
    [[nodiscard]] std::string plusMinusOf(Figure figure, Quantity quantity) const {
        std::string half = uncertaintyText(uncertainty_.atRide(figure), quantity, car_.units, Fineness::fine);
        if (half.empty()) {
            return half;
        }
        const double value = uncertainty_.sensitivity.value[static_cast<Eigen::Index>(figure)];
        const std::string number =
            withUnit(fineFigureText(value, quantity, car_.units), quantity, car_.units);
        return uncertainty_.isNonlinearAtRide(figure) ? number + ", " + drawn(figure, quantity)
                                                      : number + " " + half + " (95 in 100, first order)";
    }

    [[nodiscard]] std::string drawn(Figure figure, Quantity quantity) const {
        const bool isCenter = figure == Figure::icX || figure == Figure::icZ;
        const bool isEndless = !(cloud_->nearEnd > 0 && cloud_->farEnd > 0 && std::isfinite(cloud_->farEnd));
        if (isCenter && isEndless) {
            return "or anywhere through infinity (95 in 100, drawn)";
        }
        const Coverage& coverage = cloud_->of(figure);
        const bool isDistance = figure == Figure::icX;
        const double low = isDistance ? cloud_->nearEnd : coverage.low;
        const double high = isDistance ? cloud_->farEnd : coverage.high;
        return withUnit(intervalText(low, high, quantity, car_.units), quantity, car_.units) +
               " (95 in 100, drawn)";
    }

    [[nodiscard]] std::string toMeasure(Figure figure) const {
        std::string words;
        std::size_t count = 0;
        for (const InputShare& input : rankInputs(uncertainty_, 0, static_cast<std::size_t>(figure))) {
            if (count == kMostToMeasure || input.share < kLeastShare) {
                break;
            }
            const FieldId& id = uncertainty_.inputs[input.input].id;
            // What was worked out was never measured yet.
            const bool isMeasured = originOf(car_, id) == Origin::measured;
            words += (count > 0    ? ", then "
                      : isMeasured ? "; measure again first: "
                                   : "; measure first: ") +
                     numberWords(car_, id);
            ++count;
        }
        return words;
    }

    const Car& car_;
    TraceUncertainty uncertainty_;
    std::optional<IcCloud> cloud_;
};

}  // namespace

std::vector<std::string> uncertaintyLines(const Car& car) {
    return UncertaintyLines(car).write();
}

}  // namespace bolthole
