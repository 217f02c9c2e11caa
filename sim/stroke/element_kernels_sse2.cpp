#include "sim/stroke/element_kernels.inc"

namespace overbend::stroke {

const ElementKernels& element_kernels_sse2() {
    static const ElementKernels kernels{start, any_gradient, any_hessian};
    return kernels;
}

}  // namespace overbend::stroke
