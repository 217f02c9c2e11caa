#include "sim/material/kernels.h"

#include "sim/material/section_law_kernels.h"

namespace overbend::material {

bool has_avx2() {
    static const bool has = __builtin_cpu_supports("avx2");
    return has;
}

const SectionKernels& section_kernels() {
    return has_avx2() ? section_kernels_avx2() : section_kernels_sse2();
}

void section_law(const LaneLaw& law, const SectionLayers& of, const HeldSection& at, SectionSums& to) {
    return has_avx2() ? section_law_avx2(law, of, at, to) : section_law_sse2(law, of, at, to);
}

}  // namespace overbend::material
