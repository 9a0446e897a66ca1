// The table of geometry/car/fields.h: its limits, and how its rows are read. The rows stand in
// geometry/car/field_rows_*.h.
#include <array>
#include <vector>

#include "geometry/car/fields.h"

namespace bolthole {

namespace {

constexpr double kRightAngle = 90.0 * kRadiansPerDegree;
constexpr double kLargestMass = 1e6;        // kg
constexpr double kLargestFrontRatio = 100;  // keeps the front axle's travel a sane length
constexpr double kLargestPitch = 0.1;       // m
constexpr double kLargestPercent = 10'000;
constexpr double kLargestEngagement = 1.0;  // m

constexpr Limits kPositiveLength{
    0, kMaxLength, true, false, phrase("a length above 0 and at most 100 m"), phrase("a length")};
constexpr Limits kTravelLength{
    0, kMaxLength, false, false, phrase("a length from 0 to 100 m"), phrase("a length")};
constexpr Limits kPosition{
    -kMaxLength,         kMaxLength, false, false, phrase("a position within 100 m of the origin"),
    phrase("a position")};
constexpr Limits kWeight{0,
                         kLargestMass,
                         true,
                         false,
                         phrase("a weight above 0 and at most 1000 metric tons"),
                         phrase("a weight")};
constexpr Limits kSteps{
    kMinSteps, kMaxSteps, false, false, phrase("a whole number from 2 to 100000"), phrase("a whole number")};
constexpr Limits kRatio{
    -kLargestFrontRatio, kLargestFrontRatio, false, false, phrase("a number from -100 to 100"),
    phrase("a number")};
constexpr Limits kPitch{0,
                        kLargestPitch,
                        true,
                        false,
                        phrase("a thread pitch above 0 and at most 100 mm"),
                        phrase("a thread pitch")};
constexpr Limits kEngagement{0,
                             kLargestEngagement,
                             false,
                             false,
                             phrase("a length of thread from 0 to 1 m"),
                             phrase("a length of thread")};
constexpr Limits kJointLimit{
    0, kRightAngle, true, true, phrase("an angle above 0 and below 90 degrees"), phrase("an angle")};
constexpr Limits kDistance{-kMaxLength,         kMaxLength, false, false, phrase("a distance within 100 m"),
                           phrase("a distance")};
constexpr Limits kTargetPercent{
    -kLargestPercent,      kLargestPercent, false, false, phrase("a percentage from -10000 to 10000"),
    phrase("a percentage")};
constexpr Limits kEnds{1, 2, false, false, phrase("1 or 2"), phrase("1 or 2")};
constexpr Limits kWeightUncertainty{
    0, 1000, true, false, phrase("a weight above 0 and at most 1000 kg"), phrase("a weight")};
constexpr Limits kPadHeight{-1, 1, false, false, phrase("a height from -1 to 1 m"), phrase("a height")};
constexpr Limits kRate{
    0, 5e7, true, false, phrase("a rate above 0 and at most 50000 N/mm"), phrase("a rate")};
constexpr Limits kPressure{
    0, 1e6, true, false, phrase("a pressure above 0 and at most 1000 kPa"), phrase("a pressure")};
constexpr Limits kRollRate{0,
                           800'000 / kRadiansPerDegree,
                           true,
                           false,
                           phrase("a roll rate above 0 and at most 800000 N m/deg"),
                           phrase("a roll rate")};
constexpr Limits kAcceleration{
    0, 10, true, false, phrase("a number of g above 0 and at most 10"), phrase("a number of g")};
constexpr Limits kSeconds{0, 60, true, false, phrase("a time above 0 and at most 60 s"), phrase("a time")};
constexpr Limits kTorque{
    0, 1e5, true, false, phrase("a torque above 0 and at most 100000 N m"), phrase("a torque")};
constexpr Limits kMultiple{
    1, 10, false, false, phrase("a multiplication from 1 to 10"), phrase("a multiplication")};
constexpr Limits kGear{0, 100, true, false, phrase("a ratio above 0 and at most 100"), phrase("a ratio")};
constexpr Limits kEfficiency{
    0, 100, true, false, phrase("a percentage above 0 and at most 100"), phrase("a percentage")};
constexpr Limits kFriction{
    0, 10, true, false, phrase("a friction above 0 and at most 10"), phrase("a friction")};
constexpr Limits kForce{-1e7, 1e7, false, false, phrase("a force within 10000 kN"), phrase("a force")};
constexpr Limits kPositiveForce{
    0, 5e7, true, false, phrase("a force above 0 and at most 50000 kN"), phrase("a force")};
constexpr Limits kLoadFactor{1, 100, false, false, phrase("a factor from 1 to 100"), phrase("a factor")};
constexpr Limits kShare{0, 100, false, false, phrase("a percentage from 0 to 100"), phrase("a percentage")};
constexpr Limits kSpeed{
    0, 50'000 * kRpm, true, false, phrase("a speed above 0 and at most 50000 rpm"), phrase("a speed")};
constexpr Limits kInertia{0,
                          1e6,
                          true,
                          false,
                          phrase("a moment of inertia above 0 and at most 1000000 kg m^2"),
                          phrase("a moment of inertia")};
constexpr Limits kSmallInertia{0,
                               1e6,
                               false,
                               false,
                               phrase("a moment of inertia from 0 to 1000000 kg m^2"),
                               phrase("a moment of inertia")};
constexpr Limits kShortTime{0, 10, false, false, phrase("a time from 0 to 10 s"), phrase("a time")};
constexpr Limits kDamping{
    0, 1e6, false, false, phrase("a damping from 0 to 1000 N s/mm"), phrase("a damping")};
constexpr Limits kCouplingRatio{0, 1, true, true, phrase("a ratio above 0 and below 1"), phrase("a ratio")};
constexpr Limits kMotionRatio{
    0, 10, true, false, phrase("a ratio above 0 and at most 10"), phrase("a ratio")};
constexpr Limits kClick{-kMaxClick,
                        kMaxClick,
                        false,
                        false,
                        phrase("a whole number from -1000 to 1000"),
                        phrase("a whole number")};
constexpr Limits kVolume{
    0, 10, true, false, phrase("a volume above 0 and at most 10000 L"), phrase("a volume")};
constexpr Limits kDensity{
    0, 25'000, true, false, phrase("a density above 0 and at most 25 kg/L"), phrase("a density")};
constexpr Limits kAngle{
    -kRightAngle, kRightAngle, true, true, phrase("an angle between -90 and 90 degrees"), phrase("an angle")};

constexpr Limits kLengthUncertainty{
    0, 1, false, false, phrase("an uncertainty from 0 to 1 m"), phrase("an uncertainty")};
constexpr Limits kAngleUncertainty{0,
                                   45 * kRadiansPerDegree,
                                   false,
                                   false,
                                   phrase("an uncertainty from 0 to 45 degrees"),
                                   phrase("an uncertainty")};
constexpr Limits kMassUncertainty{
    0, 1000, false, false, phrase("an uncertainty from 0 to 1000 kg"), phrase("an uncertainty")};
constexpr Limits kOtherUncertainty{
    0, 1e7, false, false, phrase("an uncertainty of 0 or more"), phrase("an uncertainty")};

template <class T>
constexpr bool kIsPoint = std::is_same_v<T, EnteredPoint> || std::is_same_v<T, Eigen::Vector3d>;

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};

/// From `from`, which may be null, along the members; through an optional that is empty: null.
template <auto step, auto... rest, class T>
auto* follow(T* from) {
    auto* next = from == nullptr ? nullptr : &((*from).*step);
    if constexpr (sizeof...(rest) == 0) {
        return next;
    } else if constexpr (IsOptional<std::remove_cvref_t<decltype(*next)>>::value) {
        return follow<rest...>(next != nullptr && next->has_value() ? &**next : nullptr);
    } else {
        return follow<rest...>(next);
    }
}

template <class CarT, class T>
Slot<CarT> slotAt(T* number, int axis) {
    using Plain = std::remove_cv_t<T>;
    const bool isAxis = axis >= 0 && axis < 3;
    if (number == nullptr || (kIsPoint<Plain> && !isAxis)) {
        return {};
    }
    if constexpr (std::is_same_v<Plain, EnteredPoint>) {
        return &number->at[static_cast<std::size_t>(axis)];
    } else if constexpr (std::is_same_v<Plain, Eigen::Vector3d>) {
        return &(*number)[axis];
    } else {
        return number;
    }
}

template <class Owner, class T>
Owner ownerOf(T Owner::*);
template <class Owner, class T>
T memberOf(T Owner::*);

template <class CarT, auto first, auto... rest>
Slot<CarT> slotOn(const Part<CarT>& part, int axis) {
    auto* const* root = std::get_if<PartOf<CarT, decltype(ownerOf(first))>*>(&part);
    return root == nullptr ? Slot<CarT>{} : slotAt<CarT>(follow<first, rest...>(*root), axis);
}

/// The last of some members.
template <auto first, auto... rest>
constexpr auto lastOf() {
    if constexpr (sizeof...(rest) == 0) {
        return first;
    } else {
        return lastOf<rest...>();
    }
}

template <class T>
constexpr FieldAccess accessTo(Slot<Car> (*slot)(const Part<Car>&, int),
                               Slot<const Car> (*constSlot)(const Part<const Car>&, int)) {
    return {slot, constSlot, kIsPoint<T>, std::is_same_v<T, EnteredPoint> || IsOptional<T>::value};
}

/// The members that lead to a number from its part.
template <auto... members>
constexpr FieldAccess kAt = accessTo<decltype(memberOf(lastOf<members...>()))>(
    &slotOn<Car, members...>, &slotOn<const Car, members...>);

#define BOLTHOLE_FIELD(name, ...) FieldRule{.field = Field::name, __VA_ARGS__},
constexpr std::array kRules{
#include "geometry/car/field_rows.h"
#include "geometry/units/say.h"
};
#undef BOLTHOLE_FIELD

std::vector<const FieldRule*> listRules(Scope scope) {
    std::vector<const FieldRule*> rules;
    for (const FieldRule& rule : kRules) {
        if (rule.scope == scope) {
            rules.push_back(&rule);
        }
    }
    return rules;
}

}  // namespace

std::span<const FieldRule> fieldRules() {
    return kRules;
}

std::span<const FieldRule* const> rulesOf(Scope scope) {
    static const std::array<std::vector<const FieldRule*>, 9> rules = [] {
        std::array<std::vector<const FieldRule*>, 9> lists;
        for (const Scope each : {Scope::car, Scope::link, Scope::hole, Scope::driveline, Scope::target,
                                 Scope::ballast, Scope::spring, Scope::mount, Scope::tool}) {
            lists[static_cast<std::size_t>(each)] = listRules(each);
        }
        return lists;
    }();
    return rules[static_cast<std::size_t>(scope)];
}

const FieldRule& ruleOf(Field field) {
    return kRules[static_cast<std::size_t>(field)];  // names and rows are read from the same files
}

const Limits& uncertaintyLimits(Field field) {
    switch (quantityOf(field)) {
        case Quantity::length:
            return kLengthUncertainty;
        case Quantity::angle:
            return kAngleUncertainty;
        case Quantity::mass:
            return kMassUncertainty;
        default:
            return kOtherUncertainty;
    }
}

bool mayHaveUncertainty(Field field) {
    return ruleOf(field).isMeasured;
}

}  // namespace bolthole
