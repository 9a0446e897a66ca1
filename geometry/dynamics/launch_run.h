// A launch from the release until 60 ft are run: the equations of launch_model.h integrated.
#pragma once

#include <optional>
#include <vector>

#include "geometry/dynamics/dormand_prince.h"
#include "geometry/dynamics/launch_inputs.h"
#include "geometry/dynamics/launch_model.h"

namespace bolthole {

/// One sample. SI, + as in LaunchCoordinate.
struct LaunchRow {
    double time = 0;          ///< s from the release
    double distance = 0;      ///< m, the front wheels' center from where it stood
    double speed = 0;         ///< m/s, the rear axle along the ground
    double acceleration = 0;  ///< m/s^2, the car frame's origin along the ground
    double engineSpeed = 0;   ///< rad/s
    double turbineSpeed = 0;  ///< rad/s; of a clutch, its output
    double slip = 0;          ///< of the rear tires, 1 = 100 percent
    double rearTravel = 0;    ///< m
    double frontTravel = 0;   ///< m
    double pitch = 0;         ///< rad, nose down +
    double rearLoad = 0;      ///< N, both tires
    double frontLoad = 0;     ///< N, both tires
    double thrust = 0;        ///< N
    double grip = 0;          ///< N, friction times rear load
    double forward = 0;       ///< m, the car frame's origin
    double up = 0;            ///< m
    double wheelSpin = 0;     ///< rad/s
};

enum class LaunchEventKind {
    released,        ///< the brakes or the clutch's pedal are all off
    toppedOut,       ///< the front passes its droop
    offTop,          ///< and leaves the stop
    bottomed,        ///< the front passes its bump travel
    offBottom,       ///< and leaves the stop
    frontTiresUp,    ///< the front tires carry nothing from here on
    frontTiresDown,  ///< and touch again
    rearTiresUp,
    rearTiresDown,
    partMet,    ///< a rear part meets a limit, or a spring or bump stop starts to push: `part`
    partFree,   ///< and is free again, or comes loose
    coupled,    ///< the converter's turbine reaches its coupling ratio
    uncoupled,  ///< and falls below
    locked,     ///< the clutch no longer slips
    slipping,   ///< and opens again
    clockStarted,
    sixtyFeet
};
struct LaunchEvent {
    LaunchEventKind kind = LaunchEventKind::released;
    double time = 0;  ///< s from the release
    int part = -1;    ///< of a rear part: index into LaunchInputs::parts
};

/// Why a launch ended.
enum class LaunchEnd {
    notRun,         ///< nothing was attempted
    refused,        ///< the inputs have a refusal()
    noRide,         ///< the car can't be assembled at ride: `links`
    done,           ///< 60 ft are run and kLeastTime is past
    timeOut,        ///< 60 ft were not reached in kMostTime
    stalled,        ///< the engine stalled
    linksEnd,       ///< the axle got where the links reach no further: `links`, or at the table's end
    overBackwards,  ///< the nose rose until the center of gravity stood behind the rear wheels
    unfollowed      ///< numbers so extreme that no step is short enough
};

/// The figures of a launch. Absent: it did not happen.
struct LaunchFigures {
    std::optional<double> sixtyFoot = std::nullopt;      ///< s on the clock
    std::optional<double> fromRelease = std::nullopt;    ///< s from the release to 60 ft
    std::optional<double> toppedOut = std::nullopt;      ///< s, first time the front passes its droop
    std::optional<double> frontUp = std::nullopt;        ///< s, first time the front tires carry nothing
    double largestSlip = 0;                              ///< from the release to 60 ft
    std::optional<double> leastRearLoad = std::nullopt;  ///< N, from kAfterTheHit to 60 ft
    double leastRearLoadAt = 0;                          ///< s
};

/// A launch. Starts pessimistic: rows hold up to the end whatever its reason.
struct LaunchRun {
    LaunchEnd end = LaunchEnd::notRun;
    double endTime = 0;    ///< s
    double endTravel = 0;  ///< m of rear travel
    MoveReport links{};    ///< where links ended it: which one ran out
    std::string refusal;   ///< where the inputs were refused
    LaunchFigures figures{};
    std::vector<LaunchRow> rows;      ///< every LaunchOptions::every from 0
    std::vector<LaunchEvent> events;  ///< in order of time; at most kMostEvents, later ones left out
    int steps = 0;                    ///< taken
    int rejected = 0;                 ///< tried and taken shorter
    int crossings = 0;                ///< kinks at which a step ended
    long evaluations = 0;             ///< of the equations in full
};
inline constexpr std::size_t kMostEvents = 1000;
inline constexpr std::size_t kMostRows = 100'001;

struct LaunchOptions {
    double every = 0.01;  ///< s between rows, above 0
    /// How closely a step is followed: 1 as accurate as the figures need, smaller is closer.
    double tolerance = 1;
};

/// Runs launches one after the other and keeps its storage: nothing is allocated for a step. One a thread;
/// the same inputs give the same result in any.
class LaunchSimulator {
  public:
    /// Told after each step, for whoever follows energies.
    class Observer {
      public:
        virtual ~Observer() = default;
        /// A step that began at `time` was taken up to `used` of its `width`, on the pieces `model` has in
        /// use. The model may be asked to observe and derive anything.
        virtual void stepped(LaunchModel& model, const DormandPrince<kLaunchStateSize>& step, double time,
                             double width, double used) = 0;
    };

