// The same right-hand side integrated by SUNDIALS, which knows nothing of pieces and events: every piece is
// chosen anew for every state.
#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "app/carfile/car_file.h"
#include "geometry/dynamics/launch_run.h"
#include "tests/outside/sundials_reference.h"
#include "tests/support/launch_energy.h"
#include "tests/support/made_launch.h"

namespace bolthole {

namespace {

constexpr double kAgreed = 1e-7;  // agreement asked, of the scale of each number

// What each number of the state is of the size of: m, rad; their rates; spin, tread, engine.
const std::vector<double> kSize{20, 0.1, 0.1, 0.1, 0.1, 15, 1, 1, 1, 1, 50, 0.05, 500};

/// What the reference makes of a launch, at the rows' times.
class ReferenceLaunch {
  public:
    explicit ReferenceLaunch(const LaunchInputs& inputs) { ready_ = model_.prepare(inputs).usable(); }

    std::vector<LaunchRow> rows(const std::vector<double>& times, double tolerance) {
        const LaunchState start = model_.atRest();
        const auto states = integrateByReference(
            [this](double time, const double* state, double* rates) { derive(time, state, rates); },
            {start.begin(), start.end()}, kSize, times, tolerance);
        std::vector<LaunchRow> rows;
        for (std::size_t index = 0; index < states.size(); ++index) {
            LaunchState rates{};
            derive(times[index], states[index].data(), rates.data());
            const LaunchMoment& now = model_.moment();
            rows.push_back({.time = times[index],
                            .distance = now.distance,
                            .speed = now.axleForwardRate,
                            .engineSpeed = states[index][kEngineSpeed],
                            .slip = now.slip,
                            .rearTravel = states[index][kRearTravel],
                            .frontTravel = states[index][kFrontTravel],
                            .pitch = states[index][kPitch],
                            .rearLoad = now.rearLoad,
                            .frontLoad = now.frontLoad});
        }
        return rows;
    }
    [[nodiscard]] bool ready() const { return ready_; }

  private:
    void derive(double time, const double* state, double* rates) {
        LaunchState at{};
        std::copy_n(state, kLaunchStateSize, at.begin());
        while (at[kRearTravel] > model_.table().highest() && model_.cross(kLinkageEnd, +1)) {
        }
        while (at[kRearTravel] < model_.table().lowest() && model_.cross(kLinkageEnd, -1)) {
        }
        model_.observe(time, at);
        model_.choosePieces();
        LaunchState change{};
        model_.derive(change);
        std::copy_n(change.begin(), kLaunchStateSize, rates);
    }

