// A warning with one certain fix is gone once it is mended, and nothing else changes; others have none.
#include "geometry/checks/fixes.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "geometry/checks/warnings.h"
#include "geometry/edits/edit.h"
#include "tests/support/car_generator.h"
#include "tests/support/plain_car.h"
#include "tests/support/warning_lines.h"

namespace bolthole {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

/// The first warning at the field; fails where there is none.
Warning warningAt(const Car& car, Field field) {
    const std::vector<Warning> warnings = findWarnings(car);
    const auto found =
        std::ranges::find_if(warnings, [&](const Warning& warning) { return warning.id.field == field; });
    EXPECT_NE(found, warnings.end());
    return found == warnings.end() ? Warning{} : *found;
}

/// The car with the warning's fix applied; fails where there is none.
Car mended(const Car& car, const Warning& warning) {
    const std::optional<Fix> fix = certainFix(car, warning);
    EXPECT_TRUE(fix);
    if (!fix) {
        return car;
    }
    EXPECT_FALSE(fix->words.empty());
    const EditResult result = apply(car, fix->edit);
    EXPECT_EQ(result.refusal, "");
    return result.car;
}

TEST(CertainFix, ClearsALengthThatDisagreesWithTheHoles) {
    Car car = plainCar();
    const std::size_t rod = static_cast<std::size_t>(
        std::ranges::find(car.links, LinkKind::rod, &Link::kind) - car.links.begin());
    car.links[rod].length = builtLength(car.links[rod]) + 0.01;
    const Car after = mended(car, warningAt(car, Field::linkLength));
    EXPECT_FALSE(after.links[rod].length);
    EXPECT_THAT(warningLines(after), Not(Contains(HasSubstr("written length"))));
}

TEST(CertainFix, ExchangesLimitsThatStandTheWrongWayRound) {
    Car car = plainCar();
    Link& link = *std::ranges::find(car.links, LinkKind::rod, &Link::kind);
    const double built = builtLength(link);
    link.adjuster = Adjuster{.pitch = 0.0015875};
    link.adjuster->shortest = built + 0.01;
    link.adjuster->longest = built - 0.01;
    const Car after = mended(car, warningAt(car, Field::adjusterShortest));
    const Link& now = *std::ranges::find(after.links, LinkKind::rod, &Link::kind);
    ASSERT_TRUE(now.adjuster);
    EXPECT_EQ(now.adjuster->shortest, built - 0.01);
    EXPECT_EQ(now.adjuster->longest, built + 0.01);
    EXPECT_THAT(warningLines(after), Not(Contains(HasSubstr("shortest length"))));
}

TEST(CertainFix, ExchangesTargetsThatStandTheWrongWayRound) {
    Car car = plainCar();
    car.target = TargetWindow{.icNear = 2.0, .icFar = 1.0, .antiSquatLow = 150, .antiSquatHigh = 100};
    Car after = mended(car, warningAt(car, Field::targetIcNear));
    after = mended(after, warningAt(after, Field::targetLow));
    EXPECT_EQ(after.target,
              (TargetWindow{.icNear = 1.0, .icFar = 2.0, .antiSquatLow = 100, .antiSquatHigh = 150}));
    EXPECT_THAT(warningLines(after), Not(Contains(HasSubstr("no hole combination"))));
}

TEST(CertainFix, IsNoneWhereAPersonHasToFindOut) {
    Car car = plainCar();
    car.rearTireRadius = 25;
    EXPECT_FALSE(certainFix(car, warningAt(car, Field::rearTireRadius)));
}

}  // namespace
}  // namespace bolthole
