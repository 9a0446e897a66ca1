#include "geometry/edits/edit_correction.h"

#include <cmath>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/car/scaled_tables.h"
#include "geometry/units/say.h"
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
    return fault.reason.empty() ? std::string() : say("%1: %2", whose, fault.reason);
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
    return fault.reason.empty() ? std::string() : say("engine: %1", fault.reason);
}

std::string scaleTables(Car& car, const CorrectLaunch& edit) {
    std::string reason = scaleTorque(car.launch.engine.torque, edit.torqueScale);
    if (reason.empty()) {
        reason = scaleShock(car.launch.front.damping, edit.frontDampingScale, say("front shock"));
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
            return say("%1: expected %2", say(ruleOf(number.field).words), expected);
        }
    }
    for (const double scale : {edit.torqueScale, edit.frontDampingScale, edit.rearDampingScale}) {
        if (!(std::isfinite(scale) && scale > 0)) {
            return say("expected scales above 0");
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
        reason = reason.empty() ? reason : say("kept setup '%1', %2", state.name, reason);
        state.car = std::move(kept);
    }
    if (reason.empty()) {
        car = std::move(corrected);
    }
    return reason;
}

std::string describeCorrection(const CorrectLaunch& edit) {
    std::string words;
    const auto add = [&words](const std::string& what) {
        words = words.empty() ? what : say("%1, %2", words, what);
    };
    const auto addScale = [&add](std::string_view text, double scale) {
        if (scale != 1) {
            add(say(text, plainDecimal(scale)));
        }
    };
    if (edit.friction) {
        add(say("friction %1", plainDecimal(*edit.friction)));
    }
    addScale(phrase("torque \u00D7 %1"), edit.torqueScale);
    addScale(phrase("front damping \u00D7 %1"), edit.frontDampingScale);
    addScale(phrase("rear damping \u00D7 %1"), edit.rearDampingScale);
    if (edit.stallSpeed) {
        add(say("stall speed %1 rpm", plainDecimal(std::round(*edit.stallSpeed / kRpm))));
    }
    if (edit.peakSlip) {
        add(say("peak slip %1 %", plainDecimal(*edit.peakSlip)));
    }
    return words.empty() ? say("Take over what the passes taught")
                         : say("Take over what the passes taught: %1", words);
}

}  // namespace bolthole
