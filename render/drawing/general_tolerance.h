// Sizes in words, with the general tolerances of ISO 2768-1:1989, class m (medium), if they are asked for.
//
// Source  its tables 1 to 3, from memory. Below 0.5 mm the standard has none: such sizes stand alone.
// Units   mm, rad.

#pragma once

#include <string>

namespace overbend::drawing {

enum class Tolerances { none, iso_2768_m };

// Either way; 0 where the standard has none (below 0.5 mm, above 4 m).
double length_tolerance(double length);      // mm
double radius_tolerance(double radius);      // mm, of external radii and chamfers
double angle_tolerance(double shorter_leg);  // rad, by the length of the shorter leg

// "12.5", "12.5 ±0.2"; up to three decimals, no trailing zeros.
std::string length_words(double length, Tolerances tolerances);
// "R1", "2× R1 ±0.2"
std::string radius_words(double radius, int count, Tolerances tolerances);
// "86°", "86° ±1°", "86° ±0.5°"
std::string angle_words(double angle, double shorter_leg, Tolerances tolerances);
// "ISO 2768-m", "not stated": for the title block.
std::string tolerances_words(Tolerances tolerances);

}  // namespace overbend::drawing
