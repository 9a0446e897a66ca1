// Which numbers count as measured, and the uncertainty of each by its own entry or by its tool.
#include "geometry/uncertainty/uncertain_inputs.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "geometry/weights/entered_figures.h"
#include "tests/support/car_generator.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::Not;

std::vector<FieldId> idsOf(const std::vector<CarInput>& inputs) {
    std::vector<FieldId> ids;
    for (const CarInput& input : inputs) {
        ids.push_back(input.id);
    }
    return ids;
}
FieldId idOf(bolthole::Field field, int axis = -1) {
    return {.field = field, .axis = axis};
}
std::vector<FieldId> inputsOf(const Car& car) {
    return idsOf(uncertainInputs(car));
}
Car setUncertainty(Car car, FieldId id, double value) {
    id.uncertainty = true;
    EditResult result = apply(car, SetNumber{id, value});
    EXPECT_EQ(result.refusal, "");
    return std::move(result.car);
}

/// The plain car, weighed level and lifted.
Car liftedCar() {
    Car car = plainCar();
    car.ballast.clear();
    car.cgHeightFrom = CgHeightSource::lift;
    car.lift.height = 0.6;
    // A CG at 0.55 m of h = rr + (b - L F'/W) cot a, solved for F' roughly; any reading that lifts weight
    // does.
    car.lift.reading = 880;
    return car;
}

}  // namespace

// JCGM 100:2008, 4.3.9, note 1: the difference of two readings, each within a sixteenth's half: triangular of
// half width 1/16 in, u = a / sqrt 6; 4.3.7: rectangular, u = a / sqrt 3. 1/16 in is 1.5875 mm, exactly.
TEST(NumberUncertainty, OfTheToolsIsWhatTheirScalesSay) {
    const Car car = plainCar();
    const NumberUncertainty tape = uncertaintyOf(car, holeField(0, End::axle, 0, 2));
    EXPECT_EQ(tape.tool, MeasuringTool::tape);
    EXPECT_EQ(tape.distribution, Distribution::triangular);
    EXPECT_FALSE(tape.own);
    EXPECT_NEAR(tape.uncertainty, 1.5875e-3 / std::sqrt(6.0), 1e-12);
    const NumberUncertainty angle = uncertaintyOf(car, idOf(bolthole::Field::pinionAngle));
    EXPECT_EQ(angle.tool, MeasuringTool::angleFinder);
    EXPECT_EQ(angle.distribution, Distribution::rectangular);
    EXPECT_NEAR(angle.uncertainty, 0.5 * std::acos(-1.0) / 180 / std::sqrt(3.0), 1e-12);
    const NumberUncertainty pad = uncertaintyOf(car, idOf(bolthole::Field::leftRearWeight));
    EXPECT_EQ(pad.tool, MeasuringTool::scales);
    EXPECT_EQ(pad.uncertainty, kScaleUncertainty);
    EXPECT_EQ(uncertaintyOf(car, idOf(bolthole::Field::cgHeight)).uncertainty, 0.0127);
    EXPECT_EQ(uncertaintyOf(car, {.field = bolthole::Field::ballastAt, .axis = 0, .item = 0}).uncertainty,
              0.0254);
}

TEST(NumberUncertainty, ComesFromTheToolsEnteredThenFromTheNumberItself) {
    Car car = plainCar();
    car.tools.tape = 0.001;
    car.weighing.scaleUncertainty = 2;
    const FieldId height = holeField(0, End::axle, 0, 2);
    EXPECT_EQ(uncertaintyOf(car, height).uncertainty, 0.001);
    EXPECT_EQ(uncertaintyOf(car, height).distribution, Distribution::normal);
    EXPECT_EQ(uncertaintyOf(car, idOf(bolthole::Field::leftRearWeight)).uncertainty, 2);
    EXPECT_EQ(uncertaintyOf(car, idOf(bolthole::Field::ticketRear)).uncertainty, 10)
        << "as its field says, not the pads'";
    car.weighing.ticket.uncertainty = 4;
    EXPECT_EQ(uncertaintyOf(car, idOf(bolthole::Field::ticketRear)).uncertainty, 4);
    car = setUncertainty(car, height, 0.0);
    EXPECT_TRUE(uncertaintyOf(car, height).own);
    EXPECT_EQ(uncertaintyOf(car, height).uncertainty, 0.0);
    EXPECT_EQ(uncertaintyOf(car, holeField(0, End::axle, 0, 1)).uncertainty, 0.001) << "another axis";
    car = setUncertainty(car, idOf(bolthole::Field::cgHeight), 0.02);
    EXPECT_EQ(uncertaintyOf(car, idOf(bolthole::Field::cgHeight)).uncertainty, 0.02);
}

// The lift's reading is an axle's: the sum of two pads, sqrt 2 of one (JCGM 100:2008, 5.1.2).
TEST(NumberUncertainty, OfAnAxlesReadingIsThatOfTwoPads) {
    EXPECT_NEAR(uncertaintyOf(liftedCar(), idOf(bolthole::Field::liftReading)).uncertainty,
                std::sqrt(2.0) * kScaleUncertainty, 1e-12);
}

TEST(UncertainInputs, AMirroredPairIsOneMeasurementAndHolesNotInUseAreNone) {
    const std::vector<FieldId> ids = inputsOf(plainCar());
    for (int axis = 0; axis < 3; ++axis) {
        EXPECT_EQ(std::ranges::count(ids, holeField(0, End::axle, 0, axis)), 1);
        EXPECT_EQ(std::ranges::count(ids, holeField(0, End::axle, 1, axis)), 0);
    }
    EXPECT_THAT(ids, Contains(idOf(bolthole::Field::wheelbase)));
    EXPECT_THAT(ids, Contains(idOf(bolthole::Field::pinionJoint, 2)));
}

