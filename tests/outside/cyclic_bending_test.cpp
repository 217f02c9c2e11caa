// Bending one section to and fro: the closed form for linear kinematic hardening, and the Bauschinger effect.
//
// A layer at height y under linear kinematic hardening has three pieces of stress: elastic with E', then
// along the straight line of slope H = E' C'/(E' + C') through the yield point Y', then, bent back by more
// than 2 Y'/E', along the parallel line 2 Y' (1 - H/E') lower, and so on: Masing's rule. Its strain is y k,
// so with the first curve f(e) = E' e up to Y'/E', Y' + H (e - Y'/E') beyond, and F(k) = 2 int_0^(T/2) f(k y)
// y dy:
//   loading           M = F(k)
//   after k1 back     M = F(k1) - 2 F((k1 - k)/2)
//   after k2 forth    M = F(k1) - 2 F((k1 - k2)/2) + 2 F((k - k2)/2)   while |k| < |k1|
//   F(k) = E' k T^3/12                                         for k T/2 < e_Y = Y'/E'
//   F(k) = (E' - H) (2/3) k y_c^3 + (E' - H) e_Y (h^2 - y_c^2) + H (2/3) k h^3,   h = T/2, y_c = e_Y / k
//
// Source  G. Masing, 1926, and textbooks of plasticity (from memory); integrated here.
// Here    a narrow strip, free across its width: E' = E, Y' = Y, C' = C. Half of the yield limit is the flow
//         curve, which stays; the hardening is a back stress without recovery.
// Holds   small strains: k T <= 0.02.
// Allowed 0.5 per cent of the greatest moment; curvature where it is free 0.5 per cent of the greatest.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <vector>

#include "sim/material/pure_bending.h"
#include "tests/outside/table.h"

using namespace overbend::material;
using namespace overbend::tests;

namespace {

constexpr double narrow = 0.0;
constexpr double E = 200e3, Y = 300.0, C = 20e3, T = 1.0;  // invented

Card kinematic() {
    Card card;
    card.youngs_modulus = E;
    card.hardening = Linear{Y, 0.0};
    card.backstress = {{C, 0.0}};
    return card;
}

// The same line in tension, but the yield limit grows instead of moving.
Card isotropic() {
    Card card = kinematic();
    card.hardening = Linear{Y, C};
    card.backstress.clear();
    return card;
}

// F(k) of the head; odd in k.
double first_moment(double k) {
    const double H = E * C / (E + C), first = Y / E, half = T / 2.0, size = std::abs(k);
    if (size * half <= first) return E * k * T * T * T / 12.0;
    const double core = first / size;
    const double moment = (E - H) * 2.0 / 3.0 * size * core * core * core +
                          (E - H) * first * (half * half - core * core) +
                          H * 2.0 / 3.0 * size * half * half * half;
    return k < 0.0 ? -moment : moment;
}

// Along the curvatures of `turns`, from the last but one to the last of them.
double loop_moment(const std::vector<double>& turns, double k) {
    double moment = turns.empty() ? first_moment(k) : first_moment(turns[0]);
    for (std::size_t i = 1; i <= turns.size() && !turns.empty(); ++i) {
        const double to = i < turns.size() ? turns[i] : k;
        moment += 2.0 * first_moment((to - turns[i - 1]) / 2.0);
    }
    return moment;
}

// Points of a path through the turns, `pieces` between two of them.
std::vector<double> path_through(const std::vector<double>& turns, int pieces) {
    std::vector<double> path;
    double from = 0.0;
    for (const double to : turns) {
        for (int i = 1; i <= pieces; ++i) path.push_back(from + (to - from) * i / pieces);
        from = to;
    }
    return path;
}

// Curvature at which the strip, bent back from the first turn, has left the elastic line by an offset.
double reverse_yield(const Card& card, double turn) {
    const std::vector<double> path = path_through({turn, -turn}, 200);
    const std::vector<BendingPoint> points = bend_in_pure_moment(card, T, path, 41, narrow);
    const double stiffness = E * T * T * T / 12.0;
    for (std::size_t i = 200; i < points.size(); ++i) {
        const double elastic = points[199].moment + stiffness * (path[i] - turn);
        if (points[i].moment - elastic > 0.02 * points[199].moment) return points[i].moment;
    }
    return -1e300;
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("a section bent to and fro follows the closed form of linear kinematic hardening") {
        const double most = 0.02;
        const std::vector<double> turns = {most, -0.6 * most, 0.8 * most};
        const int pieces = 8;
        const std::vector<double> path = path_through(turns, pieces);
        const std::vector<BendingPoint> points = bend_in_pure_moment(kinematic(), T, path, 41, narrow);
        const double greatest = first_moment(most);
        const char* legs[] = {"forth", "back", "forth again"};
        for (std::size_t i = 0; i < path.size(); ++i) {
            const std::size_t leg = i / pieces;
            char name[80];
            std::snprintf(name, sizeof name, "loop, %s to curvature %g", legs[leg], path[i]);
            const std::vector<double> before(turns.begin(), turns.begin() + static_cast<std::ptrdiff_t>(leg));
            const About about{"cyclic bending", "Masing's rule", name, "moment", "N mm/mm"};
            compare(about, loop_moment(before, path[i]), points[i].moment, absolute(0.005 * greatest));
        }
        // Released at the ends of the legs: these do not yield backwards.
        for (std::size_t leg = 0; leg < turns.size(); ++leg) {
            const std::vector<double> before(turns.begin(), turns.begin() + static_cast<std::ptrdiff_t>(leg));
            const double moment = loop_moment(before, turns[leg]);
            const double free = turns[leg] - moment / (E * T * T * T / 12.0);
            const About about{"cyclic bending", "Masing's rule", std::string("release after ") + legs[leg],
                              "free curvature", "1/mm"};
            compare(about, free, points[pieces * (leg + 1) - 1].free_curvature, absolute(0.005 * most));
        }
    }

    // Both cards draw one line in tension. Bent back, the strip whose yield limit has moved yields at a
    // smaller moment than the one whose limit has grown.
    TEST_CASE("a back stress shows in the loop: the strip yields earlier when it is bent back") {
        const double turn = 0.05;
        const About forth{"cyclic bending", "linear hardening", "isotropic and kinematic, forth",
                          "moment, both cards", "N mm/mm"};
        const auto at = [&](const Card& card) {
            return bend_in_pure_moment(card, T, path_through({turn}, 20), 41, narrow).back().moment;
        };
        compare(forth, at(isotropic()), at(kinematic()), relative(0.001));
        const double with = reverse_yield(kinematic(), turn), without = reverse_yield(isotropic(), turn);
        predict({"cyclic bending", "Bauschinger effect", "kinematic", "moment of reverse yield", "N mm/mm"},
                with, with > without && with > -at(kinematic()),
                "bent back, kinematic hardening yields at a smaller opposite moment than isotropic does");
        predict({"cyclic bending", "Bauschinger effect", "isotropic", "moment of reverse yield", "N mm/mm"},
                without, without < with,
                "bent back, kinematic hardening yields at a smaller opposite moment than isotropic does");
    }

}  // TEST_SUITE
