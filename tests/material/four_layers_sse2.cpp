#include "tests/material/four_layers.inc"

namespace overbend::tests {

FourAnswers four_layers_sse2(const material::LaneLaw& law, double* rows, const double* hoop,
                             const double* shear) {
    return any_answers(law, rows, hoop, shear);
}

}  // namespace overbend::tests
