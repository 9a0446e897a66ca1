#include "app/commands/fit_command.h"

#include <algorithm>
#include <string_view>

#include "app/commands/csv_text.h"
#include "geometry/fit/launch_fit.h"
#include "geometry/units/csv.h"
#include "geometry/units/parallel.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

std::string_view fittedName(LaunchNumber number) {
    switch (number) {
        case LaunchNumber::friction:
            return "friction";
        case LaunchNumber::torqueScale:
            return "torque_scale";
        case LaunchNumber::stallSpeed:
            return "stall_rpm";
        case LaunchNumber::frontDampingScale:
            return "front_damping_scale";
        case LaunchNumber::rearDampingScale:
            return "rear_damping_scale";
        case LaunchNumber::peakSlip:
            break;
    }
    return "peak_slip_pct";
}

std::string numbersTable(const LaunchFit& fit) {
    std::string table = "figure,before,before_u,after,after_u,told_by_pct" + std::string(kLineEnd);
    for (const FittedNumber& number : fit.numbers) {
        const double unit = number.number == LaunchNumber::stallSpeed ? kRpm : 1;
        std::string name(fittedName(number.number));
        if (number.number == LaunchNumber::friction && fit.surfaces.size() > 1) {
            name += " " + number.surface;
        }
        table += csvField(name);
        for (const double value : {number.before, number.beforeU, number.after, number.afterU}) {
            table += "," + plainDecimal(value / unit);
        }
        table += "," + plainDecimal(number.toldPercent()) + std::string(kLineEnd);
    }
    return table;
}

/// What a pass is called in the table: its number, with the day before it where another day has it too.
std::string passName(const Car& car, const Pass& pass) {
    const bool isRepeated = std::ranges::any_of(car.passes, [&pass](const Pass& other) {
        return other.number == pass.number && other.date != pass.date;
    });
    return (isRepeated ? pass.date + " " : "") + std::to_string(pass.number);
}

std::string passesTable(const LaunchFit& fit, const Car& car) {
    std::string table = "pass,run_s,predicted_s,predicted_u" + std::string(kLineEnd);
    for (const FittedPass& pass : fit.passes) {
        table += csvField(passName(car, car.passes[pass.row])) + "," + plainDecimal(pass.run) + "," +
                 plainDecimal(pass.predicted) + "," + plainDecimal(pass.predictedU) + std::string(kLineEnd);
    }
    return table;
}

LaunchOutcome noPass(const LaunchFit& fit, const Car& car) {
    LaunchOutcome outcome{.end = LaunchOutcome::End::cannotRun};
    for (const UnusedPass& pass : fit.unused) {
        outcome.complaints.push_back("passes[" + std::to_string(pass.row) + "]: " +
                                     passWords(car.passes[pass.row]) + " is left out: " + pass.reason);
    }
    if (outcome.complaints.empty()) {
        outcome.complaints.emplace_back("passes: expected a pass with a sixty_foot that is not struck");
    }
    return outcome;
}

}  // namespace

LaunchOutcome runFit(const Request& request, const Car& car) {
    const LaunchFit fit = fitLaunch(car, {.threads = machineThreads()});
    if (fit.end == FitEnd::missing) {
        return cannotLaunch(fit.missing);
    }
    if (fit.end != FitEnd::done) {
        return noPass(fit, car);
    }
    LaunchOutcome outcome;
    outcome.table = request.has(kPassesOption) ? passesTable(fit, car) : numbersTable(fit);
    return outcome;
}

}  // namespace bolthole
