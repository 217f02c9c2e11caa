#include "sim/stroke/hold.h"

#include <algorithm>

#include "sim/strip/beam_element.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

Hold hold_rigid_modes(const ContactScene& scene, const ContactSet& contacts, double modulus) {
    const std::vector<double>& length = *scene.length;
    std::vector<int> held;
    held.reserve(length.size() + contacts.groups_used);
    for (int k = 0; k < contacts.groups_used; ++k) held.push_back(contacts.groups[k].element);
    if (held.size() < 2)
        for (int e = scene.first_element; e <= scene.last_element; ++e) held.push_back(e);
    double whole = 0.0, zone = 0.0;
    for (const int e : held) whole += length[e];
    for (int e = scene.first_element; e <= scene.last_element; ++e) zone += length[e];
    const double part = std::min(zone, limits::held_length * scene.thickness) / (whole * scene.thickness);
    Hold hold;
    hold.along.assign(length.size() + 1, 0.0);
    hold.across = hold.along;
    for (const int e : held)
        for (const int i : {e, e + 1}) {
            hold.along[i] += 0.5 * part * length[e] * limits::hold_along * modulus;
            hold.across[i] += 0.5 * part * length[e] * limits::hold_across * modulus;
        }
    return hold;
}

double add_hold(const Hold& hold, const std::vector<double>& before, const std::vector<double>& u,
                Equations& to) {
    double energy = 0.0;
    for (int i = 0; i < static_cast<int>(hold.along.size()); ++i) {
        const double dx = u[strip::node_unknowns * i] - before[strip::node_unknowns * i],
                     dy = u[strip::node_unknowns * i + 1] - before[strip::node_unknowns * i + 1];
        energy += 0.5 * (hold.along[i] * dx * dx + hold.across[i] * dy * dy);
        to.gradient[strip::node_unknowns * i] += hold.along[i] * dx;
        to.gradient[strip::node_unknowns * i + 1] += hold.across[i] * dy;
        to.matrix.at(strip::node_unknowns * i, strip::node_unknowns * i) += hold.along[i];
        to.matrix.at(strip::node_unknowns * i + 1, strip::node_unknowns * i + 1) += hold.across[i];
    }
    return energy;
}

}  // namespace overbend::stroke
