// Developed lengths by shop rules, against the worked examples and tables of the books they are
// from (handbook.csv). What the mechanics says about them is in k_factor_test.cpp.
//
// Allowed the last digit of what is printed.

#include <doctest/doctest.h>

#include <cmath>

#include "sim/plan/bend_allowance.h"
#include "sim/units.h"
#include "tests/outside/handbook.h"

using namespace overbend::plan;
using namespace overbend::tests;
using overbend::degree;

namespace {

About about(const std::string& id, const char* source, const char* quantity, const char* unit) {
    return {"developed length", source, id, quantity, unit};
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("DIN 6935: k, v and the worked part") {
        const char* book = "Tabellenbuch Metall";
        // At r/s = 2 the formula itself: 0.65 + 0.5 log10 2.
        compare(about("DIN6935-k", book, "k", ""), 0.8005, din_k(2.0, 1.0), absolute(5e-5));
        compare(about("DIN6935-ex-k", book, "k", ""), handbook_row("DIN6935-ex-k").number(), din_k(6.0, 5.0),
                absolute(0.001));
        // The book reads k = 0.7 off a diagram; with the formula's 0.6896 v is 0.055 more.
        compare(about("DIN6935-ex-v", book, "v", "mm"), handbook_row("DIN6935-ex-v").number(),
                din_compensation(6.0, 5.0, 120.0 * degree), absolute(0.06));
        compare(about("DIN6935-ex-L", book, "length, rounded up", "mm"),
                handbook_row("DIN6935-ex-L").number(),
                std::ceil(din_developed(16.0, 21.0, 6.0, 5.0, 120.0 * degree)), absolute(0.0));
        const double v = din_compensation(7.0, 3.18, 90.0 * degree);
        compare(about("DIN6935-90lin", "spreadsheet", "v by a straight line", "mm"),
                handbook_row("DIN6935-90lin").number(), v, absolute(0.01));
        compare(about("DIN6935-90lin-L", "spreadsheet", "length by a straight line", "mm"),
                handbook_row("DIN6935-90lin-L").number(), 655.0 - 2.0 * v, absolute(0.01));
    }

    TEST_CASE("DIN 6935: the book's table of v for 90 degrees, in tenths of a millimetre") {
        for (const HandbookRow& row : handbook_rows("TBv-")) {
            const std::vector<double> of = numbers_in(row.id);
            compare(about(row.id, "Tabellenbuch Metall", "v at 90 degrees", "mm"), row.number(),
                    din_compensation(of[0], of[1], 90.0 * degree), absolute(0.05));
        }
    }

    TEST_CASE("straight lines of Machinery's Handbook") {
        const char* book = "Machinery's Handbook 31";
        // Without a radius the coefficient is left.
        const std::pair<const char*, Hardness> lines[] = {
            {"MH-c1", Hardness::soft}, {"MH-c2", Hardness::medium}, {"MH-c3", Hardness::hard}};
        for (const auto& [id, hardness] : lines)
            compare(about(id, book, "coefficient of T", ""), handbook_row(id).number(),
                    handbook_allowance(0.0, 1.0, 90.0 * degree, hardness), absolute(1e-9));
        const double half_turn = handbook_allowance(0.375, 0.125, 180.0 * degree, Hardness::medium);
        const double third = handbook_allowance(0.625, 0.125, 60.0 * degree, Hardness::medium);
        compare(about("MH-ex-180", book, "allowance", "in"), handbook_row("MH-ex-180").number(), half_turn,
                absolute(0.0005));
        compare(about("MH-ex-60", book, "allowance", "in"), handbook_row("MH-ex-60").number(), third,
                absolute(0.0005));
        compare(about("MH-ex-L", book, "length", "in"), handbook_row("MH-ex-L").number(),
                3.5 + half_turn + third, absolute(0.0005));
    }

    TEST_CASE("worked lengths by a k-factor") {
        const double right = 90.0 * degree;
        const char* notes = "lecture notes, Seville";
        const auto seville = [&](const char* id, double radius, double k) {
            compare(about(id, notes, "length", "mm"), handbook_row(id).number(),
                    20.0 + k_factor_allowance(radius, 2.0, right, k), absolute(0.005));
        };
        seville("SEV-BA1", 1.0, 0.42);
        seville("SEV-BA2", 10.0, 0.50);
        seville("SEV-BA3", 1.0, 0.50);
        const double allowance = k_factor_allowance(4.75, 3.2, 60.0 * degree, 0.33);
        compare(about("GR-BA", "Groover 4e, ex. 20.2", "allowance", "mm"), handbook_row("GR-BA").number(),
                allowance, absolute(0.005));
        compare(about("GR-L", "Groover 4e, ex. 20.2", "length", "mm"), handbook_row("GR-L").number(),
                38.0 + allowance + 25.0, absolute(0.005));
        // Ghosh and Mallik's stock: two flanges of 50 outside, the neutral layer at 0.45 t, R 10.16, t 5.
        compare(about("SB-GM-L", "Ghosh and Mallik", "length", "mm"), handbook_row("SB-GM-L").number(),
                k_factor_allowance(10.16, 5.0, right, 0.45) + 2.0 * (50.0 - 15.16), absolute(0.01));
    }

    TEST_CASE("tolerances of drawings are none of the program's") {
        for (const HandbookRow& row : handbook_rows("ISO2768-"))
            no_counterpart(
                about(row.id, "ISO 2768-1", "tolerance of angles", ""),
                "general tolerances of a drawing; overbend gives angles, and leaves judging them to "
                "anybody with the drawing");
    }

}  // TEST_SUITE
