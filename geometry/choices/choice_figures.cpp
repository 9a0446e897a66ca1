#include "geometry/choices/choice_figures.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "geometry/choices/rod_sweep.h"

namespace bolthole {

namespace {

void flag(HoleChoice& choice, ChoiceProblem problem, int link, double value, int other = -1) {
    choice.problems = static_cast<std::uint16_t>(choice.problems | 1U << static_cast<unsigned>(problem));
    choice.details[static_cast<std::size_t>(problem)] = {
        static_cast<std::int8_t>(link), static_cast<std::int8_t>(other), static_cast<float>(value)};
}

// The larger of two, where the first may not exist yet.
double worse(double worst, double value) {
    return std::isnan(worst) || value > worst ? value : worst;
}

int linkAtFault(const MoveReport& report, const Linkage& linkage) {
    return report.constraint < 0 ? -1 : linkage.constraints[static_cast<std::size_t>(report.constraint)].link;
}

Eigen::Vector3d middleOf(const Bracket& bracket, bool mirror) {
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for (const Hole& hole : bracket.holes) {
        sum += hole.at;
    }
    sum /= static_cast<double>(bracket.holes.size());
    return mirror ? Eigen::Vector3d(sum.x(), -sum.y(), sum.z()) : sum;
}

// Ride first: with few steps it is none of the rows, and it may be all that is reached.
template <typename Visit>
void forEachUsable(const Trace& trace, const Visit& visit) {
    visit(trace.ride);
    for (const Station& station : trace.stations) {
        if (station.usable) {
            visit(station);
        }
    }
}

ChoiceBase baseOf(const Car& car) {
    ChoiceBase base;
    base.use = holesInUse(car);
    const Station now = solveStation(car, 0.0);
    base.known = now.usable;
    if (base.known) {
        base.pose = now.pose;
        base.pinion = now[Figure::pinion];
        base.ground = now[Figure::ground];
    }
    return base;
}

}  // namespace

ChoiceSolver::ChoiceSolver(const Car& car, LengthTreatment treatment)
    : rig_(car, treatment), base_(baseOf(car)) {
    placeBolts();
}

void ChoiceSolver::placeBolts() {
    for (const Constraint& constraint : rig_.linkage().constraints) {
        const Link& link = rig_.original().links[static_cast<std::size_t>(constraint.link)];
        const bool mirror = link.side == Side::both && constraint.side == Side::right;
        const Eigen::Vector3d along = middleOf(link.chassis, mirror) - middleOf(link.axle, mirror);
        Eigen::Vector3d bolt = Eigen::Vector3d::UnitZ().cross(along);
        bolt = bolt.norm() > 0 ? bolt.normalized() : Eigen::Vector3d::UnitY();
        bolts_.push_back(bolt);
    }
}

void ChoiceSolver::solve(const HoleUse& use, HoleChoice& choice) {
    choice = HoleChoice{};
    choice.use = use;
    const bool lengthsFound = rig_.bolt(use);
    countWork(choice);
    if (lengthsFound) {
        computeTrace(rig_.car(), rig_.linkage(), trace_);
    } else {
        trace_.assembly = MoveReport{};
    }
    choice.assembled = lengthsFound && trace_.assembly.usable();
    if (!choice.assembled) {
        flag(choice, ChoiceProblem::notAssembled, linkAtFault(trace_.assembly, rig_.linkage()), kAbsent);
        return;
    }
    readRide(choice);
    readTravel(choice);
    sweepRods(choice);
    checkLimits(choice);
}

void ChoiceSolver::countWork(HoleChoice& choice) const {
    choice.length.fill(kAbsent);
    choice.lengthChange.fill(kAbsent);
    for (std::size_t index = 0; index < rig_.original().links.size(); ++index) {
        const Link& link = rig_.original().links[index];
        const int number = static_cast<int>(index);
        for (const End end : {End::chassis, End::axle}) {
            choice.boltsMoved += choice.use.of(number, end) != base_.use.of(number, end) ? sidesOf(link) : 0;
        }
        if (link.kind != LinkKind::rod) {
            continue;
        }
        choice.length[index] = *rig_.car().links[index].length;
        choice.lengthChange[index] = choice.length[index] - builtLength(link);
        if (std::abs(choice.lengthChange[index]) > kNoAdjustment) {
            (link.adjuster ? choice.adjustersTurned : choice.newRods) += sidesOf(link);
        }
        checkAdjuster(index, choice);
    }
}

void ChoiceSolver::checkAdjuster(std::size_t index, HoleChoice& choice) const {
    const Link& link = rig_.original().links[index];
    if (!link.adjuster) {
        return;
    }
    const double length = choice.length[index];
    const int number = static_cast<int>(index);
    if (length < link.adjuster->shortest.value_or(length) - kNoAdjustment) {
        flag(choice, ChoiceProblem::tooShort, number, length);
    }
    if (length > link.adjuster->longest.value_or(length) + kNoAdjustment) {
        flag(choice, ChoiceProblem::tooLong, number, length);
    }
    const std::optional<double> held = engagementAt(link, length);
    if (held && link.adjuster->leastEngagement && *held < *link.adjuster->leastEngagement - kNoAdjustment) {
        flag(choice, ChoiceProblem::thread, number, *held);
    }
}

void ChoiceSolver::readRide(HoleChoice& choice) const {
    choice.ride = trace_.ride.figures;
    if (!base_.known) {
        return;
    }
    choice.axleShift = trace_.ride.pose.x - base_.pose.x;
    const double pinion = choice[Figure::pinion];
    // Without a driveline the housing's own turn stands for the pinion: nose up is against the sense of
    // pitch.
    choice.pinionChange =
        std::isnan(pinion) || std::isnan(base_.pinion)
            ? base_.pose.pitch - trace_.ride.pose.pitch - choice[Figure::ground] + base_.ground
            : pinion - base_.pinion;
}

void ChoiceSolver::readTravel(HoleChoice& choice) const {
    const Station& droop = trace_.stations.front();
    const Station& bump = trace_.stations.back();
    choice.antiSquatDroop = droop[Figure::antiSquat];
    choice.antiSquatBump = bump[Figure::antiSquat];
    choice.pinionDroop = droop[Figure::pinion];
    choice.pinionBump = bump[Figure::pinion];
    if (rig_.car().driveline) {
        forEachUsable(trace_, [&choice](const Station& station) {
            choice.worstFrontJoint = worse(choice.worstFrontJoint, station[Figure::frontJoint]);
            choice.worstRearJoint = worse(choice.worstRearJoint, station[Figure::rearJoint]);
        });
    }
    if (!trace_.droopEnd.usable()) {
        flag(choice, ChoiceProblem::droopRunsOut, linkAtFault(trace_.droopEnd, rig_.linkage()),
             trace_.droopEnd.travel);
    }
    if (!trace_.bumpEnd.usable()) {
        flag(choice, ChoiceProblem::bumpRunsOut, linkAtFault(trace_.bumpEnd, rig_.linkage()),
             trace_.bumpEnd.travel);
    }
}

void ChoiceSolver::checkLimits(HoleChoice& choice) const {
    if (const auto& driveline = rig_.car().driveline; driveline && driveline->jointLimit) {
        if (choice.worstFrontJoint > *driveline->jointLimit) {
            flag(choice, ChoiceProblem::frontJoint, -1, choice.worstFrontJoint);
        }
        if (choice.worstRearJoint > *driveline->jointLimit) {
            flag(choice, ChoiceProblem::rearJoint, -1, choice.worstRearJoint);
        }
    }
}

void ChoiceSolver::sweepRods(HoleChoice& choice) const {
    RodSweep sweep(rig_.linkage().constraints, bolts_);
    forEachUsable(trace_, [&sweep](const Station& station) { sweep.visit(station.pose); });
    const std::vector<Constraint>& rods = rig_.linkage().constraints;
    double past = 0;
    for (std::size_t index = 0; index < rods.size(); ++index) {
        const double lean = sweep.lean(index);
        if (std::isnan(lean)) {
            continue;
        }
        const int link = rods[index].link;
        if (!(lean <= choice.worstRodEnd)) {
            choice.worstRodEnd = lean;
            choice.worstRodEndLink = link;
        }
        const auto& limit = rig_.original().links[static_cast<std::size_t>(link)].rodEndLimit;
        if (limit && lean > *limit && lean > past) {
            past = lean;
            flag(choice, ChoiceProblem::rodEnd, link, lean);
        }
    }
    if (const RodSweep::Crossing& closest = sweep.closest(); closest.distance < kCrossingDistance) {
        flag(choice, ChoiceProblem::crossing, rods[closest.one].link, closest.distance,
             rods[closest.other].link);
    }
}

double adjusterTurns(double lengthChange, const Adjuster& adjuster) {
    const double turns = lengthChange / (adjuster.pitch * adjuster.threadedEnds);
    return adjuster.threadedEnds == 1 ? std::round(2 * turns) / 2 : turns;
}

// A longer rod has its ends farther out, shared among the threaded ones.
std::optional<double> engagementAt(const Link& rod, double length) {
    if (!rod.adjuster || !rod.adjuster->engagement) {
        return std::nullopt;
    }
    const double measuredAt = rod.adjuster->engagementAt.value_or(builtLength(rod));
    return *rod.adjuster->engagement - (length - measuredAt) / rod.adjuster->threadedEnds;
}

bool isWanted(const HoleChoice& choice, const WantedWindow& wanted) {
    const double inverse = inverseDistance(choice);
    const double antiSquat = choice[Figure::antiSquat];
    const bool anyDistance = !wanted.icNear && !wanted.icFar;
    return choice.assembled &&
           (anyDistance || (inverse >= wanted.inverseFar() && inverse <= wanted.inverseNear())) &&
           antiSquat >= wanted.antiSquatLow && antiSquat <= wanted.antiSquatHigh;
}

double inverseDistance(const HoleChoice& choice) {
    const double distance = choice[Figure::icX];
    return std::isnan(distance) ? 0.0 : 1.0 / distance;
}

std::vector<std::size_t> rankChoices(std::span<const HoleChoice> choices,
                                     const std::optional<WantedWindow>& wanted) {
    struct Key {
        bool absent;
        bool outside;
        double pinion;
        int bolts;
        int adjusters;
        std::uint64_t index;
        std::size_t at;
        auto operator<=>(const Key&) const = default;
    };
    constexpr double kReadable = 0.1 * kRadiansPerDegree;
    std::vector<Key> keys;
    keys.reserve(choices.size());
    for (std::size_t at = 0; at < choices.size(); ++at) {
        const HoleChoice& choice = choices[at];
        const double change = std::isnan(choice.pinionChange) ? 0.0 : std::abs(choice.pinionChange);
        keys.push_back({!choice.assembled, wanted && !isWanted(choice, *wanted),
                        std::round(change / kReadable), choice.boltsMoved,
                        choice.adjustersTurned + choice.newRods, choice.index, at});
    }
    std::ranges::sort(keys, [](const Key& one, const Key& other) { return one < other; });
    std::vector<std::size_t> order(keys.size());
    std::ranges::transform(keys, order.begin(), &Key::at);
    return order;
}

}  // namespace bolthole
