// Passes that come all at once.
#include "geometry/passes/take_passes.h"

#include <gmock/gmock.h>

#include <memory>

#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::StartsWith;

Pass tablePass(int number) {
    Pass pass;
    pass.number = number;
    pass.date = "2026-11-20";
    pass.sixtyFoot = 2.2;
    return pass;
}

TEST(TakenPasses, ComeAllOrNot) {
    Car car = plainCar();
    EXPECT_EQ(describeTaken(car, {tablePass(1)}), "Take in 1 pass");
    EXPECT_EQ(describeTaken(car, {tablePass(1), tablePass(2)}), "Take in 2 passes");
    EXPECT_EQ(takePasses(car, {tablePass(1), tablePass(2)}), "");
    EXPECT_EQ(car.passes.size(), 2U);
    EXPECT_EQ(describeTaken(car, {}), "Take in passes");
    const Car before = car;
    Pass bad = tablePass(3);
    bad.sixtyFoot = -1;
    EXPECT_THAT(takePasses(car, {tablePass(1), bad}),
                StartsWith("pass 3 of 2026-11-20: sixty_foot: expected"));
    bad = tablePass(4);
    bad.setup = 0;
    EXPECT_THAT(takePasses(car, {bad}), StartsWith("pass 4 of 2026-11-20: setup: "));
    EXPECT_EQ(takePasses(car, std::vector<Pass>(kMaxPasses + 1, tablePass(1))),
              "a car file holds at most 10000 passes");
    EXPECT_EQ(car, before);
}

}  // namespace
}  // namespace bolthole
