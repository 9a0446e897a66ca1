#include "geometry/fields.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace bolthole {

namespace {

constexpr double kRightAngle = 90.0 * kRadiansPerDegree;
constexpr double kLargestMass = 1e6;        // kg
constexpr double kLargestFrontRatio = 100;  // keeps the front axle's travel a sane length
constexpr double kLargestPitch = 0.1;       // m
constexpr double kLargestPercent = 10'000;
constexpr double kLargestEngagement = 1.0;  // m

constexpr Limits kPositiveLength{0, kMaxLength, true, false, "a length above 0 and at most 100 m"};
constexpr Limits kTravelLength{0, kMaxLength, false, false, "a length from 0 to 100 m"};
constexpr Limits kPosition{-kMaxLength, kMaxLength, false, false, "a position within 100 m of the origin"};
constexpr Limits kWeight{0, kLargestMass, true, false, "a weight above 0 and at most 1000 metric tons"};
constexpr Limits kSteps{kMinSteps, kMaxSteps, false, false, "a whole number from 2 to 100000"};
constexpr Limits kRatio{-kLargestFrontRatio, kLargestFrontRatio, false, false, "a number from -100 to 100"};
constexpr Limits kPitch{0, kLargestPitch, true, false, "a thread pitch above 0 and at most 100 mm"};
constexpr Limits kEngagement{0, kLargestEngagement, false, false, "a length of thread from 0 to 1 m"};
constexpr Limits kJointLimit{0, kRightAngle, true, true, "an angle above 0 and below 90 degrees"};
constexpr Limits kDistance{-kMaxLength, kMaxLength, false, false, "a distance within 100 m"};
constexpr Limits kWantedPercent{-kLargestPercent, kLargestPercent, false, false,
                                "a percentage from -10000 to 10000"};
constexpr Limits kEnds{1, 2, false, false, "1 or 2"};
constexpr Limits kAngle{-kRightAngle, kRightAngle, true, true, "an angle between -90 and 90 degrees"};

// In the order of Field.
constexpr std::array kRules{
    FieldRule{Field::wheelbase, Quantity::length, Scope::car, false, "wheelbase", "wheelbase",
              &kPositiveLength},
    FieldRule{Field::rearTireRadius, Quantity::length, Scope::car, false, "rear_tire_radius",
              "rear tire radius", &kPositiveLength},
    FieldRule{Field::frontTireRadius, Quantity::length, Scope::car, false, "front_tire_radius",
              "front tire radius", &kPositiveLength},
    FieldRule{Field::rearTrack, Quantity::length, Scope::car, false, "rear_track", "rear track",
              &kPositiveLength},
    FieldRule{Field::leftFrontWeight, Quantity::mass, Scope::car, false, "corner_weights.left_front",
              "left front weight", &kWeight},
    FieldRule{Field::rightFrontWeight, Quantity::mass, Scope::car, false, "corner_weights.right_front",
              "right front weight", &kWeight},
    FieldRule{Field::leftRearWeight, Quantity::mass, Scope::car, false, "corner_weights.left_rear",
              "left rear weight", &kWeight},
    FieldRule{Field::rightRearWeight, Quantity::mass, Scope::car, false, "corner_weights.right_rear",
              "right rear weight", &kWeight},
    FieldRule{Field::cgHeight, Quantity::length, Scope::car, false, "cg_height", "CG height",
              &kPositiveLength},
    FieldRule{Field::bump, Quantity::length, Scope::car, false, "travel.bump", "bump travel", &kTravelLength},
    FieldRule{Field::droop, Quantity::length, Scope::car, false, "travel.droop", "droop travel",
              &kTravelLength},
    FieldRule{Field::steps, Quantity::count, Scope::car, false, "travel.steps", "travel steps", &kSteps},
    FieldRule{Field::frontRatio, Quantity::ratio, Scope::car, false, "travel.front_ratio",
              "front travel ratio", &kRatio},
    FieldRule{Field::holeAt, Quantity::length, Scope::hole, true, "at", "hole", &kPosition},
    FieldRule{Field::linkLength, Quantity::length, Scope::link, false, "length", "length", &kPositiveLength},
    FieldRule{Field::adjusterPitch, Quantity::length, Scope::link, false, "adjuster.pitch", "thread pitch",
              &kPitch},
    FieldRule{Field::adjusterEnds, Quantity::count, Scope::link, false, "adjuster.ends", "threaded ends",
              &kEnds},
    FieldRule{Field::adjusterShortest, Quantity::length, Scope::link, false, "adjuster.shortest",
              "shortest length", &kPositiveLength},
    FieldRule{Field::adjusterLongest, Quantity::length, Scope::link, false, "adjuster.longest",
              "longest length", &kPositiveLength},
    FieldRule{Field::adjusterEngagement, Quantity::length, Scope::link, false, "adjuster.engagement",
              "thread engagement", &kEngagement},
    FieldRule{Field::adjusterEngagementAt, Quantity::length, Scope::link, false, "adjuster.engagement_at",
              "length at that engagement", &kPositiveLength},
    FieldRule{Field::adjusterLeastEngagement, Quantity::length, Scope::link, false,
              "adjuster.least_engagement", "least thread engagement", &kEngagement},
    FieldRule{Field::rodEndLimit, Quantity::angle, Scope::link, false, "rod_end_limit", "rod-end angle limit",
              &kJointLimit},
    FieldRule{Field::pinionAngle, Quantity::angle, Scope::driveline, false, "pinion_angle", "pinion angle",
              &kAngle},
    FieldRule{Field::pinionJoint, Quantity::length, Scope::driveline, true, "pinion_joint", "pinion joint",
              &kPosition},
    FieldRule{Field::outputAngle, Quantity::angle, Scope::driveline, false, "output_angle", "output angle",
              &kAngle},
    FieldRule{Field::outputJoint, Quantity::length, Scope::driveline, true, "output_joint", "output joint",
              &kPosition},
    FieldRule{Field::jointLimit, Quantity::angle, Scope::driveline, false, "joint_limit",
              "driveshaft joint angle limit", &kJointLimit},
    FieldRule{Field::wantedIcNear, Quantity::length, Scope::wanted, false, "ic_near",
              "nearest wanted IC distance", &kDistance},
    FieldRule{Field::wantedIcFar, Quantity::length, Scope::wanted, false, "ic_far",
              "farthest wanted IC distance", &kDistance},
    FieldRule{Field::wantedLow, Quantity::percent, Scope::wanted, false, "anti_squat_low",
              "least wanted anti-squat", &kWantedPercent},
    FieldRule{Field::wantedHigh, Quantity::percent, Scope::wanted, false, "anti_squat_high",
              "most wanted anti-squat", &kWantedPercent},
};

constexpr bool rulesAreInOrder() {
    for (std::size_t index = 0; index < kRules.size(); ++index) {
        if (kRules[index].field != static_cast<Field>(index)) {
            return false;
        }
    }
    return kRules.size() == static_cast<std::size_t>(Field::wantedHigh) + 1;
}
static_assert(rulesAreInOrder());

bool isIndexOf(int index, std::size_t size) {
    return index >= 0 && static_cast<std::size_t>(index) < size;
}

template <class CarT>
PartOf<CarT, Link>* linkIn(CarT& car, int link) {
    return isIndexOf(link, car.links.size()) ? &car.links[static_cast<std::size_t>(link)] : nullptr;
}

template <class CarT>
PartOf<CarT, Hole>* holeIn(CarT& car, int link, End end, int hole) {
    auto* found = linkIn(car, link);
    if (found == nullptr || !isIndexOf(hole, found->bracket(end).holes.size())) {
        return nullptr;
    }
    return &found->bracket(end).holes[static_cast<std::size_t>(hole)];
}

template <class CarT>
Slot<CarT> slotOfCar(CarT& car, Field field) {
    switch (field) {
        case Field::wheelbase:
            return &car.wheelbase;
        case Field::rearTireRadius:
            return &car.rearTireRadius;
        case Field::frontTireRadius:
            return &car.frontTireRadius;
        case Field::rearTrack:
            return &car.rearTrack;
        case Field::leftFrontWeight:
            return &car.cornerWeights.leftFront;
        case Field::rightFrontWeight:
            return &car.cornerWeights.rightFront;
        case Field::leftRearWeight:
            return &car.cornerWeights.leftRear;
        case Field::rightRearWeight:
            return &car.cornerWeights.rightRear;
        case Field::cgHeight:
            return &car.cgHeight;
        case Field::bump:
            return &car.travel.bump;
        case Field::droop:
            return &car.travel.droop;
        case Field::steps:
            return &car.travel.steps;
        case Field::frontRatio:
            return &car.travel.frontRatio;
        default:
            return {};
    }
}

template <class CarT>
Slot<CarT> slotOfAdjuster(PartOf<CarT, Adjuster>& adjuster, Field field) {
    switch (field) {
        case Field::adjusterPitch:
            return &adjuster.pitch;
        case Field::adjusterEnds:
            return &adjuster.threadedEnds;
        case Field::adjusterShortest:
            return &adjuster.shortest;
        case Field::adjusterLongest:
            return &adjuster.longest;
        case Field::adjusterEngagement:
            return &adjuster.engagement;
        case Field::adjusterEngagementAt:
            return &adjuster.engagementAt;
        default:
            return &adjuster.leastEngagement;
    }
}

template <class CarT>
Slot<CarT> slotOfLink(CarT& car, const FieldId& id) {
    auto* link = linkIn(car, id.link);
    if (link == nullptr) {
        return {};
    }
    if (id.field == Field::linkLength) {
        return &link->length;
    }
    if (id.field == Field::rodEndLimit) {
        return &link->rodEndLimit;
    }
    if (!link->adjuster) {
        return {};
    }
    return slotOfAdjuster<CarT>(*link->adjuster, id.field);
}

template <class CarT>
Slot<CarT> slotOfDriveline(CarT& car, const FieldId& id) {
    if (!car.driveline) {
        return {};
    }
    switch (id.field) {
        case Field::pinionAngle:
            return &car.driveline->pinionAngle;
        case Field::outputAngle:
            return &car.driveline->outputAngle;
        case Field::jointLimit:
            return &car.driveline->jointLimit;
        case Field::pinionJoint:
            return &car.driveline->pinionJoint[id.axis];
        default:
            return &car.driveline->outputJoint[id.axis];
    }
}

template <class CarT>
Slot<CarT> slotOfWanted(CarT& car, Field field) {
    if (!car.wanted) {
        return {};
    }
    switch (field) {
        case Field::wantedIcNear:
            return &car.wanted->icNear;
        case Field::wantedIcFar:
            return &car.wanted->icFar;
        case Field::wantedLow:
            return &car.wanted->antiSquatLow;
        default:
            return &car.wanted->antiSquatHigh;
    }
}

template <class CarT>
Slot<CarT> slotIn(CarT& car, const FieldId& id) {
    const FieldRule& rule = ruleOf(id.field);
    if (rule.hasAxis && !isIndexOf(id.axis, 3)) {
        return {};
    }
    switch (rule.scope) {
        case Scope::link:
            return slotOfLink(car, id);
        case Scope::driveline:
            return slotOfDriveline(car, id);
        case Scope::wanted:
            return slotOfWanted(car, id.field);
        case Scope::hole: {
            auto* hole = holeIn(car, id.link, id.end, id.hole);
            return hole == nullptr ? Slot<CarT>{} : Slot<CarT>{&hole->at[id.axis]};
        }
        case Scope::car:
            break;
    }
    return slotOfCar(car, id.field);
}

std::string indexed(std::string_view name, int index) {
    return std::string(name) + "[" + std::to_string(index) + "]";
}

}  // namespace

