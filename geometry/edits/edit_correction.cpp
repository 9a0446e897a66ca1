#include "geometry/edits/edit_correction.h"

#include <cmath>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/car/scaled_tables.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr int kTableDigits = 4;

// A table's number as a person would have written it: a factor leaves digits behind that mean nothing.
double shortened(double value) {
    if (value == 0 || !std::isfinite(value)) {
        return value;
    }
    const double step = std::pow(10.0, kTableDigits - 1 - std::floor(std::log10(std::abs(value))));
    return std::round(value * step) / step;
}

void shorten(std::optional<Damping>& damping) {
    for (DampingWay* way : {&damping->bump, &damping->rebound}) {
        for (std::vector<double>& row : way->force) {
            for (double& force : row) {
                force = shortened(force);
            }
        }
    }
}

std::string scaleShock(std::optional<Damping>& damping, double factor, const std::string& whose) {
    if (!damping || factor == 1) {
        return {};
    }
    damping = scaled(*damping, factor);
    shorten(damping);
    const TableFault fault = refusal(*damping);
    return fault.reason.empty() ? std::string() : whose + ": " + fault.reason;
}

std::string scaleTorque(std::vector<TorquePoint>& torque, double factor) {
    if (factor == 1) {
        return {};
    }
    torque = scaled(torque, factor);
    for (TorquePoint& point : torque) {
        point.torque = shortened(point.torque);
    }
    const TableFault fault = refusal(torque);
    return fault.reason.empty() ? std::string() : "engine: " + fault.reason;
}

std::string scaleTables(Car& car, const CorrectLaunch& edit) {
    std::string reason = scaleTorque(car.launch.engine.torque, edit.torqueScale);
    if (reason.empty()) {
        reason = scaleShock(car.launch.front.damping, edit.frontDampingScale, "front shock");
    }
    for (std::size_t item = 0; reason.empty() && item < car.springs.size(); ++item) {
        reason = scaleShock(car.springs[item].damping, edit.rearDampingScale,
                            springWords(car, static_cast<int>(item)));
    }
    return reason;
}

// A number the passes taught, and where it stands.
struct TaughtNumber {
    Field field;
    OptionalNumber value;
    OptionalNumber& (*place)(EnteredLaunch& launch);
};

std::vector<TaughtNumber> taughtNumbers(const CorrectLaunch& edit) {
    return {{Field::friction, edit.friction,
             [](EnteredLaunch& launch) -> OptionalNumber& { return launch.friction; }},
            {Field::stallSpeed, edit.stallSpeed,
             [](EnteredLaunch& launch) -> OptionalNumber& { return launch.coupling.stallSpeed; }},
            {Field::tirePeakSlip, edit.peakSlip,
             [](EnteredLaunch& launch) -> OptionalNumber& { return launch.tire.peakSlip; }}};
}

std::string refuseCorrection(const CorrectLaunch& edit) {
    for (const TaughtNumber& number : taughtNumbers(edit)) {
        const std::string expected =
            number.value ? refusal({.field = number.field}, *number.value) : std::string();
        if (!expected.empty()) {
            return std::string(ruleOf(number.field).words) + ": expected " + expected;
        }
    }
    for (const double scale : {edit.torqueScale, edit.frontDampingScale, edit.rearDampingScale}) {
        if (!(std::isfinite(scale) && scale > 0)) {
            return "expected scales above 0";
        }
    }
    return {};
}

// Where the car held what the bench held, it holds the new number: another tire or converter stays.
std::string correct(Car& car, const EnteredLaunch& bench, const CorrectLaunch& edit) {
    EnteredLaunch was = bench;
    for (const TaughtNumber& number : taughtNumbers(edit)) {
        if (number.value && number.place(car.launch) == number.place(was)) {
            number.place(car.launch) = number.value;
        }
    }
    return scaleTables(car, edit);
}

}  // namespace

std::string applyTo(Car& car, const CorrectLaunch& edit) {
    if (std::string reason = refuseCorrection(edit); !reason.empty()) {
        return reason;
    }
    Car corrected = car;
    const EnteredLaunch bench = car.launch;
    std::string reason = correct(corrected, bench, edit);
    for (KeptSetup& state : corrected.kept) {
        if (!reason.empty()) {
            break;
        }
        auto kept = std::make_shared<Car>(*state.car);
        reason = correct(*kept, bench, edit);
        reason = reason.empty() ? reason : "kept setup '" + state.name + "', " + reason;
        state.car = std::move(kept);
    }
    if (reason.empty()) {
        car = std::move(corrected);
    }
    return reason;
}

std::string describeCorrection(const CorrectLaunch& edit) {
    std::string words;
    const auto add = [&words](const std::string& what) { words += (words.empty() ? ": " : ", ") + what; };
    if (edit.friction) {
        add("friction " + plainDecimal(*edit.friction));
    }
    for (const auto& [name, scale] :
         {std::pair("torque", edit.torqueScale), std::pair("front damping", edit.frontDampingScale),
          std::pair("rear damping", edit.rearDampingScale)}) {
        if (scale != 1) {
            add(std::string(name) + " \u00D7 " + plainDecimal(scale));
        }
    }
    if (edit.stallSpeed) {
        add("stall speed " + plainDecimal(std::round(*edit.stallSpeed / kRpm)) + " rpm");
    }
    if (edit.peakSlip) {
        add("peak slip " + plainDecimal(*edit.peakSlip) + " %");
    }
    return "Take over what the passes taught" + words;
}

}  // namespace bolthole
