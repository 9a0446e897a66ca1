// geometry/combinations/rod_sweep.h against the plain definition: every rod and every pair of rods at every
// pose.
#include "geometry/combinations/rod_sweep.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "geometry/combinations/combination_figures.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

struct Worst {
    std::vector<double> leans;
    double nearest = std::numeric_limits<double>::infinity();
};

Worst worstOf(const Linkage& linkage, const std::vector<Eigen::Vector3d>& bolts,
              const std::vector<AxlePose>& poses) {
    const std::vector<Constraint>& rods = linkage.constraints;
    Worst worst;
    worst.leans.resize(rods.size(), 0.0);
    for (const AxlePose& pose : poses) {
        for (std::size_t one = 0; one < rods.size(); ++one) {
            const Eigen::Vector3d end = pose.carry(rods[one].onAxle);
            const Eigen::Vector3d along = rods[one].onChassis - end;
            worst.leans[one] = std::max({worst.leans[one], rodEndLean(along, bolts[one]),
                                         rodEndLean(along, pose.rotation() * bolts[one])});
            for (std::size_t other = one + 1; other < rods.size(); ++other) {
                const Approach approach = approachOf(end, rods[one].onChassis, pose.carry(rods[other].onAxle),
                                                     rods[other].onChassis);
                worst.nearest =
                    approach.betweenEnds ? std::min(worst.nearest, approach.distance) : worst.nearest;
            }
        }
    }
    return worst;
}

// Four rods thrown into the space of two, so that many cross.
Linkage thrown(CarGenerator& random) {
    const auto point = [&random] {
        const double x = random.between(-0.3, 0.3);
        const double y = random.between(-0.3, 0.3);
        return Eigen::Vector3d(x, y, random.between(-0.3, 0.3));
    };
    Linkage linkage;
    linkage.measuredHeight = 0.3;
    for (int link = 0; link < 4; ++link) {
        Constraint& rod = linkage.constraints.emplace_back();
        rod.link = link;
        rod.onAxle = point();
        rod.onChassis = point() + Eigen::Vector3d(0, 0, 0.3);
    }
    return linkage;
}

}  // namespace

TEST(RodSweep, FindsTheWorstOfEveryRodAndPair) {
    CarGenerator random(61);
    int crossing = 0;
    for (int round = 0; round < 500; ++round) {
        const Linkage linkage = thrown(random);
        std::vector<Eigen::Vector3d> bolts;
        std::vector<AxlePose> poses;
        for (int link = 0; link < 4; ++link) {
            const double turn = random.between(-3, 3);
            bolts.emplace_back(std::cos(turn), std::sin(turn), 0);
            poses.push_back({.x = random.between(-0.05, 0.05),
                             .y = random.between(-0.05, 0.05),
                             .z = random.between(0.2, 0.4),
                             .roll = random.between(-0.1, 0.1),
                             .pitch = random.between(-0.3, 0.3),
                             .yaw = random.between(-0.1, 0.1)});
        }
        RodSweep sweep(linkage.constraints, bolts);
        for (const AxlePose& pose : poses) {
            sweep.visit(pose);
        }
        const Worst worst = worstOf(linkage, bolts, poses);
        for (std::size_t rod = 0; rod < 4; ++rod) {
            EXPECT_NEAR(sweep.lean(rod), worst.leans[rod], 1e-7);  // near a right angle the sine is flat
        }
        if (worst.nearest < kCrossingDistance) {
            EXPECT_NEAR(sweep.closest().distance, worst.nearest, 1e-12);
            ++crossing;
        } else {
            EXPECT_GE(sweep.closest().distance, kCrossingDistance);
        }
    }
    EXPECT_GT(crossing, 100);
    EXPECT_LT(crossing, 400);
}

TEST(RodSweep, LeavesOutWhatIsNoRod) {
    CarGenerator random(62);
    Linkage linkage = buildLinkage(random.draw(Layout::torqueArm));
    const std::vector<Eigen::Vector3d> bolts(linkage.constraints.size(), Eigen::Vector3d::UnitY());
    RodSweep sweep(linkage.constraints, bolts);
    sweep.visit({.z = linkage.measuredHeight});
    for (std::size_t index = 0; index < linkage.constraints.size(); ++index) {
        EXPECT_EQ(std::isnan(sweep.lean(index)), linkage.constraints[index].kind != LinkKind::rod);
    }
}

}  // namespace bolthole
