// Least bend radii of tables, beside the strain of the outer fibre that the mechanics finds at them.
//
//   R/T = 0.5/r - 1 with the reduction of area r: the outer fibre is stretched by as much as r says.
//
// Here    overbend has no limit of its own for a radius: what it gives is the outer fibre's strain. The
//         formula is held against that strain directly, with the fibre's reduction 1 - exp(-strain). Of the
//         tables the order is checked: stronger strip is allowed no more strain in the outer fibre.
// Allowed 10 per cent for the formula, which leaves the neutral layer in the middle.

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "scenes/files/case/read_card.h"
#include "tests/outside/handbook.h"
#include "tests/outside/simulated_bends.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

double outer_strain(const material::Card& card, double radius_over_thickness) {
    return bend_round(card, radius_over_thickness, 1.0).outer_log_strain;
}

// R/T at which the outer fibre is reduced by r.
double least_radius(const material::Card& card, double r) {
    double low = 0.2, high = 50.0;
    for (int i = 0; i < 40; ++i) {
        const double middle = 0.5 * (low + high);
        (1.0 - std::exp(-outer_strain(card, middle)) > r ? low : high) = middle;
    }
    return low;
}

const char* const order =
    "strain of the outer fibre at the least radius of the table: stronger strip is allowed no more";

// A row of a table, and R/T of the next weaker strip in the same column; below 0: there is none.
void table_row(const HandbookRow& row, const char* source, const char* card, double ratio, double weaker) {
    const About about{"least radii", source, row.id, "outer fibre's strain", ""};
    if (ratio < 0.05) {
        no_counterpart(about,
                       "a radius of 0 is no bend of a strip of this thickness: its inner surface folds");
        CHECK(weaker <= 0.05);
        return;
    }
    const material::Card metal = files::read_card(card, ".");
    const double strain = outer_strain(metal, ratio);
    const bool ordered = weaker < 0.05 || strain <= outer_strain(metal, weaker) * (1.0 + 1e-9);
    predict(about, strain, ordered, order);
}

// Rows that differ by strength alone, the weakest first; the index-th number of each is its R/T.
void rising(const std::vector<std::string>& ids, const char* source, const char* card, int index = 0,
            double thickness = 1.0) {
    double weaker = -1.0;
    for (const std::string& id : ids) {
        const double ratio = handbook_row(id).number(index) / thickness;
        table_row(handbook_row(id), source, card, ratio, weaker);
        weaker = ratio;
    }
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("the formula of the least radius") {
        const material::Card steel = files::read_card("dc01", ".");
        const material::Card tube = perfectly_plastic_card(70e3, 0.3, 250.0);
        const auto about = [](const char* id, const char* source, const char* quantity) {
            return About{"least radius, formula", source, id, quantity, ""};
        };
        compare(about("RT-formula", "Kalpakjian and Schmid", "R/T at r = 10 %"), 4.0,
                least_radius(steel, 0.1), relative(0.1));
        compare(about("SEV-rmin", "exam, Seville 2019", "reduction of area, %"),
                handbook_row("SEV-rmin").number(), 100.0 * (1.0 - std::exp(-outer_strain(tube, 5.77 / 1.2))),
                relative(0.1));
        compare(about("SEV-RT1", "lecture notes, Seville", "R/T at r = 15 %"),
                handbook_row("SEV-RT1").number(), least_radius(steel, 0.15), relative(0.1));
        no_counterpart(about("SEV-RT2", "lecture notes, Seville", "R/T, neutral layer at 0.42"),
                       "the neutral layer is put in by hand; here it follows from the mechanics");
    }

    TEST_CASE("DIN 6935: least radii of steel by strength and thickness") {
        const char* thickness[] = {"0-1",    ">1-1.5", ">1.5-2.5", ">2.5-3", ">3-4",
                                   ">4-5",   ">5-6",   ">6-7",     ">7-8",   ">8-10",
                                   ">10-12", ">12-14", ">14-16",   ">16-18", ">18-20"};
        for (const char* column : thickness) {
            std::vector<std::string> ids;
            ids.reserve(3);
            for (const char* strength : {"<=390", ">390-490", ">490-640"})
                ids.push_back(std::string("DIN6935-rmin-") + strength + "-" + column);
            rising(ids, "DIN 6935", "s235", 0, numbers_in(column).back());
        }
    }

    TEST_CASE("least radii of aluminium by temper and thickness") {
        const std::vector<std::vector<std::string>> alloys = {
            {"1100-O", "1100-H12", "1100-H14", "1100-H16", "1100-H18"},
            {"5052-O", "5052-H32", "5052-H34", "5052-H36", "5052-H38"},
            {"6061-O", "6061-T4", "6061-T6"}};
        for (const auto& tempers : alloys)
            for (const char* thickness : {"1_64", "1_32", "1_16", "1_8", "3_16", "1_4", "3_8", "1_2"}) {
                std::vector<std::string> ids;
                ids.reserve(tempers.size());
                for (const std::string& temper : tempers) ids.push_back("AA-" + temper + "-" + thickness);
                rising(ids, "Aluminum Association", "aluminium-5754-h22");
            }
    }

    TEST_CASE("least radii of spring strip by strength and thickness") {
        const std::vector<std::string> strengths = {"1150-1300", "1300-1500", "1500-1700", "1700-1900"};
        for (const char* thickness : {"0.05-0.25", "0.25-0.50", "0.50-0.75", "0.75-1.00"}) {
            std::vector<std::string> ids;
            for (const std::string& strength : strengths) {
                const std::string id = "EN10151-rt-" + strength + "-" + thickness;
                if (!handbook_rows(id).empty()) ids.push_back(id);
            }
            rising(ids, "EN 10151", "stainless-1.4310");
        }
    }

    TEST_CASE("least radii by hardness") {
        const char* bronze = "bronze-cusn6";
        rising({"CuBe-AH_O", "CuBe-AH_1/4H", "CuBe-AH_1/2H"}, "strip producer", bronze);
        rising({"CuBe-MH_OM", "CuBe-MH_1/4HM", "CuBe-MH_1/2HM", "CuBe-MH_HM"}, "strip producer", bronze);
        rising({"A666-bend-1/4_hard", "A666-bend-1/2_hard", "A666-bend-full_hard"}, "ASTM A666",
               "stainless-1.4310", 0, 2.0);  // the factor is that of the mandrel's diameter
        const char* page = "steel table";
        rising({"AISI063-5052-H32", "AISI063-6061-T6", "AISI063-2024-T3"}, page, "aluminium-6061-t6", 0,
               0.063);
        rising({"AISI063-1020/1025/4130_annealed", "AISI063-4130_normalised"}, page, "s235", 0, 0.063);
        rising({"AISI063-type_304", "AISI063-type_302"}, page, "stainless-1.4301", 0, 0.063);
        // Two numbers a row, the softer or the better direction first: the strain is that of the second.
        for (const auto& [beginning, source] :
             {std::pair("KS-Rmin-", "Kalpakjian and Schmid"), std::pair("CNHB-rmin-", "Chinese handbook")})
            for (const HandbookRow& row : handbook_rows(beginning))
                table_row(row, source, "dc01", row.number(1), row.number(0));
    }

}  // TEST_SUITE
