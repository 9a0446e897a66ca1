// libFuzzer's target on the car file's reader: whatever the bytes, it refuses them with a reason or gives a
// car that can be computed, comes back equal when written and read again, and is written the same way twice.
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "app/carfile/car_file.h"
#include "geometry/car/faults.h"
#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"

namespace {

void mustHold(bool law, const char* words) {
    if (!law) {
        std::fprintf(stderr, "broken: %s\n", words);
        std::abort();
    }
}

}  // namespace

// The name and types are libFuzzer's.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): bytes are bytes
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const bolthole::ReadResult read = bolthole::readCar(bytes);
    if (!read.loaded) {
        const std::string line = read.problem.line();
        mustHold(!read.problem.reason.empty(), "a refusal gives a reason");
        mustHold(line.find_first_of("\n\r") == std::string::npos, "the reason is one line");
        return 0;
    }
    mustHold(bolthole::findFaults(read.loaded->car).empty(), "a car that was read can be computed");
    const std::string written = bolthole::writeCar(read.loaded->car, read.loaded->source);
    const bolthole::ReadResult again = bolthole::readCar(written);
    mustHold(again.loaded.has_value(), "what was written can be read");
    mustHold(again.loaded->car == read.loaded->car, "and is the same car");
    mustHold(bolthole::writeCar(again.loaded->car, again.loaded->source) == written,
             "and is written the same way");
    return 0;
}
