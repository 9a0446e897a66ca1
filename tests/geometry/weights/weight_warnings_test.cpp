// What disagrees among weights is said, at its number and with its reason; what agrees is not.
#include "geometry/weights/weight_warnings.h"

#include <gmock/gmock.h>

#include <vector>

namespace bolthole {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr double kCgHeight = 0.55;

Stance stance() {
    return {.wheelbase = 2.8,
            .frontTrack = 1.5,
            .rearTrack = 1.5,
            .front = WheelRates{.wheel = 30e3, .roll = 40e3},
            .rear = WheelRates{.wheel = 25e3, .roll = 20e3}};
}

// A driver of 84 kg, seated 1.2 m ahead of the rear axle and 0.35 m left, by statics.
Weighing agreeing() {
    Weighing weighing;
    weighing.withoutDriver = CornerWeights{450, 440, 340, 330};
    weighing.driverMass = 84;
    weighing.driverAt = Eigen::Vector3d(1.2, 0.35, 0.5);
    const MassAt driver{84, *weighing.driverAt};
    weighing.withDriver = withBallast(*weighing.withoutDriver, stance(), {&driver, 1}).car->corners;
    return weighing;
}

std::vector<WeightWarning> warningsOf(const Weighing& weighing) {
    return findWeightWarnings(weighing, kCgHeight, stance(), Units::metric);
}

auto warning(WeightPart part, const std::string& words) {
    return AllOf(testing::Field(&WeightWarning::part, part),
                 testing::Field(&WeightWarning::finding, testing::ResultOf(sentence, HasSubstr(words))));
}

}  // namespace

TEST(WeightWarnings, NothingToWarnOf) {
    EXPECT_THAT(warningsOf({}), IsEmpty());
    Weighing weighing = agreeing();
    EXPECT_THAT(warningsOf(weighing), IsEmpty());
    weighing.ticket = AxleTicket{.front = 925, .rear = 715, .total = 1640};
    weighing.pads = PadHeights{0.0002, 0, 0, 0};
    weighing.ballast = {{.name = "fuel", .fill = Fill{0.06, 740}, .at = {-0.5, 0, 0.4}}};
    EXPECT_THAT(warningsOf(weighing), IsEmpty());
}

TEST(WeightWarnings, DriverByTheScales) {
    const auto driver = driverFigures(agreeing(), stance());
    ASSERT_TRUE(driver.has_value());
    EXPECT_NEAR(driver->mass, 84, 1e-10);
    EXPECT_NEAR(driver->ahead, 1.2, 1e-10);
    EXPECT_NEAR(driver->left.value(), 0.35, 1e-10);
    Weighing swapped = agreeing();
    std::swap(swapped.withDriver, swapped.withoutDriver);
    EXPECT_FALSE(driverFigures(swapped, stance()).has_value()) << "a driver who weighs less than nothing";
}

TEST(WeightWarnings, DriverMassThatDisagrees) {
    Weighing weighing = agreeing();
    weighing.driverAt.reset();
    weighing.driverMass =
        81.5;  // 2.5 kg off: within twice the scales' uncertainty, 2 x 0.5 x sqrt(8 + 1) = 3
    EXPECT_THAT(warningsOf(weighing), IsEmpty());
    weighing.driverMass = 80;
    EXPECT_THAT(warningsOf(weighing),
                ElementsAre(warning(WeightPart::driver, "84.0 kg heavier with the driver")));
    weighing.scaleUncertainty = 2;
    EXPECT_THAT(warningsOf(weighing), IsEmpty()) << "poor scales prove nothing";
}

TEST(WeightWarnings, TheOneCornerThatDisagrees) {
    const std::vector<std::pair<double CornerWeights::*, WeightPart>> corners{
        {&CornerWeights::leftFront, WeightPart::leftFront},
        {&CornerWeights::rightFront, WeightPart::rightFront},
        {&CornerWeights::leftRear, WeightPart::leftRear},
        {&CornerWeights::rightRear, WeightPart::rightRear}};
    for (const auto& [corner, part] : corners) {
        Weighing weighing = agreeing();
        *weighing.withDriver.*corner += 25;
        const std::vector<WeightWarning> warnings = warningsOf(weighing);
        ASSERT_FALSE(warnings.empty());
        EXPECT_THAT(warnings.front(), warning(part, "alone would explain it"));
    }
    Weighing vague = agreeing();
    vague.withDriver->leftFront += 6;
    EXPECT_THAT(warningsOf(vague), ElementsAre(warning(WeightPart::driver, "weigh again")))
        << "too small an error to say which corner";
}

