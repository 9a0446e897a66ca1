#include "app/commands/command_line.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <span>
#include <string_view>
#include <system_error>

#include "app/carfile/car_file.h"
#include "app/carfile/file_writing.h"
#include "app/commands/car_reading.h"
#include "app/commands/chart_command.h"
#include "app/commands/command.h"
#include "app/commands/compare_table.h"
#include "app/commands/figures_command.h"
#include "app/commands/fit_command.h"
#include "app/commands/holes_table.h"
#include "app/commands/launch_command.h"
#include "app/commands/log_command.h"
#include "app/commands/request.h"
#include "app/commands/roll_table.h"
#include "app/commands/sheet_command.h"
#include "app/commands/sweep_table.h"
#include "app/commands/template_command.h"
#include "app/commands/try_command.h"
#include "app/commands/uncertainty_lines.h"
#include "app/papers/change_file.h"
#include "app/papers/pdf_file.h"
#include "geometry/car/faults.h"
#include "geometry/car/numbers.h"
#include "geometry/checks/warnings.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/roll.h"
#include "geometry/kinematics/trace.h"
#include "geometry/uncertainty/roll_uncertainty.h"
#include "geometry/uncertainty/trace_uncertainty.h"

namespace bolthole {

namespace {

// The link at fault in the file, or all of them.
std::string placeOf(const MoveReport& report, const Car& car) {
    if (report.constraint < 0) {
        return "links";
    }
    const Linkage linkage = buildLinkage(car);
    const Constraint& constraint = linkage.constraints[static_cast<std::size_t>(report.constraint)];
    return pathOf("links", static_cast<std::size_t>(constraint.link));
}

// Where a move stopped, at its link in the file.
std::string stopLine(const MoveReport& report, const Car& car) {
    return placeOf(report, car) + ": " + describe(report, car, car.units);
}

/// Whether the car can be assembled at ride; complains where not, and of travel that the links don't reach.
bool isAssembled(const std::string& file, const Car& car, const Trace& trace) {
    if (!trace.assembly.usable()) {
        complain(file, stopLine(trace.assembly, car));
        return false;
    }
    for (const MoveReport* end : {&trace.droopEnd, &trace.bumpEnd}) {
        if (!end->usable()) {
            complain(file, stopLine(*end, car));
        }
    }
    return true;
}

Outcome sweep(const Request& request) {
    const std::string& file = request.files().front();
    const std::optional<Car> car = readForFigures(request, file);
    if (!car) {
        return {ExitCode::badUse, std::nullopt};
    }
    const Trace trace = computeTrace(*car);
    if (!isAssembled(file, *car, trace)) {
        return {ExitCode::cannotAssemble, std::nullopt};
    }
    if (!request.has(kUncertaintyOption)) {
        return {ExitCode::done, sweepTable(trace, *car, car->units)};
    }
    const TraceUncertainty uncertainty = computeUncertainty(*car);
    return {ExitCode::done, sweepTable(trace, *car, car->units, &uncertainty)};
}

// Complains of roll at `end` that the links don't reach.
void complainOfRoll(const std::string& file, const Car& car, const MoveReport& end) {
    if (!end.usable()) {
        complain(file, placeOf(end, car) + ": " + describeRollEnd(end, car));
    }
}

Outcome roll(const Request& request) {
    const std::string& file = request.files().front();
    const std::optional<Car> car = readForFigures(request, file);
    if (!car) {
        return {ExitCode::badUse};
    }
    const RollTrace trace = computeRollTrace(*car);
    if (!trace.assembly.usable()) {
        complain(file, stopLine(trace.assembly, *car));
        return {ExitCode::cannotAssemble};
    }
    complainOfRoll(file, *car, trace.rightEnd);
    complainOfRoll(file, *car, trace.leftEnd);
    if (!request.has(kUncertaintyOption)) {
        return {ExitCode::done, rollTable(trace, car->units)};
    }
    const RollUncertainty uncertainty = computeRollUncertainty(*car);
    return {ExitCode::done, rollTable(trace, car->units, &uncertainty)};
}

bool isPdf(const std::string& fileName) {
    std::string ending = std::filesystem::path(fileName).extension().string();
    std::ranges::transform(ending, ending.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? c + 32 : c; });
    return ending == ".pdf";
}

Outcome changeSheet(const std::vector<std::string>& files, const Car& before, const Car& after) {
    std::string pdf = makeChangeSheet(before, after, files[0], files[1]);
    if (!pdf.empty()) {
        return {ExitCode::done, std::move(pdf)};
    }
    complain("compare", std::string("the change sheet ").append(kNotPainted));
    return {ExitCode::badUse};
}

Outcome compare(const Request& request) {
    const std::vector<std::string>& files = request.files();
    if (files.size() != 2) {
        complain("compare", "one file given, expected two: BEFORE AFTER");
        return {ExitCode::badUse, std::nullopt};
    }
    const std::optional<Car> before = readForFigures(request, files[0]);
    const std::optional<Car> after = readForFigures(request, files[1]);
    if (!before || !after) {
        return {ExitCode::badUse, std::nullopt};
    }
    const Comparison comparison = compareCars(*before, *after);
    const bool first = isAssembled(files[0], *before, comparison.before);
    const bool second = isAssembled(files[1], *after, comparison.after);
    if (!first || !second) {
        return {ExitCode::cannotAssemble, std::nullopt};
    }
    if (isPdf(request.value(kOutputOption).value_or("-"))) {
        return changeSheet(files, *before, *after);
    }
    if (!request.has(kUncertaintyOption)) {
        return {ExitCode::done, compareTable(comparison, after->units)};
    }
    const ComparedUncertainties both{computeUncertainty(*before, LengthTreatment::keep, holesInUse(*before)),
                                     computeUncertainty(*after, LengthTreatment::keep, holesInUse(*after))};
    return {ExitCode::done, compareTable(comparison, after->units, &both)};
}

// Why the car's hole combinations can't be told, or empty.
std::string refuseHoles(const Request& request, const HolesTable& table) {
    if (table.lengths == LengthTreatment::uppers && !hasUpperRod(*table.car)) {
        return "--lengths: 'uppers' needs an upper link and the car has none, expected keep or refit";
    }
    const std::uint64_t count = CombinationSpace(*table.car, table.scope).count();
    if (count > kManyCombinations && !request.has(kAllOption)) {
        const bool uncounted = count == CombinationSpace::kCountLimit;
        return "links: " + std::to_string(count) + (uncounted ? " or more" : "") +
               " hole combinations, expected at most " + std::to_string(kManyCombinations) +
               "; --all computes them all";
    }
    return {};
}

Outcome holes(const Request& request) {
    const std::string& file = request.files().front();
    const std::optional<Car> car = readForFigures(request, file);
    if (!car) {
        return {ExitCode::badUse};
    }
    const HolesTable table{std::make_shared<const Car>(*car),
                           request.lengths().value_or(defaultTreatment(*car)),
                           {.tieSides = request.has(kTieOption)},
                           request.has(kUncertaintyOption)};
    if (const std::string refusal = refuseHoles(request, table); !refusal.empty()) {
        complain(file, refusal);
        return {ExitCode::badUse};
    }
    if (!anyAssembled(table)) {
        const MoveReport now = computeTrace(*car).assembly;
        complain(file,
                 now.usable() ? "links: no hole combination can be assembled at ride" : stopLine(now, *car));
        return {ExitCode::cannotAssemble};
    }
    return {ExitCode::done, std::nullopt,
            [table](const WriteBytes& write) { return writeHolesTable(table, write); }};
}

// The findings of one readable car, a line each.
Outcome findings(const std::string& file, const Car& car) {
    Outcome outcome{ExitCode::done, ""};
    const Trace trace = computeTrace(car);
    if (!trace.assembly.usable()) {
        outcome.code = ExitCode::cannotAssemble;
        *outcome.result += onOneLine(file + ": " + stopLine(trace.assembly, car));
    }
    for (const Warning& warning : findWarnings(car)) {
        *outcome.result += onOneLine(file + ": " + warning.path + ": " + sentence(warning.finding));
    }
    return outcome;
}

Outcome check(const Request& request) {
    Outcome all{ExitCode::done, ""};
    for (const std::string& file : request.files()) {
        const std::optional<Car> car = readFor(request, file);
        const Outcome one = car ? findings(file, *car) : Outcome{ExitCode::badUse, ""};
        all.code = std::max(all.code, one.code);
        *all.result += *one.result;
        if (car && one.code == ExitCode::done && request.has(kUncertaintyOption)) {
            for (const std::string& line : uncertaintyLines(*car)) {
                *all.result += onOneLine(file + ": " + line);
            }
        }
    }
    return all;
}

Outcome chart(const Request& request) {
    const std::string& file = request.files().front();
    const std::optional<Car> car = readFor(request, file);
    if (!car) {
        return {ExitCode::badUse, std::nullopt};
    }
    ChartOutcome made = makeChart(request, *car);
    if (made.end == ChartOutcome::End::done) {
        return {ExitCode::done, std::move(made.pdf)};
    }
    complain(file, made.complaint);
    const bool isUnbuilt = made.end == ChartOutcome::End::cannotAssemble;
    return {isUnbuilt ? ExitCode::cannotAssemble : ExitCode::badUse, std::nullopt};
}

// What `paint` makes of the request's car; complains where it makes nothing.
template <class Made>
Outcome painted(const Request& request, Made (*paint)(const Request&, const Car&)) {
    const std::string& file = request.files().front();
    const std::optional<Car> car = readFor(request, file);
    if (!car) {
        return {ExitCode::badUse};
    }
    Made made = paint(request, *car);
    if (!made.bytes.empty()) {
        return {ExitCode::done, std::move(made.bytes)};
    }
    complain(file, made.complaint);
    return {ExitCode::badUse};
}

Outcome drillingTemplate(const Request& request) {
    return painted(request, makeTemplate);
}

Outcome sheet(const Request& request) {
    return painted(request, makeSheet);
}

Outcome figures(const Request& request) {
    const std::optional<Car> car = readForFigures(request, request.files().front());
    if (!car) {
        return {ExitCode::badUse};
    }
    return isAssembled(request.files().front(), *car, computeTrace(*car))
               ? Outcome{ExitCode::done, figuresTable(*car)}
               : Outcome{ExitCode::cannotAssemble};
}

Outcome log(const Request& request) {
    LogOutcome made = runLog(request);
    for (const LogLine& line : made.lines) {
        complain(line.about, line.what);
    }
    return made.done ? Outcome{ExitCode::done, std::move(made.result)} : Outcome{ExitCode::badUse};
}

// What a launch or several came to; complains of what kept it from being done.
Outcome outcomeOf(const std::string& file, LaunchOutcome made) {
    for (const std::string& complaint : made.complaints) {
        complain(file, complaint);
    }
    if (made.end == LaunchOutcome::End::done) {
        return {ExitCode::done, std::move(made.table)};
    }
    return {made.end == LaunchOutcome::End::badUse ? ExitCode::badUse : ExitCode::cannotAssemble};
}

template <LaunchOutcome (*make)(const Request&, const Car&)>
Outcome onLaunch(const Request& request) {
    const std::optional<Car> car = readFor(request, request.files().front());
    return car ? outcomeOf(request.files().front(), make(request, *car)) : Outcome{ExitCode::badUse};
}

LaunchOutcome tryEach(const Request& /*request*/, const Car& car) {
    return runTrials(car);
}

constexpr std::size_t kAnyNumber = static_cast<std::size_t>(-1);
constexpr std::array<Option, 3> kTableOptions{kOutputOption, kUnitsOption, kUncertaintyOption};
constexpr std::array<Option, 6> kHolesOptions{kLengthsOption, kTieOption,   kAllOption,
                                              kOutputOption,  kUnitsOption, kUncertaintyOption};
constexpr std::array<Option, 4> kChartOptions{kOutputOption, kPaperOption, kLengthsOption, kUnitsOption};
constexpr std::array<Option, 6> kTemplateOptions{kLinkNameOption, kEndOption,   kFaceOption,
                                                 kOutputOption,   kPaperOption, kUnitsOption};
constexpr std::array<Option, 4> kSheetOptions{kSheetOption, kOutputOption, kSheetPaperOption, kUnitsOption};
constexpr std::array<Option, 4> kLaunchOptions{kEveryOption, kSummaryOption, kOutputOption, kUnitsOption};
constexpr std::array<Option, 2> kPlainOptions{kOutputOption, kUnitsOption};
constexpr std::array<Option, 3> kFitOptions{kPassesOption, kRecordingsOption, kOutputOption};
constexpr std::array<Option, 3> kLogOptions{kImportOption, kOutputOption, kUnitsOption};

constexpr std::array<Command, 13> kCommands{{
    {"sweep", "CAR", "CSV, a row a travel step from full droop to full bump", 1, kTableOptions, sweep},
    {"holes", "CAR",
     "CSV, a row a hole combination, with its figures at ride and anti-squat at both ends of travel", 1,
     kHolesOptions, holes},
    {"roll", "CAR", "CSV, the axle at ride rolled from -3 to 3 degrees: a row every half degree", 1,
     kTableOptions, roll},
    {"chart", "CAR", "the wall chart as PDF: every hole combination, for the shop wall; needs -o FILE", 1,
     kChartOptions, chart},
    {"template", "CAR",
     "the drilling template of a bracket at true size: both faces as PDF, one as SVG or DXF; needs --link,\n"
     "    --end and -o FILE",
     1, kTemplateOptions, drillingTemplate},
    {"sheet", "CAR", "the sheet named after --of, as PDF; the setup as text where FILE does not end in .pdf",
     1, kSheetOptions, sheet},
    {"compare", "BEFORE AFTER",
     "CSV, what changed from one car to the other, a row a figure at ride, bump and droop;\n"
     "    the change sheet as PDF where FILE ends in .pdf",
     2, kTableOptions, compare},
    {"figures", "CAR", "CSV, every figure of every page with its standard uncertainty, a row each", 1,
     kPlainOptions, figures},
    {"launch", "CAR",
     "CSV, the first seconds after the release, a row every SECONDS (0.01 unless given); with --summary its\n"
     "    figures",
     1, kLaunchOptions, onLaunch<runLaunch>},
    {"try", "CAR",
     "CSV, a row a single change between two passes: what it does to the 60 ft, and the chance that it helps",
     1, kPlainOptions, onLaunch<tryEach>},
    {"log", "CAR",
     "CSV, a row a pass of the test days; with --import the car file with the passes of such a table read in",
     1, kLogOptions, log},
    {"fit", "CAR",
     "CSV, what the passes teach of friction, torque, stall, damping and slip; with --passes a row a pass,\n"
     "    predicted without itself, with --recordings a row a recorded sample",
     1, kFitOptions, onLaunch<runFit>},
    {"check", "CAR...", "what is wrong or doubtful in each file, a line each", kAnyNumber, kTableOptions,
     check},
}};

bool isHelp(std::string_view word) {
    return word == "--help" || word == "-h";
}

bool isVersion(std::string_view word) {
    return word == "--version";
}

const Command* findCommand(std::string_view name) {
    const auto* const found = std::ranges::find(kCommands, name, &Command::name);
    return found == kCommands.end() ? nullptr : found;
}

bool wouldOverwriteACar(const std::string& output, const std::vector<std::string>& files) {
    return std::ranges::any_of(files, [&](const std::string& file) {
        std::error_code unknown;
        return std::filesystem::equivalent(output, file, unknown);
    });
}

ExitCode printed(const Producer& produce) {
    const auto print = [](std::string_view bytes) {
        return std::fwrite(bytes.data(), 1, bytes.size(), stdout) == bytes.size();
    };
    if (produce(print) && std::fflush(stdout) == 0) {
        return ExitCode::done;
    }
    complain("standard output", std::string("cannot be written: ") + std::strerror(errno));
    return ExitCode::badUse;
}

ExitCode printed(std::string_view text) {
    return printed([text](const WriteBytes& write) { return write(text); });
}

// To the file after -o, or to standard output, which "-" means too.
ExitCode deliver(const Request& request, const Producer& produce) {
    const std::string output = request.value(kOutputOption).value_or("-");
    if (output == "-") {
        return printed(produce);
    }
    const std::string problem = writeWholeFile(output, produce);
    if (problem.empty()) {
        return ExitCode::done;
    }
    complain(output, problem);
    return ExitCode::badUse;
}

// Whatever the command came to, if anything.
ExitCode deliver(const Request& request, const Outcome& outcome) {
    if (outcome.pieces) {
        return deliver(request, outcome.pieces);
    }
    if (!outcome.result) {
        return ExitCode::done;
    }
    return deliver(request, [&outcome](const WriteBytes& write) { return write(*outcome.result); });
}

// What is wrong with the files of a request, before any is read; empty: nothing.
std::string refusalOf(const Command& command, const Request& request) {
    const std::size_t count = request.files().size();
    if (count == 0) {
        return "no file given, expected " + usageOf(command);
    }
    if (count > command.mostFiles) {
        return std::to_string(count) + " files given, expected " + usageOf(command);
    }
    const std::optional<std::string> output = request.value(kOutputOption);
    if (output && wouldOverwriteACar(*output, request.files())) {
        return "the file after -o is the car itself, expected another";
    }
    return {};
}

ExitCode run(const Command& command, std::span<const std::string> words) {
    std::string problem;
    const std::optional<Request> request = Request::sort(words, command.options, problem);
    if (request) {
        problem = refusalOf(command, *request);
    }
    if (!problem.empty()) {
        complain(std::string(command.name), problem);
        return ExitCode::badUse;
    }
    const Outcome outcome = command.run(*request);
    return std::max(outcome.code, deliver(*request, outcome));
}

// A bare word that names no file is a command mistyped, not a car to open.
bool looksLikeCommand(const std::string& word) {
    const bool bare = !word.empty() && std::ranges::all_of(word, [](char c) { return c >= 'a' && c <= 'z'; });
    std::error_code unreadable;
    return bare && !std::filesystem::exists(word, unreadable);
}

}  // namespace

bool isCommand(const std::vector<std::string>& words) {
    if (words.empty()) {
        return false;
    }
    const std::string& first = words.front();
    return findCommand(first) != nullptr || isHelp(first) || isVersion(first) || looksLikeCommand(first);
}

ExitCode runCommand(const std::vector<std::string>& words) {
    const std::string first = words.empty() ? "" : words.front();
    if (isVersion(first)) {
        return printed("bolthole " BOLTHOLE_VERSION "\ncar file version " + std::to_string(kCarFileVersion) +
                       "\n");
    }
    if (isHelp(first) || (words.size() > 1 && isHelp(words[1]))) {
        return printed(helpText(kCommands));
    }
    const Command* command = findCommand(first);
    if (command == nullptr) {
        complain(first.empty() ? "command line" : first,
                 "no such command, expected " + commandNames(kCommands));
        return ExitCode::badUse;
    }
    return run(*command, std::span(words).subspan(1));
}

}  // namespace bolthole
