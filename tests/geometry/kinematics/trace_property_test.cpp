// Laws the trace obeys whatever the car: checked on hundreds of generated ones.
#include <gmock/gmock.h>

#include <array>
#include <cmath>
#include <functional>
#include <optional>

#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

constexpr std::array kSymmetric{Layout::triangulated, Layout::torqueArm, Layout::wattsThreeLink,
                                Layout::parallel, Layout::parallelGuide};
constexpr std::array kAsymmetric{Layout::apart, Layout::threeLink, Layout::triangulatedTrackBar};

// Draws cars of the layouts with front ratios of their own and hands each to `law`, which may change it.
template <typename Layouts>
void forEachCar(const Layouts& layouts, int count, const std::function<void(Car&)>& law) {
    for (const Layout layout : layouts) {
        CarGenerator generator(500 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < count; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            Car car = generator.draw(layout);
            car.travel.steps = 11;
            car.travel.frontRatio = generator.between(-1.0, 1.0);
            law(car);
            if (testing::Test::HasFailure()) {
                return;
            }
        }
    }
}

// What a figure may differ by where nothing but rounding differs. Rates are good to 1e-11; the instant center
// magnifies that by the square of its distance, as 1 / pitch rate does, anti-squat by 100 L / h, about 500.
double rounding(Figure figure, double value, const Station& station) {
    if (figure == Figure::icX || figure == Figure::icZ) {
        return 1e-10 * (1.0 + station[Figure::icX] * station[Figure::icX]);
    }
    return figure == Figure::antiSquat ? 1e-8 : 1e-10 * (1.0 + std::abs(value));
}

void expectSameFigures(const Station& one, const Station& other) {
    ASSERT_EQ(one.usable, other.usable);
    for (const FigureInfo& info : figureTable()) {
        const double a = one[info.figure];
        const double b = other[info.figure];
        ASSERT_EQ(std::isnan(a), std::isnan(b)) << info.column;
        if (!std::isnan(a)) {
            EXPECT_NEAR(a, b, rounding(info.figure, a, one)) << info.column;
        }
    }
}

void expectSameFigures(const Trace& one, const Trace& other) {
    ASSERT_EQ(one.stations.size(), other.stations.size());
    for (std::size_t row = 0; row < one.stations.size(); ++row) {
        SCOPED_TRACE(testing::Message() << "row " << row);
        expectSameFigures(one.stations[row], other.stations[row]);
    }
    expectSameFigures(one.ride, other.ride);
}

// The first link of that name, in side view, at a pose: axle end and chassis end.
struct SideLine {
    Eigen::Vector2d axle;
    Eigen::Vector2d chassis;
};

std::optional<SideLine> sideLine(const Car& car, const std::string& name, const AxlePose& pose) {
    for (const Link& link : car.links) {
        if (link.name == name) {
            const Eigen::Vector3d center(0, 0, car.rearTireRadius);
            const Eigen::Vector3d axle = pose.carry(link.axle.inUse().at - center);
            const Eigen::Vector3d& chassis = link.chassis.inUse().at;
            return SideLine{{axle.x(), axle.z()}, {chassis.x(), chassis.z()}};
        }
    }
    return std::nullopt;
}

// Where two lines cross, by Cramer's rule.
Eigen::Vector2d crossing(const SideLine& one, const SideLine& other) {
    const Eigen::Vector2d u = one.chassis - one.axle;
    const Eigen::Vector2d v = other.chassis - other.axle;
    const Eigen::Vector2d gap = other.axle - one.axle;
    return one.axle + u * ((gap.x() * v.y() - gap.y() * v.x()) / (u.x() * v.y() - u.y() * v.x()));
}

}  // namespace

TEST(TraceProperty, MirroringTheCarChangesNoFigure) {
    forEachCar(kAsymmetric, 80, [](Car& car) {
        const Trace trace = computeTrace(car);
        ASSERT_TRUE(trace.ride.usable);
        splitPairs(car);
        mirror(car);
        const Trace mirrored = computeTrace(car);
        expectSameFigures(trace, mirrored);
        for (std::size_t row = 0; row < trace.stations.size(); ++row) {
            EXPECT_NEAR(trace.stations[row].pose.y, -mirrored.stations[row].pose.y, 1e-11);
            EXPECT_NEAR(trace.stations[row].pose.yaw, -mirrored.stations[row].pose.yaw, 1e-11);
        }
    });
}

