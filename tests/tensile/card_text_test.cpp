// The card that is written: it reads back as it was meant, whatever the law.

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/documents/card/card_text.h"
#include "scenes/documents/card/coil_chart.h"
#include "scenes/documents/card/coil_tables.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/toml_file.h"
#include "sim/material/flow_curve.h"
#include "tests/chart/legible.h"
#include "tests/tensile/synthetic.h"

using namespace overbend;
using overbend::tests::synthetic_record;
using overbend::tests::SyntheticTest;

namespace {

documents::CoilReport report_of(const SyntheticTest& t, tensile::Law law) {
    documents::CoilReport r;
    r.title = "A coil, \"tested\"";
    r.records.resize(1);
    r.records[0].file = "folder/test.csv",
    r.records[0].columns = "strain, column 1 (-); stress, column 2 (MPa)";
    r.coil =
        tensile::read_coil({tensile::prepare(synthetic_record(t))}, tensile::Nominal{t.modulus, "dc01", ""});
    r.card.title = r.title;
    r.card.youngs_modulus = r.coil.modulus.value;
    r.card.poisson = 0.3, r.card.density = 7850.0;
    r.card.tensile_strength = r.coil.strength.value;
    r.card.strength_range = documents::coil_strength_range(r.coil);
    if (r.coil.elongation) r.card.elongation = r.coil.elongation->value;
    r.chosen = law;
    r.card.hardening = documents::chosen_fit(r).hardening;
    r.said = {"What was assumed."};
    return r;
}

material::Card read_back(const std::string& text) {
    const files::TomlFile file = files::parse_toml(text, "my-coil.toml");
    return files::read_card_table(files::StrictTable(file), "my-coil").card;
}

}  // namespace

TEST_CASE("card text: it reads back, with every law") {
    SyntheticTest t;
    t.scatter = 0.5;
    for (const tensile::Law law : {tensile::Law::swift, tensile::Law::hollomon, tensile::Law::voce,
                                   tensile::Law::linear, tensile::Law::swift_voce, tensile::Law::table}) {
        CAPTURE(tensile::law_word(law));
        const documents::CoilReport r = report_of(t, law);
        const material::Card card = read_back(documents::card_text(r));
        CHECK(card.title == r.title);
        CHECK(std::abs(card.youngs_modulus / r.card.youngs_modulus - 1.0) < 1e-4);
        CHECK(std::abs(card.tensile_strength / r.card.tensile_strength - 1.0) < 1e-4);
        CHECK(std::abs(card.elongation / r.card.elongation - 1.0) < 1e-3);
        for (const double p : {0.0, 0.002, 0.05, 0.2, 0.8}) {
            const double meant = tensile::stress_of(documents::chosen_fit(r), r.coil.modulus.value, p);
            CHECK(std::abs(material::flow_point(card.hardening, card.youngs_modulus, p).stress / meant -
                           1.0) < 1e-3);
        }
    }
}

TEST_CASE("card text: every figure has its source and what it may be off") {
    SyntheticTest t;
    t.scatter = 0.5;
    const std::string text = documents::card_text(report_of(t, tensile::Law::swift));
    for (const char* part : {"# Written from 1 tensile test", "Rp0.2", " +- ", "test.csv", "[sources]",
                             "youngs_modulus_MPa = \"measured, ", "tensile_strength_MPa = \"measured, ",
                             "hardening = \"fitted: swift, K ", "# What was assumed."}) {
        CAPTURE(part);
        CHECK(text.find(part) != std::string::npos);
    }
}

TEST_CASE("card text: a figure and its off to the same place") {
    CHECK(documents::with_off({315.32, 0.284}) == "315.32 +- 0.28");
    CHECK(documents::with_off({208123.0, 1520.0}, 1e-3) == "208.1 +- 1.5");
    CHECK(documents::with_off({0.0731, 0.003}, 100.0) == "7.31 +- 0.30");
    CHECK(documents::with_off({583.4, 17.0}) == "583 +- 17");
    CHECK(documents::with_off({1.0, 0.0}) == "1");
}

TEST_CASE("card text: tables and chart") {
    SyntheticTest t;
    t.scatter = 0.5;
    const documents::CoilReport r = report_of(t, tensile::Law::swift);
    CHECK(documents::laws_table(r).rows.size() == 6);
    CHECK(documents::table_text(documents::laws_table(r)).find("swift *") != std::string::npos);
    CHECK(documents::table_text(documents::tests_table(r)).find("Rp0.2") != std::string::npos);
    const chart::TensileFit chart = documents::coil_chart(r);
    CHECK(chart.laws.size() == 5);
    for (const chart::ChartSize& size :
         {chart::ChartSize{1123, 794}, chart::ChartSize{2246, 1588}, chart::ChartSize{960, 640}})
        for (const picture::Theme theme : {picture::Theme::light, picture::Theme::dark}) {
            const picture::DrawingList list = chart::draw_tensile_fit(chart, size, theme);
            tests::check_legible(list, 0.6 * size.height / 36.0, 30);
            CHECK(tests::says(list, "Laws in the record and beyond"));
        }
}