TEST(WeightWarnings, CornerThatGetsLighterWithTheDriverIn) {
    Weighing weighing;
    weighing.withoutDriver = CornerWeights{450, 440, 340, 330};
    weighing.withDriver = CornerWeights{480, 455, 379, 328};
    EXPECT_THAT(warningsOf(weighing), ElementsAre(warning(WeightPart::rightRear, "2.0 kg lighter")));
    weighing.withDriver->rightRear = 329.2;
    EXPECT_THAT(warningsOf(weighing), IsEmpty()) << "within what two readings may differ by";
}

TEST(WeightWarnings, DriverSeatedElsewhere) {
    Weighing weighing = agreeing();
    weighing.driverAt->y() = -0.35;
    EXPECT_THAT(
        warningsOf(weighing),
        ElementsAre(warning(WeightPart::driver, "350.0 mm left of the middle, as entered 350.0 mm right")));
    weighing = agreeing();
    weighing.driverAt->x() = 0.8;
    EXPECT_THAT(warningsOf(weighing), ElementsAre(warning(WeightPart::driver, "ahead of the rear axle")));
}

TEST(WeightWarnings, AxleTicketThatDisagrees) {
    Weighing weighing = agreeing();
    weighing.ticket = AxleTicket{.front = 925, .rear = 715, .total = 1700};
    EXPECT_THAT(warningsOf(weighing), ElementsAre(warning(WeightPart::ticket, "one of the three is wrong"),
                                                  warning(WeightPart::ticket, "the whole car weighed 1700")));
    weighing.ticket = AxleTicket{.rear = 715, .driver = false};
    EXPECT_THAT(warningsOf(weighing), ElementsAre(warning(WeightPart::ticket, "the rear axle weighed 715")));
}

TEST(WeightWarnings, UnlevelPads) {
    Weighing weighing = agreeing();
    weighing.pads = PadHeights{0, 0.004, 0, 0};
    EXPECT_THAT(
        warningsOf(weighing),
        ElementsAre(warning(WeightPart::pads, "4.0 mm below the plane of the other three, which changes")));
    Stance unknown = stance();
    unknown.front.reset();
    EXPECT_THAT(findWeightWarnings(weighing, kCgHeight, unknown, Units::metric),
                ElementsAre(warning(WeightPart::pads, "it is not known how far")));
}

TEST(WeightWarnings, NumbersOutsideWhatCarsHave) {
    Weighing weighing;
    weighing.withoutDriver = CornerWeights{450, 440, 340, 33};
    const std::vector<WeightWarning> warnings = warningsOf(weighing);
    // 33 of 1263 kg. The left side and the diagonal are off by it too, and are not named beside it.
    ASSERT_EQ(warnings.size(), 1U);
    EXPECT_THAT(warnings[0], warning(WeightPart::rightRear, "right rear carries 2.6 %"));
    EXPECT_FALSE(warnings[0].withDriver);
    // No corner out of range by itself, but left and right exchanged at one end, or a whole side light.
    weighing.withoutDriver = CornerWeights{560, 200, 460, 180};
    EXPECT_THAT(warningsOf(weighing), ElementsAre(warning(WeightPart::corners, "the left side carries")));
    weighing.withoutDriver = CornerWeights{560, 200, 200, 440};
    EXPECT_THAT(
        warningsOf(weighing),
        ElementsAre(warning(WeightPart::corners, "the cross weight (right front and left rear) carries")));
}

TEST(WeightWarnings, BallastOutsideTheCar) {
    Weighing weighing;
    weighing.ballast = {{.name = "fuel", .fill = Fill{0.06, 0.74}, .at = {-0.5, 0, 0.4}},
                        {.name = "", .mass = 12, .at = {-0.5, 0.3, 0.4}},
                        {.name = "", .mass = 12, .at = {-500, 0.3, 0.4}}};
    const std::vector<WeightWarning> warnings = warningsOf(weighing);
    EXPECT_THAT(warnings, ElementsAre(warning(WeightPart::load, "'fuel' has a density"),
                                      warning(WeightPart::load, "load 3 stands outside")));
    EXPECT_EQ(warnings[1].load, 2);
}

}  // namespace bolthole
