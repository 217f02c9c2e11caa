#include "sim/material/section_law_kernels.inc"

namespace overbend::material {

void section_law_sse2(const LaneLaw& law, const SectionLayers& of, const HeldSection& at, SectionSums& to) {
    any_section(law, of, at, to);
}

}  // namespace overbend::material
