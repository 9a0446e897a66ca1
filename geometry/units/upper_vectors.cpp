#include "geometry/units/upper_vectors.h"

#ifdef __x86_64__
#include <immintrin.h>
#endif

namespace bolthole {

#ifdef __x86_64__

namespace {

__attribute__((target("avx"))) void clearNow() {
    _mm256_zeroupper();
}

}  // namespace

void clearUpperVectors() {
    static const bool hasThem = __builtin_cpu_supports("avx") != 0;
    if (hasThem) {
        clearNow();
    }
}

#else

void clearUpperVectors() {}

#endif

}  // namespace bolthole
