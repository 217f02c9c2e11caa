// What is set up on the bench, as plain data: a strip, a pair of tools, up to four metals bent alike.
//
// Units  mm, MPa, 1/mm, rad.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenes/job/run/strip_bends.h"

namespace overbend::window {

enum class BenchKind { vee, pure };

// A card's metal, three of whose figures can be changed. All else stays as the card has it.
struct BenchMetal {
    std::string card = "dc01";
    std::string name;        // what it is called on the bench: the card, and whether its figures are changed
    double modulus = 0.0;    // Young's
    double yield = 0.0;      // flow stress at 0.2 per cent of plastic strain, > 0
    double hardening = 0.0;  // how much the flow stress rises from there to 10 per cent, >= 0
};

constexpr int most_metals = 4;

struct BenchSetup {
    BenchKind kind = BenchKind::vee;
    double thickness = 1.0;
    double nose_radius = 1.0;
    double opening = 8.0;  // between the shoulder arcs' centres
    double friction = 0.1;
    std::vector<BenchMetal> metals;  // 1 to most_metals
};
bool same(const BenchSetup& a, const BenchSetup& b);

// What the sliders offer.
struct SliderRange {
    double low, high;
    bool has(double value) const { return value >= low && value <= high; }  // not a number: in none
};
constexpr SliderRange thicknesses{0.2, 4.0}, nose_radii{0.2, 12.0}, openings{3.0, 50.0}, frictions{0.0, 0.4};
constexpr SliderRange moduli{40e3, 250e3}, yields{30.0, 2000.0}, hardenings{0.0, 800.0};

// Its name by its card and figures.
void rename(BenchMetal& metal);

// The metal as its card has it. Throws CaseError: no such card.
BenchMetal metal_of(const std::string& card);
// With its figures changed. Throws CaseError, OutOfRange.
material::Card card_of(const BenchMetal& metal);
// Of a card's flow curve, as a BenchMetal has them.
double yield_of(const material::Card& card);
double hardening_of(const material::Card& card);

job::VeeBend vee_of(const BenchSetup& setup, int metal);

// How far the slider of the travel goes, if the strip goes along: a strip is then bent to some 120 degrees.
// In pure bending the way is the curvature, and the strip is as long as makes it half a turn there.
double deepest(const BenchSetup& setup);      // mm, or 1/mm
double pure_length(const BenchSetup& setup);  // mm

// What cannot be made of these figures, and where: said in words beside the slider.
enum class BenchSlider { thickness, nose, opening, modulus, yield, hardening, friction };
struct BenchTrouble {
    BenchSlider at = BenchSlider::thickness;
    std::string words;
};
std::optional<BenchTrouble> trouble_of(const BenchSetup& setup);

}  // namespace overbend::window