const FieldRule& ruleOf(Field field) {
    return kRules[static_cast<std::size_t>(field)];
}

Slot<Car> slotOf(Car& car, const FieldId& id) {
    return slotIn(car, id);
}

Slot<const Car> slotOf(const Car& car, const FieldId& id) {
    return slotIn(car, id);
}

const Link* findLink(const Car& car, int link) {
    return linkIn(car, link);
}

const Hole* findHole(const Car& car, int link, End end, int hole) {
    return holeIn(car, link, end, hole);
}

std::string linkPath(int link) {
    return indexed("links", link);
}

std::string bracketPath(int link, End end) {
    return linkPath(link) + "." + std::string(endWords(end));
}

std::string linkWords(const Car& car, int link) {
    const Link* found = findLink(car, link);
    return found != nullptr && !found->name.empty() ? found->name : "link " + std::to_string(link + 1);
}

std::string holeWords(const Car& car, int link, End end, int hole) {
    const Hole* found = findHole(car, link, end, hole);
    const bool isNamed = found != nullptr && !found->name.empty();
    return linkWords(car, link) + " " + std::string(endWords(end)) + " hole " +
           (isNamed ? "'" + found->name + "'" : std::to_string(hole + 1));
}

std::string_view endWords(End end) {
    return end == End::chassis ? "chassis" : "axle";
}

