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
    double contact = 0.0;      // MPa, mean pressure of a line contact that indents the tool
};

// tension = bending strength / its safety, compression = yield / its safety, contact = indentation_pressure.
// Throws OutOfRange for a steel without strength or with a safety below 1.
Allowable allowables(const ToolSteel& steel);

// The mean pressure, MPa, at which a band of contact is plastic all through, so that the tool keeps a dent.
// First yield, below the surface, comes much earlier (greatest pressure 1.67 times the yield stress) and
// leaves no dent: edges of ordinary blocks are loaded beyond it every day.
//
// Source  2.8 to 3 times the yield stress: D. Tabor, The Hardness of Metals, Oxford 1951; K. L. Johnson,
//         Contact Mechanics, Cambridge 1985, section 6.3 (both from memory). What counts is the yield stress
//         at 8 per cent of strain, which soft steel reaches only as it is indented; the hardness measures
//         just that. Vickers: kgf on the pyramid's faces, 0.927 of which is the area seen from above, so
//         that the mean pressure is 9.81 / 0.927 HV. Without a hardness 2.8 times the compressive yield.
double indentation_pressure(const ToolSteel& steel);

// The load per metre of tool that blocks and punches so hard are usually rated for.
//
// Source  common practice, no source. By shape and size they are rated differently, between `least` and
//         `most`; a tool's own rating says more. Beyond it edges wear and are set back: no reason why a job
//         cannot be pressed.
struct LineLoad {
    double usual = 0.0;              // kN per m
    double least = 0.0, most = 0.0;  // of the common range
};
LineLoad usual_line_load(double vickers);

// Vickers hardness of a Rockwell C one, 20 to 67 HRC. Within 1.5 per cent of ISO 18265's table for hardened
// steel (from memory): 20 HRC 238, 30 302, 40 392, 50 513, 55 595, 58 653, 60 697, 62 746, 64 800, 66 865.
double vickers_of_rockwell(double hrc);

}  // namespace overbend::shop
