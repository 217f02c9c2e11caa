#include "sim/stroke/strip_strains.h"

#include <algorithm>

namespace overbend::stroke {

void strain_strip(const material::SectionShape& shape, const std::vector<double>& length,
                  const std::vector<double>& u, StripStrains& strains) {
    if (strains.of == u) return;
    strains.of = u;
    const int elements = static_cast<int>(length.size());
    strains.elements.resize(elements);
    strains.sections.resize(elements);
    strains.nodes.resize(elements + 1);
    strains.folded = false;
    for (int e = 0; e < elements; ++e)
        strains.elements[e] = strip::element_strain(&u[strip::node_unknowns * e], length[e]);
    for (int i = 0; i <= elements; ++i) {
        NodeSection& node = strains.nodes[i];
        node.left = std::max(0, i - 1), node.right = std::min(elements - 1, i);
        node.strain =
            node_section(strains.elements[node.left].section(), strains.elements[node.right].section());
        shape.squares(node.strain, node.squares);
        strains.folded = strains.folded || node.squares.folded;
        if (!node.squares.folded) shape.heights(node.strain, node.squares, node.heights);
    }
    for (int e = 0; e < elements; ++e)
        strains.sections[e] = element_section(strains.elements[e].section(), strains.nodes[e].strain,
                                              strains.nodes[e + 1].strain);
}

}  // namespace overbend::stroke
