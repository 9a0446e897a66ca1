#include "app/commands/launch_command.h"

#include <array>
#include <charconv>
#include <optional>
#include <string_view>
#include <system_error>
#include <utility>

#include "app/commands/csv_text.h"
#include "geometry/kinematics/trace.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

// A unit of the table, by what the car is shown in.
struct TableUnit {
    std::string_view inch;    ///< behind the column's name
    std::string_view metric;  ///< the same
    double inchFactor = 1;    ///< SI for one of it
    double metricFactor = 1;

    [[nodiscard]] std::string_view suffix(Units units) const { return units == Units::inch ? inch : metric; }
    [[nodiscard]] double shown(double value, Units units) const {
        return value / (units == Units::inch ? inchFactor : metricFactor);
    }
};

constexpr double kMilePerHour = 1609.344 / 3600;  // m/s, exact
constexpr TableUnit kBare{"", ""};
constexpr TableUnit kLengths{"_in", "_mm", kMetresPerInch, kMetresPerMillimetre};
constexpr TableUnit kSpeeds{"_mph", "_m_s", kMilePerHour, 1};
constexpr TableUnit kForces{"_lb", "_N", kNewtonsPerPoundForce, 1};
constexpr TableUnit kGravities{"_g", "_g", kStandardGravity, kStandardGravity};
constexpr TableUnit kTurns{"_rpm", "_rpm", kRpm, kRpm};
constexpr TableUnit kPercents{"_pct", "_pct", 0.01, 0.01};
constexpr TableUnit kDegrees{"_deg", "_deg", kRadiansPerDegree, kRadiansPerDegree};
constexpr TableUnit kTimes{"_s", "_s"};

struct LaunchColumn {
    std::string_view name;
    const TableUnit& unit;
    double (*value)(const LaunchRow& row);
};

constexpr std::array<LaunchColumn, 13> kLaunchColumns{{
    {"time", kTimes, [](const LaunchRow& row) { return row.time; }},
    {"distance", kLengths, [](const LaunchRow& row) { return row.distance; }},
    {"speed", kSpeeds, [](const LaunchRow& row) { return row.speed; }},
    {"acceleration", kGravities, [](const LaunchRow& row) { return row.acceleration; }},
    {"engine", kTurns, [](const LaunchRow& row) { return row.engineSpeed; }},
    {"slip", kPercents, [](const LaunchRow& row) { return row.slip; }},
    {"rear_travel", kLengths, [](const LaunchRow& row) { return row.rearTravel; }},
    {"front_travel", kLengths, [](const LaunchRow& row) { return row.frontTravel; }},
    {"nose_up", kDegrees, [](const LaunchRow& row) { return -row.pitch; }},
    {"rear_load", kForces, [](const LaunchRow& row) { return row.rearLoad; }},
    {"front_load", kForces, [](const LaunchRow& row) { return row.frontLoad; }},
    {"thrust", kForces, [](const LaunchRow& row) { return row.thrust; }},
    {"grip", kForces, [](const LaunchRow& row) { return row.grip; }},
}};

std::string rowsTable(const LaunchRun& run, Units units) {
    std::string table;
    for (const LaunchColumn& column : kLaunchColumns) {
        table += &column == kLaunchColumns.data() ? "" : ",";
        table += std::string(column.name) + std::string(column.unit.suffix(units));
    }
    table += kLineEnd;
    for (const LaunchRow& row : run.rows) {
        for (const LaunchColumn& column : kLaunchColumns) {
            table += &column == kLaunchColumns.data() ? "" : ",";
            table += plainDecimal(column.unit.shown(column.value(row), units));
        }
        table += kLineEnd;
    }
    return table;
}

std::string summaryTable(const LaunchRun& run, Units units) {
    const LaunchFigures& figures = run.figures;
    std::string table = "figure,value,unit" + std::string(kLineEnd);
    const auto add = [&](std::string_view name, const std::optional<double>& value, const TableUnit& unit) {
        const std::string_view suffix = unit.suffix(units);
        table += std::string(name) + std::string(suffix) + ',' +
                 (value ? plainDecimal(unit.shown(*value, units)) : "") + ',' +
                 std::string(suffix.substr(1)) + std::string(kLineEnd);
    };
    add("sixty_foot", figures.sixtyFoot, kTimes);
    add("from_release", figures.fromRelease, kTimes);
    add("topped_out", figures.toppedOut, kTimes);
    add("front_up", figures.frontUp, kTimes);
    add("largest_slip", figures.largestSlip, kPercents);
    add("least_rear_load", figures.leastRearLoad, kForces);
    return table;
}

std::string inSeconds(double seconds) {
    return figureText(seconds, Quantity::time, Units::metric) + " s";
}

// The seconds between rows, or nothing where what was asked for is none.
std::optional<double> everyOf(const Request& request) {
    const std::optional<std::string> text = request.value(kEveryOption);
    if (!text) {
        return LaunchOptions{}.every;
    }
    double seconds = 0;
    const auto [end, error] = std::from_chars(text->data(), text->data() + text->size(), seconds);
    const bool isRead = error == std::errc() && end == text->data() + text->size();
    return isRead && seconds >= 1e-4 && seconds <= 6 ? std::optional(seconds) : std::nullopt;
}

}  // namespace

std::string endOfLaunch(const LaunchRun& run, const Car& car) {
    const std::string when = inSeconds(run.endTime);
    switch (run.end) {
        case LaunchEnd::done:
        case LaunchEnd::timeOut:
            return {};
        case LaunchEnd::refused:
            return "launch: " + run.refusal;
        case LaunchEnd::noRide:
            return "links: " + describe(run.links, car, car.units);
        case LaunchEnd::stalled:
            return "launch.engine: the engine stalls " + when + " after the release";
        case LaunchEnd::linksEnd:
            return "links: " + when + " after the release the axle gets to a travel of " +
                   withUnit(figureText(run.endTravel, Quantity::length, car.units), Quantity::length,
                            car.units) +
                   ", past which the links don't let it: " + describe(run.links, car, car.units);
        case LaunchEnd::overBackwards:
            return "launch: " + when +
                   " after the release the center of gravity is behind the rear wheels: the car goes over "
                   "backwards";
        case LaunchEnd::notRun:
        case LaunchEnd::unfollowed:
            break;
    }
    return "launch: numbers so extreme that the motion can't be followed past " + when;
}

LaunchOutcome cannotLaunch(const std::vector<MissingInput>& missing) {
    LaunchOutcome outcome{.end = LaunchOutcome::End::cannotRun};
    for (const MissingInput& input : missing) {
        outcome.complaints.push_back(input.path + ": missing, " + input.reason);
    }
    return outcome;
}

LaunchOutcome runLaunch(const Request& request, const Car& car) {
    LaunchOutcome outcome;
    const std::optional<double> every = everyOf(request);
    if (!every) {
        return {LaunchOutcome::End::badUse, {}, {"--every: expected seconds from 0.0001 to 6"}};
    }
    const LaunchInputsResult entered = launchInputsOf(car);
    if (!entered.inputs) {
        return cannotLaunch(entered.missing);
    }
    const LaunchRun run = simulateLaunch(*entered.inputs, {.every = *every});
    if (std::string why = endOfLaunch(run, car); !why.empty()) {
        return {LaunchOutcome::End::cannotRun, {}, {std::move(why)}};
    }
    outcome.table = request.has(kSummaryOption) ? summaryTable(run, car.units) : rowsTable(run, car.units);
    return outcome;
}

}  // namespace bolthole
