// Edits as tests make them.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "geometry/edits/edit.h"

namespace bolthole {

/// The car with the edit; fails where it is refused.
inline Car applied(const Car& car, const Edit& edit) {
    EditResult result = apply(car, edit);
    EXPECT_EQ(result.refusal, "") << describe(edit, car);
    return std::move(result.car);
}

/// Fails unless the edit is refused for that reason and the car left as it was.
inline void expectRefused(const Car& car, const Edit& edit, const std::string& reason) {
    const EditResult result = apply(car, edit);
    EXPECT_NE(result.refusal, "");
    EXPECT_THAT(result.refusal, testing::HasSubstr(reason));
    EXPECT_EQ(result.car, car);
}

}  // namespace bolthole