Quantity quantityOf(Field field) {
    return ruleOf(field).quantity;
}

std::optional<double> numberAt(const Car& car, const FieldId& id) {
    struct Reader {
        std::optional<double> operator()(std::monostate) const { return std::nullopt; }
        std::optional<double> operator()(const double* number) const { return *number; }
        std::optional<double> operator()(const int* number) const { return *number; }
        std::optional<double> operator()(const std::optional<double>* number) const { return *number; }
    };
    return std::visit(Reader{}, slotOf(car, id));
}

std::string jsonPath(const FieldId& id) {
    const FieldRule& rule = ruleOf(id.field);
    std::string path;
    if (rule.scope == Scope::link) {
        path = linkPath(id.link) + ".";
    } else if (rule.scope == Scope::hole) {
        path = bracketPath(id.link, id.end) + ".holes";
        if (id.hole < 0) {
            return path;
        }
        path = indexed(path, id.hole) + ".";
    } else if (rule.scope == Scope::driveline) {
        path = "driveline.";
    } else if (rule.scope == Scope::wanted) {
        path = "wanted.";
    }
    path += rule.path;
    return rule.hasAxis && id.axis >= 0 ? indexed(path, id.axis) : path;
}

std::string refusal(const FieldId& id, double value) {
    const FieldRule& rule = ruleOf(id.field);
    const Limits& limits = *rule.limits;
    const bool high = limits.highIsOpen ? value < limits.high : value <= limits.high;
    const bool low = limits.lowIsOpen ? value > limits.low : value >= limits.low;
    const bool whole = rule.quantity != Quantity::count || value == std::floor(value);
    return low && high && whole ? std::string() : std::string(limits.expected);
}

}  // namespace bolthole
