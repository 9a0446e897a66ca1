#include "geometry/combinations/hole_combination.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <variant>

#include "geometry/algebra/symmetric_modes.h"
#include "geometry/car/fields.h"
#include "geometry/kinematics/axle_solver.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kSameLength = 1e-9;  // m
constexpr std::array kEnds{End::chassis, End::axle};

std::size_t asIndex(int number) {
    return static_cast<std::size_t>(number);
}

bool isUpperRod(const Link& link, double axleCenterHeight) {
    return link.kind == LinkKind::rod && roleOf(link, axleCenterHeight) == Role::upper;
}

int holeCount(const Link& link, End end) {
    return static_cast<int>(link.bracket(end).holes.size());
}

bool couldMirror(const Car& car, const Link& left, const Link& right) {
    return left.side == Side::left && right.side == Side::right && left.kind == right.kind &&
           roleOf(left, car.rearTireRadius) == roleOf(right, car.rearTireRadius) &&
           holeCount(left, End::chassis) == holeCount(right, End::chassis) &&
           holeCount(left, End::axle) == holeCount(right, End::axle);
}

}  // namespace

std::string_view nameOf(LengthTreatment treatment) {
    switch (treatment) {
        case LengthTreatment::keep:
            return phrase("keep");
        case LengthTreatment::refit:
            return phrase("refit");
        case LengthTreatment::uppers:
            break;
    }
    return phrase("uppers");
}

std::string wordsFor(LengthTreatment treatment) {
    switch (treatment) {
        case LengthTreatment::keep:
            return say("every rod keeps its length; the axle moves");
        case LengthTreatment::refit:
            return say("every rod is set so that the axle stays where it was measured");
        case LengthTreatment::uppers:
            break;
    }
    return say("uppers are refit so that the pinion keeps its angle; the others keep their lengths");
}

bool hasUpperRod(const Car& car) {
    return std::ranges::any_of(car.links,
                               [&](const Link& link) { return isUpperRod(link, car.rearTireRadius); });
}

LengthTreatment defaultTreatment(const Car& car) {
    const bool adjustable = std::ranges::all_of(car.links, [&](const Link& link) {
        return !isUpperRod(link, car.rearTireRadius) || link.adjuster.has_value();
    });
    return adjustable && hasUpperRod(car) ? LengthTreatment::uppers : LengthTreatment::keep;
}

LengthTreatment treatmentFor(const Car& car, std::optional<LengthTreatment> chosen) {
    const LengthTreatment treatment = chosen.value_or(defaultTreatment(car));
    return treatment == LengthTreatment::uppers && !hasUpperRod(car) ? LengthTreatment::keep : treatment;
}

HoleUse holesInUse(const Car& car) {
    HoleUse use;
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        for (const End end : kEnds) {
            use.set(static_cast<int>(link), end, car.links[link].bracket(end).use);
        }
    }
    return use;
}

std::vector<int> mirrorPartners(const Car& car) {
    std::vector<int> partners(car.links.size(), -1);
    for (std::size_t left = 0; left < car.links.size(); ++left) {
        for (std::size_t right = 0; right < car.links.size(); ++right) {
            if (partners[left] < 0 && partners[right] < 0 &&
                couldMirror(car, car.links[left], car.links[right])) {
                partners[left] = static_cast<int>(right);
                partners[right] = static_cast<int>(left);
            }
        }
    }
    return partners;
}

CombinationSpace::CombinationSpace(const Car& car, const CombinationScope& scope)
    : present_(holesInUse(car)) {
    const std::vector<int> partners =
        scope.tieSides ? mirrorPartners(car) : std::vector<int>(car.links.size(), -1);
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        const int index = static_cast<int>(link);
        const bool follows = partners[link] >= 0 && partners[link] < index;
        const bool held = !scope.crosswise && roleOf(car.links[link], car.rearTireRadius) == Role::crosswise;
        for (const End end : kEnds) {
            const int holes = holeCount(car.links[link], end);
            if (follows || held || holes == 1) {
                continue;
            }
            digits_.push_back({index, end, holes, partners[link]});
            const auto factor = static_cast<std::uint64_t>(holes);
            count_ = count_ > kCountLimit / factor ? kCountLimit : count_ * factor;
        }
    }
}