// With everything, driveline included, set over by the same amount. The car still holds itself.
TEST(TraceProperty, ShiftingASymmetricCarSidewaysChangesNoFigure) {
    constexpr std::array kHeldByLinks{Layout::triangulated, Layout::torqueArm, Layout::wattsThreeLink,
                                      Layout::parallelGuide};
    forEachCar(kHeldByLinks, 60, [](Car& car) {
        const Trace trace = computeTrace(car);
        ASSERT_TRUE(trace.ride.usable);
        splitPairs(car);
        shiftSideways(car, 0.173);
        expectSameFigures(trace, computeTrace(car));
    });
}

// Where the axle yaws, its center, kept at y = 0, is another point of the housing after the shift; the
// housing itself moves as before.
TEST(TraceProperty, ShiftingAnyCarSidewaysMovesTheHousingTheSame) {
    forEachCar(kAsymmetric, 70, [](Car& car) {
        const Trace trace = computeTrace(car);
        splitPairs(car);
        const Eigen::Vector3d shift(0, 0.173, 0);
        shiftSideways(car, shift.y());
        const Trace shifted = computeTrace(car);
        for (std::size_t row = 0; row < trace.stations.size(); ++row) {
            const Station& one = trace.stations[row];
            const Station& other = shifted.stations[row];
            ASSERT_EQ(one.usable, other.usable);
            if (!one.usable) {
                continue;
            }
            for (const Eigen::Vector3d& point : {Eigen::Vector3d(0, 0, 0), Eigen::Vector3d(0.3, 0.5, -0.2)}) {
                const Eigen::Vector3d gap = other.pose.carry(point + shift) - one.pose.carry(point) - shift;
                EXPECT_LE(gap.lpNorm<Eigen::Infinity>(), 1e-11);
            }
            EXPECT_NEAR(one[Figure::frontJoint], other[Figure::frontJoint], 1e-10);
            EXPECT_NEAR(one[Figure::rearJoint], other[Figure::rearJoint], 1e-10);
            EXPECT_NEAR(one[Figure::plunge], other[Figure::plunge], 1e-10);
        }
    });
}

// Projected lengths stay constant in symmetric travel, so the links' side-view lines cross at the instant
// center (physics of a planar four-bar).
TEST(TraceProperty, InstantCenterIsWhereTheLinksLinesCross) {
    constexpr std::array kTwoPlanes{Layout::triangulated, Layout::wattsThreeLink, Layout::parallel,
                                    Layout::parallelGuide};
    int compared = 0;
    forEachCar(kTwoPlanes, 60, [&compared](Car& car) {
        const Trace trace = computeTrace(car);
        ASSERT_TRUE(trace.ride.usable);
        for (const Station& station : trace.stations) {
            if (!station.usable || std::isnan(station.icCarX)) {
                continue;
            }
            const auto lower = sideLine(car, "lower", station.pose);
            auto upper = sideLine(car, "upper", station.pose);
            upper = upper ? upper : sideLine(car, "third link", station.pose);
            const Eigen::Vector2d cross = crossing(*lower, *upper);
            const double tolerance = 1e-9 * (1.0 + cross.squaredNorm());
            EXPECT_NEAR(station.icCarX, cross.x(), tolerance);
            EXPECT_NEAR(station.icCarZ, cross.y(), tolerance);
            ++compared;
        }
    });
    EXPECT_GT(compared, 2000);
}

// The swing arm, found from the patch's velocity, runs from the patch through the instant center.
TEST(TraceProperty, SwingArmMeetsTheInstantCenter) {
    const auto law = [](Car& car) {
        for (const Station& station : computeTrace(car).stations) {
            if (!station.usable || std::isnan(station[Figure::icX])) {
                continue;
            }
            const double slope = station[Figure::icZ] / station[Figure::icX];
            EXPECT_NEAR(std::tan(station[Figure::swingArmAngle]), slope, 1e-9 * (1.0 + slope * slope));
        }
    };
    forEachCar(kSymmetric, 40, law);
    forEachCar(kAsymmetric, 40, law);
}

