#include "scenes/files/case/describe.h"

namespace overbend::files {

namespace {

// Wide enough for every metal, narrow enough to catch a number in GPa, psi or g/cm3.
constexpr Range stress = above_to(0.0, 1e4);         // MPa
constexpr Range hardening_rate = from_to(0.0, 1e6);  // MPa
constexpr Range exponent = above_below(0.0, 1.0);

const Key K = {"K_MPa", "520.0", "Strength"};
const Key n = {"n", "0.2", "Exponent"};
const Key Y = {"Y_MPa", "200.0", "Yield stress"};

}  // namespace

void describe(Fields& f, CardTable& t) {
    material::Card& c = t.card;
    f.text({"title", "\"DC01, 1 mm\"", "Title"}, c.title);
    f.text({"source", "\"EN 10130\"", "Where the numbers come from"}, c.source);
    f.number({"youngs_modulus_MPa", "206000.0", "Young's modulus"}, from_to(1e3, 1e6), c.youngs_modulus);
    f.number({"poisson", "0.3", "Poisson's ratio"}, from_below(0.0, 0.5), c.poisson);
    f.number({"density_kg_m3", "7850.0", "Density"}, from_to(100.0, 25e3), c.density);
    f.table({"hardening", "{ law = \"swift\", K_MPa = 520.0, e0 = 0.01, n = 0.2 }",
             "Stress over plastic strain, in uniaxial tension"},
            c.hardening);
    f.tables_if({"backstress", "[ { C_MPa = 2000.0, gamma = 30.0 } ]",
                 "One or two back stresses, for metals that yield sooner when bent back"},
                c.backstress);
    f.table_if(
        {"modulus_drop", "{ to_MPa = 170000.0, rate = 40.0 }", "The modulus falls with the plastic strain"},
        c.modulus_drop);
    f.number_or({"r_value", "1.5", "Width strain over thickness strain in a tensile test"},
                from_to(0.1, 10.0), c.r_value, {1.0});
    f.number_or({"tensile_strength_MPa", "330.0", "Tensile strength, for handbook formulas"}, stress,
                c.tensile_strength, {0.0, "not known"});
    f.number_or(
        {"strength_range_percent", "15.0", "What coils of the grade differ in flow stress, plus or minus"},
        from_to(0.0, 50.0), c.strength_range, {0.1, "10 (common practice)"});
    f.number_or({"elongation_percent", "38.0", "Elongation at fracture"}, above_to(0.0, 100.0), c.elongation,
                {0.0, "not known"});
    f.number_or(
        {"reduction_of_area_percent", "60.0", "Reduction of area Z: what the section loses at fracture"},
        above_below(0.0, 100.0), c.reduction_of_area, {0.0, "not known"});
    f.choice_if({"metal", "\"steel\"", "Row of a table of least radii"}, material::metal_words(), c.metal);
    f.word_or({"hardness", "\"soft\"", "Class of the handbook's straight lines for developed lengths"},
              {"soft", "medium", "hard"}, c.hardness, material::Hardness::medium);
    f.number_or({"price_per_kg", "3.0", "Price of the strip"}, from_to(0.0, 1e6), c.price,
                {0.0, "the case's own"});
    f.number_or({"cutting_mm2_per_s", "120.0", "Cutting speed of a laser, times the thickness"},
                from_to(0.0, 1e6), c.cutting_rate, {0.0, "the case's own"});
    f.sources_if({"sources", "{ r_value = \"measured\" }", "Sources of single numbers"}, t.sources);
}

void describe(Fields& f, material::Hardening& t) {
    f.one_of({"law", "\"swift\"", "Hardening law"}, {"swift", "hollomon", "voce", "linear", "table"}, t);
}

void describe(Fields& f, material::Swift& t) {
    f.number(K, stress, t.K);
    f.number({"e0", "0.01", "Pre-strain: K (e0 + p)^n"}, above_to(0.0, 1.0), t.e0);
    f.number(n, exponent, t.n);
}
void describe(Fields& f, material::Hollomon& t) {
    f.number(K, stress, t.K);
    f.number(n, exponent, t.n);
}
void describe(Fields& f, material::Voce& t) {
    f.number(Y, stress, t.Y);
    f.number({"Q_MPa", "250.0", "Stress added at saturation: Y + Q (1 - exp(-b p))"}, from_to(0.0, 1e4), t.Q);
    f.number({"b", "10.0", "Rate"}, above_to(0.0, 1e4), t.b);
}
void describe(Fields& f, material::Linear& t) {
    f.number(Y, stress, t.Y);
    f.number({"H_MPa", "800.0", "Slope: Y + H p"}, hardening_rate, t.H);
}
void describe(Fields& f, material::Table& t) {
    f.numbers({"plastic_strain", "[0.0, 0.1, 0.3]", "Plastic strains, rising from 0"}, from_to(0.0, 10.0), 0,
              t.p);
    f.numbers({"stress_MPa", "[200.0, 300.0, 360.0]", "Stress at each of these strains, not falling"}, stress,
              0, t.stress);
}

void describe(Fields& f, material::Backstress& t) {
    f.number({"C_MPa", "2000.0", "Initial slope"}, hardening_rate, t.C);
    f.number({"gamma", "30.0", "Rate of saturation"}, from_to(0.0, 1e5), t.gamma);
}

void describe(Fields& f, material::ModulusDrop& t) {
    f.number({"to_MPa", "170000.0", "Value it falls to; less than the modulus"}, above_to(0.0, 1e6), t.to);
    f.number({"rate", "40.0", "Rate"}, above_to(0.0, 1e4), t.rate);
}

void describe(Fields& f, RackTable& t) {
    f.text({"title", "\"Tools of the small press\"", "Name"}, t.title);
    f.text({"source", "\"Our own\"", "Where the tools come from"}, t.source);
    f.elsewhere({"tool", "", "A tool; one or more"}, true);
}

}  // namespace overbend::files