HoleUse CombinationSpace::at(std::uint64_t index) const {
    assert(index < count_);
    HoleUse use = present_;
    for (auto digit = digits_.rbegin(); digit != digits_.rend(); ++digit) {
        const auto base = static_cast<std::uint64_t>(digit->holes);
        const int hole = static_cast<int>(index % base);
        index /= base;
        use.set(digit->link, digit->end, hole);
        if (digit->tiedLink >= 0) {
            use.set(digit->tiedLink, digit->end, hole);
        }
    }
    return use;
}

std::optional<std::uint64_t> CombinationSpace::indexOf(const HoleUse& use) const {
    std::uint64_t index = 0;
    for (const Digit& digit : digits_) {
        index = index * static_cast<std::uint64_t>(digit.holes) +
                static_cast<std::uint64_t>(use.of(digit.link, digit.end));
    }
    if (index >= count_ || at(index) != use) {
        return std::nullopt;
    }
    return index;
}

BoltedCar::BoltedCar(const Car& car, LengthTreatment treatment)
    : original_(car), bolted_(car), treatment_(treatment) {
    for (const Link& link : car.links) {
        roles_.push_back(roleOf(link, car.rearTireRadius));
    }
    bolt(holesInUse(car));
}

void BoltedCar::setNumber(const FieldId& id, double value) {
    struct Writer {
        double value;
        void operator()(double* number) const { *number = value; }
        void operator()(std::optional<double>* number) const { *number = value; }
        void operator()(int*) const {}  // what is counted is not measured
        void operator()(std::monostate) const {}
    };
    std::visit(Writer{value}, slotOf(original_, id));
    std::visit(Writer{value}, slotOf(bolted_, id));
}

bool BoltedCar::bolt(const HoleUse& use) {
    useHoles(use);
    bool found = true;
    if (treatment_ == LengthTreatment::refit) {
        resetLengths();
    }
    buildLinkage(bolted_, linkage_);
    if (treatment_ == LengthTreatment::uppers) {
        found = fitUppers();
        buildLinkage(bolted_, linkage_);
    }
    return found;
}

void BoltedCar::useHoles(const HoleUse& use) {
    for (std::size_t index = 0; index < bolted_.links.size(); ++index) {
        const Link& as = original_.links[index];
        Link& link = bolted_.links[index];
        for (const End end : kEnds) {
            link.bracket(end).use = use.of(static_cast<int>(index), end);
        }
        if (link.kind == LinkKind::rod) {
            link.length = builtLength(as);
        } else {
            for (std::size_t hole = 0; hole < as.axle.holes.size(); ++hole) {
                link.axle.holes[hole].at = as.axle.holes[hole].at;
            }
        }
    }
}

void BoltedCar::resetLengths() {
    for (Link& link : bolted_.links) {
        if (link.kind == LinkKind::rod) {
            link.length = holeDistance(link);
        } else if (link.kind != LinkKind::guide) {
            link.axle.holes[asIndex(link.axle.use)].at = link.chassis.inUse().at;
        }
    }
}

namespace {

// What one constraint asks of x, y and yaw at a pose that keeps height, roll and pitch: its misfit, and the
// change of that with the three. Nothing is asked by an upper rod, which is yet to be set, nor in height.
struct PoseEquation {
    double misfit = 0;
    Eigen::Vector3d slope = Eigen::Vector3d::Zero();
};

PoseEquation poseEquation(const Constraint& held, const AxlePose& pose, const Eigen::Matrix3d& rotation,
                          bool isSet) {
    const Eigen::Vector3d arm = rotation * held.onAxle;
    const Eigen::Vector3d span = Eigen::Vector3d(pose.x, pose.y, pose.z) + arm - held.onChassis;
    PoseEquation row;
    Eigen::Vector3d direction = Eigen::Vector3d::Zero();
    if (held.kind == LinkKind::rod && isSet) {
        direction = span.normalized();
        row.misfit = span.norm() - held.length;
    } else if (held.kind == LinkKind::pivot) {
        direction = Eigen::Vector3d::UnitX();
        row.misfit = span.x();
    } else if (held.kind == LinkKind::guide) {
        direction = Eigen::Vector3d::UnitY();
        row.misfit = span.y();
    }
    row.slope << direction.x(), direction.y(), arm.x() * direction.y() - arm.y() * direction.x();
    return row;
}

}  // namespace

