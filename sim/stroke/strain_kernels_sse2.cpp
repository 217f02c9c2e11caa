#include "sim/stroke/strain_kernels.inc"

namespace overbend::stroke {

const StrainKernels& strain_kernels_sse2() {
    static const StrainKernels kernels{add_own, add_pair, add_face};
    return kernels;
}

}  // namespace overbend::stroke
