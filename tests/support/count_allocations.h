// Counts every call of malloc in the program that includes it, to which operator new and Eigen's own storage
// both come down in glibc. For one source file of a program only.
#pragma once

#include <gtest/gtest.h>

#include <atomic>
#include <cstdlib>

// g++ says so by a macro of its own, clang by __has_feature, which headers define for g++ as well.
#if defined(__SANITIZE_ADDRESS__)
#define BOLTHOLE_FOREIGN_MALLOC 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define BOLTHOLE_FOREIGN_MALLOC 1
#endif
#endif

namespace bolthole {

inline std::atomic<long> allocations{0};

/// Under AddressSanitizer malloc is its own and can't be counted.
class CountedAllocation : public testing::Test {
  protected:
    void SetUp() override {
#ifdef BOLTHOLE_FOREIGN_MALLOC
        GTEST_SKIP() << "malloc belongs to AddressSanitizer";
#endif
    }
};

}  // namespace bolthole

#ifndef BOLTHOLE_FOREIGN_MALLOC
extern "C" {
void* __libc_malloc(std::size_t size);  // NOLINT(readability-identifier-naming): glibc's name
void* malloc(std::size_t size);

inline __attribute__((used)) void* malloc(std::size_t size) {
    ++bolthole::allocations;
    return __libc_malloc(size);
}
}
#endif
