#include "sim/stroke/sections.h"

#include <algorithm>

namespace overbend::stroke {

double shear_stiffness(const material::LayerLaw& law, double thickness) {
    return 5.0 / 6.0 * law.shear_modulus * thickness;
}

void start_sections(const material::LayerLaw& law, const strip::StripState& strip, Sections& sections) {
    sections.starts.resize(strip.history.size());
    for (std::size_t i = 0; i < strip.history.size(); ++i)
        sections.starts[i] = material::start_of(law, strip.history[i]);
    sections.flow.assign(strip.history.size(), 0.0);
    sections.active.resize(strip.elements());
}

std::optional<double> add_sections(const material::LayerLaw& law, const strip::StripState& strip,
                                   const std::vector<double>& length,
                                   const std::vector<strip::ElementStrain>& strain, Sections& sections,
                                   Equations& to) {
    const double shear = shear_stiffness(law, strip.thickness);
    const int layers = strip.layers();
    double energy = 0.0;
    strip::Vec6 gradient;
    strip::Mat6 hessian;
    for (int e = 0; e < strip.elements(); ++e) {
        const std::size_t at = static_cast<std::size_t>(e) * layers;
        const material::SectionResponse section =
            material::respond(law, strip.layer_height.data(), strip.layer_weight.data(), layers,
                              &sections.starts[at], &sections.flow[at], strain[e].G, strain[e].k);
        if (section.folded) return std::nullopt;
        strip::element_forces(strain[e], section, shear, length[e], gradient, hessian);
        energy += length[e] * (section.energy + 0.5 * shear * strain[e].g * strain[e].g);
        sections.active[e] = section.active;
        to.matrix.join(3 * e, 3 * e + 5);
        for (int i = 0; i < 6; ++i) {
            to.gradient[3 * e + i] += gradient(i);
            for (int j = 0; j < 6; ++j) to.matrix.at(3 * e + i, 3 * e + j) += hessian(i, j);
        }
    }
    return energy;
}

}  // namespace overbend::stroke
