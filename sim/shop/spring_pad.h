// Choosing a helical compression spring of round wire for a pad, a clamp or an ejector.
//
// Ends closed and ground: two turns more than the active ones.
//
// Units   mm, N, MPa.
// Source  R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, chapter 10, and V. B.
//         Bhandari, Design of Machine Elements, chapter 10, from memory but for the example that the checks
//         use:
//           rate k = G d^4 / (8 D^3 n),  solid length (n + 2) d,
//           shear stress 8 F D K / (pi d^3),  Wahl's K = (4 C - 1)/(4 C - 4) + 0.615/C,  C = D/d,
//           does not buckle between flat plates while free length < 5.26 D (steel)
//         strength of wire A / d^m and the share of it that is allowed in shear before the spring sets:
//         Shigley's tables 10-4 and 10-6 (from memory); the wires are the likes of EN 10270-1 and 10270-2
//         least gaps between the turns under full load: n (0.0015 D^2/d + 0.1 d), EN 13906-1 (from memory)
//         diameters: the R20 series of preferred numbers, ISO 3, rounded as wire is sold (from memory)

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/tool/spring.h"

namespace overbend::shop {

struct SpringWire {
    std::string name;                // "music wire"
    double A = 0.0, m = 0.0;         // strength A / d^m, MPa with d in mm
    double least = 0.0, most = 0.0;  // diameters it is drawn to, mm
    double shear_modulus = 0.0;      // MPa
    double allowed = 0.0;            // shear stress at full load over the strength
    double strength(double diameter) const;
};
const std::vector<SpringWire>& spring_wires();
const std::vector<double>& wire_series();  // diameters, mm, rising

double wahl_factor(double index);                                      // index D/d > 1
double shear_stress(const tool::HelicalSpring& spring, double force);  // with Wahl's factor, MPa

// Requirements for each of the springs that share the load.
struct SpringRequest {
    double force_start = 0.0;                    // N, installed, >= 0
    double force_end = 0.0;                      // N, at the end of the travel, > force_start
    double travel = 0.0;                         // mm, > 0
    double most_outside = 1e9;                   // mm, room for the coil's outer diameter
    double most_length = 1e9;                    // mm, room for the installed spring
    std::optional<double> index = std::nullopt;  // D/d; else 4 to 12 are tried
    std::optional<double> gap = std::nullopt;  // mm, between neighbouring turns at full load; else EN 13906-1
};

struct ChosenSpring {
    tool::HelicalSpring spring;
    std::string wire;   // its name
    double rate = 0.0;  // N/mm
    double total_turns = 0.0;
    double solid_length = 0.0;      // mm
    double free_length = 0.0;       // mm
    double installed_length = 0.0;  // mm, at the start of the travel
    double pitch = 0.0;             // mm, of the free spring
    double force_start = 0.0;       // N; of one that was chosen as it comes out with whole half turns
    double force_end = 0.0;
    double stress = 0.0;          // MPa, at force_end
    double allowed_stress = 0.0;  // MPa
    double slenderness = 0.0;     // free length / D; buckles from 5.26 on
    double mass = 0.0;            // g
};

// The lightest that is sufficient. nothing: no spring of the series fits.
// Throws OutOfRange: a request that cannot be.
std::optional<ChosenSpring> choose_spring(const SpringRequest& request);

// A spring at its work: pressed to force_end (N, > 0) at the end of a travel (mm, > 0). Its free length is
// the least with which it does that and its turns keep their gaps.
ChosenSpring spring_at_work(const tool::HelicalSpring& spring, const SpringWire& wire, double force_end,
                            double travel, std::optional<double> gap = std::nullopt);

// One with this wire and coil, whether it is strong and stable enough or not: turns, lengths, stress.
ChosenSpring spring_of(const SpringRequest& request, const SpringWire& wire, double diameter,
                       double coil_diameter);

// How springs stand in a block, and the room that each of them has: its outside diameter at most, so that
// they touch at most. The arrangement in rows with most room; of equal ones that with most in a row.
struct SpringRows {
    int in_a_row = 1;   // across the block's width
    int rows = 1;       // along the bend line
    double each = 0.0;  // mm
};
// count >= 1; width and length of the block > 0, mm.
SpringRows spring_rows(int count, double width, double length);

constexpr double buckles_from = 5.26;  // free length / D

}  // namespace overbend::shop
