#include "sim/material/kernels.h"

namespace overbend::material {

bool has_avx2() {
    static const bool has = __builtin_cpu_supports("avx2");
    return has;
}

const SectionKernels& section_kernels() {
    return has_avx2() ? section_kernels_avx2() : section_kernels_sse2();
}

}  // namespace overbend::material
