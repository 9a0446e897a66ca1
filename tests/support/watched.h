// Whether AddressSanitizer watches this program. Asked as it runs: what the tests are compiled to is the same
// with and without it.
#pragma once

extern "C" __attribute__((weak)) void
__asan_init();  // NOLINT(readability-identifier-naming): the runtime's name

namespace bolthole {

[[nodiscard]] inline bool isWatched() {
    return __asan_init != nullptr;
}

}  // namespace bolthole
