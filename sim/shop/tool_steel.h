// Steels of which tools are made, and their allowable stresses.
//
// Units  MPa, kg/m3.

#pragma once

#include <string>

namespace overbend::shop {

enum class Hardening { none, through };  // as delivered; hardened and tempered after it was cut

struct ToolSteel {
    std::string name;                 // as the case names it: "1.2379"
    std::string title;                // "X153CrMoV12, hardened to 60 HRC"
    std::string source;               // of its numbers
    double hardness = 0.0;            // Vickers, kgf/mm2: what the numbers below hold for
    double youngs_modulus = 210e3;    // MPa
    double poisson = 0.3;             // -
    double density = 7850.0;          // kg/m3
    double compressive_yield = 0.0;   // MPa, at 0.2 per cent
    double bending_strength = 0.0;    // MPa: to break of hardened steel, to yield of soft
    double safety_tension = 2.0;      // against that, >= 1
    double safety_compression = 1.5;  // against yield, >= 1
    double price = 0.0;               // per kg, in the case's currency; 0: the case's own price holds
    Hardening hardening = Hardening::none;
};

// What a section may carry, and a line of contact.
struct Allowable {
    double tension = 0.0;      // MPa, at the outermost fibre
    double compression = 0.0;  // MPa, at the outermost fibre
    double contact = 0.0;      // MPa, greatest pressure of a line contact
};

// tension = bending strength / its safety, compression = yield / its safety, contact = 1.67 yield / the same.
//
// Source  1.67: under a line contact yield begins, below the surface, when the greatest pressure is 1.67
//         times the yield stress (Tresca): K. L. Johnson, Contact Mechanics, Cambridge 1985, section 6.1.
// Throws OutOfRange for a steel without strength or with a safety below 1.
Allowable allowables(const ToolSteel& steel);

// Vickers hardness of a Rockwell C one, 20 to 67 HRC. Within 1.5 per cent of ISO 18265's table for hardened
// steel (from memory): 20 HRC 238, 30 302, 40 392, 50 513, 55 595, 58 653, 60 697, 62 746, 64 800, 66 865.
double vickers_of_rockwell(double hrc);

}  // namespace overbend::shop