    void run(const LaunchInputs& inputs, const LaunchOptions& options, LaunchRun& run,
             Observer* observer = nullptr);

  private:
    static constexpr std::size_t kNoKink = static_cast<std::size_t>(-1);
    // Where a step leaves the piece of a kink.
    struct Crossing {
        double share = 1;  // of the step
        std::size_t kink = kNoKink;
        int direction = 0;

        [[nodiscard]] bool found() const { return kink != kNoKink; }
    };
    // What is looked at along a step.
    struct Sample {
        double load = 0;
        double slip = 0;
        double distance = 0;
    };

    // launch_run.cpp: the integration.
    void start();
    void integrate();
    [[nodiscard]] bool attempt();
    void advance();
    void derive(double time, const LaunchState& state, LaunchState& rates);
    void observeAt(double share);
    [[nodiscard]] Crossing firstViolated(std::size_t but) const;
    [[nodiscard]] Crossing firstCrossing();
    [[nodiscard]] Crossing earliest(Crossing crossing, double low, const std::vector<double>& lowArguments);
    [[nodiscard]] double excess(const Crossing& crossing, const std::vector<double>& arguments) const;
    void cross(const Crossing& crossing);
    [[nodiscard]] bool isOverBackwards() const;
    void finish(LaunchEnd end);

    // launch_record.cpp: what is kept of it.
    void record(double share);
    void startRecord();
    void recordClock(double share);
    [[nodiscard]] double shareOfDistance(double distance, double share);
    void recordExtremes(double share);
    void searchExtremes(double low, double high, bool load);
    [[nodiscard]] Sample sampleNow() const;
    [[nodiscard]] Sample sampleAt(double share);
    void keep(const Sample& sample, double share, bool load);
    void writeRows(double share);
    void note(LaunchEventKind kind, double time, int part = -1);
    void noteCrossing(const Crossing& crossing, const KinkedLine::Piece& left);
    void noteFront(const Crossing& crossing);
    [[nodiscard]] double timeAt(double share) const { return time_ + share * tried_; }

    LaunchModel model_;
    DormandPrince<kLaunchStateSize> step_;
    LaunchOptions options_;
    LaunchRun* run_ = nullptr;
    Observer* observer_ = nullptr;
    LaunchState scale_{};
    LaunchState state_{};
    LaunchState rates_{};
    LaunchState probe_{};
    LaunchState probeRates_{};
    std::vector<double> startArguments_;
    std::vector<double> endArguments_;
    double time_ = 0;
    double width_ = 0;  // of the next step
    double tried_ = 0;  // of the step at hand
    double lastError_ = 1;
    double stop_ = 0;   // when the run is over, s
    int standing_ = 0;  // crossings with no time between them
    std::size_t nextRow_ = 0;
    std::optional<double> clockStart_;
    Sample last_;    // at the beginning of the step at hand
    Sample middle_;  // halfway and at the end of it
    Sample end_;
    bool over_ = false;
};

/// One launch, for who runs only one.
[[nodiscard]] LaunchRun simulateLaunch(const LaunchInputs& inputs, const LaunchOptions& options = {});

}  // namespace bolthole
