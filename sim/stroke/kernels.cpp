// Which instruction set's kernels are used.

#include "sim/stroke/band_kernels.h"
#include "sim/stroke/element_kernels.h"
#include "sim/stroke/strain_kernels.h"

namespace overbend::stroke {

const ElementKernels& element_kernels() {
    return material::has_avx2() ? element_kernels_avx2() : element_kernels_sse2();
}

const BandKernels& band_kernels() {
    return material::has_avx2() ? band_kernels_avx2() : band_kernels_sse2();
}

const StrainKernels& strain_kernels() {
    return material::has_avx2() ? strain_kernels_avx2() : strain_kernels_sse2();
}

}  // namespace overbend::stroke
