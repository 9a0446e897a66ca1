#include "widgets/papers/sheets/measuring_places.h"

#include "geometry/car/fields.h"
#include "widgets/kit/translation.h"
#include "widgets/words/field_words.h"
#include "widgets/words/spring_words.h"

namespace bolthole {

QString planTapeStep(Units units) {
    return units == Units::inch ? tr("to 1/16 in") : tr("to 1 mm");
}

std::vector<PlanNumber> planWheels() {
    return {{QStringLiteral("A"), tr("wheelbase"), {.field = Field::wheelbase}},
            {QStringLiteral("B"), tr("rear tire radius, loaded"), {.field = Field::rearTireRadius}},
            {QStringLiteral("C"), tr("front tire radius, loaded"), {.field = Field::frontTireRadius}},
            {QStringLiteral("D"), tr("rear track"), {.field = Field::rearTrack}},
            {QStringLiteral("E"), tr("front track"), {.field = Field::frontTrack}},
            {QStringLiteral("F"), tr("front bump, at the wheel"), {.field = Field::frontBump}},
            {QStringLiteral("G"), tr("front droop, at the wheel"), {.field = Field::frontDroop}},
            {{}, tr("front shock for a wheel travel of 1"), {.field = Field::frontMotionRatio}}};
}

std::vector<PlanNumber> planDriveline() {
    return {{QStringLiteral("A"), tr("pinion, nose up +"), {.field = Field::pinionAngle}},
            {QStringLiteral("B"), tr("output, rising +"), {.field = Field::outputAngle}},
            {{}, tr("slip yoke, spline held"), {.field = Field::slipEngagement}},
            {{}, tr("slip yoke, in until it bottoms"), {.field = Field::slipInward}},
            {{}, tr("slip yoke, least spline held"), {.field = Field::slipLeast}},
            {{}, tr("largest joint angle allowed"), {.field = Field::jointLimit}}};
}

std::vector<PlanNumber> planSpring(const Car& car, int item) {
    const PartKind kind = car.springs[static_cast<std::size_t>(item)].kind;
    std::vector<PlanNumber> numbers;
    for (const Field field :
         {Field::springRate, Field::springFreeLength, Field::springClosedLength, Field::springOpenLength}) {
        const FieldId id{.field = field, .item = item};
        if (belongsTo(kind, field)) {
            numbers.push_back({{}, wordsFor(car, id).name, id});
        }
    }
    return numbers;
}

std::vector<PlanNumber> planTravel() {
    return {{{}, tr("rear axle, bump to the stop"), {.field = Field::bump}},
            {{}, tr("rear axle, droop to its end"), {.field = Field::droop}}};
}

std::vector<PlanLimits> planRodLimits(const Car& car) {
    std::vector<PlanLimits> limits;
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        const Link& one = car.links[static_cast<std::size_t>(link)];
        if (one.kind != LinkKind::rod) {
            continue;
        }
        PlanLimits of{linkName(car, link), {}};
        of.numbers.push_back({{}, tr("misalignment"), {.field = Field::rodEndLimit, .link = link}});
        if (one.adjuster) {
            of.numbers.push_back({{}, tr("shortest"), {.field = Field::adjusterShortest, .link = link}});
            of.numbers.push_back({{}, tr("longest"), {.field = Field::adjusterLongest, .link = link}});
            of.numbers.push_back({{}, tr("engagement"), {.field = Field::adjusterEngagement, .link = link}});
            of.numbers.push_back({{}, tr("least"), {.field = Field::adjusterLeastEngagement, .link = link}});
        }
        limits.push_back(std::move(of));
    }
    return limits;
}

PlanTable planCorners(const Car& car) {
    const WheelFields& aboard = car.cornersAre == DriverSeat::aboard ? kCornerFields : kOtherCornerFields;
    const WheelFields& out = car.cornersAre == DriverSeat::aboard ? kOtherCornerFields : kCornerFields;
    const std::array names{tr("left front"), tr("right front"), tr("left rear"), tr("right rear")};
    PlanTable table{{tr("driver aboard"), tr("driver out"), tr("pad's height")}, {}};
    for (std::size_t wheel = 0; wheel < names.size(); ++wheel) {
        table.rows.push_back({static_cast<int>(wheel) + 1,
                              names[wheel],
                              false,
                              {FieldId{.field = aboard[wheel]}, FieldId{.field = out[wheel]},
                               FieldId{.field = kPadFields[wheel]}}});
    }
    return table;
}

std::vector<PlanNumber> planWeighing(const Car& car) {
    std::vector<PlanNumber> numbers{{{}, tr("driver, dressed to drive"), {.field = Field::driverMass}}};
    for (int load = 0; load < static_cast<int>(car.ballast.size()); ++load) {
        const QString name = QString::fromStdString(ballastWords(car, load));
        const bool isFluid = car.ballast[static_cast<std::size_t>(load)].volume.has_value();
        numbers.push_back(isFluid ? PlanNumber{{},
                                               tr("%1, all it holds").arg(name),
                                               {.field = Field::ballastVolume, .item = load}}
                                  : PlanNumber{{}, name, {.field = Field::ballastMass, .item = load}});
    }
    numbers.push_back({{}, tr("lift: raised by"), {.field = Field::liftHeight}});
    numbers.push_back({{}, tr("lift: axle then reads"), {.field = Field::liftReading}});
    numbers.push_back({{}, tr("CG height, where it is known"), {.field = Field::cgHeight}});
    return numbers;
}

}  // namespace bolthole
