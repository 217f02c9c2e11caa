#include "sim/stroke/recorded_section.h"

#include <algorithm>
#include <cmath>

#include "sim/stroke/strip_strains.h"

namespace overbend::stroke {

namespace {

// G, k and the gradients of the warp of an element.
material::SectionStrain own(const Recording& r, const State& s, int e) {
    material::SectionStrain E(s.stretch[e], s.curvature[e], 0.0, 0.0);
    if (s.warp.empty()) return E;
    const double length = std::abs(r.blank_position[e + 1] - r.blank_position[e]);
    for (int j = 0; j < material::warps; ++j)
        E(2 + j) = (s.warp[material::warps * (e + 1) + j] - s.warp[material::warps * e + j]) / length;
    return E;
}

}  // namespace

material::SectionStrain section_at_node(const Recording& recording, const State& state, int node) {
    const int last = static_cast<int>(state.stretch.size()) - 1;
    return node_section(own(recording, state, std::max(0, node - 1)),
                        own(recording, state, std::min(last, node)));
}

material::SectionStrain section_of(const Recording& recording, const State& state, int element) {
    return element_section(own(recording, state, element), section_at_node(recording, state, element),
                           section_at_node(recording, state, element + 1));
}

}  // namespace overbend::stroke