    LaunchModel model_;
    bool ready_ = false;
};

std::vector<double> timesOf(const LaunchRun& run) {
    std::vector<double> times;
    for (const LaunchRow& row : run.rows) {
        times.push_back(row.time);
    }
    return times;
}

/// Largest differences between two launches' rows.
struct Differences {
    double distance = 0;
    double travel = 0;
    double load = 0;
    double slip = 0;
    double engine = 0;
};
Differences differencesOf(const std::vector<LaunchRow>& one, const std::vector<LaunchRow>& other) {
    Differences most;
    for (std::size_t index = 0; index < std::min(one.size(), other.size()); ++index) {
        const LaunchRow& a = one[index];
        const LaunchRow& b = other[index];
        const auto take = [](double& largest, double x, double y) {
            largest = std::max(largest, std::abs(x - y));
        };
        take(most.distance, a.distance, b.distance);
        take(most.travel, a.rearTravel, b.rearTravel);
        take(most.travel, a.frontTravel, b.frontTravel);
        take(most.load, a.rearLoad, b.rearLoad);
        take(most.load, a.frontLoad, b.frontLoad);
        take(most.slip, a.slip, b.slip);
        take(most.engine, a.engineSpeed, b.engineSpeed);
    }
    return most;
}

void expectTheSame(const LaunchInputs& inputs) {
    const LaunchRun close = simulateLaunch(inputs, {.tolerance = 1e-5});
    ASSERT_EQ(close.end, LaunchEnd::done) << close.refusal;
    ReferenceLaunch reference(inputs);
    ASSERT_TRUE(reference.ready());
    const std::vector<LaunchRow> rows = reference.rows(timesOf(close), 1e-12);
    ASSERT_EQ(rows.size(), close.rows.size());
    const double weight = inputs.bodies.total * inputs.bodies.gravity;
    const Differences differ = differencesOf(close.rows, rows);
    EXPECT_LE(differ.distance, 18 * kAgreed);
    EXPECT_LE(differ.travel, 0.1 * kAgreed);
    EXPECT_LE(differ.load, weight * kAgreed);
    EXPECT_LE(differ.slip, kAgreed);
    EXPECT_LE(differ.engine, 500 * kAgreed);

    // As the program runs it: what launches are asked to agree to is 0.1 mm and 0.2 % of the weight.
    const LaunchRun plain = simulateLaunch(inputs);
    const Differences plainly = differencesOf(plain.rows, rows);
    EXPECT_LE(plainly.travel, 0.1e-3 / 4);
    EXPECT_LE(plainly.load, 0.002 * weight / 4);
    EXPECT_NEAR(*plain.figures.sixtyFoot, *close.figures.sixtyFoot, 1e-3 / 10);
    EXPECT_NEAR(*plain.figures.leastRearLoad, *close.figures.leastRearLoad, 0.002 * weight / 4);
    EXPECT_NEAR(plain.figures.largestSlip, close.figures.largestSlip, 1e-3);
}

}  // namespace

TEST(LaunchTimeAgainstSundials, DrawnCars) {
    for (const Layout layout : {Layout::triangulated, Layout::threeLink, Layout::torqueArm,
                                Layout::parallelGuide, Layout::ladderGuide}) {
        SCOPED_TRACE(static_cast<int>(layout));
        expectTheSame(makeLaunch(CarGenerator(900 + static_cast<std::uint64_t>(layout)).draw(layout)));
    }
}

TEST(LaunchTimeAgainstSundials, DemoCars) {
    for (const char* name :
         {"long-roof-wagon", "light-coupe", "short-pickup", "gully-roadster", "notch-sedan"}) {
        SCOPED_TRACE(name);
        const ReadResult read = readCarFile(std::string(BOLTHOLE_DEMO_DIR "/") + name + ".bolt.json");
        if (!read.loaded) {
            ADD_FAILURE() << read.problem.line();
            continue;
        }
        expectTheSame(makeLaunch(read.loaded->car));
    }
}

// What the engine gave is there or lost, each loss by its name, at every step.
TEST(LaunchTimeEnergy, IsClosedAtEveryStep) {
    for (const CouplingKind kind : {CouplingKind::converter, CouplingKind::clutch}) {
        EnteredLaunch setup = makeLaunchSetup();
        setup.coupling.kind = kind;
        setup.engine.launchSpeed = 4200 * kRpm;
        for (const Layout layout : {Layout::triangulated, Layout::torqueArm, Layout::parallelTrackBar}) {
            const LaunchInputs inputs =
                makeLaunch(CarGenerator(40 + static_cast<std::uint64_t>(layout)).draw(layout), setup);
            LaunchSimulator simulator;
            LaunchRun run;
            EnergyBooks books;
            simulator.run(inputs, {.tolerance = 1e-3}, run, &books);
            ASSERT_EQ(run.end, LaunchEnd::done) << run.refusal << run.endTime;
            EXPECT_GT(books.steps, 200);
            EXPECT_GT(books.flows.engine, 1e5);
            EXPECT_GT(books.flows.coupling, 0);
            EXPECT_GT(books.flows.tread, 0);
            EXPECT_GT(books.flows.rearShocks, 0);
            EXPECT_GT(books.flows.frontShocks, 0);
            EXPECT_GT(books.flows.tireDamping, 0);
            EXPECT_LE(books.largestGap, 1e-6 * books.flows.engine)
                << "layout " << static_cast<int>(layout) << " clutch " << (kind == CouplingKind::clutch);
        }
    }
}

}  // namespace bolthole
