// The numbers of a metal, as plain data, checked.
//
// Units  MPa, kg/m3, plastic strain without unit (true stress against logarithmic plastic strain, uniaxial).

#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace overbend::material {

// Flow stress over accumulated plastic strain p.
struct Swift {
    double K = 0.0, e0 = 0.0, n = 0.0;
};  // K (e0 + p)^n;  K > 0, e0 > 0, 0 < n < 1
struct Hollomon {
    double K = 0.0, n = 0.0;
};  // K e^n, e the total strain: becomes a Swift law whose
    // e0 is the yield strain (K/E)^(1/(1-n))
struct Voce {
    double Y = 0.0, Q = 0.0, b = 0.0;
};  // Y + Q (1 - exp(-b p));  Y > 0, Q >= 0, b > 0
struct Linear {
    double Y = 0.0, H = 0.0;
};  // Y + H p;  Y > 0, H >= 0
struct Table {
    std::vector<double> p, stress;
};  // points joined by straight lines, constant beyond the
    // last; p rising from 0, stress > 0 and not falling
using Hardening = std::variant<Swift, Hollomon, Voce, Linear, Table>;

// Armstrong-Frederick: dX = C dp - gamma X |dp|, uniaxial. Two of them make a yield point that is rounded
// where the strip is bent back (a large gamma), and a hardening that lasts (a small one).
struct Backstress {
    double C = 0.0, gamma = 0.0;
};  // MPa, -; both >= 0
constexpr int most_backstresses = 2;

// Young's modulus after plastic strain: E0 - (E0 - to) (1 - exp(-rate p)).
struct ModulusDrop {
    double to = 0.0, rate = 0.0;
};  // MPa, 0 < to <= E0; -, > 0

// How hard a strip is, in the classes of Machinery's Handbook (31st edition, p. 1421).
enum class Hardness {
    soft,    // soft brass and copper
    medium,  // half-hard brass and copper, soft steel, aluminium
    hard,    // bronze, hard copper, cold-rolled and spring steel
};

struct Card {
    std::string name;  // as a case calls it
    std::string title;
    std::string source;           // where the numbers come from
    double youngs_modulus = 0.0;  // MPa, > 0
    double poisson = 0.3;         // 0 <= poisson < 0.5
    double density = 0.0;         // kg/m3, > 0; 0 when not given
    Hardening hardening = Linear{};
    std::vector<Backstress> backstress;  // none, one or two
    std::optional<ModulusDrop> modulus_drop;
    double r_value = 1.0;            // normal anisotropy, width over thickness strain in a tensile test, > 0
    double tensile_strength = 0.0;   // MPa, for handbook formulas; 0 when not given
    double elongation = 0.0;         // fracture elongation, 0.45 for 45 per cent; 0 when not given
    double strength_range = 0.1;     // of a coil of the grade, of its flow stress either way, 0 to 0.5
    double reduction_of_area = 0.0;  // Z, of the section at fracture, 0.5 for 50 per cent; 0 when not given
    std::string metal;               // one of metal_words(), for the tables of the trade; empty: not given
    Hardness hardness = Hardness::medium;  // class of the handbook's straight lines for developed lengths
    // Of the trade, for costs; 0 when not given.
    double price = 0.0;         // of the strip, per kg
    double cutting_rate = 0.0;  // of a laser: its speed times the thickness, mm2/s
};

// What tables of least radii have: "steel", "stainless-1.4310", "aluminium-6061-t6", ...
const std::vector<std::string>& metal_words();

// The same metal with a flow stress so many times as high, back stresses with it. factor > 0
Card with_strength(Card card, double factor);

// Throws OutOfRange for a value out of its range.
void check(const Card& card);

}  // namespace overbend::material
