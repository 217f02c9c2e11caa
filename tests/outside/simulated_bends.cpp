#include "tests/outside/simulated_bends.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <mutex>
#include <tuple>

#include "scenes/files/case/read_card.h"
#include "sim/material/flow_curve.h"
#include "sim/units.h"
#include "tests/on_all_cores.h"
#include "tests/stop_at.h"

namespace overbend::tests {

namespace {

job::VeeResult bend(const VeeSubject& s) {
    job::VeeBend vee;
    vee.material = files::read_card(s.card, ".");
    vee.nose_radius = s.nose_radius;
    vee.die_opening = s.die_opening;
    stroke::StrokeOptions options;
    options.record = false;
    return job::bend_vee(vee, stop_at(stroke::StopKind::free_angle, 90.0 * degree), options);
}

using Key = std::tuple<std::string, double, double>;
Key key_of(const VeeSubject& s) {
    return {s.card, s.nose_radius, s.die_opening};
}

std::map<Key, job::VeeResult>& known_bends() {
    static std::map<Key, job::VeeResult> all;
    return all;
}

}  // namespace

material::Card perfectly_plastic_card(double youngs_modulus, double poisson, double yield) {
    material::Card card;
    card.youngs_modulus = youngs_modulus;
    card.poisson = poisson;
    card.hardening = material::Linear{yield, 0.0};
    return card;
}

material::BendingPoint bend_to_curvature(const material::Card& card, double curvature, double thickness,
                                         double hold) {
    return material::bend_in_pure_moment(card, thickness, {curvature}, 41, hold).back();
}

material::BendingPoint bend_round(const material::Card& card, double inside_radius, double thickness,
                                  double hold) {
    return bend_to_curvature(card, 1.0 / (inside_radius + 0.5 * thickness), thickness, hold);
}

double k_factor_of(const material::BendingPoint& bent, double thickness) {
    // A layer's radius is its stretch over the curvature k of the blank, so k follows from the two surfaces,
    // and the blank of one radian is 1/k long.
    const double inner = std::exp(bent.inner_log_strain), outer = std::exp(bent.outer_log_strain);
    const double k = 0.5 * bent.curvature * (inner + outer);
    return (1.0 - inner) / (k * thickness);
}

void work_out(const std::vector<VeeSubject>& subjects) {
    std::mutex one_at_a_time;
    on_all_cores(static_cast<int>(subjects.size()), [&](int i) {
        job::VeeResult result = bend(subjects[i]);
        const std::lock_guard<std::mutex> guard(one_at_a_time);
        known_bends().insert_or_assign(key_of(subjects[i]), std::move(result));
    });
}

const job::VeeResult& vee_to_90(const std::string& card, double nose_radius, double die_opening) {
    const VeeSubject subject{card, nose_radius, die_opening};
    const auto found = known_bends().find(key_of(subject));
    if (found != known_bends().end()) return found->second;
    return known_bends()[key_of(subject)] = bend(subject);
}

double springback_degrees(const job::VeeResult& result) {
    return (result.loaded - result.free) / degree;
}

double tensile_strength_of_curve(const material::Card& card) {
    double greatest = 0.0;
    for (double p = 0.0; p < 1.0; p += 1e-4) {
        const double stress = material::flow_point(card.hardening, card.youngs_modulus, p).stress;
        greatest = std::max(greatest, stress * std::exp(-p - stress / card.youngs_modulus));
    }
    return greatest;
}

}  // namespace overbend::tests
