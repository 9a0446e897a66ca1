// A doubt with one sure fix is gone once it is mended, and nothing else changes; others have none.
#include "geometry/checks/fixes.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "geometry/checks/doubts.h"
#include "geometry/edits/edit.h"
#include "tests/support/car_generator.h"
#include "tests/support/doubt_lines.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

/// The first doubt at the field; fails where there is none.
Doubt doubtAt(const Car& car, Field field) {
    const std::vector<Doubt> doubts = findDoubts(car);
    const auto found =
        std::ranges::find_if(doubts, [&](const Doubt& doubt) { return doubt.id.field == field; });
    EXPECT_NE(found, doubts.end());
    return found == doubts.end() ? Doubt{} : *found;
}

/// The car with the doubt's fix applied; fails where there is none.
Car mended(const Car& car, const Doubt& doubt) {
    const std::optional<Fix> fix = sureFix(car, doubt);
    EXPECT_TRUE(fix);
    if (!fix) {
        return car;
    }
    EXPECT_FALSE(fix->words.empty());
    const EditResult result = apply(car, fix->edit);
    EXPECT_EQ(result.refusal, "");
    return result.car;
}

TEST(SureFix, ClearsALengthThatDisagreesWithTheHoles) {
    Car car = plainCar();
    const std::size_t rod = static_cast<std::size_t>(
        std::ranges::find(car.links, LinkKind::rod, &Link::kind) - car.links.begin());
    car.links[rod].length = builtLength(car.links[rod]) + 0.01;
    const Car after = mended(car, doubtAt(car, Field::linkLength));
    EXPECT_FALSE(after.links[rod].length);
    EXPECT_THAT(doubtLines(after), Not(Contains(HasSubstr("written length"))));
}

TEST(SureFix, ExchangesLimitsThatStandTheWrongWayRound) {
    Car car = plainCar();
    Link& link = *std::ranges::find(car.links, LinkKind::rod, &Link::kind);
    const double built = builtLength(link);
    link.adjuster = Adjuster{.pitch = 0.0015875};
    link.adjuster->shortest = built + 0.01;
    link.adjuster->longest = built - 0.01;
    const Car after = mended(car, doubtAt(car, Field::adjusterShortest));
    const Link& now = *std::ranges::find(after.links, LinkKind::rod, &Link::kind);
    ASSERT_TRUE(now.adjuster);
    EXPECT_EQ(now.adjuster->shortest, built - 0.01);
    EXPECT_EQ(now.adjuster->longest, built + 0.01);
    EXPECT_THAT(doubtLines(after), Not(Contains(HasSubstr("shortest length"))));
}

TEST(SureFix, ExchangesTargetsThatStandTheWrongWayRound) {
    Car car = plainCar();
    car.wanted = WantedWindow{.icNear = 2.0, .icFar = 1.0, .antiSquatLow = 150, .antiSquatHigh = 100};
    Car after = mended(car, doubtAt(car, Field::wantedIcNear));
    after = mended(after, doubtAt(after, Field::wantedLow));
    EXPECT_EQ(after.wanted,
              (WantedWindow{.icNear = 1.0, .icFar = 2.0, .antiSquatLow = 100, .antiSquatHigh = 150}));
    EXPECT_THAT(doubtLines(after), Not(Contains(HasSubstr("no hole combination"))));
}

TEST(SureFix, IsNoneWhereAPersonHasToFindOut) {
    Car car = plainCar();
    car.rearTireRadius = 25;
    EXPECT_FALSE(sureFix(car, doubtAt(car, Field::rearTireRadius)));
}

}  // namespace
}  // namespace bolthole
