#include "app/commands/log_command.h"

#include <filesystem>
#include <system_error>

#include "app/carfile/car_file.h"
#include "app/commands/log_table.h"

namespace bolthole {

namespace {

LogOutcome refused(const std::string& about, const std::string& what) {
    return {false, {}, {{about, what}}};
}

bool isSameFile(const std::string& one, const std::string& other) {
    std::error_code unknown;
    return std::filesystem::equivalent(one, other, unknown);
}

LogOutcome importInto(const LoadedCar& loaded, const std::string& table) {
    const FileBytes read = readCarBytes(table);
    if (!read.problem.empty()) {
        return refused(table, read.problem);
    }
    const ImportedLog imported = importLog(loaded.car, read.bytes);
    LogOutcome outcome;
    for (const std::string& problem : imported.problems) {
        outcome.lines.push_back({table, problem});
    }
    if (!imported.problems.empty()) {
        return outcome;
    }
    for (const std::string& header : imported.unknown) {
        outcome.lines.push_back({table, "row 1, '" + header + "': no such column, passed over"});
    }
    outcome.result = writeCar(imported.car, loaded.source);
    if (outcome.result.size() > kMaxFileBytes) {
        return refused(table, "the car would be larger than " + std::to_string(kMaxFileBytes) + " bytes");
    }
    outcome.done = true;
    return outcome;
}

}  // namespace

LogOutcome runLog(const Request& request) {
    const std::string& file = request.files().front();
    const ReadResult read = readCarFile(file);
    if (!read.loaded) {
        return refused(file, read.problem.line());
    }
    const Car& car = read.loaded->car;
    const std::optional<std::string> table = request.value(kImportOption);
    if (!table) {
        return {true, logTable(car, request.units().value_or(car.units)), {}};
    }
    if (isSameFile(request.value(kOutputOption).value_or("-"), *table)) {
        return refused("-o", "the file after -o is the one to import, expected another");
    }
    return importInto(*read.loaded, *table);
}

}  // namespace bolthole
