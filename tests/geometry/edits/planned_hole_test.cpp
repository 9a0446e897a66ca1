// A planned hole: one edit that drills, bolts and sets the lengths.
#include "geometry/edits/planned_hole.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

PlanHole planOf(const Car& car, int link, LengthTreatment lengths) {
    PlanHole edit{link, End::axle, car.links[static_cast<std::size_t>(link)].axle.inUse(), lengths};
    edit.hole.id = -1;
    edit.hole.name = "new";
    edit.hole.at.z() += 0.02;
    return edit;
}

TEST(PlannedHole, IsAddedBoltedAndMarkedAsPlanned) {
    const Car car = plainCar();
    const EditResult result = apply(car, planOf(car, 0, LengthTreatment::keep));
    ASSERT_EQ(result.refusal, "");
    const Bracket& bracket = result.car.links[0].axle;
    ASSERT_EQ(bracket.holes.size(), 3U);
    EXPECT_EQ(bracket.use, 2);
    EXPECT_TRUE(bracket.inUse().planned);
    EXPECT_EQ(bracket.inUse().name, "new");
    EXPECT_NEAR(builtLength(result.car.links[0]), builtLength(car.links[0]), 1e-12);
}

// As adding the hole and then choosing it would have it.
TEST(PlannedHole, IsAsTwoEditsWouldHaveIt) {
    const Car car = plainCar();
    for (const LengthTreatment lengths :
         {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
        PlanHole edit = planOf(car, 0, lengths);
        edit.hole.planned = true;
        const Car added = apply(car, AddHole{0, End::axle, edit.hole}).car;
        HoleUse use = holesInUse(added);
        use.set(0, End::axle, 2);
        EXPECT_EQ(apply(car, edit).car, apply(added, ChooseHoles{use, lengths}).car) << nameOf(lengths);
    }
}

TEST(PlannedHole, IsDrilledOnBothSidesOfLinksThatBelongTogether) {
    CarGenerator generator(3);
    Car car = generator.draw(Layout::triangulated);
    splitPairs(car);
    const std::vector<int> drilled = linksToDrill(car, 0);
    ASSERT_EQ(drilled.size(), 2U);
    const EditResult result = apply(car, planOf(car, 0, LengthTreatment::refit));
    ASSERT_EQ(result.refusal, "");
    const Hole& left = result.car.links[static_cast<std::size_t>(drilled[0])].axle.inUse();
    const Hole& right = result.car.links[static_cast<std::size_t>(drilled[1])].axle.inUse();
    EXPECT_TRUE(right.planned);
    EXPECT_EQ(right.at.x(), left.at.x());
    EXPECT_EQ(right.at.z(), left.at.z());
    EXPECT_EQ(right.at.y(), -left.at.y());
}

TEST(PlannedHole, IsRefusedWhereThereIsNoLinkOrNoUpperToSet) {
    Car car = plainCar();
    PlanHole edit = planOf(car, 0, LengthTreatment::keep);
    edit.link = 9;
    EXPECT_NE(apply(car, edit).refusal, "");
    car.links.erase(car.links.begin() + 1);
    const EditResult refused = apply(car, planOf(car, 0, LengthTreatment::uppers));
    EXPECT_THAT(refused.refusal, testing::HasSubstr("no upper link to refit"));
    EXPECT_EQ(refused.car, car);
}

TEST(PlannedHole, SaysWhatItIs) {
    const Car car = plainCar();
    EXPECT_THAT(describe(planOf(car, 0, LengthTreatment::keep), car),
                testing::StartsWith("Plan lower axle hole 'new' at "));
}

}  // namespace
}  // namespace bolthole
