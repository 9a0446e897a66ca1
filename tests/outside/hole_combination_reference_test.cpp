// Hole combinations against what stands outside this project.
#include <gmock/gmock.h>

#include <cmath>
#include <string>
#include <vector>

#include "app/carfile/car_file.h"
#include "geometry/combinations/combination_figures.h"
#include "tests/outside/compare_to_reference.h"
#include "tests/outside/reference_axle.h"
#include "tests/outside/simbody_reference.h"

namespace bolthole {

namespace {

constexpr double kMillimetre = 0.001;
const std::string kWagon = "long-roof-wagon.bolt.json";
const std::string kCoupe = "light-coupe.bolt.json";

Car demoAtThreeSteps(const std::string& file) {
    ReadResult result = readCarFile(std::string(BOLTHOLE_DEMO_DIR) + "/" + file);
    EXPECT_TRUE(result.loaded) << result.problem.line();
    Car car = result.loaded ? std::move(result.loaded->car) : Car{};
    car.travel.steps = 3;  // droop, ride, bump
    return car;
}

// Simbody's assembler takes no more equations than unknowns. The coupe has a rod more, which fits all the
// same: one left rod is left out, the lower and the upper by turns.
ReferenceAxle closable(const Linkage& linkage, std::uint64_t turn) {
    const ReferenceAxle whole = referenceAxle(linkage);
    if (whole.links.size() <= 4) {
        return whole;
    }
    Linkage rest = linkage;
    std::erase_if(rest.constraints, [turn](const Constraint& link) {
        return link.link == static_cast<int>(turn % 2) && link.side == Side::left;
    });
    return referenceAxle(rest);
}

// Simbody's position of the axle's center, and its pitch: of a point ahead of the center, whose height tells
// it.
void expectSamePose(const SimbodyReference& reference, const AxlePose& pose) {
    const Eigen::Vector3d center = reference.carry(Eigen::Vector3d::Zero());
    EXPECT_LE((center - Eigen::Vector3d(pose.x, pose.y, pose.z)).lpNorm<Eigen::Infinity>(), kAgreement);
    const Eigen::Vector3d ahead = reference.carry(Eigen::Vector3d::UnitX()) - center;
    EXPECT_NEAR(std::asin(-ahead.z()), pose.pitch, kAgreement);
}

// One combination at ride and at both ends of travel.
void compareCombination(const CombinationSolver& solver, std::uint64_t turn) {
    const Trace& trace = solver.trace();
    const Station* droop = &trace.stations.front();
    const Station* bump = &trace.stations.back();
    SimbodyReference reference(closable(buildLinkage(solver.car()), turn));
    for (const Station* station : {&trace.ride, bump, &trace.ride, droop}) {
        ASSERT_TRUE(station->usable);
        ASSERT_TRUE(reference.moveTo((*station)[Figure::travel]));
        expectSamePose(reference, station->pose);
    }
}

// Every `stride`-th combination of a demo car.
void compareCombinations(const std::string& file, LengthTreatment treatment, std::uint64_t stride) {
    const Car car = demoAtThreeSteps(file);
    const CombinationSpace space(car, {});
    CombinationSolver solver(car, treatment);
    HoleCombination combination;
    for (std::uint64_t index = 0; index < space.count(); index += stride) {
        SCOPED_TRACE(file + " " + std::string(nameOf(treatment)) + " " + std::to_string(index));
        solver.solve(space.at(index), combination);
        ASSERT_TRUE(combination.assembled);
        compareCombination(solver, index / stride);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

}  // namespace

TEST(AgainstSimbody, EveryCombinationOfTheWagon) {
    for (const LengthTreatment treatment :
         {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
        compareCombinations(kWagon, treatment, 1);
    }
}

// 1,296 combinations, some 30 ms each in Simbody.
TEST(AgainstSimbody, CombinationsOfTheCoupeReset) {
    compareCombinations(kCoupe, LengthTreatment::refit, 1);
}

// Every fifth, for time: as its brackets have three and four holes, five meets every hole with every other.
TEST(AgainstSimbody, CombinationsOfTheCoupeKept) {
    compareCombinations(kCoupe, LengthTreatment::keep, 5);
}

TEST(AgainstSimbody, CombinationsOfTheCoupeWithUppersSet) {
    compareCombinations(kCoupe, LengthTreatment::uppers, 5);
}

// Pitches after ASME B1.1, Unified Inch Screw Threads: 5/8-18 UNF is 1.41111 mm, 3/4-16 UNF 1.5875 mm, as
// read in a tap guide that cites it. Left- and right-hand ends move both at once: 2.82222 and 3.175 mm a
// turn.
TEST(AgainstAsmeB11, TurnsOfAnAdjuster) {
    struct Row {
        double pitch;
        int ends;
        double perTurn;
    };
    for (const Row& row : {Row{1.41111, 2, 2.82222}, Row{1.5875, 2, 3.175}, Row{1.41111, 1, 1.41111},
                           Row{1.5875, 1, 1.5875}}) {
        const Adjuster adjuster{.pitch = row.pitch * kMillimetre, .threadedEnds = row.ends};
        for (const double turns : {-4.0, -0.5, 1.0, 2.5, 10.0}) {
            EXPECT_NEAR(adjusterTurns(turns * row.perTurn * kMillimetre, adjuster), turns, 1e-9);
        }
    }
}

// The demo coupe's adjusters are 3/4-16 on its four links and 5/8-18 on its track bar. The car file rounds
// the second to a tenth of a micrometre.
TEST(AgainstAsmeB11, TheCoupesThreads) {
    const Car car = demoAtThreeSteps(kCoupe);
    EXPECT_NEAR(car.links.at(0).adjuster.value().pitch, 1.5875 * kMillimetre, 1e-12);
    EXPECT_NEAR(car.links.at(1).adjuster.value().pitch, 1.5875 * kMillimetre, 1e-12);
    EXPECT_NEAR(car.links.at(2).adjuster.value().pitch, 1.41111 * kMillimetre, 2e-8);
}

// Common practice, no source: on a triangulated four-link whose lowers rise toward the front, raising the
// lower link's axle hole moves the instant center forward (farther) and lowers anti-squat.
TEST(CommonPractice, RaisingTheLowersAxleHoleMovesTheInstantCenterForward) {
    const Car car = demoAtThreeSteps(kWagon);
    const Link& lower = car.links.at(0);
    for (const Hole& hole : lower.axle.holes) {
        ASSERT_GT(lower.chassis.inUse().at.z(), hole.at.z()) << "rises toward the front";
    }
    for (const LengthTreatment treatment :
         {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
        CombinationSolver solver(car, treatment);
        for (int upper = 0; upper < 2; ++upper) {
            HoleCombination higher;
            for (int hole = 0; hole < 3; ++hole) {  // from the top down
                HoleUse use = holesInUse(car);
                use.set(0, End::axle, hole);
                use.set(1, End::chassis, upper);
                HoleCombination combination;
                solver.solve(use, combination);
                ASSERT_TRUE(combination.assembled);
                if (hole > 0) {
                    ASSERT_GT(lower.axle.holes[static_cast<std::size_t>(hole) - 1].at.z(),
                              lower.axle.holes[static_cast<std::size_t>(hole)].at.z());
                    EXPECT_GT(higher[Figure::icX], combination[Figure::icX]);
                    EXPECT_LT(higher[Figure::antiSquat], combination[Figure::antiSquat]);
                }
                higher = combination;
            }
        }
    }
}

}  // namespace bolthole
