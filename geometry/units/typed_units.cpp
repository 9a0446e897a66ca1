#include "geometry/units/typed_units.h"

#include <algorithm>
#include <array>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr TypedUnit kPound{"lb", Quantity::mass, 45359237, 100'000'000};
constexpr TypedUnit kKilogram{"kg", Quantity::mass, 1, 1};
constexpr TypedUnit kDegree{"deg", Quantity::angle, kRadiansPerDegree, 1};

constexpr TypedUnit kPoundForce{"lbf", Quantity::force, kNewtonsPerPoundForce, 1};
constexpr TypedUnit kPoundFoot{"lbf-ft", Quantity::torque, kNewtonsPerPoundForce * 1524, 5000};
constexpr TypedUnit kNewtonMetre{"n-m", Quantity::torque, 1, 1};
constexpr TypedUnit kPoundsPerInch{"lbf/in", Quantity::rate, kNewtonsPerPoundForce * 5000, 127};
constexpr TypedUnit kPoundFootPerDegree{"lbf-ft/deg", Quantity::rollRate, kNewtonsPerPoundForce * 1524,
                                        5000 * kRadiansPerDegree};
constexpr TypedUnit kNewtonMetrePerDegree{"n-m/deg", Quantity::rollRate, 1, kRadiansPerDegree};
constexpr TypedUnit kGallon{"gal", Quantity::volume, kCubicMetresPerGallon, 1};
constexpr TypedUnit kLiter{"l", Quantity::volume, 1, 1000};
constexpr TypedUnit kPoundsPerGallon{"lb/gal", Quantity::density, kKilogramsPerPound, kCubicMetresPerGallon};
constexpr TypedUnit kSecond{"s", Quantity::time, 1, 1};
constexpr TypedUnit kTurns{"rpm", Quantity::speed, kRpm, 1};

constexpr TypedUnit named(std::string_view name, TypedUnit unit) {
    unit.name = name;
    return unit;
}

constexpr std::array kUnits{
    kInchUnit,
    named("inch", kInchUnit),
    named("inches", kInchUnit),
    named("\"", kInchUnit),
    kFootUnit,
    named("foot", kFootUnit),
    named("feet", kFootUnit),
    named("'", kFootUnit),
    kMillimetreUnit,
    named("millimeter", kMillimetreUnit),
    named("millimeters", kMillimetreUnit),
    named("millimetre", kMillimetreUnit),
    named("millimetres", kMillimetreUnit),
    TypedUnit{"cm", Quantity::length, 1, 100},
    TypedUnit{"m", Quantity::length, 1, 1},
    kDegree,
    named("degree", kDegree),
    named("degrees", kDegree),
    kPound,
    named("lbs", kPound),
    named("pound", kPound),
    named("pounds", kPound),
    kKilogram,
    named("kgs", kKilogram),
    named("kilogram", kKilogram),
    named("kilograms", kKilogram),
    TypedUnit{"%", Quantity::percent, 1, 1},
    TypedUnit{"percent", Quantity::percent, 1, 1},
    kPoundForce,
    named("lb", kPoundForce),  // as the trade writes it; which of the two is meant, the field says
    named("lbs", kPoundForce),
    TypedUnit{"n", Quantity::force, 1, 1},
    TypedUnit{"kn", Quantity::force, 1000, 1},
    kPoundFoot,
    named("lb-ft", kPoundFoot),
    named("lbft", kPoundFoot),
    named("ft-lb", kPoundFoot),
    named("ft-lbf", kPoundFoot),
    kNewtonMetre,
    named("nm", kNewtonMetre),
    kPoundsPerInch,
    named("lb/in", kPoundsPerInch),
    TypedUnit{"n/mm", Quantity::rate, 1000, 1},
    TypedUnit{"n/m", Quantity::rate, 1, 1},
    kPoundFootPerDegree,
    named("lb-ft/deg", kPoundFootPerDegree),
    kNewtonMetrePerDegree,
    named("nm/deg", kNewtonMetrePerDegree),
    kGallon,
    named("gallon", kGallon),
    named("gallons", kGallon),
    kLiter,
    named("liter", kLiter),
    named("liters", kLiter),
    named("litre", kLiter),
    named("litres", kLiter),
    kPoundsPerGallon,
    TypedUnit{"kg/l", Quantity::density, 1000, 1},
    kSecond,
    named("sec", kSecond),
    named("seconds", kSecond),
    kTurns,
    TypedUnit{"lb-ft2", Quantity::inertia, kKilogramsPerPound * 1524 * 1524, 5000.0 * 5000.0},
    TypedUnit{"kg-m2", Quantity::inertia, 1, 1},
    TypedUnit{"lbf-s/in", Quantity::damping, kNewtonsPerPoundForce * 5000, 127},
    TypedUnit{"in/s", Quantity::shaftSpeed, 127, 5000},
    TypedUnit{"mm/s", Quantity::shaftSpeed, 1, 1000},
    TypedUnit{"n-s/mm", Quantity::damping, 1000, 1},
    TypedUnit{"psi", Quantity::pressure, kNewtonsPerPoundForce * 5000 * 5000, 127.0 * 127.0},
    TypedUnit{"kpa", Quantity::pressure, 1000, 1},
    TypedUnit{"bar", Quantity::pressure, 100'000, 1},
};

/// Name of the unit a quantity is shown in, of those that no fraction is typed for.
std::string_view shownName(Quantity quantity, bool inch) {
    switch (quantity) {
        case Quantity::force:
            return inch ? "lbf" : "n";
        case Quantity::torque:
            return inch ? "lbf-ft" : "n-m";
        case Quantity::rate:
            return inch ? "lbf/in" : "n/mm";
        case Quantity::rollRate:
            return inch ? "lbf-ft/deg" : "n-m/deg";
        case Quantity::volume:
            return inch ? "gal" : "l";
        case Quantity::density:
            return inch ? "lb/gal" : "kg/l";
        case Quantity::time:
            return "s";
        case Quantity::inertia:
            return inch ? "lb-ft2" : "kg-m2";
        case Quantity::shaftSpeed:
            return inch ? "in/s" : "mm/s";
        case Quantity::damping:
            return inch ? "lbf-s/in" : "n-s/mm";
        case Quantity::pressure:
            return inch ? "psi" : "kpa";
        default:
            return "rpm";
    }
}

}  // namespace

