// Springs behind pads and clamps.
//
// Units  mm, N, MPa.

#pragma once

namespace overbend::tool {

// What presses a pad or a clamp on the strip, per mm of the strip's width. At compression c the tool presses
// with preload + rate c; at c = 0 it lies against its own stop, at `solid` against the tool that carries it.
// A rate of 0 is a cushion of constant force.
struct Spring {
    double preload = 0.0;  // N per mm of strip width, >= 0
    double rate = 0.0;     // N per mm of compression and mm of strip width, >= 0
    double solid = 1e300;  // mm, compression that is left, > 0
};
// Throws OutOfRange for values that cannot be.
void check(const Spring& spring);

// A cylindrical helical spring of round wire.
struct HelicalSpring {
    double wire = 0.0;           // diameter, mm, > 0
    double coil_diameter = 0.0;  // mean, mm, > wire
    double turns = 0.0;          // active, > 0
    double shear_modulus = 0.0;  // MPa, > 0
};

// N per mm:  G d^4 / (8 D^3 n), the wire's torsion alone, which is right for D/d above 4 or so.
// Source  A. M. Wahl, Mechanical Springs, 2nd ed., McGraw-Hill 1963 (from memory); the same formula in every
//         handbook of machine elements. Throws OutOfRange for values that cannot be.
double spring_rate(const HelicalSpring& spring);

}  // namespace overbend::tool
