// The handbook's springback factor: bend angle after release over the one before, by radius over
// thickness.
//
// Source  Tabellenbuch Metall, page on blanks and springback (values seen; the heading r2/s from memory).
// Here    a strip in pure bending to the inside radius r2; both angles are those of the same arc, so the
//         factor is the quotient of the curvatures. DC01 by two flow curves known from elsewhere: the
//         perfectly plastic one of 220 MPa, and the card dc01 as it comes. The other rows are of tempers that
//         the page does not state: they are looked at as an order, and nothing is fitted to them.
// Allowed 0.02 for DC01.

#include <doctest/doctest.h>

#include "scenes/files/case/read_card.h"
#include "tests/outside/handbook.h"
#include "tests/outside/simulated_bends.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

const char* const page = "Tabellenbuch Metall";

double factor(const material::Card& card, double radius_over_thickness) {
    const material::BendingPoint bent = bend_round(card, radius_over_thickness, 1.0);
    return bent.free_curvature / bent.curvature;
}

// The last number of an id: r2/s.
double radius_of(const HandbookRow& row) {
    return numbers_in(row.id.substr(row.id.rfind('-'))).front();
}

void check_order(const char* beginning, const char* name) {
    const material::Card metal = files::read_card(name, "."), mild = files::read_card("dc01", ".");
    double before = 1.0;
    for (const HandbookRow& row : handbook_rows(beginning)) {
        const double now = factor(metal, radius_of(row));
        predict(
            {"springback factor", page, row.id, "factor, order", ""}, now,
            now < before && now < factor(mild, radius_of(row)),
            "the temper is not stated: the factor falls as the radius grows, and lies below DC01's, as the "
            "page has it");
        before = now;
    }
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("springback factor of DC01") {
        const material::Card plastic = perfectly_plastic_card(206e3, 0.3, 220.0);
        const material::Card card = files::read_card("dc01", ".");
        for (const HandbookRow& row : handbook_rows("kR-DC01-")) {
            compare({"springback factor", page, row.id, "factor, perfectly plastic 220 MPa", ""},
                    row.number(), factor(plastic, radius_of(row)), absolute(0.02));
            compare({"springback factor", page, row.id, "factor, card dc01", ""}, row.number(),
                    factor(card, radius_of(row)), absolute(0.02));
        }
    }

    TEST_CASE("springback factors of other metals, as an order") {
        check_order("kR-X12CrNi18-8-", "stainless-1.4310");
        check_order("kR-EN_AW-AlSiMgMn-", "aluminium-6061-t6");
        for (const HandbookRow& row : handbook_rows("kR-")) {
            if (row.id.find("DC01") != std::string::npos || row.id.find("X12CrNi") != std::string::npos ||
                row.id.find("AlSiMgMn") != std::string::npos)
                continue;
            no_counterpart(
                {"springback factor", page, row.id, "factor", ""},
                "no card of this metal and temper whose flow stress is known from elsewhere; a card "
                "fitted to the row would show nothing");
        }
    }

}  // TEST_SUITE