// Both tires stand on the ground line: their centers are their radii above it, a wheelbase apart along it.
TEST(TraceProperty, GroundIsTangentToBothTires) {
    forEachCar(kSymmetric, 40, [](Car& car) {
        for (const Station& station : computeTrace(car).stations) {
            const GroundLine& ground = station.ground;
            EXPECT_NEAR(ground.above(station.pose.x, station.pose.z), car.rearTireRadius, 1e-14);
            EXPECT_NEAR(ground.ahead(station.pose.x, station.pose.z), 0.0, 1e-14);
            const double frontZ = car.frontTireRadius + car.travel.frontRatio * station[Figure::travel];
            EXPECT_NEAR(ground.above(car.wheelbase, frontZ), car.frontTireRadius, 1e-14);
            EXPECT_NEAR(ground.ahead(car.wheelbase, frontZ), ground.wheelbase, 1e-14);
            EXPECT_NEAR(std::tan(station[Figure::ground]), ground.alongZ / ground.alongX, 1e-14);
        }
    });
}

namespace {

// The pose as the side view sees it: without what happens sideways.
AxlePose fromTheSide(const AxlePose& pose) {
    AxlePose seen;
    seen.x = pose.x;
    seen.z = pose.z;
    seen.pitch = pose.pitch;
    return seen;
}

// How far a point of the housing, standing at `at` in the `station`'s pose, moves over `step` m of travel up
// and as much down; side view.
Eigen::Vector3d pathOf(const Eigen::Vector3d& at, const Car& car, const Station& station, double step) {
    const AxlePose here = fromTheSide(station.pose);
    const Eigen::Vector3d fromCenter =
        here.rotation().transpose() * (at - Eigen::Vector3d(here.x, here.y, here.z));
    AxleSolver solver(buildLinkage(car), Drive::travel);
    EXPECT_TRUE(solver.assemble().usable());
    EXPECT_TRUE(solver.moveTo(station[Figure::travel] + step).usable());
    const Eigen::Vector3d above = fromTheSide(solver.pose()).carry(fromCenter);
    EXPECT_TRUE(solver.moveTo(station[Figure::travel] - step).usable());
    return above - fromTheSide(solver.pose()).carry(fromCenter);
}

}  // namespace

// Anti-squat from nothing but neighboring poses: the patch, fixed to the housing, moves square to the swing
// arm. Over-held and asymmetric cars too, and whatever the front axle does.
TEST(TraceProperty, AntiSquatFollowsFromThePatchsPath) {
    const auto law = [](Car& car) {
        car.travel.bump = car.travel.droop = 0.07;
        for (const Station& station : computeTrace(car).stations) {
            ASSERT_TRUE(station.usable);
            const GroundLine& ground = station.ground;
            const Eigen::Vector3d path = pathOf({ground.patchX, 0, ground.patchZ}, car, station, 5e-5);
            const double arm = std::atan2(-path.x(), path.z()) - station[Figure::ground];
            const double cgX = car.wheelbase * car.cornerWeights.front() / car.cornerWeights.total();
            const double antiSquat =
                100.0 * std::tan(arm) * ground.wheelbase / ground.above(cgX, car.cgHeight);
            EXPECT_NEAR(station[Figure::antiSquat], antiSquat, 1e-4) << "travel " << station[Figure::travel];
        }
    };
    forEachCar(kSymmetric, 40, law);
    forEachCar(kAsymmetric, 40, law);
}

namespace {

// A four-link whose lowers and uppers are parallel in side view at ride, but not equally long.
Car parallelAtRide(CarGenerator& generator) {
    Car car = generator.draw(Layout::parallelGuide);
    const Eigen::Vector3d lower = car.links[0].chassis.inUse().at - car.links[0].axle.inUse().at;
    const Eigen::Vector3d& axle = car.links[1].axle.holes[0].at;
    Eigen::Vector3d& chassis = car.links[1].chassis.holes[0].at;
    chassis.x() = axle.x() + 0.6 * lower.x();
    chassis.z() = axle.z() + 0.6 * lower.z();
    return car;
}

double largestSecondDifference(Car car, int steps) {
    car.travel.steps = steps;
    const Trace trace = computeTrace(car);
    double largest = 0;
    for (std::size_t row = 1; row + 1 < trace.stations.size(); ++row) {
        const double second = trace.stations[row - 1][Figure::antiSquat] -
                              2 * trace.stations[row][Figure::antiSquat] +
                              trace.stations[row + 1][Figure::antiSquat];
        EXPECT_FALSE(std::isnan(second)) << "row " << row;
        largest = std::max(largest, std::abs(second));
    }
    return largest;
}

}  // namespace

