// findFaults() of geometry/edits/edit.h.
#include "geometry/car/faults.h"

#include <gmock/gmock.h>

#include <array>
#include <limits>
#include <random>
#include <string>
#include <variant>
#include <vector>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/units/units.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

TEST(FindFaults, PassesPlausibleCars) {
    EXPECT_THAT(findFaults(plainCar()), IsEmpty());
    CarGenerator generator(3);
    for (int layout = 0; layout <= static_cast<int>(Layout::ladderGuide); ++layout) {
        EXPECT_THAT(findFaults(generator.draw(static_cast<Layout>(layout))), IsEmpty());
    }
}

/// Writes a number without asking whether it is allowed, as apply() never does. Whole numbers stay.
bool force(Car& car, const FieldId& id, double value) {
    const Slot<Car> slot = slotOf(car, id);
    if (auto* const* number = std::get_if<double*>(&slot)) {
        **number = value;
        return true;
    }
    if (auto* const* number = std::get_if<std::optional<double>*>(&slot)) {
        **number = value;
        return true;
    }
    return false;
}

TEST(FindFaults, NamesEveryNumberThatIsNone) {
    const Car car = plainCar();
    std::size_t forced = 0;
    for (const FieldId& id : allIds(car)) {
        for (const double value : {kNaN, kEndless, -kEndless, 1e8}) {
            Car broken = car;
            if (!force(broken, id, value)) {
                continue;
            }
            ++forced;
            const std::vector<Fault> faults = findFaults(broken);
            ASSERT_THAT(faults, SizeIs(1)) << jsonPath(id);
            EXPECT_EQ(faults[0].id, id);
            EXPECT_EQ(faults[0].path, jsonPath(id));
            EXPECT_THAT(faults[0].reason, HasSubstr("expected " + refusal(id, value)));
        }
    }
    EXPECT_GT(forced, 4 * 30U);
}

TEST(FindFaults, SaysWhatWasFoundInTheFilesUnits) {
    Car car = plainCar();
    const auto reason = [&car] {
        const std::vector<Fault> faults = findFaults(car);
        return faults.size() == 1 ? faults[0].path + ": " + faults[0].reason
                                  : std::to_string(faults.size()) + " faults";
    };
    car.wheelbase = -0.005;
    EXPECT_EQ(reason(), "wheelbase: expected a length above 0 and at most 100 m, found -5 mm");
    car.wheelbase = kNaN;
    EXPECT_EQ(reason(), "wheelbase: expected a length above 0 and at most 100 m, found not a number");
    car = plainCar();
    car.cornerWeights.leftRear = 0;
    EXPECT_EQ(reason(),
              "corner_weights.left_rear: expected a weight above 0 and at most 1000 metric tons, found 0 kg");
    car = plainCar();
    car.driveline->outputAngle = 95 * kRadiansPerDegree;
    EXPECT_EQ(reason(), "driveline.output_angle: expected an angle between -90 and 90 degrees, found 95 deg");
    car = plainCar();
    car.travel.steps = 1;
    EXPECT_EQ(reason(), "travel.steps: expected a whole number from 2 to 100000, found 1");
    car = plainCar();
    car.links[1].adjuster->threadedEnds = 3;
    EXPECT_EQ(reason(), "links[1].adjuster.ends: expected 1 or 2, found 3");
}

TEST(FindFaults, FindsBracketsThatCannotBeBolted) {
    Car car = plainCar();
    car.links[1].axle.holes.clear();
    ASSERT_THAT(findFaults(car), SizeIs(1));
    EXPECT_EQ(findFaults(car)[0].path, "links[1].axle.holes");
    EXPECT_EQ(findFaults(car)[0].reason, "expected 1 to 64 holes, found 0");
    for (const int use : {-1, 2, std::numeric_limits<int>::max(), std::numeric_limits<int>::min()}) {
        car = plainCar();
        car.links[0].axle.use = use;
        ASSERT_THAT(findFaults(car), SizeIs(1));
        EXPECT_EQ(findFaults(car)[0].path, "links[0].axle.use");
        EXPECT_EQ(findFaults(car)[0].reason,
                  "expected the index of a hole, 0 to 1, found " + std::to_string(use));
    }
    car = plainCar();
    car.links[0].axle.holes.resize(kMaxHoles + 1, hole("x", 0, 20, 8));
    ASSERT_THAT(findFaults(car), SizeIs(1));
    EXPECT_EQ(findFaults(car)[0].reason, "expected 1 to 64 holes, found 65");
}

TEST(FindFaults, FindsTooManyLinks) {
    Car car = plainCar();
    car.links.resize(kMaxLinks, car.links[0]);
    EXPECT_THAT(findFaults(car), IsEmpty());
    car.links.resize(kMaxLinks + 1, car.links[0]);
    ASSERT_THAT(findFaults(car), SizeIs(1));
    EXPECT_EQ(findFaults(car)[0].path, "links");
    EXPECT_EQ(findFaults(car)[0].reason, "expected at most 16 links, found 17");
}

TEST(FindFaults, FindsRodsWithoutLength) {
    Car car = plainCar();
    car.links[0].axle.holes[0].at = car.links[0].chassis.holes[0].at;
    ASSERT_THAT(findFaults(car), SizeIs(1));
    EXPECT_EQ(findFaults(car)[0].path, "links[0]");
    EXPECT_EQ(findFaults(car)[0].id, lengthOf(0));
    car.links[0].kind = LinkKind::pivot;
    EXPECT_THAT(findFaults(car), IsEmpty());
}

TEST(FindFaults, HoldsForAnyCar) {
    EXPECT_FALSE(findFaults(Car{}).empty());
    std::mt19937_64 random(5);
    const std::array wild{kNaN, kEndless, -kEndless, 0.0, -1.0, 1e308, 1e-320, 0.3};
    const auto draw = [&] { return wild[random() % wild.size()]; };
    for (int round = 0; round < 2000; ++round) {
        Car car;
        car.wheelbase = draw();
        car.rearTireRadius = draw();
        car.cornerWeights = {draw(), draw(), draw(), draw()};
        car.travel = {draw(), draw(), static_cast<int>(random()), draw()};
        car.links.resize(random() % 4);
        for (Link& link : car.links) {
            link.kind = static_cast<LinkKind>(random() % 4);
            for (const End end : {End::chassis, End::axle}) {
                link.bracket(end).holes.resize(random() % 3, Hole{-1, "", {draw(), draw(), draw()}});
                link.bracket(end).use = static_cast<int>(random() % 4) - 1;
            }
            link.length = random() % 2 == 0 ? std::optional(draw()) : std::nullopt;
            link.adjuster = Adjuster{draw(), static_cast<int>(random())};
        }
        car.driveline = Driveline{draw(), {draw(), draw(), draw()}, draw(), {draw(), draw(), draw()}};
        for (const Fault& fault : findFaults(car)) {
            ASSERT_NE(fault.path, "");
            ASSERT_NE(fault.reason, "");
        }
    }
}

}  // namespace
}  // namespace bolthole
