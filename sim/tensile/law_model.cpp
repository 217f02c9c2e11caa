#include "sim/tensile/law_model.h"

#include <cmath>

namespace overbend::tensile {

const char* law_word(Law law) {
    static const char* const names[] = {"swift", "hollomon", "voce", "linear", "swift-voce", "table"};
    return names[static_cast<int>(law)];
}

int free_numbers(Law law) {
    return law == Law::swift || law == Law::voce ? 3 : 2;
}

ModelPoint model_point(Law law, const Eigen::VectorXd& free, double modulus, double p) {
    ModelPoint m;
    const Eigen::VectorXd v = free.array().exp();
    m.slopes.resize(v.size());
    if (law == Law::swift) {
        m.stress = v[0] * std::pow(v[1] + p, v[2]);
        m.slopes << m.stress, m.stress * v[2] * v[1] / (v[1] + p), m.stress * v[2] * std::log(v[1] + p);
    } else if (law == Law::hollomon) {
        const double K = v[0], n = v[1], rest = 1.0 - n;
        const double e0 = std::pow(K / modulus, 1.0 / rest), part = n * e0 / (e0 + p);
        m.stress = K * std::pow(e0 + p, n);
        m.slopes << m.stress * (1.0 + part / rest),
            n * m.stress * (std::log(e0 + p) + part * std::log(K / modulus) / (rest * rest));
    } else if (law == Law::voce) {
        const double fade = std::exp(-v[2] * p);
        m.stress = v[0] + v[1] * (1.0 - fade);
        m.slopes << v[0], v[1] * (1.0 - fade), v[1] * v[2] * p * fade;
    } else {
        m.stress = v[0] + v[1] * p;
        m.slopes << v[0], v[1] * p;
    }
    return m;
}

material::Hardening hardening_of(Law law, const Eigen::VectorXd& free) {
    const Eigen::VectorXd v = free.array().exp();
    if (law == Law::swift) return material::Swift{v[0], v[1], v[2]};
    if (law == Law::hollomon) return material::Hollomon{v[0], v[1]};
    if (law == Law::voce) return material::Voce{v[0], v[1], v[2]};
    return material::Linear{v[0], v[1]};
}

}  // namespace overbend::tensile
