#include "tests/support/count_allocations.h"

#include <cstdlib>

namespace bolthole {

std::atomic<long> allocations{0};

}  // namespace bolthole

#ifndef __SANITIZE_ADDRESS__
extern "C" {
void* __libc_malloc(std::size_t size);  // NOLINT(readability-identifier-naming): glibc's name

void* malloc(std::size_t size) {
    ++bolthole::allocations;
    return __libc_malloc(size);
}
}
#endif
