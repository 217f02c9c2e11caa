// Helical springs behind pads: textbook examples.
//
//   k = G d^4 / (8 D^3 n);  stress 8 F D K / (pi d^3);  lengths of a spring with closed and ground ends

#include <doctest/doctest.h>

#include <cmath>

#include "sim/shop/spring_pad.h"
#include "sim/tool/spring.h"
#include "tests/outside/handbook.h"

using namespace overbend::shop;
using overbend::tool::spring_rate;
using namespace overbend::tests;

TEST_SUITE("outside") {
    TEST_CASE("rates of helical springs") {
        const auto about = [](const char* id, const char* source, const char* unit) {
            return About{"springs", source, id, "rate", unit};
        };
        // G 81370, d 7, D 42, 8 turns: of the formula itself.
        compare(about("SPR-k", "Shigley; Bhandari", "N/mm"), 81370.0 * 2401.0 / (8.0 * 74088.0 * 8.0),
                spring_rate({7.0, 42.0, 8.0, 81370.0}), relative(1e-9));
        compare(about("SPR-BH-k", "Bhandari, ex. 10.1", "N/mm"), handbook_row("SPR-BH-k").number(),
                spring_rate({7.0, 42.0, 8.0, 81370.0}), absolute(0.001));
        // In inches and psi; the mean diameter is the outer one less the wire's, 0.4005,
        // which the book rounds.
        compare(about("SPR-SH", "Shigley, ex. 10-1", "lbf/in"), handbook_row("SPR-SH").number(),
                spring_rate({0.037, 0.400, 10.5, 11.85e6}), absolute(0.005));
    }

    // The load, how far it presses the spring, the index, the strength and the gap are the example's own. Its
    // wire of 6.63 mm follows from the stress (half the strength) alone; 7 mm is the next that is sold.
    TEST_CASE("a spring that is designed") {
        const auto about = [](const char* id, const char* of, const char* unit) {
            return About{"springs", "Bhandari, ex. 10.1", id, of, unit};
        };
        const SpringWire wire{"cold drawn, 1090 MPa", 1090.0, 0.0, 0.5, 12.5, 81370.0, 0.5};
        SpringRequest request;
        request.force_end = 1250.0, request.travel = 30.0, request.index = 6.0, request.gap = 1.0;
        const auto wire_needed = [&](double load) {
            const double at_one = shear_stress({1.0, 6.0, 1.0, wire.shear_modulus}, load);
            return std::sqrt(at_one / (wire.allowed * wire.strength(1.0)));
        };
        const HandbookRow& printed = handbook_row("SPR-BH-wire");
        compare(about("SPR-BH-wire", "wire, by the stress", "mm"), printed.number(0), wire_needed(1250.0),
                absolute(0.01));
        double sold = 0.0;
        for (const double d : wire_series())
            if (sold == 0.0 && d >= wire_needed(1250.0)) sold = d;
        compare(about("SPR-BH-wire", "wire, as sold", "mm"), printed.number(1), sold, absolute(1e-9));

        const ChosenSpring s = spring_of(request, wire, sold, 6.0 * sold);
        compare(about("SPR-BH-mean", "mean diameter", "mm"), handbook_row("SPR-BH-mean").number(),
                s.spring.coil_diameter, absolute(1e-9));
        compare(about("SPR-BH-active", "active turns", ""), handbook_row("SPR-BH-active").number(),
                s.spring.turns, absolute(1e-9));
        compare(about("SPR-BH-total", "total turns", ""), handbook_row("SPR-BH-total").number(),
                s.total_turns, absolute(1e-9));
        compare(about("SPR-BH-free", "free length", "mm"), handbook_row("SPR-BH-free").number(),
                s.free_length, absolute(0.01));
        compare(about("SPR-BH-pitch", "pitch", "mm"), handbook_row("SPR-BH-pitch").number(), s.pitch,
                absolute(0.001));
        compare(about("SPR-BH-Wahl", "Wahl's factor", ""), handbook_row("SPR-BH-Wahl").number(),
                wahl_factor(6.0), absolute(1e-4));
    }

}  // TEST_SUITE