// The instant center runs off to one side and comes back from the other; anti-squat knows nothing of it. On
// half the step a smooth curve has a quarter of the second difference, a jump would keep it.
TEST(TraceProperty, AntiSquatIsSmoothThroughParallelLinks) {
    CarGenerator generator(41);
    for (int number = 0; number < 200; ++number) {
        SCOPED_TRACE(testing::Message() << "car " << number);
        const Car car = parallelAtRide(generator);
        const Trace trace = computeTrace(car);
        ASSERT_TRUE(trace.droopEnd.usable());
        ASSERT_TRUE(trace.bumpEnd.usable());
        const double below = trace.stations[39][Figure::icX];
        const double above = trace.stations[41][Figure::icX];
        EXPECT_LT(below * above, 0) << "the instant center does not pass infinity";
        EXPECT_GT(std::min(std::abs(below), std::abs(above)), 10.0);
        const Eigen::Vector3d lower = car.links[0].chassis.inUse().at - car.links[0].axle.inUse().at;
        EXPECT_NEAR(
            trace.ride[Figure::antiSquat],
            100.0 * (lower.z() / lower.x() - std::tan(trace.ride[Figure::ground])) /
                (1 + lower.z() / lower.x() * std::tan(trace.ride[Figure::ground])) *
                trace.ride.ground.wheelbase /
                trace.ride.ground.above(car.wheelbase * car.cornerWeights.front() / car.cornerWeights.total(),
                                        car.cgHeight),
            1e-9);
        const double ratio = largestSecondDifference(car, 81) / largestSecondDifference(car, 161);
        EXPECT_NEAR(ratio, 4.0, 0.4);
    }
}

// Equal, parallel links: the housing never pitches, there is no instant center anywhere, and the swing arm
// has the links' slope.
TEST(TraceProperty, ParallelogramHasAntiSquatWithoutInstantCenter) {
    CarGenerator generator(42);
    for (int number = 0; number < 200; ++number) {
        Car car = generator.draw(Layout::parallelGuide);
        car.travel.frontRatio = 1.0;
        car.frontTireRadius = car.rearTireRadius;  // the ground stays level
        car.links[1].chassis.holes[0].at = car.links[1].axle.holes[0].at +
                                           (car.links[0].chassis.holes[0].at - car.links[0].axle.holes[0].at);
        for (const Station& station : computeTrace(car).stations) {
            ASSERT_TRUE(station.usable);
            EXPECT_TRUE(std::isnan(station[Figure::icX]));
            EXPECT_TRUE(std::isnan(station[Figure::icZ]));
            const auto lower = sideLine(car, "lower", station.pose);
            const Eigen::Vector2d link = lower->chassis - lower->axle;
            EXPECT_NEAR(std::tan(station[Figure::swingArmAngle]), link.y() / link.x(), 1e-10);
        }
    }
}

// The ends of the travel do not depend on how finely it is swept.
TEST(TraceProperty, CoarseAndFineSweepsEndAlike) {
    const auto law = [](Car& car) {
        car.travel.steps = 2;
        const Trace coarse = computeTrace(car);
        car.travel.steps = 2001;
        const Trace fine = computeTrace(car);
        expectSameFigures(coarse.stations.front(), fine.stations.front());
        expectSameFigures(coarse.stations.back(), fine.stations.back());
    };
    forEachCar(kSymmetric, 20, law);
    forEachCar(kAsymmetric, 40, law);
}

// Side view of the pinion and the shaft of a symmetric car, from the pose alone.
TEST(TraceProperty, PinionTurnsWithTheHousing) {
    forEachCar(kSymmetric, 40, [](Car& car) {
        for (const Station& station : computeTrace(car).stations) {
            if (!station.usable) {
                continue;
            }
            const double pinion = car.driveline->pinionAngle - station.pose.pitch - station[Figure::ground];
            EXPECT_NEAR(station[Figure::pinion], pinion, 1e-12);
            EXPECT_NEAR(station[Figure::pinionToDriveshaft],
                        station[Figure::pinion] - station[Figure::driveshaft], 1e-15);
        }
    });
}

}  // namespace bolthole
