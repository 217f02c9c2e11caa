// Numbers and lists as they stand on pictures, the same in every locale, and round numbers for scales.

#pragma once

#include <string>
#include <vector>

namespace overbend::picture {

// With a fixed count of decimals and a true minus sign; "-0.0" is "0.0".
std::string fixed(double value, int decimals);

// Two decimals at most, without trailing zeros: 1, 1.5, 0.25.
std::string short_number(double value);

// "91.7°", signed.
std::string in_degrees(double angle, int decimals = 1);

// The least of 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten that is not below the value, > 0.
double rounded_up(double value);
// The greatest of 1, 2, 5 times a power of ten that is not above it, > 0.
double rounded_down(double value);

// "lip", "lip and root", "lip, root and hem".
std::string listed(const std::vector<std::string>& names);

// The first letter as at the beginning of a sentence.
std::string capital(std::string words);

}  // namespace overbend::picture
