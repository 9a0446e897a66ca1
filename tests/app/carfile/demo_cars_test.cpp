// The demo cars: readable, plausible, and all of their keys and limits in the JSON Schema.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "app/carfile/car_file.h"
#include "geometry/car/faults.h"
#include "geometry/car/numbers.h"
#include "geometry/checks/warnings.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/dynamics/launch_run.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "geometry/trials/launch_trials.h"
#include "tests/support/demo_car.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;

std::string bytesOf(const std::string& fileName) {
    std::ifstream file(fileName, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

const Json& schema() {
    static const Json value = Json::parse(bytesOf(BOLTHOLE_SOURCE_DIR "/resources/car.schema.json"));
    return value;
}

const Json& resolved(const Json& node) {
    if (!node.contains("$ref")) {
        return node;
    }
    const std::string reference = node["$ref"];
    return schema().at(Json::json_pointer(reference.substr(1)));
}

// Every key of `value` is described, every required key there, every bound kept.
void expectDescribed(const Json& value, const Json& reference, const std::string& path) {
    const Json& node = resolved(reference);
    ASSERT_TRUE(reference.contains("description") || node.contains("description") || node.contains("items"))
        << path;
    if (value.is_object()) {
        for (const Json& key : node.value("required", Json::array())) {
            EXPECT_TRUE(value.contains(key.get<std::string>())) << path << "." << key;
        }
        for (const auto& [key, member] : value.items()) {
            ASSERT_TRUE(node["properties"].contains(key)) << "not in the schema: " << path << "." << key;
            expectDescribed(member, node["properties"][key], path + "." + key);
        }
    } else if (value.is_array()) {
        EXPECT_GE(value.size(), node.value("minItems", std::size_t{0})) << path;
        EXPECT_LE(value.size(), node.value("maxItems", value.size())) << path;
        for (const Json& element : value) {
            if (element.is_object()) {
                expectDescribed(element, node["items"], path + "[]");
            }
        }
    } else if (value.is_number()) {
        EXPECT_GE(value, node.value("minimum", value)) << path;
        EXPECT_LE(value, node.value("maximum", value)) << path;
    } else if (node.contains("enum")) {
        EXPECT_NE(std::ranges::find(node["enum"], value), node["enum"].end()) << path;
    }
}

/// A demo car and where its figures lie; common practice, no source.
struct Demo {
    std::string name;
    double icNear;          // in, at ride
    double icFar;           // in, at ride
    double leastAntiSquat;  // percent, anywhere in its travel
    double mostPinion;      // degrees it turns in its travel, at most
};

void PrintTo(const Demo& demo, std::ostream* out) {
    *out << demo.name;
}

class DemoCar : public testing::TestWithParam<Demo> {
  protected:
    void SetUp() override {
        bytes = bytesOf(BOLTHOLE_DEMO_DIR "/" + GetParam().name + ".bolt.json");
        ReadResult read = readCar(bytes);
        ASSERT_TRUE(read.loaded) << read.problem.line();
        loaded = std::move(*read.loaded);
        trace = computeTrace(loaded.car);
    }

    std::string bytes;
    LoadedCar loaded;
    Trace trace;
};

TEST_P(DemoCar, IsSavedAsItStands) {
    EXPECT_EQ(writeCar(loaded.car, loaded.source), bytes);
    EXPECT_EQ(writeCar(loaded.car, Json()), bytes);
}

TEST_P(DemoCar, IsDescribedByTheSchema) {
    expectDescribed(loaded.source, schema(), "");
}

TEST_P(DemoCar, ReachesItsWholeTravelWithoutWarnings) {
    ASSERT_TRUE(trace.assembly.usable());
    EXPECT_TRUE(trace.droopEnd.usable());
    EXPECT_TRUE(trace.bumpEnd.usable());
    EXPECT_DOUBLE_EQ(loaded.car.travel.bump, 4 * kMetresPerInch);
    EXPECT_DOUBLE_EQ(loaded.car.travel.droop, 4 * kMetresPerInch);
    for (const Warning& warning : findWarnings(loaded.car)) {
        ADD_FAILURE() << warning.path << ": " << sentence(warning.finding);
    }
}

// Common practice, no source: strip cars on slicks take 1.5 to 2.4 s, and the nose stays on its front tires
// or not far above them.
TEST_P(DemoCar, RunsItsLaunch) {
    const LaunchInputsResult entered = launchInputsOf(loaded.car);
    for (const MissingInput& missing : entered.missing) {
        ADD_FAILURE() << missing.path << ": " << missing.reason;
    }
    ASSERT_TRUE(entered.inputs);
    const LaunchRun run = simulateLaunch(*entered.inputs);
    ASSERT_EQ(run.end, LaunchEnd::done);
    ASSERT_TRUE(run.figures.sixtyFoot);
    EXPECT_GT(*run.figures.sixtyFoot, 1.5);
    EXPECT_LT(*run.figures.sixtyFoot, 2.4);
    EXPECT_LT(run.figures.largestSlip, 1);
}

TEST_P(DemoCar, EveryHoleCombinationCanBeAssembled) {
    Car car = loaded.car;
    for (Link& link : car.links) {
        link.length.reset();  // each combination set to fit
    }
    for (Link& link : car.links) {
        for (const End end : {End::chassis, End::axle}) {
            Bracket& bracket = link.bracket(end);
            const int used = bracket.use;
            for (bracket.use = 0; bracket.use < static_cast<int>(bracket.holes.size()); ++bracket.use) {
                EXPECT_TRUE(computeTrace(car).assembly.usable()) << link.name << " " << bracket.use;
            }
            bracket.use = used;
        }
    }
}

// The demo's entered limits: none is passed as the car is bolted, some are by other combinations.
TEST_P(DemoCar, LimitsArePassedByOtherCombinationsOnly) {
    const CombinationSpace space(loaded.car, {});
    for (const LengthTreatment lengths :
         {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
        if (lengths == LengthTreatment::uppers && !hasUpperRod(loaded.car)) {
            continue;
        }
        CombinationSolver solver(loaded.car, lengths);
        HoleCombination combination;
        std::uint64_t passed = 0;
        for (std::uint64_t index = 0; index < space.count(); ++index) {
            solver.solve(space.at(index), combination);
            EXPECT_TRUE(combination.assembled);
            passed += combination.problems == 0 ? 0U : 1U;
            if (index == space.present()) {
                EXPECT_EQ(describeProblems(combination, loaded.car, Units::inch), "");
            }
        }
        // Arms set anew leave the housing where it was: no limit is nearer than before.
        const bool anyRod = std::ranges::any_of(loaded.car.links,
                                                [](const Link& link) { return link.kind == LinkKind::rod; });
        if (anyRod || lengths == LengthTreatment::keep) {
            EXPECT_GT(passed, 0U);
        }
        EXPECT_LE(passed, space.count() / 2);
    }
}

// Common practice, no source: anti-squat of a street or strip car's live axle between 80 and 180 %, pinion
// within a degree and a half of the driveshaft at ride, each joint at most 3 degrees there. An arm rigid with
// the axle pitches it more, and its instant center comes down with the body: less anti-squat in bump.
TEST_P(DemoCar, FiguresArePlausible) {
    EXPECT_GT(trace.ride[Figure::antiSquat], 100);
    EXPECT_LT(trace.ride[Figure::antiSquat], 125);
    for (const Station& station : trace.stations) {
        ASSERT_TRUE(station.usable);
        EXPECT_GT(station[Figure::antiSquat], GetParam().leastAntiSquat);
        EXPECT_LT(station[Figure::antiSquat], 180);
        EXPECT_LT(std::abs(station[Figure::pinion] - trace.ride[Figure::pinion]),
                  GetParam().mostPinion * kRadiansPerDegree);
    }
    EXPECT_GT(trace.ride[Figure::icX], GetParam().icNear * kMetresPerInch);
    EXPECT_LT(trace.ride[Figure::icX], GetParam().icFar * kMetresPerInch);
    EXPECT_LT(std::abs(trace.ride[Figure::pinionToDriveshaft]), 1.5 * kRadiansPerDegree);
    EXPECT_LT(trace.ride[Figure::frontJoint], 3 * kRadiansPerDegree);
    EXPECT_LT(trace.ride[Figure::rearJoint], 3 * kRadiansPerDegree);
}

TEST_P(DemoCar, PointsAreSixteenthsOfAnInch) {
    for (const Link& link : loaded.car.links) {
        for (const End end : {End::chassis, End::axle}) {
            for (const Hole& hole : link.bracket(end).holes) {
                const Eigen::Array3d sixteenths = hole.at.array() / kMetresPerInch * 16;
                EXPECT_LT((sixteenths - sixteenths.round()).abs().maxCoeff(), 1e-9) << hole.name;
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(All, DemoCar,
                         testing::Values(Demo{"long-roof-wagon", 50, 65, 80, 6},
                                         Demo{"light-coupe", 50, 65, 80, 6},
                                         Demo{"short-pickup", 50, 65, 80, 6},
                                         Demo{"gully-roadster", 30, 40, 60, 7},
                                         Demo{"notch-sedan", 45, 52, 30, 6}));

// No demo is left out of the list above.
TEST(DemoCars, AreTheFiveThatAreChecked) {
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(BOLTHOLE_DEMO_DIR),
                            std::filesystem::directory_iterator()),
              5);
}

// As its notes say: four clicks more of front rebound, and the nose tops out later and the tires hold.
TEST(DemoCars, CoupeIsCuredByItsFrontRebound) {
    Car car = demoCar("light-coupe");
    const LaunchRun asSet = simulateLaunch(*launchInputsOf(car).inputs);
    car =
        apply(car, SetNumber{{.field = Field::frontReboundClick}, *car.launch.front.damping->rebound.at + 4})
            .car;
    const LaunchRun cured = simulateLaunch(*launchInputsOf(car).inputs);
    ASSERT_TRUE(asSet.figures.toppedOut && asSet.figures.sixtyFoot && cured.figures.sixtyFoot);
    EXPECT_LT(*asSet.figures.toppedOut, 0.26);
    EXPECT_GT(cured.figures.toppedOut.value_or(1), *asSet.figures.toppedOut + 0.08);
    EXPECT_LT(*cured.figures.sixtyFoot, *asSet.figures.sixtyFoot - 0.02);
    EXPECT_GT(asSet.figures.largestSlip, 2 * cured.figures.largestSlip);
}

std::vector<LinkKind> kindsOf(const Car& car) {
    std::vector<LinkKind> kinds;
    for (const Link& link : car.links) {
        kinds.push_back(link.kind);
    }
    return kinds;
}

// Of all single changes, the one that is offered first is the click that cures it: the nose stops later, the
// front tires stay down, the rear tires keep more load and spin less.
TEST(DemoCars, RoadsterToppingOutEarlyIsCuredByTheFirstThingToTry) {
    const Car car = demoCar("gully-roadster");
    const LaunchTrials trials = tryChanges(car);
    ASSERT_TRUE(trials.complete);
    const LaunchFigures& asSet = trials.present.figures;
    ASSERT_TRUE(asSet.toppedOut && asSet.frontUp);
    EXPECT_LT(*asSet.toppedOut, 0.2);
    const LaunchTrial& first = trials.trials.front();
    const auto* edit = first.change.edit.as<SetNumber>();
    ASSERT_NE(edit, nullptr) << first.change.words;
    EXPECT_EQ(edit->id.field, Field::frontReboundClick);
    EXPECT_TRUE(first.change.isFirmer);
    EXPECT_GT(first.chance, 0.8);
    EXPECT_TRUE(first.differs);
    EXPECT_LT(*first.sixtyFootChange.change, -0.04);

    const LaunchRun cured = simulateLaunch(*launchInputsOf(apply(car, first.change.edit).car).inputs);
    ASSERT_EQ(cured.end, LaunchEnd::done);
    EXPECT_GT(*cured.figures.toppedOut, *asSet.toppedOut + 0.1);
    EXPECT_GT(*cured.figures.leastRearLoad, *asSet.leastRearLoad + 500);
    EXPECT_LT(*cured.figures.sixtyFoot, *asSet.sixtyFoot - 0.04);
    EXPECT_TRUE(std::ranges::any_of(first.reasons, [](const ReasonPart& part) {
        return part.kind == ReasonPart::Kind::noseStops && *part.after > *part.before;
    }));
    for (const LaunchTrial& trial : trials.trials) {
        const auto* other = trial.change.edit.as<SetNumber>();
        if (other == nullptr || other->id.field != Field::frontReboundClick) {
            EXPECT_LT(trial.chance, first.chance) << trial.change.words;
        }
    }
}

TEST(DemoCars, PickupIsAThreeLinkWithATrackBar) {
    const Car car = demoCar("short-pickup");
    EXPECT_EQ(kindsOf(car), std::vector(3, LinkKind::rod));
    EXPECT_EQ(car.links[1].side, Side::center);
    EXPECT_EQ(roleOf(car.links[1], car.rearTireRadius), Role::upper);
    EXPECT_EQ(roleOf(car.links[2], car.rearTireRadius), Role::crosswise);
    EXPECT_EQ(computeTrace(car).heldBySymmetry, Freedom::none);
}

// The pivot itself is the instant center.
TEST(DemoCars, RoadsterHasLadderBarsAndAWattsGuide) {
    const Car car = demoCar("gully-roadster");
    EXPECT_EQ(kindsOf(car), (std::vector{LinkKind::pivot, LinkKind::guide}));
    const Trace trace = computeTrace(car);
    EXPECT_NEAR(trace.ride.icCarX, car.links[0].chassis.inUse().at.x(), 1e-9);
    EXPECT_NEAR(trace.ride.icCarZ, car.links[0].chassis.inUse().at.z(), 1e-9);
}

TEST(DemoCars, SedanHasATorqueArmAndATrackBar) {
    const Car car = demoCar("notch-sedan");
    EXPECT_EQ(kindsOf(car), (std::vector{LinkKind::rod, LinkKind::slider, LinkKind::rod}));
    EXPECT_EQ(roleOf(car.links[2], car.rearTireRadius), Role::crosswise);
    EXPECT_EQ(computeTrace(car).heldBySymmetry, Freedom::none);
}

TEST(DemoCars, WagonIsATriangulatedFourLinkWithThreeHoleBrackets) {
    const ReadResult read = readCarFile(BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json");
    ASSERT_TRUE(read.loaded);
    const Car& car = read.loaded->car;
    ASSERT_EQ(car.links.size(), 2U);
    EXPECT_EQ(car.links[0].axle.holes.size(), 3U);
    const Link& upper = car.links[1];
    EXPECT_LT(upper.axle.inUse().at.y(), upper.chassis.inUse().at.y() / 2);
    const Trace trace = computeTrace(car);
    EXPECT_EQ(trace.heldBySymmetry, Freedom::none);
    EXPECT_NEAR(car.cornerWeights.total(), 4056 * kKilogramsPerPound, 1);
    EXPECT_NEAR(car.cornerWeights.front() / car.cornerWeights.total(), 0.58, 0.005);
}

TEST(DemoCars, CoupeIsAParallelFourLinkWithATrackBar) {
    const ReadResult read = readCarFile(BOLTHOLE_DEMO_DIR "/light-coupe.bolt.json");
    ASSERT_TRUE(read.loaded);
    const Car& car = read.loaded->car;
    ASSERT_EQ(car.links.size(), 3U);
    for (const Link& link : car.links) {
        EXPECT_GE(link.chassis.holes.size(), 3U);
        EXPECT_GE(link.axle.holes.size(), 3U);
        EXPECT_TRUE(link.adjuster);
        if (link.side == Side::both) {
            EXPECT_EQ(link.chassis.inUse().at.y(), link.axle.inUse().at.y());
        }
    }
    EXPECT_EQ(roleOf(car.links[2], car.rearTireRadius), Role::crosswise);
    EXPECT_EQ(computeTrace(car).heldBySymmetry, Freedom::none);
    EXPECT_NEAR(car.cornerWeights.total(), 2450 * kKilogramsPerPound, 1);
}

// A car with every part: what the writer writes is what the reader knows.
TEST(Schema, DescribesEveryKeyTheWriterWrites) {
    ReadResult read = readCarFile(BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json");
    ASSERT_TRUE(read.loaded);
    Car car = read.loaded->car;
    car.rearTrack = 1.5;
    car.links[0].length = 0.5;
    car.links[0].adjuster = Adjuster{.pitch = 0.0015875,
                                     .shortest = 0.4,
                                     .longest = 0.6,
                                     .engagement = 0.03,
                                     .engagementAt = 0.5,
                                     .leastEngagement = 0.02};
    car.links[0].role = Role::lower;
    car.links[0].rodEndLimit = 0.2;
    car.driveline = Driveline{};
    car.driveline->jointLimit = 0.1;
    car.target = TargetWindow{.icNear = 1.0, .icFar = 2.0, .antiSquatLow = 90, .antiSquatHigh = 130};
    car = apply(car, KeepSetup{"Monday", "2026-11-02", "dry", nullptr}).car;
    expectDescribed(Json::parse(writeCar(car, Json())), schema(), "");
}

// The limits stand in the schema as refusal() has them: just inside is allowed, just outside is not.
TEST(Schema, LimitsAreTheProgramsOwn) {
    const auto allowed = [](Field field, double inFile) {
        const double value = inFile * fileUnit(quantityOf(field));
        return refusal({.field = field, .link = 0, .hole = 0, .axis = 0}, value).empty();
    };
    const Json& properties = schema()["properties"];
    const Json& link = schema()["$defs"]["link"]["properties"];
    const Json& driveline = schema()["$defs"]["driveline"]["properties"];
    const std::vector<std::pair<Field, Json>> fields{
        {Field::wheelbase, properties["wheelbase"]},
        {Field::rearTrack, properties["rear_track"]},
        {Field::cgHeight, properties["cg_height"]},
        {Field::leftFrontWeight, properties["corner_weights"]["properties"]["left_front"]},
        {Field::bump, properties["travel"]["properties"]["bump"]},
        {Field::steps, properties["travel"]["properties"]["steps"]},
        {Field::frontRatio, properties["travel"]["properties"]["front_ratio"]},
        {Field::holeAt, schema()["$defs"]["point"]["items"]},
        {Field::linkLength, link["length"]},
        {Field::adjusterPitch, link["adjuster"]["properties"]["pitch"]},
        {Field::adjusterEnds, link["adjuster"]["properties"]["ends"]},
        {Field::adjusterShortest, link["adjuster"]["properties"]["shortest"]},
        {Field::adjusterLongest, link["adjuster"]["properties"]["longest"]},
        {Field::adjusterEngagement, link["adjuster"]["properties"]["engagement"]},
        {Field::adjusterEngagementAt, link["adjuster"]["properties"]["engagement_at"]},
        {Field::adjusterLeastEngagement, link["adjuster"]["properties"]["least_engagement"]},
        {Field::rodEndLimit, link["rod_end_limit"]},
        {Field::jointLimit, driveline["joint_limit"]},
        {Field::targetIcNear, properties["wanted"]["properties"]["ic_near"]},
        {Field::targetIcFar, properties["wanted"]["properties"]["ic_far"]},
        {Field::targetLow, properties["wanted"]["properties"]["anti_squat_low"]},
        {Field::targetHigh, properties["wanted"]["properties"]["anti_squat_high"]},
        {Field::pinionAngle, driveline["pinion_angle"]},
        {Field::outputAngle, driveline["output_angle"]}};
    for (const auto& [field, node] : fields) {
        SCOPED_TRACE(node.dump());
        const bool openLow = node.contains("exclusiveMinimum");
        const bool openHigh = node.contains("exclusiveMaximum");
        const double low = node[openLow ? "exclusiveMinimum" : "minimum"];
        const double high = node[openHigh ? "exclusiveMaximum" : "maximum"];
        const double step = quantityOf(field) == Quantity::count ? 1 : 1e-6;
        EXPECT_EQ(allowed(field, low), !openLow);
        EXPECT_FALSE(allowed(field, low - step));
        EXPECT_TRUE(allowed(field, low + step));
        EXPECT_EQ(allowed(field, high), !openHigh);
        EXPECT_FALSE(allowed(field, high + step));
        EXPECT_TRUE(allowed(field, high - step));
    }
}

}  // namespace
}  // namespace bolthole
