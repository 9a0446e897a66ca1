// The doubts of a car as `check` writes them.
#pragma once

#include <string>
#include <vector>

#include "geometry/checks/doubts.h"

namespace bolthole {

inline std::vector<std::string> doubtLines(const Car& car) {
    std::vector<std::string> result;
    for (const Doubt& doubt : findDoubts(car)) {
        result.push_back(doubt.path + ": " + sentence(doubt.finding));
    }
    return result;
}

}  // namespace bolthole
