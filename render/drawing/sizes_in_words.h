// Sizes in words, with the general tolerances of ISO 2768-1:1989, class m (medium), if they are asked for.
//
// Below 0.5 mm the standard has none (sim/plan/general_tolerance.h): such sizes stand alone.
//
// Units  mm, rad.

#pragma once

#include <string>

namespace overbend::drawing {

enum class Tolerances { none, iso_2768_m };

// What a size may be off.
struct Allowed {
    double either_way = 0.0;  // 0: not written
    bool reference = false;   // not judged: in brackets
};

// "12.5", "12.5 ±0.2", "(12.5)"; up to three decimals, no trailing zeros.
std::string length_words(double length, const Allowed& allowed);
std::string length_words(double length, Tolerances tolerances);
// "R1", "2× R1 ±0.2"
std::string radius_words(double radius, int count, const Allowed& allowed);
std::string radius_words(double radius, int count, Tolerances tolerances);
// "86°", "86° ±1°", "86° ±0.5°"
std::string angle_words(double angle, const Allowed& allowed);
std::string angle_words(double angle, double shorter_leg, Tolerances tolerances);
// "ISO 2768-m", "not stated": for the title block.
std::string tolerances_words(Tolerances tolerances);

}  // namespace overbend::drawing
