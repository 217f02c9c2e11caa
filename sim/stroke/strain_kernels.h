// From second derivatives by strains to those by the unknowns of nodes (equations.h), compiled once for each
// instruction set, as in sim/material/kernels.h: plain data.
//
// Units  mm, rad, N per mm of width.

#pragma once

namespace overbend::stroke {

constexpr int unknowns_of_node = 5;  // x, y, theta, phi_1, phi_2

// How an element's strains change with its nodes' unknowns (sim/strip/beam_element.h).
struct ElementChange {
    double tx = 1.0, ty = 0.0, G = 1.0, g = 0.0;
    double over = 1.0;  // 1/length
};

// Second derivatives by an element's strains (rows) and by another one's or its own: G, k, c_1, c_2, g,
// phi_1, phi_2, and one that is always 0. H has a row of them after the other.
constexpr int pair_strains = 8;

struct StrainKernels {
    // Adds an element's own, and those of G and g themselves under the forces N and Q, to the band matrix
    // (band_kernels.h) from its row `first` on.
    void (*add_own)(const ElementChange& element, const double* H, double N, double Q, double* band,
                    int first);
    // Adds those by an element's strains and by another's, and their transpose.
    void (*add_pair)(const ElementChange& a, const ElementChange& b, const double* H, double* band,
                     int first_of_a, int first_of_b);
    // Adds a face's (surface.h): K, by columns, by the eight of its element, whose heights y1 and y2 change
    // with the `around` unknowns of four nodes by these rows. first: of those nodes' unknowns.
    void (*add_face)(const double* K, const double* by_y1, const double* by_y2, double* band, int first);
};
const StrainKernels& strain_kernels();

const StrainKernels& strain_kernels_sse2();
const StrainKernels& strain_kernels_avx2();

}  // namespace overbend::stroke
