// What the processor itself says of its registers: XGETBV with 1 in ECX tells which parts are in use (Intel
// 64 and IA-32 Architectures Software Developer's Manual, volume 1, "Managing State Using the XSAVE Feature
// Set", from memory).
#include "geometry/units/upper_vectors.h"

#include <gtest/gtest.h>

#ifdef __x86_64__

#include <cpuid.h>
#include <immintrin.h>

namespace bolthole {
namespace {

bool tellsWhatIsInUse() {
    unsigned a = 0;
    unsigned b = 0;
    unsigned c = 0;
    unsigned d = 0;
    constexpr unsigned kXsave = 0xD;
    return __builtin_cpu_supports("avx") != 0 && __get_cpuid_count(kXsave, 1, &a, &b, &c, &d) != 0 &&
           (a & 4U) != 0;
}

__attribute__((target("xsave"))) bool areUppersInUse() {
    return (_xgetbv(1) & 4U) != 0;
}

// Not through an intrinsic, after which the compiler would clear them itself.
void useUppers() {
    asm volatile("vpcmpeqb %%xmm0, %%xmm0, %%xmm0\n vinsertf128 $1, %%xmm0, %%ymm0, %%ymm0" ::: "xmm0");
}

TEST(UpperVectors, AreOutOfUseOnceCleared) {
    if (!tellsWhatIsInUse()) {
        GTEST_SKIP() << "this processor has none or does not tell";
    }
    useUppers();
    ASSERT_TRUE(areUppersInUse());
    clearUpperVectors();
    EXPECT_FALSE(areUppersInUse());
}

}  // namespace
}  // namespace bolthole

#endif
