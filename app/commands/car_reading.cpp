#include "app/commands/car_reading.h"

#include <cstdio>
#include <utility>
#include <vector>

#include "app/carfile/car_file.h"
#include "app/commands/command.h"
#include "geometry/uncertainty/uncertain_inputs.h"

namespace bolthole {

void complain(const std::string& about, const std::string& what) {
    std::fputs(onOneLine("bolthole: " + about + ": " + what).c_str(), stderr);
}

std::optional<Car> readFor(const Request& request, const std::string& file) {
    ReadResult read = readCarFile(file);
    if (!read.loaded) {
        complain(file, read.problem.line());
        return std::nullopt;
    }
    read.loaded->car.units = request.units().value_or(read.loaded->car.units);
    return std::move(read.loaded->car);
}

std::optional<Car> readForFigures(const Request& request, const std::string& file) {
    std::optional<Car> car = readFor(request, file);
    if (const std::vector<FieldId> starts = car ? startsUsed(*car) : std::vector<FieldId>();
        !starts.empty()) {
        complain(file, "figures rest on starting numbers, not measured: " + startWords(*car, starts));
    }
    return car;
}

}  // namespace bolthole
