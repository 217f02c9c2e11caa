// Where the layers of a section are, and how far they are stretched, when the section warps.
//
// A place of the strip is r(s) + y n + u t: s along the undeformed mid-line, t and n the section's
// directions, y the height of the layer that was at z, and u its warp,
//   u(z) = sum_j psi_j(z) phi_j,   psi_j' = L_j(2 z/t)
//   psi_j = t (L_{j+1} - L_{j-1})(2 z/t) / (2 (2 j + 1))
// with Legendre's polynomials L: both shapes vanish at the faces. The strip strains at constant area,
// dy/dz = 1/lambda, so that with c_j = dphi_j/ds the stretch lambda = G - k y + u' of a layer has
//   d(lambda^2)/dz = -2 k + 2 lambda sum_j psi_j' c_j,   lambda(0) = G + sum_j psi_j(0) c_j
// which to the first order in c is
//   lambda^2 = G^2 - 2 z k + 2 sum_j T_j c_j,   T_j = G psi_j(0) + int_0^z sqrt(G^2 - 2 z' k) psi_j' dz'
// and y(z) = int_0^z dz'/lambda. Without warp: y = 2 z/(G + lambda), which is R. Hill's section (section.h).
// T_j has to have what the warp does to y: with T_j = sqrt(G^2 - 2 z k) psi_j strips kink. It is taken at a
// curvature that is held, from t k = 0.85 G^2 on, short of 0.95 G^2: at G^2 R. Hill's section folds, but the
// warp can keep the inner layers from folding beyond, as in a closed hem.
//
// T_j is integrated exactly; of 1/lambda what the warp changes, as the polynomial through five Gauss points
// over the thickness.
//
// Units   mm, 1/mm; stretches and phi have none.
// Source  derived here. The warp shapes are those of the hierarchic theories of plates, B. A. Szabo &
//         I. Babuska, Finite Element Analysis, Wiley 1991 (from memory).

#pragma once

#include <Eigen/Core>
#include <vector>

#include "sim/material/kernels.h"

namespace overbend::material {

// (G, k, c_1, c_2)
constexpr int section_strains = 2 + warps;
using SectionStrain = Eigen::Matrix<double, section_strains, 1>;
using SectionHessian = Eigen::Matrix<double, section_strains, section_strains>;

// Layers of a section: heights and weights of Gauss-Legendre points over [-t/2, t/2], rising.
// count: least_layers to most_layers.
struct Layers {
    std::vector<double> height;  // mm
    std::vector<double> weight;  // mm, sum = thickness
};
Layers gauss_layers(double thickness, int count);

// A layer's lambda^2 with its derivatives by the section's strains.
struct LayerSquare {
    double value;
    SectionStrain by;
    double Gc[warps], kc[warps];  // second ones
};
// Those by G and k alone; those by c twice are 0.
struct SquareCurvature {
    double GG, Gk, kk;
};

// Heights of every layer, then (at SectionShape::face) of the lower and the upper face.
struct LayerHeights : HeightRows {
    double y(int i) const { return height[i]; }
    SectionStrain by(int i) const { return {slope[0][i], slope[1][i], slope[2][i], slope[3][i]}; }
};

class SectionShape {
  public:
    explicit SectionShape(const Layers& layers);
    // Of any heights, up to most_layers, without weights: for drawing.
    SectionShape(double thickness, const std::vector<double>& heights);

    int layers() const { return layers_; }
    int padded_layers() const { return padded(layers_); }
    // Its place among the heights.
    int face(double side) const { return side > 0.0 ? padded_layers() + 1 : padded_layers(); }
    double thickness() const { return thickness_; }
    double height(int i) const { return places_.height[i]; }
    double weight(int i) const { return weight_[i]; }
    double warp(int j, int i) const { return warp_[j][i]; }         // psi_j of a layer, mm
    double warp_slope(int j, int i) const { return slope_[j][i]; }  // psi_j'
    // The same as padded rows.
    const double* heights() const { return places_.height; }
    const double* weights() const { return weight_; }
    const double* warp_row(int j) const { return warp_[j]; }
    const double* warp_slope_row(int j) const { return slope_[j]; }

    const SectionPlaces& places() const { return places_; }

    HeldSection held(const SectionStrain& E) const;

    // Of every layer. False: a layer has no stretch left, so there is no such section, and s is not filled.
    bool squares(const SectionStrain& E, LayerSquare* s) const;
    void curvatures(const SectionStrain& E, SquareCurvature* s) const;  // where it is not folded
    void squares(const SectionStrain& E, PointSquares& s) const;
    // Of a face, where the section is not folded.
    double face_square(const SectionStrain& E, double side) const;
    // Heights at E; none where it is folded.
    bool heights(const SectionStrain& E, LayerHeights& h) const;
    // s: of E.
    void heights(const SectionStrain& E, const PointSquares& s, LayerHeights& h) const;
    // The second derivatives by the strains of sum_i share_i y_i; share: of the layers' heights, as a padded
    // row.
    SectionHessian height_curvature(const SectionStrain& E, const PointSquares& s, const double* share) const;
    // Of one face's height.
    SectionHessian face_curvature(const SectionStrain& E, const PointSquares& s, double side) const;

  private:
    int layers_ = 0;
    double thickness_ = 0.0;
    SectionPlaces places_;
    double weight_[most_layers] = {};
    double warp_[warps][most_layers] = {}, slope_[warps][most_layers] = {};
    double middle_[warps] = {};  // psi_j(0)
};

}  // namespace overbend::material
