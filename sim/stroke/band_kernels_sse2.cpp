#include "sim/stroke/band_kernels.inc"

namespace overbend::stroke {

const BandKernels& band_kernels_sse2() {
    static const BandKernels kernels{factor, clear, solve};
    return kernels;
}

}  // namespace overbend::stroke
