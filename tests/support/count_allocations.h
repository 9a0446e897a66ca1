// Counts every call of malloc in the program that is linked with it, to which operator new and Eigen's own
// storage both come down in glibc.
#pragma once

#include <gtest/gtest.h>

#include <atomic>

#include "tests/support/watched.h"

namespace bolthole {

extern std::atomic<long> allocations;

/// Under AddressSanitizer malloc is its own and can't be counted.
class CountedAllocation : public testing::Test {
  protected:
    void SetUp() override {
        if (isWatched()) {
            GTEST_SKIP() << "malloc belongs to AddressSanitizer";
        }
    }
};

}  // namespace bolthole
