// The invented cars of demo/.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <utility>

#include "app/carfile/car_file.h"

namespace bolthole {

/// The demo car of that name, "light-coupe"; fails where it can't be read.
inline Car demoCar(const std::string& name) {
    ReadResult read = readCarFile(std::string(BOLTHOLE_DEMO_DIR) + "/" + name + ".bolt.json");
    EXPECT_TRUE(read.loaded) << read.problem.line();
    return read.loaded ? std::move(read.loaded->car) : Car{};
}

}  // namespace bolthole
