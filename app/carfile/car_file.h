// Reads and writes the car file. Knows no Qt: the command line, the window and the fuzzer share it.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "app/carfile/json_text.h"
#include "geometry/car/car.h"

namespace bolthole {

/// Newest version of the file this program writes; every older one still opens.
inline constexpr int kCarFileVersion = 1;
inline constexpr std::size_t kMaxFileBytes = 16'000'000;

/// A car that was read whole, and the document it came from: unknown keys live there.
struct LoadedCar {
    Car car;
    nlohmann::ordered_json source;
};

/// A loaded car or the problem, never half of each.
struct ReadResult {
    std::optional<LoadedCar> loaded;
    FileProblem problem;
};

/// Reads a car from the bytes of a file. The car it gives has passed findFaults().
[[nodiscard]] ReadResult readCar(std::string_view bytes);

/// The bytes of a file, or why they could not be read, one line.
struct FileBytes {
    std::string bytes;
    std::string problem;  ///< empty: read
};

/// Reads a file's bytes; refuses more than kMaxFileBytes without reading them.
[[nodiscard]] FileBytes readCarBytes(const std::string& fileName);

/// Reads a car file; refuses more than kMaxFileBytes without reading them.
[[nodiscard]] ReadResult readCarFile(const std::string& fileName);

/// The car as a file: the keys and unknown parts of `source` kept in their order, only changed values
/// rewritten. Numbers are the shortest decimals that read back as the same value. Writing twice gives
/// identical bytes.
[[nodiscard]] std::string writeCar(const Car& car, const nlohmann::ordered_json& source);

}  // namespace bolthole
