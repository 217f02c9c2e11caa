// How a job's numbers were obtained: the mechanics in plain words, the mesh, the balance of work, the
// material card.

#include "scenes/documents/report/page_parts.h"
#include "sim/material/layer_law.h"
#include "sim/tolerances.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using namespace material;

std::string law_words(const Swift& h) {
    return words("stress = %g MPa \u00b7 (%g + strain)^%g, plastic strain (Swift)", h.K, h.e0, h.n);
}
std::string law_words(const Hollomon& h) {
    return words("stress = %g MPa \u00b7 strain^%g, total strain (Hollomon)", h.K, h.n);
}
std::string law_words(const Voce& h) {
    return words("stress = %g + %g \u00b7 (1 \u2212 exp(\u2212%g \u00b7 strain)) MPa, plastic strain (Voce)",
                 h.Y, h.Q, h.b);
}
std::string law_words(const Linear& h) {
    return words("stress = %g + %g \u00b7 strain MPa, plastic strain (linear)", h.Y, h.H);
}
std::string law_words(const material::Table& h) {
    return words("a table of %zu points up to a plastic strain of %g (stress %g to %g MPa)", h.p.size(),
                 h.p.back(), h.stress.front(), h.stress.back());
}

std::string section_words(const files::Case& c) {
    const double hold = width_hold(c.width / c.thickness);
    const std::string wide = words("The strip is %.3g thicknesses wide and is taken ", c.width / c.thickness);
    if (hold >= 1.0) return wide + "as held across its width (plane strain).";
    if (hold <= 0.0) return wide + "as free across its width (uniaxial).";
    return wide + words("between held and free across its width, %.0f per cent held.", 100.0 * hold);
}

documents::Table audit_table(const job::JobResult& job) {
    documents::Table table{"Energy balance, N mm per mm of width",
                           {{"Stroke"},
                            {"Tools", "", 1},
                            {"Elastic", "", 1},
                            {"Plastic", "", 1},
                            {"Friction", "", 1},
                            {"Contact, springs", "", 1},
                            {"Regularisation", "", 2},
                            {"Jumps", "", 2},
                            {"Residue", "%", 3},
                            {"Increments", "", 0},
                            {"Elements", "", 0}},
                           {},
                           {words("The residue shows how reliable a stroke is: above %g per cent the stroke "
                                  "is repeated with finer increments, above %g per cent it is rejected. "
                                  "Jumps: energy set free where "
                                  "the strip snaps or slips from one equilibrium to another.",
                                  limits::open_balance, limits::lost_balance)}};
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const stroke::StrokeResult& s = job.steps[i].stroke;
        const stroke::Audit& a = s.audit;
        table.rows.push_back({words("%zu. ", i + 1) + job.steps[i].name, a.tools + a.weight, a.elastic,
                              a.plastic, a.friction, a.contact + a.springs, a.regularisation, a.set_free,
                              a.residue_percent(), 1.0 * s.increments,
                              static_cast<double>(s.recording.blank_position.size() - 1)});
    }
    return table;
}

}  // namespace

void add_method(const files::Case& c, const job::JobResult& job, report::Page& page) {
    page.method_words = {
        "The strip is computed as a chain of short elements that stretch, shear and bend. Through the "
        "thickness each "
        "element has layers of metal, and every layer follows the card's flow curve: elastic first, then "
        "plastic, and elastic again on release. Each layer keeps its history from stroke to stroke.",
        "The tools are rigid outlines. The punch moves down in small increments. For each, the program finds "
        "the shape in which all forces are in balance, with contact and friction. From the stop, the punch "
        "goes up until nothing touches the strip. Springback, thinning and the position of the neutral layer "
        "are results of this; no formula is used for them.",
        words(
            "Here: %d layers through the thickness, %g elements per thickness in the bends, friction %g%s. ",
            c.run.layers, c.run.elements_per_thickness, c.run.friction,
            c.run.gravity ? ", the strip's weight" : "") +
            section_words(c),
        "Known limits: tools are rigid; the strip cannot crack in the computation; the computed inside "
        "radius can be smaller than the nose radius, and inside radii have been checked against little more "
        "than shop rules. The largest uncertainty is the material: the card has mean values from a standard, "
        "not the values of your coil."};
    page.method_tables = {page_table(audit_table(job))};
}

void add_material(const files::Case& c, report::Page& page) {
    const Card& m = c.material;
    page.material = {{"Metal", m.title},
                     {"Source", m.source.empty() ? "not given" : m.source},
                     {"Young's modulus", words("%g MPa", m.youngs_modulus)},
                     {"Poisson's ratio", words("%g", m.poisson)},
                     {"Flow curve", std::visit([](const auto& law) { return law_words(law); }, m.hardening)}};
    const auto add = [&](const char* word, const std::string& meaning) {
        page.material.push_back({word, meaning});
    };
    for (const Backstress& b : m.backstress)
        add("Back stress", words("C = %g MPa, gamma = %g", b.C, b.gamma));
    if (m.modulus_drop)
        add("Modulus after bending",
            words("falls to %g MPa, rate %g", m.modulus_drop->to, m.modulus_drop->rate));
    if (m.r_value != 1.0) add("r-value", words("%g", m.r_value));
    if (m.tensile_strength > 0.0) add("Tensile strength", words("%g MPa", m.tensile_strength));
    if (m.elongation > 0.0) add("Elongation", words("%g %%", 100.0 * m.elongation));
    if (m.reduction_of_area > 0.0) add("Reduction of area", words("%g %%", 100.0 * m.reduction_of_area));
    if (m.density > 0.0) add("Density", words("%g kg/m\u00b3", m.density));
    for (const auto& [key, source] : c.card_origin.sources) add("Source", key + ": " + source);
}

}  // namespace overbend::documents
