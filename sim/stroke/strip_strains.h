// The strains of the strip in the state that is evaluated: of its elements, and of the sections at its nodes,
// whose strains are the means of both elements'. Terms of an increment's energy read them.
//
// Units  mm, 1/mm, rad.

#pragma once

#include <vector>

#include "sim/material/section_shape.h"
#include "sim/strip/beam_element.h"

namespace overbend::stroke {

struct NodeSection {
    int left = 0, right = 0;  // its elements; the same one at the strip's ends
    material::SectionStrain strain = material::SectionStrain(1.0, 0.0, 0.0, 0.0);
    material::PointSquares squares;
    material::LayerHeights heights;
};

struct StripStrains {
    std::vector<strip::ElementStrain> elements;
    // Of the elements: G and k their own, c the mean of their nodes'. With c of their own, a warp that
    // changes its sign from node to node would stretch layers to and fro, which a metal that does not harden
    // does not mind.
    std::vector<material::SectionStrain> sections;
    std::vector<NodeSection> nodes;
    bool folded = false;     // a node's section has no stretch left; heights are not worked out then
    std::vector<double> of;  // the unknowns of this state
};

// The strains of the section at a node between two elements, and those of an element's own section.
inline material::SectionStrain node_section(const material::SectionStrain& before,
                                            const material::SectionStrain& behind) {
    return 0.5 * (before + behind);
}
inline material::SectionStrain element_section(const material::SectionStrain& own,
                                               const material::SectionStrain& first_node,
                                               const material::SectionStrain& second_node) {
    material::SectionStrain E = 0.5 * (first_node + second_node);
    E.head<2>() = own.head<2>();
    return E;
}

// u: strip::node_unknowns a node, then others. length: of the elements, mm. Strains of the same unknowns
// stay.
void strain_strip(const material::SectionShape& shape, const std::vector<double>& length,
                  const std::vector<double>& u, StripStrains& strains);

}  // namespace overbend::stroke
