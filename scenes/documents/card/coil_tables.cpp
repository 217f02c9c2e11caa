#include "scenes/documents/card/coil_tables.h"

#include <algorithm>
#include <filesystem>

#include "scenes/documents/card/card_text.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

Cell off_cell(const std::optional<tensile::Figure>& f, double times = 1.0) {
    return f ? Cell(with_off(*f, times)) : Cell();
}

}  // namespace

Table tests_table(const CoilReport& r) {
    const tensile::Coil& c = r.coil;
    Table table{"Figures of the tests, two standard deviations either way", {{"Figure"}, {"Unit"}}, {}};
    std::vector<const tensile::Figures*> tests;
    for (std::size_t i = 0; i < c.tests.size(); ++i) {
        tests.push_back(&c.tests[i].figures);
        if (c.tests.size() > 1)
            table.columns.push_back({std::filesystem::path(r.records[i].file).stem().string()});
    }
    table.columns.push_back({c.tests.size() > 1 ? "coil" : "test"});
    const auto add = [&](const char* name, const char* unit, double times,
                         std::optional<tensile::Figure> coil, auto of) {
        if (!coil) return;
        std::vector<Cell> row = {name, unit};
        if (tests.size() > 1)
            for (const tensile::Figures* t : tests) row.push_back(off_cell(of(*t), times));
        row.push_back(off_cell(coil, times));
        table.rows.push_back(std::move(row));
    };
    using F = tensile::Figures;
    using Known = std::optional<tensile::Figure>;
    add(tests.size() > 1 ? "slope of the elastic part; modulus of the card" : "slope of the elastic part",
        "GPa", 1e-3, tests.size() > 1 ? Known(c.modulus) : Known(tests.front()->slope),
        [](const F& f) { return Known(f.slope); });
    add("Rp0.2", "MPa", 1.0, c.proof, [](const F& f) { return Known(f.proof); });
    const auto yield = [](tensile::Figure tensile::YieldPoint::*which) {
        return [which](const F& f) { return f.yield_point ? Known((*f.yield_point).*which) : Known(); };
    };
    add("ReH, upper yield", "MPa", 1.0, c.upper_yield, yield(&tensile::YieldPoint::upper));
    add("ReL, lower yield", "MPa", 1.0, c.lower_yield, yield(&tensile::YieldPoint::lower));
    add("Ae, yield elongation", "%", 100.0, c.yield_elongation, yield(&tensile::YieldPoint::elongation));
    add("Rm", "MPa", 1.0, c.strength, [](const F& f) { return Known(f.strength); });
    add("Ag", "%", 100.0, c.uniform, [](const F& f) { return Known(f.uniform); });
    add("A", "%", 100.0, c.elongation, [](const F& f) { return f.elongation; });
    add("r", "", 1.0, c.r_value, [](const F& f) { return f.r_value; });
    return table;
}

Table laws_table(const CoilReport& r) {
    Table table{"Hardening laws, true stress over plastic strain",
                {{"Law"}, {"Residual", "MPa", 2}, {"Greatest", "MPa", 2}, {"AIC", "", 0}, {"BIC", "", 0}},
                {}};
    if (!r.bends.empty()) {
        table.columns.push_back({"Springback of 90 deg", "deg", 2});
        table.columns.push_back({"Inside radius", "mm", 2});
        table.columns.push_back({"Force", "N/mm", 1});
    }
    table.columns.push_back({"Numbers"});
    for (std::size_t i = 0; i < r.coil.fits.size(); ++i) {
        const tensile::LawFit& f = r.coil.fits[i];
        if (f.residual >= 1e300) continue;
        std::vector<Cell> row = {std::string(tensile::law_word(f.law)) + (f.law == r.chosen ? " *" : ""),
                                 f.residual, f.greatest, f.aic ? Cell(*f.aic) : Cell(),
                                 f.bic ? Cell(*f.bic) : Cell()};
        if (!r.bends.empty()) {
            const job::SampleBend& b = r.bends[i];
            row.push_back(b.solved ? Cell(b.springback / degree) : Cell());
            row.push_back(b.solved ? Cell(b.inside_radius) : Cell());
            row.push_back(b.solved ? Cell(b.force) : Cell());
        }
        row.push_back(f.numbers.empty() ? Cell() : Cell(law_numbers(f)));
        table.rows.push_back(std::move(row));
        table.notes.push_back(std::string(tensile::law_word(f.law)) +
                              " beyond the greatest load: " + f.beyond +
                              (f.at_limit ? "; a number of it has run to the end of its range" : "") + ".");
    }
    table.notes.push_back(r.chosen_by_option ? "* in the card, as chosen." : "* in the card: the least BIC.");
    return table;
}

std::string spread_words(const CoilReport& r) {
    const job::LawSpread spread = job::springback_spread(r.bends, r.coil.fits, chosen_fit(r));
    if (spread.laws == 0) return "";
    double strain = 0.0;
    for (const job::SampleBend& b : r.bends)
        if (b.solved && b.law == r.chosen) strain = b.outer_strain;
    std::string text = words(
        "The surface of the sample bend (%.3g mm thick, die opening %.3g mm) is strained to %.2f; "
        "the record ends at %.3f. ",
        r.thickness, job::sample_opening * r.thickness, strain, r.coil.tests.front().curve.to);
    text += words(
        "Its springback is %.2f to %.2f deg with the %d laws that follow the record about equally well: "
        "%.2f deg is not known from this test.",
        spread.least / degree, spread.most / degree, spread.laws, (spread.most - spread.least) / degree);
    return text;
}

}  // namespace overbend::documents
