#include "sim/material/section_kernels.inc"

namespace overbend::material {

const SectionKernels& section_kernels_sse2() {
    static const SectionKernels kernels{squares, heights, height_curvature};
    return kernels;
}

}  // namespace overbend::material
