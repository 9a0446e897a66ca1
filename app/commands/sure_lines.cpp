#include "app/commands/sure_lines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>

#include "geometry/uncertainty/ic_cloud.h"
#include "geometry/uncertainty/spread_ranking.h"
#include "geometry/uncertainty/trace_spread.h"
#include "geometry/units/sure_text.h"

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

class SureLines {
  public:
    explicit SureLines(const Car& car) : car_(car), spread_(computeSpread(car)) {
        const bool bends = std::ranges::any_of(
            kNames, [this](const FigureName& name) { return spread_.bendsAtRide(name.figure); });
        if (bends) {
            cloud_ = drawCloud(car, SamplePlan{});
        }
    }

    std::vector<std::string> write() const {
        std::vector<std::string> lines;
        for (const FigureName& name : kNames) {
            const Quantity quantity = figureTable()[static_cast<std::size_t>(name.figure)].quantity;
            const std::string sure = sureOf(name.figure, quantity);
            if (!sure.empty()) {
                lines.push_back(std::string(name.words) + " at ride " + sure + toMeasure(name.figure));
            }
        }
        return lines;
    }

  private:
    // "121.3 % ± 6.2 (95 in 100, first order)"; empty where there is nothing to say.
    [[nodiscard]] std::string sureOf(Figure figure, Quantity quantity) const {
        std::string half = sureText(spread_.atRide(figure), quantity, car_.units, Fineness::fine);
        if (half.empty()) {
            return half;
        }
        const double value = spread_.sensitivity.value[static_cast<Eigen::Index>(figure)];
        const std::string number =
            withUnit(fineFigureText(value, quantity, car_.units), quantity, car_.units);
        return spread_.bendsAtRide(figure) ? number + ", " + drawn(figure, quantity)
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
        for (const InputShare& input : rankInputs(spread_, 0, static_cast<std::size_t>(figure))) {
            if (count == kMostToMeasure || input.share < kLeastShare) {
                break;
            }
            words += (count == 0 ? "; measure again first: " : ", then ") +
                     numberWords(car_, spread_.inputs[input.input].id);
            ++count;
        }
        return words;
    }

    const Car& car_;
    TraceSpread spread_;
    std::optional<IcCloud> cloud_;
};

}  // namespace

std::vector<std::string> sureLines(const Car& car) {
    return SureLines(car).write();
}

}  // namespace bolthole
