// The pressure where a strip bears on a rounded edge: line contact of two elastic cylinders.
//
// Units  mm, MPa; force N per mm of line.
// Source H. Hertz; K. L. Johnson, Contact Mechanics, Cambridge 1985, section 4.2(c):
//          a = sqrt(4 P R / (pi E*)),  p0 = sqrt(P E* / (pi R)),  1/R = 1/R1 + 1/R2,
//          1/E* = (1 - nu1^2)/E1 + (1 - nu2^2)/E2
// Holds  while both stay elastic and the band of contact is narrow beside R. A strip of metal that yields
//        does not bear more than three times its flow stress (D. Tabor, The Hardness of Metals, Oxford 1951):
//        the pressure is cut off there, which is what counts under a nose. The mean pressure, p0 pi/4 while
//        both are elastic, is what indents: once one of them yields, the band widens and the mean is less
//        than the elastic formula has it, so that this errs to the safe side.

#pragma once

namespace overbend::shop {

struct Elastic {
    double youngs_modulus = 0.0;  // MPa, > 0
    double poisson = 0.0;
};
double contact_modulus(const Elastic& a, const Elastic& b);  // E*, MPa

struct LineContact {
    double pressure = 0.0;    // MPa, greatest
    double mean = 0.0;        // MPa, over the band
    double half_width = 0.0;  // mm, of the band of contact
    bool capped = false;      // the strip yields before the pressure of the elastic formula is reached
};
// force        N per mm, >= 0
// modulus      E*, MPa, > 0
// radius       mm, relative, > 0; of an edge against a flat strip its own
// flow_stress  MPa, of the softer body; 0: not known, no cut
LineContact line_contact(double force, double modulus, double radius, double flow_stress);

// The radius, mm, at which the elastic formula comes to that pressure: P E* / (pi p^2).
double radius_for_pressure(double force, double modulus, double pressure);

}  // namespace overbend::shop