TEST(UncertainInputs, AnArmsPointIsOneMeasurement) {
    CarGenerator generator(5);
    for (const Layout layout : {Layout::torqueArm, Layout::ladderGuide}) {
        const Car car = generator.draw(layout);
        for (const FieldId& id : inputsOf(car)) {
            if (id.link >= 0 && car.links[static_cast<std::size_t>(id.link)].kind != LinkKind::rod) {
                EXPECT_EQ(id.end, End::chassis);
            }
        }
    }
}

TEST(UncertainInputs, AWrittenLengthCountsInsteadOfTheHolesItWasFittedTo) {
    Car car = plainCar();
    EXPECT_THAT(inputsOf(car), Not(Contains(lengthOf(0))));
    HoleUse use = holesInUse(car);
    use.set(0, End::axle, 1);
    const std::vector<FieldId> moved = idsOf(uncertainInputs(car, use));
    EXPECT_THAT(moved,
                AllOf(Contains(holeField(0, End::axle, 1, 2)), Contains(holeField(0, End::axle, 0, 2))))
        << "the length is known by the hole the rod is bolted to now";
    car.links[0].length = 0.51;
    const std::vector<FieldId> written = idsOf(uncertainInputs(car, use));
    EXPECT_THAT(written, AllOf(Contains(lengthOf(0)), Not(Contains(holeField(0, End::axle, 0, 2)))));
}

TEST(UncertainInputs, GoWithoutADriveline) {
    Car car = plainCar();
    car.driveline.reset();
    EXPECT_THAT(inputsOf(car), Not(Contains(idOf(bolthole::Field::pinionAngle))));
    EXPECT_THAT(inputsOf(car), Not(Contains(idOf(bolthole::Field::outputJoint, 0))));
}

TEST(UncertainInputs, OfTheCgHeightAreThoseOfTheOneInUse) {
    Car car = plainCar();
    const auto height = [](const Car& of) {
        const std::vector<CarInput> inputs = uncertainInputs(of);
        const auto found = std::ranges::find(inputs, idOf(bolthole::Field::cgHeight), &CarInput::id);
        return found == inputs.end() ? std::nullopt : std::optional(*found);
    };
    EXPECT_EQ(height(car)->value, 22 * kMetresPerInch);
    EXPECT_EQ(height(car)->numberUncertainty.uncertainty, kEnteredCgUncertainty);
    car.cgHeightFrom = CgHeightSource::estimate;
    EXPECT_EQ(height(car)->value, estimatedCgHeight().height);
    EXPECT_EQ(height(car)->numberUncertainty.uncertainty, *estimatedCgHeight().uncertainty);
    const Car lifted = liftedCar();
    ASSERT_EQ(balanceOf(lifted).refusal, "");
    EXPECT_EQ(height(lifted), std::nullopt);
    EXPECT_THAT(inputsOf(lifted), AllOf(Contains(idOf(bolthole::Field::liftHeight)),
                                        Contains(idOf(bolthole::Field::liftReading))));
}

TEST(UncertainInputs, OfALiftThatIsRefusedAreTheEnteredHeights) {
    Car car = liftedCar();
    car.lift.height = 50;  // more than the wheelbase
    ASSERT_NE(balanceOf(car).refusal, "");
    EXPECT_THAT(inputsOf(car), AllOf(Contains(idOf(bolthole::Field::cgHeight)),
                                     Not(Contains(idOf(bolthole::Field::liftHeight)))));
    EXPECT_EQ(uncertaintyOf(car, idOf(bolthole::Field::cgHeight)).uncertainty, kEnteredCgUncertainty);
}

TEST(UncertainInputs, OfALiftWithTheDriverTheOtherWayAreHisReadingsToo) {
    Car car = liftedCar();
    car.lift.driver = DriverSeat::out;
    car.weighing.other = {430, 410, 320, 310};
    car.weighing.driver.at.at = {1.2, 0.35, 0.5};
    car.lift.reading = 800;
    ASSERT_EQ(balanceOf(car).refusal, "");
    EXPECT_THAT(inputsOf(car), AllOf(Contains(idOf(bolthole::Field::otherLeftFront)),
                                     Contains(idOf(bolthole::Field::driverAt, 2)),
                                     Not(Contains(idOf(bolthole::Field::driverAt, 0)))));
}

TEST(UncertainInputs, BallastCountsWhereItCameOrWent) {
    Car car = plainCar();
    const FieldId mass{.field = bolthole::Field::ballastMass, .item = 0};
    ASSERT_EQ(car.ballast[0].weighed, car.ballast[0].aboard);
    EXPECT_THAT(inputsOf(car), Not(Contains(mass)));
    car.ballast[0].aboard = 25;
    EXPECT_THAT(inputsOf(car), Contains(mass));
    car.ballast[0].at.at[1].reset();
    EXPECT_THAT(inputsOf(car), Not(Contains(mass))) << "without a place it is not counted";
}

TEST(NumberWords, NameTheNumberAndItsDirection) {
    const Car car = plainCar();
    EXPECT_EQ(numberWords(car, idOf(bolthole::Field::wheelbase)), "wheelbase");
    EXPECT_THAT(
        numberWords(car, holeField(0, End::axle, 1, 2)),
        AllOf(testing::HasSubstr("lower"), testing::HasSubstr("'top'"), testing::EndsWith(", height")));
    EXPECT_THAT(numberWords(car, holeField(0, End::axle, 1, 1)), testing::EndsWith(", out"));
    EXPECT_EQ(numberWords(car, {.field = bolthole::Field::pinionJoint, .axis = 1}), "rear U-joint, left");
}

}  // namespace bolthole
