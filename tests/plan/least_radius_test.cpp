// Least inside radii: every cell of the tables, their edges, and what has no table.
//
// Source  the rows of tests/outside/handbook.csv, which say where each was printed: DIN 6935 (1975-10) for
//         steel, EN 10151 as a supplier quotes it for 1.4310, the Aluminum Association's table; Kalpakjian
//         and Schmid's table 16.3 from memory.

#include <doctest/doctest.h>

#include <cmath>
#include <regex>

#include "sim/plan/least_radius.h"
#include "sim/units.h"
#include "tests/outside/handbook.h"

using namespace overbend;
using namespace overbend::tests;
using plan::least_radius;
using plan::LeastRadius;
using plan::RadiusQuery;

namespace {

material::Card metal(const std::string& word, double strength = 0.0) {
    material::Card card;
    card.metal = word;
    card.tensile_strength = strength;
    return card;
}

// The radius, or -1 where there is none, which then must be explained.
double radius_of(const material::Card& card, double thickness, double bend_deg = 90.0,
                 bool along_rolling = false) {
    std::string why_not;
    const std::optional<LeastRadius> found =
        least_radius(card, {thickness, bend_deg * degree, along_rolling}, why_not);
    CHECK(found.has_value() == why_not.empty());
    if (!found) return -1.0;
    CHECK_FALSE(found->row.empty());
    CHECK_FALSE(found->source.empty());
    return found->radius;
}

}  // namespace

TEST_CASE("steel: every cell of DIN 6935, at both ends of its strengths and thicknesses") {
    int cells = 0;
    for (const HandbookRow& row : handbook_rows("DIN6935-rmin-")) {
        CAPTURE(row.id);
        // "min bend radius steel, Rm >390-490 N/mm2, s >1-1.5 mm, ..."
        std::smatch figures;
        const std::regex form(R"(Rm (?:<=|>(\d+)-)(\d+) N/mm2, s >?([\d.]+)-([\d.]+) mm)");
        REQUIRE(std::regex_search(row.quantity, figures, form));
        const double low = figures[1].matched ? std::stod(figures[1]) + 0.1 : 100.0;
        const double thin = std::stod(figures[3]) + 0.001, thick = std::stod(figures[4]);
        for (const double strength : {low, std::stod(figures[2])})
            for (const double thickness : {thin, thick})
                CHECK(radius_of(metal("steel", strength), thickness) == row.number());
        ++cells;
    }
    CHECK(cells == 45);
}

TEST_CASE("steel: the next thicker column along the rolling direction or above 120 degrees") {
    const material::Card mild = metal("steel", 340.0);  // 1, 1.6, 2.5 mm ... of the first row
    CHECK(radius_of(mild, 1.0, 120.0) == 1.0);
    CHECK(radius_of(mild, 1.0, 121.0) == 1.6);
    CHECK(radius_of(mild, 1.0, 90.0, true) == 1.6);
    CHECK(radius_of(mild, 1.0, 130.0, true) == 1.6);  // one column, not two
    CHECK(radius_of(mild, 18.0, 130.0) == 40.0);
    CHECK(radius_of(mild, 18.1, 130.0) == -1.0);  // no column is left
}

TEST_CASE("1.4310: every cell of the table, across and along the rolling direction") {
    int cells = 0;
    for (const HandbookRow& row : handbook_rows("EN10151-rt-")) {
        CAPTURE(row.id);
        std::smatch figures;
        const std::regex form(R"(Rm (\d+)-(\d+) MPa, t ([\d.]+)-([\d.]+) mm)");
        REQUIRE(std::regex_search(row.quantity, figures, form));
        const double strength = 0.5 * (std::stod(figures[1]) + std::stod(figures[2]));
        const double thickness = std::stod(figures[4]);
        const material::Card card = metal("stainless-1.4310", strength);
        CHECK(std::abs(radius_of(card, thickness) - row.number(0) * thickness) < 1e-12);
        CHECK(std::abs(radius_of(card, thickness, 90.0, true) - row.number(1) * thickness) < 1e-12);
        ++cells;
    }
    CHECK(cells == 15);
    CHECK(radius_of(metal("stainless-1.4310", 1800.0), 1.0) == -1.0);  // left open in the table
    CHECK(radius_of(metal("stainless-1.4310", 1400.0), 1.1) == -1.0);
    CHECK(radius_of(metal("stainless-1.4310", 1000.0), 0.5) == -1.0);
}

TEST_CASE("aluminium: every cell of the Aluminum Association's table") {
    int cells = 0;
    for (const HandbookRow& row : handbook_rows("AA-")) {
        CAPTURE(row.id);
        std::smatch figures;
        const std::regex form(R"(AA-(\d+)-(\w+)-(\d+)_(\d+))");
        REQUIRE(std::regex_match(row.id, figures, form));
        std::string temper = figures[2];
        for (char& letter : temper) letter = static_cast<char>(std::tolower(letter));
        const double thickness = 25.4 * std::stod(figures[3]) / std::stod(figures[4]);
        const material::Card card = metal("aluminium-" + figures[1].str() + "-" + temper);
        CHECK(std::abs(radius_of(card, thickness) - row.number() * thickness) < 1e-12);
        ++cells;
    }
    CHECK(cells == 104);
    CHECK(radius_of(metal("aluminium-6061-t6"), 1.0) == 1.5);  // between 1/32 and 1/16 in: the thicker
    CHECK(radius_of(metal("aluminium-6061-t6"), 1.6) == doctest::Approx(2.4));  // sold as 1/16 in
    CHECK(radius_of(metal("aluminium-6061-t6"), 13.0) == -1.0);
}

TEST_CASE("stainless and brass: soft and hard of the textbook") {
    const HandbookRow& stainless = handbook_row("KS-Rmin-austenitic_stainless_steel");
    const HandbookRow& brass = handbook_row("KS-Rmin-brass");
    CHECK(radius_of(metal("stainless-annealed"), 2.0) == 2.0 * stainless.number(0));
    CHECK(radius_of(metal("stainless-hard"), 2.0) == 2.0 * stainless.number(1));
    CHECK(radius_of(metal("brass-soft"), 2.0) == 2.0 * brass.number(0));
    CHECK(radius_of(metal("brass-hard"), 2.0) == 2.0 * brass.number(1));
}

TEST_CASE("every metal that a card can name has a row, and what has none says why") {
    for (const std::string& word : material::metal_words()) {
        CAPTURE(word);
        CHECK(radius_of(metal(word, word == "steel" ? 300.0 : 1400.0), 0.5) >= 0.0);
    }
    CHECK(radius_of(metal(""), 1.0) == -1.0);
    CHECK(radius_of(metal("steel"), 1.0) == -1.0);         // no strength
    CHECK(radius_of(metal("steel", 900.0), 1.0) == -1.0);  // beyond the table
    CHECK(radius_of(metal("steel", 1550.0), 1.0) == 5.0);  // hardened strip: common practice
    CHECK(radius_of(metal("steel", 1550.0), 1.0, 90.0, true) == 8.0);
    CHECK(radius_of(metal("steel", 300.0), 1.0, 175.0) == -1.0);  // a hem
}
