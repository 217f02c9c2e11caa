// The innermost loops over a section's layers, compiled once for each instruction set (SSE2, AVX2) and chosen
// when the program runs. They work on four layers at a time and give the same bits on each.
//
// What they compute: layer_law.h says it for one layer, section_shape.h for a section. Everything here is
// plain data, since an inline function that such a file compiles could be linked everywhere.
//
// Shapes  rows: of so many numbers (`padded`), one a layer; those beyond the last layer copy it, with weight
//         0.
// Units   mm, 1/mm, MPa.

#pragma once

namespace overbend::material {

constexpr int warps = 2;  // shapes of warp
constexpr int least_layers = 3, most_layers = 64;
constexpr int lanes = 4;  // layers at a time

constexpr int padded(int count) {
    return (count + lanes - 1) / lanes * lanes;
}

// Points that integrals over the thickness are made of.
constexpr int section_points = 5, point_lanes = padded(section_points);
// Places whose heights are worked out: the layers, then the lower and the upper face.
constexpr int most_places = most_layers + lanes;

// The strains of a section with the curvature q that R. Hill's section is taken at (section_shape.h): k
// itself, or what it is held at, with its derivatives.
struct HeldSection {
    double G = 1.0, k = 0.0, c[warps] = {};
    double q = 0.0, q_G = 0.0, q_k = 1.0, q_GG = 0.0, q_Gk = 0.0, q_kk = 0.0;
    bool same = true;  // q is k
    double thickness = 0.0;
    double middle[warps] = {};  // psi_j(0)
};

// A section's stretches at its points, by rows.
struct PointSquares {
    bool folded = false;  // no stretch left at one of them: there is no such section
    double value[point_lanes], by[2 + warps][point_lanes];
    double Gc[warps][point_lanes], kc[warps][point_lanes];
};

// Heights of a section's places, by rows, with their derivatives by (G, k, c_1, c_2).
struct HeightRows {
    double height[most_places], slope[2 + warps][most_places];
};

// Where the places and the points stand, and how much each point has in each place's height.
struct SectionPlaces {
    int places = 0;  // padded
    double height[most_places] = {};
    double point[point_lanes] = {};
    double share[section_points][most_places] = {};
};

struct SectionKernels {
    // False: folded.
    bool (*squares)(const HeldSection& at, const SectionPlaces& of, PointSquares& s);
    void (*heights)(const HeldSection& at, const SectionPlaces& of, const PointSquares& s, HeightRows& h);
    // The second derivatives of the heights from the first place on, so many (padded), each times its share:
    // into a symmetric matrix by columns.
    void (*height_curvature)(const HeldSection& at, const SectionPlaces& of, const PointSquares& s, int first,
                             int count, const double* share, double* hessian);
};
const SectionKernels& section_kernels();

// Those of each instruction set.
const SectionKernels& section_kernels_sse2();
const SectionKernels& section_kernels_avx2();
bool has_avx2();

}  // namespace overbend::material