// The axle's position at ride with height, roll and pitch as measured: Newton's method on x, y and yaw over
// the links that keep their lengths. y moves for a crosswise link alone.
bool BoltedCar::fitPose(AxlePose& pose) const {
    constexpr int kMostSteps = 30;
    constexpr double kConverged = 1e-13;
    constexpr double kUnheld = 1e-12;  // square of a singular value against the largest's
    const bool located = std::ranges::find(roles_, Role::crosswise) != roles_.end();
    pose = {.z = linkage_.measuredHeight};
    for (int step = 0; step < kMostSteps; ++step) {
        const Eigen::Matrix3d rotation = pose.rotation();
        Eigen::Matrix3d normal = Eigen::Matrix3d::Zero();
        Eigen::Vector3d gradient = Eigen::Vector3d::Zero();
        double worst = 0;
        for (const Constraint& held : linkage_.constraints) {
            PoseEquation row = poseEquation(held, pose, rotation, role(held.link) != Role::upper);
            row.slope.y() *= located ? 1.0 : 0.0;
            normal += row.slope * row.slope.transpose();
            gradient += row.slope * row.misfit;
            worst = std::abs(row.misfit) <= worst ? worst : std::abs(row.misfit);
        }
        // What nothing holds stays where it is.
        const Eigen::Vector3d change = SymmetricModes<3>(normal).shortestSolution(gradient, kUnheld);
        if (!change.allFinite()) {
            return false;
        }
        pose.x -= change[0];
        pose.y -= change[1];
        pose.yaw -= change[2];
        if (change.lpNorm<Eigen::Infinity>() < kConverged) {
            return worst <= kLargestTravelBind;
        }
    }
    return false;
}

// Both rods of a pair share one length: the mean of the two that a yawed or shifted axle asks for.
bool BoltedCar::fitUppers() {
    AxlePose pose;
    if (!fitPose(pose)) {
        return false;
    }
    for (std::size_t index = 0; index < bolted_.links.size(); ++index) {
        Link& link = bolted_.links[index];
        if (link.kind != LinkKind::rod || roles_[index] != Role::upper) {
            continue;
        }
        double sum = 0;
        int count = 0;
        for (const Constraint& rod : linkage_.constraints) {
            if (rod.link == static_cast<int>(index)) {
                sum += (pose.carry(rod.onAxle) - rod.onChassis).norm();
                ++count;
            }
        }
        link.length = sum / count;
    }
    return true;
}

namespace {

std::string refuseCombination(const Car& car, const HoleUse& use, LengthTreatment treatment) {
    for (std::size_t link = 0; link < car.links.size(); ++link) {
        for (const End end : kEnds) {
            const int hole = use.of(static_cast<int>(link), end);
            if (hole >= holeCount(car.links[link], end)) {
                const std::string& name = car.links[link].name;
                return end == End::chassis ? say("'%1' has no hole %2 at the chassis", name, hole + 1)
                                           : say("'%1' has no hole %2 at the axle", name, hole + 1);
            }
        }
    }
    if (treatment == LengthTreatment::uppers && !hasUpperRod(car)) {
        return say("this car has no upper link to refit; expected keep or refit");
    }
    return {};
}

}  // namespace

CarResult carWithCombination(const Car& car, const HoleUse& use, LengthTreatment treatment) {
    if (std::string refusal = refuseCombination(car, use, treatment); !refusal.empty()) {
        return {std::nullopt, std::move(refusal)};
    }
    BoltedCar bolted(car, treatment);
    if (!bolted.bolt(use)) {
        return {std::nullopt,
                say("the lower rods can't be assembled at ride in these holes with their lengths kept")};
    }
    Car chosen = bolted.car();
    for (std::size_t index = 0; index < chosen.links.size(); ++index) {
        const Link& before = car.links[index];
        Link& after = chosen.links[index];
        if (after.length && std::abs(*after.length - builtLength(before)) > kSameLength) {
            Link pinned = before;
            pinEngagement(pinned, false);
            after.adjuster = pinned.adjuster;
        }
        if (!before.length && after.length && std::abs(*after.length - holeDistance(after)) <= kSameLength) {
            after.length.reset();
        }
    }
    return {std::move(chosen), {}};
}

void pinEngagement(Link& rod, bool measuredNow) {
    if (rod.adjuster && (measuredNow || (rod.adjuster->engagement && !rod.adjuster->engagementAt))) {
        rod.adjuster->engagementAt = builtLength(rod);
    }
}

}  // namespace bolthole
