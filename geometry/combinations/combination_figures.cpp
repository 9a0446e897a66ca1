#include "geometry/combinations/combination_figures.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "geometry/car/measuring_tool.h"
#include "geometry/combinations/rod_sweep.h"
#include "geometry/units/uncertainty_text.h"

namespace bolthole {

namespace {

void flag(HoleCombination& combination, CombinationProblem problem, int link, double value, int other = -1) {
    combination.problems =
        static_cast<std::uint16_t>(combination.problems | 1U << static_cast<unsigned>(problem));
    combination.details[static_cast<std::size_t>(problem)] = {
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

CombinationBase baseOf(const Car& car) {
    CombinationBase base;
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

bool tapeTells(const Car& car, double one, double other) {
    return std::abs(one - other) > kCoverage95 * car.tools.tape.value_or(kTapeUncertainty);
}

CombinationSolver::CombinationSolver(const Car& car, LengthTreatment treatment)
    : bolted_(car, treatment), base_(baseOf(car)) {
    placeBolts();
}

void CombinationSolver::placeBolts() {
    for (const Constraint& constraint : bolted_.linkage().constraints) {
        const Link& link = bolted_.original().links[static_cast<std::size_t>(constraint.link)];
        const bool mirror = link.side == Side::both && constraint.side == Side::right;
        const Eigen::Vector3d along = middleOf(link.chassis, mirror) - middleOf(link.axle, mirror);
        Eigen::Vector3d bolt = Eigen::Vector3d::UnitZ().cross(along);
        bolt = bolt.norm() > 0 ? bolt.normalized() : Eigen::Vector3d::UnitY();
        bolts_.push_back(bolt);
    }
}

void CombinationSolver::solve(const HoleUse& use, HoleCombination& combination) {
    combination = HoleCombination{};
    combination.use = use;
    const bool lengthsFound = bolted_.bolt(use);
    countWork(combination);
    if (lengthsFound) {
        computeTrace(bolted_.car(), bolted_.linkage(), trace_);
    } else {
        trace_.assembly = MoveReport{};
    }
    combination.assembled = lengthsFound && trace_.assembly.usable();
    if (!combination.assembled) {
        flag(combination, CombinationProblem::notAssembled, linkAtFault(trace_.assembly, bolted_.linkage()),
             kAbsent);
        return;
    }
    readRide(combination);
    readTravel(combination);
    sweepRods(combination);
    checkLimits(combination);
}

void CombinationSolver::countWork(HoleCombination& combination) const {
    combination.length.fill(kAbsent);
    combination.lengthChange.fill(kAbsent);
    for (std::size_t index = 0; index < bolted_.original().links.size(); ++index) {
        const Link& link = bolted_.original().links[index];
        const int number = static_cast<int>(index);
        for (const End end : {End::chassis, End::axle}) {
            combination.boltsMoved +=
                combination.use.of(number, end) != base_.use.of(number, end) ? sidesOf(link) : 0;
        }
        if (link.kind != LinkKind::rod) {
            continue;
        }
        combination.length[index] = *bolted_.car().links[index].length;
        combination.lengthChange[index] = combination.length[index] - builtLength(link);
        if (std::abs(combination.lengthChange[index]) > kNoAdjustment) {
            (link.adjuster ? combination.adjustersTurned : combination.newRods) += sidesOf(link);
        }
        checkAdjuster(index, combination);
    }
}

void CombinationSolver::checkAdjuster(std::size_t index, HoleCombination& combination) const {
    const Link& link = bolted_.original().links[index];
    if (!link.adjuster) {
        return;
    }
    const double length = combination.length[index];
    const int number = static_cast<int>(index);
    if (length < link.adjuster->shortest.value_or(length) - kNoAdjustment) {
        flag(combination, CombinationProblem::tooShort, number, length);
    }
    if (length > link.adjuster->longest.value_or(length) + kNoAdjustment) {
        flag(combination, CombinationProblem::tooLong, number, length);
    }
    const std::optional<double> held = engagementAt(link, length);
    if (held && link.adjuster->leastEngagement && *held < *link.adjuster->leastEngagement - kNoAdjustment) {
        flag(combination, CombinationProblem::thread, number, *held);
    }
}

void CombinationSolver::readRide(HoleCombination& combination) const {
    combination.ride = trace_.ride.figures;
    if (!base_.known) {
        return;
    }
    combination.axleShift = trace_.ride.pose.x - base_.pose.x;
    const double pinion = combination[Figure::pinion];
    // Without a driveline the housing's own turn stands for the pinion: nose up is against the sense of
    // pitch.
    combination.pinionChange =
        std::isnan(pinion) || std::isnan(base_.pinion)
            ? base_.pose.pitch - trace_.ride.pose.pitch - combination[Figure::ground] + base_.ground
            : pinion - base_.pinion;
}

void CombinationSolver::readTravel(HoleCombination& combination) const {
    const Station& droop = trace_.stations.front();
    const Station& bump = trace_.stations.back();
    combination.antiSquatDroop = droop[Figure::antiSquat];
    combination.antiSquatBump = bump[Figure::antiSquat];
    combination.pinionDroop = droop[Figure::pinion];
    combination.pinionBump = bump[Figure::pinion];
    if (bolted_.car().driveline) {
        forEachUsable(trace_, [&combination](const Station& station) {
            combination.worstFrontJoint = worse(combination.worstFrontJoint, station[Figure::frontJoint]);
            combination.worstRearJoint = worse(combination.worstRearJoint, station[Figure::rearJoint]);
        });
    }
    if (!trace_.droopEnd.usable()) {
        flag(combination, CombinationProblem::droopRunsOut, linkAtFault(trace_.droopEnd, bolted_.linkage()),
             trace_.droopEnd.travel);
    }
    if (!trace_.bumpEnd.usable()) {
        flag(combination, CombinationProblem::bumpRunsOut, linkAtFault(trace_.bumpEnd, bolted_.linkage()),
             trace_.bumpEnd.travel);
    }
}

void CombinationSolver::checkLimits(HoleCombination& combination) const {
    if (const auto& driveline = bolted_.car().driveline; driveline && driveline->jointLimit) {
        if (combination.worstFrontJoint > *driveline->jointLimit) {
            flag(combination, CombinationProblem::frontJoint, -1, combination.worstFrontJoint);
        }
        if (combination.worstRearJoint > *driveline->jointLimit) {
            flag(combination, CombinationProblem::rearJoint, -1, combination.worstRearJoint);
        }
    }
}

void CombinationSolver::sweepRods(HoleCombination& combination) const {
    RodSweep sweep(bolted_.linkage().constraints, bolts_);
    forEachUsable(trace_, [&sweep](const Station& station) { sweep.visit(station.pose); });
    const std::vector<Constraint>& rods = bolted_.linkage().constraints;
    double past = 0;
    for (std::size_t index = 0; index < rods.size(); ++index) {
        const double lean = sweep.lean(index);
        if (std::isnan(lean)) {
            continue;
        }
        const int link = rods[index].link;
        if (!(lean <= combination.worstRodEnd)) {
            combination.worstRodEnd = lean;
            combination.worstRodEndLink = link;
        }
        const auto& limit = bolted_.original().links[static_cast<std::size_t>(link)].rodEndLimit;
        if (limit && lean > *limit && lean > past) {
            past = lean;
            flag(combination, CombinationProblem::rodEnd, link, lean);
        }
    }
    if (const RodSweep::Crossing& closest = sweep.closest(); closest.distance < kCrossingDistance) {
        flag(combination, CombinationProblem::crossing, rods[closest.one].link, closest.distance,
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

bool meetsTarget(const HoleCombination& combination, const TargetWindow& target) {
    const double inverse = inverseDistance(combination);
    const double antiSquat = combination[Figure::antiSquat];
    const bool anyDistance = !target.icNear && !target.icFar;
    return combination.assembled &&
           (anyDistance || (inverse >= target.inverseFar() && inverse <= target.inverseNear())) &&
           antiSquat >= target.antiSquatLow && antiSquat <= target.antiSquatHigh;
}

double inverseDistance(const HoleCombination& combination) {
    const double distance = combination[Figure::icX];
    return std::isnan(distance) ? 0.0 : 1.0 / distance;
}

std::vector<std::size_t> rankCombinations(std::span<const HoleCombination> combinations,
                                          const std::optional<TargetWindow>& target) {
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
    keys.reserve(combinations.size());
    for (std::size_t at = 0; at < combinations.size(); ++at) {
        const HoleCombination& combination = combinations[at];
        const double change = std::isnan(combination.pinionChange) ? 0.0 : std::abs(combination.pinionChange);
        keys.push_back({!combination.assembled, target && !meetsTarget(combination, *target),
                        std::round(change / kReadable), combination.boltsMoved,
                        combination.adjustersTurned + combination.newRods, combination.index, at});
    }
    std::ranges::sort(keys, [](const Key& one, const Key& other) { return one < other; });
    std::vector<std::size_t> order(keys.size());
    std::ranges::transform(keys, order.begin(), &Key::at);
    return order;
}

}  // namespace bolthole
