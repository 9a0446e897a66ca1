// The warnings of a car as `check` writes them.
#pragma once

#include <string>
#include <vector>

#include "geometry/checks/warnings.h"

namespace bolthole {

inline std::vector<std::string> warningLines(const Car& car) {
    std::vector<std::string> result;
    for (const Warning& warning : findWarnings(car)) {
        result.push_back(warning.path + ": " + sentence(warning.finding));
    }
    return result;
}

}  // namespace bolthole