const TypedUnit* findUnit(std::string_view name, Quantity wanted) {
    const auto* found = std::ranges::find_if(
        kUnits, [&](const TypedUnit& unit) { return unit.name == name && unit.quantity == wanted; });
    if (found == kUnits.end()) {
        found = std::ranges::find(kUnits, name, &TypedUnit::name);
    }
    return found == kUnits.end() ? nullptr : &*found;
}

const TypedUnit& shownTypedUnit(Quantity quantity, Units units) {
    static constexpr TypedUnit kOne{"", Quantity::ratio, 1, 1};
    const bool inch = units == Units::inch;
    switch (quantity) {
        case Quantity::length:
            return inch ? kInchUnit : kMillimetreUnit;
        case Quantity::mass:
            return inch ? kPound : kKilogram;
        case Quantity::angle:
            return kDegree;
        case Quantity::percent:
        case Quantity::ratio:
        case Quantity::count:
            return kOne;
        default:
            break;
    }
    const std::string_view name = shownName(quantity, inch);
    return *std::ranges::find(kUnits, name, &TypedUnit::name);
}

std::string targetWords(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return say("a length, such as 12 3/8 in or 314 mm");
        case Quantity::angle:
            return say("an angle in degrees, such as 2.5");
        case Quantity::mass:
            return say("a weight, such as 850 lb or 385 kg");
        case Quantity::percent:
            return say("a percentage, such as 45");
        case Quantity::ratio:
            return say("a plain number, such as 1 or 0.5");
        case Quantity::count:
            return say("a whole number, such as 81");
        case Quantity::force:
            return say("a force, such as 250 lb or 1100 N");
        case Quantity::torque:
            return say("a torque, such as 400 lb-ft or 540 Nm");
        case Quantity::rate:
            return say("a rate, such as 175 lb/in or 31 N/mm");
        case Quantity::rollRate:
            return say("a roll rate, such as 200 lb-ft/deg or 270 Nm/deg");
        case Quantity::volume:
            return say("a volume, such as 16 gal or 60 L");
        case Quantity::density:
            return say("a density, such as 6.2 lb/gal or 0.74 kg/L");
        case Quantity::time:
            return say("a time in seconds, such as 1.62");
        case Quantity::speed:
            return say("turns a minute, such as 6200");
        case Quantity::inertia:
            return say("a moment of inertia, such as 12 or 0.5");
        case Quantity::shaftSpeed:
            return say("a speed, such as 3 in/s or 75 mm/s");
        case Quantity::damping:
            return say("a damping, such as 0.6 lb-s/in or 0.1 N-s/mm");
        case Quantity::pressure:
            return say("a pressure, such as 17 psi or 117 kPa");
    }
    return say("a number");
}

}  // namespace bolthole
